//! Progress letters.
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::LetterId;
/// d
pub fn document(_db: &Reading<'_>, id: LetterId) -> Result<(String, Vec<u8>)> { Err(Error::NotFound { what: "letter", id: id.to_string() }) }
