//! One event of ours as a calendar server shows it: what it says now, and its text with ours put
//! into it, so that what others added to it (an alarm, a colour, a note) stays.

use chrono::{DateTime, Days, NaiveTime, Utc};

use super::clocks::{Clock, Clocks, When};
use super::events;
use super::expand::Budget;
use super::lines::{self, Broken, Component, Unfolded};
use super::text::push_line;
use super::values::{self, Moment};
use super::write::{Event, Unwritable, write};
use crate::kinds::zones::Zone;

/// What a text says of an event.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seen {
    /// From this instant; of a whole day, its midnight at home.
    pub starts: DateTime<Utc>,
    /// Until this instant.
    pub ends: DateTime<Utc>,
    /// Where; may be empty.
    pub place: String,
    /// It does not take place.
    pub cancelled: bool,
    /// It comes again, so that one start and end do not tell it all.
    pub again: bool,
}

/// What the text of a calendar says of the event with this UID, times without a zone read on the
/// clock of `home`; `None` when it is not in it, or when it takes place cannot be read.
///
/// Errors: the text is no whole calendar.
pub fn seen(text: &[u8], uid: &str, home: &Zone) -> Result<Option<Seen>, Broken> {
    for calendar in &lines::calendars(text)? {
        let Some(part) = calendar.children.iter().find(|part| is_master(part, uid)) else {
            continue;
        };
        let day =
            part.first("DTSTART").and_then(|one| values::moment(one.value.trim())).map(|moment| {
                match moment {
                    Moment::Day(day) => day,
                    Moment::Utc(at) | Moment::Wall(at) => at.date(),
                }
            });
        let around = day.and_then(|day| {
            Some((day.checked_sub_days(Days::new(2))?, day.checked_add_days(Days::new(2))?))
        });
        let Some(around) = around else { return Ok(None) };
        let mut budget = Budget::of_a_file();
        let mut clocks = Clocks::of(calendar, home, around);
        let Ok(mut event) = events::read(part, &mut clocks, &mut budget) else { return Ok(None) };
        let again = !event.rules.is_empty() || !event.also.is_empty();
        let clock = Clock::Zone(home.clone());
        let starts = match &event.starts {
            When::Day(day) => clock.instant(day.and_time(NaiveTime::MIN)),
            When::At { wall, clock } => clock.instant(*wall),
        };
        let all = event.times(around, &[], &clock, &mut budget);
        let Some(first) = all.into_iter().find(|time| Some(time.starts) == starts) else {
            return Ok(None);
        };
        let text = |name: &str| part.first(name).map(|one| values::text(one.value.trim()));
        return Ok(Some(Seen {
            starts: first.starts,
            ends: first.ends,
            place: text("LOCATION").unwrap_or_default(),
            cancelled: text("STATUS").is_some_and(|word| word.eq_ignore_ascii_case("CANCELLED")),
            again,
        }));
    }
    Ok(None)
}

fn is_master(part: &Component, uid: &str) -> bool {
    part.name == "VEVENT"
        && part.first("RECURRENCE-ID").is_none()
        && part.first("UID").is_some_and(|one| values::text(one.value.trim()) == uid)
}

/// The properties of an event that are ours to say; all others stay as they are.
const OURS: [&str; 14] = [
    "UID",
    "SEQUENCE",
    "DTSTAMP",
    "DTSTART",
    "DTEND",
    "DURATION",
    "SUMMARY",
    "LOCATION",
    "STATUS",
    "RRULE",
    "RDATE",
    "EXRULE",
    "EXDATE",
    "RECURRENCE-ID",
];

/// A server's text of an event with ours put into it: what is not ours to say stays. A text without
/// the event, or one that is not whole, is replaced by ours.
///
/// Errors: as [`write()`].
pub fn merged(theirs: &[u8], event: &Event) -> Result<String, Unwritable> {
    let ours = write(None, std::slice::from_ref(event))?;
    let has = |calendar: &Component| calendar.children.iter().any(|p| is_master(p, &event.uid));
    if !lines::calendars(theirs).is_ok_and(|all| all.len() == 1 && all.iter().all(has)) {
        return Ok(ours);
    }
    let zone = format!("TZID:{}", event.zone.name());
    let own = blocks(ours.as_bytes());
    let own_zone =
        own.iter().find(|block| block.lines.first().is_some_and(|l| l == "BEGIN:VTIMEZONE"));
    let own_event =
        own.iter().find(|block| block.lines.first().is_some_and(|l| l == "BEGIN:VEVENT"));
    let mut out = String::new();
    let all = blocks(theirs);
    let zone_there = all.iter().any(|block| block.is("VTIMEZONE") && block.lines.contains(&zone));
    let mut written = false;
    for block in &all {
        if block.is("VEVENT") {
            if !written && !zone_there {
                own_zone.into_iter().flat_map(|b| &b.lines).for_each(|l| push_line(&mut out, l));
            }
            // One event is one resource; what replaced single times of it is ours no more.
            if !written {
                push_event(&mut out, block, own_event);
            }
            written = true;
            continue;
        }
        for line in &block.lines {
            if name_of(line) != "METHOD" {
                push_line(&mut out, line);
            }
        }
    }
    Ok(out)
}

/// The event: ours first, then what of theirs is not ours to say.
fn push_event(out: &mut String, theirs: &Block, ours: Option<&Block>) {
    let ours = ours.map(|block| block.lines.as_slice()).unwrap_or_default();
    let end = ours.len().saturating_sub(1);
    ours.iter().take(end).for_each(|line| push_line(out, line));
    let mut depth = 0_usize;
    for line in theirs.lines.iter().skip(1) {
        let name = name_of(line);
        if name == "BEGIN" {
            depth += 1;
        }
        if depth > 0 || !OURS.contains(&name.as_str()) {
            push_line(out, line);
        }
        if name == "END" {
            depth = depth.saturating_sub(1);
        }
    }
}

/// The lines of a part of a calendar, unfolded; or some that lie between parts.
struct Block {
    lines: Vec<String>,
}

impl Block {
    fn is(&self, part: &str) -> bool {
        self.lines.first().is_some_and(|line| {
            line.split_once(':').is_some_and(|(begin, name)| {
                begin.eq_ignore_ascii_case("BEGIN") && name.trim().eq_ignore_ascii_case(part)
            })
        })
    }
}

/// The parts of a calendar, each with all that lies in it, and the lines between them.
fn blocks(text: &[u8]) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    let mut depth = 0_usize;
    let mut fresh = true;
    for (_, line) in Unfolded::of(text) {
        let name = name_of(&line);
        let begins = name == "BEGIN";
        if begins {
            depth += 1;
        }
        if fresh || (begins && depth == 2) {
            blocks.push(Block { lines: Vec::new() });
        }
        fresh = name == "END" && depth == 2;
        if name == "END" {
            depth = depth.saturating_sub(1);
        }
        if let Some(block) = blocks.last_mut() {
            block.lines.push(line);
        }
    }
    blocks
}

fn name_of(line: &str) -> String {
    line.split([':', ';']).next().unwrap_or_default().trim().to_ascii_uppercase()
}
