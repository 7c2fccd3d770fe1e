//! All SQL of bank statements: which payments are entered.

use std::collections::HashMap;

use super::reference::BEGINS;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::PayerId;

/// A payment into the bank that is entered and was not taken back.
pub(super) struct KnownPayment {
    /// Its reference.
    pub reference: String,
    pub day: Day,
    pub currency: String,
    pub payer: PayerId,
    /// In smallest units.
    pub amount: i64,
}

/// What every reference of a payment begins with in the ledger.
const PAYMENT: &str = "payment:";

/// The references under which rows of bank statements are entered, and whether that was taken back.
pub(super) fn entered(db: &Reading<'_>) -> Result<HashMap<String, bool>> {
    let first = format!("{PAYMENT}{BEGINS}");
    // The sign after the hyphen: all that begin so stand before it.
    let after = format!("{}.", first.trim_end_matches('-'));
    let all = db.all(
        "SELECT e.ref, EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id) AS reversed
         FROM entry e WHERE e.ref >= ? AND e.ref < ?",
        [first, after],
        |row| Ok((row.get::<_, String>("ref")?, row.get("reversed")?)),
    )?;
    Ok(all
        .into_iter()
        .map(|(name, reversed)| (name.trim_start_matches(PAYMENT).to_owned(), reversed))
        .collect())
}

/// The payments into the bank of some days.
pub(super) fn payments(db: &Reading<'_>, first: Day, last: Day) -> Result<Vec<KnownPayment>> {
    db.all(
        "SELECT e.ref, e.day, e.currency, p.payer, p.amount FROM entry e JOIN posting p ON p.entry = e.id
         WHERE e.day BETWEEN ? AND ? AND e.kind = 'payment' AND p.account = 'bank' AND p.amount > 0
           AND p.payer IS NOT NULL AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)",
        [first, last],
        |row| {
            let reference: String = row.get("ref")?;
            Ok(KnownPayment {
                reference: reference.trim_start_matches(PAYMENT).to_owned(),
                day: row.get("day")?,
                currency: row.get("currency")?,
                payer: row.get("payer")?,
                amount: row.get("amount")?,
            })
        },
    )
}
