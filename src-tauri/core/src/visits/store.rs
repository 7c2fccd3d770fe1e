//! All SQL of visits.

use rusqlite::{Row, named_params, params};

use super::{ListVisits, Stage, Visit};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::facilities::Facility;
use crate::kinds::ids::{StudentId, VisitId};
use crate::kinds::{Day, Span};

pub(super) fn insert(
    db: &Writing<'_>,
    id: VisitId,
    student: StudentId,
    facility: Option<&Facility>,
    days: Option<Span>,
    expected: Option<Span>,
    note: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO visit (id, student, facility, zone, first_day, last_day, expected_from, expected_to, note)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            student,
            facility.map(|f| f.id),
            facility.map_or("", |f| f.place.zone.as_str()),
            days.map(|s| s.first),
            days.map(|s| s.last),
            expected.map(|s| s.first),
            expected.map(|s| s.last),
            note
        ],
    )?;
    Ok(())
}

pub(super) fn update(
    db: &Writing<'_>,
    id: VisitId,
    facility: &Facility,
    days: Span,
    note: &str,
) -> Result<()> {
    db.execute(
        "UPDATE visit SET facility = ?, zone = ?, first_day = ?, last_day = ?, note = ? WHERE id = ?",
        params![facility.id, facility.place.zone, days.first, days.last, note, id],
    )?;
    Ok(())
}

pub(super) fn set_opened(db: &Writing<'_>, id: VisitId, day: Day) -> Result<()> {
    db.execute("UPDATE visit SET opened = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn set_closed(db: &Writing<'_>, id: VisitId, day: Option<Day>) -> Result<()> {
    db.execute("UPDATE visit SET closed = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn set_called_off(db: &Writing<'_>, id: VisitId, day: Day, reason: &str) -> Result<()> {
    db.execute(
        "UPDATE visit SET called_off = ?, reason = ? WHERE id = ?",
        params![day, reason, id],
    )?;
    Ok(())
}

/// The days of another visit of the student's that shares a day with these.
pub(super) fn overlapping(
    db: &Reading<'_>,
    student: StudentId,
    itself: Option<VisitId>,
    days: Span,
) -> Result<Option<Span>> {
    db.one(
        "SELECT first_day, last_day FROM visit
         WHERE student = ? AND id IS NOT ? AND called_off IS NULL AND first_day <= ? AND last_day >= ? LIMIT 1",
        params![student, itself, days.last, days.first],
        |row| Ok(Span { first: row.get("first_day")?, last: row.get("last_day")? }),
    )
}

/// Whether a lesson or block of the visit lies on another day.
pub(super) fn has_days_outside(db: &Reading<'_>, visit: VisitId, days: Span) -> Result<bool> {
    let outside = db.one(
        "SELECT 1 FROM (
           SELECT l.day FROM lesson l JOIN lesson_student ls ON ls.lesson = l.id
           WHERE ls.visit = :visit AND l.state <> 'called_off'
           UNION ALL SELECT day FROM block WHERE visit = :visit
         ) WHERE day NOT BETWEEN :first AND :last LIMIT 1",
        named_params! { ":visit": visit, ":first": days.first, ":last": days.last },
        |_| Ok(()),
    )?;
    Ok(outside.is_some())
}

const VISIT: &str = "SELECT v.*, s.name, f.name AS facility_name, f.town,
    (SELECT count(*) FROM goal_visit gv WHERE gv.visit = v.id) AS goals
    FROM visit v JOIN student s ON s.id = v.student LEFT JOIN facility f ON f.id = v.facility";

pub(super) fn find(db: &Reading<'_>, id: VisitId) -> Result<Visit> {
    db.found("visit", &id, &format!("{VISIT} WHERE v.id = ?"), [id], visit)
}

pub(super) fn expected_by(db: &Reading<'_>, day: Day) -> Result<Vec<Visit>> {
    db.all(
        &format!(
            "{VISIT} WHERE v.first_day IS NULL AND v.called_off IS NULL AND v.expected_from <= ?
             ORDER BY v.expected_from, v.id"
        ),
        [day],
        visit,
    )
}

pub(super) fn running(db: &Reading<'_>) -> Result<Vec<Visit>> {
    db.all(
        &format!(
            // The plus keeps SQLite from going through every visit for the sake of the order.
            "{VISIT} WHERE v.opened IS NOT NULL AND v.closed IS NULL AND v.called_off IS NULL
             ORDER BY +v.first_day, v.id"
        ),
        [],
        visit,
    )
}

pub(super) fn around(db: &Reading<'_>, span: Span) -> Result<Vec<Visit>> {
    // Asked near today, far fewer visits end later than began earlier: the pluses leave the index of
    // ends as the only way.
    db.all(
        &format!("{VISIT} WHERE v.last_day >= ? AND +v.first_day <= ? ORDER BY +v.first_day, v.id"),
        [span.first, span.last],
        visit,
    )
}

pub(super) fn any(db: &Reading<'_>) -> Result<bool> {
    Ok(db.one("SELECT 1 FROM visit LIMIT 1", [], |_| Ok(()))?.is_some())
}

pub(super) fn list(db: &Reading<'_>, ask: ListVisits) -> Result<Vec<Visit>> {
    // Each question finds its visits by an index of its own.
    let of_student =
        if ask.student.is_some() { "v.student = :student" } else { ":student IS NULL" };
    db.all(
        &format!(
            "{VISIT} WHERE {of_student}
               AND (:from IS NULL OR coalesce(v.last_day, v.expected_to) >= :from)
               AND (:to IS NULL OR coalesce(v.first_day, v.expected_from) <= :to)
             ORDER BY coalesce(v.first_day, v.expected_from), v.id"
        ),
        named_params! { ":student": ask.student, ":from": ask.from, ":to": ask.to },
        visit,
    )
}

fn span(row: &Row<'_>, first: &str, last: &str) -> rusqlite::Result<Option<Span>> {
    let (first, last): (Option<Day>, Option<Day>) = (row.get(first)?, row.get(last)?);
    Ok(first.zip(last).map(|(first, last)| Span { first, last }))
}

fn visit(row: &Row<'_>) -> rusqlite::Result<Visit> {
    let days = span(row, "first_day", "last_day")?;
    let is = |column: &str| -> rusqlite::Result<bool> {
        Ok(row.get::<_, Option<Day>>(column)?.is_some())
    };
    let stage = if is("called_off")? {
        Stage::CalledOff
    } else if is("closed")? {
        Stage::Closed
    } else if is("opened")? {
        Stage::Open
    } else if days.is_some() {
        Stage::Planned
    } else {
        Stage::Expected
    };
    let (name, town): (Option<String>, Option<String>) =
        (row.get("facility_name")?, row.get("town")?);
    let place = [name, town]
        .into_iter()
        .flatten()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    Ok(Visit {
        id: row.get("id")?,
        student: row.get("student")?,
        name: row.get("name")?,
        facility: row.get("facility")?,
        place,
        zone: row.get("zone")?,
        days,
        expected: span(row, "expected_from", "expected_to")?,
        stage,
        note: row.get("note")?,
        reason: row.get("reason")?,
        goals: row.get("goals")?,
    })
}
