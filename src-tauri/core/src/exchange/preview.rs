//! Looking at a CSV file of a season before anything is taken from it.

use base64::Engine;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::season_csv::{self, ColumnProblem, Columns, DateOrder, Preview, StudentSeen, Table};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::StudentId;
use crate::students::{ListStudents, list};

/// A file to look at.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadCsv {
    /// The file's bytes, in base64.
    pub content: String,
    /// Which column is what; left out for the program's proposal.
    #[serde(default)]
    pub columns: Option<Columns>,
    /// In which order day and month stand, where the file does not tell.
    #[serde(default = "unknown")]
    pub dates: DateOrder,
}

pub(super) fn unknown() -> DateOrder {
    DateOrder::Unknown
}

/// A person in the file who is in the coach file already.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Known {
    /// The name's key in the preview.
    pub key: String,
    /// The student.
    pub student: StudentId,
    /// The name in the coach file.
    pub name: String,
}

/// A name in the file that is one letter away from another: perhaps one person, and the coach says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct NearName {
    /// The name's key.
    pub key: String,
    /// The name, as the file has it.
    pub name: String,
    /// The line it is first on.
    pub line: u32,
    /// The other name's key.
    pub other_key: String,
    /// The other name.
    pub other: String,
    /// The line the other is first on; nothing when it is a student of the coach file.
    pub other_line: Option<u32>,
}

/// What a file holds.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CsvSeen {
    /// The words above the columns.
    pub head: Vec<String>,
    /// The first rows, as they stand.
    pub first_rows: Vec<Vec<String>>,
    /// How many rows there are.
    pub rows: usize,
    /// Which column is taken as what.
    pub columns: Columns,
    /// What is wrong with that choice; then there is no preview.
    pub column_problems: Vec<ColumnProblem>,
    /// What would be taken, and what not and why.
    pub preview: Option<Preview>,
    /// Who is in the coach file already.
    pub known: Vec<Known>,
    /// Names that may be the same person's, though written differently.
    pub near: Vec<NearName>,
}

/// The table in the bytes that were sent.
pub(super) fn table(content: &str) -> Result<Table> {
    let bytes = base64::engine::general_purpose::STANDARD.decode(content).map_err(|_| {
        Error::field("content", "no_base64", "The file did not arrive whole. Choose it again.")
    })?;
    season_csv::read(&bytes).map_err(|e| Error::field("content", "unreadable", format!("{e}.")))
}

/// Looks at a file.
///
/// # Errors
/// `Refused` when it cannot be read as a table.
pub fn preview(db: &Reading<'_>, ask: ReadCsv) -> Result<CsvSeen> {
    let table = table(&ask.content)?;
    let columns = ask.columns.unwrap_or_else(|| season_csv::propose(&table));
    let (preview, column_problems) = match season_csv::take(&table, &columns, ask.dates) {
        Ok(preview) => (Some(preview), Vec::new()),
        Err(problems) => (None, problems),
    };
    let here = here(db)?;
    let students = preview.as_ref().map(|preview| preview.students.as_slice()).unwrap_or_default();
    Ok(CsvSeen {
        first_rows: table.rows.iter().take(5).map(|row| row.cells.clone()).collect(),
        rows: table.rows.len(),
        head: table.head,
        columns,
        column_problems,
        known: here.iter().filter(|k| students.iter().any(|s| s.key == k.key)).cloned().collect(),
        near: near(students, &here),
        preview,
    })
}

/// The current students by the key of their names; of two with one name, the first of the list.
pub(super) fn here(db: &Reading<'_>) -> Result<Vec<Known>> {
    let mut here: Vec<Known> = Vec::new();
    for student in list(db, ListStudents::default())? {
        let key = season_csv::key_of(&student.name);
        if here.iter().all(|known| known.key != key) {
            here.push(Known { key, student: student.id, name: student.name });
        }
    }
    Ok(here)
}

/// Names of the file that are near another of the file, or near a student's.
fn near(seen: &[StudentSeen], here: &[Known]) -> Vec<NearName> {
    let all = seen.iter().map(|s| s.key.as_str()).chain(here.iter().map(|k| k.key.as_str()));
    let in_file = |key: &str| seen.iter().find(|s| s.key == key);
    let known = |key: &str| here.iter().find(|k| k.key == key);
    season_csv::near_keys(all)
        .into_iter()
        .filter_map(|(a, b)| {
            // The one that would be given up stands first: never a student's name.
            let (a, b) = if known(a).is_some() { (b, a) } else { (a, b) };
            let (name, other) = (in_file(a).filter(|_| known(a).is_none())?, in_file(b));
            Some(NearName {
                key: a.to_owned(),
                name: name.name.clone(),
                line: name.line,
                other_key: b.to_owned(),
                other: known(b)
                    .map(|k| k.name.clone())
                    .or_else(|| other.map(|s| s.name.clone()))?,
                other_line: if known(b).is_some() { None } else { other.map(|s| s.line) },
            })
        })
        .collect()
}
