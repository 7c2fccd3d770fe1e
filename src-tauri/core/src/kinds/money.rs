//! Money: a currency by its ISO 4217 code, and amounts as whole numbers of its smallest unit.

use std::fmt;

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// A currency that money can be asked for in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Currency(iso_currency::Currency);

/// The most of one amount, in the currency itself: a billion.
const MOST: i64 = 1_000_000_000;

/// A number as typed, 0 or more, with a point or a comma before the decimals: "12.50", "12,5", "12".
/// `None` for anything else.
pub fn decimal(typed: &str) -> Option<Decimal> {
    let typed = typed.trim().replace(',', ".");
    let plain = !typed.is_empty() && typed.chars().all(|c| c.is_ascii_digit() || c == '.');
    plain.then(|| typed.parse().ok()).flatten()
}

impl Currency {
    /// The currency with this code, in capitals or not; `None` for a code that ISO 4217 does not
    /// list, or lists for metals, tests and the like, which have no unit.
    ///
    /// ```
    /// use carryover_core::kinds::Currency;
    /// assert_eq!(Currency::parse("eur").map(|c| c.decimals()), Some(2));
    /// assert_eq!(Currency::parse("XAU"), None);
    /// ```
    pub fn parse(code: &str) -> Option<Self> {
        let found = iso_currency::Currency::from_code(&code.trim().to_ascii_uppercase())?;
        found.exponent().map(|_| Self(found))
    }

    /// Its three letters.
    pub fn code(self) -> &'static str {
        self.0.code()
    }

    /// How many decimals its amounts have.
    pub fn decimals(self) -> u32 {
        self.0.exponent().map_or(0, u32::from)
    }

    /// An amount as typed, with a point or a comma before the decimals, in smallest units: "12.50",
    /// "12,5", "12". `None` for anything else: less than nothing, more decimals than the currency
    /// has, more than a billion.
    ///
    /// ```
    /// use carryover_core::kinds::Currency;
    /// let euro = Currency::parse("EUR").unwrap();
    /// assert_eq!(euro.minor("12,5"), Some(1250));
    /// assert_eq!(euro.minor("12.505"), None, "a cent is not divided");
    /// ```
    pub fn minor(self, typed: &str) -> Option<i64> {
        let amount = decimal(typed)?;
        let minor = amount.checked_mul(Decimal::from(10_i64.pow(self.decimals())))?;
        (minor.fract().is_zero() && amount <= Decimal::from(MOST)).then(|| minor.to_i64()).flatten()
    }

    /// An amount in smallest units, as it is written with all its decimals: "12.50".
    pub fn plain(self, minor: i64) -> String {
        Decimal::new(minor, self.decimals()).to_string()
    }

    /// The same with the currency after it: "12.50 EUR".
    pub fn words(self, minor: i64) -> String {
        format!("{} {}", self.plain(minor), self.code())
    }

    /// What [`words`](Self::words) says, read again: the currency, and how much in smallest units.
    pub fn of_words(words: &str) -> Option<(Self, i64)> {
        let (amount, code) = words.rsplit_once(' ')?;
        let currency = Self::parse(code)?;
        Some((currency, currency.minor(amount)?))
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn currency(code: &str) -> Currency {
        Currency::parse(code).expect("a currency")
    }

    #[test]
    fn decimals_are_those_of_iso_4217() {
        // ISO 4217:2015, list one, column "minor unit".
        for (code, decimals) in
            [("USD", 2), ("JPY", 0), ("KRW", 0), ("BHD", 3), ("TND", 3), ("CLF", 4)]
        {
            assert_eq!(currency(code).decimals(), decimals, "{code}");
        }
        for none in ["", "EU", "EURO", "XAU", "XTS", "AAA"] {
            assert_eq!(Currency::parse(none), None, "{none}");
        }
    }

    #[test]
    fn amounts_are_read_and_written_back() {
        for (code, typed, minor, plain) in [
            ("EUR", "0", 0, "0.00"),
            ("EUR", " 12.5 ", 1250, "12.50"),
            ("USD", "1000000000", 100_000_000_000, "1000000000.00"),
            ("JPY", "1500", 1500, "1500"),
            ("BHD", "1,005", 1005, "1.005"),
        ] {
            assert_eq!(currency(code).minor(typed), Some(minor), "{code} {typed}");
            assert_eq!(currency(code).plain(minor), plain);
        }
        for (code, typed) in [
            ("EUR", ""),
            ("EUR", "-1"),
            ("EUR", "1.000,50"),
            ("EUR", "1e3"),
            ("EUR", "0.001"),
            ("JPY", "0.5"),
            ("EUR", "1000000000.01"),
            ("EUR", "99999999999999999999999999999999"),
        ] {
            assert_eq!(currency(code).minor(typed), None, "{code} {typed}");
        }
    }
}
