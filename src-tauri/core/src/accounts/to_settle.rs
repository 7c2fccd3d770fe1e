//! Lessons that are over and not settled, each with how it would be.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{SettledBy, store};
use crate::app::Reading;
use crate::error::{Error, Problems, Result};
use crate::facilities::{self, AskTerms};
use crate::kinds::ids::{LessonId, PackageId, StudentId};
use crate::kinds::zones::{self, Zone};
use crate::kinds::{Currency, Day};
use crate::lessons::{self, Lesson, LessonState};
use crate::money::{Fraction, split};
use crate::packages;
use crate::payers;
use crate::prices;
use crate::students;
use crate::terms::{self, Applied, EndedBy, MoneyTerms};

/// The most lessons at once.
const MOST: usize = 100;

/// A lesson of a student, and what is known of how it ended.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskSettle {
    /// The lesson.
    pub lesson: LessonId,
    /// Whose.
    pub student: StudentId,
    /// Who called it off or broke it off; left out while not said.
    #[serde(default)]
    pub because: Option<EndedBy>,
    /// When it was told, on the facility\u{2019}s clock, as YYYY-MM-DDTHH:MM; empty while not said.
    #[serde(default)]
    pub told: String,
}

/// How a lesson would be settled.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SettleProposal {
    /// How; `None` while something has to be said first.
    pub how: Option<SettledBy>,
    /// With which package.
    pub package: Option<PackageId>,
    /// Its name.
    pub package_words: String,
    /// What is charged, a decimal; empty where nothing is, or it is not known.
    pub amount: String,
    /// The currency.
    pub currency: String,
    /// What the court cost, this student\u{2019}s part of it; empty where nothing is passed on.
    pub court: String,
    /// The currency of the court.
    pub court_currency: String,
    /// Which rule of the terms applied, in words; empty for a lesson that was given.
    pub rule: String,
    /// When the next boundary was.
    pub next: String,
    /// What has to be said first, a sentence each.
    pub asks: Vec<String>,
}

/// A lesson that is not settled.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ToSettle {
    /// The lesson.
    pub lesson: LessonId,
    /// Whose.
    pub student: StudentId,
    /// The name.
    pub name: String,
    /// Who would pay.
    pub paid_by: String,
    /// The day.
    pub day: Day,
    /// What it was, as in "09:00, 60 minutes, Harbour Hall, given".
    pub words: String,
    /// How it ended.
    pub state: LessonState,
    /// Why it did not take place.
    pub reason: String,
    /// How it would be settled.
    pub proposal: SettleProposal,
}

/// Lessons that are over and not settled, the oldest first, as many as a screen shows; from the day on
/// that the terms say.
///
/// # Errors
/// `Storage`.
pub fn to_settle(db: &Reading<'_>) -> Result<Vec<ToSettle>> {
    let mut all = Vec::new();
    let mut taken: std::collections::BTreeMap<PackageId, i64> = std::collections::BTreeMap::new();
    for (lesson, student) in store::unsettled(db, MOST)? {
        let ask = AskSettle { lesson, student, because: None, told: String::new() };
        let one = of(db, &ask, &mut taken)?;
        all.push(one);
    }
    Ok(all)
}

/// How one lesson would be settled, with what was said of how it ended.
///
/// # Errors
/// `NotFound`; `Refused` when what was told is no time.
pub fn propose(db: &Reading<'_>, ask: AskSettle) -> Result<ToSettle> {
    of(db, &ask, &mut std::collections::BTreeMap::new())
}

fn of(
    db: &Reading<'_>,
    ask: &AskSettle,
    taken: &mut std::collections::BTreeMap<PackageId, i64>,
) -> Result<ToSettle> {
    let lesson = lessons::show(db, lessons::Which { lesson: ask.lesson })?;
    let place = lesson.students.iter().position(|attending| attending.student == ask.student);
    let Some(place) = place else {
        return Err(Error::NotFound { what: "student in the lesson", id: ask.student.to_string() });
    };
    let terms = terms::show(db)?;
    let mut asks = Vec::new();
    let applied = applied(&lesson, ask, &terms, &mut asks)?;
    let rule = applied.as_ref().map(|a| a.rule.clone()).unwrap_or_default();
    let next = applied.as_ref().map(|a| a.next.clone()).unwrap_or_default();
    // A given lesson counts whole; one that was not by what the terms say.
    let percent = match (&applied, lesson.state) {
        (_, LessonState::Given) => Some(100),
        (Some(applied), _) => applied.percent,
        (None, _) => None,
    };
    if percent.is_none() && asks.is_empty() {
        asks.push("Your terms do not say what is charged: choose, with a reason.".to_owned());
    }
    let fee =
        prices::of_lesson(db, lesson.day, lesson.facility, lesson.minutes, lesson.students.len())?;
    let mine = fee.and_then(|(currency, parts)| Some((currency, *parts.get(place)?)));
    let taught = matches!(lesson.state, LessonState::Given | LessonState::CutShort);
    let package = match percent {
        Some(100) if taught || terms.lesson_lost => package_for(db, ask.student, &lesson, taken)?,
        _ => None,
    };
    let court = court_part(db, &lesson, place, &terms)?;
    let how = match percent {
        None => None,
        Some(0) => Some(SettledBy::Free),
        Some(_) if package.is_some() => Some(SettledBy::Package),
        Some(_) => {
            if mine.is_none() {
                asks.push(format!(
                    "No price is known for a lesson of {} minutes here: type what it costs.",
                    lesson.minutes
                ));
            }
            Some(SettledBy::Invoice).filter(|_| mine.is_some())
        }
    };
    let charged = match (how, mine, percent) {
        (Some(SettledBy::Invoice), Some((currency, amount)), Some(percent)) => {
            percent_of(amount, percent).map(|amount| (currency, amount))
        }
        _ => None,
    };
    let pays = payers::of_student(db, students::Which { student: ask.student })?;
    let name = lesson.students.get(place).map(|s| s.name.clone()).unwrap_or_default();
    let package_words = match package {
        Some(package) => packages::show(db, packages::WhichPackage { package })?.package.words,
        None => String::new(),
    };
    Ok(ToSettle {
        lesson: lesson.id,
        student: ask.student,
        name,
        paid_by: pays.payer.map_or(pays.proposed.name, |payer| payer.form.name),
        day: lesson.day,
        words: words(&lesson),
        state: lesson.state,
        reason: lesson.reason.clone(),
        proposal: SettleProposal {
            how: how.filter(|_| asks.is_empty()),
            package,
            package_words,
            amount: charged.map(|(c, amount)| c.plain(amount)).unwrap_or_default(),
            currency: mine.map(|(c, _)| c.code().to_owned()).unwrap_or_default(),
            court: court.map(|(c, part)| c.plain(part)).unwrap_or_default(),
            court_currency: court.map(|(c, _)| c.code().to_owned()).unwrap_or_default(),
            rule,
            next,
            asks,
        },
    })
}

/// "09:00, 60 minutes, Harbour Hall, given".
fn words(lesson: &Lesson) -> String {
    format!(
        "{}, {} minutes, {}, {}",
        lesson.starts,
        lesson.minutes,
        lesson.place,
        lesson.state.words()
    )
}

pub(super) fn percent_of(amount: i64, percent: i64) -> Option<i64> {
    let part = Fraction::whole(percent).by(Fraction::whole(100))?;
    Fraction::whole(amount).times(part)?.rounded()
}

/// What the terms say of a lesson that was not given whole; `None` for one that was, or while
/// something has to be said first.
fn applied(
    lesson: &Lesson,
    ask: &AskSettle,
    terms: &MoneyTerms,
    asks: &mut Vec<String>,
) -> Result<Option<Applied>> {
    match lesson.state {
        LessonState::Planned => {
            asks.push("It is still planned.".to_owned());
            Ok(None)
        }
        LessonState::Given => Ok(None),
        LessonState::Missed => Ok(Some(terms::untaught(terms, EndedBy::Student, None))),
        LessonState::CutShort => match ask.because {
            None => {
                asks.push("Who broke it off?".to_owned());
                Ok(None)
            }
            Some(because) => {
                let given = lesson.given.unwrap_or_default();
                Ok(Some(terms::cut_short(terms, because, given, lesson.minutes)))
            }
        },
        LessonState::CalledOff => match (ask.because, ask.told.trim()) {
            (None, _) => {
                asks.push("Who called it off?".to_owned());
                Ok(None)
            }
            (Some(EndedBy::Student), "") => {
                asks.push("When did they tell you?".to_owned());
                Ok(None)
            }
            (Some(because), told) => {
                let before =
                    if because == EndedBy::Student { Some(before(lesson, told)?) } else { None };
                Ok(Some(terms::untaught(
                    terms,
                    because,
                    before.or(Some(chrono::TimeDelta::zero())),
                )))
            }
        },
    }
}

/// How long before its beginning something was told, through every change of the clock in between.
fn before(lesson: &Lesson, told: &str) -> Result<chrono::TimeDelta> {
    let mut p = Problems::new();
    let told = chrono::NaiveDateTime::parse_from_str(told, "%Y-%m-%dT%H:%M").ok();
    if told.is_none() {
        p.add("told", "no_time", "A day and a time, as in 2026-03-12T18:30.");
    }
    p.done()?;
    let zone = Zone::parse(&lesson.zone)
        .map_err(|_| Error::Fault(format!("{} is no zone", lesson.zone)))?;
    let second = lesson.which == lessons::WhichHour::Second;
    let at = |local, second| {
        zones::resolve(local, &zone)
            .map(|moment| moment.instant(second))
            .map_err(|_| Error::field("told", "no_time", "This day is out of all bounds."))
    };
    let starts = at(lesson.day.date().and_time(lesson.starts.time()), second)?;
    Ok(starts - at(told.unwrap_or_default(), false)?)
}

/// The package that pays for a lesson, past those that lessons before it in the list take.
fn package_for(
    db: &Reading<'_>,
    student: StudentId,
    lesson: &Lesson,
    taken: &mut std::collections::BTreeMap<PackageId, i64>,
) -> Result<Option<PackageId>> {
    let ask = packages::ListPackages { student: Some(student) };
    for package in packages::list(db, ask)? {
        let fits = package.pays_for(lesson.day, i64::from(lesson.minutes));
        let used = taken.entry(package.id).or_default();
        if fits && package.left > *used {
            *used += 1;
            return Ok(Some(package.id));
        }
    }
    Ok(None)
}

/// What the court cost by the place\u{2019}s rules, and of it the part of one who shared the lesson.
fn court_part(
    db: &Reading<'_>,
    lesson: &Lesson,
    place: usize,
    terms: &MoneyTerms,
) -> Result<Option<(Currency, i64)>> {
    if !terms.pass_courts || !lesson.state.takes_place() {
        return Ok(None);
    }
    let ask = AskTerms {
        facility: lesson.facility,
        court: lesson.court,
        day: lesson.day,
        starts: lesson.starts,
        minutes: lesson.minutes,
    };
    Ok(facilities::court_cost(db, ask)?.and_then(|(currency, amount)| {
        let parts = split(amount, &vec![1; lesson.students.len()])?;
        parts.get(place).filter(|part| **part > 0).map(|part| (currency, *part))
    }))
}
