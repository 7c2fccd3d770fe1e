//! Time zones: what a time on a court's clock means as an instant, and the other way about.
//!
//! A time on a court is civil time in the facility's zone. Twice a year that is not enough: an hour
//! is skipped, or comes twice. [`resolve`] never guesses; it says which of the three it is. The
//! zones come from the copy of the IANA database built into the program, never from the machine, so
//! the same coach file means the same everywhere. This is the only file that knows the library.

use std::fmt;
use std::str::FromStr;

use chrono::{DateTime, Datelike, FixedOffset, NaiveDateTime, Timelike};
use jiff::civil;
use jiff::tz::{AmbiguousOffset, Offset, TimeZone, TimeZoneDatabase};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// An IANA time zone such as `America/New_York`, known to the built-in database.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Zone(String);

/// A name that no time zone has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownZone {
    /// The name as it was given.
    pub name: String,
}

impl fmt::Display for UnknownZone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "there is no time zone “{}”; a zone reads like Europe/Lisbon", self.name)
    }
}

impl std::error::Error for UnknownZone {}

impl Zone {
    /// The zone of that name. Upper and lower case do not matter; the name is kept as the database
    /// spells it.
    ///
    /// ```
    /// use carryover_core::kinds::zones::Zone;
    /// assert_eq!(Zone::parse("america/new_york").unwrap().name(), "America/New_York");
    /// assert!(Zone::parse("New York").is_err(), "a city alone is no zone name");
    /// ```
    pub fn parse(name: &str) -> Result<Zone, UnknownZone> {
        let unknown = || UnknownZone { name: name.to_owned() };
        if NO_PLACE.iter().any(|no| no.eq_ignore_ascii_case(name)) {
            return Err(unknown());
        }
        let zone = TimeZoneDatabase::bundled().get(name).map_err(|_| unknown())?;
        zone.iana_name().map(|name| Zone(name.to_owned())).ok_or_else(unknown)
    }

    /// The IANA name.
    pub fn name(&self) -> &str {
        &self.0
    }

    fn rules(&self) -> Result<TimeZone, OutOfRange> {
        TimeZoneDatabase::bundled().get(&self.0).map_err(|_| OutOfRange)
    }
}

/// Entries of the database that stand for no place and no rule.
const NO_PLACE: [&str; 4] = ["Etc/Unknown", "Factory", "localtime", "posixrules"];

impl fmt::Display for Zone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl FromStr for Zone {
    type Err = UnknownZone;
    fn from_str(name: &str) -> Result<Zone, UnknownZone> {
        Zone::parse(name)
    }
}

impl Serialize for Zone {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Zone {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Zone, D::Error> {
        Zone::parse(&String::deserialize(from)?).map_err(de::Error::custom)
    }
}

impl JsonSchema for Zone {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Zone".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string",
            "description": "An IANA time zone name",
            "examples": ["America/New_York"]
        })
    }
}

/// Every zone name the program knows, in alphabetical order, spelled as the database spells it.
pub fn names() -> Vec<String> {
    let db = TimeZoneDatabase::bundled();
    let mut names: Vec<String> = db.available().map(|name| name.as_str().to_owned()).collect();
    names.retain(|name| !NO_PLACE.contains(&name.as_str()));
    names.sort_unstable();
    names
}

/// What a civil time means in a zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub enum Moment {
    /// The ordinary case: one instant.
    Once {
        /// The instant.
        #[serde(serialize_with = "write_instant")]
        #[schemars(with = "String")]
        at: DateTime<FixedOffset>,
    },
    /// The clocks went back: the time comes twice.
    Twice {
        /// Before the clocks went back.
        #[serde(serialize_with = "write_instant")]
        #[schemars(with = "String")]
        first: DateTime<FixedOffset>,
        /// After the clocks went back.
        #[serde(serialize_with = "write_instant")]
        #[schemars(with = "String")]
        second: DateTime<FixedOffset>,
    },
    /// The clocks went forward: the time is skipped.
    Gap {
        /// The first instant after the gap.
        #[serde(serialize_with = "write_instant")]
        #[schemars(with = "String")]
        next: DateTime<FixedOffset>,
    },
}

impl Moment {
    /// The one instant it stands for: of two the second where that is meant, and after a gap the
    /// next that exists.
    pub fn instant(self, second_of_two: bool) -> DateTime<FixedOffset> {
        match self {
            Self::Once { at } => at,
            Self::Twice { second, .. } if second_of_two => second,
            Self::Twice { first, .. } => first,
            Self::Gap { next } => next,
        }
    }
}

/// A time so far from today that the calendar has no instant for it (about year 9999 and beyond).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange;

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("this time lies outside the years the calendar covers")
    }
}

impl std::error::Error for OutOfRange {}

/// What the time `local` on the clock of `zone` means.
///
/// ```
/// use carryover_core::kinds::zones::{Moment, Zone, resolve};
/// let zone = Zone::parse("America/New_York").unwrap();
/// let skipped = "2026-03-08T02:30:00".parse().unwrap();
/// assert!(matches!(resolve(skipped, &zone), Ok(Moment::Gap { .. })));
/// ```
pub fn resolve(local: NaiveDateTime, zone: &Zone) -> Result<Moment, OutOfRange> {
    let rules = zone.rules()?;
    let civil = to_civil(local)?;
    match rules.to_ambiguous_timestamp(civil).offset() {
        AmbiguousOffset::Unambiguous { offset } => Ok(Moment::Once { at: instant(local, offset)? }),
        AmbiguousOffset::Fold { before, after } => {
            Ok(Moment::Twice { first: instant(local, before)?, second: instant(local, after)? })
        }
        AmbiguousOffset::Gap { before, after } => {
            // The clocks jump at some instant after `local` read with the later offset and not
            // after `local` read with the earlier one.
            let from = after.to_timestamp(civil).map_err(|_| OutOfRange)?;
            let until = before.to_timestamp(civil).map_err(|_| OutOfRange)?;
            let jump = rules
                .following(from)
                .take_while(|jump| jump.timestamp() <= until)
                .find(|jump| jump.offset() == after)
                .ok_or(OutOfRange)?;
            let at = DateTime::from_timestamp(jump.timestamp().as_second(), 0).ok_or(OutOfRange)?;
            Ok(Moment::Gap { next: at.with_timezone(&whole_minutes(after)?) })
        }
    }
}

/// What the clock of `zone` shows at an instant.
pub fn local_of<T: chrono::TimeZone>(
    instant: &DateTime<T>,
    zone: &Zone,
) -> Result<NaiveDateTime, OutOfRange> {
    let offset = offset_at(instant, zone)?;
    let seconds = chrono::Duration::seconds(i64::from(offset.seconds()));
    instant.naive_utc().checked_add_signed(seconds).ok_or(OutOfRange)
}

/// The same instant, with the offset the clock of `zone` has then.
pub fn in_zone<T: chrono::TimeZone>(
    instant: &DateTime<T>,
    zone: &Zone,
) -> Result<DateTime<FixedOffset>, OutOfRange> {
    Ok(instant.with_timezone(&whole_minutes(offset_at(instant, zone)?)?))
}

/// One change of a zone's clock.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// What the clock showed when it was changed: the instant, read with the offset before.
    pub local_before: NaiveDateTime,
    /// The offset before, in seconds east of Greenwich.
    pub offset_before_seconds: i32,
    /// The offset from then on, in seconds east of Greenwich.
    pub offset_after_seconds: i32,
    /// What the time is called from then on: "EST", or "-03" where it has no name.
    pub name: String,
    /// Whether it is summer time from then on, as the database has it.
    pub dst: bool,
}

/// The changes of a zone's clock in these years, both included, in order; and before them the one
/// that brought what was in force when the first year began. Where that one lies before 1970, or
/// there never was one, it is given as 1 January 1970 (of the first year, if that is earlier), with
/// one offset before and after. So the list is never empty.
///
/// ```
/// use carryover_core::kinds::zones::{Zone, changes};
/// let zone = Zone::parse("America/New_York").unwrap();
/// let names: Vec<String> =
///     changes(&zone, 2026, 2026).unwrap().into_iter().map(|change| change.name).collect();
/// assert_eq!(names, ["EST", "EDT", "EST"]);
/// ```
pub fn changes(zone: &Zone, first_year: i32, last_year: i32) -> Result<Vec<Change>, OutOfRange> {
    let rules = zone.rules()?;
    let new_year = |year: i32| {
        let day = chrono::NaiveDate::from_ymd_opt(year, 1, 1).ok_or(OutOfRange)?;
        Ok::<NaiveDateTime, OutOfRange>(day.and_time(chrono::NaiveTime::MIN))
    };
    let begin = stamp(new_year(first_year)?)?;
    let end = stamp(new_year(last_year.checked_add(1).ok_or(OutOfRange)?)?)?;
    let epoch = stamp(new_year(1970)?)?;
    // A new year on the zone's clock is at most a day from the one in Greenwich; the change in
    // force is looked for from there, and one that falls into that day is not lost.
    let before = rules.preceding(begin).next().filter(|jump| jump.timestamp() >= epoch);
    let mut found = Vec::new();
    match before {
        Some(jump) => found.push(change_at(&rules, &jump)?),
        None => {
            let info = rules.to_offset_info(begin);
            found.push(Change {
                local_before: new_year(first_year.min(1970))?,
                offset_before_seconds: info.offset().seconds(),
                offset_after_seconds: info.offset().seconds(),
                name: info.abbreviation().to_owned(),
                dst: info.dst().is_dst(),
            });
        }
    }
    // `following` leaves out a change at the very instant it is asked for.
    let just_before = begin.checked_sub(jiff::Span::new().seconds(1)).map_err(|_| OutOfRange)?;
    for jump in rules.following(just_before).take_while(|jump| jump.timestamp() < end) {
        found.push(change_at(&rules, &jump)?);
    }
    Ok(found)
}

fn change_at(
    rules: &TimeZone,
    jump: &jiff::tz::TimeZoneTransition<'_>,
) -> Result<Change, OutOfRange> {
    let at = jump.timestamp();
    let just_before = at.checked_sub(jiff::Span::new().seconds(1)).map_err(|_| OutOfRange)?;
    let before = rules.to_offset(just_before);
    let utc = DateTime::from_timestamp(at.as_second(), 0).ok_or(OutOfRange)?.naive_utc();
    let shift = chrono::Duration::seconds(i64::from(before.seconds()));
    Ok(Change {
        local_before: utc.checked_add_signed(shift).ok_or(OutOfRange)?,
        offset_before_seconds: before.seconds(),
        offset_after_seconds: jump.offset().seconds(),
        name: jump.abbreviation().to_owned(),
        dst: jump.dst().is_dst(),
    })
}

fn stamp(utc: NaiveDateTime) -> Result<jiff::Timestamp, OutOfRange> {
    jiff::Timestamp::from_second(utc.and_utc().timestamp()).map_err(|_| OutOfRange)
}

/// An instant as RFC 3339 writes it, with a numeric offset and no zone name:
/// `2026-03-08T03:00:00-04:00`, and `+00:00` rather than `Z`.
pub fn rfc3339(instant: &DateTime<FixedOffset>) -> String {
    instant.to_rfc3339()
}

fn write_instant<S: Serializer>(at: &DateTime<FixedOffset>, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(&rfc3339(at))
}

fn offset_at<T: chrono::TimeZone>(
    instant: &DateTime<T>,
    zone: &Zone,
) -> Result<Offset, OutOfRange> {
    let at = jiff::Timestamp::from_second(instant.timestamp()).map_err(|_| OutOfRange)?;
    Ok(zone.rules()?.to_offset(at))
}

/// The instant at which a clock `offset` from UTC shows `local`.
fn instant(local: NaiveDateTime, offset: Offset) -> Result<DateTime<FixedOffset>, OutOfRange> {
    let seconds = chrono::Duration::seconds(i64::from(offset.seconds()));
    let utc = local.checked_sub_signed(seconds).ok_or(OutOfRange)?.and_utc();
    Ok(utc.with_timezone(&whole_minutes(offset)?))
}

/// The offset in whole minutes, which is all RFC 3339 can write. Offsets with seconds are those of
/// the time before zones; the instant stays right because it is written in the rounded offset.
fn whole_minutes(offset: Offset) -> Result<FixedOffset, OutOfRange> {
    FixedOffset::east_opt(offset.seconds() / 60 * 60).ok_or(OutOfRange)
}

fn to_civil(local: NaiveDateTime) -> Result<civil::DateTime, OutOfRange> {
    let year = i16::try_from(local.year()).map_err(|_| OutOfRange)?;
    let part = |n: u32| i8::try_from(n).map_err(|_| OutOfRange);
    civil::DateTime::new(
        year,
        part(local.month())?,
        part(local.day())?,
        part(local.hour())?,
        part(local.minute())?,
        part(local.second())?,
        0,
    )
    .map_err(|_| OutOfRange)
}

/// The machine's own zone; "UTC" when it does not say.
pub fn of_this_machine() -> String {
    let here = TimeZone::try_system().ok().and_then(|zone| zone.iana_name().map(str::to_owned));
    here.unwrap_or_else(|| "UTC".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn zone(name: &str) -> Zone {
        Zone::parse(name).expect("a zone")
    }

    fn read(local: &str, name: &str) -> serde_json::Value {
        let local = NaiveDateTime::parse_from_str(local, "%Y-%m-%dT%H:%M").expect("a time");
        serde_json::to_value(resolve(local, &zone(name)).expect("in range")).expect("json")
    }

    /// The dates of the United States: 15 U.S.C. 260a (second Sunday of March, first Sunday of
    /// November, at two o'clock). Of the European Union: Directive 2000/84/EC (last Sundays of
    /// March and October, at one o'clock UTC; from memory). Apia skipped 30 December 2011 whole,
    /// Lord Howe moves by half an hour (IANA database).
    #[test]
    fn skipped_and_repeated_hours_are_told_apart() {
        use serde_json::json;
        let ny = "America/New_York";
        for (local, zone, expect) in [
            ("2026-03-08T01:59", ny, json!({"kind":"once","at":"2026-03-08T01:59:00-05:00"})),
            ("2026-03-08T02:00", ny, json!({"kind":"gap","next":"2026-03-08T03:00:00-04:00"})),
            ("2026-03-08T02:30", ny, json!({"kind":"gap","next":"2026-03-08T03:00:00-04:00"})),
            ("2026-03-08T03:00", ny, json!({"kind":"once","at":"2026-03-08T03:00:00-04:00"})),
            (
                "2026-11-01T01:30",
                ny,
                json!({"kind":"twice","first":"2026-11-01T01:30:00-04:00",
                       "second":"2026-11-01T01:30:00-05:00"}),
            ),
            ("2026-11-01T02:00", ny, json!({"kind":"once","at":"2026-11-01T02:00:00-05:00"})),
            (
                "2026-03-29T01:30",
                "Europe/London",
                json!({"kind":"gap","next":"2026-03-29T02:00:00+01:00"}),
            ),
            (
                "2026-10-25T01:00",
                "Europe/London",
                json!({"kind":"twice","first":"2026-10-25T01:00:00+01:00",
                       "second":"2026-10-25T01:00:00+00:00"}),
            ),
            (
                "2026-07-01T12:00",
                "America/Phoenix",
                json!({"kind":"once","at":"2026-07-01T12:00:00-07:00"}),
            ),
            (
                "2011-12-30T12:00",
                "Pacific/Apia",
                json!({"kind":"gap","next":"2011-12-31T00:00:00+14:00"}),
            ),
            (
                "2026-10-04T02:15",
                "Australia/Lord_Howe",
                json!({"kind":"gap","next":"2026-10-04T02:30:00+11:00"}),
            ),
            ("2026-06-01T00:00", "UTC", json!({"kind":"once","at":"2026-06-01T00:00:00+00:00"})),
        ] {
            assert_eq!(read(local, zone), expect, "{local} in {zone}");
        }
    }

    #[test]
    fn an_offset_with_seconds_keeps_the_instant() {
        // New York before 1883: 4 h 56 min 2 s behind Greenwich (IANA database).
        assert_eq!(read("1880-01-01T00:00", "America/New_York")["at"], "1880-01-01T00:00:02-04:56");
    }

    #[test]
    fn a_name_that_is_no_zone_is_refused_in_words() {
        for name in
            ["", "New York", "Mars/Olympus", "Etc/Unknown", "localtime", "EST5EDT4,M3", "../x"]
        {
            let refused = Zone::parse(name).expect_err("no zone");
            assert!(refused.to_string().contains(name), "the words repeat what was typed");
        }
    }

    #[test]
    fn every_listed_name_is_a_zone_and_reads_back() {
        let names = names();
        assert!(names.len() > 400, "the whole database is there, not a stub: {}", names.len());
        for name in names {
            let zone = zone(&name);
            assert_eq!(zone.name(), name);
            let json = serde_json::to_string(&zone).expect("json");
            assert_eq!(serde_json::from_str::<Zone>(&json).expect("read back"), zone);
        }
    }

    #[test]
    fn the_edge_of_the_calendar_is_an_error_and_not_a_crash() {
        for (local, name) in
            [("9999-12-31T23:59:00", "America/Los_Angeles"), ("9999-12-31T23:59:00", "Asia/Tokyo")]
        {
            // Either answer is sound; a wrong instant or a crash is not.
            if let Ok(Moment::Once { at }) = resolve(local.parse().expect("time"), &zone(name)) {
                assert_eq!(at.naive_local(), local.parse::<NaiveDateTime>().expect("time"));
            }
        }
        let far: NaiveDateTime = "+20000-01-01T00:00:00".parse().expect("time");
        assert_eq!(resolve(far, &zone("UTC")), Err(OutOfRange));
    }

    proptest! {
        #[test]
        fn an_instant_shown_on_a_clock_is_found_again(
            second in 0i64..4_000_000_000, pick in 0usize..400,
        ) {
            let names = names();
            let zone = zone(&names[pick % names.len()]);
            let at = DateTime::from_timestamp(second, 0).expect("an instant");
            let local = local_of(&at, &zone).expect("in range");
            match resolve(local, &zone).expect("in range") {
                Moment::Once { at: found } => prop_assert_eq!(found, at),
                Moment::Twice { first, second } => {
                    prop_assert!(first < second);
                    prop_assert!(first == at || second == at);
                }
                Moment::Gap { .. } => prop_assert!(false, "a clock never shows a skipped time"),
            }
        }

        #[test]
        fn after_a_gap_the_clock_has_passed_the_asked_time(
            minute in 0i64..40_000_000, pick in 0usize..400,
        ) {
            let names = names();
            let zone = zone(&names[pick % names.len()]);
            let local = DateTime::from_timestamp(minute * 60, 0).expect("a time").naive_utc();
            if let Moment::Gap { next } = resolve(local, &zone).expect("in range") {
                prop_assert!(local_of(&next, &zone).expect("in range") > local);
                let before = next - chrono::Duration::seconds(1);
                prop_assert!(local_of(&before, &zone).expect("in range") < local);
            }
        }
    }

    /// Python zoneinfo, tzdata 2026.6: New York's clock changes on 8 March and 1 November 2026;
    /// Phoenix has changed nothing since 1967, UTC never has.
    #[test]
    fn the_changes_of_a_clock_are_listed_with_what_was_before() {
        let told = |name: &str, first, last| -> Vec<String> {
            let told = changes(&zone(name), first, last).expect("in range");
            told.iter()
                .map(|c| {
                    let (a, b) = (c.offset_before_seconds / 60, c.offset_after_seconds / 60);
                    format!("{} {a} {b} {} {}", c.local_before, c.name, c.dst)
                })
                .collect()
        };
        assert_eq!(
            told("America/New_York", 2026, 2026),
            [
                "2025-11-02 02:00:00 -240 -300 EST false",
                "2026-03-08 02:00:00 -300 -240 EDT true",
                "2026-11-01 02:00:00 -240 -300 EST false",
            ]
        );
        assert_eq!(
            told("America/Phoenix", 2025, 2027),
            ["1970-01-01 00:00:00 -420 -420 MST false"]
        );
        assert_eq!(told("UTC", 1960, 2027), ["1960-01-01 00:00:00 0 0 UTC false"]);
    }
}
