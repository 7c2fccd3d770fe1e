//! Civil dates and times: what a calendar on a wall and a clock in a hall show. No zone, no
//! instant; a zone joins them only when an instant is needed ([`super::zones`]).

use std::fmt;

use chrono::{Datelike, NaiveDate, NaiveTime, Timelike};
use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef};

/// A day in the calendar, written `YYYY-MM-DD`. Years 1900 to 2199, so that a slip of the keys
/// ("0226") is caught.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Day(NaiveDate);

impl Day {
    /// 1 January 1970, where a machine whose clock stands outside all years is taken to be.
    pub const EPOCH: Self = Self(NaiveDate::from_epoch_days(0).unwrap());

    /// The day with this year, month and day of the month; `None` if the calendar lacks it.
    pub fn of(year: i32, month: u32, day: u32) -> Option<Self> {
        NaiveDate::from_ymd_opt(year, month, day).and_then(Self::from_date)
    }

    /// The same day from chrono; `None` outside 1900 to 2199.
    pub fn from_date(date: NaiveDate) -> Option<Self> {
        (1900..=2199).contains(&date.year()).then_some(Self(date))
    }

    /// The same day for chrono.
    pub fn date(self) -> NaiveDate {
        self.0
    }

    /// `YYYY-MM-DD`, exactly ten characters; `None` for anything else, 30 February included.
    pub fn parse(text: &str) -> Option<Self> {
        let plain = text.len() == 10 && text.bytes().all(|b| b.is_ascii_digit() || b == b'-');
        plain
            .then(|| NaiveDate::parse_from_str(text, "%Y-%m-%d").ok())
            .flatten()
            .and_then(Self::from_date)
    }

    /// This many days later (earlier when negative), held inside the years a day can have.
    #[must_use]
    pub fn plus(self, days: i64) -> Self {
        self.0
            .checked_add_signed(chrono::Duration::days(days))
            .and_then(Self::from_date)
            .unwrap_or(self)
    }

    /// So many months later; where that month is shorter, its last day. 31 August and six months is 28
    /// or 29 February. At the end of the calendar it stays where it is.
    #[must_use]
    pub fn plus_months(self, months: u32) -> Self {
        let later = self.date().checked_add_months(chrono::Months::new(months));
        later.and_then(Self::from_date).unwrap_or(self)
    }

    /// Days from `earlier` to this one.
    pub fn since(self, earlier: Self) -> i64 {
        (self.0 - earlier.0).num_days()
    }

    /// "12 March 2026".
    pub fn words(self) -> String {
        format!("{} {}", self.0.day(), self.0.format("%B %Y"))
    }

    /// "Mar 26": the head of a visit's column.
    pub fn month_words(self) -> String {
        self.0.format("%b %y").to_string()
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.format("%Y-%m-%d").fmt(f)
    }
}

/// A time of day, written `HH:MM`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Time(NaiveTime);

impl Time {
    /// 00:00.
    pub const MIDNIGHT: Self = Self(NaiveTime::MIN);

    /// The time with this hour (0–23) and minute (0–59).
    pub fn of(hour: u32, minute: u32) -> Option<Self> {
        NaiveTime::from_hms_opt(hour, minute, 0).map(Self)
    }

    /// `HH:MM`, exactly five characters.
    pub fn parse(text: &str) -> Option<Self> {
        (text.len() == 5).then(|| NaiveTime::parse_from_str(text, "%H:%M").ok().map(Self)).flatten()
    }

    /// The same time for chrono.
    pub fn time(self) -> NaiveTime {
        self.0
    }

    /// This many minutes later on the clock's face, past midnight if need be.
    #[must_use]
    pub fn plus(self, minutes: u32) -> Self {
        Self(self.0 + chrono::Duration::minutes(i64::from(minutes)))
    }

    /// Minutes after midnight.
    pub fn minutes(self) -> u32 {
        self.0.hour() * 60 + self.0.minute()
    }
}

impl fmt::Display for Time {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.format("%H:%M").fmt(f)
    }
}

/// A run of days, both ends included.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize, schemars::JsonSchema,
)]
pub struct Span {
    /// The first day.
    pub first: Day,
    /// The last day.
    pub last: Day,
}

impl Span {
    /// How many days, both ends counted.
    pub fn days(self) -> i64 {
        self.last.since(self.first) + 1
    }

    /// Whether the day lies inside.
    pub fn holds(self, day: Day) -> bool {
        self.first <= day && day <= self.last
    }

    /// Whether it is one month, from its first day to its last.
    pub fn is_whole_month(self) -> bool {
        let (a, b) = (self.first.date(), self.last.date());
        a.day() == 1
            && (a.year(), a.month()) == (b.year(), b.month())
            && self.last.plus(1).date().day() == 1
    }

    /// "11 – 14 March 2026", as short as stays clear.
    pub fn words(self) -> String {
        let (a, b) = (self.first.date(), self.last.date());
        if a == b {
            self.first.words()
        } else if (a.year(), a.month()) == (b.year(), b.month()) {
            format!("{} – {}", a.day(), self.last.words())
        } else if a.year() == b.year() {
            format!("{} {} – {}", a.day(), a.format("%B"), self.last.words())
        } else {
            format!("{} – {}", self.first.words(), self.last.words())
        }
    }
}

/// Text in the coach file and in JSON for a civil kind.
macro_rules! as_text {
    ($name:ident, $format:literal, $about:literal) => {
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
                s.collect_str(self)
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                let text = std::borrow::Cow::<str>::deserialize(d)?;
                Self::parse(&text).ok_or_else(|| serde::de::Error::custom($about))
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "description": $about, "format": $format })
            }
        }

        impl rusqlite::ToSql for $name {
            fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
                Ok(self.to_string().into())
            }
        }

        impl FromSql for $name {
            fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
                let text = value.as_str()?;
                Self::parse(text)
                    .ok_or_else(|| FromSqlError::other(crate::error::Unreadable(text.to_owned())))
            }
        }
    };
}

as_text!(Day, "date", "a date as YYYY-MM-DD");
as_text!(Time, "time-of-day", "a time as HH:MM");

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_days_the_calendar_has_are_days() {
        for (text, is_day) in [
            ("2024-02-29", true),
            ("2025-02-29", false), // not a leap year
            ("1900-02-29", false), // a century, not divisible by 400 (ISO 8601, Gregorian)
            ("2000-02-29", true),
            ("2026-04-31", false),
            ("2026-4-1", false),
            ("0226-04-01", false),
            ("2026-04-01T00:00", false),
            ("", false),
        ] {
            assert_eq!(Day::parse(text).is_some(), is_day, "{text}");
        }
    }

    #[test]
    fn only_times_a_clock_shows_are_times() {
        for (text, is_time) in
            [("00:00", true), ("23:59", true), ("24:00", false), ("9:30", false), ("09:60", false)]
        {
            assert_eq!(Time::parse(text).is_some(), is_time, "{text}");
        }
    }

    #[test]
    fn a_span_says_itself_as_short_as_stays_clear() {
        let day = |t| Day::parse(t).unwrap();
        for (first, last, words) in [
            ("2026-03-11", "2026-03-14", "11 – 14 March 2026"),
            ("2026-03-30", "2026-04-02", "30 March – 2 April 2026"),
            ("2026-12-30", "2027-01-02", "30 December 2026 – 2 January 2027"),
            ("2026-03-11", "2026-03-11", "11 March 2026"),
        ] {
            assert_eq!(Span { first: day(first), last: day(last) }.words(), words);
        }
    }
}
