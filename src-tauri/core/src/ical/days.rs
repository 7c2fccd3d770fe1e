//! The days of a recurrence rule: which period comes when, and which of its days every BY part
//! holds (the table and notes of RFC 5545 §3.3.10).

use std::collections::BTreeSet;

use chrono::{Datelike, Days as Run, Months, NaiveDate, Weekday};

use super::rule::{Freq, Rule};

/// The first and the last day of the `step`th period of a rule, counted from the one that holds
/// its start. Rules that count in hours or less go by days here. `None` where the calendar ends.
pub(crate) fn period(rule: &Rule, starts: NaiveDate, step: u64) -> Option<(NaiveDate, NaiveDate)> {
    let every = u64::from(rule.interval).checked_mul(step)?;
    match rule.freq {
        Freq::Yearly => {
            let year = starts.year().checked_add(i32::try_from(every).ok()?)?;
            Some((NaiveDate::from_ymd_opt(year, 1, 1)?, NaiveDate::from_ymd_opt(year, 12, 31)?))
        }
        Freq::Monthly => {
            let begin =
                starts.with_day(1)?.checked_add_months(Months::new(every.try_into().ok()?))?;
            let next = begin.checked_add_months(Months::new(1))?;
            Some((begin, next.pred_opt()?))
        }
        Freq::Weekly => {
            let monday = week_of(starts, rule.week_start)?;
            let begin = monday.checked_add_days(Run::new(every.checked_mul(7)?))?;
            Some((begin, begin.checked_add_days(Run::new(6))?))
        }
        Freq::Daily => {
            let day = starts.checked_add_days(Run::new(every))?;
            Some((day, day))
        }
        Freq::Hourly | Freq::Minutely | Freq::Secondly => {
            let day = starts.checked_add_days(Run::new(step))?;
            Some((day, day))
        }
    }
}

/// The last period that begins on day `from` or before it.
pub(crate) fn step_of(rule: &Rule, starts: NaiveDate, from: NaiveDate) -> u64 {
    let days = |a: NaiveDate, b: NaiveDate| (b - a).num_days();
    let month = |day: NaiveDate| i64::from(day.year()) * 12 + i64::from(day.month0());
    let units = match rule.freq {
        Freq::Yearly => i64::from(from.year()) - i64::from(starts.year()),
        Freq::Monthly => month(from) - month(starts),
        Freq::Weekly => {
            days(week_of(starts, rule.week_start).unwrap_or(starts), from).div_euclid(7)
        }
        Freq::Daily => days(starts, from),
        Freq::Hourly | Freq::Minutely | Freq::Secondly => {
            return u64::try_from(days(starts, from)).unwrap_or(0);
        }
    };
    u64::try_from(units).unwrap_or(0) / u64::from(rule.interval)
}

/// The first day of the week that holds the day.
fn week_of(day: NaiveDate, week_start: Weekday) -> Option<NaiveDate> {
    day.checked_sub_days(Run::new(u64::from(day.weekday().days_since(week_start))))
}

/// What a rule asks of a day. What it leaves open comes from its start: the day of the week for a
/// weekly rule, the day of the month for a monthly one, the date for a yearly one.
pub(crate) struct Days<'a> {
    rule: &'a Rule,
    months: Option<BTreeSet<u32>>,
    month_days: Option<BTreeSet<i32>>,
    week_days: Option<Vec<(i32, Weekday)>>,
}

impl<'a> Days<'a> {
    pub(crate) fn of(rule: &'a Rule, starts: NaiveDate) -> Self {
        let mut days = Self {
            rule,
            months: rule.by_month.clone(),
            month_days: rule.by_month_day.clone(),
            week_days: rule.by_day.clone(),
        };
        let open = rule.by_day.is_none()
            && rule.by_month_day.is_none()
            && rule.by_year_day.is_none()
            && rule.freq <= Freq::Weekly;
        let own_day = i32::try_from(starts.day()).unwrap_or(1);
        if open && (rule.freq == Freq::Weekly || rule.by_week_no.is_some()) {
            days.week_days = Some(vec![(0, starts.weekday())]);
        } else if open {
            days.month_days = Some(BTreeSet::from([own_day]));
            if rule.freq == Freq::Yearly && rule.by_month.is_none() {
                days.months = Some(BTreeSet::from([starts.month()]));
            }
        }
        days
    }

    /// The days from `begin` to `end` that the rule holds.
    pub(crate) fn held(&self, begin: NaiveDate, end: NaiveDate) -> Vec<NaiveDate> {
        begin.iter_days().take_while(|day| *day <= end).filter(|day| self.holds(*day)).collect()
    }

    fn holds(&self, day: NaiveDate) -> bool {
        let in_month = days_in_month(day);
        let in_year = if day.leap_year() { 366 } else { 365 };
        let year_day = i32::try_from(day.ordinal()).unwrap_or(0);
        let month_day = i32::try_from(day.day()).unwrap_or(0);
        self.months.as_ref().is_none_or(|months| months.contains(&day.month()))
            && either_way(self.month_days.as_ref(), month_day, in_month)
            && either_way(self.rule.by_year_day.as_ref(), year_day, in_year)
            && self.holds_week(day)
            && self.week_days.as_ref().is_none_or(|listed| {
                let within = match self.rule.freq {
                    Freq::Yearly if self.rule.by_month.is_none() => (year_day, in_year),
                    _ => (month_day, in_month),
                };
                listed.iter().any(|one| is_nth(*one, day.weekday(), within))
            })
    }

    fn holds_week(&self, day: NaiveDate) -> bool {
        let Some(weeks) = self.rule.by_week_no.as_ref() else { return true };
        let start = self.rule.week_start;
        let number = [day.year() + 1, day.year(), day.year() - 1].into_iter().find_map(|year| {
            let (first, next) = (week_one(year, start)?, week_one(year + 1, start)?);
            let nth = |from: NaiveDate, to: NaiveDate| {
                i32::try_from((to - from).num_days().div_euclid(7)).ok()
            };
            (first <= day && day < next).then(|| Some((nth(first, day)? + 1, nth(first, next)?)))?
        });
        number.is_some_and(|(week, in_year)| either_way(Some(weeks), week, in_year))
    }
}

/// Whether a list that counts from the front, or below zero from the back, holds `n` of `all`.
fn either_way(listed: Option<&BTreeSet<i32>>, n: i32, all: i32) -> bool {
    listed.is_none_or(|listed| listed.contains(&n) || listed.contains(&(n - all - 1)))
}

/// Whether a day of that weekday, the `place.0`th of `place.1` days, is the one meant: `(0, MO)`
/// is every Monday, `(-1, MO)` the last.
fn is_nth((nth, wanted): (i32, Weekday), weekday: Weekday, place: (i32, i32)) -> bool {
    let (n, all) = place;
    weekday == wanted
        && match nth {
            0 => true,
            1.. => (n - 1) / 7 + 1 == nth,
            _ => (all - n) / 7 + 1 == -nth,
        }
}

fn days_in_month(day: NaiveDate) -> i32 {
    let next = day.with_day(1).and_then(|first| first.checked_add_months(Months::new(1)));
    let last = next.and_then(|next| next.pred_opt());
    last.and_then(|last| i32::try_from(last.day()).ok()).unwrap_or(31)
}

/// The first day of week one: the first week with four days or more in that year (RFC 5545
/// §3.3.10, after ISO 8601).
fn week_one(year: i32, start: Weekday) -> Option<NaiveDate> {
    week_of(NaiveDate::from_ymd_opt(year, 1, 4)?, start)
}
