//! What is in the tray, and what was.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Kept};
use super::{MessageLine, MessageShown, MessageState, WhichMessage, account, render, texts};
use crate::app::Reading;
use crate::error::Result;
use crate::invoices::WhichInvoice;
use crate::kinds::Instant;
use crate::settings;
use crate::students;

/// The most messages of one part of the tray.
const MOST: u32 = 500;

/// How many that are over are shown at a time.
const OVER: u32 = 50;

/// What of the tray.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ListMessages {
    /// Of what is over, only what changed before this moment.
    pub before: Option<Instant>,
}

/// A part of the tray.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TrayPart {
    /// How many there are.
    pub count: u32,
    /// The oldest of them first, as far as they are shown.
    pub messages: Vec<MessageLine>,
}

/// The tray.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Tray {
    /// What the coach has not read yet.
    pub to_read: TrayPart,
    /// What needs the coach: not sent, or unsure.
    pub needs: TrayPart,
    /// What is on its way.
    pub on_its_way: TrayPart,
    /// What is over, the newest first.
    pub over: Vec<MessageLine>,
    /// Whether there is more that is over.
    pub more: bool,
    /// Whether a mail account is set.
    pub account: bool,
}

/// The messages of one thing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessagesOf {
    /// The newest first.
    pub messages: Vec<MessageLine>,
}

fn part(db: &Reading<'_>, states: &[MessageState]) -> Result<TrayPart> {
    let mut part = TrayPart::default();
    for state in states {
        part.count += store::count(db, *state)?;
        part.messages.extend(store::in_state(db, *state, MOST)?.iter().map(Kept::line));
    }
    Ok(part)
}

/// The tray.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, ask: ListMessages) -> Result<Tray> {
    let mut over = store::over(db, ask.before, OVER + 1)?;
    let more = over.len() > usize::try_from(OVER).unwrap_or(usize::MAX);
    over.truncate(usize::try_from(OVER).unwrap_or(usize::MAX));
    Ok(Tray {
        to_read: part(db, &[MessageState::ToRead])?,
        needs: part(db, &[MessageState::Unsure, MessageState::Stopped])?,
        on_its_way: part(db, &[MessageState::Going, MessageState::Again, MessageState::Waiting])?,
        over: over.iter().map(Kept::line).collect(),
        more,
        account: account::show(db)?.is_set(),
    })
}

/// One message.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichMessage) -> Result<MessageShown> {
    let m = store::one(db, which.message)?;
    let gaps = texts::open(&[&m.subject, &m.words], &m.gaps);
    let from = match &m.sha256 {
        Some(_) => m.from.clone(),
        None => from(db)?,
    };
    Ok(MessageShown {
        against: if m.state == MessageState::ToRead { against(db, &m)? } else { Vec::new() },
        parts: store::parts(db, m.together)?,
        steps: store::steps(db, m.id)?,
        line: m.line(),
        from,
        with: m.with,
        language: m.language,
        words: m.words,
        gaps,
        visit: m.visit,
        invoice: m.invoice,
        payer: m.payer,
        mail_id: m.mail_id,
        tries: m.tries,
    })
}

/// From whom a message is that is released now.
pub(super) fn from(db: &Reading<'_>) -> Result<super::Addressee> {
    let me = settings::show(db)?;
    Ok(super::Addressee { name: me.name, address: me.email })
}

/// What keeps a message from being sent, a sentence each.
pub(super) fn against(db: &Reading<'_>, m: &Kept) -> Result<Vec<String>> {
    let mut against = Vec::new();
    for one in store::together(db, m.together)? {
        match one.to.address.as_str() {
            "" => against.push(format!("{} has no e-mail address.", one.to.name)),
            typed => against.extend(render::address(typed).err()),
        }
    }
    for gap in texts::open(&[&m.subject, &m.words], &m.gaps) {
        against.push(format!("{{{}}} has no value: {}", gap.field, gap.why));
    }
    if m.subject.is_empty() {
        against.push("It has no subject.".to_owned());
    }
    let from = from(db)?;
    match from.address.as_str() {
        "" => against.push(
            "Your own e-mail address is not known yet; write it down under Coach.".to_owned(),
        ),
        typed => against.extend(render::address(typed).err()),
    }
    if settings::show(db)?.sample {
        against.push("Nothing is sent from the sample season: its people are invented.".to_owned());
    } else if !account::show(db)?.is_set() {
        against.push("No mail account is set yet.".to_owned());
    }
    Ok(against)
}

/// What was sent to a student, or told, or is about to be.
///
/// # Errors
/// `NotFound`.
pub fn of_student(db: &Reading<'_>, which: students::Which) -> Result<MessagesOf> {
    students::show(db, which)?;
    let messages = store::of_student(db, which.student)?.iter().map(Kept::line).collect();
    Ok(MessagesOf { messages })
}

/// What was sent about an invoice.
///
/// # Errors
/// `Storage`.
pub fn of_invoice(db: &Reading<'_>, which: WhichInvoice) -> Result<MessagesOf> {
    let messages = store::of_invoice(db, which.invoice)?.iter().map(Kept::line).collect();
    Ok(MessagesOf { messages })
}

/// Messages whose bytes are not those that were released, a sentence each.
///
/// # Errors
/// `Storage`.
pub fn astray(db: &Reading<'_>) -> Result<Vec<String>> {
    let wrong = store::astray(db)?;
    Ok(wrong
        .into_iter()
        .map(|id| format!("The bytes of message {id} are not what was released."))
        .collect())
}
