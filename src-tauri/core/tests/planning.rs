//! The coach's own time, what visiting students wish for, and the plan for everyone who comes,
//! through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use serde_json::{Value, json};
use world::{World, id, id as text, problems};

/// A hall with one court, open nine to one, at 20 euros an hour, 10 before ten.
fn hall(w: &mut World) -> String {
    let hall = w.hall.clone();
    let court = w.act("facilities.add_court", json!({ "facility": hall, "name": "Court 1" }));
    w.act(
        "facilities.set_rules",
        json!({ "facility": hall, "rules": {
            "currency": "EUR",
            "hours": [{ "opens": "09:00", "closes": "13:00" }],
            "rates": [{ "starts": "09:00", "ends": "10:00", "hour": "10" }, { "hour": "20" }],
            "ahead": [{ "amount": 7, "unit": "days", "opens": "07:00" }],
            "grid": 60, "week_limit": 600,
        } }),
    );
    id(&court, "/courts/0/id")
}

/// A visit of someone at the hall, with what is wished for.
fn comes(w: &mut World, name: &str, days: [&str; 2], wish: Value) -> String {
    let student = w.student(name);
    let visit = json!({
        "student": student, "facility": w.hall, "first_day": days[0], "last_day": days[1],
    });
    let visit = id(&w.act("visits.plan", visit), "/id");
    w.act("planning.set_wish", json!({ "visit": visit, "wish": wish }));
    visit
}

/// The plan for some days, once it is done.
fn planned(w: &mut World, plan: Value) -> Value {
    let began = w.act("planning.begin", json!({ "plan": plan, "wait": 30_000 }));
    assert_eq!(began["look"]["stage"], "done", "{began}");
    began["look"].clone()
}

fn lines(look: &Value) -> Vec<String> {
    let line = |line: &Value| {
        format!(
            "{} {} {} {}",
            text(line, "/name"),
            text(line, "/place/day"),
            text(line, "/place/starts"),
            text(line, "/cost")
        )
    };
    look["proposal"]["lines"].as_array().unwrap().iter().map(line).collect()
}

#[test]
fn the_plan_is_the_best_and_says_why_each_lesson_is_where_it_is() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    comes(&mut w, "Ana", ["2026-03-10", "2026-03-11"], json!({ "lessons": 2 }));
    comes(
        &mut w,
        "Ben",
        ["2026-03-10", "2026-03-10"],
        json!({ "lessons": 2, "per_day": 2, "rest": 60, "earliest": "10:00" }),
    );
    let look = planned(&mut w, json!({ "first": "2026-03-10", "last": "2026-03-11" }));
    assert_eq!(look["proposal"]["proven"], true);
    assert_eq!(
        lines(&look),
        [
            "Ana 2026-03-10 09:00 10.00 EUR",
            "Ben 2026-03-10 10:00 20.00 EUR",
            "Ben 2026-03-10 12:00 20.00 EUR",
            "Ana 2026-03-11 09:00 10.00 EUR",
        ]
    );
    assert_eq!(look["proposal"]["cost"], json!(["60.00 EUR"]));
    let said = |n: usize, field: &str| text(&look["proposal"]["lines"][n], field);
    assert_eq!(said(0, "/why"), "The best of 1 other place would cost 10.00 EUR more.");
    assert_eq!(said(1, "/why"), "The only place left for it beside the other lessons.");
    assert_eq!(said(0, "/ask_words"), "It can be asked for from Tuesday 3 March 2026, 07:00.");
    assert_eq!(look["proposal"]["mind"], json!(["Hall: At most 600 minutes in any seven days."]));
    let free = |f: &Value| format!("{} {}-{}", text(f, "/day"), text(f, "/from"), text(f, "/to"));
    let free: Vec<String> = look["proposal"]["free"].as_array().unwrap().iter().map(free).collect();
    assert_eq!(free, ["2026-03-10 11:00-12:00", "2026-03-11 10:00-13:00"]);
}

#[test]
fn what_stands_already_stays_and_counts() {
    let mut w = World::new();
    w.on("2026-03-01");
    let court = hall(&mut w);
    let ana = comes(&mut w, "Ana", ["2026-03-10", "2026-03-11"], json!({ "lessons": 2 }));
    let lesson = json!({
        "visits": [ana], "facility": w.hall, "court": court, "day": "2026-03-10", "starts": "12:00", "minutes": 60,
    });
    w.act("lessons.plan", lesson);
    let look = planned(&mut w, json!({ "first": "2026-03-10", "last": "2026-03-11" }));
    assert_eq!(lines(&look), ["Ana 2026-03-10 12:00 20.00 EUR", "Ana 2026-03-11 09:00 10.00 EUR"]);
    assert_eq!(look["proposal"]["lines"][0]["why"], "It stands already.");
    let line = look["proposal"]["lines"][1]["place"].clone();
    let taken = w.act("planning.take", json!({ "lines": [{ "place": line, "minutes": 60 }] }));
    assert_eq!(taken.as_array().map(Vec::len), Some(1));
    let again = planned(&mut w, json!({ "first": "2026-03-10", "last": "2026-03-11" }));
    assert_eq!(lines(&again), lines(&look));
    assert!(again["proposal"]["lines"][1]["lesson"].is_string());
}

#[test]
fn an_impossible_wish_gets_its_reasons_and_the_change_that_frees_it() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    w.act("own_time.set", json!({ "hours": [{ "opens": "10:00", "closes": "12:00" }] }));
    comes(&mut w, "Ana", ["2026-03-10", "2026-03-10"], json!({ "lessons": 3, "per_day": 3 }));
    let asked = json!({ "first": "2026-03-10", "last": "2026-03-10" });
    let look = planned(&mut w, asked.clone());
    assert_eq!(lines(&look).len(), 2);
    assert_eq!(look["proposal"]["missing"][0]["lessons"], 1);
    let why = text(&look["proposal"]["missing"][0]["why"], "/0");
    assert!(why.contains("2 while you cannot teach (your own hours)"), "{why}");
    let frees: Vec<String> = look["would_free"]
        .as_array()
        .unwrap()
        .iter()
        .map(|frees| format!("{} +{}", text(frees, "/words"), frees["lessons"]))
        .collect();
    assert_eq!(
        frees,
        [
            "You begin 60 minutes earlier on Tuesday 10 March 2026. +1",
            "You go on 60 minutes later on Tuesday 10 March 2026. +1",
            "Ana comes a day earlier. +1",
            "Ana stays a day longer. +1",
        ],
        "half an hour frees none, because bookings begin on the hour"
    );
    let mut changed = asked;
    changed["changes"] = json!([look["would_free"][0]["change"]]);
    let then = planned(&mut w, changed);
    assert_eq!(lines(&then).len(), 3, "making the change frees it");
    assert_eq!(then["proposal"]["missing"], json!([]));
}

#[test]
fn a_moved_line_is_weighed_with_what_speaks_against_it() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    comes(&mut w, "Ana", ["2026-03-10", "2026-03-10"], json!({ "lessons": 1 }));
    comes(&mut w, "Ben", ["2026-03-10", "2026-03-10"], json!({ "lessons": 1, "latest": "11:00" }));
    let asked = json!({ "first": "2026-03-10", "last": "2026-03-10" });
    let look = planned(&mut w, asked.clone());
    let mut places: Vec<Value> =
        look["proposal"]["lines"].as_array().unwrap().iter().map(|l| l["place"].clone()).collect();
    let against = |w: &mut World, places: &[Value]| {
        let weighed = w.act("planning.weigh", json!({ "plan": asked, "lines": places }));
        let lines = weighed["lines"].as_array().unwrap().clone();
        (lines.iter().map(|l| l["against"].clone()).collect::<Vec<_>>(), weighed["cost"].clone())
    };
    assert_eq!(against(&mut w, &places), (vec![json!([]), json!([])], json!(["30.00 EUR"])));
    let ben = (0..2).find(|n| look["proposal"]["lines"][*n]["name"] == "Ben").unwrap();
    places[ben]["starts"] = places[1 - ben]["starts"].clone();
    let (said, _) = against(&mut w, &places);
    assert!(
        said.contains(&json!(["It meets the lesson of Ana."]))
            || said.contains(&json!(["It meets the lesson of Ben."])),
        "{said:?}"
    );
    places[ben]["starts"] = json!("12:30");
    let (said, cost) = against(&mut w, &places);
    let all = said[ben].to_string();
    for part in ["No booking begins", "outside the hours the student", "facility is closed"] {
        assert!(all.contains(part), "{part}: {all}");
    }
    assert_eq!(cost, json!(["30.00 EUR"]));
}

#[test]
fn own_time_comes_again_and_is_kept_free() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    let league = json!({
        "what": "League night", "first": "2026-03-03", "again": "every_week",
        "starts": "09:00", "ends": "12:00",
    });
    let added = w.act("own_time.add", league);
    assert_eq!(added["words"], "every week on Tuesday, 09:00 to 12:00, from 3 March 2026");
    comes(&mut w, "Ana", ["2026-03-10", "2026-03-10"], json!({ "lessons": 2, "per_day": 2 }));
    let asked = json!({ "first": "2026-03-10", "last": "2026-03-10" });
    let look = planned(&mut w, asked.clone());
    assert_eq!(lines(&look), ["Ana 2026-03-10 12:00 20.00 EUR"]);
    let frees: Vec<String> =
        look["would_free"].as_array().unwrap().iter().map(|frees| text(frees, "/words")).collect();
    assert!(
        frees.contains(&"League night on Tuesday 10 March 2026 moves out of the way.".to_owned()),
        "{frees:?}"
    );
    let mut skipped = added["busy"].clone();
    skipped["except"] = json!(["2026-03-10"]);
    let changed = json!({ "id": added["id"], "busy": skipped });
    let changed = w.act("own_time.change", changed);
    assert!(text(&changed, "/words").ends_with("but not on 10 March 2026"));
    assert_eq!(lines(&planned(&mut w, asked.clone())).len(), 2);
    // The same hours on another clock: nine to twelve in Auckland is the evening before in Dublin.
    let away = json!({
        "what": "Call home", "first": "2026-03-11", "starts": "09:00", "ends": "12:00",
        "zone": "Pacific/Auckland",
    });
    w.act("own_time.add", away);
    assert_eq!(lines(&planned(&mut w, asked)).len(), 2);
    w.act("own_time.remove", json!({ "busy": added["id"] }));
    assert_eq!(w.act("own_time.list", json!({})).as_array().map(Vec::len), Some(1));
}

#[test]
fn own_time_and_wishes_that_cannot_be_are_refused_field_by_field() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    let said = |refused: &carryover_core::error::Error| -> Vec<String> {
        problems(refused).into_iter().map(|(field, _)| field).collect()
    };
    let wrong = json!({
        "what": "", "first": "2026-03-10", "last": "2026-03-01", "starts": "12:00", "ends": "11:00",
        "zone": "Atlantis", "again": "every_week", "weekdays": [8],
    });
    assert_eq!(
        said(&w.refused("own_time.add", wrong)),
        ["what", "last", "ends", "zone", "weekdays"]
    );
    let hall = w.hall.clone();
    let wrong = json!({
        "hours": [{ "opens": "18:00", "closes": "9" }], "day_limit": -1,
        "ways": [{ "one": hall, "other": hall, "minutes": 20 }],
    });
    assert_eq!(
        said(&w.refused("own_time.set", wrong)),
        ["hours[0].closes", "day_limit", "ways[0].other"]
    );
    let student = w.student("Ana");
    let visit = json!({
        "student": student, "facility": w.hall, "first_day": "2026-03-10", "last_day": "2026-03-10",
    });
    let visit = id(&w.act("visits.plan", visit), "/id");
    let wrong = json!({ "visit": visit, "wish": {
        "lessons": 0, "minutes": 600, "earliest": "12:00", "latest": "9:00", "arrives": "noon",
    } });
    assert_eq!(
        said(&w.refused("planning.set_wish", wrong)),
        ["arrives", "latest", "lessons", "minutes"]
    );
    let gone =
        json!({ "visit": visit, "wish": { "lessons": 1, "arrives": "14:00", "leaves": "12:00" } });
    assert_eq!(
        said(&w.refused("planning.set_wish", gone)),
        ["leaves"],
        "on the one day of the visit"
    );
    for (first, last, code) in
        [("2026-03-10", "2026-03-09", "last"), ("2026-03-10", "2026-06-10", "last")]
    {
        let plan = json!({ "plan": { "first": first, "last": last } });
        assert_eq!(said(&w.refused("planning.begin", plan)), [code]);
    }
    let plan = json!({ "plan": { "first": "2026-03-10", "last": "2026-03-10" } });
    let words = w.refused("planning.begin", plan).to_string();
    assert!(words.contains("Nobody who comes on these days wishes for lessons yet"), "{words}");
}
