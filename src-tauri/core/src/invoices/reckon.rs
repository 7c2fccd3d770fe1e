//! What an invoice comes to, and how it is shared out over its lines.

use rust_decimal::Decimal;

use super::{DocTax, InvoiceLine, InvoiceSums};
use crate::error::{Error, Result};
use crate::kinds::Currency;
use crate::money::{self, Category, Paper, Prices, Sums, Tax, split};

/// Sums, and what of them each line is without tax.
pub(super) struct Reckoned {
    pub sums: Sums,
    /// By line, without tax.
    pub nets: Vec<i64>,
}

/// Adds lines up. A line whose tax is not set counts as one without tax, so that a draft has sums.
///
/// # Errors
/// `Refused` when the sums are too large; `Fault` when a line holds no numbers.
pub(super) fn reckon(
    lines: &[InvoiceLine],
    currency: Currency,
    prices: Prices,
    paid: i64,
    step: Option<i64>,
) -> Result<Reckoned> {
    let read = lines.iter().map(|line| read(line, currency)).collect::<Result<Vec<_>>>()?;
    let paper = Paper {
        currency,
        prices,
        lines: read,
        allowances: Vec::new(),
        charges: Vec::new(),
        paid,
        payable_rounding: step,
    };
    let sums = money::sums(&paper).map_err(|_| {
        Error::field("lines", "too_large", "This comes to more than can be counted.")
    })?;
    let mut nets = sums.lines.clone();
    if prices == Prices::Gross {
        for row in &sums.tax {
            let of_row: Vec<usize> = paper
                .lines
                .iter()
                .enumerate()
                .filter(|(_, line)| line.tax == row.tax)
                .map(|(at, _)| at)
                .collect();
            let weights: Vec<u64> = of_row
                .iter()
                .filter_map(|at| sums.lines.get(*at))
                .map(|total| total.unsigned_abs())
                .collect();
            for (at, part) in of_row.into_iter().zip(split(row.base, &weights).unwrap_or_default())
            {
                if let Some(net) = nets.get_mut(at) {
                    *net = part;
                }
            }
        }
    }
    Ok(Reckoned { sums, nets })
}

fn read(line: &InvoiceLine, currency: Currency) -> Result<money::Line> {
    let fault = || Error::Fault(format!("the line {} holds no numbers", line.id));
    let number = |text: &str| text.parse::<Decimal>().map_err(|_| fault());
    let rate = if line.rate.is_empty() { Decimal::ZERO } else { number(&line.rate)? };
    Ok(money::Line {
        quantity: number(&line.quantity)?,
        unit_price: number(&line.price)?,
        base_quantity: Decimal::ONE,
        allowance: currency.minor(&line.allowance).ok_or_else(fault)?,
        charge: 0,
        tax: Tax { category: line.category.unwrap_or(Category::O), rate },
    })
}

/// The sums as decimals.
pub(super) fn shown(reckoned: &Reckoned, lines: &[InvoiceLine], currency: Currency) -> InvoiceSums {
    let sums = &reckoned.sums;
    InvoiceSums {
        net: currency.plain(sums.net),
        tax: currency.plain(sums.tax_total),
        gross: currency.plain(sums.gross),
        rounding: currency.plain(sums.rounding),
        payable: currency.plain(sums.gross + sums.rounding),
        taxes: taxes(sums, lines, currency),
    }
}

/// Tax by category and rate, each with the reason that stands on its first line.
pub(super) fn taxes(sums: &Sums, lines: &[InvoiceLine], currency: Currency) -> Vec<DocTax> {
    sums.tax
        .iter()
        .filter_map(|row| {
            let rate = row.tax.rate.normalize().to_string();
            let first = lines
                .iter()
                .find(|line| line.category == Some(row.tax.category) && line.rate == rate)?;
            Some(DocTax {
                category: row.tax.category,
                rate,
                why: first.why.clone(),
                base: currency.plain(row.base),
                amount: currency.plain(row.amount),
            })
        })
        .collect()
}

/// The flag of a line's tax in the ledger: "S 19".
pub(super) fn flag(line: &InvoiceLine) -> String {
    line.category.map_or_else(String::new, |category| format!("{} {}", category.code(), line.rate))
}
