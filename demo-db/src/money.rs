//! Money of the invented coach: prices, terms, packages (one of them given back), invoices paid,
//! overdue and to come, and lessons that wait to be settled.

use std::collections::BTreeMap;

use carryover_core::error::Result;
use carryover_core::kinds::Day;
use serde_json::{Value, json};

use crate::maker::Maker;

/// From this many days ago on money is kept here.
const KEPT_FOR: i64 = 210;
/// What is newer waits.
const WAITS: i64 = 20;

/// Settles, invoices and is paid.
pub fn earned(m: &mut Maker) -> Result<()> {
    m.on(m.today.plus(-KEPT_FOR));
    m.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "7 Net Loft\nSaltmere", "country": "IE", "email": "robin@hale.example",
                "words": "Thank you for coming to Saltmere.", "prices": "gross" }),
    )?;
    let none = json!({ "category": "O", "why": "Sample season: no tax is charged" });
    m.act("prices.set_tax", none)?;
    for price in [
        json!({ "what": "lesson", "minutes": 60, "currency": "EUR", "amount": "55.00" }),
        json!({ "what": "lesson", "minutes": 90, "currency": "EUR", "amount": "78.00" }),
        json!({ "what": "lesson", "minutes": 60, "sharing": 2, "currency": "EUR", "amount": "72.00" }),
        json!({ "what": "package", "lessons": 10, "minutes": 60, "months": 12, "currency": "EUR", "amount": "480.00" }),
        json!({ "what": "analysis", "words": "One game, rally by rally", "currency": "EUR", "amount": "35.00" }),
    ] {
        m.act("prices.add", json!({ "price": price }))?;
    }
    m.act(
        "terms.set",
        json!({ "since": m.today.plus(-KEPT_FOR), "called_off": [{ "at": 24, "within": true, "percent": 0 }], "later": 50, "missed": 100,
                "broken_off": [{ "at": 10, "within": true, "percent": 0 }, { "at": 30, "within": false, "percent": 50 }] }),
    )?;
    packages(m)?;
    let mut groups: BTreeMap<(String, String), Vec<Value>> = BTreeMap::new();
    for lesson in each(&m.act("accounts.to_settle", json!({}))?) {
        let day = text(&lesson, "/day");
        let ago = Day::parse(&day).map_or(0, |day| m.today.since(day));
        if ago > WAITS {
            // What a student had in one month stands on one invoice.
            let month = day.get(..7).unwrap_or_default().to_owned();
            groups.entry((month, text(&lesson, "/student"))).or_default().push(lesson);
        }
    }
    // Numbers follow the days.
    let last = |lessons: &[Value]| lessons.iter().map(|lesson| text(lesson, "/day")).max();
    let mut groups: Vec<(String, Vec<Value>)> =
        groups.into_values().map(|lessons| (last(&lessons).unwrap_or_default(), lessons)).collect();
    groups.sort_by(|(a, _), (b, _)| a.cmp(b));
    let many = groups.len();
    for (n, (day, lessons)) in groups.into_iter().enumerate() {
        invoice(m, &lessons, &day, n + 2 < many)?;
    }
    Ok(())
}

/// A package half used, and one that was given back.
fn packages(m: &mut Maker) -> Result<()> {
    let students = each(&m.act("students.list", json!({}))?);
    for (n, student) in students.iter().take(2).enumerate() {
        let student = text(student, "/id");
        addressed(m, &student)?;
        m.on(m.today.plus(-KEPT_FOR));
        let sold = m.act(
            "packages.sell",
            json!({ "student": student, "lessons": 10, "minutes": 60, "currency": "EUR", "price": "480.00", "single": "55.00",
                    "expires": m.today.plus(150), "issue": true }),
        )?;
        let pay = json!({ "payer": text(&sold, "/payer"), "method": "transfer", "currency": "EUR", "amount": "480.00" });
        m.act("payments.receive", pay)?;
        if n == 1 {
            let package = text(&sold, "/lines/0/package");
            m.act(
                "packages.give_back",
                json!({ "package": package, "reason": "Moved away before the first lesson" }),
            )?;
            let back = json!({ "payer": text(&sold, "/payer"), "method": "transfer", "currency": "EUR", "amount": "480.00" });
            m.act("payments.pay_back", back)?;
        }
    }
    Ok(())
}

/// The lessons of one student in one month, on an invoice of the day after the last.
fn invoice(m: &mut Maker, lessons: &[Value], last: &str, paid: bool) -> Result<()> {
    let Some(day) = Day::parse(last).map(|day| day.plus(1)) else { return Ok(()) };
    m.on(day);
    let Some(student) = lessons.first().map(|lesson| text(lesson, "/student")) else {
        return Ok(());
    };
    let payer = addressed(m, &student)?;
    for lesson in lessons {
        let now = m.act(
            "accounts.propose",
            json!({ "lesson": lesson["lesson"], "student": lesson["student"], "because": "place" }),
        )?;
        match now.pointer("/proposal/how").and_then(Value::as_str) {
            Some(how) => settle(m, lesson, json!({ "how": how, "because": "place" }))?,
            None => settle(
                m,
                lesson,
                json!({ "how": "invoice", "because": "place", "amount": "55.00", "currency": "EUR", "reason": "Agreed by word of mouth" }),
            )?,
        }
    }
    let drafts = each(&m.act("invoices.list", json!({ "payer": payer }))?["invoices"]);
    let Some(draft) = drafts.iter().find(|one| text(one, "/state") == "draft") else {
        return Ok(());
    };
    let issued = m.act("invoices.issue", json!({ "invoice": draft["id"], "use_credit": true }))?;
    if paid {
        m.on(day.plus(9).min(m.today));
        let open = text(&issued, "/open");
        let pay = json!({ "payer": payer, "method": "transfer", "currency": issued["currency"], "amount": open,
                          "words": issued["number"] });
        m.act("payments.receive", pay)?;
    }
    Ok(())
}

/// The payer of a student, with an address that exists nowhere.
fn addressed(m: &mut Maker, student: &str) -> Result<String> {
    let mut payer = m.act("payers.choose", json!({ "student": student }))?;
    let id = text(&payer, "/id");
    if text(&payer, "/address").is_empty() {
        payer["address"] = json!("1 Nowhere Street\nElsewhere");
        let mut form = payer.clone();
        if let Some(form) = form.as_object_mut() {
            form.remove("id");
            form.remove("students");
        }
        m.act("payers.change", json!({ "id": id, "payer": form }))?;
    }
    Ok(id)
}

fn settle(m: &mut Maker, lesson: &Value, mut how: Value) -> Result<()> {
    how["lesson"] = lesson["lesson"].clone();
    how["student"] = lesson["student"].clone();
    m.act("accounts.settle", json!({ "lessons": [how] })).map(drop)
}

fn each(all: &Value) -> Vec<Value> {
    all.as_array().cloned().unwrap_or_default()
}

fn text(value: &Value, at: &str) -> String {
    value.pointer(at).and_then(Value::as_str).unwrap_or_default().to_owned()
}
