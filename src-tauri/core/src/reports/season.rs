//! The season across all students: what was met, kept, slipped and raised in a span, what waits for
//! its retest now, who is expected, and what is seen most often.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::{Problems, Result};
use crate::goals::show::{Shown, show as show_goal};
use crate::goals::state::{State, Step, is_carried};
use crate::goals::{self, Criterion};
use crate::kinds::ids::{GoalId, StudentId, VisitId};
use crate::kinds::{Day, Span};
use crate::observations::ObservationKind;
use crate::visits::{self, ListVisits, Stage, Visit};

/// Which span.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OfSpan {
    /// The first day, as YYYY-MM-DD; left out for twelve months before the last.
    pub from: String,
    /// The last day, as YYYY-MM-DD; left out for today.
    pub to: String,
}

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
    /// Which, the newest first.
    pub moves: Vec<Move>,
    /// What waits for its retest today: met goals first, and the longest wait first.
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
    let visits = visits::list(db, ListVisits::default())?;
    let mut season = Season {
        span,
        moved: Moved::default(),
        moves: Vec::new(),
        waits: Vec::new(),
        awaited: awaited(&visits, db.today()),
        seen: Vec::new(),
    };
    for whose in store::goals(db)? {
        let shown = show_goal(db, goals::Which { goal: whose.goal })?;
        let steps = shown.standing.steps.iter().filter(|s| moved_in(s, span));
        season.moves.extend(steps.map(|step| a_move(&shown, step, &whose.name, &visits)));
        if whose.current {
            season.waits.extend(waiting(&shown, &whose.name, &visits));
        }
    }
    season.moves.sort_by(|a, b| (b.day, &a.name, &a.title).cmp(&(a.day, &b.name, &b.title)));
    season.waits.sort_by(|a, b| {
        (order(a.state), a.since, &a.name, &a.title).cmp(&(
            order(b.state),
            b.since,
            &b.name,
            &b.title,
        ))
    });
    for one in &season.moves {
        match one.to {
            State::Met => season.moved.met += 1,
            State::Kept => season.moved.kept += 1,
            State::Slipped => season.moved.slipped += 1,
            _ => season.moved.raised += 1,
        }
    }
    for kind in [ObservationKind::Strength, ObservationKind::Fault] {
        season.seen.extend(store::seen(db, kind, span, MOST_SEEN)?);
    }
    Ok(season)
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

fn moved_in(step: &Step, span: Span) -> bool {
    step.from != step.to
        && span.holds(step.day)
        && matches!(step.to, State::Met | State::Kept | State::Slipped | State::Raised)
}

fn a_move(shown: &Shown, step: &Step, name: &str, visits: &[Visit]) -> Move {
    let visit = visits.iter().find(|v| Some(v.id) == step.visit);
    Move {
        to: step.to,
        goal: shown.goal.id,
        title: shown.goal.title.clone(),
        student: shown.goal.student,
        name: name.to_owned(),
        day: step.day,
        visit: step.visit,
        when: visit.map_or_else(String::new, Visit::when),
        why: step.why.clone(),
    }
}

/// A goal that goes on and was at a visit waits, unless it was tried at one that is open now.
fn waiting(shown: &Shown, name: &str, visits: &[Visit]) -> Option<Waits> {
    let id = *shown.visits.last()?;
    let visit = visits.iter().find(|v| v.id == id)?;
    let open = visit.stage == Stage::Open;
    let tried = shown.blocks.iter().any(|b| b.visit == id && b.was_tried());
    let set_here = shown.visits.len() == 1;
    if !is_carried(shown.standing.state) || (open && (tried || set_here)) {
        return None;
    }
    let days = visit.days?;
    Some(Waits {
        goal: shown.goal.id,
        title: shown.goal.title.clone(),
        criterion: shown.goal.criterion,
        student: shown.goal.student,
        name: name.to_owned(),
        state: shown.standing.state,
        why: shown.standing.why.clone(),
        visit: id,
        since: if open { days.first } else { days.last },
    })
}

/// What was met waits most: only its retest can tell.
fn order(state: State) -> u8 {
    match state {
        State::Met => 0,
        State::Slipped => 1,
        _ => 2,
    }
}

fn awaited(visits: &[Visit], today: Day) -> Vec<Awaited> {
    let expected = visits.iter().filter(|v| v.stage == Stage::Expected);
    expected
        .filter_map(|v| Some((v, v.expected?)))
        .filter(|(_, span)| span.first <= today)
        .map(|(v, span)| Awaited {
            visit: v.id,
            student: v.student,
            name: v.name.clone(),
            when: visits::expected_words(span),
            passed: span.last < today,
        })
        .collect()
}
