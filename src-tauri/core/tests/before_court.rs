//! Before anyone steps on court: what is missing, what blocks, who may accept what, and what no act
//! can take back.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

mod world;

use carryover_core::commands::{call, check};
use carryover_core::error::Error;
use serde_json::{Value, json};
use world::{World, codes, id, text};

/// A student of age with everything in place at the hall, and a lesson on the visit's second day.
struct Ready {
    student: String,
    visit: String,
    lesson: String,
}

fn in_place(w: &mut World, student: &str) {
    let by = json!({ "name": "Ana Silva" });
    let emergency = json!({ "name": "Rui Silva", "phone": "+351 900 000 001" });
    let record = json!({
        "eyewear": "Guard 2", "eyewear_standard": "ASTM F3164", "injuries_asked": "2026-03-01",
    });
    w.act("intake.set", json!({ "student": student, "record": record, "emergency": emergency }));
    let answers = json!({ "active": "yes", "disease": "no", "symptoms": "no" });
    let readiness = json!({ "student": student, "answers": answers, "answered": "Ana Silva" });
    w.act("intake.answer_readiness", readiness);
    for kind in ["health_data", "emergency_treatment"] {
        let given = json!({ "student": student, "kind": kind, "given": true, "by": by });
        w.act("intake.give_consent", given);
    }
}

fn granted(w: &mut World) {
    let teaching = json!({ "facility": w.hall, "teaching": { "state": "granted" } });
    w.act("facilities.set_teaching", teaching);
}

fn lesson(w: &mut World, visit: &str, day: &str) -> String {
    let input = json!({
        "visits": [visit], "facility": w.hall, "day": day, "starts": "10:00", "minutes": 60,
    });
    id(&w.act("lessons.plan", input), "/id")
}

fn grown_up(w: &mut World) -> Ready {
    w.on("2026-03-01");
    let student =
        id(&w.act("students.add", json!({ "name": "Ana Silva", "born": "1980-05-04" })), "/id");
    in_place(w, &student);
    granted(w);
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let lesson = lesson(w, &visit, "2026-03-11");
    Ready { student, visit, lesson }
}

fn ready(w: &mut World, lesson: &str) -> Value {
    w.act("intake.ready", json!({ "lesson": lesson }))[0].clone()
}

fn missing(w: &mut World, lesson: &str) -> Vec<String> {
    let ready = ready(w, lesson);
    ready["missing"].as_array().unwrap().iter().map(|m| text(&m["about"])).collect()
}

#[test]
fn nothing_asked_is_said_thing_by_thing_and_goes_away_thing_by_thing() {
    let mut w = World::new();
    let student = w.student("Ana Silva");
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let lesson = lesson(&mut w, &visit, "2026-03-11");
    assert_eq!(
        missing(&mut w, &lesson),
        [
            "birth_date",
            "emergency_contact",
            "injuries",
            "readiness",
            "consent",
            "consent",
            "eyewear",
            "teaching"
        ]
    );
    let other = w.student("Ben Costa");
    let nowhere = w.act("intake.ready_person", json!({ "student": other }));
    let abouts = nowhere["missing"].to_string();
    assert!(!abouts.contains("teaching"), "no place is asked about before there is one: {abouts}");
    let here = w.act("intake.ready_person", json!({ "student": student }));
    assert!(here["missing"].to_string().contains("teaching"), "the next visit says where");
    in_place(&mut w, &student);
    granted(&mut w);
    assert_eq!(missing(&mut w, &lesson), ["birth_date"]);
    let profile = json!({ "name": "Ana Silva", "born": "1980-05-04" });
    w.act("students.change", json!({ "student": student, "profile": profile }));
    let ready = ready(&mut w, &lesson);
    assert_eq!((&ready["state"], &ready["words"]), (&json!("ready"), &json!("Ready for court.")));
    assert_eq!(ready["age"], 45);
}

#[test]
fn what_expires_is_missing_again_on_the_day_it_expires() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    assert!(missing(&mut w, &r.lesson).is_empty());
    // Permission, papers and the facility's own form, each ending on the day before the lesson or on it.
    let until = |day: &str| json!({ "state": "granted", "until": day });
    for (day, lacks) in [("2026-03-11", false), ("2026-03-10", true)] {
        let set = json!({ "facility": w.hall, "teaching": until(day) });
        w.act("facilities.set_teaching", set);
        assert_eq!(missing(&mut w, &r.lesson).contains(&"teaching".to_owned()), lacks, "{day}");
    }
    granted(&mut w);
    let paper = json!({ "kind": "first_aid", "words": "First aid course", "until": "2026-03-10" });
    let added = w.act("intake.add_certificate", json!({ "paper": paper }));
    assert_eq!(missing(&mut w, &r.lesson), ["own_papers"]);
    w.act("intake.archive_certificate", json!({ "certificate": added["id"] }));
    let policy = json!({ "form_needed": true, "form_where": "the desk" });
    w.act("intake.set_policy", json!({ "facility": w.hall, "policy": policy }));
    assert_eq!(missing(&mut w, &r.lesson), ["facility_form"]);
    for (until, lacks) in [("2026-03-10", true), ("2026-03-11", false)] {
        let form = json!({
            "student": r.student, "facility": w.hall, "signed": "2026-03-01", "until": until,
        });
        w.act("intake.sign_form", form);
        assert_eq!(!missing(&mut w, &r.lesson).is_empty(), lacks, "until {until}");
    }
    let form = json!({ "student": r.student, "facility": w.hall, "signed": "2026-03-01" });
    w.act("intake.sign_form", form);
    // The questions are asked again after a year, and after an injury.
    let later = lesson(&mut w, &r.visit, "2026-03-12");
    w.act(
        "intake.note_injury",
        json!({ "student": r.student, "kind": "injury", "words": "Twisted ankle", "since": "2026-03-01" }),
    );
    assert_eq!(missing(&mut w, &later), ["readiness"], "written down after they were answered");
    let answers = json!({ "active": "yes", "disease": "no", "symptoms": "no" });
    let again = json!({ "student": r.student, "answers": answers, "answered": "Ana Silva" });
    w.act("intake.answer_readiness", again);
    assert!(missing(&mut w, &later).is_empty(), "answered after it");
    w.on("2026-03-02");
    w.act(
        "intake.note_injury",
        json!({ "student": r.student, "kind": "injury", "words": "Sore wrist" }),
    );
    assert_eq!(missing(&mut w, &later), ["readiness"]);
    let careful = ready(&mut w, &later)["careful"].to_string();
    assert!(careful.contains("Sore wrist") && careful.contains("Twisted ankle"), "{careful}");
}

#[test]
fn readiness_answers_are_good_for_a_year() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let next = w.planned(&r.student, "2027-02-27", "2027-03-02");
    for (day, lacks) in [("2027-02-28", false), ("2027-03-01", true)] {
        let lesson = lesson(&mut w, &next, day);
        assert_eq!(missing(&mut w, &lesson).contains(&"readiness".to_owned()), lacks, "{day}");
    }
}

#[test]
fn an_outcome_that_asks_for_a_physician_waits_for_a_clearance_of_the_last_year() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let answers = json!({ "active": "no", "disease": "yes", "symptoms": "no" });
    let asked = json!({ "student": r.student, "answers": answers, "answered": "Ana Silva" });
    let outcome = w.act("intake.answer_readiness", asked);
    assert_eq!(outcome["outcome"], "clearance_first");
    assert_eq!(missing(&mut w, &r.lesson), ["readiness"]);
    let clearance = |day: &str| {
        json!({
            "student": r.student, "by_whom": "Dr. Irene Prado", "profession": "physician", "day": day,
            "says": "May take part at moderate effort.", "seen": "Her letter",
        })
    };
    w.act("intake.record_clearance", clearance("2025-02-20"));
    assert_eq!(missing(&mut w, &r.lesson), ["readiness"], "older than a year");
    let recorded = w.act("intake.record_clearance", clearance("2026-02-20"));
    assert!(missing(&mut w, &r.lesson).is_empty());
    let withdraw = json!({ "clearance": recorded["id"], "why": "Taken back by telephone" });
    w.act("intake.withdraw_clearance", withdraw);
    assert_eq!(missing(&mut w, &r.lesson), ["readiness"]);
}

#[test]
fn going_on_takes_a_reason_that_is_kept_with_what_was_missing() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let on = |reason: &str| json!({ "student": r.student, "lesson": r.lesson, "reason": reason });
    let refused = w.refused("intake.go_on", on("Nothing is wrong"));
    assert!(matches!(refused, Error::NotPossible { code: "ready", .. }), "{refused}");
    let off = json!({ "facility": w.hall, "teaching": { "state": "asked" } });
    w.act("facilities.set_teaching", off);
    assert_eq!(codes(&w.refused("intake.go_on", on(" "))), [("reason".into(), "empty".into())]);
    let ready = w.act("intake.go_on", on("The manager said yes at the door"));
    assert_eq!(ready["state"], "not_ready", "a reason makes nobody ready");
    assert_eq!(ready["went_on"]["reason"], "The manager said yes at the door");
    assert!(ready["went_on"]["missing"][0].as_str().unwrap().contains("no answer yet"));
}

#[test]
fn after_a_blow_to_the_head_nothing_but_a_clearance_lets_anyone_play() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    w.on("2026-03-10");
    w.act("visits.open", json!({ "visit": r.visit }));
    let goal = w.goal(&r.student, &r.visit, "Lob serve");
    let start = json!({ "goal": goal, "visit": r.visit, "kind": "practice" });
    let block = id(&w.act("goals.start_block", start.clone()), "/id");
    w.act("goals.touch", json!({ "block": block, "made": true }));
    let report = json!({
        "student": r.student, "happened": "The ball hit her on the temple.", "head": "not_known",
    });
    let recorded =
        call(&mut w.file, "intake.record_incident", json!({ "report": report })).unwrap();

    // No try, no block, no lesson, no visit; and no way round.
    let refused = |error: Error| {
        assert!(matches!(&error, Error::NotPossible { code: "head_injury", .. }), "{error}");
    };
    refused(w.refused("goals.touch", json!({ "block": block, "made": true })));
    refused(w.refused("goals.start_block", start.clone()));
    let total =
        json!({ "goal": goal, "visit": r.visit, "kind": "practice", "made": 3, "tries": 5 });
    w.act("goals.enter_total", total.clone());
    w.on("2026-03-11");
    refused(w.refused("goals.start_block", start.clone()));
    refused(w.refused("goals.enter_total", total.clone()));
    refused(w.refused("lessons.give", json!({ "lesson": r.lesson })));
    let on = json!({ "student": r.student, "lesson": r.lesson, "reason": "She feels well" });
    refused(w.refused("intake.go_on", on));
    let ready_now = ready(&mut w, &r.lesson);
    assert_eq!(ready_now["state"], "blocked");
    let undo = w.refused("journal.undo", json!({ "act": recorded.act }));
    assert!(matches!(undo, Error::NotPossible { code: "left_the_program", .. }), "{undo}");
    let injury = w.act("intake.injuries", json!({ "student": r.student }))[0].clone();
    assert_eq!(injury["kind"], "head");
    let over = json!({ "injury": injury["id"], "words": "Better", "over": "2026-03-11" });
    w.act("intake.change_injury", over);
    assert_eq!(ready(&mut w, &r.lesson)["state"], "blocked", "to feel well is no clearance");
    let mut changed = recorded.value["report"].clone();
    changed["head"] = json!("no");
    let change = json!({ "incident": recorded.value["id"], "report": changed });
    assert_eq!(codes(&w.refused("intake.change_incident", change))[0].0, "head");

    // A clearance by nobody, or from before, is none.
    let nobody = json!({
        "student": r.student, "injury": injury["id"], "by_whom": "", "profession": " ",
        "day": "2026-03-09", "says": "",
    });
    let fields: Vec<String> =
        codes(&w.refused("intake.record_clearance", nobody)).into_iter().map(|c| c.0).collect();
    assert_eq!(fields, ["by_whom", "profession", "day", "says", "seen"]);
    // Nor is what a guardian or the coach says, or what somebody has only heard.
    let hearsay = json!({
        "student": r.student, "injury": injury["id"], "by_whom": "Nora Feld", "profession": "Mother",
        "day": "2026-03-11", "says": "She is fine.",
    });
    assert_eq!(
        codes(&w.refused("intake.record_clearance", hearsay)),
        [("profession".into(), "none".into()), ("seen".into(), "empty".into())]
    );
    let clearance = json!({
        "student": r.student, "injury": injury["id"], "by_whom": "Dr. Irene Prado",
        "profession": "physician", "day": "2026-03-11", "says": "May play from today.",
        "seen": "On her telephone; she keeps the letter",
    });
    let cleared = w.act("intake.record_clearance", clearance);
    assert_eq!(cleared["seen"], "On her telephone; she keeps the letter");
    assert_ne!(ready(&mut w, &r.lesson)["state"], "blocked");
    w.act("goals.start_block", start.clone());
    w.act("lessons.give", json!({ "lesson": r.lesson }));

    // Withdrawn, it blocks again, and that cannot be taken back.
    let withdraw = json!({ "clearance": cleared["id"], "why": "Headaches came back" });
    let withdrawn = call(&mut w.file, "intake.withdraw_clearance", withdraw).unwrap();
    refused(w.refused("goals.start_block", start));
    let undo = w.refused("journal.undo", json!({ "act": withdrawn.act }));
    assert!(matches!(undo, Error::NotPossible { code: "left_the_program", .. }));
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn on_the_day_of_a_blow_to_the_head_no_clearance_lets_anyone_play() {
    // CDC HEADS UP for coaches: out of play the same day, and until a health-care provider clears.
    let mut w = World::new();
    let r = grown_up(&mut w);
    w.on("2026-03-10");
    let note = json!({ "student": r.student, "kind": "head", "words": "Hit by a ball" });
    let injury = w.act("intake.note_injury", note);
    let clearance = json!({
        "student": r.student, "injury": injury["id"], "by_whom": "Dr. Irene Prado",
        "profession": "physician", "day": "2026-03-10", "says": "Nothing found.", "seen": "Her letter",
    });
    w.act("intake.record_clearance", clearance);
    let refused = w.refused("visits.open", json!({ "visit": r.visit }));
    assert!(refused.to_string().contains("No play on the same day"), "{refused}");
    w.on("2026-03-11");
    w.act("visits.open", json!({ "visit": r.visit }));
}

#[test]
fn after_an_injury_of_the_same_day_the_readiness_questions_are_asked_again() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    w.on("2026-03-10");
    let answers = json!({ "active": "yes", "disease": "no", "symptoms": "no" });
    let answer = json!({ "student": r.student, "answers": answers, "answered": "Nora Feld" });
    let asked = |w: &mut World| {
        let missing = ready(w, &r.lesson)["missing"].clone();
        missing.as_array().unwrap().iter().any(|m| m["about"] == "readiness")
    };
    w.act("intake.answer_readiness", answer.clone());
    assert!(!asked(&mut w));
    let note = json!({ "student": r.student, "kind": "injury", "words": "Turned an ankle" });
    w.act("intake.note_injury", note);
    assert!(asked(&mut w), "what was answered in the morning did not know of it");
    w.act("intake.answer_readiness", answer);
    assert!(!asked(&mut w), "what was answered after it did");
}

#[test]
fn against_a_no_nothing_more_about_health_is_kept_except_what_protects() {
    let mut w = World::new();
    let student = w.student("Nora Feld");
    let no = json!({ "student": student, "kind": "health_data", "given": false, "by": { "name": "Nora Feld" } });
    w.act("intake.give_consent", no);
    let injury = |kind: &str| json!({ "student": student, "kind": kind, "words": "Knee" });
    let answer = json!({ "student": student, "answers": {}, "answered": "Nora Feld" });
    for (act, given) in
        [("intake.note_injury", injury("injury")), ("intake.answer_readiness", answer)]
    {
        let refused = w.refused(act, given);
        assert!(
            matches!(refused, Error::NotPossible { code: "no_consent", .. }),
            "{act}: {refused}"
        );
    }
    w.act("intake.note_injury", injury("head"));
    let yes = json!({ "student": student, "kind": "health_data", "given": true, "by": { "name": "Nora Feld" } });
    w.act("intake.give_consent", yes);
    w.act("intake.note_injury", injury("injury"));
}

#[test]
fn going_through_nothing_is_not_to_have_asked() {
    let mut w = World::new();
    let student = w.student("Nora Feld");
    let refused = w.refused("intake.set", json!({ "student": student, "record": {} }));
    assert_eq!(codes(&refused), [(String::new(), "empty".to_owned())]);
    w.act("intake.set", json!({ "student": student, "record": { "racquet": "Own" } }));
    w.act("intake.set", json!({ "student": student, "record": {} }));
}

#[test]
fn a_visit_does_not_start_while_a_head_injury_is_open() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let note = json!({ "student": r.student, "kind": "head", "words": "Fell at home" });
    w.act("intake.note_injury", note);
    w.on("2026-03-10");
    let refused = w.refused("visits.open", json!({ "visit": r.visit }));
    assert!(matches!(refused, Error::NotPossible { code: "head_injury", .. }), "{refused}");
}

#[test]
fn a_minor_needs_a_guardian_for_everything_that_counts() {
    let mut w = World::new();
    w.on("2026-03-01");
    let added = w.act("students.add", json!({ "name": "Ilse Ruys", "born": "2012-02-29" }));
    let student = id(&added, "/id");
    let alone = json!({ "name": "Ilse Ruys" });
    for kind in ["lessons", "health_data"] {
        let given = json!({ "student": student, "kind": kind, "given": true, "by": alone });
        let refused = w.refused("intake.give_consent", given);
        assert_eq!(codes(&refused), [("by.relation".into(), "minor".into())]);
    }
    let own = json!({ "name": " ilse  RUYS", "relation": "guardian", "as_what": "mother" });
    let given = json!({ "student": student, "kind": "lessons", "given": true, "by": own });
    assert_eq!(
        codes(&w.refused("intake.give_consent", given)),
        [("by.name".into(), "own".into())],
        "a child\u{2019}s own name is no guardian\u{2019}s"
    );
    let nameless = json!({ "name": "Mies Ruys", "relation": "guardian" });
    let given = json!({ "student": student, "kind": "lessons", "given": true, "by": nameless });
    assert_eq!(codes(&w.refused("intake.give_consent", given))[0].0, "by.as_what");
    let guardian = json!({ "name": "Mies Ruys", "relation": "guardian", "as_what": "mother" });
    let given = json!({ "student": student, "kind": "lessons", "given": true, "by": guardian });
    let consent = w.act("intake.give_consent", given);
    assert_eq!(consent["until"], "2027-02-28", "asked again after twelve months");

    // A guardian younger than the child, a birth date to come.
    let young = json!({
        "name": "Ilse Ruys", "born": "2012-02-29",
        "guardian": { "name": "Mies Ruys", "born": "2015-01-01" },
    });
    let change = json!({ "student": student, "profile": young });
    assert_eq!(codes(&w.refused("students.change", change))[0].0, "guardian.born");
    let unborn = json!({ "student": student, "profile": { "name": "Ilse", "born": "2026-03-02" } });
    assert_eq!(
        codes(&w.refused("students.change", unborn))[0],
        ("born".into(), "in_future".into())
    );

    // The court: not looked at, not to be seen into, to be seen into.
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let court = id(
        &w.act("facilities.add_court", json!({ "facility": w.hall, "name": "Court 1" })),
        "/courts/0/id",
    );
    let input = json!({
        "visits": [visit], "facility": w.hall, "court": court, "day": "2026-03-11", "starts": "10:00",
        "minutes": 60,
    });
    let lesson = id(&w.act("lessons.plan", input), "/id");
    for (seen, lacks) in [(Value::Null, true), (json!("no"), true), (json!("yes"), false)] {
        let change = json!({ "court": court, "name": "Court 1", "seen": seen });
        w.act("facilities.change_court", change);
        let has = missing(&mut w, &lesson).contains(&"facility_rules".to_owned());
        assert_eq!(has, lacks, "seen: {seen}");
    }
    let policy = json!({ "youngest": 15, "adult_present": true });
    w.act("intake.set_policy", json!({ "facility": w.hall, "policy": policy }));
    let now = ready(&mut w, &lesson);
    assert_eq!((&now["minor"], &now["age"]), (&json!(true), &json!(14)), "born on 29 February");
    assert!(now["missing"].to_string().contains("under 15"));
    assert!(now["careful"].to_string().contains("another adult"));

    let withdraw = json!({ "consent": consent["id"], "by_whom": "Mies Ruys" });
    w.act("intake.withdraw_consent", withdraw.clone());
    assert!(ready(&mut w, &lesson)["missing"].to_string().contains("was withdrawn"));
    let twice = w.refused("intake.withdraw_consent", withdraw);
    assert!(matches!(twice, Error::NotPossible { code: "not_given", .. }));
}

fn parts(w: &mut World) -> Value {
    let hall = w.hall.clone();
    w.act("intake.draft_notice", json!({ "facility": hall }))["parts"].clone()
}

#[test]
fn a_notice_has_its_ten_parts_and_a_new_version_asks_again() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let hall = w.hall.clone();
    let card = json!({ "phone": "112", "desk_phone": "+351 210 000 000" });
    w.act("facilities.set_card", json!({ "facility": hall, "card": card }));
    let policy = json!({ "name": "Players' rules", "link": "https://hall.example/rules", "seen": "2026-02-20" });
    w.act("intake.set_policy", json!({ "facility": hall, "policy": policy }));
    let parts = parts(&mut w);
    assert_eq!(parts.as_array().unwrap().len(), 10);
    let all = parts.to_string();
    for must in [
        "Players' rules",
        "https://hall.example/rules",
        "20 February 2026",
        "112",
        "+351 210 000 000",
    ] {
        assert!(all.contains(must), "{must} in {all}");
    }

    let mut empty = parts.clone();
    empty[4]["text"] = json!(" ");
    let publish =
        |parts: &Value| json!({ "title": "Before court", "facility": hall, "parts": parts });
    assert_eq!(
        codes(&w.refused("intake.publish_notice", publish(&empty))),
        [("parts[4].text".into(), "empty".into())]
    );
    let mut short = parts.clone();
    short.as_array_mut().unwrap().pop();
    assert_eq!(codes(&w.refused("intake.publish_notice", publish(&short)))[0].1, "missing_part");

    let notice = w.act("intake.publish_notice", publish(&parts));
    assert_eq!(missing(&mut w, &r.lesson), ["notice"]);
    let by = json!({ "name": "Ana Silva" });
    let accept = |version: &Value| json!({ "student": r.student, "version": version, "by": by });
    let paper = json!({ "student": r.student, "version": notice["version"]["id"],
        "by": { "name": "Ana Silva", "how": "paper" } });
    assert_eq!(codes(&w.refused("intake.acknowledge_notice", paper))[0].0, "by.scan");
    let accepted =
        call(&mut w.file, "intake.acknowledge_notice", accept(&notice["version"]["id"])).unwrap();
    assert_eq!(accepted.value["whole"], true);
    assert!(missing(&mut w, &r.lesson).is_empty());
    let undo = w.refused("journal.undo", json!({ "act": accepted.act }));
    assert!(matches!(undo, Error::NotPossible { .. }));

    let again = json!({ "notice": notice["id"], "title": "Before court", "parts": parts });
    assert_eq!(codes(&w.refused("intake.publish_notice", again))[0].1, "unchanged");
    let mut newer = parts.clone();
    newer[4]["text"] = json!("Known risks: all of the above, and a wet floor.");
    w.on("2026-03-05");
    let again = json!({ "notice": notice["id"], "title": "Before court", "parts": newer });
    let second = w.act("intake.publish_notice", again);
    assert_eq!(second["version"]["number"], 2);
    assert_ne!(second["version"]["sha256"], notice["version"]["sha256"]);
    assert_eq!(missing(&mut w, &r.lesson), ["notice"], "a new version asks again");
    let early = json!({ "student": r.student, "version": second["version"]["id"],
        "by": { "name": "Ana Silva", "day": "2026-03-04" } });
    assert_eq!(codes(&w.refused("intake.acknowledge_notice", early))[0].0, "by.day");
    w.act("intake.acknowledge_notice", accept(&second["version"]["id"]));
    assert!(missing(&mut w, &r.lesson).is_empty());
    let all = w.act("intake.acknowledgements", json!({ "student": r.student }));
    assert_eq!(all.as_array().unwrap().len(), 2, "what was accepted before stays");
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn a_notice_of_another_place_holds_up_nobody() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let other = json!({ "name": "Other hall", "zone": "Europe/Lisbon" });
    let other = id(&w.act("facilities.add", other), "/id");
    let parts = w.act("intake.draft_notice", json!({ "facility": other }))["parts"].clone();
    let publish = json!({ "title": "There", "facility": other, "parts": parts });
    w.act("intake.publish_notice", publish);
    assert!(missing(&mut w, &r.lesson).is_empty());
    let person = w.act("intake.ready_person", json!({ "student": r.student }));
    assert_eq!(person["state"], "ready");
    let elsewhere = w.student("Ben Costa");
    let person = w.act("intake.ready_person", json!({ "student": elsewhere }));
    assert!(!person["missing"].to_string().contains("There"), "nobody knows yet where");
}

#[test]
fn a_notice_in_the_students_language_asks_once() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    for language in ["en", "de"] {
        let draft = w.act("intake.draft_notice", json!({ "language": language }));
        let publish =
            json!({ "title": draft["title"], "language": language, "parts": draft["parts"] });
        w.act("intake.publish_notice", publish);
    }
    let needed = w.act("intake.notices_needed", json!({ "student": r.student }));
    assert_eq!(needed.as_array().unwrap().len(), 1);
    assert_eq!(needed[0]["notice"]["language"], "en");
    let profile = json!({ "name": "Ana Silva", "born": "1980-05-04", "language": "de" });
    w.act("students.change", json!({ "student": r.student, "profile": profile }));
    let needed = w.act("intake.notices_needed", json!({ "student": r.student }));
    assert_eq!(needed[0]["notice"]["language"], "de");
}

#[test]
fn a_scan_is_a_bounded_picture_or_pdf() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let hall = w.hall.clone();
    let form = |scan: Value| json!({ "student": r.student, "facility": hall, "scan": scan });
    let scan = |name: &str, base64: String| json!({ "name": name, "base64": base64 });
    let pdf = "JVBERi0xLjcK".to_owned();
    for (given, code) in [
        (scan("form.exe", "TVqQAAMAAAAEAAAA".into()), "no_scan"),
        (scan("form.pdf", "not base64!".into()), "unreadable"),
        (scan("form.pdf", "A".repeat(16 * 1024 * 1024)), "too_large"),
    ] {
        let input = form(given);
        assert_eq!(codes(&w.refused("intake.sign_form", input)), [("scan".into(), code.into())]);
    }
    let input = form(scan("../../etc/<b>form</b>.exe", pdf));
    let kept = w.act("intake.sign_form", input);
    assert!(!id(&kept, "/scan/name").contains('/'), "a name leads nowhere: {kept}");
}

#[test]
fn a_report_is_sealed_once_signed_and_only_added_to() {
    let mut w = World::new();
    let hall = w.hall.clone();
    w.on("2026-03-10");
    let both = json!({ "report": { "happened": "" } });
    let fields: Vec<String> =
        codes(&w.refused("intake.record_incident", both)).into_iter().map(|c| c.0).collect();
    assert_eq!(fields, ["person", "happened", "head"]);
    let report = json!({
        "person": "Tomas Vale", "role": "bystander", "happened": "A ball came over the wall and hit his arm.",
        "facility": hall, "time": "10:42", "called": "no", "head": "no", "author": "Nuala Byrne",
    });
    let incident = w.act("intake.record_incident", json!({ "report": report }));
    let which = json!({ "incident": incident["id"] });
    let early = json!({ "incident": incident["id"], "words": "x", "author": "y" });
    let refused = w.refused("intake.add_to_incident", early);
    assert!(matches!(refused, Error::NotPossible { code: "not_signed", .. }));
    let other = json!({ "incident": incident["id"], "signature": "Somebody Else" });
    assert_eq!(codes(&w.refused("intake.sign_incident", other))[0].1, "not_the_author");
    let signed = json!({ "incident": incident["id"], "signature": "nuala byrne" });
    let signed = w.act("intake.sign_incident", signed);
    assert_eq!(signed["whole"], true);
    let change = json!({ "incident": incident["id"], "report": report });
    let refused = w.refused("intake.change_incident", change);
    assert!(matches!(refused, Error::NotPossible { code: "signed", .. }));
    let add = json!({ "incident": incident["id"], "words": "He telephoned: all is well.", "author": "Nuala Byrne" });
    let added = w.act("intake.add_to_incident", add);
    assert_eq!(
        (added["additions"].as_array().unwrap().len(), &added["seal"]),
        (1, &signed["seal"])
    );
    let shown = w.act("intake.incident", which);
    assert_eq!(shown["whole"], true, "additions leave the seal");
    let order: Vec<String> =
        shown["lines"].as_array().unwrap().iter().map(|l| text(&l["about"])).collect();
    assert_eq!(order[..3], ["When", "Where", "Who"]);
}

#[test]
fn what_is_sealed_refuses_to_change_in_the_file_itself() {
    let mut w = World::new();
    let r = grown_up(&mut w);
    let parts = parts(&mut w);
    let notice = w.act("intake.publish_notice", json!({ "title": "Before court", "parts": parts }));
    let accept = json!({ "student": r.student, "version": notice["version"]["id"], "by": { "name": "Ana Silva" } });
    w.act("intake.acknowledge_notice", accept);
    let report =
        json!({ "student": r.student, "happened": "Fell.", "head": "yes", "author": "Nuala" });
    let incident = w.act("intake.record_incident", json!({ "report": report }));
    w.act("intake.sign_incident", json!({ "incident": incident["id"], "signature": "Nuala" }));
    let path = w.file.path().to_owned();
    drop(w.file);
    let conn = rusqlite::Connection::open(path).unwrap();
    for statement in [
        "UPDATE notice_version SET text = 'less'",
        "UPDATE acknowledgement SET name = 'Someone'",
        "UPDATE incident SET happened = 'Nothing.'",
        "UPDATE injury SET kind = 'injury'",
        "UPDATE injury SET asks = 0",
        "UPDATE consent SET given = 0",
        "UPDATE consent SET name = 'Someone'",
    ] {
        assert!(conn.execute(statement, []).is_err(), "{statement}");
    }
}

/// The addresses that the one invitation of a visit goes to, or why it cannot be written.
fn invited(w: &World, visit: &str) -> Result<Vec<String>, String> {
    let which = serde_json::from_value(json!({ "visit": visit })).unwrap();
    let stamp = chrono::DateTime::UNIX_EPOCH;
    let files = w.file.read(|db| carryover_core::calendar::files(db, which, stamp));
    let files = files.map_err(|e| e.to_string())?;
    let text = files[0].1.replace("\r\n ", "");
    Ok(text
        .lines()
        .filter(|line| line.starts_with("ATTENDEE"))
        .map(|line| line.rsplit("mailto:").next().unwrap().to_owned())
        .collect())
}

/// A second adult on every message, and nothing straight to a minor without a guardian's consent: what
/// the U.S. Center for SafeSport's Minor Athlete Abuse Prevention Policies ask of electronic messages.
#[test]
fn a_minor_is_written_to_through_the_guardian_and_straight_only_with_consent() {
    let mut w = World::new();
    w.on("2026-03-01");
    w.act("settings.change", json!({ "name": "Robin", "email": "robin@example.org" }));
    let child = json!({
        "name": "Ilse Ruys", "born": "2012-02-29", "email": "ilse@example.org",
        "guardian": { "name": "Mies Ruys", "relation": "mother", "email": "mies@example.org" },
    });
    let student = world::id(&w.act("students.add", child.clone()), "/id");
    let visit = w.planned(&student, "2026-03-10", "2026-03-11");
    lesson(&mut w, &visit, "2026-03-10");
    assert_eq!(invited(&w, &visit).unwrap(), ["mies@example.org"]);
    let draft = w.act("offers.draft", json!({ "visit": visit }));
    assert_eq!(draft["to"], "To Mies Ruys, the guardian.");
    assert!(world::id(&draft, "/words").starts_with("Dear Mies Ruys,"), "{draft}");

    let by = json!({ "name": "Mies Ruys", "relation": "guardian", "as_what": "mother" });
    let given = json!({ "student": student, "kind": "messages", "given": true, "by": by });
    let consent = w.act("intake.give_consent", given);
    assert_eq!(invited(&w, &visit).unwrap(), ["ilse@example.org", "mies@example.org"]);
    let draft = w.act("offers.draft", json!({ "visit": visit }));
    assert_eq!(draft["to"], "A minor: send the same to Mies Ruys, as a second adult.");
    assert!(world::id(&draft, "/words").starts_with("Dear Ilse,"), "{draft}");

    w.act("intake.set_minor_rules", json!({ "second_adult": false }));
    assert_eq!(invited(&w, &visit).unwrap(), ["ilse@example.org"]);
    w.act("intake.set_minor_rules", json!({}));

    // Without an address of the second adult nothing goes to the child alone.
    let mut silent = child.clone();
    silent["guardian"]["email"] = json!("");
    w.act("students.change", json!({ "student": student, "profile": silent }));
    let why = invited(&w, &visit).unwrap_err();
    assert!(why.contains("Mies Ruys has no e-mail address"), "{why}");
    assert!(why.contains("second adult"), "{why}");
    w.act("students.change", json!({ "student": student, "profile": child }));

    let withdraw = json!({ "consent": consent["id"], "by_whom": "Mies Ruys", "day": "2026-03-01" });
    w.act("intake.withdraw_consent", withdraw);
    assert_eq!(invited(&w, &visit).unwrap(), ["mies@example.org"]);

    // Nobody to write to; of unknown age with a guardian; of age.
    let mut alone = child.clone();
    alone["guardian"] = json!(null);
    w.act("students.change", json!({ "student": student, "profile": alone }));
    assert!(invited(&w, &visit).unwrap_err().contains("no guardian to write to is known"));
    let mut unknown = child.clone();
    unknown["born"] = json!("");
    w.act("students.change", json!({ "student": student, "profile": unknown }));
    assert_eq!(invited(&w, &visit).unwrap(), ["mies@example.org"]);
    let mut grown = child;
    grown["born"] = json!("2000-02-29");
    w.act("students.change", json!({ "student": student, "profile": grown }));
    assert_eq!(invited(&w, &visit).unwrap(), ["ilse@example.org"]);
}
