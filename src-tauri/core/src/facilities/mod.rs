//! Facilities: places with courts. Times on their courts are civil times in their zone.

mod add;
mod list;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use add::{add, add_court, archive, archive_court, bring_back, change, change_court};
pub use list::{ListFacilities, list, show};

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
    /// The day put away.
    pub archived: Option<Day>,
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
        };
        p.done()?;
        Ok(read)
    }
}
