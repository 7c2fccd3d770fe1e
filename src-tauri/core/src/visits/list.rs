//! One visit, and lists of visits.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Visit, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::StudentId;

/// Which visits to list.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListVisits {
    /// Of this student only.
    pub student: Option<StudentId>,
    /// Ending (or expected) on this day or later.
    pub from: Option<Day>,
    /// Starting (or expected) on this day or earlier.
    pub to: Option<Day>,
}

/// Shows a visit.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Visit> {
    store::find(db, which.visit)
}

/// Lists visits in time, earliest first.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListVisits) -> Result<Vec<Visit>> {
    store::list(db, ask)
}
