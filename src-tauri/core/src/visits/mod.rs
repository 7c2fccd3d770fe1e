//! Visits: runs of days with one student in one town, or only expected. Opening a visit carries the
//! student's goals into it.

mod day_at;
mod life;
mod list;
mod plan;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use day_at::day_at;
pub use life::{CallOffVisit, call_off, close, open, reopen};
pub use list::{ListVisits, any, around, expected_by, list, running, show};
pub use plan::{ChangeVisit, ExpectVisit, PlanVisit, change, expect, plan};

use crate::kinds::ids::{FacilityId, StudentId, VisitId};
use crate::kinds::{Day, Language, Span};

/// Where a visit is in its life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// Only expected: no days yet.
    Expected,
    /// Days agreed.
    Planned,
    /// Started: goals were carried, and blocks can be recorded.
    Open,
    /// Over.
    Closed,
    /// Called off.
    CalledOff,
}

/// A visit as stored.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Visit {
    /// Which one.
    pub id: VisitId,
    /// Whose.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The facility, once known.
    pub facility: Option<FacilityId>,
    /// Its name and town, or empty.
    pub place: String,
    /// Its zone, or empty.
    pub zone: String,
    /// The days, once agreed.
    pub days: Option<Span>,
    /// While only expected: the span in which it may fall.
    pub expected: Option<Span>,
    /// Where it is in its life.
    pub stage: Stage,
    /// A word under its column, as in "late flight".
    pub note: String,
    /// Why it was called off.
    pub reason: String,
    /// How many goals are at it.
    pub goals: u32,
}

/// Which visit.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The visit.
    pub visit: VisitId,
}

impl Visit {
    /// "11 – 14 March 2026", or "expected May 2026".
    pub fn when(&self) -> String {
        match (self.days, self.expected) {
            (Some(days), _) => days.words(),
            (None, Some(span)) => format!("expected {}", expected_words(span)),
            (None, None) => String::new(),
        }
    }

    /// The first day it can be at.
    pub fn from(&self) -> Option<Day> {
        self.days.or(self.expected).map(|span| span.first)
    }
}

/// "around May 2026" for a whole month, else the span.
pub fn expected_words(span: Span) -> String {
    if span.is_whole_month() {
        format!("around {}", Language::En.month(span.first))
    } else {
        span.words()
    }
}
