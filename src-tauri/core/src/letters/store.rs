//! All SQL of letters.

use rusqlite::params;
use serde::Serialize;

use super::draft::Owns;
use super::{IssuedLine, LetterLine, LetterState, ListLetters};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::ids::{LetterId, StudentId, VisitId};
use crate::kinds::{Day, Instant};

/// What is stored when a letter is issued.
pub(super) struct Frozen {
    pub text: String,
    pub numbers: String,
    pub pdf: Vec<u8>,
    pub sha256: String,
    pub fonts: String,
}

/// An issued letter as stored.
pub(super) struct Stored {
    pub visit: VisitId,
    pub at: Instant,
    pub text: String,
    pub pdf: Vec<u8>,
    pub sha256: String,
    pub fonts: String,
}

pub(super) fn json<T: Serialize>(value: &T) -> Result<String> {
    serde_json::to_string(value).map_err(|e| Error::Fault(e.to_string()))
}

/// The coach's words in the draft of a visit's letter.
pub(super) fn owns(db: &Reading<'_>, visit: VisitId) -> Result<Owns> {
    let kept =
        db.one("SELECT draft FROM letter WHERE visit = ? AND issued IS NULL", [visit], |row| {
            row.get::<_, String>("draft")
        })?;
    kept.map_or_else(
        || Ok(Owns::new()),
        |kept| serde_json::from_str(&kept).map_err(|e| Error::Fault(e.to_string())),
    )
}

pub(super) fn draft_id(db: &Reading<'_>, visit: VisitId) -> Result<Option<LetterId>> {
    db.one("SELECT id FROM letter WHERE visit = ? AND issued IS NULL", [visit], |row| row.get("id"))
}

pub(super) fn keep_draft(db: &Writing<'_>, visit: VisitId, owns: &Owns) -> Result<()> {
    let draft = json(owns)?;
    if let Some(id) = draft_id(db, visit)? {
        db.execute("UPDATE letter SET draft = ? WHERE id = ?", params![draft, id])?;
    } else {
        let id: LetterId = db.id();
        db.execute(
            "INSERT INTO letter (id, visit, draft) VALUES (?, ?, ?)",
            params![id, visit, draft],
        )?;
    }
    Ok(())
}

pub(super) fn freeze(
    db: &Writing<'_>,
    visit: VisitId,
    id: LetterId,
    frozen: &Frozen,
) -> Result<()> {
    db.execute(
        "INSERT INTO letter (id, visit, draft) VALUES (?, ?, '{}') ON CONFLICT (id) DO NOTHING",
        params![id, visit],
    )?;
    db.execute(
        "UPDATE letter SET issued = ?, text = ?, numbers = ?, pdf = ?, sha256 = ?, fonts = ? WHERE id = ?",
        params![db.now(), frozen.text, frozen.numbers, frozen.pdf, frozen.sha256, frozen.fonts, id],
    )?;
    Ok(())
}

pub(super) fn issued(db: &Reading<'_>, id: LetterId) -> Result<Stored> {
    db.found(
        "letter",
        &id,
        "SELECT * FROM letter WHERE id = ? AND issued IS NOT NULL",
        [id],
        |row| {
            Ok(Stored {
                visit: row.get("visit")?,
                at: row.get("issued")?,
                text: row.get("text")?,
                pdf: row.get("pdf")?,
                sha256: row.get("sha256")?,
                fonts: row.get("fonts")?,
            })
        },
    )
}

pub(super) fn issued_of(db: &Reading<'_>, visit: VisitId) -> Result<Vec<IssuedLine>> {
    db.all(
        "SELECT id, issued, sha256 FROM letter WHERE visit = ? AND issued IS NOT NULL ORDER BY issued DESC",
        [visit],
        |row| Ok(IssuedLine { letter: row.get("id")?, at: row.get("issued")?, sha256: row.get("sha256")? }),
    )
}

/// Whether a visit `w` has a letter, and whether one of them is a draft: told from indexes alone.
const HAS_LETTER: &str = "EXISTS (SELECT 1 FROM letter l WHERE l.visit = w.id)";
const HAS_DRAFT: &str = "EXISTS (SELECT 1 FROM letter l WHERE l.visit = w.id AND l.issued IS NULL)";

/// The visits `w`, in the order of their end, whose letters are asked for: `v` and `s` are read only
/// of those that the index could not rule out.
fn asked_for(ask: &ListLetters) -> String {
    let some = match ask.issued {
        // “IS TRUE” keeps SQLite from making a join of it, which it does last.
        Some(true) => format!("{HAS_LETTER} IS TRUE AND NOT {HAS_DRAFT}"),
        Some(false) => format!("(NOT {HAS_LETTER} OR {HAS_DRAFT})"),
        None => "TRUE".to_owned(),
    };
    format!(
        "FROM visit w CROSS JOIN visit v ON v.id = w.id CROSS JOIN student s ON s.id = v.student
         WHERE w.last_day BETWEEN ?2 AND ?3 AND {some}
           AND v.opened IS NOT NULL AND (?1 IS NULL OR v.student = ?1)
           AND ({HAS_LETTER}
                OR (v.closed IS NOT NULL AND EXISTS (SELECT 1 FROM block b WHERE b.visit = v.id)))"
    )
}

fn bounds(ask: &ListLetters) -> (Option<StudentId>, String, String) {
    let words =
        |day: Option<Day>, none: &str| day.map_or_else(|| none.to_owned(), |day| day.to_string());
    (ask.student, words(ask.from, ""), words(ask.to, "9999-12-31"))
}

/// How many letters [`lines`] would list, however many are asked for.
pub(super) fn count(db: &Reading<'_>, ask: &ListLetters) -> Result<u32> {
    let sql = format!("SELECT count(*) AS many {}", asked_for(ask));
    Ok(db.one(&sql, bounds(ask), |row| row.get("many"))?.unwrap_or(0))
}

pub(super) fn lines(db: &Reading<'_>, ask: &ListLetters) -> Result<Vec<LetterLine>> {
    let sql = format!(
        "SELECT v.id AS visit, v.student, s.name, v.first_day, v.last_day,
                (SELECT l.id FROM letter l WHERE l.visit = v.id AND l.issued IS NOT NULL ORDER BY l.issued DESC LIMIT 1) AS letter,
                (SELECT max(l.issued) FROM letter l WHERE l.visit = v.id) AS at,
                {HAS_DRAFT} AS draft
         {}
         ORDER BY w.last_day DESC, s.folded, v.id LIMIT coalesce(nullif(?4, 0), -1)",
        asked_for(ask)
    );
    let (student, from, to) = bounds(ask);
    db.all(&sql, params![student, from, to, ask.most], |row| {
        let letter: Option<LetterId> = row.get("letter")?;
        let draft: bool = row.get("draft")?;
        Ok(LetterLine {
            visit: row.get("visit")?,
            student: row.get("student")?,
            name: row.get("name")?,
            first_day: row.get("first_day")?,
            last_day: row.get("last_day")?,
            state: match (letter, draft) {
                (_, true) => LetterState::Draft,
                (Some(_), false) => LetterState::Issued,
                (None, false) => LetterState::Owed,
            },
            letter,
            at: row.get("at")?,
        })
    })
}
