//! Digests of rows. SQLite's own integrity check misses most single flipped bits in stored values;
//! the digest of each row written, kept in the journal, is what finds them.

use rusqlite::types::ValueRef;
use rusqlite::{Connection, Row};
use sha2::{Digest, Sha256};

use crate::error::Result;

/// Adds one value: a letter for its type, its length, its bytes.
fn add(hash: &mut Sha256, value: ValueRef<'_>) {
    let mut put = |kind: u8, bytes: &[u8]| {
        hash.update([kind]);
        hash.update((bytes.len() as u64).to_be_bytes());
        hash.update(bytes);
    };
    match value {
        ValueRef::Null => put(b'n', &[]),
        ValueRef::Integer(i) => put(b'i', &i.to_be_bytes()),
        ValueRef::Real(r) => put(b'r', &r.to_be_bytes()),
        ValueRef::Text(t) => put(b't', t),
        ValueRef::Blob(b) => put(b'b', b),
    }
}

/// The digest of one row: its table, then each column that is not NULL by name and value, in the
/// order of the columns. NULLs are left out, so that a column added later with no value changes
/// nothing. Half of SHA-256 (128 bits) in hexadecimal.
pub fn of_row(table: &str, row: &Row<'_>) -> Result<String> {
    let mut hash = Sha256::new();
    hash.update(table.as_bytes());
    let columns = row.as_ref();
    for i in 0..columns.column_count() {
        let value = row.get_ref(i)?;
        if value != ValueRef::Null {
            hash.update([0]);
            hash.update(columns.column_name(i)?.as_bytes());
            add(&mut hash, value);
        }
    }
    Ok(hex(&hash.finalize()[..16]))
}

/// SHA-256, in hexadecimal, of all rows of all tables but the derived ones: tables by name, rows by
/// their first column (the primary key), columns as declared.
pub fn of_everything(conn: &Connection) -> Result<String> {
    let mut hash = Sha256::new();
    for table in tables(conn)? {
        hash.update(table.as_bytes());
        let mut rows = conn.prepare(&format!("SELECT * FROM \"{table}\" ORDER BY 1"))?;
        let width = rows.column_count();
        let mut rows = rows.query([])?;
        while let Some(row) = rows.next()? {
            hash.update([b'|']);
            for i in 0..width {
                add(&mut hash, row.get_ref(i)?);
            }
        }
    }
    Ok(hex(&hash.finalize()))
}

/// Tables that hold what is derived from the others, or what was found outside and can be read there
/// again, or what only an erasing under way and the copies of the file are about: no act writes them,
/// so nothing is digested. The bytes of messages are here too: a digested row beside them holds their
/// own digest, and so they are not kept in the journal a second time.
pub const DERIVED: [&str; 11] = [
    "backup_made",
    "calendar_entry",
    "erasing",
    "message_bytes",
    "own_calendar_known",
    "own_calendar_part",
    "own_calendar_time",
    "standing",
    "standing_due",
    "standing_move",
    "uncleared",
];

/// The program's tables, by name, those of [`DERIVED`] left out.
pub fn tables(conn: &Connection) -> Result<Vec<String>> {
    let mut names = conn.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )?;
    let names = names.query_map([], |row| row.get(0))?;
    let names: Vec<String> = names.collect::<rusqlite::Result<_>>()?;
    Ok(names.into_iter().filter(|name| !DERIVED.contains(&name.as_str())).collect())
}

/// SHA-256 of some bytes, in hexadecimal.
pub fn sha256(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

fn hex(bytes: &[u8]) -> String {
    use std::fmt::Write;
    bytes.iter().fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}
