//! What the week and the trip both stand on: the lessons and visits of some days, the coach's own
//! time on every clock they are on, and what of it falls on one day.

use std::collections::HashMap;

use chrono::{DateTime, FixedOffset};

use super::clock::DAY;
use super::{CoachDay, LessonOn, TakenOn, WayOn};
use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{self, Facility, ListFacilities};
use crate::kinds::ids::{FacilityId, StudentId, VisitId};
use crate::kinds::zones::{Zone, local_of};
use crate::kinds::{Day, Span, Time};
use crate::lessons::{self, Lesson, ListLessons};
use crate::offers::{self, Offer};
use crate::own_time::{self, Occupied, OwnTime};
use crate::visits::{self, Stage, Visit};

/// A lesson with the instants it begins and ends at.
pub(super) struct Held {
    pub lesson: Lesson,
    pub begins: DateTime<FixedOffset>,
    pub ends: DateTime<FixedOffset>,
}

impl Held {
    /// Its minutes: as taught, where it was cut short.
    pub fn minutes(&self) -> u32 {
        self.lesson.given.unwrap_or(self.lesson.minutes)
    }
}

/// Some days with all that is read of them.
pub(super) struct Around {
    pub days: Span,
    /// Every lesson of the days, those called off too, in the order in which they begin.
    pub lessons: Vec<Held>,
    /// Lessons of the days and of one more at each end: another clock may show another date.
    near: Vec<Held>,
    /// The visits with a day among them, those called off left out, the first to begin first.
    pub visits: Vec<Visit>,
    /// Every facility.
    pub facilities: Vec<Facility>,
    /// The coach's week.
    pub own: OwnTime,
    /// Minutes from each facility to each other.
    ways: Vec<Vec<u32>>,
    /// The newest offer of each visit that has one.
    offers: HashMap<VisitId, Offer>,
    /// Visits with lessons on the days that were called off.
    off: Vec<VisitId>,
    /// What takes the coach's time, for each clock.
    occupied: HashMap<String, Vec<Occupied>>,
    /// The clock of a day on which nobody is anywhere.
    usual_zone: String,
}

impl Around {
    /// Reads the days.
    pub fn read(db: &Reading<'_>, days: Span) -> Result<Self> {
        let facilities = facilities::list(db, ListFacilities { archived: true })?;
        let (mut visits, mut off) = (visits::around(db, days)?, Vec::new());
        visits.retain(|visit| {
            let stands = visit.stage != Stage::CalledOff;
            off.extend(Some(visit.id).filter(|_| !stands));
            stands
        });
        let wide = Span { first: days.first.plus(-1), last: days.last.plus(1) };
        let on = ListLessons { visit: None, from: Some(wide.first), to: Some(wide.last) };
        let held =
            |lesson: Lesson| lesson.held().map(|(begins, ends)| Held { lesson, begins, ends });
        let mut near: Vec<Held> = lessons::list(db, on)?.into_iter().filter_map(held).collect();
        near.sort_by_key(|held| (held.begins, held.lesson.id));
        let (lessons, beside) = near.into_iter().partition(|held| days.holds(held.lesson.day));
        let mut around = Self {
            days,
            lessons,
            near: beside,
            visits,
            own: own_time::show(db)?,
            ways: Vec::new(),
            offers: HashMap::new(),
            off,
            occupied: HashMap::new(),
            usual_zone: facilities.first().map_or("UTC", |f| f.place.zone.as_str()).to_owned(),
            facilities,
        };
        let ids: Vec<FacilityId> = around.facilities.iter().map(|f| f.id).collect();
        around.ways = own_time::ways(&around.own, &ids);
        let mut of: Vec<VisitId> = around.visits.iter().map(|visit| visit.id).collect();
        of.extend(around.lessons.iter().flat_map(|l| l.lesson.students.iter().map(|s| s.visit)));
        of.sort_unstable();
        of.dedup();
        for visit in of {
            if let Some(offer) = offers::newest(db, visits::Which { visit })? {
                around.offers.insert(visit, offer);
            }
        }
        let mut zones = around.zones();
        zones.push(around.usual_zone.clone());
        for name in zones {
            if let Ok(zone) = Zone::parse(&name) {
                around.occupied.insert(name, own_time::occupied(db, wide, &zone)?);
            }
        }
        Ok(around)
    }

    /// Every day.
    pub fn each_day(&self) -> impl Iterator<Item = Day> + use<> {
        let days = self.days;
        (0..days.days()).map(move |n| days.first.plus(n))
    }

    /// Every lesson that may touch the days, on whichever clock.
    pub fn all_near(&self) -> impl Iterator<Item = &Held> {
        self.lessons.iter().chain(&self.near)
    }

    /// The lessons of a day.
    pub fn on(&self, day: Day) -> impl Iterator<Item = &Held> {
        self.lessons.iter().filter(move |held| held.lesson.day == day)
    }

    /// The visits that hold a day.
    pub fn in_town(&self, day: Day) -> impl Iterator<Item = &Visit> {
        self.visits.iter().filter(move |visit| visit.days.is_some_and(|days| days.holds(day)))
    }

    /// The facilities of a day: those of its lessons in the order of these, then those of whoever is
    /// in town.
    pub fn places(&self, day: Day) -> Vec<&Facility> {
        let mut ids: Vec<FacilityId> =
            self.on(day).filter(|l| l.lesson.stands()).map(|l| l.lesson.facility).collect();
        ids.extend(self.in_town(day).filter_map(|visit| visit.facility));
        let mut places: Vec<&Facility> = Vec::new();
        for id in ids {
            if places.iter().all(|place| place.id != id) {
                places.extend(self.facilities.iter().find(|f| f.id == id));
            }
        }
        places
    }

    /// The zones of all lessons and visits, in order of days.
    pub fn zones(&self) -> Vec<String> {
        let mut zones: Vec<String> = Vec::new();
        for day in self.each_day() {
            let lessons = self.on(day).map(|l| l.lesson.zone.as_str());
            let places = self.places(day);
            for zone in lessons.chain(places.iter().map(|f| f.place.zone.as_str())) {
                if zones.iter().all(|known| known != zone) {
                    zones.push(zone.to_owned());
                }
            }
        }
        zones
    }

    /// What takes the coach's time on a clock.
    pub fn occupied(&self, zone: &str, day: Day) -> impl Iterator<Item = &Occupied> {
        let all = self.occupied.get(zone).into_iter().flatten();
        all.filter(move |taken| taken.day == day)
    }

    /// Minutes from one facility to another; `None` where no way was written down.
    pub fn way(&self, from: FacilityId, to: FacilityId) -> Option<u32> {
        let at = |id| self.facilities.iter().position(|f| f.id == id);
        let minutes = *self.ways.get(at(from)?)?.get(at(to)?)?;
        Some(minutes).filter(|minutes| *minutes > 0 || from == to)
    }

    /// The most minutes of lessons a day.
    pub fn limit(&self) -> Option<u32> {
        u32::try_from(self.own.day_limit).ok().filter(|minutes| *minutes > 0)
    }

    /// The coach's day.
    pub fn coach(&self, day: Day) -> CoachDay {
        let taught: Vec<&Held> =
            self.on(day).filter(|held| held.lesson.state.takes_place()).collect();
        let places = self.places(day);
        let zone = places.first().map_or(&self.usual_zone, |f| &f.place.zone);
        let time = |minute: u32| Time::MIDNIGHT.plus(minute % DAY);
        let taken = self.occupied(zone, day).map(|taken| {
            let part = (taken.from, taken.to) != (0, DAY);
            TakenOn {
                what: taken.what.clone(),
                from: part.then(|| time(taken.from)),
                to: part.then(|| time(taken.to)),
            }
        });
        CoachDay {
            day,
            zone: zone.clone(),
            off: own_time::allowed(&self.own, day).open.is_empty(),
            taken: taken.collect(),
            ways: taught.windows(2).filter_map(|two| self.way_between(two[0], two[1])).collect(),
            lessons: u32::try_from(taught.len()).unwrap_or(0),
            minutes: taught.iter().map(|held| held.minutes()).sum(),
            limit: self.limit(),
            someone: self.in_town(day).next().is_some(),
        }
    }

    fn way_between(&self, a: &Held, b: &Held) -> Option<WayOn> {
        (a.lesson.facility != b.lesson.facility).then(|| WayOn {
            from: a.lesson.place.clone(),
            to: b.lesson.place.clone(),
            minutes: self.way(a.lesson.facility, b.lesson.facility),
            between: u32::try_from((b.begins - a.ends).num_minutes()).unwrap_or(0),
        })
    }

    /// A lesson as it stands, in a person's row or in nobody's.
    pub fn lesson(&self, held: &Held, of: Option<StudentId>) -> Option<LessonOn> {
        let l = &held.lesson;
        let own = l.students.iter().find(|s| Some(s.student) == of).or(l.students.first())?;
        let mut others = l.clone();
        others.students.retain(|s| s.student != own.student);
        let offer = self.offers.get(&own.visit).filter(|offer| {
            offer.lessons.iter().any(|o| o.lesson == l.id && (o.day, o.starts) == (l.day, l.starts))
        });
        let zone = Zone::parse(&l.zone).ok();
        let ends = zone.and_then(|zone| local_of(&held.ends, &zone).ok());
        Some(LessonOn {
            lesson: l.id,
            visit: own.visit,
            names: l.names(),
            with: of.map(|_| others.names()).unwrap_or_default(),
            day: l.day,
            starts: l.starts,
            ends: ends
                .and_then(|at| Time::parse(&at.format("%H:%M").to_string()))
                .unwrap_or(l.ends),
            which: l.which,
            minutes: held.minutes(),
            facility: l.facility,
            place: l.place.clone(),
            court: l.court,
            court_name: l.court_name.clone(),
            zone: l.zone.clone(),
            state: l.state,
            offer: offer.map(|offer| offer.state),
            visit_off: self.off.contains(&own.visit),
        })
    }
}
