//! One goal with where it stands and how it came there; all goals of a student.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::repeated::{Repeated, repeated};
use super::state::{History, Standing, State, derive};
use super::{Block, Goal, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{GoalId, StudentId, VisitId};
use crate::kinds::text::folded;

/// A goal as shown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Shown {
    /// What is stored.
    pub goal: Goal,
    /// Where it stands.
    pub standing: Standing,
    /// Its blocks, visit by visit in time.
    pub blocks: Vec<Block>,
    /// The visits it was at, in time.
    pub visits: Vec<VisitId>,
    /// End tests that were repeated until they passed, and what that is worth.
    pub repeated: Vec<Repeated>,
}

/// A goal in a list: where it stands, without the evidence for it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Listed {
    /// What is stored.
    pub goal: Goal,
    /// Where it stands.
    pub state: State,
    /// The reason, in words.
    pub why: String,
}

/// Whose goals.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfStudent {
    /// The student.
    pub student: StudentId,
}

/// Shows a goal.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Shown> {
    of(db, store::find(db, which.goal)?)
}

/// A goal as it is stored, without its evidence.
///
/// # Errors
/// `NotFound`.
pub fn stored(db: &Reading<'_>, which: Which) -> Result<Goal> {
    store::find(db, which.goal)
}

/// Lists a student's goals in order of priority, closed ones included.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<Listed>> {
    let listed =
        |Shown { goal, standing: Standing { state, why, .. }, .. }| Listed { goal, state, why };
    Ok(all(db, ask.student)?.into_iter().map(listed).collect())
}

/// Shows all goals of a student, in order of priority.
///
/// # Errors
/// `Storage`.
pub fn all(db: &Reading<'_>, student: StudentId) -> Result<Vec<Shown>> {
    store::of_student(db, student)?.into_iter().map(|goal| of(db, goal)).collect()
}

/// So many titles are looked at before more are read.
const LOOKED_AT_ONCE: usize = 500;

/// Finds goals of current students whose title has every part in it; accents and case do not
/// matter. Gives the goal, its title and its student's name, `most` at most.
///
/// # Errors
/// `Storage`.
pub fn titled(db: &Reading<'_>, parts: &str, most: usize) -> Result<Vec<(GoalId, String, String)>> {
    let parts = folded(parts);
    let (mut found, mut after) = (Vec::new(), (String::new(), String::new()));
    while found.len() < most {
        let some = store::titles_after(db, &after, LOOKED_AT_ONCE)?;
        let Some(last) = some.last() else { break };
        after = last.clone();
        for (title, goal) in some {
            let title = folded(&title);
            if found.len() < most && parts.split(' ').all(|part| title.contains(part)) {
                found.extend(store::titled(db, &goal)?);
            }
        }
    }
    found.sort_by(|(_, a, whose_a), (_, b, whose_b)| (a, whose_a).cmp(&(b, whose_b)));
    Ok(found)
}

/// Shows a goal as it stood when a visit ended: what came later is left out, the words are those
/// that were in force.
///
/// # Errors
/// `NotFound`.
pub fn as_of(db: &Reading<'_>, goal: GoalId, visit: VisitId) -> Result<Shown> {
    let mut goal = store::find(db, goal)?;
    let mut history = store::history(db, &goal)?;
    if let Some(n) = history.visits.iter().position(|at| at.visit == visit) {
        history.visits.truncate(n + 1);
        let first_day = history.visits[n].day;
        let seen: Vec<VisitId> = history.visits.iter().map(|at| at.visit).collect();
        history.decisions.retain(|d| d.visit.map_or(d.day < first_day, |v| seen.contains(&v)));
        let last_day = store::visit(db, visit)?.last_day.unwrap_or(first_day);
        let oldest = goal.words.first().cloned();
        goal.words.retain(|words| words.since <= last_day);
        if goal.words.is_empty() {
            goal.words.extend(oldest);
        }
    }
    Ok(with_standing(goal, history))
}

fn of(db: &Reading<'_>, goal: Goal) -> Result<Shown> {
    let history = store::history(db, &goal)?;
    Ok(with_standing(goal, history))
}

fn with_standing(goal: Goal, history: History) -> Shown {
    let standing = derive(&history);
    let visits = history.visits.iter().map(|at| at.visit).collect();
    let blocks: Vec<Block> = history.visits.into_iter().flat_map(|at| at.blocks).collect();
    let repeated = repeated(&goal, &blocks);
    Shown { goal, standing, blocks, visits, repeated }
}
