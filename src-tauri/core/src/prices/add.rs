//! Writing prices down, ending them, listing them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Price, PricedAs, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{FacilityId, PriceId};
use crate::kinds::{Currency, Day};
use crate::money::typed;

/// A price as typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PriceForm {
    /// What it is for.
    pub what: PricedAs,
    /// Its name; needed for anything else.
    #[serde(default)]
    pub words: String,
    /// Where it holds; left out for everywhere.
    #[serde(default)]
    pub facility: Option<FacilityId>,
    /// The length of a lesson in minutes; left out for any.
    #[serde(default)]
    pub minutes: Option<i64>,
    /// So many share the lesson; left out for one.
    #[serde(default)]
    pub sharing: Option<i64>,
    /// Whether the amount is for each of them.
    #[serde(default)]
    pub each: bool,
    /// Lessons of a package.
    #[serde(default)]
    pub lessons: Option<i64>,
    /// So many months a package holds; left out for no end.
    #[serde(default)]
    pub months: Option<i64>,
    /// The currency, an ISO 4217 code.
    pub currency: String,
    /// The amount, a decimal.
    pub amount: String,
    /// The first day it holds, as YYYY-MM-DD; empty for today, or from the beginning where there is none
    /// for the same yet.
    #[serde(default)]
    pub since: String,
}

/// A price to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddPrice {
    /// The price.
    pub price: PriceForm,
}

/// A price to end.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichPrice {
    /// Which one.
    pub price: PriceId,
    /// The last day it holds, as YYYY-MM-DD; empty for yesterday.
    #[serde(default)]
    pub until: String,
}

/// A price, read.
pub(super) struct Read {
    pub what: PricedAs,
    pub words: String,
    pub facility: Option<FacilityId>,
    pub minutes: Option<i64>,
    pub sharing: i64,
    pub each: bool,
    pub lessons: Option<i64>,
    pub months: Option<i64>,
    pub currency: Currency,
    pub amount: i64,
    pub since: Day,
}

/// The price list, what holds first, then what held before.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<Price>> {
    let today = db.today();
    let mut all = store::all(db)?;
    all.sort_by_key(|price| price.until.is_some_and(|until| until < today));
    Ok(all)
}

/// Writes a price down. One for the same that has no end yet ends the day before.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, given: AddPrice) -> Result<Price> {
    let mut p = Problems::new();
    let dated = !given.price.since.trim().is_empty();
    let read = p.within("price.", |p| read(p, given.price, db.today()));
    p.done()?;
    let Some(mut read) = read else {
        return Err(Error::Fault("a price without an amount".to_owned()));
    };
    if !dated && !store::all(db)?.iter().any(|before| same(before, &read)) {
        read.since = Day::EPOCH;
    }
    let id = keep(db, &read)?;
    let price = store::find(db, id)?;
    db.label(format!("Price written down: {}, {} {}", price.says, price.amount, price.currency));
    Ok(price)
}

fn keep(db: &Writing<'_>, read: &Read) -> Result<PriceId> {
    for before in store::all(db)?.iter().filter(|before| same(before, read)) {
        if before.since >= read.since {
            if before.holds(read.since) {
                // The same day again: a slip is written over.
                store::forget(db, before.id)?;
            }
        } else if before.until.is_none_or(|until| until >= read.since) {
            store::end(db, before.id, read.since.plus(-1))?;
        }
    }
    let id: PriceId = db.id();
    store::insert(db, id, read)?;
    Ok(id)
}

/// Whether two prices are for the same.
fn same(before: &Price, read: &Read) -> bool {
    before.what == read.what
        && before.words == read.words
        && before.facility == read.facility
        && before.minutes == read.minutes
        && before.sharing == read.sharing
        && before.each == read.each
        && before.lessons == read.lessons
        && before.currency == read.currency.code()
}

/// Ends a price. What was reckoned with it stays as it is.
///
/// # Errors
/// `NotFound`; `Refused` when it would end before it began.
pub fn end(db: &Writing<'_>, which: WhichPrice) -> Result<Price> {
    let price = store::find(db, which.price)?;
    let mut p = Problems::new();
    let until = p
        .day_or_none("until", Some(&which.until), "The last day")
        .unwrap_or_else(|| db.today().plus(-1));
    p.done()?;
    if until < price.since {
        if !which.until.trim().is_empty() {
            return Err(Error::field("until", "before", "It would end before it began."));
        }
        // Written down today and a slip.
        store::forget(db, price.id)?;
        db.label(format!("Price put away: {}", price.says));
        return Ok(Price { until: Some(until), ..price });
    }
    store::end(db, price.id, until)?;
    db.label(format!("Price ended: {}", price.says));
    store::find(db, price.id)
}

fn read(p: &mut Problems, form: PriceForm, today: Day) -> Option<Read> {
    let words = match form.what {
        PricedAs::Other => p.name("words", &form.words, "What it is"),
        _ => p.line("words", &form.words, "The name"),
    };
    let lesson = matches!(form.what, PricedAs::Lesson | PricedAs::Package);
    if form.minutes.is_some() && !lesson {
        p.add("minutes", "no_lesson", "Only lessons have a length.");
    }
    let minutes =
        form.minutes.map(|minutes| p.within_bounds("minutes", minutes, 5, 480, "The length"));
    if form.what == PricedAs::Lesson && minutes.is_none() {
        p.add("minutes", "empty", "How long is the lesson?");
    }
    let sharing = p.within_bounds(
        "sharing",
        form.sharing.unwrap_or(1),
        1,
        20,
        "The number of those who share",
    );
    if form.each && sharing == 1 {
        p.add("each", "alone", "For each of how many? Say how many share the lesson.");
    }
    let package = form.what == PricedAs::Package;
    let lessons = form
        .lessons
        .map(|lessons| p.within_bounds("lessons", lessons, 1, 500, "The number of lessons"));
    if package && lessons.is_none() {
        p.add("lessons", "empty", "How many lessons are in it?");
    } else if !package && lessons.is_some() {
        p.add("lessons", "no_package", "Only a package has a number of lessons.");
    }
    let months =
        form.months.map(|months| p.within_bounds("months", months, 1, 120, "The number of months"));
    if !package && months.is_some() {
        p.add("months", "no_package", "Only a package runs out.");
    }
    let currency = typed::currency(p, "currency", &form.currency);
    let amount =
        currency.and_then(|currency| typed::amount_or_nothing(p, "amount", &form.amount, currency));
    let since = p.day_or_none("since", Some(&form.since), "The first day").unwrap_or(today);
    let (currency, amount) = (currency?, amount?);
    Some(Read {
        what: form.what,
        words,
        facility: form.facility,
        minutes,
        sharing,
        each: form.each,
        lessons,
        months,
        currency,
        amount,
        since,
    })
}

/// What lessons of one student cost everywhere.
#[derive(Clone, Debug, Default)]
pub struct LessonRates {
    /// The currency that the newest is in.
    pub currency: Option<Currency>,
    /// Length in minutes, and amount in smallest units.
    pub by_length: Vec<(i64, i64)>,
}

/// What lessons of one student cost everywhere on a day, by their length.
///
/// # Errors
/// `Storage`.
pub fn lesson_rates(db: &Reading<'_>, day: Day) -> Result<LessonRates> {
    let mut plain: Vec<Price> = store::all(db)?;
    plain.retain(|price| plainly(price) && price.holds(day));
    let currency = plain
        .iter()
        .max_by_key(|price| (price.since, price.id))
        .and_then(|price| Currency::parse(&price.currency));
    let mut rates: Vec<(i64, i64)> = plain
        .iter()
        .filter(|price| Some(price.currency.as_str()) == currency.map(Currency::code))
        .filter_map(|price| Some((price.minutes?, currency?.minor(&price.amount)?)))
        .collect();
    rates.sort_unstable();
    Ok(LessonRates { currency, by_length: rates })
}

fn plainly(price: &Price) -> bool {
    price.what == PricedAs::Lesson
        && price.facility.is_none()
        && price.sharing == 1
        && price.words.is_empty()
}

/// Sets what lessons of one student cost everywhere from today on: those that are left out end.
///
/// # Errors
/// `Storage`.
pub fn set_lesson_rates(
    db: &Writing<'_>,
    currency: Option<Currency>,
    rates: &[(i64, i64)],
) -> Result<()> {
    let today = db.today();
    let mut known: Vec<Price> = store::all(db)?;
    known.retain(|price| plainly(price) && price.holds(today));
    for price in &known {
        let stays = rates.iter().any(|(minutes, amount)| {
            price.minutes == Some(*minutes)
                && currency.is_some_and(|c| {
                    c.code() == price.currency && c.minor(&price.amount) == Some(*amount)
                })
        });
        if !stays && price.since == today {
            store::forget(db, price.id)?;
        } else if !stays {
            store::end(db, price.id, today.plus(-1))?;
        }
    }
    let Some(currency) = currency else { return Ok(()) };
    for (minutes, amount) in rates {
        let kept = known.iter().any(|price| {
            price.minutes == Some(*minutes)
                && price.currency == currency.code()
                && currency.minor(&price.amount) == Some(*amount)
        });
        if !kept {
            let mut read = Read {
                what: PricedAs::Lesson,
                words: String::new(),
                facility: None,
                minutes: Some(*minutes),
                sharing: 1,
                each: false,
                lessons: None,
                months: None,
                currency,
                amount: *amount,
                since: today,
            };
            if !store::all(db)?.iter().any(|before| same(before, &read)) {
                read.since = Day::EPOCH;
            }
            keep(db, &read)?;
        }
    }
    Ok(())
}
