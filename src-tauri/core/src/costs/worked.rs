//! Amounts worked out from rates: so far driven, so many days away.

use rust_decimal::Decimal;

use super::rates::{CostRate, rate_on};
use super::{Per, store};
use crate::app::Reading;
use crate::error::{Problems, Result};
use crate::kinds::{Currency, Day, Span, decimal};
use crate::money::Fraction;

/// The longest drive, in its unit: more is a slip.
const FARTHEST: u32 = 20_000;

/// An amount, and how it came about.
pub struct Amount {
    /// The currency.
    pub currency: Currency,
    /// In smallest units.
    pub minor: i64,
    /// As in "214 mi × 0.725 USD, Notice 2026-10"; empty for an amount as typed.
    pub worked: String,
}

/// The length of a drive as typed: above 0, at most one decimal, with a point or a comma.
pub(super) fn length(p: &mut Problems, typed: &str) -> Option<Decimal> {
    let length = decimal(typed).filter(|length| {
        *length > Decimal::ZERO
            && *length <= Decimal::from(FARTHEST)
            && length.normalize().scale() <= 1
    });
    if length.is_none() {
        let words = if typed.trim().is_empty() {
            "Say how far it was.".to_owned()
        } else {
            format!(
                "\u{201c}{}\u{201d} is no length: above 0, at most {FARTHEST}, with one decimal at most.",
                typed.trim()
            )
        };
        p.add("distance", "no_length", words);
    }
    length
}

/// What a drive on a day comes to: its length times the rate of that day.
pub(super) fn drive(
    db: &Reading<'_>,
    p: &mut Problems,
    day: Day,
    length: Decimal,
    unit: Per,
) -> Result<Option<Amount>> {
    let Some(rate) = found(db, p, "day", unit, day)? else { return Ok(None) };
    let Some((currency, each)) = rate.read() else { return Ok(None) };
    let minor = times(currency, length, each);
    if minor.is_none() {
        p.add("distance", "too_large", "This comes to more than can be counted.");
    }
    let worked = format!(
        "{} {} \u{d7} {} {}, {}",
        length.normalize(),
        unit.unit(),
        each.normalize(),
        currency.code(),
        rate.source
    );
    Ok(minor.map(|minor| Amount { currency, minor, worked }))
}

/// What so many days away come to: each at the rate of that day, the first and the last at the part
/// of it that the rate says. One day alone is such a part too.
pub(super) fn day_rate(db: &Reading<'_>, p: &mut Problems, days: Span) -> Result<Option<Amount>> {
    let mut sum: Option<(Currency, i64)> = None;
    let mut told: Vec<(String, i64)> = Vec::new();
    let all = store::rates(db)?;
    for n in 0..days.days() {
        let day = days.first.plus(n);
        let field = if n == 0 { "day" } else { "last" };
        let Some(rate) = rate_on(&all, Per::Day, day) else {
            p.add(field, "no_rate", no_rate(Per::Day, day));
            return Ok(None);
        };
        let Some((currency, each)) = rate.read() else { return Ok(None) };
        let edge = day == days.first || day == days.last;
        let part = if edge { rate.part() } else { Decimal::ONE_HUNDRED };
        let Some(minor) = times(currency, part / Decimal::ONE_HUNDRED, each) else {
            return Ok(None);
        };
        let before = match sum {
            None => 0,
            Some((known, before)) if known == currency => before,
            Some((known, _)) => {
                let words = format!(
                    "The rates of these days are in {} and in {}. Note them as two costs.",
                    known.code(),
                    currency.code()
                );
                p.add("last", "two_currencies", words);
                return Ok(None);
            }
        };
        sum = Some((currency, before + minor));
        let words = if part == Decimal::ONE_HUNDRED {
            format!("{} {} ({})", each.normalize(), currency.code(), rate.source)
        } else {
            let part = part.normalize();
            format!("{part} % of {} {} ({})", each.normalize(), currency.code(), rate.source)
        };
        match told.iter_mut().find(|(known, _)| *known == words) {
            Some((_, many)) => *many += 1,
            None => told.push((words, 1)),
        }
    }
    let told: Vec<String> =
        told.into_iter().map(|(words, many)| format!("{many} \u{d7} {words}")).collect();
    Ok(sum.map(|(currency, minor)| Amount { currency, minor, worked: told.join(" + ") }))
}

fn found(
    db: &Reading<'_>,
    p: &mut Problems,
    field: &str,
    per: Per,
    day: Day,
) -> Result<Option<CostRate>> {
    let rate = rate_on(&store::rates(db)?, per, day).cloned();
    if rate.is_none() {
        p.add(field, "no_rate", no_rate(per, day));
    }
    Ok(rate)
}

/// That no rate is known for a day, and what to do about it.
pub(super) fn no_rate(per: Per, day: Day) -> String {
    format!(
        "You have no rate for a {} on {}. Write it down with its source first; it is not guessed.",
        per.words(),
        day.words()
    )
}

/// So many times a rate, in smallest units.
fn times(currency: Currency, many: Decimal, each: Decimal) -> Option<i64> {
    let unit = Fraction::whole(10_i64.checked_pow(currency.decimals())?);
    Fraction::decimal(many)?.times(Fraction::decimal(each)?)?.times(unit)?.rounded()
}
