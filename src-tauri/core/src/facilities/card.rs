//! A facility's card: who is at the desk, and where to turn in an emergency. What an incident report
//! of an insurer or a club asks for first is where exactly, which entrance, and who was called.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Which, show, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::ids::FacilityId;

/// Whom to ask, and where to turn; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Card {
    /// Who is at the desk.
    pub desk: String,
    /// The desk's telephone.
    pub desk_phone: String,
    /// The desk's e-mail address.
    pub desk_email: String,
    /// The exact address and entrance, as told to an ambulance.
    pub entrance: String,
    /// Where a telephone is, and the local emergency number.
    pub phone: String,
    /// Where the defibrillator is.
    pub defibrillator: String,
    /// Where first aid is.
    pub first_aid: String,
    /// The nearest hospital.
    pub hospital: String,
    /// The day the coach looked, as YYYY-MM-DD.
    pub seen: String,
}

/// A card to write.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetCard {
    /// Whose.
    pub facility: FacilityId,
    /// All that is to be kept.
    pub card: Card,
}

/// Writes a facility's card.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set_card(db: &Writing<'_>, set: SetCard) -> Result<Card> {
    let facility = show(db, Which { facility: set.facility })?;
    let c = set.card;
    let mut p = Problems::new();
    let card = Card {
        desk: p.line("desk", &c.desk, "Who is at the desk"),
        desk_phone: p.line("desk_phone", &c.desk_phone, "The desk\u{2019}s telephone"),
        desk_email: p.email("desk_email", &c.desk_email),
        entrance: p.note("entrance", &c.entrance, "The address and entrance"),
        phone: p.line("phone", &c.phone, "The telephone"),
        defibrillator: p.line(
            "defibrillator",
            &c.defibrillator,
            "The defibrillator\u{2019}s place",
        ),
        first_aid: p.line("first_aid", &c.first_aid, "The first-aid place"),
        hospital: p.line("hospital", &c.hospital, "The nearest hospital"),
        seen: p
            .day_or_none("seen", Some(&c.seen), "The day you looked")
            .map(|day| day.to_string())
            .unwrap_or_default(),
    };
    p.done()?;
    store::write_card(db, set.facility, &card)?;
    db.label(format!("Emergency card of {} written", facility.place.name));
    Ok(card)
}

/// A facility's card; all empty when none was written.
///
/// # Errors
/// `NotFound`.
pub fn card(db: &Reading<'_>, which: Which) -> Result<Card> {
    show(db, which)?;
    store::card(db, which.facility)
}
