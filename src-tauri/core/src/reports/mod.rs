//! What reads across everything: the day sheet, and finding by name.

pub mod day_sheet;
pub mod find;
