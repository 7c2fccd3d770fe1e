//! A trip beside those before it.

use chrono::Months;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::result::{entered, given, lessons_on, said};
use super::sums::{Sum, by_currency, for_an_hour};
use super::{AskTripResult, TripMoney, away::whole, days_of, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::{Day, Span};

/// A trip in one currency, as it stands beside others.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripCompared {
    /// Its days.
    pub days: Span,
    /// Where its lessons were, in words; empty without any.
    pub places: String,
    /// Whether it is the one that was asked about.
    pub this: bool,
    /// Lessons given.
    pub lessons: u32,
    /// Minutes of them.
    pub court_minutes: u32,
    /// What it came to. An hour away is counted by whole days for all of them.
    pub money: TripMoney,
}

/// A trip and those of the twelve months before it: by currency, the best for an hour on court first.
/// A trip is a run of days on which visits overlap.
///
/// # Errors
/// `Refused` when the last day is before the first, or there are too many.
pub fn others(db: &Reading<'_>, ask: AskTripResult) -> Result<Vec<TripCompared>> {
    let days = days_of(ask.first, ask.last)?;
    let before = days.first.date().checked_sub_months(Months::new(12)).and_then(Day::from_date);
    let from = before.unwrap_or(days.first);
    let mut trips = runs(store::visits(db, from, days.first)?);
    trips.retain(|trip| trip.last < days.first && days_of(trip.first, trip.last).is_ok());
    trips.push(days);
    let mut all: Vec<(TripCompared, Option<i64>)> = Vec::new();
    for trip in trips {
        all.extend(compared(db, trip, trip == days)?);
    }
    all.sort_by(|(a, best_a), (b, best_b)| {
        let by_currency = a.money.currency.cmp(&b.money.currency);
        by_currency.then(best_b.cmp(best_a)).then(b.days.first.cmp(&a.days.first))
    });
    Ok(all.into_iter().map(|(compared, _)| compared).collect())
}

fn compared(db: &Reading<'_>, days: Span, this: bool) -> Result<Vec<(TripCompared, Option<i64>)>> {
    let lessons = lessons_on(db, days)?;
    let rows = entered(db, days)?;
    let (given, court_minutes) = given(&lessons);
    let mut places: Vec<&str> = Vec::new();
    for lesson in lessons.iter().filter(|lesson| lesson.state.takes_place()) {
        if !places.contains(&lesson.place.as_str()) {
            places.push(&lesson.place);
        }
    }
    let court = i64::from(court_minutes);
    let one = |(currency, sum): (crate::kinds::Currency, Sum)| {
        let compared = TripCompared {
            days,
            places: places.join(", "),
            this,
            lessons: given,
            court_minutes,
            money: said(currency, sum, court, whole(days).minutes),
        };
        (compared, for_an_hour(sum.result(), court))
    };
    Ok(by_currency(rows.iter()).into_iter().map(one).collect())
}

/// Days that overlap as one run each.
fn runs(spans: Vec<Span>) -> Vec<Span> {
    let mut runs: Vec<Span> = Vec::new();
    for span in spans {
        match runs.last_mut().filter(|run| span.first <= run.last) {
            Some(run) => run.last = run.last.max(span.last),
            None => runs.push(span),
        }
    }
    runs
}
