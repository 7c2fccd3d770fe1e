//! Money as people type it: a currency by its letters, an amount with its decimals.

use crate::error::Problems;
use crate::kinds::Currency;

/// A currency as typed; what is none is a problem at its field.
pub fn currency(p: &mut Problems, field: &str, typed: &str) -> Option<Currency> {
    let found = Currency::parse(typed);
    if found.is_none() {
        let code = typed.trim();
        let words = if code.is_empty() {
            "An amount needs its currency, as in EUR.".to_owned()
        } else {
            format!("\u{201c}{code}\u{201d} is no currency. Write its three letters, as in EUR.")
        };
        p.add(field, "no_such_currency", words);
    }
    found
}

/// An amount of 0 or more as typed, in smallest units; what is none is a problem at its field.
pub fn amount_or_nothing(
    p: &mut Problems,
    field: &str,
    typed: &str,
    currency: Currency,
) -> Option<i64> {
    let typed = typed.trim();
    let minor = currency.minor(typed);
    if minor.is_none() {
        let (code, words) = if typed.is_empty() {
            ("empty", "The amount is empty.".to_owned())
        } else if typed.contains('.') && typed.contains(',') {
            let words = format!(
                "Write \u{201c}{typed}\u{201d} with one point or comma only, before the decimals, as in 1234.50."
            );
            ("no_amount", words)
        } else if typed.starts_with(['-', '\u{2212}']) {
            ("negative", "An amount is 0 or more.".to_owned())
        } else {
            let words = format!(
                "\u{201c}{typed}\u{201d} is not an amount in {}: 0 or more, with at most {} decimals.",
                currency.code(),
                currency.decimals()
            );
            ("no_amount", words)
        };
        p.add(field, code, words);
    }
    minor
}

/// The same, and more than 0.
pub fn amount(p: &mut Problems, field: &str, typed: &str, currency: Currency) -> Option<i64> {
    let minor = amount_or_nothing(p, field, typed, currency)?;
    if minor == 0 {
        p.add(field, "nothing", "The amount is more than 0.");
    }
    (minor > 0).then_some(minor)
}
