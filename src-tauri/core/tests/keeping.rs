//! How long things are kept, what is told once that is over, and erasing a part: health answers alone,
//! a report whose time is over.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::commands;
use carryover_core::error::Error;
use serde_json::{Value, json};
use world::{World, codes, id};

/// Words that stand nowhere else.
const WORDS: &str = "grommelfint";

/// Whether some bytes are in any file of the world's folder.
fn somewhere(w: &World, words: &str) -> bool {
    std::fs::read_dir(w.folder.path()).unwrap().flatten().any(|entry| {
        let bytes = std::fs::read(entry.path()).unwrap();
        bytes.windows(words.len()).any(|window| window == words.as_bytes())
    })
}

/// Someone with a visit in March 2026, and answers about their health in words of their own.
fn with_health(w: &mut World) -> String {
    let student = w.student("Ines Okafor");
    w.visit(&student, "2026-03-10", "2026-03-12");
    let intake = json!({ "student": student, "record": { "injuries_asked": "2026-03-10", "racquet": "Own" } });
    w.act("intake.set", intake);
    let injury = json!({ "student": student, "kind": "injury", "words": format!("Knee, {WORDS}"), "asks": true });
    let injury = w.act("intake.note_injury", injury);
    let cleared = json!({
        "student": student, "injury": injury["id"], "by_whom": format!("Dr {WORDS}"), "profession": "physician",
        "day": "2026-03-10", "says": format!("May play, {WORDS}."), "seen": "His letter",
    });
    w.act("intake.record_clearance", cleared);
    let ready = json!({ "student": student, "answered": "Ines Okafor",
        "answers": { "active": "yes", "disease": "yes", "symptoms": "no" } });
    w.act("intake.answer_readiness", ready);
    student
}

#[test]
fn health_answers_go_alone_to_the_last_byte_and_are_asked_again() {
    let mut w = World::new();
    let student = with_health(&mut w);
    let of = json!({ "student": student });
    assert!(somewhere(&w, WORDS), "they are there before, or their absence later says nothing");
    let health = w.act("students.erasing", of.clone())["health"].clone();
    assert_eq!(
        health["lines"],
        json!(["1 injury or restriction", "1 set of readiness answers", "1 clearance"])
    );
    assert_eq!(health["against"], "");

    let slip = json!({ "student": student, "name_typed": "Ines" });
    let refused = codes(&w.refused("students.erase_health", slip));
    assert_eq!(refused, [("name_typed".to_owned(), "other_name".to_owned())]);
    assert!(somewhere(&w, WORDS), "a slip erases nothing");

    let ask = json!({ "student": student, "name_typed": "Ines Okafor" });
    let erased = commands::call(&mut w.file, "students.erase_health", ask.clone()).unwrap();
    assert!(!somewhere(&w, WORDS), "not a byte is left, the history included");
    let refused = w.refused("journal.undo", json!({ "act": erased.act }));
    assert!(matches!(refused, Error::NotPossible { .. }), "{refused}");
    let checked = commands::check(&w.file).unwrap();
    assert!(checked.sound, "{:?}", checked.wrong);

    // The student, the visit and the rest of the intake stay; what is missing is asked again.
    assert_eq!(w.act("intake.show", of.clone())["record"]["racquet"], "Own");
    assert_eq!(w.act("visits.list", of.clone()).as_array().unwrap().len(), 1);
    let ready = w.act("intake.ready_person", of.clone());
    let missing = ready["missing"].to_string();
    assert!(missing.contains("Injuries and restrictions have not been asked about."), "{missing}");
    let again = w.refused("students.erase_health", ask);
    assert!(matches!(again, Error::NotPossible { code: "nothing_kept", .. }), "{again}");
}

#[test]
fn nothing_of_a_blow_to_the_head_goes_before_a_clearance_without_an_end() {
    let mut w = World::new();
    let student = with_health(&mut w);
    let head = json!({ "student": student, "kind": "head", "words": "Hit by a ball" });
    let head = w.act("intake.note_injury", head);
    let ask = json!({ "student": student, "name_typed": "Ines Okafor" });
    let refuses = |w: &mut World| {
        let refused = w.refused("students.erase_health", ask.clone());
        assert!(matches!(refused, Error::NotPossible { code: "head_injury", .. }), "{refused}");
    };
    refuses(&mut w);
    let cleared = |until: &str| {
        json!({
            "student": student, "injury": head["id"], "by_whom": "Dr Vale", "profession": "physician",
            "day": "2026-03-10", "says": "May play.", "until": until, "seen": "His letter",
        })
    };
    w.act("intake.record_clearance", cleared("2026-04-10"));
    refuses(&mut w);
    w.act("intake.record_clearance", cleared(""));
    w.act("students.erase_health", ask);
    assert_eq!(w.act("intake.injuries", json!({ "student": student })), json!([]));
}

#[test]
fn a_report_goes_only_once_its_time_is_over() {
    let mut w = World::new();
    w.on("2026-03-10");
    let report = json!({
        "person": "Tomas Vale", "role": "bystander", "happened": format!("A ball hit his arm, {WORDS}."),
        "called": "no", "head": "no", "author": "Nuala Byrne",
    });
    let incident = w.act("intake.record_incident", json!({ "report": report }));
    let which = json!({ "incident": incident["id"] });
    w.act(
        "intake.sign_incident",
        json!({ "incident": incident["id"], "signature": "Nuala Byrne" }),
    );
    let kept = |w: &mut World, words: &str| {
        let refused = w.refused("intake.erase_incident", which.clone());
        assert!(matches!(refused, Error::NotPossible { code: "kept_longer", .. }), "{refused}");
        assert!(refused.to_string().contains(words), "{refused}");
    };
    kept(&mut w, "Say first how long reports are kept");
    w.act("keeping.set_spans", json!({ "report": 36 }));
    w.on("2029-03-10");
    kept(&mut w, "kept until 10 March 2029");
    assert_eq!(w.act("keeping.due", json!({})), json!([]), "its last day is not over yet");
    w.on("2029-03-11");
    let due = w.act("keeping.due", json!({}));
    assert_eq!((&due[0]["kept"], &due[0]["until"]), (&json!("report"), &json!("2029-03-10")));
    let sheet = w.act("reports.day_sheet", json!({}));
    let lines: Vec<&Value> = sheet["after"].as_array().unwrap().iter().collect();
    assert_eq!(
        lines.last().unwrap()["what"],
        "The incident report about Tomas Vale: the time is over."
    );
    w.act("intake.erase_incident", which);
    assert!(!somewhere(&w, WORDS));
    assert_eq!(w.act("keeping.due", json!({})), json!([]));
    assert!(commands::check(&w.file).unwrap().sound);
}

/// What is due on days around the end of each span: months are counted to the same day of the month,
/// or to the last one there is (31 August and six months: 28 February).
#[test]
fn what_is_over_is_told_from_the_day_after() {
    let mut w = World::new();
    let asked = json!({ "name": "Ana Reis", "enquired": "2026-02-28" });
    let asked = id(&w.act("students.add", asked), "/id");
    let came = with_health(&mut w);
    assert_eq!(w.act("keeping.due", json!({})), json!([]), "no number is set by the program");
    w.act("keeping.set_spans", json!({ "enquiry": 6, "health": 12, "person": 36 }));
    let due = |w: &mut World, day: &str| -> Vec<(String, String)> {
        w.on(day);
        let due = w.act("keeping.due", json!({}));
        due.as_array().unwrap().iter().map(|d| (id(d, "/kept"), id(d, "/student"))).collect()
    };
    let pair = |kept: &str, who: &String| (kept.to_owned(), who.clone());
    assert_eq!(due(&mut w, "2026-08-28"), []);
    assert_eq!(due(&mut w, "2026-08-29"), [pair("enquiry", &asked)]);
    assert_eq!(due(&mut w, "2027-03-12"), [pair("enquiry", &asked)]);
    let both = [pair("enquiry", &asked), pair("health", &came)];
    assert_eq!(due(&mut w, "2027-03-13"), both);
    // A visit to come starts the time anew; one that was called off does not.
    let visit = w.planned(&came, "2027-05-01", "2027-05-03");
    assert_eq!(due(&mut w, "2027-03-13"), [pair("enquiry", &asked)]);
    w.act("visits.call_off", json!({ "visit": visit, "reason": "Ill" }));
    assert_eq!(due(&mut w, "2027-03-13"), both);
    // Who goes as a whole is not told of in parts.
    let whole = [pair("enquiry", &asked), pair("person", &came)];
    assert_eq!(due(&mut w, "2029-03-13"), whole);
    // Someone who asked and has a visit is no enquiry any more.
    w.planned(&asked, "2029-04-01", "2029-04-03");
    assert_eq!(due(&mut w, "2029-03-13"), [pair("person", &came)]);
}

#[test]
fn a_number_that_is_none_is_refused_by_its_field() {
    let mut w = World::new();
    let none = json!({ "enquiry": -1, "health": 48, "report": 1201, "person": 36 });
    let refused = codes(&w.refused("keeping.set_spans", none));
    let refused: Vec<(&str, &str)> =
        refused.iter().map(|(field, code)| (field.as_str(), code.as_str())).collect();
    let longer = "longer_than_all";
    assert_eq!(
        refused,
        [("enquiry", "no_span"), ("report", "no_span"), ("health", longer), ("report", longer)]
    );
    assert_eq!(w.act("keeping.spans", json!({}))["person"], Value::Null, "nothing was kept of it");
}

#[test]
fn an_enquiry_is_marked_until_there_is_a_visit() {
    let mut w = World::new();
    let asked = json!({ "name": "Ana Reis", "enquired": "2026-02-27" });
    let asked = id(&w.act("students.add", asked), "/id");
    assert_eq!(w.act("students.list", json!({}))[0]["asked"], "2026-02-27");
    let told = |w: &mut World| w.act("reports.day_sheet", json!({}))["after"].to_string();
    assert!(told(&mut w).contains("Ana Reis asked for lessons."));
    w.planned(&asked, "2026-04-01", "2026-04-03");
    assert_eq!(w.act("students.list", json!({}))[0]["asked"], Value::Null);
    assert!(!told(&mut w).contains("asked for lessons"));
}
