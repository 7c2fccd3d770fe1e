//! Putting a student away, and bringing one back. Nothing is deleted.

use super::{Student, Which, show, store};
use crate::app::Writing;
use crate::error::Result;

/// Puts a student away: out of the lists, with everything kept.
///
/// # Errors
/// `NotFound`.
pub fn archive(db: &Writing<'_>, which: Which) -> Result<Student> {
    store::set_archived(db, which.student, Some(db.today()))?;
    let student = show(db, which)?;
    db.label(format!("{} put away", student.profile.name));
    Ok(student)
}

/// Brings a student back into the lists.
///
/// # Errors
/// `NotFound`.
pub fn bring_back(db: &Writing<'_>, which: Which) -> Result<Student> {
    store::set_archived(db, which.student, None)?;
    let student = show(db, which)?;
    db.label(format!("{} brought back", student.profile.name));
    Ok(student)
}
