//! Times that repeat, by the recurrence rules of RFC 5545 §3.3.10 and §3.8.5.3, on the clock of a
//! wall. No zone is known here; whoever asks says later what each time means as an instant.

use std::collections::BTreeSet;

use chrono::{NaiveDate, NaiveDateTime};

use super::expand::{Budget, expand};
use super::lines::shortened;
use super::rule::Rule;

/// When something that repeats happens from day `first` to day `last`, both included, in order.
///
/// `rule` is the value of an RRULE (`FREQ=WEEKLY;BYDAY=TU,TH`), `starts` its DTSTART, which counts
/// as a time whether or not the rule holds it (RFC 5545 §3.8.5.3, "defines the first instance").
/// It uses up one of COUNT only if the rule holds it, as other readers have it. On the days in
/// `except` nothing happens; they use up COUNT. An UNTIL written in UTC is taken as it stands, as a
/// time on the same clock.
///
/// The error is one sentence: the rule cannot be read, or it gives more than 5,000 times, or it
/// would have to be counted through for too long.
///
/// ```
/// use carryover_core::ical::recur::occurrences;
/// let day = |text: &str| text.parse().unwrap();
/// let starts = "2026-03-03T17:00:00".parse().unwrap();
/// let days = (day("2026-03-10"), day("2026-03-20"));
/// let found = occurrences("FREQ=WEEKLY", starts, &[day("2026-03-10")], days.0, days.1).unwrap();
/// assert_eq!(found, ["2026-03-17T17:00:00".parse().unwrap()]);
/// ```
pub fn occurrences(
    rule: &str,
    starts: NaiveDateTime,
    except: &[NaiveDate],
    first: NaiveDate,
    last: NaiveDate,
) -> Result<Vec<NaiveDateTime>, String> {
    let followed = |parsed: Rule| expand(&parsed, starts, first, last, &mut Budget::of_one_rule());
    let mut found: BTreeSet<NaiveDateTime> = Rule::parse(rule)
        .and_then(followed)
        .map_err(|words| format!("The rule “{}” cannot be followed: {words}.", shortened(rule)))?
        .into_iter()
        .collect();
    if first <= starts.date() && starts.date() <= last {
        found.insert(starts);
    }
    Ok(found.into_iter().filter(|at| !except.contains(&at.date())).collect())
}
