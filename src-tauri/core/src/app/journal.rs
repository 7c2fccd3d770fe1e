//! The journal: each act with what it wrote. Its rows are only ever added, and each is chained to
//! the one before, so that a change to it is found.

use rusqlite::fallible_streaming_iterator::FallibleStreamingIterator;
use rusqlite::hooks::Action;
use rusqlite::session::ChangesetIter;
use rusqlite::{Connection, Row, params};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::Instant;
use crate::kinds::ids::ActId;

/// One row that an act wrote.
#[derive(Clone, Debug)]
pub struct RowWritten {
    /// Its table.
    pub table: String,
    /// Its id.
    pub id: String,
    /// `insert`, `update` or `delete`.
    pub how: &'static str,
    /// The digest of the row as written; `None` for a row that went.
    pub digest: Option<String>,
}

/// A row of the journal, as a check reads it.
pub struct Entry {
    /// Its place.
    pub seq: i64,
    /// The act.
    pub id: String,
    /// The chain it carries.
    pub chain: String,
    /// The act that erased its label and changes; `None` while it is whole.
    pub erased: Option<Erased>,
    head: String,
    rows: String,
}

/// What is left to check of a row of the journal that was erased: its own digest, which the erasing
/// act wrote down. What it said cannot be told any more, so neither can its chain be made again; the
/// row after it is chained to the one it carries all the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Erased {
    /// The act that erased it.
    pub by: String,
    /// The digest of the row as it stands.
    pub digest: String,
}

/// The table under which an erasing act lists the rows of the journal that it erased.
pub const JOURNAL: &str = "journal";

/// What is shown in place of a label that was erased.
const ERASED: &str = "Erased with a person\u{2019}s record";

/// A line of history.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Act {
    /// The act.
    pub id: ActId,
    /// The command, as in `goals.touch`.
    pub act: String,
    /// What it did, in words.
    pub label: String,
    /// When it was recorded.
    pub at: Instant,
    /// Whether Undo is offered: it did not leave the program, and was not undone yet.
    pub undoable: bool,
    /// Whether it was undone since.
    pub undone: bool,
}

impl Entry {
    /// The chain this row should carry after a row with the chain `before`, unless it was erased.
    pub fn chained_to(&self, before: &str) -> String {
        chain(before, &self.head, &self.rows)
    }

    /// The rows the act wrote.
    ///
    /// # Errors
    /// `Fault` when the stored list cannot be read.
    pub fn written(&self) -> Result<Vec<RowWritten>> {
        let rows: Vec<(String, String, String, Option<String>)> =
            serde_json::from_str(&self.rows).map_err(|e| Error::Fault(e.to_string()))?;
        rows.into_iter()
            .map(|(table, id, how, digest)| {
                Ok(RowWritten { table, id, how: how_named(&how)?, digest })
            })
            .collect()
    }
}

fn how_named(how: &str) -> Result<&'static str> {
    ["insert", "update", "delete"]
        .into_iter()
        .find(|known| *known == how)
        .ok_or_else(|| Error::Fault(format!("the journal says {how:?} of a row")))
}

fn chain(before: &str, head: &str, rows: &str) -> String {
    digest::sha256(format!("{before}\n{head}\n{rows}").as_bytes())
}

/// What of a journal row the chain covers besides the list of rows. The changeset stands for itself
/// by its digest, so that personal data in it could be erased without breaking the chain.
fn head(
    id: &str,
    act: &str,
    label: &str,
    at: &str,
    honest: bool,
    undoes: Option<&str>,
    changes: &[u8],
) -> String {
    let changes = digest::sha256(changes);
    format!("{id}\n{act}\n{label}\n{at}\n{honest}\n{}\n{changes}", undoes.unwrap_or(""))
}

/// Adds the act that is being written to the journal.
///
/// # Errors
/// `Storage`.
pub(super) fn add(
    db: &Writing<'_>,
    act: &str,
    changeset: &[u8],
    undoes: Option<ActId>,
) -> Result<(ActId, Vec<RowWritten>)> {
    let rows = rows_of(db, changeset)?;
    let id = db.id();
    append(db, id, act, &rows, changeset, undoes)?;
    Ok((id, rows))
}

/// Adds an act whose changes are not kept.
///
/// # Errors
/// `Storage`.
pub(super) fn add_without_changes(
    db: &Writing<'_>,
    id: ActId,
    act: &str,
    rows: &[RowWritten],
) -> Result<()> {
    append(db, id, act, rows, &[], None)
}

fn append(
    db: &Writing<'_>,
    id: ActId,
    act: &str,
    rows: &[RowWritten],
    changeset: &[u8],
    undoes: Option<ActId>,
) -> Result<()> {
    let list: Vec<_> = rows.iter().map(|r| (&r.table, &r.id, r.how, &r.digest)).collect();
    let list = serde_json::to_string(&list).map_err(|e| Error::Fault(e.to_string()))?;
    let label = db.label.borrow();
    let (at, undoes) = (db.now.to_string(), undoes.map(|id| id.to_string()));
    let last = db.one("SELECT seq, chain FROM journal ORDER BY seq DESC LIMIT 1", [], |row| {
        Ok((row.get::<_, i64>("seq")?, row.get::<_, String>("chain")?))
    })?;
    let (seq, before) = last.map_or((1, String::new()), |(seq, chain)| (seq + 1, chain));
    let head =
        head(&id.to_string(), act, &label, &at, db.honest.get(), undoes.as_deref(), changeset);
    db.execute(
        "INSERT INTO journal (seq, id, act, label, at, rows, changes, honest, undoes, chain)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            seq,
            id,
            act,
            *label,
            at,
            list,
            changeset,
            db.honest.get(),
            undoes,
            chain(&before, &head, &list)
        ],
    )?;
    Ok(())
}

/// The rows in a changeset, each with the digest of what is stored now.
pub(super) fn rows_of(db: &Reading<'_>, changeset: &[u8]) -> Result<Vec<RowWritten>> {
    let mut rows = Vec::new();
    let mut input = changeset;
    let input: &mut dyn std::io::Read = &mut input;
    let mut changes = ChangesetIter::start_strm(&input)?;
    while let Some(change) = changes.next()? {
        let operation = change.op()?;
        let table = operation.table_name().to_owned();
        let how = match operation.code() {
            Action::SQLITE_INSERT => "insert",
            Action::SQLITE_UPDATE => "update",
            _ => "delete",
        };
        // The primary key is each table's first column, its id.
        let id = match how {
            "insert" => change.new_value(0)?,
            _ => change.old_value(0)?,
        };
        let id = id.as_str().map_err(|e| Error::Fault(e.to_string()))?.to_owned();
        let digest = if how == "delete" { None } else { digest_now(db, &table, &id)? };
        rows.push(RowWritten { table, id, how, digest });
    }
    Ok(rows)
}

/// Takes the label and the changes out of a row of the journal, and gives what is to be written down
/// of it. The triggers let nothing else of the row change, and no other row.
///
/// # Errors
/// `Storage`.
pub(super) fn erase(db: &Writing<'_>, id: &str, by: ActId) -> Result<RowWritten> {
    db.execute(
        "UPDATE journal SET erased = ?, label = '', changes = x'' WHERE id = ?",
        params![by, id],
    )?;
    let digest = digest_now(db, JOURNAL, id)?;
    Ok(RowWritten { table: JOURNAL.to_owned(), id: id.to_owned(), how: "update", digest })
}

fn digest_now(db: &Reading<'_>, table: &str, id: &str) -> Result<Option<String>> {
    let mut row = db.conn.prepare_cached(&format!("SELECT * FROM \"{table}\" WHERE id = ?"))?;
    let mut row = row.query([id])?;
    row.next()?.map(|row| digest::of_row(table, row)).transpose()
}

/// Hands each row of the journal, first to last, to `look`.
///
/// # Errors
/// `Storage`, and those of `look`.
pub fn walk(conn: &Connection, mut look: impl FnMut(&Entry) -> Result<()>) -> Result<()> {
    let mut rows = conn.prepare(
        // All columns: the digest of an erased row covers each of them.
        "SELECT * FROM journal ORDER BY seq",
    )?;
    // A file is checked before it is brought to this schema, too.
    let can_be_erased = rows.column_names().any(|name| name == "erased");
    let mut rows = rows.query([])?;
    while let Some(row) = rows.next()? {
        let undoes: Option<String> = row.get("undoes")?;
        let head = head(
            &row.get::<_, String>("id")?,
            &row.get::<_, String>("act")?,
            &row.get::<_, String>("label")?,
            &row.get::<_, String>("at")?,
            row.get("honest")?,
            undoes.as_deref(),
            &row.get::<_, Vec<u8>>("changes")?,
        );
        let erased = match if can_be_erased { row.get("erased")? } else { None } {
            Some(by) => Some(Erased { by, digest: digest::of_row(JOURNAL, row)? }),
            None => None,
        };
        look(&Entry {
            seq: row.get("seq")?,
            id: row.get("id")?,
            chain: row.get("chain")?,
            erased,
            head,
            rows: row.get("rows")?,
        })?;
    }
    Ok(())
}

/// The newest acts, newest first; those that undid another are shown as the other's being undone.
///
/// # Errors
/// `Storage`.
pub fn newest(db: &Reading<'_>, most: u32) -> Result<Vec<Act>> {
    db.all(
        "SELECT id, act, label, at, honest, erased,
                EXISTS (SELECT 1 FROM journal u WHERE u.undoes = journal.id) AS undone
         FROM journal WHERE undoes IS NULL ORDER BY seq DESC LIMIT ?",
        [most],
        act_of,
    )
}

fn act_of(row: &Row<'_>) -> rusqlite::Result<Act> {
    let (honest, undone): (bool, bool) = (row.get("honest")?, row.get("undone")?);
    let erased = row.get::<_, Option<String>>("erased")?.is_some();
    Ok(Act {
        id: row.get("id")?,
        act: row.get("act")?,
        label: if erased { ERASED.to_owned() } else { row.get("label")? },
        at: row.get("at")?,
        undoable: honest && !undone && !erased,
        undone,
    })
}

/// A stretch of the past of some rows.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Past {
    /// The acts, newest first.
    pub acts: Vec<Act>,
    /// Where to look on for older ones; `None` at the beginning of the file.
    pub further: Option<i64>,
}

/// So many acts are looked through at a time.
const LOOK: u32 = 2_000;

/// The acts that wrote any of these rows, or a row that names the thing itself (one that was undone
/// is gone from its table), newest first, those before `before` if it is given. Single tries are
/// left out: each stands in its block. At most [`LOOK`] acts are looked through.
///
/// # Errors
/// `Storage`; `Fault` when a stored list cannot be read.
pub fn touching(
    db: &Reading<'_>,
    thing: &str,
    rows: &std::collections::HashSet<String>,
    before: Option<i64>,
    most: u32,
) -> Result<Past> {
    let looked = db.all(
        "SELECT seq, id, act, label, at, honest, erased, rows, instr(changes, CAST(? AS BLOB)) > 0 AS named,
                EXISTS (SELECT 1 FROM journal u WHERE u.undoes = journal.id) AS undone
         FROM journal WHERE act <> 'goals.touch' AND undoes IS NULL AND seq < ?
         ORDER BY seq DESC LIMIT ?",
        params![thing, before.unwrap_or(i64::MAX), LOOK],
        |row| {
            let (named, list): (bool, String) = (row.get("named")?, row.get("rows")?);
            Ok((row.get::<_, i64>("seq")?, act_of(row)?, named, list))
        },
    )?;
    let whole = looked.len() < LOOK as usize;
    let mut further = looked.last().map(|(seq, ..)| *seq).filter(|_| !whole);
    let mut acts = Vec::new();
    for (seq, act, named, list) in looked {
        let written: Vec<(String, String, String, Option<String>)> =
            serde_json::from_str(&list).map_err(|e| Error::Fault(e.to_string()))?;
        if !named && !written.iter().any(|(_, id, _, _)| rows.contains(id)) {
            continue;
        }
        acts.push(act);
        if acts.len() >= most as usize {
            further = Some(seq);
            break;
        }
    }
    Ok(Past { acts, further })
}
