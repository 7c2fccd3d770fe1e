//! Reading what was typed: each function takes a field as it came, notes what is wrong with it in
//! [`Problems`], and gives back the kind it stands for.

use crate::error::Problems;
use crate::kinds::zones::Zone;
use crate::kinds::{Day, Time, text};

/// The longest name of anything.
pub const NAME: usize = 200;
/// The longest note.
pub const NOTE: usize = 20_000;

impl Problems {
    /// A line that must not be empty: a name, a cue.
    pub fn name(&mut self, field: &str, typed: &str, what: &str) -> String {
        let line = text::line(typed);
        if line.is_empty() {
            self.add(field, "empty", format!("{what} is empty."));
        }
        self.not_longer(field, &line, NAME, what);
        line
    }

    /// A line that may be empty.
    pub fn line(&mut self, field: &str, typed: &str, what: &str) -> String {
        let line = text::line(typed);
        self.not_longer(field, &line, NAME, what);
        line
    }

    /// Several lines that may be empty.
    pub fn note(&mut self, field: &str, typed: &str, what: &str) -> String {
        let note = text::lines(typed);
        self.not_longer(field, &note, NOTE, what);
        note
    }

    /// Several lines that must not be empty: a reason.
    pub fn reason(&mut self, field: &str, typed: &str, what: &str) -> String {
        let note = self.note(field, typed, what);
        if note.is_empty() {
            self.add(field, "empty", format!("{what} is empty."));
        }
        note
    }

    fn not_longer(&mut self, field: &str, text: &str, most: usize, what: &str) {
        let long = text.chars().count();
        if long > most {
            self.add(
                field,
                "too_long",
                format!("{what} has {long} characters; there is room for {most}."),
            );
        }
    }

    /// A day that must be given. On a problem the epoch stands in; the problem stops the act.
    pub fn day(&mut self, field: &str, typed: &str, what: &str) -> Day {
        self.day_or_none(field, Some(typed), what).unwrap_or_else(|| {
            if typed.trim().is_empty() {
                self.add(field, "empty", format!("{what} is empty."));
            }
            Day::EPOCH
        })
    }

    /// A day that may be left out.
    pub fn day_or_none(&mut self, field: &str, typed: Option<&str>, what: &str) -> Option<Day> {
        let typed = typed.map(str::trim).filter(|t| !t.is_empty())?;
        let day = Day::parse(typed);
        if day.is_none() {
            self.add(
                field,
                "no_such_day",
                format!("{what}: \u{201c}{typed}\u{201d} is not a day in the calendar. Write it as 2026-03-12."),
            );
        }
        day
    }

    /// A time of day that must be given.
    pub fn time(&mut self, field: &str, typed: &str, what: &str) -> Time {
        let typed = typed.trim();
        Time::parse(typed).unwrap_or_else(|| {
            let words = if typed.is_empty() {
                format!("{what} is empty.")
            } else {
                format!("{what}: \u{201c}{typed}\u{201d} is not a time of day. Write it as 09:30.")
            };
            self.add(field, if typed.is_empty() { "empty" } else { "no_such_time" }, words);
            Time::MIDNIGHT
        })
    }

    /// A time zone by its IANA name.
    pub fn zone(&mut self, field: &str, typed: &str, what: &str) -> Option<Zone> {
        match Zone::parse(typed.trim()) {
            Ok(zone) => Some(zone),
            Err(_) => {
                self.add(
                    field,
                    "no_such_zone",
                    format!("{what}: \u{201c}{}\u{201d} is not a time zone. Choose one such as Europe/Lisbon.", typed.trim()),
                );
                None
            }
        }
    }

    /// A whole number inside these bounds, both included.
    pub fn within_bounds(&mut self, field: &str, n: i64, least: i64, most: i64, what: &str) -> i64 {
        if !(least..=most).contains(&n) {
            self.add(
                field,
                "out_of_bounds",
                format!("{what} is {n}; it can be {least} to {most}."),
            );
        }
        n.clamp(least, most)
    }

    /// An e-mail address that may be left out: one @, something on both sides, no spaces. Whether
    /// it exists only sending tells.
    pub fn email(&mut self, field: &str, typed: &str) -> String {
        let line = self.line(field, typed, "The e-mail address");
        let fine = line.is_empty()
            || line.rsplit_once('@').is_some_and(|(local, domain)| {
                !local.is_empty()
                    && !domain.is_empty()
                    && !line.contains(' ')
                    && !local.contains('@')
            });
        if !fine {
            self.add(
                field,
                "no_such_address",
                format!("\u{201c}{line}\u{201d} is not an e-mail address."),
            );
        }
        line
    }
}
