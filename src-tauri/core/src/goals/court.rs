//! On court: the three goals worked on at a visit, each with its cue, what is being counted, and
//! what comes next; and quick notes.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::carry::coming;
use super::chart::ACTIVE;
use super::decide::AtVisit;
use super::set::open_visit;
use super::show::{Shown, show};
use super::state::{How, State, is_carried};
use super::{Block, Kind, Which, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{GoalId, JottingId, LessonId, VisitId};

/// One goal on court.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct OnCourt {
    /// The goal and where it stands.
    pub goal: Shown,
    /// How it came to be at the visit.
    pub how: How,
    /// The block being counted now, if any.
    pub open: Option<Block>,
    /// Its blocks at this visit that were ended.
    pub ended: Vec<Block>,
    /// What the next block is offered as: a retest first, practice after.
    pub offer: Kind,
    /// Whether it waits because so many others come first.
    pub waits: bool,
}

/// A quick note.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Jotting {
    /// Which one.
    pub id: JottingId,
    /// The goal it is about, if any.
    pub goal: Option<GoalId>,
    /// The day.
    pub day: Day,
    /// The words.
    pub words: String,
}

/// A quick note to write.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Jot {
    /// The visit.
    pub visit: VisitId,
    /// The lesson, if any.
    #[serde(default)]
    pub lesson: Option<LessonId>,
    /// The goal it is about, if any.
    #[serde(default)]
    pub goal: Option<GoalId>,
    /// The words.
    pub words: String,
}

/// The goals at a visit that are still worked on, in order of priority: the first three are
/// active, the rest wait.
///
/// # Errors
/// `NotFound`.
pub fn on_court(db: &Reading<'_>, at: AtVisit) -> Result<Vec<OnCourt>> {
    store::visit(db, at.visit)?;
    worked_on(db, at, store::at_visit(db, at.visit)?)
}

/// The goals to print before court: those on court, or, at a visit that is not opened yet, those
/// that it will carry.
///
/// # Errors
/// `NotFound`.
pub fn to_print(db: &Reading<'_>, at: AtVisit) -> Result<Vec<OnCourt>> {
    let visit = store::visit(db, at.visit)?;
    if visit.opened {
        return on_court(db, at);
    }
    worked_on(db, at, coming(db, visit.student, at.visit)?)
}

fn worked_on(db: &Reading<'_>, at: AtVisit, there: Vec<(GoalId, How)>) -> Result<Vec<OnCourt>> {
    let mut goals = Vec::new();
    for (goal, how) in there {
        let goal = show(db, Which { goal })?;
        let blocks = store::blocks_at(db, goal.goal.id, at.visit)?;
        let here = goal.standing.kept_at == Some(at.visit) || !blocks.is_empty();
        if !(is_carried(goal.standing.state) || here) {
            continue;
        }
        let tried = blocks.iter().any(super::Block::was_tried);
        let kept = goal.standing.state == State::Kept && goal.standing.kept_at != Some(at.visit);
        let offer = match how {
            _ if kept => Kind::LookBack,
            How::Carried if !tried => Kind::Retest,
            How::Carried | How::Set => Kind::Practice,
        };
        let (open, ended): (Vec<_>, Vec<_>) = blocks.into_iter().partition(|b| !b.ended);
        // A kept goal that is looked back at stands beside the three.
        let carried = |g: &OnCourt| is_carried(g.goal.standing.state);
        let waits = is_carried(goal.standing.state)
            && goals.iter().filter(|g| carried(g)).count() >= ACTIVE;
        goals.push(OnCourt { goal, how, open: open.into_iter().last(), ended, offer, waits });
    }
    Ok(goals)
}

/// Writes a quick note.
///
/// # Errors
/// `NotFound`; `Refused` when it is empty; `NotPossible` at a visit that is not open.
pub fn jot(db: &Writing<'_>, jot: Jot) -> Result<Vec<Jotting>> {
    let student = store::visit(db, jot.visit)?.student;
    open_visit(db, jot.visit, student)?;
    let mut p = Problems::new();
    let words = p.reason("words", &jot.words, "The note");
    p.done()?;
    store::insert_jotting(db, (student, jot.visit, jot.lesson, jot.goal), db.today(), &words)?;
    db.label("A note written");
    store::jottings(db, jot.visit)
}

/// The quick notes of a visit, in time.
///
/// # Errors
/// `NotFound`.
pub fn jottings(db: &Reading<'_>, at: AtVisit) -> Result<Vec<Jotting>> {
    store::visit(db, at.visit)?;
    store::jottings(db, at.visit)
}
