//! The coach's own time: when lessons can be given at all, how much of it a day, the way from one
//! facility to another, and what else stands in the calendar.

mod busy;
mod calendar_store;
mod calendars;
mod store;
mod week;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use busy::{ChangeBusy, ListBusy, Occupied, WhichBusy, add, change, list, occupied, remove};
pub use calendars::{
    CalendarPart, CalendarRole, NewParts, OwnCalendar, WhichCalendar, add_calendar, behind,
    calendar, calendar_token, calendars, forget_events, home, keep_parts, remove_calendar,
    work_out_anew,
};
pub use week::{Allowed, Meal, allowed, set, show, ways};

use crate::facilities::Hours;
use crate::kinds::ids::{BusyId, FacilityId};

/// The coach's week and its limits; the form and the record are the same. 0 and an empty text mean
/// no such limit.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OwnTime {
    /// When lessons can be given, on the clock of wherever they are; none for any hour.
    pub hours: Vec<Hours>,
    /// The most minutes of lessons a day.
    pub day_limit: i64,
    /// The most minutes of lessons a week, from Monday to Sunday (ISO 8601).
    pub week_limit: i64,
    /// The most minutes of lessons without a break.
    pub longest_run: i64,
    /// A meal is kept free each day from this time; empty for none.
    pub meal_starts: String,
    /// Until this time.
    pub meal_ends: String,
    /// The meal's minutes, somewhere between these times; 0 for all the time between. Time that
    /// something else takes is not free for a meal; a day on which such things alone leave no time
    /// for it has none.
    pub meal_minutes: i64,
    /// Minutes from one facility to another, where no way below says more.
    pub travel: i64,
    /// The ways that take longer or shorter than that, both directions alike.
    pub ways: Vec<Way>,
}

/// The way between two facilities.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Way {
    /// One of them.
    pub one: FacilityId,
    /// The other.
    pub other: FacilityId,
    /// The minutes from door to door.
    pub minutes: i64,
}

/// How often something comes again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Again {
    /// Not at all: once, or each day of a span.
    #[default]
    Never,
    /// Every week on its days.
    EveryWeek,
    /// Every second week on its days.
    EverySecondWeek,
    /// Every month on that day of the month; a month without it is left out.
    EveryMonth,
    /// Every month on that weekday, the first to the fourth, or the last.
    EveryMonthByWeekday,
}

crate::db::words! {
    Again {
        Never = "never",
        EveryWeek = "every_week",
        EverySecondWeek = "every_second_week",
        EveryMonth = "every_month",
        EveryMonthByWeekday = "every_month_by_weekday",
    }
}

/// Something that takes the coach's time; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Busy {
    /// What it is, as in league night.
    pub what: String,
    /// The first day, as YYYY-MM-DD.
    pub first: String,
    /// Of a span, its last day; of what comes again, the last day on which it can. Empty for the
    /// first day alone, and for without end.
    pub last: String,
    /// From this time on each of its days; empty for the whole day.
    pub starts: String,
    /// Until this time; 00:00 is the day's end.
    pub ends: String,
    /// The zone these times are in; empty for wherever the coach is.
    pub zone: String,
    /// How often it comes again.
    pub again: Again,
    /// Of what comes every week or second week: on which days, 1 for Monday; none for that of the
    /// first day.
    pub weekdays: Vec<u8>,
    /// Days on which it does not take place.
    pub except: Vec<String>,
}

/// Something that takes the coach's time, as stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BusyShown {
    /// Which one.
    pub id: BusyId,
    /// What is kept.
    pub busy: Busy,
    /// When, in words.
    pub words: String,
}
