//! A plan as the coach moved it: what speaks against each line, and what it comes to.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::gather::gather;
use super::propose::{cost, line};
use super::{AskPlan, PlanPlace, PlannedLesson};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::planner::{Broken, Planned, Rule, broken, sums};

/// A plan to weigh.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Weigh {
    /// What it was planned from.
    pub plan: AskPlan,
    /// Its lines as they are now.
    pub lines: Vec<PlanPlace>,
}

/// A plan weighed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Weighed {
    /// Its lines, in the order given, each with what speaks against it.
    pub lines: Vec<PlannedLesson>,
    /// What its courts cost, one amount for each currency.
    pub cost: Vec<String>,
    /// What it comes to: missing, spread, cost in smallest units, distance from what is liked best.
    pub sums: [i64; 4],
}

/// Weighs a plan.
///
/// # Errors
/// As beginning one; `Refused` when a line is on a day or a court that the plan does not have.
pub fn weigh(db: &Reading<'_>, weigh: Weigh) -> Result<Weighed> {
    let of = gather(db, AskPlan { locked: Vec::new(), ..weigh.plan })?;
    let mut board = of.board(&of.ask.changes);
    // What stands already is a line like the others here.
    board.ask.locked.clear();
    let mut lessons: Vec<Planned> = Vec::new();
    for (n, place) in weigh.lines.iter().enumerate() {
        let Some(planned) = of.planned(&board, place) else {
            let words = "This line is not on a day and a court of the plan.";
            return Err(Error::field(&format!("lines[{n}]"), "elsewhere", words));
        };
        lessons.push(planned);
    }
    let others = board.standing.iter().map(|(standing, _)| *standing);
    let others: Vec<Planned> = others.filter(|l| board.who[l.student].is_empty()).collect();
    let many = lessons.len();
    lessons.extend(others);
    let mut lines: Vec<PlannedLesson> =
        (0..many).filter_map(|n| line(&of, &board, &lessons, n)).collect();
    let name = |n: usize| of.names(&board, lessons[n].student);
    for fault in broken(&board.ask, &lessons) {
        if let Some(line) = lines.get_mut(fault.lesson) {
            let said = words(&fault, fault.with.and_then(name).as_deref());
            if !line.against.contains(&said) {
                line.against.push(said);
            }
        }
    }
    Ok(Weighed { cost: cost(&of, &board, &lessons), sums: sums(&board.ask, &lessons), lines })
}

fn words(fault: &Broken, with: Option<&str>) -> String {
    let with = with.unwrap_or("another lesson");
    match fault.rule {
        Rule::Start => "No booking begins at this time.".to_owned(),
        Rule::StudentHours => "It is outside the hours the student wished for.".to_owned(),
        Rule::Arrival => "The student has not arrived yet.".to_owned(),
        Rule::Departure => "The student has left by then.".to_owned(),
        Rule::FacilityHours => "The facility is closed.".to_owned(),
        Rule::Bookable => "The day cannot be booked yet.".to_owned(),
        Rule::Court => "The court is kept for others.".to_owned(),
        Rule::Coach => "You cannot teach then, by your own time.".to_owned(),
        Rule::OneAtATime => format!("It meets the lesson of {with}."),
        Rule::Travel => format!("The way from the lesson of {with} takes longer."),
        Rule::Rest => "The rest between two lessons is too short.".to_owned(),
        Rule::CoachDay => "You teach longer that day than you wished.".to_owned(),
        Rule::FacilityDay => "The facility\u{2019}s limit for a day is passed.".to_owned(),
        Rule::FacilityBookings => "The facility gives fewer bookings a day.".to_owned(),
        Rule::CoachWeek => "You teach longer that week than you wished.".to_owned(),
        Rule::FacilityWeek => "The facility\u{2019}s limit for seven days is passed.".to_owned(),
        Rule::Meal => "It leaves no time for your meal that day.".to_owned(),
        Rule::PerDay => "The student has more lessons that day than wished for.".to_owned(),
        Rule::Run => "You teach longer without a break than you wished.".to_owned(),
        Rule::CourtRun => "The court is taken longer than the facility allows.".to_owned(),
        Rule::Locked => "A locked lesson does not stay.".to_owned(),
        Rule::Wished => "It is more than was wished for.".to_owned(),
    }
}
