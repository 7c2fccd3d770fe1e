//! The sample season: an invented coach's file in a harbour town that exists nowhere, built through
//! the program's own commands. The same arguments give the same file, ids included.

mod before;
mod costs;
mod crowd;
mod maker;
mod money;
mod story;

use std::path::Path;

use carryover_core::app::CoachFile;
use carryover_core::error::Result;
use carryover_core::kinds::{Clock, Day, SystemClock};

/// What season to make.
#[derive(Clone, Copy, Debug)]
pub struct Season {
    /// Years of history of the students who are not part of the story.
    pub years: u32,
    /// Students in all; the story has fifteen.
    pub students: u32,
    /// The same seed gives the same season.
    pub seed: u64,
    /// The day the season leads up to.
    pub today: Day,
}

/// Makes the sample season in a new file. The file appears once its tables are whole; then each act
/// is committed in order, so that an interrupted season is a shorter one.
///
/// # Errors
/// `Storage` when the file exists or cannot be written; those of the commands.
pub fn make(path: &Path, season: &Season) -> Result<()> {
    CoachFile::create(path)?;
    let mut maker = maker::Maker::open(path, season)?;
    story::tell(&mut maker, season.students)?;
    crowd::fill(&mut maker, season)?;
    costs::spent(&mut maker)?;
    money::earned(&mut maker)
}

/// The sample season as the window shows it: two years up to the machine's own day.
///
/// # Errors
/// As [`make`].
pub fn make_for_window(path: &Path) -> Result<()> {
    make(path, &Season { years: 2, students: 15, seed: 1, today: SystemClock.today() })
}
