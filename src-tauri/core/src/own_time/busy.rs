//! What takes the coach's time besides lessons: once, over some days, or again and again.

use chrono::{Datelike, NaiveDateTime, Weekday};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Again, Busy, BusyShown, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::facilities::{read_times, read_weekdays};
use crate::ical::recur::occurrences;
use crate::kinds::ids::BusyId;
use crate::kinds::text::ordinal;
use crate::kinds::zones::{Zone, local_of, resolve};
use crate::kinds::{Day, Span, Time};

/// The most exceptions of one thing.
const MOST_EXCEPT: usize = 366;

/// Which of the things that take the coach's time.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichBusy {
    /// The thing.
    pub busy: BusyId,
}

/// A changed thing.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeBusy {
    /// Which one.
    pub id: BusyId,
    /// All that is to be kept, changed or not.
    pub busy: Busy,
}

/// Which of them to list.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListBusy {
    /// Those that are over as well.
    pub over: bool,
}

/// A time that is taken, on the clock that was asked about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Occupied {
    /// The day.
    pub day: Day,
    /// From this minute after midnight.
    pub from: u32,
    /// Until this minute.
    pub to: u32,
    /// By what.
    pub what: String,
}

/// Adds something that takes the coach's time.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, busy: Busy) -> Result<BusyShown> {
    let id: BusyId = db.id();
    keep(db, id, busy, "added")
}

/// Changes something that takes the coach's time.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn change(db: &Writing<'_>, change: ChangeBusy) -> Result<BusyShown> {
    store::one(db, change.id)?;
    keep(db, change.id, change.busy, "changed")
}

fn keep(db: &Writing<'_>, id: BusyId, busy: Busy, what: &str) -> Result<BusyShown> {
    let busy = read(busy)?;
    store::write(db, id, &busy)?;
    db.label(format!("{} {what} in your own time", busy.what));
    let words = words(&busy);
    Ok(BusyShown { id, busy, words })
}

/// Takes something out of the coach's time.
///
/// # Errors
/// `NotFound`.
pub fn remove(db: &Writing<'_>, which: WhichBusy) -> Result<BusyShown> {
    let busy = store::one(db, which.busy)?;
    store::remove(db, which.busy, db.today())?;
    db.label(format!("{} taken out of your own time", busy.what));
    let words = words(&busy);
    Ok(BusyShown { id: which.busy, busy, words })
}

/// What takes the coach's time, the first to begin first.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, list: ListBusy) -> Result<Vec<BusyShown>> {
    let today = db.today();
    let over = |b: &Busy| {
        let end = if b.last.is_empty() && b.again == Again::Never { &b.first } else { &b.last };
        Day::parse(end).is_some_and(|end| end < today)
    };
    let all = store::all(db)?;
    let shown = all.into_iter().filter(|(_, busy)| list.over || !over(busy));
    Ok(shown.map(|(id, busy)| BusyShown { id, words: words(&busy), busy }).collect())
}

/// The thing as it can be stored.
fn read(b: Busy) -> Result<Busy> {
    let mut p = Problems::new();
    let what = p.name("what", &b.what, "What it is");
    let first = p.day("first", &b.first, "The first day");
    let last = p.day_or_none("last", Some(&b.last), "The last day");
    if last.is_some_and(|last| last < first) && Day::parse(b.first.trim()).is_some() {
        p.add("last", "end_before_start", "The last day is before the first.".to_owned());
    }
    let typed = (b.starts.as_str(), b.ends.as_str());
    let (starts, ends) = read_times(&mut p, ("starts", "ends"), typed, false);
    let zone = match b.zone.trim() {
        "" => String::new(),
        typed => p.zone("zone", typed, "The time zone").map(|z| z.to_string()).unwrap_or_default(),
    };
    let weekly = matches!(b.again, Again::EveryWeek | Again::EverySecondWeek);
    let weekdays = if weekly { read_weekdays(&mut p, "weekdays", b.weekdays) } else { Vec::new() };
    if b.except.len() > MOST_EXCEPT {
        let words = format!("There is room for {MOST_EXCEPT} exceptions.");
        p.add("except", "too_many", words);
    }
    let mut except = Vec::new();
    for (n, day) in b.except.iter().enumerate().filter(|(_, day)| !day.trim().is_empty()) {
        except.push(p.day(&format!("except[{n}]"), day, "The day").to_string());
    }
    except.sort();
    except.dedup();
    p.done()?;
    let last = last.map(|day| day.to_string()).unwrap_or_default();
    let first = first.to_string();
    Ok(Busy { what, first, last, starts, ends, zone, again: b.again, weekdays, except })
}

const WEEKDAYS: [&str; 7] = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];

/// The rule by which it comes again, as RFC 5545 (3.3.10) writes it; `None` for what does not.
fn rule(b: &Busy) -> Option<String> {
    let first = Day::parse(&b.first)?.date();
    let until = Day::parse(&b.last)
        .map(|day| format!(";UNTIL={}T235959Z", day.date().format("%Y%m%d")))
        .unwrap_or_default();
    let number = |day: Weekday| day.num_days_from_monday() as usize;
    let on = || {
        let days: Vec<&str> = match b.weekdays.as_slice() {
            [] => vec![WEEKDAYS[number(first.weekday())]],
            some => some
                .iter()
                .filter_map(|d| WEEKDAYS.get(usize::from(*d).wrapping_sub(1)).copied())
                .collect(),
        };
        days.join(",")
    };
    Some(match b.again {
        Again::Never => return None,
        Again::EveryWeek => format!("FREQ=WEEKLY;WKST=MO;BYDAY={}{until}", on()),
        Again::EverySecondWeek => format!("FREQ=WEEKLY;INTERVAL=2;WKST=MO;BYDAY={}{until}", on()),
        Again::EveryMonth => format!("FREQ=MONTHLY;BYMONTHDAY={}{until}", first.day()),
        Again::EveryMonthByWeekday => {
            let (nth, _) = nth_weekday(first);
            format!("FREQ=MONTHLY;BYDAY={nth}{}{until}", WEEKDAYS[number(first.weekday())])
        }
    })
}

/// Which weekday of its month a date is: 1 to 4, or −1 for a fifth, which is the last; and in words.
fn nth_weekday(date: chrono::NaiveDate) -> (i32, String) {
    match date.day0() / 7 {
        4 => (-1, "last".to_owned()),
        n => (n as i32 + 1, ordinal(n as usize + 1)),
    }
}

/// When it is, in words: "every week on Tuesday, 19:00 to 22:00".
fn words(b: &Busy) -> String {
    let Some(first) = Day::parse(&b.first) else { return String::new() };
    let last = Day::parse(&b.last);
    let names = || {
        let days: Vec<String> = match b.weekdays.as_slice() {
            [] => vec![first.date().format("%A").to_string()],
            some => some.iter().map(|d| weekday_name(*d)).collect(),
        };
        days.join(", ")
    };
    let mut parts = vec![match b.again {
        Again::Never => Span { first, last: last.unwrap_or(first) }.words(),
        Again::EveryWeek => format!("every week on {}", names()),
        Again::EverySecondWeek => format!("every second week on {}", names()),
        Again::EveryMonth => format!("every month on day {}", first.date().day()),
        Again::EveryMonthByWeekday => {
            let (_, nth) = nth_weekday(first.date());
            format!("every month on the {nth} {}", first.date().format("%A"))
        }
    }];
    if !b.starts.is_empty() {
        let end = if b.ends == "00:00" { "midnight" } else { &b.ends };
        parts.push(format!("{} to {end}", b.starts));
    }
    if b.again != Again::Never {
        parts.push(format!("from {}", first.words()));
        parts.extend(last.map(|last| format!("until {}", last.words())));
    }
    if !b.zone.is_empty() {
        parts.push(format!("on the clock of {}", b.zone));
    }
    let except: Vec<String> =
        b.except.iter().filter_map(|day| Day::parse(day)).map(Day::words).collect();
    if !except.is_empty() {
        parts.push(format!("but not on {}", except.join(", ")));
    }
    parts.join(", ")
}

fn weekday_name(number: u8) -> String {
    Weekday::try_from(number.wrapping_sub(1))
        .ok()
        .and_then(|day| chrono::NaiveDate::from_isoywd_opt(2024, 1, day))
        .map(|date| date.format("%A").to_string())
        .unwrap_or_default()
}

/// What takes the coach's time on these days, on the clock of a zone.
///
/// # Errors
/// `Storage`; a fault when a stored rule cannot be followed.
pub fn occupied(db: &Reading<'_>, span: Span, zone: &Zone) -> Result<Vec<Occupied>> {
    let mut taken = Vec::new();
    for (_, busy) in store::all(db)? {
        taken.extend(of(&busy, span, zone)?);
    }
    taken.extend(super::calendars::occupied(db, span, zone)?);
    taken.sort_by(|a, b| (a.day, a.from, &a.what).cmp(&(b.day, b.from, &b.what)));
    Ok(taken)
}

/// The days on which it takes place, those of a zone a day away included.
fn days_of(b: &Busy, span: Span) -> Result<Vec<Day>> {
    let Some(first) = Day::parse(&b.first) else { return Ok(Vec::new()) };
    let wide = Span { first: span.first.plus(-1), last: span.last.plus(1) };
    let Some(rule) = rule(b) else {
        let last = Day::parse(&b.last).unwrap_or(first).min(wide.last);
        let from = first.max(wide.first);
        return Ok((0..=last.since(from)).map(|n| from.plus(n)).collect());
    };
    let mut except: Vec<_> =
        b.except.iter().filter_map(|day| Day::parse(day)).map(Day::date).collect();
    // A rule counts its first day in any case (RFC 5545, 3.8.5.3); here it says only from when on.
    let number = u8::try_from(first.date().weekday().number_from_monday()).unwrap_or(0);
    if !b.weekdays.is_empty() && !b.weekdays.contains(&number) {
        except.push(first.date());
    }
    let starts = first.date().and_time(Time::MIDNIGHT.time());
    let found = occurrences(&rule, starts, &except, wide.first.date(), wide.last.date())
        .map_err(Error::Fault)?;
    Ok(found.into_iter().filter_map(|at| Day::from_date(at.date())).collect())
}

pub(super) fn of(b: &Busy, span: Span, zone: &Zone) -> Result<Vec<Occupied>> {
    let skipped = |day: &Day| b.except.iter().any(|e| Day::parse(e) == Some(*day));
    let own = (!b.zone.is_empty()).then(|| Zone::parse(&b.zone).ok()).flatten();
    let from = Time::parse(&b.starts).map_or(0, Time::minutes);
    let to = match Time::parse(&b.ends).map_or(0, Time::minutes) {
        0 => 1440,
        to => to,
    };
    let mut taken = Vec::new();
    for day in days_of(b, span)?.into_iter().filter(|day| !skipped(day)) {
        let piece = |day: Day, from: u32, to: u32| {
            let held = span.holds(day) && from < to;
            held.then(|| Occupied { day, from, to, what: b.what.clone() })
        };
        match &own {
            // A whole day is the day wherever the coach is.
            Some(own) if own != zone && !b.starts.is_empty() => {
                let (a, z) = (moved(day, from, own, zone), moved(day, to, own, zone));
                let Some((a, z)) = a.zip(z) else { continue };
                if a.0 == z.0 {
                    taken.extend(piece(a.0, a.1, z.1));
                } else {
                    taken.extend(piece(a.0, a.1, 1440));
                    taken.extend(piece(z.0, 0, z.1));
                }
            }
            _ => taken.extend(piece(day, from, to)),
        }
    }
    Ok(taken)
}

/// A minute of a day on another clock; the first of two, and the one after a gap.
fn moved(day: Day, minute: u32, from: &Zone, to: &Zone) -> Option<(Day, u32)> {
    let (day, minute) = if minute == 1440 { (day.plus(1), 0) } else { (day, minute) };
    let local: NaiveDateTime = day.date().and_time(Time::MIDNIGHT.plus(minute).time());
    let at = resolve(local, from).ok()?.instant(false);
    let there = local_of(&at, to).ok()?;
    let time = Time::parse(&there.format("%H:%M").to_string())?;
    Some((Day::from_date(there.date())?, time.minutes()))
}
