//! Recurrence rules (RFC 5545, 3.3.10), followed on the clock on the wall: what comes again at nine
//! comes at nine, whatever the clocks do in between.

use chrono::{NaiveDate, NaiveDateTime, TimeZone, Utc};
use rrule::{RRuleSet, Tz};

/// The most occurrences that are given.
const MOST: u16 = 5_000;

/// When something that first takes place at `starts` comes again by a rule such as
/// `FREQ=WEEKLY;BYDAY=TU`, on the days from `first` to `last`, both included; those on the days of
/// `except` are left out. An UNTIL in UTC is read as a time on the wall.
///
/// # Errors
/// What is wrong with the rule, in words.
pub fn occurrences(
    rule: &str,
    starts: NaiveDateTime,
    except: &[NaiveDate],
    first: NaiveDate,
    last: NaiveDate,
) -> Result<Vec<NaiveDateTime>, String> {
    let text = format!("DTSTART:{}\nRRULE:{rule}", starts.format("%Y%m%dT%H%M%SZ"));
    let set: RRuleSet = text
        .parse()
        .map_err(|e| format!("The rule \u{201c}{rule}\u{201d} cannot be followed: {e}."))?;
    let at = |day: NaiveDate, h, m, s| {
        day.and_hms_opt(h, m, s).map(|local| Tz::UTC.from_utc_datetime(&local))
    };
    let (from, to) = at(first, 0, 0, 0)
        .zip(at(last, 23, 59, 59))
        .ok_or_else(|| "These days are outside the calendar.".to_owned())?;
    let found = set.after(from).before(to).all(MOST);
    let times = found.dates.into_iter().map(|date| date.with_timezone(&Utc).naive_utc());
    Ok(times.filter(|time| !except.contains(&time.date())).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().expect("a day")
    }

    /// The examples of RFC 5545 (3.8.5.3), on New York's clock at nine.
    #[test]
    fn the_examples_of_the_standard() {
        for (starts, rule, expect) in [
            ("1997-09-02", "FREQ=DAILY;COUNT=4", "02 03 04 05"),
            (
                "1997-09-02",
                "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH",
                "02 04 09 11 16 18 23 25 30 02",
            ),
            ("1997-09-05", "FREQ=MONTHLY;COUNT=5;BYDAY=1FR", "05 03 07 05 02"),
            ("1997-09-22", "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", "22 20 17 22 19 16"),
            ("1997-08-05", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", "05 10 19 24"),
            ("1997-08-05", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", "05 17 19 31"),
            ("2007-01-15", "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", "15 30 15 15 30"),
        ] {
            let starts = day(starts).and_hms_opt(9, 0, 0).expect("a time");
            let found = occurrences(rule, starts, &[], starts.date(), day("2030-01-01"));
            let days: Vec<String> =
                found.expect("a rule").iter().map(|at| at.format("%d").to_string()).collect();
            assert_eq!(days.join(" "), expect, "{rule}");
        }
    }

    #[test]
    fn only_the_days_asked_about_and_none_that_are_left_out() {
        let starts = day("2026-01-06").and_hms_opt(19, 0, 0).expect("a time");
        let found = occurrences(
            "FREQ=WEEKLY;BYDAY=TU",
            starts,
            &[day("2036-03-11")],
            day("2036-03-01"),
            day("2036-03-18"),
        );
        let expect = [day("2036-03-04"), day("2036-03-18")];
        assert_eq!(found, Ok(expect.map(|d| d.and_hms_opt(19, 0, 0).expect("a time")).to_vec()));
        assert!(occurrences("FREQ=SOMETIMES", starts, &[], starts.date(), starts.date()).is_err());
    }
}
