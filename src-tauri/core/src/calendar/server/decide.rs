//! Where the server says something else of a lesson, the coach decides which of the two stands.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Entry, Says, Theirs, WhichEntry, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::ids::LessonId;
use crate::kinds::zones::{Zone, local_of};
use crate::kinds::{Day, Instant, Time};
use crate::lessons::{self, ChangeLesson, EndUntaught, Lesson, WhichHour};

/// A lesson of which the server says something else.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Difference {
    /// Which lesson.
    pub lesson: LessonId,
    /// Whose, or what it was called when it was written there.
    pub what: String,
    /// What stands here.
    pub here: String,
    /// What the server says.
    pub there: String,
    /// What taking the server's word does here, as on a button; empty where it cannot be taken.
    pub take: String,
    /// What keeping to what stands here does there.
    pub put_back: String,
}

/// All lessons of which the server says something else.
pub(super) fn differences(db: &Reading<'_>) -> Result<Vec<Difference>> {
    let mut all = Vec::new();
    for entry in store::all(db)? {
        let Some(theirs) = &entry.theirs else { continue };
        let lesson = standing(db, entry.lesson);
        let zone = zone_of(lesson.as_ref())?;
        let here = match &lesson {
            Some(l) => format!(
                "{} {}, {} to {}, {}",
                l.day.date().format("%A"),
                l.day.words(),
                l.starts,
                l.ends,
                place(l)
            ),
            None => "It was called off.".to_owned(),
        };
        let (there, mut take) = match theirs {
            Theirs::Other(says) => {
                let moved = lesson.as_ref().is_none_or(|_| !same_time(says, &entry));
                let take = if moved { "Move the lesson here too" } else { "Leave it so there" };
                (words(says, &zone), take)
            }
            Theirs::Unclear => {
                ("It comes again there, or at a time that cannot be read.".to_owned(), "")
            }
            Theirs::CalledOff => {
                ("It is called off there.".to_owned(), "Call the lesson off here too")
            }
            Theirs::Gone => ("It is no longer there.".to_owned(), "Call the lesson off here too"),
        };
        if lesson.is_none() {
            take = "";
        }
        let put_back =
            if lesson.is_some() { "Write it there as it is here" } else { "Take it out there" };
        all.push(Difference {
            lesson: entry.lesson,
            what: lesson.map_or(entry.agreed.summary, |l| l.names()),
            here,
            there,
            take: take.to_owned(),
            put_back: put_back.to_owned(),
        });
    }
    Ok(all)
}

/// Of how many lessons the server says something else.
///
/// # Errors
/// `Storage`.
pub fn to_decide(db: &Reading<'_>) -> Result<u32> {
    store::to_decide(db)
}

/// The lesson, where it stands.
fn standing(db: &Reading<'_>, lesson: LessonId) -> Option<Lesson> {
    lessons::show(db, lessons::Which { lesson }).ok().filter(Lesson::stands)
}

fn same_time(says: &Says, entry: &Entry) -> bool {
    (says.starts, says.ends) == (entry.agreed.says.starts, entry.agreed.says.ends)
}

fn zone_of(lesson: Option<&Lesson>) -> Result<Zone> {
    let name = lesson.map_or("UTC", |l| l.zone.as_str());
    Zone::parse(name).map_err(|e| Error::Fault(e.to_string()))
}

fn place(l: &Lesson) -> String {
    let parts = [l.court_name.as_str(), l.place.as_str()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// An instant on the clock of a zone.
fn civil(at: Instant, zone: &Zone) -> Option<(Day, Time)> {
    let local = local_of(&at.utc(), zone).ok()?;
    Some((Day::from_date(local.date())?, Time::parse(&local.format("%H:%M").to_string())?))
}

fn words(says: &Says, zone: &Zone) -> String {
    let Some(((day, starts), (_, ends))) = civil(says.starts, zone).zip(civil(says.ends, zone))
    else {
        return "At a time that cannot be read.".to_owned();
    };
    let when = format!("{} {}, {starts} to {ends}", day.date().format("%A"), day.words());
    if says.place.is_empty() { when } else { format!("{when}, {}", says.place) }
}

/// Takes the server's word: the lesson moves, or is called off, here too.
///
/// # Errors
/// `NotFound`; `NotPossible` where the server says nothing that a lesson could follow; those of
/// changing the lesson, as when the day lies outside the visit.
pub fn take(db: &Writing<'_>, which: WhichEntry) -> Result<Lesson> {
    let mut entry = store::one(db, which.lesson)?;
    let lesson = lessons::show(db, lessons::Which { lesson: which.lesson })?;
    let cannot = || {
        let words = "The calendar says nothing that this lesson could follow. Change the lesson by hand, or write it there as it is here.";
        Error::not_possible("unclear", words)
    };
    match entry.theirs.take() {
        Some(Theirs::Other(says)) if lesson.stands() => {
            if same_time(&says, &entry) {
                store::keep(db, &entry)?;
                return Ok(lesson);
            }
            let zone = zone_of(Some(&lesson))?;
            let (day, starts) = civil(says.starts, &zone).ok_or_else(cannot)?;
            let minutes = (says.ends.utc() - says.starts.utc()).num_minutes();
            let change = ChangeLesson {
                lesson: lesson.id,
                facility: lesson.facility,
                court: lesson.court,
                day: day.to_string(),
                starts: starts.to_string(),
                which: which_hour(&says, &zone),
                minutes,
            };
            let moved = lessons::change(db, change)?;
            entry.agreed.says = Says { place: entry.agreed.says.place.clone(), ..says };
            store::keep(db, &entry)?;
            Ok(moved)
        }
        Some(theirs @ (Theirs::CalledOff | Theirs::Gone)) if lesson.stands() => {
            let reason = "Taken out of the calendar".to_owned();
            let off = lessons::call_off(db, EndUntaught { lesson: lesson.id, reason })?;
            match theirs {
                Theirs::Gone => store::drop(db, lesson.id)?,
                _ => store::keep(db, &entry)?,
            }
            Ok(off)
        }
        _ => Err(cannot()),
    }
}

/// Which of two hours an instant is in, where the clock shows its time twice.
fn which_hour(says: &Says, zone: &Zone) -> WhichHour {
    use crate::kinds::zones::{Moment, resolve};
    let local = local_of(&says.starts.utc(), zone).ok();
    match local.and_then(|local| resolve(local, zone).ok()) {
        Some(Moment::Twice { second, .. }) if second.to_utc() == says.starts.utc() => {
            WhichHour::Second
        }
        Some(Moment::Twice { .. }) => WhichHour::First,
        _ => WhichHour::Once,
    }
}

/// Keeps to what stands here: the next exchange writes it there again, or takes it out.
///
/// # Errors
/// `NotFound`; `NotPossible` when there is nothing to decide.
pub fn put_back(db: &Writing<'_>, which: WhichEntry) -> Result<WhichEntry> {
    let mut entry = store::one(db, which.lesson)?;
    match entry.theirs.take() {
        None => {
            let words = "The calendar says nothing else of this lesson any more.";
            return Err(Error::not_possible("same", words));
        }
        Some(Theirs::Gone) => store::drop(db, which.lesson)?,
        Some(theirs) => {
            // What is agreed is now what stands there, which is not what stands here.
            entry.agreed.says = match theirs {
                Theirs::Other(says) => says,
                _ => Says {
                    starts: Instant::from_unix_millis(0),
                    ends: Instant::from_unix_millis(0),
                    place: String::new(),
                },
            };
            store::keep(db, &entry)?;
        }
    }
    Ok(which)
}
