//! What a shell sees on a bad day: a full disk, a folder that cannot be written, a pulled plug, two
//! programs at one file.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

use std::io::Write;
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::Duration;

use carryover_core::app::CoachFile;
use carryover_core::commands::call;
use serde_json::{Value, json};

const CLI: &str = env!("CARGO_BIN_EXE_carryover-cli");

/// Runs a command line to its end with an input; gives its exit code, its one value and its words.
fn run(command: &mut Command, input: &Value) -> (i32, Value, String) {
    let mut child = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // One that refuses before it reads has closed its end; its answer is what counts.
    let _ = child.stdin.take().unwrap().write_all(input.to_string().as_bytes());
    let out = child.wait_with_output().unwrap();
    let text = String::from_utf8(out.stdout).unwrap();
    let value = serde_json::from_str(&text).unwrap_or_else(|_| panic!("one JSON value: {text:?}"));
    (out.status.code().unwrap(), value, String::from_utf8(out.stderr).unwrap())
}

fn act(file: &Path, name: &str, input: Value) -> (i32, Value, String) {
    run(Command::new(CLI).arg("--file").arg(file).args(["call", name]), &input)
}

fn names(file: &Path) -> Vec<String> {
    let (code, answer, _) = act(file, "students.list", json!({ "most": 1000 }));
    assert_eq!(code, 0);
    let listed = answer["value"].as_array().unwrap().iter();
    listed.map(|s| s["name"].as_str().unwrap().to_owned()).collect()
}

/// Runs the command line where no file may grow past so many half kilobytes: what the program sees
/// is a write that the system refuses, as on a full disk.
fn on_a_full_disk(half_kilobytes: u64, file: &Path, name: &str) -> Command {
    let mut shell = Command::new("sh");
    shell
        .args(["-c", "trap '' XFSZ; ulimit -f \"$1\"; shift; exec \"$@\"", "sh"])
        .arg(half_kilobytes.to_string())
        .args([CLI, "--file"])
        .arg(file)
        .args(["call", name]);
    shell
}

#[test]
fn a_full_disk_refuses_in_words_and_keeps_what_was_acknowledged() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("own.carryover");
    CoachFile::create(&file).unwrap();
    let room = std::fs::metadata(&file).unwrap().len() / 512 + 600;
    let note = "A".repeat(8_000);
    let mut kept = Vec::new();
    let refused = loop {
        assert!(kept.len() < 100, "the disk is full some time");
        let name = format!("Student {:02}", kept.len());
        let input = json!({ "name": name, "about": note });
        let (code, answer, words) = run(&mut on_a_full_disk(room, &file, "students.add"), &input);
        if code != 0 {
            break (code, answer["error"]["code"].as_str().unwrap().to_owned(), words);
        }
        kept.push(name);
    };
    assert!(!kept.is_empty(), "some fitted; {refused:?}");
    assert_eq!((refused.0, refused.1.as_str()), (5, "storage"));
    assert!(refused.2.contains("full") || refused.2.contains("disk"), "{}", refused.2);
    // There is room again: what was acknowledged is there, nothing else, and the work goes on.
    assert_eq!(names(&file), kept);
    let checked = run(Command::new(CLI).arg("--file").arg(&file).arg("check"), &Value::Null);
    assert_eq!((checked.0, &checked.1["sound"]), (0, &json!(true)));
    assert_eq!(act(&file, "students.add", json!({ "name": "Zoë" })).0, 0);
}

/// Runs the command line as one who may only read what lies in the folder: root may write anywhere.
fn as_a_stranger(folder: &Path, arguments: &[&str]) -> Command {
    let own = folder.join("carryover-cli");
    if !own.exists() {
        std::fs::copy(CLI, &own).unwrap();
        std::fs::set_permissions(&own, PermissionsExt::from_mode(0o755)).unwrap();
        std::fs::set_permissions(folder, PermissionsExt::from_mode(0o555)).unwrap();
    }
    let root = Command::new("id").arg("-u").output().unwrap().stdout == b"0\n";
    let mut command = if root {
        let mut command = Command::new("setpriv");
        command.args(["--reuid=65534", "--regid=65534", "--clear-groups"]).arg(own);
        command
    } else {
        Command::new(own)
    };
    command.args(arguments);
    command
}

#[test]
fn a_folder_that_cannot_be_written_is_named_as_such_and_nothing_changes() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("own.carryover");
    CoachFile::create(&file).unwrap();
    assert_eq!(act(&file, "students.add", json!({ "name": "Ana" })).0, 0);
    std::fs::remove_file(folder.path().join("own.carryover.lock")).unwrap();
    std::fs::set_permissions(&file, PermissionsExt::from_mode(0o444)).unwrap();
    let before = std::fs::read(&file).unwrap();
    let path = file.to_str().unwrap();
    let mut call = as_a_stranger(folder.path(), &["--file", path, "call", "students.list"]);
    let (code, answer, words) = run(&mut call, &Value::Null);
    assert_eq!((code, &answer["error"]["code"]), (5, &json!("storage")), "{words}");
    assert!(words.contains("writ"), "{words}");
    let new = folder.path().join("new.carryover");
    let mut sample = as_a_stranger(folder.path(), &["sample", new.to_str().unwrap()]);
    let (code, _, words) = run(&mut sample, &Value::Null);
    assert_eq!(code, 5);
    assert!(words.contains("writ"), "{words}");
    std::fs::set_permissions(folder.path(), PermissionsExt::from_mode(0o755)).unwrap();
    assert!(!new.exists());
    assert_eq!(std::fs::read(&file).unwrap(), before);
}

#[test]
fn a_killed_sample_leaves_no_file_or_a_shorter_sound_one() {
    let folder = tempfile::tempdir().unwrap();
    let (mut shorter, mut none) = (0, 0);
    for (n, after) in [5, 20, 60, 120, 250, 400, 600].into_iter().enumerate() {
        let file = folder.path().join(format!("{n}.carryover"));
        let mut child = Command::new(CLI)
            .args(["sample", file.to_str().unwrap(), "--years", "6"])
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        sleep(Duration::from_millis(after));
        child.kill().unwrap();
        let killed = !child.wait().unwrap().success();
        if !file.exists() {
            none += 1;
            continue;
        }
        shorter += u32::from(killed);
        let (code, checked, _) =
            run(Command::new(CLI).arg("--file").arg(&file).arg("check"), &Value::Null);
        assert_eq!((code, &checked["sound"]), (0, &json!(true)), "after {after} ms");
        assert_eq!(act(&file, "students.add", json!({ "name": "Zoë" })).0, 0);
    }
    assert!(shorter > 0, "at least one was caught half-way ({none} before there was a file)");
}

#[test]
fn a_file_that_is_open_elsewhere_or_not_there_has_its_own_code() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("own.carryover");
    let (code, answer, _) = act(&file, "students.list", Value::Null);
    assert_eq!((code, &answer["error"]["code"]), (3, &json!("not_found")));
    CoachFile::create(&file).unwrap();
    let mut open = CoachFile::open(&file).unwrap();
    call(&mut open, "students.add", json!({ "name": "Ana" })).unwrap();
    let (code, answer, words) = act(&file, "students.add", json!({ "name": "Ben" }));
    assert_eq!((code, &answer["error"]["code"]), (4, &json!("in_use")), "{words}");
    drop(open);
    assert_eq!(names(&file), ["Ana"]);
}
