//! Short dated facts about a student: equipment, level, playing history.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Fact, FactKind, Which, show, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{FactId, StudentId};

/// The longest fact.
const LONGEST: usize = 500;

/// A fact to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddFact {
    /// Whose.
    pub student: StudentId,
    /// What it is about.
    pub kind: FactKind,
    /// From when, or when, as YYYY-MM-DD; left out for today.
    #[serde(default)]
    pub day: String,
    /// The fact.
    pub words: String,
}

/// A fact as it should have been.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeFact {
    /// Which one.
    pub fact: FactId,
    /// What it is about.
    pub kind: FactKind,
    /// From when, or when, as YYYY-MM-DD; left out for the day it has.
    #[serde(default)]
    pub day: String,
    /// The fact.
    pub words: String,
}

/// Which fact.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichFact {
    /// The fact.
    pub fact: FactId,
}

/// The facts about a student: equipment, level, history, the newest of each first.
///
/// # Errors
/// `NotFound`.
pub fn facts(db: &Reading<'_>, which: Which) -> Result<Vec<Fact>> {
    show(db, which)?;
    let mut facts = store::facts(db, which.student)?;
    facts.sort_by_key(|fact| (fact.kind, std::cmp::Reverse((fact.day, fact.id))));
    Ok(facts)
}

/// Writes a fact down; gives all of the student's.
///
/// # Errors
/// `NotFound`; `Refused` when it says nothing, says too much, or the day is none.
pub fn add_fact(db: &Writing<'_>, add: AddFact) -> Result<Vec<Fact>> {
    let student = show(db, Which { student: add.student })?;
    let (day, words) = read(&add.day, &add.words, db.today())?;
    let fact = Fact { id: db.id(), student: add.student, kind: add.kind, day, words };
    store::insert_fact(db, &fact)?;
    db.label(format!("{} of {}: {}", fact.kind.words(), student.profile.name, fact.words));
    facts(db, Which { student: add.student })
}

/// Corrects a fact; gives all of the student's.
///
/// # Errors
/// As [`add_fact`].
pub fn change_fact(db: &Writing<'_>, change: ChangeFact) -> Result<Vec<Fact>> {
    let before = store::fact(db, change.fact)?;
    let (day, words) = read(&change.day, &change.words, before.day)?;
    let fact = Fact { kind: change.kind, day, words, ..before };
    store::update_fact(db, &fact)?;
    db.label(format!("{} changed: {}", fact.kind.words(), fact.words));
    facts(db, Which { student: fact.student })
}

/// Takes a fact away; gives those that are left.
///
/// # Errors
/// `NotFound`.
pub fn remove_fact(db: &Writing<'_>, which: WhichFact) -> Result<Vec<Fact>> {
    let fact = store::fact(db, which.fact)?;
    store::delete_fact(db, which.fact)?;
    db.label(format!("{} taken away: {}", fact.kind.words(), fact.words));
    facts(db, Which { student: fact.student })
}

fn read(day: &str, words: &str, usual: Day) -> Result<(Day, String)> {
    let mut p = Problems::new();
    let words = p.reason("words", words, "The fact");
    let long = words.chars().count();
    if long > LONGEST {
        p.add(
            "words",
            "too_long",
            format!("The fact has {long} characters; there is room for {LONGEST}. Longer notes belong in your notes."),
        );
    }
    let day = p.day_or_none("day", Some(day), "The day").unwrap_or(usual);
    p.done()?;
    Ok((day, words))
}

impl FactKind {
    /// As said on screen and in history.
    pub fn words(self) -> &'static str {
        match self {
            Self::Equipment => "Equipment",
            Self::Level => "Level",
            Self::History => "Playing history",
        }
    }
}
