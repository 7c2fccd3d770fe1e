//! A student's assessments, each level beside the time before.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Stored};
use super::{Assessment, Basis, Level};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::{AssessmentId, StudentId};
use crate::sports::skills::{OfSport, list as skills};

/// Whose.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfStudent {
    /// The student.
    pub student: StudentId,
}

/// A student's assessments, newest first.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<Assessment>> {
    let all = store::of_student(db, ask.student)?;
    let mut shown: Vec<Assessment> =
        all.iter().enumerate().map(|(n, one)| shown(db, one, &all[..n])).collect::<Result<_>>()?;
    shown.reverse();
    Ok(shown)
}

/// One assessment, beside those before it.
pub(super) fn one(db: &Reading<'_>, id: AssessmentId) -> Result<Assessment> {
    let all = list(db, OfStudent { student: store::student_of(db, id)? })?;
    all.into_iter()
        .find(|one| one.id == id)
        .ok_or_else(|| Error::NotFound { what: "assessment", id: id.to_string() })
}

fn shown(db: &Reading<'_>, one: &Stored, earlier: &[Stored]) -> Result<Assessment> {
    let order = skills(db, OfSport { sport: one.sport.clone() })?;
    let scale = crate::sports::pack(&one.sport).map(|pack| &pack.levels);
    let anchor = |level: u8| {
        let anchor = scale.and_then(|scale| scale.anchors.iter().find(|a| a.level == level));
        anchor.map_or_else(String::new, |a| format!("{}: {}", a.name, a.words))
    };
    let counted = store::skills_counted(db, one.student, one.day)?;
    let mut levels: Vec<Level> = one
        .levels
        .iter()
        .map(|(skill, level, note)| Level {
            name: order
                .iter()
                .find(|known| known.id == *skill)
                .map_or_else(|| skill.clone(), |known| known.name.clone()),
            level: *level,
            anchor: anchor(*level),
            basis: if counted.contains(skill) { Basis::Evidence } else { Basis::Opinion },
            note: note.clone(),
            before: earlier.iter().rev().filter(|past| past.sport == one.sport).find_map(|past| {
                let (_, level, _) = past.levels.iter().find(|(same, ..)| same == skill)?;
                Some((*level, past.day))
            }),
            skill: skill.clone(),
        })
        .collect();
    levels.sort_by_key(|level| order.iter().position(|known| known.id == level.skill));
    Ok(Assessment {
        id: one.id,
        student: one.student,
        visit: one.visit,
        day: one.day,
        sport: one.sport.clone(),
        note: one.note.clone(),
        levels,
    })
}
