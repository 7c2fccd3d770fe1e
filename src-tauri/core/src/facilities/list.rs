//! The list of places, and one place with its courts.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Facility, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{CourtId, FacilityId};

/// What to list.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListFacilities {
    /// Those put away as well, after the others.
    pub archived: bool,
}

/// Lists facilities by name, with their courts.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListFacilities) -> Result<Vec<Facility>> {
    store::ids(db, ask.archived)?.into_iter().map(|id| store::find(db, id)).collect()
}

/// Shows a facility.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Facility> {
    store::find(db, which.facility)
}

/// The facility a court is in.
///
/// # Errors
/// `NotFound`.
pub fn of_court(db: &Reading<'_>, court: CourtId) -> Result<FacilityId> {
    store::facility_of(db, court)
}
