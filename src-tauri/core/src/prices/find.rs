//! Which price counts.

use super::{Price, PricedAs, store};
use crate::app::Reading;
use crate::error::Result;
use crate::kinds::ids::FacilityId;
use crate::kinds::{Currency, Day};
use crate::money::split;

/// The price of a lesson: that of the place before that of everywhere, the newest first.
///
/// # Errors
/// `Storage`.
pub fn lesson_price(
    db: &Reading<'_>,
    day: Day,
    facility: FacilityId,
    minutes: u32,
    sharing: usize,
) -> Result<Option<Price>> {
    let mut all = store::all(db)?;
    all.retain(|price| {
        price.what == PricedAs::Lesson
            && price.holds(day)
            && price.minutes == Some(i64::from(minutes))
            && usize::try_from(price.sharing) == Ok(sharing)
            && price.facility.is_none_or(|place| place == facility)
    });
    Ok(all.into_iter().max_by_key(|price| {
        (price.facility.is_some(), price.words.is_empty(), price.since, price.id)
    }))
}

/// What each of those who share a lesson pays, in the order in which they stand in it; `None` when no
/// price is known.
///
/// # Errors
/// `Storage`.
pub fn of_lesson(
    db: &Reading<'_>,
    day: Day,
    facility: FacilityId,
    minutes: u32,
    sharing: usize,
) -> Result<Option<(Currency, Vec<i64>)>> {
    let price = lesson_price(db, day, facility, minutes, sharing)?;
    Ok(price.and_then(|price| {
        let currency = Currency::parse(&price.currency)?;
        let amount = currency.minor(&price.amount)?;
        let parts = if price.each || sharing == 1 {
            vec![amount; sharing]
        } else {
            split(amount, &vec![1; sharing])?
        };
        Some((currency, parts))
    }))
}
