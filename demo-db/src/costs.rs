//! What the invented coach spent: drives by a rate agreed on, a night or two, balls, insurance.

use carryover_core::error::Result;
use serde_json::{Value, json};

use crate::maker::Maker;

/// Notes the costs of the last year.
pub fn spent(m: &mut Maker) -> Result<()> {
    m.on(m.today.plus(-400));
    let rate = json!({
        "per": "km", "since": m.today.plus(-400), "currency": "EUR", "amount": "0.30",
        "source": "Invented for the sample season",
    });
    m.act("costs.add_rate", json!({ "rate": rate }))?;
    for (ago, km) in [(330, "46"), (231, "46"), (140, "212.5"), (44, "46"), (9, "46")] {
        let cost = json!({ "kind": "drive", "words": "To the hall and back, lessons", "town": "Saltmere",
            "distance": km, "unit": "km" });
        note(m, ago, cost)?;
    }
    for (ago, kind, words, amount) in [
        (340, "dues", "Liability insurance for the year", "186.00"),
        (232, "equipment", "Balls, four dozen", "151.20"),
        (140, "fare", "Ferry with the car, both ways", "88.00"),
        (44, "court", "Court for a lesson that a hall did not bill", "21.00"),
        (8, "meals", "Lunch between lessons", "13.40"),
    ] {
        note(m, ago, paid(kind, words, amount))?;
    }
    let mut inn = paid("lodging", "Harbour Inn, lessons on two days", "164.00");
    inn["last"] = json!(m.today.plus(-139));
    note(m, 140, inn)
}

fn paid(kind: &str, words: &str, amount: &str) -> Value {
    json!({ "kind": kind, "words": words, "amount": amount, "currency": "EUR" })
}

fn note(m: &mut Maker, ago: i64, mut cost: Value) -> Result<()> {
    let day = m.today.plus(-ago);
    m.on(m.today.plus(1 - ago).min(m.today));
    cost["day"] = json!(day);
    m.act("costs.note", json!({ "cost": cost }))?;
    Ok(())
}
