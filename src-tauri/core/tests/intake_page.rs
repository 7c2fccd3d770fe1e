//! The page for home and its answers: one student, once, in time, bounded; text and nothing more.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "tests")]

mod world;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use carryover_core::commands::check;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use world::{World, codes, id};

fn html(w: &mut World, student: &str) -> String {
    id(&w.act("intake.make_page", json!({ "student": student })), "/html")
}

fn token(html: &str) -> String {
    let (_, rest) = html.split_once("id=\"data\">").unwrap();
    let (data, _) = rest.split_once("</script>").unwrap();
    id(&serde_json::from_str(data).unwrap(), "/token")
}

fn file(token: &str, answers: &Value) -> String {
    STANDARD
        .encode(json!({ "carryover_intake": 1, "token": token, "answers": answers }).to_string())
}

#[test]
fn the_page_forbids_everything_but_itself() {
    let mut w = World::new();
    let student = w.student("Zo\u{eb} </script><script>alert(1)</script>");
    let html = html(&mut w, &student);
    assert!(!html.contains("alert(1)</script>"), "a name is never markup");
    assert!(html.contains("default-src 'none'") && html.contains("form-action 'none'"));
    for (open, close, policy) in
        [("<style>", "</style>", "style-src"), ("<script>", "</script>", "script-src")]
    {
        let (_, rest) = html.split_once(open).unwrap();
        let (own, _) = rest.split_once(close).unwrap();
        let digest = STANDARD.encode(Sha256::digest(own.as_bytes()));
        assert!(html.contains(&format!("{policy} 'sha256-{digest}'")), "{policy} is of what runs");
    }
    for outside in ["http://", "https://", "src=", "url(", "@import", "fetch(", "XMLHttp"] {
        assert!(!html.contains(outside), "{outside}");
    }
}

#[test]
fn answers_are_of_one_student_once_and_in_time() {
    let mut w = World::new();
    let (ana, ben) = (w.student("Ana Silva"), w.student("Ben Costa"));
    let html = html(&mut w, &ana);
    let answers = json!({ "home": "Porto", "hand": "left", "symptoms": "yes", "eyewear": "Guard" });
    let content = file(&token(&html), &answers);
    let ask = |student: &str, content: &str| json!({ "student": student, "content": content });
    let refused = |w: &mut World, student: &str, content: &str| {
        codes(&w.refused("intake.read_answers", ask(student, content)))[0].1.clone()
    };
    assert_eq!(refused(&mut w, &ben, &content), "another");
    assert_eq!(refused(&mut w, &ana, &file("made up", &answers)), "unknown");
    assert_eq!(refused(&mut w, &ana, "not base64!"), "unreadable");
    assert_eq!(refused(&mut w, &ana, &STANDARD.encode("{}")), "unreadable");
    assert_eq!(refused(&mut w, &ana, &STANDARD.encode("[".repeat(9))), "too_deep");
    assert_eq!(refused(&mut w, &ana, &"A".repeat(1_500_000)), "too_large");
    let more =
        json!({ "carryover_intake": 1, "token": token(&html), "answers": {}, "consent": true });
    assert_eq!(refused(&mut w, &ana, &STANDARD.encode(more.to_string())), "unreadable");
    let other = file(&token(&html), &json!({ "about": "x" }));
    assert_eq!(refused(&mut w, &ana, &other), "unknown_field");

    let read = w.act("intake.read_answers", ask(&ana, &content));
    assert_eq!(read["answers"].as_array().unwrap().len(), 4);
    let take = |fields: Value| json!({ "student": ana, "content": content, "fields": fields });
    assert_eq!(codes(&w.refused("intake.take_answers", take(json!([]))))[0].1, "empty");
    assert_eq!(
        codes(&w.refused("intake.take_answers", take(json!(["born"]))))[0].1,
        "not_answered"
    );
    w.act("intake.take_answers", take(json!(["home", "hand", "symptoms"])));
    let shown = w.act("students.show", json!({ "student": ana }));
    assert_eq!(
        (&shown["profile"]["home"], &shown["profile"]["hand"]),
        (&json!("Porto"), &json!("left"))
    );
    let kept = w.act("intake.show", json!({ "student": ana }));
    assert_eq!(kept["record"]["eyewear"], "", "what was not chosen is not taken");
    let readiness = w.act("intake.readiness", json!({ "student": ana }));
    assert_eq!(readiness[0]["outcome"], "clearance_first");
    let consents = w.act("intake.consents", json!({ "student": ana })).to_string();
    assert!(!consents.contains("\"given\""), "no answer is a consent");
    assert_eq!(refused(&mut w, &ana, &content), "used");

    let late = self::html(&mut w, &ana);
    w.on("2026-05-01");
    assert_eq!(refused(&mut w, &ana, &file(&token(&late), &answers)), "lapsed");
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn an_answer_that_was_edited_says_why_it_cannot_be_taken() {
    let mut w = World::new();
    let ana = w.student("Ana Silva");
    let html = html(&mut w, &ana);
    let answers = json!({ "born": "2999-01-01", "hand": "both", "racquet": "x".repeat(300) });
    let content = file(&token(&html), &answers);
    let read = w.act("intake.read_answers", json!({ "student": ana, "content": content }));
    for answer in read["answers"].as_array().unwrap() {
        assert_ne!(answer["against"], "", "{answer}");
        let take = json!({ "student": ana, "content": content, "fields": [answer["field"]] });
        assert_eq!(codes(&w.refused("intake.take_answers", take))[0].1, "cannot_be_taken");
    }
}

/// What is kept about health stands beside each answer, and the same answer again is a new one: it has
/// its own day.
#[test]
fn answers_about_health_stand_beside_what_is_kept_and_are_never_the_same() {
    let mut w = World::new();
    let ana = w.student("Ana Silva");
    let injury =
        json!({ "student": ana, "kind": "injury", "words": "Left knee", "since": "2026-02-01" });
    w.act("intake.note_injury", injury);
    let ready = json!({ "student": ana, "answered": "Ana Silva", "day": "2026-02-03",
        "answers": { "active": "yes", "disease": "no" } });
    w.act("intake.answer_readiness", ready);
    let html = html(&mut w, &ana);
    let answers = json!({ "injuries": "Left knee", "active": "yes", "symptoms": "no" });
    let content = file(&token(&html), &answers);
    let read = w.act("intake.read_answers", json!({ "student": ana, "content": content }));
    let now: Vec<(&Value, &Value)> = read["answers"]
        .as_array()
        .unwrap()
        .iter()
        .map(|answer| (&answer["field"], &answer["now"]))
        .collect();
    assert_eq!(
        now,
        [
            (&json!("injuries"), &json!("Left knee (since 1 February 2026)")),
            (&json!("active"), &json!("yes (3 February 2026)")),
            (&json!("symptoms"), &json!("not known (3 February 2026)")),
        ]
    );
    assert_eq!(read["same"], 0);
}
