//! Planning the days of everyone who comes: what each student wishes for, the best plan for all of
//! them, why each lesson is where it is, and which small change would make room for one that found
//! none.
//!
//! [`gather`] reads what a plan stands on out of the coach file, [`board`] turns that into numbers
//! for the planner and back, and [`jobs`] lets the planner run beside everything else.

mod board;
mod changes;
mod gather;
mod jobs;
mod propose;
mod room;
mod store;
mod take;
mod weigh;
mod why;
mod wish;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use gather::MOST_DAYS;
pub use jobs::{BeginPlan, PlanBegun, PlanLook, PlanStage, WhichJob, begin, look, stop};
pub use room::{Room, RoomOnCourt, room_for_lessons};
pub use take::{TakeLine, TakeLines, take};
pub use weigh::{Weigh, Weighed, weigh};
pub use wish::{MayShare, SetWish, WishOf, clear_wish, set_wish, wish};

use crate::kinds::ids::{CourtId, FacilityId, LessonId, StudentId, VisitId};
use crate::kinds::{Day, Time};
pub use crate::planner::Wish as Prefer;

/// What the student of a visit wishes for; the form and the record are the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct VisitWish {
    /// How many lessons in all.
    pub lessons: i64,
    /// How long each is, in minutes.
    pub minutes: i64,
    /// At most so many a day.
    pub per_day: i64,
    /// Minutes of rest between two on a day, at least.
    pub rest: i64,
    /// On the first day not before this time, HH:MM; empty for any.
    pub arrives: String,
    /// On the last day not after this time.
    pub leaves: String,
    /// On every day not before this time.
    pub earliest: String,
    /// On every day not after this time.
    pub latest: String,
    /// The hours liked best, from.
    pub best_from: String,
    /// Until.
    pub best_to: String,
    /// The court liked best.
    pub court: Option<CourtId>,
    /// What a lesson that finds no place counts: 1 as usual, to 3.
    pub weight: i64,
    /// What else was said.
    pub note: String,
    /// Those of the lessons that others share.
    pub shared: Vec<SharedLessons>,
}

/// Lessons of a wish that others share, on one court at one time.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct SharedLessons {
    /// So many of the wish's lessons.
    pub lessons: i64,
    /// The visits of those who share them. They need not wish for lessons of their own, and these
    /// come on top of what they do wish for.
    pub with: Vec<VisitId>,
}

impl Default for VisitWish {
    fn default() -> Self {
        Self {
            lessons: 0,
            minutes: 60,
            per_day: 1,
            rest: 0,
            arrives: String::new(),
            leaves: String::new(),
            earliest: String::new(),
            latest: String::new(),
            best_from: String::new(),
            best_to: String::new(),
            court: None,
            weight: 1,
            note: String::new(),
            shared: Vec::new(),
        }
    }
}

/// What to plan.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskPlan {
    /// The first day.
    pub first: Day,
    /// The last day.
    pub last: Day,
    /// Whose visits; none for everyone who wishes for lessons on these days.
    #[serde(default)]
    pub visits: Vec<VisitId>,
    /// Where; none for the facilities of those visits.
    #[serde(default)]
    pub facilities: Vec<FacilityId>,
    /// What ranks after the missing lessons, the most wished for first; none for the usual order.
    #[serde(default)]
    pub order: Vec<Prefer>,
    /// Lines of a plan that stay where they are.
    #[serde(default)]
    pub locked: Vec<PlanPlace>,
    /// What is taken to be otherwise than it is.
    #[serde(default)]
    pub changes: Vec<WhatIf>,
}

/// Where a lesson of a plan is.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanPlace {
    /// Whose.
    pub visit: VisitId,
    /// Who shares it, by their visits; none for a lesson of one student alone.
    #[serde(default)]
    pub with: Vec<VisitId>,
    /// On which court.
    pub court: CourtId,
    /// On which day.
    pub day: Day,
    /// When it begins on the facility's clock.
    pub starts: Time,
}

/// Something taken to be otherwise than it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum WhatIf {
    /// The student arrives earlier on the first day.
    ArriveEarlier {
        /// Whose visit.
        visit: VisitId,
        /// By so many minutes.
        minutes: u32,
    },
    /// The student leaves later on the last day.
    LeaveLater {
        /// Whose visit.
        visit: VisitId,
        /// By so many minutes.
        minutes: u32,
    },
    /// The student comes a day earlier.
    DayBefore {
        /// Whose visit.
        visit: VisitId,
    },
    /// The student stays a day longer.
    DayAfter {
        /// Whose visit.
        visit: VisitId,
    },
    /// The student has one lesson a day more.
    OneMoreADay {
        /// Whose visit.
        visit: VisitId,
    },
    /// The student takes lessons earlier in the day.
    EarlierHours {
        /// Whose visit.
        visit: VisitId,
        /// By so many minutes.
        minutes: u32,
    },
    /// The student takes lessons later in the day.
    LaterHours {
        /// Whose visit.
        visit: VisitId,
        /// By so many minutes.
        minutes: u32,
    },
    /// The coach begins earlier on a day.
    BeginEarlier {
        /// Which day.
        day: Day,
        /// By so many minutes.
        minutes: u32,
    },
    /// The coach goes on later on a day.
    GoOnLater {
        /// Which day.
        day: Day,
        /// By so many minutes.
        minutes: u32,
    },
    /// The coach teaches more minutes a day.
    LongerDays {
        /// So many.
        minutes: u32,
    },
    /// The coach teaches more minutes a week.
    LongerWeeks {
        /// So many.
        minutes: u32,
    },
    /// Something in the coach's own time is moved out of the way on a day.
    Without {
        /// Which day.
        day: Day,
        /// What.
        what: String,
    },
    /// Courts of another facility are taken as well.
    AlsoAt {
        /// Which.
        facility: FacilityId,
    },
}

/// A lesson of a plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PlannedLesson {
    /// Where and when.
    pub place: PlanPlace,
    /// The lesson, where it stands already.
    pub lesson: Option<LessonId>,
    /// Whether it was locked.
    pub locked: bool,
    /// The students, in the order of their visits in the place.
    pub students: Vec<StudentId>,
    /// Their names, as in "Ana and Ben".
    pub name: String,
    /// When it ends.
    pub ends: Time,
    /// The facility.
    pub facility: FacilityId,
    /// Its name.
    pub facility_name: String,
    /// The court's name.
    pub court_name: String,
    /// What the court costs, as in "18.00 EUR"; empty when no rule says.
    pub cost: String,
    /// From when the court can be asked for, as a sentence; empty when no rule says.
    pub ask_words: String,
    /// Why it is there.
    pub why: String,
    /// What speaks against it, a sentence each.
    pub against: Vec<String>,
}

/// Lessons that found no place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct LessonsMissing {
    /// Whose visit.
    pub visit: VisitId,
    /// Who shares them, by their visits.
    pub with: Vec<VisitId>,
    /// Their names, as in "Ana and Ben".
    pub name: String,
    /// How many.
    pub lessons: u32,
    /// What stands in their way, a sentence for each day.
    pub why: Vec<String>,
}

/// Hours of the coach on a day in which a lesson could still be sold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FreeHours {
    /// The day.
    pub day: Day,
    /// From.
    pub from: Time,
    /// Until; 00:00 is the day's end.
    pub to: Time,
}

/// A plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PlanMade {
    /// Whether it was proven that none is better.
    pub proven: bool,
    /// Its lessons, by day and time.
    pub lines: Vec<PlannedLesson>,
    /// The lessons that found no place.
    pub missing: Vec<LessonsMissing>,
    /// What its courts cost, one amount for each currency.
    pub cost: Vec<String>,
    /// On how many days there are lessons.
    pub days: u32,
    /// How many facilities are gone to, each day counted.
    pub trips: u32,
    /// What it comes to: missing, spread, cost in smallest units, distance from what is liked best.
    pub sums: [i64; 4],
    /// What its facilities ask besides, which the planner does not watch: a sentence each, behind the
    /// facility's name.
    pub mind: Vec<String>,
    /// Hours in which the coach is still free and a court may be had.
    pub free: Vec<FreeHours>,
}

/// A change that would make room for more lessons, tried out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WouldFree {
    /// The change.
    pub change: WhatIf,
    /// As a sentence.
    pub words: String,
    /// So many lessons more find a place.
    pub lessons: u32,
}
