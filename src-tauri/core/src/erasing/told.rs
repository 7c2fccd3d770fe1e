//! Everything about one person as a text: a heading for each kind, each entry with its day first.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::everything::by_kind;
use super::store;
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Day;

/// Columns that say when, the one that says it best first.
const DAYS: [&str; 9] = [
    "day",
    "first_day",
    "expected_from",
    "set_on",
    "since",
    "made",
    "written",
    "issued",
    "told_on",
];

/// Columns that only a program needs.
const QUIET: [&str; 3] = ["id", "which", "sha256"];

pub(super) fn text(
    db: &Reading<'_>,
    name: &str,
    rows: &BTreeMap<String, Vec<Map<String, Value>>>,
    named: &BTreeMap<String, String>,
) -> Result<String> {
    let mut text = format!(
        "What is kept about {name}\nRead on {}\n\n\
         The same stands, word for word and with its ids, in the file beside this one that ends in .json.\n\
         Of lessons with others the note is left out, because it may speak of them. Earlier wordings that the\n\
         history of changes still knows are left out too.\n",
        db.today().words()
    );
    for (heading, tables) in by_kind(rows) {
        let mut entries: Vec<(String, String)> = Vec::new();
        for table in tables {
            let references = store::references(db, table)?;
            for row in rows.get(table).into_iter().flatten() {
                entries.push(entry(table, row, &references, named));
            }
        }
        if entries.is_empty() {
            continue;
        }
        // What has no day of its own comes after what has one, in the order it was written.
        entries.sort_by_key(|(day, _)| (day.is_empty(), day.clone()));
        let line = "=".repeat(heading.chars().count());
        text.push_str(&format!("\n{heading}\n{line}\n"));
        for (_, words) in entries {
            text.push_str(&format!("\n{words}"));
        }
    }
    Ok(text)
}

/// One row: its day, and its words.
fn entry(
    table: &str,
    row: &Map<String, Value>,
    references: &[(String, String)],
    named: &BTreeMap<String, String>,
) -> (String, String) {
    let when = DAYS.iter().find_map(|column| {
        row.get(*column).and_then(Value::as_str).map(|day| (*column, day.to_owned()))
    });
    let (of, day) = when.unwrap_or_default();
    let spoken = day.get(..10).and_then(Day::parse).map(Day::words).unwrap_or_default();
    let head = [spoken.as_str(), &super::kinds::noun(table)].join(" ");
    let mut words = format!("{}\n", head.trim());
    for (column, value) in row {
        if QUIET.contains(&column.as_str()) || *column == of {
            continue;
        }
        let said = match value {
            Value::String(text) if text.is_empty() => continue,
            Value::String(text) => {
                let refers = references.iter().any(|(of, _)| of == column);
                match named.get(text) {
                    Some(known) => known.clone(),
                    None if refers => continue,
                    // Parts for a program: they stand in the other file.
                    None if text.starts_with(['{', '[']) => continue,
                    None => text.replace('\n', "\n      "),
                }
            }
            Value::Number(n) => n.to_string(),
            Value::Bool(yes) => if *yes { "yes" } else { "no" }.to_owned(),
            Value::Null | Value::Array(_) | Value::Object(_) => continue,
        };
        words.push_str(&format!("  {}: {said}\n", column.replace('_', " ")));
    }
    (day, words)
}
