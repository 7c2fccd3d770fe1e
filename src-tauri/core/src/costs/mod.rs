//! What the coach spends: on the way, under a roof, on courts, on being a coach. Each cost has its day
//! and what it was for; a receipt lies beside it. Drives and day rates are worked out from rates that
//! the coach wrote down with their source; a day without a rate is asked about, never guessed.
//!
//! All of it is a record for the coach and an adviser. What of it counts for tax, the program does not
//! say.

mod csv;
mod expected;
mod list;
mod note;
mod passed;
mod published;
mod rates;
mod store;
mod worked;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use csv::{COLUMNS, document};
pub use expected::{ExpectedCost, Foreseen, expected};
pub use list::{CostKindSum, CostMonth, CostSum, Costs, CostsOf, list};
pub use note::{ChangeCost, NoteCost, TakeBackCost, change, note, take_back};
pub use passed::{CostShare, left, pass, show};
pub use published::{PublishedRates, TakePublished, published, take_published};
pub use rates::{AddRate, CostRate, RateForm, WhichRate, add_rate, put_rate_away, rates};

use crate::intake::scans::ScanNamed;
use crate::kinds::ids::CostId;
use crate::kinds::{Currency, Day, Span};

/// What a cost was for.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum CostKind {
    /// A drive in the coach's own car, by its length.
    Drive,
    /// Train, bus, flight, taxi, ferry, tolls and parking.
    Fare,
    /// A night's lodging.
    Lodging,
    /// Meals, as paid.
    Meals,
    /// Meals by a rate for each day away.
    DayRate,
    /// A court.
    Court,
    /// Balls, racquets, anything used to teach.
    Equipment,
    /// Insurance, membership, certification, courses.
    Dues,
    /// Anything else.
    Other,
}

/// What a rate is for one of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Per {
    /// A mile driven.
    Mile,
    /// A kilometre driven.
    Km,
    /// A day away.
    Day,
}

crate::db::words! {
    CostKind {
        Drive = "drive", Fare = "fare", Lodging = "lodging", Meals = "meals", DayRate = "day_rate",
        Court = "court", Equipment = "equipment", Dues = "dues", Other = "other",
    }
    Per { Mile = "mile", Km = "km", Day = "day" }
}

impl CostKind {
    /// In the order of a list.
    pub const ALL: [Self; 9] = [
        Self::Drive,
        Self::Fare,
        Self::Lodging,
        Self::Meals,
        Self::DayRate,
        Self::Court,
        Self::Equipment,
        Self::Dues,
        Self::Other,
    ];

    /// As said in a document.
    pub fn words(self) -> &'static str {
        match self {
            Self::Drive => "drive",
            Self::Fare => "fare",
            Self::Lodging => "lodging",
            Self::Meals => "meals",
            Self::DayRate => "day rate",
            Self::Court => "court",
            Self::Equipment => "equipment",
            Self::Dues => "dues",
            Self::Other => "other",
        }
    }
}

impl Per {
    /// One of it, as in "a kilometre".
    pub fn words(self) -> &'static str {
        match self {
            Self::Mile => "mile",
            Self::Km => "kilometre",
            Self::Day => "day away",
        }
    }

    /// So many of it, as in "214 mi".
    pub fn unit(self) -> &'static str {
        match self {
            Self::Mile => "mi",
            Self::Km => "km",
            Self::Day => "day",
        }
    }
}

/// A cost as typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CostForm {
    /// What it was for.
    pub kind: CostKind,
    /// The day, or the first of several, as YYYY-MM-DD.
    pub day: String,
    /// The last day, for lodging and day rates; empty for one day.
    #[serde(default)]
    pub last: String,
    /// What it was, where, and for which purpose.
    pub words: String,
    /// The town.
    #[serde(default)]
    pub town: String,
    /// The amount, a decimal; worked out for drives and day rates.
    #[serde(default)]
    pub amount: String,
    /// Its currency, an ISO 4217 code; that of the rate for drives and day rates.
    #[serde(default)]
    pub currency: String,
    /// The tax contained in the amount, a decimal; empty while not known.
    #[serde(default)]
    pub tax: String,
    /// How far, for a drive: a decimal number.
    #[serde(default)]
    pub distance: String,
    /// Miles or kilometres, for a drive.
    #[serde(default)]
    pub unit: Option<Per>,
}

/// A cost as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Cost {
    /// Which one.
    pub id: CostId,
    /// What it was for.
    pub kind: CostKind,
    /// The first day.
    pub day: Day,
    /// The last day.
    pub last: Day,
    /// What it was.
    pub words: String,
    /// The town.
    pub town: String,
    /// The amount, a decimal.
    pub amount: String,
    /// Its currency.
    pub currency: String,
    /// The tax contained in it, a decimal; empty while not known.
    pub tax: String,
    /// How far, for a drive.
    pub distance: String,
    /// Miles or kilometres, for a drive.
    pub unit: Option<Per>,
    /// How the amount was worked out, with rate and source; empty for an amount as typed.
    pub worked: String,
    /// The receipt.
    pub receipt: Option<ScanNamed>,
    /// The day it was taken back.
    pub taken_back: Option<Day>,
    /// Why it was taken back.
    pub why: String,
    /// To whom it was passed on, and how much.
    pub passed: Vec<CostShare>,
    /// All of that, a decimal; empty for nothing.
    pub passed_on: String,
}

impl Cost {
    /// Its days.
    pub fn days(&self) -> Span {
        Span { first: self.day, last: self.last }
    }

    /// Its currency and amount, in smallest units.
    pub fn read(&self) -> Option<(Currency, i64)> {
        let currency = Currency::parse(&self.currency)?;
        Some((currency, currency.minor(&self.amount)?))
    }
}
