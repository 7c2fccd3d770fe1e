//! The coach's own norms of a test: a mean and a spread, where a publication's were not found or do
//! not fit, and where they are from.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::text;
use crate::sports;

/// Norms of a test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Norms {
    /// The mean of the results.
    pub mean: f64,
    /// Their standard deviation.
    pub sd: f64,
    /// How far test and retest agree, 0 to 1, where it is known.
    pub reliability: Option<f64>,
    /// Where the numbers are from.
    pub source: String,
}

/// Of which sport.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NormsOf {
    /// The pack's id.
    pub sport: String,
}

/// A test with the coach's own norms.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct TestNorms {
    /// The test.
    pub test: String,
    /// Its norms.
    pub norms: Norms,
}

/// The coach's own norms of a sport's tests, those that have any.
///
/// # Errors
/// `NotFound` when there is no such sport.
pub fn norms(db: &Reading<'_>, of: NormsOf) -> Result<Vec<TestNorms>> {
    let pack = sports::pack(&of.sport)
        .ok_or_else(|| Error::NotFound { what: "sport", id: of.sport.clone() })?;
    let mut all = Vec::new();
    for test in &pack.tests {
        if let Some(norms) = store::norms(db, &pack.id, &test.id)? {
            all.push(TestNorms { test: test.id.clone(), norms });
        }
    }
    Ok(all)
}

/// Norms as typed. With every field empty, the test has none any more.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveNorms {
    /// The pack's id.
    pub sport: String,
    /// The test.
    pub test: String,
    /// The mean.
    #[serde(default)]
    pub mean: String,
    /// The standard deviation.
    #[serde(default)]
    pub sd: String,
    /// The reliability, 0 to 1; empty where it is not known.
    #[serde(default)]
    pub reliability: String,
    /// Where the numbers are from.
    #[serde(default)]
    pub source: String,
}

/// Gives a test the coach's own norms; results are read by them from then on.
///
/// # Errors
/// `NotFound` when there is no such sport or test; `Refused` with every field that is wrong: what
/// is no number, a spread of nothing, a reliability outside 0 to 1, numbers from nowhere, nothing at
/// all where there is nothing to take away.
pub fn give_norms(db: &Writing<'_>, give: GiveNorms) -> Result<Option<Norms>> {
    let pack = sports::pack(&give.sport)
        .ok_or_else(|| Error::NotFound { what: "sport", id: give.sport.clone() })?;
    let test = pack
        .find_test(&give.test)
        .ok_or_else(|| Error::NotFound { what: "test", id: give.test.clone() })?;
    let norms = read(&give)?;
    if norms.is_none() && store::norms(db, &pack.id, &test.id)?.is_none() {
        return Err(Error::field("mean", "empty", "The mean is empty."));
    }
    store::put_norms(db, &pack.id, &test.id, norms.as_ref())?;
    db.label(match norms {
        Some(_) => format!("Norms of your own: {}", test.name),
        None => format!("Norms taken away: {}", test.name),
    });
    Ok(norms)
}

fn read(give: &GiveNorms) -> Result<Option<Norms>> {
    let typed = [&give.mean, &give.sd, &give.reliability, &give.source];
    if typed.iter().all(|typed| typed.trim().is_empty()) {
        return Ok(None);
    }
    let mut p = Problems::new();
    let mean = number(&mut p, "mean", &give.mean, "The mean", 24.5);
    let sd = number(&mut p, "sd", &give.sd, "The standard deviation", 5.2);
    if sd == Some(0.0) {
        p.add(
            "sd",
            "out_of_bounds",
            "The standard deviation is 0; norms without spread place nobody.",
        );
    }
    let reliability = if give.reliability.trim().is_empty() {
        None
    } else {
        number(&mut p, "reliability", &give.reliability, "The reliability", 0.85)
    };
    if let Some(r) = reliability
        && r > 1.0
    {
        p.add("reliability", "out_of_bounds", format!("The reliability is {r}; it can be 0 to 1."));
    }
    let source = p.name("source", &give.source, "Where the norms are from");
    p.done()?;
    let (Some(mean), Some(sd)) = (mean, sd) else { return Ok(None) };
    Ok(Some(Norms { mean, sd, reliability, source }))
}

/// A decimal number from 0 up, with a point or a comma.
fn number(p: &mut Problems, field: &str, typed: &str, what: &str, such_as: f64) -> Option<f64> {
    let typed = text::line(typed);
    let digits = typed.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
    let read = digits.then(|| typed.replace(',', ".").parse::<f64>().ok()).flatten();
    match read {
        _ if typed.is_empty() => p.add(field, "empty", format!("{what} is empty.")),
        None => p.add(
            field,
            "no_number",
            format!(
                "{what}: \u{201c}{typed}\u{201d} is not a number from 0 up. Write it as {such_as}."
            ),
        ),
        Some(n) if n > 100_000.0 => {
            p.add(field, "out_of_bounds", format!("{what} is {typed}; it can be 0 to 100000."));
        }
        Some(_) => {}
    }
    read
}
