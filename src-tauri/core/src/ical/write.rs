//! Writing: the text of an invitation, of its change or its calling-off, or of a calendar file
//! (RFC 5545; for invitations RFC 5546).

use std::collections::BTreeMap;
use std::fmt;

use chrono::{DateTime, Datelike, NaiveDateTime, Utc};

use super::text::{escaped, mailto, param, push_line};
use super::vtimezone::{self, time};
use crate::kinds::zones::{Moment, OutOfRange, Zone, resolve};

/// Someone who invites or is invited.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Person {
    /// The name to show; may be empty.
    pub name: String,
    /// The mail address.
    pub email: String,
}

/// Something with a place in a calendar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// The same for the event's whole life (RFC 5545 §3.8.4.7).
    pub uid: String,
    /// 0 at first; one more with each change that those invited must notice (RFC 5546 §2.1.4).
    pub sequence: u32,
    /// When this text was made (RFC 5545 §3.8.7.2).
    pub stamp: DateTime<Utc>,
    /// The zone of the two times below.
    pub zone: Zone,
    /// When it starts, on the zone's clock.
    pub starts: NaiveDateTime,
    /// When it ends, on the zone's clock.
    pub ends: NaiveDateTime,
    /// Which time is meant where the clock shows it twice: the second, after it was put back.
    pub second: bool,
    /// One line: what it is.
    pub summary: String,
    /// Where; may be empty.
    pub place: String,
    /// More about it; may be empty.
    pub words: String,
    /// Who invites.
    pub organizer: Option<Person>,
    /// Who is invited.
    pub attendees: Vec<Person>,
    /// It does not take place.
    pub cancelled: bool,
}

/// What an invitation's text is for (RFC 5546 §3.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Invites, or changes what was invited to.
    Request,
    /// Calls off.
    Cancel,
    /// Tells, and asks for no answer. The standard allows no ATTENDEE here, so none is written.
    Publish,
}

/// Why an event cannot be written. Each names the event by its UID.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unwritable {
    /// Its times lie outside the years the calendar covers.
    Years(String),
    /// It does not end after it starts (RFC 5545 §3.8.2.2).
    Backwards(String),
    /// An invitation needs someone who invites (RFC 5546 §3.2).
    NoOrganizer(String),
    /// A request or calling-off needs someone it is for (RFC 5546 §3.2.2, §3.2.5).
    NoAttendee(String),
    /// A request or calling-off is about one event (RFC 5546 §3.2.2, §3.2.5); this is another.
    Another(String),
}

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (uid, words) = match self {
            Self::Years(uid) => (uid, "lies outside the years the calendar covers"),
            Self::Backwards(uid) => (uid, "does not end after it starts"),
            Self::NoOrganizer(uid) => (uid, "has nobody who invites"),
            Self::NoAttendee(uid) => (uid, "has nobody it is for"),
            Self::Another(uid) => (uid, "cannot go into one invitation with another event"),
        };
        write!(f, "the event {uid} {words}")
    }
}

impl std::error::Error for Unwritable {}

/// The text of a calendar with these events: for `method`, or as a file when there is none.
///
/// Times are written on the zone's clock, with the zone's changes of the clock from the year before
/// the events to the year after. A time that the clock skips, or the second of a time it shows
/// twice, cannot be told that way and is written in UTC, as are times of a zone that is UTC.
/// In a file, an ATTENDEE carries `SCHEDULE-AGENT=CLIENT` (RFC 6638 §7.1), so that a calendar
/// server that stores it sends no second invitation.
///
/// Errors: see [`Unwritable`]; nothing is left out silently.
pub fn write(method: Option<Method>, events: &[Event]) -> Result<String, Unwritable> {
    let mut parts = String::new();
    let mut zones: BTreeMap<&Zone, (i32, i32)> = BTreeMap::new();
    for event in events {
        may_stand(method, event, events)?;
        let span = span(event)?;
        if !span.in_utc {
            let years = (event.starts.year() - 1, event.ends.year() + 1);
            let all = zones.entry(&event.zone).or_insert(years);
            *all = (all.0.min(years.0), all.1.max(years.1));
        }
        push_event(&mut parts, method, event, &span);
    }
    let mut out = String::new();
    push_line(&mut out, "BEGIN:VCALENDAR");
    push_line(&mut out, "VERSION:2.0");
    push_line(&mut out, "PRODID:-//Carryover//Carryover//EN");
    match method {
        Some(Method::Request) => push_line(&mut out, "METHOD:REQUEST"),
        Some(Method::Cancel) => push_line(&mut out, "METHOD:CANCEL"),
        Some(Method::Publish) => push_line(&mut out, "METHOD:PUBLISH"),
        None => {}
    }
    for (zone, (first, last)) in zones {
        vtimezone::push(&mut out, zone, first, last)
            .map_err(|OutOfRange| Unwritable::Years(zone.name().to_owned()))?;
    }
    out.push_str(&parts);
    push_line(&mut out, "END:VCALENDAR");
    Ok(out)
}

fn may_stand(method: Option<Method>, event: &Event, all: &[Event]) -> Result<(), Unwritable> {
    let uid = || event.uid.clone();
    let Some(method) = method else { return Ok(()) };
    if event.organizer.is_none() {
        return Err(Unwritable::NoOrganizer(uid()));
    }
    if method == Method::Publish {
        return Ok(());
    }
    if event.attendees.is_empty() {
        return Err(Unwritable::NoAttendee(uid()));
    }
    match all.iter().all(|other| other.uid == event.uid) {
        true => Ok(()),
        false => Err(Unwritable::Another(uid())),
    }
}

/// When an event is, as instants, and whether only instants can say so.
struct Span {
    starts: DateTime<Utc>,
    ends: DateTime<Utc>,
    in_utc: bool,
}

fn span(event: &Event) -> Result<Span, Unwritable> {
    let years = |OutOfRange| Unwritable::Years(event.uid.clone());
    let (starts, start_plain) = which(event.starts, event, None).map_err(years)?;
    let (ends, end_plain) = which(event.ends, event, Some(starts)).map_err(years)?;
    // A year of five digits cannot be written.
    if [event.starts, event.ends].iter().any(|at| !(1..=9998).contains(&at.year())) {
        return Err(Unwritable::Years(event.uid.clone()));
    }
    if ends <= starts {
        return Err(Unwritable::Backwards(event.uid.clone()));
    }
    Ok(Span { starts, ends, in_utc: is_utc(&event.zone) || !start_plain || !end_plain })
}

/// The instant meant by a time of the event, and whether the clock's time alone says so. An end
/// that comes twice is the second also when the first lies before the start.
fn which(
    local: NaiveDateTime,
    event: &Event,
    after: Option<DateTime<Utc>>,
) -> Result<(DateTime<Utc>, bool), OutOfRange> {
    Ok(match resolve(local, &event.zone)? {
        Moment::Once { at } => (at.to_utc(), true),
        Moment::Twice { first, second } => {
            let late = event.second || after.is_some_and(|after| first.to_utc() <= after);
            if late { (second.to_utc(), false) } else { (first.to_utc(), true) }
        }
        Moment::Gap { .. } => {
            (super::clocks::on_clock(&event.zone, local).ok_or(OutOfRange)?, false)
        }
    })
}

/// Whether the zone is UTC under one of its names (IANA database, file `etcetera` and its links).
fn is_utc(zone: &Zone) -> bool {
    matches!(zone.name().trim_start_matches("Etc/"), "UTC" | "UCT" | "Universal" | "Zulu")
}

fn push_event(out: &mut String, method: Option<Method>, event: &Event, span: &Span) {
    let at = |local: NaiveDateTime, instant: DateTime<Utc>| match span.in_utc {
        true => format!(":{}Z", time(instant.naive_utc())),
        false => format!(";TZID={}:{}", event.zone.name(), time(local)),
    };
    let cancelled = event.cancelled || method == Some(Method::Cancel);
    push_line(out, "BEGIN:VEVENT");
    push_line(out, &format!("UID:{}", escaped(&event.uid)));
    push_line(out, &format!("SEQUENCE:{}", event.sequence));
    push_line(out, &format!("DTSTAMP:{}Z", time(event.stamp.naive_utc())));
    push_line(out, &format!("DTSTART{}", at(event.starts, span.starts)));
    push_line(out, &format!("DTEND{}", at(event.ends, span.ends)));
    push_line(out, &format!("SUMMARY:{}", escaped(&event.summary)));
    if !event.place.is_empty() {
        push_line(out, &format!("LOCATION:{}", escaped(&event.place)));
    }
    if !event.words.is_empty() {
        push_line(out, &format!("DESCRIPTION:{}", escaped(&event.words)));
    }
    push_line(out, if cancelled { "STATUS:CANCELLED" } else { "STATUS:CONFIRMED" });
    if let Some(organizer) = &event.organizer {
        push_line(out, &format!("ORGANIZER{}", person(organizer)));
    }
    let part = match method {
        Some(Method::Request) => ";ROLE=REQ-PARTICIPANT;PARTSTAT=NEEDS-ACTION;RSVP=TRUE",
        Some(Method::Cancel) => ";ROLE=REQ-PARTICIPANT",
        Some(Method::Publish) | None => ";ROLE=REQ-PARTICIPANT;SCHEDULE-AGENT=CLIENT",
    };
    if method != Some(Method::Publish) {
        for attendee in &event.attendees {
            push_line(out, &format!("ATTENDEE{part}{}", person(attendee)));
        }
    }
    push_line(out, "END:VEVENT");
}

/// `;CN=name:mailto:address`
fn person(person: &Person) -> String {
    let address = mailto(&person.email);
    match param(person.name.trim()) {
        name if name.is_empty() => format!(":{address}"),
        name => format!(";CN={name}:{address}"),
    }
}
