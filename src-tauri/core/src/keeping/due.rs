//! What has been kept longer than the coach said, and until when a student's things are kept.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Days};
use super::{Spans, spans};
use crate::app::Reading;
use crate::error::Result;
use crate::intake::incidents;
use crate::kinds::Day;
use crate::kinds::ids::{IncidentId, StudentId};
use crate::kinds::text::counted;
use crate::students::{self, Which};

/// A kind of thing that is kept for a span.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Kept {
    /// Someone who asked and never came.
    Enquiry,
    /// Health answers.
    Health,
    /// An incident report.
    Report,
    /// Everything about a person.
    Person,
    /// What is kept for the accounts of someone who was erased.
    Accounts,
}

impl Kept {
    /// What of so many of these are kept, as in "Health answers of 3 people".
    pub fn of_many(self, name: &str, many: usize) -> String {
        let many = i64::try_from(many).unwrap_or(i64::MAX);
        let people = || {
            if many == 1 { name.to_owned() } else { counted(many, "person", "people") }
        };
        match self {
            Self::Enquiry => format!("What is kept of {}, who asked and never came", people()),
            Self::Health => format!("Health answers of {}", people()),
            Self::Report => {
                if many == 1 {
                    format!("The incident report about {name}")
                } else {
                    counted(many, "incident report", "incident reports")
                }
            }
            Self::Person => format!("Everything about {}", people()),
            Self::Accounts => format!("What the accounts needed of {}", people()),
        }
    }
}

/// Something whose time is over, or will be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Due {
    /// What.
    pub kept: Kept,
    /// Whose.
    pub student: Option<StudentId>,
    /// The report, if it is one.
    pub incident: Option<IncidentId>,
    /// The person's name.
    pub name: String,
    /// The last day it is kept.
    pub until: Day,
    /// Why until then, as a sentence.
    pub why: String,
}

/// What has been kept longer than the coach said, on a day; what was to go first on top.
///
/// # Errors
/// `Storage`.
pub fn due(db: &Reading<'_>, day: Day) -> Result<Vec<Due>> {
    let spans = spans(db)?;
    let mut all = Vec::new();
    if spans.enquiry.is_some() || spans.health.is_some() || spans.person.is_some() {
        for days in store::days(db, None)? {
            all.extend(of(&days, spans));
        }
    }
    all.extend(reports(db, spans, None)?);
    all.extend(store::accounts_over(db, day)?.into_iter().map(|(name, until)| Due {
        kept: Kept::Accounts,
        student: None,
        incident: None,
        name,
        until,
        why: "Kept for the accounts of someone who was erased.".to_owned(),
    }));
    all.retain(|due| due.until < day);
    // Who goes as a whole need not be told of in parts.
    let whole: std::collections::BTreeSet<StudentId> = all
        .iter()
        .filter(|due| matches!(due.kept, Kept::Enquiry | Kept::Person))
        .filter_map(|due| due.student)
        .collect();
    all.retain(|due| {
        due.kept != Kept::Health || due.student.is_none_or(|student| !whole.contains(&student))
    });
    all.sort_by(|a, b| (a.until, &a.name, a.kept).cmp(&(b.until, &b.name, b.kept)));
    Ok(all)
}

/// Until when a student's things are kept, as far as the coach has said.
///
/// # Errors
/// `NotFound`.
pub fn of_student(db: &Reading<'_>, which: Which) -> Result<Vec<Due>> {
    students::show(db, which)?;
    let spans = spans(db)?;
    let mut all = Vec::new();
    for days in store::days(db, Some(which.student))? {
        all.extend(of(&days, spans));
    }
    all.extend(reports(db, spans, Some(which.student))?);
    Ok(all)
}

/// The last day a report is kept; `None` while the coach has not said how long.
///
/// # Errors
/// `Storage`.
pub fn report_until(db: &Reading<'_>, happened: Day) -> Result<Option<Day>> {
    Ok(spans(db)?.report.map(|months| after(happened, months)))
}

fn of(days: &Days, spans: Spans) -> Vec<Due> {
    let mut all = Vec::new();
    let mut add = |kept: Kept, from: Option<Day>, months: Option<i64>, since: &str| {
        if let (Some(from), Some(months)) = (from, months) {
            all.push(Due {
                kept,
                student: Some(days.student),
                incident: None,
                name: days.name.clone(),
                until: after(from, months),
                why: why(months, since, from),
            });
        }
    };
    let last = days.came.max(days.health);
    if days.visits {
        // Of someone whose one visit was called off, the day they asked is the last there is.
        let last = last.or(days.enquired.max(days.archived));
        add(Kept::Person, last, spans.person, "the last day they came or answered");
    } else if days.enquired.is_some() {
        add(Kept::Enquiry, days.enquired, spans.enquiry, "they first asked");
    } else {
        let last = days.health.max(days.archived);
        add(Kept::Person, last, spans.person, "the last day anything was noted");
    }
    if days.health.is_some() {
        add(Kept::Health, last, spans.health, "the last day they came or answered");
    }
    all
}

fn reports(db: &Reading<'_>, spans: Spans, of: Option<StudentId>) -> Result<Vec<Due>> {
    let Some(months) = spans.report else { return Ok(Vec::new()) };
    let mut all = incidents::list(db)?;
    all.retain(|incident| of.is_none() || incident.report.student == of);
    Ok(all
        .into_iter()
        .map(|incident| Due {
            kept: Kept::Report,
            student: incident.report.student,
            incident: Some(incident.id),
            until: after(incident.day, months),
            why: why(months, "it happened", incident.day),
            name: incident.name,
        })
        .collect())
}

/// So many months after a day; what is kept is one of 1200 at most.
fn after(day: Day, months: i64) -> Day {
    day.plus_months(u32::try_from(months).unwrap_or_default())
}

fn why(months: i64, since: &str, from: Day) -> String {
    let months = counted(months, "month", "months");
    format!("Kept for {months} after {since}, {}.", from.words())
}
