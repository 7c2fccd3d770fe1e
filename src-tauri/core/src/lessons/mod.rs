//! Lessons: timed meetings on a court, each part of the visit of its one or more students.

mod card;
mod clash;
mod effort;
mod life;
mod list;
mod plan;
mod plan_lines;
mod store;
mod when;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use card::{CardEntered, CardRow, Counted, EnterCard, card, enter_card};
pub use clash::{Clash, LookForClashes, Who, clashes};
pub use effort::{RateEffort, rate_effort};
pub use life::{CutShort, EndUntaught, NoteLesson, call_off, cut_short, give, miss, note};
pub use list::{ListLessons, list, show};
pub use plan::{ChangeLesson, PlanLesson, change, plan};
pub use plan_lines::{
    KeepTemplate, LessonLine, LessonPlan, SetPlanLines, Template, UseTemplate, keep_template,
    plan_lines, propose_plan, set_plan_lines, templates, use_template,
};

use crate::kinds::ids::{CourtId, FacilityId, LessonId, StudentId, VisitId};
use crate::kinds::{Day, Time};

/// Where a lesson is in its life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LessonState {
    /// To come.
    Planned,
    /// Taught in full.
    Given,
    /// Taught in part.
    CutShort,
    /// Called off before it began.
    CalledOff,
    /// The student did not come.
    Missed,
}

impl LessonState {
    /// Whether it was, or is to be, taught.
    pub fn takes_place(self) -> bool {
        !matches!(self, Self::CalledOff | Self::Missed)
    }
}

/// Which of the two hours, when the clocks go back and an hour comes twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WhichHour {
    /// The time comes once that day, as nearly always.
    Once,
    /// The first of the two.
    First,
    /// The second.
    Second,
}

/// A student in a lesson.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Attending {
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The visit it is part of.
    pub visit: VisitId,
    /// The student's own rating of the effort, 0 to 10; `None` while not told.
    pub effort: Option<u8>,
}

/// A lesson as stored.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Lesson {
    /// Which one.
    pub id: LessonId,
    /// Who comes.
    pub students: Vec<Attending>,
    /// Where.
    pub facility: FacilityId,
    /// The facility's name.
    pub place: String,
    /// The court, once known.
    pub court: Option<CourtId>,
    /// Its name, or empty.
    pub court_name: String,
    /// The facility's zone: the times below are on its clock.
    pub zone: String,
    /// The day.
    pub day: Day,
    /// When it begins.
    pub starts: Time,
    /// When it ends.
    pub ends: Time,
    /// Which hour, when it comes twice.
    pub which: WhichHour,
    /// Its planned length.
    pub minutes: u32,
    /// Where it is in its life.
    pub state: LessonState,
    /// Minutes taught, when cut short.
    pub given: Option<u32>,
    /// Why cut short, called off or missed.
    pub reason: String,
    /// The lesson note: what was done.
    pub done: String,
    /// The cue that landed.
    pub landed: String,
    /// What is next.
    pub next: String,
}

/// Which lesson.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The lesson.
    pub lesson: LessonId,
}

/// Every template.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AllTemplates {}

impl Lesson {
    /// "Ana Silva and Ben Costa".
    pub fn names(&self) -> String {
        let names: Vec<&str> = self.students.iter().map(|s| s.name.as_str()).collect();
        match names.as_slice() {
            [] => String::new(),
            [one] => (*one).to_owned(),
            [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
        }
    }

    /// Whether it takes up its time: it was not called off.
    pub fn stands(&self) -> bool {
        self.state != LessonState::CalledOff
    }
}
