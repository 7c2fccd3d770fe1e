//! The carry chart: goals as lines, visits as columns in time. This is the chart's content; where
//! it is drawn (on screen, in a letter) the same content is used.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::numbers::{Count, wilson};
use super::show::{self, OfStudent, Shown};
use super::state::{State, is_carried};
use super::{Condition, Criterion, Kind, Source, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{BlockId, GoalId, VisitId};

/// A column: a visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Column {
    /// The visit.
    pub visit: VisitId,
    /// Its month, as in "Mar 26".
    pub head: String,
    /// The word under it, as in "late flight".
    pub note: String,
    /// Its first day.
    pub first_day: Day,
    /// Its last day.
    pub last_day: Day,
    /// Whether it is going on.
    pub open: bool,
}

/// A mark: one block with its rate and rough range.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Mark {
    /// The block.
    pub block: BlockId,
    /// Retest, end test or look back.
    pub kind: Kind,
    /// How the count came to be known.
    pub source: Source,
    /// The count.
    pub count: Count,
    /// Made ÷ tries.
    pub rate: f64,
    /// Lower end of the rough range of the true rate (Wilson, 95 %).
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Fewer tries than the criterion asks for.
    pub short: bool,
}

/// A cell: one goal at one visit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Cell {
    /// The visit.
    pub visit: VisitId,
    /// What is drawn: the retest, the last end test, a look back.
    pub marks: Vec<Mark>,
    /// Everything practised there, in one count.
    pub practice: Count,
    /// Whole games there: how often it happened in each.
    pub games: Vec<u32>,
}

/// A line: one goal.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Line {
    /// The goal.
    pub goal: GoalId,
    /// Its title.
    pub title: String,
    /// Its condition.
    pub condition: Condition,
    /// Its criterion.
    pub criterion: Criterion,
    /// Where it stands.
    pub state: State,
    /// Why, in words.
    pub why: String,
    /// The goal it was raised from: its line joins this one.
    pub came_from: Option<GoalId>,
    /// The visit at which it was kept.
    pub kept_at: Option<VisitId>,
    /// Whether it is worked on at most as one of so many, or waits.
    pub waits: bool,
    /// Its cells, in time: every visit it was at.
    pub cells: Vec<Cell>,
}

/// The whole chart.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Chart {
    /// The visits, in time.
    pub columns: Vec<Column>,
    /// The goals: a raised goal stands right above the one it was raised to.
    pub lines: Vec<Line>,
}

/// The most goals worked on at a time.
pub const ACTIVE: usize = 3;

/// The carry chart of a student.
///
/// # Errors
/// `Storage`.
pub fn chart(db: &Reading<'_>, ask: OfStudent) -> Result<Chart> {
    let columns = store::opened_visits(db, ask.student)?;
    let goals = show::all(db, ask.student)?;
    let active: Vec<GoalId> = goals
        .iter()
        .filter(|g| is_carried(g.standing.state))
        .take(ACTIVE)
        .map(|g| g.goal.id)
        .collect();
    let lines = in_chains(&goals)
        .into_iter()
        .map(|g| line(g, is_carried(g.standing.state) && !active.contains(&g.goal.id)))
        .collect();
    Ok(Chart { columns, lines })
}

/// Goals by priority, each preceded by the goals it was raised from.
fn in_chains(goals: &[Shown]) -> Vec<&Shown> {
    let is_raised = |g: &Shown| goals.iter().any(|other| other.goal.came_from == Some(g.goal.id));
    let mut order = Vec::new();
    for head in goals.iter().filter(|g| !is_raised(g)) {
        let mut chain = vec![head];
        while let Some(from) = chain.last().and_then(|g| g.goal.came_from) {
            match goals.iter().find(|g| g.goal.id == from) {
                Some(earlier) if !chain.iter().any(|g| g.goal.id == earlier.goal.id) => {
                    chain.push(earlier)
                }
                _ => break,
            }
        }
        order.extend(chain.into_iter().rev());
    }
    let mut seen = Vec::new();
    order.retain(|g| {
        let new = !seen.contains(&g.goal.id);
        seen.push(g.goal.id);
        new
    });
    // Goals being worked on first, then the closed ones.
    order.sort_by_key(|g| matches!(g.standing.state, State::Closed | State::SetAside));
    order
}

fn line(shown: &Shown, waits: bool) -> Line {
    let goal = &shown.goal;
    let cells = shown.visits.iter().map(|visit| cell(shown, *visit)).collect();
    Line {
        goal: goal.id,
        title: goal.title.clone(),
        condition: goal.condition,
        criterion: goal.criterion,
        state: shown.standing.state,
        why: shown.standing.why.clone(),
        came_from: goal.came_from,
        kept_at: shown.standing.kept_at,
        waits,
        cells,
    }
}

fn cell(shown: &Shown, visit: VisitId) -> Cell {
    let goal = &shown.goal;
    let blocks: Vec<_> =
        shown.blocks.iter().filter(|b| b.visit == visit && b.count.tries > 0).collect();
    let drawn = |b: &&&super::Block| b.condition == goal.condition && b.source != Source::Told;
    let first = blocks.iter().filter(drawn).find(|b| b.kind == Kind::Retest);
    let look = blocks.iter().filter(drawn).rfind(|b| b.kind == Kind::LookBack);
    let last = blocks.iter().filter(drawn).rfind(|b| b.kind == Kind::EndTest);
    let marks = [first, look, last]
        .into_iter()
        .flatten()
        .filter_map(|b| {
            let range = wilson(b.count, 0.95);
            Some(Mark {
                block: b.id,
                kind: b.kind,
                source: b.source,
                count: b.count,
                rate: range.rate?,
                low: range.low?,
                high: range.high?,
                short: goal.criterion.is_short(b.count),
            })
        })
        .collect();
    let practice =
        blocks.iter().filter(|b| b.kind == Kind::Practice && b.source != Source::Told).fold(
            Count { made: 0, tries: 0 },
            |sum, b| Count { made: sum.made + b.count.made, tries: sum.tries + b.count.tries },
        );
    let games = shown
        .blocks
        .iter()
        .filter(|b| b.visit == visit && b.source != Source::Told && b.condition == goal.condition)
        .filter_map(|b| b.in_game)
        .collect();
    Cell { visit, marks, practice, games }
}
