//! The student's calendar and the coach's: invitations to lessons, their changes and callings-off
//! (iTIP, RFC 5546), and a calendar file of lessons (RFC 5545).
//!
//! A lesson has one UID for its whole life. What was last said of its time and place is kept for each
//! student, so that only what a student must notice is sent anew, with a higher SEQUENCE.

pub mod remote;
pub mod server;

mod due;
mod file;
mod follows;
mod read;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use due::{Invitation, Written, due, files, invitations, withdrawn, written};
pub use file::{CalendarOf, file};
pub use follows::{Follows, ToGiveBack, ToTell, follows};
pub use read::{ReadCalendar, catch_up, not_too_large, read, read_bytes};
pub use server::{forget, uids};

use crate::kinds::ids::{LessonId, StudentId};

/// Why an invitation is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum InvitationKind {
    /// The lesson was never invited to.
    New,
    /// Its time or place is another than was said.
    Changed,
    /// It was called off.
    CalledOff,
}

/// An invitation that is due.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvitationDue {
    /// To which lesson.
    pub lesson: LessonId,
    /// Whom.
    pub student: StudentId,
    /// Why.
    pub kind: InvitationKind,
    /// As a sentence.
    pub words: String,
    /// The SEQUENCE it will have.
    pub sequence: u32,
    /// Why it cannot be written; empty when it can.
    pub trouble: String,
}
