//! Text as people type it: trimmed, composed, free of control characters, and folded for search.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// One line: composed (Unicode NFC), control characters and line breaks as spaces, runs of spaces
/// as one, ends trimmed.
pub fn line(text: &str) -> String {
    let spaced: String =
        text.nfc().map(|c| if c.is_control() || is_line_break(c) { ' ' } else { c }).collect();
    spaced.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Several lines: composed, `\r\n` as `\n`, other control characters gone, trailing space trimmed.
pub fn lines(text: &str) -> String {
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    let kept: String = text.nfc().filter(|c| *c == '\n' || *c == '\t' || !c.is_control()).collect();
    kept.trim().to_owned()
}

/// For search: lower case, without accents, so that "zoe" finds "Zoë" and "lukasz" finds "Łukasz".
pub fn folded(text: &str) -> String {
    let text = line(text);
    if text.is_ascii() {
        return text.to_ascii_lowercase();
    }
    text.nfkd()
        .filter(|c| !is_combining_mark(*c))
        .flat_map(char::to_lowercase)
        .map(|c| match c {
            'ł' => 'l',
            'ø' => 'o',
            'đ' | 'ð' => 'd',
            'ı' => 'i',
            c => c,
        })
        .flat_map(|c| {
            let (first, second) = match c {
                'ß' => ('s', Some('s')),
                'æ' => ('a', Some('e')),
                'œ' => ('o', Some('e')),
                'þ' => ('t', Some('h')),
                c => (c, None),
            };
            std::iter::once(first).chain(second)
        })
        .collect()
}

/// Whether words, folded already, have these others in them as whole words: "ana" stands in "ana and
/// ben", not in "banana".
pub fn has_words(folded: &str, sought: &str) -> bool {
    let of_a_word = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    !sought.is_empty()
        && folded.match_indices(sought).any(|(at, found)| {
            !of_a_word(folded[..at].chars().next_back())
                && !of_a_word(folded[at + found.len()..].chars().next())
        })
}

/// "1 try", "2 tries".
pub fn counted(n: i64, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}

/// "Ana", "Ana and Ben", "Ana, Ben and Cleo".
pub fn joined(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

/// "first", … "tenth", then "11th".
pub fn ordinal(n: usize) -> String {
    const WORDS: [&str; 10] = [
        "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth",
        "tenth",
    ];
    match n {
        1..=10 => WORDS[n - 1].to_owned(),
        _ => {
            let end = match (n % 100, n % 10) {
                (11..=13, _) => "th",
                (_, 1) => "st",
                (_, 2) => "nd",
                (_, 3) => "rd",
                _ => "th",
            };
            format!("{n}{end}")
        }
    }
}

fn is_line_break(c: char) -> bool {
    matches!(c, '\u{2028}' | '\u{2029}')
}

/// A text that no spreadsheet takes for a formula.
pub fn no_formula(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_without_their_accents() {
        for (name, typed) in [
            ("Zoë Łukasiewicz", "zoe lukasiewicz"),
            ("Þórður Æsir", "thordur aesir"),
            ("Straße", "strasse"),
            ("  ANA\u{a0}\tNúñez ", "ana nunez"),
            ("Київ", "київ".nfkd().filter(|c| !is_combining_mark(*c)).collect::<String>().as_str()),
        ] {
            assert_eq!(folded(name), typed);
        }
    }

    #[test]
    fn a_name_is_found_as_whole_words_only() {
        for (words, name, there) in [
            ("ana and ben", "ana", true),
            ("with ana.", "ana", true),
            ("banana", "ana", false),
            ("anabel, ana", "ana", true),
            ("ana maria", "ana maria", true),
            ("", "ana", false),
            ("ana", "", false),
        ] {
            assert_eq!(has_words(words, name), there, "{name} in {words}");
        }
    }

    #[test]
    fn a_line_holds_no_breaks_and_lines_keep_theirs() {
        assert_eq!(line(" a\r\nb\u{0}c\u{2028}d "), "a b c d");
        assert_eq!(lines("a\r\nb\u{0}\r c \n"), "a\nb\n c");
    }
}
