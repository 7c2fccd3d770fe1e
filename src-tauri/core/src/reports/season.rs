//! The season across all students: what was met, kept, slipped and raised in a span, what waits for
//! its retest now, who is expected, and what is seen most often.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::{Problems, Result};
use crate::goals::show::{Shown, show as show_goal};
use crate::goals::standing;
use crate::goals::state::{State, Step, is_carried};
use crate::goals::{self, Criterion};
use crate::kinds::ids::{GoalId, StudentId, VisitId};
use crate::kinds::{Day, Span};
use crate::observations::ObservationKind;
use crate::visits::{self, Stage, Visit};

/// Which span, and how much of it.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OfSpan {
    /// The first day, as YYYY-MM-DD; left out for twelve months before the last.
    pub from: String,
    /// The last day, as YYYY-MM-DD; left out for today.
    pub to: String,
    /// Of what moved, only what moved to this: met, kept, slipped or raised; left out for all.
    pub only: Option<State>,
    /// How many of those that moved are given at most, the newest; they are all counted.
    pub most_moves: u32,
    /// How many of those that wait are given at most; they are all counted.
    pub most_waits: u32,
}

impl Default for OfSpan {
    fn default() -> Self {
        let (from, to) = (String::new(), String::new());
        Self { from, to, only: None, most_moves: MOST_GIVEN, most_waits: MOST_GIVEN }
    }
}

/// How many lines of a kind are given where nobody says, and at most.
const MOST_GIVEN: u32 = 100;
const MOST_EVER: u32 = 1_000;

/// How many goals moved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Moved {
    /// To met.
    pub met: u32,
    /// To kept.
    pub kept: u32,
    /// To slipped.
    pub slipped: u32,
    /// Raised to a harder goal.
    pub raised: u32,
}

/// A goal that moved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Move {
    /// Where to: met, kept, slipped or raised.
    pub to: State,
    /// The goal.
    pub goal: GoalId,
    /// Its title.
    pub title: String,
    /// Whose it is.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The day.
    pub day: Day,
    /// The visit it moved at; `None` between visits.
    pub visit: Option<VisitId>,
    /// When that visit was, in words; empty between visits.
    pub when: String,
    /// Why, in words.
    pub why: String,
}

/// A goal that waits for its retest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Waits {
    /// The goal.
    pub goal: GoalId,
    /// Its title.
    pub title: String,
    /// What it asks.
    pub criterion: Criterion,
    /// Whose it is.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// Where it stands.
    pub state: State,
    /// Why, in words.
    pub why: String,
    /// The last visit before: since its last day it waits. Where it waits at an open visit, that one.
    pub visit: VisitId,
    /// The last day of that visit; of an open one, its first.
    pub since: Day,
}

/// A visit whose month has come or passed without days.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Awaited {
    /// The visit.
    pub visit: VisitId,
    /// Who is expected.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// "around May 2026".
    pub when: String,
    /// Whether the span is over.
    pub passed: bool,
}

/// Something seen in the span, in the same words at however many students.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct OftenSeen {
    /// Strength or fault.
    pub kind: ObservationKind,
    /// What was seen.
    pub words: String,
    /// How often.
    pub times: u32,
    /// At how many students.
    pub students: u32,
    /// The student it was last seen at.
    pub student: StudentId,
    /// That student's name.
    pub name: String,
    /// The visit it was last seen at; `None` between visits.
    pub visit: Option<VisitId>,
    /// The day it was last seen.
    pub day: Day,
}

/// The season.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Season {
    /// The span.
    pub span: Span,
    /// How many goals moved in it.
    pub moved: Moved,
    /// Which, the newest first: as many as were asked for.
    pub moves: Vec<Move>,
    /// How many goals wait for their retest today.
    pub waiting: u32,
    /// What waits: met goals first, and the longest wait first; as many as were asked for.
    pub waits: Vec<Waits>,
    /// Who is expected by today.
    pub awaited: Vec<Awaited>,
    /// Strengths and faults seen in the span, the most frequent first.
    pub seen: Vec<OftenSeen>,
}

/// The most of what was seen that is given of each kind.
const MOST_SEEN: usize = 8;

/// Shows the season.
///
/// # Errors
/// `Refused` when a day is none, or the span ends before it begins.
pub fn season(db: &Reading<'_>, of: OfSpan) -> Result<Season> {
    let span = read(db, &of)?;
    let most_moves = of.most_moves.min(MOST_EVER) as usize;
    let most_waits = of.most_waits.min(MOST_EVER) as usize;
    // What is kept of most goals, and the evidence itself of those it may be behind of.
    let due = standing::due(db)?;
    let listed = standing::listed(&due);
    let mut moved = store::moved(db, span, &listed)?;
    let mut moves = store::moves(db, span, of.only, &listed, most_moves)?;
    let mut waiting = store::waiting(db, &listed)?;
    let mut waits = store::waits(db, &listed, most_waits)?;
    // Of goals at an open visit it is kept how they moved, but not whether they were tried there.
    let at_open_visits = store::at_open_visits(db, &listed)?;
    for goal in due.iter().chain(&at_open_visits).copied() {
        let Some(whose) = store::whose(db, goal)? else { continue };
        let shown = show_goal(db, goals::Which { goal })?;
        let steps = shown.standing.steps.iter().filter(|_| due.contains(&goal));
        for step in steps.filter(|s| standing::is_move(s) && span.holds(s.day)) {
            moved.add(step.to, 1);
            if of.only.is_none_or(|only| only == step.to) {
                moves.push(a_move(db, &shown, step, &whose.name)?);
            }
        }
        if whose.current
            && let Some(one) = wait(db, &shown, &whose.name)?
        {
            waiting += 1;
            waits.push(one);
        }
    }
    moves.sort_by(|a, b| (b.day, &a.name, &a.title).cmp(&(a.day, &b.name, &b.title)));
    moves.truncate(most_moves);
    waits.sort_by(|a, b| {
        (order(a.state), a.since, &a.name, &a.title).cmp(&(
            order(b.state),
            b.since,
            &b.name,
            &b.title,
        ))
    });
    waits.truncate(most_waits);
    let mut seen = Vec::new();
    for kind in [ObservationKind::Strength, ObservationKind::Fault] {
        seen.extend(store::seen(db, kind, span, MOST_SEEN)?);
    }
    let awaited = awaited(&visits::expected_by(db, db.today())?, db.today());
    Ok(Season { span, moved, moves, waiting, waits, awaited, seen })
}

impl Moved {
    /// Adds so many that moved to a state.
    pub(super) fn add(&mut self, to: State, times: u32) {
        match to {
            State::Met => self.met += times,
            State::Kept => self.kept += times,
            State::Slipped => self.slipped += times,
            _ => self.raised += times,
        }
    }
}

fn read(db: &Reading<'_>, of: &OfSpan) -> Result<Span> {
    let mut p = Problems::new();
    let last = p.day_or_none("to", Some(&of.to), "The last day").unwrap_or_else(|| db.today());
    let first =
        p.day_or_none("from", Some(&of.from), "The first day").unwrap_or_else(|| year_before(last));
    if first > last && !p.any() {
        p.add("to", "before_from", "The span ends before it begins.");
    }
    p.done()?;
    Ok(Span { first, last })
}

/// The day after the same day a year before, so that the span holds twelve months.
fn year_before(day: Day) -> Day {
    let before = day.date().checked_sub_months(chrono::Months::new(12));
    before.and_then(Day::from_date).map_or(day, |before| before.plus(1))
}

fn a_move(db: &Reading<'_>, shown: &Shown, step: &Step, name: &str) -> Result<Move> {
    let visit = step.visit.map(|visit| visits::show(db, visits::Which { visit })).transpose()?;
    Ok(Move {
        to: step.to,
        goal: shown.goal.id,
        title: shown.goal.title.clone(),
        student: shown.goal.student,
        name: name.to_owned(),
        day: step.day,
        visit: step.visit,
        when: visit.map_or_else(String::new, |visit| visit.when()),
        why: step.why.clone(),
    })
}

/// A goal that goes on and was at a visit waits, unless it was tried at one that is open now.
fn wait(db: &Reading<'_>, shown: &Shown, name: &str) -> Result<Option<Waits>> {
    let Some(id) = shown.visits.last().copied() else { return Ok(None) };
    let visit = visits::show(db, visits::Which { visit: id })?;
    let open = visit.stage == Stage::Open;
    let tried = shown.blocks.iter().any(|b| b.visit == id && b.was_tried());
    let set_here = shown.visits.len() == 1;
    if !is_carried(shown.standing.state) || (open && (tried || set_here)) {
        return Ok(None);
    }
    Ok(visit.days.map(|days| Waits {
        goal: shown.goal.id,
        title: shown.goal.title.clone(),
        criterion: shown.goal.criterion,
        student: shown.goal.student,
        name: name.to_owned(),
        state: shown.standing.state,
        why: shown.standing.why.clone(),
        visit: id,
        since: if open { days.first } else { days.last },
    }))
}

/// The states a goal waits for its retest in. What was met waits most: only its retest can tell.
pub(super) const WAITING: [State; 3] = [State::Met, State::Slipped, State::Working];

fn order(state: State) -> Option<usize> {
    WAITING.iter().position(|one| *one == state)
}

fn awaited(visits: &[Visit], today: Day) -> Vec<Awaited> {
    visits
        .iter()
        .filter_map(|v| Some((v, v.expected?)))
        .map(|(v, span)| Awaited {
            visit: v.id,
            student: v.student,
            name: v.name.clone(),
            when: visits::expected_words(span),
            passed: span.last < today,
        })
        .collect()
}
