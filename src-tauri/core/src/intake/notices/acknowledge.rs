//! Acknowledging a notice at its version, on the screen or on paper; sealed with the digest of the
//! text.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Problems, Result};
use crate::intake::scans::{self, ScanNamed};
use crate::intake::{Accepting, OfStudent, OnWhat, Speaks, minors};
use crate::kinds::Day;
use crate::kinds::ids::{AcknowledgementId, NoticeId, ScanId, StudentId, VersionId};
use crate::students;

/// What is acknowledged, by whom.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Acknowledge {
    /// For which student.
    pub student: StudentId,
    /// The version that was read.
    pub version: VersionId,
    /// Who accepts it.
    pub by: Accepting,
}

/// An acknowledgement as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Acknowledgement {
    /// Which one.
    pub id: AcknowledgementId,
    /// The notice.
    pub notice: NoticeId,
    /// Its title.
    pub title: String,
    /// Which version of it.
    pub version: VersionId,
    /// That version's number.
    pub number: i64,
    /// For which student.
    pub student: StudentId,
    /// Who accepted it.
    pub name: String,
    /// As who.
    pub relation: Speaks,
    /// What the guardian is to the student.
    pub as_what: String,
    /// The day.
    pub day: Day,
    /// On what.
    pub how: OnWhat,
    /// The signed paper.
    pub scan: Option<ScanNamed>,
    /// The seal: SHA-256 over the text's digest, the names and the day.
    pub seal: String,
    /// Whether the seal fits what is kept.
    pub whole: bool,
}

/// Writes an acknowledgement down. It does not change afterwards and cannot be undone: a new version
/// asks anew, and a consent can be withdrawn.
///
/// # Errors
/// `NotFound`; `Refused` without a name, on a day before the version or to come, or when a minor
/// acknowledges alone.
pub fn acknowledge(db: &Writing<'_>, given: Acknowledge) -> Result<Acknowledgement> {
    let student = students::show(db, students::Which { student: given.student })?;
    let (title, version) = store::version(db, given.version)?;
    let mut p = Problems::new();
    let by = p.within("by.", |p| given.by.read(p, db.today()));
    if by.day < version.made {
        p.add(
            "by.day",
            "before",
            format!("This version is of {}: it could not be read before.", version.made.words()),
        );
    }
    let born = Day::parse(&student.profile.born);
    let minor = minors::is_minor(&minors::rules(db)?, born, by.day) == Some(true);
    if minor && by.relation != Speaks::Guardian {
        p.add("by.relation", "minor", "A minor does not acknowledge alone: a guardian does.");
    }
    by.not_the_student(&mut p, &student.profile.name);
    if by.how == OnWhat::Paper && by.scan.is_none() {
        p.add("by.scan", "empty", "Attach a scan or a photograph of the signed paper.");
    }
    p.done()?;
    let scan = scans::keep(db, by.scan)?;
    let seal = seal(&Sealed {
        text: &version.sha256,
        student: given.student,
        name: &by.name,
        relation: by.relation,
        as_what: &by.as_what,
        day: by.day,
        how: by.how,
        scan,
    });
    let id: AcknowledgementId = db.id();
    store::insert_acknowledgement(
        db,
        id,
        given.version,
        given.student,
        (&by.name, by.relation, &by.as_what),
        (by.day, by.how, scan),
        &seal,
    )?;
    db.cannot_be_undone();
    db.label(format!("{title} acknowledged: {}", student.profile.name));
    store::acknowledgement(db, id)
}

pub(super) struct Sealed<'a> {
    pub(super) text: &'a str,
    pub(super) student: StudentId,
    pub(super) name: &'a str,
    pub(super) relation: Speaks,
    pub(super) as_what: &'a str,
    pub(super) day: Day,
    pub(super) how: OnWhat,
    pub(super) scan: Option<ScanId>,
}

pub(super) fn seal(s: &Sealed<'_>) -> String {
    let scan = s.scan.map(|scan| scan.to_string()).unwrap_or_default();
    let relation = if s.relation == Speaks::Own { "self" } else { "guardian" };
    let how = if s.how == OnWhat::Screen { "screen" } else { "paper" };
    let whole = [
        s.text,
        &s.student.to_string(),
        s.name,
        relation,
        s.as_what,
        &s.day.to_string(),
        how,
        &scan,
    ]
    .join("\n");
    digest::sha256(whole.as_bytes())
}

/// What a student, or a guardian for them, has acknowledged, the newest first.
///
/// # Errors
/// `NotFound`.
pub fn of(db: &Reading<'_>, of: OfStudent) -> Result<Vec<Acknowledgement>> {
    students::show(db, students::Which { student: of.student })?;
    store::acknowledgements(db, of.student)
}
