//! Times the planner: the asks of a real trip's size among those that were solved by another program
//! too, the hardest known case (eight students in town all week, two lessons a day with rest between
//! them, seven hours of lessons a day for the coach), and the check of a line that is moved by hand in
//! the sample season's trip. Prints one JSON value.
//!
//! Takes the file of asks (`tests/outside/plan_optima.jsonl`).

use std::error::Error;
use std::time::Instant;

use carryover_core::app::CoachFile;
use carryover_core::calc::calc;
use carryover_core::commands::call;
use serde_json::{Value, json};

type Result<T> = std::result::Result<T, Box<dyn Error>>;

/// Moves that are checked.
const MOVES: usize = 400;

fn main() -> Result<()> {
    let asks = std::env::args().nth(1).ok_or("name the file of asks")?;
    let mut real = Vec::new();
    for line in std::fs::read_to_string(asks)?.lines() {
        let row: Value = serde_json::from_str(line)?;
        if row["kind"] == "real" {
            real.push(timed(&row["ask"])?.0);
        }
    }
    // By itself before the sample, so that the most memory ever taken is its own.
    let before = most_memory_kib()?;
    let (hard_s, proven) = timed(&hard())?;
    let hard_kib = most_memory_kib()?;
    let moves = moves()?;
    real.sort_by(f64::total_cmp);
    let shown = json!({
        "real": { "asks": real.len(), "median_s": middle(&real, 0.5), "worst_s": middle(&real, 1.0) },
        "hard": {
            "seconds": hard_s, "proven": proven, "most_memory_kib": hard_kib,
            "most_memory_before_kib": before,
        },
        "move_ms": { "median": middle(&moves, 0.5), "p99": middle(&moves, 0.99) },
    });
    println!("{shown}");
    Ok(())
}

/// The seconds a plan took, and whether it was proven.
fn timed(ask: &Value) -> Result<(f64, bool)> {
    let began = Instant::now();
    let plan = calc("plan", ask.clone()).map_err(|e| format!("{e:?}"))?;
    Ok((began.elapsed().as_secs_f64(), plan["proven"] == true))
}

/// Eight students, there from the first hour to the last of five days, two lessons a day each with an
/// hour of rest between; two facilities of two courts; seven hours of lessons a day.
fn hard() -> Value {
    let students: Vec<Value> = (0..8)
        .map(|n| {
            json!({
                "arrive": [0, 480], "depart": [4, 1260], "hours": [480, 1260], "lessons": 10,
                "length": 60, "per_day": 2, "rest": 60, "prefer": [480 + 60 * n, 780 + 60 * n],
                "prefer_court": n % 4, "priority": 1 + n % 2,
            })
        })
        .collect();
    let hours = [[480, 1260]; 5];
    let facility = json!({
        "hours": hours, "peak": [1020, 1260], "longest_run": 180, "day_limit": 420,
        "days_bookable": 5,
    });
    let court = |facility: usize, rate: u32| {
        json!({ "facility": facility, "rate": rate, "peak_rate": rate + 800, "taken": [] })
    };
    json!({
        "grid": 30, "days": 5, "facilities": [facility, facility],
        "courts": [court(0, 2000), court(0, 1800), court(1, 1600), court(1, 1700)],
        "coach": { "busy": [[1, 600, 660], [3, 900, 960]], "travel": 30, "day_limit": 420, "longest_run": 240 },
        "students": students,
    })
}

/// How long the check of a moved line takes, in milliseconds, least first.
fn moves() -> Result<Vec<f64>> {
    let folder = tempfile::tempdir()?;
    let path = folder.path().join("sample.carryover");
    carryover_demo::make_for_window(&path)?;
    let mut file = CoachFile::open(&path)?;
    let today = file.today();
    let plan = json!({ "first": today.plus(12), "last": today.plus(15) });
    let begun = call(&mut file, "planning.begin", json!({ "plan": plan, "wait": 60_000 }))?.value;
    let lines: Vec<Value> = begun["look"]["proposal"]["lines"]
        .as_array()
        .ok_or("a plan of the sample's trip")?
        .iter()
        .map(|line| line["place"].clone())
        .collect();
    let mut took = Vec::new();
    for n in 0..MOVES {
        let mut moved = lines.clone();
        let at = n % moved.len();
        moved[at]["starts"] = json!(format!("{:02}:{:02}", 8 + n % 12, if n % 2 == 0 { 0 } else { 30 }));
        let began = Instant::now();
        let weighed = call(&mut file, "planning.weigh", json!({ "plan": plan, "lines": moved }))?;
        took.push(began.elapsed().as_secs_f64() * 1000.0);
        if weighed.value["lines"].as_array().is_none_or(Vec::is_empty) {
            return Err("a moved plan has its lines".into());
        }
    }
    took.sort_by(f64::total_cmp);
    Ok(took)
}

/// The value that so much of them lie at or below.
fn middle(sorted: &[f64], part: f64) -> f64 {
    let at = (sorted.len() as f64 * part).ceil() as usize;
    sorted.get(at.saturating_sub(1)).copied().unwrap_or(f64::NAN)
}

/// The most memory this process ever had resident, as Linux counts it.
fn most_memory_kib() -> Result<u64> {
    let status = std::fs::read_to_string("/proc/self/status")?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).ok_or("VmHWM")?;
    Ok(line.trim().trim_end_matches(" kB").trim().parse()?)
}
