//! Which courts lessons need, and where each of them stands; courts that no lesson needs any more.

use std::collections::HashMap;
use std::collections::hash_map::Entry;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Booking, BookingState, CourtNeeded, CourtState, store};
use crate::app::Reading;
use crate::error::Result;
use crate::facilities::{self, Facility, Given, Rules, Terms, terms_of};
use crate::kinds::ids::{CourtId, FacilityId, VisitId};
use crate::kinds::{Day, Span, Time};
use crate::lessons::{self, Lesson, LessonState, ListLessons};

/// Days beyond which no lesson is planned: a hundred years.
const ALL_TO_COME: i64 = 36_525;

/// Which courts.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct CourtsOf {
    /// From this day; left out for today.
    pub from: Option<Day>,
    /// Until this day; left out for all that is to come.
    pub to: Option<Day>,
    /// Of the lessons of one visit only.
    pub visit: Option<VisitId>,
}

/// Whether a booking serves a lesson: it is there, and all of the lesson lies in it.
pub(super) fn serves(b: &Booking, l: &Lesson) -> bool {
    let court = b.court.is_none() || l.court.is_none() || b.court == l.court;
    let (from, to) = (b.starts.minutes(), b.starts.minutes() + b.minutes);
    let (starts, ends) = (l.starts.minutes(), l.starts.minutes() + l.minutes);
    b.facility == l.facility && b.day == l.day && court && from <= starts && ends <= to
}

/// The courts that lessons to come need, and those to be given back: first what must go back, then
/// what is to be asked for, each by day and time.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, of: CourtsOf) -> Result<Vec<CourtNeeded>> {
    let first = of.from.unwrap_or_else(|| db.today());
    let span = Span { first, last: of.to.unwrap_or_else(|| first.plus(ALL_TO_COME)) };
    let bookings = store::standing(db, span)?;
    let on = ListLessons { visit: of.visit, from: Some(span.first), to: Some(span.last) };
    let planned = |l: &Lesson| l.state == LessonState::Planned;
    let lessons: Vec<Lesson> = lessons::list(db, on)?.into_iter().filter(planned).collect();
    let mut known = Known { db, read: HashMap::new() };
    let mut courts = Vec::new();
    for lesson in &lessons {
        let best = bookings.iter().filter(|b| serves(b, lesson));
        let booking = best.max_by_key(|b| b.state == BookingState::Confirmed);
        courts.push(known.needed(lesson, booking)?);
    }
    if of.visit.is_none() {
        for booking in bookings.iter().filter(|b| !lessons.iter().any(|l| serves(b, l))) {
            courts.push(known.giving_back(booking)?);
        }
    }
    courts.sort_by_key(|court| (court.day, court.starts, court.state));
    Ok(courts)
}

fn has_come(db: &Reading<'_>, given: Option<Given>) -> bool {
    given.is_none_or(|given| given.day <= db.today())
}

/// What the rules of the facilities say, each facility's read once.
struct Known<'a> {
    db: &'a Reading<'a>,
    read: HashMap<FacilityId, (Facility, Rules)>,
}

impl Known<'_> {
    fn terms(
        &mut self,
        facility: FacilityId,
        court: Option<CourtId>,
        (day, starts, minutes): (Day, Time, u32),
    ) -> Result<Terms> {
        let (facility, rules) = match self.read.entry(facility) {
            Entry::Occupied(known) => known.into_mut(),
            Entry::Vacant(new) => {
                let which = facilities::Which { facility };
                let read = (facilities::show(self.db, which)?, facilities::rules(self.db, which)?);
                new.insert(read)
            }
        };
        let court = facility.courts.iter().find(|c| Some(c.id) == court);
        Ok(terms_of(rules, &facility.place.zone, court, day, starts, minutes))
    }

    fn needed(&mut self, l: &Lesson, booking: Option<&Booking>) -> Result<CourtNeeded> {
        let terms = self.terms(l.facility, l.court, (l.day, l.starts, l.minutes))?;
        let state = match booking.map(|b| b.state) {
            Some(BookingState::Confirmed) => CourtState::Confirmed,
            Some(_) => CourtState::Asked,
            None => CourtState::ToAsk,
        };
        let first = l.students.first();
        Ok(CourtNeeded {
            lesson: Some(l.id),
            visit: first.map(|s| s.visit),
            student: first.map(|s| s.student),
            names: l.names(),
            facility: l.facility,
            place: l.place.clone(),
            court: l.court,
            court_name: l.court_name.clone(),
            day: l.day,
            starts: l.starts,
            ends: l.ends,
            open: has_come(self.db, terms.ask_from),
            words: words(self.db, state, &terms),
            ask_from: terms.ask_from,
            cost: terms.cost,
            free_until: terms.free_until,
            against: terms.against,
            booking: booking.cloned(),
            state,
        })
    }

    fn giving_back(&mut self, b: &Booking) -> Result<CourtNeeded> {
        let terms = self.terms(b.facility, b.court, (b.day, b.starts, b.minutes))?;
        Ok(CourtNeeded {
            state: CourtState::ToGiveBack,
            lesson: None,
            visit: None,
            student: None,
            names: String::new(),
            facility: b.facility,
            place: b.place.clone(),
            court: b.court,
            court_name: b.court_name.clone(),
            day: b.day,
            starts: b.starts,
            ends: b.starts.plus(b.minutes),
            open: true,
            words: words(self.db, CourtState::ToGiveBack, &terms),
            ask_from: terms.ask_from,
            cost: terms.cost,
            free_until: terms.free_until,
            against: Vec::new(),
            booking: Some(b.clone()),
        })
    }
}

/// What of the terms matters where a court stands.
fn words(db: &Reading<'_>, state: CourtState, terms: &Terms) -> Vec<String> {
    let mut words = Vec::new();
    if state == CourtState::ToAsk && !terms.ask_words.is_empty() {
        words.push(terms.ask_words.clone());
    }
    if state != CourtState::ToAsk {
        words.extend(terms.release.iter().cloned());
        // On the day itself the hour decides, which the sentence names.
        if terms.free_until.is_some_and(|until| until.day < db.today())
            && let Some(first) = words.first_mut()
        {
            first.clone_from(&terms.late_words);
        }
    }
    words
}
