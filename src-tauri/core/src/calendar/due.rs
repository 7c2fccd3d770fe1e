//! Which invitations of a visit are due, what they say, and that they were written.

use chrono::{DateTime, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Told};
use super::{InvitationDue, InvitationKind};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::ical::{self, Event, Method, Person};
use crate::intake::written_to::{WrittenTo, written_to};
use crate::kinds::ids::{LessonId, StudentId};
use crate::kinds::text::counted;
use crate::kinds::zones::Zone;
use crate::lessons::{self, Attending, Lesson, LessonState, ListLessons, WhichHour};
use crate::settings::{self, Settings};
use crate::visits::{self, Visit, Which};

/// So many invitations were written.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Written {
    /// How many.
    pub invitations: u32,
}

/// What an invitation says of time and place: what a student must notice when it changes.
fn said(l: &Lesson) -> String {
    format!("{} {} {} {} {} {}", l.day, l.starts, l.minutes, l.zone, l.place, l.court_name)
}

struct Due {
    lesson: Lesson,
    who: Attending,
    shown: InvitationDue,
}

fn all(db: &Reading<'_>, visit: &Visit) -> Result<Vec<Due>> {
    let me = settings::show(db)?;
    let to = written_to(db, visit.student, db.today())?;
    let on = ListLessons { visit: Some(visit.id), from: None, to: None };
    let mut due = Vec::new();
    for lesson in lessons::list(db, on)? {
        let Some(who) = lesson.students.iter().find(|s| s.visit == visit.id).cloned() else {
            continue;
        };
        let told = store::told(db, lesson.id, who.student)?;
        let stands = lesson.state == LessonState::Planned;
        let (kind, sequence) = match told {
            None if stands => (InvitationKind::New, 0),
            Some(told) if stands && (told.cancelled || told.said != said(&lesson)) => {
                (InvitationKind::Changed, told.sequence + 1)
            }
            Some(told) if lesson.state == LessonState::CalledOff && !told.cancelled => {
                (InvitationKind::CalledOff, told.sequence + 1)
            }
            _ => continue,
        };
        let when =
            format!("{} {}, {}", lesson.day.date().format("%A"), lesson.day.words(), lesson.starts);
        let words = match kind {
            InvitationKind::New => format!("Invite to the lesson on {when}."),
            InvitationKind::Changed => format!("Tell that the lesson is now on {when}."),
            InvitationKind::CalledOff => format!("Tell that the lesson on {when} is called off."),
        };
        let trouble = if let Some(words) = cannot_reach(&to, &visit.name) {
            words
        } else if me.email.is_empty() {
            "Your own e-mail address is not known yet; write it down under Coach.".to_owned()
        } else {
            String::new()
        };
        let shown = InvitationDue {
            lesson: lesson.id,
            student: who.student,
            kind,
            words,
            sequence,
            trouble,
        };
        due.push(Due { lesson, who, shown });
    }
    Ok(due)
}

/// Why an invitation cannot be addressed; `None` when it can.
fn cannot_reach(to: &WrittenTo, student: &str) -> Option<String> {
    let Some(first) = &to.first else { return Some(to.against.clone()) };
    let without = |name: &str| format!("{name} has no e-mail address, which an invitation needs.");
    if first.email.is_empty() {
        return Some(without(if to.through { &first.name } else { student }));
    }
    to.second.as_ref().filter(|second| second.email.is_empty()).map(|second| {
        format!("{} A second adult has to be on each message to a minor.", without(&second.name))
    })
}

/// The invitations of a visit that are due, in time.
///
/// # Errors
/// `NotFound`.
pub fn due(db: &Reading<'_>, which: Which) -> Result<Vec<InvitationDue>> {
    let visit = visits::show(db, which)?;
    Ok(all(db, &visit)?.into_iter().map(|due| due.shown).collect())
}

/// The lesson as an event of a calendar.
pub(super) fn event(
    l: &Lesson,
    me: &Settings,
    stamp: DateTime<Utc>,
    sequence: u32,
    summary: String,
) -> Result<Event> {
    let zone = Zone::parse(&l.zone).map_err(|e| Error::Fault(e.to_string()))?;
    let starts = l.day.date().and_time(l.starts.time());
    let ends = starts + chrono::Duration::minutes(i64::from(l.minutes));
    let place = [l.court_name.as_str(), l.place.as_str()];
    let place: Vec<&str> = place.into_iter().filter(|part| !part.is_empty()).collect();
    Ok(Event {
        uid: super::server::uid(l.id),
        sequence,
        stamp,
        zone,
        starts,
        ends,
        second: l.which == WhichHour::Second,
        summary,
        place: place.join(", "),
        words: String::new(),
        organizer: (!me.email.is_empty())
            .then(|| Person { name: me.name.clone(), email: me.email.clone() }),
        attendees: Vec::new(),
        cancelled: l.state == LessonState::CalledOff,
    })
}

/// An invitation as it is written.
#[derive(Clone, Debug)]
pub struct Invitation {
    /// To which lesson.
    pub lesson: Lesson,
    /// Why.
    pub kind: InvitationKind,
    /// Its SEQUENCE.
    pub sequence: u32,
    /// The name of its file.
    pub name: String,
    /// The iCalendar text: one event, as RFC 5546 (3.2) asks.
    pub text: String,
}

/// The invitations of a visit that are due and can be written, each as the name and the text of a
/// file of its own.
///
/// # Errors
/// `NotFound`; `NotPossible` when none is due, or none can be written.
pub fn files(
    db: &Reading<'_>,
    which: Which,
    stamp: DateTime<Utc>,
) -> Result<Vec<(String, String)>> {
    let all = invitations(db, which, stamp)?;
    Ok(all.into_iter().map(|one| (one.name, one.text)).collect())
}

/// The invitations of a visit that are due and can be written.
///
/// # Errors
/// `NotFound`; `NotPossible` when none is due, or none can be written.
pub fn invitations(
    db: &Reading<'_>,
    which: Which,
    stamp: DateTime<Utc>,
) -> Result<Vec<Invitation>> {
    let visit = visits::show(db, which)?;
    let (me, to) = (settings::show(db)?, written_to(db, visit.student, db.today())?);
    let due = all(db, &visit)?;
    if let Some(trouble) = due.iter().map(|d| &d.shown.trouble).find(|trouble| !trouble.is_empty())
    {
        return Err(Error::not_possible("no_address", trouble));
    }
    if due.is_empty() {
        return Err(Error::not_possible(
            "nothing_due",
            "Every lesson was invited to as it stands.",
        ));
    }
    // A guardian may have more than one child on court.
    let whose = if to.through { format!(" for {}", visit.name) } else { String::new() };
    let attendees: Vec<Person> = [to.first, to.second]
        .into_iter()
        .flatten()
        .map(|reached| Person { name: reached.name, email: reached.email })
        .collect();
    let mut all_written = Vec::new();
    for Due { lesson, shown, .. } in due {
        let summary = match me.name.as_str() {
            "" => format!("Lesson{whose}"),
            name => format!("Lesson with {name}{whose}"),
        };
        let event = Event {
            attendees: attendees.clone(),
            ..event(&lesson, &me, stamp, shown.sequence, summary)?
        };
        let (method, word) = match shown.kind {
            InvitationKind::New => (Method::Request, "invitation"),
            InvitationKind::Changed => (Method::Request, "change"),
            InvitationKind::CalledOff => (Method::Cancel, "called off"),
        };
        let text = ical::write(Some(method), &[event]).map_err(|e| Error::Fault(e.to_string()))?;
        let time = lesson.starts.to_string().replace(':', "");
        let name = format!("{} {time} {word}.ics", lesson.day);
        let (kind, sequence) = (shown.kind, shown.sequence);
        all_written.push(Invitation { lesson, kind, sequence, name, text });
    }
    Ok(all_written)
}

/// Notes that an invitation that was written never left the program: it is due again. Nothing changes
/// where another was written since.
///
/// # Errors
/// `Storage`.
pub fn withdrawn(
    db: &Writing<'_>,
    lesson: LessonId,
    student: StudentId,
    sequence: u32,
) -> Result<()> {
    match store::told(db, lesson, student)? {
        Some(told) if told.sequence == sequence && sequence == 0 => {
            store::forget(db, lesson, student)
        }
        // What was said before it is not known any more; so it counts as a change.
        Some(told) if told.sequence == sequence => {
            let told = Told { said: String::new(), cancelled: false, ..told };
            store::keep(db, lesson, student, &told)
        }
        _ => Ok(()),
    }
}

/// Notes that the invitations of a visit that were due left the program.
///
/// # Errors
/// `NotFound`; `NotPossible` when none is due.
pub fn written(db: &Writing<'_>, which: Which) -> Result<Written> {
    let visit = visits::show(db, which)?;
    let due = all(db, &visit)?;
    if due.is_empty() {
        return Err(Error::not_possible(
            "nothing_due",
            "Every lesson was invited to as it stands.",
        ));
    }
    for Due { lesson, who, shown } in &due {
        let cancelled = shown.kind == InvitationKind::CalledOff;
        let told = Told { sequence: shown.sequence, said: said(lesson), cancelled };
        store::keep(db, lesson.id, who.student, &told)?;
    }
    db.cannot_be_undone();
    let many = i64::try_from(due.len()).unwrap_or(0);
    let invitations = counted(many, "invitation", "invitations");
    db.label(format!("{invitations} for {} written", visit.name));
    Ok(Written { invitations: u32::try_from(due.len()).unwrap_or(0) })
}
