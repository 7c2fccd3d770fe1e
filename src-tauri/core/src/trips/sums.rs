//! Sums over the rows of a trip, by currency, and what they come to for an hour.

use super::{TripRow, TripRowFor, TripRowFrom};
use crate::kinds::ids::{InvoiceId, LessonId, PackageId};
use crate::kinds::{Currency, Day};
use crate::money::Fraction;

/// A row with its amount in smallest units: below 0 what it costs.
pub(super) struct Row {
    pub what: TripRowFor,
    pub from: TripRowFrom,
    pub day: Day,
    pub words: String,
    pub currency: Currency,
    pub amount: i64,
    pub invoice: Option<InvoiceId>,
    pub package: Option<PackageId>,
    /// Of which lesson, where it is expected of one.
    pub lesson: Option<LessonId>,
}

impl Row {
    /// A row that stands on no invoice and is of no package.
    pub fn new(
        (what, from): (TripRowFor, TripRowFrom),
        day: Day,
        words: String,
        (currency, amount): (Currency, i64),
    ) -> Self {
        let (invoice, package, lesson) = (None, None, None);
        Self { what, from, day, words, currency, amount, invoice, package, lesson }
    }

    /// As it is told.
    pub fn told(&self) -> TripRow {
        TripRow {
            what: self.what,
            from: self.from,
            day: self.day,
            words: self.words.clone(),
            amount: self.currency.plain(self.amount),
            currency: self.currency.code().to_owned(),
            invoice: self.invoice,
            package: self.package,
        }
    }
}

/// What rows of one currency come to, in smallest units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Sum {
    /// Lessons and courts.
    pub earned: i64,
    /// Travel charged to students.
    pub charged: i64,
    /// Costs, above 0.
    pub costs: i64,
}

impl Sum {
    /// What is left.
    pub fn result(self) -> i64 {
        self.earned + self.charged - self.costs
    }

    fn add(&mut self, row: &Row) {
        match row.what {
            TripRowFor::Lesson | TripRowFor::Late | TripRowFor::Court => self.earned += row.amount,
            TripRowFor::Travel => self.charged += row.amount,
            TripRowFor::Cost => self.costs -= row.amount,
        }
    }
}

/// The sums of each currency, by its code.
pub(super) fn by_currency<'a>(rows: impl Iterator<Item = &'a Row>) -> Vec<(Currency, Sum)> {
    let mut all: Vec<(Currency, Sum)> = Vec::new();
    for row in rows {
        if all.iter().all(|(known, _)| *known != row.currency) {
            all.push((row.currency, Sum::default()));
        }
        if let Some((_, sum)) = all.iter_mut().find(|(known, _)| *known == row.currency) {
            sum.add(row);
        }
    }
    all.sort_by_key(|(currency, _)| currency.code());
    all
}

/// So much for one hour of so many minutes, in smallest units; `None` without minutes.
pub(super) fn for_an_hour(amount: i64, minutes: i64) -> Option<i64> {
    let hours = Fraction::whole(minutes).by(Fraction::whole(60))?;
    Fraction::whole(amount).by(hours)?.rounded()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 100.00 over 90 minutes is 66.666…; 0.01 over two hours is a half, which goes up;
    /// a loss is the mirror of a gain.
    #[test]
    fn an_hour_as_worked_by_hand() {
        for (amount, minutes, hour) in [
            (10_000, 90, Some(6667)),
            (1, 120, Some(1)),
            (-1, 120, Some(-1)),
            (-10_000, 90, Some(-6667)),
            (5, 0, None),
            (0, 60, Some(0)),
        ] {
            assert_eq!(for_an_hour(amount, minutes), hour, "{amount} in {minutes} minutes");
        }
    }
}
