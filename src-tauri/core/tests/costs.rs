//! What the coach spends: amounts as typed and as worked out from dated rates, sums, the table for an
//! adviser.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::costs::{CostsOf, document};
use carryover_core::error::Error;
use carryover_core::kinds::Day;
use serde_json::{Value, json};
use world::{World, codes, text};

/// A drive of so many miles on a day.
fn drive(day: &str, miles: &str) -> Value {
    json!({ "cost": { "kind": "drive", "day": day, "words": "To Saltmere and back", "distance": miles, "unit": "mile" } })
}

fn rate(since: &str, until: &str, amount: &str) -> Value {
    json!({ "rate": {
        "per": "mile", "since": since, "until": until, "currency": "USD", "amount": amount, "source": "The notice",
    } })
}

/// IRS standard mileage rates for business: Announcement 2022-13 (62.5 cents from 1 July 2022), Notice
/// 2025-5 (70 cents), Notice 2026-10 (72.5 cents). The rate before July 2022 (58.5) is from memory.
/// Products worked by hand.
#[test]
fn a_drive_counts_by_the_rate_of_its_day() {
    let mut w = World::new();
    w.on("2026-11-01");
    w.act("costs.take_published", json!({ "list": "us_mileage" }));
    w.act("costs.add_rate", rate("2022-01-01", "2022-06-30", "0.585"));
    w.act("costs.add_rate", rate("2022-07-01", "2022-12-31", "0.625"));
    for (day, miles, amount) in [
        ("2022-06-30", "180", "105.30"),
        ("2022-07-01", "180", "112.50"),
        ("2025-12-31", "214", "149.80"),
        ("2026-01-01", "214", "155.15"),
        // 0.6 × 0.725 = 0.435: a half goes up.
        ("2026-01-01", "0,6", "0.44"),
    ] {
        let cost = w.act("costs.note", drive(day, miles));
        assert_eq!(cost["amount"], amount, "{miles} miles on {day}");
        assert_eq!(cost["currency"], "USD");
    }
    let cost = w.act("costs.note", drive("2026-01-01", "214.0"));
    assert_eq!(cost["worked"], "214 mi \u{d7} 0.725 USD, IRS Notice 2026-10");
    // Outside the table the coach is asked: nothing is guessed, nothing is kept.
    let before = w.act("costs.list", json!({ "first": "2021-01-01", "last": "2021-12-31" }));
    assert_eq!(before["costs"], json!([]));
    let refused = codes(&w.refused("costs.note", drive("2021-12-31", "10")));
    assert_eq!(refused, [("cost.day".to_owned(), "no_rate".to_owned())]);
    let mut km = drive("2026-01-02", "10");
    km["cost"]["unit"] = json!("km");
    assert_eq!(
        codes(&w.refused("costs.note", km))[0].1,
        "no_rate",
        "miles say nothing of kilometres"
    );
}

/// GSA per diem of fiscal year 2026: 68.00 a day at the standard rate, three quarters of it on the
/// first and the last day of travel. Three days: 51 + 68 + 51; five: 306.
#[test]
fn days_away_count_whole_in_the_middle_and_in_part_at_the_edges() {
    let mut w = World::new();
    w.on("2026-11-01");
    w.act("costs.take_published", json!({ "list": "us_meals" }));
    let away = |first: &str, last: &str| json!({ "cost": { "kind": "day_rate", "day": first, "last": last, "words": "Lessons in Saltmere" } });
    for (first, last, amount) in [
        ("2026-03-10", "2026-03-12", "170.00"),
        ("2026-03-10", "2026-03-14", "306.00"),
        ("2026-03-10", "2026-03-11", "102.00"),
        ("2026-03-10", "", "51.00"),
    ] {
        let cost = w.act("costs.note", away(first, last));
        assert_eq!(cost["amount"], amount, "{first} to {last}");
        w.act("costs.take_back", json!({ "id": cost["id"], "reason": "Another length" }));
    }
    let cost = w.act("costs.note", away("2026-03-10", "2026-03-12"));
    let standard = "68 USD (GSA per diem, fiscal year 2026, standard rate)";
    assert_eq!(cost["worked"], format!("2 \u{d7} 75 % of {standard} + 1 \u{d7} {standard}"));
    // The rate ends on 30 September: of a later day it is not known.
    let refused = codes(&w.refused("costs.note", away("2026-09-29", "2026-10-01")));
    assert_eq!(refused, [("cost.last".to_owned(), "no_rate".to_owned())]);
}

#[test]
fn no_day_away_counts_twice() {
    let mut w = World::new();
    w.on("2026-06-01");
    w.act("costs.take_published", json!({ "list": "us_meals" }));
    let away = |first: &str, last: &str| json!({ "kind": "day_rate", "day": first, "last": last, "words": "Lessons in Saltmere" });
    let kept = w.act("costs.note", json!({ "cost": away("2026-03-10", "2026-03-12") }));
    let again = w.refused("costs.note", json!({ "cost": away("2026-03-12", "2026-03-14") }));
    assert_eq!(codes(&again), [("cost.day".to_owned(), "twice".to_owned())]);
    w.act("costs.change", json!({ "id": kept["id"], "cost": away("2026-03-10", "2026-03-11") }));
    let next = w.act("costs.note", json!({ "cost": away("2026-03-12", "2026-03-14") }));
    w.act("costs.take_back", json!({ "id": next["id"], "reason": "Paid by the club" }));
    w.act("costs.note", json!({ "cost": away("2026-03-13", "2026-03-13") }));
}

#[test]
fn a_new_rate_ends_the_one_before_and_none_hold_twice() {
    let mut w = World::new();
    w.on("2026-11-01");
    w.act("costs.add_rate", rate("2026-01-01", "", "0.5"));
    let rates = w.act("costs.add_rate", rate("2026-07-01", "", "0.6"));
    let spans: Vec<(&Value, &Value)> =
        rates.as_array().unwrap().iter().map(|r| (&r["since"], &r["until"])).collect();
    assert_eq!(spans[0], (&json!("2026-07-01"), &Value::Null));
    assert_eq!(spans[1], (&json!("2026-01-01"), &json!("2026-06-30")));
    let twice = codes(&w.refused("costs.add_rate", rate("2026-03-01", "2026-03-31", "0.7")));
    assert_eq!(twice, [("rate.since".to_owned(), "taken".to_owned())]);
    let twice = codes(&w.refused("costs.add_rate", rate("2025-01-01", "", "0.7")));
    assert_eq!(twice, [("rate.since".to_owned(), "taken".to_owned())]);
    w.act("costs.add_rate", rate("2025-01-01", "2025-12-31", "0.4"));
    // What was worked out stays when its rate is put away.
    let cost = w.act("costs.note", drive("2026-02-01", "10"));
    w.act("costs.put_rate_away", json!({ "rate": rates[1]["id"] }));
    assert_eq!(codes(&w.refused("costs.note", drive("2026-02-01", "10")))[0].1, "no_rate");
    let kept = w.act("costs.list", json!({ "first": "2026-02-01", "last": "2026-02-28" }));
    assert_eq!(kept["costs"][0], cost);
}

#[test]
fn a_rate_that_is_none_is_refused_by_its_field() {
    let mut w = World::new();
    let none = json!({ "rate": {
        "per": "mile", "since": "2026-02-01", "until": "2026-01-01", "currency": "EURO", "amount": "0.00005",
        "edge": "75", "source": " ",
    } });
    let refused: Vec<String> =
        codes(&w.refused("costs.add_rate", none)).into_iter().map(|(field, _)| field).collect();
    let of = |field: &str| format!("rate.{field}");
    assert_eq!(refused, [of("until"), of("currency"), of("amount"), of("edge"), of("source")]);
    assert_eq!(w.act("costs.rates", json!({})), json!([]));
}

#[test]
fn what_is_typed_wrong_is_told_at_once_and_nothing_is_kept() {
    let mut w = World::new();
    w.on("2026-03-01");
    let fields = |refused: Error| -> Vec<(String, String)> {
        codes(&refused).into_iter().map(|(f, c)| (f.replace("cost.", ""), c)).collect()
    };
    let pair = |field: &str, code: &str| (field.to_owned(), code.to_owned());
    let wrong = json!({ "cost": {
        "kind": "fare", "day": "2026-03-02", "last": "2026-03-03", "words": "", "amount": "-5", "currency": "EUR",
        "distance": "5",
    } });
    let told = fields(w.refused("costs.note", wrong));
    assert_eq!(
        told,
        [
            pair("last", "one_day"),
            pair("day", "in_future"),
            pair("words", "empty"),
            pair("distance", "no_drive"),
            pair("amount", "negative")
        ]
    );
    let drive = json!({ "cost": {
        "kind": "drive", "day": "2026-02-01", "words": "x", "amount": "5", "currency": "EUR", "distance": "1.25",
    } });
    let told = fields(w.refused("costs.note", drive));
    assert_eq!(
        told,
        [pair("amount", "worked_out"), pair("unit", "missing"), pair("distance", "no_length")]
    );
    let text_as_receipt = json!({
        "cost": { "kind": "meals", "day": "2026-02-01", "words": "Lunch", "amount": "12.5", "currency": "EUR" },
        "receipt": { "name": "bill.txt", "base64": "aGVsbG8=" },
    });
    assert_eq!(fields(w.refused("costs.note", text_as_receipt)), [pair("receipt", "no_scan")]);
    let all = w.act("costs.list", json!({ "first": "2026-01-01", "last": "2026-12-31" }));
    assert_eq!(all, json!({ "costs": [], "sums": [] }));
}

/// Sums counted once more by this test, in whole units.
#[test]
fn sums_are_by_currency_kind_and_month_without_what_was_taken_back() {
    let mut w = World::new();
    w.on("2026-11-01");
    let note = |w: &mut World, kind: &str, day: &str, amount: &str, currency: &str| {
        let cost = json!({ "cost": { "kind": kind, "day": day, "words": "=HYPERLINK(\"x\"), \"quoted\"",
            "amount": amount, "currency": currency } });
        w.act("costs.note", cost)
    };
    note(&mut w, "meals", "2026-03-10", "12,50", "eur");
    note(&mut w, "fare", "2026-03-31", "80", "EUR");
    note(&mut w, "meals", "2026-04-01", "7.25", "EUR");
    note(&mut w, "court", "2026-04-02", "1500", "JPY");
    let slip = note(&mut w, "meals", "2026-04-02", "99", "EUR");
    let of = json!({ "first": "2026-01-01", "last": "2026-12-31" });
    w.act("costs.take_back", json!({ "id": slip["id"], "reason": "Not mine" }));
    let again = w.refused("costs.take_back", json!({ "id": slip["id"], "reason": "Not mine" }));
    assert!(matches!(again, Error::NotPossible { code: "taken_back", .. }), "{again}");
    let all = w.act("costs.list", of.clone());
    assert_eq!(all["costs"].as_array().unwrap().len(), 5, "what was taken back stays in sight");
    assert_eq!(
        all["sums"],
        json!([
            { "currency": "EUR", "amount": "99.75",
              "kinds": [{ "kind": "fare", "amount": "80.00" }, { "kind": "meals", "amount": "19.75" }],
              "months": [{ "month": "2026-03-01", "amount": "92.50" }, { "month": "2026-04-01", "amount": "7.25" }] },
            { "currency": "JPY", "amount": "1500", "kinds": [{ "kind": "court", "amount": "1500" }],
              "months": [{ "month": "2026-04-01", "amount": "1500" }] },
        ])
    );

    let day = |text: &str| Day::parse(text).unwrap();
    let of = CostsOf { first: day("2026-01-01"), last: day("2026-12-31") };
    let (name, bytes) = w.file.read(|db| document(db, of)).unwrap();
    assert_eq!(name, "Costs 2026-01-01 to 2026-12-31.csv");
    let table = String::from_utf8(bytes).unwrap();
    let lines: Vec<&str> = table.split("\r\n").collect();
    assert_eq!(lines.len(), 6, "a head, four costs, the end: {table}");
    let formula = "\"'=HYPERLINK(\"\"x\"\"), \"\"quoted\"\"\"";
    assert_eq!(
        lines[1],
        format!("2026-03-10,2026-03-10,meals,{formula},,EUR,12.50,,,,,"),
        "quoted by RFC 4180, and no formula"
    );
}

#[test]
fn a_receipt_stays_with_its_cost_and_undo_takes_both() {
    let mut w = World::new();
    w.on("2026-03-01");
    let given = json!({
        "cost": { "kind": "lodging", "day": "2026-02-01", "last": "2026-02-03", "words": "Harbour Inn", "amount": "240",
            "currency": "EUR" },
        "receipt": { "name": "inn.pdf", "base64": "JVBERi0xLjcK" },
    });
    let noted = carryover_core::commands::call(&mut w.file, "costs.note", given.clone()).unwrap();
    assert_eq!(text(&noted.value["receipt"]["name"]), "inn.pdf");
    let mut changed = json!({ "id": noted.value["id"], "cost": given["cost"] });
    changed["cost"]["amount"] = json!("250");
    let changed = carryover_core::commands::call(&mut w.file, "costs.change", changed).unwrap();
    assert_eq!(changed.value["amount"], "250.00");
    assert_eq!(changed.value["receipt"], noted.value["receipt"], "it keeps its receipt");
    w.act("journal.undo", json!({ "act": changed.act }));
    w.act("journal.undo", json!({ "act": noted.act }));
    let all = w.act("costs.list", json!({ "first": "2026-01-01", "last": "2026-12-31" }));
    assert_eq!(all["costs"], json!([]));
    assert!(carryover_core::commands::check(&w.file).unwrap().sound);
}
