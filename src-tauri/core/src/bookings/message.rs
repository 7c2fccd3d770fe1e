//! The words with which courts are asked for: a message to the desk, and notes for the telephone.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::error::{Error, Result};
use crate::facilities;
use crate::kinds::ids::{FacilityId, LessonId};
use crate::lessons::{self, Lesson};
use crate::settings;

/// Lessons to write about.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskMessage {
    /// Which lessons, all at one facility.
    pub lessons: Vec<LessonId>,
}

/// What to write, and what to say.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct DeskMessage {
    /// The facility.
    pub facility: FacilityId,
    /// Its name.
    pub place: String,
    /// The desk's address, or empty.
    pub to: String,
    /// The desk's telephone, or empty.
    pub phone: String,
    /// The subject of the message.
    pub subject: String,
    /// The message.
    pub words: String,
    /// What to have at hand on the telephone, a line each.
    pub notes: Vec<String>,
}

/// Writes the message with which the courts of these lessons are asked for.
///
/// # Errors
/// `NotFound`; `Refused` without a lesson, or with lessons at several facilities.
pub fn message(db: &Reading<'_>, ask: AskMessage) -> Result<DeskMessage> {
    let mut all: Vec<Lesson> = Vec::new();
    for lesson in ask.lessons {
        all.push(lessons::show(db, lessons::Which { lesson })?);
    }
    all.sort_by_key(|l| (l.day, l.starts));
    let Some(first) = all.first() else {
        return Err(Error::field(
            "lessons",
            "empty",
            "Choose the lessons whose courts are asked for.",
        ));
    };
    if all.iter().any(|l| l.facility != first.facility) {
        let words = "These lessons are at several facilities. Ask each of them by itself.";
        return Err(Error::field("lessons", "several_places", words));
    }
    let which = facilities::Which { facility: first.facility };
    let (card, rules) = (facilities::card(db, which)?, facilities::rules(db, which)?);
    let me = settings::show(db)?;
    let line = |l: &Lesson| {
        let court = if l.court_name.is_empty() { "any court" } else { &l.court_name };
        let day = format!("{} {}", l.day.date().format("%A"), l.day.words());
        format!("{day}, {} to {}, {court}", l.starts, l.ends)
    };
    let lines: Vec<String> = all.iter().map(line).collect();
    let hello =
        if card.desk.is_empty() { "Hello,".to_owned() } else { format!("Hello {},", card.desk) };
    let one = all.len() == 1;
    let words = format!(
        "{hello}\n\nI would like to book {} at {}{}:\n\n{}\n\nPlease tell me whether I can have {}, and the reference of {}booking. If a time is taken, what is free near it?\n\n{}",
        if one { "a court" } else { "courts" },
        first.place,
        if rules.books_as.is_empty() { String::new() } else { format!(" as {}", rules.books_as) },
        lines.join("\n"),
        if one { "it" } else { "them" },
        if one { "the " } else { "each " },
        me.name,
    );
    let mut notes = lines;
    if !rules.books_as.is_empty() {
        notes.push(format!("You book as {}.", rules.books_as));
    }
    notes.push("Ask for: the court, the reference, the name of whoever answers.".to_owned());
    Ok(DeskMessage {
        facility: first.facility,
        place: first.place.clone(),
        to: card.desk_email,
        phone: card.desk_phone,
        subject: if one { "A court".to_owned() } else { format!("{} courts", all.len()) },
        words: words.trim_end().to_owned(),
        notes,
    })
}
