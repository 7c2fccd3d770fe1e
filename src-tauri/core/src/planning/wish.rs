//! What the student of a visit wishes for.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{VisitWish, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::Time;
use crate::kinds::ids::VisitId;
use crate::visits::{self, Stage, Which};

/// A wish to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetWish {
    /// Whose visit.
    pub visit: VisitId,
    /// All that is to be kept, changed or not.
    pub wish: VisitWish,
}

/// A visit's wish as it stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WishOf {
    /// What is kept; `None` while nothing was written down.
    pub wish: Option<VisitWish>,
    /// In words; empty while nothing was written down.
    pub words: String,
}

/// Writes down what the student of a visit wishes for.
///
/// # Errors
/// `NotFound`; `NotPossible` when the visit is over; `Refused` with every field that is wrong.
pub fn set_wish(db: &Writing<'_>, set: SetWish) -> Result<WishOf> {
    let visit = visits::show(db, Which { visit: set.visit })?;
    if matches!(visit.stage, Stage::Closed | Stage::CalledOff) {
        return Err(Error::not_possible("over", "This visit is over; there is nothing to plan."));
    }
    let read = read(set.wish)?;
    let one_day = visit.days.is_some_and(|days| days.first == days.last);
    let times = Time::parse(&read.arrives).zip(Time::parse(&read.leaves));
    if let Some((arrives, leaves)) = times.filter(|(arrives, leaves)| one_day && leaves <= arrives)
    {
        let words = format!("They would leave at {leaves}, before they arrive at {arrives}.");
        return Err(Error::field("leaves", "end_before_start", words));
    }
    store::write_wish(db, set.visit, &read)?;
    db.label(format!("What {} wishes for written down", visit.name));
    let words = words(&read);
    Ok(WishOf { wish: Some(read), words })
}

/// Takes a visit's wish away.
///
/// # Errors
/// `NotFound`.
pub fn clear_wish(db: &Writing<'_>, which: Which) -> Result<WishOf> {
    let visit = visits::show(db, which)?;
    store::clear_wish(db, which.visit)?;
    db.label(format!("What {} wishes for taken away", visit.name));
    Ok(WishOf { wish: None, words: String::new() })
}

/// What the student of a visit wishes for.
///
/// # Errors
/// `NotFound`.
pub fn wish(db: &Reading<'_>, which: Which) -> Result<WishOf> {
    visits::show(db, which)?;
    let wish = store::wish(db, which.visit)?;
    let words = wish.as_ref().map(words).unwrap_or_default();
    Ok(WishOf { wish, words })
}

/// The wish as it can be stored.
fn read(w: VisitWish) -> Result<VisitWish> {
    let mut p = Problems::new();
    let mut time = |field: &str, typed: &str, what: &str| match typed.trim() {
        "" => String::new(),
        typed => p.time(field, typed, what).to_string(),
    };
    let arrives = time("arrives", &w.arrives, "The time of arrival");
    let leaves = time("leaves", &w.leaves, "The time of departure");
    let earliest = time("earliest", &w.earliest, "The earliest time");
    let latest = time("latest", &w.latest, "The latest time");
    let best_from = time("best_from", &w.best_from, "The hours liked best");
    let best_to = time("best_to", &w.best_to, "The hours liked best");
    let read = VisitWish {
        lessons: p.within_bounds("lessons", w.lessons, 1, 40, "How many lessons"),
        minutes: p.within_bounds("minutes", w.minutes, 15, 480, "The length in minutes"),
        per_day: p.within_bounds("per_day", w.per_day, 1, 6, "Lessons a day"),
        rest: p.within_bounds("rest", w.rest, 0, 720, "Minutes of rest"),
        arrives,
        leaves,
        earliest,
        latest,
        best_from,
        best_to,
        court: w.court,
        weight: p.within_bounds("weight", w.weight, 1, 3, "What a lesson counts"),
        note: p.note("note", &w.note, "What else was said"),
    };
    for (from, to, field) in
        [(&read.earliest, &read.latest, "latest"), (&read.best_from, &read.best_to, "best_to")]
    {
        let both = Time::parse(from).zip(Time::parse(to)).filter(|(_, to)| *to != Time::MIDNIGHT);
        if let Some((from, to)) = both.filter(|(from, to)| to <= from) {
            let words = format!("{to} is not after {from}. Midnight is 00:00.");
            p.add(field, "end_before_start", words);
        }
    }
    p.done()?;
    Ok(read)
}

/// "5 lessons of 60 minutes, 2 a day at most, from 09:00 to 18:00".
fn words(w: &VisitWish) -> String {
    let many =
        if w.lessons == 1 { "1 lesson".to_owned() } else { format!("{} lessons", w.lessons) };
    let mut parts =
        vec![format!("{many} of {} minutes", w.minutes), format!("at most {} a day", w.per_day)];
    if w.rest > 0 {
        parts.push(format!("{} minutes of rest between", w.rest));
    }
    let span = |from: &str, to: &str| match (from, to) {
        ("", "") => None,
        (from, "") => Some(format!("from {from}")),
        ("", to) => Some(format!("until {to}")),
        (from, to) => Some(format!("{from} to {to}")),
    };
    parts.extend(span(&w.earliest, &w.latest));
    parts.extend(span(&w.best_from, &w.best_to).map(|best| format!("best {best}")));
    parts.extend(Some(&w.arrives).filter(|t| !t.is_empty()).map(|t| format!("arrives {t}")));
    parts.extend(Some(&w.leaves).filter(|t| !t.is_empty()).map(|t| format!("leaves {t}")));
    parts.join(", ")
}
