//! Whether two names may be the same payer\u{2019}s: whatever the order, accents, capitals, and the ways
//! in which banks spell umlauts and cut names short.

use crate::kinds::text::folded;

/// How like two names are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Likeness {
    /// Not.
    No,
    /// They may be the same.
    Like,
    /// The same words, in any order.
    Same,
}

/// Words in a name that say nothing of who it is.
const TITLES: [&str; 16] = [
    "mr", "mrs", "ms", "miss", "dr", "prof", "herr", "frau", "herrn", "familie", "fam", "and",
    "und", "or", "oder", "u",
];

/// The words of a name, folded and sorted.
pub(super) fn words_of(name: &str) -> Vec<String> {
    let plain: String =
        folded(name).chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    let mut words: Vec<String> = plain
        .split_whitespace()
        .filter(|word| !TITLES.contains(word))
        // "Müller" is folded to "muller", and a bank writes "MUELLER".
        .map(|word| word.replace("ae", "a").replace("oe", "o").replace("ue", "u"))
        .collect();
    words.sort_unstable();
    words
}

/// How like they are, both as [`words_of`] gives them.
pub(super) fn likeness(one: &[String], other: &[String]) -> Likeness {
    if one.is_empty() || other.is_empty() {
        return Likeness::No;
    }
    if one == other {
        return Likeness::Same;
    }
    let (fewer, more) = if one.len() <= other.len() { (one, other) } else { (other, one) };
    let mut left: Vec<&String> = more.iter().collect();
    let mut whole = 0;
    // Whole words are looked for first, so that an initial takes none from them.
    let (initials, names): (Vec<&String>, Vec<&String>) =
        fewer.iter().partition(|word| word.chars().count() == 1);
    for word in &names {
        let same = left.iter().position(|other| *other == *word);
        let at = same.or_else(|| left.iter().position(|other| near(word, other)));
        let at = at.or_else(|| left.iter().position(|other| initial(other, word)));
        let Some(at) = at else { return Likeness::No };
        whole += usize::from(!initial(left.remove(at), word));
    }
    for word in &initials {
        let Some(at) = left.iter().position(|other| other.starts_with(word.as_str())) else {
            return Likeness::No;
        };
        left.remove(at);
    }
    // One word of several says too little: "Silva" is the name of many.
    let alone = fewer.len() == 1 && more.len() > 1;
    if whole == 0 || alone { Likeness::No } else { Likeness::Like }
}

/// Two words that differ by a slip, as long as they are long enough to tell.
fn near(one: &str, other: &str) -> bool {
    one == other
        || one.chars().count().min(other.chars().count()) >= 5
            && strsim::jaro_winkler(one, other) >= 0.93
}

/// Whether the first is the initial of the second.
fn initial(letter: &str, word: &str) -> bool {
    letter.chars().count() == 1 && word.starts_with(letter)
}
