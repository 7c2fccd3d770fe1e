//! Amounts as banks write them: with a point or a comma before the decimals, thousands set apart by the
//! other, by blanks or by an apostrophe, a sign before or after.

use super::BankDecimals;
use crate::kinds::Currency;

/// What amounts say about the mark before their decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Marks {
    /// No amount depends on it.
    NotNeeded,
    /// It can only be this one.
    One(BankDecimals),
    /// Some can only be the one, some only the other.
    Mixed,
    /// Every amount could be both.
    Undecidable,
}

/// An amount as it stands in a cell.
struct Written {
    negative: bool,
    /// Digits, points, commas, and `_` for other signs between thousands.
    body: String,
    code: Option<Currency>,
}

/// The cell taken apart; `None` when it is no amount.
fn written(cell: &str) -> Option<Written> {
    let mut text = cell.trim();
    let mut negative = false;
    if let Some(inner) = text.strip_prefix('(').and_then(|text| text.strip_suffix(')')) {
        (text, negative) = (inner.trim(), true);
    }
    let mut code = None;
    // A sign and a currency stand on either side, in either order.
    for _ in 0..2 {
        if let Some(rest) = text.strip_prefix(['-', '\u{2212}']) {
            (text, negative) = (rest.trim(), true);
        } else if let Some(rest) = text.strip_suffix(['-', '\u{2212}']) {
            (text, negative) = (rest.trim(), true);
        } else if let Some(rest) = text.strip_prefix('+').or_else(|| text.strip_suffix('+')) {
            text = rest.trim();
        }
        let signs = ['\u{20ac}', '$', '\u{a3}'];
        if let Some(rest) = text.strip_prefix(signs).or_else(|| text.strip_suffix(signs)) {
            text = rest.trim();
        }
        let letters = |part: &str| part.len() == 3 && part.bytes().all(|b| b.is_ascii_alphabetic());
        if let Some((head, rest)) = text.split_at_checked(3)
            && letters(head)
        {
            code = Some(Currency::parse(head)?);
            text = rest.trim();
        } else if let Some((rest, tail)) = text.split_at_checked(text.len().saturating_sub(3))
            && letters(tail)
        {
            code = Some(Currency::parse(tail)?);
            text = rest.trim();
        }
    }
    let mut body = String::new();
    for c in text.chars() {
        match c {
            '0'..='9' | '.' | ',' => body.push(c),
            '\'' | '\u{2019}' => body.push('_'),
            c if c.is_whitespace() => body.push('_'),
            _ => return None,
        }
    }
    let ends = body.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == ',')
        && body.ends_with(|c: char| c.is_ascii_digit())
        && body.bytes().any(|b| b.is_ascii_digit());
    ends.then_some(Written { negative, body, code })
}

/// Whether a cell looks like an amount.
pub(super) fn is_amount(cell: &str) -> bool {
    written(cell).is_some()
}

/// Whether it has decimals or is set apart, as sums of money mostly are, and numbers of accounts not.
pub(super) fn is_money(cell: &str) -> bool {
    written(cell).is_some_and(|written| written.body.contains(['.', ',']))
}

/// The currency that stands in the cell itself.
pub(super) fn currency_in(cell: &str) -> Option<Currency> {
    written(cell).and_then(|written| written.code)
}

/// What some amounts say about the mark before their decimals, where a currency has at most so many.
pub(super) fn marks<'a>(cells: impl Iterator<Item = &'a str>, decimals: u32) -> Marks {
    let (mut point, mut comma, mut open) = (false, false, false);
    for written in cells.filter_map(written) {
        match mark_of(&written.body, decimals) {
            Marks::One(BankDecimals::Point) => point = true,
            Marks::One(BankDecimals::Comma) => comma = true,
            Marks::Undecidable => open = true,
            _ => {}
        }
    }
    match (point, comma, open) {
        (true, true, _) => Marks::Mixed,
        (true, false, _) => Marks::One(BankDecimals::Point),
        (false, true, _) => Marks::One(BankDecimals::Comma),
        (false, false, true) => Marks::Undecidable,
        (false, false, false) => Marks::NotNeeded,
    }
}

fn mark_of(body: &str, decimals: u32) -> Marks {
    let mark =
        |c: char| Marks::One(if c == '.' { BankDecimals::Point } else { BankDecimals::Comma });
    let other = |c: char| mark(if c == '.' { ',' } else { '.' });
    let Some(last) = body.rfind(['.', ',']) else { return Marks::NotNeeded };
    let c = if body[last..].starts_with('.') { '.' } else { ',' };
    let (before, after) = (&body[..last], &body[last + 1..]);
    if before.contains(c) {
        // Twice: it sets thousands apart.
        return other(c);
    }
    if before.contains(['.', ',', '_']) || after.len() != 3 {
        return mark(c);
    }
    if before.is_empty() || before.starts_with('0') || before.len() > 3 {
        return mark(c);
    }
    // "1.234": thousands, unless the currency has three decimals.
    if decimals < 3 { other(c) } else { Marks::Undecidable }
}

/// An amount in smallest units, below 0 when it has a minus; otherwise why it is none.
pub(super) fn minor(cell: &str, mark: BankDecimals, currency: Currency) -> Result<i64, String> {
    let no = || format!("“{cell}” is not read as an amount in {}.", currency.code());
    let written = written(cell).ok_or_else(no)?;
    let (mark, thousands) = match mark {
        BankDecimals::Comma => (',', '.'),
        // Without a mark anywhere it does not matter which one is meant.
        BankDecimals::Point | BankDecimals::Unknown => ('.', ','),
    };
    let (whole, fraction) = match written.body.split_once(mark) {
        Some((whole, fraction)) => (whole, fraction),
        None => (written.body.as_str(), ""),
    };
    let whole = ungrouped(whole, thousands).ok_or_else(no)?;
    if !fraction.bytes().all(|b| b.is_ascii_digit()) {
        return Err(no());
    }
    let plain = if fraction.is_empty() { whole } else { format!("{whole}.{fraction}") };
    let minor = currency.minor(&plain).ok_or_else(no)?;
    Ok(if written.negative { -minor } else { minor })
}

/// The digits before the decimals; `None` where what stands between them does not set thousands apart
/// (or, in front of the last three, pairs, as in India).
fn ungrouped(whole: &str, thousands: char) -> Option<String> {
    if whole.is_empty() {
        return Some("0".to_owned());
    }
    let sign = whole.chars().find(|c| !c.is_ascii_digit());
    let Some(sign) = sign else { return Some(whole.to_owned()) };
    let groups: Vec<&str> = whole.split(sign).collect();
    let [first, between @ .., last] = groups.as_slice() else { return None };
    let digits = groups.iter().all(|group| group.bytes().all(|b| b.is_ascii_digit()));
    let fits = |long: usize| between.iter().all(|group| group.len() == long);
    let fine = digits
        && (sign == thousands || sign == '_')
        && last.len() == 3
        && ((1..=3).contains(&first.len()) && fits(3) || (1..=2).contains(&first.len()) && fits(2));
    fine.then(|| groups.concat())
}
