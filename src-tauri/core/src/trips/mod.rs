//! What a trip earns: for the days of a trip what its lessons came to, what it cost, what is left of that
//! for an hour on court and an hour away, beside earlier trips; the same before it is agreed; and costs
//! passed on to whoever was there.
//!
//! Earned is what the ledger says of these days, without tax. What is not entered yet (on a draft, to
//! settle, planned) is expected, and stands apart. No currency is ever added to another. Every sum is
//! told with the rows it is made of.

mod away;
mod courts;
mod expect;
mod others;
mod outlook;
mod pass_on;
mod result;
mod store;
mod sums;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use courts::{NoteTripCourts, TripCourts, note_courts};
pub use others::{TripCompared, others};
pub use outlook::{AskTripOutlook, TripBreakEven, TripOutlook, TripOutlookMoney, outlook};
pub use pass_on::{
    AskCostSplit, CostSplit, CostSplitBy, CostSplitShare, CostSplitStudent, CostsPassedOn, pass_on,
    split_proposal,
};
pub use result::{TripMoney, TripResult, result};

use crate::kinds::ids::{InvoiceId, PackageId};
use crate::kinds::{Day, Span};

/// Which trip, and how long the coach was away.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskTripResult {
    /// Its first day.
    pub first: Day,
    /// Its last day.
    pub last: Day,
    /// When the coach leaves home on the first day, HH:MM; empty while not said.
    #[serde(default)]
    pub leaves: String,
    /// When the coach is home again on the last day; empty while not said.
    #[serde(default)]
    pub returns: String,
}

/// What a row of a trip is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TripRowFor {
    /// A lesson.
    Lesson,
    /// A lesson that was called off late, or missed.
    Late,
    /// A court, charged to students.
    Court,
    /// Travel, charged to students: shares of costs, and what the coming itself costs them.
    Travel,
    /// A cost.
    Cost,
}

/// How sure a row of a trip is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TripRowFrom {
    /// Entered in the ledger, or noted as a cost.
    Entered,
    /// On a draft.
    Draft,
    /// A lesson that is over and not settled.
    ToSettle,
    /// A lesson to come, with its court.
    Planned,
    /// A cost that is only expected.
    Expected,
}

/// A row of a trip: the rows of a currency add up to its result.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripRow {
    /// What it is for.
    pub what: TripRowFor,
    /// How sure it is.
    pub from: TripRowFrom,
    /// The day it counts for.
    pub day: Day,
    /// What it is, in words.
    pub words: String,
    /// How much, a decimal: below 0 what it costs, or what was taken back.
    pub amount: String,
    /// The currency.
    pub currency: String,
    /// On which invoice or draft it stands.
    pub invoice: Option<InvoiceId>,
    /// Which package it was released from.
    pub package: Option<PackageId>,
}

/// How long the coach is away.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripAway {
    /// In minutes.
    pub minutes: i64,
    /// Whether it was said when the coach leaves and is home again; otherwise whole days are counted.
    pub said: bool,
    /// The same as a sentence.
    pub words: String,
}

/// The days of a trip as asked for.
fn days_of(first: Day, last: Day) -> crate::error::Result<Span> {
    use crate::error::Error;
    /// The most days of one trip.
    const MOST_DAYS: i64 = 62;
    let days = Span { first, last };
    if days.last < days.first {
        return Err(Error::field("last", "end_before_start", "The last day is before the first."));
    }
    if days.days() > MOST_DAYS {
        let words = format!("One trip has room for {MOST_DAYS} days; these are {}.", days.days());
        return Err(Error::field("last", "too_long", &words));
    }
    Ok(days)
}
