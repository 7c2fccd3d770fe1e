//! iCalendar objects (RFC 5545), read and written. Knows nothing of the rest of the program but its
//! time zones.
//!
//! [`write()`] makes the text of an invitation or a calendar file (RFC 5546), [`busy`] reads when a
//! calendar file says its owner is taken, [`seen`] what a server's text says of one event of ours
//! and [`merged`] puts ours into it, and [`recur::occurrences`] works out what repeats. All are
//! pure: bytes in, values out; no clock, no file, no network.
//!
//! Time on a court is civil time with a zone, and stays that as long as it can. An instant is made
//! only from [`crate::kinds::zones`]: an hour that is skipped is read with the offset before it,
//! an hour that comes twice as the first (RFC 5545 §3.3.5).

mod clocks;
mod days;
mod events;
mod expand;
mod lines;
mod read;
pub mod recur;
mod rule;
mod seen;
mod text;
mod times;
mod values;
mod vtimezone;
mod windows;
mod without;
mod write;

#[cfg(test)]
mod tests;

pub use lines::Broken;
pub use read::{Busy, LARGEST, Read, busy};
pub use seen::{Seen, merged, seen};
pub use without::without;
pub use write::{Event, Method, Person, Unwritable, write};
