//! Noting a cost, changing it, taking it back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::worked::{Amount, day_rate, drive};
use super::{Cost, CostForm, CostKind, Per, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::intake::scans::{self, ScanGiven};
use crate::kinds::ids::CostId;
use crate::kinds::text::joined;
use crate::kinds::{Day, Span};
use crate::money::typed as money;

/// The most days of one cost.
const MOST_DAYS: i64 = 366;

/// A cost to note.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoteCost {
    /// The cost.
    pub cost: CostForm,
    /// Its receipt.
    #[serde(default)]
    pub receipt: Option<ScanGiven>,
}

/// A cost to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeCost {
    /// Which one.
    pub id: CostId,
    /// All that is to be kept.
    pub cost: CostForm,
    /// A new receipt; left out to keep the one there is.
    #[serde(default)]
    pub receipt: Option<ScanGiven>,
}

/// A cost that was none.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeBackCost {
    /// Which one.
    pub id: CostId,
    /// Why.
    pub reason: String,
}

/// The length of a drive, as kept, with its unit.
type Length = (String, Per);

/// A form, read.
pub(super) struct Read {
    pub kind: CostKind,
    pub days: Span,
    pub words: String,
    pub town: String,
    pub amount: Amount,
    /// In smallest units; `None` while not known.
    pub tax: Option<i64>,
    pub drive: Option<Length>,
}

/// Notes a cost.
///
/// # Errors
/// `Refused` with every field that is wrong; a drive or day rate on a day without a rate is one.
pub fn note(db: &Writing<'_>, given: NoteCost) -> Result<Cost> {
    let mut p = Problems::new();
    let read = read(db, &mut p, given.cost, None)?;
    let receipt = given.receipt.and_then(|scan| scan.read(&mut p, "receipt"));
    p.done()?;
    let Some(read) = read else { return Err(Error::Fault("a cost without its amount".to_owned())) };
    let receipt = scans::keep(db, receipt)?;
    let id: CostId = db.id();
    store::put(db, id, &read, receipt)?;
    db.label(format!("Cost noted: {}", read.words));
    store::find(db, id)
}

/// Changes a cost; a drive or day rate is worked out anew.
///
/// # Errors
/// `NotFound`; as [`note`]; so is less than was passed on of it; `NotPossible` once it was taken back.
pub fn change(db: &Writing<'_>, given: ChangeCost) -> Result<Cost> {
    let before = store::find(db, given.id)?;
    stands(&before)?;
    let mut p = Problems::new();
    let read = read(db, &mut p, given.cost, Some(given.id))?;
    if let Some(read) = &read {
        covers_passed(&mut p, &before, &read.amount);
    }
    let receipt = given.receipt.and_then(|scan| scan.read(&mut p, "receipt"));
    p.done()?;
    let Some(read) = read else { return Err(Error::Fault("a cost without its amount".to_owned())) };
    let receipt = scans::keep(db, receipt)?;
    store::put(db, given.id, &read, receipt)?;
    db.label(format!("Cost changed: {}", read.words));
    store::find(db, given.id)
}

/// Takes a cost back: it stays in the list with its reason, and counts no longer.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` when it was taken back before, or while some
/// of it is passed on.
pub fn take_back(db: &Writing<'_>, given: TakeBackCost) -> Result<Cost> {
    let cost = store::find(db, given.id)?;
    stands(&cost)?;
    if !cost.passed_on.is_empty() {
        let names: Vec<&str> = cost.passed.iter().map(|share| share.name.as_str()).collect();
        let words = format!(
            "{} {} of it is passed on to {}. Take the shares off their drafts, or credit them, first.",
            cost.passed_on,
            cost.currency,
            joined(&names)
        );
        return Err(Error::not_possible("passed_on", words));
    }
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    store::take_back(db, given.id, db.today(), &reason)?;
    db.label(format!("Cost taken back: {}", cost.words));
    store::find(db, given.id)
}

fn stands(cost: &Cost) -> Result<()> {
    match cost.taken_back {
        None => Ok(()),
        Some(day) => Err(Error::not_possible(
            "taken_back",
            format!("This cost was taken back on {}. Note a new one.", day.words()),
        )),
    }
}

/// Reads a form, of a new cost or of one to change; `None` only when something is wrong with it.
fn read(
    db: &Reading<'_>,
    p: &mut Problems,
    form: CostForm,
    changed: Option<CostId>,
) -> Result<Option<Read>> {
    p.within("cost.", |p| {
        let before = db.today();
        let day = p.day("day", &form.day, "The day");
        let several = matches!(form.kind, CostKind::Lodging | CostKind::DayRate);
        let last = p.day_or_none("last", Some(&form.last), "The last day");
        if last.is_some() && !several {
            p.add("last", "one_day", "Only lodging and day rates run over several days.");
        }
        let days = Span { first: day, last: last.filter(|_| several).unwrap_or(day) };
        if day > before {
            p.add("day", "in_future", "The day lies in the future. Note a cost once it is one.");
        }
        if days.last < days.first {
            p.add("last", "before", "The last day is before the first.");
        } else if days.days() > MOST_DAYS {
            p.add("last", "too_long", format!("One cost has room for {MOST_DAYS} days."));
        }
        let words = p.name("words", &form.words, "What it was for");
        let town = p.line("town", &form.town, "The town");
        let (amount, drive) = match form.kind {
            CostKind::Drive => driven(db, p, &form, day)?,
            CostKind::DayRate => {
                no_amount(p, &form);
                let fits = days.first <= days.last && days.days() <= MOST_DAYS;
                if let Some(other) = store::day_rate_within(db, days, changed)? {
                    let span = Span { first: other.day, last: other.last };
                    let words = format!(
                        "A day rate counts for {} already (\u{201c}{}\u{201d}): no day counts twice.",
                        span.words(),
                        other.words
                    );
                    p.add("day", "twice", words);
                }
                (if fits { day_rate(db, p, days)? } else { None }, None)
            }
            _ => {
                if !form.distance.trim().is_empty() || form.unit.is_some() {
                    p.add("distance", "no_drive", "Only a drive has a length.");
                }
                (typed(p, &form), None)
            }
        };
        let kind = form.kind;
        let tax = amount.as_ref().and_then(|amount| contained(p, &form, amount));
        Ok(amount.map(|amount| Read { kind, days, words, town, amount, tax, drive }))
    })
}

/// The tax contained in an amount as typed; `None` while not known.
fn contained(p: &mut Problems, form: &CostForm, amount: &Amount) -> Option<i64> {
    let typed = form.tax.trim();
    if typed.is_empty() {
        return None;
    }
    if !amount.worked.is_empty() {
        p.add("tax", "worked_out", "A rate says nothing of tax contained; leave it empty.");
        return None;
    }
    let tax = money::amount_or_nothing(p, "tax", typed, amount.currency)?;
    if tax > amount.minor {
        p.add("tax", "too_much", "No more tax is contained in it than it comes to.");
    }
    Some(tax)
}

/// A cost is not changed to less than what was passed on of it, nor to another currency.
fn covers_passed(p: &mut Problems, before: &Cost, amount: &Amount) {
    if before.passed_on.is_empty() {
        return;
    }
    let passed = amount.currency.minor(&before.passed_on);
    let same = amount.currency.code() == before.currency;
    if !same || passed.is_none_or(|passed| amount.minor < passed) {
        let words = format!("{} {} of it is passed on already.", before.passed_on, before.currency);
        p.add("cost.amount", "passed_on", words);
    }
}

/// What a drive comes to, and its length as kept.
fn driven(
    db: &Reading<'_>,
    p: &mut Problems,
    form: &CostForm,
    day: Day,
) -> Result<(Option<Amount>, Option<Length>)> {
    no_amount(p, form);
    let unit = form.unit.filter(|unit| *unit != Per::Day);
    if unit.is_none() {
        p.add("unit", "missing", "Say whether these are miles or kilometres.");
    }
    let length = super::worked::length(p, &form.distance);
    let Some((length, unit)) = length.zip(unit) else { return Ok((None, None)) };
    let amount = drive(db, p, day, length, unit)?;
    Ok((amount, Some((length.normalize().to_string(), unit))))
}

/// An amount typed where it is worked out would be ignored, which nobody would see.
fn no_amount(p: &mut Problems, form: &CostForm) {
    if !form.amount.trim().is_empty() || !form.currency.trim().is_empty() {
        p.add("amount", "worked_out", "This is worked out from your rate; leave it empty.");
    }
}

fn typed(p: &mut Problems, form: &CostForm) -> Option<Amount> {
    let currency = money::currency(p, "currency", &form.currency)?;
    let minor = money::amount(p, "amount", &form.amount, currency)?;
    Some(Amount { currency, minor, worked: String::new() })
}
