//! A sport pack: the data of one sport, in a TOML file that a coach can read.
//!
//! [`read`] refuses a pack with everything that is wrong with it at once. Each fact names where it
//! comes from; "common practice, no source" and "from memory" are honest answers.

mod check;

use std::fmt;

use chrono::NaiveDate;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

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
    /// What the sources are, and what was not found.
    pub notes: Vec<String>,
    /// The groups of skills, in the order they are shown.
    pub groups: Vec<Group>,
    /// The skills.
    pub skills: Vec<Skill>,
    /// The level scale.
    pub levels: LevelScale,
    /// The court.
    pub court: Court,
    /// The scoring rule sets. Which one holds is chosen for each match.
    pub scoring: Vec<RuleSet>,
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

/// A court in inches: x from the left wall, y from the front wall, z from the floor.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackCourt")]
pub struct Court {
    /// From the left wall to the right wall.
    pub width: f64,
    /// From the front wall to the back wall.
    pub length: f64,
    /// From the floor to the ceiling.
    pub height: f64,
    /// What the ball can touch.
    pub surfaces: Vec<Surface>,
    /// The lines.
    pub lines: Vec<Line>,
    /// Where the size comes from.
    pub source: String,
}

/// A wall, the floor or the ceiling.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackSurface")]
pub struct Surface {
    /// Which one.
    pub id: SurfaceId,
    /// Its extent across, in inches.
    pub across: f64,
    /// Its other extent, in inches: up for a wall, along the court for floor and ceiling.
    pub along: f64,
    /// Whether the rules give `along` as a least height and the wall may be higher.
    #[serde(default)]
    pub at_least: bool,
}

/// The surfaces of a walled court.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum SurfaceId {
    /// The wall the ball is served to.
    Front,
    /// The left wall, seen facing the front wall.
    Left,
    /// The right wall, seen facing the front wall.
    Right,
    /// The wall behind the players.
    Back,
    /// The ceiling.
    Ceiling,
    /// The floor.
    Floor,
}

/// A line, given by the edge the rules measure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackLine")]
pub struct Line {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// The surface it is painted on.
    pub surface: SurfaceId,
    /// One end of the measured edge: x and y in inches.
    pub from: [f64; 2],
    /// The other end.
    pub to: [f64; 2],
    /// The width of the paint, in inches.
    pub width: f64,
    /// The edge `from` and `to` describe.
    pub measured: Edge,
    /// How it is broken, where it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub broken: Option<Broken>,
    /// Where it comes from.
    pub source: String,
}

/// An edge of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
#[schemars(rename = "PackEdge")]
pub enum Edge {
    /// The edge nearest the front wall.
    Front,
    /// The edge nearest the back wall.
    Back,
    /// The edge nearest the middle of the court.
    Inner,
}

/// How a broken line is made up: a piece at each wall, and between them gaps and dashes in turn.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Broken {
    /// The length of the piece at each wall, in inches.
    pub at_each_wall: f64,
    /// The number of gaps.
    pub gaps: u32,
    /// The length of a gap, in inches.
    pub gap: f64,
    /// The number of dashes between the gaps.
    pub dashes: u32,
    /// The length of a dash, in inches.
    pub dash: f64,
}

impl Broken {
    /// The length of the whole line, in inches.
    pub fn length(&self) -> f64 {
        2.0 * self.at_each_wall
            + f64::from(self.gaps) * self.gap
            + f64::from(self.dashes) * self.dash
    }
}

/// How matches are scored, for as long as it holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RuleSet {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// The first day it holds; left out where no source gives one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<String>")]
    pub from: Option<NaiveDate>,
    /// The last day it held; left out while it holds, or where no source gives one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(with = "Option<String>")]
    pub until: Option<NaiveDate>,
    /// Who can score.
    pub scoring: Scoring,
    /// The games in order, as many as can be played.
    pub games: Vec<Game>,
    /// How many games win the match.
    pub games_to_win: u8,
    /// Who serves first in the next game.
    pub next_server: NextServer,
    /// What the numbers leave out.
    #[serde(default)]
    pub notes: Vec<String>,
    /// Where it comes from.
    pub source: String,
}

impl RuleSet {
    /// Whether nothing known says that it did not hold on that day.
    pub fn may_hold_on(&self, day: NaiveDate) -> bool {
        self.from.is_none_or(|from| from <= day) && self.until.is_none_or(|until| day <= until)
    }
}

/// Who can score.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Scoring {
    /// Only the server; a rally lost by the server changes the service.
    Server,
    /// Whoever wins the rally.
    Rally,
}

/// When one game is won.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackGame")]
pub struct Game {
    /// The points that win it.
    pub to: u16,
    /// The lead it takes.
    pub win_by: u16,
}

/// Who serves first in the next game.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum NextServer {
    /// Who did not serve first in the game before.
    Other,
    /// The winner of the game before.
    Winner,
    /// It is asked for.
    Given,
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
}

/// Why a pack cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PackError {
    /// The text is no pack: where and why.
    Unreadable(String),
    /// It reads, and says things that cannot be.
    Unsound(Vec<String>),
}

impl fmt::Display for PackError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PackError::Unreadable(why) => write!(f, "this sport pack cannot be read: {why}"),
            PackError::Unsound(faults) => {
                write!(f, "this sport pack cannot be used: {}", faults.join("; "))
            }
        }
    }
}

impl std::error::Error for PackError {}

/// Reads a pack from the text of its TOML file and checks it.
///
/// ```
/// use carryover_core::sports::pack::{PackError, read};
/// assert!(matches!(read("name = "), Err(PackError::Unreadable(_))));
/// ```
pub fn read(text: &str) -> Result<Pack, PackError> {
    let pack: Pack =
        toml::from_str(text).map_err(|error| PackError::Unreadable(error.to_string()))?;
    let faults = check::faults(&pack);
    if faults.is_empty() { Ok(pack) } else { Err(PackError::Unsound(faults)) }
}

/// The JSON Schema of a pack, as committed beside the packs.
pub fn schema() -> String {
    let mut text = format!("{:#}", schemars::schema_for!(Pack).to_value());
    text.push('\n');
    text
}

#[cfg(test)]
mod tests;
