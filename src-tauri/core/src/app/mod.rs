//! The open coach file and its one door for writes: a named act runs in one transaction, writes its
//! journal row in that same transaction, and answers with the set of things that changed.

pub mod erase;
pub mod journal;
mod undo;

use std::cell::{Cell, RefCell};
use std::ops::Deref;
use std::path::Path;
use std::sync::Arc;

use rusqlite::session::Session;
use rusqlite::{Connection, Params, Row};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use undo::Undone;

use crate::db::open::{self, Opened};
use crate::db::{backup, check, digest};
use crate::error::{Error, Result};
use crate::kinds::ids::ActId;
use crate::kinds::{Clock, Day, Ids, Instant, RandomIds, SystemClock};

/// Something that changed: its kind (the glossary's noun) and its id.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
pub struct Change {
    /// The noun, as in "goal".
    pub kind: String,
    /// Which one.
    pub id: String,
}

/// What an act gave back, and what it changed.
#[derive(Debug)]
pub struct Written<T> {
    /// The act's own answer.
    pub value: T,
    /// The act in the journal; `None` when nothing changed.
    pub act: Option<ActId>,
    /// The things that changed, each once.
    pub changes: Vec<Change>,
}

/// An open coach file.
pub struct CoachFile {
    opened: Opened,
    clock: Arc<dyn Clock>,
    ids: Arc<dyn Ids>,
}

/// A reading: sees one moment of the file and cannot write.
pub struct Reading<'a> {
    conn: &'a Connection,
    today: Day,
    clock: &'a dyn Clock,
}

/// A write in progress: everything a reading can, and more.
pub struct Writing<'a> {
    reading: Reading<'a>,
    now: Instant,
    ids: &'a dyn Ids,
    label: RefCell<String>,
    honest: Cell<bool>,
}

impl CoachFile {
    /// Opens a coach file with the machine's clock.
    ///
    /// # Errors
    /// As [`open::open`].
    pub fn open(path: &Path) -> Result<Self> {
        Self::open_with(path, Arc::new(SystemClock), Arc::new(RandomIds::default()))
    }

    /// Opens a coach file with a clock and ids that are passed in.
    ///
    /// # Errors
    /// As [`open::open`].
    pub fn open_with(path: &Path, clock: Arc<dyn Clock>, ids: Arc<dyn Ids>) -> Result<Self> {
        Ok(Self { opened: open::open(path)?, clock, ids })
    }

    /// Makes an empty coach file.
    ///
    /// # Errors
    /// As [`open::create`].
    pub fn create(path: &Path) -> Result<()> {
        open::create(path)
    }

    /// Where the file is.
    pub fn path(&self) -> &Path {
        &self.opened.path
    }

    /// Today on the coach's calendar.
    pub fn today(&self) -> Day {
        self.clock.today()
    }

    /// Reads one moment of the file.
    ///
    /// # Errors
    /// Those of `look`, and `Storage`.
    pub fn read<T>(&self, look: impl FnOnce(&Reading<'_>) -> Result<T>) -> Result<T> {
        let tx = self.opened.reader.unchecked_transaction()?;
        let clock = self.clock.as_ref();
        let value = look(&Reading { conn: &tx, today: clock.today(), clock })?;
        tx.commit()?;
        Ok(value)
    }

    /// Runs an act: all of it is on disk when this returns `Ok`, none of it otherwise. `label` is
    /// what history and Undo call it, unless the act says more exactly.
    ///
    /// # Errors
    /// Those of `write`, and `Storage`.
    pub fn write<T>(
        &mut self,
        act: &str,
        label: &str,
        write: impl FnOnce(&Writing<'_>) -> Result<T>,
    ) -> Result<Written<T>> {
        self.write_undoing(act, label, None, write)
    }

    fn write_undoing<T>(
        &mut self,
        act: &str,
        label: &str,
        undoes: Option<ActId>,
        write: impl FnOnce(&Writing<'_>) -> Result<T>,
    ) -> Result<Written<T>> {
        let conn = &self.opened.writer;
        let tx = conn.unchecked_transaction()?;
        let mut session = Session::new(&tx)?;
        session.table_filter(Some(|table: &str| {
            table != journal::JOURNAL && !digest::DERIVED.contains(&table)
        }));
        session.attach::<&str>(None)?;
        let writing = Writing {
            reading: Reading { conn: &tx, today: self.clock.today(), clock: self.clock.as_ref() },
            now: self.clock.now(),
            ids: self.ids.as_ref(),
            label: RefCell::new(label.to_owned()),
            honest: Cell::new(true),
        };
        let value = write(&writing)?;
        let (changes, act) = if session.is_empty() {
            (Vec::new(), None)
        } else {
            let mut changeset = Vec::new();
            session.changeset_strm(&mut changeset)?;
            let (act, rows) = journal::add(&writing, act, &changeset, undoes)?;
            let mut changes: Vec<Change> =
                rows.into_iter().map(|row| Change { kind: row.table, id: row.id }).collect();
            changes.sort();
            changes.dedup();
            (changes, Some(act))
        };
        drop(session);
        tx.commit()?;
        Ok(Written { value, act, changes })
    }

    /// Checks the whole file.
    ///
    /// # Errors
    /// As [`check::look`].
    pub fn check(&self) -> Result<check::Checked> {
        check::look(&self.opened.reader)
    }

    /// Makes a verified copy at `to`.
    ///
    /// # Errors
    /// As [`backup::to_new_file`].
    pub fn backup(&self, to: &Path) -> Result<backup::BackedUp> {
        backup::to_new_file(&self.opened.reader, to)
    }
}

impl Reading<'_> {
    /// The day on the coach's own calendar.
    pub fn today(&self) -> Day {
        self.today
    }

    /// Now.
    pub fn now(&self) -> Instant {
        self.clock.now()
    }

    /// The connection itself, for what is asked of the schema.
    pub(crate) fn connection(&self) -> &Connection {
        self.conn
    }

    /// Where the file is; nothing of one that is only in memory.
    pub fn path(&self) -> Option<&Path> {
        self.conn.path().filter(|path| !path.is_empty()).map(Path::new)
    }

    /// One row, or `None`.
    ///
    /// # Errors
    /// `Storage`.
    pub fn one<T>(
        &self,
        sql: &str,
        params: impl Params,
        map: impl FnOnce(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Option<T>> {
        let mut rows = self.conn.prepare_cached(sql)?;
        let mut rows = rows.query(params)?;
        Ok(rows.next()?.map(map).transpose()?)
    }

    /// One row that must be there.
    ///
    /// # Errors
    /// `NotFound` naming `what`, and `Storage`.
    pub fn found<T>(
        &self,
        what: &'static str,
        id: &dyn std::fmt::Display,
        sql: &str,
        params: impl Params,
        map: impl FnOnce(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<T> {
        self.one(sql, params, map)?.ok_or_else(|| Error::NotFound { what, id: id.to_string() })
    }

    /// All rows.
    ///
    /// # Errors
    /// `Storage`.
    pub fn all<T>(
        &self,
        sql: &str,
        params: impl Params,
        map: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>> {
        let mut rows = self.conn.prepare_cached(sql)?;
        let rows = rows.query_map(params, map)?.collect::<rusqlite::Result<_>>()?;
        Ok(rows)
    }
}

impl<'a> Deref for Writing<'a> {
    type Target = Reading<'a>;

    fn deref(&self) -> &Reading<'a> {
        &self.reading
    }
}

impl Writing<'_> {
    /// When this act is recorded.
    pub fn now(&self) -> Instant {
        self.now
    }

    /// A new id.
    pub fn id<T: From<uuid::Uuid>>(&self) -> T {
        self.ids.next(self.now).into()
    }

    /// Runs one statement; gives how many rows it changed.
    ///
    /// # Errors
    /// `Storage`.
    pub fn execute(&self, sql: &str, params: impl Params) -> Result<usize> {
        Ok(self.reading.conn.prepare_cached(sql)?.execute(params)?)
    }

    /// Says what this act did, for history and Undo: "Lob serve set for Ana Silva".
    pub fn label(&self, words: impl Into<String>) {
        *self.label.borrow_mut() = words.into();
    }

    /// Marks the act as one that left the program (a letter was issued): no Undo is offered.
    pub fn cannot_be_undone(&self) {
        self.honest.set(false);
    }
}
