//! Where every goal stands, kept beside the evidence so that all students can be read at once. What is
//! kept is derived and never typed: goals whose evidence changed since are derived when they are read,
//! and the next act keeps them.

use std::collections::BTreeSet;

use serde_json::json;

use super::show::{Shown, show};
use super::state::{State, Step};
use super::{Which, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{GoalId, VisitId};

/// The edition of the rules by which [`super::state`] derives. It is raised whenever the same evidence
/// comes to give another state, day or reason; what was kept by another edition is derived anew.
pub const RULES: i64 = 1;

/// No act keeps more than so many goals: after one that touches everything, the next ones go on.
const AT_ONCE: usize = 60;

/// What is kept of a goal.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Kept {
    pub state: State,
    pub why: String,
    /// The last visit it was at.
    pub visit: Option<VisitId>,
    /// The last day of that visit; `None` while it is open.
    pub since: Option<Day>,
    pub moves: Vec<KeptMove>,
}

/// What is kept of one move.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct KeptMove {
    pub day: Day,
    pub to: State,
    pub visit: Option<VisitId>,
    pub why: String,
}

/// Whether a step is one of those a season tells of: to met, kept, slipped or raised.
pub fn is_move(step: &Step) -> bool {
    step.from != step.to
        && matches!(step.to, State::Met | State::Kept | State::Slipped | State::Raised)
}

/// The goals whose evidence may say more than what is kept: those must be derived.
///
/// # Errors
/// `Storage`.
pub fn due(db: &Reading<'_>) -> Result<BTreeSet<GoalId>> {
    let mut due = behind(db)?;
    due.extend(store::with_open_blocks(db)?);
    Ok(due)
}

/// The goals that are due and can be kept: a goal with a block still open stays due.
///
/// # Errors
/// `Storage`.
pub fn behind(db: &Reading<'_>) -> Result<BTreeSet<GoalId>> {
    store::behind(db, RULES)
}

/// Derives and keeps where goals stand that are due: a bounded number of them.
///
/// # Errors
/// `Storage`.
pub fn keep(db: &Writing<'_>) -> Result<()> {
    let due = store::marked(db, AT_ONCE)?;
    due.into_iter().try_for_each(|goal| keep_one(db, goal))
}

/// Derives and keeps where all goals stand that are behind.
///
/// # Errors
/// `Storage`.
pub fn keep_all(db: &Writing<'_>) -> Result<()> {
    behind(db)?.into_iter().try_for_each(|goal| keep_one(db, goal))
}

fn keep_one(db: &Writing<'_>, goal: GoalId) -> Result<()> {
    let kept = match show(db, Which { goal }).and_then(|shown| what_to_keep(db, &shown)) {
        Ok(kept) => Some(kept),
        Err(Error::NotFound { .. }) => None,
        // Evidence that was damaged stays due, and stops no act: a reading and a check say what is wrong.
        Err(_) => return Ok(()),
    };
    store::keep_standing(db, goal, kept.as_ref(), RULES)
}

fn what_to_keep(db: &Reading<'_>, shown: &Shown) -> Result<Kept> {
    let visit = shown.visits.last().copied();
    let since = visit.map(|id| store::visit(db, id)).transpose()?;
    let since = since.filter(|seen| !seen.opened || seen.closed).and_then(|seen| seen.last_day);
    let moves = shown.standing.steps.iter().filter(|step| is_move(step)).map(|step| KeptMove {
        day: step.day,
        to: step.to,
        visit: step.visit,
        why: step.why.clone(),
    });
    Ok(Kept {
        state: shown.standing.state,
        why: shown.standing.why.clone(),
        visit,
        since,
        moves: moves.collect(),
    })
}

/// What is kept and is not what the evidence says, in words; empty when all is well.
///
/// # Errors
/// `Storage`.
pub fn astray(db: &Reading<'_>) -> Result<Vec<String>> {
    let due = due(db)?;
    let mut wrong = Vec::new();
    for goal in store::every(db)?.into_iter().filter(|goal| !due.contains(goal)) {
        let same = show(db, Which { goal })
            .and_then(|shown| what_to_keep(db, &shown))
            .and_then(|says| Ok(store::kept(db, goal)? == Some(says)));
        match same {
            Ok(true) => {}
            Ok(false) => {
                wrong.push(format!("where the goal {goal} stands is not what its evidence says"));
            }
            Err(_) => wrong.push(format!("the evidence of the goal {goal} cannot be read")),
        }
    }
    Ok(wrong)
}

/// Goals as one value of a statement: `goal NOT IN (SELECT value FROM json_each(?))`.
pub fn listed(goals: &BTreeSet<GoalId>) -> String {
    json!(goals.iter().map(ToString::to_string).collect::<Vec<_>>()).to_string()
}
