//! How long things are kept: the coach's own number of months for each kind, and what has been kept
//! longer than that. No number is set by the program: local law, an insurer and the facility say what
//! is right, and the notice that people accepted tells them they may ask. What is over is told of;
//! erasing is the coach's act.

mod due;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use due::{Due, Kept, due, of_student, report_until};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::settings;

/// Under what name the numbers are kept.
const SETTING: &str = "keeping";
/// The most months: a hundred years.
const MOST: i64 = 1200;

/// For how many months each kind of thing is kept; the form and the record are the same. `None`: not
/// said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Spans {
    /// Someone who asked and never came, from the day they asked.
    pub enquiry: Option<i64>,
    /// Health answers, from the last day the person came or answered.
    pub health: Option<i64>,
    /// Incident reports, from the day it happened.
    pub report: Option<i64>,
    /// Everything about a person, from the last day they came.
    pub person: Option<i64>,
}

/// The numbers that are kept.
///
/// # Errors
/// `Storage`.
pub fn spans(db: &Reading<'_>) -> Result<Spans> {
    Ok(settings::kept(db, SETTING)?.unwrap_or_default())
}

/// Keeps the numbers.
///
/// # Errors
/// `Refused` when a number is 0 or more than a hundred years; when health answers would stay longer
/// than the person.
pub fn set_spans(db: &Writing<'_>, given: Spans) -> Result<Spans> {
    let mut p = Problems::new();
    for (field, months) in [
        ("enquiry", given.enquiry),
        ("health", given.health),
        ("report", given.report),
        ("person", given.person),
    ] {
        if months.is_some_and(|months| !(1..=MOST).contains(&months)) {
            p.add(
                field,
                "no_span",
                format!(
                    "A number of months from 1 to {MOST}, or nothing while you have not decided."
                ),
            );
        }
    }
    for (field, months, what) in
        [("health", given.health, "Health answers"), ("report", given.report, "Reports")]
    {
        if let (Some(months), Some(person)) = (months, given.person)
            && months > person
        {
            p.add(
                field,
                "longer_than_all",
                format!("{what} are part of everything about a person, which you keep for {person} months."),
            );
        }
    }
    p.done()?;
    settings::keep(db, SETTING, &given)?;
    db.label("How long things are kept is noted");
    spans(db)
}
