//! The list of people, searched as one types.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{StudentLine, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::text;

/// What to list.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListStudents {
    /// Parts of a name, each of which must be found in it; empty finds everyone.
    pub find: String,
    /// Those put away instead of those current.
    pub archived: bool,
    /// How many at most; 0 means all.
    pub most: u32,
}

/// Lists students by name. Accents and case do not matter.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListStudents) -> Result<Vec<StudentLine>> {
    let parts: Vec<String> = text::folded(&ask.find).split(' ').map(str::to_owned).collect();
    let mut found = store::all(db, ask.archived)?;
    found.retain(|(_, folded)| parts.iter().all(|part| folded.contains(part.as_str())));
    let most = if ask.most == 0 { usize::MAX } else { ask.most as usize };
    Ok(found.into_iter().take(most).map(|(line, _)| line).collect())
}

/// Current students whose whole name stands in the words, which are folded already.
///
/// # Errors
/// `Storage`.
pub fn named_in(db: &Reading<'_>, folded_words: &str) -> Result<Vec<StudentLine>> {
    let everyone = store::all(db, false)?;
    let named = everyone.into_iter().filter(|(_, folded)| folded_words.contains(folded.as_str()));
    Ok(named.map(|(line, _)| line).collect())
}
