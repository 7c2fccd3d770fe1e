//! A calendar file of lessons: all that are to come, or those of one student.

use chrono::{DateTime, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::due::event;
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::ical;
use crate::kinds::ids::StudentId;
use crate::lessons::{self, LessonState, ListLessons};
use crate::print::file_words;
use crate::settings;
use crate::students;

/// Days back that a calendar file reaches.
const BACK: i64 = 31;

/// Whose lessons.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct CalendarOf {
    /// Of one student; left out for everyone's.
    pub student: Option<StudentId>,
}

/// A calendar file's name and text: the lessons of the last month and all that are to come.
///
/// # Errors
/// `NotFound`; `NotPossible` when there are no lessons.
pub fn file(db: &Reading<'_>, of: CalendarOf, stamp: DateTime<Utc>) -> Result<(String, String)> {
    let me = settings::show(db)?;
    let on = ListLessons { visit: None, from: Some(db.today().plus(-BACK)), to: None };
    let mut events = Vec::new();
    for lesson in lessons::list(db, on)? {
        let theirs = of.student.is_none_or(|s| lesson.students.iter().any(|a| a.student == s));
        if !theirs || matches!(lesson.state, LessonState::CalledOff | LessonState::Missed) {
            continue;
        }
        let summary = match of.student {
            Some(_) => format!("Lesson with {}", me.name).trim_end().to_owned(),
            None => format!("Lesson: {}", lesson.names()),
        };
        events.push(event(&lesson, &me, stamp, 0, summary)?);
    }
    if events.is_empty() {
        return Err(Error::not_possible("no_lessons", "There are no lessons for a calendar file."));
    }
    let name = match of.student {
        Some(student) => {
            let name = students::show(db, students::Which { student })?.profile.name;
            format!("Lessons of {}.ics", file_words(&name))
        }
        None => "Lessons.ics".to_owned(),
    };
    let text = ical::write(None, &events).map_err(|e| Error::Fault(e.to_string()))?;
    Ok((name, text))
}
