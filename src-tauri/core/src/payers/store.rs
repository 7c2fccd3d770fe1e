//! All SQL of payers.

use rusqlite::{Row, params};

use super::{Payer, PayerForm, PaysFor};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{PayerId, StudentId};

pub(super) fn put(db: &Writing<'_>, id: PayerId, form: &PayerForm) -> Result<()> {
    db.execute(
        "INSERT INTO payer (id, name, address, country, email, tax_id, language) VALUES (?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET name = excluded.name, address = excluded.address,
           country = excluded.country, email = excluded.email, tax_id = excluded.tax_id,
           language = excluded.language",
        params![id, form.name, form.address, form.country, form.email, form.tax_id, form.language],
    )?;
    Ok(())
}

pub(super) fn link(db: &Writing<'_>, student: StudentId, payer: PayerId) -> Result<()> {
    db.execute(
        "INSERT INTO student_payer (id, payer) VALUES (?, ?)
         ON CONFLICT (id) DO UPDATE SET payer = excluded.payer",
        params![student, payer],
    )?;
    Ok(())
}

pub(super) fn of(db: &Reading<'_>, student: StudentId) -> Result<Option<PayerId>> {
    db.one("SELECT payer FROM student_payer WHERE id = ?", [student], |row| row.get("payer"))
}

pub(super) fn find(db: &Reading<'_>, id: PayerId) -> Result<Payer> {
    let mut payer = db.found("payer", &id, "SELECT * FROM payer WHERE id = ?", [id], a_payer)?;
    payer.students = of_students(db, id)?;
    Ok(payer)
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Payer>> {
    let mut all = db.all(
        "SELECT * FROM payer WHERE archived IS NULL ORDER BY name COLLATE NOCASE, id",
        [],
        a_payer,
    )?;
    for payer in &mut all {
        payer.students = of_students(db, payer.id)?;
    }
    Ok(all)
}

/// For whom someone pays, by name.
///
/// # Errors
/// `Storage`.
pub fn of_students(db: &Reading<'_>, payer: PayerId) -> Result<Vec<PaysFor>> {
    db.all(
        "SELECT s.id, s.name FROM student_payer sp JOIN student s ON s.id = sp.id
         WHERE sp.payer = ? ORDER BY s.name, s.id",
        [payer],
        |row| Ok(PaysFor { student: row.get("id")?, name: row.get("name")? }),
    )
}

/// Who paid for a student and nobody else, and has no package, invoice or entry: nothing of them has
/// to be kept.
///
/// # Errors
/// `Storage`.
pub fn without_accounts(db: &Reading<'_>, student: StudentId) -> Result<Option<PayerId>> {
    db.one(
        "SELECT sp.payer FROM student_payer sp WHERE sp.id = ?
           AND NOT EXISTS (SELECT 1 FROM student_payer o WHERE o.payer = sp.payer AND o.id <> sp.id)
           AND NOT EXISTS (SELECT 1 FROM package p WHERE p.payer = sp.payer)
           AND NOT EXISTS (SELECT 1 FROM invoice i WHERE i.payer = sp.payer)
           AND NOT EXISTS (SELECT 1 FROM posting p WHERE p.payer = sp.payer)",
        [student],
        |row| row.get("payer"),
    )
}

/// How many documents were issued to whoever pays for a student, and to whom.
///
/// # Errors
/// `Storage`.
pub fn issued_for(db: &Reading<'_>, student: StudentId) -> Result<Option<(String, i64)>> {
    db.one(
        "SELECT y.name, count(i.id) AS many FROM student_payer sp JOIN payer y ON y.id = sp.payer
           LEFT JOIN invoice i ON i.payer = y.id AND i.issued IS NOT NULL
         WHERE sp.id = ? GROUP BY y.id HAVING count(i.id) > 0",
        [student],
        |row| Ok((row.get("name")?, row.get("many")?)),
    )
}

fn a_payer(row: &Row<'_>) -> rusqlite::Result<Payer> {
    Ok(Payer {
        id: row.get("id")?,
        form: PayerForm {
            name: row.get("name")?,
            address: row.get("address")?,
            country: row.get("country")?,
            email: row.get("email")?,
            tax_id: row.get("tax_id")?,
            language: row.get("language")?,
        },
        students: Vec::new(),
    })
}
