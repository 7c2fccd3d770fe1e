//! Raising a goal: a harder one, linked to it, takes its place.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::set::{SetGoal, open_visit, read};
use super::show::{Shown, show};
use super::state::{How, State, is_carried};
use super::{Choice, Criterion, CriterionKind, Decision, Which, store};
use crate::app::Writing;
use crate::error::{Error, Result};
use crate::kinds::ids::GoalId;

/// A raise.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RaiseGoal {
    /// The goal that is raised.
    pub goal: GoalId,
    /// The harder goal: a harder condition, or a harder criterion under the same one.
    pub to: SetGoal,
}

/// Raises a goal.
///
/// # Errors
/// `NotFound`; `Refused` when the new goal is wrong or no harder; `NotPossible` when the goal is
/// closed already.
pub fn raise(db: &Writing<'_>, raise: RaiseGoal) -> Result<Shown> {
    let before = show(db, Which { goal: raise.goal })?;
    if !(is_carried(before.standing.state) || before.standing.state == State::Kept) {
        return Err(Error::not_possible(
            "does_not_fit",
            "This goal is closed or set aside, so it cannot be raised.",
        ));
    }
    let visit = raise.to.visit;
    let mut goal = read(db, SetGoal { student: before.goal.student, ..raise.to })
        .map_err(|e| e.below("to."))?;
    let (old, new) = (before.goal.criterion, goal.criterion);
    let harder = goal.condition > before.goal.condition
        || (goal.condition == before.goal.condition && is_harder(old, new));
    if !harder {
        return Err(Error::field(
            "to.condition",
            "no_harder",
            "A raised goal is harder: another condition (fed, live, set game, match) or a higher criterion.",
        ));
    }
    goal.came_from = Some(before.goal.id);
    goal.rank = before.goal.rank;
    store::insert(db, &goal)?;
    if let Some(visit) = visit {
        open_visit(db, visit, goal.student)?;
        store::put_at_visit(db, goal.id, visit, How::Set)?;
    }
    let decision = Decision {
        id: db.id(),
        visit,
        day: goal.set_on,
        kind: Choice::Raise,
        reason: String::new(),
        raised_to: Some(goal.id),
    };
    store::insert_decision(db, before.goal.id, &decision)?;
    db.label(format!("{} raised to {}", before.goal.title, goal.title));
    show(db, Which { goal: goal.id })
}

/// Whether one criterion asks for more than another of its kind. Of two kinds neither is harder:
/// then only a harder condition raises a goal.
fn is_harder(old: Criterion, new: Criterion) -> bool {
    if old.kind != new.kind {
        return false;
    }
    match new.kind {
        CriterionKind::AtMost => new.need < old.need || (new.need == old.need && new.of > old.of),
        CriterionKind::Of | CriterionKind::Rate => {
            let higher =
                u64::from(new.need) * u64::from(old.of) > u64::from(old.need) * u64::from(new.of);
            higher || new.tries() > old.tries()
        }
    }
}
