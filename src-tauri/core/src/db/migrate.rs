//! Bringing a coach file to the newest schema. Migrations are only ever added: each is a numbered
//! file in `migrations/`, its checksum is committed, and `PRAGMA user_version` counts those done.
//!
//! Foreign keys are off while a migration runs (switched off before BEGIN: inside a transaction the
//! switch does nothing, and rebuilding a parent table with them on deletes its children); every key
//! is checked before COMMIT.

use rusqlite::Connection;

use crate::error::{Error, Result};

/// Marks a SQLite file as a coach file (`PRAGMA application_id`): "CARR" in ASCII.
pub const APPLICATION: i32 = 0x4341_5252;

/// One step of the schema.
pub struct Migration {
    /// Its file's name.
    pub name: &'static str,
    /// What it does.
    pub sql: &'static str,
}

macro_rules! migrations {
    ($($name:literal),+ $(,)?) => {
        /// Every step, in order; a file at schema n has had the first n.
        pub const MIGRATIONS: &[Migration] = &[$(Migration {
            name: $name,
            sql: include_str!(concat!("../../../../migrations/", $name)),
        }),+];
    };
}

migrations![
    "0001_ground.sql",
    "0002_people_and_places.sql",
    "0003_goals_visits_lessons.sql",
    "0004_letters.sql",
    "0005_evidence.sql",
    "0006_standing.sql",
    "0007_visits_by_end.sql",
    "0008_facility_rules.sql",
    "0009_booking.sql",
    "0010_calendars.sql",
    "0011_before_court.sql",
    "0012_costs.sql",
    "0013_clearance_seen.sql",
    "0014_money.sql",
    "0015_more_money.sql",
    "0016_out_tray.sql",
];

/// The newest schema this program knows.
pub fn newest() -> i64 {
    i64::try_from(MIGRATIONS.len()).unwrap_or(i64::MAX)
}

/// The schema a file has.
pub fn version(conn: &Connection) -> Result<i64> {
    Ok(conn.query_row("PRAGMA user_version", [], |row| row.get(0))?)
}

/// Brings the file from its schema up to `target`. Each step is all or nothing; a step that fails
/// leaves the file as it was before that step.
pub fn up_to(conn: &Connection, target: i64) -> Result<()> {
    conn.execute_batch("PRAGMA foreign_keys = OFF")?;
    let done = steps(conn, target);
    conn.execute_batch("PRAGMA foreign_keys = ON")?;
    done
}

fn steps(conn: &Connection, target: i64) -> Result<()> {
    let from = version(conn)?;
    for (number, step) in (1..).zip(MIGRATIONS).filter(|(n, _)| (from + 1..=target).contains(n)) {
        let tx = conn.unchecked_transaction()?;
        tx.execute_batch(step.sql)?;
        let broken: Option<String> = {
            let mut check = tx.prepare("PRAGMA foreign_key_check")?;
            let mut rows = check.query([])?;
            rows.next()?.map(|row| row.get(0)).transpose()?
        };
        if let Some(table) = broken {
            return Err(Error::Fault(format!("{} leaves a broken key in {table}", step.name)));
        }
        tx.pragma_update(None, "application_id", APPLICATION)?;
        tx.pragma_update(None, "user_version", number)?;
        tx.commit()?;
    }
    Ok(())
}
