//! Carryover's core: the whole program without a window.
//!
//! A coach's record of visiting students lives in one *coach file* (SQLite). This crate opens it,
//! holds every rule about it, and offers one door: the table in [`commands`]. It knows no window,
//! no network and no async runtime.
//!
//! Order of knowledge (a module may use those before it, never those after it):
//! kinds, error → db, app → print, sports → students, facilities → goals → visits, lessons →
//! letters → reports, exchange → commands → desk. A test in the workspace's `tests` package checks it.

pub mod calc;
pub mod exchange;
pub mod goals;
pub mod kinds;
pub mod print;
pub mod sports;
