//! One VEVENT of a calendar file (RFC 5545 §3.6.1): what it says. When that takes place is
//! worked out in `times`.

use chrono::{Duration, NaiveDateTime, NaiveTime};

use super::clocks::{Clocks, When};
use super::expand::Budget;
use super::lines::{Component, Property, shortened};
use super::values::{self, Length, Moment};

/// How long each time lasts.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Lasts {
    /// Whole days.
    Days(u64),
    /// The same span each time, as from a DTEND (RFC 5545 §3.8.5.3).
    Exact(Duration),
    /// Days of the calendar and a span, as from a DURATION (the same place).
    Nominal(Length),
}

/// An event as it was read.
pub(crate) struct Event {
    /// What to call it in a note.
    pub(crate) called: String,
    pub(crate) uid: Option<String>,
    /// Which time of a repeating event this one replaces.
    pub(crate) replaces: Option<When>,
    pub(crate) summary: String,
    /// Whether it takes its owner's time: neither TRANSPARENT nor CANCELLED.
    pub(crate) blocks: bool,
    /// The higher is the newer (RFC 5546 §2.1.5).
    pub(crate) version: (i64, Option<NaiveDateTime>),
    pub(crate) starts: When,
    pub(crate) lasts: Lasts,
    pub(crate) rules: Vec<String>,
    pub(crate) also: Vec<(When, Option<Lasts>)>,
    pub(crate) except: Vec<When>,
    pub(crate) notes: Vec<String>,
}

/// Reads a VEVENT. The error is one sentence: when it takes place cannot be read.
pub(crate) fn read(
    part: &Component,
    clocks: &mut Clocks<'_>,
    budget: &mut Budget,
) -> Result<Event, String> {
    let text = |name: &str| part.first(name).map(|one| values::text(one.value.trim()));
    let summary = text("SUMMARY").unwrap_or_default();
    let called = match shortened(&summary) {
        short if short.is_empty() => format!("The event at line {}", part.line),
        short => format!("“{short}” (line {})", part.line),
    };
    let mut when = |property: &Property| -> Result<When, String> {
        let moment = values::moment(property.value.trim()).ok_or_else(|| {
            let (name, value) = (&property.name, shortened(&property.value));
            format!("{called} is left out: its {name} “{value}” is no date and no time.")
        })?;
        Ok(clocks.when(as_day(moment, property), property.param("TZID"), budget))
    };
    let starts = match part.first("DTSTART") {
        Some(property) => when(property)?,
        None => return Err(format!("{called} is left out: it has no start.")),
    };
    let lasts = match (part.first("DTEND"), part.first("DURATION")) {
        (Some(property), _) => between(&starts, &when(property)?),
        (None, Some(property)) => {
            let length = values::length(&property.value).ok_or_else(|| {
                let value = shortened(&property.value);
                format!("{called} is left out: its DURATION “{value}” is no length of time.")
            })?;
            Some(of_length(&starts, length))
        }
        (None, None) => Some(match starts {
            When::Day(_) => Lasts::Days(1),
            When::At { .. } => Lasts::Exact(Duration::zero()),
        }),
    };
    let lasts = lasts.ok_or_else(|| format!("{called} is left out: it ends before it starts."))?;
    let replaces = part.first("RECURRENCE-ID").map(&mut when).transpose()?;
    let mut notes = Vec::new();
    let (mut also, mut except) = (Vec::new(), Vec::new());
    for (property, listed) in listed(part, "RDATE") {
        match extra(property, listed, &starts, clocks, budget) {
            Some(one) => also.push(one),
            None => notes.push(format!("{called}: its RDATE “{}” is not read.", shortened(listed))),
        }
    }
    for (property, listed) in listed(part, "EXDATE") {
        match values::moment(listed.trim()) {
            Some(moment) => {
                let moment = as_day(moment, property);
                except.push(clocks.when(moment, property.param("TZID"), budget));
            }
            None => {
                notes.push(format!("{called}: its EXDATE “{}” is not read.", shortened(listed)))
            }
        }
    }
    if part.first("EXRULE").is_some() {
        notes.push(format!("{called}: its EXRULE is not read, so it may be shown too often."));
    }
    let range = part.first("RECURRENCE-ID").and_then(|id| id.param("RANGE"));
    if range.is_some_and(|range| range.eq_ignore_ascii_case("THISANDFUTURE")) {
        notes
            .push(format!("{called} changes all later times too; only the first is changed here."));
    }
    let is = |name: &str, word: &str| {
        part.first(name).is_some_and(|one| one.value.trim().eq_ignore_ascii_case(word))
    };
    let number = part.first("SEQUENCE").and_then(|one| one.value.trim().parse().ok());
    let stamp = part.first("DTSTAMP").and_then(|one| match values::moment(one.value.trim())? {
        Moment::Utc(at) | Moment::Wall(at) => Some(at),
        Moment::Day(_) => None,
    });
    Ok(Event {
        uid: text("UID").filter(|uid| !uid.is_empty()),
        replaces,
        summary,
        blocks: !is("TRANSP", "TRANSPARENT") && !is("STATUS", "CANCELLED"),
        version: (number.unwrap_or(0), stamp),
        starts,
        lasts,
        rules: part.all("RRULE").map(|rule| rule.value.clone()).collect(),
        also,
        except,
        called,
        notes,
    })
}

/// A value that is said to be a DATE is one, even if a time is written behind it.
fn as_day(moment: Moment, property: &Property) -> Moment {
    match (property.param("VALUE"), moment) {
        (Some(kind), Moment::Wall(at) | Moment::Utc(at)) if kind.eq_ignore_ascii_case("DATE") => {
            Moment::Day(at.date())
        }
        _ => moment,
    }
}

fn listed<'a>(part: &'a Component, name: &'a str) -> impl Iterator<Item = (&'a Property, &'a str)> {
    let each = |property: &'a Property| property.value.split(',').map(move |one| (property, one));
    part.all(name).flat_map(each).filter(|(_, one)| !one.trim().is_empty())
}

/// How long from a start to the DTEND, which is not included; `None` if it lies before. A day whose
/// end is the day itself, as some programs write it, is one day.
fn between(starts: &When, ends: &When) -> Option<Lasts> {
    match (starts, ends) {
        (When::Day(first), _) => {
            let days = (ends.wall().date() - *first).num_days();
            (days >= 0).then(|| Lasts::Days(days.unsigned_abs().max(1)))
        }
        (When::At { wall, clock }, ends) => {
            let until = match ends {
                When::Day(day) => clock.instant(day.and_time(NaiveTime::MIN))?,
                When::At { wall, clock } => clock.instant(*wall)?,
            };
            let span = until - clock.instant(*wall)?;
            (span >= Duration::zero()).then_some(Lasts::Exact(span))
        }
    }
}

fn of_length(starts: &When, length: Length) -> Lasts {
    match starts {
        When::At { .. } => Lasts::Nominal(length),
        When::Day(_) => {
            let begun = (length.rest + Duration::seconds(86_399)).num_days();
            Lasts::Days(u64::try_from(length.days + begun).unwrap_or(0).max(1))
        }
    }
}

/// One value of an RDATE: a date, a time, or a period with an end of its own.
fn extra(
    property: &Property,
    listed: &str,
    starts: &When,
    clocks: &mut Clocks<'_>,
    budget: &mut Budget,
) -> Option<(When, Option<Lasts>)> {
    let tzid = property.param("TZID");
    let Some((from, to)) = listed.trim().split_once('/') else {
        let moment = as_day(values::moment(listed.trim())?, property);
        let when = clocks.when(moment, tzid, budget);
        // A day among times, or a time among days, is no time of this event.
        let alike = matches!((&when, starts), (When::Day(_), When::Day(_)))
            || matches!((&when, starts), (When::At { .. }, When::At { .. }));
        return alike.then_some((when, None));
    };
    let from = clocks.when(values::moment(from)?, tzid, budget);
    let lasts = match values::moment(to) {
        Some(to) => between(&from, &clocks.when(to, tzid, budget))?,
        None => of_length(&from, values::length(to)?),
    };
    Some((from, Some(lasts)))
}
