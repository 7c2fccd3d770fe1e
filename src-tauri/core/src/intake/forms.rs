//! A facility's own policy, and its own form as a student has signed it. What the facility says
//! governs on its premises; nothing here stands in its place.

use rusqlite::{Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::scans::{self, ScanGiven, ScanNamed};
use super::{OfStudent, past_day};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::facilities;
use crate::kinds::Day;
use crate::kinds::ids::{FacilityId, FormId, ScanId, StudentId};
use crate::students;

/// A facility's own policy and rules; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Policy {
    /// The name of its policy, waiver or rules.
    pub name: String,
    /// Where it can be read.
    pub link: String,
    /// The day the coach read it, as YYYY-MM-DD.
    pub seen: String,
    /// Whether each player signs the facility's own form.
    pub form_needed: bool,
    /// Where it is signed, and where signed ones are kept.
    pub form_where: String,
    /// Whether a minor's lesson must be on a court that can be seen from outside.
    pub observable: bool,
    /// Whether another adult has to be there for a minor's lesson.
    pub adult_present: bool,
    /// The age from which one may be on court; left out where nothing was said.
    pub youngest: Option<i64>,
    /// What else it says about safety and minors.
    pub rules: String,
}

/// A policy to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetPolicy {
    /// Where.
    pub facility: FacilityId,
    /// All that is to be kept.
    pub policy: Policy,
}

/// A facility's form that a student signed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SignForm {
    /// Who.
    pub student: StudentId,
    /// Where.
    pub facility: FacilityId,
    /// The day, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub signed: String,
    /// The last day it holds; empty where no end was told.
    #[serde(default)]
    pub until: String,
    /// Where the signed form is.
    #[serde(default)]
    pub kept: String,
    /// A scan of it.
    #[serde(default)]
    pub scan: Option<ScanGiven>,
}

/// A signed form as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FacilityForm {
    /// Which one.
    pub id: FormId,
    /// Where.
    pub facility: FacilityId,
    /// The facility's name.
    pub place: String,
    /// The day.
    pub signed: Day,
    /// The last day it holds.
    pub until: Option<Day>,
    /// Where the signed form is.
    pub kept: String,
    /// A scan of it.
    pub scan: Option<ScanNamed>,
}

impl FacilityForm {
    /// Whether it holds on a day.
    pub fn holds(&self, day: Day) -> bool {
        self.signed <= day && self.until.is_none_or(|until| day <= until)
    }
}

/// Writes a facility's policy down.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set_policy(db: &Writing<'_>, set: SetPolicy) -> Result<Policy> {
    let facility = facilities::show(db, facilities::Which { facility: set.facility })?;
    let policy = set.policy;
    let mut p = Problems::new();
    let seen = past_day(&mut p, "seen", &policy.seen, "The day you read it", db.today());
    let link = p.line("link", &policy.link, "The link");
    if !link.is_empty() && !link.starts_with("https://") {
        p.add(
            "link",
            "no_link",
            "A link begins with https://; a paper\u{2019}s place goes into \u{201c}where\u{201d}.",
        );
    }
    let read = Policy {
        name: p.line("name", &policy.name, "The name"),
        link,
        seen: seen.map(|day| day.to_string()).unwrap_or_default(),
        form_where: p.line("form_where", &policy.form_where, "Where the form is"),
        youngest: policy.youngest.map(|age| p.within_bounds("youngest", age, 0, 99, "The age")),
        rules: p.note("rules", &policy.rules, "What else it says"),
        ..policy
    };
    p.done()?;
    db.execute(
        "INSERT INTO facility_policy (id, name, link, seen, form_needed, form_where, observable, adult_present,
                                      youngest, rules)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET name = excluded.name, link = excluded.link, seen = excluded.seen,
           form_needed = excluded.form_needed, form_where = excluded.form_where,
           observable = excluded.observable, adult_present = excluded.adult_present,
           youngest = excluded.youngest, rules = excluded.rules",
        params![
            facility.id, read.name, read.link, seen, read.form_needed, read.form_where, read.observable,
            read.adult_present, read.youngest, read.rules
        ],
    )?;
    db.label(format!("Policy of {} written down", facility.place.name));
    Ok(read)
}

/// A facility's policy; `None` while nobody looked.
///
/// # Errors
/// `NotFound`.
pub fn policy(db: &Reading<'_>, which: facilities::Which) -> Result<Option<Policy>> {
    facilities::show(db, which)?;
    find_policy(db, which.facility)
}

pub(crate) fn find_policy(db: &Reading<'_>, facility: FacilityId) -> Result<Option<Policy>> {
    db.one("SELECT * FROM facility_policy WHERE id = ?", [facility], |row| {
        Ok(Policy {
            name: row.get("name")?,
            link: row.get("link")?,
            seen: row.get::<_, Option<String>>("seen")?.unwrap_or_default(),
            form_needed: row.get("form_needed")?,
            form_where: row.get("form_where")?,
            observable: row.get("observable")?,
            adult_present: row.get("adult_present")?,
            youngest: row.get("youngest")?,
            rules: row.get("rules")?,
        })
    })
}

/// Notes that a student signed a facility's own form.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn sign(db: &Writing<'_>, given: SignForm) -> Result<FacilityForm> {
    let student = students::show(db, students::Which { student: given.student })?;
    let facility = facilities::show(db, facilities::Which { facility: given.facility })?;
    let mut p = Problems::new();
    let today = db.today();
    let signed = past_day(&mut p, "signed", &given.signed, "The day", today).unwrap_or(today);
    let until = p.day_or_none("until", Some(&given.until), "The last day");
    if until.is_some_and(|until| until < signed) {
        p.add("until", "before", "The last day lies before the day it was signed.");
    }
    let kept = p.line("kept", &given.kept, "Where the signed form is");
    let scan = given.scan.and_then(|scan| scan.read(&mut p, "scan"));
    p.done()?;
    let scan = scans::keep(db, scan)?;
    let id: FormId = db.id();
    db.execute(
        "INSERT INTO facility_form (id, student, facility, signed, until, kept, scan) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, student.id, facility.id, signed, until, kept, scan],
    )?;
    db.label(format!("Form of {} signed: {}", facility.place.name, student.profile.name));
    let (form, scan) =
        db.found("form", &id, "SELECT f.*, p.name AS place FROM facility_form f JOIN facility p ON p.id = f.facility WHERE f.id = ?", [id], a_form)?;
    with_scan(db, form, scan)
}

/// The facilities' forms that a student signed, the newest first.
///
/// # Errors
/// `NotFound`.
pub fn of(db: &Reading<'_>, of: OfStudent) -> Result<Vec<FacilityForm>> {
    students::show(db, students::Which { student: of.student })?;
    all(db, of.student)
}

pub(crate) fn all(db: &Reading<'_>, student: StudentId) -> Result<Vec<FacilityForm>> {
    let rows = db.all(
        "SELECT f.*, p.name AS place FROM facility_form f JOIN facility p ON p.id = f.facility
         WHERE f.student = ? ORDER BY f.signed DESC, f.id DESC",
        [student],
        a_form,
    )?;
    rows.into_iter().map(|(form, scan)| with_scan(db, form, scan)).collect()
}

fn with_scan(
    db: &Reading<'_>,
    mut form: FacilityForm,
    scan: Option<ScanId>,
) -> Result<FacilityForm> {
    form.scan = scans::named(db, scan)?;
    Ok(form)
}

fn a_form(row: &Row<'_>) -> rusqlite::Result<(FacilityForm, Option<ScanId>)> {
    Ok((
        FacilityForm {
            id: row.get("id")?,
            facility: row.get("facility")?,
            place: row.get("place")?,
            signed: row.get("signed")?,
            until: row.get("until")?,
            kept: row.get("kept")?,
            scan: None,
        },
        row.get("scan")?,
    ))
}
