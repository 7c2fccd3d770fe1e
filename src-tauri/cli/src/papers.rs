//! The verbs that write a letter's document and take a season from a CSV file. Both go through the
//! command table, as the window does.

use std::path::{Path, PathBuf};

use base64::Engine;
use carryover_core::accounts::{self, MoneyPaper};
use carryover_core::app::CoachFile;
use carryover_core::error::{Error, Result};
use carryover_core::kinds::ids::LetterId;
use carryover_core::kinds::{Clock, SystemClock};
use carryover_core::{calendar, commands, desk, letters};
use serde_json::{Map, Value, json, to_value};

use crate::answer::{Answered, done};
use crate::files::named;
use crate::verbs::fault;

/// Writes a letter's document; issues it first where that is asked.
pub fn letter(
    file: Option<PathBuf>,
    visit: Option<String>,
    letter: Option<String>,
    issue: bool,
    to: &Path,
) -> Result<Answered> {
    if to.exists() {
        return Err(Error::field("to", "exists", "There is a file of this name. Name another."));
    }
    let mut file = CoachFile::open(&named(file)?)?;
    let letter = match (visit, letter) {
        (Some(visit), _) if issue => {
            let issued = commands::call(&mut file, "letters.issue", json!({ "visit": visit }))?;
            issued.value["letter"].clone()
        }
        (Some(visit), _) => {
            let draft = commands::call(&mut file, "letters.draft", json!({ "visit": visit }))?;
            draft.value["issued"][0]["letter"].clone()
        }
        (None, letter) => json!(letter),
    };
    let letter: LetterId = serde_json::from_value(letter).map_err(|_| {
        Error::field(
            "letter",
            "not_issued",
            "This visit has no issued letter. Issue it with --issue.",
        )
    })?;
    let (_, pdf) = file.read(|db| letters::document(db, letter))?;
    desk::write_whole(to, &pdf)?;
    Ok(done(json!({ "path": to, "letter": letter, "bytes": pdf.len() })))
}

/// Writes a paper about money.
pub fn money(file: Option<PathBuf>, which: &str, to: &Path) -> Result<Answered> {
    if to.exists() {
        return Err(Error::field("to", "exists", "There is a file of this name. Name another."));
    }
    let which: MoneyPaper = serde_json::from_str(which)
        .map_err(|e| Error::field("which", "no_paper", format!("This names no paper: {e}.")))?;
    let file = CoachFile::open(&named(file)?)?;
    let (name, bytes) = file.read(|db| accounts::paper(db, which))?;
    desk::write_whole(to, &bytes)?;
    Ok(done(json!({ "path": to, "name": name, "bytes": bytes.len() })))
}

/// Writes the invitations of a visit that are due.
pub fn invitations(file: Option<PathBuf>, visit: String, folder: &Path) -> Result<Answered> {
    let which = serde_json::from_value(json!({ "visit": visit }))
        .map_err(|_| Error::NotFound { what: "visit", id: visit })?;
    let mut file = CoachFile::open(&named(file)?)?;
    let names = desk::invitations_into(&mut file, which, folder)?;
    Ok(done(json!({ "folder": folder, "files": names })))
}

/// Writes a calendar file.
pub fn calendar(file: Option<PathBuf>, student: Option<String>, to: &Path) -> Result<Answered> {
    if to.exists() {
        return Err(Error::field("to", "exists", "There is a file of this name. Name another."));
    }
    let of = serde_json::from_value(json!({ "student": student }))
        .map_err(|_| Error::NotFound { what: "student", id: student.unwrap_or_default() })?;
    let file = CoachFile::open(&named(file)?)?;
    let (_, text) = file.read(|db| calendar::file(db, of, SystemClock.now().utc()))?;
    desk::write_whole(to, text.as_bytes())?;
    Ok(done(json!({ "path": to, "bytes": text.len() })))
}

/// What is said about a season's file on the command line.
pub struct Season {
    pub columns: Option<String>,
    pub dates: Option<String>,
    pub facility: Option<String>,
    pub same: Option<String>,
    pub look: bool,
}

/// Takes a season, or only looks at it.
pub fn import(file: Option<PathBuf>, from: &Path, season: &Season) -> Result<Answered> {
    let bytes = std::fs::read(from).map_err(|e| match e.kind() {
        std::io::ErrorKind::NotFound => {
            Error::NotFound { what: "CSV file", id: from.display().to_string() }
        }
        _ => Error::storage("Reading the CSV file", e),
    })?;
    let mut file = CoachFile::open(&named(file)?)?;
    let mut ask = Map::new();
    ask.insert(
        "content".to_owned(),
        base64::engine::general_purpose::STANDARD.encode(bytes).into(),
    );
    if let Some(columns) = &season.columns {
        ask.insert("columns".to_owned(), given("--columns", columns)?);
    }
    if let Some(dates) = &season.dates {
        ask.insert("dates".to_owned(), json!(dates));
    }
    let seen = commands::call(&mut file, "exchange.read_csv", Value::Object(ask.clone()))?;
    if season.look {
        return Ok(done(to_value(seen).map_err(fault)?));
    }
    ask.insert("columns".to_owned(), seen.value["columns"].clone());
    ask.insert("facility".to_owned(), json!(facility(&mut file, season.facility.as_deref())?));
    if let Some(same) = &season.same {
        ask.insert("same".to_owned(), given("--same", same)?);
    }
    let taken = commands::call(&mut file, "exchange.take_csv", Value::Object(ask))?;
    for near in seen.value["near"].as_array().into_iter().flatten() {
        eprintln!("{} and {} may be one person.", near["name"], near["other"]);
    }
    Ok(done(to_value(taken).map_err(fault)?))
}

/// JSON given with an option.
fn given(option: &str, text: &str) -> Result<Value> {
    serde_json::from_str(text)
        .map_err(|e| Error::field(option, "no_json", format!("{option} is not JSON: {e}.")))
}

/// The facility that was named, or the only one there is.
fn facility(file: &mut CoachFile, named: Option<&str>) -> Result<String> {
    if let Some(named) = named {
        return Ok(named.to_owned());
    }
    let listed = commands::call(file, "facilities.list", Value::Null)?;
    match listed.value.as_array().map(Vec::as_slice) {
        Some([only]) => Ok(only["id"].as_str().unwrap_or_default().to_owned()),
        _ => Err(Error::field(
            "--facility",
            "empty",
            "Say where the visits were with --facility ID; facilities.list names them.",
        )),
    }
}
