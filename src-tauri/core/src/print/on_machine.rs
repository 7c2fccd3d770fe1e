//! What the machine adds to a document: fonts found on it, and a file system's rules for names.

use std::sync::OnceLock;

use super::{FontUsed, Fonts, Pages, Sheet, lay_out, machine_font_dirs, to_pdf};
use crate::error::{Error, Result};
use crate::kinds::Language;

/// Lays a sheet out with the shipped fonts, and with those found on this machine where they lack
/// something; says whether those were used.
///
/// # Errors
/// `Fault` when the sheet cannot be laid out.
pub fn laid_out(sheet: &Sheet) -> Result<(Pages, &'static Fonts)> {
    static SHIPPED: OnceLock<Fonts> = OnceLock::new();
    static FOUND: OnceLock<Fonts> = OnceLock::new();
    let shipped = SHIPPED.get_or_init(Fonts::shipped);
    let pages = lay_out(sheet, shipped).map_err(|e| Error::Fault(e.to_string()))?;
    if pages.missing.is_empty() {
        return Ok((pages, shipped));
    }
    let found = FOUND.get_or_init(|| Fonts::with_found(&machine_font_dirs()));
    Ok((lay_out(sheet, found).map_err(|e| Error::Fault(e.to_string()))?, found))
}

/// A sheet as a PDF file, and the fonts it was written with.
///
/// # Errors
/// `Fault` when the sheet cannot be laid out or written.
pub fn written(sheet: &Sheet) -> Result<(Vec<u8>, Vec<FontUsed>)> {
    let (pages, fonts) = laid_out(sheet)?;
    let pdf = to_pdf(&pages, fonts).map_err(|e| Error::Fault(e.to_string()))?;
    Ok((pdf, pages.fonts))
}

/// The words of a page number in a language.
pub fn page_words(language: Language) -> &'static str {
    match language {
        Language::En => "Page {n} of {m}",
        Language::De => "Seite {n} von {m}",
    }
}

/// A name as it can stand in a file’s name: without what file systems refuse, and not too long.
pub fn file_words(name: &str) -> String {
    let kept: String = name
        .chars()
        .map(|c| if c.is_control() || "/\\:*?\"<>|".contains(c) { ' ' } else { c })
        .take(80)
        .collect();
    kept.trim().trim_matches('.').to_owned()
}
