//! What comes in from other files, and what goes out.

pub mod season_csv;
