//! A recurrence rule as it is written (RFC 5545 §3.3.10), read and checked.

use std::collections::BTreeSet;

use chrono::{NaiveDate, NaiveDateTime, Weekday};

use super::values;

/// What a rule counts in, the longest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Freq {
    Yearly,
    Monthly,
    Weekly,
    Daily,
    Hourly,
    Minutely,
    Secondly,
}

/// The last moment a rule may give.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Until {
    /// That day, to its end.
    Day(NaiveDate),
    /// A time on the rule's own clock.
    Wall(NaiveDateTime),
    /// A time in UTC.
    Utc(NaiveDateTime),
}

/// A rule whose parts all lie where they may. A part that is not there is `None`, never empty.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Rule {
    pub(crate) freq: Freq,
    pub(crate) interval: u32,
    pub(crate) count: Option<u32>,
    pub(crate) until: Option<Until>,
    pub(crate) by_second: Option<BTreeSet<u32>>,
    pub(crate) by_minute: Option<BTreeSet<u32>>,
    pub(crate) by_hour: Option<BTreeSet<u32>>,
    pub(crate) by_day: Option<Vec<(i32, Weekday)>>,
    pub(crate) by_month_day: Option<BTreeSet<i32>>,
    pub(crate) by_year_day: Option<BTreeSet<i32>>,
    pub(crate) by_week_no: Option<BTreeSet<i32>>,
    pub(crate) by_month: Option<BTreeSet<u32>>,
    pub(crate) by_set_pos: Option<BTreeSet<i32>>,
    pub(crate) week_start: Weekday,
}

impl Rule {
    /// Reads the value of an RRULE. Upper and lower case do not matter, nor the order of the parts.
    /// Both COUNT and UNTIL, which the standard forbids together, are kept if they come together:
    /// the one that is reached first ends the rule.
    ///
    /// The error is one sentence that names the part.
    pub(crate) fn parse(text: &str) -> Result<Self, String> {
        let mut rule = Self {
            freq: Freq::Daily,
            interval: 1,
            count: None,
            until: None,
            by_second: None,
            by_minute: None,
            by_hour: None,
            by_day: None,
            by_month_day: None,
            by_year_day: None,
            by_week_no: None,
            by_month: None,
            by_set_pos: None,
            week_start: Weekday::Mon,
        };
        let upper = text.trim().to_ascii_uppercase();
        let mut seen = BTreeSet::new();
        for part in upper.split(';').filter(|part| !part.is_empty()) {
            let bad = || format!("“{part}” is not a part of a rule that repeats");
            let (name, value) = part.split_once('=').ok_or_else(bad)?;
            if !seen.insert(name) {
                return Err(format!("{name} comes twice in one rule"));
            }
            rule.take(name, value).ok_or_else(bad)?;
        }
        if !seen.contains("FREQ") {
            return Err("a rule that repeats needs FREQ, such as FREQ=WEEKLY".to_owned());
        }
        rule.fits()?;
        Ok(rule)
    }

    fn take(&mut self, name: &str, value: &str) -> Option<()> {
        match name {
            "FREQ" => self.freq = freq(value)?,
            "INTERVAL" => self.interval = value.parse().ok().filter(|n| *n > 0)?,
            "COUNT" => self.count = Some(value.parse().ok().filter(|n| *n > 0)?),
            "UNTIL" => self.until = Some(until(value)?),
            "WKST" => self.week_start = weekday(value)?,
            "BYSECOND" => self.by_second = Some(list(value, 0..=60)?),
            "BYMINUTE" => self.by_minute = Some(list(value, 0..=59)?),
            "BYHOUR" => self.by_hour = Some(list(value, 0..=23)?),
            "BYMONTH" => self.by_month = Some(list(value, 1..=12)?),
            "BYDAY" => self.by_day = Some(nth_days(value)?),
            "BYMONTHDAY" => self.by_month_day = Some(either_way(value, 31)?),
            "BYYEARDAY" => self.by_year_day = Some(either_way(value, 366)?),
            "BYWEEKNO" => self.by_week_no = Some(either_way(value, 53)?),
            "BYSETPOS" => self.by_set_pos = Some(either_way(value, 366)?),
            // RFC 7529: another calendar's months cannot be counted here; these two say "no other".
            "RSCALE" => return (value == "GREGORIAN").then_some(()),
            "SKIP" => return (value == "OMIT").then_some(()),
            _ => return name.starts_with("X-").then_some(()),
        }
        Some(())
    }

    /// Which parts may stand together.
    fn fits(&self) -> Result<(), String> {
        let numbered = self.by_day.as_ref().is_some_and(|days| days.iter().any(|day| day.0 != 0));
        let refused = |part: &str| Err(format!("{part} cannot stand in a rule of this kind"));
        if self.by_week_no.is_some() && self.freq != Freq::Yearly {
            return refused("BYWEEKNO");
        }
        if self.by_year_day.is_some()
            && matches!(self.freq, Freq::Monthly | Freq::Weekly | Freq::Daily)
        {
            return refused("BYYEARDAY");
        }
        if self.by_month_day.is_some() && self.freq == Freq::Weekly {
            return refused("BYMONTHDAY");
        }
        if numbered && (self.freq > Freq::Monthly || self.by_week_no.is_some()) {
            return refused("BYDAY with a number");
        }
        Ok(())
    }
}

fn freq(text: &str) -> Option<Freq> {
    Some(match text {
        "YEARLY" => Freq::Yearly,
        "MONTHLY" => Freq::Monthly,
        "WEEKLY" => Freq::Weekly,
        "DAILY" => Freq::Daily,
        "HOURLY" => Freq::Hourly,
        "MINUTELY" => Freq::Minutely,
        "SECONDLY" => Freq::Secondly,
        _ => return None,
    })
}

fn until(text: &str) -> Option<Until> {
    Some(match values::moment(text)? {
        values::Moment::Day(day) => Until::Day(day),
        values::Moment::Wall(at) => Until::Wall(at),
        values::Moment::Utc(at) => Until::Utc(at),
    })
}

fn weekday(text: &str) -> Option<Weekday> {
    Some(match text {
        "MO" => Weekday::Mon,
        "TU" => Weekday::Tue,
        "WE" => Weekday::Wed,
        "TH" => Weekday::Thu,
        "FR" => Weekday::Fri,
        "SA" => Weekday::Sat,
        "SU" => Weekday::Sun,
        _ => return None,
    })
}

/// A list of such days, each once.
fn nth_days(text: &str) -> Option<Vec<(i32, Weekday)>> {
    let mut days: Vec<_> = text.split(',').map(nth_day).collect::<Option<_>>()?;
    days.sort_unstable_by_key(|(nth, day)| (*nth, day.num_days_from_monday()));
    days.dedup();
    Some(days)
}

/// `MO`, `+1MO` or `-2MO`.
fn nth_day(text: &str) -> Option<(i32, Weekday)> {
    let (nth, day) = text.split_at_checked(text.len().checked_sub(2)?)?;
    let nth = match nth {
        "" => 0,
        _ => nth.parse().ok().filter(|n: &i32| *n != 0 && n.unsigned_abs() <= 53)?,
    };
    Some((nth, weekday(day)?))
}

fn list(text: &str, allowed: std::ops::RangeInclusive<u32>) -> Option<BTreeSet<u32>> {
    let one = |n: &str| n.parse().ok().filter(|n| allowed.contains(n));
    text.split(',').map(one).collect()
}

/// A list of numbers from 1 to `most`, or from -1 to -`most`.
fn either_way(text: &str, most: u32) -> Option<BTreeSet<i32>> {
    let one = |n: &str| n.parse().ok().filter(|n: &i32| *n != 0 && n.unsigned_abs() <= most);
    text.split(',').map(one).collect()
}
