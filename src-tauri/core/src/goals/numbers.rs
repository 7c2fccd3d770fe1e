//! The numbers that stand beside a goal: a rate with its interval, a change with its interval and
//! its word, and what a criterion is worth.
//!
//! Everything here is a pure function of counts. One player's tries are not independent, so every
//! interval is a rough one; the five words exist so that a small difference is not read as a gain.
//! There are no p-values.

mod binomial;
mod quantile;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Tries at one thing, and how many of them were made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Count {
    /// How many tries were made.
    pub made: u32,
    /// How many tries there were.
    pub tries: u32,
}

impl Count {
    /// A count, or `None` when more were made than tried.
    pub fn new(made: u32, tries: u32) -> Option<Count> {
        (made <= tries).then_some(Count { made, tries })
    }

    /// The share that was made; `None` without tries, or when more were made than tried.
    pub fn rate(self) -> Option<f64> {
        (self.tries > 0 && self.made <= self.tries)
            .then(|| f64::from(self.made) / f64::from(self.tries))
    }
}

/// A rate with its Wilson score interval. All three are null where there is nothing to measure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Wilson {
    /// Made ÷ tries.
    pub rate: Option<f64>,
    /// The lower bound, at least 0.
    pub low: Option<f64>,
    /// The upper bound, at most 1.
    pub high: Option<f64>,
}

/// The Wilson score interval of a count at a level such as 0.95 (two-sided, no continuity
/// correction; Newcombe 1998, Statistics in Medicine 17:857–872, method 3).
///
/// All three numbers are `None` without tries, with more made than tried, or with a level that is
/// not strictly between 0 and 1.
pub fn wilson(count: Count, level: f64) -> Wilson {
    let bounds = count.rate().zip(quantile::two_sided(level)).map(|(rate, z)| {
        let (low, high) = bounds(count, z);
        (rate, low, high)
    });
    Wilson {
        rate: bounds.map(|b| positive_zero(b.0)),
        low: bounds.map(|b| positive_zero(b.1)),
        high: bounds.map(|b| positive_zero(b.2)),
    }
}

/// The Wilson bounds of a count with at least one try.
///
/// Where nothing or everything was made the outer bound is exactly 0 or 1; the formula would leave
/// a rounding error there, and a bound of `1e-17` is not the same claim as 0.
fn bounds(count: Count, z: f64) -> (f64, f64) {
    let (made, tries) = (f64::from(count.made), f64::from(count.tries));
    let missed = f64::from(count.tries - count.made);
    let middle = made + z * z / 2.0;
    let half = z * (made * missed / tries + z * z / 4.0).sqrt();
    let over = tries + z * z;
    let low = if count.made == 0 { 0.0 } else { ((middle - half) / over).clamp(0.0, 1.0) };
    let high =
        if count.made == count.tries { 1.0 } else { ((middle + half) / over).clamp(0.0, 1.0) };
    (low, high)
}

/// An interval; both bounds are null where it is undefined.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Interval {
    /// The lower bound.
    pub low: Option<f64>,
    /// The upper bound.
    pub high: Option<f64>,
}

/// What a change between two counts may be called.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum ChangeWord {
    /// The 95 % lower bound is above 0.
    #[serde(rename = "up")]
    Up,
    /// Only the 90 % lower bound is above 0.
    #[serde(rename = "leaning up")]
    LeaningUp,
    /// Neither interval leaves 0 out, or one side has no tries.
    #[serde(rename = "too few to tell")]
    TooFewToTell,
    /// Only the 90 % upper bound is below 0.
    #[serde(rename = "leaning down")]
    LeaningDown,
    /// The 95 % upper bound is below 0.
    #[serde(rename = "down")]
    Down,
}

impl ChangeWord {
    /// The word as the coach and the student read it.
    pub fn words(self) -> &'static str {
        match self {
            ChangeWord::Up => "up",
            ChangeWord::LeaningUp => "leaning up",
            ChangeWord::TooFewToTell => "too few to tell",
            ChangeWord::LeaningDown => "leaning down",
            ChangeWord::Down => "down",
        }
    }

    /// Whether the change is *down* or *leaning down*: what makes a goal slip.
    pub fn is_downward(self) -> bool {
        matches!(self, ChangeWord::Down | ChangeWord::LeaningDown)
    }
}

/// The change from one count to another, with its intervals and its word.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Change {
    /// The rate after minus the rate before.
    pub change: Option<f64>,
    /// The 95 % interval of the change.
    pub level95: Interval,
    /// The 90 % interval of the change.
    pub level90: Interval,
    /// What it may be called.
    pub word: ChangeWord,
}

/// The change from `before` to `after` by Newcombe's method 10 (Statistics in Medicine 1998,
/// 17:873–890), which joins the two Wilson intervals.
///
/// Without tries on either side every number is `None` and the word is *too few to tell*.
pub fn change(before: Count, after: Count) -> Change {
    let difference = difference(before, after);
    let at = |level: f64| {
        let bounds =
            difference.zip(quantile::two_sided(level)).map(|(d, z)| newcombe(d, before, after, z));
        Interval { low: bounds.map(|b| b.0), high: bounds.map(|b| b.1) }
    };
    let (level95, level90) = (at(0.95), at(0.90));
    let above = |bound: Option<f64>| bound.is_some_and(|b| b > 0.0);
    let below = |bound: Option<f64>| bound.is_some_and(|b| b < 0.0);
    let word = if above(level95.low) {
        ChangeWord::Up
    } else if below(level95.high) {
        ChangeWord::Down
    } else if above(level90.low) {
        ChangeWord::LeaningUp
    } else if below(level90.high) {
        ChangeWord::LeaningDown
    } else {
        ChangeWord::TooFewToTell
    };
    Change { change: difference, level95, level90, word }
}

/// The difference of the two rates, from one whole-number fraction so that 9/10 − 8/10 is 0.1.
fn difference(before: Count, after: Count) -> Option<f64> {
    before.rate().zip(after.rate())?;
    let top = i128::from(after.made) * i128::from(before.tries)
        - i128::from(before.made) * i128::from(after.tries);
    let under = i128::from(after.tries) * i128::from(before.tries);
    Some(positive_zero(top as f64 / under as f64))
}

/// The bounds of method 10, clamped to what a difference of two rates can be.
fn newcombe(difference: f64, before: Count, after: Count, z: f64) -> (f64, f64) {
    let rate = |c: Count| f64::from(c.made) / f64::from(c.tries);
    let ((l1, u1), (l2, u2)) = (bounds(after, z), bounds(before, z));
    let (p1, p2) = (rate(after), rate(before));
    let low = difference - (p1 - l1).hypot(u2 - p2);
    let high = difference + (u1 - p1).hypot(p2 - l2);
    (positive_zero(low.clamp(-1.0, 1.0)), positive_zero(high.clamp(-1.0, 1.0)))
}

/// What a criterion "made of tries" is worth for a player of a known true rate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Meaning {
    /// The chance that one block reaches it.
    pub one_block: Option<f64>,
    /// The chance that at least one of the blocks reaches it.
    pub any_block: Option<f64>,
}

/// How often a player who makes `true_rate` of their tries reaches `made` of `of`, in one block and
/// in at least one of `blocks`, were the tries independent.
///
/// Both are `None` for a criterion that is none: no tries, more to make than tries, or a rate
/// outside 0 to 1.
pub fn criterion(made: u32, of: u32, blocks: u32, true_rate: f64) -> Meaning {
    let one = (of > 0).then(|| binomial::at_least(made, of, true_rate)).flatten();
    Meaning {
        one_block: one,
        any_block: one
            .map(|p| {
                // 1 − (1 − p)^blocks, without losing a small p beside the 1.
                positive_zero(-(f64::from(blocks) * (-p).ln_1p()).exp_m1())
            })
            .map(|p| p.clamp(0.0, 1.0)),
    }
}

/// The same number, never written `-0`.
fn positive_zero(x: f64) -> f64 {
    if x == 0.0 { 0.0 } else { x }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn count(made: u32, tries: u32) -> Count {
        Count::new(made, tries).expect("a sound count")
    }

    fn close(a: Option<f64>, b: f64, within: f64) -> bool {
        a.is_some_and(|a| (a - b).abs() <= within)
    }

    /// Newcombe 1998, Statistics in Medicine 17:857–872, the four cases of its table, Wilson score
    /// without continuity correction, 95 % (four decimals, as printed there).
    #[test]
    fn wilson_gives_the_published_intervals() {
        for (made, tries, low, high) in [
            (81, 263, 0.2553, 0.3662),
            (15, 148, 0.0624, 0.1605),
            (0, 20, 0.0000, 0.1611),
            (1, 29, 0.0061, 0.1718),
        ] {
            let w = wilson(count(made, tries), 0.95);
            assert!(close(w.low, low, 5e-5), "{made}/{tries}: {w:?}");
            assert!(close(w.high, high, 5e-5), "{made}/{tries}: {w:?}");
        }
    }

    /// NIST/SEMATECH e-Handbook of Statistical Methods 7.2.4.1: 26 of 200, the Wilson form; the
    /// one-sided 95 % lower bound is the lower bound of the two-sided 90 % interval (0.095773,
    /// computed with scipy 1.17).
    #[test]
    fn wilson_gives_the_handbook_bound() {
        assert!(close(wilson(count(26, 200), 0.90).low, 0.095773, 5e-7));
    }

    /// Newcombe 1998, Statistics in Medicine 17:873–890, table II, method 10 (four decimals, as
    /// printed there; all but the first row from memory and computed again with statsmodels 0.15).
    #[test]
    fn change_gives_the_published_intervals() {
        for (a, b, d, low, high) in [
            ((56, 70), (48, 80), 0.2000, 0.0524, 0.3339),
            ((9, 10), (3, 10), 0.6000, 0.1705, 0.8090),
            ((6, 7), (2, 7), 0.5714, 0.0582, 0.8062),
            ((5, 56), (0, 29), 0.0893, -0.0381, 0.1926),
            ((0, 10), (0, 20), 0.0, -0.1611, 0.2775),
            ((0, 10), (0, 10), 0.0, -0.2775, 0.2775),
            ((10, 10), (0, 20), 1.0, 0.6791, 1.0000),
            ((10, 10), (0, 10), 1.0, 0.6075, 1.0000),
        ] {
            let c = change(count(b.0, b.1), count(a.0, a.1));
            assert!(close(c.change, d, 5e-5), "{a:?} − {b:?}: {c:?}");
            assert!(close(c.level95.low, low, 5e-5), "{a:?} − {b:?}: {c:?}");
            assert!(close(c.level95.high, high, 5e-5), "{a:?} − {b:?}: {c:?}");
        }
    }

    #[test]
    fn the_word_follows_the_bounds() {
        for (before, after, word) in [
            ((9, 20), (16, 20), ChangeWord::Up),
            ((4, 10), (8, 10), ChangeWord::LeaningUp),
            ((8, 10), (9, 10), ChangeWord::TooFewToTell),
            ((8, 10), (8, 10), ChangeWord::TooFewToTell),
            ((8, 10), (4, 10), ChangeWord::LeaningDown),
            ((16, 20), (9, 20), ChangeWord::Down),
        ] {
            let c = change(count(before.0, before.1), count(after.0, after.1));
            assert_eq!(c.word, word, "{before:?} to {after:?}: {c:?}");
            assert_eq!(
                serde_json::to_value(c.word).expect("a word"),
                serde_json::Value::from(word.words()),
                "the word in JSON is the word a person reads"
            );
        }
    }

    #[test]
    fn without_tries_nothing_is_claimed() {
        let none = wilson(count(0, 0), 0.95);
        assert_eq!(none, Wilson { rate: None, low: None, high: None });
        for (before, after) in [((0, 0), (8, 10)), ((8, 10), (0, 0)), ((0, 0), (0, 0))] {
            let c = change(count(before.0, before.1), count(after.0, after.1));
            assert_eq!(c.change, None);
            assert_eq!(c.level95, Interval { low: None, high: None });
            assert_eq!(c.level90, c.level95);
            assert_eq!(c.word, ChangeWord::TooFewToTell);
        }
    }

    #[test]
    fn a_broken_input_gives_no_number_instead_of_a_wrong_one() {
        let broken = Count { made: 11, tries: 10 };
        assert_eq!(wilson(broken, 0.95).rate, None);
        assert_eq!(change(broken, count(1, 2)).change, None);
        for level in [0.0, 1.0, -0.5, 2.0, f64::NAN] {
            assert_eq!(wilson(count(1, 2), level).low, None, "level {level}");
        }
        assert_eq!(criterion(11, 10, 1, 0.5).one_block, None);
        assert_eq!(criterion(0, 0, 1, 0.5).one_block, None);
        assert_eq!(criterion(1, 10, 1, f64::NAN).any_block, None);
    }

    /// scipy 1.17: binom.sf(7, 10, 0.6) = 0.16728975…, binom.sf(7, 10, 0.8) = 0.67779953…
    #[test]
    fn a_criterion_is_worth_what_the_binomial_says() {
        let m = criterion(8, 10, 5, 0.6);
        assert!(close(m.one_block, 0.1672897536, 1e-12), "{m:?}");
        assert!(close(m.any_block, 1.0 - (1.0f64 - 0.1672897536).powi(5), 1e-12), "{m:?}");
        assert!(close(criterion(8, 10, 1, 0.8).one_block, 0.6777995264, 1e-12));
        assert_eq!(
            criterion(0, 10, 3, 0.2),
            Meaning { one_block: Some(1.0), any_block: Some(1.0) }
        );
        assert_eq!(
            criterion(10, 10, 3, 0.0),
            Meaning { one_block: Some(0.0), any_block: Some(0.0) }
        );
        assert_eq!(
            criterion(10, 10, 3, 1.0),
            Meaning { one_block: Some(1.0), any_block: Some(1.0) }
        );
        assert_eq!(criterion(5, 10, 0, 0.5).any_block, Some(0.0), "no blocks, no chance");
    }

    fn counts() -> impl Strategy<Value = Count> {
        (1u32..2000).prop_flat_map(|n| (0..=n, Just(n))).prop_map(|(k, n)| count(k, n))
    }

    proptest! {
        #[test]
        fn wilson_holds_its_rate_and_mirrors(c in counts(), level in 0.001f64..0.999) {
            let w = wilson(c, level);
            let (rate, low, high) =
                (w.rate.expect("rate"), w.low.expect("low"), w.high.expect("high"));
            prop_assert!((0.0..=1.0).contains(&low) && (0.0..=1.0).contains(&high));
            prop_assert!(low <= rate + 1e-15 && rate <= high + 1e-15);
            let m = wilson(count(c.tries - c.made, c.tries), level);
            prop_assert!((m.low.expect("low") - (1.0 - high)).abs() < 1e-12);
        }

        #[test]
        fn a_change_read_backwards_is_its_mirror(a in counts(), b in counts()) {
            let (there, back) = (change(a, b), change(b, a));
            let negated = |x: Option<f64>| x.map(|x| positive_zero(-x));
            prop_assert_eq!(there.change, negated(back.change));
            prop_assert_eq!(there.level95.low, negated(back.level95.high));
            prop_assert_eq!(there.level90.high, negated(back.level90.low));
            prop_assert_eq!(there.word.is_downward(),
                matches!(back.word, ChangeWord::Up | ChangeWord::LeaningUp));
        }

        #[test]
        fn no_number_is_ever_minus_zero(a in counts(), b in counts()) {
            let c = change(a, b);
            let w = wilson(a, 0.95);
            for x in [c.change, c.level95.low, c.level95.high, c.level90.low, c.level90.high,
                      w.rate, w.low, w.high].into_iter().flatten() {
                prop_assert!(x != 0.0 || x.is_sign_positive());
            }
        }

        #[test]
        fn more_blocks_and_lower_bars_never_lower_a_chance(
            (made, of) in (1u32..200).prop_flat_map(|n| (1..=n, Just(n))),
            blocks in 1u32..20, p in 0.0f64..=1.0,
        ) {
            let m = criterion(made, of, blocks, p);
            let (one, any) = (m.one_block.expect("one"), m.any_block.expect("any"));
            prop_assert!((0.0..=1.0).contains(&one) && (0.0..=1.0).contains(&any));
            prop_assert!(any >= one - 1e-15);
            prop_assert!(criterion(made - 1, of, blocks, p).one_block.expect("one") >= one - 1e-12);
        }
    }
}
