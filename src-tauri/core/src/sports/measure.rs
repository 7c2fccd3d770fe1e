//! What a test result says: against norms (T-score, percentile), and against the test's own error.
//!
//! A change smaller than the error of measurement is not a change.

use statrs::function::erf::erfc;

/// The T-score of a result: 50 at the mean of the norms, 10 for each standard deviation.
///
/// ```
/// use carryover_core::sports::measure::t_score;
/// assert_eq!(t_score(31.0, 24.5, 5.2), Some(62.5));
/// assert_eq!(t_score(31.0, 24.5, 0.0), None, "norms without spread place nobody");
/// ```
pub fn t_score(result: f64, mean: f64, sd: f64) -> Option<f64> {
    standing(result, mean, sd).map(|z| 50.0 + 10.0 * z)
}

/// The percentile of a result, 0 to 100, were the norms normally distributed.
pub fn percentile(result: f64, mean: f64, sd: f64) -> Option<f64> {
    standing(result, mean, sd).map(|z| 50.0 * erfc(-z / std::f64::consts::SQRT_2))
}

/// How many standard deviations above the mean.
fn standing(result: f64, mean: f64, sd: f64) -> Option<f64> {
    let z = (result - mean) / sd;
    (sd > 0.0 && z.is_finite()).then_some(z)
}

/// The standard error of measurement: SD × √(1 − r), with r the reliability from 0 to 1.
pub fn error_of_measurement(sd: f64, reliability: f64) -> Option<f64> {
    let sound = sd.is_finite() && sd >= 0.0 && (0.0..=1.0).contains(&reliability);
    sound.then(|| sd * (1.0 - reliability).sqrt())
}

/// The smallest change between two results that is more than error, at 95 %: 1.96 × √2 × the
/// standard error of measurement.
pub fn least_real_change(sd: f64, reliability: f64) -> Option<f64> {
    error_of_measurement(sd, reliability).map(|error| 1.96 * std::f64::consts::SQRT_2 * error)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: Option<f64>, want: f64, within: f64) {
        let got = got.expect("a number");
        assert!((got - want).abs() <= within, "{got} or {want}");
    }

    /// scipy 1.17.1: norm.cdf((31 − 24.5) ÷ 5.2) × 100 and norm.cdf(−1) × 100, to eight decimals;
    /// a percentile needs none.
    #[test]
    fn a_result_is_placed_among_norms() {
        near(percentile(31.0, 24.5, 5.2), 89.435_022_63, 1e-8);
        near(percentile(0.0, 1.0, 1.0), 15.865_525_39, 1e-8);
        assert_eq!(percentile(7.0, 7.0, 2.0), Some(50.0));
        near(t_score(19.3, 24.5, 5.2), 40.0, 1e-12);
        for (sd, mean) in [(0.0, 1.0), (-1.0, 1.0), (f64::NAN, 1.0), (1.0, f64::INFINITY)] {
            assert_eq!(t_score(1.0, mean, sd), None);
            assert_eq!(percentile(1.0, mean, sd), None);
        }
    }

    /// SD 5.2 and r .85: 5.2 × √.15 = 2.01395…, × 1.96 × √2 = 5.58237…. The formulas are common
    /// practice (from memory: Weir 2005, Journal of Strength and Conditioning Research 19:231–240).
    #[test]
    fn an_error_of_measurement_bounds_a_change() {
        near(error_of_measurement(5.2, 0.85), 2.014, 5e-4);
        near(least_real_change(5.2, 0.85), 5.582, 5e-4);
        assert_eq!(error_of_measurement(5.2, 1.0), Some(0.0), "a perfect test has no error");
        assert_eq!(error_of_measurement(5.2, 0.0), Some(5.2), "a useless one has all of it");
        for (sd, r) in [(-1.0, 0.5), (1.0, 1.1), (1.0, -0.1), (1.0, f64::NAN), (f64::NAN, 0.5)] {
            assert_eq!(least_real_change(sd, r), None);
        }
    }
}
