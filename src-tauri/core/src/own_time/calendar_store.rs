//! All SQL of the coach's calendars.

use rusqlite::{Row, params};

use super::calendars::{CalendarPart, CalendarRole, OwnCalendar};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::ical::Busy;
use crate::kinds::ids::CalendarId;
use crate::kinds::{Day, Instant, Span};

/// A time a calendar says is taken.
pub(super) struct Taken {
    pub starts: Instant,
    pub ends: Instant,
    pub what: String,
}

pub(super) fn add(
    db: &Writing<'_>,
    id: CalendarId,
    name: &str,
    role: CalendarRole,
    href: Option<&str>,
) -> Result<()> {
    db.execute(
        "INSERT INTO own_calendar (id, name, role, href) VALUES (?, ?, ?, ?)",
        params![id, name, role, href],
    )?;
    Ok(())
}

pub(super) fn remove(db: &Writing<'_>, id: CalendarId, today: Day) -> Result<()> {
    db.execute("UPDATE own_calendar SET removed = ? WHERE id = ?", params![today, id])?;
    Ok(())
}

const SELECT: &str = "SELECT c.id, c.name, c.role, c.href, k.read, k.until, k.events, k.notes
     FROM own_calendar c LEFT JOIN own_calendar_known k ON k.calendar = c.id
     WHERE c.removed IS NULL";

fn calendar(row: &Row<'_>) -> rusqlite::Result<OwnCalendar> {
    let notes = row.get::<_, Option<String>>("notes")?.unwrap_or_default();
    Ok(OwnCalendar {
        id: row.get("id")?,
        name: row.get("name")?,
        role: row.get("role")?,
        href: row.get("href")?,
        read: row.get("read")?,
        until: row.get("until")?,
        events: row.get::<_, Option<u32>>("events")?.unwrap_or(0),
        notes: notes.lines().map(str::to_owned).collect(),
        words: String::new(),
    })
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<OwnCalendar>> {
    db.all(&format!("{SELECT} ORDER BY c.name, c.id"), [], calendar)
}

pub(super) fn one(db: &Reading<'_>, id: CalendarId) -> Result<OwnCalendar> {
    db.found("calendar", &id, &format!("{SELECT} AND c.id = ?"), [id], calendar)
}

/// What is known of a calendar since it was read last.
pub(super) struct Known<'a> {
    pub read: Instant,
    pub until: Day,
    pub events: u32,
    pub notes: &'a [String],
}

pub(super) fn keep_known(db: &Writing<'_>, id: CalendarId, known: &Known<'_>) -> Result<()> {
    let notes: Vec<String> = known.notes.iter().map(|n| n.replace(['\n', '\r'], " ")).collect();
    db.execute(
        "INSERT INTO own_calendar_known (calendar, read, until, events, notes) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (calendar) DO UPDATE SET read = excluded.read, until = excluded.until,
           events = excluded.events, notes = excluded.notes",
        params![id, known.read, known.until, known.events, notes.join("\n")],
    )?;
    Ok(())
}

pub(super) fn keep_read(db: &Writing<'_>, id: CalendarId, read: Instant) -> Result<()> {
    db.execute("UPDATE own_calendar_known SET read = ? WHERE calendar = ?", params![read, id])?;
    Ok(())
}

pub(super) fn token(db: &Reading<'_>, id: CalendarId) -> Result<Option<String>> {
    let sql = "SELECT token FROM own_calendar_known WHERE calendar = ?";
    Ok(db.one(sql, [id], |row| row.get("token"))?.flatten())
}

pub(super) fn keep_token(db: &Writing<'_>, id: CalendarId, token: Option<&str>) -> Result<()> {
    db.execute("UPDATE own_calendar_known SET token = ? WHERE calendar = ?", params![token, id])?;
    Ok(())
}

pub(super) fn clear_parts(db: &Writing<'_>, id: CalendarId) -> Result<()> {
    db.execute("DELETE FROM own_calendar_part WHERE calendar = ?", [id])?;
    Ok(())
}

pub(super) fn remove_part(db: &Writing<'_>, id: CalendarId, href: &str) -> Result<()> {
    db.execute("DELETE FROM own_calendar_part WHERE calendar = ? AND href = ?", params![id, href])?;
    Ok(())
}

pub(super) fn keep_part(db: &Writing<'_>, id: CalendarId, part: &CalendarPart) -> Result<()> {
    db.execute(
        "INSERT INTO own_calendar_part (calendar, href, etag, text) VALUES (?, ?, ?, ?)
         ON CONFLICT (calendar, href) DO UPDATE SET etag = excluded.etag, text = excluded.text",
        params![id, part.href, part.etag, part.text],
    )?;
    Ok(())
}

pub(super) fn parts(db: &Reading<'_>, id: CalendarId) -> Result<Vec<CalendarPart>> {
    db.all(
        "SELECT href, etag, text FROM own_calendar_part WHERE calendar = ? ORDER BY href",
        [id],
        |row| {
            Ok(CalendarPart {
                href: row.get("href")?,
                etag: row.get("etag")?,
                text: row.get("text")?,
            })
        },
    )
}

/// The texts that have some words in them: calendar, path, text.
pub(super) fn parts_with(
    db: &Reading<'_>,
    words: &str,
) -> Result<Vec<(CalendarId, String, Vec<u8>)>> {
    db.all(
        "SELECT calendar, href, text FROM own_calendar_part WHERE instr(text, CAST(? AS BLOB)) > 0",
        [words],
        |row| Ok((row.get("calendar")?, row.get("href")?, row.get("text")?)),
    )
}

pub(super) fn change_part(db: &Writing<'_>, id: CalendarId, href: &str, text: &[u8]) -> Result<()> {
    db.execute(
        "UPDATE own_calendar_part SET text = ? WHERE calendar = ? AND href = ?",
        params![text, id, href],
    )?;
    Ok(())
}

pub(super) fn clear_times(db: &Writing<'_>, id: CalendarId) -> Result<()> {
    db.execute("DELETE FROM own_calendar_time WHERE calendar = ?", [id])?;
    Ok(())
}

pub(super) fn keep_time(db: &Writing<'_>, id: CalendarId, busy: &Busy) -> Result<()> {
    let (starts, ends) = match busy.all_day {
        Some((first, last)) => (first.to_string(), last.to_string()),
        None => (
            Instant::from_chrono(&busy.starts).to_string(),
            Instant::from_chrono(&busy.ends).to_string(),
        ),
    };
    db.execute(
        "INSERT INTO own_calendar_time (calendar, starts, ends, whole, what) VALUES (?, ?, ?, ?, ?)",
        params![id, starts, ends, busy.all_day.is_some(), busy.summary],
    )?;
    Ok(())
}

const TIMES: &str = "SELECT t.starts, t.ends, iif(t.what = '', c.name, t.what) AS what
     FROM own_calendar c JOIN own_calendar_time t ON t.calendar = c.id
     WHERE c.removed IS NULL AND c.role = 'busy'";

/// The times that touch a span of instants, the end not included.
pub(super) fn times(db: &Reading<'_>, within: (Instant, Instant)) -> Result<Vec<Taken>> {
    let sql = format!("{TIMES} AND t.whole = 0 AND t.ends > ? AND t.starts < ?");
    db.all(&sql, params![within.0, within.1], |row| {
        Ok(Taken { starts: row.get("starts")?, ends: row.get("ends")?, what: row.get("what")? })
    })
}

/// Whole days that touch a span: the first, the last, and what.
pub(super) fn whole_days(db: &Reading<'_>, span: Span) -> Result<Vec<(Day, Day, String)>> {
    let sql = format!("{TIMES} AND t.whole = 1 AND t.ends >= ? AND t.starts <= ?");
    db.all(&sql, params![span.first, span.last], |row| {
        Ok((row.get("starts")?, row.get("ends")?, row.get("what")?))
    })
}
