//! One student with everything kept.

use super::{Student, Which, store};
use crate::app::Reading;
use crate::error::Result;

/// Shows a student.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Student> {
    store::find(db, which.student)
}
