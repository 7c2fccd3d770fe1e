//! What is asked, agreed and written down before anyone steps on court: the intake record, injuries
//! and clearances, the readiness questions, notices and who acknowledged them, consents, the
//! facility's own forms, the rules for minors, the coach's own papers, and incident reports.
//!
//! It asks, records and reminds, and defers: to the facility, to local rules, to licensed people.
//! Nothing here clears anyone. After a blow to the head only a recorded clearance by a named
//! professional lets a student play ([`head`]), and nothing undoes that.

pub mod certificates;
pub mod clearances;
pub mod consents;
pub mod eyewear;
pub mod forms;
pub mod head;
pub mod incidents;
pub mod injuries;
pub mod minors;
pub mod notices;
pub mod page;
mod paper;
pub mod readiness;
pub mod record;
pub mod scans;
pub mod written_to;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::error::Problems;
use crate::kinds::ids::StudentId;
use crate::kinds::{Day, text};

/// A question that may be left open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Not known, or not answered.
    #[default]
    NotKnown,
}

/// Who speaks: the student, or the guardian of a minor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Speaks {
    /// The person themselves.
    #[default]
    #[serde(rename = "self")]
    Own,
    /// A guardian.
    Guardian,
}

/// On what something was accepted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum OnWhat {
    /// On the screen, with the name typed.
    #[default]
    Screen,
    /// On paper, signed by hand.
    Paper,
}

crate::db::words! {
    Answer { Yes = "yes", No = "no", NotKnown = "not_known" }
    Speaks { Own = "self", Guardian = "guardian" }
    OnWhat { Screen = "screen", Paper = "paper" }
}

impl Answer {
    /// As said in a document.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::No => "no",
            Self::NotKnown => "not known",
        }
    }
}

/// Of which student.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfStudent {
    /// The student.
    pub student: StudentId,
}

/// Who accepted something, when, and on what; part of an acknowledgement and of a consent.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Accepting {
    /// The full name, as typed by the person or as signed on paper.
    pub name: String,
    /// Whether the student speaks, or a guardian.
    pub relation: Speaks,
    /// What the guardian is to the student: mother, father.
    pub as_what: String,
    /// The day, as YYYY-MM-DD; empty for today.
    pub day: String,
    /// On what.
    pub how: OnWhat,
    /// The signed paper.
    pub scan: Option<scans::ScanGiven>,
}

/// The same, read.
struct Accepted {
    name: String,
    relation: Speaks,
    as_what: String,
    day: Day,
    how: OnWhat,
    scan: Option<scans::Scanned>,
}

impl Accepting {
    /// Reads it: a name, a day that is not to come, a relation for a guardian.
    fn read(self, p: &mut Problems, today: Day) -> Accepted {
        let name = p.name("name", &self.name, "The name");
        let as_what = p.line("as_what", &self.as_what, "The relation");
        if self.relation == Speaks::Guardian && as_what.is_empty() {
            let words = "Say what the guardian is to the student: mother, father, legal guardian.";
            p.add("as_what", "empty", words);
        }
        Accepted {
            name,
            relation: self.relation,
            as_what,
            day: past_day(p, "day", &self.day, "The day", today).unwrap_or(today),
            how: self.how,
            scan: self.scan.and_then(|scan| scan.read(p, "scan")),
        }
    }
}

impl Accepted {
    /// A guardian does not bear the student's own name; where the two are alike, the coach tells them
    /// apart.
    fn not_the_student(&self, p: &mut Problems, student: &str) {
        if self.relation == Speaks::Guardian && same_name(&self.name, student) {
            let words = "That is the student\u{2019}s own name. Write the guardian\u{2019}s; where they are alike, add what tells them apart, as in \u{201c}senior\u{201d}.";
            p.add("by.name", "own", words);
        }
    }
}

/// A day that may be left out, and does not lie in the future.
fn past_day(p: &mut Problems, field: &str, typed: &str, what: &str, today: Day) -> Option<Day> {
    let day = p.day_or_none(field, Some(typed), what)?;
    if day > today {
        p.add(field, "in_future", format!("{what} lies in the future."));
    }
    Some(day)
}

/// Whether a name that was typed is the name that is known, whatever its case and spaces.
fn same_name(typed: &str, known: &str) -> bool {
    text::folded(typed) == text::folded(known)
}
