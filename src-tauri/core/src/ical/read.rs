//! Reading: when a calendar file says its owner is taken.

use std::collections::BTreeMap;

use chrono::{DateTime, NaiveDate, NaiveTime, Utc};

use super::clocks::{Clock, Clocks, When};
use super::events::{self, Event};
use super::expand::Budget;
use super::lines::{self, Broken, Component};
use super::times::Time;
use super::values::{self, Moment};
use crate::kinds::zones::Zone;

/// A larger file is not read: 20 MB.
pub const LARGEST: usize = 20 * 1_024 * 1_024;

/// At most so many notes are given one by one.
const NOTES: usize = 50;

/// What a calendar file says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Read {
    /// When its owner is taken, in order. Times may overlap.
    pub busy: Vec<Busy>,
    /// How many events the file holds, in the days asked for or not.
    pub events: usize,
    /// What could not be read, or only in part; a sentence each. Empty: all of it was read.
    pub skipped: Vec<String>,
}

/// One time its owner is taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Busy {
    /// From this instant; of a whole day, its midnight on the home clock.
    pub starts: DateTime<Utc>,
    /// Until this instant, not included.
    pub ends: DateTime<Utc>,
    /// Of an event of whole days, the first and the last, which belong to no zone.
    pub all_day: Option<(NaiveDate, NaiveDate)>,
    /// What it is; may be empty.
    pub summary: String,
    /// The event's UID; may be empty.
    pub uid: String,
}

/// When the owner of a calendar is taken from day `first` to day `last`, both included, on the
/// clock of `home`, where times without a zone are read too.
///
/// Cancelled and transparent events take nobody's time, nor do those without any length. Of two
/// texts of one event the newer counts (RFC 5546 §2.1.5). What repeats is followed in these days
/// only, and never for long; what that leaves out is told in `skipped`.
///
/// Errors: the file is larger than [`LARGEST`], holds no calendar, or is not whole. Then nothing of
/// it is given.
pub fn busy(text: &[u8], first: NaiveDate, last: NaiveDate, home: &Zone) -> Result<Read, Broken> {
    if text.len() > LARGEST {
        let words = format!(
            "The file has {} MB; a calendar of more than {} MB is not read.",
            text.len() / 1_048_576,
            LARGEST / 1_048_576
        );
        return Err(Broken { line: 0, words });
    }
    let calendars = lines::calendars(text)?;
    let mut budget = Budget::of_a_file();
    let mut found = Found { events: Vec::new(), busy: Vec::new(), skipped: Vec::new(), count: 0 };
    for calendar in &calendars {
        if calendar.first("VERSION").is_some_and(|version| version.value.trim().starts_with("1.")) {
            return Err(Broken {
                line: calendar.line,
                words: "This is a calendar of the old form, version 1.0, which is not read.".into(),
            });
        }
        found.take(calendar, home, (first, last), &mut budget);
    }
    let clock = Clock::Zone(home.clone());
    let (events, mut busy, mut skipped) = (found.events, found.busy, found.skipped);
    for group in same_event(events) {
        let replaced: Vec<When> = group.iter().filter_map(|event| event.replaces.clone()).collect();
        for mut event in group {
            if event.blocks {
                let replaced = if event.replaces.is_some() { &[] } else { &replaced[..] };
                for time in event.times((first, last), replaced, &clock, &mut budget) {
                    busy.push(taken(time, &event));
                }
            }
            skipped.append(&mut event.notes);
        }
    }
    let midnight = |day: Option<NaiveDate>| clock.instant(day?.and_time(NaiveTime::MIN));
    let (begin, end) = (midnight(Some(first)), midnight(last.succ_opt()));
    busy.retain(|one| match one.all_day {
        Some((from, to)) => from <= last && first <= to,
        None => {
            begin.is_none_or(|begin| one.ends > begin) && end.is_none_or(|end| one.starts < end)
        }
    });
    busy.sort_by(|a, b| (a.starts, a.ends, &a.summary).cmp(&(b.starts, b.ends, &b.summary)));
    if skipped.len() > NOTES {
        let more = skipped.split_off(NOTES).len();
        skipped.push(format!("And {more} more such notes."));
    }
    Ok(Read { busy, events: found.count, skipped })
}

/// What was found in a file so far.
struct Found {
    events: Vec<Event>,
    busy: Vec<Busy>,
    skipped: Vec<String>,
    count: usize,
}

impl Found {
    fn take(
        &mut self,
        calendar: &Component,
        home: &Zone,
        days: (NaiveDate, NaiveDate),
        budget: &mut Budget,
    ) {
        let mut clocks = Clocks::of(calendar, home, days);
        let called_off = calendar
            .first("METHOD")
            .is_some_and(|method| method.value.trim().eq_ignore_ascii_case("CANCEL"));
        for part in &calendar.children {
            match part.name.as_str() {
                "VEVENT" => {
                    self.count += 1;
                    match events::read(part, &mut clocks, budget) {
                        Ok(mut event) => {
                            event.blocks &= !called_off;
                            self.events.push(event);
                        }
                        Err(words) => self.skipped.push(words),
                    }
                }
                "VFREEBUSY" => self.free_busy(part),
                _ => {}
            }
        }
        self.skipped.extend(clocks.into_notes());
    }

    /// The periods of a VFREEBUSY that are not free (RFC 5545 §3.6.4); they are always in UTC.
    fn free_busy(&mut self, part: &Component) {
        for property in part.all("FREEBUSY") {
            if property.param("FBTYPE").is_some_and(|kind| kind.eq_ignore_ascii_case("FREE")) {
                continue;
            }
            for period in property.value.split(',') {
                match utc_period(period.trim()) {
                    Some((starts, ends)) => self.busy.push(Busy {
                        starts,
                        ends,
                        all_day: None,
                        summary: String::new(),
                        uid: String::new(),
                    }),
                    None => self.skipped.push(format!(
                        "The busy time “{}” at line {} is not read.",
                        lines::shortened(period),
                        part.line
                    )),
                }
            }
        }
    }
}

fn utc_period(text: &str) -> Option<(DateTime<Utc>, DateTime<Utc>)> {
    let (from, to) = text.split_once('/')?;
    let Moment::Utc(from) = values::moment(from)? else { return None };
    let to = match values::moment(to) {
        Some(Moment::Utc(to)) => to,
        Some(_) => return None,
        None => {
            let length = values::length(to)?;
            let days = chrono::Duration::try_days(length.days)?;
            from.checked_add_signed(days)?.checked_add_signed(length.rest)?
        }
    };
    (to > from).then(|| (from.and_utc(), to.and_utc()))
}

fn taken(time: Time, event: &Event) -> Busy {
    let Time { starts, ends, all_day } = time;
    let uid = event.uid.clone().unwrap_or_default();
    Busy { starts, ends, all_day, summary: event.summary.clone(), uid }
}

/// The events by UID, of each text the newest. Where nothing tells which is newer, both stay. An
/// event without a UID stands alone.
fn same_event(events: Vec<Event>) -> Vec<Vec<Event>> {
    let mut groups: BTreeMap<String, Vec<Event>> = BTreeMap::new();
    let mut alone = Vec::new();
    for event in events {
        match &event.uid {
            Some(uid) => groups.entry(uid.clone()).or_default().push(event),
            None => alone.push(vec![event]),
        }
    }
    for group in groups.values_mut() {
        let mut newest = BTreeMap::new();
        for event in group.iter() {
            let version =
                newest.entry(event.replaces.as_ref().map(When::key)).or_insert(event.version);
            *version = event.version.max(*version);
        }
        group.retain(|event| {
            newest.get(&event.replaces.as_ref().map(When::key)) == Some(&event.version)
        });
    }
    groups.into_values().chain(alone).collect()
}
