//! Sports: what a sport's skills, levels, court and scoring are, read from a sport pack, and the
//! skills a coach adds to it.

pub mod pack;
pub mod skills;

use std::sync::LazyLock;

use pack::{Pack, PackError};

/// The packs that came with the program.
static PACKS: LazyLock<Vec<Pack>> = LazyLock::new(|| racquetball().into_iter().collect());

/// The racquetball pack built into the program.
///
/// # Errors
/// When the pack's text is not a pack, which a test shows it is.
pub fn racquetball() -> Result<Pack, PackError> {
    pack::read(include_str!("../../packs/racquetball.toml"))
}

/// The packs that came with the program.
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
