//! A sport pack.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
/// p
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Pack { /// i
 pub id: String, /// s
 pub skills: Vec<Skill> }
/// s
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Skill { /// a
 pub id: String, /// a
 pub group: String, /// a
 pub name: String, /// a
 pub good_try: String, /// a
 pub cue: String }
