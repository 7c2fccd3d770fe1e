//! The coach's calendars on a server, in step with this file: when the coach is taken comes in,
//! lessons go out.
//!
//! One *exchange* has three parts, so that nothing waits for the network while the file is held:
//! [`ask`] reads in one go what it stands on, [`exchange`] talks to the server and touches no file,
//! [`keep`] writes down what came of it. There is no queue: what is to be written follows from the
//! lessons and from what both sides said last, so whatever was done without a network, or was cut
//! off half-way, goes out with the next exchange, and a lesson's place on the server is always the
//! same.
//!
//! A change on the server never changes a lesson: the two are shown side by side and the coach
//! decides ([`take`], [`put_back`]).

mod account;
mod decide;
mod exchange;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use account::{AccountShown, OnServer, SetAccount, leave, set, show};
pub use decide::{Difference, put_back, take, to_decide};
pub use exchange::{Asked, Exchanged, Outcome, ask, exchange, keep};

use crate::app::Writing;
use crate::error::Result;
use crate::kinds::Instant;
use crate::kinds::ids::LessonId;
use crate::own_time;

/// What is said of a lesson's time and place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
struct Says {
    starts: Instant,
    ends: Instant,
    place: String,
}

/// What both sides said last.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
struct Agreed {
    says: Says,
    summary: String,
    sequence: u32,
}

/// What the server says otherwise.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Theirs {
    /// Another time or place.
    Other(Says),
    /// It comes again, or cannot be read as one time.
    Unclear,
    /// It is called off there.
    CalledOff,
    /// It is not there any more.
    Gone,
}

/// A lesson as it stands on the server.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Entry {
    lesson: LessonId,
    href: String,
    etag: String,
    agreed: Agreed,
    theirs: Option<Theirs>,
    text: String,
}

/// The lesson's UID in every calendar.
pub(super) fn uid(lesson: LessonId) -> String {
    uid_of(&lesson.to_string())
}

/// The UIDs of some lessons.
pub fn uids(lessons: &[String]) -> Vec<String> {
    lessons.iter().map(|lesson| uid_of(lesson)).collect()
}

fn uid_of(lesson: &str) -> String {
    format!("{lesson}@carryover")
}

/// Forgets what calendars say of lessons of someone who is erased; whether any stands on a server. The
/// next exchange takes those out that are gone, and writes those anew that others still have.
///
/// # Errors
/// `Storage`.
pub fn forget(db: &Writing<'_>, lessons: &[String]) -> Result<bool> {
    own_time::forget_events(db, &uids(lessons))?;
    Ok(store::forget_words(db, lessons, "A lesson of someone who was erased")? > 0)
}

/// Which lesson the coach decides about.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichEntry {
    /// The lesson.
    pub lesson: LessonId,
}
