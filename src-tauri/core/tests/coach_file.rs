//! The coach file as a habit of bad days: undo, history, backups, damage, a newer version, a
//! read-only folder, two writers, an interrupted upgrade.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use carryover_core::app::CoachFile;
use carryover_core::commands::{Answer, call};
use carryover_core::db::{backup, migrate};
use carryover_core::error::{Code, Error};
use carryover_core::kinds::{CountedIds, Day, FixedClock};
use serde_json::{Value, json};
use tempfile::TempDir;

struct World {
    folder: TempDir,
    file: CoachFile,
}

impl World {
    fn new() -> Self {
        let folder = TempDir::new().unwrap();
        let path = folder.path().join("world.carryover");
        CoachFile::create(&path).unwrap();
        let file = open(&path).unwrap();
        Self { folder, file }
    }

    fn path(&self) -> PathBuf {
        self.file.path().to_owned()
    }

    fn answer(&mut self, name: &str, input: Value) -> Answer {
        call(&mut self.file, name, input).unwrap_or_else(|e| panic!("{name}: {e}"))
    }

    fn act(&mut self, name: &str, input: Value) -> Value {
        self.answer(name, input).value
    }

    fn refused(&mut self, name: &str, input: Value) -> Error {
        call(&mut self.file, name, input).map(|a| a.value).expect_err("a refusal")
    }
}

fn open(path: &Path) -> Result<CoachFile, Error> {
    let clock = Arc::new(FixedClock::on(Day::of(2026, 3, 12).unwrap()));
    CoachFile::open_with(path, clock, Arc::new(CountedIds::new(7)))
}

fn id(value: &Value, at: &str) -> String {
    value.pointer(at).and_then(Value::as_str).unwrap().to_owned()
}

#[test]
fn an_act_answers_with_what_changed_and_can_be_taken_back() {
    let mut world = World::new();
    let added = world.answer("students.add", json!({ "name": "Ana Silva" }));
    assert_eq!(added.changes.len(), 1);
    assert_eq!(added.changes[0].kind, "student");
    let undone = world.act("journal.undo", json!({ "act": added.act }));
    assert_eq!(undone["label"], "Ana Silva added");
    assert_eq!(world.act("students.list", json!({})), json!([]));
    let again = world.refused("journal.undo", json!({ "act": added.act }));
    assert_eq!(again.code(), Code::NotPossible, "an act is undone once");
    assert!(world.file.check().unwrap().sound);
}

#[test]
fn an_act_that_others_lean_on_is_not_taken_back() {
    let mut world = World::new();
    let place = world.answer("facilities.add", json!({ "name": "Hall", "zone": "Europe/Lisbon" }));
    let facility = id(&place.value, "/id");
    world.act("facilities.add_court", json!({ "facility": facility, "name": "Court 1" }));
    let refused = world.refused("journal.undo", json!({ "act": place.act }));
    assert_eq!(refused.code(), Code::NotPossible);
    assert_eq!(world.act("facilities.list", json!({})).as_array().unwrap().len(), 1);
    // A later change of the same row stands in the way too, and undoing in turn works.
    let change = |name: &str| json!({ "facility": facility, "place": { "name": name, "zone": "Europe/Lisbon" } });
    let first = world.answer("facilities.change", change("Hall A"));
    let second = world.answer("facilities.change", change("Hall B"));
    assert!(call(&mut world.file, "journal.undo", json!({ "act": first.act })).is_err());
    world.act("journal.undo", json!({ "act": second.act }));
    world.act("journal.undo", json!({ "act": first.act }));
    assert_eq!(
        world.act("facilities.show", json!({ "facility": facility }))["place"]["name"],
        "Hall"
    );
    assert!(world.file.check().unwrap().sound);
}

#[test]
fn a_refusal_names_every_field_and_writes_nothing() {
    let mut world = World::new();
    let Error::Refused(problems) = world.refused(
        "students.add",
        json!({ "name": " ", "born": "2030-02-30", "email": "x", "zone": "Mars/Olympus", "wants": "w".repeat(30_000) }),
    ) else {
        panic!("a refusal with problems")
    };
    let mut fields: Vec<&str> = problems.iter().map(|p| p.field.as_str()).collect();
    fields.sort_unstable();
    assert_eq!(fields, ["born", "email", "name", "wants", "zone"]);
    let unknown = world.refused("students.add", json!({ "name": "Ana", "nmae": "x" }));
    assert!(unknown.to_string().contains("nmae"), "{unknown}");
    assert_eq!(world.file.check().unwrap().acts, 0, "a refused act is not in the journal");
}

#[test]
fn names_full_of_markup_and_from_right_to_left_are_kept_as_they_are() {
    let mut world = World::new();
    for name in [
        "<b onclick=\"x\">Ana</b> & 'Co'",
        "שרה לוי",
        "محمد",
        "渡辺 はるか",
        "Robert'); DROP TABLE student;--",
    ] {
        let added = world.act("students.add", json!({ "name": name }));
        assert_eq!(added["profile"]["name"], name);
        let found = world.act("students.list", json!({ "find": name }));
        assert_eq!(found[0]["name"], name);
    }
}

#[test]
fn a_note_of_ten_thousand_characters_fits() {
    let mut world = World::new();
    let note = "long words ".repeat(1000);
    let added = world.act("students.add", json!({ "name": "Ana", "about": note }));
    assert_eq!(added["profile"]["about"].as_str().unwrap().len(), note.trim().len());
}

#[test]
fn a_second_writer_is_told_that_the_file_is_open() {
    let world = World::new();
    let second = open(&world.path()).map(|_| ()).expect_err("refused");
    assert_eq!(second.code(), Code::InUse);
}

#[test]
fn what_is_no_coach_file_is_left_alone() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("other.carryover");
    for content in [b"".as_slice(), b"just a letter", &[0_u8; 4096]] {
        std::fs::write(&path, content).unwrap();
        assert_eq!(open(&path).map(|_| ()).expect_err("refused").code(), Code::NotACoachFile);
        assert_eq!(std::fs::read(&path).unwrap(), content, "untouched");
    }
    // Another program's SQLite file is none either.
    std::fs::remove_file(&path).unwrap();
    rusqlite::Connection::open(&path).unwrap().execute_batch("CREATE TABLE t (x)").unwrap();
    assert_eq!(open(&path).map(|_| ()).expect_err("refused").code(), Code::NotACoachFile);
}

#[test]
fn a_file_from_a_newer_version_is_refused_untouched() {
    let world = World::new();
    let path = world.path();
    let folder = world.folder;
    drop(world.file);
    let newer = rusqlite::Connection::open(&path).unwrap();
    newer.pragma_update(None, "journal_mode", "DELETE").unwrap();
    newer.pragma_update(None, "user_version", migrate::newest() + 1).unwrap();
    drop(newer);
    let before = std::fs::read(&path).unwrap();
    let refused = open(&path).map(|_| ()).expect_err("refused");
    assert_eq!(refused.code(), Code::NewerFile);
    let words = refused.to_string();
    assert!(
        words.contains("newer version") && words.contains(&(migrate::newest() + 1).to_string()),
        "{words}"
    );
    assert_eq!(std::fs::read(&path).unwrap(), before, "not a byte was changed");
    drop(folder);
}

#[test]
fn a_backup_has_the_same_content_and_a_restore_keeps_what_was_there() {
    let mut world = World::new();
    world.act("students.add", json!({ "name": "Ana Silva" }));
    let to = world.folder.path().join("backup.carryover");
    let made = world.file.backup(&to).unwrap();
    assert_eq!(made.content, world.file.check().unwrap().content);
    assert!(world.file.backup(&to).is_err(), "a backup never replaces a file");
    world.act("students.add", json!({ "name": "Ben Costa" }));
    let path = world.path();
    let World { folder, file } = world;
    drop(file);
    let clock = FixedClock::on(Day::of(2026, 3, 13).unwrap());
    let restored = backup::restore(&path, &to, &clock).unwrap();
    assert_eq!(restored.content, made.content);
    let mut back = open(&path).unwrap();
    let names = |file: &mut CoachFile| call(file, "students.list", json!({})).unwrap().value;
    assert_eq!(names(&mut back).as_array().unwrap().len(), 1);
    let mut kept = open(&restored.kept.unwrap()).unwrap();
    assert_eq!(names(&mut kept).as_array().unwrap().len(), 2, "what was there before is kept");
    drop(folder);
}

/// Each single flipped bit in a stored value is found: the integrity check of SQLite alone finds
/// few of them.
#[test]
fn a_flipped_bit_in_any_stored_value_is_found() {
    let mut world = World::new();
    let place = world.act(
        "facilities.add",
        json!({ "name": "Harbour Hall", "zone": "Europe/Lisbon", "notes": "n" }),
    );
    for n in 0..20 {
        world.act(
            "students.add",
            json!({ "name": format!("Student number {n}"), "wants": "a steadier serve" }),
        );
    }
    let _ = place;
    let path = world.path();
    let World { folder, file } = world;
    let content = file.check().unwrap().content;
    drop(file);
    let whole = std::fs::read(&path).unwrap();
    let mut looked = 0;
    for word in ["Harbour Hall", "Student number 7", "a steadier serve", "Europe/Lisbon"] {
        for at in positions(&whole, word.as_bytes()) {
            for bit in [0, 3] {
                let mut bent = whole.clone();
                bent[at + 2] ^= 1 << bit;
                let copy = folder.path().join("bent.carryover");
                std::fs::write(&copy, &bent).unwrap();
                let found = open(&copy).and_then(|file| file.check());
                // A byte that no row holds (left over from a page that was split) is no value.
                if found.as_ref().is_ok_and(|checked| checked.content == content) {
                    continue;
                }
                let sound = found.map(|checked| checked.sound).unwrap_or(false);
                assert!(!sound, "bit {bit} of byte {at} ({word}) was flipped unseen");
                looked += 1;
            }
        }
    }
    assert!(looked >= 8, "values were found in the file: {looked}");
}

fn positions(in_bytes: &[u8], word: &[u8]) -> Vec<usize> {
    in_bytes
        .windows(word.len())
        .enumerate()
        .filter(|(_, w)| *w == word)
        .map(|(at, _)| at)
        .take(4)
        .collect()
}

#[test]
fn a_row_changed_behind_the_programs_back_is_found() {
    let mut world = World::new();
    world.act("students.add", json!({ "name": "Ana Silva" }));
    let path = world.path();
    let World { folder, file } = world;
    drop(file);
    let behind = rusqlite::Connection::open(&path).unwrap();
    behind.execute("UPDATE student SET phone = '1'", []).unwrap();
    drop(behind);
    let checked = open(&path).unwrap().check().unwrap();
    assert!(!checked.sound);
    assert!(
        checked.wrong.iter().any(|w| w.contains("is not what was written")),
        "{:?}",
        checked.wrong
    );
    drop(folder);
}

#[test]
fn the_journal_and_an_issued_letter_refuse_change() {
    let mut world = World::new();
    world.act("students.add", json!({ "name": "Ana" }));
    let path = world.path();
    let World { folder, file } = world;
    drop(file);
    let behind = rusqlite::Connection::open(&path).unwrap();
    assert!(behind.execute("UPDATE journal SET label = 'x'", []).is_err());
    assert!(behind.execute("DELETE FROM journal", []).is_err());
    drop(folder);
}

/// Every released schema must come up to the newest with its rows unharmed, after a verified backup.
#[test]
fn an_older_file_is_brought_up_after_a_verified_backup() {
    for from in 1..migrate::newest() {
        let folder = TempDir::new().unwrap();
        let path = folder.path().join("old.carryover");
        let old = rusqlite::Connection::open(&path).unwrap();
        migrate::up_to(&old, from).unwrap();
        drop(old);
        let file = open(&path).unwrap();
        let checked = file.check().unwrap();
        assert!(checked.sound, "{:?}", checked.wrong);
        assert_eq!(checked.schema, migrate::newest());
        let kept = folder.path().join(format!("old.carryover.before-schema-{}", migrate::newest()));
        assert!(kept.is_file(), "the file as it was is kept beside it");
    }
}

#[test]
fn a_fault_in_an_act_leaves_nothing_behind_and_the_file_usable() {
    let mut world = World::new();
    let failed = world.file.write("test.fail", "fails", |db| {
        db.execute("INSERT INTO setting (id, value) VALUES ('x', '1')", [])?;
        Err::<(), _>(Error::Fault("half-way".to_owned()))
    });
    assert!(failed.is_err());
    assert_eq!(world.file.check().unwrap().rows, 0);
    world.act("students.add", json!({ "name": "Ana" }));
}

#[test]
fn a_reading_cannot_write() {
    let world = World::new();
    let tried = world
        .file
        .read(|db| db.all("DELETE FROM student RETURNING id", [], |row| row.get::<_, String>(0)));
    assert!(tried.is_err(), "the reading connection refuses writes");
}
