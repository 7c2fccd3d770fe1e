//! Going on although something is missing: with a reason, which is kept beside what was missing.

use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Ready, ReadyFor, ReadyState, WentOn, before_first, of_lesson};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::intake::{OfStudent, head};
use crate::kinds::Day;
use crate::kinds::ids::{LessonId, StudentId};
use crate::lessons;

/// To go on all the same.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GoOn {
    /// Who.
    pub student: StudentId,
    /// In which lesson; left out on a day without a planned one.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// Why.
    pub reason: String,
}

/// Writes down why the coach goes on although something is missing.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` after a blow to the head before a
/// clearance, and when nothing is missing.
pub fn go_on(db: &Writing<'_>, on: GoOn) -> Result<Ready> {
    let day = match on.lesson {
        Some(lesson) => lessons::show(db, lessons::Which { lesson })?.day,
        None => db.today(),
    };
    let before = find(db, &on)?;
    head::must_not_keep(db, on.student, day)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &on.reason, "The reason");
    p.done()?;
    if before.state == ReadyState::Ready {
        return Err(Error::not_possible("ready", "Nothing is missing, so no reason is needed."));
    }
    let missing: Vec<&str> = before.missing.iter().map(|item| item.words.as_str()).collect();
    let missing = serde_json::to_string(&missing).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO went_on (id, student, lesson, day, at, reason, missing) VALUES (?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET at = excluded.at, reason = excluded.reason, missing = excluded.missing",
        params![
            key(on.student, on.lesson, day), on.student, on.lesson, day, db.now().to_string(), reason, missing
        ],
    )?;
    db.label(format!("Went on although not ready: {}, {}", before.name, day.words()));
    find(db, &on)
}

fn find(db: &Reading<'_>, on: &GoOn) -> Result<Ready> {
    let Some(lesson) = on.lesson else {
        return before_first(db, OfStudent { student: on.student });
    };
    of_lesson(db, ReadyFor { lesson })?
        .into_iter()
        .find(|ready| ready.student == on.student)
        .ok_or_else(|| Error::NotFound { what: "student", id: on.student.to_string() })
}

fn key(student: StudentId, lesson: Option<LessonId>, day: Day) -> String {
    match lesson {
        Some(lesson) => format!("{student}:{lesson}"),
        None => format!("{student}:{day}"),
    }
}

pub(super) fn of(
    db: &Reading<'_>,
    student: StudentId,
    lesson: Option<LessonId>,
    day: Day,
) -> Result<Option<WentOn>> {
    let kept = db.one(
        "SELECT at, reason, missing FROM went_on WHERE id = ?",
        [key(student, lesson, day)],
        |row| Ok((row.get("at")?, row.get("reason")?, row.get::<_, String>("missing")?)),
    )?;
    kept.map(|(at, reason, missing)| {
        let missing = serde_json::from_str(&missing).map_err(|e| Error::Fault(e.to_string()))?;
        Ok(WentOn { at, reason, missing })
    })
    .transpose()
}
