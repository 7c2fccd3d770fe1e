//! Clearances: what a named professional wrote about a return to play, or about exercise. The coach
//! records it; the program gives none.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::scans::{self, ScanGiven, ScanNamed};
use super::{OfStudent, injuries, past_day, same_name};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{ClearanceId, InjuryId, ScanId, StudentId};
use crate::students;

/// The days for which a clearance about exercise counts, where none is written on it.
const EXERCISE_HOLDS: i64 = 365;

/// What people write for a profession that is none. Which professions may clear whom, local rules
/// say; these may nowhere.
const NO_PROFESSION: [&str; 12] = [
    "mother",
    "father",
    "parent",
    "guardian",
    "legal guardian",
    "coach",
    "trainer",
    "teacher",
    "friend",
    "partner",
    "student",
    "self",
];

/// A clearance to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RecordClearance {
    /// Whose.
    pub student: StudentId,
    /// After which injury; left out for one about exercise, after the readiness questions.
    #[serde(default)]
    pub injury: Option<InjuryId>,
    /// Who wrote it, by full name.
    pub by_whom: String,
    /// What they are: physician, physiotherapist.
    pub profession: String,
    /// The day it was written, as YYYY-MM-DD.
    pub day: String,
    /// What it says, in its own words, with every limit.
    pub says: String,
    /// The last day it holds; empty where no end was written.
    #[serde(default)]
    pub until: String,
    /// The paper.
    #[serde(default)]
    pub scan: Option<ScanGiven>,
    /// Where no paper is kept here: where the coach read it, and who has it.
    #[serde(default)]
    pub seen: String,
}

/// A clearance that no longer counts.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WithdrawClearance {
    /// Which one.
    pub clearance: ClearanceId,
    /// Why.
    pub why: String,
}

/// A clearance as recorded.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Clearance {
    /// Which one.
    pub id: ClearanceId,
    /// Whose.
    pub student: StudentId,
    /// After which injury.
    pub injury: Option<InjuryId>,
    /// Who wrote it.
    pub by_whom: String,
    /// What they are.
    pub profession: String,
    /// The day it was written.
    pub day: Day,
    /// What it says.
    pub says: String,
    /// The last day it holds.
    pub until: Option<Day>,
    /// The paper.
    pub scan: Option<ScanNamed>,
    /// Where the coach read it; empty where the paper is kept here.
    pub seen: String,
    /// The day it was withdrawn.
    pub withdrawn: Option<Day>,
    /// Why.
    pub why: String,
}

impl Clearance {
    /// Whether it counts on a day.
    pub fn holds(&self, day: Day) -> bool {
        self.withdrawn.is_none() && self.day <= day && self.until.is_none_or(|until| day <= until)
    }
}

/// Records a clearance.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: no name, the student's or guardian's own
/// name, no profession or one that is none, nothing said, neither the paper nor where it was read, a
/// day before the injury or to come, an end before its day.
pub fn record(db: &Writing<'_>, given: RecordClearance) -> Result<Clearance> {
    let student = students::show(db, students::Which { student: given.student })?;
    let injury = given.injury.map(|injury| injuries::find(db, injury)).transpose()?;
    if injury.as_ref().is_some_and(|injury| injury.student != student.id) {
        return Err(Error::NotFound {
            what: "injury",
            id: given.injury.map(|i| i.to_string()).unwrap_or_default(),
        });
    }
    let mut p = Problems::new();
    let by_whom = p.name("by_whom", &given.by_whom, "The name of who wrote it");
    let known = student.profile.guardian.as_ref().map(|guardian| guardian.name.as_str());
    if [Some(student.profile.name.as_str()), known]
        .into_iter()
        .flatten()
        .any(|own| same_name(&by_whom, own))
    {
        let words =
            "That is the student or the guardian: someone licensed, who is neither, clears.";
        p.add("by_whom", "own", words);
    }
    let profession = p.name("profession", &given.profession, "The profession");
    if NO_PROFESSION.iter().any(|word| same_name(&profession, word)) {
        let words =
            "Write the licensed profession, as in physician; who may clear whom, local rules say.";
        p.add("profession", "none", words);
    }
    let day = past_day(&mut p, "day", &given.day, "The day it was written", db.today());
    if day.is_none() && given.day.trim().is_empty() {
        p.add("day", "empty", "The day it was written is empty.");
    }
    if let (Some(day), Some(injury)) = (day, &injury)
        && day < injury.since
    {
        p.add(
            "day",
            "before",
            format!("It was written before the injury of {}.", injury.since.words()),
        );
    }
    let says = p.reason("says", &given.says, "What it says");
    let until = p.day_or_none("until", Some(&given.until), "The last day");
    if let (Some(day), Some(until)) = (day, until)
        && until < day
    {
        p.add("until", "before", "The last day lies before the day it was written.");
    }
    let given_scan = given.scan.is_some();
    let scan = given.scan.and_then(|scan| scan.read(&mut p, "scan"));
    let seen = p.note("seen", &given.seen, "Where you read it");
    if !given_scan && seen.is_empty() {
        let words = "Attach the paper, or say where you read it and who has it: what somebody says of it is none.";
        p.add("seen", "empty", words);
    }
    p.done()?;
    let scan = scans::keep(db, scan)?;
    let id: ClearanceId = db.id();
    db.execute(
        "INSERT INTO clearance (id, student, injury, by_whom, profession, day, says, until, scan, seen)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![id, student.id, given.injury, by_whom, profession, day, says, until, scan, Some(seen).filter(|seen| !seen.is_empty())],
    )?;
    db.label(format!("Clearance recorded: {}, by {by_whom}", student.profile.name));
    find(db, id)
}

/// Marks a clearance as withdrawn, so that it no longer counts.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` when it was withdrawn already.
pub fn withdraw(db: &Writing<'_>, withdraw: WithdrawClearance) -> Result<Clearance> {
    let clearance = find(db, withdraw.clearance)?;
    let mut p = Problems::new();
    let why = p.reason("why", &withdraw.why, "The reason");
    p.done()?;
    if clearance.withdrawn.is_some() {
        return Err(Error::not_possible("withdrawn", "This clearance was withdrawn already."));
    }
    let student = students::show(db, students::Which { student: clearance.student })?;
    db.execute(
        "UPDATE clearance SET withdrawn = ?, why = ? WHERE id = ?",
        params![db.today(), why, clearance.id],
    )?;
    db.label(format!("Clearance withdrawn: {}", student.profile.name));
    // Taking this back would let a student play again.
    db.cannot_be_undone();
    find(db, clearance.id)
}

/// All clearances of a student, the newest first.
///
/// # Errors
/// `NotFound`.
pub fn of(db: &Reading<'_>, of: OfStudent) -> Result<Vec<Clearance>> {
    students::show(db, students::Which { student: of.student })?;
    all(db, of.student)
}

pub(crate) fn all(db: &Reading<'_>, student: StudentId) -> Result<Vec<Clearance>> {
    let rows = db.all(
        "SELECT * FROM clearance WHERE student = ? ORDER BY day DESC, id DESC",
        [student],
        a_clearance,
    )?;
    rows.into_iter().map(|(clearance, scan)| with_scan(db, clearance, scan)).collect()
}

/// Whether a clearance after this injury counts on a day.
pub(super) fn after(
    db: &Reading<'_>,
    student: StudentId,
    injury: InjuryId,
    day: Day,
) -> Result<bool> {
    Ok(all(db, student)?.iter().any(|c| c.injury == Some(injury) && c.holds(day)))
}

/// Whether a clearance about exercise counts on a day, after answers of another day: it may have
/// been written up to a year before them, because a clearance from the last 12 months is enough.
pub(super) fn about_exercise(
    db: &Reading<'_>,
    student: StudentId,
    answered: Day,
    day: Day,
) -> Result<bool> {
    Ok(all(db, student)?.iter().any(|c| {
        c.injury.is_none()
            && c.holds(day)
            && c.day >= answered.plus(-EXERCISE_HOLDS)
            && (c.until.is_some() || day.since(c.day) <= EXERCISE_HOLDS)
    }))
}

fn find(db: &Reading<'_>, id: ClearanceId) -> Result<Clearance> {
    let (clearance, scan) =
        db.found("clearance", &id, "SELECT * FROM clearance WHERE id = ?", [id], a_clearance)?;
    with_scan(db, clearance, scan)
}

fn with_scan(db: &Reading<'_>, mut c: Clearance, scan: Option<ScanId>) -> Result<Clearance> {
    c.scan = scans::named(db, scan)?;
    Ok(c)
}

fn a_clearance(row: &Row<'_>) -> rusqlite::Result<(Clearance, Option<ScanId>)> {
    Ok((
        Clearance {
            id: row.get("id")?,
            student: row.get("student")?,
            injury: row.get("injury")?,
            by_whom: row.get("by_whom")?,
            profession: row.get("profession")?,
            day: row.get("day")?,
            says: row.get("says")?,
            until: row.get("until")?,
            scan: None,
            seen: row.get::<_, Option<String>>("seen")?.unwrap_or_default(),
            withdrawn: row.get("withdrawn")?,
            why: row.get("why")?,
        },
        row.get("scan")?,
    ))
}
