//! Whether the coach may teach at a facility, who said so, until when, and what must be shown for it.
//! Many places let nobody from outside teach on their courts, not even without pay; some ask for an
//! insurance certificate. What the facility says holds.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Which, show, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::FacilityId;

/// Where the question stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Permission {
    /// Nobody was asked yet.
    #[default]
    NotAsked,
    /// Asked, not answered.
    Asked,
    /// Granted.
    Granted,
    /// Refused: only its own instructors, or no lessons at all.
    Refused,
}

crate::db::words! {
    Permission { NotAsked = "not_asked", Asked = "asked", Granted = "granted", Refused = "refused" }
}

/// Permission to teach; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Teaching {
    /// Where the question stands.
    pub state: Permission,
    /// Who said so.
    pub by_whom: String,
    /// The last day it holds, as YYYY-MM-DD; empty for without end.
    pub until: String,
    /// What must be shown: an insurance certificate, a background check.
    pub papers: String,
    /// The last day those papers hold.
    pub papers_until: String,
    /// What else was said.
    pub note: String,
}

/// Permission to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetTeaching {
    /// Where.
    pub facility: FacilityId,
    /// All that is to be kept.
    pub teaching: Teaching,
}

/// Permission as it stands on a day.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct TeachingShown {
    /// What is kept.
    pub teaching: Teaching,
    /// Whether anything is missing.
    pub missing: bool,
    /// What stands or is missing, a sentence each.
    pub words: Vec<String>,
}

/// Writes down whether the coach may teach at a facility.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn set_teaching(db: &Writing<'_>, set: SetTeaching) -> Result<TeachingShown> {
    let facility = show(db, Which { facility: set.facility })?;
    let t = set.teaching;
    let mut p = Problems::new();
    let mut day = |field: &str, typed: &str, what: &str| {
        p.day_or_none(field, Some(typed), what).map(|day| day.to_string()).unwrap_or_default()
    };
    let until = day("until", &t.until, "The last day");
    let papers_until = day("papers_until", &t.papers_until, "The papers\u{2019} last day");
    let read = Teaching {
        state: t.state,
        by_whom: p.line("by_whom", &t.by_whom, "Who said so"),
        until,
        papers: p.line("papers", &t.papers, "What must be shown"),
        papers_until,
        note: p.note("note", &t.note, "Your note"),
    };
    p.done()?;
    store::write_teaching(db, set.facility, &read)?;
    db.label(format!("Permission to teach at {} noted", facility.place.name));
    Ok(shown(read, db.today()))
}

/// Permission to teach at a facility, and what is missing today.
///
/// # Errors
/// `NotFound`.
pub fn teaching(db: &Reading<'_>, which: Which) -> Result<TeachingShown> {
    show(db, which)?;
    Ok(shown(store::teaching(db, which.facility)?, db.today()))
}

/// Permission to teach at a facility as it stands on another day.
///
/// # Errors
/// `NotFound`.
pub fn teaching_on(db: &Reading<'_>, which: Which, day: Day) -> Result<TeachingShown> {
    show(db, which)?;
    Ok(shown(store::teaching(db, which.facility)?, day))
}

fn shown(teaching: Teaching, today: Day) -> TeachingShown {
    let mut words = Vec::new();
    let (until, papers_until) = (Day::parse(&teaching.until), Day::parse(&teaching.papers_until));
    let over = |day: Option<Day>| day.is_some_and(|day| day < today);
    let mut missing = teaching.state != Permission::Granted || over(until);
    let by = match teaching.by_whom.as_str() {
        "" => String::new(),
        name => format!(" by {name}"),
    };
    words.push(match (teaching.state, until) {
        (Permission::NotAsked, _) => "Nobody was asked yet whether you may teach here.".to_owned(),
        (Permission::Asked, _) => "You asked whether you may teach here; no answer yet.".to_owned(),
        (Permission::Refused, _) => format!("Teaching here was refused{by}."),
        (Permission::Granted, Some(day)) if over(until) => {
            format!("Your permission to teach here ended on {}.", day.words())
        }
        (Permission::Granted, Some(day)) => {
            format!("You may teach here, granted{by}, until {}.", day.words())
        }
        (Permission::Granted, None) => format!("You may teach here, granted{by}."),
    });
    if !teaching.papers.is_empty() {
        let papers = teaching.papers.trim_end_matches('.');
        missing |= over(papers_until);
        words.push(match papers_until {
            Some(day) if over(papers_until) => {
                format!("To show: {papers}; it ended on {}.", day.words())
            }
            Some(day) => format!("To show: {papers}, which holds until {}.", day.words()),
            None => format!("To show: {papers}."),
        });
    }
    TeachingShown { teaching, missing, words }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Refused is what two cities say (no lessons on booked courts, paid ones by the city's contract
    /// alone) and a university (its own instructors only), as their pages stated it in 2025 and 2026.
    #[test]
    fn each_state_says_what_stands_and_whether_something_is_missing() {
        let today = Day::parse("2026-03-12").unwrap_or(Day::EPOCH);
        for (state, until, papers_until, missing, says) in [
            (Permission::NotAsked, "", "", true, "Nobody was asked"),
            (Permission::Asked, "", "", true, "no answer yet"),
            (Permission::Refused, "", "", true, "was refused by the manager."),
            (Permission::Granted, "", "", false, "granted by the manager."),
            (Permission::Granted, "2026-03-12", "", false, "until 12 March 2026"),
            (Permission::Granted, "2026-03-11", "", true, "ended on 11 March 2026"),
            (Permission::Granted, "", "2026-03-11", true, "insurance; it ended on 11 March"),
            (Permission::Granted, "", "2026-03-12", false, "holds until 12 March 2026"),
        ] {
            let teaching = Teaching {
                state,
                by_whom: "the manager".to_owned(),
                until: until.to_owned(),
                papers: "insurance.".to_owned(),
                papers_until: papers_until.to_owned(),
                note: String::new(),
            };
            let shown = shown(teaching, today);
            assert_eq!(shown.missing, missing, "{:?}", shown.words);
            assert!(shown.words.join(" ").contains(says), "{:?} says {says}", shown.words);
        }
    }
}
