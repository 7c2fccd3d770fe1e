//! A week across facilities: the coach's seven days, and everyone who has a lesson, is in town or was
//! offered days.

use chrono::Datelike;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::Around;
use super::{OfferedOn, PersonDay, Week, WeekRow, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::StudentId;
use crate::kinds::text::folded;
use crate::kinds::{Day, Span};
use crate::offers::{self, Offer};
use crate::planning;
use crate::visits::{self, Stage, Visit, Which};

/// Which week.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AskWeek {
    /// Any day of it; left out for today.
    pub day: Option<Day>,
}

/// Someone in the week.
struct Person {
    student: StudentId,
    name: String,
    /// Times that were offered and are no lesson at that time.
    offered: Vec<(Day, OfferedOn)>,
}

/// The week that holds a day.
///
/// # Errors
/// `Storage`.
pub fn week(db: &Reading<'_>, ask: AskWeek) -> Result<Week> {
    let day = ask.day.unwrap_or_else(|| db.today());
    let first = day.plus(-i64::from(day.date().weekday().num_days_from_monday()));
    let days = Span { first, last: first.plus(6) };
    let around = Around::read(db, days)?;
    let people = people(db, &around)?;
    let mut rows = Vec::new();
    for person in &people {
        rows.push(row(db, &around, person)?);
    }
    let spans = || around.visits.iter().filter_map(|visit| visit.days);
    let before = spans().any(|span| span.first < days.first).then(|| days.first.plus(-1));
    let after = spans().any(|span| span.last > days.last).then(|| days.last.plus(1));
    let mut later = store::lessons_to_come(db, days.last.max(db.today().plus(-1)))?;
    later.retain(|one| people.iter().all(|person| person.student != one.student));
    Ok(Week {
        days,
        today: db.today(),
        zones: around.zones(),
        coach: around.each_day().map(|day| around.coach(day)).collect(),
        people: rows,
        trips: trips(db, &around)?,
        before: match before {
            Some(day) => Some(day),
            None => store::last_before(db, days.first)?,
        },
        after: match after {
            Some(day) => Some(day),
            None => store::first_after(db, days.last)?,
        },
        later,
    })
}

/// Everyone in the week, by name.
fn people(db: &Reading<'_>, around: &Around) -> Result<Vec<Person>> {
    let mut people: Vec<Person> = Vec::new();
    let mut add = |student: StudentId, name: &str, offered: Option<(Day, OfferedOn)>| match people
        .iter_mut()
        .find(|person| person.student == student)
    {
        Some(known) => known.offered.extend(offered),
        None => {
            let offered = offered.into_iter().collect();
            people.push(Person { student, name: name.to_owned(), offered });
        }
    };
    for visit in &around.visits {
        add(visit.student, &visit.name, None);
    }
    for attending in around.lessons.iter().flat_map(|held| &held.lesson.students) {
        add(attending.student, &attending.name, None);
    }
    for offer in offers::waiting(db)? {
        let gone = gone(around, &offer);
        if gone.is_empty() {
            continue;
        }
        let visit = visits::show(db, Which { visit: offer.visit })?;
        for (day, offered) in gone {
            add(visit.student, &visit.name, Some((day, offered)));
        }
    }
    people.sort_by_key(|person| (folded(&person.name), person.student));
    Ok(people)
}

/// What an offer names on these days that is no lesson at that time any more.
fn gone(around: &Around, offer: &Offer) -> Vec<(Day, OfferedOn)> {
    let stands = |o: &&offers::OfferedLesson| {
        around.lessons.iter().any(|held| {
            let l = &held.lesson;
            l.id == o.lesson && (l.day, l.starts) == (o.day, o.starts) && l.stands()
        })
    };
    let lessons = offer.lessons.iter().filter(|o| around.days.holds(o.day) && !stands(o));
    lessons
        .map(|o| {
            let (starts, ends, place) = (o.starts, o.ends, o.place.clone());
            (o.day, OfferedOn { visit: offer.visit, starts, ends, place })
        })
        .collect()
}

fn row(db: &Reading<'_>, around: &Around, person: &Person) -> Result<WeekRow> {
    let days: Vec<PersonDay> = around.each_day().map(|day| cell(around, person, day)).collect();
    let empty = days.iter().flat_map(|day| &day.lessons).all(|l| !l.state.takes_place());
    let next = if empty { store::next_lesson(db, person.student, around.days.last)? } else { None };
    Ok(WeekRow { student: person.student, name: person.name.clone(), days, next })
}

fn cell(around: &Around, person: &Person, day: Day) -> PersonDay {
    let visit = around.in_town(day).find(|visit| visit.student == person.student);
    let of = Some(person.student);
    let lessons = around.on(day).filter(|held| {
        held.lesson.students.iter().any(|attending| attending.student == person.student)
    });
    let offered = person.offered.iter().filter(|(on, _)| *on == day);
    PersonDay {
        day,
        visit: visit.map(|visit| visit.id),
        place: visit.map(|visit| visit.place.clone()).unwrap_or_default(),
        days: visit.and_then(|visit| visit.days),
        lessons: lessons.filter_map(|held| around.lesson(held, of)).collect(),
        offered: offered.map(|(_, offered)| offered.clone()).collect(),
    }
}

/// The runs of days on which visits overlap, those that go on beyond the week followed there. A run
/// that is longer than one plan is only followed to the week's ends.
fn trips(db: &Reading<'_>, around: &Around) -> Result<Vec<Span>> {
    let mut trips: Vec<Span> = Vec::new();
    for visit in &around.visits {
        let Some(days) = visit.days else { continue };
        if trips.iter().any(|trip| trip.holds(days.first) && trip.holds(days.last)) {
            continue;
        }
        let whole = overlapping(db, days)?;
        trips.push(whole.unwrap_or(Span {
            first: days.first.max(around.days.first),
            last: days.last.min(around.days.last),
        }));
    }
    trips.sort_by_key(|trip| (trip.first, trip.last));
    let mut joined: Vec<Span> = Vec::new();
    for trip in trips {
        match joined.last_mut().filter(|last| trip.first <= last.last) {
            Some(last) => last.last = last.last.max(trip.last),
            None => joined.push(trip),
        }
    }
    Ok(joined)
}

/// The run of days of all visits that overlap these, or overlap one that does; `None` when one plan
/// has no room for it.
fn overlapping(db: &Reading<'_>, days: Span) -> Result<Option<Span>> {
    let mut run = days;
    loop {
        if run.days() > planning::MOST_DAYS {
            return Ok(None);
        }
        let stands = |visit: &Visit| visit.stage != Stage::CalledOff;
        let spans = visits::around(db, run)?.into_iter().filter(stands).filter_map(|v| v.days);
        let wider = spans.fold(run, |run, span| Span {
            first: run.first.min(span.first),
            last: run.last.max(span.last),
        });
        if wider == run {
            return Ok(Some(run));
        }
        run = wider;
    }
}
