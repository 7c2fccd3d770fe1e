//! Offers that were made, their answers, and what changed since the student last agreed.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::draft::{draft, lessons_of};
use super::{Offer, OfferState, OfferedLesson, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{OfferId, VisitId};
use crate::visits::{self, Which};

/// The most characters of a message.
const LONGEST: usize = 20_000;

/// An offer to make.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakeOffer {
    /// For which visit.
    pub visit: VisitId,
    /// The message as it goes out, the coach's changes in it.
    pub words: String,
}

/// What the student answered.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AnswerOffer {
    /// Which offer.
    pub offer: OfferId,
    /// Whether the student agreed.
    pub agreed: bool,
    /// What the student said.
    #[serde(default)]
    pub note: String,
}

/// The offers of a visit.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Offers {
    /// The newest first.
    pub offers: Vec<Offer>,
    /// Where it stands, in words.
    pub words: String,
    /// What changed since the student last agreed, or, before that, since the last offer: a sentence
    /// each.
    pub changed: Vec<String>,
}

/// Notes that a visit was offered with this message.
///
/// # Errors
/// `NotFound`; `NotPossible` when the visit has no lessons to come; `Refused` when the message is
/// empty or too long.
pub fn make(db: &Writing<'_>, make: MakeOffer) -> Result<Offer> {
    let visit = visits::show(db, Which { visit: make.visit })?;
    let drafted = draft(db, Which { visit: make.visit })?;
    let words = make.words.trim().to_owned();
    if words.is_empty() {
        return Err(Error::field("words", "empty", "The message is empty."));
    }
    if words.chars().count() > LONGEST {
        let said = format!("The message has room for {LONGEST} characters.");
        return Err(Error::field("words", "too_long", &said));
    }
    let offer = Offer {
        id: db.id(),
        visit: make.visit,
        made: db.today(),
        state: OfferState::Offered,
        answered: None,
        words,
        lessons: drafted.lessons,
        price: drafted.price,
        note: String::new(),
    };
    store::insert(db, &offer)?;
    db.label(format!("{} was offered {}", visit.name, visit.when()));
    Ok(offer)
}

/// Notes the answer to an offer.
///
/// # Errors
/// `NotFound`; `Refused` when the note is too long.
pub fn answer(db: &Writing<'_>, answer: AnswerOffer) -> Result<Offer> {
    let known = store::one(db, answer.offer)?;
    let mut p = Problems::new();
    let note = p.note("note", &answer.note, "What was said");
    p.done()?;
    let state = if answer.agreed { OfferState::Agreed } else { OfferState::Declined };
    store::answer(db, answer.offer, state, &note)?;
    let visit = visits::show(db, Which { visit: known.visit })?;
    let said = if answer.agreed { "agreed" } else { "declined" };
    db.label(format!("{} {said}", visit.name));
    store::one(db, answer.offer)
}

/// The offers of a visit, and what changed since.
///
/// # Errors
/// `NotFound`.
pub fn list(db: &Reading<'_>, which: Which) -> Result<Offers> {
    visits::show(db, which)?;
    let offers = store::of_visit(db, which.visit)?;
    let agreed = offers.iter().find(|offer| offer.state == OfferState::Agreed);
    let last = agreed.or_else(|| offers.first());
    let now: Vec<OfferedLesson> =
        lessons_of(db, which)?.into_iter().map(|(_, offered)| offered).collect();
    let changed = last.map(|last| changes(&last.lessons, &now)).unwrap_or_default();
    let words = match (offers.first().map(|o| o.state), agreed) {
        (None, _) => "Nothing was offered yet.".to_owned(),
        (Some(OfferState::Offered), None) => {
            format!("Offered on {}; no answer yet.", offers[0].made.words())
        }
        (Some(OfferState::Offered), Some(agreed)) => format!(
            "Agreed on {}; offered anew on {}, no answer yet.",
            agreed.answered.unwrap_or(agreed.made).words(),
            offers[0].made.words()
        ),
        (_, Some(agreed)) => {
            format!("Agreed on {}.", agreed.answered.unwrap_or(agreed.made).words())
        }
        (_, None) => "The last offer was declined.".to_owned(),
    };
    Ok(Offers { offers, words, changed })
}

/// The newest offer of a visit.
///
/// # Errors
/// `Storage`.
pub fn newest(db: &Reading<'_>, which: Which) -> Result<Option<Offer>> {
    store::newest(db, which.visit)
}

/// The newest offers that wait for their answer, of visits to come or going on.
///
/// # Errors
/// `Storage`.
pub fn waiting(db: &Reading<'_>) -> Result<Vec<Offer>> {
    store::waiting(db, db.today())
}

/// What is otherwise now, a sentence each.
fn changes(then: &[OfferedLesson], now: &[OfferedLesson]) -> Vec<String> {
    let when = |o: &OfferedLesson| {
        format!("{} {}, {} to {}", o.day.date().format("%A"), o.day.words(), o.starts, o.ends)
    };
    let cost = |o: &OfferedLesson| {
        let parts = [o.fee.as_str(), o.court_cost.as_str()];
        let known: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        if known.is_empty() { "a price that is not known".to_owned() } else { known.join(" and ") }
    };
    let mut said = Vec::new();
    for old in then {
        let Some(new) = now.iter().find(|new| new.lesson == old.lesson) else {
            said.push(format!("The lesson on {} is no longer to come.", when(old)));
            continue;
        };
        if when(old) != when(new) {
            said.push(format!("The lesson on {} is now on {}.", when(old), when(new)));
        }
        if old.place != new.place {
            said.push(format!("The lesson on {} is now at {}.", when(new), new.place));
        } else if old.court != new.court {
            let court = if new.court.is_empty() { "a court not known yet" } else { &new.court };
            said.push(format!("The lesson on {} is now on {court}.", when(new)));
        }
        if cost(old) != cost(new) {
            said.push(format!(
                "The lesson on {} now costs {} instead of {}.",
                when(new),
                cost(new),
                cost(old)
            ));
        }
    }
    for new in now.iter().filter(|new| then.iter().all(|old| old.lesson != new.lesson)) {
        said.push(format!("A lesson on {} came on top.", when(new)));
    }
    said
}
