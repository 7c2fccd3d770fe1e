//! Time zones: the only file that uses jiff and its bundled copy of the time-zone database, so that
//! a machine with an old database computes the same times as any other.

use std::fmt;

use chrono::{DateTime, Datelike, FixedOffset, NaiveDateTime, TimeZone, Timelike};
use jiff::civil;
use jiff::tz::{AmbiguousOffset, Offset, TimeZone as JiffZone};

/// A time zone by its IANA name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone(JiffZone);

/// There is no zone of that name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoSuchZone(pub String);

/// What a time on a wall clock stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// One instant.
    Once {
        /// It.
        at: DateTime<FixedOffset>,
    },
    /// Two: the clocks go back over it.
    Twice {
        /// The earlier.
        first: DateTime<FixedOffset>,
        /// The later.
        second: DateTime<FixedOffset>,
    },
    /// None: the clocks skip it.
    Gap {
        /// The first instant after the gap.
        next: DateTime<FixedOffset>,
    },
}

impl Zone {
    /// The zone of this name, in the database's own spelling.
    ///
    /// # Errors
    /// [`NoSuchZone`].
    pub fn parse(name: &str) -> Result<Self, NoSuchZone> {
        let zone = jiff::tz::db().get(name).map_err(|_| NoSuchZone(name.to_owned()))?;
        if zone.iana_name().is_some() { Ok(Self(zone)) } else { Err(NoSuchZone(name.to_owned())) }
    }
}

impl fmt::Display for Zone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0.iana_name().unwrap_or_default())
    }
}

/// All names in the database, sorted; those without a place (as in "EST5EDT") are left out.
pub fn names() -> Vec<String> {
    let mut names: Vec<String> =
        jiff::tz::db().available().map(|n| n.to_string()).filter(|n| n.contains('/') && !n.starts_with("Etc/")).collect();
    names.push("UTC".to_owned());
    names.sort();
    names
}

/// The machine's own zone; "UTC" when it does not say.
pub fn of_this_machine() -> String {
    JiffZone::try_system().ok().and_then(|zone| zone.iana_name().map(str::to_owned)).unwrap_or_else(|| "UTC".to_owned())
}

/// What a time on a wall clock in a zone stands for. Seconds and less are left out of account.
pub fn resolve(local: NaiveDateTime, zone: &Zone) -> Moment {
    let Some(wall) = to_jiff(local) else {
        return Moment::Once { at: local.and_utc().fixed_offset() };
    };
    match zone.0.to_ambiguous_timestamp(wall).offset() {
        AmbiguousOffset::Unambiguous { offset } => Moment::Once { at: at(local, offset) },
        AmbiguousOffset::Fold { before, after } => {
            Moment::Twice { first: at(local, before), second: at(local, after) }
        }
        AmbiguousOffset::Gap { before, after } => {
            // Read with the offset before the gap, the skipped time stands as far after the change
            // as it lies after the gap's start; the change itself is the next transition at or
            // before that instant.
            let inside = before.to_timestamp(wall);
            let change = inside.ok().and_then(|t| {
                let just_after = t.checked_add(jiff::SignedDuration::from_nanos(1)).ok()?;
                zone.0.preceding(just_after).next().map(|change| change.timestamp())
            });
            let next = change.map_or_else(
                || at(local, after),
                |change| offset_of(after).timestamp_opt(change.as_second(), 0).single().unwrap_or_else(|| at(local, after)),
            );
            Moment::Gap { next }
        }
    }
}

fn to_jiff(local: NaiveDateTime) -> Option<civil::DateTime> {
    civil::DateTime::new(
        i16::try_from(local.year()).ok()?,
        i8::try_from(local.month()).ok()?,
        i8::try_from(local.day()).ok()?,
        i8::try_from(local.hour()).ok()?,
        i8::try_from(local.minute()).ok()?,
        0,
        0,
    )
    .ok()
}

fn offset_of(offset: Offset) -> FixedOffset {
    FixedOffset::east_opt(offset.seconds()).unwrap_or_else(|| chrono::Offset::fix(&chrono::Utc))
}

fn at(local: NaiveDateTime, offset: Offset) -> DateTime<FixedOffset> {
    let offset = offset_of(offset);
    offset.from_local_datetime(&local).single().unwrap_or_else(|| local.and_utc().with_timezone(&offset))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn look(local: &str, zone: &str) -> String {
        let local = NaiveDateTime::parse_from_str(local, "%Y-%m-%dT%H:%M").unwrap();
        match resolve(local, &Zone::parse(zone).unwrap()) {
            Moment::Once { at } => format!("once {}", at.to_rfc3339()),
            Moment::Twice { first, second } => format!("twice {} {}", first.to_rfc3339(), second.to_rfc3339()),
            Moment::Gap { next } => format!("gap {}", next.to_rfc3339()),
        }
    }

    /// Rules: US 15 U.S.C. 260a (second Sunday of March, first of November, at 2:00); EU Directive
    /// 2000/84/EC (last Sundays of March and October, at 1:00 UTC); Lord Howe's half hour from the
    /// time-zone database (australasia file).
    #[test]
    fn clock_changes_are_seen() {
        for (local, zone, expected) in [
            ("2026-03-08T02:30", "America/New_York", "gap 2026-03-08T03:00:00-04:00"),
            ("2026-03-08T01:59", "America/New_York", "once 2026-03-08T01:59:00-05:00"),
            ("2026-03-08T03:00", "America/New_York", "once 2026-03-08T03:00:00-04:00"),
            ("2026-11-01T01:30", "America/New_York", "twice 2026-11-01T01:30:00-04:00 2026-11-01T01:30:00-05:00"),
            ("2026-03-29T01:15", "Europe/Lisbon", "gap 2026-03-29T02:00:00+01:00"),
            ("2026-10-25T02:00", "Europe/Berlin", "twice 2026-10-25T02:00:00+02:00 2026-10-25T02:00:00+01:00"),
            ("2026-10-04T02:10", "Australia/Lord_Howe", "gap 2026-10-04T02:30:00+11:00"),
            ("2026-07-01T09:00", "Asia/Kolkata", "once 2026-07-01T09:00:00+05:30"),
        ] {
            assert_eq!(look(local, zone), expected, "{local} in {zone}");
        }
    }

    #[test]
    fn only_names_in_the_database_are_zones() {
        for bad in ["", "Mars/Olympus", "GMT+25", "../etc/passwd"] {
            assert!(Zone::parse(bad).is_err(), "{bad}");
        }
        assert_eq!(Zone::parse("europe/lisbon").unwrap().to_string(), "Europe/Lisbon");
        assert!(names().contains(&"Europe/Lisbon".to_owned()));
    }
}
