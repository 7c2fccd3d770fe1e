//! A year in figures: for each person and month how many visits and lessons there were, are agreed,
//! and are expected; and behind each figure what it counts.
//!
//! A visit counts in the month it begins in, one that is only expected in the month its span begins
//! in, a lesson in its own. A lesson that several share counts for each of them, and once in the
//! sums of everyone.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::StudentId;
use crate::kinds::{Day, Span};
use crate::lessons::{self, Lesson};
use crate::visits::{self, Visit};

/// Which year.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AskYear {
    /// The year; left out for this one.
    pub year: Option<i32>,
}

/// What a figure counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CountedWhat {
    /// Visits that were started.
    Held,
    /// Visits whose days are agreed and that were not started.
    Agreed,
    /// Visits that are only expected.
    Expected,
    /// Lessons given, those cut short among them.
    Given,
    /// Lessons to come.
    ToCome,
    /// Lessons missed.
    Missed,
}

crate::db::words! {
    CountedWhat {
        Held = "held", Agreed = "agreed", Expected = "expected",
        Given = "given", ToCome = "to_come", Missed = "missed",
    }
}

/// How many of each. What was called off is not counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Figures {
    /// Visits that were started.
    pub held: u32,
    /// Visits whose days are agreed and that were not started.
    pub agreed: u32,
    /// Visits that are only expected.
    pub expected: u32,
    /// Lessons given, those cut short among them.
    pub given: u32,
    /// Lessons to come.
    pub to_come: u32,
    /// Lessons missed.
    pub missed: u32,
}

impl Figures {
    pub(super) fn add(&mut self, what: CountedWhat, many: u32) {
        *match what {
            CountedWhat::Held => &mut self.held,
            CountedWhat::Agreed => &mut self.agreed,
            CountedWhat::Expected => &mut self.expected,
            CountedWhat::Given => &mut self.given,
            CountedWhat::ToCome => &mut self.to_come,
            CountedWhat::Missed => &mut self.missed,
        } += many;
    }
}

/// The figures of a month.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MonthFigures {
    /// 1 for January.
    pub month: u32,
    /// How many of each.
    pub figures: Figures,
}

/// A person's year.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct YearRow {
    /// The student.
    pub student: StudentId,
    /// The student's name.
    pub name: String,
    /// The months that have something to count.
    pub months: Vec<MonthFigures>,
    /// The whole year.
    pub total: Figures,
}

/// A year.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Year {
    /// Which.
    pub year: i32,
    /// Everyone who has something to count, by name.
    pub people: Vec<YearRow>,
    /// Everyone together: the months that have something to count, each lesson once.
    pub months: Vec<MonthFigures>,
    /// Everyone together, the whole year.
    pub total: Figures,
    /// The year before, where there is something in it or in an earlier one.
    pub before: Option<i32>,
    /// The year after, where there is something in it or in a later one.
    pub after: Option<i32>,
}

/// Which figure.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskCounted {
    /// The year.
    pub year: i32,
    /// 1 for January; left out for all.
    #[serde(default)]
    pub month: Option<u32>,
    /// Whose; left out for everyone's.
    #[serde(default)]
    pub student: Option<StudentId>,
    /// What is counted.
    pub what: CountedWhat,
}

/// What a figure counts.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct YearCounted {
    /// Whose, by name; empty for everyone's.
    pub name: String,
    /// The visits, where it counts visits.
    pub visits: Vec<Visit>,
    /// The lessons, where it counts lessons.
    pub lessons: Vec<Lesson>,
}

/// A year in figures.
///
/// # Errors
/// `Refused` when there is no such year.
pub fn year(db: &Reading<'_>, ask: AskYear) -> Result<Year> {
    let year = ask.year.unwrap_or_else(|| chrono::Datelike::year(&db.today().date()));
    let span = span_of(year, None)?;
    let (mut people, mut months, mut total): (Vec<YearRow>, Vec<MonthFigures>, Figures) =
        Default::default();
    for one in store::counts_by_person(db, span)? {
        // They come by name, so a person's figures follow each other.
        if people.last().is_none_or(|last| last.student != one.student) {
            people.push(YearRow {
                student: one.student,
                name: one.name,
                months: Vec::new(),
                total: Figures::default(),
            });
        }
        let Some(row) = people.last_mut() else { continue };
        row.total.add(one.what, one.many);
        add(&mut row.months, one.month, one.what, one.many);
    }
    for (month, what, many) in store::counts(db, span)? {
        total.add(what, many);
        add(&mut months, month, what, many);
    }
    let ends = store::ends(db)?;
    Ok(Year {
        year,
        people,
        months,
        total,
        before: ends.filter(|ends| ends.first < span.first).map(|_| year - 1),
        after: ends.filter(|ends| ends.last > span.last).map(|_| year + 1),
    })
}

fn add(months: &mut Vec<MonthFigures>, month: u32, what: CountedWhat, many: u32) {
    let at = months.partition_point(|known| known.month < month);
    if months.get(at).is_none_or(|known| known.month != month) {
        months.insert(at, MonthFigures { month, figures: Figures::default() });
    }
    months[at].figures.add(what, many);
}

/// What one of a year's figures counts.
///
/// # Errors
/// `Refused` when there is no such year or month; `NotFound`.
pub fn counted(db: &Reading<'_>, ask: AskCounted) -> Result<YearCounted> {
    let span = span_of(ask.year, ask.month)?;
    let name = match ask.student {
        Some(student) => {
            crate::students::show(db, crate::students::Which { student })?.profile.name
        }
        None => String::new(),
    };
    let mut counted = YearCounted { name, visits: Vec::new(), lessons: Vec::new() };
    for visit in store::visits_counted(db, span, ask.student, ask.what)? {
        counted.visits.push(visits::show(db, visits::Which { visit })?);
    }
    for lesson in store::lessons_counted(db, span, ask.student, ask.what)? {
        counted.lessons.push(lessons::show(db, lessons::Which { lesson })?);
    }
    Ok(counted)
}

/// The days of a year, or of a month of it.
fn span_of(year: i32, month: Option<u32>) -> Result<Span> {
    let first = Day::of(year, month.unwrap_or(1), 1);
    let next = match month {
        Some(month) if month < 12 => Day::of(year, month + 1, 1),
        _ => Day::of(year + 1, 1, 1),
    };
    // The last year that days have ends with the last day there is.
    let last = next.map(|next| next.plus(-1)).or_else(|| Day::of(year, 12, 31));
    let span = first.zip(last).map(|(first, last)| Span { first, last });
    span.ok_or_else(|| {
        let field = if month.is_some_and(|m| !(1..=12).contains(&m)) { "month" } else { "year" };
        Error::field(field, "no_such_year", "There is no such month: years are 1900 to 2199.")
    })
}
