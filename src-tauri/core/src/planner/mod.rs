//! The planner: which lessons, when and on which court, for everyone who is in town.
//!
//! It knows only minutes, days and courts by number; what they stand for, others know. An [`Ask`]
//! says who is there when, what the courts and the coach allow, and how many lessons are wished for;
//! a [`Plan`] is the best answer in a stated order of wishes, and says whether that was proven.
//!
//! # How it is found
//! One coach teaches one lesson at a time, so a day is a line of lessons, and the days touch each
//! other only through how many lessons each student has had. So there are two levels.
//!
//! 1. [`day`]: for each day and each choice of who is taught how often (a *choice*), the least that
//!    this day costs, by going through the day slot by slot with all ways of having come there.
//! 2. [`days`]: one choice a day. Prices for each student's lessons, found by linear programming,
//!    turn into an exact lower bound on what is still to come, and a best-first search goes through
//!    whatever that bound leaves.
//!
//! Several students may share lessons: they are one more entry of the ask, and what each of them may
//! have a day, and must rest, counts over all entries that name them. A limit over several days (the
//! coach's week, a facility's) is left out until a plan breaks it; then the second level adds it up
//! as it does lessons, and where it is a facility's, the first level tells each choice apart by how
//! much it uses of that facility.
//!
//! The rest between two lessons of one person on one day is left out of the first level, because
//! remembering it would multiply its work; what it then gives for such a choice is a lower bound. A
//! choice that the second level settles on is worked out exactly ([`order`]), and if it turns out
//! dearer or impossible, the second level runs again. All sums are whole numbers, so nothing depends
//! on rounding, and ties are broken by order, so the same ask gives the same plan.
//!
//! Before a plan is given out, [`check`] reads it with separate code.

mod ask;
mod check;
mod choices;
mod day;
mod days;
mod options;
mod order;
mod prices;
mod solve;
mod stance;
#[cfg(test)]
mod tests;

pub use ask::{Ask, Coach, Court, DAY, Facility, Limit, Meal, Student, Wish};
pub use check::{Broken, Rule, broken, keeps, objectives, sums};
pub use options::{Code, ruled_out};
pub use solve::plan;

use serde::Serialize;

/// A lesson of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Planned {
    /// Whose.
    pub student: usize,
    /// On which day.
    pub day: u32,
    /// At which minute after midnight.
    pub start: u32,
    /// On which court.
    pub court: usize,
}

/// Why starts of a day could not be had: how many pairs of a start and a court one thing rules out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Because {
    /// The day.
    pub day: u32,
    /// What rules them out, the first that does.
    pub code: Code,
    /// How many starts, each court by itself.
    pub starts: u32,
}

/// Lessons of a student that found no place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Unplaced {
    /// Whose.
    pub student: usize,
    /// How many.
    pub count: u32,
    /// What became of each day's starts.
    pub because: Vec<Because>,
}

/// The best plan found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Plan {
    /// Whether no plan is better.
    pub proven: bool,
    /// What it misses, its spread, its cost in minor units, its distance from what is preferred:
    /// each smaller is better.
    pub objectives: [i64; 4],
    /// The lessons, by day and time.
    pub lessons: Vec<Planned>,
    /// The lessons that found no place.
    pub unplaced: Vec<Unplaced>,
}

/// Why no plan was made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The ask is beyond what sums and tables hold, in words.
    TooLarge(String),
    /// A plan broke a rule on the separate reading, which is a fault of the program.
    Fault(String),
}
