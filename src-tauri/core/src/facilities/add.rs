//! Adding and changing facilities and their courts; putting them away.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Facility, Place, Seen, Which, WhichCourt, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{CourtId, FacilityId};

/// A changed facility.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeFacility {
    /// Which one.
    pub facility: FacilityId,
    /// All that is to be kept, changed or not.
    pub place: Place,
}

/// A new court.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddCourt {
    /// The facility it is in.
    pub facility: FacilityId,
    /// Its name.
    pub name: String,
    /// The coach's own notes.
    #[serde(default)]
    pub notes: String,
    /// Its kind, as rules of the facility name it: indoor, outdoor.
    #[serde(default)]
    pub ground: String,
    /// Whether it can be seen into from outside.
    #[serde(default)]
    pub seen: Option<Seen>,
}

/// A changed court.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeCourt {
    /// Which one.
    pub court: CourtId,
    /// Its name.
    pub name: String,
    /// The coach's own notes.
    #[serde(default)]
    pub notes: String,
    /// Its kind, as rules of the facility name it: indoor, outdoor.
    #[serde(default)]
    pub ground: String,
    /// Whether it can be seen into from outside.
    #[serde(default)]
    pub seen: Option<Seen>,
}

/// Adds a facility.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, place: Place) -> Result<Facility> {
    let place = place.read()?;
    let facility = db.id();
    store::insert(db, facility, &place)?;
    db.label(format!("{} added", place.name));
    show(db, Which { facility })
}

/// Changes a facility. Its zone cannot change once lessons stand on its clock.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn change(db: &Writing<'_>, change: ChangeFacility) -> Result<Facility> {
    let before = show(db, Which { facility: change.facility })?;
    let place = change.place.read()?;
    if place.zone != before.place.zone && store::has_lessons(db, change.facility)? {
        return Err(Error::field(
            "zone",
            "zone_in_use",
            "Lessons stand on this facility\u{2019}s clock, so its zone cannot change. Add a second facility instead.",
        ));
    }
    store::update(db, change.facility, &place)?;
    db.label(format!("{} changed", place.name));
    show(db, Which { facility: change.facility })
}

/// Puts a facility away: out of the lists, with everything kept.
///
/// # Errors
/// `NotFound`.
pub fn archive(db: &Writing<'_>, which: Which) -> Result<Facility> {
    store::set_archived(db, which.facility, Some(db.today()))?;
    let facility = show(db, which)?;
    db.label(format!("{} put away", facility.place.name));
    Ok(facility)
}

/// Brings a facility back into the lists.
///
/// # Errors
/// `NotFound`.
pub fn bring_back(db: &Writing<'_>, which: Which) -> Result<Facility> {
    store::set_archived(db, which.facility, None)?;
    let facility = show(db, which)?;
    db.label(format!("{} brought back", facility.place.name));
    Ok(facility)
}

/// Adds a court to a facility.
///
/// # Errors
/// `NotFound`; `Refused` when the name is empty or taken.
pub fn add_court(db: &Writing<'_>, add: AddCourt) -> Result<Facility> {
    let facility = show(db, Which { facility: add.facility })?;
    let typed = TypedCourt { name: &add.name, notes: &add.notes, ground: &add.ground };
    let court = read_court(&facility, None, &typed, add.seen)?;
    store::insert_court(db, db.id(), add.facility, &court)?;
    db.label(format!("{} added to {}", court.name, facility.place.name));
    show(db, Which { facility: add.facility })
}

/// Changes a court.
///
/// # Errors
/// `NotFound`; `Refused` when the name is empty or taken.
pub fn change_court(db: &Writing<'_>, change: ChangeCourt) -> Result<Facility> {
    let facility = show(db, Which { facility: store::facility_of(db, change.court)? })?;
    let typed = TypedCourt { name: &change.name, notes: &change.notes, ground: &change.ground };
    let court = read_court(&facility, Some(change.court), &typed, change.seen)?;
    store::update_court(db, change.court, &court)?;
    db.label(format!("{} at {} changed", court.name, facility.place.name));
    show(db, Which { facility: facility.id })
}

/// Puts a court away, or brings it back if it was away.
///
/// # Errors
/// `NotFound`.
pub fn archive_court(db: &Writing<'_>, which: WhichCourt) -> Result<Facility> {
    let facility = show(db, Which { facility: store::facility_of(db, which.court)? })?;
    let court = facility.courts.iter().find(|court| court.id == which.court);
    let away = court.is_some_and(|court| court.archived.is_some());
    store::set_court_archived(db, which.court, (!away).then(|| db.today()))?;
    db.label(format!(
        "A court of {} {}",
        facility.place.name,
        if away { "brought back" } else { "put away" }
    ));
    show(db, Which { facility: facility.id })
}

/// A court as typed.
struct TypedCourt<'a> {
    name: &'a str,
    notes: &'a str,
    ground: &'a str,
}

/// A court as it can be stored.
pub(super) struct ReadCourt {
    pub name: String,
    pub notes: String,
    pub ground: String,
    pub seen: Option<Seen>,
}

fn read_court(
    facility: &Facility,
    itself: Option<CourtId>,
    typed: &TypedCourt<'_>,
    seen: Option<Seen>,
) -> Result<ReadCourt> {
    let mut p = Problems::new();
    let name = p.name("name", typed.name, "The court\u{2019}s name");
    let notes = p.note("notes", typed.notes, "Your notes");
    let ground = p.line("ground", typed.ground, "The kind of court");
    let taken = facility.courts.iter().any(|court| Some(court.id) != itself && court.name == name);
    if taken {
        p.add(
            "name",
            "taken",
            format!("{} has a court named \u{201c}{name}\u{201d} already.", facility.place.name),
        );
    }
    p.done()?;
    Ok(ReadCourt { name, notes, ground, seen })
}
