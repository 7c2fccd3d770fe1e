//! The VTIMEZONE of a zone (RFC 5545 §3.6.5), from the program's own time-zone database.
//!
//! Each change of the clock is a part of its own, with no rule that might say more about the years
//! to come than the database does. Its date stands in an RDATE as well as in DTSTART: it may, and
//! python-dateutil does not take a DTSTART alone, while vobject 0.9.9 reads only the first of
//! several dates.

use std::fmt::Write;

use chrono::NaiveDateTime;

use super::text::push_line;
use crate::kinds::zones::{OutOfRange, Zone, changes};

/// Appends the VTIMEZONE of a zone for these years, both included. An error if the calendar does
/// not reach that far.
pub(crate) fn push(out: &mut String, zone: &Zone, first: i32, last: i32) -> Result<(), OutOfRange> {
    push_line(out, "BEGIN:VTIMEZONE");
    push_line(out, &format!("TZID:{}", zone.name()));
    for change in changes(zone, first, last)? {
        let at = time(change.local_before);
        let kind = if change.dst { "DAYLIGHT" } else { "STANDARD" };
        push_line(out, &format!("BEGIN:{kind}"));
        push_line(out, &format!("DTSTART:{at}"));
        push_line(out, &format!("RDATE:{at}"));
        push_line(out, &format!("TZOFFSETFROM:{}", offset(change.offset_before_seconds)));
        push_line(out, &format!("TZOFFSETTO:{}", offset(change.offset_after_seconds)));
        push_line(out, &format!("TZNAME:{}", change.name));
        push_line(out, &format!("END:{kind}"));
    }
    push_line(out, "END:VTIMEZONE");
    Ok(())
}

/// `20260303T170000`
pub(crate) fn time(at: NaiveDateTime) -> String {
    at.format("%Y%m%dT%H%M%S").to_string()
}

/// `-0500`, with seconds only where there are any (RFC 5545 §3.3.14).
fn offset(seconds: i32) -> String {
    let all = seconds.unsigned_abs();
    let mut out = if seconds < 0 { "-" } else { "+" }.to_owned();
    // Writing to a String cannot fail.
    write!(out, "{:02}{:02}", all / 3_600, all / 60 % 60).unwrap_or_default();
    if !all.is_multiple_of(60) {
        write!(out, "{:02}", all % 60).unwrap_or_default();
    }
    out
}
