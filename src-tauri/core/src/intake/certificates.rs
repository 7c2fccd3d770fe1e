//! The coach's own papers: first aid, background check, safeguarding, insurance, instructor's
//! certification; each with the day it ends.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::scans::{self, ScanGiven, ScanNamed};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{CertificateId, ScanId};

/// So many days before its end a paper is told of.
const TOLD_BEFORE: i64 = 45;

/// What kind of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CertificateKind {
    /// First aid, with resuscitation.
    FirstAid,
    /// A background check.
    BackgroundCheck,
    /// Training in safeguarding of minors.
    Safeguarding,
    /// Liability insurance.
    Insurance,
    /// An instructor's certification.
    Instructor,
    /// Another.
    Other,
}

crate::db::words! {
    CertificateKind {
        FirstAid = "first_aid", BackgroundCheck = "background_check", Safeguarding = "safeguarding",
        Insurance = "insurance", Instructor = "instructor", Other = "other",
    }
}

/// A paper; the form and the record are the same.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Paper {
    /// What kind.
    pub kind: CertificateKind,
    /// Its name.
    pub words: String,
    /// Who issued it.
    #[serde(default)]
    pub by_whom: String,
    /// Its number.
    #[serde(default)]
    pub number: String,
    /// The day it was issued, as YYYY-MM-DD.
    #[serde(default)]
    pub since: String,
    /// The last day it holds; empty for without end.
    #[serde(default)]
    pub until: String,
}

/// A paper to add.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddCertificate {
    /// The paper.
    pub paper: Paper,
    /// A scan of it.
    #[serde(default)]
    pub scan: Option<ScanGiven>,
}

/// A paper to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeCertificate {
    /// Which one.
    pub certificate: CertificateId,
    /// All that is to be kept.
    pub paper: Paper,
    /// A new scan; left out to keep the one there is.
    #[serde(default)]
    pub scan: Option<ScanGiven>,
}

/// Which paper.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichCertificate {
    /// The paper.
    pub certificate: CertificateId,
}

/// A paper as kept.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Certificate {
    /// Which one.
    pub id: CertificateId,
    /// What is kept.
    pub paper: Paper,
    /// A scan of it.
    pub scan: Option<ScanNamed>,
    /// Whether it has ended.
    pub over: bool,
    /// Whether it ends soon.
    pub soon: bool,
    /// Until when it holds, in words.
    pub stands: String,
}

impl Paper {
    fn read(self, p: &mut Problems) -> (Self, Option<Day>, Option<Day>) {
        let since = p.day_or_none("paper.since", Some(&self.since), "The day it was issued");
        let until = p.day_or_none("paper.until", Some(&self.until), "The last day");
        if let (Some(since), Some(until)) = (since, until)
            && until < since
        {
            p.add("paper.until", "before", "It would end before it was issued.");
        }
        let read = p.within("paper.", |p| Self {
            kind: self.kind,
            words: p.name("words", &self.words, "The name"),
            by_whom: p.line("by_whom", &self.by_whom, "Who issued it"),
            number: p.line("number", &self.number, "The number"),
            since: self.since,
            until: self.until,
        });
        (read, since, until)
    }
}

/// Adds a paper.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, given: AddCertificate) -> Result<Certificate> {
    let mut p = Problems::new();
    let (paper, since, until) = given.paper.read(&mut p);
    let scan = given.scan.and_then(|scan| scan.read(&mut p, "scan"));
    p.done()?;
    let scan = scans::keep(db, scan)?;
    let id: CertificateId = db.id();
    db.execute(
        "INSERT INTO certificate (id, kind, words, by_whom, number, since, until, scan)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        params![id, paper.kind, paper.words, paper.by_whom, paper.number, since, until, scan],
    )?;
    db.label(format!("Your paper added: {}", paper.words));
    find(db, id)
}

/// Changes a paper.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn change(db: &Writing<'_>, given: ChangeCertificate) -> Result<Certificate> {
    find(db, given.certificate)?;
    let mut p = Problems::new();
    let (paper, since, until) = given.paper.read(&mut p);
    let scan = given.scan.and_then(|scan| scan.read(&mut p, "scan"));
    p.done()?;
    let scan = scans::keep(db, scan)?;
    db.execute(
        "UPDATE certificate SET kind = ?, words = ?, by_whom = ?, number = ?, since = ?, until = ?,
           scan = coalesce(?, scan) WHERE id = ?",
        params![
            paper.kind,
            paper.words,
            paper.by_whom,
            paper.number,
            since,
            until,
            scan,
            given.certificate
        ],
    )?;
    db.label(format!("Your paper changed: {}", paper.words));
    find(db, given.certificate)
}

/// Puts a paper away: it is replaced, or no longer needed.
///
/// # Errors
/// `NotFound`.
pub fn archive(db: &Writing<'_>, which: WhichCertificate) -> Result<Certificate> {
    let paper = find(db, which.certificate)?;
    db.execute(
        "UPDATE certificate SET archived = ? WHERE id = ?",
        params![db.today(), which.certificate],
    )?;
    db.label(format!("Your paper put away: {}", paper.paper.words));
    Ok(paper)
}

/// The papers that are not put away, those that end first on top.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<Certificate>> {
    let today = db.today();
    let rows = db.all(
        "SELECT * FROM certificate WHERE archived IS NULL ORDER BY until IS NULL, until, id",
        [],
        |row| a_certificate(row, today),
    )?;
    rows.into_iter().map(|(paper, scan)| with_scan(db, paper, scan)).collect()
}

/// Papers that no longer hold on a day, by name and last day.
pub(crate) fn over_on(db: &Reading<'_>, day: Day) -> Result<Vec<(String, Day)>> {
    db.all(
        "SELECT words, until FROM certificate WHERE archived IS NULL AND until < ? ORDER BY until, id",
        [day],
        |row| Ok((row.get("words")?, row.get("until")?)),
    )
}

fn find(db: &Reading<'_>, id: CertificateId) -> Result<Certificate> {
    let today = db.today();
    let (paper, scan) =
        db.found("certificate", &id, "SELECT * FROM certificate WHERE id = ?", [id], |row| {
            a_certificate(row, today)
        })?;
    with_scan(db, paper, scan)
}

fn with_scan(
    db: &Reading<'_>,
    mut paper: Certificate,
    scan: Option<ScanId>,
) -> Result<Certificate> {
    paper.scan = scans::named(db, scan)?;
    Ok(paper)
}

fn a_certificate(row: &Row<'_>, today: Day) -> rusqlite::Result<(Certificate, Option<ScanId>)> {
    let (since, until): (Option<Day>, Option<Day>) = (row.get("since")?, row.get("until")?);
    let typed = |day: Option<Day>| day.map(|day| day.to_string()).unwrap_or_default();
    let over = until.is_some_and(|until| until < today);
    let certificate = Certificate {
        id: row.get("id")?,
        paper: Paper {
            kind: row.get("kind")?,
            words: row.get("words")?,
            by_whom: row.get("by_whom")?,
            number: row.get("number")?,
            since: typed(since),
            until: typed(until),
        },
        scan: None,
        over,
        soon: !over && until.is_some_and(|until| until <= today.plus(TOLD_BEFORE)),
        stands: match until {
            None => "Without end.".to_owned(),
            Some(until) if over => format!("Ended on {}.", until.words()),
            Some(until) => format!("Holds until {}.", until.words()),
        },
    };
    Ok((certificate, row.get("scan")?))
}
