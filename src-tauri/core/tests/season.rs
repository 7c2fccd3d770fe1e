//! What is known of a student beside the goals, the load of a visit, and the season across all
//! students, through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use carryover_core::error::Code;
use serde_json::{Value, json};
use world::{World, id, problems, text};

/// A lesson of the visits, given in full.
fn given(w: &mut World, visits: &[&str], day: &str, starts: &str, minutes: u32) -> String {
    let input = json!({
        "visits": visits, "facility": w.hall, "day": day, "starts": starts, "minutes": minutes,
    });
    let lesson = id(&w.act("lessons.plan", input), "/id");
    w.act("lessons.give", json!({ "lesson": lesson }));
    lesson
}

#[test]
fn a_student_has_a_sport_a_division_and_usual_hours() {
    let mut w = World::new();
    let profile = json!({
        "name": "Ana", "sport": "squash", "division": "3.5 C", "usual_minutes": 270,
    });
    let ana = w.act("students.add", profile);
    assert_eq!(ana["profile"]["sport"], "squash");
    assert_eq!(ana["profile"]["division"], "3.5 C");
    assert_eq!(ana["profile"]["usual_minutes"], 270);
    let student = id(&ana, "/id");
    let changed = w.act(
        "students.change",
        json!({ "student": student, "profile": { "name": "Ana", "sport": "padel" } }),
    );
    assert_eq!(changed["profile"]["usual_minutes"], Value::Null, "not known is not 0");
    assert_eq!(changed["profile"]["division"], "");
    let wrong = json!({ "name": "", "sport": "bowls", "usual_minutes": 10_081 });
    let said = problems(&w.refused("students.add", wrong));
    let fields: Vec<&str> = said.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(fields, ["sport", "name", "usual_minutes"]);
    assert!(said[2].1.contains("0 to 168 hours"), "{said:?}");
}

#[test]
fn facts_stand_newest_first_by_kind_and_can_be_corrected() {
    let mut w = World::new();
    let student = w.student("Ana");
    w.on("2026-03-10");
    let mut add = |kind: &str, day: &str, words: &str| {
        let fact = json!({ "student": student, "kind": kind, "day": day, "words": words });
        w.act("students.add_fact", fact)
    };
    add("history", "2019-09-01", "Began at school");
    add("equipment", "2025-01-05", "Racquet of 170 g");
    add("level", "", "Plays in the B division");
    let all = add("equipment", "2026-02-01", "Racquet of 160 g, new strings");
    let words = |all: &Value| -> Vec<String> {
        all.as_array().unwrap().iter().map(|f| id(f, "/words")).collect()
    };
    assert_eq!(
        words(&all),
        [
            "Racquet of 160 g, new strings",
            "Racquet of 170 g",
            "Plays in the B division",
            "Began at school"
        ]
    );
    assert_eq!(all[2]["day"], "2026-03-10", "left out: today");
    let fact = id(&all, "/1/id");
    let corrected = json!({ "fact": fact, "kind": "equipment", "words": "Racquet of 175 g" });
    let all = w.act("students.change_fact", corrected);
    assert_eq!(all[1]["words"], "Racquet of 175 g");
    assert_eq!(all[1]["day"], "2025-01-05", "its day stays");
    let left = w.act("students.remove_fact", json!({ "fact": fact }));
    assert_eq!(left.as_array().unwrap().len(), 3);
    let long = "x".repeat(501);
    let refused = w.refused(
        "students.add_fact",
        json!({ "student": student, "kind": "level", "day": "2026-02-30", "words": long }),
    );
    let fields: Vec<String> = problems(&refused).into_iter().map(|(field, _)| field).collect();
    assert_eq!(fields, ["words", "day"]);
    let empty = json!({ "student": student, "kind": "level", "words": " " });
    assert_eq!(problems(&w.refused("students.add_fact", empty))[0].1, "The fact is empty.");
    assert_eq!(w.refused("students.remove_fact", json!({ "fact": fact })).code(), Code::NotFound);
}

/// Three days: 60 min at 5, then 90 min at 6 and 30 min at 4, then rest. Worked by hand:
/// loads 300, 660, 0; total 960; mean 320; deviations −20, 340, −320, squares 400 + 115600 + 102400
/// = 218400, halved 109200, root 330.454; monotony 320 ÷ 330.454 = 0.96837; strain 929.63.
/// 180 min in 3 days beside 210 min a week, of which 90 fall on 3 days: twice as much.
#[test]
fn the_load_of_a_visit_is_minutes_times_the_students_own_rating() {
    let mut w = World::new();
    let usual = json!({ "name": "Ana", "usual_minutes": 210 });
    let student = id(&w.act("students.add", usual), "/id");
    let other = w.student("Ben");
    let visit = w.visit(&student, "2026-03-02", "2026-03-04");
    let shared = w.visit(&other, "2026-03-02", "2026-03-04");
    let none = w.act("reports.load", json!({ "visit": visit }));
    assert_eq!(none["words"], json!(["No lesson was taught at this visit yet."]));
    assert_eq!(none["load"], Value::Null);
    let lessons = [
        given(&mut w, &[&visit], "2026-03-02", "09:30", 60),
        given(&mut w, &[&visit, &shared], "2026-03-03", "09:30", 90),
        given(&mut w, &[&visit], "2026-03-03", "15:00", 30),
    ];
    w.on("2026-03-04");
    let rate = |w: &mut World, lesson: &str, student: &str, effort: u32| {
        let rated = json!({ "lesson": lesson, "student": student, "effort": effort });
        w.act("lessons.rate_effort", rated)
    };
    rate(&mut w, &lessons[0], &student, 5);
    rate(&mut w, &lessons[1], &student, 6);
    let both = rate(&mut w, &lessons[1], &other, 9);
    assert_eq!(both["students"][0]["effort"], 6);
    assert_eq!(both["students"][1]["effort"], 9, "each student rates alone");
    let partly = w.act("reports.load", json!({ "visit": visit }));
    assert_eq!(partly["rated"], 840);
    assert_eq!(partly["load"], Value::Null, "a missing rating is no rest");
    assert_eq!(partly["days"][1]["unrated"], 1);
    let said = id(&partly, "/words/0");
    assert!(said.starts_with("No rating yet: 3 March 2026, 15:00."), "{said}");
    rate(&mut w, &lessons[2], &student, 4);
    let load = w.act("reports.load", json!({ "visit": visit }));
    let days: Vec<&Value> = load["days"].as_array().unwrap().iter().map(|d| &d["load"]).collect();
    assert_eq!(days, [300, 660, 0]);
    for (name, want) in [
        ("total", 960.0),
        ("mean", 320.0),
        ("sd", 330.454),
        ("monotony", 0.96837),
        ("strain", 929.63),
    ] {
        let got = load["load"][name].as_f64().unwrap();
        assert!((got - want).abs() < 0.01, "{name}: {got} or {want}");
    }
    assert_eq!(load["usual"], json!({ "week": 210, "share": 90.0, "times": 2.0 }));
    let said = id(&load, "/words/0");
    assert!(
        said.starts_with(
            "3 h on court in 3 days. Usual is 3 h 30 min a week, which makes 1 h 30 min in 3 days: \
             2.0 times as much here."
        ),
        "{said}"
    );
    assert!(said.contains("says nothing about injury and clears nobody"), "{said}");
    assert!(said.contains("physician or a physiotherapist"), "{said}");
    let unknown = w.act("reports.load", json!({ "visit": shared }));
    assert_eq!(unknown["usual"], Value::Null);
    assert!(id(&unknown, "/words/0").contains("is not known"));
}

#[test]
fn days_still_to_come_are_no_rest_and_a_missed_lesson_has_no_effort() {
    let mut w = World::new();
    let student = id(&w.act("students.add", json!({ "name": "Ana", "usual_minutes": 0 })), "/id");
    let visit = w.visit(&student, "2026-03-02", "2026-03-08");
    let lesson = given(&mut w, &[&visit], "2026-03-02", "09:30", 60);
    let rated = json!({ "lesson": lesson, "student": student, "effort": 7 });
    w.act("lessons.rate_effort", rated);
    let load = w.act("reports.load", json!({ "visit": visit }));
    assert_eq!(load["days"].as_array().unwrap().len(), 1, "the week has only begun");
    assert_eq!(load["load"]["total"], 420.0);
    assert_eq!(load["load"]["sd"], Value::Null);
    assert_eq!(load["usual"]["times"], Value::Null, "nothing is a multiple of no time");
    let off = json!({ "lesson": lesson, "student": student, "effort": 11 });
    assert_eq!(problems(&w.refused("lessons.rate_effort", off))[0].0, "effort");
    let other = w.student("Ben");
    let not_there = json!({ "lesson": lesson, "student": other, "effort": 5 });
    assert_eq!(problems(&w.refused("lessons.rate_effort", not_there))[0].0, "student");
    w.act("lessons.rate_effort", json!({ "lesson": lesson, "student": student }));
    assert_eq!(
        w.act("lessons.show", json!({ "lesson": lesson }))["students"][0]["effort"],
        Value::Null
    );
    w.act("lessons.miss", json!({ "lesson": lesson, "reason": "Flight" }));
    let missed = json!({ "lesson": lesson, "student": student, "effort": 5 });
    assert_eq!(w.refused("lessons.rate_effort", missed).code(), Code::NotPossible);
}

#[test]
fn the_season_tells_what_moved_what_waits_and_who_is_expected() {
    let mut w = World::new();
    let (ana, ben) = (w.student("Ana"), w.student("Ben"));
    let first = w.visit(&ana, "2026-03-02", "2026-03-04");
    let (lob, wall) = (w.goal(&ana, &first, "Lob serve"), w.goal(&ana, &first, "Back wall"));
    w.total(&lob, &first, "end_test", 9);
    w.total(&wall, &first, "end_test", 9);
    let see = |words: &str, student: &str, visit: &str| json!({ "student": student, "kind": "fault", "words": words, "visit": visit });
    w.act("observations.see", see("Late feet", &ana, &first));
    w.act("visits.close", json!({ "visit": first }));
    let bens = w.visit(&ben, "2026-04-02", "2026-04-04");
    let pinch = w.goal(&ben, &bens, "Pinch");
    w.total(&pinch, &bens, "end_test", 4);
    w.act("observations.see", see("late  feet", &ben, &bens));
    w.act("observations.see", see("Drops the wrist", &ben, &bens));
    w.act("visits.close", json!({ "visit": bens }));
    let second = w.visit(&ana, "2026-06-02", "2026-06-04");
    w.total(&lob, &second, "retest", 8);
    w.total(&wall, &second, "retest", 2);
    w.act("visits.close", json!({ "visit": second }));
    let expect = |from: &str, to: &str| json!({ "student": ben, "from": from, "to": to });
    w.act("visits.expect", expect("2026-06-01", "2026-06-30"));
    w.act("visits.expect", expect("2026-07-01", "2026-07-31"));
    w.act("visits.expect", expect("2026-09-01", "2026-09-30"));
    w.on("2026-07-10");
    let season = w.act("reports.season", json!({}));
    assert_eq!(season["span"], json!({ "first": "2025-07-11", "last": "2026-07-10" }));
    assert_eq!(season["moved"], json!({ "met": 2, "kept": 1, "slipped": 1, "raised": 0 }));
    let said = |of: &Value, keys: &[&str]| -> Vec<String> {
        let text = |one: &Value, key: &str| one[key].as_str().unwrap_or_default().to_owned();
        let row = |one| keys.iter().map(|key| text(one, key)).collect::<Vec<_>>().join(" | ");
        of.as_array().unwrap().iter().map(row).collect()
    };
    assert_eq!(
        said(&season["moves"], &["to", "title", "name", "day", "when"]),
        [
            "slipped | Back wall | Ana | 2026-06-02 | 2 – 4 June 2026",
            "kept | Lob serve | Ana | 2026-06-02 | 2 – 4 June 2026",
            "met | Back wall | Ana | 2026-03-02 | 2 – 4 March 2026",
            "met | Lob serve | Ana | 2026-03-02 | 2 – 4 March 2026",
        ]
    );
    assert_eq!(season["moves"][1]["visit"], json!(second));
    assert_eq!(season["moves"][1]["why"], "reached again: 8 of 10 before any coaching");
    assert_eq!(
        said(&season["waits"], &["state", "title", "name", "since"]),
        ["slipped | Back wall | Ana | 2026-06-04", "working | Pinch | Ben | 2026-04-04"]
    );
    let expected: Vec<(String, bool)> = season["awaited"]
        .as_array()
        .unwrap()
        .iter()
        .map(|a| (id(a, "/when"), a["passed"].as_bool().unwrap()))
        .collect();
    let around = |month: &str| format!("around {month} 2026");
    assert_eq!(expected, [(around("June"), true), (around("July"), false)]);
    assert_eq!(season["seen"][0]["times"], 2, "seen at two students, in the same words");
    assert_eq!(season["seen"][0]["students"], 2);
    assert_eq!(season["seen"][0]["name"], "Ben", "the newest");
    assert_eq!(season["seen"][1]["words"], "Drops the wrist");

    // At an open visit what is tried waits no more; who is put away waits for nothing.
    let third = w.visit(&ana, "2026-07-10", "2026-07-12");
    let waits =
        |w: &mut World| said(&w.act("reports.season", json!({}))["waits"], &["title", "since"]);
    assert_eq!(waits(&mut w), ["Back wall | 2026-07-10", "Pinch | 2026-04-04"]);
    w.total(&wall, &third, "retest", 3);
    assert_eq!(waits(&mut w), ["Pinch | 2026-04-04"]);
    w.act("students.archive", json!({ "student": ben }));
    assert_eq!(waits(&mut w), Vec::<String>::new());
}

#[test]
fn a_season_is_a_span_of_days() {
    let mut w = World::new();
    let empty = w.act("reports.season", json!({ "from": "2026-01-01", "to": "2026-01-31" }));
    assert_eq!(empty["moves"], json!([]));
    assert_eq!(empty["moved"], json!({ "met": 0, "kept": 0, "slipped": 0, "raised": 0 }));
    let leap = w.act("reports.season", json!({ "to": "2028-02-29" }));
    assert_eq!(leap["span"]["first"], "2027-03-01");
    let backwards = json!({ "from": "2026-02-01", "to": "2026-01-31" });
    assert_eq!(problems(&w.refused("reports.season", backwards))[0].0, "to");
    let wrong = json!({ "from": "31.31.2026", "to": "soon" });
    let fields: Vec<String> =
        problems(&w.refused("reports.season", wrong)).into_iter().map(|(field, _)| field).collect();
    assert_eq!(fields, ["to", "from"]);
}

#[test]
fn the_day_sheet_names_the_newest_letters_owed_and_counts_the_rest() {
    let mut w = World::new();
    let student = w.student("Ana");
    let owe = |w: &mut World, day: &str| {
        let visit = w.visit(&student, day, day);
        let goal = w.goal(&student, &visit, "Lob serve");
        w.total(&goal, &visit, "end_test", 5);
        w.act("visits.close", json!({ "visit": visit }));
        visit
    };
    // One too old to be told of, then one a day.
    owe(&mut w, "2025-10-01");
    for day in 1..=12 {
        owe(&mut w, &format!("2026-02-{day:02}"));
    }
    w.on("2026-02-20");
    let after = |w: &mut World| -> Vec<(String, String, bool)> {
        w.act("reports.day_sheet", json!({}))["after"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|line| line["leads"] == "letter" || line["leads"] == "letters")
            .map(|l| (text(&l["what"]), text(&l["when"]), l["late"].as_bool().unwrap()))
            .collect()
    };
    let named = after(&mut w);
    assert_eq!(named.len(), 12, "each is named: {named:?}");
    assert_eq!(named[0], ("Letter for Ana.".into(), "8 days ago".into(), true));

    let newest = owe(&mut w, "2026-02-18");
    w.on("2026-02-20");
    let named = after(&mut w);
    assert_eq!(named[0], ("Letter for Ana.".into(), "2 days ago".into(), false));
    assert_eq!(named.len(), 13);
    assert_eq!(named[12], ("1 more letter.".into(), "earlier".into(), true));

    w.act("letters.issue", json!({ "visit": newest }));
    assert_eq!(after(&mut w).len(), 12, "an issued letter is owed no more");
    let listed = |w: &mut World, ask: Value| w.act("letters.list", ask).as_array().unwrap().len();
    for (ask, many) in [
        (json!({}), 14),
        (json!({ "issued": true }), 1),
        (json!({ "issued": false }), 13),
        (json!({ "issued": false, "to": "2026-02-02" }), 3),
        (json!({ "issued": false, "from": "2026-02-02", "most": 5 }), 5),
    ] {
        assert_eq!(listed(&mut w, ask.clone()), many, "{ask}");
    }
}
