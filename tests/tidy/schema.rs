//! Migrations are only ever added: each has its checksum, and together they make the schema that is
//! written down.

use carryover_core::app::CoachFile;
use carryover_core::db::check;
use carryover_core::db::migrate::MIGRATIONS;
use rusqlite::Connection;
use sha2::{Digest, Sha256};

use crate::{files_below, read};

fn checksum(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

#[test]
fn no_migration_was_edited() {
    let written = read("migrations/checksums.txt");
    let now: String =
        MIGRATIONS.iter().map(|step| format!("{}  {}\n", checksum(step.sql), step.name)).collect();
    assert_eq!(
        written, now,
        "A released migration stays as it is: add a new one. Only for a migration that is new, write \
         migrations/checksums.txt anew (sha256sum 0*.sql)."
    );
}

#[test]
fn every_migration_file_is_taken_in_order() {
    let files: Vec<String> = files_below("migrations")
        .iter()
        .filter_map(|path| path.strip_prefix("migrations/"))
        .filter(|name| name.starts_with(|c: char| c.is_ascii_digit()))
        .map(str::to_owned)
        .collect();
    let taken: Vec<&str> = MIGRATIONS.iter().map(|step| step.name).collect();
    assert_eq!(files, taken);
}

#[test]
fn the_written_schema_is_the_one_a_new_file_gets() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("new.carryover");
    CoachFile::create(&path).unwrap();
    let now = check::schema_of(&Connection::open(&path).unwrap()).unwrap();
    let written = read("migrations/schema.sql");
    // The comment at its head is the file's own.
    let written: String = written
        .lines()
        .skip_while(|line| line.starts_with("-- "))
        .map(|line| format!("{line}\n"))
        .collect();
    assert_eq!(written.trim(), now.trim(), "migrations/schema.sql should be:\n{now}");
}
