//! What tax counts for which kind of line, where: as the coach set it. The program knows no tax law
//! and sets none; until the coach has, a line asks.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{What, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{FacilityId, TaxRuleId};
use crate::kinds::{Day, decimal};
use crate::money::Category;

/// The most decimals of a rate.
const DECIMALS: u32 = 4;

/// What tax counts for a kind of line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TaxRule {
    /// Which one.
    pub id: TaxRuleId,
    /// For which kind of line; `None` every kind.
    pub what: Option<What>,
    /// Where; `None` everywhere.
    pub facility: Option<FacilityId>,
    /// The place's name, or empty.
    pub place: String,
    /// The category, by its code in UNTDID 5305.
    pub category: Category,
    /// The rate in percent.
    pub rate: String,
    /// Why no tax is charged; empty where it is.
    pub why: String,
    /// The first day it holds.
    pub since: Day,
    /// The last day; `None` while not known.
    pub until: Option<Day>,
}

/// A tax to set.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetTax {
    /// For which kind of line; left out for every kind.
    #[serde(default)]
    pub what: Option<What>,
    /// Where; left out for everywhere.
    #[serde(default)]
    pub facility: Option<FacilityId>,
    /// The category, by its code in UNTDID 5305.
    pub category: Category,
    /// The rate in percent; empty for 0.
    #[serde(default)]
    pub rate: String,
    /// Why no tax is charged.
    #[serde(default)]
    pub why: String,
    /// The first day it holds, as YYYY-MM-DD; empty: from the beginning.
    #[serde(default)]
    pub since: String,
}

/// A tax that no longer counts.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichTax {
    /// Which one.
    pub tax: TaxRuleId,
}

/// The taxes as set.
///
/// # Errors
/// `Storage`.
pub fn taxes(db: &Reading<'_>) -> Result<Vec<TaxRule>> {
    store::taxes(db)
}

/// A rate and its reason as typed, against their category.
///
/// EN 16931 asks for a reason with E, AE, K, G and O (BR-E-10, BR-AE-10, BR-IC-10, BR-G-10, BR-O-10),
/// and for none with S, Z, L and M (BR-S-10, BR-Z-10).
pub(crate) fn read(
    p: &mut Problems,
    category: Category,
    rate: &str,
    why: &str,
) -> (Option<Decimal>, String) {
    let typed = rate.trim();
    let rate = if typed.is_empty() {
        Some(Decimal::ZERO)
    } else {
        decimal(typed).map(|rate| rate.normalize()).filter(|rate| rate.scale() <= DECIMALS)
    };
    match rate {
        None => p.add("rate", "no_rate", "A rate in percent, from 0 to 100, as in 19 or 8.875."),
        Some(rate) => {
            if let Some(words) = category.refuses(rate) {
                p.add("rate", "out_of_range", words);
            }
        }
    }
    let reason = p.line("why", why, "The reason");
    let asks =
        matches!(category, Category::E | Category::AE | Category::K | Category::G | Category::O);
    if asks && reason.is_empty() {
        let words = "Say why no tax is charged, as it is to stand on the invoice: ask an adviser for the words.";
        p.add("why", "empty", words);
    }
    (rate, if asks { reason } else { String::new() })
}

/// Sets a tax from a day on. One for the same ends the day before.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set_tax(db: &Writing<'_>, set: SetTax) -> Result<Vec<TaxRule>> {
    let mut p = Problems::new();
    let (rate, why) = read(&mut p, set.category, &set.rate, &set.why);
    let since = p.day_or_none("since", Some(&set.since), "The first day").unwrap_or(Day::EPOCH);
    p.done()?;
    let Some(rate) = rate else { return Err(Error::Fault("a tax without its rate".to_owned())) };
    for before in store::taxes(db)? {
        if before.what != set.what || before.facility != set.facility {
            continue;
        }
        if before.since >= since {
            store::forget_tax(db, before.id)?;
        } else if before.until.is_none_or(|until| until >= since) {
            store::end_tax(db, before.id, since.plus(-1))?;
        }
    }
    let id: TaxRuleId = db.id();
    store::insert_tax(db, id, &set, rate, &why, since)?;
    db.label("Tax set");
    store::taxes(db)
}

/// Takes a tax away: lines ask again.
///
/// # Errors
/// `NotFound`.
pub fn drop_tax(db: &Writing<'_>, which: WhichTax) -> Result<Vec<TaxRule>> {
    if !store::taxes(db)?.iter().any(|tax| tax.id == which.tax) {
        return Err(Error::NotFound { what: "tax", id: which.tax.to_string() });
    }
    store::forget_tax(db, which.tax)?;
    db.label("Tax taken away");
    store::taxes(db)
}

/// The tax of a kind of line somewhere on a day: what says most exactly counts, the kind before the
/// place. `None` while the coach has not set one.
///
/// # Errors
/// `Storage`.
pub fn tax_of(
    db: &Reading<'_>,
    what: What,
    facility: Option<FacilityId>,
    day: Day,
) -> Result<Option<TaxRule>> {
    let mut all = store::taxes(db)?;
    all.retain(|tax| {
        tax.since <= day
            && tax.until.is_none_or(|until| day <= until)
            && tax.what.is_none_or(|kind| kind == what)
            && (tax.facility.is_none() || tax.facility == facility)
    });
    Ok(all.into_iter().max_by_key(|tax| (tax.what.is_some(), tax.facility.is_some(), tax.since)))
}
