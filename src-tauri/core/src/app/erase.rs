//! Erasing: the one exception to "nothing is deleted but marked". All rows of one person go, or some
//! that are named, and with them everything the journal kept of them, so that not a byte is left in
//! the file.
//!
//! **What goes** follows from the foreign keys alone ([`Belonging`]), so a new table is covered by its
//! references. A row goes when a reference leads to a row that goes; one that names the person outright
//! goes whether that reference may be NULL or not. Any other reference that may be NULL is only loosened
//! where the row belongs to someone else as well (a line of a shared lesson's plan). A parent that several people can share, named in [`HELD`], goes when all who hold it go.
//!
//! **Triggers that refuse** to change or delete a row let an erasing through, and nothing else, by
//! asking whether exactly this row stands in the table `erasing`:
//!
//! ```sql
//! CREATE TRIGGER incident_sealed_keeps BEFORE DELETE ON incident
//!   WHEN OLD.sealed IS NOT NULL
//!    AND NOT EXISTS (SELECT 1 FROM erasing WHERE kind = 'incident' AND id = OLD.id)
//!   BEGIN SELECT RAISE(ABORT, 'a sealed report is never deleted'); END;
//! ```
//!
//! An erasing writes there what goes and what is loosened, and empties it before the journal row of
//! the act is written, all in one transaction; outside it the table is empty, which `check` looks at.
//! A trigger on UPDATE needs the exception only if the table has a reference that can be loosened.
//!
//! **The journal** keeps its rows, their ids and digests, and its chain. An act that wrote a row of
//! the person loses its label and its changes as a whole, also when it wrote rows of others (a plan
//! taken for six students): a changeset cannot be cut and still be the one its digest is of. What the
//! others' rows hold now stays untouched and checked; only the undo and the words of that act are
//! lost. The erasing act lists the digest of each row of the journal that it erased, so that `check`
//! still finds a change to one; its own changes are never stored.
//!
//! **Free pages** are zeroed as rows go (`secure_delete`), and the file is written anew afterwards, its
//! log emptied. What the disk itself keeps of blocks it gave back is out of a program's reach.

mod belonging;
mod images;

use std::cell::{Cell, RefCell};
use std::collections::BTreeSet;

use rusqlite::Connection;
use rusqlite::session::Session;

pub use belonging::{Belonging, HELD, Loosened, owners, tables_of};

use super::journal::{self, RowWritten};
use super::{Change, CoachFile, Reading, Writing, Written};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::ids::ActId;

/// What is to be erased.
pub struct Erasing<'a> {
    /// The act, as in `students.erase`.
    pub act: &'a str,
    /// What history calls it: nothing that names the person.
    pub label: &'a str,
    /// The rows that everything belongs to, each with its table and id.
    pub roots: Vec<(&'a str, String)>,
    /// Names, folded, that someone else bears too: an act that only names one of them is left whole.
    pub spared: BTreeSet<String>,
}

/// What an erasing did.
pub struct Done<T> {
    /// What the act itself gave back, the act, and what changed.
    pub written: Written<T>,
    /// How many rows went.
    pub rows: usize,
    /// How many acts in the journal lost their label and changes.
    pub acts: usize,
    /// Whether the file was written anew as well. If not (a full disk), [`CoachFile::clear`] does it
    /// later; until then free pages may hold what was erased long before.
    pub cleared: bool,
}

impl CoachFile {
    /// Erases. `prepare` sees what belongs and may write what is to stay; `finish` comes when the rows
    /// are gone, for what is derived from them. All of it is done, or nothing.
    ///
    /// # Errors
    /// Those of `prepare` and `finish`, and `Storage`.
    pub fn erase<T>(
        &mut self,
        what: Erasing<'_>,
        prepare: impl FnOnce(&Writing<'_>, &Belonging) -> Result<T>,
        finish: impl FnOnce(&Writing<'_>) -> Result<()>,
    ) -> Result<Done<T>> {
        careful(&self.opened.writer, true)?;
        let done = self.erase_carefully(what, prepare, finish);
        careful(&self.opened.writer, false)?;
        let mut done = done?;
        done.cleared = self.clear().is_ok();
        Ok(done)
    }

    fn erase_carefully<T>(
        &mut self,
        what: Erasing<'_>,
        prepare: impl FnOnce(&Writing<'_>, &Belonging) -> Result<T>,
        finish: impl FnOnce(&Writing<'_>) -> Result<()>,
    ) -> Result<Done<T>> {
        let tx = self.opened.writer.unchecked_transaction()?;
        let mut session = Session::new(&tx)?;
        session.table_filter(Some(|table: &str| {
            table != journal::JOURNAL && !digest::DERIVED.contains(&table)
        }));
        session.attach::<&str>(None)?;
        let db = Writing {
            reading: Reading { conn: &tx, today: self.clock.today(), clock: self.clock.as_ref() },
            now: self.clock.now(),
            ids: self.ids.as_ref(),
            label: RefCell::new(what.label.to_owned()),
            honest: Cell::new(false),
        };
        let belonging = Belonging::of_all(&db, &what.roots)?;
        let images = images::naming(&db, &what, &belonging)?;
        let value = prepare(&db, &belonging)?;
        let act: ActId = db.id();
        take_out(&db, &belonging)?;
        finish(&db)?;
        let mut changeset = Vec::new();
        session.changeset_strm(&mut changeset)?;
        let mut rows: Vec<RowWritten> = journal::rows_of(&db, &changeset)?;
        let mut changes: Vec<Change> =
            rows.iter().map(|r| Change { kind: r.table.clone(), id: r.id.clone() }).collect();
        changes.sort();
        changes.dedup();
        for id in &images {
            name(&db, journal::JOURNAL, id)?;
            rows.push(journal::erase(&db, id, act)?);
        }
        db.execute("DELETE FROM erasing", [])?;
        db.execute("INSERT INTO uncleared (act) VALUES (?)", [act])?;
        journal::add_without_changes(&db, act, what.act, &rows)?;
        drop(session);
        tx.commit()?;
        Ok(Done {
            written: Written { value, act: Some(act), changes },
            rows: belonging.count(),
            acts: images.len(),
            cleared: false,
        })
    }

    /// Writes the file anew where an erasing has not come to that yet, so that no free page and no log
    /// beside it holds what was there before. It changes no row.
    ///
    /// # Errors
    /// `Storage`, as on a full disk; it stays to be done then.
    pub fn clear(&mut self) -> Result<()> {
        let conn = &self.opened.writer;
        let due: bool =
            conn.query_row("SELECT EXISTS (SELECT 1 FROM uncleared)", [], |row| row.get(0))?;
        if !due {
            return Ok(());
        }
        conn.execute_batch("VACUUM")?;
        empty_log(conn)?;
        conn.execute("DELETE FROM uncleared", [])?;
        empty_log(conn)
    }
}

/// Moves the whole log beside the file into the file, and leaves it empty.
fn empty_log(conn: &Connection) -> Result<()> {
    let busy: i64 = conn.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get(0))?;
    if busy == 0 {
        return Ok(());
    }
    Err(Error::storage(
        "Clearing the coach file",
        std::io::Error::from(std::io::ErrorKind::WouldBlock),
    ))
}

/// While it is on, what is deleted is overwritten with zeros, and nothing goes into a temporary file.
/// It is off otherwise, because a touch would pay for it.
fn careful(conn: &Connection, on: bool) -> Result<()> {
    let (secure, temporary) = if on { ("ON", "MEMORY") } else { ("OFF", "DEFAULT") };
    let batch = format!("PRAGMA secure_delete = {secure}; PRAGMA temp_store = {temporary}");
    conn.execute_batch(&batch)?;
    Ok(())
}

/// Writes down that a row goes, for the triggers that refuse it otherwise.
fn name(db: &Writing<'_>, table: &str, id: &str) -> Result<()> {
    db.execute("INSERT OR IGNORE INTO erasing (kind, id) VALUES (?, ?)", [table, id])?;
    Ok(())
}

fn take_out(db: &Writing<'_>, belonging: &Belonging) -> Result<()> {
    // Rows that refer to each other go in any order; the keys are all looked at when it is committed.
    db.execute("PRAGMA defer_foreign_keys = ON", [])?;
    for (table, ids) in belonging.rows() {
        for id in ids {
            name(db, table, id)?;
        }
    }
    for loose in belonging.loosened() {
        name(db, &loose.table, &loose.id)?;
        let sql =
            format!("UPDATE \"{}\" SET \"{}\" = NULL WHERE id = ?", loose.table, loose.column);
        db.execute(&sql, [&loose.id])?;
    }
    for (table, ids) in belonging.rows() {
        let sql = format!("DELETE FROM \"{table}\" WHERE id = ?");
        for id in ids {
            if db.execute(&sql, [id])? != 1 {
                return Err(Error::Fault(format!("{table} {id} was not deleted")));
            }
        }
    }
    Ok(())
}
