//! Sports: what a sport's skills, levels, court, scoring, drills and tests are, read from a sport
//! pack, and the skills a coach adds to it.

pub mod drills;
pub mod measure;
pub mod on_court;
pub mod pack;
pub mod skills;

use std::sync::LazyLock;

use pack::{Pack, PackError};

/// The sport of a student for whom none was chosen.
pub const USUAL: &str = "racquetball";

/// The texts of the packs that came with the program, the usual sport first.
const TEXTS: [&str; 5] = [
    include_str!("../../packs/racquetball.toml"),
    include_str!("../../packs/squash.toml"),
    include_str!("../../packs/tennis.toml"),
    include_str!("../../packs/padel.toml"),
    include_str!("../../packs/pickleball.toml"),
];

/// The packs that came with the program.
static PACKS: LazyLock<Vec<Pack>> =
    LazyLock::new(|| read_built_in().filter_map(Result::ok).collect());

/// Reads each pack that came with the program. A test shows that all of them read.
pub fn read_built_in() -> impl Iterator<Item = Result<Pack, PackError>> {
    TEXTS.into_iter().map(pack::read)
}

/// The packs that came with the program, the usual sport first.
pub fn packs() -> &'static [Pack] {
    &PACKS
}

impl Pack {
    /// The name of a group of skills.
    pub fn group_name<'a>(&'a self, id: &'a str) -> &'a str {
        self.groups.iter().find(|group| group.id == id).map_or(id, |group| &group.name)
    }
}

/// The pack with this id.
pub fn pack(id: &str) -> Option<&'static Pack> {
    packs().iter().find(|pack| pack.id == id)
}
