//! The language a student is written to in.

use super::{Which, show, store};
use crate::app::Writing;
use crate::error::Result;
use crate::kinds::Language;
use crate::kinds::ids::StudentId;

/// Writes to a student in a language from now on.
///
/// # Errors
/// `NotFound`.
pub(crate) fn write_in(db: &Writing<'_>, student: StudentId, language: Language) -> Result<()> {
    let mut profile = show(db, Which { student })?.profile;
    profile.language = language;
    store::update(db, student, &profile)
}
