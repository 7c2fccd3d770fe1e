//! Rules as typed, to rules that can be stored: every row in its place, every fault at its field.

use super::{Ahead, AheadUnit, Closure, Hours, Later, Rate, Release, Rules};
use crate::error::{Problems, Result};
use crate::facilities::Facility;
use crate::kinds::{Currency, Day, Time};

/// The most rows of one list.
const ROWS: usize = 100;

impl Rules {
    /// The rules as they can be stored.
    pub(super) fn read(self, facility: &Facility) -> Result<Self> {
        let mut p = Problems::new();
        let typed = self.currency.trim().to_owned();
        let currency = Currency::parse(&typed);
        if currency.is_none() && !typed.is_empty() {
            let words = format!(
                "\u{201c}{typed}\u{201d} is no currency. Write its three letters, as in EUR."
            );
            p.add("currency", "no_such_currency", words);
        }
        let mut money = Money { currency, typed: !typed.is_empty() };
        for (field, many) in [
            ("hours", self.hours.len()),
            ("closures", self.closures.len()),
            ("rates", self.rates.len()),
            ("ahead", self.ahead.len()),
            ("release", self.release.len()),
        ] {
            if many > ROWS {
                p.add(
                    field,
                    "too_many",
                    format!("These are {many} rows; there is room for {ROWS}."),
                );
            }
        }
        let read = Rules {
            currency: currency.map(|c| c.code().to_owned()).unwrap_or_default(),
            books_as: p.line("books_as", &self.books_as, "What you are there"),
            hours: rows(self.hours, "hours", |at, row| hours(&mut p, at, row)),
            closures: rows(self.closures, "closures", |at, row| closure(&mut p, at, row, facility)),
            rates: rows(self.rates, "rates", |at, row| rate(&mut p, &mut money, at, row)),
            ahead: rows(self.ahead, "ahead", |at, row| ahead(&mut p, at, row)),
            release: rows(self.release, "release", |at, row| release(&mut p, &mut money, at, row)),
            grid: p.within_bounds("grid", self.grid, 0, 240, "The step in minutes"),
            shortest: p.within_bounds("shortest", self.shortest, 0, 1440, "The shortest booking"),
            longest: p.within_bounds("longest", self.longest, 0, 1440, "The longest booking"),
            day_limit: p.within_bounds("day_limit", self.day_limit, 0, 1440, "The limit a day"),
            week_limit: p.within_bounds(
                "week_limit",
                self.week_limit,
                0,
                10_080,
                "The limit a week",
            ),
            day_bookings: p.within_bounds(
                "day_bookings",
                self.day_bookings,
                0,
                48,
                "Bookings a day",
            ),
            apart: self.apart,
            one_by_one: self.one_by_one,
            people: p.within_bounds("people", self.people, 0, 100, "People on a court"),
            booking_fee: money.amount(&mut p, "booking_fee", &self.booking_fee, false),
            guest_fee: money.amount(&mut p, "guest_fee", &self.guest_fee, false),
            grace: p.within_bounds("grace", self.grace, 0, 240, "Minutes late"),
            weather_free: self.weather_free,
            youngest: p.within_bounds("youngest", self.youngest, 0, 100, "The youngest age"),
            needs: p.line("needs", &self.needs, "What everyone needs"),
            source: p.line("source", &self.source, "Where the rules stand"),
            source_seen: p
                .day_or_none("source_seen", Some(&self.source_seen), "The day they were read")
                .map(|day| day.to_string())
                .unwrap_or_default(),
        };
        if read.longest > 0 && read.shortest > read.longest {
            p.add(
                "shortest",
                "too_long",
                "The shortest booking is longer than the longest.".to_owned(),
            );
        }
        p.done()?;
        Ok(read)
    }
}

/// Amounts are read in the currency, which must then be known.
struct Money {
    currency: Option<Currency>,
    /// Whether something was typed for it; what is wrong with that is said once, there.
    typed: bool,
}

impl Money {
    fn amount(&mut self, p: &mut Problems, field: &str, typed: &str, needed: bool) -> String {
        let typed = typed.trim();
        if typed.is_empty() {
            if needed {
                p.add(field, "empty", "The amount is empty.".to_owned());
            }
            return String::new();
        }
        let Some(currency) = self.currency else {
            if !std::mem::replace(&mut self.typed, true) {
                p.add("currency", "empty", "Prices need their currency, as in EUR.".to_owned());
            }
            return typed.to_owned();
        };
        let Some(minor) = currency.minor(typed) else {
            let words = format!(
                "\u{201c}{typed}\u{201d} is not an amount in {currency}. Write it as {}.",
                currency.plain(1250 * 10_i64.pow(currency.decimals()) / 100)
            );
            p.add(field, "no_amount", words);
            return typed.to_owned();
        };
        currency.plain(minor)
    }
}

fn rows<T>(rows: Vec<T>, field: &str, mut read: impl FnMut(&str, T) -> T) -> Vec<T> {
    rows.into_iter().enumerate().map(|(n, row)| read(&format!("{field}[{n}]"), row)).collect()
}

/// Days of the week in their order, each once.
pub fn weekdays(p: &mut Problems, field: &str, days: Vec<u8>) -> Vec<u8> {
    let mut days = days;
    days.sort_unstable();
    days.dedup();
    if days.iter().any(|day| !(1..=7).contains(day)) {
        let words = "Days of the week are 1 for Monday to 7 for Sunday.".to_owned();
        p.add(field, "no_such_day", words);
    }
    if days.len() == 7 { Vec::new() } else { days }
}

/// Two days that belong together, both or neither.
fn days(p: &mut Problems, at: &str, first: &str, last: &str) -> (String, String) {
    let (from, to) = (format!("{at}.first"), format!("{at}.last"));
    if first.trim().is_empty() && last.trim().is_empty() {
        return (String::new(), String::new());
    }
    let a = p.day(&from, first, "The first day");
    let b = p.day(&to, last, "The last day");
    if Day::parse(first.trim()).zip(Day::parse(last.trim())).is_some_and(|(a, b)| a > b) {
        p.add(&to, "end_before_start", "The last day is before the first.".to_owned());
    }
    (a.to_string(), b.to_string())
}

/// Two times that belong together; `needed`, or else both may be empty. The end may be 00:00.
pub fn times(
    p: &mut Problems,
    (from, to): (&str, &str),
    typed: (&str, &str),
    needed: bool,
) -> (String, String) {
    if !needed && typed.0.trim().is_empty() && typed.1.trim().is_empty() {
        return (String::new(), String::new());
    }
    let a = p.time(from, typed.0, "The time it begins");
    let b = p.time(to, typed.1, "The time it ends");
    let both = Time::parse(typed.0.trim()).zip(Time::parse(typed.1.trim()));
    if both.is_some() && b != Time::MIDNIGHT && b <= a {
        p.add(to, "end_before_start", format!("{b} is not after {a}. Midnight is 00:00."));
    }
    (a.to_string(), b.to_string())
}

/// Opening hours as they can be stored.
pub fn hours(p: &mut Problems, at: &str, row: Hours) -> Hours {
    let (opens, closes) = (format!("{at}.opens"), format!("{at}.closes"));
    let weekdays = weekdays(p, &format!("{at}.weekdays"), row.weekdays);
    let (opens, closes) = times(p, (&opens, &closes), (&row.opens, &row.closes), true);
    let (first, last) = days(p, at, &row.first, &row.last);
    Hours { weekdays, opens, closes, first, last }
}

fn closure(p: &mut Problems, at: &str, row: Closure, facility: &Facility) -> Closure {
    if let Some(court) = row.court
        && facility.courts.iter().all(|c| c.id != court)
    {
        let words = format!("This court is not at {}.", facility.place.name);
        p.add(&format!("{at}.court"), "elsewhere", words);
    }
    let (first, last) = days(p, at, &row.first, &row.last);
    let weekdays = weekdays(p, &format!("{at}.weekdays"), row.weekdays);
    let (from, to) = (format!("{at}.starts"), format!("{at}.ends"));
    let (starts, ends) = times(p, (&from, &to), (&row.starts, &row.ends), false);
    if first.is_empty() && weekdays.is_empty() && starts.is_empty() {
        let words = "Say when: days, days of the week, or times.".to_owned();
        p.add(&format!("{at}.first"), "empty", words);
    }
    let reason = p.line(&format!("{at}.reason"), &row.reason, "The reason");
    Closure { court: row.court, first, last, weekdays, starts, ends, reason }
}

fn rate(p: &mut Problems, money: &mut Money, at: &str, row: Rate) -> Rate {
    let who = p.line(&format!("{at}.who"), &row.who, "For whom");
    let ground = p.line(&format!("{at}.ground"), &row.ground, "The kind of court");
    let weekdays = weekdays(p, &format!("{at}.weekdays"), row.weekdays);
    let (from, to) = (format!("{at}.starts"), format!("{at}.ends"));
    let (starts, ends) = times(p, (&from, &to), (&row.starts, &row.ends), false);
    let hour = money.amount(p, &format!("{at}.hour"), &row.hour, true);
    Rate { who, ground, weekdays, starts, ends, hour }
}

fn ahead(p: &mut Problems, at: &str, row: Ahead) -> Ahead {
    let who = p.line(&format!("{at}.who"), &row.who, "For whom");
    let ground = p.line(&format!("{at}.ground"), &row.ground, "The kind of court");
    let amount = p.within_bounds(&format!("{at}.amount"), row.amount, 0, 1000, "How long before");
    let field = format!("{at}.opens");
    let mut opens = row.opens.trim().to_owned();
    if row.unit == AheadUnit::Hours && !opens.is_empty() {
        let words = "Hours before the start need no time of day.".to_owned();
        p.add(&field, "not_with_hours", words);
    } else if !opens.is_empty() {
        opens = p.time(&field, &opens, "The time of day").to_string();
    }
    Ahead { who, ground, amount, unit: row.unit, opens }
}

fn release(p: &mut Problems, money: &mut Money, at: &str, row: Release) -> Release {
    let ground = p.line(&format!("{at}.ground"), &row.ground, "The kind of court");
    let hours = p.within_bounds(&format!("{at}.hours"), row.hours, 0, 2000, "Hours before");
    let with_fee = row.later == Later::Fee;
    let fee = if with_fee { row.fee.as_str() } else { "" };
    let fee = money.amount(p, &format!("{at}.fee"), fee, with_fee);
    Release { ground, hours, counted: row.counted, later: row.later, fee }
}
