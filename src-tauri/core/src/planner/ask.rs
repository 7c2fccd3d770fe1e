//! What is asked of the planner, and what makes an ask impossible to answer.
//!
//! Times are minutes after local midnight, days are numbered from 0, ranges are from (included) to
//! (not included).

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Planned;

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// Lessons start on multiples of so many minutes.
    pub grid: u32,
    /// How many days.
    pub days: u32,
    /// The facilities.
    pub facilities: Vec<Facility>,
    /// The courts.
    pub courts: Vec<Court>,
    /// The coach.
    pub coach: Coach,
    /// The students.
    pub students: Vec<Student>,
    /// Lessons that stand already and stay where they are; each counts as one of its student's.
    pub locked: Vec<Planned>,
    /// Limits over several days in a row.
    pub limits: Vec<Limit>,
    /// What ranks after the missing lessons, the most wished for first; each wish once.
    pub order: [Wish; 3],
}

/// A limit over several days in a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limit {
    /// Of the lessons at this facility; `None` for all that the coach gives.
    pub facility: Option<usize>,
    /// From this day.
    pub first: u32,
    /// To this one, included.
    pub last: u32,
    /// The most minutes of lessons on these days.
    pub minutes: u32,
}

impl Limit {
    /// Whether a day is one of its days.
    pub(super) fn holds(&self, day: u32) -> bool {
        (self.first..=self.last).contains(&day)
    }
}

/// What a plan is wished to be, once no more lessons fit in.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Wish {
    /// Lessons spread over the days of each student, few facilities a day.
    Spread,
    /// Cheap courts.
    Cost,
    /// The hours and the court each student likes best.
    Times,
}

impl Wish {
    /// The usual order.
    pub const USUAL: [Wish; 3] = [Wish::Spread, Wish::Cost, Wish::Times];
}

/// A facility.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Facility {
    /// Its hours, for each day; an empty range is a closed day.
    pub hours: Vec<[u32; 2]>,
    /// Lessons there start on multiples of so many minutes; 0 for those of the grid.
    pub step: u32,
    /// The longest unbroken run on one court, in minutes.
    pub longest_run: u32,
    /// The most minutes of lessons a day.
    pub day_limit: u32,
    /// The most lessons a day, each of which is a booking.
    pub day_bookings: u32,
    /// Only days before this one can be booked.
    pub days_bookable: u32,
}

/// A court.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Court {
    /// Its facility.
    pub facility: usize,
    /// What an hour costs, in minor units: day, from, to, price. The first row that holds; none
    /// costs nothing.
    pub prices: Vec<[u32; 4]>,
    /// What each lesson costs besides, in minor units.
    pub fee: u32,
    /// When it is taken: day, from, to.
    pub taken: Vec<[u32; 3]>,
}

/// The coach.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Coach {
    /// When the coach is busy: day, from, to.
    pub busy: Vec<[u32; 3]>,
    /// Minutes from each facility to each other, never longer than by way of a third.
    pub travel: Vec<Vec<u32>>,
    /// The most minutes of lessons a day.
    pub day_limit: u32,
    /// The most minutes of lessons without a free slot of the grid.
    pub longest_run: u32,
    /// The meals, at most one a day.
    pub meals: Vec<Meal>,
}

/// A meal that may move: one run of so many minutes is kept free of lessons.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meal {
    /// The day.
    pub day: u32,
    /// How long it is, in minutes.
    pub minutes: u32,
    /// Inside one of these ranges. Where none of them is long enough, the day has no meal.
    pub spans: Vec<[u32; 2]>,
}

/// A student, or several who share lessons.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Student {
    /// Not before this day and minute.
    pub arrive: [u32; 2],
    /// Not past this day and minute.
    pub depart: [u32; 2],
    /// Inside these hours of each day.
    pub hours: [u32; 2],
    /// How many lessons are wished for.
    pub lessons: u32,
    /// How long each is, in minutes.
    pub length: u32,
    /// At most so many a day.
    pub per_day: u32,
    /// At least so many minutes between two of them on a day.
    pub rest: u32,
    /// The hours liked best.
    pub prefer: [u32; 2],
    /// The court liked best.
    pub prefer_court: Option<usize>,
    /// What a lesson that finds no place counts.
    pub priority: u32,
    /// Of lessons that are shared: who takes part, each by the place of their own entry; none for an
    /// entry of one student alone. Arrival, departure and hours are those in which all of them can.
    /// What an entry says of lessons a day and of rest holds for all lessons in which its student
    /// takes part, so that of a shared entry only the lessons a day are looked at, as a limit of its
    /// own.
    pub people: Vec<usize>,
}

/// The minutes of a day.
pub const DAY: u32 = 1440;

impl Ask {
    /// Who takes part in an entry's lessons.
    pub(super) fn people(&self, student: usize) -> Vec<usize> {
        match self.students[student].people.as_slice() {
            [] => vec![student],
            several => several.to_vec(),
        }
    }

    /// A day's meal: its minutes, and the ranges long enough for it, in order and apart from each
    /// other.
    pub(super) fn meal(&self, day: u32) -> Option<(u32, Vec<[u32; 2]>)> {
        let meal = self.coach.meals.iter().find(|meal| meal.day == day && meal.minutes > 0)?;
        let mut spans = meal.spans.clone();
        spans.sort_unstable();
        let mut joined: Vec<[u32; 2]> = Vec::new();
        for span in spans {
            match joined.last_mut() {
                Some(last) if span[0] <= last[1] => last[1] = last[1].max(span[1]),
                _ => joined.push(span),
            }
        }
        joined.retain(|[from, to]| to.saturating_sub(*from) >= meal.minutes);
        (!joined.is_empty()).then_some((meal.minutes, joined))
    }

    /// The lessons locked on a day.
    pub(super) fn locked_on(&self, day: u32) -> impl Iterator<Item = &Planned> {
        self.locked.iter().filter(move |lesson| lesson.day == day)
    }

    /// So many whole slots of the grid in a span, rounded up.
    pub(super) fn slots_up(&self, minutes: u32) -> u32 {
        minutes.div_ceil(self.grid)
    }

    /// So many whole slots of the grid in a span, rounded down.
    pub(super) fn slots_down(&self, minutes: u32) -> u32 {
        minutes / self.grid
    }

    /// The slots of a day; an odd end of the day that holds no whole slot is left out.
    pub(super) fn day_slots(&self) -> u32 {
        DAY / self.grid
    }

    /// How many slots a student's lesson takes.
    pub(super) fn length(&self, student: usize) -> u32 {
        self.slots_up(self.students[student].length)
    }

    /// The days a student is there, both ends included, as far as the plan reaches.
    pub(super) fn days_there(&self, student: usize) -> u32 {
        let s = &self.students[student];
        (s.depart[0] + 1).saturating_sub(s.arrive[0])
    }

    /// The most days on which a student can have a lesson.
    pub(super) fn most_days(&self, student: usize) -> u32 {
        self.students[student].lessons.min(self.days_there(student))
    }

    /// What an hour on a court costs when a lesson's slot starts at this minute, in minor units.
    fn rate(&self, court: usize, day: u32, minute: u32) -> u32 {
        let holds = |row: &&[u32; 4]| row[0] == day && (row[1]..row[2]).contains(&minute);
        self.courts[court].prices.iter().find(holds).map_or(0, |row| row[3])
    }

    /// What the court of a lesson costs, in minor units: each slot by the rate at its start, the sum
    /// rounded down, and the fee.
    pub(super) fn court_cost(&self, student: usize, court: usize, day: u32, start: u32) -> i64 {
        let rate = |n: u32| i64::from(self.rate(court, day, start + n * self.grid));
        let sum: i64 = (0..self.length(student)).map(|n| rate(n) * i64::from(self.grid)).sum();
        sum / 60 + i64::from(self.courts[court].fee)
    }

    /// How far a lesson is from what the student likes best, in slots of the grid; another court
    /// than the preferred one counts two.
    pub(super) fn off(&self, student: usize, court: usize, start: u32) -> i64 {
        let s = &self.students[student];
        let end = start + self.length(student) * self.grid;
        let early = s.prefer[0].saturating_sub(start);
        let late = end.saturating_sub(s.prefer[1]);
        let other = s.prefer_court.is_some_and(|liked| liked != court);
        i64::from(early.max(late) / self.grid) + if other { 2 } else { 0 }
    }
}
