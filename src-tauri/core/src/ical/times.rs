//! When an event of a calendar file takes place: its own time, what its rule and its RDATEs add,
//! less what its EXDATEs and other events take away (RFC 5545 §3.8.5).

use std::collections::BTreeSet;

use chrono::{DateTime, Days, Duration, NaiveDate, NaiveDateTime, NaiveTime, Utc};

use super::clocks::{Clock, When};
use super::events::{Event, Lasts};
use super::expand::{Budget, expand};
use super::rule::{Rule, Until};

/// One time an event takes place.
pub(crate) struct Time {
    pub(crate) starts: DateTime<Utc>,
    pub(crate) ends: DateTime<Utc>,
    pub(crate) all_day: Option<(NaiveDate, NaiveDate)>,
}

impl Event {
    /// When it takes place around the days `first` to `last` (some times may lie just outside),
    /// without the times `replaced` by other events. A rule that cannot be followed leaves a note.
    pub(crate) fn times(
        &mut self,
        days: (NaiveDate, NaiveDate),
        replaced: &[When],
        home: &Clock,
        budget: &mut Budget,
    ) -> Vec<Time> {
        let before = Days::new(self.longest_days().saturating_add(2));
        let first = days.0.checked_sub_days(before).unwrap_or(NaiveDate::MIN);
        let last = days.1.checked_add_days(Days::new(2)).unwrap_or(NaiveDate::MAX);
        let own = match &self.starts {
            When::Day(_) => None,
            When::At { clock, .. } => Some(&**clock),
        };
        let mut walls = BTreeSet::from([self.starts.wall()]);
        for rule in &self.rules {
            match followed(rule, self.starts.wall(), own, (first, last), budget) {
                Ok(found) => walls.extend(found),
                Err(words) => self.notes.push(format!(
                    "{} repeats, but only its first time is read: {words}.",
                    self.called
                )),
            }
        }
        let mut times: Vec<(When, Lasts)> = walls
            .into_iter()
            .map(|wall| match &self.starts {
                When::Day(_) => (When::Day(wall.date()), self.lasts),
                When::At { clock, .. } => (When::At { wall, clock: clock.clone() }, self.lasts),
            })
            .collect();
        let mut known: BTreeSet<_> = times.iter().map(|(when, _)| when.key()).collect();
        for (when, lasts) in &self.also {
            if known.insert(when.key()) {
                times.push((when.clone(), lasts.unwrap_or(self.lasts)));
            }
        }
        let gone = Gone::of(self.except.iter().chain(replaced));
        times.retain(|(when, _)| !gone.holds(when));
        times.iter().filter_map(|(when, lasts)| time(when, *lasts, home)).collect()
    }

    fn longest_days(&self) -> u64 {
        let of = |lasts: &Lasts| match lasts {
            Lasts::Days(days) => *days,
            Lasts::Exact(span) => span.num_days().unsigned_abs(),
            Lasts::Nominal(length) => {
                length.days.unsigned_abs() + length.rest.num_days().unsigned_abs()
            }
        };
        of(&self.lasts)
    }
}

/// Times that are taken away: of an event with times by their instant, or by their day where only a
/// day is named; of an event of whole days by the day.
#[derive(Default)]
struct Gone {
    days: BTreeSet<NaiveDate>,
    days_of_times: BTreeSet<NaiveDate>,
    instants: BTreeSet<DateTime<Utc>>,
}

impl Gone {
    fn of<'a>(named: impl Iterator<Item = &'a When>) -> Self {
        let mut gone = Self::default();
        for when in named {
            match when {
                When::Day(day) => {
                    gone.days.insert(*day);
                }
                When::At { wall, clock } => {
                    gone.days_of_times.insert(wall.date());
                    gone.instants.extend(clock.instant(*wall));
                }
            }
        }
        gone
    }

    fn holds(&self, when: &When) -> bool {
        match when {
            When::Day(day) => self.days.contains(day) || self.days_of_times.contains(day),
            When::At { wall, clock } => {
                self.days.contains(&wall.date())
                    || clock.instant(*wall).is_some_and(|at| self.instants.contains(&at))
            }
        }
    }
}

/// The times a rule gives; an UNTIL in UTC is read on the event's own clock.
fn followed(
    rule: &str,
    starts: NaiveDateTime,
    clock: Option<&Clock>,
    days: (NaiveDate, NaiveDate),
    budget: &mut Budget,
) -> Result<Vec<NaiveDateTime>, String> {
    let mut rule = Rule::parse(rule)?;
    match (rule.until, clock) {
        (Some(Until::Utc(until)), Some(clock)) => {
            rule.until = clock.shows(until.and_utc()).map(Until::Wall);
        }
        // An all-day event runs to the end of the day that is named (RFC 5545 §3.3.10 asks for a
        // DATE here; many programs write a time).
        (Some(Until::Utc(until) | Until::Wall(until)), None) => {
            rule.until = Some(Until::Day(until.date()));
        }
        _ => {}
    }
    expand(&rule, starts, days.0, days.1, budget)
}

/// One time as instants. `None` where it takes no time at all, or the calendar ends.
fn time(when: &When, lasts: Lasts, home: &Clock) -> Option<Time> {
    match when {
        When::Day(first) => {
            let days = match lasts {
                Lasts::Days(days) => days.max(1),
                _ => 1,
            };
            let after = first.checked_add_days(Days::new(days))?;
            let midnight = |day: NaiveDate| home.instant(day.and_time(NaiveTime::MIN));
            Some(Time {
                starts: midnight(*first)?,
                ends: midnight(after)?,
                all_day: Some((*first, after.pred_opt()?)),
            })
        }
        When::At { wall, clock } => {
            let starts = clock.instant(*wall)?;
            let ends = match lasts {
                Lasts::Exact(span) => starts.checked_add_signed(span)?,
                Lasts::Nominal(length) => {
                    let day = wall.checked_add_signed(Duration::try_days(length.days)?)?;
                    clock.instant(day)?.checked_add_signed(length.rest)?
                }
                Lasts::Days(_) => return None,
            };
            (ends > starts).then_some(Time { starts, ends, all_day: None })
        }
    }
}
