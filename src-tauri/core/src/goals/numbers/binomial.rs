//! The upper tail of the binomial distribution, by summing it.

/// P(X ≥ `made`) for X binomial(`of`, `rate`); `None` for more than `of` or a rate outside 0 to 1.
///
/// The terms are built outward from the most likely count by their ratio and divided by their own
/// sum, so nothing overflows and a small tail keeps its digits. Terms too small for a full double are
/// left out, which bounds the work by about forty standard deviations on either side.
pub fn at_least(made: u32, of: u32, rate: f64) -> Option<f64> {
    if made > of || !(0.0..=1.0).contains(&rate) {
        return None;
    }
    if made == 0 || rate == 1.0 {
        return Some(1.0);
    }
    if rate == 0.0 {
        return Some(0.0);
    }
    let odds = rate / (1.0 - rate);
    // A cast from float to whole number keeps to the range of the type.
    let likeliest = (((f64::from(of) + 1.0) * rate) as u32).min(of);
    let (mut below, mut reached) = (Sum::default(), Sum::default());
    let mut put = |count: u32, term: f64| {
        if count >= made { reached.add(term) } else { below.add(term) }
    };
    put(likeliest, 1.0);
    let mut term = 1.0;
    for count in likeliest..of {
        term *= odds * f64::from(of - count) / (f64::from(count) + 1.0);
        if term < f64::MIN_POSITIVE {
            break;
        }
        put(count + 1, term);
    }
    term = 1.0;
    for count in (1..=likeliest).rev() {
        term *= f64::from(count) / (odds * (f64::from(of - count) + 1.0));
        if term < f64::MIN_POSITIVE {
            break;
        }
        put(count - 1, term);
    }
    let (below, reached) = (below.total(), reached.total());
    Some((reached / (reached + below)).clamp(0.0, 1.0))
}

/// A sum that keeps what rounding drops (Neumaier 1974).
#[derive(Default)]
struct Sum {
    sum: f64,
    dropped: f64,
}

impl Sum {
    fn add(&mut self, x: f64) {
        let next = self.sum + x;
        self.dropped +=
            if self.sum.abs() >= x.abs() { (self.sum - next) + x } else { (x - next) + self.sum };
        self.sum = next;
    }

    fn total(&self) -> f64 {
        self.sum + self.dropped
    }
}

#[cfg(test)]
mod tests {
    use super::at_least;

    /// Counting the outcomes: with a fair coin each of the 2^n runs is equally likely.
    #[test]
    fn a_fair_coin_is_counted_out() {
        for of in 1..=16u32 {
            for made in 0..=of {
                let good = (0..1u32 << of).filter(|run| run.count_ones() >= made).count();
                let expect = good as f64 / f64::from(1u32 << of);
                let got = at_least(made, of, 0.5).expect("a chance");
                assert!((got - expect).abs() < 1e-15, "{made} of {of}: {got} or {expect}");
            }
        }
    }

    #[test]
    fn a_far_tail_keeps_its_digits() {
        let got = at_least(50, 50, 0.1).expect("a chance");
        assert!((got / 1e-50 - 1.0).abs() < 1e-12, "0.1 to the fiftieth, got {got}");
        let got = at_least(1, 10, 1e-12).expect("a chance");
        assert!((got / 1e-11 - 1.0).abs() < 1e-10, "ten chances in 1e12, got {got}");
    }

    #[test]
    fn the_largest_counts_answer() {
        let half = at_least(2_147_483_648, u32::MAX, 0.5).expect("a chance");
        assert!((half - 0.5).abs() < 1e-9, "an odd number of tries splits evenly, got {half}");
        assert_eq!(at_least(u32::MAX, u32::MAX, 0.5), Some(0.0));
    }
}
