//! Rates by which drives and days away are counted: dated, each with its source.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Per, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::ids::RateId;
use crate::kinds::{Currency, Day, decimal};

/// The most decimals of a rate: 0.725 of a dollar a mile has three.
const DECIMALS: u32 = 4;

/// A rate as typed.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RateForm {
    /// For one of what.
    pub per: Option<Per>,
    /// The first day it holds, as YYYY-MM-DD.
    pub since: String,
    /// The last day it holds; empty while its end is not known.
    #[serde(default)]
    pub until: String,
    /// Its currency, an ISO 4217 code.
    pub currency: String,
    /// The amount for one, a decimal with at most four places.
    pub amount: String,
    /// What part of it the first and the last day away count for, in percent; empty for the whole.
    #[serde(default)]
    pub edge: String,
    /// Who says so: the law, the notice, the agreement.
    pub source: String,
}

/// A rate to add.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddRate {
    /// The rate.
    pub rate: RateForm,
}

/// Which rate.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichRate {
    /// The rate.
    pub rate: RateId,
}

/// A rate as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostRate {
    /// Which one.
    pub id: RateId,
    /// For one of what.
    pub per: Per,
    /// The first day it holds.
    pub since: Day,
    /// The last day it holds; `None` while its end is not known.
    pub until: Option<Day>,
    /// Its currency.
    pub currency: String,
    /// The amount for one.
    pub amount: String,
    /// What part of it the first and the last day count for, in percent; empty for the whole.
    pub edge: String,
    /// Who says so.
    pub source: String,
}

/// A rate, read.
pub(super) struct Read {
    pub per: Per,
    pub since: Day,
    pub until: Option<Day>,
    pub currency: Currency,
    pub amount: Decimal,
    pub edge: Option<Decimal>,
    pub source: String,
}

impl CostRate {
    /// Currency and amount as numbers.
    pub(super) fn read(&self) -> Option<(Currency, Decimal)> {
        Currency::parse(&self.currency).zip(self.amount.parse().ok())
    }

    /// The part of it that the first and the last day count for, in percent.
    pub(super) fn part(&self) -> Decimal {
        self.edge.parse().unwrap_or(Decimal::ONE_HUNDRED)
    }

    fn holds(&self, day: Day) -> bool {
        self.since <= day && self.until.is_none_or(|until| day <= until)
    }
}

/// The rate that holds for one of something on a day.
pub(super) fn rate_on(rates: &[CostRate], per: Per, day: Day) -> Option<&CostRate> {
    rates.iter().find(|rate| rate.per == per && rate.holds(day))
}

/// The coach's rates, by what they are for, the newest first.
///
/// # Errors
/// `Storage`.
pub fn rates(db: &Reading<'_>) -> Result<Vec<CostRate>> {
    store::rates(db)
}

/// Adds a rate. One of the same kind that has no end yet ends the day before.
///
/// # Errors
/// `Refused` with every field that is wrong; so is a rate on days that have one.
pub fn add_rate(db: &Writing<'_>, given: AddRate) -> Result<Vec<CostRate>> {
    let mut p = Problems::new();
    let read = p.within("rate.", |p| read(p, given.rate));
    p.done()?;
    let Some(read) = read else { return store::rates(db) };
    keep(db, &read, "rate.since")?;
    db.label(format!("Rate written down: {} {}", read.amount, read.currency.code()));
    store::rates(db)
}

/// Keeps a rate, ending the one before it.
pub(super) fn keep(db: &Writing<'_>, read: &Read, field: &str) -> Result<()> {
    let mut p = Problems::new();
    for known in store::rates(db)?.iter().filter(|known| known.per == read.per) {
        let after = read.until.is_some_and(|last| known.since > last);
        if after || known.until.is_some_and(|until| until < read.since) {
            continue;
        }
        if known.until.is_none() && known.since < read.since {
            store::end_rate(db, known.id, read.since.plus(-1))?;
            continue;
        }
        let words = format!(
            "From {} on a rate holds already ({}). Put that away first.",
            known.since.words(),
            known.source
        );
        p.add(field, "taken", words);
        break;
    }
    p.done()?;
    store::insert_rate(db, read)
}

fn read(p: &mut Problems, form: RateForm) -> Option<Read> {
    if form.per.is_none() {
        p.add("per", "missing", "Say what the rate is for.");
    }
    let since = p.day("since", &form.since, "The first day");
    let until = p.day_or_none("until", Some(&form.until), "The last day");
    if until.is_some_and(|until| until < since) {
        p.add("until", "before", "It would end before it begins.");
    }
    let currency = Currency::parse(&form.currency);
    if currency.is_none() {
        let words = "Write the currency\u{2019}s three letters, as in EUR.";
        p.add("currency", "no_such_currency", words);
    }
    let amount = number(&form.amount)
        .filter(|amount| *amount > Decimal::ZERO && *amount <= Decimal::from(100_000));
    if amount.is_none() {
        let words = format!("An amount above 0, with at most {DECIMALS} decimals, as in 0.725.");
        p.add("amount", "no_amount", words);
    }
    let mut edge = None;
    if !form.edge.trim().is_empty() {
        edge = number(&form.edge).filter(|edge| *edge <= Decimal::ONE_HUNDRED);
        if edge.is_none() {
            p.add("edge", "no_part", "A part from 0 to 100 percent, or nothing for the whole.");
        } else if form.per.is_some_and(|per| per != Per::Day) {
            p.add("edge", "no_days", "Only days away have a first and a last one.");
        }
    }
    let source = p.name("source", &form.source, "The source");
    let (per, currency, amount) = (form.per?, currency?, amount?);
    Some(Read { per, since, until, currency, amount, edge, source })
}

/// A number with no more decimals than a rate has.
fn number(typed: &str) -> Option<Decimal> {
    decimal(typed).map(|number| number.normalize()).filter(|number| number.scale() <= DECIMALS)
}

/// Puts a rate away. What was worked out with it stays as it is.
///
/// # Errors
/// `NotFound`.
pub fn put_rate_away(db: &Writing<'_>, which: WhichRate) -> Result<Vec<CostRate>> {
    store::put_rate_away(db, which.rate, db.today())?;
    db.label("Rate put away");
    store::rates(db)
}
