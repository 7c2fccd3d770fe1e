//! Asking for courts, taking the facility's answer, giving courts back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::serves;
use super::{Booking, BookingState, store};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::facilities;
use crate::kinds::Span;
use crate::kinds::ids::{BookingId, CourtId, LessonId};
use crate::kinds::text::counted;
use crate::lessons::{self, ChangeLesson, Lesson, LessonState};

/// Lessons whose courts are asked for.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskFor {
    /// Which lessons.
    pub lessons: Vec<LessonId>,
}

/// What a facility answered.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Answer {
    /// For which lesson.
    pub lesson: LessonId,
    /// The court it gave; left out where it named none.
    #[serde(default)]
    pub court: Option<CourtId>,
    /// Its own reference.
    #[serde(default)]
    pub reference: String,
    /// Who answered.
    #[serde(default)]
    pub by_whom: String,
    /// The coach's note.
    #[serde(default)]
    pub note: String,
}

/// A court given back.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveBack {
    /// Which booking.
    pub booking: BookingId,
    /// Who took it back.
    #[serde(default)]
    pub by_whom: String,
    /// The coach's note.
    #[serde(default)]
    pub note: String,
}

fn planned(db: &Writing<'_>, lesson: LessonId) -> Result<Lesson> {
    let lesson = lessons::show(db, lessons::Which { lesson })?;
    if lesson.state != LessonState::Planned {
        return Err(Error::not_possible("over", "A court is asked for a lesson that is to come."));
    }
    Ok(lesson)
}

/// The booking that stands for a lesson, if there is one.
fn standing(db: &Writing<'_>, lesson: &Lesson) -> Result<Option<Booking>> {
    let on = Span { first: lesson.day, last: lesson.day };
    let all = store::standing(db, on)?.into_iter().filter(|b| serves(b, lesson));
    Ok(all.max_by_key(|b| b.state == BookingState::Confirmed))
}

/// A booking for a lesson, to be written.
fn fresh(db: &Writing<'_>, l: &Lesson) -> Booking {
    Booking {
        id: db.id(),
        facility: l.facility,
        place: l.place.clone(),
        court: l.court,
        court_name: l.court_name.clone(),
        day: l.day,
        starts: l.starts,
        minutes: l.minutes,
        state: BookingState::Asked,
        asked: Some(db.today()),
        answered: None,
        reference: String::new(),
        by_whom: String::new(),
        note: String::new(),
    }
}

/// Notes that the courts of these lessons were asked for; those asked for before stay as they are.
///
/// # Errors
/// `NotFound`; `NotPossible` for a lesson that is over; `Refused` without any lesson.
pub fn ask(db: &Writing<'_>, ask: AskFor) -> Result<Vec<Booking>> {
    if ask.lessons.is_empty() {
        return Err(Error::field(
            "lessons",
            "empty",
            "Choose the lessons whose courts you asked for.",
        ));
    }
    let mut asked = Vec::new();
    for lesson in ask.lessons {
        let lesson = planned(db, lesson)?;
        if standing(db, &lesson)?.is_none() {
            let booking = fresh(db, &lesson);
            store::write(db, &booking)?;
            asked.push(booking);
        }
    }
    let many = i64::try_from(asked.len()).unwrap_or(0);
    db.label(format!("{} asked for", counted(many, "court", "courts")));
    Ok(asked)
}

/// Notes that the facility confirmed the court of a lesson, asked for before or not. The court it
/// named becomes the lesson's.
///
/// # Errors
/// `NotFound`; `NotPossible` for a lesson that is over; `Refused` with every field that is wrong.
pub fn confirm(db: &Writing<'_>, answer: Answer) -> Result<Booking> {
    let mut lesson = planned(db, answer.lesson)?;
    let known = standing(db, &lesson)?;
    let mut p = Problems::new();
    let reference = p.line("reference", &answer.reference, "The reference");
    let by_whom = p.line("by_whom", &answer.by_whom, "Who answered");
    let note = p.note("note", &answer.note, "Your note");
    if let Some(court) = answer.court
        && facilities::of_court(db, court)? != lesson.facility
    {
        let words = format!("This court is not at {}.", lesson.place);
        p.add("court", "elsewhere", words);
    }
    p.done()?;
    if let Some(court) = answer.court.filter(|court| lesson.court != Some(*court)) {
        lesson = lessons::change(
            db,
            ChangeLesson {
                lesson: lesson.id,
                facility: lesson.facility,
                court: Some(court),
                day: lesson.day.to_string(),
                starts: lesson.starts.to_string(),
                which: lesson.which,
                minutes: i64::from(lesson.minutes),
            },
        )?;
    }
    let booking = Booking {
        court: answer.court.or(lesson.court),
        state: BookingState::Confirmed,
        answered: Some(db.today()),
        reference,
        by_whom,
        note,
        ..known.unwrap_or_else(|| fresh(db, &lesson))
    };
    store::write(db, &booking)?;
    db.label(format!(
        "Court confirmed: {}, {} {}",
        lesson.place,
        lesson.day.words(),
        lesson.starts
    ));
    store::one(db, booking.id)
}

/// Notes that the facility refused the court of a lesson; it is to be asked for anew, or the lesson
/// moved.
///
/// # Errors
/// As [`confirm`].
pub fn refuse(db: &Writing<'_>, answer: Answer) -> Result<Booking> {
    let lesson = planned(db, answer.lesson)?;
    let mut p = Problems::new();
    let by_whom = p.line("by_whom", &answer.by_whom, "Who answered");
    let note = p.note("note", &answer.note, "Your note");
    p.done()?;
    let known = standing(db, &lesson)?.unwrap_or_else(|| fresh(db, &lesson));
    let (state, answered) = (BookingState::Refused, Some(db.today()));
    let booking = Booking { state, answered, by_whom, note, ..known };
    store::write(db, &booking)?;
    db.label(format!("Court refused: {}, {} {}", lesson.place, lesson.day.words(), lesson.starts));
    store::one(db, booking.id)
}

/// Notes that a court was given back.
///
/// # Errors
/// `NotFound`; `NotPossible` when it does not stand any more; `Refused`.
pub fn give_back(db: &Writing<'_>, back: GiveBack) -> Result<Booking> {
    let known = store::one(db, back.booking)?;
    if !matches!(known.state, BookingState::Asked | BookingState::Confirmed) {
        return Err(Error::not_possible("over", "This court was given back or refused already."));
    }
    let mut p = Problems::new();
    let by_whom = p.line("by_whom", &back.by_whom, "Who took it back");
    let note = p.note("note", &back.note, "Your note");
    p.done()?;
    let booking = Booking { state: BookingState::Released, by_whom, note, ..known };
    store::write(db, &booking)?;
    db.label(format!(
        "Court given back: {}, {} {}",
        booking.place,
        booking.day.words(),
        booking.starts
    ));
    Ok(booking)
}
