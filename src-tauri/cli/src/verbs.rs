//! The verbs that go through the command table, and the sample season.

use std::io::Read;
use std::path::{Path, PathBuf};

use carryover_core::app::CoachFile;
use carryover_core::error::{Error, Result};
use carryover_core::kinds::Day;
use carryover_core::{commands, desk};
use serde_json::{Value, json, to_value};

use crate::answer::{Answered, done};
use crate::files::named;

/// A fault while making the answer.
pub fn fault(e: serde_json::Error) -> Error {
    Error::Fault(e.to_string())
}

pub fn commands(window: bool) -> Result<Answered> {
    let mut listed = commands::listed();
    if window {
        listed.extend(desk::listed());
    }
    Ok(done(to_value(listed).map_err(fault)?))
}

pub fn call(file: Option<PathBuf>, name: &str) -> Result<Answered> {
    let input = read_input()?;
    let mut file = CoachFile::open(&named(file)?)?;
    let answer = commands::call(&mut file, name, input)?;
    Ok(done(to_value(answer).map_err(fault)?))
}

/// The JSON on standard input; nothing stands for an input with nothing in it.
fn read_input() -> Result<Value> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|e| {
        Error::field("", "unreadable", format!("Standard input cannot be read: {e}."))
    })?;
    if text.trim().is_empty() {
        return Ok(Value::Null);
    }
    serde_json::from_str(&text).map_err(|e| {
        Error::field("", "no_json", format!("Standard input is not one JSON value: {e}."))
    })
}

pub fn sample(path: &Path, years: u32, students: u32, seed: u64, today: &str) -> Result<Answered> {
    let today = Day::parse(today)
        .ok_or_else(|| Error::field("--today", "no_such_day", "Write the day as 2026-03-12."))?;
    carryover_demo::make(path, &carryover_demo::Season { years, students, seed, today })?;
    Ok(done(json!({ "path": path })))
}
