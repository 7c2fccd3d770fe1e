//! Entering the rows of a bank statement that the coach confirmed: all of them or none.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{BankLayout, remember, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::input::NAME;
use crate::invoices::{self, InvoicesOf};
use crate::kinds::Currency;
use crate::kinds::ids::{EntryId, InvoiceId, PayerId};
use crate::kinds::text::{counted, joined, line};
use crate::payers::{self, WhichPayer};
use crate::payments::{self, ForInvoice, PaidBy, Receive};

/// Said of a row that is entered already.
const ENTERED: &str = "This row is entered already, and counts once.";

/// A row that the coach confirmed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BankRowToEnter {
    /// Its reference, as it was read.
    pub reference: String,
    /// The day, as YYYY-MM-DD.
    pub day: String,
    /// The currency.
    pub currency: String,
    /// How much, a decimal.
    pub amount: String,
    /// What stood on it.
    #[serde(default)]
    pub words: String,
    /// From whom.
    #[serde(default)]
    pub payer: Option<PayerId>,
    /// For which invoices, in this order, as far as the money goes; none for those due first. What is
    /// over is kept for later.
    #[serde(default)]
    pub invoices: Vec<InvoiceId>,
    /// Whether all of it is kept for later.
    #[serde(default)]
    pub keep: bool,
}

/// Rows to enter.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BankEnter {
    /// The rows.
    pub rows: Vec<BankRowToEnter>,
    /// How the file was read, to be remembered; left out for a file that says so itself.
    #[serde(default)]
    pub layout: Option<BankLayout>,
}

/// A row as entered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankEnteredRow {
    /// The entry.
    pub entry: EntryId,
    /// From whom.
    pub payer: PayerId,
    /// As a sentence: who, how much, and what became of it.
    pub words: String,
}

/// What was entered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankEntered {
    /// Each row, in the same order.
    pub rows: Vec<BankEnteredRow>,
    /// As a sentence: how many, and how much in each currency.
    pub words: String,
}

/// Enters rows of a bank statement as payments by transfer, all of them or none.
///
/// # Errors
/// `Refused` with every row that cannot be entered, by its fields, as `rows[3].payer`: one without a
/// payer, one that is entered already, and whatever a payment is refused for.
pub fn enter(db: &Writing<'_>, given: BankEnter) -> Result<BankEntered> {
    let mut p = Problems::new();
    if given.rows.is_empty() {
        p.add("rows", "none", "Tick at least one row.");
    }
    let mut rows = Vec::new();
    let mut sums: BTreeMap<String, i64> = BTreeMap::new();
    let mut references: Vec<String> = Vec::new();
    let entered = store::entered(db)?;
    for (n, row) in given.rows.into_iter().enumerate() {
        let at = |field: &str| format!("rows[{n}].{field}");
        let reference = p.name(&at("reference"), &row.reference, "The reference");
        if references.contains(&reference) {
            p.add(&at("reference"), "twice", "This row stands above already.");
            continue;
        }
        references.push(reference.clone());
        if entered.contains_key(&reference) {
            p.add(&at("reference"), "entered", ENTERED);
            continue;
        }
        let Some(payer) = row.payer else {
            p.add(&at("payer"), "empty", "Choose who paid.");
            continue;
        };
        let sum = Currency::parse(&row.currency)
            .and_then(|currency| Some((currency, currency.minor(&row.amount)?)));
        match row_entered(db, row, reference, payer) {
            Ok(row) => {
                rows.push(row);
                if let Some((currency, minor)) = sum {
                    *sums.entry(currency.code().to_owned()).or_default() += minor;
                }
            }
            Err(Error::NotPossible { code: "entered", .. }) => {
                p.add(&at("reference"), "entered", ENTERED);
            }
            Err(Error::NotFound { .. }) => {
                p.add(&at("payer"), "not_found", "This payer is not in the coach file any more.");
            }
            Err(error) => match error.below(&at("")) {
                Error::Refused(problems) => {
                    for problem in problems {
                        p.add(&problem.field, &problem.code, problem.words);
                    }
                }
                other => return Err(other),
            },
        }
    }
    p.done()?;
    if let Some(layout) = given.layout {
        remember(db, layout)?;
    }
    let sums: Vec<String> = sums
        .iter()
        .filter_map(|(code, minor)| Some(Currency::parse(code)?.words(*minor)))
        .collect();
    let sums: Vec<&str> = sums.iter().map(String::as_str).collect();
    let many = counted(i64::try_from(rows.len()).unwrap_or(i64::MAX), "payment", "payments");
    db.label(format!("Bank statement: {many} entered, {}", joined(&sums)));
    Ok(BankEntered { rows, words: format!("{many} entered, {}.", joined(&sums)) })
}

fn row_entered(
    db: &Writing<'_>,
    row: BankRowToEnter,
    reference: String,
    payer: PayerId,
) -> Result<BankEnteredRow> {
    let name = payers::show(db, WhichPayer { payer })?.form.name;
    let amount = format!("{} {}", row.amount.trim(), row.currency.trim());
    if row.day.trim().is_empty() {
        return Err(Error::field("day", "empty", "The day is empty."));
    }
    let invoices = shares(db, &row, payer)?;
    let received = payments::receive(
        db,
        Receive {
            payer,
            day: row.day,
            method: PaidBy::Transfer,
            currency: row.currency,
            amount: row.amount,
            words: cut(&row.words),
            invoices,
            deposit: row.keep,
            reference,
        },
    )?;
    Ok(BankEnteredRow {
        entry: received.entry,
        payer,
        words: format!("{name}, {amount}: {}", received.words),
    })
}

/// What of a row is for each of its invoices: as much as is open, until it is used up. Whatever is wrong
/// with an invoice is left to the payment to refuse.
fn shares(db: &Writing<'_>, row: &BankRowToEnter, payer: PayerId) -> Result<Vec<ForInvoice>> {
    let currency = Currency::parse(&row.currency);
    let sum = currency.and_then(|currency| Some((currency, currency.minor(&row.amount)?)));
    let Some((currency, mut rest)) = sum.filter(|_| !row.invoices.is_empty()) else {
        return Ok(Vec::new());
    };
    let open = invoices::list(db, InvoicesOf { payer: Some(payer), open: true })?.invoices;
    let mut shares = Vec::new();
    for invoice in &row.invoices {
        let known = open.iter().find(|one| one.id == *invoice);
        let left = known.filter(|one| one.currency == currency.code());
        let part = match left {
            Some(one) => currency.minor(&one.open).unwrap_or_default().min(rest),
            None => rest,
        };
        if part > 0 {
            shares.push(ForInvoice { invoice: *invoice, amount: currency.plain(part) });
        }
        if left.is_some() {
            rest -= part;
        }
    }
    Ok(shares)
}

/// The words as a payment has room for them.
fn cut(words: &str) -> String {
    let words = line(words);
    if words.chars().count() <= NAME {
        return words;
    }
    let kept: String = words.chars().take(NAME - 1).collect();
    format!("{}…", kept.trim_end())
}
