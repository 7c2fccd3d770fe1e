//! Splitting an amount over shares so that the parts add up to it.

/// The parts of an amount, in the order of the shares, by largest remainder: each part is the whole
/// number below its exact share, and what is left goes one by one to the largest remainders, of equal
/// ones to the first. A negative amount is split as its positive mirror. `None` when the shares sum to
/// 0, or are too many to add up.
///
/// ```
/// use carryover_core::money::split;
/// assert_eq!(split(10_000, &[1, 1, 1]), Some(vec![3334, 3333, 3333]));
/// assert_eq!(split(-10_000, &[1, 1, 1]), Some(vec![-3334, -3333, -3333]));
/// assert_eq!(split(10_000, &[0, 0]), None);
/// ```
pub fn split(amount: i64, shares: &[u64]) -> Option<Vec<i64>> {
    let whole = shares.iter().try_fold(0_u64, |sum, share| sum.checked_add(*share))?;
    let whole = u128::from(whole);
    if whole == 0 {
        return None;
    }
    let size = u128::from(amount.unsigned_abs());
    let exact: Vec<(u128, u128)> = shares
        .iter()
        .map(|share| (size * u128::from(*share) / whole, size * u128::from(*share) % whole))
        .collect();
    let given: u128 = exact.iter().map(|(part, _)| part).sum();
    let mut first: Vec<usize> = (0..exact.len()).collect();
    // A sort that keeps the order of equal ones.
    first.sort_by_key(|at| std::cmp::Reverse(exact.get(*at).map(|(_, rest)| *rest)));
    let left = usize::try_from(size - given).ok()?;
    let mut parts: Vec<u128> = exact.iter().map(|(part, _)| *part).collect();
    for at in first.into_iter().take(left) {
        *parts.get_mut(at)? += 1;
    }
    let signed = |part: u128| i64::try_from(part).ok().map(|part| part * amount.signum());
    parts.into_iter().map(signed).collect()
}

#[cfg(test)]
mod tests {
    use super::split;
    use proptest::prelude::*;

    /// Worked by hand: largest remainder, of equal remainders the first.
    #[test]
    fn parts_as_worked_by_hand() {
        for (amount, shares, parts) in [
            (10_000, vec![1, 1, 1], vec![3334, 3333, 3333]),
            (4750, vec![1, 1, 1, 1], vec![1188, 1188, 1187, 1187]),
            (1000, vec![50, 30, 20], vec![500, 300, 200]),
            (5, vec![1, 1, 1], vec![2, 2, 1]),
            (-10_000, vec![1, 1, 1], vec![-3334, -3333, -3333]),
            (100, vec![0, 1, 0], vec![0, 100, 0]),
            (0, vec![1, 2], vec![0, 0]),
            // Remainders 1/7, 2/7, 4/7: the one unit left goes to the last.
            (8, vec![1, 2, 4], vec![1, 2, 5]),
        ] {
            assert_eq!(split(amount, &shares), Some(parts), "{amount} over {shares:?}");
        }
        assert_eq!(split(100, &[]), None);
        assert_eq!(split(100, &[u64::MAX, 1]), None);
    }

    proptest! {
        #[test]
        fn nothing_is_lost_and_nobody_gets_a_unit_too_much(
            amount in -1_000_000_000_000_i64..1_000_000_000_000,
            shares in prop::collection::vec(0_u64..1_000_000, 1..20),
        ) {
            let Some(parts) = split(amount, &shares) else {
                prop_assert_eq!(shares.iter().sum::<u64>(), 0);
                return Ok(());
            };
            prop_assert_eq!(parts.iter().sum::<i64>(), amount);
            let whole = i128::from(shares.iter().sum::<u64>());
            for (part, share) in parts.iter().zip(&shares) {
                let apart = i128::from(*part) * whole - i128::from(amount) * i128::from(*share);
                prop_assert!(apart.abs() < whole, "each part is less than one unit from its share");
            }
            let mirrored: Vec<i64> = parts.iter().map(|part| -part).collect();
            prop_assert_eq!(split(-amount, &shares), Some(mirrored));
        }
    }
}
