//! Costs of some days, with their sums by currency, kind and month.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Cost, CostKind, store};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::{Currency, Day, Span};

/// The most days at once: a year of 366.
const MOST_DAYS: i64 = 366;

/// Costs of which days.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CostsOf {
    /// The first day.
    pub first: Day,
    /// The last day.
    pub last: Day,
}

/// What costs of one kind come to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostKindSum {
    /// The kind.
    pub kind: CostKind,
    /// Their sum, a decimal.
    pub amount: String,
}

/// What costs of one month come to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostMonth {
    /// The first day of the month.
    pub month: Day,
    /// Their sum, a decimal.
    pub amount: String,
}

/// Sums in one currency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostSum {
    /// The currency.
    pub currency: String,
    /// All of it, a decimal.
    pub amount: String,
    /// By kind.
    pub kinds: Vec<CostKindSum>,
    /// By the month in which each cost began.
    pub months: Vec<CostMonth>,
}

/// Costs and their sums.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Costs {
    /// The costs, the newest first, those taken back among them.
    pub costs: Vec<Cost>,
    /// Sums by currency, without those taken back.
    pub sums: Vec<CostSum>,
}

/// Costs of some days: those that begin on them.
///
/// # Errors
/// `Refused` when the last day is before the first, or there are more days than a year has.
pub fn list(db: &Reading<'_>, of: CostsOf) -> Result<Costs> {
    let days = Span { first: of.first, last: of.last };
    if days.last < days.first {
        return Err(Error::field("last", "before", "The last day is before the first."));
    }
    if days.days() > MOST_DAYS {
        return Err(Error::field("last", "too_long", "Ask for one year at most."));
    }
    let costs = store::within(db, days)?;
    let mut sums: BTreeMap<&str, Sum> = BTreeMap::new();
    for cost in costs.iter().filter(|cost| cost.taken_back.is_none()) {
        let Some(currency) = Currency::parse(&cost.currency) else { continue };
        let minor = currency.minor(&cost.amount).unwrap_or_default();
        let sum = sums.entry(currency.code()).or_insert_with(|| Sum::of(currency));
        sum.amount += minor;
        *sum.kinds.entry(cost.kind).or_default() += minor;
        *sum.months.entry(month_of(cost.day)).or_default() += minor;
    }
    let sums = sums.into_values().map(Sum::said).collect();
    Ok(Costs { costs, sums })
}

struct Sum {
    currency: Currency,
    amount: i64,
    kinds: BTreeMap<CostKind, i64>,
    months: BTreeMap<Day, i64>,
}

impl Sum {
    fn of(currency: Currency) -> Self {
        Self { currency, amount: 0, kinds: BTreeMap::new(), months: BTreeMap::new() }
    }

    fn said(self) -> CostSum {
        let plain = |minor: i64| self.currency.plain(minor);
        CostSum {
            currency: self.currency.code().to_owned(),
            amount: plain(self.amount),
            kinds: self
                .kinds
                .iter()
                .map(|(kind, minor)| CostKindSum { kind: *kind, amount: plain(*minor) })
                .collect(),
            months: self
                .months
                .iter()
                .map(|(month, minor)| CostMonth { month: *month, amount: plain(*minor) })
                .collect(),
        }
    }
}

fn month_of(day: Day) -> Day {
    let date = day.date();
    Day::of(chrono::Datelike::year(&date), chrono::Datelike::month(&date), 1).unwrap_or(day)
}
