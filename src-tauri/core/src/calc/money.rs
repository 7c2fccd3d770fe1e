//! `split` and `invoice`: an amount over shares, and the sums of an invoice.

use rust_decimal::Decimal;
use serde_json::{Value, json};

use super::{CalcRefusal, fields::Fields};
use crate::kinds::Currency;
use crate::money::{
    Category, Extra, Line, Paper, Prices, Sums, Tax, TooLarge, split as split_over, sums,
};

/// The most shares, and the most lines.
const MOST: usize = 10_000;

pub fn split(mut fields: Fields) -> Result<Value, CalcRefusal> {
    let currency = currency(&mut fields);
    let amount = currency.and_then(|currency| amount(&mut fields, "amount", currency, true));
    if currency.is_none() {
        fields.text("amount");
    }
    let shares = fields.wholes("shares");
    let parts = amount.zip(shares).and_then(|(amount, shares)| {
        if shares.len() > MOST {
            fields.refuse("shares", "too_many", format!("there are at most {MOST} shares"));
            return None;
        }
        let parts = split_over(amount, &shares);
        if parts.is_none() {
            let words = "the shares sum to 0, so that nobody would get anything".to_owned();
            fields.refuse("shares", "no_shares", words);
        }
        parts
    });
    fields.done()?;
    let currency = currency.zip(parts);
    Ok(currency.map_or(Value::Null, |(currency, parts)| {
        let parts: Vec<String> = parts.into_iter().map(|part| currency.plain(part)).collect();
        json!({ "parts": parts })
    }))
}

pub fn invoice(mut fields: Fields) -> Result<Value, CalcRefusal> {
    let known = currency(&mut fields);
    // Only so that everything else is read and its problems are told too.
    let currency = known.or_else(|| Currency::parse("EUR"));
    let Some(currency) = currency else { return Ok(Value::Null) };
    let prices = fields.word("prices", &[("net", Prices::Net), ("gross", Prices::Gross)]);
    let lines = fields.each("lines", |fields| line(fields, currency));
    if let Some(lines) = &lines
        && (lines.is_empty() || lines.len() > MOST)
    {
        let words =
            format!("an invoice has at least one line and at most {MOST} (EN 16931, BR-16)");
        fields.refuse("lines", "out_of_range", words);
    }
    let allowances = fields.each_or_none("allowances", |fields| extra(fields, currency));
    let charges = fields.each_or_none("charges", |fields| extra(fields, currency));
    let paid = amount_or_zero(&mut fields, "paid", currency);
    let rounding = if fields.is_left_out("payable_rounding") {
        Some(None)
    } else {
        step(&mut fields, currency).map(Some)
    };
    let paper =
        known.zip(prices).zip(lines.zip(allowances.zip(charges))).zip(paid.zip(rounding)).map(
            |(((currency, prices), (lines, (allowances, charges))), (paid, payable_rounding))| {
                Paper { currency, prices, lines, allowances, charges, paid, payable_rounding }
            },
        );
    let found = paper.as_ref().map(sums);
    match found {
        Some(Err(TooLarge::Line(at))) => {
            let words = "this line comes to more than can be counted".to_owned();
            fields.refuse(&format!("lines[{at}]"), "too_large", words);
        }
        Some(Err(TooLarge::Sum)) => {
            fields.refuse("lines", "too_large", "the sums are more than can be counted".to_owned());
        }
        _ => {}
    }
    fields.done()?;
    Ok(found.and_then(Result::ok).map_or(Value::Null, |sums| answer(&sums, currency)))
}

fn answer(sums: &Sums, currency: Currency) -> Value {
    let plain = |minor: i64| currency.plain(minor);
    let lines: Vec<String> = sums.lines.iter().map(|line| plain(*line)).collect();
    let tax: Vec<Value> = sums
        .tax
        .iter()
        .map(|row| {
            json!({
                "category": row.tax.category.code(), "rate": row.tax.rate.normalize().to_string(),
                "base": plain(row.base), "amount": plain(row.amount),
            })
        })
        .collect();
    json!({
        "lines": lines, "lines_total": plain(sums.lines_total),
        "allowances_total": plain(sums.allowances_total), "charges_total": plain(sums.charges_total),
        "net": plain(sums.net), "tax": tax, "tax_total": plain(sums.tax_total),
        "gross": plain(sums.gross), "paid": plain(sums.paid), "rounding": plain(sums.rounding),
        "due": plain(sums.due),
    })
}

fn currency(fields: &mut Fields) -> Option<Currency> {
    let code = fields.text("currency")?;
    let found = Currency::parse(&code).filter(|currency| currency.code() == code);
    if found.is_none() {
        let words = format!("“{code}” is no currency code of ISO 4217, such as EUR");
        fields.refuse("currency", "no_currency", words);
    }
    found
}

fn line(fields: &mut Fields, currency: Currency) -> Option<Line> {
    let quantity = fields.decimal("quantity");
    let unit_price = fields.decimal("unit_price");
    if unit_price.is_some_and(|price| price.is_sign_negative() && !price.is_zero()) {
        let words =
            "a price is 0 or more; what is taken back has a negative quantity (EN 16931, BR-27)";
        fields.refuse("unit_price", "negative", words.to_owned());
    }
    let base_quantity = if fields.is_left_out("base_quantity") {
        Some(Decimal::ONE)
    } else {
        fields.decimal("base_quantity")
    };
    if base_quantity.is_some_and(|base| base <= Decimal::ZERO) {
        let words = "a price is for more than 0 of something".to_owned();
        fields.refuse("base_quantity", "out_of_range", words);
    }
    let base_quantity = base_quantity.filter(|base| *base > Decimal::ZERO);
    let allowance = amount_or_zero(fields, "allowance", currency);
    let charge = amount_or_zero(fields, "charge", currency);
    let tax = fields.inside("tax", tax);
    let ((quantity, unit_price), base_quantity) = quantity.zip(unit_price).zip(base_quantity)?;
    let ((allowance, charge), tax) = allowance.zip(charge).zip(tax)?;
    Some(Line { quantity, unit_price, base_quantity, allowance, charge, tax })
}

fn extra(fields: &mut Fields, currency: Currency) -> Option<Extra> {
    let amount = amount(fields, "amount", currency, false);
    let tax = fields.inside("tax", tax);
    amount.zip(tax).map(|(amount, tax)| Extra { amount, tax })
}

fn tax(fields: &mut Fields) -> Option<Tax> {
    let category = fields.word("category", &Category::CODES);
    let rate = fields.decimal("rate");
    let (category, rate) = category.zip(rate)?;
    if let Some(words) = category.refuses(rate) {
        fields.refuse("rate", "out_of_range", words.to_owned());
        return None;
    }
    Some(Tax { category, rate })
}

/// A cash step: an amount above 0.
fn step(fields: &mut Fields, currency: Currency) -> Option<i64> {
    let step = amount(fields, "payable_rounding", currency, false)?;
    if step == 0 {
        let words = "a cash step is above 0, such as 0.05".to_owned();
        fields.refuse("payable_rounding", "out_of_range", words);
        return None;
    }
    Some(step)
}

fn amount_or_zero(fields: &mut Fields, field: &str, currency: Currency) -> Option<i64> {
    if fields.is_left_out(field) { Some(0) } else { amount(fields, field, currency, false) }
}

/// An amount in smallest units, with no more decimals than the currency has.
fn amount(fields: &mut Fields, field: &str, currency: Currency, below: bool) -> Option<i64> {
    let typed = fields.decimal(field)?;
    let negative = typed.is_sign_negative() && !typed.is_zero();
    if negative && !below {
        fields.refuse(field, "negative", format!("“{field}” is 0 or more"));
        return None;
    }
    let minor = currency.minor(&typed.abs().normalize().to_string());
    if minor.is_none() {
        let words = format!(
            "“{field}” has at most {} decimals and is at most a billion {}",
            currency.decimals(),
            currency.code()
        );
        fields.refuse(field, "no_amount", words);
    }
    minor.map(|minor| if negative { -minor } else { minor })
}
