//! Coach files as released programs wrote them, never made again: each opens in this program, is
//! brought to its schema, is sound, and still says what it said.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

use std::path::{Path, PathBuf};

use carryover_core::app::CoachFile;
use carryover_core::commands::{call, catch_up, check};
use serde_json::{Value, json};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("files")
}

fn read(file: &mut CoachFile, name: &str, input: Value) -> Value {
    call(file, name, input).unwrap().value
}

/// The id at the start of a thing.
fn id(of: &Value) -> &str {
    of["id"].as_str().unwrap()
}

/// What a coach would miss: people, their goals with where they stand and why, every block, every
/// lesson, every letter by its digest. Only what each later version must still say.
fn said(file: &mut CoachFile) -> Value {
    let mut people = Vec::new();
    for student in read(file, "students.list", json!({})).as_array().unwrap() {
        let goals: Vec<Value> = read(file, "goals.list", json!({ "student": id(student) }))
            .as_array()
            .unwrap()
            .iter()
            .map(|listed| {
                let g = read(file, "goals.show", json!({ "goal": listed["goal"]["id"] }));
                let blocks = g["blocks"].as_array().unwrap().iter();
                json!({
                    "title": g["goal"]["title"],
                    "state": g["standing"]["state"],
                    "why": g["standing"]["why"],
                    "blocks": blocks
                        .map(|b| json!([b["day"], b["kind"], b["count"]["made"], b["count"]["tries"]]))
                        .collect::<Vec<_>>(),
                })
            })
            .collect();
        let visits: Vec<Value> = read(file, "visits.list", json!({ "student": id(student) }))
            .as_array()
            .unwrap()
            .iter()
            .map(|v| json!([v["days"], v["stage"], v["place"]]))
            .collect();
        let mut person = json!({ "name": student["name"], "goals": goals, "visits": visits });
        let of = json!({ "student": id(student) });
        let levels: Vec<Value> = read(file, "assessments.list", of.clone())
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|a| a["levels"].as_array().unwrap())
            .map(|l| json!([l["skill"], l["level"], l["basis"]]))
            .collect();
        let tests: Vec<Value> = read(file, "assessments.tests", of)
            .as_array()
            .unwrap()
            .iter()
            .map(|t| json!([t["test"], t["total"]]))
            .collect();
        // Files from before there were any say nothing of them.
        for (name, all) in [("levels", levels), ("tests", tests)] {
            if !all.is_empty() {
                person[name] = json!(all);
            }
        }
        people.push(person);
    }
    let lessons = read(file, "lessons.list", json!({}));
    let lessons: Vec<Value> = lessons
        .as_array()
        .unwrap()
        .iter()
        .map(|l| json!([l["day"], l["starts"], l["state"]]))
        .collect();
    let mut letters = Vec::new();
    for line in read(file, "letters.list", json!({})).as_array().unwrap() {
        if let Some(letter) = line["letter"].as_str() {
            let shown = read(file, "letters.show", json!({ "letter": letter }));
            letters.push(json!([line["name"], shown["sha256"], shown["bytes"]]));
        }
    }
    let mut said = json!({ "people": people, "lessons": lessons, "letters": letters });
    for (name, all) in [("own time", own_time(file)), ("courts", courts(file))] {
        if !all.is_empty() {
            said[name] = json!(all);
        }
    }
    said
}

/// What takes the coach's time besides lessons.
fn own_time(file: &mut CoachFile) -> Vec<Value> {
    let busy = read(file, "own_time.list", json!({ "over": true }));
    busy.as_array().unwrap().iter().map(|b| json!([b["busy"]["what"], b["words"]])).collect()
}

/// The courts that were asked for.
fn courts(file: &mut CoachFile) -> Vec<Value> {
    let listed = read(file, "bookings.list", json!({ "from": "2000-01-01" }));
    let asked = listed.as_array().unwrap().iter().filter(|c| c["booking"].is_object());
    asked.map(|c| json!([c["day"], c["starts"], c["booking"]["state"]])).collect()
}

#[test]
fn every_released_file_opens_is_brought_up_and_still_says_what_it_said() {
    let mut seen = 0;
    for entry in std::fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|ending| ending != "carryover") {
            continue;
        }
        seen += 1;
        let place = tempfile::tempdir().unwrap();
        let own = place.path().join("own.carryover");
        std::fs::copy(&path, &own).unwrap();
        let mut file = CoachFile::open(&own).unwrap();
        catch_up(&mut file).unwrap();
        let checked = check(&file).unwrap();
        assert!(checked.sound, "{}: {:?}", path.display(), checked.wrong);
        let now = said(&mut file);
        assert!(now["letters"].as_array().is_some_and(|l| !l.is_empty()), "a file worth keeping");
        let then = std::fs::read_to_string(path.with_extension("json")).unwrap_or_default();
        let then: Value = serde_json::from_str(&then).unwrap_or_default();
        assert!(
            now == then,
            "{} says something else now. If that is right, this is what it says:\n{}",
            path.display(),
            serde_json::to_string_pretty(&now).unwrap()
        );
        // It is no museum: work goes on in it.
        let added = call(&mut file, "students.add", json!({ "name": "Zoë" })).unwrap();
        call(&mut file, "journal.undo", json!({ "act": added.act })).unwrap();
        assert!(check(&file).unwrap().sound);
    }
    assert!(seen > 0, "there are files to open");
}
