//! The letter while it is written: the program's words, with the coach's own in their place.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::compose::{Record, compose, record};
use super::{Draft, OfVisit, Part, PartKey, sheet, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::ids::VisitId;
use crate::kinds::{Instant, text};
use crate::print::laid_out;
use crate::students;
use crate::visits;

/// The coach's own words for one part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Own {
    /// The words; `None` keeps the program's.
    pub text: Option<String>,
    /// Left out of the letter.
    pub left_out: bool,
    /// The program's words when the coach wrote these.
    pub over: String,
}

/// All of the coach's words.
pub(super) type Owns = BTreeMap<PartKey, Own>;

/// A change to one part.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EditLetter {
    /// The visit whose letter it is.
    pub visit: VisitId,
    /// Which part.
    pub part: PartKey,
    /// The coach's words; left out to have the program's again.
    #[serde(default)]
    pub text: Option<String>,
    /// Leave the part out of the letter.
    #[serde(default)]
    pub left_out: bool,
}

/// Shows the letter of a visit as it stands.
///
/// # Errors
/// `NotFound`.
pub fn draft(db: &Reading<'_>, of: OfVisit) -> Result<Draft> {
    let record = record(db, visits::Which { visit: of.visit })?;
    let parts = parts(db, &record)?;
    let sheet = sheet::sheet(db, &record, &parts, Instant::from_unix_millis(0))?;
    let (pages, _) = laid_out(&sheet)?;
    let mut warnings: Vec<String> = pages
        .missing
        .iter()
        .map(|missing| format!("No font on this machine has \u{201c}{}\u{201d}; the letter shows a ? in its place.", missing.cluster))
        .collect();
    warnings.dedup();
    warnings.extend(names_of_others(db, &record, &parts)?);
    if record.settings.name.is_empty() {
        warnings.push(
            "The letter is not signed: your name is not in the coach settings yet.".to_owned(),
        );
    }
    Ok(Draft {
        visit: of.visit,
        student: record.student.id,
        name: record.student.profile.name.clone(),
        when: record.visit.when(),
        language: record.language,
        parts,
        pages,
        warnings,
        issued: store::issued_of(db, of.visit)?,
    })
}

/// The parts, the coach's words in the place of the program's.
pub(super) fn parts(db: &Reading<'_>, record: &Record) -> Result<Vec<Part>> {
    let owns = store::owns(db, record.visit.id)?;
    let mut parts = compose(record);
    // A part the coach wrote that the record has nothing for any more stays: nothing typed is lost.
    for (key, own) in &owns {
        if own.text.is_some() && parts.iter().all(|part| part.key != *key) {
            parts.push(Part {
                key: *key,
                heading: String::new(),
                text: String::new(),
                from: Vec::new(),
                edited: false,
                outdated: false,
                left_out: false,
            });
        }
    }
    parts.sort_by_key(|part| part.key);
    for part in &mut parts {
        if let Some(own) = owns.get(&part.key) {
            part.outdated = own.text.is_some() && own.over != part.text;
            part.left_out = own.left_out;
            part.edited = own.text.is_some();
            if let Some(text) = &own.text {
                part.text.clone_from(text);
            }
        }
    }
    Ok(parts)
}

/// Warns when the words name another student.
fn names_of_others(db: &Reading<'_>, record: &Record, parts: &[Part]) -> Result<Vec<String>> {
    let words: String = parts
        .iter()
        .filter(|p| !p.left_out)
        .map(|p| text::folded(&p.text))
        .collect::<Vec<_>>()
        .join(" ");
    Ok(students::named_in(db, &words)?
        .into_iter()
        .filter(|other| other.id != record.student.id && other.name != record.student.profile.name)
        .map(|other| format!("The letter names {}, who is another student.", other.name))
        .collect())
}

/// Puts the coach's words in the place of the program's for one part.
///
/// # Errors
/// `NotFound`; `Refused` when the words are too long.
pub fn edit(db: &Writing<'_>, edit: EditLetter) -> Result<Draft> {
    let record = record(db, visits::Which { visit: edit.visit })?;
    let mut p = Problems::new();
    let text = edit.text.map(|text| p.note("text", &text, "The text"));
    p.done()?;
    let mut owns = store::owns(db, edit.visit)?;
    let over = compose(&record)
        .into_iter()
        .find(|part| part.key == edit.part)
        .map(|part| part.text)
        .unwrap_or_default();
    let own = Own { text: text.filter(|text| *text != over), left_out: edit.left_out, over };
    if own.text.is_none() && !own.left_out {
        owns.remove(&edit.part);
    } else {
        owns.insert(edit.part, own);
    }
    store::keep_draft(db, edit.visit, &owns)?;
    db.label(format!("Letter edited: {}", record.student.profile.name));
    draft(db, OfVisit { visit: edit.visit })
}

/// Lets go of the coach's words: the letter is again as the record has it.
///
/// # Errors
/// `NotFound`.
pub fn compose_anew(db: &Writing<'_>, of: OfVisit) -> Result<Draft> {
    let record = record(db, visits::Which { visit: of.visit })?;
    store::keep_draft(db, of.visit, &Owns::new())?;
    db.label(format!("Letter composed anew: {}", record.student.profile.name));
    draft(db, of)
}
