//! Injuries and restrictions, in the student's own words.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{OfStudent, clearances, consents, past_day};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{IncidentId, InjuryId, StudentId};
use crate::students;

/// What kind of thing it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum InjuryKind {
    /// An injury.
    Injury,
    /// Something the student should not do, or does with care.
    Restriction,
    /// A blow to the head, or signs after one.
    Head,
}

crate::db::words! {
    InjuryKind { Injury = "injury", Restriction = "restriction", Head = "head" }
}

/// An injury or restriction to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoteInjury {
    /// Whose.
    pub student: StudentId,
    /// What kind of thing.
    pub kind: InjuryKind,
    /// In the student's words.
    pub words: String,
    /// Since when, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub since: String,
    /// Whether there is to be no lesson before a professional has cleared it; after a blow to the
    /// head always.
    #[serde(default)]
    pub asks: bool,
}

/// An injury or restriction to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeInjury {
    /// Which one.
    pub injury: InjuryId,
    /// In the student's words.
    pub words: String,
    /// The day the student said it was over; empty while it goes on. After a blow to the head that
    /// lets nobody play: a clearance does.
    #[serde(default)]
    pub over: String,
    /// Whether there is to be no lesson before a professional has cleared it.
    #[serde(default)]
    pub asks: bool,
}

/// An injury or restriction as written down.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Injury {
    /// Which one.
    pub id: InjuryId,
    /// Whose.
    pub student: StudentId,
    /// What kind of thing.
    pub kind: InjuryKind,
    /// In the student's words.
    pub words: String,
    /// Since when.
    pub since: Day,
    /// The day the student said it was over.
    pub over: Option<Day>,
    /// Whether there is to be no lesson before a professional has cleared it.
    pub asks: bool,
    /// Whether a clearance counts today.
    pub cleared: bool,
    /// The report it was written down with.
    pub incident: Option<IncidentId>,
}

/// Writes an injury or restriction down.
///
/// # Errors
/// `NotFound`; `Refused` without words, or on a day to come; `NotPossible` against a no to keeping
/// health answers, other than for a blow to the head.
pub fn note(db: &Writing<'_>, given: NoteInjury) -> Result<Injury> {
    let student = students::show(db, students::Which { student: given.student })?;
    if given.kind != InjuryKind::Head {
        consents::health_may_be_kept(db, student.id)?;
    }
    let mut p = Problems::new();
    let words = p.reason("words", &given.words, "What it is");
    let since =
        past_day(&mut p, "since", &given.since, "The day", db.today()).unwrap_or(db.today());
    p.done()?;
    let id = insert(db, student.id, given.kind, &words, since, given.asks, None)?;
    db.label(match given.kind {
        InjuryKind::Head => format!("Head injury written down: {}", student.profile.name),
        InjuryKind::Injury => format!("Injury written down: {}", student.profile.name),
        InjuryKind::Restriction => format!("Restriction written down: {}", student.profile.name),
    });
    find(db, id)
}

pub(super) fn insert(
    db: &Writing<'_>,
    student: StudentId,
    kind: InjuryKind,
    words: &str,
    since: Day,
    asks: bool,
    incident: Option<IncidentId>,
) -> Result<InjuryId> {
    let id: InjuryId = db.id();
    let head = kind == InjuryKind::Head;
    db.execute(
        "INSERT INTO injury (id, student, kind, words, since, asks, incident) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, student, kind, words, since, asks || head, incident],
    )?;
    if head {
        // Undo would be a way back to play that no professional has opened.
        db.cannot_be_undone();
    }
    Ok(id)
}

/// Changes an injury's words, or says that it is over.
///
/// # Errors
/// `NotFound`; `Refused` without words, or with an end before the beginning or to come.
pub fn change(db: &Writing<'_>, given: ChangeInjury) -> Result<Injury> {
    let before = find(db, given.injury)?;
    let mut p = Problems::new();
    let words = p.reason("words", &given.words, "What it is");
    let over = past_day(&mut p, "over", &given.over, "The day it was over", db.today());
    if over.is_some_and(|over| over < before.since) {
        p.add("over", "before", format!("It began on {}.", before.since.words()));
    }
    p.done()?;
    let asks = given.asks || before.kind == InjuryKind::Head;
    db.execute(
        "UPDATE injury SET words = ?, over = ?, asks = ? WHERE id = ?",
        params![words, over, asks, before.id],
    )?;
    let student = students::show(db, students::Which { student: before.student })?;
    db.label(format!("Injury changed: {}", student.profile.name));
    find(db, before.id)
}

/// All injuries and restrictions of a student, those that go on first, then the newest.
///
/// # Errors
/// `NotFound`.
pub fn of(db: &Reading<'_>, of: OfStudent) -> Result<Vec<Injury>> {
    students::show(db, students::Which { student: of.student })?;
    all(db, of.student)
}

pub(super) fn all(db: &Reading<'_>, student: StudentId) -> Result<Vec<Injury>> {
    let rows = db.all(
        "SELECT * FROM injury WHERE student = ? ORDER BY over IS NOT NULL, since DESC, id DESC",
        [student],
        an_injury,
    )?;
    rows.into_iter().map(|injury| with_clearance(db, injury)).collect()
}

pub(super) fn find(db: &Reading<'_>, id: InjuryId) -> Result<Injury> {
    let injury = db.found("injury", &id, "SELECT * FROM injury WHERE id = ?", [id], an_injury)?;
    with_clearance(db, injury)
}

fn with_clearance(db: &Reading<'_>, mut injury: Injury) -> Result<Injury> {
    injury.cleared = clearances::after(db, injury.student, injury.id, db.today())?;
    Ok(injury)
}

fn an_injury(row: &Row<'_>) -> rusqlite::Result<Injury> {
    Ok(Injury {
        id: row.get("id")?,
        student: row.get("student")?,
        kind: row.get("kind")?,
        words: row.get("words")?,
        since: row.get("since")?,
        over: row.get("over")?,
        asks: row.get("asks")?,
        cleared: false,
        incident: row.get("incident")?,
    })
}

/// Injuries that ask for a clearance no lesson on a day has, other than of the head; and the newest
/// injury of all.
pub(crate) fn uncleared_on(
    db: &Reading<'_>,
    student: StudentId,
    day: Day,
) -> Result<(Vec<Injury>, Option<Injury>)> {
    let all = all(db, student)?;
    let newest = all
        .iter()
        .filter(|i| i.kind != InjuryKind::Restriction && i.since <= day)
        .max_by_key(|i| (i.since, i.id))
        .cloned();
    let mut open = Vec::new();
    for injury in all {
        let running = injury.since <= day && injury.over.is_none_or(|over| over > day);
        if injury.kind != InjuryKind::Head
            && injury.asks
            && running
            && !clearances::after(db, student, injury.id, day)?
        {
            open.push(injury);
        }
    }
    Ok((open, newest))
}

/// What a lesson on a day has to be careful of: injuries and restrictions that go on.
pub(crate) fn careful_on(db: &Reading<'_>, student: StudentId, day: Day) -> Result<Vec<Injury>> {
    let all = all(db, student)?;
    Ok(all
        .into_iter()
        .filter(|i| i.since <= day && i.over.is_none_or(|over| over > day))
        .filter(|i| i.kind != InjuryKind::Head || i.cleared)
        .collect())
}
