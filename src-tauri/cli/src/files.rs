//! The verbs that look after the file itself: check, backup, restore.

use std::path::{Path, PathBuf};

use carryover_core::app::CoachFile;
use carryover_core::commands;
use carryover_core::error::{Error, Result};
use carryover_core::kinds::SystemClock;
use serde_json::to_value;

use crate::answer::{Answered, done};
use crate::verbs::fault;

/// The file that was named, or a refusal that says how to name one.
pub fn named(file: Option<PathBuf>) -> Result<PathBuf> {
    file.ok_or_else(|| Error::field("--file", "empty", "Name the coach file with --file FILE."))
}

pub fn check(file: Option<PathBuf>) -> Result<Answered> {
    let checked = commands::check(&CoachFile::open(&named(file)?)?)?;
    for wrong in &checked.wrong {
        eprintln!("{wrong}");
    }
    Ok(Answered { fine: checked.sound, value: to_value(checked).map_err(fault)? })
}

pub fn backup(file: Option<PathBuf>, to: &Path) -> Result<Answered> {
    let made = commands::back_up(&mut CoachFile::open(&named(file)?)?, to)?;
    Ok(done(to_value(made).map_err(fault)?))
}

pub fn restore(file: Option<PathBuf>, from: &Path) -> Result<Answered> {
    let restored = commands::restore(&named(file)?, from, &SystemClock)?;
    Ok(done(to_value(restored).map_err(fault)?))
}
