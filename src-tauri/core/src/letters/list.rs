//! Letters owed, in draft and issued.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{LetterId, StudentId, VisitId};
use crate::kinds::{Day, Instant};

/// Where a letter is in its life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LetterState {
    /// The visit is over and has no letter yet.
    Owed,
    /// The coach has begun to edit it.
    Draft,
    /// Issued.
    Issued,
}

/// A line in the list.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct LetterLine {
    /// The visit.
    pub visit: VisitId,
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The visit's first day.
    pub first_day: Day,
    /// The visit's last day.
    pub last_day: Day,
    /// Where the letter is.
    pub state: LetterState,
    /// The issued letter.
    pub letter: Option<LetterId>,
    /// When it was issued.
    pub at: Option<Instant>,
}

/// Which letters.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListLetters {
    /// Of this student only.
    pub student: Option<StudentId>,
    /// Only issued ones, or only those still to write; left out for both.
    pub issued: Option<bool>,
    /// Only of visits that ended on this day or later.
    pub from: Option<Day>,
    /// Only of visits that ended on this day or earlier.
    pub to: Option<Day>,
    /// How many at most; 0 means all.
    pub most: u32,
}

/// Lists letters: newest visit first; a letter is owed for a closed visit that has blocks.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListLetters) -> Result<Vec<LetterLine>> {
    store::lines(db, &ask)
}

/// How many letters there are of those asked for, `most` aside.
pub(crate) fn count(db: &Reading<'_>, ask: ListLetters) -> Result<u32> {
    store::count(db, &ask)
}
