//! A season kept in a spreadsheet, read from its CSV file: one row per student, visit, goal and
//! kind of block.
//!
//! Three steps, each pure: [`read`] makes a table of the bytes, [`propose`] says which column seems
//! to be what, and [`take`] reads the rows with the columns the coach chose. A row is taken whole
//! or not at all, with the reason; nothing is guessed, rounded or left out in silence.

mod columns;
pub(crate) mod dates;
mod names;
mod read;
mod results;
mod take;

use std::collections::BTreeMap;

use chrono::NaiveDate;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::goals::numbers::Count;
use crate::sports::pack::Condition;

pub use columns::propose;
pub use read::{MOST_BYTES, MOST_COLUMNS, MOST_ROWS, ReadError, decode, read, rows_until};
pub use take::take;

/// A CSV file as a table. Rows without any content are not part of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Table {
    /// The first row: the names of the columns.
    pub head: Vec<String>,
    /// The other rows.
    pub rows: Vec<Row>,
    /// What stands between two cells.
    pub delimiter: char,
    /// How the bytes were read.
    pub encoding: Encoding,
}

/// One row of a table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Row {
    /// The line of the file it begins on, counted from 1.
    pub line: u32,
    /// Its cells, without surrounding blanks.
    pub cells: Vec<String>,
}

/// How bytes were read as text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Encoding {
    /// UTF-8, with or without its mark.
    #[serde(rename = "UTF-8")]
    Utf8,
    /// UTF-16, either byte order.
    #[serde(rename = "UTF-16")]
    Utf16,
    /// Windows-1252, the last resort: every byte means something in it.
    #[serde(rename = "Windows-1252")]
    Windows1252,
}

/// What a column can be.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// The student's name.
    Student,
    /// The student's mail address.
    Email,
    /// The first day of the visit.
    Arrive,
    /// The last day of the visit.
    Depart,
    /// The town or facility.
    Place,
    /// What was worked on.
    Goal,
    /// The cue.
    Cue,
    /// Fed, live, set game or match.
    Condition,
    /// The criterion, such as 8 of 10.
    Criterion,
    /// Retest, end test or practice.
    Kind,
    /// The result, such as 8 of 10.
    Result,
    /// The number of tries, where the result does not hold it.
    Tries,
    /// A note.
    Note,
}

impl Role {
    /// Every role, in the order of the fields of a row.
    pub const ALL: [Role; 13] = [
        Role::Student,
        Role::Email,
        Role::Arrive,
        Role::Depart,
        Role::Place,
        Role::Goal,
        Role::Cue,
        Role::Condition,
        Role::Criterion,
        Role::Kind,
        Role::Result,
        Role::Tries,
        Role::Note,
    ];

    /// The roles without which no row can be taken.
    pub const NEEDED: [Role; 4] = [Role::Student, Role::Arrive, Role::Goal, Role::Result];
}

/// Which column plays which role: the role and the column's place in the head, counted from 0.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct Columns(pub BTreeMap<Role, usize>);

/// Why rows could not be read with these columns.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ColumnProblem {
    /// The role in question.
    pub role: Role,
    /// `column_missing`, `no_such_column` or `column_used_twice`.
    pub code: String,
    /// What is wrong, for a person.
    pub words: String,
}

/// The order of day and month in dates such as 03/04/2026. Dates written year first, or with the
/// month's name, are read whatever the order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DateOrder {
    /// Not told: found out from the dates, or asked.
    Unknown,
    /// The day first.
    DayMonthYear,
    /// The month first.
    MonthDayYear,
}

/// What the dates say about their order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DateEvidence {
    /// No date depends on it.
    NotNeeded,
    /// Some date can only be day first, and none only month first.
    DayMonthYear,
    /// Some date can only be month first, and none only day first.
    MonthDayYear,
    /// Some can only be the one, some only the other.
    Mixed,
    /// Every date could be both: the coach has to say.
    Undecidable,
}

/// What kind of block a row is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "CsvKind")]
pub enum Kind {
    /// The first block of a carried goal, before any coaching of it.
    #[serde(rename = "retest")]
    Retest,
    /// The named test at the end.
    #[serde(rename = "end test")]
    EndTest,
    /// Any other block.
    #[serde(rename = "practice")]
    Practice,
}

/// A row that was taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SeasonRow {
    /// The line of the file.
    pub line: u32,
    /// The student, as first written in the file, given name first.
    pub student: String,
    /// What the spellings of one name have in common.
    pub student_key: String,
    /// The student's mail address.
    pub email: Option<String>,
    /// The first day of the visit.
    #[schemars(with = "String")]
    pub arrive: NaiveDate,
    /// The last day of the visit; the first day where the file says nothing.
    #[schemars(with = "String")]
    pub depart: NaiveDate,
    /// The town or facility.
    pub place: Option<String>,
    /// What was worked on.
    pub goal: String,
    /// The cue.
    pub cue: Option<String>,
    /// Fed, live, set game or match.
    pub condition: Option<Condition>,
    /// The criterion.
    pub criterion: Option<Count>,
    /// What kind of block it was; practice where the file says nothing.
    pub kind: Kind,
    /// The tries.
    pub count: Count,
    /// A note.
    pub note: Option<String>,
}

/// One reason why a row was not taken. A row can have several.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct NotTaken {
    /// The line of the file.
    pub line: u32,
    /// The name of the column, or nothing where the whole row is meant.
    pub column: Option<String>,
    /// The kind of reason.
    pub code: String,
    /// The reason and what to do, for a person.
    pub words: String,
}

/// Something to look at, although the rows were taken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Flag {
    /// `emails_differ`, `depart_differs`, `visits_overlap` or `row_twice`.
    pub code: String,
    /// The lines it concerns.
    pub lines: Vec<u32>,
    /// What to look at, for a person.
    pub words: String,
}

/// A student found in the file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct StudentSeen {
    /// What the spellings have in common.
    pub key: String,
    /// The name as first written, given name first.
    pub name: String,
    /// Every spelling found, given name first.
    pub spellings: Vec<String>,
    /// The first mail address found.
    pub email: Option<String>,
    /// How many rows were taken for this student.
    pub rows: u32,
    /// The line of the first of them.
    pub line: u32,
}

/// What taking the file in would bring.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Preview {
    /// What the dates say about their order.
    pub dates: DateEvidence,
    /// The rows that can be taken.
    pub rows: Vec<SeasonRow>,
    /// Why the others cannot.
    pub not_taken: Vec<NotTaken>,
    /// What to look at first.
    pub flags: Vec<Flag>,
    /// The students of the rows taken.
    pub students: Vec<StudentSeen>,
    /// How many visits the rows taken make: one student, one first day.
    pub visits: u32,
    /// How many blocks the rows taken make: one a row.
    pub blocks: u32,
    /// How many rows are not taken.
    pub rows_not_taken: u32,
}

/// The key under which a name is the same person's, however it is written.
pub fn key_of(name: &str) -> String {
    names::fold(&names::given_name_first(name))
}

/// Pairs of keys one letter apart, which may be one person: at most 200, each pair once.
pub fn near_keys<'a>(keys: impl IntoIterator<Item = &'a str>) -> Vec<(&'a str, &'a str)> {
    /// A coach answers for each pair; more than this is a column of something else.
    const MOST_PAIRS: usize = 200;
    names::near(&keys.into_iter().collect(), MOST_PAIRS)
}

#[cfg(test)]
mod tests;
