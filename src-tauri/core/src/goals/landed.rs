//! The cue that finally landed: a mark on the words in force.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::show::{Shown, show};
use super::{Which, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::GoalId;

/// A cue that landed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CueLanded {
    /// The goal whose cue in force it is.
    pub goal: GoalId,
    /// Whether it landed; false takes the mark away.
    pub landed: bool,
    /// The day, as YYYY-MM-DD; left out for today.
    #[serde(default)]
    pub day: String,
}

/// Marks the cue in force as the one that landed, or takes the mark away.
///
/// # Errors
/// `NotFound`; `Refused` for a day that is none or before the cue; `NotPossible` without a cue.
pub fn cue_landed(db: &Writing<'_>, mark: CueLanded) -> Result<Shown> {
    let goal = store::find(db, mark.goal)?;
    let Some(words) = goal.words.last().filter(|words| !words.cue.is_empty()) else {
        return Err(Error::not_possible("no_cue", "This goal has no cue yet. Give it one first."));
    };
    let mut p = Problems::new();
    let typed = p.day_or_none("day", Some(&mark.day), "The day");
    if typed.is_some_and(|day| day < words.since) {
        p.add("day", "before_the_cue", "On this day the cue was not yet in force.");
    }
    p.done()?;
    let day = typed.unwrap_or_else(|| db.today().max(words.since));
    store::set_landed(db, goal.id, words.since, mark.landed.then_some(day))?;
    let what = if mark.landed { "The cue landed" } else { "The cue has not landed" };
    db.label(format!("{what}: {}", goal.title));
    show(db, Which { goal: goal.id })
}
