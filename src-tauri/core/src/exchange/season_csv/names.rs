//! Names of students: which spellings are one person, and which two might be.

use std::collections::{BTreeMap, BTreeSet};

use crate::kinds::text::folded;

/// The text as search folds it, every run of other signs one blank.
pub fn fold(text: &str) -> String {
    let plain: String =
        folded(text).chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The name with the given name first and single blanks: `Silva,  Ana` is `Ana Silva`.
pub fn given_name_first(name: &str) -> String {
    let parts: Vec<&str> = name.split(',').map(str::trim).collect();
    let turned = match parts[..] {
        [family, given] if !family.is_empty() && !given.is_empty() => format!("{given} {family}"),
        _ => name.to_owned(),
    };
    turned.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Longer names are not compared: what they would cost in memory grows with the square.
const LONGEST_COMPARED: usize = 40;

/// The pairs of keys that are one letter apart: changed, added, left out, or two swapped.
///
/// Two such keys share a text that either of them becomes by leaving out at most one letter (for
/// swapped neighbours: leaving out one each). So only keys that share one are compared, and a
/// hundred thousand names do not take ten thousand million comparisons.
pub fn near<'a>(keys: &BTreeSet<&'a str>, most: usize) -> Vec<(&'a str, &'a str)> {
    let mut sharing: BTreeMap<String, Vec<&'a str>> = BTreeMap::new();
    for key in keys.iter().filter(|key| key.chars().count() <= LONGEST_COMPARED) {
        let mut shorter: BTreeSet<String> = BTreeSet::from([(*key).to_owned()]);
        for (at, c) in key.char_indices() {
            let mut text = key[..at].to_owned();
            text.push_str(&key[at + c.len_utf8()..]);
            shorter.insert(text);
        }
        for text in shorter {
            sharing.entry(text).or_default().push(key);
        }
    }
    let mut pairs = BTreeSet::new();
    for together in sharing.values() {
        for (at, a) in together.iter().enumerate() {
            for b in &together[at + 1..] {
                if pairs.len() >= most {
                    return pairs.into_iter().collect();
                }
                if a != b && strsim::osa_distance(a, b) <= 1 {
                    pairs.insert(if a < b { (*a, *b) } else { (*b, *a) });
                }
            }
        }
    }
    pairs.into_iter().collect()
}
