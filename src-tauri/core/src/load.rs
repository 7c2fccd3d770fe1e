//! Training load from minutes and the student's own effort rating (Foster et al. 2001, Journal of
//! Strength and Conditioning Research 15:109–115).
//!
//! It compares days and weeks with one another. It predicts no injury and clears nobody.

use schemars::JsonSchema;
use serde::Serialize;

/// The load of one session: minutes × effort, the effort rated from 0 (rest) to 10 (maximal).
///
/// ```
/// use carryover_core::load::session;
/// assert_eq!(session(90, 6), Some(540));
/// assert_eq!(session(90, 11), None, "the scale ends at 10");
/// ```
pub fn session(minutes: u32, effort: u8) -> Option<u32> {
    (effort <= 10).then(|| minutes.checked_mul(u32::from(effort))).flatten()
}

/// The load of a run of days, usually a week, days of rest counted as 0.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Load {
    /// The sum of the days.
    pub total: f64,
    /// The mean of the days.
    pub mean: f64,
    /// The sample standard deviation (over n − 1); null for one day.
    pub sd: Option<f64>,
    /// Mean ÷ standard deviation: high when every day is alike; null where all days are the same.
    pub monotony: Option<f64>,
    /// Total × monotony; null where monotony is.
    pub strain: Option<f64>,
}

/// The load of some days; `None` for no days, a day below 0, or days too large to add up.
///
/// Foster's paper does not say which standard deviation it means; this is the sample one.
pub fn load(days: &[f64]) -> Option<Load> {
    let first = *days.first()?;
    if !days.iter().all(|day| day.is_finite() && *day >= 0.0) {
        return None;
    }
    let count = days.len() as f64;
    let total = days.iter().fold(0.0, |sum, day| sum + day);
    let mean = total / count;
    let sd = (days.len() > 1).then(|| {
        // Days that are the same have no spread, whatever rounding makes of their mean.
        if days.iter().all(|day| *day == first) {
            return 0.0;
        }
        let squares = days.iter().fold(0.0, |sum, day| sum + (day - mean).powi(2));
        (squares / (count - 1.0)).sqrt()
    });
    let finite = |x: &f64| x.is_finite();
    if !total.is_finite() || !sd.iter().all(finite) {
        return None;
    }
    let monotony = sd.filter(|sd| *sd > 0.0).map(|sd| mean / sd).filter(finite);
    let strain = monotony.map(|monotony| total * monotony).filter(finite);
    Some(Load { total, mean, sd, monotony, strain })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Weeks of our own, computed with numpy 2.4 (std with ddof = 1); the method is Foster's.
    #[test]
    fn weeks_give_what_numpy_gives() {
        for (days, total, mean, sd, monotony, strain) in [
            (
                [0.0, 0.0, 0.0, 780.0, 930.0, 840.0, 240.0],
                2790.0,
                398.5714,
                432.9137,
                0.9207,
                2568.6742,
            ),
            (
                [300.0, 320.0, 310.0, 300.0, 330.0, 300.0, 0.0],
                1860.0,
                265.7143,
                117.7366,
                2.2569,
                4197.7483,
            ),
            ([600.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], 600.0, 85.7143, 226.7787, 0.3780, 226.7787),
        ] {
            let got = load(&days).expect("a load");
            for (name, got, want) in [
                ("total", Some(got.total), total),
                ("mean", Some(got.mean), mean),
                ("sd", got.sd, sd),
                ("monotony", got.monotony, monotony),
                ("strain", got.strain, strain),
            ] {
                let got = got.expect(name);
                assert!((got - want).abs() <= 5e-5, "{name} of {days:?}: {got} or {want}");
            }
        }
    }

    #[test]
    fn what_is_not_defined_is_none() {
        let same = Load { total: 2100.0, mean: 300.0, sd: Some(0.0), monotony: None, strain: None };
        assert_eq!(load(&[300.0; 7]), Some(same), "no variation is not infinite monotony");
        let rest = Load { total: 0.0, mean: 0.0, sd: Some(0.0), monotony: None, strain: None };
        assert_eq!(load(&[0.0; 7]), Some(rest));
        let one = Load { total: 300.0, mean: 300.0, sd: None, monotony: None, strain: None };
        assert_eq!(load(&[300.0]), Some(one));
        assert_eq!(load(&[0.1; 7]).and_then(|load| load.monotony), None, "0.1 has no exact mean");
        for none in [&[][..], &[1.0, -1.0], &[f64::NAN], &[f64::MAX, f64::MAX]] {
            assert_eq!(load(none), None, "{none:?}");
        }
    }

    /// The sessions of a visit: 90 min at 6 and 60 min at 4, and so on.
    #[test]
    fn sessions_make_the_days() {
        let day = |sessions: &[(u32, u8)]| -> u32 {
            sessions
                .iter()
                .map(|(minutes, effort)| session(*minutes, *effort).expect("a load"))
                .sum()
        };
        assert_eq!(day(&[(90, 6), (60, 4)]), 780);
        assert_eq!(day(&[(90, 7), (60, 5)]), 930);
        assert_eq!(session(u32::MAX, 2), None);
        assert_eq!(session(60, 0), Some(0));
    }

    proptest! {
        #[test]
        fn order_does_not_matter_and_scale_does_not_change_monotony(
            mut days in proptest::collection::vec(0u32..15_000, 2..15),
        ) {
            let as_days = |days: &[u32], times: f64| -> Vec<f64> {
                days.iter().map(|day| f64::from(*day) * times).collect()
            };
            let there = load(&as_days(&days, 1.0)).expect("a load");
            let doubled = load(&as_days(&days, 2.0)).expect("a load");
            prop_assert_eq!(there.monotony, doubled.monotony, "doubling is exact");
            days.reverse();
            let back = load(&as_days(&days, 1.0)).expect("a load");
            prop_assert_eq!(there.total, back.total, "whole numbers add up exactly");
            let (a, b) = (there.sd.expect("sd"), back.sd.expect("sd"));
            prop_assert!((a - b).abs() <= 1e-9 * a.max(1.0));
        }
    }
}
