//! All SQL of invitations.

use rusqlite::params;

use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{InvitationId, LessonId, StudentId};

/// What a student was last told of a lesson.
pub(super) struct Told {
    pub sequence: u32,
    pub said: String,
    pub cancelled: bool,
}

pub(super) fn told(db: &Reading<'_>, lesson: LessonId, student: StudentId) -> Result<Option<Told>> {
    db.one(
        "SELECT sequence, said, cancelled FROM invitation WHERE lesson = ? AND student = ?",
        params![lesson, student],
        |row| {
            Ok(Told {
                sequence: row.get("sequence")?,
                said: row.get("said")?,
                cancelled: row.get("cancelled")?,
            })
        },
    )
}

pub(super) fn forget(db: &Writing<'_>, lesson: LessonId, student: StudentId) -> Result<()> {
    db.execute(
        "DELETE FROM invitation WHERE lesson = ? AND student = ?",
        params![lesson, student],
    )?;
    Ok(())
}

pub(super) fn keep(
    db: &Writing<'_>,
    lesson: LessonId,
    student: StudentId,
    told: &Told,
) -> Result<()> {
    db.execute(
        "INSERT INTO invitation (id, lesson, student, sequence, said, cancelled, written)
         VALUES (?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (lesson, student) DO UPDATE SET sequence = excluded.sequence, said = excluded.said,
           cancelled = excluded.cancelled, written = excluded.written",
        params![
            db.id::<InvitationId>(),
            lesson,
            student,
            told.sequence,
            told.said,
            told.cancelled,
            db.today(),
        ],
    )?;
    Ok(())
}
