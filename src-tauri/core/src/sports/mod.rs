//! Sports.
pub mod pack;
pub mod skills;
use pack::Pack;
/// p
pub fn packs() -> &'static [Pack] { &[] }
/// p
pub fn pack(id: &str) -> Option<&'static Pack> { packs().iter().find(|p| p.id == id) }
