//! Courts that lessons need: asked for, confirmed, refused, given back, through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use serde_json::{Value, json};
use world::{World, id, problems};

/// A hall with two courts and its rules, and Ana's lesson there on 10 March at nine.
struct Hall {
    courts: Vec<String>,
    visit: String,
    lesson: String,
}

fn hall(w: &mut World) -> Hall {
    w.on("2026-03-01");
    let facility = w.hall.clone();
    let mut courts = Vec::new();
    for name in ["Court 1", "Court 2"] {
        let shown = w.act("facilities.add_court", json!({ "facility": facility, "name": name }));
        let last = shown["courts"].as_array().unwrap().len() - 1;
        courts.push(id(&shown, &format!("/courts/{last}/id")));
    }
    w.act(
        "facilities.set_rules",
        json!({ "facility": facility, "rules": {
            "currency": "EUR", "books_as": "guest",
            "rates": [{ "hour": "18" }],
            "ahead": [{ "amount": 7, "unit": "days", "opens": "07:00" }],
            "release": [{ "hours": 24, "later": "full" }],
        } }),
    );
    w.act(
        "facilities.set_card",
        json!({ "facility": facility, "card": { "desk": "Nuala", "desk_email": "desk@example.org", "desk_phone": "555 0100" } }),
    );
    let student = w.student("Ana");
    let visit = w.planned(&student, "2026-03-10", "2026-03-12");
    let lesson = json!({
        "visits": [visit], "facility": facility, "court": courts[0], "day": "2026-03-10",
        "starts": "09:00", "minutes": 60,
    });
    let lesson = id(&w.act("lessons.plan", lesson), "/id");
    Hall { courts, visit, lesson }
}

fn courts(w: &mut World) -> Vec<Value> {
    w.act("bookings.list", json!({})).as_array().unwrap().clone()
}

fn states(w: &mut World) -> Vec<String> {
    courts(w)
        .iter()
        .map(|c| format!("{} {} {}", id(c, "/state"), id(c, "/day"), id(c, "/starts")))
        .collect()
}

fn before_court(w: &mut World) -> Vec<String> {
    let sheet = w.act("reports.day_sheet", json!({}));
    let lines = sheet["before"].as_array().unwrap().iter();
    lines
        .filter(|line| line["leads"] == "courts")
        .map(|line| format!("{}: {}", id(line, "/when"), id(line, "/what")))
        .collect()
}

#[test]
fn a_court_is_asked_for_when_asking_begins_and_confirmed_with_its_reference() {
    let mut w = World::new();
    let hall = hall(&mut w);
    let court = courts(&mut w).remove(0);
    assert_eq!(court["state"], "to_ask");
    assert_eq!(court["open"], false, "asking begins on 3 March");
    assert_eq!(court["words"], json!(["It can be asked for from Tuesday 3 March 2026, 07:00."]));
    assert_eq!(court["cost"], "18.00 EUR");
    assert_eq!(before_court(&mut w), [""; 0]);
    w.on("2026-03-02");
    assert_eq!(before_court(&mut w), ["tomorrow: Ask for 1 court at Hall."]);
    w.on("2026-03-03");
    assert_eq!(before_court(&mut w), ["today: Ask for 1 court at Hall."]);
    assert_eq!(courts(&mut w)[0]["open"], true);

    let message = w.act("bookings.message", json!({ "lessons": [hall.lesson] }));
    assert_eq!(message["to"], "desk@example.org");
    let words = id(&message, "/words");
    assert!(
        words.starts_with("Hello Nuala,\n\nI would like to book a court at Hall as guest:"),
        "{words}"
    );
    assert!(words.contains("\n\nTuesday 10 March 2026, 09:00 to 10:00, Court 1\n\n"), "{words}");

    w.act("bookings.ask", json!({ "lessons": [hall.lesson] }));
    w.act("bookings.ask", json!({ "lessons": [hall.lesson] }));
    assert_eq!(states(&mut w), ["asked 2026-03-10 09:00"], "asking twice is one booking");
    let answer = json!({ "lesson": hall.lesson, "court": hall.courts[1], "reference": "H-7", "by_whom": "Nuala" });
    w.act("bookings.confirm", answer);
    let court = courts(&mut w).remove(0);
    assert_eq!(court["state"], "confirmed");
    assert_eq!(court["booking"]["reference"], "H-7");
    assert_eq!(court["court_name"], "Court 2", "the court that was given is the lesson's");
    assert_eq!(
        court["words"],
        json!([
            "It can be given back free until Monday 9 March 2026, 09:00; later it costs the whole price."
        ])
    );
}

#[test]
fn a_lesson_that_moves_leaves_its_court_to_be_given_back() {
    let mut w = World::new();
    let hall = hall(&mut w);
    w.act("bookings.confirm", json!({ "lesson": hall.lesson, "reference": "H-7" }));
    let moved = json!({
        "lesson": hall.lesson, "facility": w.hall, "court": hall.courts[0], "day": "2026-03-11",
        "starts": "10:00", "minutes": 60,
    });
    w.act("lessons.change", moved);
    assert_eq!(states(&mut w), ["to_give_back 2026-03-10 09:00", "to_ask 2026-03-11 10:00"]);
    w.on("2026-03-09");
    assert_eq!(
        before_court(&mut w)[0],
        "by 09:00: Give Court 1 back at Hall, 10 March 2026 09:00."
    );
    w.on("2026-03-10");
    assert!(before_court(&mut w)[0].starts_with("late: "));
    assert_eq!(
        courts(&mut w)[0]["words"][0],
        "It could be given back free until Monday 9 March 2026, 09:00; by now it costs the whole price."
    );
    let booking = courts(&mut w)[0]["booking"]["id"].clone();
    w.act("bookings.give_back", json!({ "booking": booking }));
    assert_eq!(states(&mut w), ["to_ask 2026-03-11 10:00"]);
    let again = w.refused("bookings.give_back", json!({ "booking": booking })).to_string();
    assert!(again.contains("given back or refused already"), "{again}");
    // A lesson that is called off needs no court either.
    w.act("bookings.confirm", json!({ "lesson": hall.lesson }));
    w.act("lessons.call_off", json!({ "lesson": hall.lesson, "reason": "ill" }));
    assert_eq!(states(&mut w), ["to_give_back 2026-03-11 10:00"]);
}

#[test]
fn a_refused_court_is_to_be_asked_for_anew_and_wrong_answers_are_told() {
    let mut w = World::new();
    let hall = hall(&mut w);
    w.act("bookings.ask", json!({ "lessons": [hall.lesson] }));
    let no = json!({ "lesson": hall.lesson, "by_whom": "Nuala", "note": "Only after ten" });
    assert_eq!(w.act("bookings.refuse", no)["state"], "refused");
    assert_eq!(states(&mut w), ["to_ask 2026-03-10 09:00"]);
    // One booking may serve two lessons in a row, on whichever court.
    let next = json!({
        "visits": [hall.visit], "facility": w.hall, "day": "2026-03-10", "starts": "10:00", "minutes": 30,
    });
    w.act("lessons.plan", next);
    assert_eq!(states(&mut w).len(), 2);
    let long = "x".repeat(300);
    let elsewhere = w.act("facilities.add", json!({ "name": "Ropewalk", "zone": "Europe/Dublin" }));
    let other =
        w.act("facilities.add_court", json!({ "facility": elsewhere["id"], "name": "Court 9" }));
    let wrong =
        json!({ "lesson": hall.lesson, "court": other["courts"][0]["id"], "reference": long });
    let fields: Vec<String> =
        problems(&w.refused("bookings.confirm", wrong)).into_iter().map(|(f, _)| f).collect();
    assert_eq!(fields, ["reference", "court"]);
    assert!(w.refused("bookings.ask", json!({ "lessons": [] })).to_string().contains("Choose"));
    w.act("lessons.call_off", json!({ "lesson": hall.lesson, "reason": "ill" }));
    let over = w.refused("bookings.ask", json!({ "lessons": [hall.lesson] })).to_string();
    assert!(over.contains("a lesson that is to come"), "{over}");
}

#[test]
fn what_follows_when_a_lesson_moves_leads_from_one_to_the_next() {
    let mut w = World::new();
    let hall = hall(&mut w);
    let follows = |w: &mut World| w.act("calendar.follows", json!({ "lesson": hall.lesson }));
    w.act("bookings.ask", json!({ "lessons": [hall.lesson] }));
    let none = follows(&mut w);
    assert_eq!(
        (&none["tell"], &none["give_back"], &none["ask"]),
        (&json!([]), &json!([]), &json!(""))
    );

    let offer = w.act("offers.make", json!({ "visit": hall.visit, "words": "Dear Ana" }));
    w.act("offers.answer", json!({ "offer": offer["id"], "agreed": true }));
    let facility = w.hall.clone();
    w.act(
        "lessons.change",
        json!({
            "lesson": hall.lesson, "facility": facility, "court": hall.courts[1],
            "day": "2026-03-11", "starts": "10:00", "minutes": 60,
        }),
    );
    let moved = follows(&mut w);
    assert_eq!(moved["words"], "The lesson is now on Wednesday 11 March 2026, 10:00.");
    let message = id(&moved, "/tell/0/message");
    assert!(
        message.starts_with(
            "Dear Ana,\n\nour lesson is now on Wednesday 11 March 2026, 10:00 to 11:00 at Hall."
        ),
        "{message}"
    );
    assert_eq!(moved["tell"][0]["invited"], false, "nobody was invited yet");
    assert_eq!(
        moved["give_back"][0]["what"],
        "Court 1 at Hall, Tuesday 10 March 2026, 09:00 to 10:00"
    );
    assert_eq!(
        moved["give_back"][0]["words"][0],
        "It can be given back free until Monday 9 March 2026, 09:00; later it costs the whole price."
    );
    assert_eq!(moved["give_back"][0]["late"], false);
    assert!(id(&moved, "/ask").starts_with("A court is to be asked for at Hall."));

    w.act("bookings.give_back", json!({ "booking": moved["give_back"][0]["booking"] }));
    w.act("bookings.ask", json!({ "lessons": [hall.lesson] }));
    w.act("lessons.call_off", json!({ "lesson": hall.lesson, "reason": "ill" }));
    w.on("2026-03-11");
    let off = follows(&mut w);
    assert!(id(&off, "/tell/0/message").contains("at Hall is called off."));
    assert_eq!(off["give_back"][0]["late"], true);
    assert_eq!(off["ask"], "");
}
