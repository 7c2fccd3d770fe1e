//! What a trip earned, what it cost, and what is left of that for an hour.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::courts::{TripCourts, not_noted};
use super::expect::{Pricing, of_lessons};
use super::sums::{Row, Sum, by_currency, for_an_hour};
use super::{
    AskTripResult, TripAway, TripRow, TripRowFor, TripRowFrom, away::away, days_of, store,
};
use crate::app::Reading;
use crate::costs::{self, CostsOf};
use crate::error::{Problems, Result};
use crate::kinds::{Currency, Span};
use crate::lessons::{self, Lesson, LessonState, ListLessons};
use crate::prices::What;

/// What a trip comes to in one currency. Amounts are decimals; below 0 a loss.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripMoney {
    /// The currency.
    pub currency: String,
    /// Earned with lessons and courts, without tax.
    pub earned: String,
    /// Charged to students for travel: shares of costs, and what the coming itself costs them, without
    /// tax.
    pub charged: String,
    /// Noted as costs.
    pub costs: String,
    /// Earned and charged, less costs.
    pub result: String,
    /// The result for each hour of lessons given; `None` without any.
    pub per_court_hour: Option<String>,
    /// The result for each hour away.
    pub per_hour_away: Option<String>,
    /// What is not entered yet and may come on top, without tax; empty when nothing is.
    pub expected: String,
}

/// What a trip comes to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripResult {
    /// Its days.
    pub days: Span,
    /// Lessons given, a shared one counted once.
    pub lessons: u32,
    /// Minutes of them, as taught.
    pub court_minutes: u32,
    /// How long the coach is away.
    pub away: TripAway,
    /// By currency; none is added to another.
    pub money: Vec<TripMoney>,
    /// The rows that the figures are made of, by day.
    pub rows: Vec<TripRow>,
    /// What is not entered yet.
    pub expected: Vec<TripRow>,
    /// What is not known of that, a sentence each.
    pub asks: Vec<String>,
    /// Courts on which lessons were given and that are not among the costs.
    pub courts: Vec<TripCourts>,
}

/// What a trip earned, what it cost, and what is expected.
///
/// # Errors
/// `Refused` when the last day is before the first, there are too many, or a time is none.
pub fn result(db: &Reading<'_>, ask: AskTripResult) -> Result<TripResult> {
    let days = days_of(ask.first, ask.last)?;
    let mut p = Problems::new();
    let away = away(&mut p, days, &ask.leaves, &ask.returns);
    p.done()?;
    let lessons = lessons_on(db, days)?;
    let rows = entered(db, days)?;
    let mut pricing = Pricing::new(db)?;
    let expected = of_lessons(&mut pricing, days, &lessons)?;
    let (given, court_minutes) = given(&lessons);
    let sums = by_currency(rows.iter());
    let expecting = by_currency(expected.iter());
    let mut money: Vec<TripMoney> = sums
        .iter()
        .map(|(currency, sum)| said(*currency, *sum, i64::from(court_minutes), away.minutes))
        .collect();
    for (currency, sum) in &expecting {
        if sums.iter().all(|(known, _)| known != currency) {
            money.push(said(*currency, Sum::default(), i64::from(court_minutes), away.minutes));
        }
        let known = money.iter_mut().find(|one| one.currency == currency.code());
        if let Some(one) = known {
            one.expected = currency.plain(sum.result());
        }
    }
    money.sort_by(|a, b| a.currency.cmp(&b.currency));
    Ok(TripResult {
        days,
        lessons: given,
        court_minutes,
        away,
        money,
        rows: rows.iter().map(Row::told).collect(),
        expected: expected.iter().map(Row::told).collect(),
        asks: pricing.asks,
        courts: not_noted(db, days, &lessons)?,
    })
}

/// Sums as they are told.
pub(super) fn said(currency: Currency, sum: Sum, court: i64, away: i64) -> TripMoney {
    let plain = |minor: i64| currency.plain(minor);
    let result = sum.result();
    TripMoney {
        currency: currency.code().to_owned(),
        earned: plain(sum.earned),
        charged: plain(sum.charged),
        costs: plain(sum.costs),
        result: plain(result),
        per_court_hour: for_an_hour(result, court).map(plain),
        per_hour_away: for_an_hour(result, away).map(plain),
        expected: String::new(),
    }
}

/// The lessons of some days, those called off too.
pub(super) fn lessons_on(db: &Reading<'_>, days: Span) -> Result<Vec<Lesson>> {
    lessons::list(db, ListLessons { visit: None, from: Some(days.first), to: Some(days.last) })
}

/// How many of these lessons were given, and minutes of them as taught.
pub(super) fn given(lessons: &[Lesson]) -> (u32, u32) {
    let given =
        || lessons.iter().filter(|l| matches!(l.state, LessonState::Given | LessonState::CutShort));
    let minutes = given().map(|lesson| lesson.given.unwrap_or(lesson.minutes)).sum();
    (u32::try_from(given().count()).unwrap_or(u32::MAX), minutes)
}

/// What the ledger and the costs hold of some days.
pub(super) fn entered(db: &Reading<'_>, days: Span) -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    for one in store::earned(db, days)? {
        let Some(currency) = Currency::parse(&one.currency) else { continue };
        let what = match one.what {
            What::Late => TripRowFor::Late,
            What::Court => TripRowFor::Court,
            What::Travel => TripRowFor::Travel,
            _ => TripRowFor::Lesson,
        };
        let parts = [one.words.as_str(), one.payer.as_str(), one.place.as_str()];
        let words: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        rows.push(Row {
            invoice: one.invoice,
            package: one.package,
            ..Row::new(
                (what, TripRowFrom::Entered),
                one.day,
                words.join(", "),
                (currency, one.amount),
            )
        });
    }
    let noted = costs::list(db, CostsOf { first: days.first, last: days.last })?.costs;
    for cost in noted.iter().rev().filter(|cost| cost.taken_back.is_none()) {
        let Some((currency, amount)) = cost.read() else { continue };
        let of = (TripRowFor::Cost, TripRowFrom::Entered);
        rows.push(Row::new(of, cost.day, cost.words.clone(), (currency, -amount)));
    }
    rows.sort_by_key(|row| row.day);
    Ok(rows)
}
