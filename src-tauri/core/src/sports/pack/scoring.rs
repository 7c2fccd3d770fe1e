//! How matches are scored: dated rule sets that count points to a game, or points, games and sets.

use chrono::NaiveDate;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How matches of point games are scored, for as long as it holds.
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
    /// Doubles in which both of a side serve before the service goes over; the side that serves
    /// first in a game has one server only.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub both_serve: bool,
    /// What the numbers leave out.
    #[serde(default)]
    pub notes: Vec<String>,
    /// Where it comes from.
    pub source: String,
}

impl RuleSet {
    /// Whether nothing known says that it did not hold on that day.
    pub fn may_hold_on(&self, day: NaiveDate) -> bool {
        holds(self.from, self.until, day)
    }
}

fn holds(from: Option<NaiveDate>, until: Option<NaiveDate>, day: NaiveDate) -> bool {
    from.is_none_or(|from| from <= day) && until.is_none_or(|until| day <= until)
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

/// When one game, or one tiebreak, is won.
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

/// How matches of sets are scored, for as long as it holds. A game is won by four points and a lead
/// of two, except as `deuce` says; the service changes with every game.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetRuleSet {
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
    /// How many sets win the match.
    pub sets_to_win: u8,
    /// How a set is won.
    pub set: SetRule,
    /// What is played instead when the next set decides the match; left out where it is a set like
    /// the others.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last_set: Option<LastSet>,
    /// What happens at deuce.
    pub deuce: Deuce,
    /// What the numbers leave out.
    #[serde(default)]
    pub notes: Vec<String>,
    /// Where it comes from.
    pub source: String,
}

impl SetRuleSet {
    /// Whether nothing known says that it did not hold on that day.
    pub fn may_hold_on(&self, day: NaiveDate) -> bool {
        holds(self.from, self.until, day)
    }
}

/// How a set is won.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetRule {
    /// The games that win it.
    pub games: u16,
    /// The lead it takes.
    pub win_by: u16,
    /// The tiebreak that ends a level set; left out where the set goes on until the lead is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tiebreak: Option<SetTiebreak>,
}

/// The tiebreak of a set. Who wins it wins the set by one game.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetTiebreak {
    /// The games each side has when it is played.
    pub at: u16,
    /// The points that win it.
    pub to: u16,
    /// The lead it takes.
    pub win_by: u16,
}

/// What is played instead of a last set: exactly one of the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LastSet {
    /// A set by other rules.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set: Option<SetRule>,
    /// One long tiebreak in place of the set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tiebreak: Option<Game>,
}

/// What happens when both sides have three points in a game.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Deuce {
    /// The next point gives the advantage; two in a row win the game.
    Advantage,
    /// The next point wins the game; the receivers choose the side.
    DecidingPoint,
    /// Two advantages at most; the third deuce is a deciding point, the receivers choose the side.
    StarPoint,
}

/// A rule set of either kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rules<'a> {
    /// Points to a game.
    Points(&'a RuleSet),
    /// Points, games and sets.
    Sets(&'a SetRuleSet),
}

impl<'a> Rules<'a> {
    /// The short name that never changes.
    pub fn id(self) -> &'a str {
        match self {
            Self::Points(rules) => &rules.id,
            Self::Sets(rules) => &rules.id,
        }
    }

    /// The name shown.
    pub fn name(self) -> &'a str {
        match self {
            Self::Points(rules) => &rules.name,
            Self::Sets(rules) => &rules.name,
        }
    }

    /// Whether nothing known says that it did not hold on that day.
    pub fn may_hold_on(self, day: NaiveDate) -> bool {
        match self {
            Self::Points(rules) => rules.may_hold_on(day),
            Self::Sets(rules) => rules.may_hold_on(day),
        }
    }
}
