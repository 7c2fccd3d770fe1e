//! All SQL of facilities.

use rusqlite::params;

use super::add::ReadCourt;
use super::{Card, Court, Facility, Place, Teaching};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{CourtId, FacilityId};

pub(super) fn insert(db: &Writing<'_>, id: FacilityId, p: &Place) -> Result<()> {
    db.execute(
        "INSERT INTO facility (id, name, town, zone, address, notes, visitors)
         VALUES (?, ?, ?, ?, ?, ?, nullif(?, ''))",
        params![id, p.name, p.town, p.zone, p.address, p.notes, p.visitors],
    )?;
    Ok(())
}

pub(super) fn update(db: &Writing<'_>, id: FacilityId, p: &Place) -> Result<()> {
    db.execute(
        "UPDATE facility SET name = ?, town = ?, zone = ?, address = ?, notes = ?, visitors = nullif(?, '')
         WHERE id = ?",
        params![p.name, p.town, p.zone, p.address, p.notes, p.visitors, id],
    )?;
    Ok(())
}

pub(super) fn set_archived(db: &Writing<'_>, id: FacilityId, day: Option<Day>) -> Result<()> {
    db.execute("UPDATE facility SET archived = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn insert_court(
    db: &Writing<'_>,
    id: CourtId,
    facility: FacilityId,
    c: &ReadCourt,
) -> Result<()> {
    db.execute(
        "INSERT INTO court (id, facility, name, notes, ground, seen) VALUES (?, ?, ?, ?, nullif(?, ''), ?)",
        params![id, facility, c.name, c.notes, c.ground, c.seen],
    )?;
    Ok(())
}

pub(super) fn update_court(db: &Writing<'_>, id: CourtId, c: &ReadCourt) -> Result<()> {
    db.execute(
        "UPDATE court SET name = ?, notes = ?, ground = nullif(?, ''), seen = ? WHERE id = ?",
        params![c.name, c.notes, c.ground, c.seen, id],
    )?;
    Ok(())
}

pub(super) fn set_court_archived(db: &Writing<'_>, id: CourtId, day: Option<Day>) -> Result<()> {
    db.execute("UPDATE court SET archived = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn facility_of(db: &Reading<'_>, id: CourtId) -> Result<FacilityId> {
    db.found("court", &id, "SELECT facility FROM court WHERE id = ?", [id], |row| {
        row.get("facility")
    })
}

pub(super) fn has_lessons(db: &Reading<'_>, id: FacilityId) -> Result<bool> {
    Ok(db.one("SELECT 1 FROM lesson WHERE facility = ? LIMIT 1", [id], |_| Ok(()))?.is_some())
}

pub(super) fn ids(db: &Reading<'_>, archived: bool) -> Result<Vec<FacilityId>> {
    db.all(
        "SELECT id FROM facility WHERE archived IS NULL OR ? ORDER BY archived IS NOT NULL, name, id",
        [archived],
        |row| row.get("id"),
    )
}

pub(super) fn find(db: &Reading<'_>, id: FacilityId) -> Result<Facility> {
    let courts = db.all(
        "SELECT id, name, notes, coalesce(ground, '') AS ground, seen, archived FROM court WHERE facility = ?
         ORDER BY archived IS NOT NULL, length(name), name, id",
        [id],
        |row| {
            Ok(Court {
                id: row.get("id")?,
                name: row.get("name")?,
                notes: row.get("notes")?,
                ground: row.get("ground")?,
                seen: row.get("seen")?,
                archived: row.get("archived")?,
            })
        },
    )?;
    db.found("facility", &id, "SELECT * FROM facility WHERE id = ?", [id], |row| {
        Ok(Facility {
            id,
            place: Place {
                name: row.get("name")?,
                town: row.get("town")?,
                zone: row.get("zone")?,
                address: row.get("address")?,
                notes: row.get("notes")?,
                visitors: row.get::<_, Option<String>>("visitors")?.unwrap_or_default(),
            },
            courts,
            archived: row.get("archived")?,
        })
    })
}

pub(super) fn write_teaching(db: &Writing<'_>, id: FacilityId, t: &Teaching) -> Result<()> {
    db.execute(
        "INSERT INTO facility_teaching (id, state, by_whom, until, papers, papers_until, note)
         VALUES (?, ?, ?, nullif(?, ''), ?, nullif(?, ''), ?)
         ON CONFLICT (id) DO UPDATE SET state = excluded.state, by_whom = excluded.by_whom,
           until = excluded.until, papers = excluded.papers, papers_until = excluded.papers_until,
           note = excluded.note",
        params![id, t.state, t.by_whom, t.until, t.papers, t.papers_until, t.note],
    )?;
    Ok(())
}

pub(super) fn teaching(db: &Reading<'_>, id: FacilityId) -> Result<Teaching> {
    let teaching = db.one(
        "SELECT state, by_whom, coalesce(until, '') AS until, papers,
                coalesce(papers_until, '') AS papers_until, note
         FROM facility_teaching WHERE id = ?",
        [id],
        |row| {
            Ok(Teaching {
                state: row.get("state")?,
                by_whom: row.get("by_whom")?,
                until: row.get("until")?,
                papers: row.get("papers")?,
                papers_until: row.get("papers_until")?,
                note: row.get("note")?,
            })
        },
    )?;
    Ok(teaching.unwrap_or_default())
}

pub(super) fn write_card(db: &Writing<'_>, id: FacilityId, c: &Card) -> Result<()> {
    db.execute(
        "INSERT INTO facility_card (id, desk, desk_phone, desk_email, entrance, phone, defibrillator,
           first_aid, hospital, seen)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, nullif(?, ''))
         ON CONFLICT (id) DO UPDATE SET desk = excluded.desk, desk_phone = excluded.desk_phone,
           desk_email = excluded.desk_email, entrance = excluded.entrance, phone = excluded.phone,
           defibrillator = excluded.defibrillator, first_aid = excluded.first_aid,
           hospital = excluded.hospital, seen = excluded.seen",
        params![
            id,
            c.desk,
            c.desk_phone,
            c.desk_email,
            c.entrance,
            c.phone,
            c.defibrillator,
            c.first_aid,
            c.hospital,
            c.seen
        ],
    )?;
    Ok(())
}

pub(super) fn card(db: &Reading<'_>, id: FacilityId) -> Result<Card> {
    let card = db.one(
        "SELECT *, coalesce(seen, '') AS seen_on FROM facility_card WHERE id = ?",
        [id],
        |row| {
            Ok(Card {
                desk: row.get("desk")?,
                desk_phone: row.get("desk_phone")?,
                desk_email: row.get("desk_email")?,
                entrance: row.get("entrance")?,
                phone: row.get("phone")?,
                defibrillator: row.get("defibrillator")?,
                first_aid: row.get("first_aid")?,
                hospital: row.get("hospital")?,
                seen: row.get("seen_on")?,
            })
        },
    )?;
    Ok(card.unwrap_or_default())
}
