//! Carrying goals into a visit, and settling them when it closes; called by visits.

use super::state::{How, is_carried};
use super::{show, store};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{GoalId, StudentId, VisitId};

/// What a visit carries when it is opened: every goal that is working, met or slipped, in order of
/// priority. A goal set after the visit's last day (a visit written down late) is not carried back
/// into it.
///
/// # Errors
/// `Storage`.
pub(super) fn coming(
    db: &Reading<'_>,
    student: StudentId,
    visit: VisitId,
) -> Result<Vec<(GoalId, How)>> {
    let goals = show::list(db, show::OfStudent { student })?;
    let last_day = store::visit(db, visit)?.last_day;
    goals
        .into_iter()
        .filter(|g| is_carried(g.state) && last_day.is_none_or(|last| g.goal.set_on <= last))
        .map(|g| {
            // A goal that has not been at any visit yet is set here; its first block is no retest.
            let was = store::was_at_a_visit(db, g.goal.id)?;
            Ok((g.goal.id, if was { How::Carried } else { How::Set }))
        })
        .collect()
}

/// Carries what comes into the visit.
///
/// # Errors
/// `Storage`.
pub fn into_visit(db: &Writing<'_>, student: StudentId, visit: VisitId) -> Result<Vec<GoalId>> {
    let carried = coming(db, student, visit)?;
    for (goal, how) in &carried {
        store::put_at_visit(db, *goal, visit, *how)?;
    }
    Ok(carried.into_iter().map(|(goal, _)| goal).collect())
}

/// Ends the blocks left open at a visit that closes.
///
/// # Errors
/// `Storage`.
pub fn settle(db: &Writing<'_>, visit: VisitId) -> Result<()> {
    store::end_blocks_of(db, visit)
}

/// The goals at a visit, in order of priority.
///
/// # Errors
/// `Storage`.
pub fn at_visit(db: &Reading<'_>, visit: VisitId) -> Result<Vec<(GoalId, How)>> {
    store::at_visit(db, visit)
}
