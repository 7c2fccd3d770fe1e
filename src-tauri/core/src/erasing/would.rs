//! What is kept about a student, and what erasing would do, before it is done.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Backups, HealthKept, KindKept, Mentions, accounts, backups, health, kinds, mentions};
use crate::app::Reading;
use crate::app::erase::Belonging;
use crate::error::Result;
use crate::keeping::{self, Due};
use crate::kinds::Day;
use crate::kinds::text::counted;
use crate::payers;
use crate::students::{self, Which};
use crate::visits::{self, ListVisits, Stage};

/// What the accounts need.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct AccountsStay {
    /// One line for each thing that was agreed or offered.
    pub lines: Vec<String>,
    /// The first guess of the last day to keep it, for the coach to change.
    pub until: Day,
}

/// What is kept about a student, and what erasing would do.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WouldErase {
    /// The full name, which is to be typed.
    pub name: String,
    /// What is kept, kind by kind: all of it would go.
    pub kinds: Vec<KindKept>,
    /// What of it is about health, and can be erased alone.
    pub health: HealthKept,
    /// Until when it is kept, as far as the coach has said.
    pub until: Vec<Due>,
    /// How many lessons are with others too: only this student's part of them would go.
    pub shared: u32,
    /// What could stay for the accounts; `None` when nothing was agreed or offered for money.
    pub accounts: Option<AccountsStay>,
    /// What was invoiced and stays in the accounts, as a sentence; empty where nothing was.
    pub invoiced: String,
    /// Where others' records name the person.
    pub mentions: Mentions,
    /// The copies of the file that hold the person, or may.
    pub backups: Backups,
    /// Why it cannot be done now, as a sentence; empty when it can.
    pub against: String,
}

/// Says what is kept about a student, and what erasing would do.
///
/// # Errors
/// `NotFound`.
pub fn would_erase(db: &Reading<'_>, which: Which) -> Result<WouldErase> {
    let student = students::show(db, which)?;
    let belonging = Belonging::of(db, kinds::STUDENT, &which.student.to_string())?;
    let shared = belonging.shared().map(|(_, ids)| ids.len()).sum::<usize>();
    let needed = accounts::needed(db, which.student)?;
    let stay = needed.last().map(|(_, newest)| AccountsStay {
        lines: needed.iter().map(|(_, draft)| line(draft)).collect(),
        until: accounts::usual_until(newest.day),
    });
    Ok(WouldErase {
        kinds: kinds::kept(db, &belonging)?,
        health: health::health(db, which.student)?,
        until: keeping::of_student(db, which)?,
        shared: u32::try_from(shared).unwrap_or(u32::MAX),
        accounts: stay,
        invoiced: invoiced(db, which)?,
        mentions: mentions::mentions(db, which.student, &belonging)?,
        backups: backups::holding(db, which.student)?,
        against: against(db, which)?.unwrap_or_default(),
        name: student.profile.name,
    })
}

/// What was invoiced and stays.
pub(super) fn invoiced(db: &Reading<'_>, which: Which) -> Result<String> {
    Ok(payers::issued_for(db, which.student)?.map_or_else(String::new, |(name, many)| {
        format!(
            "{} to {name} and what was paid stay in the accounts, with the names on them: the law may have them kept. Ask an adviser for how long.",
            counted(many, "document issued", "documents issued")
        )
    }))
}

/// Why a student cannot be erased now.
pub(super) fn against(db: &Reading<'_>, which: Which) -> Result<Option<String>> {
    let ask = ListVisits { student: Some(which.student), ..ListVisits::default() };
    let open = visits::list(db, ask)?.into_iter().find(|visit| visit.stage == Stage::Open);
    Ok(open.map(|visit| {
        format!("A visit of {} is open ({}). Close it first, then erase.", visit.name, visit.when())
    }))
}

fn line(draft: &accounts::Draft) -> String {
    let many = counted(i64::try_from(draft.what.len()).unwrap_or(i64::MAX), "lesson", "lessons");
    let state = if draft.state == crate::offers::OfferState::Agreed { "agreed" } else { "offered" };
    let price = if draft.price.is_empty() { "price not known" } else { draft.price.as_str() };
    format!("{}: {many} {state}, {price}", draft.day.words())
}
