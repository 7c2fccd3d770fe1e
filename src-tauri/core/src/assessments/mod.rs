//! Assessments: levels on skills at a date, by the written scale of a sport pack, and published
//! tests taken on court. A level that rests on counted tries is evidence; any other is the coach's
//! opinion, and says so.

mod levels;
mod list;
mod norms;
mod store;
mod tests_taken;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use levels::{Assess, ChangeLevel, LevelGiven, assess, change_level};
pub use list::{OfStudent, list};
pub use norms::{GiveNorms, Norms, NormsOf, TestNorms, give_norms, norms};
pub use tests_taken::{PartCounted, TakeTest, TestTaken, take_test, tests};

use crate::kinds::Day;
use crate::kinds::ids::{AssessmentId, StudentId, VisitId};

/// What a level rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Tries counted at a goal with this skill, on or before the day.
    Evidence,
    /// The coach's opinion.
    Opinion,
}

/// A level on one skill, and the time before.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Level {
    /// The skill: a pack's id or one of the coach's own.
    pub skill: String,
    /// Its name.
    pub name: String,
    /// The level, 0 to 4.
    pub level: u8,
    /// The level's name and what is seen at it, as the pack has them.
    pub anchor: String,
    /// What it rests on.
    pub basis: Basis,
    /// A word about it.
    pub note: String,
    /// The level the time before, and the day of it.
    pub before: Option<(u8, Day)>,
}

/// Levels at a date.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Assessment {
    /// Which one.
    pub id: AssessmentId,
    /// Whose.
    pub student: StudentId,
    /// The visit, if it was at one.
    pub visit: Option<VisitId>,
    /// The day.
    pub day: Day,
    /// The sport whose scale it uses.
    pub sport: String,
    /// A word about it.
    pub note: String,
    /// The levels, in the order of the sport's skills.
    pub levels: Vec<Level>,
}

/// The highest level of the scale; the lowest is 0.
pub const TOP: u8 = 4;
