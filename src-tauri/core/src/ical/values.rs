//! The values of a calendar's lines: dates, times, durations, periods, offsets and text (RFC 5545
//! §3.3).

use chrono::{Duration, NaiveDate, NaiveDateTime, NaiveTime};

/// A date or a time as it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Moment {
    /// `20260303`
    Day(NaiveDate),
    /// `20260303T170000`
    Wall(NaiveDateTime),
    /// `20260303T170000Z`
    Utc(NaiveDateTime),
}

/// Reads a DATE or a DATE-TIME. A leap second, which no clock here shows, is the second before it.
pub(crate) fn moment(text: &str) -> Option<Moment> {
    let digits = |text: &str, from: usize, to: usize| -> Option<u32> {
        let part = text.get(from..to)?;
        part.bytes().all(|b| b.is_ascii_digit()).then(|| part.parse().ok())?
    };
    let year = i32::try_from(digits(text, 0, 4)?).ok()?;
    let day = NaiveDate::from_ymd_opt(year, digits(text, 4, 6)?, digits(text, 6, 8)?)?;
    let Some(rest) = text.get(8..).filter(|rest| !rest.is_empty()) else {
        return Some(Moment::Day(day));
    };
    let rest = rest.strip_prefix(['T', 't'])?;
    let second = digits(rest, 4, 6)?;
    let second = if second == 60 { 59 } else { second };
    let time = NaiveTime::from_hms_opt(digits(rest, 0, 2)?, digits(rest, 2, 4)?, second)?;
    match rest.get(6..) {
        Some("") => Some(Moment::Wall(day.and_time(time))),
        Some("Z" | "z") => Some(Moment::Utc(day.and_time(time))),
        _ => None,
    }
}

/// A duration: whole days go by the calendar, the rest by the clock (RFC 5545 §3.3.6).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Length {
    /// Weeks and days, as days.
    pub(crate) days: i64,
    /// Hours, minutes and seconds.
    pub(crate) rest: Duration,
}

/// Reads a DURATION such as `PT1H30M`, `P1D`, `P2W` or `-PT15M`.
pub(crate) fn length(text: &str) -> Option<Length> {
    let upper = text.trim().to_ascii_uppercase();
    let (sign, body) = match upper.strip_prefix('-') {
        Some(body) => (-1, body),
        None => (1, upper.strip_prefix('+').unwrap_or(&upper)),
    };
    let body = body.strip_prefix('P')?;
    let (days, time) = body.split_once('T').map_or((body, None), |(days, time)| (days, Some(time)));
    if days.is_empty() && time.is_none_or(str::is_empty) {
        return None;
    }
    let days = sum(days, &[('W', 7), ('D', 1)])?;
    let seconds = sum(time.unwrap_or(""), &[('H', 3_600), ('M', 60), ('S', 1)])?;
    let rest = Duration::try_seconds(sign * seconds)?;
    Some(Length { days: sign * days, rest })
}

/// Adds up numbers with units, which come in this order and at most once; a hundred years at most.
fn sum(text: &str, units: &[(char, i64)]) -> Option<i64> {
    let mut total: i64 = 0;
    let mut rest = text;
    for (unit, worth) in units {
        let Some((number, after)) = rest.split_once(*unit) else { continue };
        if number.is_empty() || !number.bytes().all(|b| b.is_ascii_digit()) {
            return None;
        }
        total = total.checked_add(number.parse::<i64>().ok()?.checked_mul(*worth)?)?;
        rest = after;
    }
    (rest.is_empty() && total <= 100 * 366 * 86_400).then_some(total)
}

/// Reads a UTC-OFFSET such as `-0500` or `+013730`, in seconds east of Greenwich.
pub(crate) fn offset(text: &str) -> Option<i32> {
    let text = text.trim();
    let (sign, digits) = match text.split_at_checked(1)? {
        ("+", digits) => (1, digits),
        ("-", digits) => (-1, digits),
        _ => return None,
    };
    if !matches!(digits.len(), 4 | 6) || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    let part = |from: usize| digits.get(from..from + 2).map_or(Some(0), |two| two.parse().ok());
    let (hours, minutes, seconds): (i32, i32, i32) = (part(0)?, part(2)?, part(4)?);
    (hours < 24 && minutes < 60 && seconds < 60)
        .then_some(sign * (hours * 3_600 + minutes * 60 + seconds))
}

/// TEXT as it is meant: `\n` is a new line, `\,` a comma (RFC 5545 §3.3.11).
pub(crate) fn text(written: &str) -> String {
    let mut meant = String::with_capacity(written.len());
    let mut rest = written.chars();
    while let Some(c) = rest.next() {
        match c {
            '\\' => match rest.next() {
                Some('n' | 'N') => meant.push('\n'),
                Some(escaped) => meant.push(escaped),
                None => meant.push('\\'),
            },
            _ => meant.push(c),
        }
    }
    meant
}
