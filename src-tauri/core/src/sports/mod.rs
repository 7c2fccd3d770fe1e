//! Sports: what a sport's skills, levels, court and scoring are, read from a sport pack.

pub mod pack;

use pack::{Pack, PackError};

/// The racquetball pack built into the program.
pub fn racquetball() -> Result<Pack, PackError> {
    pack::read(include_str!("../../packs/racquetball.toml"))
}
