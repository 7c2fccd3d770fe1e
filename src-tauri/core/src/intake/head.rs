//! After a blow to the head: no lesson, no try on court, on that day whatever anyone writes, and until
//! a clearance by a named professional is recorded. CDC HEADS UP for coaches: out of play at once, the same day, and until a health-care
//! provider says otherwise; nobody on court judges how bad it is.

use super::{clearances, injuries};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::StudentId;
use crate::students;

/// Why a student is kept from play on a day after a blow to the head; `None` when nothing keeps them.
///
/// # Errors
/// `Storage`.
pub fn keeps_from_play(db: &Reading<'_>, student: StudentId, day: Day) -> Result<Option<String>> {
    open(db, student, day, |since| since <= day)
}

/// Refuses what would have a student play on a day.
///
/// # Errors
/// `NotPossible` while a blow to the head keeps the student from play.
pub fn must_not_keep(db: &Reading<'_>, student: StudentId, day: Day) -> Result<()> {
    refuse(db, student, keeps_from_play(db, student, day)?)
}

/// Refuses to write down play of a day that came after the blow; what was played on the very day,
/// before it, can still be written down.
///
/// # Errors
/// `NotPossible` when a blow to the head on an earlier day kept the student from play.
pub fn must_not_have_kept(db: &Reading<'_>, student: StudentId, day: Day) -> Result<()> {
    refuse(db, student, open(db, student, day, |since| since < day)?)
}

fn open(
    db: &Reading<'_>,
    student: StudentId,
    day: Day,
    counts: impl Fn(Day) -> bool,
) -> Result<Option<String>> {
    let some = db.one(
        "SELECT 1 FROM injury WHERE student = ? AND kind = 'head' LIMIT 1",
        [student],
        |_| Ok(()),
    )?;
    if some.is_none() {
        return Ok(None);
    }
    for injury in injuries::all(db, student)? {
        let head = injury.kind == injuries::InjuryKind::Head && counts(injury.since);
        if head && injury.since == day {
            return Ok(Some(format!(
                "A blow to the head on {} was written down. No play on the same day, whatever anyone says; later only once a health-care professional\u{2019}s clearance is recorded.",
                injury.since.words()
            )));
        }
        if head && !clearances::after(db, student, injury.id, day)? {
            return Ok(Some(format!(
                "A blow to the head on {} was written down. No play until a health-care professional\u{2019}s clearance is recorded.",
                injury.since.words()
            )));
        }
    }
    Ok(None)
}

fn refuse(db: &Reading<'_>, student: StudentId, kept: Option<String>) -> Result<()> {
    match kept {
        None => Ok(()),
        Some(words) => {
            let name = students::show(db, students::Which { student })?.profile.name;
            Err(Error::not_possible("head_injury", format!("{name}: {words}")))
        }
    }
}
