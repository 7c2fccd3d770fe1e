//! Published tests on a court: how each is done, what it can score, and its printed tables.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A test with a published procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OnCourtTest {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// How it is done, step by step.
    pub procedure: Vec<String>,
    /// What its result counts.
    pub measure: Measure,
    /// Its parts.
    pub parts: Vec<TestPart>,
    /// The most points it can give; left out where nothing limits it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<u32>,
    /// The printed tables from a result to a level; none where no norms were found, and the coach
    /// compares with results of their own.
    #[serde(default)]
    pub bands: Vec<BandTable>,
    /// What is known of its reliability, and what was not found.
    #[serde(default)]
    pub notes: Vec<String>,
    /// Where it comes from.
    pub source: String,
}

/// What the result of a test counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Measure {
    /// Points.
    Points,
    /// Hits.
    Hits,
    /// Whole seconds; fewer are better.
    Seconds,
}

/// One part of a test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TestPart {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// How many tries it has; left out where it is timed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tries: Option<u32>,
    /// The most points it can give; left out where nothing limits it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<u32>,
    /// How a try is scored.
    pub scoring: String,
    /// The printed points of a timed part, from the slowest time to the fastest.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seconds: Vec<SecondsPoints>,
}

/// The points printed for a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SecondsPoints {
    /// Whole seconds.
    pub seconds: u32,
    /// The points.
    pub points: u32,
}

/// A printed table from a result to a level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BandTable {
    /// A short name that never changes, such as `women`.
    pub id: String,
    /// For whom, as printed.
    pub name: String,
    /// The bands, from the lowest result to the highest.
    pub bands: Vec<Band>,
}

/// The results that mean one level, both ends included.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// The level's name.
    pub level: String,
    /// The lowest result.
    pub from: u32,
    /// The highest result; left out where the table has no end.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<u32>,
}
