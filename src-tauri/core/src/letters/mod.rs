//! Progress letters: composed from the record of a visit, edited in the coach's voice, frozen on
//! issue. Every sentence the program writes names the numbers it rests on; no diagnosis, and no
//! other student's name.

mod compose;
mod draft;
mod figure;
mod issue;
mod language;
mod list;
mod sheet;
mod store;
mod tongue;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use compose::closing_in;
pub use draft::{compose_anew, draft, edit};
pub use issue::{document, issue, show};
pub use language::{ChooseLanguage, choose_language};
pub(crate) use list::count;
pub use list::{LetterLine, LetterState, ListLetters, list};

use crate::kinds::ids::{LetterId, StudentId, VisitId};
use crate::kinds::{Instant, Language};
use crate::print::{FontUsed, Pages};

/// A part of a letter, in the order a letter has them.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum PartKey {
    /// The greeting and what the visit was.
    Opening,
    /// A strength, first.
    Strength,
    /// What was worked on, with its cues.
    Worked,
    /// What was noticed, and is to be watched.
    Noticed,
    /// What moved, with its counts.
    Moved,
    /// What is kept.
    Kept,
    /// Levels given at the visit.
    Levels,
    /// What is carried to the next visit, and why.
    Carried,
    /// What to do at home, and what was told of the plan before.
    Home,
    /// The next visit, or when to expect it.
    Next,
    /// The closing.
    Closing,
}

/// A part as it stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Part {
    /// Which one.
    pub key: PartKey,
    /// Its heading; empty for the opening and the closing.
    pub heading: String,
    /// Its words: paragraphs parted by an empty line.
    pub text: String,
    /// What the program's own words rest on, one fact a line.
    pub from: Vec<String>,
    /// Whether the words are the coach's own.
    pub edited: bool,
    /// Whether the record changed since the coach wrote these words.
    pub outdated: bool,
    /// Whether it is left out of the letter.
    pub left_out: bool,
}

/// A letter of a visit as it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Draft {
    /// The visit.
    pub visit: VisitId,
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// When the visit was.
    pub when: String,
    /// The language it is written in.
    pub language: Language,
    /// Its parts.
    pub parts: Vec<Part>,
    /// The pages, as they would be issued now.
    pub pages: Pages,
    /// What to look at before it is issued, in words.
    pub warnings: Vec<String>,
    /// Letters issued for this visit, newest first.
    pub issued: Vec<IssuedLine>,
}

/// An issued letter in a list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct IssuedLine {
    /// Which one.
    pub letter: LetterId,
    /// When it was issued.
    pub at: Instant,
    /// SHA-256 of its document.
    pub sha256: String,
}

/// An issued letter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Issued {
    /// Which one.
    pub letter: LetterId,
    /// The visit.
    pub visit: VisitId,
    /// The student's name.
    pub name: String,
    /// When the visit was.
    pub when: String,
    /// When it was issued.
    pub at: Instant,
    /// SHA-256 of its document.
    pub sha256: String,
    /// Its size in bytes.
    pub bytes: usize,
    /// Fonts found on the machine that it used.
    pub fonts: Vec<FontUsed>,
    /// Its pages.
    pub pages: Pages,
}

/// Which visit's letter.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfVisit {
    /// The visit.
    pub visit: VisitId,
}

/// Which issued letter.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Which {
    /// The letter.
    pub letter: LetterId,
}
