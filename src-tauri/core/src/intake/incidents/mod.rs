//! Incident reports: what happened, in order, without opinion or diagnosis; sealed once signed, after
//! which what comes to be known is added. The facility's own incident process goes on beside it.
//!
//! The fields and their order follow published guidance for reports in recreation and clubs, the
//! items after a blow to the head CDC HEADS UP for coaches.

mod print;
mod record;
mod store;
mod words;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use print::document;
pub use record::{
    AddToIncident, ChangeIncident, RecordIncident, SignIncident, WhichIncident, add, change, list,
    record, show, sign,
};

use super::Answer;
use crate::kinds::ids::{FacilityId, IncidentId, LessonId, RowId, StudentId};
use crate::kinds::{Day, Instant};

/// A report; the form and the record are the same. To whom, what happened and whether it was a blow to
/// the head must be said; the rest can be filled in until it is signed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Report {
    /// The student it happened to; left out for someone who is no student.
    pub student: Option<StudentId>,
    /// In which lesson.
    pub lesson: Option<LessonId>,
    /// The name of someone who is no student.
    pub person: String,
    /// What they were doing there: guest, opponent, bystander.
    pub role: String,
    /// Their age, as told.
    pub age: String,
    /// The guardian of a minor, with how to reach them.
    pub guardian: String,
    /// The day, as YYYY-MM-DD; empty for today.
    pub day: String,
    /// The time, as HH:MM; empty when not known.
    pub time: String,
    /// The facility.
    pub facility: Option<FacilityId>,
    /// Where exactly.
    pub place: String,
    /// The facility's own report number.
    pub number: String,
    /// What was being done.
    pub activity: String,
    /// What happened, in order, as seen.
    pub happened: String,
    /// The part of the body, as the person says.
    pub body_part: String,
    /// How it came about: ball, racquet, fall, collision.
    pub mechanism: String,
    /// Equipment and eyewear worn.
    pub equipment: String,
    /// First aid, and by whom.
    pub first_aid: String,
    /// Whether the emergency service was called.
    pub called: Answer,
    /// When, as HH:MM.
    pub called_at: String,
    /// Whether there was a blow to the head, or signs after one; must be answered, if only with "not
    /// known".
    pub head: Option<Answer>,
    /// How the blow came about.
    pub head_cause: String,
    /// Whether the person was unconscious.
    pub unconscious: Option<Answer>,
    /// Whether they did not remember.
    pub memory: Option<Answer>,
    /// Whether they had a seizure.
    pub seizure: Option<Answer>,
    /// Whether there were concussions before.
    pub earlier: Option<Answer>,
    /// Who saw it, with how to reach them.
    pub witnesses: String,
    /// Who was told, and when.
    pub told: String,
    /// What is to follow.
    pub follow_up: String,
    /// Who writes this.
    pub author: String,
}

/// What was added to a signed report.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Addition {
    /// Which one.
    pub id: RowId,
    /// When.
    pub at: Instant,
    /// What.
    pub words: String,
    /// By whom.
    pub author: String,
}

/// A line of a report as it is read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ReportLine {
    /// What it is about.
    pub about: String,
    /// What it says.
    pub words: String,
}

/// A report as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Incident {
    /// Which one.
    pub id: IncidentId,
    /// The name of whom it happened to.
    pub name: String,
    /// What is kept.
    pub report: Report,
    /// The same, to be read.
    pub lines: Vec<ReportLine>,
    /// The day.
    pub day: Day,
    /// The facility's name.
    pub facility_name: String,
    /// When it was first written down.
    pub recorded: Instant,
    /// When it was signed.
    pub signed: Option<Instant>,
    /// The name it was signed with.
    pub signature: String,
    /// Its seal: SHA-256 over all of it.
    pub seal: String,
    /// Whether the seal fits what is kept; `true` while it is not signed.
    pub whole: bool,
    /// What was added since.
    pub additions: Vec<Addition>,
}
