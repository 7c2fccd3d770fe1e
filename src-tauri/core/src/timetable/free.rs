//! The hours of a day that could still be sold: the coach's own hours less what takes them, lessons
//! and ways, inside what is open, in stretches a lesson fits into.
//!
//! All is set against each other in minutes that pass after the facility's midnight, so that lessons
//! on another clock, and days on which the clocks change, take what they take.

use chrono::{DateTime, FixedOffset};

use super::around::Around;
use super::clock::{DAY, LocalDay};
use super::{FreeStretch, NothingFree};
use crate::facilities::{Facility, Rules, hours_on};
use crate::kinds::Day;
use crate::kinds::stretches::{Stretch, minutes_in, without};
use crate::kinds::zones::Zone;
use crate::own_time::{self, Meal};
use crate::planning::{Room, RoomOnCourt, room_for_lessons};

/// From when to when, as instants.
type Passing = (DateTime<FixedOffset>, DateTime<FixedOffset>);

/// What of a day at one facility could still be sold.
#[derive(Default)]
pub(super) struct FreeAt {
    /// When it is open.
    pub open: Vec<FreeStretch>,
    /// The free hours on its clock.
    pub free: Vec<FreeStretch>,
    /// The same as instants.
    pub passing: Vec<Passing>,
    /// Minutes that the facility's own limit leaves of them.
    pub most: u32,
}

/// What of a day could still be sold at a facility, in lessons of at least so many minutes.
pub(super) fn at(
    around: &Around,
    facility: &Facility,
    rules: &Rules,
    day: Day,
    shortest: u32,
    now: DateTime<FixedOffset>,
) -> FreeAt {
    let zone = Zone::parse(&facility.place.zone).ok();
    let Some(local) = zone.and_then(|zone| LocalDay::of(day, &zone)) else {
        return FreeAt::default();
    };
    let whole: Stretch = (0, local.minutes);
    let open = hours_on(&rules.hours, day).unwrap_or_else(|| vec![(0, DAY)]);
    let open: Vec<Stretch> = open.into_iter().map(|face| local.at_least(face)).collect();
    let said = |stretches: &[Stretch]| -> Vec<FreeStretch> {
        let one =
            |(from, to): &Stretch| FreeStretch { from: local.face(*from), to: local.face(*to) };
        stretches.iter().map(one).collect()
    };
    let mut busy = without(&[whole], &coach_hours(around, day, &local));
    // One that may move leaves room for it wherever one more lesson is given.
    let meal = own_time::allowed(&around.own, day).meal.filter(Meal::is_fixed);
    busy.extend(meal.map(|meal| local.at_most((meal.from, meal.to))));
    let taken = around.occupied(&facility.place.zone, day);
    busy.extend(taken.map(|taken| local.at_most((taken.from, taken.to))));
    busy.push((0, local.passed(now)));
    let mut room = Room {
        least: shortest.max(small(rules.shortest)),
        longest_run: limit(around.own.longest_run),
        longest_on_court: limit(rules.longest),
        ..Room::default()
    };
    let (mut here, mut taught) = (0, 0);
    let mut on_court = Vec::new();
    for held in around.all_near().filter(|held| held.lesson.stands()) {
        let lesson = (local.passed(held.begins), local.passed(held.ends));
        let way = around.way(held.lesson.facility, facility.id).unwrap_or(0);
        let way = chrono::Duration::minutes(i64::from(way));
        busy.push((local.passed(held.begins - way), local.passed(held.ends + way)));
        room.lessons.push(lesson);
        on_court.extend(held.lesson.court.map(|court| (court, lesson)));
        if held.lesson.day == day && held.lesson.state.takes_place() {
            taught += held.minutes();
            here += if held.lesson.facility == facility.id { held.minutes() } else { 0 };
        }
    }
    let left_here = limit(rules.day_limit).map(|most| most.saturating_sub(here));
    let left = around.limit().map(|most| most.saturating_sub(taught));
    room.left = left.into_iter().chain(left_here).min();
    room.busy = busy;
    let courts = facility.courts.iter().filter(|court| court.archived.is_none());
    let mut courts: Vec<_> = courts.map(|court| Some(court.id)).collect();
    if courts.is_empty() {
        // Which courts there are was not written down: it is taken to have one.
        courts.push(None);
    }
    for court in courts {
        let closed = rules.closed_on(court, day).into_iter().map(|(a, z, _)| local.at_most((a, z)));
        room.courts.push(RoomOnCourt {
            open: without(&open, &closed.collect::<Vec<_>>()),
            lessons: on_court
                .iter()
                .filter(|(on, _)| Some(*on) == court)
                .map(|(_, l)| *l)
                .collect(),
        });
    }
    let step = u32::try_from(rules.grid).ok().filter(|step| *step > 0).unwrap_or(STEP);
    let faces = local.faces();
    let starts = |passed: u32| faces.get(passed as usize).is_some_and(|face| face % step == 0);
    let free = room_for_lessons(&room, starts);
    FreeAt {
        open: said(&open),
        passing: free.iter().map(|(a, z)| (local.instant(*a), local.instant(*z))).collect(),
        most: minutes_in(&free).min(left_here.unwrap_or(u32::MAX)),
        free: said(&free),
    }
}

/// Where a facility's rules name no step, lessons begin on multiples of so many minutes.
const STEP: u32 = 5;

fn small(minutes: i64) -> u32 {
    u32::try_from(minutes).unwrap_or(0)
}

fn limit(minutes: i64) -> Option<u32> {
    u32::try_from(minutes).ok().filter(|minutes| *minutes > 0)
}

fn coach_hours(around: &Around, day: Day, local: &LocalDay) -> Vec<Stretch> {
    let open = own_time::allowed(&around.own, day).open;
    open.into_iter().map(|face| local.at_least(face)).collect()
}

/// What all facilities of a day come to: each minute once, wherever it would be sold, and no more
/// than the limits leave.
pub(super) fn sum(at: &[FreeAt], left: Option<u32>) -> u32 {
    let mut all: Vec<Passing> = at.iter().flat_map(|at| at.passing.iter().copied()).collect();
    all.sort_unstable();
    let (mut minutes, mut until) = (0, None);
    for (from, to) in all {
        let from = until.map_or(from, |until: DateTime<FixedOffset>| from.max(until));
        if from < to {
            minutes += (to - from).num_minutes();
            until = Some(to);
        }
    }
    let most: u32 = at.iter().map(|at| at.most).sum();
    u32::try_from(minutes).unwrap_or(0).min(most).min(left.unwrap_or(u32::MAX))
}

/// Why a day has nothing free.
pub(super) fn why_nothing(
    around: &Around,
    day: Day,
    left: Option<u32>,
    shortest: u32,
    now: DateTime<FixedOffset>,
) -> NothingFree {
    let places = around.places(day);
    let over = |facility: &&Facility| {
        let zone = Zone::parse(&facility.place.zone).ok();
        let local = zone.and_then(|zone| LocalDay::of(day, &zone));
        local.is_some_and(|local| local.passed(now) == local.minutes)
    };
    if places.is_empty() {
        NothingFree::Nowhere
    } else if places.iter().all(over) {
        NothingFree::Passed
    } else if own_time::allowed(&around.own, day).open.is_empty() {
        NothingFree::Off
    } else if left.is_some_and(|left| left < shortest) {
        NothingFree::Limit
    } else {
        NothingFree::Taken
    }
}
