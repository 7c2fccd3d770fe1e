//! The coach's own paper: what a document of this capability is drawn on.

use chrono::{DateTime, Utc};

use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Language;
use crate::print::{Paper, Piece, Sheet, page_words, written};
use crate::settings;

/// A line to write on by hand.
pub(super) const BLANK: &str = "______________________________";

/// Pieces as a document with the coach's letterhead.
pub(super) fn paper(
    db: &Reading<'_>,
    title: &str,
    language: Language,
    issued: DateTime<Utc>,
    pieces: Vec<Piece>,
) -> Result<Vec<u8>> {
    let settings = settings::show(db)?;
    let sheet = Sheet {
        title: title.to_owned(),
        language: language.code().to_owned(),
        letterhead: settings.head(),
        author: settings.name,
        issued,
        paper: Paper::A4,
        pieces,
        footer: String::new(),
        page_words: page_words(language).to_owned(),
    };
    Ok(written(&sheet)?.0)
}
