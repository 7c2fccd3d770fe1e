//! All SQL of the readiness questions.

use rusqlite::params;

use super::{Answers, RULES, Readiness, shown};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::{ReadinessId, StudentId};

pub(super) fn insert(
    db: &Writing<'_>,
    id: ReadinessId,
    student: StudentId,
    day: Day,
    a: Answers,
    answered: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO readiness (id, student, day, active, disease, symptoms, answered, rules)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        params![id, student, day, a.active, a.disease, a.symptoms, answered, RULES],
    )?;
    Ok(())
}

/// The newest first; of one day the one written last.
pub(super) fn of(db: &Reading<'_>, student: StudentId) -> Result<Vec<Readiness>> {
    db.all(
        "SELECT * FROM readiness WHERE student = ? ORDER BY day DESC, id DESC",
        [student],
        |row| {
            let answers = Answers {
                active: row.get("active")?,
                disease: row.get("disease")?,
                symptoms: row.get("symptoms")?,
            };
            Ok(shown(row.get("id")?, row.get("day")?, answers, row.get("answered")?))
        },
    )
}
