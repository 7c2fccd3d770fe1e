//! Planning a lesson by hand, and moving it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::when::{self, Asked};
use super::{Lesson, LessonState, Which, WhichHour, show, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::facilities;
use crate::kinds::ids::{CourtId, FacilityId, LessonId, VisitId};
use crate::kinds::{Day, Time};
use crate::visits::{self, Stage};

/// A lesson to plan.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanLesson {
    /// The visits it is part of: one for each student.
    pub visits: Vec<VisitId>,
    /// Where.
    pub facility: FacilityId,
    /// The court, once known.
    #[serde(default)]
    pub court: Option<CourtId>,
    /// The day, as YYYY-MM-DD.
    pub day: String,
    /// When it begins on the facility's clock, as HH:MM.
    pub starts: String,
    /// Which hour, where the clocks go back and it comes twice.
    #[serde(default = "once")]
    pub which: WhichHour,
    /// Its length in minutes.
    pub minutes: i64,
}

fn once() -> WhichHour {
    WhichHour::Once
}

/// A lesson to move.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeLesson {
    /// Which one.
    pub lesson: LessonId,
    /// Where.
    pub facility: FacilityId,
    /// The court, once known.
    #[serde(default)]
    pub court: Option<CourtId>,
    /// The day, as YYYY-MM-DD.
    pub day: String,
    /// When it begins on the facility's clock, as HH:MM.
    pub starts: String,
    /// Which hour, where the clocks go back and it comes twice.
    #[serde(default = "once")]
    pub which: WhichHour,
    /// Its length in minutes.
    pub minutes: i64,
}

/// When and where a lesson is, as it can be stored.
pub(super) struct Slot {
    pub facility: FacilityId,
    pub court: Option<CourtId>,
    pub day: Day,
    pub starts: Time,
    pub which: WhichHour,
    pub minutes: u32,
}

/// Plans a lesson. Clashes with other lessons are warned of ([`super::clashes`]), not refused.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: among them a day outside a visit, a time
/// the clocks skip (with the next one that exists) or one that comes twice and was not told apart.
pub fn plan(db: &Writing<'_>, plan: PlanLesson) -> Result<Lesson> {
    if plan.visits.is_empty() {
        return Err(Error::field("visits", "empty", "A lesson needs at least one student."));
    }
    let mut attending = Vec::new();
    for visit in &plan.visits {
        attending.push(visits::show(db, visits::Which { visit: *visit })?);
    }
    let asked = Asked {
        facility: plan.facility,
        court: plan.court,
        day: plan.day,
        starts: plan.starts,
        which: plan.which,
        minutes: plan.minutes,
    };
    let slot = read(db, &asked, &attending)?;
    let lesson = db.id();
    store::insert(db, lesson, &slot)?;
    for visit in &attending {
        store::attend(db, lesson, visit.student, visit.id)?;
    }
    let lesson = show(db, Which { lesson })?;
    db.label(format!(
        "Lesson planned: {}, {} {}",
        lesson.names(),
        lesson.day.words(),
        lesson.starts
    ));
    Ok(lesson)
}

/// Moves a lesson that is still to come.
///
/// # Errors
/// As [`plan`]; `NotPossible` when it was given, missed or called off.
pub fn change(db: &Writing<'_>, change: ChangeLesson) -> Result<Lesson> {
    let before = show(db, Which { lesson: change.lesson })?;
    if before.state != LessonState::Planned {
        return Err(Error::not_possible(
            "over",
            "Only a lesson that is still to come can be moved.",
        ));
    }
    let mut attending = Vec::new();
    for student in &before.students {
        attending.push(visits::show(db, visits::Which { visit: student.visit })?);
    }
    let asked = Asked {
        facility: change.facility,
        court: change.court,
        day: change.day,
        starts: change.starts,
        which: change.which,
        minutes: change.minutes,
    };
    let slot = read(db, &asked, &attending)?;
    store::update(db, change.lesson, &slot)?;
    let lesson = show(db, Which { lesson: change.lesson })?;
    db.label(format!("Lesson moved: {}, {} {}", lesson.names(), lesson.day.words(), lesson.starts));
    Ok(lesson)
}

fn read(db: &Writing<'_>, asked: &Asked, attending: &[visits::Visit]) -> Result<Slot> {
    let facility = facilities::show(db, facilities::Which { facility: asked.facility })?;
    let mut p = Problems::new();
    let slot = when::read(&mut p, asked, &facility);
    if !p.any() {
        for visit in attending {
            let inside = visit.days.is_some_and(|days| days.holds(slot.day));
            if !inside {
                p.add(
                    "day",
                    "outside_visit",
                    format!(
                        "{} is not here on that day: the visit is {}.",
                        visit.name,
                        visit.when()
                    ),
                );
            }
            if matches!(visit.stage, Stage::Closed | Stage::CalledOff) {
                p.add("visits", "over", format!("{}\u{2019}s visit is over.", visit.name));
            }
        }
    }
    p.done()?;
    Ok(slot)
}
