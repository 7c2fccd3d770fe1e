//! Drills, and the names of divisions.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Something to do on court that serves one or more skills.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Drill {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// What it is for.
    pub purpose: String,
    /// Who stands where, who feeds what, what is a target.
    pub layout: String,
    /// How it is made harder, line by line.
    pub progression: Vec<Progress>,
    /// The ids of the skills it serves.
    pub skills: Vec<String>,
    /// The lowest and the highest level it suits, 0 to 4.
    pub levels: [u8; 2],
    /// How long it takes, in minutes.
    pub minutes: u16,
    /// Where it comes from.
    pub source: String,
}

/// A harder form of a drill.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Progress {
    /// What changes.
    pub words: String,
    /// The id of the drill this leads to, where it leads to another one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drill: Option<String>,
}

/// A division or a level as an association names it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Division {
    /// The list it belongs to, such as `NTRP`.
    pub list: String,
    /// Its name in that list.
    pub name: String,
    /// What is seen at it, in our own short words; empty where the list was not read that far.
    #[serde(default)]
    pub words: String,
    /// Where it comes from.
    pub source: String,
}
