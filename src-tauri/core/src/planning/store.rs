//! All SQL of wishes.

use rusqlite::{Row, params};

use super::{SharedLessons, VisitWish};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{SharedLessonsId, SharerId, VisitId};

pub(super) fn write_wish(db: &Writing<'_>, visit: VisitId, w: &VisitWish) -> Result<()> {
    let some = |text: &str| Some(text.to_owned()).filter(|text| !text.is_empty());
    db.execute(
        "INSERT INTO wish (id, lessons, minutes, per_day, rest, arrives, leaves, earliest, latest,
           best_from, best_to, court, weight, note)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET lessons = excluded.lessons, minutes = excluded.minutes,
           per_day = excluded.per_day, rest = excluded.rest, arrives = excluded.arrives,
           leaves = excluded.leaves, earliest = excluded.earliest, latest = excluded.latest,
           best_from = excluded.best_from, best_to = excluded.best_to, court = excluded.court,
           weight = excluded.weight, note = excluded.note",
        params![
            visit,
            w.lessons,
            w.minutes,
            w.per_day,
            w.rest,
            some(&w.arrives),
            some(&w.leaves),
            some(&w.earliest),
            some(&w.latest),
            some(&w.best_from),
            some(&w.best_to),
            w.court,
            w.weight,
            w.note,
        ],
    )?;
    if shared(db, visit)? != w.shared {
        clear_shared(db, visit)?;
        for row in &w.shared {
            let id: SharedLessonsId = db.id();
            db.execute(
                "INSERT INTO wish_shared (id, visit, lessons) VALUES (?, ?, ?)",
                params![id, visit, row.lessons],
            )?;
            for with in &row.with {
                let sharer: SharerId = db.id();
                db.execute(
                    "INSERT INTO wish_sharer (id, shared, visit) VALUES (?, ?, ?)",
                    params![sharer, id, with],
                )?;
            }
        }
    }
    Ok(())
}

fn clear_shared(db: &Writing<'_>, visit: VisitId) -> Result<()> {
    db.execute(
        "DELETE FROM wish_sharer WHERE shared IN (SELECT id FROM wish_shared WHERE visit = ?)",
        [visit],
    )?;
    db.execute("DELETE FROM wish_shared WHERE visit = ?", [visit])?;
    Ok(())
}

pub(super) fn clear_wish(db: &Writing<'_>, visit: VisitId) -> Result<()> {
    clear_shared(db, visit)?;
    db.execute("DELETE FROM wish WHERE id = ?", [visit])?;
    Ok(())
}

pub(super) fn wish(db: &Reading<'_>, visit: VisitId) -> Result<Option<VisitWish>> {
    let Some(mut wish) = db.one("SELECT * FROM wish WHERE id = ?", [visit], row)? else {
        return Ok(None);
    };
    wish.shared = shared(db, visit)?;
    Ok(Some(wish))
}

fn shared(db: &Reading<'_>, visit: VisitId) -> Result<Vec<SharedLessons>> {
    let rows: Vec<(SharedLessonsId, i64, VisitId)> = db.all(
        "SELECT s.id AS shared, s.lessons, w.visit
         FROM wish_shared s JOIN wish_sharer w ON w.shared = s.id
         WHERE s.visit = ? ORDER BY s.id, w.id",
        [visit],
        |row| Ok((row.get("shared")?, row.get("lessons")?, row.get("visit")?)),
    )?;
    let mut shared: Vec<(SharedLessonsId, SharedLessons)> = Vec::new();
    for (id, lessons, visit) in rows {
        match shared.last_mut().filter(|(last, _)| *last == id) {
            Some((_, row)) => row.with.push(visit),
            None => shared.push((id, SharedLessons { lessons, with: vec![visit] })),
        }
    }
    Ok(shared.into_iter().map(|(_, row)| row).collect())
}

fn row(row: &Row<'_>) -> rusqlite::Result<VisitWish> {
    let text = |name: &str| row.get::<_, Option<String>>(name).map(Option::unwrap_or_default);
    Ok(VisitWish {
        lessons: row.get("lessons")?,
        minutes: row.get("minutes")?,
        per_day: row.get("per_day")?,
        rest: row.get("rest")?,
        arrives: text("arrives")?,
        leaves: text("leaves")?,
        earliest: text("earliest")?,
        latest: text("latest")?,
        best_from: text("best_from")?,
        best_to: text("best_to")?,
        court: row.get("court")?,
        weight: row.get("weight")?,
        note: row.get("note")?,
        shared: Vec::new(),
    })
}
