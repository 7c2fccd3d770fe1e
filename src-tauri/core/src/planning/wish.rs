//! What the student of a visit wishes for.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::gather::{gone, to_come};
use super::{SharedLessons, VisitWish, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::Time;
use crate::kinds::ids::VisitId;
use crate::kinds::text::joined;
use crate::visits::{self, Stage, Visit, Which};

/// The most rows of shared lessons.
const ROWS: usize = 10;

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
    /// What became impossible of it since it was written down, a sentence each.
    pub against: Vec<String>,
    /// The visits whose students could share lessons: those whose days meet these, and those that
    /// were chosen.
    pub may_share: Vec<MayShare>,
}

/// A visit whose student could share lessons.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MayShare {
    /// The visit.
    pub visit: VisitId,
    /// The student's name.
    pub name: String,
    /// Its days, in words.
    pub when: String,
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
    let read = read(db, &visit, set.wish)?;
    let one_day = visit.days.is_some_and(|days| days.first == days.last);
    let times = Time::parse(&read.arrives).zip(Time::parse(&read.leaves));
    if let Some((arrives, leaves)) = times.filter(|(arrives, leaves)| one_day && leaves <= arrives)
    {
        let words = format!("They would leave at {leaves}, before they arrive at {arrives}.");
        return Err(Error::field("leaves", "end_before_start", words));
    }
    store::write_wish(db, set.visit, &read)?;
    db.label(format!("What {} wishes for written down", visit.name));
    of(db, &visit)
}

/// Takes a visit's wish away.
///
/// # Errors
/// `NotFound`.
pub fn clear_wish(db: &Writing<'_>, which: Which) -> Result<WishOf> {
    let visit = visits::show(db, which)?;
    store::clear_wish(db, which.visit)?;
    db.label(format!("What {} wishes for taken away", visit.name));
    of(db, &visit)
}

/// What the student of a visit wishes for.
///
/// # Errors
/// `NotFound`.
pub fn wish(db: &Reading<'_>, which: Which) -> Result<WishOf> {
    of(db, &visits::show(db, which)?)
}

fn of(db: &Reading<'_>, visit: &Visit) -> Result<WishOf> {
    let wish = store::wish(db, visit.id)?;
    let mut words = wish.as_ref().map(words).unwrap_or_default();
    let mut against = Vec::new();
    let mut may = others(db, visit)?;
    for row in wish.iter().flat_map(|wish| &wish.shared) {
        let mut names = Vec::new();
        for with in &row.with {
            let other = visits::show(db, Which { visit: *with })?;
            if !to_come(&other) || other.days.is_none() {
                against.push(gone(&other));
            } else if !meet(visit, &other) {
                against.push(apart(visit, &other));
            }
            names.push(other.name.clone());
            if may.iter().all(|may| may.id != other.id) {
                may.push(other);
            }
        }
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        words.push_str(&format!(", {} of them shared with {}", row.lessons, joined(&names)));
    }
    let may_share = may.into_iter().map(|other| MayShare {
        visit: other.id,
        when: other.when(),
        name: other.name,
    });
    Ok(WishOf { may_share: may_share.collect(), wish, words, against })
}

/// The visits whose days meet those of another.
fn others(db: &Reading<'_>, visit: &Visit) -> Result<Vec<Visit>> {
    let Some(days) = visit.days else { return Ok(Vec::new()) };
    let mut others = visits::around(db, days)?;
    others.retain(|other| to_come(other) && other.student != visit.student);
    Ok(others)
}

fn meet(a: &Visit, b: &Visit) -> bool {
    a.days.zip(b.days).is_some_and(|(a, b)| a.first <= b.last && b.first <= a.last)
}

fn apart(visit: &Visit, other: &Visit) -> String {
    format!("{} and {} are there on no common day.", visit.name, other.name)
}

/// The shared lessons of a wish as they can be stored.
fn read_shared(
    db: &Reading<'_>,
    p: &mut Problems,
    visit: &Visit,
    (lessons, shared): (i64, Vec<SharedLessons>),
) -> Result<Vec<SharedLessons>> {
    if shared.len() > ROWS {
        let words = format!("These are {} rows; there is room for {ROWS}.", shared.len());
        return Err(Error::field("shared", "too_many", &words));
    }
    let may = others(db, visit)?;
    let mut read: Vec<SharedLessons> = Vec::new();
    let mut so_far = 0;
    for (n, row) in shared.into_iter().enumerate() {
        let field = format!("shared[{n}].lessons");
        let many = p.within_bounds(&field, row.lessons, 1, 40, "How many they share");
        so_far += many;
        if many == row.lessons && so_far > lessons {
            let words =
                format!("With these {so_far} would be shared, of {lessons} lessons in all.");
            p.add(&field, "too_many", words);
        }
        let at = format!("shared[{n}].with");
        let mut with: Vec<VisitId> = Vec::new();
        for other in row.with {
            if !with.contains(&other) {
                with.push(other);
            }
        }
        if with.is_empty() {
            p.add(&at, "empty", "Choose who shares them.");
        }
        for other in &with {
            if may.iter().all(|may| may.id != *other) {
                let words = if visit.days.is_none() {
                    "This visit has no days yet: nobody can share its lessons.".to_owned()
                } else {
                    let other = visits::show(db, Which { visit: *other })?;
                    if other.student == visit.student {
                        "Someone else shares them.".to_owned()
                    } else if to_come(&other) && other.days.is_some() {
                        apart(visit, &other)
                    } else {
                        gone(&other)
                    }
                };
                p.add(&at, "apart", words);
            }
        }
        if read.iter().any(|above| same(&above.with, &with)) {
            p.add(&at, "taken", "They stand above already.");
        }
        // Written down at both visits, they would be planned twice.
        for other in &with {
            let theirs = store::wish(db, *other)?.map(|wish| wish.shared).unwrap_or_default();
            let mut everyone = with.clone();
            everyone.push(visit.id);
            let all = |row: &SharedLessons| [row.with.as_slice(), &[*other]].concat();
            if theirs.iter().any(|row| same(&all(row), &everyone)) {
                let name = visits::show(db, Which { visit: *other })?.name;
                let words = format!("The wish of {name} says so already; once is enough.");
                p.add(&at, "taken", words);
            }
        }
        read.push(SharedLessons { lessons: many, with });
    }
    Ok(read)
}

/// Whether these are the same visits, in whatever order.
fn same(a: &[VisitId], b: &[VisitId]) -> bool {
    a.len() == b.len() && a.iter().all(|visit| b.contains(visit))
}

/// The wish as it can be stored.
fn read(db: &Reading<'_>, visit: &Visit, w: VisitWish) -> Result<VisitWish> {
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
        shared: Vec::new(),
    };
    let shared = read_shared(db, &mut p, visit, (read.lessons, w.shared))?;
    let read = VisitWish { shared, ..read };
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
