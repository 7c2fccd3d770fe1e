//! A trip before it is agreed: what its lessons would come to, what courts and the coming would cost, and
//! how many more lessons it takes to reach zero. Nothing of it is kept.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::expect::{Pricing, ToPrice, of_lessons, to_price};
use super::result::{entered, given, lessons_on};
use super::sums::{Row, by_currency, for_an_hour};
use super::{TripAway, TripRow, TripRowFor, TripRowFrom, away::away, days_of};
use crate::app::Reading;
use crate::costs::{self, ExpectedCost};
use crate::error::{Problems, Result};
use crate::facilities::{self, AskTerms};
use crate::kinds::ids::CourtId;
use crate::kinds::{Currency, Day, Span, Time};
use crate::lessons::LessonState;
use crate::money::Fraction;
use crate::planning::TakeLine;
use crate::prices::{self, PricedAs, What};
use crate::terms;
use crate::visits;

/// The most costs of one outlook.
const MOST_COSTS: usize = 50;

/// A trip to look ahead at.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskTripOutlook {
    /// Its first day.
    pub first: Day,
    /// Its last day.
    pub last: Day,
    /// When the coach leaves home on the first day, HH:MM; empty while not said.
    #[serde(default)]
    pub leaves: String,
    /// When the coach is home again on the last day; empty while not said.
    #[serde(default)]
    pub returns: String,
    /// Lines of a plan that are no lessons yet.
    #[serde(default)]
    pub lines: Vec<TakeLine>,
    /// Costs that are expected beyond those noted.
    #[serde(default)]
    pub costs: Vec<ExpectedCost>,
}

/// How many more lessons of a kind it takes to reach zero.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripBreakEven {
    /// So many.
    pub lessons: i64,
    /// Of which kind, in words.
    pub like: String,
    /// What each would bring, without tax, a decimal.
    pub each: String,
}

/// What a trip would come to in one currency. Amounts are decimals; below 0 a loss.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripOutlookMoney {
    /// The currency.
    pub currency: String,
    /// What lessons and courts would earn, without tax.
    pub earned: String,
    /// What students would be charged for travel, without tax.
    pub charged: String,
    /// What it would cost.
    pub costs: String,
    /// What would be left.
    pub result: String,
    /// That for each hour of lessons; `None` without any.
    pub per_court_hour: Option<String>,
    /// That for each hour away.
    pub per_hour_away: Option<String>,
    /// How many more lessons it takes to reach zero; none when it is reached, or not known.
    pub break_even: Vec<TripBreakEven>,
}

/// What a trip would come to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TripOutlook {
    /// Its days.
    pub days: Span,
    /// Lessons given and to come, a shared one counted once.
    pub lessons: u32,
    /// Minutes of them.
    pub court_minutes: u32,
    /// How long the coach would be away.
    pub away: TripAway,
    /// By currency; none is added to another.
    pub money: Vec<TripOutlookMoney>,
    /// The rows that the figures are made of, by day.
    pub rows: Vec<TripRow>,
    /// What is not known, a sentence each: it is in none of the figures.
    pub asks: Vec<String>,
}

/// A lesson to come, and its court.
struct Coming {
    lesson: ToPrice,
    court: Option<CourtId>,
    starts: Time,
}

/// What lessons to come bring on average in a currency.
#[derive(Default)]
struct Mean {
    all: Vec<(Currency, i64, i64)>,
}

impl Mean {
    fn add<'a>(&mut self, rows: impl Iterator<Item = &'a Row>) {
        for (currency, sum) in by_currency(rows).into_iter().filter(|(_, s)| s.earned > 0) {
            match self.all.iter_mut().find(|(known, _, _)| *known == currency) {
                Some((_, brings, many)) => {
                    *brings += sum.result();
                    *many += 1;
                }
                None => self.all.push((currency, sum.result(), 1)),
            }
        }
    }

    fn of(&self, currency: Currency) -> Option<(i64, i64)> {
        let found = self.all.iter().find(|(known, _, _)| *known == currency);
        found.map(|(_, brings, many)| (*brings, *many))
    }
}

/// What a trip would come to: what is entered and expected of its days, its lessons to come with their
/// courts, the new lines of a plan, and the costs that are typed.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn outlook(db: &Reading<'_>, ask: AskTripOutlook) -> Result<TripOutlook> {
    let days = days_of(ask.first, ask.last)?;
    let mut p = Problems::new();
    let away = away(&mut p, days, &ask.leaves, &ask.returns);
    let typed = typed(db, &mut p, &ask, days)?;
    for (n, line) in ask.lines.iter().enumerate() {
        if !days.holds(line.place.day) {
            let words = "This line is on none of these days.";
            p.add(&format!("lines[{n}].place.day"), "elsewhere", words);
        }
    }
    p.done()?;
    let lessons = lessons_on(db, days)?;
    let mut rows = entered(db, days)?;
    let mut pricing = Pricing::new(db)?;
    let expected = of_lessons(&mut pricing, days, &lessons)?;
    let (mut many, mut court_minutes) = given(&lessons);
    let mut coming: Vec<Coming> = lessons
        .iter()
        .filter(|lesson| lesson.state == LessonState::Planned)
        .map(|l| Coming { lesson: to_price(l), court: l.court, starts: l.starts })
        .collect();
    for line in &ask.lines {
        coming.push(of_line(db, line)?);
    }
    let mut mean = Mean::default();
    for one in &coming {
        many = many.saturating_add(1);
        court_minutes = court_minutes.saturating_add(one.lesson.minutes);
        let courts = courts(db, &mut pricing, one)?;
        // The price of a lesson that stands is among what is expected already.
        let fees = match one.lesson.lesson {
            Some(_) => Vec::new(),
            None => pricing.lesson(&one.lesson, TripRowFrom::Planned, |_| true)?,
        };
        let stands = expected.iter().filter(|row| row.lesson.is_some());
        let stands = stands.filter(|row| row.lesson == one.lesson.lesson);
        mean.add(courts.iter().chain(&fees).chain(stands));
        rows.extend(courts);
        rows.extend(fees);
    }
    rows.extend(expected);
    for cost in typed {
        match cost.amount {
            Ok(amount) => {
                let words = if amount.worked.is_empty() {
                    cost.words
                } else {
                    format!("{}: {}", cost.words, amount.worked)
                };
                let of = (TripRowFor::Cost, TripRowFrom::Expected);
                rows.push(Row::new(of, cost.day, words, (amount.currency, -amount.minor)));
            }
            Err(asks) => pricing.ask(asks),
        }
    }
    rows.sort_by_key(|row| row.day);
    let mut money = Vec::new();
    for (currency, sum) in by_currency(rows.iter()) {
        let plain = |minor: i64| currency.plain(minor);
        let result = sum.result();
        money.push(TripOutlookMoney {
            currency: currency.code().to_owned(),
            earned: plain(sum.earned),
            charged: plain(sum.charged),
            costs: plain(sum.costs),
            result: plain(result),
            per_court_hour: for_an_hour(result, i64::from(court_minutes)).map(plain),
            per_hour_away: for_an_hour(result, away.minutes).map(plain),
            break_even: break_even(db, &mut pricing, &mean, currency, result, days.first)?,
        });
    }
    Ok(TripOutlook {
        days,
        lessons: many,
        court_minutes,
        away,
        money,
        rows: rows.iter().map(Row::told).collect(),
        asks: pricing.asks,
    })
}

fn typed(
    db: &Reading<'_>,
    p: &mut Problems,
    ask: &AskTripOutlook,
    days: Span,
) -> Result<Vec<costs::Foreseen>> {
    if ask.costs.len() > MOST_COSTS {
        p.add("costs", "too_many", format!("There is room for {MOST_COSTS} costs."));
        return Ok(Vec::new());
    }
    let mut all = Vec::new();
    for (n, cost) in ask.costs.iter().enumerate() {
        let at = format!("costs[{n}].");
        all.extend(p.within(&at, |p| costs::expected(db, p, cost, days))?);
    }
    Ok(all)
}

/// A line of a plan as a lesson to come.
fn of_line(db: &Reading<'_>, line: &TakeLine) -> Result<Coming> {
    let facility = facilities::of_court(db, line.place.court)?;
    let place = facilities::show(db, facilities::Which { facility })?.place.name;
    let mut students = Vec::new();
    for visit in std::iter::once(line.place.visit).chain(line.place.with.iter().copied()) {
        let visit = visits::show(db, visits::Which { visit })?;
        students.push((visit.student, visit.name));
    }
    let (day, minutes) = (line.place.day, line.minutes);
    let lesson = ToPrice { lesson: None, day, facility, place, minutes, students };
    Ok(Coming { lesson, court: Some(line.place.court), starts: line.place.starts })
}

/// What the court of a lesson would cost by its place, and what of it students would pay.
fn courts(db: &Reading<'_>, pricing: &mut Pricing<'_>, one: &Coming) -> Result<Vec<Row>> {
    let lesson = &one.lesson;
    let ask = AskTerms {
        facility: lesson.facility,
        court: one.court,
        day: lesson.day,
        starts: one.starts,
        minutes: lesson.minutes,
    };
    let Some((currency, amount)) = facilities::court_cost(db, ask)? else {
        pricing.ask(format!("No rule says what a court costs at {}.", lesson.place));
        return Ok(Vec::new());
    };
    if amount == 0 {
        return Ok(Vec::new());
    }
    let words = format!("Court, {}, {}", lesson.place, one.starts);
    let of = (TripRowFor::Cost, TripRowFrom::Planned);
    let mut rows = vec![Row::new(of, lesson.day, words.clone(), (currency, -amount))];
    if terms::show(db)?.pass_courts {
        let net = pricing.without_tax(amount, What::Court, Some(lesson.facility), lesson.day)?;
        let of = (TripRowFor::Court, TripRowFrom::Planned);
        rows.push(Row::new(of, lesson.day, words, (currency, net)));
    }
    Ok(rows)
}

/// How many more lessons it takes to reach zero: such as those to come are on average, or else such as
/// the price list has for one alone.
fn break_even(
    db: &Reading<'_>,
    pricing: &mut Pricing<'_>,
    mean: &Mean,
    currency: Currency,
    result: i64,
    day: Day,
) -> Result<Vec<TripBreakEven>> {
    if result >= 0 {
        return Ok(Vec::new());
    }
    let code = currency.code();
    if let Some((brings, many)) = mean.of(currency) {
        let Some((lessons, each)) = needed(result, brings, many) else {
            pricing.ask(format!("The lessons to come bring nothing in {code} after their courts."));
            return Ok(Vec::new());
        };
        let like = "as those to come are on average, after their courts".to_owned();
        return Ok(vec![TripBreakEven { lessons, like, each: currency.plain(each) }]);
    }
    let mut all: Vec<TripBreakEven> = Vec::new();
    for price in prices::list(db)? {
        let single = price.what == PricedAs::Lesson && price.sharing == 1 && price.holds(day);
        let amount = Currency::parse(&price.currency)
            .filter(|known| single && *known == currency)
            .and_then(|known| known.minor(&price.amount));
        let Some(amount) = amount else { continue };
        let net = pricing.without_tax(amount, What::Lesson, price.facility, day)?;
        let Some((lessons, each)) = needed(result, net, 1) else { continue };
        let place =
            if price.place.is_empty() { String::new() } else { format!(", {}", price.place) };
        let like = format!("{}{place}, before its court", price.says);
        let one = TripBreakEven { lessons, like, each: currency.plain(each) };
        if !all.contains(&one) {
            all.push(one);
        }
    }
    if all.is_empty() {
        pricing.ask(format!(
            "No price of a lesson in {code} is known: how many it takes to reach zero is not said."
        ));
    }
    Ok(all)
}

/// So many lessons to make up for a loss, when so many bring so much; and what each brings. `None` when
/// they bring nothing.
fn needed(result: i64, brings: i64, many: i64) -> Option<(i64, i64)> {
    if brings <= 0 || many <= 0 {
        return None;
    }
    let (loss, brings_all) = (-i128::from(result) * i128::from(many), i128::from(brings));
    let lessons = i64::try_from((loss + brings_all - 1) / brings_all).ok()?;
    let each = Fraction::whole(brings).by(Fraction::whole(many))?.rounded()?;
    Some((lessons, each))
}

#[cfg(test)]
mod tests {
    use super::needed;
    use proptest::prelude::*;

    proptest! {
        /// So many reach zero, and one fewer does not.
        #[test]
        fn the_fewest_lessons_that_reach_zero(
            loss in 1_i64..100_000_000, brings in 1_i64..1_000_000, many in 1_i64..60,
        ) {
            let (lessons, _) = needed(-loss, brings, many).expect("they bring something");
            // Exact, in whole numbers: lessons × brings ÷ many against the loss.
            let reaches = |lessons: i64| {
                i128::from(lessons) * i128::from(brings) >= i128::from(loss) * i128::from(many)
            };
            prop_assert!(reaches(lessons) && !reaches(lessons - 1));
        }
    }

    #[test]
    fn what_brings_nothing_never_reaches_zero() {
        assert_eq!(needed(-100, 0, 3), None);
        assert_eq!(needed(-100, -5, 3), None);
        assert_eq!(needed(-100, 100, 3), Some((3, 33)));
    }
}
