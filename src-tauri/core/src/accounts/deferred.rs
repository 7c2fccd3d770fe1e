//! What is owed in lessons today: as it stands, and as it would stand if only some of the lessons were
//! expected to be taken (breakage in proportion, ASC 606-10-55-48, IFRS 15 B46). Which of the two counts
//! for the books, an adviser says.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::error::Result;
use crate::kinds::Currency;
use crate::kinds::ids::PackageId;
use crate::ledger;
use crate::packages::{self, ListPackages};
use crate::terms;

/// What a package owes. Amounts are decimals, without tax.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PackageOwes {
    /// Which one.
    pub package: PackageId,
    /// Its name.
    pub words: String,
    /// Who paid.
    pub paid_by: String,
    /// The currency.
    pub currency: String,
    /// Lessons left.
    pub left: i64,
    /// Owed as it stands.
    pub owed: String,
    /// Owed when only so many are expected to be taken; empty while no percentage is set.
    pub expected: String,
}

/// What is owed in one currency. Amounts are decimals, without tax.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OwedIn {
    /// The currency.
    pub currency: String,
    /// Owed as it stands.
    pub owed: String,
    /// Owed when only so many are expected to be taken; empty while no percentage is set.
    pub expected: String,
}

/// What is owed in lessons.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OwedInLessons {
    /// Percent of lessons that are expected to be taken; `None` while not set.
    pub taken: Option<i64>,
    /// By currency.
    pub sums: Vec<OwedIn>,
    /// By package.
    pub packages: Vec<PackageOwes>,
}

/// What is owed in lessons today.
///
/// # Errors
/// `Storage`; `Fault` when lessons and money have parted.
pub fn owed_in_lessons(db: &Reading<'_>) -> Result<OwedInLessons> {
    let taken = terms::show(db)?.taken;
    let mut sums: Vec<(Currency, i64, i64)> = Vec::new();
    let mut rows = Vec::new();
    for package in packages::list(db, ListPackages::default())? {
        let Some(currency) = Currency::parse(&package.currency) else { continue };
        let Some(owed) = ledger::owed_of(db, package.id)?.filter(|owed| owed.lessons() > 0) else {
            continue;
        };
        let percent = taken.and_then(|percent| u32::try_from(percent).ok());
        let expected = percent.and_then(|percent| owed.money_when_taken(percent));
        if !sums.iter().any(|(known, ..)| *known == currency) {
            sums.push((currency, 0, 0));
        }
        if let Some((_, as_it_stands, when)) = sums.iter_mut().find(|(c, ..)| *c == currency) {
            *as_it_stands += owed.money();
            *when += expected.unwrap_or_default();
        }
        rows.push(PackageOwes {
            package: package.id,
            words: package.words,
            paid_by: package.paid_by,
            currency: package.currency,
            left: i64::from(owed.lessons()),
            owed: currency.plain(owed.money()),
            expected: expected.map(|minor| currency.plain(minor)).unwrap_or_default(),
        });
    }
    let sums = sums.into_iter().map(|(currency, owed, expected)| OwedIn {
        currency: currency.code().to_owned(),
        owed: currency.plain(owed),
        expected: taken.map(|_| currency.plain(expected)).unwrap_or_default(),
    });
    Ok(OwedInLessons { taken, sums: sums.collect(), packages: rows })
}
