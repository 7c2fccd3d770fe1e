//! An invoice paid in parts: how much by when, as the terms say, and what of it is overdue.

use super::DocPart;
use super::store::{self, Head};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::{Currency, Day};
use crate::money::split;
use crate::terms::PartRow;

/// Shares out what is due, in smallest units, by largest remainder: each part by its day, and the rest
/// by the last. Parts that come to nothing are left out.
pub(super) fn shared(due: i64, rows: &[PartRow], issued: Day, last: Day) -> Vec<(Day, i64)> {
    let percents = rows.iter().map(|row| row.percent.clamp(0, 100).unsigned_abs());
    let rest = 100_u64.saturating_sub(percents.clone().sum());
    let weights: Vec<u64> = percents.chain([rest]).collect();
    let days = rows.iter().map(|row| issued.plus(row.days)).chain([last]);
    let parts = split(due, &weights).unwrap_or_default();
    days.zip(parts).filter(|(_, amount)| *amount > 0).collect()
}

/// Parts as they are printed.
pub(super) fn printed(parts: &[(Day, i64)], currency: Currency) -> Vec<DocPart> {
    parts
        .iter()
        .map(|(day, amount)| DocPart { day: *day, amount: currency.plain(*amount) })
        .collect()
}

/// By when the next of what is open is to be paid, and what of it is overdue, in smallest units.
pub(super) fn due_of(db: &Reading<'_>, head: &Head) -> Result<(Option<Day>, i64)> {
    let late = |day: Day| day < db.today();
    if head.open <= 0 || head.number.is_none() {
        return Ok((head.due, 0));
    }
    let parts = store::parts(db, head.id)?;
    if parts.is_empty() {
        let overdue = if head.due.is_some_and(late) { head.open } else { 0 };
        return Ok((head.due, overdue));
    }
    let all: i64 = parts.iter().map(|(_, amount)| amount).sum();
    // What was paid before it was issued is not part of the parts.
    let mut paid = (all - head.open).max(0);
    let (mut next, mut overdue) = (None, 0);
    for (day, amount) in parts {
        let covered = paid.min(amount);
        paid -= covered;
        if covered < amount {
            next = next.or(Some(day));
            if late(day) {
                overdue += amount - covered;
            }
        }
    }
    Ok((next.or(head.due), overdue.min(head.open)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Worked by hand: 30 and 30 percent of 100.01 are 30.003 each, the rest is 40.004 and has the cent
    /// that is left; of one cent all goes to the largest part.
    #[test]
    fn parts_add_up() {
        let day = |n: i64| Day::EPOCH.plus(n);
        let rows = [PartRow { percent: 30, days: 0 }, PartRow { percent: 30, days: 10 }];
        let parts = shared(10_001, &rows, day(0), day(30));
        assert_eq!(parts, [(day(0), 3_000), (day(10), 3_000), (day(30), 4_001)]);
        assert_eq!(shared(1, &rows, day(0), day(30)), [(day(30), 1)]);
    }

    proptest! {
        #[test]
        fn nothing_is_lost(due in 1_i64..10_000_000, rows in prop::collection::vec((1_i64..20, 0_i64..30), 0..5)) {
            let rows: Vec<PartRow> = rows.into_iter().map(|(percent, days)| PartRow { percent, days }).collect();
            let parts = shared(due, &rows, Day::EPOCH, Day::EPOCH.plus(60));
            prop_assert_eq!(parts.iter().map(|(_, amount)| amount).sum::<i64>(), due);
            prop_assert!(parts.iter().all(|(_, amount)| *amount > 0));
        }
    }
}
