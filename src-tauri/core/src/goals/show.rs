//! One goal with where it stands and how it came there; all goals of a student.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::state::{Standing, derive};
use super::{Block, Goal, Which, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{StudentId, VisitId};

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

/// Lists a student's goals in order of priority, closed ones included.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<Shown>> {
    store::of_student(db, ask.student)?.into_iter().map(|goal| of(db, goal)).collect()
}

fn of(db: &Reading<'_>, goal: Goal) -> Result<Shown> {
    let history = store::history(db, &goal)?;
    let standing = derive(&history);
    let visits = history.visits.iter().map(|at| at.visit).collect();
    let blocks = history.visits.into_iter().flat_map(|at| at.blocks).collect();
    Ok(Shown { goal, standing, blocks, visits })
}
