//! SQL of reports that read across everything.

use rusqlite::params;

use super::season::OftenSeen;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Span;
use crate::kinds::ids::GoalId;
use crate::observations::ObservationKind;

/// A goal and whose it is.
pub(super) struct Whose {
    pub goal: GoalId,
    pub name: String,
    /// Whether the student is not put away.
    pub current: bool,
}

/// Every goal that was at a visit or decided upon.
pub(super) fn goals(db: &Reading<'_>) -> Result<Vec<Whose>> {
    db.all(
        "SELECT g.id, s.name, s.archived IS NULL AS current FROM goal g JOIN student s ON s.id = g.student
         WHERE EXISTS (SELECT 1 FROM goal_visit gv WHERE gv.goal = g.id)
            OR EXISTS (SELECT 1 FROM decision d WHERE d.goal = g.id)
         ORDER BY s.folded, s.id, g.rank, g.id",
        [],
        |row| Ok(Whose { goal: row.get("id")?, name: row.get("name")?, current: row.get("current")? }),
    )
}

/// What was seen in a span, the most frequent first. Of each, the student and visit are those of the
/// newest sighting: SQLite takes the other columns from the row that has the greatest day.
pub(super) fn seen(
    db: &Reading<'_>,
    kind: ObservationKind,
    span: Span,
    most: usize,
) -> Result<Vec<OftenSeen>> {
    db.all(
        "SELECT o.words, count(*) AS times, count(DISTINCT o.student) AS students,
           max(si.day) AS day, si.visit, o.student, s.name
         FROM sighting si JOIN observation o ON o.id = si.observation JOIN student s ON s.id = o.student
         WHERE o.kind = ? AND si.day BETWEEN ? AND ?
         GROUP BY o.skill, o.folded ORDER BY times DESC, students DESC, o.folded LIMIT ?",
        params![kind, span.first, span.last, i64::try_from(most).unwrap_or(i64::MAX)],
        |row| {
            Ok(OftenSeen {
                kind,
                words: row.get("words")?,
                times: row.get("times")?,
                students: row.get("students")?,
                student: row.get("student")?,
                name: row.get("name")?,
                visit: row.get("visit")?,
                day: row.get("day")?,
            })
        },
    )
}
