//! `load`: the days of a week to total, mean, spread, monotony and strain.

use super::{CalcRefusal, fields::Fields};
use crate::load::{Load, load};

pub fn read(mut fields: Fields) -> Result<Option<Load>, CalcRefusal> {
    let result = fields.numbers("days").and_then(|days| {
        if days.is_empty() {
            fields.refuse("days", "empty", "“days” has at least one day".to_owned());
            return None;
        }
        let below: Vec<usize> =
            (0..).zip(&days).filter(|(_, d)| **d < 0.0).map(|(n, _)| n).collect();
        for place in &below {
            let words = "a day's load is 0 or more".to_owned();
            fields.refuse(&format!("days[{place}]"), "out_of_range", words);
        }
        let result = load(&days);
        if result.is_none() && below.is_empty() {
            let words = "these days are too large to add up".to_owned();
            fields.refuse("days", "too_large", words);
        }
        result
    });
    fields.done()?;
    Ok(result)
}
