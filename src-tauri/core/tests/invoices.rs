//! What stands under the lines of an invoice, its structured files, reminders, receipts and statements,
//! and lessons that changed after they were settled.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::accounts::{MoneyPaper, paper};
use carryover_core::error::Error;
use rusqlite::Connection;
use serde_json::{Value, json};
use world::{World, codes, id, text};

/// A coach who issues invoices with tax, and one who pays.
fn business() -> (World, String) {
    let mut w = World::new();
    w.on("2026-03-01");
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "vat_id": "IE1234567T",
                "account": "DE33100205000001194700", "prices": "gross" }),
    );
    w.act("prices.set_tax", json!({ "category": "S", "rate": "19" }));
    let payer = w.act(
        "payers.add",
        json!({ "payer": { "name": "Ana Silva", "address": "2 Mole Road\nSaltmere", "country": "IE" } }),
    );
    (w, id(&payer, "/id"))
}

fn draft(w: &mut World, payer: &str, lines: Value) -> Value {
    w.act("invoices.draft", json!({ "payer": payer, "currency": "EUR", "lines": lines }))
}

/// The draft's own lines as they are sent again, with extras.
fn with(draft: &Value, extras: Value) -> Value {
    let lines: Vec<Value> = draft["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|l| json!({ "id": l["id"], "what": l["what"], "words": l["words"], "price": l["price"] }))
        .collect();
    json!({ "invoice": draft["id"], "lines": lines, "extras": extras })
}

fn balanced(w: &mut World) {
    assert_eq!(w.act("accounts.balanced", json!({}))["wrong"], json!([]));
}

#[test]
fn what_is_taken_off_the_whole_lessens_its_tax_and_what_is_earned() {
    let (mut w, payer) = business();
    let lines = json!([{ "what": "lesson", "words": "Lesson", "price": "119" }, { "what": "travel", "words": "Journey", "price": "59.50" }]);
    let begun = draft(&mut w, &payer, lines);
    let extras = json!([
        { "takes_off": true, "words": "Long-standing guest", "amount": "11.90" },
        { "takes_off": false, "words": "Booked late", "amount": "5.95" },
    ]);
    let changed = w.act("invoices.change", with(&begun, extras));
    // 119.00 + 59.50 − 11.90 + 5.95 = 172.55 with 19 percent: 145.00 and 27.55.
    let sums = &changed["sums"];
    assert_eq!(
        [&sums["lines"], &sums["net"], &sums["tax"], &sums["gross"]],
        ["178.50", "145.00", "27.55", "172.55"]
    );
    assert_eq!(changed["file_lacks"], json!([]));
    // Lines are changed without touching it.
    let mut again = with(&begun, json!([]));
    again.as_object_mut().unwrap().remove("extras");
    assert_eq!(w.act("invoices.change", again)["extras"].as_array().unwrap().len(), 2);
    let issued = w.act("invoices.issue", json!({ "invoice": begun["id"] }));
    assert_eq!(issued["open"], "172.55");
    balanced(&mut w);
    let year = w.act("accounts.year", json!({ "year": 2026 }));
    assert_eq!(year["stands"][0]["earned"], "145.00");
    let other: Vec<&Value> =
        year["rows"].as_array().unwrap().iter().filter(|r| r["what"] == "other").collect();
    // −10.00 and +5.00 without tax, on the same row.
    assert_eq!(other[0]["amount"], "-5.00");

    // A part that is more than is left with what was taken off is refused, all that is left is not.
    let line = |n: usize, amount: &str| {
        json!({ "invoice": begun["id"], "reason": "Rain",
                "lines": [{ "line": issued["lines"][n]["id"], "amount": amount }] })
    };
    w.act("invoices.credit", line(0, "118"));
    let refused = w.refused("invoices.credit", line(1, "59.50"));
    assert_eq!(codes(&refused), [("lines".into(), "too_much".into())]);
    let rest = w.act("invoices.credit", json!({ "invoice": begun["id"], "reason": "Rain" }));
    assert_eq!(rest["sums"]["gross"], "54.55", "1.00 + 59.50 − 11.90 + 5.95");
    assert_eq!(w.act("invoices.show", json!({ "invoice": begun["id"] }))["open"], "0.00");
    balanced(&mut w);
    let db = Connection::open(w.file.path()).unwrap();
    for sql in [
        "UPDATE invoice_extra SET amount = 1",
        "DELETE FROM invoice_extra",
        "UPDATE invoice_file SET ubl = ''",
        "DELETE FROM invoice_file",
    ] {
        let said = db.execute_batch(sql).unwrap_err().to_string();
        assert!(said.contains("an issued invoice does not"), "{sql}: {said}");
    }
}

#[test]
fn what_cannot_stand_under_the_lines_is_said() {
    let (mut w, payer) = business();
    let lines = json!([
        { "what": "lesson", "words": "Lesson", "price": "40" },
        { "what": "court", "words": "Court", "price": "10", "tax": { "category": "S", "rate": "7" } },
    ]);
    let begun = draft(&mut w, &payer, lines);
    let off = |amount: &str, words: &str| json!([{ "takes_off": true, "words": words, "amount": amount }]);
    let wrong = w.refused("invoices.change", with(&begun, off("-3", "")));
    let at: Vec<String> = codes(&wrong).into_iter().map(|(field, _)| field).collect();
    assert_eq!(at, ["extras[0].words", "extras[0].amount"]);
    let lacks = |w: &mut World, extras: Value| -> Vec<String> {
        // The court's own tax is kept by sending it again.
        let mut given = with(&begun, extras);
        given["lines"][1]["tax"] = json!({ "category": "S", "rate": "7" });
        let changed = w.act("invoices.change", given);
        changed["missing"].as_array().unwrap().iter().map(|lack| text(&lack["words"])).collect()
    };
    assert!(lacks(&mut w, off("5", "Rain"))[0].contains("the lines differ"));
    let taxed = json!([{ "takes_off": true, "words": "Rain", "amount": "5", "tax": { "category": "S", "rate": "7" } }]);
    assert_eq!(lacks(&mut w, taxed), Vec::<String>::new());
    let more = json!([{ "takes_off": true, "words": "Rain", "amount": "10.01", "tax": { "category": "S", "rate": "7" } }]);
    assert!(lacks(&mut w, more)[0].contains("More would be taken off"));
    let refused = w.refused("invoices.issue", json!({ "invoice": begun["id"] }));
    assert_eq!(codes(&refused), [(String::new(), "missing".into())]);
}

#[test]
fn a_structured_file_says_why_there_is_none() {
    let (mut w, payer) = business();
    w.act(
        "payers.change",
        json!({ "id": payer, "payer": { "name": "Ana Silva", "address": "2 Mole Road" } }),
    );
    let begun =
        draft(&mut w, &payer, json!([{ "what": "lesson", "words": "Lesson", "price": "40" }]));
    assert_eq!(begun["file_lacks"], json!(["The country of who pays is not set (BT-55)."]));
    let issued = w.act("invoices.issue", json!({ "invoice": begun["id"] }));
    assert_eq!(issued["file_lacks"], begun["file_lacks"]);
    let which = |kind: Value| serde_json::from_value::<MoneyPaper>(kind).unwrap();
    let ubl = json!({ "kind": "invoice_file", "invoice": begun["id"], "syntax": "ubl" });
    let refused = w.file.read(|db| paper(db, which(ubl.clone()))).unwrap_err();
    assert!(matches!(refused, Error::NotPossible { code: "no_file", .. }));
    // With the country there is one, and both say the same number.
    w.act(
        "payers.change",
        json!({ "id": payer, "payer": { "name": "Ana Silva", "address": "2 Mole Road", "country": "ie" } }),
    );
    let begun =
        draft(&mut w, &payer, json!([{ "what": "lesson", "words": "<Lesson>", "price": "40" }]));
    let issued = w.act("invoices.issue", json!({ "invoice": begun["id"] }));
    assert_eq!(issued["file_lacks"], json!([]));
    for syntax in ["ubl", "cii"] {
        let ask = json!({ "kind": "invoice_file", "invoice": begun["id"], "syntax": syntax });
        let (name, xml) = w.file.read(|db| paper(db, which(ask))).unwrap();
        let xml = String::from_utf8(xml).unwrap();
        assert_eq!(name, format!("2026-0002 {}.xml", syntax.to_uppercase()));
        assert!(xml.contains("2026-0002") && xml.contains("&lt;Lesson&gt;"), "{xml}");
    }
}

#[test]
fn a_reminder_is_kept_as_it_was_written() {
    let (mut w, payer) = business();
    let begun =
        draft(&mut w, &payer, json!([{ "what": "lesson", "words": "Lesson", "price": "365" }]));
    let which = json!({ "invoice": begun["id"] });
    assert!(matches!(
        w.refused("invoices.remind", which.clone()),
        Error::NotPossible { code: "not_overdue", .. }
    ));
    w.act(
        "invoices.issue",
        json!({ "invoice": begun["id"], "day": "2026-03-01", "due": "2026-03-10" }),
    );
    w.on("2026-03-10");
    assert!(matches!(
        w.refused("invoices.remind", which.clone()),
        Error::NotPossible { code: "not_overdue", .. }
    ));
    w.on("2026-03-30");
    let would = w.act("invoices.would_remind", which.clone());
    assert_eq!(
        [&would["late"], &would["interest"], &would["due"]],
        [&json!(20), &json!(""), &json!("2026-04-13")]
    );
    let asked = json!({ "invoice": begun["id"], "with_interest": true, "due": "2026-03-29" });
    let at = codes(&w.refused("invoices.remind", asked));
    assert_eq!(at, [("due".into(), "before".into()), ("with_interest".into(), "not_set".into())]);
    assert_eq!(codes(&w.refused("terms.set", json!({ "interest": "101" })))[0].0, "interest");
    w.act("terms.set", json!({ "interest": "5,0" }));
    // 365.00 at 5 percent is 0.05 a day.
    assert_eq!(w.act("invoices.would_remind", which.clone())["interest"], "1.00");
    let first = w.act("invoices.remind", which.clone());
    assert_eq!(first["reminders"][0]["interest"], "0.00");
    let second =
        json!({ "invoice": begun["id"], "with_interest": true, "words": "See you <soon>." });
    let second = w.act("invoices.remind", second);
    let kept = &second["reminders"][1];
    assert_eq!(
        [&kept["place"], &kept["open"], &kept["interest"]],
        [&json!(2), &json!("365.00"), &json!("1.00")]
    );
    assert_eq!(second["open"], "365.00", "a reminder charges nothing");
    let ask = json!({ "kind": "reminder", "reminder": kept["id"] });
    let (name, pdf) = w.file.read(|db| paper(db, serde_json::from_value(ask).unwrap())).unwrap();
    assert_eq!(name, "2026-0001 reminder 2.pdf");
    assert!(pdf.starts_with(b"%PDF-1.7"));
    let db = Connection::open(w.file.path()).unwrap();
    assert!(
        db.execute_batch("UPDATE reminder SET open = 1")
            .unwrap_err()
            .to_string()
            .contains("does not change")
    );
}

#[test]
fn receipts_and_statements_are_drawn_from_the_ledger() {
    let (mut w, payer) = business();
    let begun =
        draft(&mut w, &payer, json!([{ "what": "lesson", "words": "Lesson", "price": "40" }]));
    w.act("invoices.issue", json!({ "invoice": begun["id"] }));
    let paid = json!({ "payer": payer, "method": "cash", "currency": "EUR", "amount": "50" });
    let entry = w.act("payments.receive", paid)["entry"].clone();
    let receipt = json!({ "kind": "receipt", "entry": entry });
    let drawn = |w: &World, which: Value| {
        w.file.read(|db| paper(db, serde_json::from_value(which).unwrap()))
    };
    let (name, pdf) = drawn(&w, receipt.clone()).unwrap();
    assert_eq!(name, "Receipt 2026-03-01 Ana Silva.pdf");
    assert!(pdf.starts_with(b"%PDF-1.7"));
    let statement = json!({ "kind": "statement", "payer": payer, "since": "" });
    assert_eq!(drawn(&w, statement).unwrap().0, "Statement of account 2026-03-01 Ana Silva.pdf");
    let wrong = json!({ "kind": "statement", "payer": payer, "since": "in spring" });
    assert_eq!(codes(&drawn(&w, wrong).unwrap_err())[0].0, "since");
    assert_eq!(drawn(&w, json!({ "kind": "year", "year": 2026 })).unwrap().0, "Year 2026.pdf");
    let account = w.act("payments.account", json!({ "payer": payer }));
    let invoice = json!({ "kind": "receipt", "entry": account["lines"][0]["entry"] });
    assert!(matches!(
        drawn(&w, invoice).unwrap_err(),
        Error::NotPossible { code: "no_payment", .. }
    ));
    w.act("payments.take_back", json!({ "entry": entry, "reason": "Counted twice" }));
    assert!(matches!(
        drawn(&w, receipt).unwrap_err(),
        Error::NotPossible { code: "no_payment", .. }
    ));
}

#[test]
fn a_lesson_that_changes_after_it_was_settled_is_shown() {
    let (mut w, _) = business();
    let price = json!({ "what": "lesson", "minutes": 60, "currency": "EUR", "amount": "45" });
    w.act("prices.add", json!({ "price": price }));
    w.act("terms.set", json!({ "pass_courts": false }));
    let student = w.student("Ben Costa");
    let visit = w.visit(&student, "2026-03-01", "2026-03-03");
    let plan = json!({ "visits": [visit], "facility": w.hall, "day": "2026-03-01", "starts": "09:00", "minutes": 60 });
    let lesson = id(&w.act("lessons.plan", plan), "/id");
    w.act("lessons.give", json!({ "lesson": lesson }));
    let settle = json!({ "lessons": [{ "lesson": lesson, "student": student, "how": "invoice" }] });
    w.act("accounts.settle", settle);
    assert_eq!(w.act("accounts.changed", json!({})), json!([]));
    w.act("lessons.miss", json!({ "lesson": lesson, "reason": "Did not come after all" }));
    let changed = w.act("accounts.changed", json!({}));
    assert!(text(&changed[0]["words"]).contains("settled as given, now missed"), "{changed}");
    assert_eq!(w.act("accounts.overview", json!({}))["changed"], 1);
    let back = json!({ "lesson": lesson, "student": student, "reason": "They did not come" });
    w.act("accounts.unsettle", back);
    assert_eq!(w.act("accounts.changed", json!({})), json!([]));
}

#[test]
fn what_is_owed_in_lessons_has_two_views() {
    let (mut w, _) = business();
    let student = w.student("Ben Costa");
    let payer = w.act("payers.choose", json!({ "student": student }));
    w.act(
        "payers.change",
        json!({ "id": payer["id"], "payer": { "name": "Ben Costa", "address": "3 Pier", "country": "IE" } }),
    );
    let sell = json!({ "student": student, "lessons": 10, "minutes": 60, "currency": "EUR", "price": "856.80", "issue": true });
    w.act("packages.sell", sell);
    // 856.80 with 19 percent is 720.00.
    let owed = w.act("accounts.owed_in_lessons", json!({}));
    assert_eq!(
        [&owed["sums"][0]["owed"], &owed["sums"][0]["expected"], &owed["taken"]],
        [&json!("720.00"), &json!(""), &Value::Null]
    );
    w.act("terms.set", json!({ "taken": 90 }));
    let owed = w.act("accounts.owed_in_lessons", json!({}));
    assert_eq!([&owed["sums"][0]["owed"], &owed["sums"][0]["expected"]], ["720.00", "720.00"]);
    assert_eq!(codes(&w.refused("terms.set", json!({ "taken": 0 })))[0].0, "taken");
}

#[test]
fn an_invoice_is_paid_in_parts_and_only_what_is_due_is_overdue() {
    let (mut w, payer) = business();
    let begun =
        draft(&mut w, &payer, json!([{ "what": "lesson", "words": "Week", "price": "1000" }]));
    let issue = |due: &str| json!({ "invoice": begun["id"], "due": due, "in_parts": true });
    assert_eq!(codes(&w.refused("invoices.issue", issue("")))[0].0, "in_parts");
    let wrong = json!({ "parts": [{ "percent": 60, "days": 5 }, { "percent": 50, "days": 5 }] });
    let at: Vec<String> =
        codes(&w.refused("terms.set", wrong)).into_iter().map(|(field, _)| field).collect();
    assert_eq!(at, ["parts[1].days", "parts"]);
    w.act(
        "terms.set",
        json!({ "due_days": 30, "parts": [{ "percent": 30, "days": 10 }, { "percent": 20, "days": 0 }] }),
    );
    let would = w.act("invoices.in_parts", json!({ "invoice": begun["id"] }));
    let parts = json!([
        { "day": "2026-03-01", "amount": "200.00" }, { "day": "2026-03-11", "amount": "300.00" },
        { "day": "2026-03-31", "amount": "500.00" },
    ]);
    assert_eq!(would, parts);
    assert_eq!(codes(&w.refused("invoices.issue", issue("2026-03-11")))[0].0, "due");
    let issued = w.act("invoices.issue", issue(""));
    assert_eq!([&issued["parts"], &issued["state"]], [&parts, &json!("open")]);
    assert_eq!(issued["file_lacks"], json!([]));
    let which = json!({ "invoice": begun["id"] });
    let stands = |w: &mut World, day: &str| {
        w.on(day);
        let shown = w.act("invoices.show", which.clone());
        (text(&shown["state"]), text(&shown["stands"]))
    };
    assert_eq!(
        stands(&mut w, "2026-03-02"),
        ("overdue".into(), "200.00 EUR of 1000.00 EUR open is 1 day late.".into())
    );
    let pay = |amount: &str| json!({ "payer": payer, "method": "transfer", "currency": "EUR", "amount": amount });
    w.act("payments.receive", pay("250"));
    assert_eq!(stands(&mut w, "2026-03-11").0, "part_paid", "more than the first part is paid");
    assert!(matches!(
        w.refused("invoices.remind", which.clone()),
        Error::NotPossible { code: "not_overdue", .. }
    ));
    assert_eq!(stands(&mut w, "2026-03-12").1, "250.00 EUR of 750.00 EUR open is 1 day late.");
    assert_eq!(w.act("invoices.remind", which.clone())["reminders"][0]["open"], "250.00");
    let open = w.act("invoices.list", json!({ "open": true }));
    assert_eq!(open["invoices"][0]["due"], "2026-03-11");
    w.act("payments.receive", pay("750"));
    assert_eq!(stands(&mut w, "2026-04-20").0, "settled");
    balanced(&mut w);
    let db = Connection::open(w.file.path()).unwrap();
    let said = db.execute_batch("UPDATE invoice_part SET amount = 1").unwrap_err().to_string();
    assert!(said.contains("does not change"), "{said}");
}

#[test]
fn what_stands_in_several_currencies_is_never_mixed() {
    let (mut w, payer) = business();
    let mut issue = |currency: &str, price: &str, day: &str| {
        w.on(day);
        let line = json!({ "what": "lesson", "words": "Lesson", "price": price });
        let begun = w.act(
            "invoices.draft",
            json!({ "payer": payer, "currency": currency, "lines": [line] }),
        );
        w.act("invoices.issue", json!({ "invoice": begun["id"] }));
    };
    issue("EUR", "40", "2026-03-01");
    issue("USD", "55", "2026-03-02");
    issue("EUR", "1", "2026-03-03");
    issue("JPY", "7000", "2027-03-03");
    let paid = json!({ "payer": payer, "method": "cash", "currency": "USD", "amount": "60", "day": "2026-03-04" });
    w.act("payments.receive", paid);
    let stands = |of: &Value, year: bool| -> Vec<String> {
        let list = if year { &of["stands"] } else { of };
        let said = |s: &Value| {
            format!("{} {} {}", text(&s["currency"]), text(&s["open"]), text(&s["kept"]))
        };
        list.as_array().unwrap().iter().map(said).collect()
    };
    let now = w.act("accounts.overview", json!({}))["stands"].clone();
    assert_eq!(stands(&now, false), ["EUR 41.00 0.00", "JPY 7000 0", "USD 0.00 5.00"]);
    let before = w.act("accounts.year", json!({ "year": 2026 }));
    assert_eq!(stands(&before, true), ["EUR 41.00 0.00", "USD 0.00 5.00"]);
}
