//! What follows when a lesson was moved or called off: whom to tell, which court to give back before
//! when, which one to ask for. Nothing of it is done by itself.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{InvitationKind, due};
use crate::app::Reading;
use crate::bookings::{self, Booking, CourtNeeded, CourtState, CourtsOf};
use crate::error::Result;
use crate::intake::written_to::written_to;
use crate::kinds::Language;
use crate::kinds::ids::{BookingId, StudentId, VisitId};
use crate::kinds::zones::Zone;
use crate::lessons::{self, Attending, Lesson, LessonState, Which};
use crate::offers;
use crate::settings;
use crate::students;
use crate::visits;

/// Someone to tell.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ToTell {
    /// Whom.
    pub student: StudentId,
    /// Of which visit.
    pub visit: VisitId,
    /// The student's name.
    pub name: String,
    /// The guardian's name, where the student is written to through one; else empty.
    pub by: String,
    /// To whom it goes, as a sentence, where that is not the student alone.
    pub to: String,
    /// A message to copy.
    pub message: String,
    /// Whether an invitation that was sent before is now to be changed or called off.
    pub invited: bool,
    /// Why that cannot be written; empty when it can.
    pub trouble: String,
}

/// A court to give back.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ToGiveBack {
    /// The booking.
    pub booking: BookingId,
    /// "Court 1 at Harbour Hall, Tuesday 10 March 2026, 09:00 to 10:00".
    pub what: String,
    /// Until when that is free, and what it costs later, a sentence each.
    pub words: Vec<String>,
    /// Whether the first of these has passed.
    pub late: bool,
}

/// What follows.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Follows {
    /// What became of the lesson, as a sentence.
    pub words: String,
    /// Whom to tell.
    pub tell: Vec<ToTell>,
    /// Courts there that no lesson needs any more, the first to cost something first.
    pub give_back: Vec<ToGiveBack>,
    /// The court to ask for, as a sentence; empty when there is none.
    pub ask: String,
}

/// What follows from where a lesson stands now.
///
/// # Errors
/// `NotFound`.
pub fn follows(db: &Reading<'_>, which: Which) -> Result<Follows> {
    let lesson = lessons::show(db, which)?;
    let day = lesson.day;
    let on = format!("{} {}, {}", day.date().format("%A"), day.words(), lesson.starts);
    let words = match lesson.state {
        LessonState::CalledOff => format!("The lesson of {on} is called off."),
        _ => format!("The lesson is now on {on}."),
    };
    let mut tell = Vec::new();
    for who in &lesson.students {
        tell.extend(to_tell(db, &lesson, who)?);
    }
    let courts = bookings::list(db, CourtsOf::default())?;
    let mut back: Vec<(&CourtNeeded, &Booking)> = courts
        .iter()
        .filter(|c| c.state == CourtState::ToGiveBack && c.facility == lesson.facility)
        .filter_map(|c| Some((c, c.booking.as_ref()?)))
        .collect();
    back.sort_by_key(|(c, _)| c.free_until.map(|until| (until.day, until.time)));
    let mine = courts.iter().find(|c| c.lesson == Some(lesson.id));
    let ask = mine.filter(|c| c.state == CourtState::ToAsk).map(|c| {
        let said = format!("A court is to be asked for at {}. {}", c.place, c.words.join(" "));
        said.trim().to_owned()
    });
    Ok(Follows {
        words,
        tell,
        give_back: back.into_iter().map(|(c, b)| to_give_back(db, c, b)).collect(),
        ask: ask.unwrap_or_default(),
    })
}

/// Who was told of the lesson before, by an offer or by an invitation, must hear of it.
fn to_tell(db: &Reading<'_>, lesson: &Lesson, who: &Attending) -> Result<Option<ToTell>> {
    let which = visits::Which { visit: who.visit };
    let due = due::due(db, which)?.into_iter().find(|d| d.lesson == lesson.id);
    let due = due.filter(|d| d.kind != InvitationKind::New);
    if due.is_none() && offers::list(db, which)?.changed.is_empty() {
        return Ok(None);
    }
    let student = students::show(db, students::Which { student: who.student })?;
    let me = settings::show(db)?;
    let theirs = Zone::parse(&student.profile.zone).ok();
    let when = offers::on_both_clocks(lesson, theirs.as_ref(), Language::En);
    let said = match lesson.state {
        LessonState::CalledOff => {
            format!("our lesson on {when} at {} is called off.", lesson.place)
        }
        _ => format!("our lesson is now on {when} at {}. Does that suit you?", lesson.place),
    };
    let to = written_to(db, who.student, db.today())?;
    let by = to.first.as_ref().filter(|_| to.through).map(|g| g.name.clone()).unwrap_or_default();
    let dear = if by.is_empty() { offers::called(&student) } else { &by };
    let closing = format!("{}\n{}", me.closing, me.name);
    let message = format!("Dear {dear},\n\n{said}\n\n{}", closing.trim());
    Ok(Some(ToTell {
        student: who.student,
        visit: who.visit,
        name: who.name.clone(),
        message,
        to: to.words(),
        by,
        invited: due.is_some(),
        trouble: due.map(|d| d.trouble).unwrap_or_default(),
    }))
}

fn to_give_back(db: &Reading<'_>, c: &CourtNeeded, booking: &Booking) -> ToGiveBack {
    let court = if c.court_name.is_empty() { "A court" } else { &c.court_name };
    let day = c.day.date().format("%A");
    ToGiveBack {
        booking: booking.id,
        what: format!(
            "{court} at {}, {day} {}, {} to {}",
            c.place,
            c.day.words(),
            c.starts,
            c.ends
        ),
        words: c.words.clone(),
        late: c.free_until.is_some_and(|until| until.day < db.today()),
    }
}
