//! The year: money that came in, and lessons earned, side by side and never added to each other; what
//! is open and owed at its end; what was spent. A record for the coach and an adviser, and no tax
//! advice.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Sum};
use crate::app::Reading;
use crate::costs::{self, Cost, CostKind, CostsOf};
use crate::error::{Error, Result};
use crate::kinds::text::no_formula;
use crate::kinds::{Currency, Day};
use crate::ledger::LedgerAccount;
use crate::prices::What;

/// Which year.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct YearAsked {
    /// Its number.
    pub year: i32,
}

/// A sum of a month. Amounts are decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MoneyYearRow {
    /// The month, as YYYY-MM.
    pub month: String,
    /// The currency.
    pub currency: String,
    /// The account.
    pub account: LedgerAccount,
    /// For what, of what is earned.
    pub what: Option<What>,
    /// Where, of what is earned; empty while not known.
    pub place: String,
    /// Category and rate of tax; empty where there is none.
    pub tax: String,
    /// How much: what came in, what was earned, what tax was charged. Below 0 what went back.
    pub amount: String,
}

/// What a year comes to in one currency. Amounts are decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MoneyYearStands {
    /// The currency.
    pub currency: String,
    /// Money that came in, less what was paid back.
    pub received: String,
    /// Earned, without tax.
    pub earned: String,
    /// Tax charged, less what was credited.
    pub tax: String,
    /// Given up.
    pub written_off: String,
    /// Spent.
    pub spent: String,
    /// Open on invoices at its end.
    pub open: String,
    /// Kept for later at its end.
    pub kept: String,
    /// To be paid back at its end.
    pub to_pay_back: String,
    /// Owed in lessons at its end, without tax.
    pub deferred: String,
}

/// What was spent in a month on one kind of thing. Amounts are decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MoneyYearSpent {
    /// The month in which the costs began, as YYYY-MM.
    pub month: String,
    /// On what.
    pub kind: CostKind,
    /// The currency.
    pub currency: String,
    /// How much.
    pub amount: String,
    /// The tax contained in it, as far as it was noted; empty where none was.
    pub tax: String,
}

/// A year.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MoneyYear {
    /// Its number.
    pub year: i32,
    /// What it comes to, by currency.
    pub stands: Vec<MoneyYearStands>,
    /// By month, account, kind, place and tax.
    pub rows: Vec<MoneyYearRow>,
    /// What was spent, by month and kind.
    pub spent: Vec<MoneyYearSpent>,
    /// Lessons that packages owe at its end.
    pub lessons_owed: i64,
    /// Lessons that are over and not settled: none of them is in here.
    pub to_settle: usize,
}

/// What a year comes to.
///
/// # Errors
/// `Refused` for a year out of all bounds.
pub fn year(db: &Reading<'_>, ask: YearAsked) -> Result<MoneyYear> {
    let ends = Day::of(ask.year, 1, 1).zip(Day::of(ask.year, 12, 31));
    let Some((first, last)) = ends else {
        return Err(Error::field("year", "no_year", "This is no year."));
    };
    let sums = store::sums(db, first, last)?;
    let mut all: Vec<(Currency, [i64; 9])> = Vec::new();
    for sum in &sums {
        let at = match sum.account {
            LedgerAccount::Bank
            | LedgerAccount::Cash
            | LedgerAccount::Card
            | LedgerAccount::Cheque => 0,
            LedgerAccount::Earned | LedgerAccount::Lapsed | LedgerAccount::Rounding => 1,
            LedgerAccount::TaxDue => 2,
            _ => 3,
        };
        add(&mut all, &sum.currency, at, sum.amount * sign(sum.account));
    }
    let spent = costs::list(db, CostsOf { first, last })?;
    for sum in &spent.sums {
        let minor = Currency::parse(&sum.currency).and_then(|c| c.minor(&sum.amount));
        add(&mut all, &sum.currency, 4, minor.unwrap_or_default());
    }
    for (account, code, amount) in store::standing(db, last)? {
        let (at, sign) = match account {
            LedgerAccount::Receivable => (5, 1),
            LedgerAccount::Credit => (6, -1),
            LedgerAccount::ToPayBack => (7, -1),
            _ => (8, -1),
        };
        add(&mut all, &code, at, sign * amount);
    }
    let stands = all
        .into_iter()
        .map(
            |(
                currency,
                [received, earned, tax, written_off, spent, open, kept, back, deferred],
            )| {
                let plain = |minor: i64| currency.plain(minor);
                MoneyYearStands {
                    currency: currency.code().to_owned(),
                    received: plain(received),
                    earned: plain(earned),
                    tax: plain(tax),
                    written_off: plain(written_off),
                    spent: plain(spent),
                    open: plain(open),
                    kept: plain(kept),
                    to_pay_back: plain(back),
                    deferred: plain(deferred),
                }
            },
        )
        .collect();
    Ok(MoneyYear {
        year: ask.year,
        stands,
        rows: sums.iter().filter_map(row).collect(),
        spent: spent_by_month(&spent.costs),
        lessons_owed: store::lessons_owed(db, last)?,
        to_settle: store::many_unsettled(db)?,
    })
}

/// What costs of one kind come to in a month.
struct Spent {
    currency: Currency,
    amount: i64,
    tax: Option<i64>,
}

/// Costs by month, kind and currency, those taken back left out.
fn spent_by_month(costs: &[Cost]) -> Vec<MoneyYearSpent> {
    let mut sums: BTreeMap<(String, CostKind, &str), Spent> = BTreeMap::new();
    for cost in costs.iter().filter(|cost| cost.taken_back.is_none()) {
        let Some((currency, amount)) = cost.read() else { continue };
        let month = cost.day.date().format("%Y-%m").to_string();
        let none = Spent { currency, amount: 0, tax: None };
        let sum = sums.entry((month, cost.kind, currency.code())).or_insert(none);
        sum.amount += amount;
        if let Some(tax) = currency.minor(&cost.tax) {
            sum.tax = Some(sum.tax.unwrap_or_default() + tax);
        }
    }
    sums.into_iter()
        .map(|((month, kind, code), sum)| MoneyYearSpent {
            month,
            kind,
            currency: code.to_owned(),
            amount: sum.currency.plain(sum.amount),
            tax: sum.tax.map(|tax| sum.currency.plain(tax)).unwrap_or_default(),
        })
        .collect()
}

/// Income stands on the credit side of a ledger; it is told as more.
fn sign(account: LedgerAccount) -> i64 {
    match account {
        LedgerAccount::Earned
        | LedgerAccount::Lapsed
        | LedgerAccount::TaxDue
        | LedgerAccount::Rounding => -1,
        _ => 1,
    }
}

fn add(all: &mut Vec<(Currency, [i64; 9])>, code: &str, at: usize, amount: i64) {
    let Some(currency) = Currency::parse(code) else { return };
    if !all.iter().any(|(known, _)| *known == currency) {
        all.push((currency, [0; 9]));
    }
    let sums = all.iter_mut().find(|(known, _)| *known == currency);
    if let Some(sum) = sums.and_then(|(_, sums)| sums.get_mut(at)) {
        *sum += amount;
    }
}

fn row(sum: &Sum) -> Option<MoneyYearRow> {
    let currency = Currency::parse(&sum.currency)?;
    Some(MoneyYearRow {
        month: sum.month.clone(),
        currency: currency.code().to_owned(),
        account: sum.account,
        what: sum.what,
        place: sum.place.clone(),
        tax: sum.tax.clone(),
        amount: currency.plain(sum.amount * sign(sum.account)),
    })
}

/// The columns of the table for an adviser.
pub const COLUMNS: [&str; 9] =
    ["view", "month", "account", "for", "place", "tax", "amount", "currency", "tax contained"];

/// The year as a table (CSV, RFC 4180): its file name and bytes. Its rows are the same as on screen, so
/// that another program can add them up: what was received, what was earned and what was spent, which
/// are three views and never one sum.
///
/// # Errors
/// As [`year`].
pub fn document(db: &Reading<'_>, ask: YearAsked) -> Result<(String, Vec<u8>)> {
    let year = year(db, ask)?;
    let failed = |e: csv::Error| Error::Fault(e.to_string());
    let mut table = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(vec![]);
    table.write_record(COLUMNS).map_err(failed)?;
    for row in &year.rows {
        let view = if LedgerAccount::MONEY.contains(&row.account) { "received" } else { "earned" };
        let account = match row.account {
            LedgerAccount::Bank => "bank",
            LedgerAccount::Cash => "cash",
            LedgerAccount::Card => "card",
            LedgerAccount::Cheque => "cheque",
            LedgerAccount::TaxDue => "tax charged",
            LedgerAccount::Lapsed => "lessons that ran out",
            LedgerAccount::Rounding => "rounding",
            LedgerAccount::WrittenOff => "given up",
            _ => "earned",
        };
        table
            .write_record([
                view,
                &row.month,
                account,
                row.what.map(What::words).unwrap_or_default(),
                &no_formula(&row.place),
                &row.tax,
                &row.amount,
                &row.currency,
                "",
            ])
            .map_err(failed)?;
    }
    for row in &year.spent {
        let (kind, amount, code) = (row.kind.words(), &row.amount, &row.currency);
        table
            .write_record(["spent", &row.month, "spent", kind, "", "", amount, code, &row.tax])
            .map_err(failed)?;
    }
    let bytes = table.into_inner().map_err(|e| Error::Fault(e.to_string()))?;
    Ok((format!("Year {}.csv", ask.year), bytes))
}
