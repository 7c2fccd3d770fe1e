//! Offers: the days, lessons, courts and prices of a visit as they were offered to the student, word
//! for word, the answer, and what has changed since the student last agreed.
//!
//! Until invoices are written, a price is the coach's rate for the lesson's length and the court's
//! cost by the facility's rules.

mod draft;
mod made;
mod store;
mod terms;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use draft::{Draft, called, draft, on_both_clocks};
pub use made::{AnswerOffer, MakeOffer, Offers, answer, list, make, newest, waiting};
pub use terms::{Fee, OfferTerms, behind, catch_up, set_terms, terms};

use crate::kinds::ids::{LessonId, OfferId, VisitId};
use crate::kinds::{Day, Time};

/// What came of an offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum OfferState {
    /// No answer yet.
    Offered,
    /// The student agreed.
    Agreed,
    /// The student declined.
    Declined,
}

crate::db::words! {
    OfferState { Offered = "offered", Agreed = "agreed", Declined = "declined" }
}

/// A lesson as it was offered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OfferedLesson {
    /// Which one.
    pub lesson: LessonId,
    /// The day.
    pub day: Day,
    /// When it begins on the facility's clock.
    pub starts: Time,
    /// When it ends.
    pub ends: Time,
    /// The facility.
    pub place: String,
    /// The court, or empty.
    pub court: String,
    /// What the lesson costs, as in "40.00 EUR"; empty when no rate is known for its length.
    pub fee: String,
    /// What the court costs; empty when no rule says.
    pub court_cost: String,
}

/// An offer as stored.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Offer {
    /// Which one.
    pub id: OfferId,
    /// For which visit.
    pub visit: VisitId,
    /// The day it was made.
    pub made: Day,
    /// What came of it.
    pub state: OfferState,
    /// The day it was answered.
    pub answered: Option<Day>,
    /// The message, word for word.
    pub words: String,
    /// Its lessons.
    pub lessons: Vec<OfferedLesson>,
    /// The whole price, as in "174.00 EUR"; empty when a part of it is not known.
    pub price: String,
    /// What the student said.
    pub note: String,
}
