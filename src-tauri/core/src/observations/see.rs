//! Seeing something: for the first time, or again.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Observation, ObservationKind, Sighting, Which, show, store};
use crate::app::Writing;
use crate::error::{Problems, Result};
use crate::kinds::ids::{LessonId, ObservationId, StudentId, VisitId};
use crate::students;
use crate::visits::day_at;

/// Something seen, in the coach's words. Seen before in the same words, it is the same thing again.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SeeNew {
    /// Whose.
    pub student: StudentId,
    /// Strength or fault.
    pub kind: ObservationKind,
    /// What was seen.
    pub words: String,
    /// A skill of the pack or of the coach's own; empty for none.
    #[serde(default)]
    pub skill: String,
    /// The visit; left out between visits.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// The lesson, if any.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// Where in play; empty where it does not matter.
    #[serde(default)]
    pub place: String,
    /// The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
}

/// The same thing, seen again.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SeeAgain {
    /// What.
    pub observation: ObservationId,
    /// The visit; left out between visits.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// The lesson, if any.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// Where in play; empty where it does not matter.
    #[serde(default)]
    pub place: String,
    /// The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
}

/// Writes down something seen.
///
/// # Errors
/// `NotFound`; `Refused` when it says nothing or the day is none; `NotPossible` at a visit that was
/// not started.
pub fn see(db: &Writing<'_>, see: SeeNew) -> Result<Observation> {
    let student = students::show(db, students::Which { student: see.student })?;
    let mut p = Problems::new();
    let words = p.name("words", &see.words, "What was seen");
    let skill = p.line("skill", &see.skill, "The skill");
    p.done()?;
    let known = store::find_same(db, student.id, see.kind, &skill, &words)?;
    let observation = match known {
        Some(id) => id,
        None => store::insert(db, student.id, see.kind, &skill, &words)?,
    };
    let at = At { visit: see.visit, lesson: see.lesson, place: &see.place, day: &see.day };
    sighted(db, observation, student.id, &at)?;
    db.label(format!("Seen: {words}"));
    show(db, Which { observation })
}

/// Writes down that something was seen again.
///
/// # Errors
/// As [`see`].
pub fn see_again(db: &Writing<'_>, see: SeeAgain) -> Result<Observation> {
    let known = show(db, Which { observation: see.observation })?;
    let at = At { visit: see.visit, lesson: see.lesson, place: &see.place, day: &see.day };
    sighted(db, known.id, known.student, &at)?;
    db.label(format!("Seen again: {}", known.words));
    show(db, Which { observation: known.id })
}

/// Where and when, as typed.
struct At<'a> {
    visit: Option<VisitId>,
    lesson: Option<LessonId>,
    place: &'a str,
    day: &'a str,
}

fn sighted(
    db: &Writing<'_>,
    observation: ObservationId,
    student: StudentId,
    at: &At<'_>,
) -> Result<()> {
    let nearest = day_at(db, student, at.visit)?;
    let mut p = Problems::new();
    let place = p.line("place", at.place, "Where it was seen");
    let day = p.day_or_none("day", Some(at.day), "The day").unwrap_or(nearest);
    p.done()?;
    store::insert_sighting(
        db,
        observation,
        &Sighting { day, visit: at.visit, lesson: at.lesson, place },
    )
}
