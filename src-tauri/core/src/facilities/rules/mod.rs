//! A facility's rules of booking, as its own page or desk states them: when it is open, what an hour
//! costs whom, how long before it a court can be had, until when it can be given back.
//!
//! They are data: a list of rows is read from the top, and the first row that fits holds. What no
//! row says is not known, which is not the same as free or forbidden; whoever asks gets to see that.
//! The program books nothing and enforces nothing at a club: it says what to ask for and when.

mod read;
mod set;
mod store;
mod terms;
#[cfg(test)]
mod tests;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use read::{hours as read_hours, times as read_times, weekdays as read_weekdays};
pub use set::{SetRules, rules, set_rules};
pub use terms::{AskTerms, Given, Terms, court_cost, hours_on, of as terms_of, terms};

use crate::kinds::ids::CourtId;

/// A facility's rules of booking; the form and the record are the same. 0 and an empty text mean
/// that the rule is not known or not made.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Rules {
    /// The currency of its prices, an ISO 4217 code.
    pub currency: String,
    /// What the coach is there, as its rows name it: member, guest.
    pub books_as: String,
    /// When it is open.
    pub hours: Vec<Hours>,
    /// When it, or a court of it, cannot be booked.
    pub closures: Vec<Closure>,
    /// What an hour costs; the first row that fits.
    pub rates: Vec<Rate>,
    /// How long before it a court can be booked; the first row that fits.
    pub ahead: Vec<Ahead>,
    /// Until when a court can be given back.
    pub release: Vec<Release>,
    /// Bookings start on multiples of so many minutes after the hour.
    pub grid: i64,
    /// The shortest booking, in minutes.
    pub shortest: i64,
    /// The longest booking, in minutes.
    pub longest: i64,
    /// The most minutes a day.
    pub day_limit: i64,
    /// The most minutes in any seven days.
    pub week_limit: i64,
    /// The most bookings a day.
    pub day_bookings: i64,
    /// No two bookings in a row.
    pub apart: bool,
    /// One booking is played before the next can be made.
    pub one_by_one: bool,
    /// The most people on a court.
    pub people: i64,
    /// What each booking costs besides, a decimal amount.
    pub booking_fee: String,
    /// What each guest costs, a decimal amount.
    pub guest_fee: String,
    /// So many minutes late, a court is lost.
    pub grace: i64,
    /// A court that weather takes costs nothing.
    pub weather_free: bool,
    /// The youngest who may book, in years.
    pub youngest: i64,
    /// What everyone on court needs, as in eye protection.
    pub needs: String,
    /// Where these rules stand: a page, a notice, the desk.
    pub source: String,
    /// The day they were read there, as YYYY-MM-DD.
    pub source_seen: String,
}

/// When a facility is open.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Hours {
    /// On which days of the week, 1 for Monday to 7 for Sunday (ISO 8601); none for every day.
    pub weekdays: Vec<u8>,
    /// From this time, HH:MM.
    pub opens: String,
    /// Until this time; 00:00 is the day's end.
    pub closes: String,
    /// In a season from this day; empty for always.
    pub first: String,
    /// In a season until this day.
    pub last: String,
}

/// When a facility, or a court of it, cannot be booked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Closure {
    /// One court; left out for all.
    pub court: Option<CourtId>,
    /// From this day; empty for always.
    pub first: String,
    /// Until this day.
    pub last: String,
    /// On which days of the week; none for every day.
    pub weekdays: Vec<u8>,
    /// From this time; empty for the whole day.
    pub starts: String,
    /// Until this time; 00:00 is the day's end.
    pub ends: String,
    /// Why: open play, a tournament, a holiday.
    pub reason: String,
}

/// What an hour costs.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Rate {
    /// For whom, as in member; empty for everyone.
    pub who: String,
    /// On which kind of court, as in outdoor; empty for every court.
    pub ground: String,
    /// On which days of the week; none for every day.
    pub weekdays: Vec<u8>,
    /// From this time; empty for the whole day.
    pub starts: String,
    /// Until this time; 00:00 is the day's end.
    pub ends: String,
    /// The price of an hour, a decimal amount.
    pub hour: String,
}

/// What an amount before a booking is counted in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum AheadUnit {
    /// Hours as they pass.
    Hours,
    /// Days on the calendar.
    #[default]
    Days,
    /// Months on the calendar: the same day of the month, or its last.
    Months,
}

/// How long before it a court can be booked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Ahead {
    /// For whom; empty for everyone.
    pub who: String,
    /// On which kind of court; empty for every court.
    pub ground: String,
    /// How many.
    pub amount: i64,
    /// Of what.
    pub unit: AheadUnit,
    /// At this time of that day, HH:MM; empty for midnight. Not with hours.
    pub opens: String,
}

/// How the hours before a booking are counted where the clocks change in between.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CountedBy {
    /// As they pass.
    #[default]
    Elapsed,
    /// By the clock on the wall.
    Wall,
}

/// What a court costs that is given back too late.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Later {
    /// The whole price.
    #[default]
    Full,
    /// A fee.
    Fee,
    /// Nothing.
    Nothing,
}

/// Until when a court can be given back without this cost.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Release {
    /// On which kind of court; empty for every court.
    pub ground: String,
    /// Until so many hours before it begins, that moment included.
    pub hours: i64,
    /// How those hours are counted.
    pub counted: CountedBy,
    /// What it costs after that.
    pub later: Later,
    /// The fee, a decimal amount.
    pub fee: String,
}

crate::db::words! {
    AheadUnit { Hours = "hours", Days = "days", Months = "months" }
    CountedBy { Elapsed = "elapsed", Wall = "wall" }
    Later { Full = "full", Fee = "fee", Nothing = "nothing" }
}
