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
            "grid": 60, "week_limit": 600, "day_bookings": 4, "apart": true,
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
    assert_eq!(look["proposal"]["mind"], json!(["Hall: No two bookings in a row."]));
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

/// Each planned line's names, day and time.
fn short(look: &Value) -> Vec<String> {
    let line = |line: &Value| {
        let of = |field| text(line, field);
        format!("{} {} {}", of("/name"), &of("/place/day")[8..], of("/place/starts"))
    };
    look["proposal"]["lines"].as_array().unwrap().iter().map(line).collect()
}

/// What would make room, with how many lessons.
fn frees(look: &Value) -> Vec<String> {
    let one = |frees: &Value| format!("{} +{}", text(frees, "/words"), frees["lessons"]);
    look["would_free"].as_array().unwrap().iter().map(one).collect()
}

/// The hall's rules with some of them otherwise.
fn rules(w: &mut World, change: &Value) {
    let mut rules = w.act("facilities.rules", json!({ "facility": w.hall }));
    for (field, value) in change.as_object().unwrap() {
        rules[field] = value.clone();
    }
    let hall = w.hall.clone();
    w.act("facilities.set_rules", json!({ "facility": hall, "rules": rules }));
}

#[test]
fn two_students_share_a_court_and_the_line_becomes_one_lesson_of_both() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    let ben = w.student("Ben");
    let visit = json!({ "student": ben, "facility": w.hall, "first_day": "2026-03-11", "last_day": "2026-03-13" });
    let ben = id(&w.act("visits.plan", visit), "/id");
    // Ben wishes for nothing of his own, and is there on the second of Ana's days.
    let wish = json!({ "lessons": 2, "shared": [{ "lessons": 1, "with": [ben] }] });
    let ana = comes(&mut w, "Ana", ["2026-03-10", "2026-03-11"], wish);
    let shown = w.act("planning.wish", json!({ "visit": ana }));
    assert_eq!(
        text(&shown, "/words"),
        "2 lessons of 60 minutes, at most 1 a day, 1 of them shared with Ben"
    );
    assert_eq!(shown["against"], json!([]));
    assert_eq!(shown["may_share"][0]["name"], "Ben");
    let asked = json!({ "first": "2026-03-10", "last": "2026-03-11" });
    let look = planned(&mut w, asked.clone());
    assert_eq!(short(&look), ["Ana 10 09:00", "Ana and Ben 11 09:00"]);
    let line = look["proposal"]["lines"][1].clone();
    assert_eq!(line["place"]["with"], json!([ben]));
    assert_eq!(line["students"].as_array().map(Vec::len), Some(2));

    // Moved by hand and locked, it is the shared one, not one of Ana's own.
    let mut place = line["place"].clone();
    place["starts"] = json!("11:00");
    let weighed = w.act("planning.weigh", json!({ "plan": asked, "lines": [place] }));
    assert_eq!(weighed["lines"][0]["against"], json!([]));
    let mut locked = asked.clone();
    locked["locked"] = json!([place]);
    let again = planned(&mut w, locked);
    assert_eq!(short(&again), ["Ana 10 09:00", "Ana and Ben 11 11:00"]);
    assert_eq!(again["proposal"]["lines"][1]["locked"], true);
    let mut early = place.clone();
    early["day"] = json!("2026-03-10");
    let weighed = w.act("planning.weigh", json!({ "plan": asked, "lines": [early] }));
    assert_eq!(weighed["lines"][0]["against"], json!(["The student has not arrived yet."]));

    let taken =
        w.act("planning.take", json!({ "lines": [{ "place": line["place"], "minutes": 60 }] }));
    let lesson = &taken[0];
    assert_eq!(lesson["students"].as_array().map(Vec::len), Some(2), "one lesson of both");
    let after = planned(&mut w, asked.clone());
    assert_eq!(short(&after), short(&look), "what stands is the shared lesson that was wished for");
    assert_eq!(after["proposal"]["lines"][1]["lesson"], lesson["id"]);
    assert_eq!(after["proposal"]["missing"], json!([]));

    // A lesson of both that nobody wished to share counts for their own wishes.
    w.act("planning.set_wish", json!({ "visit": ana, "wish": { "lessons": 2 } }));
    w.act("planning.set_wish", json!({ "visit": ben, "wish": { "lessons": 1 } }));
    let own = planned(&mut w, asked);
    assert_eq!(short(&own), short(&look));
    assert_eq!(own["proposal"]["missing"], json!([]));
    assert_eq!(own["proposal"]["lines"][1]["why"], "It stands already.");
}

#[test]
fn the_rest_of_who_shares_counts_between_their_own_lesson_and_the_shared_one() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    let day = ["2026-03-10", "2026-03-10"];
    let rests = |minutes| json!({ "lessons": 1, "per_day": 2, "rest": minutes });
    let ana = comes(&mut w, "Ana", day, rests(60));
    comes(&mut w, "Ben", day, json!({ "lessons": 1 }));
    let shares = json!({ "lessons": 1, "shared": [{ "lessons": 1, "with": [ana] }] });
    comes(&mut w, "Cleo", day, shares);
    let asked = json!({ "first": day[0], "last": day[0] });
    let look = planned(&mut w, asked.clone());
    let at = |look: &Value, name: &str| {
        let lines = short(look);
        let line = lines.iter().find(|line| line.starts_with(name)).unwrap();
        line[line.len() - 5..line.len() - 3].parse::<i32>().unwrap()
    };
    assert_eq!(short(&look).len(), 3);
    assert!((at(&look, "Ana 10") - at(&look, "Cleo and Ana")).abs() >= 2, "{:?}", short(&look));
    w.act("planning.set_wish", json!({ "visit": ana, "wish": rests(240) }));
    let look = planned(&mut w, asked.clone());
    assert_eq!(short(&look).len(), 2, "no day holds four hours between two of Ana\u{2019}s");
    let one = json!({ "lessons": 1, "per_day": 1 });
    w.act("planning.set_wish", json!({ "visit": ana, "wish": one }));
    let look = planned(&mut w, asked);
    assert_eq!(short(&look).len(), 2, "one a day, the shared one counted");
    assert!(frees(&look).contains(&"Ana has one lesson a day more. +1".to_owned()), "{look}");
}

#[test]
fn what_keeps_students_from_sharing_is_said() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    let day = ["2026-03-10", "2026-03-11"];
    let ben = comes(&mut w, "Ben", day, json!({ "lessons": 1 }));
    let late = comes(&mut w, "Cleo", ["2026-03-20", "2026-03-20"], json!({ "lessons": 1 }));
    let ana = comes(&mut w, "Ana", day, json!({ "lessons": 2 }));
    let fields = |w: &mut World, shared: Value| {
        let wish = json!({ "visit": ana, "wish": { "lessons": 2, "shared": shared } });
        problems(&w.refused("planning.set_wish", wish))
    };
    let said = fields(
        &mut w,
        json!([
            { "lessons": 0, "with": [] }, { "lessons": 3, "with": [late] },
            { "lessons": 1, "with": [ben] }, { "lessons": 1, "with": [ben, ana] },
        ]),
    );
    let named: Vec<&str> = said.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(
        named,
        [
            "shared[0].lessons",
            "shared[0].with",
            "shared[1].lessons",
            "shared[1].with",
            "shared[2].lessons",
            "shared[3].lessons",
            "shared[3].with"
        ],
        "{said:?}"
    );
    let shared = json!({ "lessons": 2, "shared": [{ "lessons": 1, "with": [ben] }] });
    w.act("planning.set_wish", json!({ "visit": ana, "wish": shared }));
    let back = json!({ "visit": ben, "wish": { "lessons": 1, "shared": [{ "lessons": 1, "with": [ana] }] } });
    assert_eq!(
        problems(&w.refused("planning.set_wish", back))[0].0,
        "shared[0].with",
        "it would be planned twice"
    );

    // Ben comes later than was agreed: told in words, at the wish and in the plan.
    let moved = json!({ "visit": ben, "facility": w.hall, "first_day": "2026-03-12", "last_day": "2026-03-13" });
    w.act("visits.change", moved);
    let apart = "Ana and Ben are there on no common day.";
    assert_eq!(w.act("planning.wish", json!({ "visit": ana }))["against"], json!([apart]));
    let asked = json!({ "first": "2026-03-10", "last": "2026-03-11" });
    let look = planned(&mut w, asked.clone());
    assert_eq!(short(&look).len(), 1, "her own: {:?}", short(&look));
    let missing = look["proposal"]["missing"].clone();
    assert_eq!(
        (&missing[0]["name"], &missing[0]["why"], &missing[0]["with"]),
        (&json!("Ana and Ben"), &json!([apart]), &json!([ben]))
    );
    let wide = planned(&mut w, json!({ "first": "2026-03-10", "last": "2026-03-13" }));
    let free = "Ana stays a day longer. +1".to_owned();
    assert!(frees(&wide).contains(&free), "any of them may make room: {:?}", frees(&wide));
    w.act("visits.call_off", json!({ "visit": ben, "reason": "injured" }));
    let look = planned(&mut w, asked);
    let off = json!(["The visit of Ben was called off."]);
    assert_eq!(look["proposal"]["missing"][0]["why"], off);
    assert_eq!(w.act("planning.wish", json!({ "visit": ana }))["against"], off);
    w.act("planning.clear_wish", json!({ "visit": ana }));
    w.act("planning.set_wish", json!({ "visit": ana, "wish": { "lessons": 1 } }));
    let shown = w.act("planning.wish", json!({ "visit": ana }));
    assert_eq!(shown["wish"]["shared"], json!([]), "cleared with the wish");
}

#[test]
fn a_meal_that_may_move_keeps_its_time_somewhere() {
    let mut w = World::new();
    w.on("2026-03-01");
    hall(&mut w);
    rules(&mut w, &json!({ "day_bookings": 0 }));
    let meal = json!({ "meal_starts": "10:00", "meal_ends": "12:00", "meal_minutes": 45 });
    assert_eq!(w.act("own_time.set", meal)["meal_minutes"], 45);
    let day = ["2026-03-10", "2026-03-10"];
    comes(&mut w, "Ana", day, json!({ "lessons": 4, "per_day": 4 }));
    let asked = json!({ "first": day[0], "last": day[0] });
    let look = planned(&mut w, asked.clone());
    let lines = short(&look);
    assert_eq!(lines.len(), 3, "{lines:?}");
    assert!(
        lines.contains(&"Ana 10 09:00".to_owned()) && lines.contains(&"Ana 10 12:00".to_owned())
    );
    // A move by hand that takes the rest of it is told.
    let mut places: Vec<Value> = look["proposal"]["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|line| line["place"].clone())
        .collect();
    let moved = places.iter_mut().find(|place| place["starts"] == "09:00").unwrap();
    moved["starts"] =
        if lines.contains(&"Ana 10 10:00".to_owned()) { json!("11:00") } else { json!("10:00") };
    let weighed = w.act("planning.weigh", json!({ "plan": asked, "lines": places }));
    let said = weighed["lines"].to_string();
    assert!(said.contains("It leaves no time for your meal that day."), "{said}");
    // What else takes the time for it is no meal; where that leaves none, none is asked for.
    let long = |ends: &str| json!({ "what": "Board meeting", "first": day[0], "starts": "10:30", "ends": ends });
    let added = w.act("own_time.add", long("11:00"));
    let look = planned(&mut w, asked.clone());
    assert_eq!(short(&look), ["Ana 10 09:00", "Ana 10 12:00"], "a meal from 11:00");
    assert!(frees(&look).iter().any(|f| f.starts_with("Board meeting on")), "{:?}", frees(&look));
    let long = json!({ "meal_starts": "10:00", "meal_ends": "12:00", "meal_minutes": 90 });
    w.act("own_time.set", long);
    let look = planned(&mut w, asked.clone());
    assert_eq!(
        short(&look).len(),
        3,
        "beside the meeting no meal is that long: {:?}",
        short(&look)
    );
    w.act("own_time.remove", json!({ "busy": added["id"] }));
    // Lessons that stand already take a meal away too.
    for starts in ["10:00", "11:00"] {
        let lesson = json!({
            "visits": [text(&look["proposal"]["lines"][0], "/place/visit")], "facility": w.hall,
            "court": look["proposal"]["lines"][0]["place"]["court"], "day": day[0], "starts": starts, "minutes": 60,
        });
        w.act("lessons.plan", lesson);
    }
    let look = planned(&mut w, asked);
    assert_eq!(short(&look).len(), 4, "{:?}", short(&look));

    let said = |w: &mut World, own: Value| {
        let fields = problems(&w.refused("own_time.set", own));
        fields.into_iter().map(|(field, _)| field).collect::<Vec<_>>()
    };
    let long = json!({ "meal_starts": "12:00", "meal_ends": "13:00", "meal_minutes": 90 });
    assert_eq!(said(&mut w, long), ["meal_minutes"]);
    assert_eq!(
        said(&mut w, json!({ "meal_minutes": 30, "week_limit": -1 })),
        ["meal_starts", "week_limit"]
    );
}

#[test]
fn the_coachs_week_counts_lessons_beside_the_plan_and_is_named() {
    let mut w = World::new();
    w.on("2026-03-01");
    let court = hall(&mut w);
    w.act("own_time.set", json!({ "week_limit": 180 }));
    let day = ["2026-03-10", "2026-03-11"];
    comes(&mut w, "Ana", day, json!({ "lessons": 4, "per_day": 2 }));
    let asked = json!({ "first": day[0], "last": day[1] });
    assert_eq!(short(&planned(&mut w, asked.clone())).len(), 3);
    // Sunday is of the same week; the Monday after is not.
    let other = comes(&mut w, "Ben", ["2026-03-15", "2026-03-16"], json!({ "lessons": 2 }));
    for on in ["2026-03-15", "2026-03-16"] {
        let lesson = json!({
            "visits": [other], "facility": w.hall, "court": court, "day": on, "starts": "09:00", "minutes": 60,
        });
        w.act("lessons.plan", lesson);
    }
    let look = planned(&mut w, asked.clone());
    assert_eq!(short(&look).len(), 2);
    assert_eq!(look["proposal"]["proven"], true);
    let why = look["proposal"]["missing"][0]["why"].to_string();
    assert!(
        why.contains("In the week of Monday 9 March 2026 you teach as much as you wish to."),
        "{why}"
    );
    assert!(
        frees(&look).contains(&"You teach 60 minutes a week more. +1".to_owned()),
        "{:?}",
        frees(&look)
    );
    let mut places: Vec<Value> =
        look["proposal"]["lines"].as_array().unwrap().iter().map(|l| l["place"].clone()).collect();
    places.push(places[0].clone());
    places[2]["starts"] = json!("12:00");
    let weighed = w.act("planning.weigh", json!({ "plan": asked, "lines": places }));
    let said = &weighed["lines"][2]["against"];
    assert_eq!(*said, json!(["You teach longer that week than you wished."]));
    let mut changed = asked;
    changed["changes"] = json!([{ "kind": "longer_weeks", "minutes": 60 }]);
    assert_eq!(short(&planned(&mut w, changed)).len(), 3);
}

#[test]
fn a_facilitys_week_and_its_bookings_a_day_are_kept() {
    let mut w = World::new();
    w.on("2026-03-01");
    let court = hall(&mut w);
    let day = ["2026-03-10", "2026-03-12"];
    let ana = comes(&mut w, "Ana", day, json!({ "lessons": 6, "per_day": 2 }));
    let asked = json!({ "first": day[0], "last": day[1] });
    assert_eq!(short(&planned(&mut w, asked.clone())).len(), 6);
    rules(&mut w, &json!({ "day_bookings": 1 }));
    assert_eq!(short(&planned(&mut w, asked.clone())).len(), 3);
    rules(&mut w, &json!({ "day_bookings": 0, "week_limit": 300 }));
    assert_eq!(short(&planned(&mut w, asked.clone())).len(), 5);
    // Any seven days: a lesson on the fourth is six days before the tenth, and eight before the
    // twelfth.
    let before = comes(&mut w, "Ben", ["2026-03-04", "2026-03-04"], json!({ "lessons": 2 }));
    for starts in ["09:00", "10:00"] {
        let lesson = json!({
            "visits": [before], "facility": w.hall, "court": court, "day": "2026-03-04", "starts": starts, "minutes": 60,
        });
        w.act("lessons.plan", lesson);
    }
    rules(&mut w, &json!({ "week_limit": 180 }));
    let look = planned(&mut w, asked.clone());
    let lines = short(&look);
    assert_eq!(lines.len(), 3, "three in the days from the tenth: {lines:?}");
    assert!(lines.iter().filter(|line| line.contains(" 10 ")).count() <= 1, "{lines:?}");
    let why = look["proposal"]["missing"][0]["why"].to_string();
    assert!(why.contains("Hall gives at most 180 minutes in any seven days; with 9"), "{why}");
    // Another place, a dearer one, takes what this one cannot.
    let annex =
        id(&w.act("facilities.add", json!({ "name": "Annex", "zone": "Europe/Lisbon" })), "/id");
    w.act("facilities.add_court", json!({ "facility": annex, "name": "Court A" }));
    let dear = json!({ "currency": "EUR", "hours": [{ "opens": "09:00", "closes": "13:00" }], "rates": [{ "hour": "90" }] });
    w.act("facilities.set_rules", json!({ "facility": annex, "rules": dear }));
    let mut both = asked.clone();
    both["facilities"] = json!([w.hall, annex]);
    both["order"] = json!(["cost", "spread", "times"]);
    let look = planned(&mut w, both);
    let at = |name: &str| {
        let lines = look["proposal"]["lines"].as_array().unwrap();
        lines.iter().filter(|line| line["facility_name"] == name).count()
    };
    assert_eq!((at("Hall"), at("Annex")), (3, 3));
    assert_eq!(look["proposal"]["proven"], true);
    // What stands already stays, however full the week is.
    for (on, starts) in [("2026-03-10", "09:00"), ("2026-03-10", "10:00")] {
        let lesson = json!({
            "visits": [ana], "facility": w.hall, "court": court, "day": on, "starts": starts, "minutes": 60,
        });
        w.act("lessons.plan", lesson);
    }
    let look = planned(&mut w, asked);
    let stand = look["proposal"]["lines"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|l| l["lesson"].is_string())
        .count();
    assert_eq!(stand, 2, "{:?}", short(&look));
}
