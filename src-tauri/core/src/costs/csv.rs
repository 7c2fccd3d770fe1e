//! Costs as a table for an adviser: RFC 4180, UTF-8, decimal points.

use super::{Cost, CostsOf, list};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::text::no_formula;

/// The head of the table.
pub const COLUMNS: [&str; 12] = [
    "day",
    "last day",
    "kind",
    "what for",
    "town",
    "currency",
    "amount",
    "tax contained",
    "distance",
    "unit",
    "worked out",
    "receipt",
];

/// Costs of some days as a file: its name and bytes. Those taken back are not in it.
///
/// # Errors
/// As [`list`].
pub fn document(db: &Reading<'_>, of: CostsOf) -> Result<(String, Vec<u8>)> {
    let costs = list(db, of)?.costs;
    let mut table = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(vec![]);
    let fault = |e: csv::Error| Error::Fault(e.to_string());
    table.write_record(COLUMNS).map_err(fault)?;
    // As they came about: the oldest first.
    for cost in costs.iter().rev().filter(|cost| cost.taken_back.is_none()) {
        table.write_record(row(cost)).map_err(fault)?;
    }
    let bytes = table.into_inner().map_err(|e| Error::Fault(e.to_string()))?;
    Ok((format!("Costs {} to {}.csv", of.first, of.last), bytes))
}

fn row(cost: &Cost) -> [String; 12] {
    [
        cost.day.to_string(),
        cost.last.to_string(),
        cost.kind.words().to_owned(),
        no_formula(&cost.words),
        no_formula(&cost.town),
        cost.currency.clone(),
        cost.amount.clone(),
        cost.tax.clone(),
        cost.distance.clone(),
        cost.unit.map_or_else(String::new, |unit| unit.unit().to_owned()),
        no_formula(&cost.worked),
        cost.receipt.as_ref().map_or_else(String::new, |receipt| no_formula(&receipt.name)),
    ]
}
