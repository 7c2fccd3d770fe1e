//! The coach's calendars, from files and from a server: when they say the coach is taken.
//!
//! Their texts are kept, and the times in them worked out for the days around today, so that asking
//! for a week costs no reading of texts. Which calendars there are is an act of the journal like
//! any other; what they say was found outside and can be read there again, so that is none.

use chrono::{DateTime, Duration, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Occupied, calendar_store as store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::ical;
use crate::kinds::ids::CalendarId;
use crate::kinds::text::counted;
use crate::kinds::zones::{Zone, local_of, of_this_machine, resolve};
use crate::kinds::{Day, Instant, Span, Time};

/// Days back from today that times are worked out for.
const BACK: i64 = 62;
/// Days ahead.
const AHEAD: i64 = 550;
/// Times are worked out anew when fewer days than these are left.
const FEW: i64 = 400;
/// So many notes of one calendar are kept.
const MOST_NOTES: usize = 20;

/// What a calendar is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CalendarRole {
    /// It says when the coach is taken.
    Busy,
    /// Lessons are written into it.
    Lessons,
}

crate::db::words! {
    CalendarRole {
        Busy = "busy",
        Lessons = "lessons",
    }
}

/// A calendar of the coach's.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OwnCalendar {
    /// Which one.
    pub id: CalendarId,
    /// What it is called.
    pub name: String,
    /// What it is for.
    pub role: CalendarRole,
    /// Its path on the server; nothing of one that was read from a file.
    pub href: Option<String>,
    /// When it was read last; nothing before it ever was.
    pub read: Option<Instant>,
    /// The last day for which its times are known.
    pub until: Option<Day>,
    /// How many events it holds.
    pub events: u32,
    /// What could not be read, a sentence each.
    pub notes: Vec<String>,
    /// What is known of it, as a sentence.
    pub words: String,
}

/// Which calendar.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichCalendar {
    /// The calendar.
    pub calendar: CalendarId,
}

/// A text of a calendar: of one event with all that replaces times of it, or a whole file.
pub struct CalendarPart {
    /// Its path on the server; empty of a file.
    pub href: String,
    /// Its version on the server; empty of a file.
    pub etag: String,
    /// The text.
    pub text: Vec<u8>,
}

/// What became of the texts of a calendar.
pub struct NewParts {
    /// Whether `changed` is all there is.
    pub whole: bool,
    /// Texts that are new or other than before.
    pub changed: Vec<CalendarPart>,
    /// Paths of those that are gone.
    pub gone: Vec<String>,
    /// From what to ask for changes the next time.
    pub token: Option<String>,
}

/// The coach's calendars, by name.
///
/// # Errors
/// `Storage`.
pub fn calendars(db: &Reading<'_>) -> Result<Vec<OwnCalendar>> {
    let mut all = store::all(db)?;
    for calendar in &mut all {
        calendar.words = words(calendar);
    }
    Ok(all)
}

/// Takes lessons out of the texts that are kept of the coach's calendars. Their times need no working
/// out anew: a lesson of this file never counts as taken time.
///
/// # Errors
/// `Storage`.
pub fn forget_events(db: &Writing<'_>, uids: &[String]) -> Result<()> {
    for uid in uids {
        for (calendar, href, text) in store::parts_with(db, uid)? {
            store::change_part(db, calendar, &href, &ical::without(&text, uids))?;
        }
    }
    Ok(())
}

/// One of them.
///
/// # Errors
/// `NotFound`.
pub fn calendar(db: &Reading<'_>, which: CalendarId) -> Result<OwnCalendar> {
    let mut one = store::one(db, which)?;
    one.words = words(&one);
    Ok(one)
}

fn words(of: &OwnCalendar) -> String {
    let Some(until) = of.until else { return "Not read yet.".to_owned() };
    let events = counted(i64::from(of.events), "event", "events");
    match of.role {
        CalendarRole::Busy => format!("{events}; its times are known until {}.", until.words()),
        CalendarRole::Lessons => "Lessons are written into it.".to_owned(),
    }
}

/// Takes up a calendar; it is read afterwards.
///
/// # Errors
/// `Storage`.
pub fn add_calendar(
    db: &Writing<'_>,
    name: &str,
    role: CalendarRole,
    href: Option<&str>,
) -> Result<CalendarId> {
    let id: CalendarId = db.id();
    store::add(db, id, name, role, href)?;
    Ok(id)
}

/// Takes a calendar out: its times take nobody's time any more. The calendar itself stays where it
/// is.
///
/// # Errors
/// `NotFound`.
pub fn remove_calendar(db: &Writing<'_>, which: WhichCalendar) -> Result<OwnCalendar> {
    let mut one = calendar(db, which.calendar)?;
    store::remove(db, which.calendar, db.today())?;
    db.label(format!("{} taken out of your calendars", one.name));
    one.words = String::new();
    Ok(one)
}

/// From what a calendar is to be asked for changes; `None` when it is to be asked for all of it: at
/// first, and when its times reach no longer far enough ahead, since a server was asked only for
/// what lay within them.
///
/// # Errors
/// `NotFound`; `Storage`.
pub fn calendar_token(db: &Reading<'_>, which: CalendarId) -> Result<Option<String>> {
    let anew = is_short(&store::one(db, which)?, db.today());
    if anew { Ok(None) } else { store::token(db, which) }
}

/// Keeps what became of a calendar's texts, and works its times out anew. Events for which `ours`
/// says yes to their UID take nobody's time: they are lessons that stand here anyway.
///
/// # Errors
/// `NotPossible` when a file is no whole calendar, or too large; `NotFound`; `Storage`.
pub fn keep_parts(
    db: &Writing<'_>,
    which: CalendarId,
    new: NewParts,
    ours: &dyn Fn(&str) -> bool,
) -> Result<OwnCalendar> {
    let one = store::one(db, which)?;
    if new.whole {
        store::clear_parts(db, which)?;
    }
    for href in &new.gone {
        store::remove_part(db, which, href)?;
    }
    for part in &new.changed {
        store::keep_part(db, which, part)?;
    }
    let same = !new.whole && new.changed.is_empty() && new.gone.is_empty();
    if same && one.until.is_some() && !is_short(&one, db.today()) {
        store::keep_read(db, which, db.now())?;
    } else {
        work_out(db, &one, false, ours)?;
    }
    store::keep_token(db, which, new.token.as_deref())?;
    calendar(db, which)
}

/// The calendars from files whose times reach no longer far enough ahead.
///
/// # Errors
/// `Storage`.
pub fn behind(db: &Reading<'_>) -> Result<Vec<CalendarId>> {
    let short = |c: &OwnCalendar| c.href.is_none() && is_short(c, db.today());
    Ok(store::all(db)?.into_iter().filter(short).map(|c| c.id).collect())
}

/// Whether the times of a calendar reach no longer far enough ahead.
fn is_short(of: &OwnCalendar, today: Day) -> bool {
    of.until.is_some_and(|until| until.since(today) < FEW)
}

/// Works the times of a calendar out anew, from texts that are kept.
///
/// # Errors
/// `NotFound`; `Storage`.
pub fn work_out_anew(
    db: &Writing<'_>,
    which: CalendarId,
    ours: &dyn Fn(&str) -> bool,
) -> Result<()> {
    work_out(db, &store::one(db, which)?, true, ours)
}

/// The zone of times that name none: this machine's.
pub fn home() -> Result<Zone> {
    let name = of_this_machine();
    Zone::parse(&name).or_else(|_| Zone::parse("UTC")).map_err(|e| Error::Fault(e.to_string()))
}

/// `anew`: from the texts as they were read before.
fn work_out(
    db: &Writing<'_>,
    one: &OwnCalendar,
    anew: bool,
    ours: &dyn Fn(&str) -> bool,
) -> Result<()> {
    let (first, last) = (db.today().plus(-BACK), db.today().plus(AHEAD));
    let home = home()?;
    store::clear_times(db, one.id)?;
    let (mut events, mut notes) = (0_usize, Vec::new());
    if one.role == CalendarRole::Busy {
        for part in store::parts(db, one.id)? {
            let read = match ical::busy(&part.text, first.date(), last.date(), &home) {
                Ok(read) => read,
                Err(broken) if one.href.is_none() => {
                    return Err(Error::not_possible("broken_calendar", &broken.words));
                }
                Err(broken) => {
                    notes.push(format!("One event on the server is left out: {}", broken.words));
                    continue;
                }
            };
            events += read.events;
            notes.extend(read.skipped);
            for busy in read.busy.iter().filter(|busy| !ours(&busy.uid)) {
                store::keep_time(db, one.id, busy)?;
            }
        }
    }
    notes.truncate(MOST_NOTES);
    let events = u32::try_from(events).unwrap_or(u32::MAX);
    let read = one.read.filter(|_| anew).unwrap_or_else(|| db.now());
    store::keep_known(db, one.id, &store::Known { read, until: last, events, notes: &notes })
}

/// What the calendars say takes the coach's time on these days, on the clock of a zone.
pub(super) fn occupied(db: &Reading<'_>, span: Span, zone: &Zone) -> Result<Vec<Occupied>> {
    let midnight = |day: Day| -> Option<DateTime<Utc>> {
        let local = day.date().and_time(Time::MIDNIGHT.time());
        Some(resolve(local, zone).ok()?.instant(false).to_utc())
    };
    let ends = span.last.plus(1);
    let Some((from, to)) = midnight(span.first).zip(midnight(ends)) else { return Ok(Vec::new()) };
    let mut taken = Vec::new();
    for time in store::times(db, (Instant::from_chrono(&from), Instant::from_chrono(&to)))? {
        // A minute begun is taken.
        let end = time.ends.utc() + Duration::seconds(59);
        let Some((starts, mut ends)) = local(time.starts.utc(), zone).zip(local(end, zone)) else {
            continue;
        };
        // Where the clock is put back meanwhile, its length says how long.
        if ends <= starts {
            let minutes = (time.ends.utc() - time.starts.utc()).num_minutes();
            ends = (starts.0, (starts.1 + u32::try_from(minutes).unwrap_or(0)).min(1440));
        }
        let mut day = starts.0.max(span.first);
        while day <= ends.0 && day <= span.last {
            let from = if day == starts.0 { starts.1 } else { 0 };
            let to = if day == ends.0 { ends.1 } else { 1440 };
            if from < to {
                taken.push(Occupied { day, from, to, what: time.what.clone() });
            }
            day = day.plus(1);
        }
    }
    for (first, last, what) in store::whole_days(db, span)? {
        let from = first.max(span.first);
        for n in 0..=last.min(span.last).since(from) {
            taken.push(Occupied { day: from.plus(n), from: 0, to: 1440, what: what.clone() });
        }
    }
    Ok(taken)
}

/// An instant as day and minute on a clock.
fn local(at: DateTime<Utc>, zone: &Zone) -> Option<(Day, u32)> {
    let there = local_of(&at, zone).ok()?;
    let time = Time::parse(&there.format("%H:%M").to_string())?;
    Some((Day::from_date(there.date())?, time.minutes()))
}
