//! The home plan: what a student does between visits, set at a visit's end, and the report back,
//! which is always as told by the student and never moves a goal.

mod paper;
mod plan;
mod show;
mod store;
mod tell;
mod words;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use paper::document;
pub use plan::{PlanHome, PlanLine, plan};
pub use show::{LastOf, last, of_visit, show};
pub use tell::{TellHome, tell};
pub use words::line as line_words;

use crate::kinds::Day;
use crate::kinds::ids::{GoalId, HomeLineId, HomePlanId, StudentId, VisitId};

/// What an amount counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HomeUnit {
    /// Tries.
    Tries,
    /// Minutes.
    Minutes,
}

/// A line of a home plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HomeLine {
    /// Which one.
    pub id: HomeLineId,
    /// The goal it works for, if any.
    pub goal: Option<GoalId>,
    /// That goal's title; empty without one.
    pub title: String,
    /// The shot or exercise.
    pub what: String,
    /// How much at a time.
    pub amount: u32,
    /// What the amount counts.
    pub unit: HomeUnit,
    /// How often a week.
    pub a_week: u32,
    /// The whole line in words: "Lob serve: 20 tries, three times a week".
    pub words: String,
    /// What the student told of it; empty while nothing was told.
    pub told: String,
    /// The day it was told.
    pub told_on: Option<Day>,
}

/// A home plan as it stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HomePlan {
    /// Which one.
    pub id: HomePlanId,
    /// Whose.
    pub student: StudentId,
    /// The visit after which it is done.
    pub visit: VisitId,
    /// When that visit was, in words.
    pub when: String,
    /// The standing warm-up, as it was then.
    pub warm_up: String,
    /// What else is to be said.
    pub note: String,
    /// Its lines, in order.
    pub lines: Vec<HomeLine>,
}

/// A line that a carried goal suggests, to take or change.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ProposedLine {
    /// The goal.
    pub goal: GoalId,
    /// Its title.
    pub title: String,
    /// The shot, as the goal names it.
    pub what: String,
    /// How much at a time: as many tries as the goal's criterion asks for, or twenty.
    pub amount: u32,
    /// Tries.
    pub unit: HomeUnit,
    /// How often a week: three times, to begin with. Common practice, no source.
    pub a_week: u32,
    /// Why the goal goes on.
    pub why: String,
}

/// A visit's plan, or what one would begin with.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HomeOfVisit {
    /// The plan; `None` while there is none.
    pub plan: Option<HomePlan>,
    /// The warm-up a new plan begins with: that of the student's last plan.
    pub warm_up: String,
    /// Lines for the goals that go on and are in no line yet.
    pub proposals: Vec<ProposedLine>,
}

/// Which visit's plan.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfVisit {
    /// The visit.
    pub visit: VisitId,
}
