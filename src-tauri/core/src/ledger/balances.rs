//! Balances: sums over what was entered.

use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::LedgerAccount;
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::{InvoiceId, PackageId, PayerId};
use crate::money::Owed;

/// What is still to be paid on an invoice, in smallest units.
///
/// # Errors
/// `Storage`.
pub fn open_of(db: &Reading<'_>, invoice: InvoiceId) -> Result<i64> {
    sum(
        db,
        "SELECT coalesce(sum(amount), 0) AS sum FROM posting WHERE invoice = ? AND account = 'receivable'",
        params![invoice],
    )
}

/// What a payer paid that is not used yet, in smallest units.
///
/// # Errors
/// `Storage`.
pub fn credit_of(db: &Reading<'_>, payer: PayerId, currency: &str) -> Result<i64> {
    Ok(-of_payer(db, LedgerAccount::Credit, payer, currency)?)
}

/// What is owed to a payer, in smallest units.
///
/// # Errors
/// `Storage`.
pub fn to_pay_back_of(db: &Reading<'_>, payer: PayerId, currency: &str) -> Result<i64> {
    Ok(-of_payer(db, LedgerAccount::ToPayBack, payer, currency)?)
}

/// What a package still owes, in smallest units without tax.
///
/// # Errors
/// `Storage`.
pub fn deferred_of(db: &Reading<'_>, package: PackageId) -> Result<i64> {
    let owed = sum(
        db,
        "SELECT coalesce(sum(amount), 0) AS sum FROM posting WHERE package = ? AND account = 'deferred'",
        params![package],
    )?;
    Ok(-owed)
}

/// How many lessons a package still owes.
///
/// # Errors
/// `Storage`.
pub fn lessons_of(db: &Reading<'_>, package: PackageId) -> Result<i64> {
    sum(
        db,
        "SELECT coalesce(sum(lessons), 0) AS sum FROM unit_move WHERE package = ?",
        params![package],
    )
}

/// What a package owes, worked out from everything that was entered of it; `None` while nothing was.
///
/// # Errors
/// `Fault` when lessons and money have parted.
pub fn owed_of(db: &Reading<'_>, package: PackageId) -> Result<Option<Owed>> {
    let steps: Vec<(i64, i64)> = db.all(
        "SELECT m.lessons, coalesce((SELECT -sum(p.amount) FROM posting p
           WHERE p.entry = m.entry AND p.package = m.package AND p.account = 'deferred'), 0) AS money
         FROM unit_move m WHERE m.package = ? ORDER BY m.id",
        [package],
        |row| Ok((row.get("lessons")?, row.get("money")?)),
    )?;
    let parted = || Error::Fault(format!("lessons and money of the package {package} have parted"));
    let mut owed: Option<Owed> = None;
    for (lessons, money) in steps {
        let many = u32::try_from(lessons.unsigned_abs()).map_err(|_| parted())?;
        owed = match owed {
            None => Some(Owed::sold(money, many).filter(|_| lessons > 0).ok_or_else(parted)?),
            Some(mut owed) if lessons > 0 => {
                owed.take_in(many, money).ok_or_else(parted)?;
                Some(owed)
            }
            Some(mut owed) => {
                let released = owed.release(many).ok_or_else(parted)?;
                if released != -money {
                    return Err(parted());
                }
                Some(owed)
            }
        };
    }
    Ok(owed)
}

/// Whether all that was entered balances.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Balanced {
    /// How many entries there are.
    pub entries: i64,
    /// Entries that do not balance: none, ever.
    pub wrong: Vec<String>,
}

/// Adds the whole ledger up.
///
/// # Errors
/// `Storage`.
pub fn balanced(db: &Reading<'_>) -> Result<Balanced> {
    let entries = sum(db, "SELECT count(*) AS sum FROM entry", [])?;
    let mut wrong = db.all(
        "SELECT e.ref FROM entry e JOIN posting p ON p.entry = e.id GROUP BY e.id HAVING sum(p.amount) <> 0",
        [],
        |row| row.get("ref"),
    )?;
    let packages: Vec<PackageId> =
        db.all("SELECT DISTINCT package FROM unit_move", [], |row| row.get("package"))?;
    for package in packages {
        let (owed, money) = (owed_of(db, package)?, deferred_of(db, package)?);
        if owed.is_some_and(|owed| owed.money() != money) {
            wrong.push(format!("package:{package}"));
        }
    }
    Ok(Balanced { entries, wrong })
}

fn of_payer(
    db: &Reading<'_>,
    account: LedgerAccount,
    payer: PayerId,
    currency: &str,
) -> Result<i64> {
    sum(
        db,
        "SELECT coalesce(sum(p.amount), 0) AS sum FROM posting p JOIN entry e ON e.id = p.entry
         WHERE p.account = ? AND p.payer = ? AND e.currency = ?",
        params![account, payer, currency],
    )
}

fn sum(db: &Reading<'_>, sql: &str, params: impl rusqlite::Params) -> Result<i64> {
    Ok(db.one(sql, params, |row| row.get("sum"))?.unwrap_or_default())
}
