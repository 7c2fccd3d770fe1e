//! All SQL of assessments.

use std::collections::HashSet;

use rusqlite::params;

use super::list::OfStudent;
use super::norms::Norms;
use super::tests_taken::PartCounted;
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{AssessmentId, StudentId, TestId, VisitId};
use crate::settings;

/// An assessment as stored: its levels as skill, level and note.
pub(super) struct Stored {
    pub id: AssessmentId,
    pub student: StudentId,
    pub visit: Option<VisitId>,
    pub day: Day,
    pub sport: String,
    pub note: String,
    pub levels: Vec<(String, u8, String)>,
}

/// A test taken, as stored.
pub(super) struct StoredTest {
    pub id: TestId,
    pub visit: Option<VisitId>,
    pub day: Day,
    pub sport: String,
    pub test: String,
    pub parts: Vec<PartCounted>,
    pub total: u32,
    pub note: String,
}

pub(super) fn insert(
    db: &Writing<'_>,
    id: AssessmentId,
    student: StudentId,
    visit: Option<VisitId>,
    day: Day,
    sport: &str,
    note: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO assessment (id, student, visit, day, sport, note) VALUES (?, ?, ?, ?, ?, ?)",
        params![id, student, visit, day, sport, note],
    )?;
    Ok(())
}

pub(super) fn put_level(
    db: &Writing<'_>,
    assessment: AssessmentId,
    skill: &str,
    level: u8,
    note: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO assessment_level (id, assessment, skill, level, note) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET level = excluded.level, note = excluded.note",
        params![format!("{assessment}:{skill}"), assessment, skill, level, note],
    )?;
    Ok(())
}

pub(super) fn student_of(db: &Reading<'_>, id: AssessmentId) -> Result<StudentId> {
    db.found("assessment", &id, "SELECT student FROM assessment WHERE id = ?", [id], |row| {
        row.get("student")
    })
}

/// A student's assessments, oldest first.
pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<Stored>> {
    let mut all = db.all(
        "SELECT id, student, visit, day, sport, note FROM assessment WHERE student = ? ORDER BY day, id",
        [student],
        |row| {
            Ok(Stored {
                id: row.get("id")?,
                student: row.get("student")?,
                visit: row.get("visit")?,
                day: row.get("day")?,
                sport: row.get("sport")?,
                note: row.get("note")?,
                levels: Vec::new(),
            })
        },
    )?;
    let levels = db.all(
        "SELECT l.assessment, l.skill, l.level, l.note FROM assessment_level l
         JOIN assessment a ON a.id = l.assessment WHERE a.student = ?",
        [student],
        |row| {
            let level = (row.get("skill")?, row.get("level")?, row.get("note")?);
            Ok((row.get::<_, AssessmentId>("assessment")?, level))
        },
    )?;
    for (id, level) in levels {
        if let Some(one) = all.iter_mut().find(|one| one.id == id) {
            one.levels.push(level);
        }
    }
    Ok(all)
}

/// The skills of which tries were counted for a student, on or before a day; what the student told
/// is no count.
pub(super) fn skills_counted(
    db: &Reading<'_>,
    student: StudentId,
    day: Day,
) -> Result<HashSet<String>> {
    let skills = db.all(
        "SELECT DISTINCT g.skill FROM goal g JOIN block b ON b.goal = g.id
         WHERE g.student = ? AND g.skill <> '' AND b.day <= ? AND b.ended IS NOT NULL AND b.source <> 'told'
           AND (b.tries > 0 OR b.in_game IS NOT NULL
                OR EXISTS (SELECT 1 FROM block_try t WHERE t.block = b.id AND t.taken_back = 0))",
        params![student, day],
        |row| row.get("skill"),
    )?;
    Ok(skills.into_iter().collect())
}

pub(super) fn insert_test(db: &Writing<'_>, student: StudentId, t: &StoredTest) -> Result<()> {
    let parts = serde_json::to_string(&t.parts).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO test_taken (id, student, visit, day, sport, test, parts, total, note)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![t.id, student, t.visit, t.day, t.sport, t.test, parts, t.total.to_string(), t.note],
    )?;
    Ok(())
}

/// A student's tests, oldest first.
pub(super) fn tests_of(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<StoredTest>> {
    let rows = db.all(
        "SELECT id, visit, day, sport, test, parts, total, note FROM test_taken
         WHERE student = ? ORDER BY day, id",
        [ask.student],
        |row| {
            let total: String = row.get("total")?;
            let test = StoredTest {
                id: row.get("id")?,
                visit: row.get("visit")?,
                day: row.get("day")?,
                sport: row.get("sport")?,
                test: row.get("test")?,
                parts: Vec::new(),
                total: total.parse().map_err(rusqlite::types::FromSqlError::other)?,
                note: row.get("note")?,
            };
            Ok((test, row.get::<_, String>("parts")?))
        },
    )?;
    rows.into_iter()
        .map(|(test, parts)| {
            let parts = serde_json::from_str(&parts).map_err(|e| Error::Fault(e.to_string()))?;
            Ok(StoredTest { parts, ..test })
        })
        .collect()
}

/// The name under which the coach's norms of a test are kept among the settings.
fn norms_id(sport: &str, test: &str) -> String {
    format!("norms.{sport}.{test}")
}

pub(super) fn norms(db: &Reading<'_>, sport: &str, test: &str) -> Result<Option<Norms>> {
    settings::kept(db, &norms_id(sport, test)).map(Option::flatten)
}

/// Keeps norms; `None` stands for norms that were taken away.
pub(super) fn put_norms(
    db: &Writing<'_>,
    sport: &str,
    test: &str,
    norms: Option<&Norms>,
) -> Result<()> {
    settings::keep(db, &norms_id(sport, test), &norms)
}
