//! Issuing a letter: its words, numbers and document are frozen together and never change again.

use super::compose::record;
use super::draft::parts;
use super::{Issued, OfVisit, Part, Which, sheet, store};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::ids::LetterId;
use crate::print::{file_words, laid_out, written};
use crate::visits::{self, Stage};

/// What is frozen beside the words: each part with the facts it was written from.
type Numbers = Vec<Part>;

/// Issues the letter of a visit as it stands. It cannot be undone: a correction is a new letter.
///
/// # Errors
/// `NotFound`; `NotPossible` when the visit was never started.
pub fn issue(db: &Writing<'_>, of: OfVisit) -> Result<Issued> {
    let record = record(db, visits::Which { visit: of.visit })?;
    if !matches!(record.visit.stage, Stage::Open | Stage::Closed) {
        return Err(Error::not_possible(
            "not_started",
            "A letter is written from what happened: this visit was not started.",
        ));
    }
    let parts: Numbers = parts(db, &record)?;
    let sheet = sheet::sheet(db, &record, &parts, db.now())?;
    let (pdf, fonts) = written(&sheet)?;
    let letter: LetterId = store::draft_id(db, of.visit)?.unwrap_or_else(|| db.id());
    store::freeze(
        db,
        of.visit,
        letter,
        &store::Frozen {
            text: store::json(&sheet)?,
            numbers: store::json(&parts)?,
            sha256: digest::sha256(&pdf),
            fonts: store::json(&fonts)?,
            pdf,
        },
    )?;
    db.cannot_be_undone();
    db.label(format!("Letter issued: {}, {}", record.student.profile.name, record.visit.when()));
    show(db, Which { letter })
}

/// Shows an issued letter.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: Which) -> Result<Issued> {
    let issued = store::issued(db, which.letter)?;
    let visit = visits::show(db, visits::Which { visit: issued.visit })?;
    let sheet = serde_json::from_str(&issued.text).map_err(|e| Error::Fault(e.to_string()))?;
    let (pages, _) = laid_out(&sheet)?;
    Ok(Issued {
        letter: which.letter,
        visit: issued.visit,
        name: visit.name.clone(),
        when: visit.when(),
        at: issued.at,
        sha256: issued.sha256,
        bytes: issued.pdf.len(),
        fonts: serde_json::from_str(&issued.fonts).map_err(|e| Error::Fault(e.to_string()))?,
        pages,
    })
}

/// An issued letter's file name and document, byte for byte as it was issued.
///
/// # Errors
/// `NotFound`; `Fault` when the stored bytes are not those that were issued.
pub fn document(db: &Reading<'_>, letter: LetterId) -> Result<(String, Vec<u8>)> {
    let issued = store::issued(db, letter)?;
    if digest::sha256(&issued.pdf) != issued.sha256 {
        return Err(Error::Fault(format!(
            "the document of letter {letter} is not what was issued"
        )));
    }
    let visit = visits::show(db, visits::Which { visit: issued.visit })?;
    let day = issued.at.to_string();
    let name = format!("Progress letter {} {}.pdf", file_words(&visit.name), &day[..10]);
    Ok((name, issued.pdf))
}
