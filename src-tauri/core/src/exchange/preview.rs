//! Looking at a CSV file of a season before anything is taken from it.

use base64::Engine;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::season_csv::{self, ColumnProblem, Columns, DateOrder, Preview, Table};
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
    let known = preview.as_ref().map_or_else(|| Ok(Vec::new()), |preview| known(db, preview))?;
    Ok(CsvSeen {
        first_rows: table.rows.iter().take(5).map(|row| row.cells.clone()).collect(),
        rows: table.rows.len(),
        head: table.head,
        columns,
        column_problems,
        preview,
        known,
    })
}

/// Those in the preview whose name is that of a current student.
pub(super) fn known(db: &Reading<'_>, preview: &Preview) -> Result<Vec<Known>> {
    let students = list(db, ListStudents::default())?;
    Ok(preview
        .students
        .iter()
        .filter_map(|seen| {
            let same = students.iter().find(|s| season_csv::key_of(&s.name) == seen.key)?;
            Some(Known { key: seen.key.clone(), student: same.id, name: same.name.clone() })
        })
        .collect())
}
