//! One act makes what was seen a focus goal.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Which, show, store};
use crate::app::Writing;
use crate::error::{Error, Result};
use crate::goals::set::{SetGoal, set};
use crate::goals::show::Shown;
use crate::kinds::ids::ObservationId;

/// The goal that an observation becomes.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakeGoal {
    /// What was seen.
    pub observation: ObservationId,
    /// The goal, of the same student.
    pub goal: SetGoal,
}

/// Sets the goal and links what was seen to it.
///
/// # Errors
/// As setting a goal, fields below `goal`; `NotPossible` when it became a goal before.
pub fn make_goal(db: &Writing<'_>, make: MakeGoal) -> Result<Shown> {
    let seen = show(db, Which { observation: make.observation })?;
    if seen.goal.is_some() {
        return Err(Error::not_possible(
            "a_goal_already",
            "This became a goal before; its goal is among the student\u{2019}s goals.",
        ));
    }
    let goal =
        set(db, SetGoal { student: seen.student, ..make.goal }).map_err(|e| e.below("goal."))?;
    store::became(db, seen.id, goal.goal.id)?;
    db.label(format!("Made a goal: {}", goal.goal.title));
    Ok(goal)
}
