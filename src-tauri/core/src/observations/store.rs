//! All SQL of observations.

use rusqlite::{Row, params};

use super::{Observation, ObservationKind, Sighting, often};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{GoalId, ObservationId, RowId, StudentId};
use crate::kinds::text::folded;

crate::db::words! {
    ObservationKind { Strength = "strength", Fault = "fault" }
}

pub(super) fn find_same(
    db: &Reading<'_>,
    student: StudentId,
    kind: ObservationKind,
    skill: &str,
    words: &str,
) -> Result<Option<ObservationId>> {
    db.one(
        "SELECT id FROM observation WHERE student = ? AND kind = ? AND skill = ? AND folded = ?",
        params![student, kind, skill, folded(words)],
        |row| row.get("id"),
    )
}

pub(super) fn insert(
    db: &Writing<'_>,
    student: StudentId,
    kind: ObservationKind,
    skill: &str,
    words: &str,
) -> Result<ObservationId> {
    let id: ObservationId = db.id();
    db.execute(
        "INSERT INTO observation (id, student, kind, skill, words, folded) VALUES (?, ?, ?, ?, ?, ?)",
        params![id, student, kind, skill, words, folded(words)],
    )?;
    Ok(id)
}

pub(super) fn insert_sighting(
    db: &Writing<'_>,
    observation: ObservationId,
    seen: &Sighting,
) -> Result<()> {
    let id: RowId = db.id();
    db.execute(
        "INSERT INTO sighting (id, observation, visit, lesson, day, place) VALUES (?, ?, ?, ?, ?, ?)",
        params![id, observation, seen.visit, seen.lesson, seen.day, seen.place],
    )?;
    Ok(())
}

pub(super) fn became(db: &Writing<'_>, observation: ObservationId, goal: GoalId) -> Result<()> {
    db.execute("UPDATE observation SET goal = ? WHERE id = ?", params![goal, observation])?;
    Ok(())
}

pub(super) fn find(db: &Reading<'_>, id: ObservationId) -> Result<Observation> {
    let mut found =
        db.found("observation", &id, "SELECT * FROM observation WHERE id = ?", [id], observation)?;
    fill(&mut found, sightings(db, id)?);
    Ok(found)
}

pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<Observation>> {
    let mut all =
        db.all("SELECT * FROM observation WHERE student = ? ORDER BY id", [student], observation)?;
    for one in &mut all {
        let seen = sightings(db, one.id)?;
        fill(one, seen);
    }
    Ok(all)
}

fn fill(observation: &mut Observation, seen: Vec<Sighting>) {
    observation.often = often(&seen);
    observation.seen = seen;
}

fn observation(row: &Row<'_>) -> rusqlite::Result<Observation> {
    Ok(Observation {
        id: row.get("id")?,
        student: row.get("student")?,
        kind: row.get("kind")?,
        skill: row.get("skill")?,
        words: row.get("words")?,
        goal: row.get("goal")?,
        seen: Vec::new(),
        often: String::new(),
    })
}

fn sightings(db: &Reading<'_>, observation: ObservationId) -> Result<Vec<Sighting>> {
    db.all(
        "SELECT day, visit, lesson, place FROM sighting WHERE observation = ? ORDER BY day, id",
        [observation],
        |row| {
            Ok(Sighting {
                day: row.get("day")?,
                visit: row.get("visit")?,
                lesson: row.get("lesson")?,
                place: row.get("place")?,
            })
        },
    )
}
