//! Focus goals: what is worked on, the blocks of tries at it, and what they show. A goal's state is
//! derived from its blocks and decisions ([`state`]); nobody types it over. Practice is not
//! learning, so a goal is closed not when it is met but when it is kept: reached again at a later
//! visit before any coaching.

pub mod blocks;
pub mod carry;
pub mod chart;
pub mod court;
pub mod decide;
pub mod landed;
pub mod look_back;
pub mod misses;
pub mod numbers;
pub mod raise;
pub mod repeated;
pub mod set;
pub mod show;
pub mod standing;
pub mod state;
mod store;
pub mod weigh;

pub use crate::sports::pack::Condition;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::kinds::Day;
use crate::kinds::ids::{BlockId, DecisionId, GoalId, LessonId, StudentId, VisitId};
use crate::kinds::text::counted;
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

/// The kinds of criterion.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CriterionKind {
    /// So many of so many tries.
    #[default]
    Of,
    /// A rate, with the least number of chances it is worth anything over.
    Rate,
    /// At most so many a game, in each of the last whole games.
    AtMost,
}

/// When a goal is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Criterion {
    /// Its kind.
    pub kind: CriterionKind,
    /// How many must be made; of a rate, in a hundred; of `at_most`, the most a game.
    pub need: u32,
    /// Of how many tries; of a rate, 100; of `at_most`, in how many games running.
    pub of: u32,
    /// Of a rate: the least number of chances.
    pub least: Option<u32>,
}

/// Misses put down to one reason.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Miss {
    /// The reason, in the coach's words.
    pub reason: String,
    /// How many misses.
    pub times: u32,
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
    /// The second fact, where the goal counts two apart: of the tries that count, how many had it.
    pub also: Option<u32>,
    /// Where the block is one whole game: how often it happened in it.
    pub in_game: Option<u32>,
    /// What the misses were put down to, where the coach said.
    pub misses: Vec<Miss>,
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
    /// The day on which the coach saw this cue land, if it did.
    pub landed: Option<Day>,
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
    /// The second fact that is counted apart, if any: the result beside the choice, or the choice
    /// beside the result.
    pub apart: Option<Counts>,
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

impl Block {
    /// Whether anything was tried in it, counted or not.
    pub fn was_tried(&self) -> bool {
        self.count.tries > 0 || !self.tries.is_empty() || self.in_game.is_some()
    }
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
    /// So many of so many tries.
    pub fn of_tries(need: u32, of: u32) -> Self {
        Self { kind: CriterionKind::Of, need, of, least: None }
    }

    /// A rate in a hundred over at least so many chances.
    pub fn rate(percent: u32, least: u32) -> Self {
        Self { kind: CriterionKind::Rate, need: percent, of: 100, least: Some(least) }
    }

    /// At most so many a game, in each of the last games.
    pub fn at_most(most: u32, games: u32) -> Self {
        Self { kind: CriterionKind::AtMost, need: most, of: games, least: None }
    }

    /// The share that must be made; `None` where whole games are counted.
    pub fn share(self) -> Option<f64> {
        (self.kind != CriterionKind::AtMost && self.of > 0)
            .then(|| f64::from(self.need) / f64::from(self.of))
    }

    /// Whether a count stands at or above the criterion's share, however many tries it has. Never
    /// where whole games are counted.
    pub fn share_reached_by(self, count: Count) -> bool {
        self.kind != CriterionKind::AtMost
            && count.tries > 0
            && u64::from(count.made) * u64::from(self.of)
                >= u64::from(self.need) * u64::from(count.tries)
    }

    /// How many tries it asks for; `None` where whole games are counted.
    pub fn tries(self) -> Option<u32> {
        match self.kind {
            CriterionKind::Of => Some(self.of),
            CriterionKind::Rate => self.least,
            CriterionKind::AtMost => None,
        }
    }

    /// Whether a count has fewer tries than the criterion asks for.
    pub fn is_short(self, count: Count) -> bool {
        self.tries().is_some_and(|asked| count.tries < asked)
    }

    /// "8 of 10", "70 % of at least 15 chances", "at most 3 a game, 3 games running".
    pub fn words(self) -> String {
        match self.kind {
            CriterionKind::Of => format!("{} of {}", self.need, self.of),
            CriterionKind::Rate => format!(
                "{} % of at least {}",
                self.need,
                counted(i64::from(self.least.unwrap_or(1)), "chance", "chances")
            ),
            CriterionKind::AtMost if self.of == 1 => format!("at most {} a game", self.need),
            CriterionKind::AtMost => {
                format!("at most {} a game, {} games running", self.need, self.of)
            }
        }
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
