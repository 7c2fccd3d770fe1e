//! Writing a report, signing it, adding to it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Addition, Incident, Report, store, words};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::facilities;
use crate::intake::injuries::{self, InjuryKind};
use crate::intake::{Answer, past_day, same_name};
use crate::kinds::Day;
use crate::kinds::ids::{IncidentId, RowId, StudentId};
use crate::students;

/// A report to write.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RecordIncident {
    /// The report.
    pub report: Report,
}

/// A report to change before it is signed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeIncident {
    /// Which one.
    pub incident: IncidentId,
    /// All that is to be kept.
    pub report: Report,
}

/// A report to sign.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SignIncident {
    /// Which one.
    pub incident: IncidentId,
    /// The author's name, typed once more.
    pub signature: String,
}

/// Something to add to a signed report.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddToIncident {
    /// Which one.
    pub incident: IncidentId,
    /// What.
    pub words: String,
    /// By whom.
    pub author: String,
}

/// Which report.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichIncident {
    /// The report.
    pub incident: IncidentId,
}

/// A report as read from a form.
pub(super) struct Read {
    pub(super) report: Report,
    pub(super) day: Day,
}

fn read(db: &Reading<'_>, r: Report) -> Result<Read> {
    let mut p = Problems::new();
    let today = db.today();
    let day = past_day(&mut p, "day", &r.day, "The day", today).unwrap_or(today);
    let mut time = |field: &str, typed: &str, what: &str| match typed.trim() {
        "" => String::new(),
        typed => p.time(field, typed, what).to_string(),
    };
    let at = time("time", &r.time, "The time");
    let called_at = time("called_at", &r.called_at, "The time of the call");
    if r.student.is_none() && r.person.trim().is_empty() {
        p.add("person", "empty", "Say to whom it happened: a student, or a name.");
    }
    if r.student.is_some() && !r.person.trim().is_empty() {
        p.add("person", "twice", "Either a student or another name.");
    }
    let happened = p.reason("happened", &r.happened, "What happened");
    if r.head.is_none() {
        p.add(
            "head",
            "empty",
            "Was there a blow to the head, or a sign after one? Yes, no, or not known.",
        );
    }
    let report = Report {
        student: r.student,
        lesson: r.lesson,
        person: p.line("person", &r.person, "The name"),
        role: p.line("role", &r.role, "The role"),
        age: p.line("age", &r.age, "The age"),
        guardian: p.line("guardian", &r.guardian, "The guardian"),
        day: day.to_string(),
        time: at,
        facility: r.facility,
        place: p.line("place", &r.place, "The place"),
        number: p.line("number", &r.number, "The report number"),
        activity: p.line("activity", &r.activity, "What was being done"),
        happened,
        body_part: p.line("body_part", &r.body_part, "The part of the body"),
        mechanism: p.line("mechanism", &r.mechanism, "How it came about"),
        equipment: p.line("equipment", &r.equipment, "The equipment"),
        first_aid: p.note("first_aid", &r.first_aid, "First aid"),
        called: r.called,
        called_at,
        head: r.head,
        head_cause: p.line("head_cause", &r.head_cause, "How the blow came about"),
        unconscious: r.unconscious,
        memory: r.memory,
        seizure: r.seizure,
        earlier: r.earlier,
        witnesses: p.note("witnesses", &r.witnesses, "The witnesses"),
        told: p.note("told", &r.told, "Who was told"),
        follow_up: p.note("follow_up", &r.follow_up, "What is to follow"),
        author: p.line("author", &r.author, "Who writes this"),
    };
    p.done()?;
    if let Some(facility) = report.facility {
        facilities::show(db, facilities::Which { facility })?;
    }
    Ok(Read { report, day })
}

/// Writes a report down. A blow to the head of a student keeps them from play from this moment on,
/// and cannot be undone.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn record(db: &Writing<'_>, given: RecordIncident) -> Result<Incident> {
    let read = read(db, given.report)?;
    let name = name_of(db, &read.report)?;
    let id: IncidentId = db.id();
    store::insert(db, id, &read, db.now())?;
    keep_from_play(db, id, &read)?;
    db.label(format!("Incident written down: {name}, {}", read.day.words()));
    show(db, WhichIncident { incident: id })
}

fn name_of(db: &Reading<'_>, report: &Report) -> Result<String> {
    match report.student {
        None => Ok(report.person.clone()),
        Some(student) => Ok(students::show(db, students::Which { student })?.profile.name),
    }
}

/// A head injury of the student, once for each report. "Not known" counts as a blow: nobody on court
/// judges it.
fn keep_from_play(db: &Writing<'_>, id: IncidentId, read: &Read) -> Result<()> {
    let Some(student) = read.report.student else { return Ok(()) };
    if read.report.head == Some(Answer::No) || store::has_injury(db, id, student)? {
        return Ok(());
    }
    let cause = match read.report.head_cause.as_str() {
        "" => "Blow to the head, or signs after one",
        cause => cause,
    };
    injuries::insert(db, student, InjuryKind::Head, cause, read.day, true, Some(id))?;
    Ok(())
}

/// Changes a report that is not signed yet. Whom it happened to stays, and a blow to the head that
/// was written down is not taken back: a clearance lets the student play again.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` once it is signed.
pub fn change(db: &Writing<'_>, given: ChangeIncident) -> Result<Incident> {
    let before = show(db, WhichIncident { incident: given.incident })?;
    if before.signed.is_some() {
        return Err(signed());
    }
    let read = read(db, given.report)?;
    let mut p = Problems::new();
    let same: (Option<StudentId>, &str) = (before.report.student, &before.report.person);
    if (read.report.student, read.report.person.as_str()) != same {
        p.add(
            "person",
            "another",
            "A report stays with whom it was written about. Write another one.",
        );
    }
    if before.report.student.is_some()
        && before.report.head != Some(Answer::No)
        && read.report.head == Some(Answer::No)
    {
        p.add(
            "head",
            "head_injury",
            "A blow to the head that was written down stays. Only a professional\u{2019}s clearance lets the student play again.",
        );
    }
    p.done()?;
    store::update(db, given.incident, &read)?;
    keep_from_play(db, given.incident, &read)?;
    db.label(format!("Incident changed: {}", before.name));
    show(db, WhichIncident { incident: given.incident })
}

fn signed() -> Error {
    Error::not_possible(
        "signed",
        "This report is signed, so it no longer changes. Add to it what has come to be known.",
    )
}

/// Signs a report: from now on it does not change.
///
/// # Errors
/// `NotFound`; `Refused` when the signature is empty or not the author's name; `NotPossible` when it
/// is signed already.
pub fn sign(db: &Writing<'_>, given: SignIncident) -> Result<Incident> {
    let before = show(db, WhichIncident { incident: given.incident })?;
    if before.signed.is_some() {
        return Err(signed());
    }
    let mut p = Problems::new();
    let signature = p.name("signature", &given.signature, "The signature");
    let author = &before.report.author;
    if !signature.is_empty() && !author.is_empty() && !same_name(&signature, author) {
        p.add(
            "signature",
            "not_the_author",
            format!(
                "The report says that {author} wrote it. Sign with that name, or change it first."
            ),
        );
    }
    p.done()?;
    let at = db.now();
    let seal = words::seal(&before.report, &signature, at);
    store::sign(db, given.incident, &signature, at, &seal)?;
    db.cannot_be_undone();
    db.label(format!("Incident report signed: {}", before.name));
    show(db, WhichIncident { incident: given.incident })
}

/// Adds to a signed report; the day and the author stand beside it.
///
/// # Errors
/// `NotFound`; `Refused` without words or without a name; `NotPossible` while it is not signed.
pub fn add(db: &Writing<'_>, given: AddToIncident) -> Result<Incident> {
    let before = show(db, WhichIncident { incident: given.incident })?;
    let mut p = Problems::new();
    let words = p.reason("words", &given.words, "What is added");
    let author = p.name("author", &given.author, "Who adds it");
    p.done()?;
    if before.signed.is_none() {
        return Err(Error::not_possible(
            "not_signed",
            "This report is not signed yet: change it itself.",
        ));
    }
    let addition = Addition { id: db.id::<RowId>(), at: db.now(), words, author };
    store::insert_addition(db, given.incident, &addition)?;
    db.cannot_be_undone();
    db.label(format!("Added to the incident report: {}", before.name));
    show(db, WhichIncident { incident: given.incident })
}

/// One report.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichIncident) -> Result<Incident> {
    store::find(db, which.incident)
}

/// All reports, the newest first; those not signed yet on top.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<Incident>> {
    store::all(db)
}
