//! Exact fractions of whole numbers, and the one way in which they are rounded.

use rust_decimal::Decimal;

/// A fraction that is worked out exactly; `None` from a step means that it became too large.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fraction {
    over: i128,
    /// Always above 0.
    under: i128,
}

impl Fraction {
    /// A whole number.
    pub fn whole(n: i64) -> Self {
        Self { over: i128::from(n), under: 1 }
    }

    /// A decimal number, exactly; `None` for more than 18 decimals.
    pub fn decimal(number: Decimal) -> Option<Self> {
        let number = number.normalize();
        let under = 10_i128.checked_pow(number.scale()).filter(|_| number.scale() <= 18)?;
        Some(Self { over: number.mantissa(), under })
    }

    /// With another added.
    pub fn plus(self, other: Self) -> Option<Self> {
        let over =
            self.over.checked_mul(other.under)?.checked_add(other.over.checked_mul(self.under)?)?;
        Some(Self { over, under: self.under.checked_mul(other.under)? })
    }

    /// Times another.
    pub fn times(self, other: Self) -> Option<Self> {
        // Shortened crosswise first, so that less becomes too large.
        let (a, d) = shortened(self.over, other.under);
        let (c, b) = shortened(other.over, self.under);
        Some(Self { over: a.checked_mul(c)?, under: b.checked_mul(d)? })
    }

    /// Divided by another; `None` for 0 as well.
    pub fn by(self, other: Self) -> Option<Self> {
        let turned = if other.over < 0 {
            Self { over: -other.under, under: other.over.checked_neg()? }
        } else {
            Self { over: other.under, under: other.over }
        };
        if turned.under == 0 { None } else { self.times(turned) }
    }

    /// The nearest whole number; a half goes away from zero, as EN 16931 asks of an invoice's sums.
    ///
    /// ```
    /// use carryover_core::money::Fraction;
    /// let half = |n| Fraction::whole(n).by(Fraction::whole(2)).and_then(Fraction::rounded);
    /// assert_eq!((half(1), half(-1), half(3)), (Some(1), Some(-1), Some(2)));
    /// ```
    pub fn rounded(self) -> Option<i64> {
        let (whole, rest) = (self.over / self.under, self.over % self.under);
        let up = rest.abs() >= self.under - rest.abs();
        i64::try_from(whole + if up { rest.signum() } else { 0 }).ok()
    }
}

fn shortened(over: i128, under: i128) -> (i128, i128) {
    let (mut a, mut b) = (over.unsigned_abs(), under.unsigned_abs());
    while b != 0 {
        (a, b) = (b, a % b);
    }
    match i128::try_from(a) {
        Ok(common) if common > 1 => (over / common, under / common),
        _ => (over, under),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// round2 of money: the cases in which ways of rounding differ. Half away from zero is the method
    /// of EN 16931's BR-CO-17 (`abs()`, then half up); the values were worked with Python's decimal
    /// (`ROUND_HALF_UP`).
    #[test]
    fn a_half_goes_away_from_zero() {
        for (number, cents) in [
            ("0.125", 13),
            ("1.005", 101),
            ("-0.125", -13),
            ("0.135", 14),
            ("2.675", 268),
            ("2.6749999999", 267),
            ("365.125", 36_513),
            ("0", 0),
        ] {
            let number = Fraction::decimal(number.parse().expect("a number")).expect("it fits");
            let cents_of = number.times(Fraction::whole(100)).and_then(Fraction::rounded);
            assert_eq!(cents_of, Some(cents));
        }
    }

    #[test]
    fn what_is_too_large_is_none() {
        let most = Fraction::whole(i64::MAX);
        let twice = most.times(Fraction::whole(2)).expect("an i128 holds it");
        assert_eq!(twice.rounded(), None);
        assert_eq!(most.times(most).and_then(|f| f.times(most)), None);
        assert_eq!(most.by(Fraction::whole(0)), None);
    }
}
