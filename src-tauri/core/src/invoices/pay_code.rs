//! A code on the paper that a bank\u{2019}s program reads: a SEPA credit transfer, by EPC069-12 of the European
//! Payments Council (version 002), as a QR code (ISO/IEC 18004). Euro only; other currencies have none.

use qrcode::{Color, EcLevel, QrCode, Version};

use super::{Document, DocumentKind};
use crate::kinds::Currency;
use crate::print::{Ink, Mark, Piece};

/// The largest code that EPC069-12 allows, and how many bytes it holds at level M.
const LARGEST: i16 = 13;
const BYTES: usize = 331;
/// The largest amount, in cents.
const MOST: i64 = 99_999_999_999;
/// The side of a square of the code, in points; ISO/IEC 18004 wants four of them left free around.
const SQUARE: f32 = 2.2;
const FREE: usize = 4;

/// What the code says, a line each; `None` where there can be none.
pub(super) fn said(d: &Document) -> Option<String> {
    let s = &d.seller;
    let due = Currency::parse(&d.currency)?.minor(&d.payable)?;
    if d.kind != DocumentKind::Invoice || d.currency != "EUR" || !(1..=MOST).contains(&due) {
        return None;
    }
    if !super::seller::is_iban(&s.account) {
        return None;
    }
    let upper = |typed: &str| -> String {
        typed.chars().filter(|c| !c.is_whitespace()).map(|c| c.to_ascii_uppercase()).collect()
    };
    let whose = if s.account_name.is_empty() { &s.name } else { &s.account_name };
    let name: String = whose.chars().filter(|c| !c.is_control()).take(70).collect();
    let bic = Some(upper(&s.bank)).filter(|bank| is_bic(bank)).unwrap_or_default();
    let said = [
        "BCD",
        "002",
        // UTF-8.
        "1",
        "SCT",
        &bic,
        &name,
        &upper(&s.account),
        &format!("EUR{}", d.payable),
        // No purpose, no structured reference: the number stands in the words for the payee.
        "",
        "",
        &d.number,
    ]
    .join("\n");
    Some(said).filter(|said| said.len() <= BYTES)
}

/// The code, drawn; `None` where there can be none.
pub(super) fn drawn(d: &Document, alt: &str) -> Option<Piece> {
    let said = said(d)?;
    let code = QrCode::with_error_correction_level(said.as_bytes(), EcLevel::M).ok()?;
    if !matches!(code.version(), Version::Normal(version) if version <= LARGEST) {
        return None;
    }
    let (side, squares) = (code.width(), code.to_colors());
    let at = |n: usize| (n + FREE) as f32 * SQUARE;
    let mut marks = Vec::new();
    for (y, row) in squares.chunks(side).enumerate() {
        let mut x = 0;
        // Dark squares that touch are one mark, so that no white hair shows between them.
        for run in row.chunk_by(|a, b| a == b) {
            if run.first() == Some(&Color::Dark) {
                marks.push(Mark::Rect {
                    at: (at(x), at(y)),
                    width: run.len() as f32 * SQUARE,
                    height: SQUARE,
                    fill: Some(Ink::Ink),
                    stroke: None,
                });
            }
            x += run.len();
        }
    }
    let whole = (side + 2 * FREE) as f32 * SQUARE;
    Some(Piece::Figure { alt: alt.to_owned(), width_pt: whole, height_pt: whole, marks })
}

/// Whether a bank is written as its BIC (ISO 9362): eight or eleven letters and digits, the fifth and
/// sixth a country.
pub(super) fn is_bic(bank: &str) -> bool {
    let country = bank.get(4..6).is_some_and(|c| c.chars().all(|c| c.is_ascii_uppercase()));
    let plain = bank.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    matches!(bank.len(), 8 | 11) && plain && country
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bics_have_a_country() {
        // ISO 9362; the first is in the example of EPC069-12.
        for bic in ["BHBLDEHH", "BHBLDEHH500"] {
            assert!(is_bic(bic), "{bic}");
        }
        for other in ["Harbour Bank", "BHBLDEH", "BHBL12HH", "bhbldehh", ""] {
            assert!(!is_bic(other), "{other}");
        }
    }
}
