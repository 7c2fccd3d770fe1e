//! All SQL of entries.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Enter, EntryKind, Posting};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{EntryId, PackageId, PayerId, PostingId, UnitMoveId};

/// An entry as made.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct LedgerEntry {
    /// Which one.
    pub id: EntryId,
    /// The day.
    pub day: Day,
    /// Its kind.
    pub kind: EntryKind,
    /// In words.
    pub words: String,
    /// The currency.
    pub currency: String,
    /// What it takes back.
    pub reverses: Option<EntryId>,
    /// Whether it was taken back.
    pub reversed: bool,
}

pub(super) fn is_entered(db: &Reading<'_>, reference: &str) -> Result<bool> {
    Ok(db.one("SELECT 1 FROM entry WHERE ref = ?", [reference], |_| Ok(()))?.is_some())
}

pub(super) fn insert_posting(
    db: &Writing<'_>,
    entry: EntryId,
    posting: &Posting,
    day: Day,
) -> Result<()> {
    let id: PostingId = db.id();
    db.execute(
        "INSERT INTO posting (id, entry, account, amount, day, payer, invoice, package, what, facility, tax)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            entry,
            posting.account,
            posting.amount,
            posting.day.unwrap_or(day),
            posting.payer,
            posting.invoice,
            posting.package,
            posting.what,
            posting.facility,
            posting.tax
        ],
    )?;
    Ok(())
}

pub(super) fn insert_move(
    db: &Writing<'_>,
    entry: EntryId,
    package: PackageId,
    lessons: i64,
) -> Result<()> {
    let id: UnitMoveId = db.id();
    db.execute(
        "INSERT INTO unit_move (id, entry, package, lessons) VALUES (?, ?, ?, ?)",
        params![id, entry, package, lessons],
    )?;
    Ok(())
}

pub(super) fn insert_entry(db: &Writing<'_>, id: EntryId, entry: &Enter) -> Result<()> {
    db.execute(
        "INSERT INTO entry (id, ref, day, kind, words, currency, reverses) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            entry.reference,
            entry.day,
            entry.kind,
            entry.words,
            entry.currency,
            entry.reverses
        ],
    )?;
    Ok(())
}

const SELECT: &str =
    "SELECT e.*, EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id) AS reversed FROM entry e";

/// One entry.
///
/// # Errors
/// `NotFound`.
pub fn find(db: &Reading<'_>, id: EntryId) -> Result<LedgerEntry> {
    db.found("entry", &id, &format!("{SELECT} WHERE e.id = ?"), [id], an_entry)
}

/// Every entry that touches a payer, in the order in which they were made.
///
/// # Errors
/// `Storage`.
pub fn entries_of(db: &Reading<'_>, payer: PayerId) -> Result<Vec<LedgerEntry>> {
    let within = "WHERE e.id IN (SELECT entry FROM posting WHERE payer = ?) ORDER BY e.day, e.id";
    db.all(&format!("{SELECT} {within}"), [payer], an_entry)
}

/// Every entry that moves lessons of a package, in the order in which they were made.
///
/// # Errors
/// `Storage`.
pub fn entries_of_package(db: &Reading<'_>, package: PackageId) -> Result<Vec<(LedgerEntry, i64)>> {
    db.all(
        "SELECT e.*, m.lessons, EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id) AS reversed
         FROM unit_move m JOIN entry e ON e.id = m.entry WHERE m.package = ? ORDER BY m.id",
        [package],
        |row| Ok((an_entry(row)?, row.get("lessons")?)),
    )
}

pub(super) fn moves_of(db: &Reading<'_>, entry: EntryId) -> Result<Vec<(PackageId, i64)>> {
    db.all("SELECT package, lessons FROM unit_move WHERE entry = ? ORDER BY id", [entry], |row| {
        Ok((row.get("package")?, row.get("lessons")?))
    })
}

/// The parts of an entry.
///
/// # Errors
/// `Storage`.
pub fn postings_of(db: &Reading<'_>, entry: EntryId) -> Result<Vec<Posting>> {
    db.all("SELECT * FROM posting WHERE entry = ? ORDER BY id", [entry], |row| {
        Ok(Posting {
            account: row.get("account")?,
            amount: row.get("amount")?,
            day: Some(row.get("day")?),
            payer: row.get("payer")?,
            invoice: row.get("invoice")?,
            package: row.get("package")?,
            what: row.get("what")?,
            facility: row.get("facility")?,
            tax: row.get("tax")?,
        })
    })
}

fn an_entry(row: &Row<'_>) -> rusqlite::Result<LedgerEntry> {
    Ok(LedgerEntry {
        id: row.get("id")?,
        day: row.get("day")?,
        kind: row.get("kind")?,
        words: row.get("words")?,
        currency: row.get("currency")?,
        reverses: row.get("reverses")?,
        reversed: row.get("reversed")?,
    })
}
