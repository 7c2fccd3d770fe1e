//! All SQL of offers. The lessons of an offer are kept as they were said, apart from what becomes of
//! them.

use rusqlite::{Row, params};

use super::{Offer, OfferState, OfferedLesson};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{OfferId, VisitId};

pub(super) fn insert(db: &Writing<'_>, offer: &Offer) -> Result<()> {
    let lessons = serde_json::to_string(&offer.lessons).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO offer (id, visit, made, state, words, lessons, price) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![offer.id, offer.visit, offer.made, offer.state, offer.words, lessons, offer.price],
    )?;
    Ok(())
}

pub(super) fn answer(db: &Writing<'_>, id: OfferId, state: OfferState, note: &str) -> Result<()> {
    db.execute(
        "UPDATE offer SET state = ?, answered = ?, note = ? WHERE id = ?",
        params![state, db.today(), note, id],
    )?;
    Ok(())
}

fn offer(row: &Row<'_>) -> rusqlite::Result<Offer> {
    let lessons: String = row.get("lessons")?;
    let lessons: Vec<OfferedLesson> = serde_json::from_str(&lessons).map_err(|e| {
        rusqlite::Error::FromSqlConversionFailure(0, rusqlite::types::Type::Text, Box::new(e))
    })?;
    Ok(Offer {
        id: row.get("id")?,
        visit: row.get("visit")?,
        made: row.get("made")?,
        state: row.get("state")?,
        answered: row.get("answered")?,
        words: row.get("words")?,
        lessons,
        price: row.get("price")?,
        note: row.get("note")?,
    })
}

pub(super) fn one(db: &Reading<'_>, id: OfferId) -> Result<Offer> {
    db.found("offer", &id, "SELECT * FROM offer WHERE id = ?", [id], offer)
}

/// The newest first.
pub(super) fn of_visit(db: &Reading<'_>, visit: VisitId) -> Result<Vec<Offer>> {
    db.all("SELECT * FROM offer WHERE visit = ? ORDER BY made DESC, id DESC", [visit], offer)
}

/// The newest.
pub(super) fn newest(db: &Reading<'_>, visit: VisitId) -> Result<Option<Offer>> {
    let sql = "SELECT * FROM offer WHERE visit = ? ORDER BY made DESC, id DESC LIMIT 1";
    db.one(sql, [visit], offer)
}

/// Those without an answer that no later one took the place of, of visits that end on a day or
/// later and are neither over nor called off.
pub(super) fn waiting(db: &Reading<'_>, day: Day) -> Result<Vec<Offer>> {
    db.all(
        "SELECT o.* FROM visit v JOIN offer o ON o.visit = v.id
         WHERE v.last_day >= ? AND v.closed IS NULL AND v.called_off IS NULL AND o.state = 'offered'
           AND NOT EXISTS (SELECT 1 FROM offer n
             WHERE n.visit = o.visit AND (n.made, n.id) > (o.made, o.id))
         ORDER BY o.made, o.id",
        [day],
        offer,
    )
}
