//! All SQL of how long things are kept.

use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::StudentId;

/// What is known of a student's days.
pub(super) struct Days {
    pub student: StudentId,
    pub name: String,
    /// The day they first asked.
    pub enquired: Option<Day>,
    /// The last day of a visit, or of the span one is expected in, that was not called off.
    pub came: Option<Day>,
    /// Whether there is any visit at all.
    pub visits: bool,
    /// The newest day of anything about their health.
    pub health: Option<Day>,
    /// The day they were put away.
    pub archived: Option<Day>,
}

/// The days of one student, or of everyone, in no order.
pub(super) fn days(db: &Reading<'_>, of: Option<StudentId>) -> Result<Vec<Days>> {
    db.all(
        "SELECT s.id, s.name, s.enquired, s.archived,
           (SELECT max(coalesce(v.last_day, v.expected_to)) FROM visit v
            WHERE v.student = s.id AND v.called_off IS NULL) AS came,
           EXISTS (SELECT 1 FROM visit v WHERE v.student = s.id) AS visits,
           (SELECT max(since) FROM injury i WHERE i.student = s.id) AS injured,
           (SELECT max(day) FROM readiness r WHERE r.student = s.id) AS answered,
           (SELECT max(day) FROM clearance c WHERE c.student = s.id) AS cleared
         FROM student s WHERE ?1 IS NULL OR s.id = ?1",
        [of],
        |row| {
            let (injured, answered): (Option<Day>, Option<Day>) =
                (row.get("injured")?, row.get("answered")?);
            let cleared: Option<Day> = row.get("cleared")?;
            Ok(Days {
                student: row.get("id")?,
                name: row.get("name")?,
                enquired: row.get("enquired")?,
                came: row.get("came")?,
                visits: row.get("visits")?,
                health: injured.max(answered).max(cleared),
                archived: row.get("archived")?,
            })
        },
    )
}

/// What is kept for the accounts of people who were erased, past its day: name and last day.
pub(super) fn accounts_over(db: &Reading<'_>, day: Day) -> Result<Vec<(String, Day)>> {
    db.all(
        "SELECT name, until FROM kept_for_accounts WHERE until < ? ORDER BY until, name, id",
        [day],
        |row| Ok((row.get("name")?, row.get("until")?)),
    )
}
