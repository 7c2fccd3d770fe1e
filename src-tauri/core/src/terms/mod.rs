//! The coach's terms as data: what a lesson costs that is called off, missed or cut short, with
//! boundaries that say whether they are within; when an invoice is due; what is paid back of a package.
//! What the terms say is worked out by one function for each question, which also says in words which
//! rule applied and when the next boundary is. Every one of them the coach may waive, with a reason.
//!
//! Terms bind whom the law lets them bind: they are the coach's own, and the program proposes none.

mod called_off;

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use called_off::{Applied, EndedBy, cut_short, untaught};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::decimal;
use crate::settings;

/// Where the terms are kept among the settings.
const RECORD: &str = "terms";
/// The most rows of a table of terms.
const ROWS: usize = 12;

/// One row: up to so long before (or after) something, so much is charged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TermsRow {
    /// The boundary: hours before a lesson, or minutes played of it.
    pub at: i64,
    /// Whether exactly on the boundary still counts as this row.
    pub within: bool,
    /// What is charged, in percent.
    pub percent: i64,
}

/// What is paid back of a package with lessons left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PaidBackAs {
    /// What is left, in part of the price.
    #[default]
    InPart,
    /// The price, less the lessons given at the price of a single one.
    AtSingle,
}

crate::db::words! {
    PaidBackAs { InPart = "in_part", AtSingle = "at_single" }
}

/// A part in which an invoice may be paid before the rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PartRow {
    /// How much of what is due, in percent.
    pub percent: i64,
    /// So many days after the invoice is issued.
    pub days: i64,
}

/// The terms; the form and the record are the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct MoneyTerms {
    /// Called off at least so many hours before: the longest first.
    pub called_off: Vec<TermsRow>,
    /// Called off later than all of these: percent; `None` while not set.
    pub later: Option<i64>,
    /// Missed without a word: percent; `None` while not set.
    pub missed: Option<i64>,
    /// Broken off by weather or the facility after at most so many minutes: the fewest first. After
    /// more, the whole lesson counts.
    pub broken_off: Vec<TermsRow>,
    /// Whether a prepaid lesson is lost when one that was called off late or missed is charged whole.
    pub lesson_lost: bool,
    /// Days to pay.
    pub due_days: i64,
    /// Part of a package to be paid before it begins, in percent; `None` for none.
    pub deposit: Option<i64>,
    /// Parts in which an invoice may be paid, the first first; the rest by its last day to pay.
    pub parts: Vec<PartRow>,
    /// What is paid back of a package.
    pub paid_back: PaidBackAs,
    /// Whether courts are passed on at cost.
    pub pass_courts: bool,
    /// Days after the due day on which a reminder is proposed.
    pub remind_after: Vec<i64>,
    /// Interest that a reminder may tell of, in percent a year, a decimal; empty for none.
    pub interest: String,
    /// Percent of prepaid lessons that are expected to be taken; `None` while not set.
    pub taken: Option<i64>,
    /// The first day whose lessons are to be settled, as YYYY-MM-DD; empty: all there are.
    pub since: String,
}

impl Default for MoneyTerms {
    fn default() -> Self {
        Self {
            called_off: Vec::new(),
            later: None,
            missed: None,
            broken_off: Vec::new(),
            lesson_lost: true,
            due_days: 14,
            deposit: None,
            parts: Vec::new(),
            paid_back: PaidBackAs::default(),
            pass_courts: true,
            remind_after: vec![7, 21],
            interest: String::new(),
            taken: None,
            since: String::new(),
        }
    }
}

/// The terms as set; empty while they were not.
///
/// # Errors
/// `Storage`.
pub fn show(db: &Reading<'_>) -> Result<MoneyTerms> {
    settings::kept(db, RECORD).map(Option::unwrap_or_default)
}

/// Sets the terms, in place of those before. What was settled stays as it is.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, mut given: MoneyTerms) -> Result<MoneyTerms> {
    let mut p = Problems::new();
    rows(&mut p, "called_off", &given.called_off, "hours", 24 * 366);
    rows(&mut p, "broken_off", &given.broken_off, "minutes", 480);
    for (field, percent) in
        [("later", given.later), ("missed", given.missed), ("deposit", given.deposit)]
    {
        if let Some(percent) = percent {
            p.within_bounds(field, percent, 0, 100, "The percentage");
        }
    }
    if !given.called_off.is_empty() && given.later.is_none() {
        p.add("later", "empty", "And called off later than that?");
    }
    p.within_bounds("due_days", given.due_days, 0, 365, "The number of days");
    if given.remind_after.len() > 6 || given.remind_after.iter().any(|d| !(1..=365).contains(d)) {
        p.add("remind_after", "out_of_range", "Up to six reminders, each 1 to 365 days late.");
    }
    if let Some(taken) = given.taken {
        p.within_bounds("taken", taken, 1, 100, "The percentage");
    }
    parts(&mut p, &mut given.parts);
    let typed = given.interest.trim().to_owned();
    given.interest = match decimal(&typed) {
        Some(rate) if rate.is_zero() => String::new(),
        Some(rate) if rate <= Decimal::ONE_HUNDRED && rate.is_sign_positive() => {
            rate.normalize().to_string()
        }
        _ if typed.is_empty() => String::new(),
        _ => {
            p.add("interest", "out_of_range", "A rate of interest lies from 0 to 100 percent.");
            typed
        }
    };
    let since = p.day_or_none("since", Some(&given.since), "The first day");
    p.done()?;
    given.since = since.map(|day| day.to_string()).unwrap_or_default();
    given.called_off.sort_by_key(|row| std::cmp::Reverse((row.at, row.within)));
    given.broken_off.sort_by_key(|row| (row.at, !row.within));
    given.remind_after.sort_unstable();
    given.remind_after.dedup();
    settings::keep(db, RECORD, &given)?;
    db.label("Terms set");
    show(db)
}

fn parts(p: &mut Problems, parts: &mut [PartRow]) {
    if parts.len() > ROWS {
        p.add("parts", "too_many", format!("There is room for {ROWS} parts."));
    }
    for (n, part) in parts.iter().enumerate() {
        p.within_bounds(&format!("parts[{n}].percent"), part.percent, 1, 99, "The percentage");
        p.within_bounds(&format!("parts[{n}].days"), part.days, 0, 365, "The number of days");
        if parts.iter().take(n).any(|before| before.days == part.days) {
            p.add(
                &format!("parts[{n}].days"),
                "taken",
                "A part for this day stands above already.",
            );
        }
    }
    let sum: i64 = parts.iter().map(|part| part.percent.clamp(0, 100)).sum();
    if sum > 99 {
        p.add(
            "parts",
            "too_much",
            "Together the parts come to 99 percent at most: the rest is last.",
        );
    }
    parts.sort_by_key(|part| part.days);
}

fn rows(p: &mut Problems, field: &str, rows: &[TermsRow], unit: &str, most: i64) {
    if rows.len() > ROWS {
        p.add(field, "too_many", format!("There is room for {ROWS} rows."));
    }
    for (n, row) in rows.iter().enumerate() {
        p.within_bounds(&format!("{field}[{n}].at"), row.at, 0, most, &format!("The {unit}"));
        p.within_bounds(&format!("{field}[{n}].percent"), row.percent, 0, 100, "The percentage");
        if rows.iter().take(n).any(|before| before.at == row.at) {
            p.add(&format!("{field}[{n}].at"), "taken", "This boundary stands above already.");
        }
    }
}
