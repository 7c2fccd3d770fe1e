//! Writing a facility's rules down, and reading them back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Rules, store};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::facilities::{Which, show};
use crate::kinds::ids::FacilityId;

/// Rules to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetRules {
    /// Whose.
    pub facility: FacilityId,
    /// All that is to be kept, changed or not.
    pub rules: Rules,
}

/// Writes a facility's rules down, in place of those before.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set_rules(db: &Writing<'_>, set: SetRules) -> Result<Rules> {
    let facility = show(db, Which { facility: set.facility })?;
    let rules = set.rules.read(&facility)?;
    store::write(db, set.facility, &rules)?;
    db.label(format!("Rules of {} written down", facility.place.name));
    store::rules(db, set.facility)
}

/// A facility's rules as they were written down; all empty when none were.
///
/// # Errors
/// `NotFound`.
pub fn rules(db: &Reading<'_>, which: Which) -> Result<Rules> {
    show(db, which)?;
    store::rules(db, which.facility)
}
