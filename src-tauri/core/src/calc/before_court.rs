//! The readiness table and ages, as `calc` answers them.

use serde_json::{Value, json};

use super::CalcRefusal;
use super::fields::Fields;
use crate::intake::Answer;
use crate::intake::minors::age_on;
use crate::intake::readiness::{Answers, table};
use crate::kinds::Day;

const ANSWERS: [(&str, Answer); 3] =
    [("yes", Answer::Yes), ("no", Answer::No), ("not_known", Answer::NotKnown)];

/// What the readiness table says of three answers, and in which words.
pub(super) fn readiness(mut fields: Fields) -> Result<Value, CalcRefusal> {
    let active = fields.word("active", &ANSWERS);
    let disease = fields.word("disease", &ANSWERS);
    let symptoms = fields.word("symptoms", &ANSWERS);
    fields.done()?;
    let answers = Answers {
        active: active.unwrap_or_default(),
        disease: disease.unwrap_or_default(),
        symptoms: symptoms.unwrap_or_default(),
    };
    let outcome = table::outcome(answers);
    Ok(json!({ "outcome": outcome, "words": table::words(outcome, answers) }))
}

/// Whole years from a birth date to a day; null before birth.
pub(super) fn age(mut fields: Fields) -> Result<Value, CalcRefusal> {
    let born = day(&mut fields, "born");
    let on = day(&mut fields, "on");
    fields.done()?;
    Ok(json!({ "years": born.zip(on).and_then(|(born, on)| age_on(born, on)) }))
}

fn day(fields: &mut Fields, field: &str) -> Option<Day> {
    let text = fields.text(field)?;
    let day = Day::parse(&text);
    if day.is_none() {
        let words = format!("\u{201c}{text}\u{201d} is no day; one reads like 2026-03-12");
        fields.refuse(field, "not_a_day", words);
    }
    day
}
