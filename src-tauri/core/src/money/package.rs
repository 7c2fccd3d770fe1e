//! What a prepaid package still owes, in lessons and in money, and how much of its price each lesson
//! releases.
//!
//! The price is released by cumulative rounding: after k of n lessons `round(price × k ÷ n)` has been,
//! and each lesson releases the difference. So no cent drifts, and the last lesson leaves nothing
//! owed. A bonus lesson, or lessons moved in from elsewhere, spread what is owed over all lessons that
//! are open from then on.

use super::Fraction;

/// What a package owes. Money in the currency's smallest unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Owed {
    /// What is spread over `of` lessons since the last bonus, or since it was sold.
    price: i64,
    of: u32,
    used: u32,
    money: i64,
}

impl Owed {
    /// A package as sold: `None` for no lessons, or a price below 0.
    pub fn sold(price: i64, lessons: u32) -> Option<Self> {
        (lessons > 0 && price >= 0).then_some(Self { price, of: lessons, used: 0, money: price })
    }

    /// Lessons still owed.
    pub fn lessons(self) -> u32 {
        self.of - self.used
    }

    /// Money still owed in lessons.
    pub fn money(self) -> i64 {
        self.money
    }

    /// Money still owed when only so many percent of the lessons are expected to be taken; `None` when
    /// the sums become too large.
    pub fn money_when_taken(self, percent: u32) -> Option<i64> {
        let expected = u64::from(self.of) * u64::from(percent);
        let expected = u32::try_from(expected.div_ceil(100)).ok()?.max(self.used).max(1);
        Some(self.price - earned_with_breakage(self.price, self.used, expected)?)
    }

    /// Releases so many lessons (given, lost by a late call-off, expired, paid back, moved elsewhere),
    /// and gives what of the price goes with them. `None` when fewer are owed.
    ///
    /// ```
    /// use carryover_core::money::Owed;
    /// let mut pack = Owed::sold(10_000, 3).unwrap();
    /// assert_eq!([pack.release(1), pack.release(1), pack.release(1)], [Some(3333), Some(3334), Some(3333)]);
    /// assert_eq!((pack.lessons(), pack.money(), pack.release(1)), (0, 0, None));
    /// ```
    pub fn release(&mut self, lessons: u32) -> Option<i64> {
        let used = self.used.checked_add(lessons).filter(|used| *used <= self.of)?;
        let part = Fraction::whole(i64::from(used)).by(Fraction::whole(i64::from(self.of)))?;
        let released = Fraction::whole(self.price).times(part)?.rounded()?;
        let left = self.price - released;
        let amount = self.money - left;
        (self.used, self.money) = (used, left);
        Some(amount)
    }

    /// Takes in lessons with the money that comes with them: 0 for a bonus. `None` when there are too
    /// many.
    pub fn take_in(&mut self, lessons: u32, money: i64) -> Option<()> {
        let of = self.lessons().checked_add(lessons)?;
        let price = self.money.checked_add(money)?;
        *self = Self { price, of, used: 0, money: price };
        Some(())
    }
}

/// What is paid back of a package with `left` lessons, by the policy *pro rata*: what is still owed.
pub fn pro_rata(owed: Owed) -> i64 {
    owed.money()
}

/// What is paid back by the policy *used lessons at the single price*: the price less so many single
/// lessons, and nothing when these cost more. `None` when the sums become too large.
pub fn at_single_price(price: i64, used: u32, single: i64) -> Option<i64> {
    Some(price.checked_sub(i64::from(used).checked_mul(single)?)?.max(0))
}

/// What of a price counts as earned after so many lessons when only `expected` of them are expected to
/// be used (breakage in proportion, ASC 606-10-55-48, IFRS 15 B46).
pub fn earned_with_breakage(price: i64, used: u32, expected: u32) -> Option<i64> {
    let part = Fraction::whole(i64::from(used)).by(Fraction::whole(i64::from(expected)))?;
    Some(Fraction::whole(price).times(part)?.rounded()?.min(price))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn each(price: i64, lessons: u32) -> Vec<i64> {
        let mut pack = Owed::sold(price, lessons).unwrap();
        (0..lessons).map(|_| pack.release(1).unwrap()).collect()
    }

    /// Worked by hand, half away from zero.
    #[test]
    fn releases_as_worked_by_hand() {
        assert_eq!(each(10_000, 3), [3333, 3334, 3333]);
        assert_eq!(each(70_000, 9), [7778, 7778, 7777, 7778, 7778, 7778, 7777, 7778, 7778]);
        assert_eq!(each(49_900, 12)[..3], [4158, 4159, 4158]);
        // A gift: nothing was paid for it, all of its lessons are owed.
        assert_eq!(each(0, 2), [0, 0]);
        assert_eq!(Owed::sold(100, 0), None);
    }

    /// Packs of 675.00 for ten (list price 75.00) with six used, and of 340.00 for five with two.
    #[test]
    fn what_is_paid_back_follows_the_policy() {
        for (price, lessons, used, rata, single) in
            [(67_500, 10, 6, 27_000, 22_500), (34_000, 5, 2, 20_400, 19_000), (34_000, 5, 5, 0, 0)]
        {
            let mut pack = Owed::sold(price, lessons).unwrap();
            pack.release(used).unwrap();
            assert_eq!(pro_rata(pack), rata);
            assert_eq!(at_single_price(price, used, 7_500), Some(single));
        }
    }

    /// A pack of ten for 720.00 of which nine are expected to be used, then eight.
    #[test]
    fn breakage_is_earned_in_proportion() {
        let earned = |used, expected| earned_with_breakage(72_000, used, expected).unwrap();
        assert_eq!(
            [1, 3, 6, 9, 10].map(|used| earned(used, 9)),
            [8_000, 24_000, 48_000, 72_000, 72_000]
        );
        assert_eq!(earned(3, 8) - earned(3, 9), 3_000, "the estimate is caught up");
        let mut pack = Owed::sold(72_000, 10).unwrap();
        assert_eq!(pack.release(3), Some(21_600));
        assert_eq!((pack.money(), pack.money_when_taken(90)), (50_400, Some(48_000)));
        assert_eq!(pack.money_when_taken(100), Some(50_400));
        assert_eq!(pack.money_when_taken(1), Some(0), "all that was expected is taken");
    }

    proptest! {
        #[test]
        fn lessons_and_money_stay_in_step(
            price in 0_i64..100_000_000,
            lessons in 1_u32..60,
            steps in prop::collection::vec((0_u32..4, 0_u32..5, 0_i64..100_000), 0..40),
        ) {
            let mut pack = Owed::sold(price, lessons).unwrap();
            let (mut put_in, mut released) = (price, 0);
            for (what, many, money) in steps {
                if what == 0 {
                    pack.take_in(many, money * i64::from(many.min(1))).unwrap();
                    put_in += money * i64::from(many.min(1));
                } else if let Some(amount) = pack.release(many) {
                    prop_assert!(amount >= 0, "a lesson never costs money back");
                    released += amount;
                }
                prop_assert!(pack.money() >= 0);
                prop_assert_eq!(pack.money() + released, put_in, "nothing is lost");
                if pack.lessons() == 0 {
                    prop_assert_eq!(pack.money(), 0, "no lessons owed, nothing owed");
                }
            }
        }
    }
}
