//! All SQL of what lessons came to.

use rusqlite::{Row, params};

use super::SettledBy;
use crate::app::{Reading, Writing};
use crate::db::limit;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{EntryId, InvoiceId, InvoiceLineId, LessonId, StudentId};
use crate::lessons::{Lesson, LessonState};
use crate::terms;

/// How a lesson of a student was settled.
#[derive(Clone, Debug)]
pub(super) struct Kept {
    pub how: SettledBy,
    pub rule: String,
    pub reason: String,
    pub entry: Option<EntryId>,
    pub line: Option<InvoiceLineId>,
    pub court: Option<InvoiceLineId>,
}

/// Lessons whose end or length is not what it was when they were settled.
pub(super) fn changed(db: &Reading<'_>) -> Result<Vec<(LessonId, StudentId, LessonState, i64)>> {
    db.all(
        "SELECT s.lesson, s.student, s.state, s.minutes FROM settled s JOIN lesson l ON l.id = s.lesson
         WHERE s.state IS NOT NULL AND (s.state <> l.state OR s.minutes <> l.minutes) ORDER BY l.day, l.starts, s.id",
        [],
        |row| {
            Ok((row.get("lesson")?, row.get("student")?, row.get("state")?, row.get("minutes")?))
        },
    )
}

/// How many lessons are otherwise now than when they were settled.
pub(super) fn many_changed(db: &Reading<'_>) -> Result<usize> {
    let many: Option<i64> = db.one(
        "SELECT count(*) AS many FROM settled s JOIN lesson l ON l.id = s.lesson
         WHERE s.state IS NOT NULL AND (s.state <> l.state OR s.minutes <> l.minutes)",
        [],
        |row| row.get("many"),
    )?;
    Ok(usize::try_from(many.unwrap_or_default()).unwrap_or(usize::MAX))
}

pub(super) fn insert(
    db: &Writing<'_>,
    lesson: &Lesson,
    student: StudentId,
    kept: &Kept,
) -> Result<()> {
    db.execute(
        "INSERT INTO settled (id, lesson, student, how, rule, reason, entry, line, court, day, state, minutes)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            format!("{}:{student}", lesson.id),
            lesson.id,
            student,
            kept.how,
            kept.rule,
            kept.reason,
            kept.entry,
            kept.line,
            kept.court,
            db.today(),
            lesson.state,
            lesson.minutes
        ],
    )?;
    Ok(())
}

pub(super) fn remove(db: &Writing<'_>, lesson: LessonId, student: StudentId) -> Result<()> {
    db.execute("DELETE FROM settled WHERE id = ?", [format!("{lesson}:{student}")])?;
    Ok(())
}

pub(super) fn of(db: &Reading<'_>, lesson: LessonId, student: StudentId) -> Result<Option<Kept>> {
    db.one("SELECT * FROM settled WHERE id = ?", [format!("{lesson}:{student}")], a_settled)
}

fn a_settled(row: &Row<'_>) -> rusqlite::Result<Kept> {
    Ok(Kept {
        how: row.get("how")?,
        rule: row.get("rule")?,
        reason: row.get("reason")?,
        entry: row.get("entry")?,
        line: row.get("line")?,
        court: row.get("court")?,
    })
}

/// How many lessons of students are over and not settled.
pub(super) fn many_unsettled(db: &Reading<'_>) -> Result<usize> {
    let since = terms::show(db)?.since;
    let many: Option<i64> = db.one(
        "SELECT count(*) AS many FROM lesson_student ls JOIN lesson l ON l.id = ls.lesson
         WHERE l.day >= ? AND l.state IN ('given', 'cut_short', 'missed', 'called_off')
           AND NOT EXISTS (SELECT 1 FROM settled s WHERE s.id = ls.id)",
        [since],
        |row| row.get("many"),
    )?;
    Ok(usize::try_from(many.unwrap_or_default()).unwrap_or(usize::MAX))
}

/// Lessons of students that are over and not settled, the oldest first, so many at most.
pub(super) fn unsettled(db: &Reading<'_>, most: usize) -> Result<Vec<(LessonId, StudentId)>> {
    let since = terms::show(db)?.since;
    db.all(
        "SELECT ls.lesson, ls.student FROM lesson_student ls JOIN lesson l ON l.id = ls.lesson
         WHERE l.day >= ? AND l.state IN ('given', 'cut_short', 'missed', 'called_off')
           AND NOT EXISTS (SELECT 1 FROM settled s WHERE s.id = ls.id)
         ORDER BY l.day, l.starts, ls.id LIMIT ?",
        params![since, limit(most)],
        |row| Ok((row.get("lesson")?, row.get("student")?)),
    )
}

/// On which invoice a line stands.
pub(super) fn invoice_of(db: &Reading<'_>, line: InvoiceLineId) -> Result<Option<InvoiceId>> {
    db.one("SELECT invoice FROM invoice_line WHERE id = ?", [line], |row| row.get("invoice"))
}

/// A sum by month, currency, account, kind, place and tax.
#[derive(Clone, Debug)]
pub(super) struct Sum {
    pub month: String,
    pub currency: String,
    pub account: crate::ledger::LedgerAccount,
    pub what: Option<crate::prices::What>,
    pub place: String,
    pub tax: String,
    pub amount: i64,
}

/// What was posted on some days, summed. The plus keeps SQLite to the index of days.
pub(super) fn sums(db: &Reading<'_>, first: Day, last: Day) -> Result<Vec<Sum>> {
    db.all(
        "SELECT substr(p.day, 1, 7) AS month, e.currency, p.account, p.what, coalesce(f.name, '') AS place, p.tax,
                sum(p.amount) AS amount
         FROM posting p JOIN entry e ON e.id = p.entry LEFT JOIN facility f ON f.id = p.facility
         WHERE p.day BETWEEN ? AND ?
           AND +p.account IN ('bank', 'cash', 'card', 'cheque', 'earned', 'lapsed', 'tax_due', 'rounding', 'written_off')
         GROUP BY 1, 2, 3, 4, 5, 6 HAVING sum(p.amount) <> 0 ORDER BY 1, 2, 3, 4, 5, 6",
        params![first, last],
        |row| {
            Ok(Sum {
                month: row.get("month")?,
                currency: row.get("currency")?,
                account: row.get("account")?,
                what: row.get("what")?,
                place: row.get("place")?,
                tax: row.get("tax")?,
                amount: row.get("amount")?,
            })
        },
    )
}

/// The accounts on which something stands: open, kept, to be paid back, owed in lessons. A posting on
/// one of them counts for the day of its entry.
const STANDING: &str = "('receivable', 'credit', 'to_pay_back', 'deferred')";

/// What stands on some accounts at the end of a day, by currency. Nearly all of a coach's entries are in
/// one currency, so all postings are summed without their entries, and what is in others is taken off.
pub(super) fn standing(
    db: &Reading<'_>,
    last: Day,
) -> Result<Vec<(crate::ledger::LedgerAccount, String, i64)>> {
    let mut currencies: Vec<String> = db.all(
        "SELECT currency FROM entry GROUP BY currency ORDER BY count(*) DESC, currency",
        [],
        |row| row.get("currency"),
    )?;
    if currencies.is_empty() {
        return Ok(Vec::new());
    }
    let others = currencies.split_off(1);
    let mut most = db.all(
        &format!(
            "SELECT account, sum(amount) AS amount FROM posting
             WHERE account IN {STANDING} AND day <= ? GROUP BY account"
        ),
        [last],
        |row| Ok((row.get::<_, crate::ledger::LedgerAccount>("account")?, row.get("amount")?)),
    )?;
    let mut all = Vec::new();
    for currency in others {
        let of_it: Vec<(crate::ledger::LedgerAccount, i64)> = db.all(
            &format!(
                "SELECT p.account, sum(p.amount) AS amount FROM entry e CROSS JOIN posting p ON p.entry = e.id
                 WHERE e.currency = ? AND p.account IN {STANDING} AND p.day <= ? GROUP BY p.account"
            ),
            params![currency, last],
            |row| Ok((row.get("account")?, row.get("amount")?)),
        )?;
        for (account, amount) in of_it {
            if let Some((_, sum)) = most.iter_mut().find(|(known, _)| *known == account) {
                *sum -= amount;
            }
            all.push((account, currency.clone(), amount));
        }
    }
    let main = currencies.into_iter().flat_map(|currency| {
        most.iter().map(move |(account, amount)| (*account, currency.clone(), *amount))
    });
    all.extend(main.collect::<Vec<_>>());
    all.retain(|(_, _, amount)| *amount != 0);
    all.sort_by(|a, b| a.1.cmp(&b.1));
    Ok(all)
}

/// Lessons that packages owe at the end of a day.
pub(super) fn lessons_owed(db: &Reading<'_>, last: Day) -> Result<i64> {
    let owed = db.one(
        "SELECT coalesce(sum(m.lessons), 0) AS owed FROM unit_move m JOIN entry e ON e.id = m.entry WHERE e.day <= ?",
        [last],
        |row| row.get("owed"),
    )?;
    Ok(owed.unwrap_or_default())
}
