//! What lessons cost by their length, and the coach's terms in the coach's own words.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Currency;
use crate::money::typed;
use crate::prices;
use crate::settings;

/// Where the terms are kept among the settings.
const RECORD: &str = "offers";
/// The most rates.
const RATES: usize = 20;
/// The most characters of the terms.
const LONGEST: usize = 4_000;

/// What a lesson of a length costs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fee {
    /// The length in minutes.
    pub minutes: i64,
    /// The price, a decimal amount.
    pub amount: String,
}

/// What is offered on which terms; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OfferTerms {
    /// The currency, an ISO 4217 code.
    pub currency: String,
    /// What lessons cost, by their length.
    pub fees: Vec<Fee>,
    /// The coach's terms, as they stand in every offer.
    pub terms: String,
}

/// The terms as they were written down; all empty when none were.
///
/// # Errors
/// `Storage`.
pub fn terms(db: &Reading<'_>) -> Result<OfferTerms> {
    let mut kept: OfferTerms = settings::kept(db, RECORD)?.unwrap_or_default();
    let rates = prices::lesson_rates(db, db.today())?;
    if let Some(currency) = rates.currency {
        kept.currency = currency.code().to_owned();
        kept.fees = rates
            .by_length
            .into_iter()
            .map(|(minutes, amount)| Fee { minutes, amount: currency.plain(amount) })
            .collect();
    }
    Ok(kept)
}

/// Puts rates that an older edition kept with the terms into the price list.
///
/// # Errors
/// `Storage`.
pub fn catch_up(db: &Writing<'_>) -> Result<()> {
    let kept = terms(db)?;
    set_rates(db, &kept)?;
    settings::keep(db, RECORD, &OfferTerms { terms: kept.terms, ..OfferTerms::default() })
}

/// Whether an older edition kept rates with the terms.
///
/// # Errors
/// `Storage`.
pub fn behind(db: &Reading<'_>) -> Result<bool> {
    let kept: Option<OfferTerms> = settings::kept(db, RECORD)?;
    Ok(kept.is_some_and(|kept| !kept.fees.is_empty()))
}

fn set_rates(db: &Writing<'_>, read: &OfferTerms) -> Result<()> {
    let currency = Currency::parse(&read.currency);
    let rates: Vec<(i64, i64)> = read
        .fees
        .iter()
        .filter_map(|fee| Some((fee.minutes, currency?.minor(&fee.amount)?)))
        .collect();
    prices::set_lesson_rates(db, currency, &rates)
}

/// Writes the terms down, in place of those before.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set_terms(db: &Writing<'_>, set: OfferTerms) -> Result<OfferTerms> {
    let mut p = Problems::new();
    let currency = if set.currency.trim().is_empty() && set.fees.is_empty() {
        None
    } else {
        typed::currency(&mut p, "currency", &set.currency)
    };
    if set.fees.len() > RATES {
        p.add("fees", "too_many", format!("There is room for {RATES} rates."));
    }
    let mut fees: Vec<Fee> = Vec::new();
    for (n, fee) in set.fees.iter().enumerate() {
        let at = |field: &str| format!("fees[{n}].{field}");
        let minutes = p.within_bounds(&at("minutes"), fee.minutes, 5, 480, "The length in minutes");
        if fees.iter().any(|known| known.minutes == minutes) {
            p.add(&at("minutes"), "taken", "This length stands above already.".to_owned());
        }
        let amount = currency.map_or_else(
            || fee.amount.clone(),
            |c| {
                let minor = typed::amount_or_nothing(&mut p, &at("amount"), &fee.amount, c);
                minor.map(|minor| c.plain(minor)).unwrap_or_default()
            },
        );
        fees.push(Fee { minutes, amount });
    }
    fees.sort_by_key(|fee| fee.minutes);
    let terms = set.terms.trim().to_owned();
    if terms.chars().count() > LONGEST {
        p.add("terms", "too_long", format!("The terms have room for {LONGEST} characters."));
    }
    p.done()?;
    let read = OfferTerms {
        currency: currency.map(|c| c.code().to_owned()).unwrap_or_default(),
        fees,
        terms,
    };
    set_rates(db, &read)?;
    settings::keep(db, RECORD, &OfferTerms { terms: read.terms.clone(), ..OfferTerms::default() })?;
    db.label("Rates and terms written down");
    Ok(read)
}

impl OfferTerms {
    /// What a lesson of this length costs, in smallest units; `None` when no rate is known for it.
    pub(super) fn fee(&self, minutes: u32) -> Option<(Currency, i64)> {
        let currency = Currency::parse(&self.currency)?;
        let fee = self.fees.iter().find(|fee| fee.minutes == i64::from(minutes))?;
        Some((currency, currency.minor(&fee.amount)?))
    }
}
