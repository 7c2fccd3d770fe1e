//! The sums of an invoice, by the arithmetic of EN 16931-1 (BR-CO-10 to BR-CO-17): each line rounded
//! by itself, tax rounded once per category and rate on the sum of its lines. Prices are net or gross;
//! a gross price is always charged as it was advertised, and the tax is taken out of the sum.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Fraction;
use crate::kinds::Currency;

/// Whether prices are without or with tax.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Prices {
    /// Without; tax comes on top.
    Net,
    /// With.
    #[default]
    Gross,
}

/// A category of tax, by its code in UNTDID 5305 as EN 16931 uses it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Category {
    /// Standard rate, and reduced ones: above 0.
    S,
    /// Zero rate.
    Z,
    /// Exempt.
    E,
    /// Reverse charge.
    AE,
    /// Supply within the European Community.
    K,
    /// Export.
    G,
    /// Outside the scope of tax.
    O,
    /// Canary Islands.
    L,
    /// Ceuta and Melilla.
    M,
}

crate::db::words! {
    Prices { Net = "net", Gross = "gross" }
    Category {
        S = "S", Z = "Z", E = "E", AE = "AE", K = "K", G = "G", O = "O", L = "L", M = "M",
    }
}

impl Category {
    /// All of them, by code.
    pub const CODES: [(&'static str, Self); 9] = [
        ("S", Self::S),
        ("Z", Self::Z),
        ("E", Self::E),
        ("AE", Self::AE),
        ("K", Self::K),
        ("G", Self::G),
        ("O", Self::O),
        ("L", Self::L),
        ("M", Self::M),
    ];

    /// Its code.
    pub fn code(self) -> &'static str {
        Self::CODES.iter().find(|(_, category)| *category == self).map_or("", |(code, _)| *code)
    }

    /// Why a rate, in percent, cannot stand with it (EN 16931: BR-S-05, BR-Z-05, BR-E-05, BR-AE-05,
    /// BR-IC-05, BR-G-05, BR-O-05, BR-IG-05, BR-IP-05); `None` when it can.
    pub fn refuses(self, rate: Decimal) -> Option<&'static str> {
        if rate.is_sign_negative() && !rate.is_zero() || rate > Decimal::ONE_HUNDRED {
            return Some("A rate of tax lies from 0 to 100 percent.");
        }
        match self {
            Self::S if rate.is_zero() => {
                Some("The standard category has a rate above 0; the zero rate is category Z.")
            }
            Self::S | Self::L | Self::M => None,
            _ if rate.is_zero() => None,
            _ => Some("This category of tax has the rate 0."),
        }
    }
}

/// A category of tax with its rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tax {
    /// The category.
    pub category: Category,
    /// The rate in percent.
    pub rate: Decimal,
}

/// A line of an invoice.
#[derive(Clone, Copy, Debug)]
pub struct Line {
    /// How much of it; negative for what is taken back.
    pub quantity: Decimal,
    /// The price of `base_quantity` of it, 0 or more; it may have more decimals than the currency.
    pub unit_price: Decimal,
    /// How much the price is for; above 0.
    pub base_quantity: Decimal,
    /// What is taken off the line, in smallest units.
    pub allowance: i64,
    /// What is put on the line, in smallest units.
    pub charge: i64,
    /// Its tax.
    pub tax: Tax,
}

/// What is taken off, or put on, the whole.
#[derive(Clone, Copy, Debug)]
pub struct Extra {
    /// In smallest units.
    pub amount: i64,
    /// Its tax.
    pub tax: Tax,
}

/// All that an invoice's sums follow from.
#[derive(Clone, Debug)]
pub struct Paper {
    /// The currency of every amount.
    pub currency: Currency,
    /// Whether prices are without or with tax.
    pub prices: Prices,
    /// The lines.
    pub lines: Vec<Line>,
    /// What is taken off the whole.
    pub allowances: Vec<Extra>,
    /// What is put on the whole.
    pub charges: Vec<Extra>,
    /// What was paid before, in smallest units.
    pub paid: i64,
    /// The cash step to which what is due is rounded, in smallest units; `None`: not rounded.
    pub payable_rounding: Option<i64>,
}

/// Base and tax of one category and rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TaxRow {
    /// Category and rate.
    pub tax: Tax,
    /// What is taxed, without the tax.
    pub base: i64,
    /// The tax.
    pub amount: i64,
}

/// The sums, in smallest units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sums {
    /// What each line comes to (BT-131; with gross prices, gross).
    pub lines: Vec<i64>,
    /// Their sum (BT-106).
    pub lines_total: i64,
    /// What is taken off the whole (BT-107).
    pub allowances_total: i64,
    /// What is put on the whole (BT-108).
    pub charges_total: i64,
    /// The whole without tax (BT-109).
    pub net: i64,
    /// By category and rate, in the order of first use (BG-23).
    pub tax: Vec<TaxRow>,
    /// All tax (BT-110).
    pub tax_total: i64,
    /// The whole with tax (BT-112).
    pub gross: i64,
    /// What was paid before (BT-113).
    pub paid: i64,
    /// What rounding for cash adds, or takes off (BT-114).
    pub rounding: i64,
    /// What is due (BT-115).
    pub due: i64,
}

/// An amount is larger than the program counts, at a line or in a sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TooLarge {
    /// At this line, counted from 0.
    Line(usize),
    /// In a sum.
    Sum,
}

/// The largest amount, in smallest units: far above any invoice, far below where sums would overflow.
const MOST: i64 = 1_000_000_000_000_000;

/// The sums of an invoice.
///
/// # Errors
/// `TooLarge` when an amount is beyond 10^15 smallest units.
pub fn sums(paper: &Paper) -> Result<Sums, TooLarge> {
    let mut lines = Vec::with_capacity(paper.lines.len());
    for (at, line) in paper.lines.iter().enumerate() {
        lines.push(amount(line, paper.currency).ok_or(TooLarge::Line(at))?);
    }
    let lines_total = add(lines.iter().copied())?;
    let allowances_total = add(paper.allowances.iter().map(|extra| extra.amount))?;
    let charges_total = add(paper.charges.iter().map(|extra| extra.amount))?;

    // What each category and rate comes to, in the order of first use.
    let mut groups: Vec<(Tax, i64)> = Vec::new();
    let of_lines = paper.lines.iter().zip(&lines).map(|(line, amount)| (line.tax, *amount));
    let off = paper.allowances.iter().map(|extra| (extra.tax, -extra.amount));
    let on = paper.charges.iter().map(|extra| (extra.tax, extra.amount));
    for (tax, amount) in of_lines.chain(off).chain(on) {
        match groups.iter_mut().find(|(known, _)| *known == tax) {
            Some((_, sum)) => *sum = within(i128::from(*sum) + i128::from(amount))?,
            None => groups.push((tax, amount)),
        }
    }
    let mut rows = Vec::with_capacity(groups.len());
    for (tax, sum) in groups {
        let amount = taxed(sum, tax.rate, paper.prices).ok_or(TooLarge::Sum)?;
        let base = match paper.prices {
            Prices::Net => sum,
            Prices::Gross => sum - amount,
        };
        rows.push(TaxRow { tax, base, amount });
    }
    let tax_total = add(rows.iter().map(|row| row.amount))?;
    let net = add(rows.iter().map(|row| row.base))?;
    let gross = add([net, tax_total].into_iter())?;
    let open = add([gross, -paper.paid].into_iter())?;
    let due = match paper.payable_rounding {
        None => open,
        Some(step) => {
            let steps = Fraction::whole(open).by(Fraction::whole(step)).and_then(Fraction::rounded);
            steps.and_then(|steps| steps.checked_mul(step)).ok_or(TooLarge::Sum)?
        }
    };
    Ok(Sums {
        lines,
        lines_total,
        allowances_total,
        charges_total,
        net,
        tax: rows,
        tax_total,
        gross,
        paid: paper.paid,
        rounding: due - open,
        due,
    })
}

/// What a line comes to: quantity × price ÷ base quantity, rounded, less what is taken off, and what
/// is put on.
fn amount(line: &Line, currency: Currency) -> Option<i64> {
    let unit = Fraction::whole(10_i64.checked_pow(currency.decimals())?);
    let exact = Fraction::decimal(line.quantity)?
        .times(Fraction::decimal(line.unit_price)?)?
        .by(Fraction::decimal(line.base_quantity)?)?
        .times(unit)?;
    let amount =
        i128::from(exact.rounded()?) - i128::from(line.allowance) + i128::from(line.charge);
    within(amount).ok()
}

/// The tax on, or in, a sum.
fn taxed(sum: i64, rate: Decimal, prices: Prices) -> Option<i64> {
    let rate = Fraction::decimal(rate)?;
    let whole = match prices {
        Prices::Net => Fraction::whole(100),
        Prices::Gross => Fraction::decimal(Decimal::ONE_HUNDRED)?.plus(rate)?,
    };
    Fraction::whole(sum).times(rate)?.by(whole)?.rounded()
}

/// What an amount that holds the tax is without it: 100 parts of 100 and the rate, rounded; `None` when
/// it is too large.
pub fn without_tax(amount: i64, rate: Decimal) -> Option<i64> {
    let hundred = Fraction::whole(100);
    let part = hundred.by(hundred.plus(Fraction::decimal(rate)?)?)?;
    Fraction::whole(amount).times(part)?.rounded()
}

fn add(mut amounts: impl Iterator<Item = i64>) -> Result<i64, TooLarge> {
    within(
        amounts
            .try_fold(0_i128, |sum, amount| sum.checked_add(i128::from(amount)))
            .ok_or(TooLarge::Sum)?,
    )
}

fn within(amount: i128) -> Result<i64, TooLarge> {
    match i64::try_from(amount) {
        Ok(amount) if (-MOST..=MOST).contains(&amount) => Ok(amount),
        _ => Err(TooLarge::Sum),
    }
}
