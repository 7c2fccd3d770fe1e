//! What was seen of a student: what costs most often first, strengths beside it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Observation, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::StudentId;

/// Whose observations.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ListObservations {
    /// The student.
    pub student: StudentId,
}

/// One observation.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Observation> {
    store::find(db, which.observation)
}

/// Everything seen of a student, the most often seen first, the newest first among equals.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListObservations) -> Result<Vec<Observation>> {
    let mut all = store::of_student(db, ask.student)?;
    all.sort_by_key(|o| std::cmp::Reverse((o.seen.len(), o.seen.last().map(|s| s.day), o.id)));
    Ok(all)
}
