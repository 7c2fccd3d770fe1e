//! All SQL of lessons on the server.

use rusqlite::{Row, params};

use super::{Agreed, Entry, Theirs};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::ids::LessonId;

struct Kept {
    lesson: LessonId,
    href: String,
    etag: String,
    agreed: String,
    theirs: String,
    text: String,
}

const SELECT: &str = "SELECT lesson, href, etag, agreed, theirs, text FROM calendar_entry";

fn kept(row: &Row<'_>) -> rusqlite::Result<Kept> {
    Ok(Kept {
        lesson: row.get("lesson")?,
        href: row.get("href")?,
        etag: row.get("etag")?,
        agreed: row.get("agreed")?,
        theirs: row.get("theirs")?,
        text: row.get("text")?,
    })
}

fn entry(kept: Kept) -> Result<Entry> {
    let fault = |e: serde_json::Error| Error::Fault(e.to_string());
    let agreed: Agreed = serde_json::from_str(&kept.agreed).map_err(fault)?;
    let theirs: Option<Theirs> = match kept.theirs.as_str() {
        "" => None,
        theirs => Some(serde_json::from_str(theirs).map_err(fault)?),
    };
    let Kept { lesson, href, etag, text, .. } = kept;
    Ok(Entry { lesson, href, etag, agreed, theirs, text })
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Entry>> {
    let all = db.all(&format!("{SELECT} ORDER BY lesson"), [], kept)?;
    all.into_iter().map(entry).collect()
}

pub(super) fn to_decide(db: &Reading<'_>) -> Result<u32> {
    let sql = "SELECT count(*) AS many FROM calendar_entry WHERE theirs <> ''";
    Ok(db.one(sql, [], |row| row.get("many"))?.unwrap_or(0))
}

pub(super) fn one(db: &Reading<'_>, lesson: LessonId) -> Result<Entry> {
    let sql = format!("{SELECT} WHERE lesson = ?");
    entry(db.found("lesson in the calendar", &lesson, &sql, [lesson], kept)?)
}

pub(super) fn keep(db: &Writing<'_>, e: &Entry) -> Result<()> {
    let fault = |e: serde_json::Error| Error::Fault(e.to_string());
    let agreed = serde_json::to_string(&e.agreed).map_err(fault)?;
    let theirs = match &e.theirs {
        None => String::new(),
        Some(theirs) => serde_json::to_string(theirs).map_err(fault)?,
    };
    db.execute(
        "INSERT INTO calendar_entry (lesson, href, etag, agreed, theirs, text)
         VALUES (?, ?, ?, ?, ?, ?)
         ON CONFLICT (lesson) DO UPDATE SET href = excluded.href, etag = excluded.etag,
           agreed = excluded.agreed, theirs = excluded.theirs, text = excluded.text",
        params![e.lesson, e.href, e.etag, agreed, theirs, e.text],
    )?;
    Ok(())
}

pub(super) fn drop(db: &Writing<'_>, lesson: LessonId) -> Result<()> {
    db.execute("DELETE FROM calendar_entry WHERE lesson = ?", [lesson])?;
    Ok(())
}

/// Takes the words out of what was agreed about lessons, and the server's texts: their places there stay
/// known, so that they can be taken out or written anew. Gives how many there are.
pub(super) fn forget_words(db: &Writing<'_>, lessons: &[String], summary: &str) -> Result<usize> {
    let lessons = serde_json::json!(lessons).to_string();
    db.execute(
        "UPDATE calendar_entry SET text = '', agreed = json_set(agreed, '$.summary', ?)
         WHERE lesson IN (SELECT value FROM json_each(?))",
        params![summary, lessons],
    )
}

pub(super) fn clear(db: &Writing<'_>) -> Result<()> {
    db.execute("DELETE FROM calendar_entry", [])?;
    Ok(())
}
