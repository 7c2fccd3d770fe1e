//! What a trip earns: its result by hand, other trips beside it, the outlook before it is agreed, and
//! costs passed on to whoever was there.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::commands::{call, check};
use carryover_core::error::Error;
use serde_json::{Value, json};
use world::{World, codes, id, text};

const TRIP: [&str; 2] = ["2026-03-10", "2026-03-12"];

/// A coach whose prices are with tax: an hour 47.60 alone (40.00 without the tax of 19 percent), 71.40
/// for two (60.00).
fn business() -> World {
    let mut w = World::new();
    w.on("2026-01-01");
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "tax_id": "IE 77/123",
                "prices": "gross" }),
    );
    w.act("prices.set_tax", json!({ "category": "S", "rate": "19" }));
    for (sharing, amount) in [(1, "47.60"), (2, "71.40")] {
        let price = json!({ "what": "lesson", "minutes": 60, "sharing": sharing, "currency": "EUR", "amount": amount });
        w.act("prices.add", json!({ "price": price }));
    }
    let terms = json!({ "later": 100, "missed": 100, "pass_courts": false, "due_days": 14 });
    w.act("terms.set", terms);
    w
}

struct Guest {
    student: String,
    payer: String,
    visit: String,
}

/// A student with a payer and a visit on some days.
fn guest(w: &mut World, name: &str, [first, last]: [&str; 2]) -> Guest {
    let student = w.student(name);
    let payer = id(&w.act("payers.choose", json!({ "student": student })), "/id");
    let form = json!({ "name": name, "address": "2 Mole Road\nSaltmere", "country": "IE" });
    w.act("payers.change", json!({ "id": payer, "payer": form }));
    let visit = w.planned(&student, first, last);
    Guest { student, payer, visit }
}

fn plan(w: &mut World, guests: &[&Guest], day: &str, starts: &str) -> String {
    let visits: Vec<&str> = guests.iter().map(|guest| guest.visit.as_str()).collect();
    let lesson = json!({ "visits": visits, "facility": w.hall, "day": day, "starts": starts, "minutes": 60 });
    id(&w.act("lessons.plan", lesson), "/id")
}

fn cost(w: &mut World, kind: &str, day: &str, amount: &str, currency: &str) -> String {
    let cost = json!({ "kind": kind, "day": day, "words": format!("{kind} for Saltmere"), "amount": amount,
        "currency": currency });
    id(&w.act("costs.note", json!({ "cost": cost })), "/id")
}

fn result(w: &mut World, [first, last]: [&str; 2]) -> Value {
    w.act("trips.result", json!({ "first": first, "last": last }))
}

fn balanced(w: &mut World) {
    assert_eq!(w.act("accounts.balanced", json!({}))["wrong"], json!([]));
    assert!(check(&w.file).unwrap().sound);
}

/// In euros of cents: the sum of the rows of a currency.
fn sum_of(rows: &Value, currency: &str) -> i64 {
    let cents = |row: &Value| -> i64 { text(&row["amount"]).replace('.', "").parse().unwrap() };
    let rows = rows.as_array().unwrap().iter().filter(|row| row["currency"] == currency);
    rows.map(cents).sum()
}

/// Six lessons for three students, two of them shared: four alone and two for two.
fn six(w: &mut World) -> (Vec<Guest>, Vec<(String, Vec<usize>)>) {
    let guests: Vec<Guest> =
        ["Ana Silva", "Ben Costa", "Cleo Finch"].map(|name| guest(w, name, TRIP)).into();
    let mut lessons = Vec::new();
    for (who, day, starts) in [
        (vec![0], TRIP[0], "09:00"),
        (vec![1], TRIP[0], "10:00"),
        (vec![0, 1], "2026-03-11", "09:00"),
        (vec![2], "2026-03-11", "10:00"),
        (vec![0, 2], TRIP[1], "09:00"),
        (vec![1], TRIP[1], "10:00"),
    ] {
        let there: Vec<&Guest> = who.iter().map(|n| &guests[*n]).collect();
        lessons.push((plan(w, &there, day, starts), who));
    }
    (guests, lessons)
}

/// Worked by hand. Lessons without tax: 4 × 40.00 + 2 × 60.00 = 280.00, on six hours of court. Shares of
/// 100.00: 33.34, 33.33, 33.33, with tax in them: 28.02 + 28.01 + 28.01 = 84.04. Result 280.00 + 84.04 −
/// 100.00 = 264.04; over 6 hours of court 44.00666…, over 3 whole days (72 hours) 3.66722…, over 60 hours
/// from leaving to coming home 4.40066….
#[test]
fn a_trip_of_six_lessons_two_of_them_shared() {
    let mut w = business();
    let (guests, lessons) = six(&mut w);
    let before = result(&mut w, TRIP);
    assert_eq!([&before["lessons"], &before["court_minutes"]], [0, 0]);
    assert_eq!(before["money"][0]["per_court_hour"], Value::Null, "no hour, no figure");
    assert_eq!(
        [&before["money"][0]["result"], &before["money"][0]["expected"]],
        ["0.00", "280.00"]
    );
    w.on("2026-03-13");
    for (lesson, _) in &lessons {
        w.act("lessons.give", json!({ "lesson": lesson }));
    }
    // Over and not settled is still only expected, by the price list without tax.
    let waiting = result(&mut w, TRIP);
    assert_eq!(
        [&waiting["money"][0]["earned"], &waiting["money"][0]["expected"]],
        ["0.00", "280.00"]
    );
    assert!(waiting["expected"].as_array().unwrap().iter().all(|row| row["from"] == "to_settle"));
    for (lesson, who) in &lessons {
        for n in who {
            let one = json!({ "lesson": lesson, "student": guests[*n].student, "how": "invoice" });
            w.act("accounts.settle", json!({ "lessons": [one] }));
        }
    }
    let inn = cost(&mut w, "lodging", TRIP[0], "100", "EUR");
    cost(&mut w, "fare", TRIP[1], "20", "USD");
    cost(&mut w, "meals", "2026-03-13", "15", "EUR");
    let split = json!({ "costs": [inn], "first": TRIP[0], "last": TRIP[1] });
    let proposed = w.act("costs.split_proposal", split.clone());
    let amounts: Vec<&Value> =
        proposed["students"].as_array().unwrap().iter().map(|one| &one["amounts"][0]).collect();
    assert_eq!(amounts, ["33.34 EUR", "33.33 EUR", "33.33 EUR"]);
    let passed = w.act("costs.pass_on", split);
    assert_eq!(passed["words"], "100.00 EUR passed on: 3 lines on the drafts of 3 payers.");
    let drafted = result(&mut w, TRIP);
    let rows = drafted["expected"].as_array().unwrap();
    assert!(rows.iter().all(|row| row["from"] == "draft"), "{rows:?}");
    assert_eq!(drafted["money"][0]["expected"], "364.04");
    let drafts = w.act("invoices.list", json!({}))["invoices"].clone();
    for draft in drafts.as_array().unwrap() {
        w.act("invoices.issue", json!({ "invoice": draft["id"] }));
    }
    let after = result(&mut w, TRIP);
    assert_eq!([&after["lessons"], &after["court_minutes"]], [6, 360], "a shared one counts once");
    assert_eq!(
        after["money"],
        json!([
            { "currency": "EUR", "earned": "280.00", "charged": "84.04", "costs": "100.00", "result": "264.04",
              "per_court_hour": "44.01", "per_hour_away": "3.67", "expected": "" },
            { "currency": "USD", "earned": "0.00", "charged": "0.00", "costs": "20.00", "result": "-20.00",
              "per_court_hour": "-3.33", "per_hour_away": "-0.28", "expected": "" },
        ])
    );
    assert_eq!(sum_of(&after["rows"], "EUR"), 26_404, "the rows add up to the result");
    assert_eq!(sum_of(&after["rows"], "USD"), -2_000);
    assert_eq!([&after["expected"], &after["asks"]], [&json!([]), &json!([])]);
    assert_eq!([&after["away"]["minutes"], &after["away"]["said"]], [&json!(4320), &json!(false)]);
    let said = w.act(
        "trips.result",
        json!({ "first": TRIP[0], "last": TRIP[1], "leaves": "07:00", "returns": "19:00" }),
    );
    assert_eq!([&said["away"]["minutes"], &said["away"]["said"]], [&json!(3600), &json!(true)]);
    assert_eq!(said["money"][0]["per_hour_away"], "4.40");
    let half = json!({ "first": TRIP[0], "last": TRIP[1], "leaves": "07:00" });
    assert_eq!(codes(&w.refused("trips.result", half))[0], ("returns".into(), "empty".into()));

    // A credit note takes what it takes back out of the days of its line: all of Ana's 128.02.
    let shown = w.act("costs.list", json!({ "first": TRIP[0], "last": TRIP[1] }));
    let inn = shown["costs"].as_array().unwrap().iter().find(|c| c["kind"] == "lodging").unwrap();
    assert_eq!([&inn["passed_on"], &inn["passed"][0]["name"]], ["100.00", "Ana Silva"]);
    let invoice = text(&inn["passed"][0]["invoice"]);
    w.act("invoices.credit", json!({ "invoice": invoice, "reason": "A slip" }));
    let credited = result(&mut w, TRIP);
    assert_eq!(
        [&credited["money"][0]["earned"], &credited["money"][0]["charged"]],
        ["180.00", "56.02"]
    );
    let shown = w.act("costs.list", json!({ "first": TRIP[0], "last": TRIP[1] }));
    let inn = shown["costs"].as_array().unwrap().iter().find(|c| c["kind"] == "lodging").unwrap();
    assert_eq!(inn["passed_on"], "66.66", "a share that was credited is no longer passed on");
    balanced(&mut w);

    // Whom an erased student's share was for stays with whoever pays.
    w.act("students.erase", json!({ "student": guests[1].student, "name_typed": "Ben Costa" }));
    assert_eq!(result(&mut w, TRIP)["money"][0]["charged"], "56.02");
    balanced(&mut w);
}

/// A package of three for 100.00 without tax: a lesson releases 33.33, then 33.34 (cumulative rounding).
#[test]
fn a_prepaid_lesson_counts_with_what_its_package_releases() {
    let mut w = business();
    let ana = guest(&mut w, "Ana Silva", TRIP);
    let sell = json!({ "student": ana.student, "lessons": 3, "minutes": 60, "currency": "EUR", "price": "119",
                       "issue": true });
    w.act("packages.sell", sell);
    let lessons =
        [plan(&mut w, &[&ana], TRIP[0], "09:00"), plan(&mut w, &[&ana], TRIP[1], "09:00")];
    let expected = result(&mut w, TRIP);
    let amounts: Vec<&Value> =
        expected["expected"].as_array().unwrap().iter().map(|row| &row["amount"]).collect();
    assert_eq!(amounts, ["33.33", "33.34"]);
    w.on("2026-03-13");
    for lesson in &lessons {
        w.act("lessons.give", json!({ "lesson": lesson }));
        let one = json!({ "lesson": lesson, "student": ana.student, "how": "package" });
        w.act("accounts.settle", json!({ "lessons": [one] }));
    }
    let after = result(&mut w, TRIP);
    assert_eq!([&after["money"][0]["earned"], &after["money"][0]["expected"]], ["66.67", ""]);
    assert!(after["rows"][0]["package"].is_string(), "each row says where it is from");
    // The sale itself, on another day, is not earned with the trip.
    assert_eq!(result(&mut w, ["2026-01-01", "2026-01-02"])["money"], json!([]));
    balanced(&mut w);
}

/// 40.00 in one hour of court on another trip, against 44.01 and a loss in another currency.
#[test]
fn trips_stand_beside_each_other_the_best_hour_first() {
    let mut w = business();
    for (n, (days, many)) in [(["2026-02-02", "2026-02-03"], 1), (TRIP, 2)].into_iter().enumerate()
    {
        let one = guest(&mut w, &format!("Ana {n}"), days);
        let mut lessons = Vec::new();
        for hour in 0..many {
            lessons.push(plan(&mut w, &[&one], days[0], &format!("{:02}:00", 9 + hour)));
        }
        w.on("2026-03-20");
        for lesson in lessons {
            w.act("lessons.give", json!({ "lesson": lesson }));
            let settled = json!({ "lesson": lesson, "student": one.student, "how": "invoice" });
            w.act("accounts.settle", json!({ "lessons": [settled] }));
        }
        let invoice = w.act("invoices.list", json!({ "payer": one.payer }))["invoices"][0].clone();
        w.act("invoices.issue", json!({ "invoice": invoice["id"] }));
    }
    cost(&mut w, "fare", TRIP[0], "10", "EUR");
    cost(&mut w, "fare", TRIP[0], "10", "USD");
    let found = w.act("trips.others", json!({ "first": TRIP[0], "last": TRIP[1] }));
    let told: Vec<(Value, Value, Value, Value)> = found
        .as_array()
        .unwrap()
        .iter()
        .map(|one| {
            let money = &one["money"];
            (
                one["days"]["first"].clone(),
                one["this"].clone(),
                money["currency"].clone(),
                money["per_court_hour"].clone(),
            )
        })
        .collect();
    // The earlier trip 40.00 an hour; this one (80.00 − 10.00) ÷ 2 = 35.00; in dollars −10.00 ÷ 2.
    assert_eq!(
        told,
        [
            (json!("2026-02-02"), json!(false), json!("EUR"), json!("40.00")),
            (json!(TRIP[0]), json!(true), json!("EUR"), json!("35.00")),
            (json!(TRIP[0]), json!(true), json!("USD"), json!("-5.00")),
        ]
    );
    assert_eq!(found[0]["places"], "Hall");
    let earlier = w.act("trips.others", json!({ "first": "2026-02-02", "last": "2026-02-03" }));
    assert_eq!(earlier.as_array().unwrap().len(), 1, "what came later is not beside it");
    let none = w.refused("trips.others", json!({ "first": TRIP[1], "last": TRIP[0] }));
    assert_eq!(codes(&none)[0].1, "end_before_start");
}

/// Two hours at 40.00 without tax, their courts at 12.00 an hour; two nights at 80.00 and a fare of 30.00:
/// 80 − 24 − 190 = −134.00. A further lesson brings 28.00 after its court: 134 ÷ 28 = 4.78…, so 5. Three
/// lessons are 3.5 hours of court: −38.2857…; 72 hours away: −1.8611….
#[test]
fn an_outlook_says_what_it_would_come_to_and_asks_for_what_it_does_not_know() {
    let mut w = business();
    let rules = json!({ "currency": "EUR", "rates": [{ "hour": "12" }] });
    w.act("facilities.set_rules", json!({ "facility": w.hall, "rules": rules }));
    let court = w.act("facilities.add_court", json!({ "facility": w.hall, "name": "Court 1" }));
    let court = text(&court["courts"][0]["id"]);
    let harbour = json!({ "name": "Harbour Hall", "zone": "Europe/Lisbon" });
    let harbour = id(&w.act("facilities.add", harbour), "/id");
    let days = ["2026-04-10", "2026-04-12"];
    let ana = guest(&mut w, "Ana Silva", days);
    plan(&mut w, &[&ana], days[0], "09:00");
    plan(&mut w, &[&ana], days[1], "09:00");
    let long = json!({ "visits": [ana.visit], "facility": harbour, "day": "2026-04-11", "starts": "09:00",
        "minutes": 90 });
    w.act("lessons.plan", long);
    let costs = json!([
        { "kind": "lodging", "amount": "80", "currency": "EUR", "nights": "2" },
        { "kind": "fare", "amount": "30", "currency": "EUR", "words": "Ferry" },
        { "kind": "drive", "distance": "46", "unit": "km" },
    ]);
    let ask = json!({ "first": days[0], "last": days[1], "costs": costs });
    let acts = |w: &mut World| w.act("accounts.balanced", json!({}))["entries"].clone();
    let before = acts(&mut w);
    let ahead = w.act("trips.outlook", ask.clone());
    assert_eq!(
        ahead["money"],
        json!([{ "currency": "EUR", "earned": "80.00", "charged": "0.00", "costs": "214.00", "result": "-134.00",
                 "per_court_hour": "-38.29", "per_hour_away": "-1.86",
                 "break_even": [{ "lessons": 5, "like": "as those to come are on average, after their courts",
                                  "each": "28.00" }] }])
    );
    assert_eq!([&ahead["lessons"], &ahead["court_minutes"]], [3, 210]);
    assert_eq!(sum_of(&ahead["rows"], "EUR"), -13_400);
    let asks = ahead["asks"].to_string();
    for sentence in [
        "No price is known for 90 minutes at Harbour Hall.",
        "No rule says what a court costs at Harbour Hall.",
        "You have no rate for a kilometre on 10 April 2026.",
    ] {
        assert!(asks.contains(sentence), "{asks}");
    }
    // A line of a plan that is no lesson yet brings the same 28.00.
    let mut more = ask.clone();
    let place = json!({ "visit": ana.visit, "court": court, "day": days[0], "starts": "11:00" });
    more["lines"] = json!([{ "place": place, "minutes": 60 }]);
    let with = w.act("trips.outlook", more.clone());
    assert_eq!([&with["money"][0]["result"], &with["lessons"]], [&json!("-106.00"), &json!(4)]);
    more["lines"][0]["place"]["day"] = json!("2026-04-13");
    let refused = codes(&w.refused("trips.outlook", more));
    assert_eq!(refused, [("lines[0].place.day".into(), "elsewhere".into())]);
    // With its price and rate written down, nothing is asked about them any more.
    let price = json!({ "what": "lesson", "minutes": 90, "currency": "EUR", "amount": "71.40" });
    w.act("prices.add", json!({ "price": price }));
    let rate = json!({ "per": "km", "since": "2026-01-01", "currency": "EUR", "amount": "0.5", "source": "Agreed" });
    w.act("costs.add_rate", json!({ "rate": rate }));
    let known = w.act("trips.outlook", ask);
    assert_eq!(known["asks"], json!(["No rule says what a court costs at Harbour Hall."]));
    assert_eq!(known["money"][0]["result"], "-97.00", "−134 + 60 for 90 minutes − 46 km at 0.50");
    assert_eq!(acts(&mut w), before, "nothing is written");
}

/// Without lessons the price list says how many it takes: 100 ÷ 40 is 3. In a currency without a price
/// it is asked. Courts that are passed on at cost count on both sides.
#[test]
fn without_lessons_the_price_list_says_how_many_reach_zero() {
    let mut w = business();
    let costs = json!([
        { "kind": "other", "amount": "100", "currency": "EUR" }, { "kind": "fare", "amount": "5", "currency": "USD" },
    ]);
    let ask = json!({ "first": "2026-04-10", "last": "2026-04-10", "costs": costs });
    let ahead = w.act("trips.outlook", ask);
    let even = &ahead["money"][0]["break_even"];
    assert_eq!([&even[0]["lessons"], &even[0]["each"]], [&json!(3), &json!("40.00")], "{even}");
    assert_eq!(even.as_array().unwrap().len(), 1, "one for two is not one alone");
    assert_eq!(ahead["money"][1]["break_even"], json!([]));
    let asks = ahead["asks"].to_string();
    assert!(asks.contains("No price of a lesson in USD is known"), "{asks}");
    let wrong = json!([
        { "kind": "lodging", "amount": "-1", "currency": "EUR", "nights": "0" },
        { "kind": "drive", "distance": "x" }, { "kind": "day_rate", "day": "2026-04-11", "last": "2026-04-10" },
    ]);
    let refused = codes(&w.refused(
        "trips.outlook",
        json!({ "first": "2026-04-10", "last": "2026-04-12", "costs": wrong }),
    ));
    let fields: Vec<&str> = refused.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(
        fields,
        [
            "costs[0].nights",
            "costs[0].amount",
            "costs[1].unit",
            "costs[1].distance",
            "costs[2].last"
        ]
    );

    let rules = json!({ "currency": "EUR", "rates": [{ "hour": "12" }] });
    w.act("facilities.set_rules", json!({ "facility": w.hall, "rules": rules }));
    let ana = guest(&mut w, "Ana Silva", ["2026-04-10", "2026-04-10"]);
    plan(&mut w, &[&ana], "2026-04-10", "09:00");
    let mut terms = w.act("terms.show", json!({}));
    terms["pass_courts"] = json!(true);
    w.act("terms.set", terms);
    let ahead = w.act("trips.outlook", json!({ "first": "2026-04-10", "last": "2026-04-10" }));
    // 40.00 + 12.00 ÷ 1.19 = 10.08 − 12.00.
    assert_eq!([&ahead["money"][0]["earned"], &ahead["money"][0]["result"]], ["50.08", "38.08"]);
}

#[test]
fn shares_go_where_the_coach_says_and_never_beyond_the_cost() {
    let mut w = business();
    let (guests, _) = six(&mut w);
    w.on("2026-03-13");
    let (inn, ferry) =
        (cost(&mut w, "lodging", TRIP[0], "50", "EUR"), cost(&mut w, "fare", TRIP[1], "50", "EUR"));
    let both = json!({ "costs": [inn, ferry], "first": TRIP[0], "last": TRIP[1] });
    let amounts = |found: &Value| -> Vec<Value> {
        found["students"].as_array().unwrap().iter().map(|one| one["amounts"].clone()).collect()
    };
    // Two costs are one sum: 100.00 over three, not twice 50.00.
    let proposed = w.act("costs.split_proposal", both.clone());
    assert_eq!(
        amounts(&proposed),
        [json!(["33.34 EUR"]), json!(["33.33 EUR"]), json!(["33.33 EUR"])]
    );
    // By lessons: 3, 3 and 2 of 8.
    let mut by = both.clone();
    by["by"] = json!("lessons");
    let proposed = w.act("costs.split_proposal", by);
    assert_eq!(
        amounts(&proposed),
        [json!(["37.50 EUR"]), json!(["37.50 EUR"]), json!(["25.00 EUR"])]
    );
    let mut two = both.clone();
    two["students"] = json!([guests[0].student, guests[2].student]);
    let proposed = w.act("costs.split_proposal", two.clone());
    assert_eq!(amounts(&proposed), [json!(["50.00 EUR"]), json!([]), json!(["50.00 EUR"])]);
    assert_eq!(proposed["students"][1]["chosen"], false);
    for (field, value, code) in [
        ("students", json!([]), "empty"),
        ("costs", json!([]), "empty"),
        ("costs", json!([inn, inn]), "twice"),
        ("last", json!("2026-03-09"), "end_before_start"),
    ] {
        let mut wrong = both.clone();
        wrong[field] = value;
        assert_eq!(codes(&w.refused("costs.pass_on", wrong))[0].1, code, "{field}");
    }
    let stranger = w.student("Dora Lund");
    two["students"] = json!([stranger]);
    assert_eq!(codes(&w.refused("costs.pass_on", two))[0].1, "not_there");
    let nobody = json!({ "costs": [inn], "first": "2026-05-01", "last": "2026-05-02" });
    assert_eq!(codes(&w.refused("costs.split_proposal", nobody))[0].1, "nobody");

    let one = json!({ "costs": [inn], "first": TRIP[0], "last": TRIP[1] });
    let act = call(&mut w.file, "costs.pass_on", one.clone()).unwrap();
    let share = &act.value["costs"][0]["passed"][0];
    assert_eq!(share["words"], "Share of lodging for Saltmere, 10 March 2026: Ana Silva");
    assert_eq!([&share["amount"], &share["number"]], ["16.67", ""]);
    let again = codes(&w.refused("costs.pass_on", one.clone()));
    assert_eq!(again, [("costs[0]".into(), "passed_on".into())], "no cost is passed on twice");
    let back = w.refused("costs.take_back", json!({ "id": inn, "reason": "A slip" }));
    assert!(matches!(&back, Error::NotPossible { code: "passed_on", .. }), "{back}");
    let less = json!({ "kind": "lodging", "day": TRIP[0], "words": "Inn", "amount": "49.99", "currency": "EUR" });
    let change = |form: &Value| json!({ "id": inn, "cost": form });
    assert_eq!(codes(&w.refused("costs.change", change(&less)))[0].1, "passed_on");
    let mut other = less.clone();
    (other["amount"], other["currency"]) = (json!("80"), json!("USD"));
    assert_eq!(codes(&w.refused("costs.change", change(&other)))[0].1, "passed_on");
    other["currency"] = json!("EUR");
    w.act("costs.change", change(&other));
    // What was added to it is left: 30.00 more.
    let rest = w.act("costs.split_proposal", one.clone());
    assert_eq!(rest["sums"], json!(["30.00 EUR"]));
    // A share taken off its draft is no longer passed on, and neither is one that goes with its draft.
    let draft = w.act("invoices.list", json!({ "payer": guests[0].payer }))["invoices"][0].clone();
    w.act("invoices.change", json!({ "invoice": draft["id"], "lines": [] }));
    assert_eq!(w.act("costs.split_proposal", one.clone())["sums"], json!(["46.67 EUR"]));
    for guest in &guests {
        let draft = w.act("invoices.list", json!({ "payer": guest.payer }))["invoices"][0].clone();
        w.act("invoices.discard", json!({ "invoice": draft["id"] }));
    }
    let listed = w.act("costs.list", json!({ "first": TRIP[0], "last": TRIP[0] }));
    assert_eq!(
        [&listed["costs"][0]["passed"], &listed["costs"][0]["passed_on"]],
        [&json!([]), &json!("")]
    );
    // Passed on by an act, and not after its Undo.
    let act = call(&mut w.file, "costs.pass_on", one).unwrap();
    w.act("journal.undo", json!({ "act": act.act }));
    w.act("costs.take_back", json!({ "id": inn, "reason": "A slip" }));
    let gone = w.refused("costs.pass_on", json!({ "costs": [inn] }));
    assert!(matches!(gone, Error::NotPossible { code: "taken_back", .. }), "{gone}");
    balanced(&mut w);
}

#[test]
fn tax_contained_is_at_most_the_cost_and_never_of_a_rate() {
    let mut w = business();
    let fare = |tax: &str| {
        json!({ "kind": "fare", "day": "2026-01-01", "words": "Ferry", "amount": "11.90",
        "currency": "EUR", "tax": tax })
    };
    let kept = w.act("costs.note", json!({ "cost": fare("1,90") }));
    assert_eq!(kept["tax"], "1.90");
    for (tax, code) in [("11.91", "too_much"), ("-1", "negative"), ("0.001", "no_amount")] {
        let refused = codes(&w.refused("costs.note", json!({ "cost": fare(tax) })));
        assert_eq!(refused, [("cost.tax".into(), code.into())], "{tax}");
    }
    let changed = w.act("costs.change", json!({ "id": kept["id"], "cost": fare("") }));
    assert_eq!(changed["tax"], "", "not known is not nothing");
    assert_eq!(w.act("costs.note", json!({ "cost": fare("0") }))["tax"], "0.00");
    let rate = json!({ "per": "km", "since": "2026-01-01", "currency": "EUR", "amount": "0.5", "source": "Agreed" });
    w.act("costs.add_rate", json!({ "rate": rate }));
    let drive = json!({ "kind": "drive", "day": "2026-01-01", "words": "There", "distance": "46", "unit": "km",
        "tax": "1" });
    assert_eq!(codes(&w.refused("costs.note", json!({ "cost": drive })))[0].1, "worked_out");
}

#[test]
fn courts_by_their_rules_are_noted_once() {
    let mut w = business();
    w.act(
        "facilities.set_rules",
        json!({ "facility": w.hall, "rules": { "currency": "EUR", "rates": [{ "hour": "18" }] } }),
    );
    let ana = guest(&mut w, "Ana Silva", TRIP);
    let ben = guest(&mut w, "Ben Costa", TRIP);
    let given = [
        plan(&mut w, &[&ana], "2026-03-10", "09:00"),
        plan(&mut w, &[&ana, &ben], "2026-03-10", "10:00"),
        plan(&mut w, &[&ben], "2026-03-11", "09:00"),
    ];
    let missed = plan(&mut w, &[&ben], "2026-03-12", "09:00");
    w.on("2026-03-12");
    for lesson in &given {
        w.act("lessons.give", json!({ "lesson": lesson }));
    }
    w.act("lessons.miss", json!({ "lesson": missed, "reason": "Late train" }));
    let courts = |w: &mut World| -> Vec<String> {
        let found = result(w, TRIP)["courts"].clone();
        let said =
            |c: &Value| format!("{} {} {}", text(&c["day"]), c["lessons"], text(&c["amount"]));
        found.as_array().unwrap().iter().map(said).collect()
    };
    // A shared lesson has one court; a missed one is not counted as played.
    assert_eq!(courts(&mut w), ["2026-03-10 2 36.00", "2026-03-11 1 18.00"]);
    cost(&mut w, "court", "2026-03-11", "20", "EUR");
    assert_eq!(courts(&mut w), ["2026-03-10 2 36.00"], "what was noted by hand is not noted again");
    let days = json!({ "first": TRIP[0], "last": TRIP[1] });
    let noted = w.act("trips.note_courts", days.clone());
    assert_eq!(noted[0]["words"], "Courts for 2 lessons, Hall");
    assert_eq!(courts(&mut w), Vec::<String>::new());
    assert_eq!(result(&mut w, TRIP)["money"][0]["costs"], "56.00");
    assert_eq!(
        codes(&w.refused("trips.note_courts", json!({ "first": TRIP[1], "last": TRIP[0] })))[0].0,
        "last"
    );
    assert!(matches!(
        w.refused("trips.note_courts", days),
        carryover_core::error::Error::NotPossible { code: "nothing", .. }
    ));
}
