//! Backups: a copy made while the file is in use, checked before it gets its name.

use std::path::{Path, PathBuf};

use rusqlite::Connection;
use rusqlite::backup::Backup;
use schemars::JsonSchema;
use serde::Serialize;

use super::{check, open};
use crate::error::{Error, Result};
use crate::kinds::Clock;

/// A copy that was made and verified.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BackedUp {
    /// Where the copy is.
    pub path: PathBuf,
    /// SHA-256 of all its rows; the same as the original's.
    pub content: String,
}

/// What a restore did.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Restored {
    /// Where the file that was there before now is; `None` if there was none.
    pub kept: Option<PathBuf>,
    /// SHA-256 of all rows of the restored file.
    pub content: String,
}

/// Copies the open file to `to`, which must not exist, and verifies the copy: sound, and with the
/// same content. A copy that fails is removed.
///
/// # Errors
/// `Storage` when `to` exists or cannot be written; `NotPossible` when the copy is not sound,
/// which means that the original is not.
pub fn to_new_file(from: &Connection, to: &Path) -> Result<BackedUp> {
    if to.exists() {
        return Err(Error::storage(
            "Making the backup",
            std::io::Error::from(std::io::ErrorKind::AlreadyExists),
        ));
    }
    let making = open::beside(to, ".making");
    let _ = std::fs::remove_file(&making);
    let made = copy(from, &making).and_then(|content| {
        std::fs::rename(&making, to).map_err(|e| Error::storage("Making the backup", e))?;
        Ok(BackedUp { path: to.to_owned(), content })
    });
    let _ = std::fs::remove_file(&making);
    made
}

fn copy(from: &Connection, to: &Path) -> Result<String> {
    let mut conn = Connection::open(to).map_err(|e| Error::storage("Making the backup", e))?;
    Backup::new(from, &mut conn)
        .and_then(|run| run.run_to_completion(1000, std::time::Duration::ZERO, None))
        .map_err(|e| Error::storage("Making the backup", e))?;
    conn.execute_batch("PRAGMA journal_mode = DELETE")?;
    let found = check::look(&conn)?;
    let same = check::look(from)?.content == found.content;
    conn.close().map_err(|(_, e)| Error::from(e))?;
    if !found.sound || !same {
        return Err(Error::not_possible(
            "not_sound",
            "The backup was not made: the coach file has damage that a copy would carry on. Run a check to see where.",
        ));
    }
    Ok(found.content)
}

/// Puts a verified backup in the place of `path`; what was there is kept beside it under a new
/// name. The file must not be open anywhere.
///
/// # Errors
/// `InUse`, `NotACoachFile`, `NewerFile`, `NotPossible` when the backup is not sound, `Storage`.
pub fn restore(path: &Path, from: &Path, clock: &dyn Clock) -> Result<Restored> {
    let backup = open::open(from)?;
    let found = check::look(&backup.reader)?;
    if !found.sound {
        return Err(Error::not_possible(
            "not_sound",
            "Nothing was restored: this backup is damaged. Choose an older one.",
        ));
    }
    let coming = open::beside(path, ".coming");
    let _ = std::fs::remove_file(&coming);
    to_new_file(&backup.writer, &coming)?;
    let failed = |e| Error::storage("Restoring the backup", e);
    let kept = if path.exists() {
        drop(open_to_settle(path)?);
        let kept = open::beside(path, &format!(".before-restore-{}", stamp(clock)));
        std::fs::rename(path, &kept).map_err(failed)?;
        Some(kept)
    } else {
        None
    };
    for leftover in ["-wal", "-shm"] {
        let _ = std::fs::remove_file(open::beside(path, leftover));
    }
    std::fs::rename(&coming, path).map_err(failed)?;
    Ok(Restored { kept, content: found.content })
}

/// Opens a file once so that what stands in its write-ahead log is in the file itself. A damaged
/// file is set aside as it is: that is what a restore is for.
fn open_to_settle(path: &Path) -> Result<Option<open::Opened>> {
    match open::open(path) {
        Ok(opened) => Ok(Some(opened)),
        Err(e @ (Error::InUse(_) | Error::NewerFile { .. })) => Err(e),
        Err(_) => Ok(None),
    }
}

/// The instant, fit for a file name.
pub fn stamp(clock: &dyn Clock) -> String {
    clock.now().utc().format("%Y%m%d-%H%M%S").to_string()
}
