//! Results as coaches write them: 8/10, 8 of 10, 80 %, or 8 beside a column of tries.

use super::dates::{self, Refused};
use crate::goals::numbers::Count;

/// A result as it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Written {
    Of(u32, u32),
    /// Hundredths of the number under `per`: 80.5 % is 805 per 1000.
    Share {
        part: u64,
        per: u64,
    },
    Total(u32),
    Date,
}

/// Reads a result, with the cell of the tries column where there is one.
pub fn count(result: &str, tries: Option<&str>) -> Result<Count, Refused> {
    let tries = tries.map(str::trim).filter(|tries| !tries.is_empty());
    let told = match tries {
        None => None,
        Some(text) => Some(
            whole(text)
                .ok_or_else(|| ("tries_unreadable", format!("“{text}” is no number of tries")))?,
        ),
    };
    match (written(result), told) {
        (None, _) => Err((
            "result_unreadable",
            format!("“{result}” is not read as a result; “8 of 10” would be"),
        )),
        (Some(Written::Date), _) => Err((
            "result_is_a_date",
            format!(
                "“{result}” is a date: the spreadsheet has probably turned a result such as 8/10 into one; write it as “8 of 10”"
            ),
        )),
        (Some(Written::Of(_, tries)), Some(told)) if tries != told => Err((
            "tries_differ",
            format!("“{result}” says {tries} tries, the column beside it {told}"),
        )),
        (Some(Written::Of(made, tries)), _) => sound(made, tries),
        (Some(Written::Share { .. }), None) => Err((
            "percentage_without_tries",
            format!("“{result}” is a percentage without its number of tries"),
        )),
        (Some(Written::Share { part, per }), Some(tries)) => {
            let top = u128::from(part) * u128::from(tries);
            let per = u128::from(per);
            if top % per != 0 {
                return Err((
                    "percentage_not_whole",
                    format!(
                        "“{result}” of {tries} tries is no whole number; write how many were made"
                    ),
                ));
            }
            match u32::try_from(top / per) {
                Ok(made) => sound(made, tries),
                Err(_) => sound(u32::MAX, tries),
            }
        }
        (Some(Written::Total(_)), None) => {
            Err(("total_without_tries", format!("“{result}” is a total without tries")))
        }
        (Some(Written::Total(made)), Some(tries)) => sound(made, tries),
    }
}

/// Whether a cell is a result that holds its own tries.
pub fn holds_tries(text: &str) -> bool {
    matches!(written(text), Some(Written::Of(..)))
}

fn sound(made: u32, tries: u32) -> Result<Count, Refused> {
    if tries == 0 {
        return Err(("no_tries", "there are no tries to count".to_owned()));
    }
    Count::new(made, tries).ok_or_else(|| {
        (
            "more_made_than_tried",
            format!("more were made than tried ({tries}); one of the two numbers is wrong"),
        )
    })
}

fn written(text: &str) -> Option<Written> {
    let text = text.trim().to_lowercase();
    if dates::is_full_date(&text) || day_and_month(&text) {
        return Some(Written::Date);
    }
    if let Some(share) = text.strip_suffix('%') {
        return percentage(share.trim());
    }
    for between in ["/", " out of ", " of "] {
        if let Some((made, tries)) = text.split_once(between) {
            return Some(Written::Of(whole(made.trim())?, whole(tries.trim())?));
        }
    }
    whole(&text).map(Written::Total)
}

/// What is left of 8/10 after a spreadsheet took it for a day: `08-Oct`, `Aug-10`, `10. Aug`.
fn day_and_month(text: &str) -> bool {
    let parts: Vec<&str> =
        text.split(|c: char| "-./ ".contains(c)).filter(|part| !part.is_empty()).collect();
    match parts[..] {
        [a, b] => {
            (whole(a).is_some() && dates::month(b).is_some())
                || (dates::month(a).is_some() && whole(b).is_some())
        }
        _ => false,
    }
}

fn percentage(text: &str) -> Option<Written> {
    let (units, rest) = text.split_once(['.', ',']).unwrap_or((text, ""));
    if rest.len() > 6 || !rest.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    let units = u64::from(whole(units)?);
    let scale = 10u64.pow(u32::try_from(rest.len()).ok()?);
    let tail = if rest.is_empty() { 0 } else { rest.parse::<u64>().ok()? };
    Some(Written::Share { part: units * scale + tail, per: 100 * scale })
}

/// A whole number written with digits alone.
fn whole(text: &str) -> Option<u32> {
    (!text.is_empty() && text.bytes().all(|b| b.is_ascii_digit()))
        .then(|| text.parse().ok())
        .flatten()
}
