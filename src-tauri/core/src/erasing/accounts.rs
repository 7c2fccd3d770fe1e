//! What the accounts need of someone who was erased: what was agreed or offered for money, with the
//! name on the account, kept apart from everything else until a day that the coach sets.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::erase::Erasing;
use crate::app::{CoachFile, Reading, Written};
use crate::error::{Error, Result};
use crate::kinds::ids::{KeptId, OfferId, StudentId, VisitId};
use crate::kinds::{Day, Time};
use crate::offers::{self, OfferState};
use crate::students;
use crate::visits;

/// Years after the one in which something was agreed, for the first guess.
const YEARS: i32 = 10;

/// One thing that was agreed or offered for money.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct KeptForAccounts {
    /// Which one.
    pub id: KeptId,
    /// The name on the account.
    pub name: String,
    /// The postal address, where one was known.
    pub address: String,
    /// The day it was agreed, or offered.
    pub day: Day,
    /// What was to be paid for.
    pub what: Vec<PaidFor>,
    /// The whole price, as in "174.00 EUR"; empty when a part of it was not known.
    pub price: String,
    /// Whether it was agreed.
    pub state: OfferState,
    /// The last day it is kept.
    pub until: Day,
    /// Why, in the coach's words.
    pub reason: String,
}

/// A lesson that was to be paid for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PaidFor {
    /// The day.
    pub day: Day,
    /// When it began.
    pub starts: Time,
    /// When it ended.
    pub ends: Time,
    /// The facility.
    pub place: String,
    /// The court, or empty.
    pub court: String,
    /// What the lesson cost, as in "40.00 EUR".
    pub fee: String,
    /// What the court cost.
    pub court_cost: String,
}

/// Which of them.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichKept {
    /// Which one.
    pub kept: KeptId,
}

/// One of them is gone.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct LetGo {
    /// What was done, as a sentence.
    pub words: String,
}

/// What the accounts need of a student, as it would be kept, without ids. Declined offers are no money.
pub(super) fn needed(db: &Reading<'_>, student: StudentId) -> Result<Vec<(OfferId, Draft)>> {
    let name = students::show(db, students::Which { student })?.profile.name;
    let paid_by = store::on_account(db, student)?;
    let (name, address) = match paid_by {
        Some(paid_by) if store::has_payer(db, student)? => paid_by,
        Some((_, address)) => (name, address),
        None => (name, String::new()),
    };
    let ask = visits::ListVisits { student: Some(student), ..Default::default() };
    let mut needed = Vec::new();
    for visit in visits::list(db, ask)? {
        needed.extend(of_visit(db, visit.id, (&name, &address))?);
    }
    needed.sort_by_key(|(id, draft)| (draft.day, *id));
    Ok(needed)
}

/// What would be kept of one offer.
#[derive(Clone, Debug)]
pub(super) struct Draft {
    pub name: String,
    pub address: String,
    pub day: Day,
    pub what: Vec<PaidFor>,
    pub price: String,
    pub state: OfferState,
}

fn of_visit(
    db: &Reading<'_>,
    visit: VisitId,
    (name, address): (&str, &str),
) -> Result<Vec<(OfferId, Draft)>> {
    let offers = offers::list(db, visits::Which { visit })?.offers;
    let paid = offers.into_iter().filter(|offer| offer.state != OfferState::Declined);
    Ok(paid
        .map(|offer| {
            let what = offer.lessons.into_iter().map(|l| PaidFor {
                day: l.day,
                starts: l.starts,
                ends: l.ends,
                place: l.place,
                court: l.court,
                fee: l.fee,
                court_cost: l.court_cost,
            });
            let draft = Draft {
                name: name.to_owned(),
                address: address.to_owned(),
                day: offer.answered.unwrap_or(offer.made),
                what: what.collect(),
                price: offer.price,
                state: offer.state,
            };
            (offer.id, draft)
        })
        .collect())
}

/// The day until which it might be kept: the end of the tenth year after the newest of it.
pub(super) fn usual_until(newest: Day) -> Day {
    let year = chrono::Datelike::year(&newest.date()) + YEARS;
    Day::of(year, 12, 31).unwrap_or(newest)
}

/// What is kept for the accounts, what ends first on top.
///
/// # Errors
/// `Storage`.
pub fn kept_for_accounts(db: &Reading<'_>) -> Result<Vec<KeptForAccounts>> {
    store::kept(db, None)
}

/// Erases one of them, once its day has passed.
///
/// # Errors
/// `NotFound`; `NotPossible` before its day has passed.
pub fn let_go(file: &mut CoachFile, which: WhichKept) -> Result<Written<LetGo>> {
    let kept = file.read(|db| store::kept(db, Some(which.kept)))?;
    let Some(kept) = kept.into_iter().next() else {
        return Err(Error::NotFound {
            what: "record for the accounts",
            id: which.kept.to_string(),
        });
    };
    if kept.until >= file.today() {
        let words = format!(
            "This is kept for the accounts until {}. It can be erased the day after.",
            kept.until.words()
        );
        return Err(Error::not_possible("kept_for_accounts", words));
    }
    let what = Erasing {
        act: "erasing.let_go",
        label: "A record for the accounts erased",
        roots: vec![("kept_for_accounts", which.kept.to_string())],
        // A name alone erases nothing here: a student of that name may be there.
        spared: std::iter::once(crate::kinds::text::folded(&kept.name)).collect(),
    };
    let done = file.erase(what, |_, _| Ok(()), |_| Ok(()))?;
    let words =
        if done.cleared { "It is erased.".to_owned() } else { super::act::NOT_CLEARED.to_owned() };
    Ok(Written { value: LetGo { words }, act: done.written.act, changes: done.written.changes })
}
