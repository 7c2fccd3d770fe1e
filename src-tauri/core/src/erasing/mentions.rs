//! Where others' records name a person in free words. Only the coach can judge these, so they are
//! listed and left as they are.

use std::collections::BTreeSet;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::kinds::{STUDENT, noun};
use super::{SeenAt, store};
use crate::app::Reading;
use crate::app::erase::{Belonging, owners};
use crate::calendar;
use crate::db::digest;
use crate::error::Result;
use crate::ical;
use crate::kinds::ids::StudentId;
use crate::kinds::text::{folded, has_words};
use crate::students::{self, Which};

/// So many are listed; the rest is counted.
const MOST: usize = 100;
/// So many characters of the words are shown around the name.
const AROUND: usize = 40;

/// A record of someone else, or of nobody, that names the person.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Mention {
    /// What it is, as in "Lesson note".
    pub what: String,
    /// Whose it is; empty for a facility or something of the coach's own.
    pub whose: String,
    /// The words around the name.
    pub words: String,
    /// Where it is seen.
    pub leads: Option<SeenAt>,
}

/// All of them.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Mentions {
    /// Each.
    pub list: Vec<Mention>,
    /// So many more are not listed.
    pub more: u32,
}

/// How a person may be called.
struct Names {
    /// The whole name, folded.
    whole: String,
    /// The name in letters, and the family name, folded.
    parts: BTreeSet<String>,
}

impl Names {
    fn of(db: &Reading<'_>, student: StudentId) -> Result<Self> {
        let profile = students::show(db, Which { student })?.profile;
        let whole = folded(&profile.name);
        let last = whole.split(' ').next_back().unwrap_or_default().to_owned();
        let parts = [folded(&profile.addressed()), last];
        Ok(Self {
            parts: parts.into_iter().filter(|part| part.chars().count() > 2).collect(),
            whole,
        })
    }

    /// What of the names stands in the words: the whole name first.
    fn in_words(&self, words: &str) -> Option<&str> {
        std::iter::once(&self.whole)
            .chain(&self.parts)
            .find(|name| has_words(words, name))
            .map(String::as_str)
    }
}

/// Finds where others' records name a student.
///
/// # Errors
/// `NotFound`.
pub(super) fn mentions(
    db: &Reading<'_>,
    student: StudentId,
    belonging: &Belonging,
) -> Result<Mentions> {
    let names = Names::of(db, student)?;
    let mut found = Mentions::default();
    for table in digest::tables(db.connection())? {
        if table == crate::app::journal::JOURNAL {
            continue;
        }
        let references = store::references(db, &table)?;
        for row in store::every_row(db, &table)? {
            let id = row.get("id").and_then(Value::as_str).unwrap_or_default();
            if belonging.has(&table, id) {
                continue;
            }
            let told = row.iter().find_map(|(column, value)| {
                let text = value.as_str().filter(|_| is_words(&table, column, &references))?;
                names.in_words(&folded(text)).map(|name| (text, name))
            });
            let Some((text, name)) = told else { continue };
            let whose = bearers(db, (&table, id), student)?;
            // Of a first name alone, someone else may be meant: whoever bears it too.
            let theirs = whose.iter().any(|other| has_words(&folded(other), name));
            if name != names.whole && theirs {
                continue;
            }
            let mention = Mention {
                what: noun(&table),
                whose: whose.join(", "),
                words: around(text, name),
                leads: leads(&table, &row, &references),
            };
            take(&mut found, mention);
        }
    }
    for calendar in in_calendars(db, student)? {
        let what = "Your calendar".to_owned();
        take(&mut found, Mention { what, whose: String::new(), words: calendar, leads: None });
    }
    Ok(found)
}

/// The coach's calendars that name a student elsewhere than in lessons of this file, which go by
/// themselves.
fn in_calendars(db: &Reading<'_>, student: StudentId) -> Result<BTreeSet<String>> {
    let name = students::show(db, Which { student })?.profile.name;
    let lessons = calendar::uids(&store::lessons_of(db, student)?);
    let texts = store::calendar_texts(db, &name)?.into_iter();
    let still = texts.filter(|(_, text)| {
        let left = ical::without(text, &lessons);
        left.windows(name.len()).any(|window| window == name.as_bytes())
    });
    Ok(still.map(|(calendar, _)| calendar).collect())
}

fn take(found: &mut Mentions, mention: Mention) {
    if found.list.len() < MOST {
        found.list.push(mention);
    } else {
        found.more += 1;
    }
}

/// Whether a column holds words that someone wrote, and not an id, a copy for search, or the name of a
/// student, who may only be called the same.
fn is_words(table: &str, column: &str, references: &[(String, String)]) -> bool {
    column != "id"
        && column != "folded"
        && !(table == STUDENT && matches!(column, "name" | "called"))
        && references.iter().all(|(of, _)| of != column)
}

/// The names of the others whose row it is.
fn bearers(db: &Reading<'_>, (table, id): (&str, &str), not: StudentId) -> Result<Vec<String>> {
    let mut names = Vec::new();
    for owner in owners(db, table, id, STUDENT)? {
        let Ok(owner) = uuid::Uuid::parse_str(&owner).map(StudentId) else { continue };
        if owner != not {
            names.push(store::name(db, owner)?.0);
        }
    }
    Ok(names)
}

/// Where a row is seen: its own screen, or that of the first thing it refers to that has one.
fn leads(table: &str, row: &Map<String, Value>, references: &[(String, String)]) -> Option<SeenAt> {
    const SCREENS: [&str; 5] = ["lesson", "goal", "visit", STUDENT, "facility"];
    if SCREENS.contains(&table) {
        let id = row.get("id")?.as_str()?.to_owned();
        return Some(SeenAt { to: table.to_owned(), id });
    }
    SCREENS.iter().find_map(|screen| {
        references.iter().filter(|(_, parent)| parent == screen).find_map(|(column, parent)| {
            let id = row.get(column)?.as_str()?.to_owned();
            Some(SeenAt { to: parent.clone(), id })
        })
    })
}

/// The words around a name, on one line.
fn around(text: &str, name: &str) -> String {
    // Folding may change how many characters there are; a few more or fewer around do no harm.
    let plain = folded(text);
    let at = plain.find(name).map_or(0, |at| plain[..at].chars().count());
    let line = crate::kinds::text::line(text);
    let from = at.saturating_sub(AROUND);
    let long = name.chars().count() + 2 * AROUND;
    let cut: String = line.chars().skip(from).take(long).collect();
    let before = if from > 0 { "\u{2026}" } else { "" };
    let after = if line.chars().count() > from + long { "\u{2026}" } else { "" };
    format!("{before}{cut}{after}")
}
