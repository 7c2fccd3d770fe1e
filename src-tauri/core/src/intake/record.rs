//! The intake record: what is asked of a student besides the profile, and whom to call.

use rusqlite::{Row, named_params, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{OfStudent, past_day};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::StudentId;
use crate::students;

/// What was asked; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct IntakeRecord {
    /// Where and how long the student has played, and with whom.
    pub experience: String,
    /// When the student can usually come.
    pub available: String,
    /// How the student rates the own play.
    pub level_said: String,
    /// What the coach makes of it.
    pub level_seen: String,
    /// The racquet.
    pub racquet: String,
    /// The grip and its size.
    pub grip: String,
    /// Strings and their tension.
    pub strings: String,
    /// The day they were strung, as YYYY-MM-DD.
    pub strung: String,
    /// The eyewear's model.
    pub eyewear: String,
    /// The standard printed on it, as in ASTM F3164.
    pub eyewear_standard: String,
    /// The day the coach looked at it, as YYYY-MM-DD.
    pub eyewear_seen: String,
    /// The day injuries and restrictions were asked about, as YYYY-MM-DD; empty: never.
    pub injuries_asked: String,
}

/// Whom to call.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct EmergencyContact {
    /// Full name.
    pub name: String,
    /// What they are to the student.
    pub relation: String,
    /// Telephone number, as dialled.
    pub phone: String,
    /// A second number.
    pub other: String,
}

/// A record to keep.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetIntake {
    /// Whose.
    pub student: StudentId,
    /// All that is to be kept.
    pub record: IntakeRecord,
    /// Whom to call; left out while not asked.
    #[serde(default)]
    pub emergency: Option<EmergencyContact>,
}

/// The record as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct IntakeShown {
    /// Whose.
    pub student: StudentId,
    /// The day it was last gone through; `None` while never.
    pub asked: Option<Day>,
    /// What was asked.
    pub record: IntakeRecord,
    /// Whom to call.
    pub emergency: Option<EmergencyContact>,
}

/// Keeps the record of a student, as gone through today.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, set: SetIntake) -> Result<IntakeShown> {
    let student = students::show(db, students::Which { student: set.student })?;
    let (r, today) = (set.record, db.today());
    let mut p = Problems::new();
    let mut day =
        |field: &str, typed: &str, what: &str| past_day(&mut p, field, typed, what, today);
    let strung = day("strung", &r.strung, "The day of stringing");
    let eyewear_seen = day("eyewear_seen", &r.eyewear_seen, "The day you looked");
    let asked = day("injuries_asked", &r.injuries_asked, "The day you asked");
    let born = Day::parse(&student.profile.born);
    if let (Some(born), Some(strung)) = (born, strung)
        && strung < born
    {
        p.add("strung", "before", "The strings would be older than the student.");
    }
    let read = IntakeRecord {
        experience: p.note("experience", &r.experience, "The experience"),
        available: p.note("available", &r.available, "When the student can come"),
        level_said: p.line("level_said", &r.level_said, "The student\u{2019}s own rating"),
        level_seen: p.line("level_seen", &r.level_seen, "Your estimate"),
        racquet: p.line("racquet", &r.racquet, "The racquet"),
        grip: p.line("grip", &r.grip, "The grip"),
        strings: p.line("strings", &r.strings, "The strings"),
        eyewear: p.line("eyewear", &r.eyewear, "The eyewear"),
        eyewear_standard: p.line("eyewear_standard", &r.eyewear_standard, "The standard"),
        ..IntakeRecord::default()
    };
    let emergency = set.emergency.filter(|c| *c != EmergencyContact::default()).map(|c| {
        p.within("emergency.", |p| EmergencyContact {
            name: p.name("name", &c.name, "The name of whom to call"),
            relation: p.line("relation", &c.relation, "The relation"),
            phone: p.name("phone", &c.phone, "The telephone number"),
            other: p.line("other", &c.other, "The second number"),
        })
    });
    let nothing = set_is_empty(&read, strung, eyewear_seen, asked) && emergency.is_none();
    if nothing && !p.any() && show(db, OfStudent { student: student.id })?.asked.is_none() {
        p.add("", "empty", "Nothing is written down yet, so nothing was asked.");
    }
    p.done()?;
    db.execute(
        "INSERT INTO intake (id, asked, experience, available, level_said, level_seen, racquet, grip, strings,
                             strung, eyewear, eyewear_standard, eyewear_seen, injuries_asked)
         VALUES (:id, :asked, :experience, :available, :level_said, :level_seen, :racquet, :grip, :strings,
                 :strung, :eyewear, :eyewear_standard, :eyewear_seen, :injuries_asked)
         ON CONFLICT (id) DO UPDATE SET asked = excluded.asked, experience = excluded.experience,
           available = excluded.available, level_said = excluded.level_said, level_seen = excluded.level_seen,
           racquet = excluded.racquet, grip = excluded.grip, strings = excluded.strings,
           strung = excluded.strung, eyewear = excluded.eyewear,
           eyewear_standard = excluded.eyewear_standard, eyewear_seen = excluded.eyewear_seen,
           injuries_asked = excluded.injuries_asked",
        named_params! {
            ":id": student.id, ":asked": today, ":experience": read.experience,
            ":available": read.available, ":level_said": read.level_said, ":level_seen": read.level_seen,
            ":racquet": read.racquet, ":grip": read.grip, ":strings": read.strings, ":strung": strung,
            ":eyewear": read.eyewear, ":eyewear_standard": read.eyewear_standard,
            ":eyewear_seen": eyewear_seen, ":injuries_asked": asked,
        },
    )?;
    match emergency {
        Some(c) => db.execute(
            "INSERT INTO emergency_contact (id, name, relation, phone, other) VALUES (?, ?, ?, ?, ?)
             ON CONFLICT (id) DO UPDATE SET name = excluded.name, relation = excluded.relation,
               phone = excluded.phone, other = excluded.other",
            params![student.id, c.name, c.relation, c.phone, c.other],
        )?,
        None => db.execute("DELETE FROM emergency_contact WHERE id = ?", [student.id])?,
    };
    db.label(format!("Intake gone through: {}", student.profile.name));
    show(db, OfStudent { student: student.id })
}

fn set_is_empty(
    read: &IntakeRecord,
    strung: Option<Day>,
    seen: Option<Day>,
    asked: Option<Day>,
) -> bool {
    *read == IntakeRecord::default() && strung.is_none() && seen.is_none() && asked.is_none()
}

/// The record of a student; empty while nothing was asked.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, of: OfStudent) -> Result<IntakeShown> {
    students::show(db, students::Which { student: of.student })?;
    let kept = db.one("SELECT * FROM intake WHERE id = ?", [of.student], |row| {
        Ok((row.get("asked")?, a_record(row)?))
    })?;
    let (asked, record) = kept.map_or((None, IntakeRecord::default()), |(a, r)| (Some(a), r));
    let emergency =
        db.one("SELECT * FROM emergency_contact WHERE id = ?", [of.student], |row| {
            Ok(EmergencyContact {
                name: row.get("name")?,
                relation: row.get("relation")?,
                phone: row.get("phone")?,
                other: row.get("other")?,
            })
        })?;
    Ok(IntakeShown { student: of.student, asked, record, emergency })
}

fn a_record(row: &Row<'_>) -> rusqlite::Result<IntakeRecord> {
    let day = |column: &str| -> rusqlite::Result<String> {
        Ok(row.get::<_, Option<String>>(column)?.unwrap_or_default())
    };
    Ok(IntakeRecord {
        experience: row.get("experience")?,
        available: row.get("available")?,
        level_said: row.get("level_said")?,
        level_seen: row.get("level_seen")?,
        racquet: row.get("racquet")?,
        grip: row.get("grip")?,
        strings: row.get("strings")?,
        strung: day("strung")?,
        eyewear: row.get("eyewear")?,
        eyewear_standard: row.get("eyewear_standard")?,
        eyewear_seen: day("eyewear_seen")?,
        injuries_asked: day("injuries_asked")?,
    })
}
