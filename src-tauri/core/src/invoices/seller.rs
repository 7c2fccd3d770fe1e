//! Who issues invoices: the coach, as the law wants to read it, and how they are numbered.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::money::Prices;
use crate::payers;
use crate::settings;

/// Where it is kept among the settings.
const RECORD: &str = "seller";

/// The issuer of invoices; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Seller {
    /// Full name, or the business\u{2019}s.
    pub name: String,
    /// Postal address, several lines.
    pub address: String,
    /// The country, two letters of ISO 3166-1.
    pub country: String,
    /// The number for value added tax; empty without one.
    pub vat_id: String,
    /// The tax office\u{2019}s number; empty without one.
    pub tax_id: String,
    /// E-mail address.
    pub email: String,
    /// Telephone number.
    pub phone: String,
    /// Whose account it is, if another name.
    pub account_name: String,
    /// The account, an IBAN (ISO 13616), or the number as banks there write it.
    pub account: String,
    /// The bank, by its BIC (ISO 9362), or by name.
    pub bank: String,
    /// Words at the end of every invoice.
    pub words: String,
    /// Whether prices are without or with tax.
    pub prices: Prices,
    /// What numbers begin with, as in "INV"; empty for nothing.
    pub series: String,
}

/// The issuer as kept; empty while not set.
///
/// # Errors
/// `Storage`.
pub fn seller(db: &Reading<'_>) -> Result<Seller> {
    settings::kept(db, RECORD).map(Option::unwrap_or_default)
}

/// Sets the issuer. What was issued keeps the words it was issued with.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set_seller(db: &Writing<'_>, given: Seller) -> Result<Seller> {
    let mut p = Problems::new();
    let address = p.note("address", &given.address, "The address");
    if address.lines().count() > 6 || address.chars().count() > 400 {
        p.add("address", "too_long", "An address has room for 6 lines.");
    }
    if address.is_empty() {
        p.add("address", "empty", "The address is empty.");
    }
    let account: String = given.account.trim().to_owned();
    if let Some(words) = wrong_iban(&account) {
        p.add("account", "no_iban", words);
    }
    let series = given.series.trim().to_owned();
    if series.chars().count() > 12
        || !series.chars().all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '/')
    {
        let words = "Up to 12 letters, digits, - and /.";
        p.add("series", "no_series", words);
    }
    let words = p.note("words", &given.words, "The words at the end");
    if words.chars().count() > 1000 {
        p.add("words", "too_long", "There is room for 1000 characters.");
    }
    let read = Seller {
        name: p.name("name", &given.name, "The name"),
        address,
        country: payers::country(&mut p, "country", &given.country),
        vat_id: p.line("vat_id", &given.vat_id, "The number"),
        tax_id: p.line("tax_id", &given.tax_id, "The number"),
        email: p.email("email", &given.email),
        phone: p.line("phone", &given.phone, "The telephone number"),
        account_name: p.line("account_name", &given.account_name, "The account\u{2019}s name"),
        account,
        bank: p.line("bank", &given.bank, "The bank"),
        words,
        prices: given.prices,
        series,
    };
    p.done()?;
    settings::keep(db, RECORD, &read)?;
    db.label("Who issues invoices is set");
    Ok(read)
}

/// Why an account that looks like an IBAN is none (ISO 13616: two letters, two digits that check to
/// 1 modulo 97 by ISO 7064); `None` when it is one, or does not look like one.
fn wrong_iban(account: &str) -> Option<String> {
    if !looks_like_iban(account) || is_iban(account) {
        return None;
    }
    Some(format!("\u{201c}{account}\u{201d} is no IBAN: a digit or letter is wrong or missing."))
}

fn looks_like_iban(account: &str) -> bool {
    let mut chars = account.chars();
    let letters = chars.by_ref().take(2).filter(char::is_ascii_alphabetic).count();
    letters == 2 && chars.take(2).filter(char::is_ascii_digit).count() == 2
}

/// Whether an account is an IBAN with right check digits.
pub(crate) fn is_iban(account: &str) -> bool {
    let plain: String =
        account.chars().filter(|c| !c.is_whitespace()).map(|c| c.to_ascii_uppercase()).collect();
    if !(15..=34).contains(&plain.len()) || !plain.is_ascii() || !looks_like_iban(&plain) {
        return false;
    }
    let (head, tail) = plain.split_at(4);
    let mut rest = 0_u32;
    for c in tail.chars().chain(head.chars()) {
        let Some(value) = c.to_digit(36) else { return false };
        rest = if value > 9 { (rest * 100 + value) % 97 } else { (rest * 10 + value) % 97 };
    }
    rest == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ibans_check_to_one() {
        // Accounts of EPC069-12 examples and of public guides (ISO 13616).
        for iban in
            ["DE33100205000001194700", "DE71 1102 2033 0123 4567 89", "CH6431961000004421557"]
        {
            assert!(is_iban(iban), "{iban}");
            let mut wrong: Vec<char> = iban.chars().collect();
            let last = wrong.len() - 1;
            wrong[last] = if wrong[last] == '0' { '1' } else { '0' };
            let wrong: String = wrong.into_iter().collect();
            assert!(!is_iban(&wrong), "{wrong}");
            assert!(wrong_iban(&wrong).is_some());
        }
        assert_eq!(wrong_iban("12345678 at the harbour bank"), None, "not every country has IBANs");
    }
}
