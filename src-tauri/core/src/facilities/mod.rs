//! Facilities: places with courts, and what they ask of whoever books and teaches there. Times on
//! their courts are civil times in their zone.

mod add;
mod card;
mod list;
mod rules;
mod store;
mod teaching;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use add::{add, add_court, archive, archive_court, bring_back, change, change_court};
pub use card::{Card, SetCard, card, set_card};
pub use list::{ListFacilities, list, of_court, show};
pub use rules::{
    Ahead, AheadUnit, AskTerms, Closure, CountedBy, Given, Hours, Later, Rate, Release, Rules,
    SetRules, Terms, court_cost, hours_on, read_hours, read_times, read_weekdays, rules, set_rules,
    terms, terms_of,
};
pub use teaching::{
    Permission, SetTeaching, Teaching, TeachingShown, set_teaching, teaching, teaching_on,
};

use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{CourtId, FacilityId};

/// What is kept about a facility; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// The town.
    pub town: String,
    /// IANA zone.
    pub zone: String,
    /// Postal address, several lines.
    pub address: String,
    /// The coach's own notes: desk, parking, who to ask.
    pub notes: String,
    /// What it asks of visitors, as the coach tells them: entrance, guest fee, rules.
    pub visitors: String,
}

/// A court.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Court {
    /// Which one.
    pub id: CourtId,
    /// Its name, as in "court 2".
    pub name: String,
    /// The coach's own notes.
    pub notes: String,
    /// Its kind, as rules of the facility name it: indoor, outdoor. Empty for none.
    pub ground: String,
    /// Whether it can be seen into from outside; left out while nobody looked.
    pub seen: Option<Seen>,
    /// The day put away.
    pub archived: Option<Day>,
}

/// Whether a court can be seen into from outside, as lessons with minors may need it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Seen {
    /// It can.
    Yes,
    /// It cannot.
    No,
}

crate::db::words! {
    Seen { Yes = "yes", No = "no" }
}

/// A facility as stored.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Facility {
    /// Which one.
    pub id: FacilityId,
    /// What is kept.
    pub place: Place,
    /// Its courts by name, those put away last.
    pub courts: Vec<Court>,
    /// The day put away.
    pub archived: Option<Day>,
}

/// Which facility.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The facility.
    pub facility: FacilityId,
}

/// Which court.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichCourt {
    /// The court.
    pub court: CourtId,
}

impl Place {
    /// The place as it can be stored.
    fn read(self) -> Result<Self> {
        let mut p = Problems::new();
        let zone = p.zone("zone", &self.zone, "The time zone");
        let read = Self {
            name: p.name("name", &self.name, "The name"),
            town: p.line("town", &self.town, "The town"),
            zone: zone.map(|zone| zone.to_string()).unwrap_or_default(),
            address: p.note("address", &self.address, "The address"),
            notes: p.note("notes", &self.notes, "Your notes"),
            visitors: p.note("visitors", &self.visitors, "What it asks of visitors"),
        };
        p.done()?;
        Ok(read)
    }
}
