//! Dates as spreadsheets write them.

use chrono::NaiveDate;

use super::names::fold;
use super::{DateEvidence, DateOrder};

/// A date as it is written, before anyone decides which number is the month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Written {
    /// Year, month and day are certain.
    Certain(i32, u32, u32),
    /// Two numbers and a year: day and month in either order.
    Either(u32, u32, i32),
    /// A spreadsheet's day number.
    DayNumber(i64),
}

/// A date that was not taken: its code and the words for it.
pub type Refused = (&'static str, String);

/// Reads a date in the given order.
pub fn date(text: &str, order: DateOrder, evidence: DateEvidence) -> Result<NaiveDate, Refused> {
    let impossible = || ("impossible_date", format!("“{text}” is no day of the calendar"));
    let made = |y: i32, m: u32, d: u32| {
        NaiveDate::from_ymd_opt(y, m, d).filter(|_| (1950..=2100).contains(&y))
    };
    match written(text) {
        None => Err((
            "not_a_date",
            format!("“{text}” is not read as a date; 2026-03-11 or 11 March 2026 would be"),
        )),
        Some(Written::DayNumber(n)) => {
            // Day 25569 of the common spreadsheet calendar is 1 January 1970.
            let day = NaiveDate::from_ymd_opt(1970, 1, 1)
                .and_then(|epoch| epoch.checked_add_signed(chrono::Duration::days(n - 25_569)));
            let meant = day.map_or(String::new(), |day| format!(" (perhaps {day})"));
            Err((
                "date_is_a_number",
                format!(
                    "“{text}” is a spreadsheet's day number{meant}; format the column as a date"
                ),
            ))
        }
        Some(Written::Certain(y, m, d)) => made(y, m, d).ok_or_else(impossible),
        Some(Written::Either(a, b, y)) => {
            let (day_first, month_first) = (made(y, b, a), made(y, a, b));
            let order = match (order, evidence) {
                (DateOrder::Unknown, DateEvidence::DayMonthYear) => DateOrder::DayMonthYear,
                (DateOrder::Unknown, DateEvidence::MonthDayYear) => DateOrder::MonthDayYear,
                (order, _) => order,
            };
            match (order, day_first, month_first) {
                (DateOrder::DayMonthYear, day, _) | (DateOrder::MonthDayYear, _, day) => {
                    day.ok_or_else(impossible)
                }
                (DateOrder::Unknown, None, None) => Err(impossible()),
                (DateOrder::Unknown, Some(day), None) | (DateOrder::Unknown, None, Some(day)) => {
                    Ok(day)
                }
                (DateOrder::Unknown, Some(day), Some(same)) if day == same => Ok(day),
                (DateOrder::Unknown, Some(day), Some(month)) => Err((
                    "date_order_unknown",
                    format!(
                        "“{text}” could be {day} or {month}; say whether the day or the month comes first"
                    ),
                )),
            }
        }
    }
}

/// What a column of dates says about the order of day and month.
pub fn evidence<'a>(cells: impl Iterator<Item = &'a str>) -> DateEvidence {
    let (mut day_first, mut month_first, mut open) = (false, false, false);
    for cell in cells {
        if let Some(Written::Either(a, b, _)) = written(cell) {
            match (a > 12, b > 12) {
                (true, false) => day_first = true,
                (false, true) => month_first = true,
                (false, false) if a != b => open = true,
                _ => {}
            }
        }
    }
    match (day_first, month_first, open) {
        (true, true, _) => DateEvidence::Mixed,
        (true, false, _) => DateEvidence::DayMonthYear,
        (false, true, _) => DateEvidence::MonthDayYear,
        (false, false, true) => DateEvidence::Undecidable,
        (false, false, false) => DateEvidence::NotNeeded,
    }
}

/// Whether a cell looks like a whole date, day numbers not counted.
pub fn is_full_date(text: &str) -> bool {
    matches!(written(text), Some(Written::Certain(..) | Written::Either(..)))
}

/// The number of a month by its name or the first three letters of it.
pub fn month(text: &str) -> Option<u32> {
    let text = fold(text);
    const MONTHS: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let at = MONTHS.iter().position(|month| {
        text == *month || text == month[..3] || text == "sept" && *month == "september"
    })?;
    u32::try_from(at + 1).ok()
}

fn written(text: &str) -> Option<Written> {
    let text = without_midnight(text.trim());
    let parts: Vec<&str> = text
        .split(|c: char| "/.-, ".contains(c) || c.is_whitespace())
        .filter(|part| !part.is_empty())
        .collect();
    let number = |part: &str| {
        (part.len() <= 5 && part.bytes().all(|b| b.is_ascii_digit()))
            .then(|| part.parse::<u32>().ok())
            .flatten()
    };
    match parts[..] {
        [alone] => {
            let n = number(alone).filter(|_| alone.len() == 5)?;
            Some(Written::DayNumber(i64::from(n)))
        }
        [y, m, d] if y.len() == 4 && number(y).is_some() => {
            Some(Written::Certain(year(y)?, number(m).or_else(|| month(m))?, number(d)?))
        }
        [a, b, y] => {
            let year = year(y)?;
            match (number(a), number(b)) {
                (Some(a), Some(b)) => Some(Written::Either(a, b, year)),
                (Some(day), None) => Some(Written::Certain(year, month(b)?, day)),
                (None, Some(day)) => Some(Written::Certain(year, month(a)?, day)),
                (None, None) => None,
            }
        }
        _ => None,
    }
}

/// A date column exported with its time of day: midnight says nothing and is left off.
fn without_midnight(text: &str) -> &str {
    for end in ["T00:00:00", " 00:00:00", "T00:00", " 00:00", " 0:00"] {
        if let Some(date) = text.strip_suffix(end) {
            return date;
        }
    }
    text
}

/// A year of four digits, or of two: 00 to 79 are of this century, 80 to 99 of the last.
fn year(text: &str) -> Option<i32> {
    let n: i32 = text.bytes().all(|b| b.is_ascii_digit()).then(|| text.parse().ok()).flatten()?;
    match text.len() {
        4 => Some(n),
        2 if n < 80 => Some(2000 + n),
        2 => Some(1900 + n),
        _ => None,
    }
}
