//! A recurrence rule worked out (RFC 5545 §3.3.10), period by period (year, month, week, day), each
//! day of the period asked whether every BY part holds it.
//!
//! A rule without COUNT is entered at the first period asked for, so one that began decades ago
//! costs no more than one that began yesterday. All work is paid for from a [`Budget`]: no rule,
//! however written, can hold the program up.

use std::collections::BTreeSet;

use chrono::{NaiveDate, NaiveDateTime, NaiveTime, Timelike};

use super::days::{self, Days};
use super::rule::{Freq, Rule, Until};

/// More times than this are never given; so many is no calendar any more.
pub(crate) const MOST: usize = 5_000;

/// How much work may still be spent on rules.
pub(crate) struct Budget(u64);

impl Budget {
    /// Enough for a rule that counts a million times from its start.
    pub(crate) fn of_one_rule() -> Self {
        Self(2_000_000)
    }

    /// Enough for a large calendar.
    pub(crate) fn of_a_file() -> Self {
        Self(20_000_000)
    }

    fn spend(&mut self, work: u64) -> Result<(), String> {
        self.0 = self.0.checked_sub(work).ok_or_else(|| TOO_MUCH.to_owned())?;
        Ok(())
    }
}

const TOO_MUCH: &str = "this rule repeats too often to be worked out from its start";

/// The times the rule itself holds in these days, in order; `starts` only if the rule holds it.
pub(crate) fn expand(
    rule: &Rule,
    starts: NaiveDateTime,
    first: NaiveDate,
    last: NaiveDate,
    budget: &mut Budget,
) -> Result<Vec<NaiveDateTime>, String> {
    let days = Days::of(rule, starts.date());
    let clock = Clock::of(rule, starts);
    let from = if rule.count.is_some() { starts.date() } else { first.max(starts.date()) };
    let last = until_day(rule).map_or(last, |until| until.min(last));
    let mut left = rule.count.unwrap_or(u32::MAX);
    let mut found = Vec::new();
    let mut step = days::step_of(rule, starts.date(), from);
    while let Some((begin, end)) = days::period(rule, starts.date(), step) {
        step += 1;
        if begin > last {
            break;
        }
        let held = days.held(begin, end);
        budget.spend(1 + u64::try_from((end - begin).num_days()).unwrap_or(0))?;
        for set in clock.sets(&held, budget)? {
            for at in chosen(rule, &set) {
                if at < starts {
                    continue;
                }
                if left == 0 || at.date() > last || past(rule, at) {
                    return Ok(found);
                }
                left -= 1;
                if at.date() < first {
                    continue;
                }
                if found.len() == MOST {
                    return Err(format!("this rule gives more than {MOST} times in these days"));
                }
                found.push(at);
            }
        }
    }
    Ok(found)
}

fn until_day(rule: &Rule) -> Option<NaiveDate> {
    rule.until.map(|until| match until {
        Until::Day(day) => day,
        Until::Wall(at) | Until::Utc(at) => at.date(),
    })
}

/// Whether UNTIL, which is included, lies before.
fn past(rule: &Rule, at: NaiveDateTime) -> bool {
    match rule.until {
        None => false,
        Some(Until::Day(day)) => at.date() > day,
        Some(Until::Wall(until) | Until::Utc(until)) => at > until,
    }
}

/// What BYSETPOS leaves of one period's times.
fn chosen(rule: &Rule, set: &[NaiveDateTime]) -> Vec<NaiveDateTime> {
    let Some(positions) = &rule.by_set_pos else { return set.to_vec() };
    let place = |position: &i32| {
        let from_front = usize::try_from(position.unsigned_abs()).ok()?;
        let index =
            if *position > 0 { from_front - 1 } else { set.len().checked_sub(from_front)? };
        set.get(index).copied()
    };
    let places: BTreeSet<NaiveDateTime> = positions.iter().filter_map(place).collect();
    places.into_iter().collect()
}

/// The times of day a rule holds.
struct Clock<'a> {
    rule: &'a Rule,
    starts: NaiveDateTime,
    hours: Vec<u32>,
    minutes: Vec<u32>,
    seconds: Vec<u32>,
}

impl<'a> Clock<'a> {
    fn of(rule: &'a Rule, starts: NaiveDateTime) -> Self {
        let part = |by: &Option<BTreeSet<u32>>, expands: bool, most: u32, given: u32| match by {
            Some(listed) => listed.iter().copied().filter(|n| *n < most).collect(),
            None if expands => (0..most).collect(),
            None => vec![given],
        };
        Self {
            rule,
            starts,
            hours: part(&rule.by_hour, rule.freq >= Freq::Hourly, 24, starts.hour()),
            minutes: part(&rule.by_minute, rule.freq >= Freq::Minutely, 60, starts.minute()),
            seconds: part(&rule.by_second, rule.freq >= Freq::Secondly, 60, starts.second()),
        }
    }

    /// The times on these days, in sets for BYSETPOS to choose from: all of them in one, or those
    /// of an hour, a minute or a second when the rule counts in those.
    fn sets(
        &self,
        held: &[NaiveDate],
        budget: &mut Budget,
    ) -> Result<Vec<Vec<NaiveDateTime>>, String> {
        let mut sets: Vec<Vec<NaiveDateTime>> = vec![Vec::new()];
        let mut unit = None;
        let apart = self.rule.freq >= Freq::Hourly && self.rule.by_set_pos.is_some();
        for day in held {
            for &hour in &self.hours {
                for &minute in &self.minutes {
                    budget.spend(1)?;
                    for &second in &self.seconds {
                        budget.spend(1)?;
                        let time = NaiveTime::from_hms_opt(hour, minute, second);
                        let Some(at) = time.map(|time| day.and_time(time)) else { continue };
                        let now = self.unit(at);
                        if !self.in_step(now) {
                            continue;
                        }
                        if apart && unit != Some(now) {
                            sets.push(Vec::new());
                            unit = Some(now);
                        }
                        if let Some(set) = sets.last_mut() {
                            set.push(at);
                        }
                    }
                }
            }
        }
        Ok(sets)
    }

    /// Which hour, minute or second since the first it is; 0 when the rule counts in days or more.
    fn unit(&self, at: NaiveDateTime) -> i64 {
        let length = match self.rule.freq {
            Freq::Hourly => 3_600,
            Freq::Minutely => 60,
            Freq::Secondly => 1,
            _ => return 0,
        };
        let seconds = |at: NaiveDateTime| at.and_utc().timestamp().div_euclid(length);
        seconds(at) - seconds(self.starts)
    }

    fn in_step(&self, unit: i64) -> bool {
        unit.rem_euclid(i64::from(self.rule.interval)) == 0
    }
}
