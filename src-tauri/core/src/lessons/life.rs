//! A lesson's life: given, cut short, called off, missed; and its note.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Lesson, LessonState, Which, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::goals::blocks;
use crate::intake::head;
use crate::kinds::ids::LessonId;

/// A lesson that ended early.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CutShort {
    /// Which one.
    pub lesson: LessonId,
    /// Minutes taught.
    pub given: i64,
    /// Why.
    pub reason: String,
}

/// A lesson that did not take place.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EndUntaught {
    /// Which one.
    pub lesson: LessonId,
    /// Why.
    pub reason: String,
}

/// A lesson note.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoteLesson {
    /// Which lesson.
    pub lesson: LessonId,
    /// What was done.
    pub done: String,
    /// The cue that landed.
    #[serde(default)]
    pub landed: String,
    /// What is next.
    #[serde(default)]
    pub next: String,
}

/// Marks a lesson as given in full; blocks counted in it end with it.
///
/// # Errors
/// `NotFound`; `NotPossible` when it was called off or missed.
pub fn give(db: &Writing<'_>, which: Which) -> Result<Lesson> {
    settle(db, which.lesson, LessonState::Given, None, "")
}

/// Marks a lesson as cut short; blocks counted in it end with it.
///
/// # Errors
/// `NotFound`; `Refused` without a reason or with more minutes than it had.
pub fn cut_short(db: &Writing<'_>, cut: CutShort) -> Result<Lesson> {
    let before = show(db, Which { lesson: cut.lesson })?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &cut.reason, "The reason");
    let given = p.within_bounds(
        "given",
        cut.given,
        0,
        i64::from(before.minutes),
        "The number of minutes taught",
    );
    p.done()?;
    settle(db, cut.lesson, LessonState::CutShort, u32::try_from(given).ok(), &reason)
}

/// Calls a lesson off.
///
/// # Errors
/// `NotFound`; `Refused` without a reason.
pub fn call_off(db: &Writing<'_>, end: EndUntaught) -> Result<Lesson> {
    untaught(db, end, LessonState::CalledOff)
}

/// Marks a lesson as missed by the student.
///
/// # Errors
/// `NotFound`; `Refused` without a reason.
pub fn miss(db: &Writing<'_>, end: EndUntaught) -> Result<Lesson> {
    untaught(db, end, LessonState::Missed)
}

fn untaught(db: &Writing<'_>, end: EndUntaught, state: LessonState) -> Result<Lesson> {
    let mut p = Problems::new();
    let reason = p.reason("reason", &end.reason, "The reason");
    p.done()?;
    settle(db, end.lesson, state, None, &reason)
}

fn settle(
    db: &Writing<'_>,
    id: LessonId,
    state: LessonState,
    given: Option<u32>,
    reason: &str,
) -> Result<Lesson> {
    let before = show(db, Which { lesson: id })?;
    if before.state == LessonState::CalledOff {
        return Err(Error::not_possible(
            "called_off",
            "This lesson was called off. Undo that first.",
        ));
    }
    if matches!(state, LessonState::Given | LessonState::CutShort) {
        for attending in &before.students {
            head::must_not_have_kept(db, attending.student, before.day)?;
        }
    }
    store::settle(db, id, state, given, reason)?;
    if matches!(state, LessonState::Given | LessonState::CutShort) {
        // Of every student: the next lesson's tries are blocks of their own.
        blocks::end_with_lesson(db, id)?;
    }
    db.label(format!("Lesson {}: {}, {}", state.words(), before.names(), before.day.words()));
    show(db, Which { lesson: id })
}

/// Writes the lesson note.
///
/// # Errors
/// `NotFound`; `Refused` when a part is too long.
pub fn note(db: &Writing<'_>, note: NoteLesson) -> Result<Lesson> {
    let before = show(db, Which { lesson: note.lesson })?;
    let mut p = Problems::new();
    let done = p.note("done", &note.done, "What was done");
    let landed = p.note("landed", &note.landed, "The cue that landed");
    let next = p.note("next", &note.next, "What is next");
    p.done()?;
    store::note(db, note.lesson, &done, &landed, &next)?;
    db.label(format!("Lesson note: {}, {}", before.names(), before.day.words()));
    show(db, Which { lesson: note.lesson })
}

impl LessonState {
    /// As said on screen and in history.
    pub fn words(self) -> &'static str {
        match self {
            Self::Planned => "planned",
            Self::Given => "given",
            Self::CutShort => "cut short",
            Self::CalledOff => "called off",
            Self::Missed => "missed",
        }
    }
}
