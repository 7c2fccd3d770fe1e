//! The student's own rating of a lesson's effort, from 0 to 10 (Foster et al. 2001, Journal of
//! Strength and Conditioning Research 15:109–115: asked about half an hour after the end).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, LessonState, Which, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{LessonId, StudentId};

/// What a student said of a lesson.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RateEffort {
    /// Which lesson.
    pub lesson: LessonId,
    /// Who said it.
    pub student: StudentId,
    /// 0 (rest) to 10 (maximal); left out to take the rating back.
    #[serde(default)]
    pub effort: Option<i64>,
}

/// Writes down the effort as the student rated it.
///
/// # Errors
/// `NotFound`; `Refused` for a number off the scale or a student who was not there; `NotPossible`
/// where no lesson was given.
pub fn rate_effort(db: &Writing<'_>, rate: RateEffort) -> Result<Lesson> {
    let lesson = show(db, Which { lesson: rate.lesson })?;
    let mut p = Problems::new();
    let effort =
        rate.effort.map(|effort| p.within_bounds("effort", effort, 0, 10, "The effort rating"));
    let who = lesson.students.iter().find(|s| s.student == rate.student);
    if who.is_none() {
        p.add("student", "not_there", "This student is not in the lesson.");
    }
    p.done()?;
    if !matches!(lesson.state, LessonState::Given | LessonState::CutShort) {
        return Err(Error::not_possible(
            "not_given",
            format!(
                "Effort is rated after a lesson. This one is {}: say first that it was given.",
                lesson.state.words()
            ),
        ));
    }
    store::set_effort(db, rate.lesson, rate.student, effort.and_then(|e| u8::try_from(e).ok()))?;
    let name = who.map_or("", |who| who.name.as_str());
    db.label(match effort {
        Some(effort) => format!("Effort as told by {name}, {}: {effort}", lesson.day.words()),
        None => format!("Effort of {name}, {}: taken back", lesson.day.words()),
    });
    show(db, Which { lesson: rate.lesson })
}
