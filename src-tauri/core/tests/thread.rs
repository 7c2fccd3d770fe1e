//! The thread through the command table: what a visit carries, what a block may be, what a letter
//! says, what the bad inputs of a day get for an answer.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use carryover_core::commands::call;
use carryover_core::error::Code;
use serde_json::{Value, json};
use world::{World, codes as fields, id};

/// The court of the hall.
fn court(world: &mut World) -> String {
    let court = json!({ "facility": world.hall, "name": "Court 1" });
    id(&world.act("facilities.add_court", court), "/courts/0/id")
}

#[test]
fn opening_a_visit_carries_working_met_and_slipped_goals_in_order_of_priority() {
    let mut w = World::new();
    let student = w.student("Ana");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let goals: Vec<String> = ["working", "met", "kept later", "aside", "closed"]
        .iter()
        .map(|title| w.goal(&student, &first, title))
        .collect();
    w.total(&goals[1], &first, "end_test", 8);
    w.total(&goals[2], &first, "end_test", 9);
    for (goal, kind) in [(&goals[3], "set_aside"), (&goals[4], "close")] {
        w.act(
            "goals.decide",
            json!({ "goal": goal, "visit": first, "kind": kind, "reason": "later" }),
        );
    }
    w.act("goals.rank", json!({ "student": student, "order": [goals[2], goals[1]] }));
    w.act("visits.close", json!({ "visit": first }));
    let second = w.visit(&student, "2026-05-02", "2026-05-04");
    let titles = |w: &mut World, visit: &str| -> Vec<String> {
        let on_court = w.act("goals.on_court", json!({ "visit": visit }));
        on_court.as_array().unwrap().iter().map(|g| id(g, "/goal/goal/title")).collect()
    };
    assert_eq!(titles(&mut w, &second), ["kept later", "met", "working"]);
    w.total(&goals[2], &second, "retest", 8);
    assert_eq!(w.stands(&goals[2]).0, "kept");
    w.act("visits.close", json!({ "visit": second }));
    let third = w.visit(&student, "2026-07-02", "2026-07-04");
    assert_eq!(titles(&mut w, &third), ["met", "working"], "a kept goal closes with its visit");
}

#[test]
fn at_most_three_goals_are_active_and_the_rest_wait() {
    let mut w = World::new();
    let student = w.student("Ana");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    for n in 0..5 {
        w.goal(&student, &visit, &format!("Goal {n}"));
    }
    let on_court = w.act("goals.on_court", json!({ "visit": visit }));
    let waits: Vec<bool> =
        on_court.as_array().unwrap().iter().map(|g| g["waits"].as_bool().unwrap()).collect();
    assert_eq!(waits, [false, false, false, true, true]);
}

#[test]
fn the_first_tries_of_a_retest_are_not_counted_and_a_slip_is_taken_back() {
    let mut w = World::new();
    let student = w.student("Ana");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &first, "Lob");
    w.total(&goal, &first, "end_test", 8);
    w.act("visits.close", json!({ "visit": first }));
    let second = w.visit(&student, "2026-05-02", "2026-05-04");
    let block = id(
        &w.act("goals.start_block", json!({ "goal": goal, "visit": second, "kind": "retest" })),
        "/id",
    );
    for made in [true, true, true, true, false] {
        w.act("goals.touch", json!({ "block": block, "made": made }));
    }
    let back = w.act("goals.take_back", json!({ "block": block }));
    assert_eq!(
        back["count"],
        json!({ "made": 1, "tries": 1 }),
        "three are not counted, one was taken back"
    );
    assert_eq!(w.stands(&goal).0, "met", "an open block moves nothing");
    w.act("goals.end_block", json!({ "block": block }));
    let late = w.refused("goals.touch", json!({ "block": block, "made": true }));
    assert_eq!(late.code(), Code::NotPossible);
    let again =
        w.refused("goals.start_block", json!({ "goal": goal, "visit": second, "kind": "retest" }));
    assert_eq!(again.code(), Code::NotPossible, "a retest comes before any coaching");
}

#[test]
fn bad_counts_and_days_get_a_sentence_at_their_field() {
    let mut w = World::new();
    let student = w.student("Ana");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &visit, "Lob");
    let total = |made: i64, tries: i64, day: &str| json!({ "goal": goal, "visit": visit, "kind": "practice", "made": made, "tries": tries, "day": day });
    for (input, field) in [
        (total(11, 10, ""), "made"),
        (total(-1, 10, ""), "made"),
        (total(0, 0, ""), "tries"),
        (total(1, 10, "2026-03-09"), "day"),
        (total(1, 10, "2026-02-30"), "day"),
    ] {
        let refused = w.refused("goals.enter_total", input.clone());
        assert_eq!(fields(&refused)[0].0, field, "{input}");
    }
    let backwards = json!({ "student": student, "facility": w.hall, "first_day": "2026-04-05", "last_day": "2026-04-01" });
    assert_eq!(
        fields(&w.refused("visits.plan", backwards)),
        [("last_day".into(), "ends_before_start".into())]
    );
    let overlaps = json!({ "student": student, "facility": w.hall, "first_day": "2026-03-04", "last_day": "2026-03-06" });
    assert_eq!(
        fields(&w.refused("visits.plan", overlaps)),
        [("first_day".into(), "overlaps".into())]
    );
    let criterion = json!({
        "student": student, "title": "x", "condition": "fed", "counts": "result", "need": 12, "of": 10, "cue": "c",
    });
    assert_eq!(
        fields(&w.refused("goals.set", criterion)),
        [("need".into(), "more_than_tries".into())]
    );
}

/// Clock changes of 2026 in Lisbon: 29 March 1:00 to 2:00, 25 October 2:00 to 1:00 (EU Directive
/// 2000/84/EC).
#[test]
fn hours_that_do_not_exist_are_refused_and_those_that_come_twice_are_asked_about() {
    let mut w = World::new();
    let student = w.student("Ana");
    let spring = w.planned(&student, "2026-03-28", "2026-03-30");
    let autumn = w.planned(&student, "2026-10-24", "2026-10-26");
    let lesson = |visit: &str, day: &str, starts: &str, which: &str, hall: &str| json!({ "visits": [visit], "facility": hall, "day": day, "starts": starts, "which": which, "minutes": 60 });
    let hall = w.hall.clone();
    let gap = w.refused("lessons.plan", lesson(&spring, "2026-03-29", "01:30", "once", &hall));
    assert_eq!(fields(&gap), [("starts".into(), "gap".into())]);
    assert!(gap.to_string().contains("02:00"), "the next time that comes is offered: {gap}");
    let twice = w.refused("lessons.plan", lesson(&autumn, "2026-10-25", "01:30", "once", &hall));
    assert_eq!(fields(&twice), [("which".into(), "twice".into())]);
    let second = w.act("lessons.plan", lesson(&autumn, "2026-10-25", "01:30", "second", &hall));
    assert_eq!(second["which"], "second");
    let outside = w.refused("lessons.plan", lesson(&autumn, "2026-10-29", "10:00", "once", &hall));
    assert_eq!(fields(&outside), [("day".into(), "outside_visit".into())]);
}

#[test]
fn clashes_of_coach_student_and_court_are_told_and_not_refused() {
    let mut w = World::new();
    let (ana, ben) = (w.student("Ana"), w.student("Ben"));
    let (va, vb) =
        (w.planned(&ana, "2026-03-10", "2026-03-12"), w.planned(&ben, "2026-03-10", "2026-03-12"));
    let court = court(&mut w);
    let plan = |visit: &str, starts: &str, w: &World| json!({ "visits": [visit], "facility": w.hall, "court": court, "day": "2026-03-11", "starts": starts, "minutes": 60 });
    let input = plan(&va, "10:00", &w);
    w.act("lessons.plan", input);
    let look = |who: &str, starts: &str, w: &World| json!({ "students": [who], "facility": w.hall, "court": court, "day": "2026-03-11", "starts": starts, "minutes": 60 });
    let whos = |found: Value| -> Vec<String> {
        found.as_array().unwrap().iter().map(|c| id(c, "/who")).collect()
    };
    let input = look(&ben, "10:30", &w);
    assert_eq!(whos(w.act("lessons.clashes", input)), ["court", "coach"]);
    let input = look(&ana, "10:59", &w);
    assert_eq!(whos(w.act("lessons.clashes", input)), ["student", "court", "coach"]);
    let input = look(&ana, "11:00", &w);
    assert!(whos(w.act("lessons.clashes", input)).is_empty(), "one ends as the other begins");
    let input = plan(&vb, "10:30", &w);
    w.act("lessons.plan", input);
}

#[test]
fn a_letter_says_what_the_record_says_is_edited_and_freezes() {
    let mut w = World::new();
    w.act("settings.change", json!({ "name": "Robin Hale" }));
    let student = w.student("Zoë Łukasiewicz");
    w.student("Ben Costa");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &first, "Lob serve");
    w.total(&goal, &first, "end_test", 8);
    w.act("visits.close", json!({ "visit": first }));
    let second = w.visit(&student, "2026-05-02", "2026-05-04");
    w.total(&goal, &second, "retest", 9);
    let part = |letter: &Value, key: &str| -> Value {
        letter["parts"]
            .as_array()
            .unwrap()
            .iter()
            .find(|p| p["key"] == key)
            .cloned()
            .unwrap_or(Value::Null)
    };
    let letter = w.act("letters.draft", json!({ "visit": second }));
    assert!(id(&part(&letter, "kept"), "/text").contains("Lob serve is kept"));
    assert!(
        part(&letter, "kept")["from"][0].as_str().unwrap().contains("9 of 10"),
        "the sentence names its numbers"
    );
    // The coach's words stay, and are marked when the record moves under them.
    let words = "Ask Ben Costa how it felt.";
    let edited = w.act("letters.edit", json!({ "visit": second, "part": "moved", "text": words }));
    assert_eq!(part(&edited, "moved")["text"], words);
    assert!(
        edited["warnings"][0].as_str().unwrap().contains("Ben Costa"),
        "another student's name is warned of"
    );
    w.total(&goal, &second, "end_test", 10);
    let later = w.act("letters.draft", json!({ "visit": second }));
    assert_eq!(part(&later, "moved")["outdated"], true);
    assert_eq!(part(&later, "moved")["text"], words);
    w.act("letters.edit", json!({ "visit": second, "part": "moved", "text": null }));
    let issued = w.act("letters.issue", json!({ "visit": second }));
    let letter = id(&issued, "/letter");
    let read = |w: &World| {
        let which = serde_json::from_value(json!(letter)).unwrap();
        w.file.read(|db| carryover_core::letters::document(db, which)).unwrap()
    };
    let (name, pdf) = read(&w);
    assert!(
        name.starts_with("Progress letter Zoë Łukasiewicz ") && name.ends_with(".pdf"),
        "{name}"
    );
    w.act("students.change", json!({ "student": student, "profile": { "name": "Another Name" } }));
    assert_eq!(read(&w).1, pdf, "what was issued never changes");
    let acts = w.act("journal.newest", json!({ "most": 5 }));
    let act = acts.as_array().unwrap().iter().find(|a| a["act"] == "letters.issue").unwrap();
    assert_eq!(act["undoable"], false, "a letter that may have left is not taken back");
}

#[test]
fn a_season_from_a_csv_file_is_taken_reported_and_undone_whole() {
    use base64::Engine;
    let mut w = World::new();
    let csv = "Name;Arrived;Left;Goal;When;Result\n\
               Ana Silva;03/04/2025;05/04/2025;Drive serve;end;8 of 10\n\
               \"Silva, Ana\";14/09/2025;16/09/2025;Drive serve;start;9/10\n\
               Ana Silva;14/09/2025;16/09/2025;Drive serve;end;80%\n";
    let content = base64::engine::general_purpose::STANDARD.encode(csv);
    let seen = w.act("exchange.read_csv", json!({ "content": content }));
    let taken = call(
        &mut w.file,
        "exchange.take_csv",
        json!({ "content": content, "columns": seen["columns"], "facility": w.hall }),
    )
    .unwrap();
    assert_eq!(taken.value["lines"], json!([2, 3]));
    assert_eq!(taken.value["not_taken"][0]["line"], 4);
    let students = w.act("students.list", json!({}));
    assert_eq!(students.as_array().unwrap().len(), 1, "one person, however the name is written");
    let goals = w.act("goals.list", json!({ "student": students[0]["id"] }));
    assert_eq!(goals[0]["state"], "kept");
    w.act("journal.undo", json!({ "act": taken.act }));
    assert_eq!(w.act("students.list", json!({})), json!([]));
    assert!(w.file.check().unwrap().sound);
}

#[test]
fn near_names_are_one_person_only_when_the_coach_says_so() {
    use base64::Engine;
    let csv = "Name,Arrived,Goal,When,Result\n\
               Anna Silva,2025-04-03,Drive serve,end,8 of 10\n\
               Bo Lind,2025-04-03,Pinch,end,8 of 10\n\
               Bo Lindt,2025-09-14,Pinch,start,9 of 10\n";
    let content = base64::engine::general_purpose::STANDARD.encode(csv);
    let taken = |same: Value| {
        let mut w = World::new();
        w.student("Ana Silva");
        let seen = w.act("exchange.read_csv", json!({ "content": content }));
        let near: Vec<_> = seen["near"]
            .as_array()
            .unwrap()
            .iter()
            .map(|n| {
                (
                    n["name"].as_str().unwrap(),
                    n["other"].as_str().unwrap(),
                    n["other_line"].as_u64(),
                )
            })
            .collect();
        assert_eq!(near, [("Anna Silva", "Ana Silva", None), ("Bo Lind", "Bo Lindt", Some(4))]);
        let columns = &seen["columns"];
        let ask =
            json!({ "content": content, "columns": columns, "facility": w.hall, "same": same });
        w.act("exchange.take_csv", ask);
        let listed = w.act("students.list", json!({}));
        let names = listed.as_array().unwrap().iter();
        names.map(|s| s["name"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(taken(json!({})), ["Ana Silva", "Anna Silva", "Bo Lind", "Bo Lindt"]);
    let same = json!({ "anna silva": "ana silva", "bo lind": "bo lindt" });
    assert_eq!(taken(same), ["Ana Silva", "Bo Lindt"]);
    let round = json!({ "bo lind": "bo lindt", "bo lindt": "bo lind" });
    assert_eq!(taken(round).len(), 4, "a circle of names ends, and says nothing");
}

#[test]
fn a_letter_written_late_says_what_stood_at_its_own_visit() {
    let mut w = World::new();
    let student = w.student("Ana");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &first, "Lob serve");
    w.total(&goal, &first, "end_test", 8);
    w.act("visits.close", json!({ "visit": first }));
    let second = w.visit(&student, "2026-05-02", "2026-05-04");
    w.total(&goal, &second, "retest", 9);
    let new_words = json!({ "goal": goal, "cue": "Finish high", "aim": "" });
    w.act("goals.change_words", new_words);
    w.act("visits.close", json!({ "visit": second }));
    let letter = w.act("letters.draft", json!({ "visit": first }));
    let text = letter["parts"].to_string();
    assert!(
        text.contains("it was reached, and the first tries of your next visit will tell"),
        "{text}"
    );
    assert!(
        text.contains("Lift") && !text.contains("Finish high"),
        "the words that were in force: {text}"
    );
    assert!(!text.contains("is kept"), "{text}");
}

#[test]
fn a_letter_never_says_that_a_test_below_reached_what_was_asked() {
    let mut w = World::new();
    let student = w.student("Ana");
    let first = w.visit(&student, "2026-03-02", "2026-03-04");
    let goal = w.goal(&student, &first, "Lob serve");
    w.total(&goal, &first, "end_test", 8);
    w.act("visits.close", json!({ "visit": first }));
    let second = w.visit(&student, "2026-05-02", "2026-05-04");
    w.total(&goal, &second, "end_test", 5);
    assert_eq!(w.stands(&goal).0, "met", "a retest is owed");
    let text = w.act("letters.draft", json!({ "visit": second }))["parts"].to_string();
    assert!(!text.contains("reached what we asked"), "{text}");
}

#[test]
fn people_places_and_goals_are_found_by_parts_of_their_names() {
    let mut world = World::new();
    let student = world.student("Zoë Álvarez");
    let visit = world.visit(&student, "2026-03-01", "2026-03-03");
    world.goal(&student, &visit, "Ceiling ball, deep");
    let mut found = |text: &str| {
        let found = world.act("reports.find", json!({ "text": text }));
        let kinds = found.as_array().unwrap().iter();
        kinds.map(|f| format!("{} {} {}", f["kind"], f["name"], f["of"])).collect::<Vec<_>>()
    };
    assert_eq!(found("alv zoe"), [r#""student" "Zoë Álvarez" """#]);
    assert_eq!(found("HALL"), [r#""facility" "Hall" """#]);
    assert_eq!(found("deep ceil"), [r#""goal" "Ceiling ball, deep" "Zoë Álvarez""#]);
    assert_eq!(found("  "), Vec::<String>::new());
    assert_eq!(found("nobody"), Vec::<String>::new());
}
