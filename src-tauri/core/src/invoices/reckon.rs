//! What an invoice comes to, and how it is shared out over its lines.

use rust_decimal::Decimal;

use super::{DocTax, InvoiceExtra, InvoiceLine, InvoiceSums};
use crate::error::{Error, Result};
use crate::kinds::Currency;
use crate::money::{self, Category, Extra, Paper, Prices, Sums, Tax, split};

/// Sums, and what of them each line is without tax.
pub(super) struct Reckoned {
    pub sums: Sums,
    /// By line, without tax.
    pub nets: Vec<i64>,
    /// By extra, without tax.
    pub extra_nets: Vec<i64>,
}

/// Adds lines up. A line whose tax is not set counts as one without tax, so that a draft has sums.
///
/// # Errors
/// `Refused` when the sums are too large; `Fault` when a line holds no numbers.
pub(super) fn reckon(
    lines: &[InvoiceLine],
    extras: &[InvoiceExtra],
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
        allowances: read_extras(extras, true, currency)?,
        charges: read_extras(extras, false, currency)?,
        paid,
        payable_rounding: step,
    };
    let sums = money::sums(&paper).map_err(|_| {
        Error::field("lines", "too_large", "This comes to more than can be counted.")
    })?;
    let mut nets = sums.lines.clone();
    let extra_nets = extras
        .iter()
        .map(|extra| net_of(&read_extra(extra, currency)?, prices))
        .collect::<Result<Vec<_>>>()?;
    if prices == Prices::Gross {
        for row in &sums.tax {
            // What is under the lines is taken out of the sum first; the lines share the rest.
            let mut base = row.base;
            for (extra, net) in extras.iter().zip(&extra_nets) {
                if read_extra(extra, currency)?.tax == row.tax {
                    base += if extra.takes_off { *net } else { -net };
                }
            }
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
            for (at, part) in of_row.into_iter().zip(split(base, &weights).unwrap_or_default()) {
                if let Some(net) = nets.get_mut(at) {
                    *net = part;
                }
            }
        }
    }
    Ok(Reckoned { sums, nets, extra_nets })
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

fn read_extras(extras: &[InvoiceExtra], off: bool, currency: Currency) -> Result<Vec<Extra>> {
    let some = extras.iter().filter(|extra| extra.takes_off == off);
    some.map(|extra| read_extra(extra, currency)).collect()
}

fn read_extra(extra: &InvoiceExtra, currency: Currency) -> Result<Extra> {
    let fault = || Error::Fault(format!("\u{201c}{}\u{201d} holds no numbers", extra.words));
    let rate = if extra.rate.is_empty() {
        Decimal::ZERO
    } else {
        extra.rate.parse().map_err(|_| fault())?
    };
    Ok(Extra {
        amount: currency.minor(&extra.amount).ok_or_else(fault)?,
        tax: Tax { category: extra.category.unwrap_or(Category::O), rate },
    })
}

/// What an extra is without tax.
fn net_of(extra: &Extra, prices: Prices) -> Result<i64> {
    match prices {
        Prices::Net => Ok(extra.amount),
        Prices::Gross => money::without_tax(extra.amount, extra.tax.rate).ok_or_else(|| {
            Error::field("extras", "too_large", "This comes to more than can be counted.")
        }),
    }
}

/// The sums as decimals.
pub(super) fn shown(
    reckoned: &Reckoned,
    lines: &[InvoiceLine],
    extras: &[InvoiceExtra],
    currency: Currency,
) -> InvoiceSums {
    let sums = &reckoned.sums;
    InvoiceSums {
        lines: currency.plain(sums.lines_total),
        net: currency.plain(sums.net),
        tax: currency.plain(sums.tax_total),
        gross: currency.plain(sums.gross),
        rounding: currency.plain(sums.rounding),
        payable: currency.plain(sums.gross + sums.rounding),
        taxes: taxes(sums, lines, extras, currency),
    }
}

/// Tax by category and rate, each with the reason that stands on its first line.
pub(super) fn taxes(
    sums: &Sums,
    lines: &[InvoiceLine],
    extras: &[InvoiceExtra],
    currency: Currency,
) -> Vec<DocTax> {
    sums.tax
        .iter()
        .filter_map(|row| {
            let rate = row.tax.rate.normalize().to_string();
            let of_lines = lines.iter().map(|line| (line.category, &line.rate, &line.why));
            let of_extras = extras.iter().map(|extra| (extra.category, &extra.rate, &extra.why));
            let (_, _, why) = of_lines
                .chain(of_extras)
                .find(|(category, of, _)| *category == Some(row.tax.category) && **of == rate)?;
            Some(DocTax {
                category: row.tax.category,
                rate,
                why: why.clone(),
                base: currency.plain(row.base),
                amount: currency.plain(row.amount),
            })
        })
        .collect()
}

/// The flag of a tax in the ledger: "S 19".
pub(super) fn flag(category: Option<Category>, rate: &str) -> String {
    category.map_or_else(String::new, |category| format!("{} {rate}", category.code()))
}
