//! Focus goals: what is worked on, the blocks of tries at it, and what they show. A goal's state is
//! derived from its blocks and decisions ([`state`]); nobody types it over. Practice is not
//! learning, so a goal is closed not when it is met but when it is kept: reached again at a later
//! visit before any coaching.

pub mod blocks;
pub mod carry;
pub mod chart;
pub mod court;
pub mod decide;
pub mod numbers;
pub mod raise;
pub mod set;
pub mod show;
pub mod state;
mod store;
pub mod weigh;

pub use crate::sports::pack::Condition;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::kinds::Day;
use crate::kinds::ids::{BlockId, DecisionId, GoalId, LessonId, StudentId, VisitId};
use numbers::Count;

/// The one thing that counts as a yes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Counts {
    /// The cue was kept, wherever the ball went.
    Cue,
    /// The result.
    Result,
    /// The choice of shot.
    Choice,
}

/// What a block is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// The first block of a carried goal, before any coaching of it.
    Retest,
    /// Practice: shown, and never moves a state.
    Practice,
    /// Named as a test before it starts.
    EndTest,
    /// Another look at a kept goal.
    LookBack,
}

/// How a count came to be known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// One touch a try.
    CountedLive,
    /// A total entered after the block.
    TotalEntered,
    /// Chances in a game that was written down.
    GameChances,
    /// Told by the student: shown, and never moves a state.
    Told,
}

/// k of n.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Criterion {
    /// How many must be made …
    pub need: u32,
    /// … of how many.
    pub of: u32,
}

/// A block of tries.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Block {
    /// Which one.
    pub id: BlockId,
    /// The goal tried at.
    pub goal: GoalId,
    /// The visit it was at.
    pub visit: VisitId,
    /// The lesson it was in, if any.
    pub lesson: Option<LessonId>,
    /// Its order among the goal's blocks at the visit.
    pub place: u32,
    /// What it is for.
    pub kind: Kind,
    /// The condition it was played under.
    pub condition: Condition,
    /// How the count came to be known.
    pub source: Source,
    /// The day it was played.
    pub day: Day,
    /// First tries that are not counted.
    pub uncounted: u32,
    /// The tries counted live, in order, those not counted included.
    pub tries: Vec<bool>,
    /// What counts.
    pub count: Count,
    /// Whether it was ended.
    pub ended: bool,
}

/// What the coach decided about a goal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Choice {
    /// Carry it to the next visit.
    CarryOn,
    /// A harder goal takes its place.
    Raise,
    /// Done with it, for a reason.
    Close,
    /// Not for now, for a reason.
    SetAside,
    /// Taken up again.
    TakeUp,
}

/// A decision.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Decision {
    /// Which one.
    pub id: DecisionId,
    /// The visit at whose end it was taken; `None` between visits.
    pub visit: Option<VisitId>,
    /// The day.
    pub day: Day,
    /// What was decided.
    pub kind: Choice,
    /// Why.
    pub reason: String,
    /// For a raise: the new goal.
    pub raised_to: Option<GoalId>,
}

/// The words in force from a day on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Words {
    /// From this day.
    pub since: Day,
    /// What the student tells themselves.
    pub cue: String,
    /// Where the ball should go, in words.
    pub aim: String,
}

/// A focus goal as stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Goal {
    /// Which one.
    pub id: GoalId,
    /// Whose.
    pub student: StudentId,
    /// Its title, as in "Lob serve, first bounce short of the line".
    pub title: String,
    /// A skill of the pack or of the coach's own; empty for none.
    pub skill: String,
    /// The condition it is tried under.
    pub condition: Condition,
    /// What counts as a yes.
    pub counts: Counts,
    /// When it is reached.
    pub criterion: Criterion,
    /// First tries of a retest that are not counted.
    pub uncounted: u32,
    /// Order of priority, 1 first.
    pub rank: u32,
    /// The day it was set.
    pub set_on: Day,
    /// The goal it was raised from.
    pub came_from: Option<GoalId>,
    /// Its words, oldest first; the last are in force.
    pub words: Vec<Words>,
}

/// Which goal.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The goal.
    pub goal: GoalId,
}

impl Goal {
    /// The cue in force.
    pub fn cue(&self) -> &str {
        self.words.last().map_or("", |words| &words.cue)
    }

    /// The aim in force.
    pub fn aim(&self) -> &str {
        self.words.last().map_or("", |words| &words.aim)
    }
}

impl Criterion {
    /// Whether a count stands at or above the criterion's share, however many tries it has.
    pub fn share_reached_by(self, count: Count) -> bool {
        count.tries > 0
            && u64::from(count.made) * u64::from(self.of)
                >= u64::from(self.need) * u64::from(count.tries)
    }

    /// Whether a count has fewer tries than the criterion asks for.
    pub fn is_short(self, count: Count) -> bool {
        count.tries < self.of
    }

    /// "8 of 10".
    pub fn words(self) -> String {
        format!("{} of {}", self.need, self.of)
    }
}

impl Kind {
    /// As said on screen and in a letter.
    pub fn words(self) -> &'static str {
        match self {
            Self::Retest => "retest",
            Self::Practice => "practice",
            Self::EndTest => "end test",
            Self::LookBack => "look back",
        }
    }
}

/// "8 of 10".
pub fn count_words(count: Count) -> String {
    format!("{} of {}", count.made, count.tries)
}
