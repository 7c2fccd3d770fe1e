//! One visit, and lists of visits.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Visit, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::StudentId;
use crate::kinds::{Day, Span};

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

/// Visits that are only expected, in spans that begin on `day` or earlier; the earliest first.
///
/// # Errors
/// `Storage`.
pub fn expected_by(db: &Reading<'_>, day: Day) -> Result<Vec<Visit>> {
    store::expected_by(db, day)
}

/// Visits that are open, whenever they began; the earliest first.
///
/// # Errors
/// `Storage`.
pub fn running(db: &Reading<'_>) -> Result<Vec<Visit>> {
    store::running(db)
}

/// Visits with days of which one lies in the span, called off or not; the earliest first.
///
/// # Errors
/// `Storage`.
pub fn around(db: &Reading<'_>, span: Span) -> Result<Vec<Visit>> {
    store::around(db, span)
}

/// Whether there is any visit.
///
/// # Errors
/// `Storage`.
pub fn any(db: &Reading<'_>) -> Result<bool> {
    store::any(db)
}

/// Lists visits in time, earliest first.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListVisits) -> Result<Vec<Visit>> {
    store::list(db, ask)
}
