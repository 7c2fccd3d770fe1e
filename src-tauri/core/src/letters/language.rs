//! Choosing the language of a student's letters.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Draft, OfVisit, draft};
use crate::app::Writing;
use crate::error::Result;
use crate::kinds::Language;
use crate::kinds::ids::VisitId;
use crate::{students, visits};

/// The language of the letters of a visit's student.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChooseLanguage {
    /// The visit whose letter is being written.
    pub visit: VisitId,
    /// The language.
    pub language: Language,
}

/// Writes a student's letters in a language from now on. What was issued stays as it is, and the
/// coach's own words stay in the language they were written in.
///
/// # Errors
/// `NotFound`.
pub fn choose_language(db: &Writing<'_>, choose: ChooseLanguage) -> Result<Draft> {
    let visit = visits::show(db, visits::Which { visit: choose.visit })?;
    students::write_in(db, visit.student, choose.language)?;
    db.label(format!("Language of letters: {}", visit.name));
    draft(db, OfVisit { visit: choose.visit })
}
