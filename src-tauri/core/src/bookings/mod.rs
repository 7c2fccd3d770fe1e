//! Court bookings: which courts are to be asked for and from when, what was asked, what the facility
//! answered, and what is to be given back before it costs money. The program books nothing itself.
//!
//! A booking is a time on a court. Which lessons it serves follows from that, so a lesson that is
//! moved away from its court shows at once: its old court is to be given back, its new one asked for.

mod acts;
mod list;
mod message;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use acts::{Answer, AskFor, GiveBack, ask, confirm, give_back, refuse};
pub use list::{CourtsOf, list};
pub use message::{AskMessage, DeskMessage, message};

use crate::facilities::Given;
use crate::kinds::ids::{BookingId, CourtId, FacilityId, LessonId, StudentId, VisitId};
use crate::kinds::{Day, Time};

/// Where a court booking is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BookingState {
    /// Asked for, not answered.
    Asked,
    /// Confirmed by the facility.
    Confirmed,
    /// Refused by the facility.
    Refused,
    /// Given back.
    Released,
}

crate::db::words! {
    BookingState {
        Asked = "asked",
        Confirmed = "confirmed",
        Refused = "refused",
        Released = "released",
    }
}

/// A court booking as stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Booking {
    /// Which one.
    pub id: BookingId,
    /// Where.
    pub facility: FacilityId,
    /// The facility's name.
    pub place: String,
    /// On which court; left out for whichever is free.
    pub court: Option<CourtId>,
    /// Its name, or empty.
    pub court_name: String,
    /// The day.
    pub day: Day,
    /// When it begins on the facility's clock.
    pub starts: Time,
    /// Its length in minutes.
    pub minutes: u32,
    /// Where it is.
    pub state: BookingState,
    /// The day it was asked for.
    pub asked: Option<Day>,
    /// The day it was answered.
    pub answered: Option<Day>,
    /// The facility's own reference for it.
    pub reference: String,
    /// Who answered.
    pub by_whom: String,
    /// The coach's note.
    pub note: String,
}

/// What is to be done about a court.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum CourtState {
    /// It serves no lesson any more: to be given back.
    ToGiveBack,
    /// To be asked for.
    ToAsk,
    /// Asked for, not answered.
    Asked,
    /// Confirmed.
    Confirmed,
}

/// A court that a lesson needs, or one that no lesson needs any more.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct CourtNeeded {
    /// What is to be done about it.
    pub state: CourtState,
    /// The lesson; left out for a court to be given back.
    pub lesson: Option<LessonId>,
    /// Whose lesson: the first student's visit.
    pub visit: Option<VisitId>,
    /// The first student.
    pub student: Option<StudentId>,
    /// Everyone in the lesson, in words; empty without one.
    pub names: String,
    /// The booking, once it was asked for.
    pub booking: Option<Booking>,
    /// Where.
    pub facility: FacilityId,
    /// The facility's name.
    pub place: String,
    /// The court, once known.
    pub court: Option<CourtId>,
    /// Its name, or empty.
    pub court_name: String,
    /// The day.
    pub day: Day,
    /// When it begins.
    pub starts: Time,
    /// When it ends.
    pub ends: Time,
    /// From when it can be asked for; left out when no rule says.
    pub ask_from: Option<Given>,
    /// Whether it can be asked for now: the day has come, or no rule says.
    pub open: bool,
    /// What it costs, as in "18.00 EUR"; empty when no rule says.
    pub cost: String,
    /// Until when it can be given back free; left out when no rule says.
    pub free_until: Option<Given>,
    /// When to ask, until when to give back and what it costs later, a sentence each.
    pub words: Vec<String>,
    /// What speaks against it, a sentence each.
    pub against: Vec<String>,
}
