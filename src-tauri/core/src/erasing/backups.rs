//! Copies of the coach file that the program knows of, and which of them still hold someone.
//!
//! Which copies the coach made is kept in the file itself, beside the journal: the file may be used on
//! several machines, and the command line makes backups too. It is no act: nothing of the record
//! changes, and a backup stays the same as its original. Copies made before a restore or a new version
//! lie beside the file and are found there. A copy is only looked into, never changed or deleted.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::ids::StudentId;
use crate::kinds::{Day, Instant};
use crate::settings;

/// Under what name the coach's own number is kept.
const SETTING: &str = "backups";
/// Months that backups are kept, unless the coach says otherwise.
const MONTHS: u32 = 12;

/// How long the coach keeps backups.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepBackups {
    /// So many months.
    pub months: i64,
}

/// A copy of the file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BackupKept {
    /// Where it is, or was put.
    pub path: PathBuf,
    /// The day it was made.
    pub made: Day,
    /// The day it is to be deleted, by the coach's own number of months.
    pub lapses: Day,
    /// Whether it is past that day.
    pub late: bool,
    /// What is known of it, as a sentence.
    pub words: String,
}

/// The copies the program knows of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Backups {
    /// So many months they are kept.
    pub months: u32,
    /// The oldest first.
    pub backups: Vec<BackupKept>,
}

/// What a copy says of someone.
enum Found {
    Holds,
    HoldsNot,
    NotThere,
    Unreadable,
}

/// The copies the program knows of.
///
/// # Errors
/// `Storage`.
pub fn backups(db: &Reading<'_>) -> Result<Backups> {
    let months = months(db)?;
    let mut backups = Vec::new();
    for (path, at) in known(db)? {
        let words = if path.is_file() { "" } else { "It is not there any more." };
        backups.push(kept(db.today(), months, path, at, words));
    }
    Ok(Backups { months, backups })
}

/// The copies that hold a student, or may.
///
/// # Errors
/// `Storage`.
pub(super) fn holding(db: &Reading<'_>, student: StudentId) -> Result<Backups> {
    let months = months(db)?;
    let mut backups = Vec::new();
    for (path, at) in known(db)? {
        let words = match look_into(&path, student) {
            Found::HoldsNot => continue,
            Found::Holds => "It holds this person.",
            Found::NotThere => {
                "It is not where it was put. If it was moved, it may hold this person."
            }
            Found::Unreadable => "It could not be looked into. It may hold this person.",
        };
        backups.push(kept(db.today(), months, path, at, words));
    }
    Ok(Backups { months, backups })
}

fn kept(today: Day, months: u32, path: PathBuf, at: Instant, words: &str) -> BackupKept {
    let made = Day::from_date(at.utc().date_naive()).unwrap_or(Day::EPOCH);
    let lapses = made.plus_months(months);
    BackupKept { path, made, lapses, late: lapses < today, words: words.to_owned() }
}

/// Every copy: those the coach made, and those the program put beside the file.
fn known(db: &Reading<'_>) -> Result<Vec<(PathBuf, Instant)>> {
    let noted = store::backups(db)?;
    let mut known: Vec<(PathBuf, Instant)> =
        noted.into_iter().map(|(path, at)| (PathBuf::from(path), at)).collect();
    for (path, at) in db.path().map(beside).unwrap_or_default() {
        if !known.iter().any(|(there, _)| *there == path) {
            known.push((path, at));
        }
    }
    known.sort_by(|a, b| (a.1, &a.0).cmp(&(b.1, &b.0)));
    Ok(known)
}

/// What the program itself put beside a file: before a restore, before a newer schema.
fn beside(file: &Path) -> Vec<(PathBuf, Instant)> {
    let (Some(folder), Some(name)) = (file.parent(), file.file_name()) else { return Vec::new() };
    let begins = format!("{}.before-", name.to_string_lossy());
    let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
    let copies = entries.flatten().filter(|entry| {
        let name = entry.file_name().to_string_lossy().into_owned();
        name.starts_with(&begins) && !name.ends_with(".lock")
    });
    copies
        .filter_map(|entry| {
            let at = entry.metadata().ok()?.modified().ok()?;
            Some((entry.path(), Instant::from_chrono(&chrono::DateTime::<chrono::Utc>::from(at))))
        })
        .collect()
}

fn look_into(path: &Path, student: StudentId) -> Found {
    if !path.is_file() {
        return Found::NotThere;
    }
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY
        | OpenFlags::SQLITE_OPEN_URI
        | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let holds = Connection::open_with_flags(as_uri(path), flags).and_then(|copy| {
        copy.query_row("SELECT EXISTS (SELECT 1 FROM student WHERE id = ?)", [student], |row| {
            row.get::<_, bool>(0)
        })
    });
    match holds {
        Ok(true) => Found::Holds,
        Ok(false) => Found::HoldsNot,
        Err(_) => Found::Unreadable,
    }
}

/// The path as a URI of SQLite that leaves the file and its folder as they are.
fn as_uri(path: &Path) -> String {
    let path = path.to_string_lossy().replace('\\', "/");
    let mut uri = if path.starts_with('/') { "file:".to_owned() } else { "file:///".to_owned() };
    for byte in path.bytes() {
        if byte.is_ascii_alphanumeric() || b"/-_.~:".contains(&byte) {
            uri.push(char::from(byte));
        } else {
            let _ = write!(uri, "%{byte:02X}");
        }
    }
    uri + "?immutable=1"
}

fn months(db: &Reading<'_>) -> Result<u32> {
    let kept = settings::kept::<KeepBackups>(db, SETTING)?;
    Ok(kept.and_then(|kept| u32::try_from(kept.months).ok()).unwrap_or(MONTHS))
}

/// Says how long backups are kept. The program tells the day; it deletes none.
///
/// # Errors
/// `Refused` when it is no number of months.
pub fn keep_backups_for(db: &Writing<'_>, keep: KeepBackups) -> Result<Backups> {
    let mut p = Problems::new();
    p.within_bounds("months", keep.months, 1, 120, "The number of months");
    p.done()?;
    settings::keep(db, SETTING, &keep)?;
    db.label(format!("Backups are kept for {} months", keep.months));
    backups(db)
}

/// Where the coach's own backups were put, and when.
///
/// # Errors
/// `Storage`.
pub fn made(db: &Reading<'_>) -> Result<Vec<(String, Instant)>> {
    store::backups(db)
}

/// Notes that a backup is made. It is no act of the journal.
///
/// # Errors
/// `Storage`.
pub fn note_backup(db: &Writing<'_>, path: &Path) -> Result<()> {
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    store::note_backup(db, &path.to_string_lossy(), db.now())
}

/// Takes a note back: the backup was not made after all.
///
/// # Errors
/// `Storage`.
pub fn forget_backup(db: &Writing<'_>, path: &Path) -> Result<()> {
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    store::forget_backup(db, &path.to_string_lossy())
}

/// Notes backups that another state of the file knew of: a restore must not forget them.
///
/// # Errors
/// `Storage`.
pub fn note_backups(db: &Writing<'_>, backups: &[(String, Instant)]) -> Result<()> {
    backups.iter().try_for_each(|(path, at)| store::note_backup(db, path, *at))
}
