//! The load of a visit: minutes on court times the student's own rating, day by day (Foster et al.
//! 2001, Journal of Strength and Conditioning Research 15:109–115), and the court time beside what
//! is usual for the student. It compares; it predicts no injury and clears nobody.

use schemars::JsonSchema;
use serde::Serialize;

use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::LessonId;
use crate::kinds::text::counted;
use crate::kinds::{Day, Time};
use crate::lessons::{self, LessonState, ListLessons};
use crate::load::{self, Load};
use crate::students;
use crate::visits::{self, Which};

/// A lesson that was taught.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Session {
    /// Which one.
    pub lesson: LessonId,
    /// The day.
    pub day: Day,
    /// When it began.
    pub starts: Time,
    /// Minutes taught.
    pub minutes: u32,
    /// The student's own rating; `None` while not told.
    pub effort: Option<u8>,
    /// Minutes × effort; `None` without a rating.
    pub load: Option<u32>,
}

/// A day of the visit.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct LoadDay {
    /// The day.
    pub day: Day,
    /// Minutes taught on it.
    pub minutes: u32,
    /// The load of its rated lessons.
    pub load: u32,
    /// Lessons of the day that have no rating.
    pub unrated: u32,
}

/// Court time beside what is usual.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Usual {
    /// Minutes in a usual week, as the student told.
    pub week: i64,
    /// The part of it that falls on as many days as are counted here, in minutes.
    pub share: f64,
    /// Court time here ÷ that share; `None` where nothing is usual.
    pub times: Option<f64>,
}

/// The load of a visit.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct VisitLoad {
    /// Every day of the visit so far, days of rest among them.
    pub days: Vec<LoadDay>,
    /// The lessons taught, in time.
    pub sessions: Vec<Session>,
    /// Minutes taught.
    pub minutes: u32,
    /// The load of what was rated.
    pub rated: u32,
    /// Total, mean, spread, monotony and strain; `None` while a lesson has no rating, because a
    /// missing rating would count as rest.
    pub load: Option<Load>,
    /// Beside the usual week; `None` where that is not known.
    pub usual: Option<Usual>,
    /// What is to be said about it, a sentence or two each.
    pub words: Vec<String>,
}

/// What stands beside every comparison.
const CAUTION: &str = "More court time than usual is a reason to ask how the body feels; it says nothing about \
    injury and clears nobody. Pain or doubt is for a physician or a physiotherapist.";

/// Reads the load of a visit up to today.
///
/// # Errors
/// `NotFound`.
pub fn of_visit(db: &Reading<'_>, which: Which) -> Result<VisitLoad> {
    let visit = visits::show(db, which)?;
    let student = students::show(db, students::Which { student: visit.student })?;
    let ask = ListLessons { visit: Some(visit.id), ..ListLessons::default() };
    let sessions: Vec<Session> = lessons::list(db, ask)?
        .iter()
        .filter(|l| matches!(l.state, LessonState::Given | LessonState::CutShort))
        .map(|l| {
            let minutes = l.given.unwrap_or(l.minutes);
            let effort = l.students.iter().find(|s| s.visit == visit.id).and_then(|s| s.effort);
            Session {
                lesson: l.id,
                day: l.day,
                starts: l.starts,
                minutes,
                effort,
                load: effort.and_then(|effort| load::session(minutes, effort)),
            }
        })
        .collect();
    // Days still to come are no days of rest.
    let through = sessions.iter().map(|s| s.day).max().map_or(db.today(), |l| l.max(db.today()));
    let days: Vec<LoadDay> = visit.days.map_or_else(Vec::new, |span| {
        (0..span.days())
            .map(|n| span.first.plus(n))
            .filter(|day| *day <= through)
            .map(|day| of_day(day, &sessions))
            .collect()
    });
    Ok(reading(days, sessions, student.profile.usual_minutes))
}

fn of_day(day: Day, sessions: &[Session]) -> LoadDay {
    let here = || sessions.iter().filter(|s| s.day == day);
    LoadDay {
        day,
        minutes: here().map(|s| s.minutes).sum(),
        load: here().filter_map(|s| s.load).sum(),
        unrated: u32::try_from(here().filter(|s| s.effort.is_none()).count()).unwrap_or(u32::MAX),
    }
}

fn reading(days: Vec<LoadDay>, sessions: Vec<Session>, week: Option<i64>) -> VisitLoad {
    let minutes: u32 = days.iter().map(|d| d.minutes).sum();
    let rated = days.iter().map(|d| d.load).sum();
    let complete = !sessions.is_empty() && sessions.iter().all(|s| s.effort.is_some());
    let each: Vec<f64> = days.iter().map(|d| f64::from(d.load)).collect();
    let load = complete.then(|| load::load(&each)).flatten();
    let usual = week.filter(|_| !days.is_empty()).map(|week| {
        let share = week as f64 * days.len() as f64 / 7.0;
        let times = (share > 0.0).then(|| f64::from(minutes) / share);
        Usual { week, share, times }
    });
    let words = said(&days, &sessions, minutes, load.as_ref(), usual.as_ref());
    VisitLoad { days, sessions, minutes, rated, load, usual, words }
}

fn said(
    days: &[LoadDay],
    sessions: &[Session],
    minutes: u32,
    load: Option<&Load>,
    usual: Option<&Usual>,
) -> Vec<String> {
    if sessions.is_empty() {
        return vec!["No lesson was taught at this visit yet.".to_owned()];
    }
    let mut words = Vec::new();
    let unrated: Vec<String> = sessions
        .iter()
        .filter(|s| s.effort.is_none())
        .map(|s| format!("{}, {}", s.day.words(), s.starts))
        .collect();
    if !unrated.is_empty() {
        words.push(format!(
            "No rating yet: {}. Until each lesson has one, the sum is of the others alone and no mean is taken.",
            unrated.join("; ")
        ));
    }
    if load.is_some_and(|l| l.monotony.is_none()) && days.len() > 1 {
        words.push("Every day was alike, so monotony and strain have no value.".to_owned());
    }
    let count = counted(i64::try_from(days.len()).unwrap_or(0), "day", "days");
    let here = f64::from(minutes);
    match usual {
        None => words.push(format!(
            "{} on court in {count}. What is usual for the student is not known: ask for the court hours of a \
             usual week and write them on the student\u{2019}s page.",
            hours(here)
        )),
        Some(Usual { times: None, .. }) => words.push(format!(
            "{} on court in {count}. The student told that no court time is usual, so there is nothing to \
             compare with. {CAUTION}",
            hours(here)
        )),
        Some(Usual { week, share, times: Some(times) }) => words.push(format!(
            "{} on court in {count}. Usual is {} a week, which makes {} in {count}: {times:.1} times as much here. \
             {CAUTION}",
            hours(here),
            hours(*week as f64),
            hours(*share),
        )),
    }
    words
}

/// "45 min", "3 h", "3 h 30 min", to the nearest minute.
fn hours(minutes: f64) -> String {
    let minutes = minutes.round();
    let (h, m) = ((minutes / 60.0).floor(), minutes % 60.0);
    match (h > 0.0, m > 0.0) {
        (false, _) => format!("{m} min"),
        (true, false) => format!("{h} h"),
        (true, true) => format!("{h} h {m} min"),
    }
}
