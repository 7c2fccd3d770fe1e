//! Costs that are expected and not noted: what they would come to, by the same rates. Nothing of them is
//! kept.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::rates::rate_on;
use super::worked::{Amount, day_rate, drive, length, no_rate};
use super::{CostKind, Per, store};
use crate::app::Reading;
use crate::error::{Problems, Result};
use crate::kinds::{Day, Span};
use crate::money::typed;

/// The most nights of one cost.
const MOST_NIGHTS: i64 = 366;

/// A cost that is expected, as typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ExpectedCost {
    /// What it would be for.
    pub kind: CostKind,
    /// What it would be, in words; empty for its kind.
    #[serde(default)]
    pub words: String,
    /// Its day, or the first of a day rate, as YYYY-MM-DD; empty for the first of the days asked about.
    #[serde(default)]
    pub day: String,
    /// The last day of a day rate; empty for the last of the days asked about.
    #[serde(default)]
    pub last: String,
    /// The amount, of lodging for one night, a decimal; worked out for drives and day rates.
    #[serde(default)]
    pub amount: String,
    /// Its currency, an ISO 4217 code; that of the rate for drives and day rates.
    #[serde(default)]
    pub currency: String,
    /// So many nights of lodging; empty for one.
    #[serde(default)]
    pub nights: String,
    /// How far, for a drive: a decimal number.
    #[serde(default)]
    pub distance: String,
    /// Miles or kilometres, for a drive.
    #[serde(default)]
    pub unit: Option<Per>,
}

/// What an expected cost would come to.
pub struct Foreseen {
    /// Its day.
    pub day: Day,
    /// What it would be.
    pub words: String,
    /// How much; or what is not known, as a sentence.
    pub amount: std::result::Result<Amount, String>,
}

/// What a cost on some days would come to; `None` only when something is typed wrong. A rate that is
/// missing is asked for, not refused.
///
/// # Errors
/// `Storage`.
pub fn expected(
    db: &Reading<'_>,
    p: &mut Problems,
    given: &ExpectedCost,
    days: Span,
) -> Result<Option<Foreseen>> {
    let day = p.day_or_none("day", Some(&given.day), "The day").unwrap_or(days.first);
    let words = p.line("words", &given.words, "What it would be for");
    let words = if words.is_empty() { given.kind.words().to_owned() } else { words };
    let amount = match given.kind {
        CostKind::Drive => {
            let unit = given.unit.filter(|unit| *unit != Per::Day);
            if unit.is_none() {
                p.add("unit", "missing", "Say whether these are miles or kilometres.");
            }
            let far = length(p, &given.distance);
            let Some((far, unit)) = far.zip(unit) else { return Ok(None) };
            match by_rate(db, unit, Span { first: day, last: day })? {
                Some(asks) => Some(Err(asks)),
                None => drive(db, p, day, far, unit)?.map(Ok),
            }
        }
        CostKind::DayRate => {
            let last = p.day_or_none("last", Some(&given.last), "The last day");
            let span = Span { first: day, last: last.unwrap_or(days.last.max(day)) };
            if span.last < span.first {
                p.add("last", "before", "The last day is before the first.");
                return Ok(None);
            }
            if span.days() > MOST_NIGHTS {
                p.add("last", "too_long", "Ask for one year at most.");
                return Ok(None);
            }
            match by_rate(db, Per::Day, span)? {
                Some(asks) => Some(Err(asks)),
                None => day_rate(db, p, span)?.map(Ok),
            }
        }
        _ => paid(p, given).map(Ok),
    };
    Ok(amount.map(|amount| Foreseen { day, words, amount }))
}

/// The first of some days for which there is no rate, as a sentence.
fn by_rate(db: &Reading<'_>, per: Per, days: Span) -> Result<Option<String>> {
    let rates = store::rates(db)?;
    let none = (0..days.days())
        .map(|n| days.first.plus(n))
        .find(|day| rate_on(&rates, per, *day).is_none());
    Ok(none.map(|day| no_rate(per, day)))
}

/// An amount as typed, of lodging times its nights.
fn paid(p: &mut Problems, given: &ExpectedCost) -> Option<Amount> {
    let nights = match given.nights.trim() {
        "" => Some(1),
        typed => typed.parse::<i64>().ok().filter(|nights| (1..=MOST_NIGHTS).contains(nights)),
    };
    if nights.is_none() {
        p.add("nights", "no_number", format!("A whole number from 1 to {MOST_NIGHTS}."));
    }
    if !given.nights.trim().is_empty() && given.kind != CostKind::Lodging {
        p.add("nights", "no_lodging", "Only lodging is counted by nights.");
    }
    let currency = typed::currency(p, "currency", &given.currency)?;
    let each = typed::amount(p, "amount", &given.amount, currency)?;
    let nights = nights?;
    let minor = each.checked_mul(nights)?;
    let worked = if nights > 1 {
        format!("{nights} nights \u{d7} {}", currency.words(each))
    } else {
        String::new()
    };
    Some(Amount { currency, minor, worked })
}
