//! All SQL of incident reports.

use rusqlite::{Row, named_params, params};

use super::record::Read;
use super::{Addition, Incident, Report, words};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::intake::Answer;
use crate::kinds::ids::{IncidentId, StudentId};
use crate::kinds::{Day, Instant, Time};

/// An answer that may not have been asked: empty in the file.
fn asked(answer: Option<Answer>) -> &'static str {
    match answer {
        None => "",
        Some(Answer::Yes) => "yes",
        Some(Answer::No) => "no",
        Some(Answer::NotKnown) => "not_known",
    }
}

fn time(typed: &str) -> Option<Time> {
    Time::parse(typed)
}

pub(super) fn insert(db: &Writing<'_>, id: IncidentId, read: &Read, at: Instant) -> Result<()> {
    let r = &read.report;
    db.execute(
        "INSERT INTO incident (id, student, lesson, person, day, happened, called, head, recorded)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            r.student,
            r.lesson,
            r.person,
            read.day,
            r.happened,
            r.called,
            asked(r.head),
            at.to_string()
        ],
    )?;
    update(db, id, read)
}

pub(super) fn update(db: &Writing<'_>, id: IncidentId, read: &Read) -> Result<()> {
    let r = &read.report;
    db.execute(
        "UPDATE incident SET lesson = :lesson, role = :role, age = :age, guardian = :guardian, day = :day,
           time = :time, facility = :facility, place = :place, number = :number, activity = :activity,
           happened = :happened, body_part = :body_part, mechanism = :mechanism, equipment = :equipment,
           first_aid = :first_aid, called = :called, called_at = :called_at, head = :head,
           head_cause = :head_cause, unconscious = :unconscious, memory = :memory, seizure = :seizure,
           earlier = :earlier, witnesses = :witnesses, told = :told, follow_up = :follow_up, author = :author
         WHERE id = :id",
        named_params! {
            ":id": id, ":lesson": r.lesson, ":role": r.role, ":age": r.age, ":guardian": r.guardian,
            ":day": read.day, ":time": time(&r.time), ":facility": r.facility, ":place": r.place,
            ":number": r.number, ":activity": r.activity, ":happened": r.happened,
            ":body_part": r.body_part, ":mechanism": r.mechanism, ":equipment": r.equipment,
            ":first_aid": r.first_aid, ":called": r.called, ":called_at": time(&r.called_at),
            ":head": asked(r.head), ":head_cause": r.head_cause, ":unconscious": asked(r.unconscious),
            ":memory": asked(r.memory), ":seizure": asked(r.seizure), ":earlier": asked(r.earlier),
            ":witnesses": r.witnesses, ":told": r.told, ":follow_up": r.follow_up, ":author": r.author,
        },
    )?;
    Ok(())
}

pub(super) fn sign(
    db: &Writing<'_>,
    id: IncidentId,
    signature: &str,
    at: Instant,
    seal: &str,
) -> Result<()> {
    db.execute(
        "UPDATE incident SET signature = ?, signed = ?, seal = ? WHERE id = ?",
        params![signature, at.to_string(), seal, id],
    )?;
    Ok(())
}

pub(super) fn insert_addition(db: &Writing<'_>, incident: IncidentId, a: &Addition) -> Result<()> {
    db.execute(
        "INSERT INTO incident_addition (id, incident, at, words, author) VALUES (?, ?, ?, ?, ?)",
        params![a.id, incident, a.at.to_string(), a.words, a.author],
    )?;
    Ok(())
}

pub(super) fn has_injury(db: &Reading<'_>, id: IncidentId, student: StudentId) -> Result<bool> {
    let some = db.one(
        "SELECT 1 FROM injury WHERE incident = ? AND student = ? AND kind = 'head'",
        params![id, student],
        |_| Ok(()),
    )?;
    Ok(some.is_some())
}

const INCIDENT: &str = "SELECT i.*, s.name AS student_name, f.name AS facility_name FROM incident i
    LEFT JOIN student s ON s.id = i.student LEFT JOIN facility f ON f.id = i.facility";

pub(super) fn find(db: &Reading<'_>, id: IncidentId) -> Result<Incident> {
    let found =
        db.found("incident", &id, &format!("{INCIDENT} WHERE i.id = ?"), [id], an_incident)?;
    with_additions(db, found)
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Incident>> {
    let rows = db.all(
        &format!("{INCIDENT} ORDER BY i.signed IS NOT NULL, i.day DESC, i.id DESC"),
        [],
        an_incident,
    )?;
    rows.into_iter().map(|found| with_additions(db, found)).collect()
}

fn with_additions(db: &Reading<'_>, mut incident: Incident) -> Result<Incident> {
    incident.additions = db.all(
        "SELECT * FROM incident_addition WHERE incident = ? ORDER BY id",
        [incident.id],
        |row| {
            Ok(Addition {
                id: row.get("id")?,
                at: row.get("at")?,
                words: row.get("words")?,
                author: row.get("author")?,
            })
        },
    )?;
    Ok(incident)
}

fn an_incident(row: &Row<'_>) -> rusqlite::Result<Incident> {
    let time = |column: &str| -> rusqlite::Result<String> {
        Ok(row.get::<_, Option<Time>>(column)?.map(|time| time.to_string()).unwrap_or_default())
    };
    let asked = |column: &str| -> rusqlite::Result<Option<Answer>> {
        if row.get_ref(column)?.as_str()?.is_empty() { Ok(None) } else { row.get(column).map(Some) }
    };
    let day: Day = row.get("day")?;
    let report = Report {
        student: row.get("student")?,
        lesson: row.get("lesson")?,
        person: row.get("person")?,
        role: row.get("role")?,
        age: row.get("age")?,
        guardian: row.get("guardian")?,
        day: day.to_string(),
        time: time("time")?,
        facility: row.get("facility")?,
        place: row.get("place")?,
        number: row.get("number")?,
        activity: row.get("activity")?,
        happened: row.get("happened")?,
        body_part: row.get("body_part")?,
        mechanism: row.get("mechanism")?,
        equipment: row.get("equipment")?,
        first_aid: row.get("first_aid")?,
        called: row.get("called")?,
        called_at: time("called_at")?,
        head: asked("head")?,
        head_cause: row.get("head_cause")?,
        unconscious: asked("unconscious")?,
        memory: asked("memory")?,
        seizure: asked("seizure")?,
        earlier: asked("earlier")?,
        witnesses: row.get("witnesses")?,
        told: row.get("told")?,
        follow_up: row.get("follow_up")?,
        author: row.get("author")?,
    };
    let name: String =
        row.get::<_, Option<String>>("student_name")?.unwrap_or_else(|| report.person.clone());
    let facility_name: String = row.get::<_, Option<String>>("facility_name")?.unwrap_or_default();
    let signed: Option<Instant> = row.get("signed")?;
    let (signature, seal): (String, String) = (row.get("signature")?, row.get("seal")?);
    let whole = signed.is_none_or(|at| words::seal(&report, &signature, at) == seal);
    Ok(Incident {
        id: row.get("id")?,
        lines: words::lines(&name, &report, &facility_name),
        name,
        day,
        facility_name,
        recorded: row.get("recorded")?,
        signed,
        signature,
        seal,
        whole,
        additions: Vec::new(),
        report,
    })
}
