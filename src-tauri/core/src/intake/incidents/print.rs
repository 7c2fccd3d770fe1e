//! A report on paper.

use super::{WhichIncident, show};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::intake::paper::paper;
use crate::kinds::Language;
use crate::print::{Piece, file_words};

/// A report as a document: its file's name and bytes.
///
/// # Errors
/// `NotFound`; `Fault` when its seal does not fit.
pub fn document(db: &Reading<'_>, which: WhichIncident) -> Result<(String, Vec<u8>)> {
    let incident = show(db, which)?;
    if !incident.whole {
        return Err(Error::Fault(format!("incident {} is not what was signed", incident.id)));
    }
    let at = |instant: crate::kinds::Instant| instant.utc().format("%Y-%m-%d %H:%M").to_string();
    let mut pieces = vec![
        Piece::Title("Incident report".to_owned()),
        Piece::Note(match incident.signed {
            None => "Not signed yet.".to_owned(),
            Some(_) => "Signed and sealed. What came to be known later stands below as additions."
                .to_owned(),
        }),
    ];
    for line in &incident.lines {
        pieces.push(Piece::Heading(line.about.clone()));
        pieces.extend(
            line.words.split('\n').filter(|l| !l.is_empty()).map(|l| Piece::Text(l.to_owned())),
        );
    }
    if let Some(signed) = incident.signed {
        pieces.push(Piece::Heading("Signed".to_owned()));
        pieces.push(Piece::Text(format!("{}, {} (UTC)", incident.signature, at(signed))));
        pieces.push(Piece::Note(format!("Seal (SHA-256): {}", incident.seal)));
    }
    for addition in &incident.additions {
        pieces.push(Piece::Heading(format!("Added {} (UTC)", at(addition.at))));
        pieces.extend(addition.words.split('\n').map(|l| Piece::Text(l.to_owned())));
        pieces.push(Piece::Note(addition.author.clone()));
    }
    pieces.push(Piece::Note(
        "The facility\u{2019}s own incident process governs on its premises; this report does not replace it. It is no diagnosis and no legal advice."
            .to_owned(),
    ));
    let title = format!("Incident report {}", incident.name);
    let issued = incident.signed.unwrap_or(incident.recorded).utc();
    let pdf = paper(db, &title, Language::En, issued, pieces)?;
    Ok((format!("Incident {} {}.pdf", file_words(&incident.name), incident.day), pdf))
}
