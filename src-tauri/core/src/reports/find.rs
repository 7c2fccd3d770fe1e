//! Finding people, places and goals by parts of their names.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{ListFacilities, list as facilities};
use crate::goals::show::titled;
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
    /// A goal.
    Goal,
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
    /// What tells it from others of its name: whose goal it is; empty where nothing is needed.
    pub of: String,
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
    let most = u32::try_from(MOST).unwrap_or(u32::MAX);
    let mut found = Vec::new();
    let mut add = |kind, id: String, name, of| found.push(Found { kind, id, name, of });
    for s in students(db, ListStudents { find: find.text, archived: false, most })? {
        add(FoundKind::Student, s.id.to_string(), s.name, String::new());
    }
    for f in facilities(db, ListFacilities::default())? {
        let name = folded(&f.place.name);
        if text.split(' ').all(|part| name.contains(part)) {
            add(FoundKind::Facility, f.id.to_string(), f.place.name, f.place.town);
        }
    }
    for (id, title, student) in titled(db, &text, MOST)? {
        add(FoundKind::Goal, id.to_string(), title, student);
    }
    found.truncate(MOST);
    Ok(found)
}
