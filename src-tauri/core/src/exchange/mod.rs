//! What comes in from other files, and what goes out.

pub mod preview;
pub mod season_csv;
pub mod take;
