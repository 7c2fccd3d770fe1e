//! The plan of a visit with what would suit it, and the plan of the visit before.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{HomeOfVisit, HomePlan, HomeUnit, OfVisit, ProposedLine, store};
use crate::app::Reading;
use crate::error::Result;
use crate::goals::carry;
use crate::goals::show::as_of;
use crate::goals::state::is_carried;
use crate::kinds::ids::{StudentId, VisitId};
use crate::students;
use crate::visits::{self, Stage, Visit};

/// How many tries a line proposes where the goal does not say, and how often. Common practice, no
/// source.
const USUAL_TRIES: u32 = 20;
const USUAL_A_WEEK: u32 = 3;

/// Whose last plan.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LastOf {
    /// The student.
    pub student: StudentId,
    /// The visit before which the plan was made; left out for the student's visit that is open, or
    /// for the newest plan of all where none is.
    #[serde(default)]
    pub before: Option<VisitId>,
}

/// Shows the plan of a visit, or what one would begin with.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, of: OfVisit) -> Result<HomeOfVisit> {
    let visit = visits::show(db, visits::Which { visit: of.visit })?;
    let plan = of_visit(db, of.visit)?;
    let in_lines = |goal| plan.iter().flat_map(|p| &p.lines).any(|line| line.goal == Some(goal));
    let mut proposals = Vec::new();
    for (goal, _) in carry::at_visit(db, of.visit)? {
        let shown = as_of(db, goal, of.visit)?;
        if !is_carried(shown.standing.state) || in_lines(goal) {
            continue;
        }
        proposals.push(ProposedLine {
            goal,
            title: shown.goal.title.clone(),
            what: shown.goal.title,
            amount: shown.goal.criterion.tries().unwrap_or(USUAL_TRIES).clamp(1, 500),
            unit: HomeUnit::Tries,
            a_week: USUAL_A_WEEK,
            why: shown.standing.why,
        });
    }
    let warm_up = before(db, &visit)?.map_or_else(String::new, |last| last.warm_up);
    Ok(HomeOfVisit { plan, warm_up, proposals })
}

/// The plan of a visit, if it has one.
///
/// # Errors
/// `NotFound`.
pub fn of_visit(db: &Reading<'_>, visit: VisitId) -> Result<Option<HomePlan>> {
    store::of_visit(db, visit)
}

/// The plan made at the visit before, with what was told of it.
///
/// # Errors
/// `NotFound`.
pub fn last(db: &Reading<'_>, of: LastOf) -> Result<Option<HomePlan>> {
    students::show(db, students::Which { student: of.student })?;
    let id = match of.before {
        Some(visit) => Some(visit),
        None => {
            let theirs = visits::ListVisits { student: Some(of.student), ..Default::default() };
            visits::list(db, theirs)?.iter().rfind(|v| v.stage == Stage::Open).map(|v| v.id)
        }
    };
    match id {
        Some(id) => before(db, &visits::show(db, visits::Which { visit: id })?),
        None => Ok(store::of_student(db, of.student)?.pop()),
    }
}

/// The newest plan of a visit that began before this one.
fn before(db: &Reading<'_>, visit: &Visit) -> Result<Option<HomePlan>> {
    for plan in store::of_student(db, visit.student)?.into_iter().rev() {
        if plan.visit == visit.id {
            continue;
        }
        let made_at = visits::show(db, visits::Which { visit: plan.visit })?;
        if visit.from().is_none_or(|from| made_at.from() < Some(from)) {
            return Ok(Some(plan));
        }
    }
    Ok(None)
}
