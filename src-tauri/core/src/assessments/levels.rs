//! Giving levels.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Assessment, TOP, list, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{AssessmentId, StudentId, VisitId};
use crate::sports::skills::{OfSport, list as skills};
use crate::students;
use crate::visits::day_at;

/// A level given.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LevelGiven {
    /// The skill.
    pub skill: String,
    /// The level, 0 to 4.
    pub level: i64,
    /// A word about it.
    #[serde(default)]
    pub note: String,
}

/// An assessment to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Assess {
    /// Whose.
    pub student: StudentId,
    /// The visit, if it is at one.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
    /// The levels given; skills left out are not assessed.
    pub levels: Vec<LevelGiven>,
    /// A word about it.
    #[serde(default)]
    pub note: String,
}

/// Another level for one skill of an assessment.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeLevel {
    /// Which assessment.
    pub assessment: AssessmentId,
    /// The level.
    pub level: LevelGiven,
}

/// Writes an assessment down.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: none given, a level outside the scale, a
/// skill that is not of the student's sport or given twice.
pub fn assess(db: &Writing<'_>, assess: Assess) -> Result<Assessment> {
    let student = students::show(db, students::Which { student: assess.student })?;
    let sport = sport_of(&student);
    let nearest = day_at(db, student.id, assess.visit)?;
    let known = skills(db, OfSport { sport: sport.clone() })?;
    let mut p = Problems::new();
    let day = p.day_or_none("day", Some(&assess.day), "The day").unwrap_or(nearest);
    if day > db.today() {
        p.add("day", "to_come", "This day is still to come.");
    }
    let note = p.note("note", &assess.note, "The note");
    if assess.levels.is_empty() {
        p.add("levels", "empty", "Give at least one skill its level.");
    }
    let mut given: Vec<(String, u8, String)> = Vec::new();
    for (n, level) in assess.levels.iter().enumerate() {
        p.within(&format!("levels[{n}]."), |p| {
            let read = read(p, level);
            if known.iter().all(|skill| skill.id != read.0) {
                p.add("skill", "unknown", "This is no skill of the student\u{2019}s sport.");
            } else if given.iter().any(|(skill, ..)| *skill == read.0) {
                p.add("skill", "twice", "This skill has its level already.");
            }
            given.push(read);
        });
    }
    p.done()?;
    let id: AssessmentId = db.id();
    store::insert(db, id, student.id, assess.visit, day, &sport, &note)?;
    for (skill, level, note) in &given {
        store::put_level(db, id, skill, *level, note)?;
    }
    db.label(format!("Assessed: {}", student.profile.name));
    list::one(db, id)
}

/// Gives one skill of an assessment another level, or its first one there.
///
/// # Errors
/// `NotFound`; `Refused` for a level outside the scale.
pub fn change_level(db: &Writing<'_>, change: ChangeLevel) -> Result<Assessment> {
    let before = list::one(db, change.assessment)?;
    let mut p = Problems::new();
    let (skill, level, note) = p.within("level.", |p| read(p, &change.level));
    p.done()?;
    if skills(db, OfSport { sport: before.sport })?.iter().all(|known| known.id != skill) {
        let words = "This is no skill of the sport that was assessed.";
        return Err(Error::field("level.skill", "unknown", words));
    }
    store::put_level(db, before.id, &skill, level, &note)?;
    let now = list::one(db, before.id)?;
    if let Some(changed) = now.levels.iter().find(|level| level.skill == skill) {
        db.label(format!("{} is level {}", changed.name, changed.level));
    }
    Ok(now)
}

fn read(p: &mut Problems, given: &LevelGiven) -> (String, u8, String) {
    let skill = p.name("skill", &given.skill, "The skill");
    let level = p.within_bounds("level", given.level, 0, i64::from(TOP), "The level");
    let note = p.line("note", &given.note, "The note");
    (skill, u8::try_from(level).unwrap_or(0), note)
}

/// The sport a student plays; the usual one where none was said.
pub(super) fn sport_of(student: &students::Student) -> String {
    if student.profile.sport.is_empty() {
        crate::sports::USUAL.to_owned()
    } else {
        student.profile.sport.clone()
    }
}
