//! From planned lessons to an agreed visit: the offer in both zones with its price, its answer, what
//! changed since, and the invitations that are due, through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use carryover_core::calendar;
use carryover_core::kinds::Clock;
use carryover_core::visits::Which;
use serde_json::{Value, json};
use world::{World, id, problems};

struct Visit {
    id: String,
    lessons: Vec<String>,
}

/// Marta in Stockholm comes to Dublin for two lessons at known prices.
fn visit(w: &mut World) -> Visit {
    w.on("2026-03-01");
    let hall = w.hall.clone();
    let court = w.act("facilities.add_court", json!({ "facility": hall, "name": "Court 1" }));
    let rules = json!({ "currency": "EUR", "rates": [{ "hour": "18" }] });
    w.act("facilities.set_rules", json!({ "facility": hall, "rules": rules }));
    let terms = json!({
        "currency": "eur", "fees": [{ "minutes": 60, "amount": "40" }],
        "terms": "Called off less than a day before, a lesson is paid for.",
    });
    w.act("offers.set_terms", terms);
    let mut settings = w.act("settings.show", json!({}));
    settings["name"] = json!("Robin Hale");
    settings["email"] = json!("robin@example.org");
    w.act("settings.change", settings);
    let marta = json!({ "name": "Marta Lindqvist", "email": "marta@example.org", "zone": "Europe/Stockholm" });
    let student = id(&w.act("students.add", marta), "/id");
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let mut lessons = Vec::new();
    for day in ["2026-03-10", "2026-03-11"] {
        let lesson = json!({
            "visits": [visit], "facility": hall, "court": court["courts"][0]["id"], "day": day,
            "starts": "09:00", "minutes": 60,
        });
        lessons.push(id(&w.act("lessons.plan", lesson), "/id"));
    }
    Visit { id: visit, lessons }
}

fn offers(w: &mut World, visit: &Visit) -> Value {
    w.act("offers.list", json!({ "visit": visit.id }))
}

fn moved(w: &mut World, lesson: &str, day: &str, starts: &str) {
    let hall = w.hall.clone();
    let lesson = json!({
        "lesson": lesson, "facility": hall, "day": day, "starts": starts, "minutes": 60,
    });
    w.act("lessons.change", lesson);
}

#[test]
fn an_offer_says_times_in_both_zones_and_the_whole_price() {
    let mut w = World::new();
    let visit = visit(&mut w);
    let draft = w.act("offers.draft", json!({ "visit": visit.id }));
    assert_eq!(draft["price"], "116.00 EUR", "two lessons at 40 and two courts at 18");
    assert_eq!(draft["missing"], json!([]));
    let words = id(&draft, "/words");
    for part in [
        "Dear Marta,\n\n",
        "Tuesday 10 March 2026, 09:00 to 10:00 (10:00 to 11:00 in Stockholm), Court 1: 40.00 EUR and 18.00 EUR for the court\n",
        "All together: 116.00 EUR.",
        "Called off less than a day before, a lesson is paid for.",
        "Robin Hale",
    ] {
        assert!(words.contains(part), "{part}\nin\n{words}");
    }
}

#[test]
fn what_changed_since_the_student_agreed_is_told() {
    let mut w = World::new();
    let visit = visit(&mut w);
    assert_eq!(offers(&mut w, &visit)["words"], "Nothing was offered yet.");
    let offer = w.act("offers.make", json!({ "visit": visit.id, "words": "Dear Marta, …" }));
    assert_eq!(offers(&mut w, &visit)["words"], "Offered on 1 March 2026; no answer yet.");
    w.on("2026-03-02");
    let yes = json!({ "offer": offer["id"], "agreed": true, "note": "Looking forward" });
    w.act("offers.answer", yes);
    assert_eq!(offers(&mut w, &visit)["words"], "Agreed on 2 March 2026.");
    assert_eq!(offers(&mut w, &visit)["changed"], json!([]));
    moved(&mut w, &visit.lessons[0], "2026-03-10", "11:00");
    w.act("lessons.call_off", json!({ "lesson": visit.lessons[1], "reason": "ill" }));
    let rules = json!({ "currency": "EUR", "rates": [{ "hour": "20" }] });
    let hall = w.hall.clone();
    w.act("facilities.set_rules", json!({ "facility": hall, "rules": rules }));
    assert_eq!(
        offers(&mut w, &visit)["changed"],
        json!([
            "The lesson on Tuesday 10 March 2026, 09:00 to 10:00 is now on Tuesday 10 March 2026, 11:00 to 12:00.",
            "The lesson on Tuesday 10 March 2026, 11:00 to 12:00 is now on a court not known yet.",
            "The lesson on Tuesday 10 March 2026, 11:00 to 12:00 now costs 40.00 EUR and 20.00 EUR instead of 40.00 EUR and 18.00 EUR.",
            "The lesson on Wednesday 11 March 2026, 09:00 to 10:00 is no longer to come.",
        ])
    );
    let anew = w.act("offers.make", json!({ "visit": visit.id, "words": "Dear Marta, once more" }));
    assert_eq!(
        offers(&mut w, &visit)["words"],
        "Agreed on 2 March 2026; offered anew on 2 March 2026, no answer yet."
    );
    w.act("offers.answer", json!({ "offer": anew["id"], "agreed": true }));
    assert_eq!(offers(&mut w, &visit)["changed"], json!([]), "agreed anew");
}

#[test]
fn what_cannot_be_offered_is_refused_and_what_is_missing_is_told() {
    let mut w = World::new();
    let visit = visit(&mut w);
    let said = |refused: &carryover_core::error::Error| -> Vec<String> {
        problems(refused).into_iter().map(|(field, _)| field).collect()
    };
    let none = json!({ "visit": visit.id, "words": "  " });
    assert_eq!(said(&w.refused("offers.make", none)), ["words"]);
    let wrong = json!({
        "currency": "gold",
        "fees": [{ "minutes": 60, "amount": "40" }, { "minutes": 60, "amount": "x" }, { "minutes": 1, "amount": "1" }],
    });
    let fields = said(&w.refused("offers.set_terms", wrong));
    assert_eq!(fields, ["currency", "fees[1].minutes", "fees[2].minutes"]);
    let wrong = json!({ "currency": "EUR", "fees": [{ "minutes": 60, "amount": "4o" }] });
    assert_eq!(said(&w.refused("offers.set_terms", wrong)), ["fees[0].amount"]);
    w.act("offers.set_terms", json!({}));
    let draft = w.act("offers.draft", json!({ "visit": visit.id }));
    assert_eq!(draft["price"], "", "a part of it is not known");
    assert_eq!(draft["missing"].as_array().map(Vec::len), Some(2));
    for lesson in &visit.lessons {
        w.act("lessons.call_off", json!({ "lesson": lesson, "reason": "ill" }));
    }
    let refused = w.refused("offers.draft", json!({ "visit": visit.id })).to_string();
    assert!(refused.contains("Plan the lessons first"), "{refused}");
}

#[test]
fn only_what_a_student_must_notice_is_invited_to_anew() {
    let mut w = World::new();
    let visit = visit(&mut w);
    let due = |w: &mut World| -> Vec<String> {
        let due = w.act("calendar.due", json!({ "visit": visit.id }));
        let said = |d: &Value| format!("{} {}", id(d, "/kind"), d["sequence"]);
        due.as_array().unwrap().iter().map(said).collect()
    };
    let write = |w: &mut World| w.act("calendar.written", json!({ "visit": visit.id }));
    assert_eq!(due(&mut w), ["new 0", "new 0"]);
    let which: Which = serde_json::from_value(json!({ "visit": visit.id })).unwrap();
    let stamp =
        carryover_core::kinds::FixedClock::on(carryover_core::kinds::Day::EPOCH).now().utc();
    let files = w.file.read(|db| calendar::files(db, which, stamp)).unwrap();
    assert_eq!(files[0].0, "2026-03-10 0900 invitation.ics");
    assert!(files[0].1.contains("METHOD:REQUEST\r\n"), "{}", files[0].1);
    write(&mut w);
    assert_eq!(due(&mut w), [""; 0]);
    let again = w.refused("calendar.written", json!({ "visit": visit.id })).to_string();
    assert!(again.contains("as it stands"), "{again}");
    // A note of the lesson is nothing to be invited to anew.
    let note = json!({ "lesson": visit.lessons[0], "done": "Drives", "landed": "", "next": "" });
    w.act("lessons.note", note);
    assert_eq!(due(&mut w), [""; 0]);
    moved(&mut w, &visit.lessons[0], "2026-03-10", "11:00");
    w.act("lessons.call_off", json!({ "lesson": visit.lessons[1], "reason": "ill" }));
    assert_eq!(due(&mut w), ["changed 1", "called_off 1"]);
    write(&mut w);
    moved(&mut w, &visit.lessons[0], "2026-03-10", "12:00");
    assert_eq!(due(&mut w), ["changed 2"]);
    let mut settings = w.act("settings.show", json!({}));
    settings["email"] = json!("");
    w.act("settings.change", settings);
    let shown = w.act("calendar.due", json!({ "visit": visit.id }));
    assert!(id(&shown, "/0/trouble").contains("Your own e-mail address"));
    let refused = w.file.read(|db| calendar::files(db, which, stamp)).expect_err("no address");
    assert!(refused.to_string().contains("Your own e-mail address"), "{refused}");
}
