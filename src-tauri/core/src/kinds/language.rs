//! The languages in which a student is written to, and their civil days in words.

use chrono::Datelike;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Day, Span};

/// A language in which a student is written to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
}

const MONTHS: [&str; 12] = [
    "Januar",
    "Februar",
    "März",
    "April",
    "Mai",
    "Juni",
    "Juli",
    "August",
    "September",
    "Oktober",
    "November",
    "Dezember",
];

const WEEKDAYS: [&str; 7] =
    ["Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag", "Sonntag"];

/// Abbreviated as CLDR does for German: March, May, June and July stay whole.
const SHORT: [&str; 12] = [
    "Jan.", "Feb.", "März", "Apr.", "Mai", "Juni", "Juli", "Aug.", "Sept.", "Okt.", "Nov.", "Dez.",
];

impl Language {
    /// Its tag (BCP 47).
    pub fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::De => "de",
        }
    }

    /// The day of the week: "Tuesday".
    pub fn weekday(self, day: Day) -> String {
        match self {
            Self::En => day.date().format("%A").to_string(),
            Self::De => {
                let from_monday = day.date().weekday().num_days_from_monday() as usize;
                WEEKDAYS.get(from_monday).copied().unwrap_or_default().to_owned()
            }
        }
    }

    /// A month and a year in full: "March 2026".
    pub fn month(self, day: Day) -> String {
        match self {
            Self::En => day.date().format("%B %Y").to_string(),
            Self::De => format!("{} {}", month_of(day, &MONTHS), day.date().year()),
        }
    }

    /// A month and a year, short: "Mar 26".
    pub fn month_short(self, day: Day) -> String {
        match self {
            Self::En => day.month_words(),
            Self::De => {
                format!("{} {:02}", month_of(day, &SHORT), day.date().year().rem_euclid(100))
            }
        }
    }

    /// Days, both ends counted: "11 to 15 March 2026".
    pub fn span(self, days: Span) -> String {
        match self {
            Self::En => days.words(),
            Self::De => german(days),
        }
    }
}

fn month_of(day: Day, names: &[&'static str; 12]) -> &'static str {
    names.get(day.date().month0() as usize).copied().unwrap_or_default()
}

fn german(days: Span) -> String {
    let whole = |day: Day| {
        format!("{}. {} {}", day.date().day(), month_of(day, &MONTHS), day.date().year())
    };
    let (a, b) = (days.first.date(), days.last.date());
    if a == b {
        whole(days.first)
    } else if (a.year(), a.month()) == (b.year(), b.month()) {
        format!("{}.–{}", a.day(), whole(days.last))
    } else if a.year() == b.year() {
        format!("{}. {} – {}", a.day(), month_of(days.first, &MONTHS), whole(days.last))
    } else {
        format!("{} – {}", whole(days.first), whole(days.last))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(year: i32, month: u32, day: u32) -> Day {
        Day::of(year, month, day).unwrap()
    }

    /// As `Intl.DateTimeFormat('de', { dateStyle: 'long' })` of ICU 78 (CLDR 48) gives them.
    #[test]
    fn german_days_are_said_as_cldr_has_them() {
        for (first, last, words) in [
            (day(2026, 3, 3), day(2026, 3, 3), "3. März 2026"),
            (day(2026, 3, 11), day(2026, 3, 14), "11.–14. März 2026"),
            (day(2026, 2, 26), day(2026, 3, 2), "26. Februar – 2. März 2026"),
            (day(2025, 12, 30), day(2026, 1, 2), "30. Dezember 2025 – 2. Januar 2026"),
        ] {
            assert_eq!(Language::De.span(Span { first, last }), words);
        }
        assert_eq!(Language::De.month_short(day(2026, 9, 1)), "Sept. 26");
        assert_eq!(Language::De.month(day(2026, 9, 1)), "September 2026");
        assert_eq!(Language::En.month(day(2026, 9, 1)), "September 2026");
    }
}
