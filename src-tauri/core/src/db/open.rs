//! Opening a coach file: one writer at a time, guarded by an operating-system lock on a file beside
//! it, and never a change to a file that is not ours or is from a newer version.

use std::ffi::OsString;
use std::fs::{File, OpenOptions, TryLockError};
use std::io::Read;
use std::path::{Path, PathBuf};

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags};

use super::{backup, migrate};
use crate::error::{Error, Result};

/// An open coach file: a connection that writes, one that only reads, and the lock beside it. They
/// are closed in this order: the last to close moves everything from the log beside the file into
/// the file, which the one that only reads could not do; and the lock goes last of all.
pub struct Opened {
    /// Only reads: opened so that SQLite itself refuses a write.
    pub reader: Connection,
    /// Writes; foreign keys on, WAL, every commit on disk before it is acknowledged.
    pub writer: Connection,
    /// Where it is.
    pub path: PathBuf,
    _lock: File,
}

/// Opens a coach file, bringing it to the newest schema after a verified backup.
///
/// # Errors
/// `NotFound`, `Storage` when the file or its folder cannot be used, `InUse`, `NotACoachFile`,
/// `NewerFile`.
pub fn open(path: &Path) -> Result<Opened> {
    if !path.is_file() {
        return Err(Error::NotFound { what: "coach file", id: path.display().to_string() });
    }
    let lock = lock(path)?;
    look_before_touching(path)?;
    let writer = connect(path)?;
    let schema = migrate::version(&writer)?;
    if schema < migrate::newest() {
        let keep = beside(path, &format!(".before-schema-{}", migrate::newest()));
        backup::to_new_file(&writer, &keep)?;
        migrate::up_to(&writer, migrate::newest())?;
    }
    let reader = read_only(path)?;
    Ok(Opened { reader, writer, path: path.to_owned(), _lock: lock })
}

/// Makes an empty coach file: whole beside its place first, then given its name.
///
/// # Errors
/// `Storage` when a file of that name exists or the folder cannot be written.
pub fn create(path: &Path) -> Result<()> {
    if path.exists() {
        return Err(Error::storage(
            "Making the coach file",
            std::io::Error::from(std::io::ErrorKind::AlreadyExists),
        ));
    }
    let making = beside(path, ".making");
    let _ = std::fs::remove_file(&making);
    let made = make(&making).and_then(|()| {
        // A hard link refuses to replace a file that came into being meanwhile; a rename would not.
        std::fs::hard_link(&making, path)
            .or_else(|e| {
                if e.kind() == std::io::ErrorKind::AlreadyExists || path.exists() {
                    Err(e)
                } else {
                    std::fs::rename(&making, path)
                }
            })
            .map_err(|e| Error::storage("Making the coach file", e))
    });
    let _ = std::fs::remove_file(&making);
    made
}

fn make(path: &Path) -> Result<()> {
    let conn = Connection::open(path)?;
    conn.execute_batch("PRAGMA synchronous = FULL")?;
    migrate::up_to(&conn, migrate::newest())?;
    conn.close().map_err(|(_, e)| e.into())
}

/// The path with something added to its file name.
pub fn beside(path: &Path, more: &str) -> PathBuf {
    let mut name = path.file_name().map_or_else(OsString::new, ToOwned::to_owned);
    name.push(more);
    path.with_file_name(name)
}

/// Takes the lock beside the file, or says who has it.
fn lock(path: &Path) -> Result<File> {
    let file = OpenOptions::new()
        .create(true)
        .truncate(false)
        .write(true)
        .open(beside(path, ".lock"))
        .map_err(|e| Error::storage("Opening the coach file", e))?;
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => Err(Error::InUse(path.to_owned())),
        Err(TryLockError::Error(e)) => Err(Error::storage("Opening the coach file", e)),
    }
}

/// Reads the first hundred bytes and refuses what is not ours, so that nothing foreign is changed.
/// The offsets are those of the SQLite file format: the magic string at 0, `user_version` at 60,
/// `application_id` at 68, all big-endian.
fn look_before_touching(path: &Path) -> Result<()> {
    let mut head = [0_u8; 100];
    let read = File::open(path).and_then(|mut file| file.read_exact(&mut head));
    if let Err(e) = read {
        return Err(if e.kind() == std::io::ErrorKind::UnexpectedEof {
            Error::NotACoachFile(path.to_owned())
        } else {
            Error::storage("Opening the coach file", e)
        });
    }
    let number =
        |at: usize| i32::from_be_bytes([head[at], head[at + 1], head[at + 2], head[at + 3]]);
    if &head[..16] != b"SQLite format 3\0" || number(68) != migrate::APPLICATION {
        return Err(Error::NotACoachFile(path.to_owned()));
    }
    let file = i64::from(number(60));
    if file > migrate::newest() {
        return Err(Error::NewerFile { path: path.to_owned(), file, program: migrate::newest() });
    }
    Ok(())
}

fn connect(path: &Path) -> Result<Connection> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let conn = Connection::open_with_flags(path, flags)?;
    keep_statements(&conn)?;
    conn.execute_batch(
        "PRAGMA journal_mode = WAL;
         PRAGMA synchronous = FULL;
         PRAGMA foreign_keys = ON;
         PRAGMA trusted_schema = OFF;
         PRAGMA cell_size_check = ON;",
    )?;
    // A journal mode that stayed as it was means that the folder cannot be written.
    let mode: String = conn.query_row("PRAGMA journal_mode", [], |row| row.get(0))?;
    if mode != "wal" {
        return Err(Error::storage(
            "Opening the coach file",
            std::io::Error::from(std::io::ErrorKind::ReadOnlyFilesystem),
        ));
    }
    Ok(conn)
}

/// Keeps prepared statements, and their plans whatever is bound to them. This build of SQLite has
/// STAT4 and would otherwise prepare many a statement anew each time it is run, to see whether the
/// new values make for a better plan; we never ANALYZE, so there is none.
fn keep_statements(conn: &Connection) -> Result<()> {
    conn.set_prepared_statement_cache_capacity(256);
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    Ok(())
}

fn read_only(path: &Path) -> Result<Connection> {
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let conn = Connection::open_with_flags(path, flags)?;
    keep_statements(&conn)?;
    conn.execute_batch("PRAGMA trusted_schema = OFF")?;
    Ok(conn)
}
