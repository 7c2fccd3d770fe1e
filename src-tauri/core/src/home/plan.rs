//! Setting the home plan of a visit: the whole of it in one act.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::show::{of_visit, show};
use super::{HomeOfVisit, HomeUnit, OfVisit, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::goals::show::{OfStudent, list as goals_of};
use crate::kinds::ids::{GoalId, HomeLineId, HomePlanId, VisitId};
use crate::visits::{self, Stage};

/// The most lines. Common practice, no source: a longer plan is read once and done never.
const MOST_LINES: usize = 8;

/// The most at a time, and the most often, that the coach file takes.
const MOST_AMOUNT: i64 = 500;
const MOST_A_WEEK: i64 = 14;

/// A line as it is typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanLine {
    /// The line it was, so that what was told of it stays with it; left out for a new one.
    #[serde(default)]
    pub line: Option<HomeLineId>,
    /// The goal it works for, if any.
    #[serde(default)]
    pub goal: Option<GoalId>,
    /// The shot or exercise.
    pub what: String,
    /// How much at a time, 1 to 500.
    pub amount: i64,
    /// What the amount counts.
    pub unit: HomeUnit,
    /// How often a week, 1 to 14.
    pub a_week: i64,
}

/// The whole plan of a visit.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanHome {
    /// The visit after which it is done.
    pub visit: VisitId,
    /// The standing warm-up.
    #[serde(default)]
    pub warm_up: String,
    /// What else is to be said.
    #[serde(default)]
    pub note: String,
    /// Its lines, in order. No line, no warm-up and no note: there is no plan any more.
    #[serde(default)]
    pub lines: Vec<PlanLine>,
}

/// A line as it can be stored.
pub(super) struct ReadLine {
    pub id: HomeLineId,
    pub goal: Option<GoalId>,
    pub what: String,
    pub amount: u32,
    pub unit: HomeUnit,
    pub a_week: u32,
}

/// Sets the home plan of a visit.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` for a visit that was not
/// started, or when a line that the student told of would go.
pub fn plan(db: &Writing<'_>, plan: PlanHome) -> Result<HomeOfVisit> {
    let visit = visits::show(db, visits::Which { visit: plan.visit })?;
    let before = of_visit(db, plan.visit)?;
    let known: Vec<GoalId> = goals_of(db, OfStudent { student: visit.student })?
        .into_iter()
        .map(|g| g.goal.id)
        .collect();
    let old = before.as_ref().map_or(&[][..], |b| b.lines.as_slice());
    let mut p = Problems::new();
    let warm_up = p.note("warm_up", &plan.warm_up, "The warm-up");
    let note = p.note("note", &plan.note, "The note");
    if plan.lines.len() > MOST_LINES {
        p.add(
            "lines",
            "too_many",
            format!(
                "{} lines are more than anyone does between visits; there is room for {MOST_LINES}.",
                plan.lines.len()
            ),
        );
    }
    let mut lines: Vec<ReadLine> = Vec::new();
    for (n, typed) in plan.lines.iter().enumerate() {
        let line = p.within(&format!("lines[{n}]."), |p| read_line(db, p, typed, &known));
        let twice = lines.iter().any(|l| l.id == line.id);
        if typed.line.is_some_and(|id| twice || old.iter().all(|o| o.id != id)) {
            p.add(
                &format!("lines[{n}].line"),
                "not_of_this_plan",
                "This line is not in this plan, or stands in it twice.",
            );
        }
        lines.push(line);
    }
    p.done()?;
    if !matches!(visit.stage, Stage::Open | Stage::Closed) {
        return Err(Error::not_possible(
            "not_started",
            "A home plan is made at a visit, from what was worked on. Start the visit first.",
        ));
    }
    if let Some(gone) =
        old.iter().find(|o| !o.told.is_empty() && lines.iter().all(|l| l.id != o.id))
    {
        return Err(Error::not_possible(
            "told",
            format!(
                "\u{201c}{}\u{201d} stays in the plan: the student told how it went. Take the report away first.",
                gone.what
            ),
        ));
    }
    let empty = lines.is_empty() && warm_up.is_empty() && note.is_empty();
    match (before, empty) {
        (Some(before), true) => store::delete(db, before.id)?,
        (None, true) => {}
        (before, false) => {
            let id: HomePlanId = before.map_or_else(|| db.id(), |b| b.id);
            store::keep(db, id, &visit, &warm_up, &note)?;
            store::keep_lines(db, id, &lines)?;
        }
    }
    db.label(format!(
        "{}: {}",
        if empty { "No home plan any more" } else { "Home plan" },
        visit.name
    ));
    show(db, OfVisit { visit: plan.visit })
}

fn read_line(db: &Writing<'_>, p: &mut Problems, typed: &PlanLine, known: &[GoalId]) -> ReadLine {
    let what = p.name("what", &typed.what, "The shot or exercise");
    if typed.goal.is_some_and(|goal| !known.contains(&goal)) {
        p.add("goal", "not_theirs", "This goal is not one of the student\u{2019}s.");
    }
    let unit = match typed.unit {
        HomeUnit::Tries => "tries",
        HomeUnit::Minutes => "minutes",
    };
    if typed.amount < 1 {
        p.add("amount", "out_of_bounds", format!("How many {unit}? At least 1."));
    } else if typed.amount > MOST_AMOUNT {
        p.add(
            "amount",
            "out_of_bounds",
            format!(
                "{} {unit} at a time are too many to do well, and hard on the arm; it can be up to {MOST_AMOUNT}. \
                 Say less at a time, and how often a week.",
                typed.amount
            ),
        );
    }
    let a_week = p.within_bounds("a_week", typed.a_week, 1, MOST_A_WEEK, "How often a week");
    ReadLine {
        id: typed.line.unwrap_or_else(|| db.id()),
        goal: typed.goal,
        what,
        amount: u32::try_from(typed.amount).unwrap_or(1),
        unit: typed.unit,
        a_week: u32::try_from(a_week).unwrap_or(1),
    }
}
