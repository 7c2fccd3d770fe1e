//! A sport pack: the data of one sport, in a TOML file that a coach can read.
//!
//! [`read`] refuses a pack with everything that is wrong with it at once. Each fact names where it
//! comes from; "common practice, no source" and "from memory" are honest answers.

mod check;
mod court;
mod drills;
mod on_court;
mod read;
mod scoring;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::kinds::Language;

pub use court::{Broken, Court, Edge, Line, Net, Panel, PanelKind, Surface, SurfaceId, Unit, feet};
pub use drills::{Division, Drill, Progress};
pub use on_court::{Band, BandTable, Measure, OnCourtTest, SecondsPoints, TestPart};
pub use read::{Fault, PackError, read};
pub use scoring::{
    Deuce, Game, LastSet, NextServer, RuleSet, Rules, Scoring, SetRule, SetRuleSet, SetTiebreak,
};

/// The data of one sport.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Pack {
    /// A short name that never changes.
    pub id: String,
    /// The sport, as a person writes it.
    pub name: String,
    /// The version of the pack, such as `1`.
    pub version: String,
    /// The unit of every length in the pack.
    pub unit: Unit,
    /// What the sources are, and what was not found.
    pub notes: Vec<String>,
    /// The groups of skills, in the order they are shown.
    pub groups: Vec<Group>,
    /// The skills.
    pub skills: Vec<Skill>,
    /// The level scale.
    pub levels: LevelScale,
    /// The names of divisions and levels that associations use; never turned into one another.
    #[serde(default)]
    pub divisions: Vec<Division>,
    /// The court.
    pub court: Court,
    /// The rule sets that count points to a game. Which one holds is chosen for each match.
    #[serde(default)]
    pub scoring: Vec<RuleSet>,
    /// The rule sets that count points, games and sets.
    #[serde(default)]
    pub set_scoring: Vec<SetRuleSet>,
    /// Drills to plan a lesson from.
    #[serde(default)]
    pub drills: Vec<Drill>,
    /// Published tests on a court.
    #[serde(default)]
    pub tests: Vec<OnCourtTest>,
}

/// A group of skills.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Group {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
}

/// Something a student can work on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Skill {
    /// A short name that never changes.
    pub id: String,
    /// The id of its group.
    pub group: String,
    /// The name shown.
    pub name: String,
    /// Its name in German, for letters; empty where it has none.
    #[serde(default)]
    pub german: String,
    /// What makes a try a good one.
    pub good_try: String,
    /// The condition a first goal is practised under.
    pub condition: Condition,
    /// A cue to begin with.
    pub cue: String,
    /// Where the definition and the measure of a good try come from.
    pub source: String,
}

/// Under what a goal is practised, from the easiest to the hardest.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub enum Condition {
    /// The coach feeds the ball.
    #[serde(rename = "fed")]
    Fed,
    /// A rally is played out.
    #[serde(rename = "live")]
    Live,
    /// A game with a task or a limit.
    #[serde(rename = "set_game")]
    SetGame,
    /// A match that counts.
    #[serde(rename = "match")]
    Match,
}

impl Condition {
    /// As said on screen and in a letter.
    pub fn words(self) -> &'static str {
        match self {
            Self::Fed => "fed",
            Self::Live => "live",
            Self::SetGame => "set game",
            Self::Match => "match",
        }
    }
}

/// A scale of levels with written anchors.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LevelScale {
    /// The name of the scale.
    pub name: String,
    /// Its levels, from 0 up.
    pub anchors: Vec<Anchor>,
    /// Where it comes from.
    pub source: String,
}

/// What one level means.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackAnchor")]
pub struct Anchor {
    /// The level, 0 to 4.
    pub level: u8,
    /// Its name.
    pub name: String,
    /// What is seen at this level.
    pub words: String,
}

impl Skill {
    /// Its name in a language; the name shown where it has none.
    pub fn name_in(&self, language: Language) -> &str {
        match language {
            Language::De if !self.german.is_empty() => &self.german,
            Language::En | Language::De => &self.name,
        }
    }
}

impl Pack {
    /// The skill of that id.
    pub fn find_skill(&self, id: &str) -> Option<&Skill> {
        self.skills.iter().find(|skill| skill.id == id)
    }

    /// The skills of a group, in the order of the pack.
    pub fn skills_of<'a>(&'a self, group: &'a str) -> impl Iterator<Item = &'a Skill> {
        self.skills.iter().filter(move |skill| skill.group == group)
    }

    /// The line of that id.
    pub fn find_line(&self, id: &str) -> Option<&Line> {
        self.court.lines.iter().find(|line| line.id == id)
    }

    /// The drill of that id.
    pub fn find_drill(&self, id: &str) -> Option<&Drill> {
        self.drills.iter().find(|drill| drill.id == id)
    }

    /// The drills that serve a skill, in the order of the pack.
    pub fn drills_for<'a>(&'a self, skill: &'a str) -> impl Iterator<Item = &'a Drill> {
        self.drills.iter().filter(move |drill| drill.skills.iter().any(|id| id == skill))
    }

    /// The published test of that id.
    pub fn find_test(&self, id: &str) -> Option<&OnCourtTest> {
        self.tests.iter().find(|test| test.id == id)
    }

    /// Every rule set, those that count points to a game first.
    pub fn rules(&self) -> impl Iterator<Item = Rules<'_>> {
        let points = self.scoring.iter().map(Rules::Points);
        points.chain(self.set_scoring.iter().map(Rules::Sets))
    }

    /// The rule set of that id.
    pub fn find_rules(&self, id: &str) -> Option<Rules<'_>> {
        self.rules().find(|rules| rules.id() == id)
    }
}

/// The JSON Schema of a pack, as committed beside the packs.
pub fn schema() -> String {
    let mut text = format!("{:#}", schemars::schema_for!(Pack).to_value());
    text.push('\n');
    text
}

#[cfg(test)]
mod tests;
