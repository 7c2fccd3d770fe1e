//! Taking a plan: its lines become lessons, all in one act.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::PlanPlace;
use crate::app::Writing;
use crate::error::{Error, Result};
use crate::facilities;
use crate::kinds::text::counted;
use crate::lessons::{self, Lesson, PlanLesson, WhichHour};

/// Lines to take.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeLines {
    /// Those that are no lessons yet, each with its length in minutes.
    pub lines: Vec<TakeLine>,
}

/// A line to take.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeLine {
    /// Where and when.
    pub place: PlanPlace,
    /// How long, in minutes.
    pub minutes: u32,
}

/// Makes lessons of a plan's lines; a line that several share becomes one lesson of all of them.
///
/// # Errors
/// `Refused` when there are none, or a line cannot be a lesson: then none becomes one.
pub fn take(db: &Writing<'_>, take: TakeLines) -> Result<Vec<Lesson>> {
    if take.lines.is_empty() {
        return Err(Error::field("lines", "empty", "There is no line to take."));
    }
    let mut made = Vec::new();
    for TakeLine { place, minutes } in take.lines {
        let facility = facilities::of_court(db, place.court)?;
        made.push(lessons::plan(
            db,
            PlanLesson {
                visits: std::iter::once(place.visit).chain(place.with).collect(),
                facility,
                court: Some(place.court),
                day: place.day.to_string(),
                starts: place.starts.to_string(),
                which: WhichHour::Once,
                minutes: i64::from(minutes),
            },
        )?);
    }
    let many = i64::try_from(made.len()).unwrap_or(0);
    db.label(format!("{} planned", counted(many, "lesson", "lessons")));
    Ok(made)
}
