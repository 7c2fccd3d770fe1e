//! A trip: a run of days with the facilities in their order, who is in town when, the lessons, the
//! ways, and what could still be sold.

use std::collections::HashMap;
use std::collections::hash_map::Entry;

use chrono::{DateTime, FixedOffset};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::around::Around;
use super::free::{self, FreeAt};
use super::{PlaceOn, ShortestFrom, Stay, TravelTo, Trip, TripDay, TripPerson};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::facilities::{self, Facility, Rules};
use crate::kinds::ids::FacilityId;
use crate::kinds::{Day, Span};
use crate::offers;
use crate::planning;
use crate::visits::{Visit, Which};

/// Which days.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskTrip {
    /// The first.
    pub first: Day,
    /// The last.
    pub last: Day,
}

/// The most days of one trip.
const MOST_DAYS: i64 = 62;
/// The shortest lesson where nothing says, in minutes.
const USUAL: u32 = 60;

/// What a trip's days hold.
///
/// # Errors
/// `Refused` when the last day is before the first, or there are too many.
pub fn trip(db: &Reading<'_>, ask: AskTrip) -> Result<Trip> {
    let days = Span { first: ask.first, last: ask.last };
    if days.last < days.first {
        return Err(Error::field("last", "end_before_start", "The last day is before the first."));
    }
    if days.days() > MOST_DAYS {
        let words = format!("One trip has room for {MOST_DAYS} days; these are {}.", days.days());
        return Err(Error::field("last", "too_long", &words));
    }
    let around = Around::read(db, days)?;
    let mut people = Vec::new();
    for visit in &around.visits {
        people.extend(person(db, &around, visit)?);
    }
    let (shortest, shortest_from) = shortest(db, &around, &people)?;
    let people: Vec<TripPerson> = people.into_iter().map(|(person, _)| person).collect();
    let mut trip = Trip {
        days,
        today: db.today(),
        zones: around.zones(),
        stays: Vec::new(),
        on: Vec::new(),
        lessons: 0,
        minutes: 0,
        free_minutes: 0,
        shortest,
        shortest_from,
        can_plan: days.days() <= planning::MOST_DAYS && days.last >= db.today(),
        people,
    };
    let mut rules = HashMap::new();
    for facility in around.each_day().flat_map(|day| around.places(day)) {
        if let Entry::Vacant(new) = rules.entry(facility.id) {
            let which = facilities::Which { facility: facility.id };
            new.insert(facilities::rules(db, which)?);
        }
    }
    let now = db.now().utc().fixed_offset();
    let mut last: Option<(&Facility, Day)> = None;
    for day in around.each_day() {
        let places = around.places(day);
        for facility in &places {
            stay(&mut trip.stays, facility, day);
        }
        let mut on = a_day(&around, &rules, day, shortest, now);
        on.travel = last.zip(places.first()).and_then(|((from, since), to)| {
            (from.id != to.id).then(|| TravelTo {
                from: from.place.name.clone(),
                to: to.place.name.clone(),
                since,
                minutes: around.way(from.id, to.id),
            })
        });
        last = ends_at(&around, &places, day).map(|facility| (facility, day)).or(last);
        trip.lessons += on.coach.lessons;
        trip.minutes += on.coach.minutes;
        trip.free_minutes += on.free_minutes;
        trip.on.push(on);
    }
    Ok(trip)
}

/// Where a day ends: at the facility of its last lesson, or the only one where someone is.
fn ends_at<'a>(around: &'a Around, places: &[&'a Facility], day: Day) -> Option<&'a Facility> {
    let last = around.on(day).filter(|held| held.lesson.stands()).last();
    let last = last.and_then(|held| places.iter().find(|f| f.id == held.lesson.facility));
    last.or(places.first()).copied()
}

/// Adds a day to the stay at a facility, or begins one.
fn stay(stays: &mut Vec<Stay>, facility: &Facility, day: Day) {
    let known = stays.iter_mut().find(|s| s.facility == facility.id && s.days.last.plus(1) >= day);
    match known {
        Some(stay) => stay.days.last = day,
        None => stays.push(Stay {
            facility: facility.id,
            place: facility.place.name.clone(),
            town: facility.place.town.clone(),
            zone: facility.place.zone.clone(),
            days: Span { first: day, last: day },
        }),
    }
}

fn a_day(
    around: &Around,
    rules: &HashMap<FacilityId, Rules>,
    day: Day,
    shortest: u32,
    now: DateTime<FixedOffset>,
) -> TripDay {
    let coach = around.coach(day);
    let left = coach.limit.map(|limit| limit.saturating_sub(coach.minutes));
    let places = around.places(day);
    let at: Vec<FreeAt> = places
        .iter()
        .filter_map(|f| Some(free::at(around, f, rules.get(&f.id)?, day, shortest, now)))
        .collect();
    let free_minutes = free::sum(&at, left);
    let nothing = free_minutes == 0;
    let places = places.iter().zip(at).map(|(f, at)| PlaceOn {
        facility: f.id,
        place: f.place.name.clone(),
        town: f.place.town.clone(),
        zone: f.place.zone.clone(),
        open: at.open,
        free: at.free,
    });
    TripDay {
        places: places.collect(),
        travel: None,
        lessons: around.on(day).filter_map(|held| around.lesson(held, None)).collect(),
        free_minutes,
        left,
        nothing: nothing.then(|| free::why_nothing(around, day, left, shortest, now)),
        coach,
    }
}

/// Someone in town, with the length of the lessons wished for.
fn person(
    db: &Reading<'_>,
    around: &Around,
    visit: &Visit,
) -> Result<Option<(TripPerson, Option<i64>)>> {
    let Some(days) = visit.days else { return Ok(None) };
    let lessons = || {
        around.lessons.iter().filter(|held| {
            held.lesson.state.takes_place()
                && held.lesson.students.iter().any(|s| s.visit == visit.id)
        })
    };
    let wish = planning::wish(db, Which { visit: visit.id })?.wish;
    let person = TripPerson {
        visit: visit.id,
        student: visit.student,
        name: visit.name.clone(),
        place: visit.place.clone(),
        days,
        stage: visit.stage,
        lessons: u32::try_from(lessons().count()).unwrap_or(0),
        minutes: lessons().map(|held| held.minutes()).sum(),
        wished: wish.as_ref().and_then(|wish| u32::try_from(wish.lessons).ok()),
    };
    Ok(Some((person, wish.map(|wish| wish.minutes))))
}

/// The length of the shortest lesson: of those that have a rate, else of those that stand or are
/// wished for on these days, else an hour.
fn shortest(
    db: &Reading<'_>,
    around: &Around,
    people: &[(TripPerson, Option<i64>)],
) -> Result<(u32, ShortestFrom)> {
    let small = |minutes: i64| u32::try_from(minutes).ok();
    let rates = offers::terms(db)?.fees.iter().filter_map(|fee| small(fee.minutes)).min();
    if let Some(minutes) = rates {
        return Ok((minutes, ShortestFrom::Rates));
    }
    let wished = people.iter().filter_map(|(_, minutes)| minutes.and_then(small));
    let standing = around.lessons.iter().filter(|held| held.lesson.stands());
    let lessons = wished.chain(standing.map(|held| held.lesson.minutes)).min();
    Ok(lessons.map_or((USUAL, ShortestFrom::Usual), |minutes| (minutes, ShortestFrom::Lessons)))
}
