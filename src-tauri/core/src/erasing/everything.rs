//! A copy of everything about one person, for them: all rows that belong to them, and nothing of
//! anybody else.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};

use super::kinds::{self, STUDENT};
use super::{store, told};
use crate::app::Reading;
use crate::app::erase::Belonging;
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::LetterId;
use crate::print::file_words;
use crate::students::{self, Which};

/// The words of a lesson note: of a lesson with others they may speak of these.
const NOTE: [&str; 3] = ["done", "landed", "next"];

/// A document of the person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Document {
    /// The letter.
    pub letter: LetterId,
}

/// Everything about one person.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Everything {
    /// Whose.
    pub name: String,
    /// The name of a file or folder for it, without ending.
    pub file_name: String,
    /// The day it was read.
    pub day: Day,
    /// All rows by table, for a program to read.
    pub rows: BTreeMap<String, Vec<Map<String, Value>>>,
    /// Names of what the rows refer to and that is not the person's: facilities, courts.
    pub named: BTreeMap<String, String>,
    /// The same as a text, for people.
    pub text: String,
    /// Letters, whose documents belong to it.
    pub documents: Vec<Document>,
}

/// Reads everything about one person.
///
/// # Errors
/// `NotFound`.
pub fn everything(db: &Reading<'_>, which: Which) -> Result<Everything> {
    let name = students::show(db, which)?.profile.name;
    let belonging = Belonging::of(db, STUDENT, &which.student.to_string())?;
    let mut rows = BTreeMap::new();
    for (table, ids) in belonging.rows() {
        let mut all = store::rows(db, table, ids.iter().map(String::as_str))?;
        for row in &mut all {
            // Only a help for search.
            row.remove("folded");
        }
        rows.insert(table.to_owned(), all);
    }
    for (table, ids) in belonging.shared() {
        let mut shared = store::rows(db, table, ids.iter().map(String::as_str))?;
        for row in &mut shared {
            for column in NOTE {
                row.remove(column);
            }
            row.insert("shared".to_owned(), json!(true));
        }
        if !shared.is_empty() {
            rows.entry(table.to_owned()).or_insert_with(Vec::new).extend(shared);
        }
    }
    let goals: Vec<&str> = belonging.of_table("goal").collect();
    rows.insert("standing".to_owned(), store::standings(db, &goals)?);
    rows.retain(|_, rows| !rows.is_empty());
    let named = named(db, &rows, &belonging)?;
    let letters = belonging.of_table("letter").filter_map(|id| uuid::Uuid::parse_str(id).ok());
    let issued = |letter: &LetterId| {
        let rows = rows.get("letter").into_iter().flatten();
        rows.into_iter().any(|row| {
            row.get("id").and_then(Value::as_str) == Some(&letter.to_string())
                && row.get("issued").is_some_and(|issued| !issued.is_null())
        })
    };
    let documents: Vec<Document> =
        letters.map(LetterId).filter(issued).map(|letter| Document { letter }).collect();
    let day = db.today();
    let text = told::text(db, &name, &rows, &named)?;
    let file_name = format!("{} {day}", file_words(&name));
    Ok(Everything { name, file_name, day, rows, named, text, documents })
}

/// What rows refer to outside themselves, by id: a name the person knows it by. What may be someone
/// else's is left out.
fn named(
    db: &Reading<'_>,
    rows: &BTreeMap<String, Vec<Map<String, Value>>>,
    belonging: &Belonging,
) -> Result<BTreeMap<String, String>> {
    let mut named = BTreeMap::new();
    for (table, rows) in rows {
        for (column, parent) in store::references(db, table)? {
            for row in rows {
                let Some(id) = row.get(&column).and_then(Value::as_str) else { continue };
                let open = matches!(parent.as_str(), "facility" | "court");
                let shared = belonging.shared().any(|(t, ids)| t == parent && ids.contains(id));
                if (open || shared || belonging.has(&parent, id))
                    && let Some(words) = store::known_as(db, &parent, id)?
                {
                    named.insert(id.to_owned(), words);
                }
            }
        }
    }
    Ok(named)
}

/// The kinds with their rows, for a text.
pub(super) fn by_kind(
    rows: &BTreeMap<String, Vec<Map<String, Value>>>,
) -> Vec<(String, Vec<&str>)> {
    let mut kinds: Vec<(String, Vec<&str>)> = kinds::KINDS
        .iter()
        .map(|kind| (kinds::plain(kind.many), kind.tables.to_vec()))
        .collect();
    let named = |table: &str| kinds::KINDS.iter().any(|kind| kind.tables.contains(&table));
    let rest = rows.keys().filter(|table| !named(table));
    kinds.extend(rest.map(|table| (kinds::plain(table), vec![table.as_str()])).collect::<Vec<_>>());
    kinds
}
