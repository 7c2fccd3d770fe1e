//! What the courts of a trip cost by each place\u{2019}s rules, and noting that as costs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::days_of;
use super::result::lessons_on;
use crate::app::{Reading, Writing};
use crate::costs::{self, Cost, CostForm, CostKind, CostsOf, NoteCost};
use crate::error::{Error, Result};
use crate::facilities::{self, AskTerms};
use crate::kinds::ids::FacilityId;
use crate::kinds::text::counted;
use crate::kinds::{Currency, Day, Span};
use crate::lessons::{Lesson, LessonState};

/// Courts of a day at a place, for which no court is noted among the costs of that day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripCourts {
    /// The day.
    pub day: Day,
    /// The place.
    pub place: String,
    /// For so many lessons.
    pub lessons: u32,
    /// What they cost by its rules, a decimal.
    pub amount: String,
    /// The currency.
    pub currency: String,
}

/// Whose courts to note.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoteTripCourts {
    /// The first day of the trip.
    pub first: Day,
    /// The last day.
    pub last: Day,
}

/// Courts on which lessons were given and that are not among the costs, by day and place.
pub(super) fn not_noted(
    db: &Reading<'_>,
    days: Span,
    lessons: &[Lesson],
) -> Result<Vec<TripCourts>> {
    let noted = costs::list(db, CostsOf { first: days.first, last: days.last })?.costs;
    let is_noted = |day: Day| {
        noted.iter().any(|cost| {
            cost.kind == CostKind::Court && cost.taken_back.is_none() && cost.days().holds(day)
        })
    };
    let mut all: Vec<(FacilityId, Currency, i64, TripCourts)> = Vec::new();
    for lesson in lessons {
        let given = matches!(lesson.state, LessonState::Given | LessonState::CutShort);
        if !given || is_noted(lesson.day) {
            continue;
        }
        let ask = AskTerms {
            facility: lesson.facility,
            court: lesson.court,
            day: lesson.day,
            starts: lesson.starts,
            minutes: lesson.minutes,
        };
        let Some((currency, amount)) = facilities::court_cost(db, ask)?.filter(|of| of.1 > 0)
        else {
            continue;
        };
        let known = all.iter_mut().find(|(facility, code, _, of)| {
            *facility == lesson.facility && *code == currency && of.day == lesson.day
        });
        match known {
            Some((_, _, sum, of)) => {
                *sum += amount;
                of.lessons += 1;
            }
            None => {
                let of = TripCourts {
                    day: lesson.day,
                    place: lesson.place.clone(),
                    lessons: 1,
                    amount: String::new(),
                    currency: currency.code().to_owned(),
                };
                all.push((lesson.facility, currency, amount, of));
            }
        }
    }
    let told = |(_, currency, sum, of): (FacilityId, Currency, i64, TripCourts)| TripCourts {
        amount: currency.plain(sum),
        ..of
    };
    Ok(all.into_iter().map(told).collect())
}

/// Notes the courts of a trip that are not among the costs, one cost for each day and place.
///
/// # Errors
/// `Refused` for days that are no trip; `NotPossible` when there are none.
pub fn note_courts(db: &Writing<'_>, given: NoteTripCourts) -> Result<Vec<Cost>> {
    let days = days_of(given.first, given.last)?;
    let courts = not_noted(db, days, &lessons_on(db, days)?)?;
    if courts.is_empty() {
        let words = "Every court of these days is among the costs, or costs nothing by the rules.";
        return Err(Error::not_possible("nothing", words));
    }
    let mut all = Vec::new();
    for of in courts {
        let lessons = counted(i64::from(of.lessons), "lesson", "lessons");
        let cost = CostForm {
            kind: CostKind::Court,
            day: of.day.to_string(),
            last: String::new(),
            words: format!("Courts for {lessons}, {}", of.place),
            town: String::new(),
            amount: of.amount,
            currency: of.currency,
            tax: String::new(),
            distance: String::new(),
            unit: None,
        };
        all.push(costs::note(db, NoteCost { cost, receipt: None })?);
    }
    db.label("Courts noted as costs");
    Ok(all)
}
