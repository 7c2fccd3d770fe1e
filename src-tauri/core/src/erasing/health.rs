//! Erasing a student's health answers alone, and a report whose time is over.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Backups, act, backups, store};
use crate::app::erase::{Belonging, Erasing};
use crate::app::{CoachFile, Reading, Written};
use crate::error::{Error, Problems, Result};
use crate::intake::{head, incidents};
use crate::keeping;
use crate::kinds::Day;
use crate::kinds::ids::{IncidentId, StudentId};
use crate::kinds::text::{counted, line};

/// The tables of health answers, each with what its rows are called.
const HEALTH: [(&str, &str, &str); 3] = [
    ("injury", "injury or restriction", "injuries and restrictions"),
    ("readiness", "set of readiness answers", "sets of readiness answers"),
    ("clearance", "clearance", "clearances"),
];

/// So many days ahead a blow to the head has to be cleared, so that nothing of it comes back.
const FOR_GOOD: i64 = 36_500;

/// What is kept of a student's health, and what erasing it alone would leave.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct HealthKept {
    /// What would go, as in "2 injuries and restrictions".
    pub lines: Vec<String>,
    /// What stays although it may speak of health, a sentence each.
    pub stays: Vec<String>,
    /// Why it cannot be done now, as a sentence; empty when it can.
    pub against: String,
}

/// Whose health answers to erase.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EraseHealth {
    /// The student.
    pub student: StudentId,
    /// The student's full name, typed, so that nothing is erased by a slip.
    pub name_typed: String,
}

/// Which report to erase.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EraseReport {
    /// The report.
    pub incident: IncidentId,
}

/// What was erased of someone, and what is left to do.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct PartErased {
    /// What was done, as a sentence.
    pub words: String,
    /// What is left to do, a sentence each.
    pub left: Vec<String>,
}

/// What is kept of a student's health.
pub(super) fn health(db: &Reading<'_>, student: StudentId) -> Result<HealthKept> {
    let mut lines = Vec::new();
    for (table, one, many) in HEALTH {
        let ids = store::of_student(db, table, student)?.len();
        if ids > 0 {
            lines.push(counted(i64::try_from(ids).unwrap_or(i64::MAX), one, many));
        }
    }
    let reports = store::of_student(db, "incident", student)?.len();
    let mut stays = Vec::new();
    if reports > 0 {
        let reports = counted(i64::try_from(reports).unwrap_or(i64::MAX), "report", "reports");
        stays.push(format!(
            "{reports} of what happened on court: an insurer or the law may have them kept."
        ));
    }
    if !store::of_student(db, "went_on", student)?.is_empty() {
        stays.push("Why you went on although something was missing.".to_owned());
    }
    stays.push("Your own words in notes, lesson plans and letters: go and look.".to_owned());
    let against = match head::keeps_from_play(db, student, db.today().plus(FOR_GOOD))? {
        Some(_) => "A blow to the head is not cleared for good. What is known of it stays until a clearance without an end is recorded.".to_owned(),
        None => String::new(),
    };
    Ok(HealthKept { lines, stays, against })
}

/// Erases what was asked and noted of a student's health, with its history; the student stays, and is
/// asked again before the next lesson. It cannot be undone.
///
/// # Errors
/// `NotFound`; `Refused` when the name typed is not the student's; `NotPossible` when there is
/// nothing, or while a blow to the head is not cleared for good.
pub fn erase_health(file: &mut CoachFile, ask: EraseHealth) -> Result<Written<PartErased>> {
    let (rows, lines) = file.read(|db| {
        let (name, _) = store::name(db, ask.student)?;
        let health = health(db, ask.student)?;
        if !health.against.is_empty() {
            return Err(Error::not_possible("head_injury", health.against));
        }
        if health.lines.is_empty() {
            let words = format!("Nothing is kept of the health of {name}.");
            return Err(Error::not_possible("nothing_kept", words));
        }
        let mut p = Problems::new();
        if line(&ask.name_typed) != name {
            p.add("name_typed", "other_name", act::OTHER_NAME);
        }
        p.done()?;
        let mut rows = Vec::new();
        for (table, _, _) in HEALTH {
            let ids = store::of_student(db, table, ask.student)?;
            rows.extend(ids.into_iter().map(|id| (table, id)));
        }
        Ok((rows, health.lines))
    })?;
    let what = Erasing {
        act: "students.erase_health",
        label: "Health answers erased",
        roots: rows,
        spared: std::collections::BTreeSet::new(),
    };
    let done = file.erase(
        what,
        |db, _: &Belonging| {
            store::forget_asking(db, ask.student)?;
            backups::holding(db, ask.student)
        },
        |_| Ok(()),
    )?;
    let words = format!("Erased, out of the history too: {}.", lines.join(", "));
    let Written { value: copies, act, changes } = done.written;
    let left = left(&copies, done.cleared, file.today());
    Ok(Written { value: PartErased { words, left }, act, changes })
}

/// Erases an incident report whose time is over, with its history. It cannot be undone.
///
/// # Errors
/// `NotFound`; `NotPossible` before its time is over, or while a blow to the head that was written
/// down with it is not cleared for good.
pub fn erase_report(file: &mut CoachFile, ask: EraseReport) -> Result<Written<PartErased>> {
    file.read(|db| {
        let incident = incidents::show(db, incidents::WhichIncident { incident: ask.incident })?;
        let words = match keeping::report_until(db, incident.day)? {
            None => "Say first how long reports are kept. An insurer or the law may have them kept: ask.".to_owned(),
            Some(until) if until >= db.today() => {
                format!("This report is kept until {}. It can be erased the day after.", until.words())
            }
            Some(_) => String::new(),
        };
        if !words.is_empty() {
            return Err(Error::not_possible("kept_longer", words));
        }
        let Some(student) = incident.report.student else { return Ok(()) };
        let against = health(db, student)?.against;
        if against.is_empty() { Ok(()) } else { Err(Error::not_possible("head_injury", against)) }
    })?;
    let what = Erasing {
        act: "intake.erase_incident",
        label: "An incident report erased",
        roots: vec![("incident", ask.incident.to_string())],
        spared: std::collections::BTreeSet::new(),
    };
    let done = file.erase(what, |db, _| backups::backups(db), |_| Ok(()))?;
    let Written { value: copies, act, changes } = done.written;
    let left = left(&copies, done.cleared, file.today());
    let words = "The report is erased, out of the history too.".to_owned();
    Ok(Written { value: PartErased { words, left }, act, changes })
}

fn left(copies: &Backups, cleared: bool, today: Day) -> Vec<String> {
    let mut left = Vec::new();
    left.extend((!cleared).then(|| act::NOT_CLEARED.to_owned()));
    left.extend(act::copies_words(copies, "what was erased", today));
    left
}
