//! From a CSV file to a letter on disk, from a shell.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

use std::path::Path;
use std::process::{Command, Stdio};

use serde_json::{Value, json};

/// Runs the command line and gives its exit code and its one JSON value.
fn run(file: &Path, arguments: &[&str], input: &Value) -> (i32, Value) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_carryover-cli"))
        .arg("--file")
        .arg(file)
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    // Only `call` reads its input; the other verbs may have ended before it is written.
    let _ = serde_json::to_writer(child.stdin.take().unwrap(), input);
    let out = child.wait_with_output().unwrap();
    let text = String::from_utf8(out.stdout).unwrap();
    assert!(text.ends_with('\n') && text.trim().lines().count() == 1, "one value: {text}");
    (out.status.code().unwrap(), serde_json::from_str(&text).unwrap())
}

const SEASON: &str = "Name;Arrived;Left;Goal;When;Result\n\
    Ana Silva;2025-04-03;2025-04-05;Drive serve;end;8 of 10\n\
    Anna Silva;2025-09-14;2025-09-16;Drive serve;start;9/10\n\
    Ana Silva;2025-11-14;;Drive serve;end;80%\n";

#[test]
fn a_season_comes_in_and_its_letter_goes_to_disk() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("own.carryover");
    let csv = folder.path().join("season.csv");
    std::fs::write(&csv, SEASON).unwrap();
    carryover_core::app::CoachFile::create(&file).unwrap();
    let csv = csv.to_str().unwrap();

    let (code, answer) = run(&file, &["import", csv], &Value::Null);
    assert_eq!((code, &answer["error"]["problems"][0]["field"]), (2, &json!("--facility")));
    let hall = json!({ "name": "Harbour Hall", "zone": "Europe/Dublin" });
    assert_eq!(run(&file, &["call", "facilities.add"], &hall).0, 0);
    let (_, seen) = run(&file, &["import", csv, "--look"], &Value::Null);
    assert_eq!(seen["value"]["near"][0]["other"], "Anna Silva");
    let (_, none) = run(&file, &["call", "students.list"], &Value::Null);
    assert_eq!(none["value"], json!([]), "looking takes nothing");

    let same = r#"{"Anna Silva":"Ana Silva"}"#;
    let (code, taken) = run(&file, &["import", csv, "--same", same], &Value::Null);
    assert_eq!(code, 0);
    assert_eq!(taken["value"]["lines"], json!([2, 3]));
    assert_eq!(taken["value"]["not_taken"][0]["line"], 4);
    let (_, students) = run(&file, &["call", "students.list"], &Value::Null);
    assert_eq!(students["value"].as_array().unwrap().len(), 1);

    let student = &students["value"][0]["id"];
    let (_, visits) = run(&file, &["call", "visits.list"], &json!({ "student": student }));
    let visit = visits["value"][1]["id"].as_str().unwrap();
    let letter = folder.path().join("letter.pdf");
    let to = letter.to_str().unwrap();
    let (code, refused) = run(&file, &["letter", "--visit", visit, to], &Value::Null);
    assert_eq!((code, &refused["error"]["problems"][0]["code"]), (2, &json!("not_issued")));
    assert!(!letter.exists());
    let (code, written) = run(&file, &["letter", "--visit", visit, "--issue", to], &Value::Null);
    assert_eq!(code, 0);
    let bytes = std::fs::read(&letter).unwrap();
    assert_eq!((written["bytes"].as_u64(), &bytes[..5]), (Some(bytes.len() as u64), &b"%PDF-"[..]));
    assert_eq!(
        run(&file, &["letter", "--visit", visit, to], &Value::Null).0,
        2,
        "never written over"
    );
    let again = folder.path().join("again.pdf");
    let (code, _) =
        run(&file, &["letter", "--visit", visit, again.to_str().unwrap()], &Value::Null);
    assert_eq!((code, std::fs::read(again).unwrap()), (0, bytes), "byte for byte");
    let (code, missing) = run(&file, &["import", "nowhere.csv"], &Value::Null);
    assert_eq!((code, &missing["error"]["code"]), (3, &json!("not_found")));
}
