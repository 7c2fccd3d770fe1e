//! A paragraph into lines: greedy, at the break opportunities of Unicode UAX #14, and inside a
//! word only when the word alone is wider than the line.

use unicode_linebreak::linebreaks;
use unicode_segmentation::UnicodeSegmentation;

use super::shape::Shaper;
use super::sheet::Weight;

/// A stretch longer than this is never measured whole: no line of print holds it.
const LONGEST_WORD: usize = 512;

/// How words are set: strength and size of type, and the room a line has.
#[derive(Debug, Clone, Copy)]
pub(super) struct Setting {
    pub(super) weight: Weight,
    pub(super) size: f32,
    pub(super) room: f32,
}

/// The lines of a paragraph; a line broken at a space keeps it, so that copied words stay apart.
pub(super) fn lines(shaper: &Shaper<'_>, setting: Setting, words: &str) -> Vec<String> {
    let stops: Vec<usize> = linebreaks(words).map(|(at, _)| at).collect();
    let mut lines = Vec::new();
    let mut start = 0;
    let mut next = 0;
    while start < words.len() {
        let end = fill(shaper, setting, words, start, &stops[next.min(stops.len())..])
            .unwrap_or_else(|| start + torn(shaper, setting, &words[start..]));
        lines.push(words[start..end].to_string());
        start = end;
        while stops.get(next).is_some_and(|&stop| stop <= start) {
            next += 1;
        }
    }
    lines
}

/// The last stop that still fits, or `None` if not even the first does.
fn fill(
    shaper: &Shaper<'_>,
    setting: Setting,
    words: &str,
    start: usize,
    stops: &[usize],
) -> Option<usize> {
    let mut fitting = Vec::new();
    let (mut used, mut from) = (0.0, start);
    for &stop in stops {
        let piece = &words[from..stop];
        if piece.len() > LONGEST_WORD {
            break;
        }
        if used + width(shaper, setting, piece.trim_end_matches(' ')) > setting.room {
            break;
        }
        used += width(shaper, setting, piece);
        from = stop;
        fitting.push(stop);
    }
    // Kerning across a break can add a hair to the sum of the pieces.
    while let Some(&stop) = fitting.last() {
        if width(shaper, setting, words[start..stop].trim_end_matches(' ')) <= setting.room {
            return Some(stop);
        }
        fitting.pop();
    }
    None
}

/// How much of an overlong word fits: whole clusters, or single letters of a giant cluster.
fn torn(shaper: &Shaper<'_>, setting: Setting, words: &str) -> usize {
    let ends = |whole: bool| -> Vec<usize> {
        if whole {
            words.grapheme_indices(true).take(LONGEST_WORD).map(|(at, c)| at + c.len()).collect()
        } else {
            words.char_indices().take(LONGEST_WORD).map(|(at, c)| at + c.len_utf8()).collect()
        }
    };
    for whole in [true, false] {
        let ends = ends(whole);
        let fits = ends.partition_point(|&end| {
            end <= 4 * LONGEST_WORD && width(shaper, setting, &words[..end]) <= setting.room
        });
        if let Some(&end) = fits.checked_sub(1).and_then(|last| ends.get(last)) {
            return end;
        }
    }
    words.chars().next().map_or(words.len(), char::len_utf8)
}

/// Drawn width in points.
pub(super) fn width(shaper: &Shaper<'_>, setting: Setting, words: &str) -> f32 {
    shaper.width(setting.weight, words) * setting.size
}
