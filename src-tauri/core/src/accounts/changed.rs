//! Lessons that are otherwise now than when they were settled: they are to be looked at.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{LessonId, StudentId};
use crate::kinds::text::counted;
use crate::lessons;

/// A lesson that changed after it was settled.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SettledOtherwise {
    /// The lesson.
    pub lesson: LessonId,
    /// Whose.
    pub student: StudentId,
    /// The name.
    pub name: String,
    /// The day.
    pub day: Day,
    /// What changed, in a sentence.
    pub words: String,
}

/// Lessons that changed after they were settled, the oldest first.
///
/// # Errors
/// `Storage`.
pub fn changed(db: &Reading<'_>) -> Result<Vec<SettledOtherwise>> {
    let mut all = Vec::new();
    for (lesson, student, state, minutes) in store::changed(db)? {
        let now = lessons::show(db, lessons::Which { lesson })?;
        let mut what = Vec::new();
        if state != now.state {
            what.push(format!("settled as {}, now {}", state.words(), now.state.words()));
        }
        if minutes != i64::from(now.minutes) {
            let before = counted(minutes, "minute", "minutes");
            what.push(format!("settled with {before}, now {}", now.minutes));
        }
        let name = now.students.iter().find(|of| of.student == student);
        all.push(SettledOtherwise {
            lesson,
            student,
            name: name.map(|of| of.name.clone()).unwrap_or_default(),
            day: now.day,
            words: format!("{}, {}: {}.", now.starts, now.place, what.join("; ")),
        });
    }
    Ok(all)
}
