//! All SQL of court bookings.

use rusqlite::{Row, params};

use super::{Booking, BookingState};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::BookingId;
use crate::kinds::{Day, Span};

pub(super) fn write(db: &Writing<'_>, b: &Booking) -> Result<()> {
    let released = (b.state == BookingState::Released).then(|| db.today());
    db.execute(
        "INSERT INTO court_booking (id, facility, court, day, starts, minutes, state, asked, answered, released,
           reference, by_whom, note)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET court = excluded.court, state = excluded.state,
           answered = excluded.answered, released = excluded.released, reference = excluded.reference,
           by_whom = excluded.by_whom, note = excluded.note",
        params![
            b.id,
            b.facility,
            b.court,
            b.day,
            b.starts,
            b.minutes,
            b.state,
            b.asked,
            b.answered,
            released,
            b.reference,
            b.by_whom,
            b.note,
        ],
    )?;
    Ok(())
}

const SELECT: &str =
    "SELECT b.id, b.facility, f.name AS place, b.court, COALESCE(c.name, '') AS court_name, b.day,
       b.starts, b.minutes, b.state, b.asked, b.answered, b.reference, b.by_whom, b.note
     FROM court_booking b JOIN facility f ON f.id = b.facility LEFT JOIN court c ON c.id = b.court";

fn booking(row: &Row<'_>) -> rusqlite::Result<Booking> {
    Ok(Booking {
        id: row.get("id")?,
        facility: row.get("facility")?,
        place: row.get("place")?,
        court: row.get("court")?,
        court_name: row.get("court_name")?,
        day: row.get("day")?,
        starts: row.get("starts")?,
        minutes: row.get("minutes")?,
        state: row.get("state")?,
        asked: row.get::<_, Option<Day>>("asked")?,
        answered: row.get::<_, Option<Day>>("answered")?,
        reference: row.get("reference")?,
        by_whom: row.get("by_whom")?,
        note: row.get("note")?,
    })
}

/// Bookings that stand, asked for or confirmed, on these days.
pub(super) fn standing(db: &Reading<'_>, span: Span) -> Result<Vec<Booking>> {
    db.all(
        &format!(
            "{SELECT} WHERE b.day BETWEEN ? AND ? AND b.state IN ('asked', 'confirmed')
             ORDER BY b.day, b.starts, b.id"
        ),
        params![span.first, span.last],
        booking,
    )
}

pub(super) fn one(db: &Reading<'_>, id: BookingId) -> Result<Booking> {
    db.found("court booking", &id, &format!("{SELECT} WHERE b.id = ?"), [id], booking)
}
