//! Finding people, places and goals by parts of their names.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{ListFacilities, list as facilities};
use crate::kinds::text::folded;
use crate::students::{ListStudents, list as students};

/// What to find.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Find {
    /// Parts of a name.
    pub text: String,
}

/// What kind of thing was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FoundKind {
    /// A student.
    Student,
    /// A facility.
    Facility,
}

/// Something found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Found {
    /// What it is.
    pub kind: FoundKind,
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
}

/// The most that is given.
const MOST: usize = 12;

/// Finds by name; nothing for an empty text.
///
/// # Errors
/// `Storage`.
pub fn find(db: &Reading<'_>, find: Find) -> Result<Vec<Found>> {
    let text = folded(&find.text);
    if text.is_empty() {
        return Ok(Vec::new());
    }
    let most = u32::try_from(MOST).unwrap_or(12);
    let people = students(db, ListStudents { find: find.text, archived: false, most })?;
    let mut found: Vec<Found> = people
        .into_iter()
        .map(|s| Found { kind: FoundKind::Student, id: s.id.to_string(), name: s.name })
        .collect();
    let places = facilities(db, ListFacilities::default())?;
    found.extend(
        places
            .into_iter()
            .filter(|f| text.split(' ').all(|part| folded(&f.place.name).contains(part)))
            .map(|f| Found { kind: FoundKind::Facility, id: f.id.to_string(), name: f.place.name }),
    );
    found.truncate(MOST);
    Ok(found)
}
