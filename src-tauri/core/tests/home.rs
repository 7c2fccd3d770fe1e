//! The home plan through the command table: set as a whole, carried over, told back, printed, and
//! said in the letter.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use carryover_core::error::{Code, Error};
use carryover_core::home;
use serde_json::{Value, json};
use world::{World, id, problems};

fn line(what: &str, amount: i64, unit: &str, a_week: i64) -> Value {
    json!({ "what": what, "amount": amount, "unit": unit, "a_week": a_week })
}

#[test]
fn a_plan_is_set_as_a_whole_and_keeps_what_was_told() {
    let mut w = World::new();
    let student = w.student("Ana");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &visit, "Lob serve");
    let empty = w.act("home.show", json!({ "visit": visit }));
    assert_eq!(empty["plan"], Value::Null);
    assert_eq!(empty["proposals"][0]["what"], "Lob serve", "the goal that goes on is proposed");
    assert_eq!(empty["proposals"][0]["amount"], 10, "as many tries as it asks for");
    let mut lob = line("Lob serve alone", 20, "tries", 3);
    lob["goal"] = json!(goal);
    let plan = w.act(
        "home.plan",
        json!({
            "visit": visit, "warm_up": "Five minutes of rope", "note": "Rest on Sunday.",
            "lines": [lob, line("Footwork", 10, "minutes", 7)],
        }),
    );
    assert_eq!(plan["proposals"], json!([]), "it is in a line now");
    let words: Vec<&str> = plan["plan"]["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|l| l["words"].as_str().unwrap())
        .collect();
    assert_eq!(
        words,
        ["Lob serve alone: 20 tries, three times a week", "Footwork: 10 minutes, every day"]
    );
    let first = id(&plan, "/plan/lines/0/id");
    w.on("2026-05-01");
    let told = w.act("home.tell", json!({ "line": first, "told": "Twice a week, in a hall" }));
    assert_eq!(told["lines"][0]["told_on"], "2026-05-01");

    // The same lines in another order: the report stays with its line.
    let second = id(&plan, "/plan/lines/1/id");
    let (mut a, mut b) = (line("Footwork", 12, "minutes", 7), line("Lob serve", 25, "tries", 2));
    a["line"] = json!(second);
    b["line"] = json!(first);
    let again = w.act("home.plan", json!({ "visit": visit, "lines": [a, b] }));
    assert_eq!(again["plan"]["lines"][1]["told"], "Twice a week, in a hall");
    assert_eq!(again["plan"]["lines"][0]["amount"], 12);
    assert_eq!(again["plan"]["warm_up"], "", "the whole plan is set");

    let gone = w.refused("home.plan", json!({ "visit": visit, "lines": [a_line(&second)] }));
    assert_eq!(gone.code(), Code::NotPossible);
    assert!(gone.to_string().contains("the student told how it went"), "{gone}");
    w.act("home.tell", json!({ "line": first, "told": "" }));
    let none = w.act("home.plan", json!({ "visit": visit }));
    assert_eq!(none["plan"], Value::Null, "nothing in it is no plan");
}

fn a_line(id: &str) -> Value {
    let mut line = line("Footwork", 12, "minutes", 7);
    line["line"] = json!(id);
    line
}

#[test]
fn what_cannot_be_a_plan_is_refused_all_at_once_in_words() {
    let mut w = World::new();
    let (ana, ben) = (w.student("Ana"), w.student("Ben"));
    let visit = w.visit(&ana, "2026-03-02", "2026-03-04");
    let others = w.visit(&ben, "2026-03-02", "2026-03-04");
    let theirs = w.goal(&ben, &others, "Pinch");
    let mut wrong_goal = line("Pinch", 0, "minutes", 15);
    wrong_goal["goal"] = json!(theirs);
    wrong_goal["line"] = json!(theirs);
    let before = w.act("journal.newest", json!({ "most": 1 }));
    let refused = w.refused(
        "home.plan",
        json!({ "visit": visit, "lines": [line("", 10_000, "tries", 3), wrong_goal] }),
    );
    let said = problems(&refused);
    let fields: Vec<&str> = said.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(
        fields,
        [
            "lines[0].what",
            "lines[0].amount",
            "lines[1].goal",
            "lines[1].amount",
            "lines[1].a_week",
            "lines[1].line"
        ]
    );
    assert!(said[1].1.starts_with("10000 tries at a time are too many to do well"), "{said:?}");
    assert_eq!(w.act("journal.newest", json!({ "most": 1 })), before, "nothing was written");
    let many: Vec<Value> = (0..9).map(|n| line(&format!("Shot {n}"), 10, "tries", 1)).collect();
    let refused = w.refused("home.plan", json!({ "visit": visit, "lines": many }));
    assert_eq!(problems(&refused)[0].0, "lines");
    let plan =
        w.act("home.plan", json!({ "visit": visit, "lines": [line("Lob", 500, "tries", 14)] }));
    let lob = id(&plan, "/plan/lines/0/id");
    let early = w.refused("home.tell", json!({ "line": lob, "told": "x", "day": "2026-03-09" }));
    assert_eq!(problems(&early)[0].0, "day", "a day still to come");
}

#[test]
fn the_next_visit_begins_with_the_last_plan() {
    let mut w = World::new();
    let student = w.student("Ana");
    assert_eq!(w.act("home.last", json!({ "student": student })), Value::Null);
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let plan = json!({
        "visit": first, "warm_up": "Rope", "lines": [line("Lob", 20, "tries", 3)],
    });
    w.act("home.plan", plan);
    let open = w.act("home.last", json!({ "student": student }));
    assert_eq!(open, Value::Null, "none was made before the visit that is open");
    w.act("visits.close", json!({ "visit": first }));
    assert_eq!(w.act("home.last", json!({ "student": student }))["visit"], json!(first));
    let second = w.visit(&student, "2026-06-02", "2026-06-04");
    let last = w.act("home.last", json!({ "student": student }));
    assert_eq!(last["visit"], json!(first));
    assert_eq!(last["when"], "2 – 4 March 2026");
    let next = w.act("home.show", json!({ "visit": second }));
    assert_eq!(next["warm_up"], "Rope", "the standing warm-up is carried over");
    let of_first = w.act("home.last", json!({ "student": student, "before": first }));
    assert_eq!(of_first, Value::Null);
}

#[test]
fn the_letter_has_the_plan_in_sentences_and_a_report_only_as_told() {
    let mut w = World::new();
    let student = w.student("Ana");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let keys = |w: &mut World, visit: &str| -> Vec<String> {
        let draft = w.act("letters.draft", json!({ "visit": visit }));
        draft["parts"].as_array().unwrap().iter().map(|p| id(p, "/key")).collect()
    };
    assert!(!keys(&mut w, &first).contains(&"home".to_owned()), "no plan, no part");
    let goal = w.goal(&student, &first, "Lob serve");
    w.total(&goal, &first, "end_test", 5);
    let plan = w.act(
        "home.plan",
        json!({
            "visit": first, "warm_up": "Rope", "note": "Rest on Sunday.",
            "lines": [line("Lob serve", 20, "tries", 3), line("Footwork", 10, "minutes", 1)],
        }),
    );
    let order = keys(&mut w, &first);
    let at = order.iter().position(|key| key == "home").unwrap();
    assert_eq!([order[at - 1].as_str(), order[at + 1].as_str()], ["carried", "next"]);
    let part = |w: &mut World, visit: &str| -> Value {
        let draft = w.act("letters.draft", json!({ "visit": visit }));
        draft["parts"].as_array().unwrap().iter().find(|p| p["key"] == "home").unwrap().clone()
    };
    let said = part(&mut w, &first);
    assert_eq!(
        said["text"],
        "Warm up first: Rope\n\nLob serve: 20 tries, three times a week.\n\n\
         Footwork: 10 minutes, once a week.\n\nRest on Sunday."
    );
    let line = id(&plan, "/plan/lines/0/id");
    let second = w.visit(&student, "2026-06-02", "2026-06-04");
    w.act("home.tell", json!({ "line": line, "told": "Every Monday,\nin the hall" }));
    for (thing, id) in [("student", &student), ("visit", &first)] {
        let past = w.act("reports.history", json!({ "thing": thing, "id": id, "most": 1 }));
        assert_eq!(past["acts"][0]["label"], "As told by the student: Lob serve", "of the {thing}");
    }
    let told = part(&mut w, &second);
    assert_eq!(told["text"], "You told me of \u{201c}Lob serve\u{201d}: Every Monday, in the hall");
    assert_eq!(
        told["from"],
        json!([
            "as told by the student, Lob serve: 20 tries, three times a week: Every Monday, in the hall"
        ])
    );
    assert_eq!(part(&mut w, &first), said, "the letter of the first visit does not know of it");
    w.act("letters.choose_language", json!({ "visit": first, "language": "de" }));
    assert_eq!(
        part(&mut w, &first)["text"],
        "Erst aufwärmen: Rope\n\nLob serve: 20 Versuche, dreimal pro Woche.\n\n\
         Footwork: 10 Minuten, einmal pro Woche.\n\nRest on Sunday."
    );
    assert_eq!(
        part(&mut w, &second)["text"],
        "Zu \u{201e}Lob serve\u{201c} hast du mir erzählt: Every Monday, in the hall"
    );
    let state = w.act("goals.show", json!({ "goal": goal }));
    assert_eq!(state["standing"]["state"], "working", "what is told moves nothing");
}

#[test]
fn the_plan_is_a_page_of_its_own() {
    let mut w = World::new();
    let student = w.student("Zoë Łukasiewicz / Team");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let of: home::OfVisit = serde_json::from_value(json!({ "visit": visit })).unwrap();
    let none = w.file.read(|db| home::document(db, of)).expect_err("no plan yet");
    assert!(matches!(none, Error::NotPossible { code: "no_plan", .. }));
    let goal = w.goal(&student, &visit, "Lob serve");
    let mut lob = line("Lob serve", 20, "tries", 3);
    lob["goal"] = json!(goal);
    w.act("home.plan", json!({ "visit": visit, "warm_up": "Rope", "lines": [lob] }));
    let (name, pdf) = w.file.read(|db| home::document(db, of)).unwrap();
    assert_eq!(name, "At home Zoë Łukasiewicz   Team 2026-03-02.pdf");
    assert!(pdf.starts_with(b"%PDF-"));
    let again = w.file.read(|db| home::document(db, of)).unwrap();
    assert_eq!(again.1, pdf, "the same plan gives the same bytes");
}

/// Read back by pdftotext (poppler).
#[test]
fn the_page_is_in_the_language_the_student_is_written_to_in() {
    let mut w = World::new();
    let student = w.student("Ana");
    let profile = json!({ "name": "Ana", "language": "de" });
    let changed = w.act("students.change", json!({ "student": student, "profile": profile }));
    assert_eq!(changed["profile"]["language"], "de");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let lines = json!([line("Lob serve", 20, "tries", 3)]);
    w.act("home.plan", json!({ "visit": visit, "warm_up": "Rope", "lines": lines }));
    let of: home::OfVisit = serde_json::from_value(json!({ "visit": visit })).unwrap();
    let page = |w: &World| {
        let (_, pdf) = w.file.read(|db| home::document(db, of)).unwrap();
        let path = w.folder.path().join("page.pdf");
        std::fs::write(&path, pdf).unwrap();
        let mut pdftotext = std::process::Command::new("pdftotext");
        let out = pdftotext.arg("-layout").arg(&path).arg("-").output().unwrap();
        String::from_utf8(out.stdout).unwrap().split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let german = page(&w);
    for words in [
        "Zu Hause: Ana",
        "Nach dem Besuch vom 2.–4. März 2026",
        "Erst aufwärmen",
        "Lob serve 20 Versuche dreimal pro Woche",
        "Hör auf, wenn etwas weh tut",
        "Seite 1 von 1",
    ] {
        assert!(german.contains(words), "{words:?} is not in {german:?}");
    }
    for english in ["At home", "visit", "Warm up", "week", "Page", "hurts"] {
        assert!(!german.contains(english), "{english:?} is in {german:?}");
    }
    let draft = w.act("letters.draft", json!({ "visit": visit }));
    assert_eq!(draft["language"], "de", "letters and pages are in one language");
    w.act("letters.choose_language", json!({ "visit": visit, "language": "en" }));
    assert_eq!(w.act("students.show", json!({ "student": student }))["profile"]["language"], "en");
    let english = page(&w);
    assert!(english.starts_with("At home: Ana After the visit of 2"), "{english:?}");
}

#[test]
fn a_plan_and_a_report_are_taken_back_by_undo() {
    let mut w = World::new();
    let student = w.student("Ana");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let set = |lines: Value| json!({ "visit": visit, "lines": lines });
    let first = w.act("home.plan", set(json!([line("Lob", 20, "tries", 3)])));
    let call = |w: &mut World, name: &str, input: Value| {
        carryover_core::commands::call(&mut w.file, name, input).unwrap().act.unwrap()
    };
    let act = call(&mut w, "home.plan", set(json!([line("Pinch", 10, "tries", 2)])));
    w.act("journal.undo", json!({ "act": act }));
    assert_eq!(w.act("home.show", json!({ "visit": visit }))["plan"], first["plan"]);
    let lob = id(&first, "/plan/lines/0/id");
    let act = call(&mut w, "home.tell", json!({ "line": lob, "told": "Not once" }));
    w.act("journal.undo", json!({ "act": act }));
    assert_eq!(w.act("home.show", json!({ "visit": visit }))["plan"]["lines"][0]["told"], "");
}
