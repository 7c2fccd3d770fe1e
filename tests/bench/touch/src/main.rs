//! Times a touch counted by the program, through its command table until it is committed, beside a
//! bare insert of one row with the same durability, turn by turn in one process. Prints one JSON
//! value; takes the folder to work in.
//!
//! Both files lie in one folder, in WAL with `synchronous = FULL`, on the same build of SQLite. The
//! bare row holds the values of the program's own row, in a table with neither index nor key.

use std::error::Error;
use std::path::Path;
use std::time::Instant;

use carryover_core::app::CoachFile;
use carryover_core::commands::call;
use rusqlite::{Connection, params};
use serde_json::{Value, json};

type Result<T> = std::result::Result<T, Box<dyn Error>>;

const WARM_UP: usize = 30;
const ROUNDS: usize = 500;
/// Touches to a block; then the next block is started, which is not timed.
const BLOCK: usize = 20;

fn main() -> Result<()> {
    let within = std::env::args().nth(1).ok_or("name the folder to work in")?;
    let folder = tempfile::tempdir_in(within)?;
    let mut court = Court::ready(&folder.path().join("touch.carryover"))?;
    let bare = bare(&folder.path().join("bare.db"))?;
    let mut insert =
        bare.prepare("INSERT INTO try (id, block, place, made) VALUES (?, ?, ?, ?)")?;

    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    let mut block = String::new();
    for round in 0..WARM_UP + ROUNDS {
        if round % BLOCK == 0 {
            block = court.block()?;
        }
        let made = round % 3 != 0;
        let touch = json!({ "block": block, "made": made });
        let start = Instant::now();
        let counted = call(&mut court.file, "goals.touch", touch)?;
        let ours_took = millis(start);
        let place = counted.value["tries"].as_array().map_or(0, Vec::len);
        assert_eq!(place, round % BLOCK + 1, "the touch was counted");

        let id = counted.act.ok_or("a touch is an act")?.to_string();
        let start = Instant::now();
        insert.execute(params![id, block, i64::try_from(place)?, made])?;
        let theirs_took = millis(start);
        if round >= WARM_UP {
            ours.push(ours_took);
            theirs.push(theirs_took);
        }
    }
    let stored: i64 = bare.query_row("SELECT count(*) FROM try", [], |row| row.get(0))?;
    assert_eq!(usize::try_from(stored)?, WARM_UP + ROUNDS, "each bare row is there");
    assert!(court.file.check()?.sound, "the coach file is sound");

    let (ours, theirs) = (spread(ours), spread(theirs));
    let ratio = ours.median / theirs.median;
    println!(
        "{}",
        json!({
            "ours_ms": { "median": ours.median, "p95": ours.p95 },
            "bare_ms": { "median": theirs.median, "p95": theirs.p95 },
            "ratio": ratio,
            "rounds": ROUNDS,
        })
    );
    Ok(())
}

/// A coach file with a goal at an open visit.
struct Court {
    file: CoachFile,
    goal: String,
    visit: String,
}

impl Court {
    fn ready(path: &Path) -> Result<Self> {
        CoachFile::create(path)?;
        let mut file = CoachFile::open(path)?;
        let today = file.today();
        let mut act = |name: &str, input: Value, at: &str| -> Result<String> {
            let value = call(&mut file, name, input)?.value;
            let id = value.pointer(at).and_then(Value::as_str);
            Ok(id.ok_or_else(|| format!("{name} gave no {at}: {value}"))?.to_owned())
        };
        let hall =
            act("facilities.add", json!({ "name": "Hall", "zone": "Europe/Lisbon" }), "/id")?;
        let student = act("students.add", json!({ "name": "Ana" }), "/id")?;
        let visit = act(
            "visits.plan",
            json!({ "student": student, "facility": hall, "first_day": today, "last_day": today }),
            "/id",
        )?;
        call(&mut file, "visits.open", json!({ "visit": visit }))?;
        let goal = json!({
            "student": student, "visit": visit, "title": "Lob serve", "condition": "fed",
            "counts": "result", "need": 8, "of": 10, "cue": "Lift",
        });
        let goal = call(&mut file, "goals.set", goal)?.value["goal"]["id"]
            .as_str()
            .ok_or("a goal has an id")?
            .to_owned();
        Ok(Self { file, goal, visit })
    }

    /// Starts a block; the one before is ended.
    fn block(&mut self) -> Result<String> {
        let block = json!({ "goal": self.goal, "visit": self.visit, "kind": "practice" });
        let block = call(&mut self.file, "goals.start_block", block)?.value;
        Ok(block["id"].as_str().ok_or("a block has an id")?.to_owned())
    }
}

fn bare(path: &Path) -> Result<Connection> {
    let bare = Connection::open(path)?;
    bare.execute_batch(
        "PRAGMA journal_mode = WAL;
         PRAGMA synchronous = FULL;
         CREATE TABLE try (id TEXT NOT NULL, block TEXT NOT NULL, place INTEGER NOT NULL, made INTEGER NOT NULL) STRICT;",
    )?;
    Ok(bare)
}

fn millis(since: Instant) -> f64 {
    since.elapsed().as_secs_f64() * 1000.0
}

struct Spread {
    median: f64,
    p95: f64,
}

fn spread(mut took: Vec<f64>) -> Spread {
    took.sort_by(f64::total_cmp);
    Spread { median: took[took.len() / 2], p95: took[took.len() * 95 / 100] }
}
