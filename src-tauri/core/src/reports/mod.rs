//! What reads across everything: the day sheet, a visit's load, the season, finding by name, what
//! changed.

pub mod day_sheet;
pub mod find;
pub mod history;
pub mod load;
pub mod season;
mod store;
