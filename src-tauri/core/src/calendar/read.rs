//! Reading a calendar file: when it says the coach is taken.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::ical;
use crate::kinds::ids::{CalendarId, LessonId};
use crate::lessons;
use crate::own_time::{self, CalendarPart, CalendarRole, NewParts, OwnCalendar};

/// A calendar file to read.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadCalendar {
    /// The calendar it takes the place of; left out for a new one.
    #[serde(default)]
    pub calendar: Option<CalendarId>,
    /// What a new one is called.
    #[serde(default)]
    pub name: String,
    /// The whole text of the file.
    pub text: String,
}

/// Reads a calendar file, in place of what was read from it before.
///
/// # Errors
/// As [`read_bytes`].
pub fn read(db: &Writing<'_>, read: ReadCalendar) -> Result<OwnCalendar> {
    read_bytes(db, read.calendar, &read.name, read.text.into_bytes())
}

/// The same, as it lies in a file.
///
/// # Errors
/// `NotPossible` when it is no whole calendar or too large: then nothing of it is taken, and what
/// was read before stays; `Refused` without a name; `NotFound`.
pub fn read_bytes(
    db: &Writing<'_>,
    calendar: Option<CalendarId>,
    name: &str,
    text: Vec<u8>,
) -> Result<OwnCalendar> {
    not_too_large(u64::try_from(text.len()).unwrap_or(u64::MAX))?;
    let which = match calendar {
        Some(which) if own_time::calendar(db, which)?.href.is_some() => {
            let words = "This calendar is on a server; it is read from there.";
            return Err(Error::not_possible("on_a_server", words));
        }
        Some(which) => which,
        None => {
            let mut p = Problems::new();
            let name = p.name("name", name, "The calendar\u{2019}s name");
            p.done()?;
            own_time::add_calendar(db, &name, CalendarRole::Busy, None)?
        }
    };
    let part = CalendarPart { href: String::new(), etag: String::new(), text };
    let new = NewParts { whole: true, changed: vec![part], gone: Vec::new(), token: None };
    let read = own_time::keep_parts(db, which, new, &|uid| is_ours(db, uid))?;
    if calendar.is_some() {
        db.cannot_be_undone();
    }
    db.label(format!("{} read", read.name));
    Ok(read)
}

/// Refuses a file by its size, before it is read.
///
/// # Errors
/// `NotPossible` when it is too large to be read.
pub fn not_too_large(bytes: u64) -> Result<()> {
    let most = u64::try_from(ical::LARGEST).unwrap_or(u64::MAX);
    if bytes <= most {
        return Ok(());
    }
    let (is, most) = (bytes.div_ceil(1_048_576), most / 1_048_576);
    let words = format!(
        "This file has {is} MB; a calendar of more than {most} MB is not read. Save one with fewer years in it, and read that."
    );
    Err(Error::not_possible("too_large", &words))
}

/// Whether an event is a lesson that stands here anyway.
pub(super) fn is_ours(db: &Reading<'_>, uid: &str) -> bool {
    let lesson = uid.strip_suffix("@carryover").and_then(|id| uuid::Uuid::parse_str(id).ok());
    lesson.is_some_and(|id| lessons::show(db, lessons::Which { lesson: LessonId(id) }).is_ok())
}

/// Works out anew what calendars say of the days ahead, where that no longer reaches far enough.
///
/// # Errors
/// `Storage`.
pub fn catch_up(db: &Writing<'_>) -> Result<()> {
    for which in own_time::behind(db)? {
        own_time::work_out_anew(db, which, &|uid| is_ours(db, uid))?;
    }
    Ok(())
}
