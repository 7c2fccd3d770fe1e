//! Money: packages, lessons settled, invoices, payments, credit notes, and the year; what the coach
//! file itself refuses.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::accounts::{YearAsked, document};
use carryover_core::commands::{call, check};
use carryover_core::error::Error;
use carryover_core::invoices::{self, WhichInvoice};
use carryover_core::kinds::ids::InvoiceId;
use rusqlite::Connection;
use rust_decimal::Decimal;
use serde_json::{Value, json};
use world::{World, codes, id, text};

/// A coach in business: who issues, what tax counts, prices, terms.
fn business() -> World {
    let mut w = World::new();
    w.on("2026-03-01");
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "tax_id": "IE 77/123",
                "account": "DE33100205000001194700", "prices": "gross" }),
    );
    w.act("prices.set_tax", json!({ "category": "S", "rate": "19" }));
    for (minutes, amount) in [(60, "47.60"), (90, "70.00")] {
        let price =
            json!({ "what": "lesson", "minutes": minutes, "currency": "EUR", "amount": amount });
        w.act("prices.add", json!({ "price": price }));
    }
    let terms = json!({
        "called_off": [{ "at": 24, "within": true, "percent": 0 }], "later": 100, "missed": 100,
        "pass_courts": false, "due_days": 14,
    });
    w.act("terms.set", terms);
    w
}

/// A student with an address, who pays.
fn payer(w: &mut World, name: &str) -> (String, String) {
    let student = w.student(name);
    let payer = w.act("payers.choose", json!({ "student": student }));
    let changed = json!({ "id": payer["id"], "payer": { "name": name, "address": "2 Mole Road\nSaltmere", "country": "IE" } });
    w.act("payers.change", changed);
    (student, id(&payer, "/id"))
}

/// A lesson of some students of an hour, given.
fn lesson(w: &mut World, visits: &[String], day: &str, starts: &str) -> String {
    let plan = json!({ "visits": visits, "facility": w.hall, "day": day, "starts": starts, "minutes": 60 });
    id(&w.act("lessons.plan", plan), "/id")
}

fn settle(w: &mut World, lesson: &str, student: &str, how: &str) -> Value {
    w.act(
        "accounts.settle",
        json!({ "lessons": [{ "lesson": lesson, "student": student, "how": how }] }),
    )
}

fn balanced(w: &mut World) {
    let found = w.act("accounts.balanced", json!({}));
    assert_eq!(found["wrong"], json!([]), "the ledger balances after everything");
    assert!(check(&w.file).unwrap().sound);
}

/// A package of ten at 47.60 with 19 percent of tax in it: 476.00 = 400.00 + 76.00. The entries of this
/// package are worked out by hand after IFRS 15 B44 to B47.
fn package(w: &mut World, student: &str) -> (String, Value) {
    let sell = json!({ "student": student, "lessons": 10, "minutes": 60, "currency": "EUR", "price": "476.00",
                       "single": "55.00", "issue": true });
    let invoice = w.act("packages.sell", sell);
    let package = text(&invoice["lines"][0]["package"]);
    (package, invoice)
}

fn deferred(w: &mut World, package: &str) -> (i64, String) {
    let shown = w.act("packages.show", json!({ "package": package }));
    (shown["package"]["left"].as_i64().unwrap(), text(&shown["package"]["deferred"]))
}

#[test]
fn a_package_owes_less_with_each_lesson_and_nothing_after_the_last() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    let visit = w.visit(&student, "2026-03-10", "2026-03-22");
    let (package, invoice) = package(&mut w, &student);
    assert_eq!(invoice["number"], "2026-0001");
    assert_eq!(
        [&invoice["sums"]["net"], &invoice["sums"]["tax"], &invoice["sums"]["gross"]],
        ["400.00", "76.00", "476.00"]
    );
    assert_eq!(deferred(&mut w, &package), (10, "400.00".into()));
    w.on("2026-03-22");
    for n in 0..10 {
        let day = format!("2026-03-{}", 10 + n);
        let lesson = lesson(&mut w, std::slice::from_ref(&visit), &day, "09:00");
        w.act("lessons.give", json!({ "lesson": lesson }));
        let waiting = w.act("accounts.to_settle", json!({}));
        assert_eq!(waiting[0]["proposal"]["how"], "package", "{waiting}");
        settle(&mut w, &lesson, &student, "package");
        let left = 9 - n;
        assert_eq!(deferred(&mut w, &package), (left, format!("{}.00", 40 * left)));
        balanced(&mut w);
    }
    let none = lesson(&mut w, &[visit], "2026-03-21", "09:00");
    w.act("lessons.give", json!({ "lesson": none }));
    let waiting = w.act("accounts.to_settle", json!({}));
    assert_eq!(waiting[0]["proposal"]["how"], "invoice", "the eleventh costs");
    let refused = w.refused(
        "accounts.settle",
        json!({ "lessons": [{ "lesson": none, "student": student, "how": "package", "package": package, "reason": "x" }] }),
    );
    assert!(matches!(refused, Error::NotPossible { code: "nothing_left", .. }), "{refused}");
    let account = w.act("payments.account", json!({ "payer": payer }));
    assert_eq!(account["standing"][0]["open"], "476.00");
}

#[test]
fn a_lesson_called_off_late_is_lost_and_one_in_time_is_not() {
    let mut w = business();
    let (student, _) = payer(&mut w, "Ana Silva");
    let visit = w.visit(&student, "2026-03-10", "2026-03-14");
    let (package, _) = package(&mut w, &student);
    let (a, b) = (
        lesson(&mut w, std::slice::from_ref(&visit), "2026-03-11", "09:00"),
        lesson(&mut w, &[visit], "2026-03-12", "09:00"),
    );
    w.on("2026-03-13");
    for one in [&a, &b] {
        w.act("lessons.call_off", json!({ "lesson": one, "reason": "Ill" }));
    }
    let ask = |lesson: &str, told: &str| json!({ "lesson": lesson, "student": student, "because": "student", "told": told });
    // Nothing is proposed while it is not known who called it off, and when.
    let waiting = w.act("accounts.to_settle", json!({}));
    assert_eq!(waiting[0]["proposal"]["how"], Value::Null);
    assert_eq!(waiting[0]["proposal"]["asks"], json!(["Who called it off?"]));
    // Exactly 24 hours before is in time; a minute later is not.
    let exact = w.act("accounts.propose", ask(&a, "2026-03-10T09:00"))["proposal"].clone();
    assert_eq!(exact["how"], "free");
    assert!(text(&exact["rule"]).contains("24 hours or more"), "{exact}");
    let late = w.act("accounts.propose", ask(&b, "2026-03-11T09:01"))["proposal"].clone();
    assert_eq!(
        [&late["how"], &late["next"]],
        ["package", "24 hours before it would have cost 0 %."]
    );
    let mut first = ask(&a, "2026-03-10T09:00");
    first["how"] = json!("free");
    let mut second = ask(&b, "2026-03-11T09:01");
    second["how"] = json!("package");
    w.act("accounts.settle", json!({ "lessons": [first, second] }));
    let shown = w.act("packages.show", json!({ "package": package }))["package"].clone();
    assert_eq!([&shown["left"], &shown["used"], &shown["lost"]], [9, 0, 1]);
    let steps = w.act("packages.show", json!({ "package": package }))["steps"].clone();
    assert_eq!([&steps[1]["kind"], &steps[1]["lesson"]], [&json!("late"), &json!(b)]);
    // Where the terms say that none is lost, it is charged.
    let mut kind = w.act("terms.show", json!({}));
    kind["lesson_lost"] = json!(false);
    w.act("terms.set", kind.clone());
    let charged = w.act("accounts.propose", ask(&b, "2026-03-11T09:01"))["proposal"].clone();
    assert_eq!([&charged["how"], &charged["amount"]], ["invoice", "47.60"]);
    kind["lesson_lost"] = json!(true);
    w.act("terms.set", kind);
    // The coach can waive it, with a reason.
    let back = json!({ "lesson": b, "student": student, "reason": "She was in hospital" });
    w.act("accounts.unsettle", back);
    assert_eq!(
        deferred(&mut w, &package),
        (10, "400.00".into()),
        "a reversal restores every balance"
    );
    let mut waived = ask(&b, "2026-03-11T09:01");
    waived["how"] = json!("free");
    let refused = w.refused("accounts.settle", json!({ "lessons": [waived.clone()] }));
    assert_eq!(codes(&refused)[0].0, "lessons[0].reason");
    waived["reason"] = json!("She was in hospital");
    w.act("accounts.settle", json!({ "lessons": [waived] }));
    balanced(&mut w);
}

/// The terms of a clinic of 1200.00: more than four weeks before 10 percent are charged, from four weeks
/// to seven days 20, later all; exactly 28 days has to be said (a public academy's terms leave it open).
#[test]
fn terms_say_which_side_of_a_boundary_counts() {
    use carryover_core::terms::{EndedBy, MoneyTerms, TermsRow, untaught};
    let terms = |within: bool| MoneyTerms {
        called_off: vec![
            TermsRow { at: 28 * 24, within, percent: 10 },
            TermsRow { at: 7 * 24, within: true, percent: 20 },
        ],
        later: Some(100),
        ..MoneyTerms::default()
    };
    for (days, within, percent) in [
        (35, true, 10),
        (28, true, 10),
        (28, false, 20),
        (20, true, 20),
        (7, true, 20),
        (6, true, 100),
    ] {
        let applied =
            untaught(&terms(within), EndedBy::Student, Some(chrono::TimeDelta::days(days)));
        assert_eq!(applied.percent, Some(percent), "{days} days before");
    }
    for because in [EndedBy::Coach, EndedBy::Place] {
        assert_eq!(untaught(&terms(true), because, None).percent, Some(0), "never charged");
    }
}

#[test]
fn deposits_part_payments_and_what_is_over() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    let pay = |amount: &str| json!({ "payer": payer, "method": "transfer", "currency": "EUR", "amount": amount });
    let mut deposit = pay("50");
    deposit["deposit"] = json!(true);
    w.act("payments.receive", deposit);
    let (_, invoice) = package(&mut w, &student);
    assert_eq!(
        [&invoice["open"], &invoice["state"]],
        ["426.00", "part_paid"],
        "the deposit is used"
    );
    let said = w.act("payments.receive", pay("300.00"));
    assert_eq!(said["words"], "300.00 EUR was used for invoices.");
    let said = w.act("payments.receive", pay("126.50"));
    assert_eq!([&said["used"], &said["kept"]], ["126.00", "0.50"], "what is over is kept");
    let shown = w.act("invoices.show", json!({ "invoice": invoice["id"] }));
    assert_eq!(shown["state"], "settled");
    let mut back = pay("0.51");
    assert_eq!(
        codes(&w.refused("payments.pay_back", back.clone())),
        [("amount".into(), "too_much".into())]
    );
    back["amount"] = json!("0.50");
    let account = w.act("payments.pay_back", back);
    assert_eq!(
        account["standing"],
        json!([{ "currency": "EUR", "open": "0.00", "kept": "0.00", "to_pay_back": "0.00" }])
    );
    // The same bank line is never counted twice.
    let mut once = pay("10");
    once["reference"] = json!("statement 7, line 3");
    w.act("payments.receive", once.clone());
    assert!(matches!(
        w.refused("payments.receive", once),
        Error::NotPossible { code: "entered", .. }
    ));
    let lines = w.act("payments.account", json!({ "payer": payer }))["lines"].clone();
    let slip = lines.as_array().unwrap().last().unwrap()["entry"].clone();
    let back = json!({ "entry": slip, "reason": "Another payer" });
    w.act("payments.take_back", back.clone());
    assert!(matches!(
        w.refused("payments.take_back", back),
        Error::NotPossible { code: "taken_back", .. }
    ));
    balanced(&mut w);
}

#[test]
fn what_is_wrong_with_a_payment_is_said_at_its_field() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    let (_, invoice) = package(&mut w, &student);
    let pay = |given: Value| {
        let mut base =
            json!({ "payer": payer, "method": "cash", "currency": "EUR", "amount": "10" });
        for (key, value) in given.as_object().unwrap() {
            base[key] = value.clone();
        }
        base
    };
    for (given, field, code) in [
        (json!({ "amount": "-5" }), "amount", "negative"),
        (json!({ "amount": "0" }), "amount", "nothing"),
        (json!({ "amount": "1.234,50" }), "amount", "no_amount"),
        (json!({ "currency": "EURO" }), "currency", "no_such_currency"),
        (json!({ "day": "2026-04-01" }), "day", "in_future"),
        (
            json!({ "currency": "USD", "invoices": [{ "invoice": invoice["id"], "amount": "1" }] }),
            "invoices[0].invoice",
            "other_currency",
        ),
        (
            json!({ "amount": "500", "invoices": [{ "invoice": invoice["id"], "amount": "476.01" }] }),
            "invoices[0].amount",
            "too_much",
        ),
        (
            json!({ "amount": "5", "invoices": [{ "invoice": invoice["id"], "amount": "6" }] }),
            "amount",
            "too_little",
        ),
    ] {
        let refused = codes(&w.refused("payments.receive", pay(given.clone())));
        assert_eq!(refused[0], (field.into(), code.into()), "{given}");
    }
    for (given, field) in [
        (json!({ "category": "S", "rate": "190" }), "rate"),
        (json!({ "category": "S", "rate": "0" }), "rate"),
        (json!({ "category": "E" }), "why"),
    ] {
        assert_eq!(codes(&w.refused("prices.set_tax", given))[0].0, field);
    }
    let sell = json!({ "student": student, "lessons": 5, "currency": "EUR", "price": "100", "expires": "2026-02-28" });
    assert_eq!(codes(&w.refused("packages.sell", sell)), [("expires".into(), "before".into())]);
    balanced(&mut w);
}

/// Paid back of a package: in part of its price, or with the lessons given at the price of a single
/// one; never below 0. Three of ten used: 333.20, or 476.00 less 165.00.
#[test]
fn a_package_is_given_back_by_the_terms_it_was_sold_with() {
    for (policy, amount) in [("in_part", "333.20"), ("at_single", "311.00")] {
        let mut w = business();
        let mut terms = w.act("terms.show", json!({}));
        terms["paid_back"] = json!(policy);
        w.act("terms.set", terms);
        let (student, payer) = payer(&mut w, "Ana Silva");
        let visit = w.visit(&student, "2026-03-10", "2026-03-14");
        let (package, invoice) = package(&mut w, &student);
        let pay = json!({ "payer": payer, "method": "card", "currency": "EUR", "amount": "476" });
        w.act("payments.receive", pay);
        w.on("2026-03-14");
        for day in ["2026-03-10", "2026-03-11", "2026-03-12"] {
            let lesson = lesson(&mut w, std::slice::from_ref(&visit), day, "10:00");
            w.act("lessons.give", json!({ "lesson": lesson }));
            settle(&mut w, &lesson, &student, "package");
        }
        let would = w.act("packages.would_give_back", json!({ "package": package }));
        assert_eq!(would, format!("{amount} EUR"));
        let note =
            w.act("packages.give_back", json!({ "package": package, "reason": "She moves away" }));
        assert_eq!(
            [&note["sums"]["gross"], &note["corrects_number"]],
            [&json!(amount), &invoice["number"]]
        );
        assert_eq!(deferred(&mut w, &package), (0, "0.00".into()));
        let account = w.act("payments.account", json!({ "payer": payer }));
        assert_eq!(account["standing"][0]["to_pay_back"], amount);
        let back =
            json!({ "payer": payer, "method": "transfer", "currency": "EUR", "amount": amount });
        w.act("payments.pay_back", back);
        let year = w.act("accounts.year", json!({ "year": 2026 }))["stands"][0].clone();
        let exact = |key: &str| text(&year[key]).parse::<Decimal>().unwrap();
        let rest = exact("earned") + exact("tax");
        assert_eq!(exact("received"), rest, "cash kept is revenue and tax: {year}");
        let again =
            w.refused("packages.give_back", json!({ "package": package, "reason": "Again" }));
        assert!(matches!(again, Error::NotPossible { code: "nothing_left", .. }));
        balanced(&mut w);
    }
}

#[test]
fn a_draft_says_what_it_lacks_and_an_issued_invoice_never_changes() {
    let mut w = World::new();
    w.on("2026-03-01");
    let student = w.student("Ben Costa");
    let payer = id(&w.act("payers.choose", json!({ "student": student })), "/id");
    let line = json!({ "what": "analysis", "words": "Game of 1 March", "price": "30" });
    let draft =
        w.act("invoices.draft", json!({ "payer": payer, "currency": "EUR", "lines": [line] }));
    assert_eq!(
        draft["missing"].as_array().unwrap().len(),
        3,
        "issuer, address, tax: {}",
        draft["missing"]
    );
    let issue = json!({ "invoice": draft["id"] });
    assert_eq!(codes(&w.refused("invoices.issue", issue.clone())).len(), 3);
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street", "country": "IE", "series": "R" }),
    );
    w.act(
        "payers.change",
        json!({ "id": payer, "payer": { "name": "Ben Costa", "address": "3 Pier" } }),
    );
    w.act("prices.set_tax", json!({ "category": "O", "why": "Not subject to tax" }));
    let shown = w.act("invoices.show", json!({ "invoice": draft["id"] }));
    assert_eq!(shown["missing"], json!([]), "a tax that was set since counts for the draft");
    let mut kept = draft["lines"][0].clone();
    let lines = json!([{ "id": kept["id"].take(), "what": "analysis", "words": "Game of 1 March", "price": "30",
                         "quantity": "2", "allowance": "5", "reason": "Second game at half" }]);
    let changed = w.act("invoices.change", json!({ "invoice": draft["id"], "lines": lines }));
    assert_eq!([&changed["sums"]["gross"], &changed["missing"]], [&json!("55.00"), &json!([])]);
    let issued = w.act("invoices.issue", issue.clone());
    assert_eq!(issued["number"], "R-2026-0001");
    assert!(matches!(
        w.refused("invoices.issue", issue),
        Error::NotPossible { code: "issued", .. }
    ));
    let change = json!({ "invoice": draft["id"], "lines": [] });
    assert!(matches!(
        w.refused("invoices.change", change),
        Error::NotPossible { code: "issued", .. }
    ));
    let which = WhichInvoice { invoice: InvoiceId(text(&draft["id"]).parse().unwrap()) };
    let (name, pdf) = w.file.read(|db| invoices::file(db, which)).unwrap();
    assert_eq!(name, "R-2026-0001 Ben Costa.pdf");
    assert!(pdf.starts_with(b"%PDF-"));
}

#[test]
fn the_coach_file_itself_refuses_what_must_not_be() {
    let mut w = business();
    let (student, _) = payer(&mut w, "Ana Silva");
    package(&mut w, &student);
    let db: &Connection = &Connection::open(w.file.path()).unwrap();
    db.pragma_update(None, "foreign_keys", true).unwrap();
    for (sql, says) in [
        ("UPDATE invoice SET gross = 1", "an issued invoice does not change"),
        ("DELETE FROM invoice", "an issued invoice does not go"),
        ("UPDATE invoice_line SET price = '1'", "an issued invoice does not change"),
        ("DELETE FROM invoice_line", "an issued invoice does not change"),
        ("UPDATE invoice_document SET pdf = x'00'", "an issued invoice does not change"),
        ("UPDATE entry SET day = '2026-01-01'", "an entry does not change"),
        ("UPDATE posting SET amount = 1", "an entry does not change"),
        ("DELETE FROM posting", "an entry does not go"),
        ("DELETE FROM unit_move", "an entry does not go"),
        ("INSERT INTO posting (id, entry, account, amount, day) SELECT 'x', id, 'bank', 5, day FROM entry", "the entry is closed"),
        ("INSERT INTO unit_move (id, entry, package, lessons) SELECT 'x', 'new', id, -11 FROM package", "no lessons left"),
        ("INSERT INTO entry (id, ref, day, kind, currency) VALUES ('x', 'x', '2026-01-01', 'payment', 'EUR')", "the entry is empty"),
        ("INSERT INTO invoice (id, kind, payer, currency, prices, series, place, number, day, due, issued, paper, net, tax, gross, rounding)
          SELECT 'x', 'invoice', payer, 'EUR', 'net', 's', 1, 'n', day, day, issued, paper, 1, 1, 2, 0 FROM invoice", "begins as a draft"),
    ] {
        let said = db.execute_batch(sql).unwrap_err().to_string();
        assert!(said.contains(says), "{sql}: {said}");
    }
    // A half entry is refused as a whole.
    let half = "BEGIN;
        INSERT INTO posting (id, entry, account, amount, day) VALUES ('p', 'e', 'bank', 5, '2026-01-01');
        INSERT INTO entry (id, ref, day, kind, currency) VALUES ('e', 'e', '2026-01-01', 'payment', 'EUR');
        COMMIT;";
    let said = db.execute_batch(half).unwrap_err().to_string();
    assert!(said.contains("does not balance"), "{said}");
    db.execute_batch("ROLLBACK").unwrap();
    let alone = "BEGIN; INSERT INTO posting (id, entry, account, amount, day) VALUES ('p', 'e', 'bank', 5, '2026-01-01'); COMMIT;";
    assert!(db.execute_batch(alone).unwrap_err().to_string().contains("FOREIGN KEY"));
}

#[test]
fn numbers_have_no_gap_and_follow_the_days() {
    let mut w = business();
    let (_, payer) = payer(&mut w, "Ana Silva");
    let draft = |w: &mut World| {
        let line = json!({ "what": "analysis", "words": "A game", "price": "30" });
        w.act("invoices.draft", json!({ "payer": payer, "currency": "EUR", "lines": [line] }))["id"]
            .clone()
    };
    let mut numbers = Vec::new();
    for day in ["2026-03-01", "2026-03-01", "2026-03-05", "2027-01-02"] {
        w.on(day);
        let (gone, kept) = (draft(&mut w), draft(&mut w));
        w.act("invoices.discard", json!({ "invoice": gone }));
        numbers.push(text(&w.act("invoices.issue", json!({ "invoice": kept }))["number"]));
    }
    assert_eq!(numbers, ["2026-0001", "2026-0002", "2026-0003", "2027-0001"]);
    let late = draft(&mut w);
    let refused = w.refused("invoices.issue", json!({ "invoice": late, "day": "2027-01-01" }));
    assert_eq!(codes(&refused), [("day".into(), "out_of_order".into())]);
    w.act("invoices.issue", json!({ "invoice": late }));
}

#[test]
fn credit_notes_take_back_what_was_charged_and_no_more() {
    let mut w = business();
    let (_, payer) = payer(&mut w, "Ana Silva");
    let lines = json!([
        { "what": "lesson", "words": "Lesson", "price": "45.00" }, { "what": "travel", "words": "Travel", "price": "20.00" },
    ]);
    let draft =
        w.act("invoices.draft", json!({ "payer": payer, "currency": "EUR", "lines": lines }));
    // 45.00 with 19 percent is 37.82 and 7.18: a gross price is charged as it stands.
    let invoice = w.act("invoices.issue", json!({ "invoice": draft["id"] }));
    let line = invoice["lines"][1]["id"].clone();
    let credit = |amount: &str| json!({ "invoice": invoice["id"], "reason": "Came by train", "lines": [{ "line": line, "amount": amount }] });
    assert_eq!(codes(&w.refused("invoices.credit", credit("20.01")))[0].1, "too_much");
    let note = w.act("invoices.credit", credit("8"));
    assert_eq!(
        [&note["kind"], &note["number"], &note["sums"]["gross"]],
        ["credit_note", "2026-0002", "8.00"]
    );
    let shown = w.act("invoices.show", json!({ "invoice": invoice["id"] }));
    assert_eq!([&shown["open"], &shown["lines"][1]["credited"]], ["57.00", "8.00"]);
    assert_eq!(codes(&w.refused("invoices.credit", credit("12.01")))[0].1, "too_much");
    w.act("invoices.credit", json!({ "invoice": invoice["id"], "reason": "A slip" }));
    let shown = w.act("invoices.show", json!({ "invoice": invoice["id"] }));
    assert_eq!([&shown["open"], &shown["state"]], ["0.00", "settled"]);
    let again =
        w.refused("invoices.credit", json!({ "invoice": invoice["id"], "reason": "Again" }));
    assert!(matches!(again, Error::NotPossible { code: "credited", .. }));
    let year = w.act("accounts.year", json!({ "year": 2026 }))["stands"][0].clone();
    assert_eq!([&year["earned"], &year["tax"]], ["0.00", "0.00"], "nothing is left of it");
    balanced(&mut w);
}

#[test]
fn two_who_share_pay_their_part_and_the_court_stands_on_its_own_line() {
    let mut w = business();
    let (a, payer_a) = payer(&mut w, "Ana Silva");
    let (b, payer_b) = payer(&mut w, "Ben Costa");
    let shared = json!({ "what": "lesson", "minutes": 60, "sharing": 2, "currency": "EUR", "amount": "60.01" });
    w.act("prices.add", json!({ "price": shared }));
    let visits = [w.visit(&a, "2026-03-10", "2026-03-12"), w.visit(&b, "2026-03-10", "2026-03-12")];
    let lesson = lesson(&mut w, &visits, "2026-03-11", "09:00");
    w.on("2026-03-11");
    w.act("lessons.give", json!({ "lesson": lesson }));
    let waiting = w.act("accounts.to_settle", json!({}));
    let mut parts: Vec<String> =
        waiting.as_array().unwrap().iter().map(|one| text(&one["proposal"]["amount"])).collect();
    parts.sort();
    assert_eq!(parts, ["30.00", "30.01"], "no cent is lost");
    let mut all = Vec::new();
    for student in [&a, &b] {
        all.push(
            json!({ "lesson": lesson, "student": student, "how": "invoice", "court": "9.00" }),
        );
    }
    w.act("accounts.settle", json!({ "lessons": all }));
    for payer in [&payer_a, &payer_b] {
        let draft = w.act("invoices.list", json!({ "payer": payer }))["invoices"][0].clone();
        let shown = w.act("invoices.show", json!({ "invoice": draft["id"] }));
        let what: Vec<&Value> =
            shown["lines"].as_array().unwrap().iter().map(|l| &l["what"]).collect();
        assert_eq!(what, ["lesson", "court"]);
    }
    // A draft that is discarded leaves its lessons to be settled again.
    let draft = w.act("invoices.list", json!({ "payer": payer_a }))["invoices"][0].clone();
    w.act("invoices.discard", json!({ "invoice": draft["id"] }));
    assert_eq!(w.act("accounts.to_settle", json!({})).as_array().unwrap().len(), 1);
    balanced(&mut w);
}

#[test]
fn a_package_is_extended_topped_up_moved_and_runs_out() {
    let mut w = business();
    let (student, _) = payer(&mut w, "Ana Silva");
    let other = w.student("Ivo Silva");
    let sell = json!({ "student": student, "lessons": 10, "currency": "EUR", "price": "476.00", "issue": true, "expires": "2026-08-31" });
    let package = text(&w.act("packages.sell", sell)["lines"][0]["package"]);
    w.act(
        "packages.extend",
        json!({ "package": package, "until": "2026-09-30", "reason": "A broken wrist" }),
    );
    w.act(
        "packages.give_bonus",
        json!({ "package": package, "lessons": 1, "reason": "She brought a friend" }),
    );
    assert_eq!(deferred(&mut w, &package), (11, "400.00".into()));
    let moved =
        json!({ "package": package, "student": other, "lessons": 4, "reason": "For her brother" });
    w.act("packages.move_lessons", moved);
    // 4 of 11 lessons take 145.45 of 400.00 along.
    assert_eq!(deferred(&mut w, &package), (7, "254.55".into()));
    let theirs = w.act("packages.list", json!({ "student": other }))[0].clone();
    assert_eq!([&theirs["left"], &theirs["deferred"]], [&json!(4), &json!("145.45")]);
    let lapse = json!({ "package": package, "reason": "As agreed" });
    w.on("2026-09-30");
    assert!(matches!(
        w.refused("packages.lapse", lapse.clone()),
        Error::NotPossible { code: "not_run_out", .. }
    ));
    w.on("2026-10-01");
    w.act("packages.lapse", lapse);
    assert_eq!(deferred(&mut w, &package), (0, "0.00".into()));
    let year = w.act("accounts.year", json!({ "year": 2026 }));
    assert_eq!(
        [&year["stands"][0]["earned"], &year["stands"][0]["deferred"]],
        ["254.55", "145.45"]
    );
    assert_eq!(year["lessons_owed"], 4);
    balanced(&mut w);
}

#[test]
fn the_year_as_a_table_adds_up_to_the_year() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    package(&mut w, &student);
    let pay = json!({ "payer": payer, "method": "cash", "currency": "EUR", "amount": "100" });
    w.act("payments.receive", pay);
    for (kind, amount, tax) in [("fare", "80", ""), ("lodging", "100", "7"), ("lodging", "50", "")]
    {
        let cost = json!({ "kind": kind, "day": "2026-03-01", "words": "Saltmere", "currency": "EUR",
            "amount": amount, "tax": tax });
        w.act("costs.note", json!({ "cost": cost }));
    }
    let (name, bytes) = w.file.read(|db| document(db, YearAsked { year: 2026 })).unwrap();
    assert_eq!(name, "Year 2026.csv");
    let table = String::from_utf8(bytes).unwrap();
    assert!(table.contains("received,2026-03,cash,,,,100.00,EUR,\r\n"), "{table}");
    assert!(table.contains("earned,2026-03,tax charged,,,S 19,76.00,EUR,\r\n"), "{table}");
    assert!(table.contains("spent,2026-03,spent,fare,,,80.00,EUR,\r\n"), "{table}");
    assert!(table.contains("spent,2026-03,spent,lodging,,,150.00,EUR,7.00\r\n"), "{table}");
    let year = w.act("accounts.year", json!({ "year": 2026 }));
    assert_eq!(year["stands"][0]["spent"], "230.00", "the rows add up to it");
}

#[test]
fn when_a_student_is_erased_what_was_issued_stays_and_balances() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    let visit = w.visit(&student, "2026-03-10", "2026-03-12");
    let (package, invoice) = package(&mut w, &student);
    let lesson = lesson(&mut w, std::slice::from_ref(&visit), "2026-03-10", "09:00");
    w.on("2026-03-12");
    w.act("lessons.give", json!({ "lesson": lesson }));
    settle(&mut w, &lesson, &student, "package");
    let would = w.act("students.erasing", json!({ "student": student }));
    assert!(
        text(&would["invoiced"]).starts_with("1 document issued to Ana Silva"),
        "{}",
        would["invoiced"]
    );
    w.act("visits.close", json!({ "visit": visit }));
    let erased = w.act("students.erase", json!({ "student": student, "name_typed": "Ana Silva" }));
    let left = erased["left"].to_string();
    assert!(left.contains("1 document issued to Ana Silva"), "{left}");
    assert_eq!(w.act("invoices.show", json!({ "invoice": invoice["id"] }))["name"], "Ana Silva");
    assert_eq!(deferred(&mut w, &package), (9, "360.00".into()));
    assert_eq!(
        w.act("payments.account", json!({ "payer": payer }))["standing"][0]["open"],
        "476.00"
    );
    balanced(&mut w);
    // Who has nothing in the accounts goes as a whole.
    let (other, lone) = self::payer(&mut w, "Ivo Berg");
    w.act("students.erase", json!({ "student": other, "name_typed": "Ivo Berg" }));
    assert!(matches!(w.refused("payers.show", json!({ "payer": lone })), Error::NotFound { .. }));
}

#[test]
fn money_acts_are_taken_back_not_undone() {
    let mut w = business();
    let (student, payer) = payer(&mut w, "Ana Silva");
    package(&mut w, &student);
    let pay = json!({ "payer": payer, "method": "cash", "currency": "EUR", "amount": "100" });
    let paid = call(&mut w.file, "payments.receive", pay).unwrap();
    let undo = w.refused("journal.undo", json!({ "act": paid.act }));
    assert!(matches!(undo, Error::NotPossible { .. }), "{undo}");
    balanced(&mut w);
}
