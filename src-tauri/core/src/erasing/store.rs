//! All SQL of what is kept about a person, of what stays for the accounts, and of backups that were
//! made. Rows of a person are read by the names of the schema, so that a table added later is read too.

use rusqlite::types::ValueRef;
use rusqlite::{Row, params};
use serde_json::{Map, Value};

use super::KeptForAccounts;
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Instant;
use crate::kinds::ids::{KeptId, StudentId};
use crate::offers::OfferState;

/// The name of a student, and the folded one.
pub(super) fn name(db: &Reading<'_>, student: StudentId) -> Result<(String, String)> {
    db.found(
        "student",
        &student,
        "SELECT name, folded FROM student WHERE id = ?",
        [student],
        |row| Ok((row.get("name")?, row.get("folded")?)),
    )
}

/// The folded names of everyone else.
pub(super) fn other_names(db: &Reading<'_>, student: StudentId) -> Result<Vec<String>> {
    db.all("SELECT folded FROM student WHERE id <> ?", [student], |row| row.get("folded"))
}

/// The name and postal address that an account of the student is made out to.
pub(super) fn on_account(db: &Reading<'_>, student: StudentId) -> Result<Option<(String, String)>> {
    db.one(
        "SELECT name, address FROM student_contact WHERE student = ? ORDER BY role = 'payer' DESC",
        [student],
        |row| Ok((row.get("name")?, row.get("address")?)),
    )
}

/// Whether a payer stands beside the student.
pub(super) fn has_payer(db: &Reading<'_>, student: StudentId) -> Result<bool> {
    let sql = "SELECT 1 FROM student_contact WHERE student = ? AND role = 'payer'";
    Ok(db.one(sql, [student], |_| Ok(()))?.is_some())
}

/// A row of any table as JSON, by its columns; a document as how many bytes it has.
fn as_json(row: &Row<'_>) -> rusqlite::Result<Map<String, Value>> {
    let statement = row.as_ref();
    let mut object = Map::new();
    for column in 0..statement.column_count() {
        let value = match row.get_ref(column)? {
            ValueRef::Null => Value::Null,
            ValueRef::Integer(n) => n.into(),
            ValueRef::Real(n) => n.into(),
            ValueRef::Text(text) => String::from_utf8_lossy(text).into(),
            ValueRef::Blob(bytes) => serde_json::json!({ "bytes": bytes.len() }),
        };
        object.insert(statement.column_name(column)?.to_owned(), value);
    }
    Ok(object)
}

/// Rows of a table by their ids.
pub(super) fn rows<'a>(
    db: &Reading<'_>,
    table: &str,
    ids: impl Iterator<Item = &'a str>,
) -> Result<Vec<Map<String, Value>>> {
    let ids = serde_json::json!(ids.collect::<Vec<_>>()).to_string();
    let sql = format!(
        "SELECT * FROM \"{table}\" WHERE id IN (SELECT value FROM json_each(?)) ORDER BY id"
    );
    db.all(&sql, [ids], as_json)
}

/// A document, byte for byte.
pub(super) fn bytes(db: &Reading<'_>, table: &str, column: &str, id: &str) -> Result<Vec<u8>> {
    let sql = format!("SELECT \"{column}\" AS bytes FROM \"{table}\" WHERE id = ?");
    db.found("document", &id, &sql, [id], |row| row.get("bytes"))
}

/// Every row of a table.
pub(super) fn every_row(db: &Reading<'_>, table: &str) -> Result<Vec<Map<String, Value>>> {
    db.all(&format!("SELECT * FROM \"{table}\" ORDER BY 1"), [], as_json)
}

/// Where goals stand, as it was derived.
pub(super) fn standings(db: &Reading<'_>, goals: &[&str]) -> Result<Vec<Map<String, Value>>> {
    let goals = serde_json::json!(goals).to_string();
    db.all(
        "SELECT goal, state, why FROM standing WHERE goal IN (SELECT value FROM json_each(?)) ORDER BY goal",
        [goals],
        as_json,
    )
}

/// The lessons a student is on with others.
pub(super) fn lessons_of(db: &Reading<'_>, student: StudentId) -> Result<Vec<String>> {
    db.all(
        "SELECT DISTINCT lesson FROM lesson_student WHERE student = ? ORDER BY lesson",
        [student],
        |row| row.get("lesson"),
    )
}

/// The rows of a table that name a student outright.
pub(super) fn of_student(db: &Reading<'_>, table: &str, student: StudentId) -> Result<Vec<String>> {
    let sql = format!("SELECT id FROM \"{table}\" WHERE student = ? ORDER BY id");
    db.all(&sql, [student], |row| row.get("id"))
}

/// Takes back that injuries were asked about: they are asked again.
pub(super) fn forget_asking(db: &Writing<'_>, student: StudentId) -> Result<()> {
    db.execute("UPDATE intake SET injuries_asked = NULL WHERE id = ?", [student])?;
    Ok(())
}

/// The references of a table: column and parent.
pub(super) fn references(db: &Reading<'_>, table: &str) -> Result<Vec<(String, String)>> {
    db.all(
        "SELECT \"from\" AS col, \"table\" AS parent FROM pragma_foreign_key_list(?)",
        [table],
        |row| Ok((row.get("col")?, row.get("parent")?)),
    )
}

/// The name by which a row is known: a facility's, a court's, a goal's title, the days of a visit.
pub(super) fn known_as(db: &Reading<'_>, table: &str, id: &str) -> Result<Option<String>> {
    let sql = match table {
        "facility" | "court" => format!("SELECT name AS words FROM {table} WHERE id = ?"),
        "goal" => "SELECT title AS words FROM goal WHERE id = ?".to_owned(),
        "visit" => "SELECT coalesce(first_day || ' to ' || last_day, 'expected ' || expected_from || ' to ' || expected_to) AS words
                    FROM visit WHERE id = ?"
            .to_owned(),
        "lesson" => "SELECT day || ' ' || starts AS words FROM lesson WHERE id = ?".to_owned(),
        "observation" => "SELECT words FROM observation WHERE id = ?".to_owned(),
        _ => return Ok(None),
    };
    db.one(&sql, [id], |row| row.get("words"))
}

/// Texts of the coach's calendars that have some words in them, each with its calendar's name.
pub(super) fn calendar_texts(db: &Reading<'_>, words: &str) -> Result<Vec<(String, Vec<u8>)>> {
    db.all(
        "SELECT c.name, p.text FROM own_calendar c JOIN own_calendar_part p ON p.calendar = c.id
         WHERE instr(p.text, CAST(? AS BLOB)) > 0 ORDER BY c.name, p.href",
        [words],
        |row| Ok((row.get("name")?, row.get("text")?)),
    )
}

pub(super) fn insert_kept(db: &Writing<'_>, kept: &KeptForAccounts) -> Result<()> {
    let what = serde_json::to_string(&kept.what).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO kept_for_accounts (id, name, address, day, what, price, state, until, reason)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            kept.id,
            kept.name,
            kept.address,
            kept.day,
            what,
            kept.price,
            kept.state,
            kept.until,
            kept.reason
        ],
    )?;
    Ok(())
}

pub(super) fn kept(db: &Reading<'_>, id: Option<KeptId>) -> Result<Vec<KeptForAccounts>> {
    db.all(
        "SELECT * FROM kept_for_accounts WHERE ?1 IS NULL OR id = ?1 ORDER BY until, name, day, id",
        [id],
        |row| {
            let what: String = row.get("what")?;
            let what = serde_json::from_str(&what).map_err(|e| {
                rusqlite::Error::FromSqlConversionFailure(0, rusqlite::types::Type::Text, e.into())
            })?;
            Ok(KeptForAccounts {
                id: row.get("id")?,
                name: row.get("name")?,
                address: row.get("address")?,
                day: row.get("day")?,
                what,
                price: row.get("price")?,
                state: row.get::<_, OfferState>("state")?,
                until: row.get("until")?,
                reason: row.get("reason")?,
            })
        },
    )
}

pub(super) fn note_backup(db: &Writing<'_>, path: &str, at: Instant) -> Result<()> {
    db.execute(
        "INSERT INTO backup_made (path, at) VALUES (?, ?) ON CONFLICT (path) DO UPDATE SET at = excluded.at",
        params![path, at],
    )?;
    Ok(())
}

pub(super) fn forget_backup(db: &Writing<'_>, path: &str) -> Result<()> {
    db.execute("DELETE FROM backup_made WHERE path = ?", [path])?;
    Ok(())
}

pub(super) fn backups(db: &Reading<'_>) -> Result<Vec<(String, Instant)>> {
    db.all("SELECT path, at FROM backup_made ORDER BY at, path", [], |row| {
        Ok((row.get("path")?, row.get("at")?))
    })
}
