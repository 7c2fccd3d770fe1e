//! Stretches of a day: ranges of minutes, from (included) to (not included).

/// From (included), to (not included).
pub type Stretch = (u32, u32);

/// The same minutes as few stretches in order; those that meet are one.
///
/// ```
/// use carryover_core::kinds::stretches::joined;
/// assert_eq!(joined([(60, 90), (0, 30), (30, 45), (80, 100)]), [(0, 45), (60, 100)]);
/// ```
pub fn joined(stretches: impl IntoIterator<Item = Stretch>) -> Vec<Stretch> {
    let mut all: Vec<Stretch> = stretches.into_iter().filter(|(from, to)| from < to).collect();
    all.sort_unstable();
    let mut joined: Vec<Stretch> = Vec::new();
    for (from, to) in all {
        match joined.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => joined.push((from, to)),
        }
    }
    joined
}

/// What is left of some stretches once others are taken out.
///
/// ```
/// use carryover_core::kinds::stretches::without;
/// assert_eq!(without(&[(0, 100)], &[(20, 30), (90, 200)]), [(0, 20), (30, 90)]);
/// ```
pub fn without(of: &[Stretch], taken: &[Stretch]) -> Vec<Stretch> {
    let taken = joined(taken.iter().copied());
    let mut left = Vec::new();
    for (mut from, to) in joined(of.iter().copied()) {
        for (a, z) in &taken {
            left.push((from, to.min(*a)));
            from = from.max(*z);
        }
        left.push((from, to));
    }
    left.retain(|(from, to)| from < to);
    left
}

/// How many minutes there are in stretches, each minute once.
pub fn minutes_in(stretches: &[Stretch]) -> u32 {
    joined(stretches.iter().copied()).iter().map(|(from, to)| to - from).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn held(stretches: &[Stretch]) -> Vec<bool> {
        (0..200).map(|m| stretches.iter().any(|(from, to)| (*from..*to).contains(&m))).collect()
    }

    proptest! {
        #[test]
        fn every_minute_is_where_it_belongs(
            of in prop::collection::vec((0_u32..200, 0_u32..200), 0..8),
            taken in prop::collection::vec((0_u32..200, 0_u32..200), 0..8),
        ) {
            let (one, other) = (held(&of), held(&taken));
            prop_assert_eq!(held(&joined(of.clone())), one.clone());
            let left = without(&of, &taken);
            let expect: Vec<bool> = one.iter().zip(&other).map(|(a, b)| *a && !*b).collect();
            prop_assert_eq!(minutes_in(&left) as usize, expect.iter().filter(|m| **m).count());
            prop_assert_eq!(held(&left), expect);
            prop_assert!(left.windows(2).all(|two| two[0].1 < two[1].0), "in order, none meet");
        }
    }
}
