//! At each visit a look back is offered at the oldest kept goal: practice is not learning, and
//! neither is what was kept a year ago.

use super::decide::AtVisit;
use super::show::{Shown, all};
use super::state::State;
use super::store;
use crate::app::Reading;
use crate::error::Result;

/// The kept goal that was looked at longest ago, unless one was looked back at during this visit.
///
/// # Errors
/// `NotFound`.
pub fn look_back(db: &Reading<'_>, at: AtVisit) -> Result<Option<Shown>> {
    let visit = store::visit(db, at.visit)?;
    let kept: Vec<Shown> = all(db, visit.student)?
        .into_iter()
        .filter(|goal| goal.standing.state == State::Kept)
        .filter(|goal| goal.standing.kept_at != Some(at.visit))
        .collect();
    if kept.iter().any(|goal| goal.blocks.iter().any(|b| b.visit == at.visit && b.was_tried())) {
        return Ok(None);
    }
    Ok(kept.into_iter().min_by_key(|goal| goal.blocks.iter().map(|b| b.day).max()))
}
