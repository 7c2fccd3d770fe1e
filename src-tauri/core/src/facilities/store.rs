//! All SQL of facilities.

use rusqlite::params;

use super::{Court, Facility, Place};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{CourtId, FacilityId};

pub(super) fn insert(db: &Writing<'_>, id: FacilityId, p: &Place) -> Result<()> {
    db.execute(
        "INSERT INTO facility (id, name, town, zone, address, notes) VALUES (?, ?, ?, ?, ?, ?)",
        params![id, p.name, p.town, p.zone, p.address, p.notes],
    )?;
    Ok(())
}

pub(super) fn update(db: &Writing<'_>, id: FacilityId, p: &Place) -> Result<()> {
    db.execute(
        "UPDATE facility SET name = ?, town = ?, zone = ?, address = ?, notes = ? WHERE id = ?",
        params![p.name, p.town, p.zone, p.address, p.notes, id],
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
    name: &str,
    notes: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO court (id, facility, name, notes) VALUES (?, ?, ?, ?)",
        params![id, facility, name, notes],
    )?;
    Ok(())
}

pub(super) fn update_court(db: &Writing<'_>, id: CourtId, name: &str, notes: &str) -> Result<()> {
    db.execute("UPDATE court SET name = ?, notes = ? WHERE id = ?", params![name, notes, id])?;
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
        "SELECT id, name, notes, archived FROM court WHERE facility = ?
         ORDER BY archived IS NOT NULL, length(name), name, id",
        [id],
        |row| {
            Ok(Court {
                id: row.get("id")?,
                name: row.get("name")?,
                notes: row.get("notes")?,
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
            },
            courts,
            archived: row.get("archived")?,
        })
    })
}
