//! One lesson, and lists of lessons.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::VisitId;

/// Which lessons to list.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListLessons {
    /// Of this visit only.
    pub visit: Option<VisitId>,
    /// On this day or later.
    pub from: Option<Day>,
    /// On this day or earlier.
    pub to: Option<Day>,
}

/// Shows a lesson.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Lesson> {
    store::find(db, which.lesson)
}

/// Lists lessons in time.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListLessons) -> Result<Vec<Lesson>> {
    store::list(db, ask)
}
