//! Words made ready for print: composed, one space between them, no hidden controls, and every
//! letter that no font can write replaced where a reader sees it and reported.

use unicode_normalization::UnicodeNormalization;
use unicode_segmentation::UnicodeSegmentation;

use super::pages::{Missing, Place};
use super::shape::Shaper;
use super::sheet::Weight;

/// Stands for what no font can write. A plain sign that every shipped font has.
const STAND_IN: &str = "?";

/// The words as they can be printed; what could not be written is added to `missing`.
pub(super) fn printable(
    shaper: &Shaper<'_>,
    weight: Weight,
    words: &str,
    place: Place,
    missing: &mut Vec<Missing>,
) -> String {
    let mut out = String::with_capacity(words.len());
    for cluster in tidy(words).graphemes(true) {
        if shaper.font_for(weight, cluster).is_some() {
            out.push_str(cluster);
            continue;
        }
        out.push_str(STAND_IN);
        let lack = Missing { cluster: cluster.into(), place };
        if !missing.contains(&lack) {
            missing.push(lack);
        }
    }
    out
}

/// Composed (Unicode NFC), white space as single spaces, without controls and invisible marks.
pub(super) fn tidy(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.nfc() {
        if c.is_whitespace() && !matches!(c, '\u{a0}' | '\u{202f}') {
            if !out.is_empty() && !out.ends_with(' ') {
                out.push(' ');
            }
        } else if !is_dropped(c) {
            out.push(c);
        }
    }
    out.truncate(out.trim_end_matches(' ').len());
    if out.chars().all(is_invisible) { String::new() } else { out }
}

/// Controls, and format characters that would reorder or hide what a reader sees.
fn is_dropped(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}' | '\u{200e}' | '\u{200f}'
            | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}'
            | '\u{fff0}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

/// Joiners and variation selectors: no glyph of their own, kept because letters change by them.
pub(super) fn is_invisible(c: char) -> bool {
    matches!(c, '\u{200c}' | '\u{200d}' | '\u{34f}' | '\u{fe00}'..='\u{fe0f}')
}
