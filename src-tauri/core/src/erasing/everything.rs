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
use crate::letters;
use crate::print::file_words;
use crate::students::{self, Which};

/// The words of a lesson note: of a lesson with others they may speak of these.
const NOTE: [&str; 3] = ["done", "landed", "next"];

/// A document of the person: a letter as it was issued, or whatever else is kept as bytes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Document {
    /// The table it is in.
    pub table: String,
    /// Its row.
    pub id: String,
    /// Its column.
    pub column: String,
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
    /// The documents that belong to it.
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
    let mut documents = Vec::new();
    for (table, rows) in &rows {
        for row in rows {
            let Some(id) = row.get("id").and_then(Value::as_str) else { continue };
            for (column, _) in row.iter().filter(|(_, value)| value.is_object()) {
                let (table, id, column) = (table.clone(), id.to_owned(), column.clone());
                documents.push(Document { table, id, column });
            }
        }
    }
    let day = db.today();
    let text = told::text(db, &name, &rows, &named)?;
    let file_name = format!("{} {day}", file_words(&name));
    Ok(Everything { name, file_name, day, rows, named, text, documents })
}

/// A document with the name of a file for it, byte for byte as it is kept.
///
/// # Errors
/// `NotFound`; `Fault` when a letter's bytes are not those that were issued.
pub fn document(db: &Reading<'_>, which: &Document) -> Result<(String, Vec<u8>)> {
    if which.table == "letter"
        && let Ok(letter) = uuid::Uuid::parse_str(&which.id)
    {
        return letters::document(db, LetterId(letter));
    }
    let bytes = store::bytes(db, &which.table, &which.column, &which.id)?;
    // What begins a PDF file (ISO 32000-1, 7.5.2), a PNG file (ISO/IEC 15948, 5.2), a JPEG file (ISO/IEC
    // 10918-1, B.1.1.3).
    let ending = match bytes.as_slice() {
        [b'%', b'P', b'D', b'F', ..] => "pdf",
        [0x89, b'P', b'N', b'G', ..] => "png",
        [0xff, 0xd8, 0xff, ..] => "jpg",
        _ => "bytes",
    };
    let tail = which.id.get(which.id.len().saturating_sub(6)..).unwrap_or_default();
    Ok((format!("{} {tail}.{ending}", kinds::noun(&which.table)), bytes))
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
    let mut kinds: Vec<(String, Vec<&str>)> =
        kinds::KINDS.iter().map(|kind| (kinds::plain(kind.many), kind.tables.to_vec())).collect();
    let named = |table: &str| kinds::KINDS.iter().any(|kind| kind.tables.contains(&table));
    let rest = rows.keys().filter(|table| !named(table));
    kinds.extend(rest.map(|table| (kinds::plain(table), vec![table.as_str()])).collect::<Vec<_>>());
    kinds
}
