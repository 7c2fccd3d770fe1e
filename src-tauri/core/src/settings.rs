//! The coach's own settings: the name and lines of the letterhead, the closing of a letter.

use rusqlite::params;
use schemars::JsonSchema;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};

/// The most lines of a letterhead: more would push the letter off its first page.
const LETTERHEAD_LINES: usize = 8;

/// The coach's settings; the form and the record are the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// The coach's name, as letters are signed.
    pub name: String,
    /// The coach's e-mail address, which invitations are from.
    pub email: String,
    /// Lines under the name in the letterhead: address, telephone, mail.
    pub letterhead: String,
    /// The closing of a letter.
    pub closing: String,
    /// Whether this file holds the invented sample season.
    pub sample: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            name: String::new(),
            email: String::new(),
            letterhead: String::new(),
            closing: "See you on court,".to_owned(),
            sample: false,
        }
    }
}

impl Settings {
    /// The lines at the head of a document: the name, and what stands under it.
    pub fn head(&self) -> Vec<String> {
        let mut lines = vec![self.name.clone()];
        lines.extend(self.letterhead.lines().map(str::to_owned));
        lines.retain(|line| !line.trim().is_empty());
        lines
    }
}

/// Shows the settings.
///
/// # Errors
/// `Storage`.
pub fn show(db: &Reading<'_>) -> Result<Settings> {
    kept(db, "coach").map(Option::unwrap_or_default)
}

/// Changes the settings.
///
/// # Errors
/// `Refused` when a line is too long.
pub fn change(db: &Writing<'_>, settings: Settings) -> Result<Settings> {
    let mut p = Problems::new();
    let read = Settings {
        name: p.line("name", &settings.name, "Your name"),
        email: p.email("email", &settings.email),
        letterhead: p.note("letterhead", &settings.letterhead, "The letterhead"),
        closing: p.note("closing", &settings.closing, "The closing"),
        sample: settings.sample,
    };
    if read.letterhead.lines().count() > LETTERHEAD_LINES || read.letterhead.chars().count() > 600 {
        p.add(
            "letterhead",
            "too_long",
            format!("The letterhead has room for {LETTERHEAD_LINES} lines and 600 characters."),
        );
    }
    p.done()?;
    keep(db, "coach", &read)?;
    db.label("Settings changed");
    show(db)
}

/// A record that a capability keeps under a name of its own; `None` when it was never kept.
///
/// # Errors
/// `Storage`; `Fault` when what is kept is no such record.
pub fn kept<T: DeserializeOwned>(db: &Reading<'_>, id: &str) -> Result<Option<T>> {
    db.one("SELECT value FROM setting WHERE id = ?", [id], |row| row.get::<_, String>("value"))?
        .map(|kept| serde_json::from_str(&kept).map_err(|e| Error::Fault(e.to_string())))
        .transpose()
}

/// Keeps a record under a name, in place of the one before.
///
/// # Errors
/// `Storage`.
pub fn keep<T: Serialize>(db: &Writing<'_>, id: &str, record: &T) -> Result<()> {
    let record = serde_json::to_string(record).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO setting (id, value) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET value = excluded.value",
        params![id, record],
    )?;
    Ok(())
}
