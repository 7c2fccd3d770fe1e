//! The clock a time in a calendar file is read on: UTC, a zone of the database, one that the file
//! describes itself, or, where it names none, the coach's own.

use std::collections::BTreeMap;
use std::rc::Rc;

use chrono::{DateTime, Duration, NaiveDate, NaiveDateTime, Utc};

use super::expand::{self, Budget};
use super::lines::{Component, shortened};
use super::rule::{Rule, Until};
use super::values::{self, Moment};
use super::windows;
use crate::kinds::zones::{self, Zone, local_of, resolve};

/// A clock, and with it what a time on it means.
#[derive(Debug)]
pub(crate) enum Clock {
    Utc,
    Zone(Zone),
    Own(Vec<Onset>),
}

/// From an instant on, a clock that the file describes is so far from UTC.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Onset {
    at: NaiveDateTime,
    before: Duration,
    after: Duration,
}

impl Clock {
    /// The instant meant by a time on this clock: a skipped time is read with the offset before, of
    /// a time that comes twice the first is meant (RFC 5545 §3.3.5). `None` beyond the calendar.
    pub(crate) fn instant(&self, local: NaiveDateTime) -> Option<DateTime<Utc>> {
        match self {
            Self::Utc => Some(local.and_utc()),
            Self::Zone(zone) => on_clock(zone, local),
            Self::Own(onsets) => on_own(onsets, local).map(|at| at.and_utc()),
        }
    }

    /// What this clock shows at an instant.
    pub(crate) fn shows(&self, at: DateTime<Utc>) -> Option<NaiveDateTime> {
        match self {
            Self::Utc => Some(at.naive_utc()),
            Self::Zone(zone) => local_of(&at, zone).ok(),
            Self::Own(onsets) => {
                let utc = at.naive_utc();
                let past = onsets.iter().rev().find(|onset| onset.at <= utc);
                let offset = past.map(|onset| onset.after);
                utc.checked_add_signed(offset.or(onsets.first().map(|onset| onset.before))?)
            }
        }
    }
}

/// The instant meant by a time on the clock of a zone, as [`Clock::instant`] has it.
pub(crate) fn on_clock(zone: &Zone, local: NaiveDateTime) -> Option<DateTime<Utc>> {
    match resolve(local, zone).ok()? {
        zones::Moment::Once { at } => Some(at.to_utc()),
        zones::Moment::Twice { first, .. } => Some(first.to_utc()),
        zones::Moment::Gap { next } => {
            let just_before = next.to_utc() - Duration::seconds(1);
            let offset_before = local_of(&just_before, zone).ok()? - just_before.naive_utc();
            local.checked_sub_signed(offset_before).map(|at| at.and_utc())
        }
    }
}

fn on_own(onsets: &[Onset], local: NaiveDateTime) -> Option<NaiveDateTime> {
    let first = onsets.first()?;
    let mut offset = first.before;
    for onset in onsets {
        let at = local.checked_sub_signed(offset)?;
        if at < onset.at {
            return Some(at);
        }
        // Skipped: the old offset would be past the change, the new one before it.
        if local.checked_sub_signed(onset.after)? < onset.at {
            return local.checked_sub_signed(onset.before);
        }
        offset = onset.after;
    }
    local.checked_sub_signed(offset)
}

/// The clocks of one calendar, by the names it gives them.
pub(crate) struct Clocks<'a> {
    described: BTreeMap<&'a str, &'a Component>,
    known: BTreeMap<String, Rc<Clock>>,
    pub(crate) home: Rc<Clock>,
    utc: Rc<Clock>,
    days: (NaiveDate, NaiveDate),
    notes: Vec<String>,
}

impl<'a> Clocks<'a> {
    /// `days` are the first and last day that matter; a zone that the file describes is worked out
    /// for some years around them.
    pub(crate) fn of(calendar: &'a Component, home: &Zone, days: (NaiveDate, NaiveDate)) -> Self {
        let zones = calendar.children.iter().filter(|part| part.name == "VTIMEZONE");
        let described = zones.filter_map(|part| Some((part.first("TZID")?.value.trim(), part)));
        Self {
            described: described.collect(),
            known: BTreeMap::new(),
            home: Rc::new(Clock::Zone(home.clone())),
            utc: Rc::new(Clock::Utc),
            days,
            notes: Vec::new(),
        }
    }

    /// A time as it is written, on the clock of that name. A time without a zone, and one whose
    /// zone nothing is known of, is on the home clock; the latter leaves a note.
    pub(crate) fn when(&mut self, moment: Moment, tzid: Option<&str>, budget: &mut Budget) -> When {
        match (moment, tzid) {
            (Moment::Day(day), _) => When::Day(day),
            (Moment::Utc(wall), _) => When::At { wall, clock: Rc::clone(&self.utc) },
            (Moment::Wall(wall), None) => When::At { wall, clock: Rc::clone(&self.home) },
            (Moment::Wall(wall), Some(tzid)) => {
                if let Some(clock) = self.known.get(tzid) {
                    return When::At { wall, clock: Rc::clone(clock) };
                }
                let found = self.find(tzid, budget).map(Rc::new).unwrap_or_else(|| {
                    self.notes.push(format!(
                        "The time zone “{}” is not known; its times are read on your own clock.",
                        shortened(tzid)
                    ));
                    Rc::clone(&self.home)
                });
                self.known.insert(tzid.to_owned(), Rc::clone(&found));
                When::At { wall, clock: found }
            }
        }
    }

    /// What could not be told for certain, a sentence each.
    pub(crate) fn into_notes(self) -> Vec<String> {
        self.notes
    }

    /// By name first, since the database is newer than most files; then what the file says.
    fn find(&self, tzid: &str, budget: &mut Budget) -> Option<Clock> {
        let by_name = |name: &str| Zone::parse(name).ok().map(Clock::Zone);
        let described = self.described.get(tzid.trim()).copied();
        let place = described.and_then(|part| part.first("X-LIC-LOCATION"));
        by_name(tzid)
            .or_else(|| by_name(windows::iana(tzid)?))
            .or_else(|| place.and_then(|place| by_name(place.value.trim())))
            .or_else(|| described.and_then(|part| own(part, self.days, budget)))
            .or_else(|| tails(tzid).find_map(by_name))
    }
}

/// What follows the last slashes, the longest first: `/example.org/2026/Europe/Berlin` ends in a
/// name of the database (RFC 5545 §3.8.3.1 lets a name begin with whose list it is from). No name
/// there has more than two slashes.
fn tails(tzid: &str) -> impl Iterator<Item = &str> {
    let slashes: Vec<usize> = tzid.rmatch_indices('/').take(3).map(|(at, _)| at).collect();
    slashes.into_iter().rev().filter_map(|at| tzid.get(at + 1..))
}

/// A clock that is changed more often than this is none.
const MOST_CHANGES: usize = 1_000;

/// The clock a VTIMEZONE describes; `None` if it cannot be read.
fn own(zone: &Component, days: (NaiveDate, NaiveDate), budget: &mut Budget) -> Option<Clock> {
    let around = chrono::Days::new(800);
    let (first, last) = (days.0.checked_sub_days(around)?, days.1.checked_add_days(around)?);
    let mut onsets = Vec::new();
    for part in zone.children.iter().filter(|part| matches!(&*part.name, "STANDARD" | "DAYLIGHT")) {
        let offset = |name: &str| values::offset(&part.first(name)?.value);
        let before = Duration::seconds(i64::from(offset("TZOFFSETFROM")?));
        let after = Duration::seconds(i64::from(offset("TZOFFSETTO")?));
        let Moment::Wall(starts) = values::moment(part.first("DTSTART")?.value.trim())? else {
            return None;
        };
        let mut walls = vec![starts];
        for rule in part.all("RRULE") {
            let mut rule = Rule::parse(&rule.value).ok()?;
            if let Some(Until::Utc(until)) = rule.until {
                rule.until = Some(Until::Wall(until.checked_add_signed(before)?));
            }
            walls.extend(expand::expand(&rule, starts, first, last, budget).ok()?);
        }
        for listed in part.all("RDATE").flat_map(|dates| dates.value.split(',')) {
            let Moment::Wall(wall) = values::moment(listed.trim())? else { return None };
            walls.push(wall);
        }
        for wall in walls {
            onsets.push(Onset { at: wall.checked_sub_signed(before)?, before, after });
        }
    }
    onsets.sort_unstable();
    onsets.dedup();
    (1..=MOST_CHANGES).contains(&onsets.len()).then_some(Clock::Own(onsets))
}

/// A day, or a time on a clock.
#[derive(Clone, Debug)]
pub(crate) enum When {
    Day(NaiveDate),
    At { wall: NaiveDateTime, clock: Rc<Clock> },
}

impl When {
    /// The time shown: midnight for a day.
    pub(crate) fn wall(&self) -> NaiveDateTime {
        match self {
            Self::Day(day) => day.and_time(chrono::NaiveTime::MIN),
            Self::At { wall, .. } => *wall,
        }
    }

    /// Tells two times apart and puts them in order.
    pub(crate) fn key(&self) -> (NaiveDateTime, bool) {
        match self {
            Self::Day(_) => (self.wall(), true),
            Self::At { wall, clock } => {
                (clock.instant(*wall).map_or(*wall, |at| at.naive_utc()), false)
            }
        }
    }
}
