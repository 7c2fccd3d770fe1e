//! The sample season.
use std::path::Path;
use carryover_core::error::Result;
use carryover_core::kinds::Day;
/// s
pub struct Season { /// a
 pub years: u32, /// a
 pub students: u32, /// a
 pub seed: u64, /// a
 pub today: Day }
/// m
pub fn make(path: &Path, _s: &Season) -> Result<()> { carryover_core::app::CoachFile::create(path) }
/// The sample season as the window shows it: two years up to the machine's own day.
pub fn make_for_window(path: &Path) -> Result<()> {
    use carryover_core::kinds::{Clock, SystemClock};
    make(path, &Season { years: 2, students: 12, seed: 1, today: SystemClock.today() })
}
