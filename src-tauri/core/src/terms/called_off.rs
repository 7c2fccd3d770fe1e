//! What a lesson costs that did not take place, or not to its end.

use chrono::TimeDelta;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{MoneyTerms, TermsRow};
use crate::kinds::text::counted;

/// Why a lesson did not take place, or not to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EndedBy {
    /// The student called it off, did not come, or stopped.
    Student,
    /// The coach did.
    Coach,
    /// The weather, or the facility closed.
    Place,
}

/// What the terms come to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Applied {
    /// What is charged, in percent; `None` while the terms do not say.
    pub percent: Option<i64>,
    /// Which rule applied, in words.
    pub rule: String,
    /// When the next boundary was, or would have been, in words; empty where there is none.
    pub next: String,
}

fn applied(percent: Option<i64>, rule: impl Into<String>) -> Applied {
    Applied { percent, rule: rule.into(), next: String::new() }
}

/// What is charged for a lesson that did not begin. `before` is the time from when it was told to when
/// it was to begin; `None` when nothing was told: the student did not come.
///
/// ```
/// use carryover_core::terms::{EndedBy, MoneyTerms, TermsRow, untaught};
/// use chrono::TimeDelta;
/// let terms = MoneyTerms {
///     called_off: vec![TermsRow { at: 24, within: true, percent: 0 }],
///     later: Some(100),
///     ..MoneyTerms::default()
/// };
/// let percent = |minutes| untaught(&terms, EndedBy::Student, Some(TimeDelta::minutes(minutes))).percent;
/// assert_eq!(percent(24 * 60), Some(0), "exactly 24 hours before is within");
/// assert_eq!(percent(24 * 60 - 1), Some(100));
/// ```
pub fn untaught(terms: &MoneyTerms, because: EndedBy, before: Option<TimeDelta>) -> Applied {
    match because {
        EndedBy::Coach => return applied(Some(0), "The coach called it off: nothing is charged."),
        EndedBy::Place => {
            return applied(Some(0), "The place or the weather called it off: nothing is charged.");
        }
        EndedBy::Student => {}
    }
    let Some(before) = before else {
        return match terms.missed {
            Some(percent) => {
                applied(Some(percent), format!("Missed without a word: {percent} % is charged."))
            }
            None => applied(None, "Your terms do not say what a missed lesson costs."),
        };
    };
    let told = if before < TimeDelta::zero() {
        "Called off after it had begun".to_owned()
    } else {
        format!("Called off {} before", length(before))
    };
    let mut next = String::new();
    for row in &terms.called_off {
        let at = TimeDelta::hours(row.at);
        if before > at || (row.within && before == at) {
            let edge = if row.within { "or more" } else { "and more" };
            let hours = counted(row.at, "hour", "hours");
            let rule = format!("{told}: {hours} {edge}, so {} % is charged.", row.percent);
            return Applied { percent: Some(row.percent), rule, next };
        }
        next = format!(
            "{} before it would have cost {} %.",
            counted(row.at, "hour", "hours"),
            row.percent
        );
    }
    match terms.later {
        Some(percent) => Applied {
            percent: Some(percent),
            rule: format!("{told}: later than your terms allow, so {percent} % is charged."),
            next,
        },
        None => applied(None, "Your terms do not say what a lesson costs that is called off."),
    }
}

/// What is charged for a lesson of `minutes` of which `given` were taught.
pub fn cut_short(terms: &MoneyTerms, because: EndedBy, given: u32, minutes: u32) -> Applied {
    let played = format!("Stopped after {given} of {minutes} minutes");
    match because {
        EndedBy::Student => {
            applied(Some(100), format!("{played} by the student: the whole lesson is charged."))
        }
        EndedBy::Coach => {
            let part = if minutes == 0 { 0 } else { i64::from(given) * 100 / i64::from(minutes) };
            applied(
                Some(part),
                format!("{played} by the coach: the part that was taught is charged, {part} %."),
            )
        }
        EndedBy::Place => {
            let given = i64::from(given);
            let within = |row: &&TermsRow| given < row.at || (row.within && given == row.at);
            match terms.broken_off.iter().find(within) {
                Some(row) => {
                    let edge = if row.within { "at most" } else { "fewer than" };
                    let rule = format!(
                        "{played} by weather or the place: {edge} {}, so {} % is charged.",
                        row.at, row.percent
                    );
                    applied(Some(row.percent), rule)
                }
                None if terms.broken_off.is_empty() => {
                    applied(None, "Your terms do not say what a lesson costs that is broken off.")
                }
                None => applied(
                    Some(100),
                    format!("{played} by weather or the place: the whole lesson is charged."),
                ),
            }
        }
    }
}

/// "23 hours 59 minutes", "3 days 2 hours".
fn length(time: TimeDelta) -> String {
    let parts = [
        (time.num_days(), "day", "days"),
        (time.num_hours() % 24, "hour", "hours"),
        (time.num_minutes() % 60, "minute", "minutes"),
    ];
    let two: Vec<String> = parts
        .into_iter()
        .skip_while(|(many, ..)| *many == 0)
        .take(2)
        .filter(|(many, ..)| *many > 0)
        .map(|(many, one, more)| counted(many, one, more))
        .collect();
    if two.is_empty() { "less than a minute".to_owned() } else { two.join(" ") }
}
