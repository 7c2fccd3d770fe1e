//! The day on which something is written down at a visit.

use super::{Stage, Which, show};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{StudentId, VisitId};

/// Today, or the nearest day of the visit it belongs to; between visits today.
///
/// # Errors
/// `NotFound`; `Refused` for another student's visit; `NotPossible` for one that was not started.
pub fn day_at(db: &Reading<'_>, student: StudentId, visit: Option<VisitId>) -> Result<Day> {
    let today = db.today();
    let Some(visit) = visit else { return Ok(today) };
    let visit = show(db, Which { visit })?;
    if visit.student != student {
        return Err(Error::field("visit", "not_theirs", "This visit is another student\u{2019}s."));
    }
    if !matches!(visit.stage, Stage::Open | Stage::Closed) {
        return Err(Error::not_possible(
            "not_opened",
            "This visit has not been started. Start it first.",
        ));
    }
    Ok(visit.days.map_or(today, |days| today.clamp(days.first, days.last)))
}
