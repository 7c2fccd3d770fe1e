//! Observations: a strength or a fault of a student, seen at a skill, and every time it was seen
//! again. They hold what the limit of three goals leaves out; one act makes one a focus goal.

mod list;
mod make_goal;
mod see;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use list::{ListObservations, list, show};
pub use make_goal::{MakeGoal, make_goal};
pub use see::{SeeAgain, SeeNew, see, see_again};

use crate::kinds::Day;
use crate::kinds::ids::{GoalId, LessonId, ObservationId, StudentId, VisitId};

/// Strength or fault.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum ObservationKind {
    /// Something to praise and to build on.
    Strength,
    /// Something that costs rallies.
    Fault,
}

/// One time it was seen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Sighting {
    /// The day.
    pub day: Day,
    /// The visit; `None` between visits.
    pub visit: Option<VisitId>,
    /// The lesson, if any.
    pub lesson: Option<LessonId>,
    /// Where in play, as in "game 2"; empty where not said.
    pub place: String,
}

/// An observation with every time it was seen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Observation {
    /// Which one.
    pub id: ObservationId,
    /// Whose.
    pub student: StudentId,
    /// Strength or fault.
    pub kind: ObservationKind,
    /// The skill it is about; empty for none in particular.
    pub skill: String,
    /// What was seen, in the coach's words.
    pub words: String,
    /// The goal it became, if any.
    pub goal: Option<GoalId>,
    /// Every time, oldest first.
    pub seen: Vec<Sighting>,
    /// How often, in words: "third time, two visits".
    pub often: String,
}

/// Which observation.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The observation.
    pub observation: ObservationId,
}

impl ObservationKind {
    /// As said on screen and in history.
    pub fn words(self) -> &'static str {
        match self {
            Self::Strength => "strength",
            Self::Fault => "fault",
        }
    }
}

/// "first time", "third time, two visits", "ninth time, three visits".
fn often(seen: &[Sighting]) -> String {
    let mut visits: Vec<VisitId> = seen.iter().filter_map(|s| s.visit).collect();
    visits.sort_unstable();
    visits.dedup();
    let times = format!("{} time", nth(seen.len()));
    match visits.len() {
        0 | 1 => times,
        n => format!("{times}, {} visits", some(n)),
    }
}

const NTH: [&str; 12] = [
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth",
    "eleventh", "twelfth",
];

const SOME: [&str; 11] =
    ["two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/// "ninth", "21st", "112th".
fn nth(n: usize) -> String {
    if let Some(word) = n.checked_sub(1).and_then(|at| NTH.get(at)) {
        return (*word).to_owned();
    }
    let ending = match (n % 10, n % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    };
    format!("{n}{ending}")
}

/// "two" to "twelve", then figures.
fn some(n: usize) -> String {
    n.checked_sub(2).and_then(|at| SOME.get(at)).map_or_else(|| n.to_string(), |w| (*w).to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_and_visits_are_said_in_words() {
        let visit = |n: u128| Some(VisitId::from(uuid::Uuid::from_u128(n)));
        let said = |visits: &[Option<VisitId>]| {
            let day = Day::of(2026, 3, 1).unwrap();
            let seen: Vec<_> = visits
                .iter()
                .map(|visit| Sighting { day, visit: *visit, lesson: None, place: String::new() })
                .collect();
            often(&seen)
        };
        assert_eq!(said(&[visit(1)]), "first time");
        assert_eq!(said(&[visit(1), visit(1)]), "second time");
        assert_eq!(said(&[None, visit(1), visit(2)]), "third time, two visits");
        let nine: Vec<_> = (0..9).map(|n| visit(n / 3)).collect();
        assert_eq!(said(&nine), "ninth time, three visits");
        let many: Vec<_> = (0..113).map(visit).collect();
        assert_eq!(said(&many), "113th time, 113 visits");
        assert_eq!([nth(21), nth(22), nth(111)], ["21st", "22nd", "111th"]);
    }
}
