//! Checking a coach file: SQLite's own integrity, keys, the schema, and every row against the
//! digest the journal kept when it was written.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::Connection;
use schemars::JsonSchema;
use serde::Serialize;

use super::{digest, migrate};
use crate::app::journal::{self, Erased, JOURNAL};
use crate::error::Result;

/// What a check found.
#[derive(Debug, Serialize, JsonSchema)]
pub struct Checked {
    /// Nothing wrong was found.
    pub sound: bool,
    /// SHA-256 of all rows: tables by name, rows by primary key, columns as declared.
    pub content: String,
    /// The schema the file has.
    pub schema: i64,
    /// How many acts the journal holds.
    pub acts: i64,
    /// How many rows were compared with their digests.
    pub rows: u64,
    /// What is wrong, in words; empty when sound.
    pub wrong: Vec<String>,
}

/// Looks at everything; changes nothing.
///
/// # Errors
/// `Storage` when the file cannot be read at all.
pub fn look(conn: &Connection) -> Result<Checked> {
    let mut wrong = Vec::new();
    let mut integrity = conn.prepare("PRAGMA integrity_check(20)")?;
    let said: Vec<String> =
        integrity.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    wrong.extend(
        said.into_iter()
            .filter(|line| line != "ok")
            .map(|line| format!("the database says: {line}")),
    );
    let mut keys = conn.prepare("PRAGMA foreign_key_check")?;
    let mut broken = keys.query([])?;
    while let Some(row) = broken.next()? {
        let (table, parent): (String, String) = (row.get(0)?, row.get(2)?);
        wrong.push(format!("a row of {table} names a {parent} that is not there"));
    }
    let schema = migrate::version(conn)?;
    if schema == migrate::newest() && schema_of(conn)? != golden()? {
        wrong.push("the tables are not those of this version".to_owned());
    }
    let (acts, rows) = compare_rows(conn, &mut wrong)?;
    Ok(Checked {
        sound: wrong.is_empty(),
        content: digest::of_everything(conn)?,
        schema,
        acts,
        rows,
        wrong,
    })
}

/// Walks the journal, then compares each row it names with what is stored now.
fn compare_rows(conn: &Connection, wrong: &mut Vec<String>) -> Result<(i64, u64)> {
    let mut expected: BTreeMap<(String, String), Option<String>> = BTreeMap::new();
    let mut erasures: BTreeMap<String, Erased> = BTreeMap::new();
    let mut erased: BTreeMap<String, (i64, Erased)> = BTreeMap::new();
    let mut acts = 0;
    let mut before = String::new();
    journal::walk(conn, |entry| {
        acts += 1;
        if entry.seq != acts {
            wrong.push(format!("act {acts} is missing from the journal"));
            acts = entry.seq;
        }
        if let Some(by) = &entry.erased {
            erased.insert(entry.id.clone(), (entry.seq, by.clone()));
        } else if entry.chained_to(&before) != entry.chain {
            wrong.push(format!("act {} in the journal was altered", entry.seq));
        }
        before.clone_from(&entry.chain);
        match entry.written() {
            Ok(rows) => {
                for row in rows {
                    match row.digest {
                        Some(digest) if row.table == JOURNAL => {
                            erasures.insert(row.id, Erased { by: entry.id.clone(), digest });
                        }
                        digest => {
                            expected.insert((row.table, row.id), digest);
                        }
                    }
                }
            }
            Err(_) => wrong.push(format!("act {} in the journal cannot be read", entry.seq)),
        }
        Ok(())
    })?;
    for (id, (seq, found)) in &erased {
        if erasures.get(id) != Some(found) {
            wrong.push(format!("act {seq} in the journal was erased, and altered since"));
        }
    }
    if erasures.keys().any(|id| !erased.contains_key(id)) {
        wrong.push("an act in the journal that was erased is there again".to_owned());
    }
    // A file is checked before it is brought to the schema that has this table, too.
    if conn.table_exists(Some("main"), "erasing")? {
        let open: i64 = conn.query_row("SELECT count(*) FROM erasing", [], |row| row.get(0))?;
        if open > 0 {
            wrong.push("an erasing stands open".to_owned());
        }
    }
    let mut compared = 0;
    for table in digest::tables(conn)?.iter().filter(|t| *t != "journal") {
        let mut seen = BTreeSet::new();
        let mut rows = conn.prepare(&format!("SELECT * FROM \"{table}\""))?;
        let mut rows = rows.query([])?;
        while let Some(row) = rows.next()? {
            let id: String = row.get("id")?;
            compared += 1;
            let written = expected.get(&(table.clone(), id.clone())).cloned().flatten();
            match written {
                None => wrong.push(format!("{table} {id} is stored, but no act wrote it")),
                Some(written) if written != digest::of_row(table, row)? => {
                    wrong.push(format!("{table} {id} is not what was written"));
                }
                Some(_) => {}
            }
            seen.insert(id);
        }
        let lost = expected
            .iter()
            .filter(|((t, id), digest)| t == table && digest.is_some() && !seen.contains(id));
        wrong.extend(lost.map(|((t, id), _)| format!("{t} {id} was written, but is gone")));
    }
    Ok((acts, compared))
}

/// The schema as SQLite keeps it, one statement a paragraph, by type and name.
///
/// # Errors
/// `Storage` when the file cannot be read.
pub fn schema_of(conn: &Connection) -> Result<String> {
    let mut all = conn.prepare(
        "SELECT sql || ';' FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY type, name",
    )?;
    let all: Vec<String> = all.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    Ok(all.join("\n\n") + "\n")
}

/// The schema a new file gets.
fn golden() -> Result<String> {
    let conn = Connection::open_in_memory()?;
    migrate::up_to(&conn, migrate::newest())?;
    schema_of(&conn)
}
