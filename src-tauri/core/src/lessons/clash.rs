//! Clashes: lessons at the same time that need the same coach, student or court. They are warned
//! of, never refused: the coach may know better.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::{ListLessons, list};
use super::when;
use super::{Lesson, WhichHour};
use crate::app::Reading;
use crate::error::Result;
use crate::facilities;
use crate::kinds::ids::{CourtId, FacilityId, LessonId, StudentId};
use crate::kinds::{Day, Time};

/// A time to look at.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LookForClashes {
    /// Who would come.
    pub students: Vec<StudentId>,
    /// Where.
    pub facility: FacilityId,
    /// The court, once known.
    #[serde(default)]
    pub court: Option<CourtId>,
    /// The day.
    pub day: Day,
    /// When it would begin on the facility's clock.
    pub starts: Time,
    /// Its length in minutes.
    pub minutes: u32,
    /// The lesson that is being moved, so that it does not clash with itself.
    #[serde(default)]
    pub itself: Option<LessonId>,
}

/// Who or what cannot be in two places.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Who {
    /// The coach.
    Coach,
    /// A student.
    Student,
    /// The court.
    Court,
}

/// A clash.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Clash {
    /// Who or what.
    pub who: Who,
    /// With which lesson.
    pub with: LessonId,
    /// In words.
    pub words: String,
}

/// Looks for clashes of a time with the lessons that stand.
///
/// # Errors
/// `NotFound`.
pub fn clashes(db: &Reading<'_>, look: LookForClashes) -> Result<Vec<Clash>> {
    let facility = facilities::show(db, facilities::Which { facility: look.facility })?;
    let Some(start) = when::instant(look.day, look.starts, WhichHour::First, &facility.place.zone)
    else {
        return Ok(Vec::new());
    };
    let end = start + chrono::Duration::minutes(i64::from(look.minutes));
    // A day to either side: another facility's clock may show another date.
    let near =
        ListLessons { visit: None, from: Some(look.day.plus(-1)), to: Some(look.day.plus(1)) };
    let mut found = Vec::new();
    for other in list(db, near)?.iter().filter(|l| l.stands() && Some(l.id) != look.itself) {
        let Some((begins, ends)) = other.held() else { continue };
        if begins < end && start < ends {
            found.extend(between(&look, other));
        }
    }
    Ok(found)
}

fn between(look: &LookForClashes, other: &Lesson) -> Vec<Clash> {
    let time = format!("{} – {}", other.starts, other.ends);
    let clash = |who, words| Clash { who, with: other.id, words };
    let mut found = Vec::new();
    let twice = other.students.iter().filter(|s| look.students.contains(&s.student));
    found.extend(
        twice.map(|s| clash(Who::Student, format!("{} has another lesson then: {time}.", s.name))),
    );
    if look.court.is_some() && look.court == other.court {
        found.push(clash(
            Who::Court,
            format!("{} is taken then: {}, {time}.", other.court_name, other.names()),
        ));
    }
    found.push(clash(
        Who::Coach,
        format!("You are teaching {} then: {time}, {}.", other.names(), other.place),
    ));
    found
}
