//! What reads across everything: the day sheet, finding by name, what changed.

pub mod day_sheet;
pub mod find;
pub mod history;
