//! Costs that are passed on: the lines on which parts of them stand, and what is left.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Cost;
use super::store::{self, PassedLine};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Currency;
use crate::kinds::ids::{CostId, InvoiceId, InvoiceLineId, PayerId};
use crate::money::Fraction;

/// A part of a cost on an invoice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CostShare {
    /// Who pays it.
    pub payer: PayerId,
    /// The name.
    pub name: String,
    /// On which invoice.
    pub invoice: InvoiceId,
    /// Its number; empty while a draft.
    pub number: String,
    /// On which line.
    pub line: InvoiceLineId,
    /// The words of the line.
    pub words: String,
    /// How much, as it stands there less what was credited, a decimal.
    pub amount: String,
}

/// One cost.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, cost: CostId) -> Result<Cost> {
    store::find(db, cost)
}

/// Writes down that a part of a cost stands on a line.
///
/// # Errors
/// `Storage`.
pub fn pass(db: &Writing<'_>, cost: CostId, line: InvoiceLineId) -> Result<()> {
    store::insert_passed(db, cost, line)
}

/// What of a cost is not passed on yet, in smallest units.
///
/// # Errors
/// `NotPossible` when it was taken back.
pub fn left(cost: &Cost) -> Result<(Currency, i64)> {
    if let Some(day) = cost.taken_back {
        let words = format!("This cost was taken back on {}.", day.words());
        return Err(Error::not_possible("taken_back", words));
    }
    let fault = || Error::Fault(format!("the cost {} holds no amount", cost.id));
    let (currency, amount) = cost.read().ok_or_else(fault)?;
    let passed = currency.minor(&cost.passed_on).unwrap_or_default();
    Ok((currency, (amount - passed).max(0)))
}

/// Completes a cost with its shares.
pub(super) fn tell(db: &Reading<'_>, cost: &mut Cost) -> Result<()> {
    let Some(currency) = Currency::parse(&cost.currency) else { return Ok(()) };
    let mut sum: i64 = 0;
    for line in store::passed(db, cost.id)? {
        let amount = stands(&line, currency)
            .ok_or_else(|| Error::Fault(format!("the line {} holds no numbers", line.line)))?;
        if amount <= 0 {
            continue;
        }
        sum += amount;
        cost.passed.push(CostShare {
            payer: line.payer,
            name: line.name,
            invoice: line.invoice,
            number: line.number,
            line: line.line,
            words: line.words,
            amount: currency.plain(amount),
        });
    }
    if sum > 0 {
        cost.passed_on = currency.plain(sum);
    }
    Ok(())
}

/// What stands on a line, less what was credited.
fn stands(line: &PassedLine, currency: Currency) -> Option<i64> {
    let whole = match line.total {
        Some(total) => total,
        None => {
            let number = |text: &str| Fraction::decimal(text.parse::<Decimal>().ok()?);
            let unit = Fraction::whole(10_i64.checked_pow(currency.decimals())?);
            let whole = number(&line.quantity)?.times(number(&line.price)?)?.times(unit)?;
            whole.rounded()? - line.allowance
        }
    };
    Some(whole - line.credited)
}
