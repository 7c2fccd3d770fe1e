//! All SQL of what trips earn.

use rusqlite::params;

use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::{InvoiceId, LessonId, PackageId, StudentId};
use crate::kinds::{Day, Span};
use crate::prices::What;

/// What was earned on a day, as it was entered.
pub(super) struct Earned {
    pub day: Day,
    pub what: What,
    pub amount: i64,
    pub currency: String,
    pub words: String,
    pub place: String,
    pub payer: String,
    pub invoice: Option<InvoiceId>,
    pub package: Option<PackageId>,
}

/// What the ledger says was earned on some days with lessons, courts and travel, without tax. What is
/// earned by giving a package back was earned with no lesson of these days.
pub(super) fn earned(db: &Reading<'_>, days: Span) -> Result<Vec<Earned>> {
    db.all(
        "SELECT p.day, p.what, -p.amount AS amount, e.currency, e.words, coalesce(f.name, '') AS place,
                coalesce(y.name, o.name, '') AS payer, p.invoice, p.package
         FROM posting p JOIN entry e ON e.id = p.entry
           LEFT JOIN facility f ON f.id = p.facility
           LEFT JOIN payer y ON y.id = p.payer
           LEFT JOIN package k ON k.id = p.package
           LEFT JOIN payer o ON o.id = k.payer
         WHERE p.account = 'earned' AND p.day BETWEEN ? AND ?
           AND p.what IN ('lesson', 'late', 'court', 'travel')
           AND NOT (e.kind = 'credit_note' AND EXISTS (SELECT 1 FROM unit_move m WHERE m.entry = e.id))
         ORDER BY p.day, e.id, p.id",
        params![days.first, days.last],
        |row| {
            Ok(Earned {
                day: row.get("day")?,
                what: row.get("what")?,
                amount: row.get("amount")?,
                currency: row.get("currency")?,
                words: row.get("words")?,
                place: row.get("place")?,
                payer: row.get("payer")?,
                invoice: row.get("invoice")?,
                package: row.get("package")?,
            })
        },
    )
}

/// Drafts with a line for one of some days.
pub(super) fn drafts(db: &Reading<'_>, days: Span) -> Result<Vec<InvoiceId>> {
    db.all(
        "SELECT DISTINCT i.id FROM invoice i JOIN invoice_line l ON l.invoice = i.id
         WHERE i.issued IS NULL AND i.kind = 'invoice' AND l.day BETWEEN ? AND ? ORDER BY i.id",
        params![days.first, days.last],
        |row| row.get("id"),
    )
}

/// Lessons of students on some days that were settled, in whichever way.
pub(super) fn settled(db: &Reading<'_>, days: Span) -> Result<Vec<(LessonId, StudentId)>> {
    db.all(
        "SELECT s.lesson, s.student FROM settled s JOIN lesson l ON l.id = s.lesson
         WHERE l.day BETWEEN ? AND ?",
        params![days.first, days.last],
        |row| Ok((row.get("lesson")?, row.get("student")?)),
    )
}

/// The days of all visits that begin between two days and were not called off, the first first.
pub(super) fn visits(db: &Reading<'_>, from: Day, to: Day) -> Result<Vec<Span>> {
    db.all(
        "SELECT first_day, last_day FROM visit
         WHERE first_day BETWEEN ? AND ? AND called_off IS NULL ORDER BY first_day, last_day",
        params![from, to],
        |row| Ok(Span { first: row.get("first_day")?, last: row.get("last_day")? }),
    )
}
