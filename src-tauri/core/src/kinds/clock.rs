//! The clock, passed in everywhere: the machine's own in the program, a fixed one in tests and in
//! the sample season.

use std::fmt;
use std::sync::atomic::{AtomicI64, Ordering};

use chrono::{DateTime, FixedOffset, TimeZone, Utc};
use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef};

use super::Day;

/// When something was recorded: an instant, written as RFC 3339 in UTC with a numeric offset,
/// to the millisecond.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Instant(DateTime<Utc>);

impl Instant {
    /// The instant this many milliseconds after 1970-01-01T00:00:00Z.
    pub fn from_unix_millis(millis: i64) -> Self {
        Self(Utc.timestamp_millis_opt(millis).single().unwrap_or_default())
    }

    /// The same instant from chrono, cut to the millisecond.
    pub fn from_chrono<Z: TimeZone>(at: &DateTime<Z>) -> Self {
        Self::from_unix_millis(at.timestamp_millis())
    }

    /// RFC 3339; `None` for anything else.
    pub fn parse(text: &str) -> Option<Self> {
        DateTime::<FixedOffset>::parse_from_rfc3339(text).ok().map(|at| Self::from_chrono(&at))
    }

    /// Seconds and nanoseconds since 1970, never negative.
    pub fn unix(self) -> (u64, u32) {
        (u64::try_from(self.0.timestamp()).unwrap_or(0), self.0.timestamp_subsec_nanos())
    }

    /// The same instant for chrono.
    pub fn utc(self) -> DateTime<Utc> {
        self.0
    }
}

impl fmt::Display for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.format("%Y-%m-%dT%H:%M:%S%.3f+00:00").fmt(f)
    }
}

impl serde::Serialize for Instant {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Instant {
    fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let text = std::borrow::Cow::<str>::deserialize(d)?;
        Self::parse(&text).ok_or_else(|| serde::de::Error::custom("an instant as RFC 3339"))
    }
}

impl schemars::JsonSchema for Instant {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Instant".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "format": "date-time" })
    }
}

impl rusqlite::ToSql for Instant {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(self.to_string().into())
    }
}

impl FromSql for Instant {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        let text = value.as_str()?;
        Self::parse(text)
            .ok_or_else(|| FromSqlError::other(crate::error::Unreadable(text.to_owned())))
    }
}

/// What time it is, and what day it is where the coach is.
pub trait Clock: Send + Sync {
    /// Now.
    fn now(&self) -> Instant;
    /// The day on the coach's own calendar.
    fn today(&self) -> Day;
}

/// The machine's clock and zone.
pub struct SystemClock;

#[allow(clippy::disallowed_methods, reason = "the one place that asks the machine")]
impl Clock for SystemClock {
    fn now(&self) -> Instant {
        Instant::from_chrono(&Utc::now())
    }

    fn today(&self) -> Day {
        let here = chrono::Local::now().date_naive();
        Day::from_date(here).unwrap_or(Day::EPOCH)
    }
}

/// A clock that moves only when told, and by one millisecond each time it is read, so that what is
/// recorded one after the other keeps its order.
pub struct FixedClock(AtomicI64);

impl FixedClock {
    /// A clock that stands at this instant.
    pub fn at(now: Instant) -> Self {
        Self(AtomicI64::new(now.utc().timestamp_millis()))
    }

    /// Noon UTC of this day.
    pub fn on(day: Day) -> Self {
        Self(AtomicI64::new(noon(day)))
    }

    /// Moves the clock to noon UTC of this day.
    pub fn set(&self, day: Day) {
        self.0.store(noon(day), Ordering::SeqCst);
    }
}

fn noon(day: Day) -> i64 {
    day.date().and_time(chrono::NaiveTime::MIN).and_utc().timestamp_millis() + 12 * 3_600_000
}

impl Clock for FixedClock {
    fn now(&self) -> Instant {
        Instant::from_unix_millis(self.0.fetch_add(1, Ordering::SeqCst))
    }

    fn today(&self) -> Day {
        let now = Instant::from_unix_millis(self.0.load(Ordering::SeqCst));
        Day::from_date(now.utc().date_naive()).unwrap_or(Day::EPOCH)
    }
}
