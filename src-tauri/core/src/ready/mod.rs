//! Ready for court: one derived answer for each student of a lesson. Ready, or what is missing or
//! expired, in words; nobody types it over. Going on all the same takes a reason, which is kept; after
//! a blow to the head it is not offered.

mod go_on;
mod look;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use go_on::{GoOn, go_on};
pub use look::{AtPlace, AtPlaces, ReadyFor, at_places, before_first, of_lesson};

use crate::kinds::Instant;
use crate::kinds::ids::{LessonId, StudentId, VisitId};

/// Whether a student may go on court, as far as what is written down says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReadyState {
    /// Nothing is missing.
    Ready,
    /// Something is missing or has expired; the coach can go on with a reason.
    NotReady,
    /// After a blow to the head, before a clearance: nobody can go on.
    Blocked,
}

/// What is missing, or to be careful of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReadyAbout {
    /// A blow to the head.
    Head,
    /// The birth date.
    BirthDate,
    /// The guardian of a minor.
    Guardian,
    /// Whom to call.
    EmergencyContact,
    /// Injuries and restrictions.
    Injuries,
    /// The readiness questions.
    Readiness,
    /// A consent.
    Consent,
    /// A notice.
    Notice,
    /// The facility's own form.
    FacilityForm,
    /// The facility's own rules.
    FacilityRules,
    /// Eyewear.
    Eyewear,
    /// Permission to teach there.
    Teaching,
    /// The coach's own papers.
    OwnPapers,
}

/// One thing that is missing, or to be careful of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ReadyItem {
    /// What it is about.
    pub about: ReadyAbout,
    /// In words.
    pub words: String,
}

/// That the coach went on all the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WentOn {
    /// When.
    pub at: Instant,
    /// Why.
    pub reason: String,
    /// What was missing then.
    pub missing: Vec<String>,
}

/// How one student stands before one lesson.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Ready {
    /// Who.
    pub student: StudentId,
    /// Their visit.
    pub visit: Option<VisitId>,
    /// Their name.
    pub name: String,
    /// Which lesson; `None` for someone who has none yet.
    pub lesson: Option<LessonId>,
    /// Whether they may go on court.
    pub state: ReadyState,
    /// Their age on the day, where the birth date is known.
    pub age: Option<i64>,
    /// Whether they are a minor on the day, where it is known.
    pub minor: Option<bool>,
    /// What is missing or has expired.
    pub missing: Vec<ReadyItem>,
    /// What to be careful of; nothing of it keeps anyone off court.
    pub careful: Vec<String>,
    /// That the coach went on all the same.
    pub went_on: Option<WentOn>,
    /// The answer in a sentence.
    pub words: String,
}
