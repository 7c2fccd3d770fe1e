//! A person erased in the middle of a season: not a byte is left, everyone else's record stays as it
//! was, the journal still checks, and nothing of it can be undone.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use carryover_core::app::CoachFile;
use carryover_core::app::erase::{Erasing, tables_of};
use carryover_core::commands::{self, call};
use carryover_core::erasing;
use carryover_core::error::{Code, Error};
use carryover_core::kinds::{Day, FixedClock};
use rusqlite::Connection;
use rusqlite::types::Value as Stored;
use serde_json::{Value, json};
use world::{World, codes, id};

/// A name, a first name and words that stand nowhere else.
const NAME: &str = "Quorthwyn Zibelius";
const WORDS: &str = "grommelfint";
/// What must be found nowhere: the name in parts, as it is folded for search, and the words.
const TRACES: [&str; 5] = ["Quorthwyn", "quorthwyn", "Zibelius", "zibelius", WORDS];

struct Season {
    student: String,
    visit: String,
    own_lesson: String,
    other: String,
    other_visit: String,
    other_goal: String,
    shared: String,
    letter: String,
}

/// A visit of the one who goes and one of the other, on the same days, with a lesson shared.
fn season(w: &mut World) -> Season {
    let student = json!({
        "name": NAME, "email": "zibelius@example.org", "about": WORDS, "wants": WORDS,
        "guardian": { "name": "Maud Zibelius", "relation": "mother", "phone": "555 0199" },
        "payer": { "name": "Zibelius and Sons", "address": "4 Mill Lane" },
    });
    let student = id(&w.act("students.add", student), "/id");
    let other = w.student("Ben Costa");
    let fact =
        json!({ "student": student, "kind": "equipment", "words": format!("{WORDS} strings") });
    w.act("students.add_fact", fact);
    let fact =
        json!({ "student": student, "kind": "level", "words": format!("{WORDS}, taken away") });
    let facts = w.act("students.add_fact", fact);
    let gone = facts.as_array().unwrap().iter().find(|f| f["kind"] == "level").unwrap();
    w.act("students.remove_fact", json!({ "fact": gone["id"] }));

    w.on("2026-03-10");
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let other_visit = w.planned(&other, "2026-03-10", "2026-03-12");
    let wish = json!({
        "lessons": 2, "minutes": 60, "per_day": 2, "note": WORDS,
        "shared": [{ "lessons": 1, "with": [other_visit] }],
    });
    w.act("planning.set_wish", json!({ "visit": visit, "wish": wish }));
    w.act("visits.open", json!({ "visit": visit }));
    w.act("visits.open", json!({ "visit": other_visit }));
    let goal = w.goal(&student, &visit, &format!("Lob {WORDS}"));
    let other_goal = w.goal(&other, &other_visit, "Drop shot");
    w.total(&goal, &visit, "end_test", 8);
    w.total(&other_goal, &other_visit, "end_test", 7);

    let lesson = |visits: Value, starts: &str, hall: &str| json!({ "visits": visits, "facility": hall, "day": "2026-03-10", "starts": starts, "minutes": 60 });
    let hall = w.hall.clone();
    let own_lesson = id(&w.act("lessons.plan", lesson(json!([visit]), "09:00", &hall)), "/id");
    let both = json!([visit, other_visit]);
    let shared = id(&w.act("lessons.plan", lesson(both, "11:00", &hall)), "/id");
    w.act("bookings.ask", json!({ "lessons": [own_lesson, shared] }));
    let lines = json!({ "lesson": shared, "lines": [
        { "minutes": 10, "words": "Warm up" }, { "minutes": 20, "goal": goal, "words": "Lobs" },
    ] });
    w.act("lessons.set_plan_lines", lines);
    let terms =
        json!({ "currency": "EUR", "fees": [{ "minutes": 60, "amount": "40" }], "terms": "" });
    w.act("offers.set_terms", terms);
    let offer =
        w.act("offers.make", json!({ "visit": visit, "words": format!("Dear {NAME}, {WORDS}") }));
    let yes = json!({ "offer": offer["id"], "agreed": true, "note": WORDS });
    w.act("offers.answer", yes);
    let block = json!({ "goal": goal, "visit": visit, "lesson": own_lesson, "kind": "practice" });
    let block = id(&w.act("goals.start_block", block), "/id");
    w.act("goals.touch", json!({ "block": block, "made": true }));
    for lesson in [&own_lesson, &shared] {
        w.act("lessons.give", json!({ "lesson": lesson }));
    }
    w.act("lessons.note", json!({ "lesson": own_lesson, "done": WORDS, "landed": "", "next": "" }));
    let note = json!({ "lesson": shared, "done": "Both played well", "landed": "", "next": "" });
    w.act("lessons.note", note);
    w.act("lessons.rate_effort", json!({ "lesson": shared, "student": student, "effort": 6 }));
    w.act("goals.jot", json!({ "visit": visit, "words": WORDS }));
    let seen = json!({ "student": student, "visit": visit, "kind": "fault", "words": WORDS });
    w.act("observations.see", seen);
    let levels = json!([{ "skill": "lob-serve", "level": 2, "note": WORDS }]);
    w.act("assessments.assess", json!({ "student": student, "visit": visit, "levels": levels }));
    let line = json!({ "goal": goal, "what": WORDS, "amount": 20, "unit": "tries", "a_week": 3 });
    w.act("home.plan", json!({ "visit": visit, "warm_up": "", "note": WORDS, "lines": [line] }));
    // A lesson that was planned and taken back stands in the journal alone.
    let undone = call(&mut w.file, "lessons.plan", lesson(json!([visit]), "15:00", &hall)).unwrap();
    call(&mut w.file, "journal.undo", json!({ "act": undone.act })).unwrap();
    for visit in [&visit, &other_visit] {
        w.act("visits.close", json!({ "visit": visit }));
        w.act("letters.issue", json!({ "visit": visit }));
    }
    let letters = w.act("letters.list", json!({ "student": other }));
    let letter = id(&letters, "/0/letter");
    Season { student, visit, own_lesson, other, other_visit, other_goal, shared, letter }
}

fn ask(s: &Season) -> Value {
    json!({ "student": s.student, "name_typed": NAME })
}

/// Every row of every table by table and id, value by value; the journal apart.
fn rows_of(path: &Path) -> BTreeMap<(String, String), Vec<Stored>> {
    let conn = Connection::open(path).unwrap();
    let mut all = BTreeMap::new();
    for table in carryover_core::db::digest::tables(&conn).unwrap() {
        if table == "journal" {
            continue;
        }
        let mut rows = conn.prepare(&format!("SELECT * FROM \"{table}\"")).unwrap();
        let width = rows.column_count();
        let mut rows = rows.query([]).unwrap();
        while let Some(row) = rows.next().unwrap() {
            let id: String = row.get("id").unwrap();
            let values = (0..width).map(|n| row.get::<_, Stored>(n).unwrap()).collect();
            all.insert((table.clone(), id), values);
        }
    }
    all
}

/// All bytes on disk: the file and what stands beside it.
fn bytes_of(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    files.map(|path| (path.clone(), std::fs::read(&path).unwrap())).collect()
}

fn holds(bytes: &[u8], word: &str) -> bool {
    bytes.windows(word.len()).any(|window| window == word.as_bytes())
}

#[test]
fn not_a_byte_is_left_and_everyone_else_stays_as_they_were() {
    let mut w = World::new();
    let s = season(&mut w);
    let path = w.file.path().to_owned();
    let before = rows_of(&path);
    for trace in TRACES {
        let found = bytes_of(w.folder.path()).iter().any(|(_, bytes)| holds(bytes, trace));
        assert!(found, "{trace} is in the file before, or its absence later says nothing");
    }
    let others = |w: &mut World| {
        [
            w.act("goals.chart", json!({ "student": s.other })),
            w.act("goals.show", json!({ "goal": s.other_goal })),
            w.act("letters.show", json!({ "letter": s.letter })),
            w.act("visits.show", json!({ "visit": s.other_visit })),
            w.act("home.show", json!({ "visit": s.other_visit })),
        ]
    };
    let then = others(&mut w);

    let would = w.act("students.erasing", json!({ "student": s.student }));
    assert_eq!((&would["name"], &would["shared"]), (&json!(NAME), &json!(1)));
    let kinds: Vec<String> =
        would["kinds"].as_array().unwrap().iter().map(|k| id(k, "/words")).collect();
    for kind in [
        "who they are",
        "1 visit",
        "2 lessons",
        "1 focus goal",
        "2 blocks of tries",
        "1 letter",
        "1 offer",
    ] {
        assert!(kinds.iter().any(|words| words == kind), "{kind} in {kinds:?}");
    }
    assert_eq!(would["mentions"]["list"], json!([]), "nobody else's record names them");

    let erased = call(&mut w.file, "students.erase", ask(&s)).unwrap();
    assert_eq!(erased.value["kept"], 0);
    assert_eq!(erased.value["left"], json!([]));
    assert_eq!(others(&mut w), then, "the other's record is word for word what it was");

    // Everyone else's rows are the same, value by value; what is gone is what belonged.
    let after = rows_of(&path);
    let mut loosened = 0;
    for (key, values) in &after {
        let then = before.get(key).unwrap_or_else(|| panic!("{key:?} is new"));
        if then != values {
            assert_eq!(key.0, "plan_line", "only a line that named the goal lost a reference");
            let changed = then.iter().zip(values).filter(|(then, now)| then != now);
            assert!(changed.clone().all(|(_, now)| *now == Stored::Null) && changed.count() == 1);
            loosened += 1;
        }
    }
    assert_eq!(loosened, 1, "the line of the shared lesson stays, without the goal");
    assert_eq!(before.len() - after.len(), erased.value["rows"].as_u64().unwrap() as usize);
    assert!(before.contains_key(&("lesson".into(), s.own_lesson.clone())));
    assert!(!after.contains_key(&("lesson".into(), s.own_lesson.clone())), "it was theirs alone");
    let shared = w.act("lessons.show", json!({ "lesson": s.shared }));
    assert_eq!(shared["students"].as_array().unwrap().len(), 1);
    assert_eq!(shared["done"], "Both played well");

    let derived = "SELECT (SELECT count(*) FROM standing WHERE goal NOT IN (SELECT id FROM goal))
                        + (SELECT count(*) FROM standing_move WHERE goal NOT IN (SELECT id FROM goal))
                        + (SELECT count(*) FROM standing_due)";
    let derived: i64 =
        Connection::open(&path).unwrap().query_row(derived, [], |row| row.get(0)).unwrap();
    assert_eq!(derived, 0, "what is derived from their goals went with them");

    // Nothing of it can be undone, and the history can be read.
    let refused = w.refused("journal.undo", json!({ "act": erased.act }));
    assert!(refused.to_string().contains("cannot be undone"), "{refused}");
    let newest = w.act("journal.newest", json!({ "most": 200 }));
    let newest = newest.as_array().unwrap();
    assert_eq!(newest[0]["label"], "A student erased");
    let gone: Vec<&Value> =
        newest.iter().filter(|a| id(a, "/label").starts_with("Erased with")).collect();
    assert!(gone.len() > 20, "the acts are still there, without their words: {}", gone.len());
    assert!(gone.iter().all(|act| act["undoable"] == false));
    for act in &gone {
        let refused = w.refused("journal.undo", json!({ "act": act["id"] }));
        assert_eq!(refused.code(), Code::NotPossible, "{refused}");
    }
    let past = json!({ "thing": "student", "id": s.other });
    let past = w.act("reports.history", past);
    let labels: Vec<String> =
        past["acts"].as_array().unwrap().iter().map(|a| id(a, "/label")).collect();
    assert!(labels.contains(&"Ben Costa added".to_owned()), "{labels:?}");
    assert!(
        labels.iter().any(|label| label.starts_with("Erased with")),
        "the shared lesson's acts"
    );

    // Work goes on, and it can be checked, copied and taken apart.
    w.act(
        "students.change",
        json!({ "student": s.other, "profile": { "name": "Ben Costa-Lima" } }),
    );
    let checked = commands::check(&w.file).unwrap();
    assert!(checked.sound, "{:?}", checked.wrong);
    let copy = w.folder.path().join("copy.carryover");
    w.file.backup(&copy).unwrap();
    let again = w.refused("students.erase", ask(&s));
    assert!(matches!(again, Error::NotFound { what: "student", .. }), "{again}");

    let World { folder, file, .. } = w;
    let nowhere = |when: &str| {
        for (path, bytes) in bytes_of(folder.path()) {
            for trace in TRACES {
                assert!(!holds(&bytes, trace), "{trace} in {} {when}", path.display());
            }
        }
    };
    nowhere("while it is open");
    drop(file);
    nowhere("after it is closed");
}

#[test]
fn a_flipped_byte_in_an_erased_row_of_the_journal_is_found() {
    let mut w = World::new();
    let s = season(&mut w);
    w.act("students.erase", ask(&s));
    let sound = w.file.check().unwrap();
    assert!(sound.sound);
    let path = w.file.path().to_owned();
    let World { folder, file, .. } = w;
    drop(file);
    let journal = Connection::open(&path).unwrap();
    let erased = "SELECT id, at, rows, chain FROM journal WHERE erased IS NOT NULL ORDER BY seq LIMIT 1 OFFSET 5";
    let words: [String; 4] = journal
        .query_row(erased, [], |row| Ok([row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?]))
        .unwrap();
    drop(journal);
    let whole = std::fs::read(&path).unwrap();
    let mut looked = 0;
    for word in &words {
        // An instant stands in several rows: each place is another byte to flip.
        let places: Vec<usize> = whole
            .windows(word.len())
            .enumerate()
            .filter(|(_, window)| *window == word.as_bytes())
            .map(|(at, _)| at)
            .take(4)
            .collect();
        for at in places {
            let mut bent = whole.clone();
            bent[at + word.len() / 2] ^= 1;
            let copy = folder.path().join("bent.carryover");
            std::fs::write(&copy, &bent).unwrap();
            let found = CoachFile::open(&copy).and_then(|file| file.check());
            // A byte that no row holds (left over from a page that was split) is no value.
            if found.as_ref().is_ok_and(|checked| checked.sound && checked.content == sound.content)
            {
                continue;
            }
            assert!(!found.is_ok_and(|c| c.sound), "byte {at} of {word} was flipped unseen");
            looked += 1;
        }
    }
    assert!(looked >= 4, "each of the values was found in the file: {looked}");
}

/// The plug is pulled after the rows went and before the file was written anew: opening it does the rest.
#[test]
fn a_file_that_was_not_written_anew_is_when_it_is_opened_again() {
    let mut w = World::new();
    let s = season(&mut w);
    w.act("students.erase", ask(&s));
    let path = w.file.path().to_owned();
    let World { folder, file, .. } = w;
    drop(file);
    let conn = Connection::open(&path).unwrap();
    let act = "INSERT INTO uncleared SELECT id FROM journal WHERE act = 'students.erase'";
    conn.execute_batch("CREATE TABLE room (words TEXT)").unwrap();
    let words = "left over ".repeat(4000);
    conn.execute("INSERT INTO room VALUES (?)", [&words]).unwrap();
    conn.execute_batch(&format!("DROP TABLE room; {act}")).unwrap();
    drop(conn);
    let left_over = |path: &Path| holds(&std::fs::read(path).unwrap(), "left over left over");
    assert!(left_over(&path), "free pages hold what stood there");
    let mut file = CoachFile::open(&path).unwrap();
    commands::catch_up(&mut file).unwrap();
    assert!(!left_over(&path), "at once, not only when it is closed");
    let log = std::fs::metadata(path.with_file_name("world.carryover-wal")).map_or(0, |m| m.len());
    let page = 4096 * 2;
    assert!(log < page, "the log beside it is empty but for the last note: {log}");
    assert!(commands::check(&file).unwrap().sound);
    drop(file);
    let due = "SELECT count(*) FROM uncleared";
    let due: i64 = Connection::open(&path).unwrap().query_row(due, [], |row| row.get(0)).unwrap();
    assert_eq!(due, 0);
    drop(folder);
}

/// What an erased row could be turned into by someone who has the file and SQLite.
#[test]
fn an_erased_row_that_was_tampered_with_is_found_by_its_digest() {
    let mut w = World::new();
    let s = season(&mut w);
    w.act("students.erase", ask(&s));
    let path = w.file.path().to_owned();
    let World { folder, file, .. } = w;
    drop(file);
    let one = "(SELECT min(seq) FROM journal WHERE erased IS NOT NULL)";
    for change in [
        format!("UPDATE journal SET label = 'Nothing happened' WHERE seq = {one}"),
        format!("UPDATE journal SET erased = NULL WHERE seq = {one}"),
        format!("UPDATE journal SET erased = id WHERE seq = {one}"),
        format!("UPDATE journal SET honest = 1 - honest WHERE seq = {one}"),
        format!("UPDATE journal SET changes = x'00' WHERE seq = {one}"),
        format!("UPDATE journal SET rows = '[]' WHERE seq = {one}"),
        "UPDATE journal SET erased = (SELECT max(id) FROM journal), label = '', changes = x''
         WHERE seq = (SELECT max(seq) FROM journal WHERE erased IS NULL AND act = 'facilities.add')"
            .to_owned(),
        "INSERT INTO erasing VALUES ('student', 'x')".to_owned(),
    ] {
        let copy = folder.path().join("bent.carryover");
        std::fs::copy(&path, &copy).unwrap();
        let conn = Connection::open(&copy).unwrap();
        if change.starts_with("UPDATE") {
            assert!(conn.execute_batch(&change).is_err(), "the triggers refuse: {change}");
            conn.execute_batch("DROP TRIGGER journal_stays").unwrap();
        }
        let schema = "CREATE TRIGGER journal_stays";
        let sql: String = Connection::open(&path)
            .unwrap()
            .query_row("SELECT sql FROM sqlite_schema WHERE name = 'journal_stays'", [], |r| r.get(0))
            .unwrap();
        assert!(sql.starts_with(schema));
        conn.execute_batch(&change).unwrap();
        if change.starts_with("UPDATE") {
            conn.execute_batch(&sql).unwrap();
        }
        drop(conn);
        let found = CoachFile::open(&copy).unwrap().check().unwrap();
        assert!(!found.sound, "unseen: {change}");
    }
}

#[test]
fn a_slip_erases_nobody() {
    let mut w = World::new();
    let s = season(&mut w);
    for typed in ["", "Quorthwyn", "quorthwyn zibelius", "Ben Costa"] {
        let wrong =
            w.refused("students.erase", json!({ "student": s.student, "name_typed": typed }));
        assert_eq!(codes(&wrong), [("name_typed".into(), "other_name".into())], "{typed}");
    }
    let both = json!({
        "student": s.student, "name_typed": "x", "keep_accounts": true, "accounts_until": "2026-02-30",
    });
    let fields: Vec<String> =
        codes(&w.refused("students.erase", both)).into_iter().map(|(field, _)| field).collect();
    assert_eq!(fields, ["name_typed", "accounts_until"], "all that is wrong is told at once");
    let past = json!({
        "student": s.student, "name_typed": NAME, "keep_accounts": true, "accounts_until": "2020-12-31",
    });
    assert_eq!(
        codes(&w.refused("students.erase", past)),
        [("accounts_until".into(), "past".into())]
    );
    w.act("visits.reopen", json!({ "visit": s.visit }));
    let open = w.refused("students.erase", ask(&s));
    assert_eq!(open.code(), Code::NotPossible);
    assert!(open.to_string().contains("Close it first"), "{open}");
    let would = w.act("students.erasing", json!({ "student": s.student }));
    assert_eq!(would["against"], open.to_string());
    assert_eq!(w.act("students.show", json!({ "student": s.student }))["profile"]["name"], NAME);
    assert!(w.file.check().unwrap().sound);
}

#[test]
fn an_erasing_that_fails_half_way_changes_nothing() {
    let mut w = World::new();
    let s = season(&mut w);
    let path = w.file.path().to_owned();
    let before = rows_of(&path);
    let content = w.file.check().unwrap().content;
    let erase = |w: &mut World, fails_late: bool| {
        let what = Erasing {
            act: "students.erase",
            label: "A student erased",
            roots: vec![("student", s.student.clone())],
            spared: BTreeSet::new(),
        };
        let stop = || Err(Error::not_possible("stopped", "Stopped here."));
        let done = w.file.erase(
            what,
            |_, _| if fails_late { Ok(()) } else { stop() },
            |db| {
                // By now the rows are gone; a statement that cannot be done ends all of it.
                assert!(
                    db.one("SELECT 1 FROM student WHERE id = ?", [&s.student], |_| Ok(()))?
                        .is_none()
                );
                db.execute("INSERT INTO student (id, name, folded) VALUES (NULL, 'x', 'x')", [])?;
                Ok(())
            },
        );
        assert!(done.is_err());
    };
    for fails_late in [false, true] {
        erase(&mut w, fails_late);
        assert_eq!(rows_of(&path), before);
        let checked = commands::check(&w.file).unwrap();
        assert!(checked.sound, "{:?}", checked.wrong);
        assert_eq!(checked.content, content, "the journal too is what it was");
    }
    w.act("students.erase", ask(&s));
}

#[test]
fn what_the_accounts_need_stays_apart_until_its_day() {
    let mut w = World::new();
    let s = season(&mut w);
    let would = w.act("students.erasing", json!({ "student": s.student }));
    assert_eq!(
        would["accounts"],
        json!({ "lines": ["10 March 2026: 2 lessons agreed, price not known"], "until": "2036-12-31" })
    );
    let mut keep = ask(&s);
    keep["keep_accounts"] = json!(true);
    keep["accounts_until"] = json!("2031-12-31");
    keep["reason"] = json!("The tax office asks for five years.");
    assert_eq!(w.act("students.erase", keep)["kept"], 1);
    let kept = w.act("erasing.kept_for_accounts", json!({}));
    assert_eq!(kept[0]["name"], "Zibelius and Sons", "the name on the account is the payer's");
    assert_eq!(kept[0]["address"], "4 Mill Lane");
    assert_eq!(kept[0]["what"][0]["fee"], "40.00 EUR");
    assert_eq!(kept[0]["until"], "2031-12-31");
    assert!(!kept.to_string().contains(WORDS) && !kept.to_string().contains("Quorthwyn"));
    assert!(commands::check(&w.file).unwrap().sound);
    let which = json!({ "kept": kept[0]["id"] });
    let early = w.refused("erasing.let_go", which.clone());
    assert!(early.to_string().contains("until 31 December 2031"), "{early}");
    w.on("2032-01-01");
    w.act("erasing.let_go", which.clone());
    assert_eq!(w.act("erasing.kept_for_accounts", json!({})), json!([]));
    assert!(matches!(w.refused("erasing.let_go", which), Error::NotFound { .. }));
    assert!(commands::check(&w.file).unwrap().sound);
    let World { folder, file, .. } = w;
    drop(file);
    for (path, bytes) in bytes_of(folder.path()) {
        assert!(!holds(&bytes, "Zibelius"), "in {}", path.display());
    }
}

#[test]
fn others_words_about_a_person_are_told_of_and_left_alone() {
    let mut w = World::new();
    let s = season(&mut w);
    let note = format!("{NAME} carried both of them");
    w.act("lessons.note", json!({ "lesson": s.shared, "done": note, "landed": "", "next": "" }));
    let about = json!({ "name": "Ben Costa", "about": "Plays with Quorthwyn on Fridays" });
    w.act("students.change", json!({ "student": s.other, "profile": about }));
    // Someone of the same first name is not meant where they speak of themselves.
    let twin = json!({ "name": "Quorthwyn Aarne", "about": "Quorthwyn comes by train" });
    w.act("students.add", twin);
    let would = w.act("students.erasing", json!({ "student": s.student }));
    let list = would["mentions"]["list"].as_array().unwrap();
    let told: Vec<[String; 3]> =
        list.iter().map(|m| ["/what", "/whose", "/words"].map(|at| id(m, at))).collect();
    assert_eq!(
        told,
        [
            ["Lesson".into(), "Ben Costa".into(), note.clone()],
            ["Profile".into(), "Ben Costa".into(), "Plays with Quorthwyn on Fridays".into()],
        ]
    );
    assert_eq!(list[0]["leads"], json!({ "to": "lesson", "id": s.shared }));
    let erased = w.act("students.erase", ask(&s));
    assert_eq!(erased["left"], json!(["2 other records still have the name. Go and look."]));
    assert_eq!(w.act("lessons.show", json!({ "lesson": s.shared }))["done"], note);
    assert!(commands::check(&w.file).unwrap().sound);
}

#[test]
fn words_changed_before_erasing_are_gone_from_the_history_too() {
    let mut w = World::new();
    let s = season(&mut w);
    let note = format!("{NAME} carried both of them");
    let write = |w: &mut World, done: &str| {
        let note = json!({ "lesson": s.shared, "done": done, "landed": "", "next": "" });
        w.act("lessons.note", note);
    };
    write(&mut w, &note);
    write(&mut w, "One carried both of them");
    let jot = json!({ "visit": s.other_visit, "words": format!("ask {NAME}") });
    w.act("visits.reopen", json!({ "visit": s.other_visit }));
    let jotted = call(&mut w.file, "goals.jot", jot).unwrap();
    call(&mut w.file, "journal.undo", json!({ "act": jotted.act })).unwrap();
    w.act("students.erase", ask(&s));
    assert!(commands::check(&w.file).unwrap().sound);
    let World { folder, file, .. } = w;
    drop(file);
    for (path, bytes) in bytes_of(folder.path()) {
        assert!(!holds(&bytes, NAME), "in {}", path.display());
    }
}

#[test]
fn the_copies_that_hold_a_person_are_told_with_the_day_they_lapse() {
    let mut w = World::new();
    let empty = w.folder.path().join("empty before.carryover");
    commands::back_up(&mut w.file, &empty).unwrap();
    let s = season(&mut w);
    let copy = w.folder.path().join("50 % of it?.carryover");
    commands::back_up(&mut w.file, &copy).unwrap();
    let moved = w.folder.path().join("moved.carryover");
    commands::back_up(&mut w.file, &moved).unwrap();
    std::fs::remove_file(&moved).unwrap();
    let broken = w.folder.path().join("world.carryover.before-restore-20260311-080000");
    std::fs::write(&broken, b"half a file").unwrap();
    w.act("erasing.keep_backups_for", json!({ "months": 6 }));
    let wrong = w.refused("erasing.keep_backups_for", json!({ "months": 0 }));
    assert_eq!(codes(&wrong), [("months".into(), "out_of_bounds".into())]);
    let would = w.act("students.erasing", json!({ "student": s.student }));
    let told: BTreeMap<String, (String, String)> = would["backups"]["backups"]
        .as_array()
        .unwrap()
        .iter()
        .map(|b| (id(b, "/path"), (id(b, "/lapses"), id(b, "/words"))))
        .collect();
    let of = |path: &Path| told.get(&path.display().to_string()).cloned();
    assert_eq!(of(&empty), None, "it was made before they came");
    assert_eq!(of(&copy), Some(("2026-09-10".into(), "It holds this person.".into())));
    assert!(of(&moved).unwrap().1.contains("not where it was put"));
    assert!(of(&broken).unwrap().1.contains("could not be looked into"));
    let before = std::fs::read(&copy).unwrap();
    let erased = w.act("students.erase", ask(&s));
    assert_eq!(erased["backups"]["backups"].as_array().unwrap().len(), 3);
    assert!(id(&erased, "/left/0").starts_with("3 copies of the file hold this person still"));
    assert_eq!(std::fs::read(&copy).unwrap(), before, "a copy is looked into, and left as it is");
    let beside = copy.with_file_name("50 % of it?.carryover-wal");
    assert!(!beside.exists(), "nothing is put beside it");
    assert!(commands::check(&w.file).unwrap().sound, "a backup is no act of the record");
}

#[test]
fn a_restore_still_knows_the_backups_made_since() {
    let mut w = World::new();
    let first = w.folder.path().join("first.carryover");
    let second = w.folder.path().join("second.carryover");
    commands::back_up(&mut w.file, &first).unwrap();
    commands::back_up(&mut w.file, &second).unwrap();
    let path = w.file.path().to_owned();
    let World { folder, file, .. } = w;
    drop(file);
    let clock = FixedClock::on(Day::of(2026, 3, 2).unwrap());
    commands::restore(&path, &first, &clock).unwrap();
    let mut file = CoachFile::open(&path).unwrap();
    let known = call(&mut file, "erasing.backups", json!({})).unwrap().value;
    let paths: Vec<String> =
        known["backups"].as_array().unwrap().iter().map(|b| id(b, "/path")).collect();
    for path in [first, second] {
        assert!(paths.contains(&path.display().to_string()), "{paths:?}");
    }
    assert!(paths.iter().any(|path| path.contains(".before-restore-")), "{paths:?}");
    drop(folder);
}

#[test]
fn a_copy_for_the_person_has_everything_of_theirs_and_nothing_of_others() {
    let mut w = World::new();
    let s = season(&mut w);
    let note = json!({ "lesson": s.shared, "done": "Ben Costa led", "landed": "", "next": "" });
    w.act("lessons.note", note);
    let copy = w.act("students.everything", json!({ "student": s.student }));
    let text = id(&copy, "/text");
    for part in [NAME, WORDS, "Who they are", "Focus goals", "10 March 2026 Lesson", "Hall"] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
    let whole = copy.to_string();
    for never in ["Ben Costa", "Drop shot", &s.other] {
        assert!(!whole.contains(never), "{never} is someone else's");
    }
    let path = w.file.path().to_owned();
    let before = rows_of(&path);
    let in_copy: BTreeSet<(String, String)> = copy["rows"]
        .as_object()
        .unwrap()
        .iter()
        .filter(|(table, _)| *table != "standing")
        .flat_map(|(table, rows)| {
            let rows = rows.as_array().unwrap().iter();
            rows.map(|row| (table.clone(), id(row, "/id"))).collect::<Vec<_>>()
        })
        .collect();
    let documents = copy["documents"].as_array().unwrap();
    assert_eq!(documents.len(), 1);
    let letter: erasing::Document = serde_json::from_value(documents[0].clone()).unwrap();
    let (name, pdf) = w.file.read(|db| erasing::document(db, &letter)).unwrap();
    assert!(name.starts_with("Progress letter") && pdf.starts_with(b"%PDF"), "{name}");
    w.act("students.erase", ask(&s));
    let after = rows_of(&path);
    let gone: BTreeSet<_> =
        before.keys().filter(|key| !after.contains_key(*key)).cloned().collect();
    let shared = BTreeSet::from([("lesson".to_owned(), s.shared)]);
    assert_eq!(
        in_copy,
        gone.union(&shared).cloned().collect(),
        "what is in the copy is what erasing takes, and the lesson that others keep"
    );
}

/// The tables of the schema that can hold something of a person, as they are found by the foreign keys.
fn personal(file: &CoachFile) -> BTreeSet<String> {
    file.read(|db| tables_of(db, "student")).unwrap()
}

/// What rows of some tables refer to and that is nobody's: facilities, courts, whatever comes to be.
fn leant_on(file: &CoachFile, tables: &BTreeSet<String>) -> BTreeSet<String> {
    let mut all = tables.clone();
    loop {
        let parents = file.read(|db| {
            let of = |table: &String| {
                let sql = "SELECT \"table\" AS parent FROM pragma_foreign_key_list(?)";
                db.all(sql, [table], |row| row.get::<_, String>("parent"))
            };
            all.iter().map(of).collect::<Result<Vec<_>, _>>()
        });
        let parents: BTreeSet<String> = parents.unwrap().into_iter().flatten().collect();
        if parents.is_subset(&all) {
            return all.difference(tables).cloned().collect();
        }
        all.extend(parents);
    }
}

/// A row of every table that a person can stand in, made from the schema itself, whatever tables there
/// are: all columns filled, each reference to the person's own rows. Checks are off, so that the words
/// need no meaning.
fn fill(file: &mut CoachFile, who: &str) -> usize {
    let tables = personal(file);
    let places = leant_on(file, &tables);
    file.write("test.fill", "Filled", |db| {
        db.execute("PRAGMA ignore_check_constraints = ON", [])?;
        db.execute("PRAGMA defer_foreign_keys = ON", [])?;
        for table in tables.iter().chain(&places) {
            let columns = db.all(
                "SELECT c.name, c.type, c.\"notnull\" AS must, f.\"table\" AS parent
                 FROM pragma_table_info(?1) c LEFT JOIN pragma_foreign_key_list(?1) f ON f.\"from\" = c.name",
                [table],
                |row| {
                    Ok((
                        row.get::<_, String>("name")?,
                        row.get::<_, String>("type")?,
                        row.get::<_, Option<String>>("parent")?,
                    ))
                },
            )?;
            let values = columns.iter().map(|(name, kind, parent)| -> Stored {
                let parent = parent.as_deref();
                match (name.as_str(), parent, kind.as_str()) {
                    ("id", None, _) => format!("{who}-{table}").into(),
                    (_, Some(parent), _) => format!("{who}-{parent}").into(),
                    (_, _, "INTEGER") => 1.into(),
                    (_, _, "BLOB") => format!("{who} bytes").into_bytes().into(),
                    _ => format!("{who} words").into(),
                }
            });
            let values: Vec<Stored> = values.collect();
            let marks = vec!["?"; values.len()].join(", ");
            let sql = format!("INSERT INTO \"{table}\" VALUES ({marks})");
            db.execute(&sql, rusqlite::params_from_iter(values))?;
        }
        db.execute("PRAGMA ignore_check_constraints = OFF", [])?;
        Ok(())
    })
    .unwrap();
    tables.len()
}

/// Whatever tables the schema comes to have: a row of each that is the person's goes, the same row of
/// someone else's stays, and refusing triggers let exactly this through.
#[test]
fn no_table_with_a_path_to_a_person_is_missed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("filled.carryover");
    CoachFile::create(&path).unwrap();
    let mut file = CoachFile::open(&path).unwrap();
    let tables = fill(&mut file, "zzgoes");
    fill(&mut file, "zzstays");
    assert!(tables > 25, "{tables}");
    let before = rows_of(&path);
    let persons = personal(&file);
    let what = Erasing {
        act: "students.erase",
        label: "A student erased",
        roots: vec![("student", "zzgoes-student".to_owned())],
        spared: BTreeSet::new(),
    };
    let done = file
        .erase(what, |_, _| Ok(()), |db| db.execute("DELETE FROM standing_due", []).map(|_| ()))
        .unwrap();
    assert_eq!(done.rows, tables, "one row of each table");
    assert!(done.cleared);
    let after = rows_of(&path);
    for (key, values) in &before {
        let goes = key.1.starts_with("zzgoes-") && persons.contains(&key.0);
        assert_eq!(after.get(key), (!goes).then_some(values), "{key:?}");
    }
    let found = file.check().unwrap();
    let wrong: Vec<&String> =
        found.wrong.iter().filter(|words| !words.contains("CHECK constraint")).collect();
    assert!(wrong.is_empty(), "{wrong:?}");
}

/// Every table that can hold something of a person has its words on screen and in the copy.
#[test]
fn every_table_of_a_person_is_named_and_given_its_reason() {
    let mut w = World::new();
    let s = season(&mut w);
    let unnamed = w.file.read(erasing::without_words).unwrap();
    assert_eq!(unnamed, Vec::<String>::new(), "give them a place in erasing/kinds.rs");
    let would = w.act("students.erasing", json!({ "student": s.student }));
    assert!(would["kinds"].as_array().unwrap().iter().all(|kind| id(kind, "/why").ends_with('.')));
}

#[test]
fn only_an_erasing_gets_past_the_triggers() {
    let mut w = World::new();
    let s = season(&mut w);
    let path = w.file.path().to_owned();
    drop(w.file);
    let conn = Connection::open(&path).unwrap();
    for refused in [
        "DELETE FROM letter",
        "UPDATE letter SET text = 'other'",
        "DELETE FROM journal",
        "UPDATE journal SET label = ''",
        "UPDATE journal SET erased = id, label = '', changes = x''",
    ] {
        assert!(conn.execute_batch(refused).is_err(), "{refused}");
    }
    // While one letter goes, no other does.
    let other: String = conn
        .query_row("SELECT id FROM letter WHERE id <> ?", [&s.letter], |row| row.get(0))
        .unwrap();
    conn.execute_batch("BEGIN").unwrap();
    conn.execute("INSERT INTO erasing VALUES ('letter', ?)", [&other]).unwrap();
    assert!(conn.execute("DELETE FROM letter WHERE id = ?", [&s.letter]).is_err());
    assert_eq!(conn.execute("DELETE FROM letter WHERE id = ?", [&other]).unwrap(), 1);
    conn.execute_batch("ROLLBACK").unwrap();
}
