//! What a home plan says of itself, in the languages a student is written to in. What the coach wrote
//! is left as it is.

use super::HomeUnit;
use crate::kinds::Language;
use crate::kinds::text::counted;

/// "Lob serve: 20 tries, three times a week".
pub fn line(language: Language, what: &str, amount: u32, unit: HomeUnit, a_week: u32) -> String {
    let (much, often) = (amount_words(language, amount, unit), often(language, a_week));
    format!("{}: {much}, {often}", what.trim_end_matches(['.', ':']))
}

/// "20 tries".
pub(super) fn amount_words(language: Language, amount: u32, unit: HomeUnit) -> String {
    let (one, many) = match (language, unit) {
        (Language::En, HomeUnit::Tries) => ("try", "tries"),
        (Language::En, HomeUnit::Minutes) => ("minute", "minutes"),
        (Language::De, HomeUnit::Tries) => ("Versuch", "Versuche"),
        (Language::De, HomeUnit::Minutes) => ("Minute", "Minuten"),
    };
    counted(i64::from(amount), one, many)
}

/// "once a week", "twice a week", "three times a week", "every day", "15 times a week".
pub(super) fn often(language: Language, a_week: u32) -> String {
    let words = match language {
        Language::En => [
            "once a week",
            "twice a week",
            "three times a week",
            "four times a week",
            "five times a week",
            "six times a week",
            "every day",
        ],
        Language::De => [
            "einmal pro Woche",
            "zweimal pro Woche",
            "dreimal pro Woche",
            "viermal pro Woche",
            "fünfmal pro Woche",
            "sechsmal pro Woche",
            "jeden Tag",
        ],
    };
    let word = (a_week as usize).checked_sub(1).and_then(|n| words.get(n));
    match (word, language, a_week) {
        (Some(word), ..) => (*word).to_owned(),
        (None, Language::En, 14) => "twice a day".to_owned(),
        (None, Language::En, n) => format!("{n} times a week"),
        (None, Language::De, 14) => "zweimal am Tag".to_owned(),
        (None, Language::De, n) => format!("{n}-mal pro Woche"),
    }
}

/// The words of the page for the wall or the bag.
pub(super) struct Page {
    /// The title, before the student's name.
    pub title: &'static str,
    /// Before the days of the visit.
    pub after: &'static str,
    pub warm_up: &'static str,
    pub then: &'static str,
    pub and: &'static str,
    /// The heads of the table.
    pub head: [&'static str; 4],
    /// The usual caution of anything that is done alone.
    pub caution: &'static str,
    /// What the page is for.
    pub bring: &'static str,
}

pub(super) fn page(language: Language) -> Page {
    match language {
        Language::En => Page {
            title: "At home",
            after: "After the visit of",
            warm_up: "Warm up first",
            then: "Then",
            and: "And",
            head: ["What", "At a time", "How often", "What you did"],
            caution: "Stop when something hurts, and ask a physician or a physiotherapist. This plan knows \
                      nothing of injuries.",
            bring: "Write down what you did, and bring this page: it is read as you tell it, and no goal is \
                    met by it.",
        },
        Language::De => Page {
            title: "Zu Hause",
            after: "Nach dem Besuch vom",
            warm_up: "Erst aufwärmen",
            then: "Dann",
            and: "Außerdem",
            head: ["Was", "Jedes Mal", "Wie oft", "Was du gemacht hast"],
            caution: "Hör auf, wenn etwas weh tut, und frage in einer Arztpraxis oder einer Praxis für \
                      Physiotherapie. Dieser Plan weiß nichts von Verletzungen.",
            bring: "Schreibe auf, was du gemacht hast, und bring diese Seite mit: Sie gilt als das, was du \
                    erzählst, und kein Ziel ist damit erreicht.",
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_said_in_each_language() {
        for (amount, unit, a_week, english, german) in [
            (1, HomeUnit::Tries, 1, "1 try, once a week", "1 Versuch, einmal pro Woche"),
            (20, HomeUnit::Tries, 7, "20 tries, every day", "20 Versuche, jeden Tag"),
            (5, HomeUnit::Minutes, 14, "5 minutes, twice a day", "5 Minuten, zweimal am Tag"),
            (1, HomeUnit::Minutes, 9, "1 minute, 9 times a week", "1 Minute, 9-mal pro Woche"),
        ] {
            let said = |language| line(language, "Lob:", amount, unit, a_week);
            assert_eq!(said(Language::En), format!("Lob: {english}"));
            assert_eq!(said(Language::De), format!("Lob: {german}"));
        }
    }
}
