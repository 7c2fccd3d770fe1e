//! Putting messages into the tray, in the transaction of what they are about. What is there already stays as
//! it is: nothing goes out twice for the same.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::begun::{Begun, begun};
use super::list::from;
use super::store::{self, Kept};
use super::{Addressee, MessageKind, MessageState, texts};
use crate::app::Writing;
use crate::error::Result;
use crate::invoices;
use crate::kinds::ids::{InvoiceId, LetterId, MessageId, ReminderId, StudentId, VisitId};
use crate::letters;

/// What messages are about.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum MessageOf {
    /// An issued letter.
    Letter {
        /// Which one.
        letter: LetterId,
    },
    /// An issued invoice or credit note.
    Invoice {
        /// Which one.
        invoice: InvoiceId,
    },
    /// A reminder of an invoice.
    Reminder {
        /// Which one.
        reminder: ReminderId,
    },
    /// The invitations of a visit that are due, a message each.
    Invitations {
        /// Of which visit.
        visit: VisitId,
    },
    /// An offer of a visit; it is noted as made.
    Offer {
        /// Of which visit.
        visit: VisitId,
        /// Its words.
        words: String,
    },
    /// The home plan of a visit.
    HomePlan {
        /// Of which visit.
        visit: VisitId,
    },
    /// What is to be known before a visit.
    BeforeVisit {
        /// Of which visit.
        visit: VisitId,
    },
    /// The questions before court, as a page to fill in at home.
    Questions {
        /// To whom.
        student: StudentId,
    },
    /// The question how the home plan of a visit goes.
    HomeReport {
        /// Of which visit.
        visit: VisitId,
    },
    /// The question when a student comes again, after a visit.
    ComeAgain {
        /// After which visit.
        visit: VisitId,
    },
    /// The coach\u{2019}s own words to a student.
    Words {
        /// To whom.
        student: StudentId,
    },
    /// A trial, to the coach.
    Trial {},
}

/// Messages to put into the tray.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PutMessages {
    /// What they are about.
    pub of: MessageOf,
}

/// Messages that are in the tray.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PutMessage {
    /// Which ones.
    pub messages: Vec<MessageId>,
    /// Whether all of them were there already: nothing goes out twice for the same.
    pub already: bool,
}

/// A letter to issue and to put into the tray.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct IssueAndPut {
    /// Of which visit.
    pub visit: VisitId,
}

/// Issues a letter and puts it into the tray, both or nothing.
///
/// # Errors
/// Those of issuing a letter and of putting it.
pub fn issue_letter(db: &Writing<'_>, given: IssueAndPut) -> Result<PutMessage> {
    let issued = letters::issue(db, letters::OfVisit { visit: given.visit })?;
    put(db, PutMessages { of: MessageOf::Letter { letter: issued.letter } })
}

/// Issues an invoice and puts it into the tray, both or nothing.
///
/// # Errors
/// Those of issuing an invoice and of putting it.
pub fn issue_invoice(db: &Writing<'_>, given: invoices::Issue) -> Result<PutMessage> {
    let invoice = invoices::issue(db, given)?.id;
    put(db, PutMessages { of: MessageOf::Invoice { invoice } })
}

/// Puts messages into the tray, to be read by the coach. Those that are there already stay as they are.
///
/// # Errors
/// `NotFound`; `NotPossible` where nobody may be written to, or there is nothing to send.
pub fn put(db: &Writing<'_>, given: PutMessages) -> Result<PutMessage> {
    let begun = begun(db, &given.of)?;
    let mut messages = Vec::new();
    let mut new = Vec::new();
    for one in begun {
        let words = format!("{} to {}", kind_words(one.kind), one.to.name);
        let (ids, fresh) = put_one(db, one)?;
        messages.extend(ids);
        if fresh {
            new.push(words);
        }
    }
    if let Some(first) = new.first() {
        db.cannot_be_undone();
        db.label(match new.len() {
            1 => format!("In the out-tray: {first}"),
            many => format!("In the out-tray: {many} messages, as {first}"),
        });
    }
    Ok(PutMessage { messages, already: new.is_empty() })
}

/// What a kind of message is called.
pub(super) fn kind_words(kind: MessageKind) -> &'static str {
    match kind {
        MessageKind::Letter => "letter",
        MessageKind::Invoice => "invoice",
        MessageKind::Reminder => "reminder",
        MessageKind::Invitation => "invitation",
        MessageKind::Offer => "offer",
        MessageKind::HomePlan => "home plan",
        MessageKind::BeforeVisit => "what to know before the visit",
        MessageKind::Questions => "questions before court",
        MessageKind::HomeReport => "how the home plan goes",
        MessageKind::ComeAgain => "when to come again",
        MessageKind::Words => "a word",
        MessageKind::Trial => "a trial",
    }
}

pub(super) fn cause(about: &str, address: &str) -> String {
    format!("{about}:{}", address.to_lowercase())
}

/// The cause without the address of who gets it.
pub(super) fn about(m: &Kept) -> &str {
    let end = m.cause.len().saturating_sub(m.to.address.to_lowercase().len() + 1);
    m.cause.get(..end).unwrap_or(&m.cause)
}

/// A Message-ID that says nothing of this machine, and is the same when it is sent again.
pub(super) fn mail_id(id: MessageId, from: &str) -> String {
    let domain = from.rsplit_once('@').map(|(_, domain)| domain);
    // An id is plain ASCII (RFC 5322, 3.6.4).
    let domain = domain.filter(|domain| domain.is_ascii()).unwrap_or("carryover.invalid");
    format!("{id}.1@{domain}")
}

fn put_one(db: &Writing<'_>, begun: Begun) -> Result<(Vec<MessageId>, bool)> {
    let first: MessageId = db.id();
    // What is of no record has no cause but itself.
    let about = if begun.about.is_empty() { format!("itself:{first}") } else { begun.about };
    // Two adults of one address get one message.
    let apart = |second: &Addressee| {
        second.address.is_empty() || !second.address.eq_ignore_ascii_case(&begun.to.address)
    };
    let second = begun.second.filter(apart).unwrap_or_default();
    let everyone: Vec<(&Addressee, &Addressee)> = match second.name.as_str() {
        "" => vec![(&begun.to, &second)],
        _ => vec![(&begun.to, &second), (&second, &begun.to)],
    };
    let mut known = Vec::new();
    for (to, _) in &everyone {
        known.extend(store::of_cause(db, &cause(&about, &to.address))?);
    }
    if !known.is_empty() {
        known.dedup();
        return Ok((known, false));
    }
    let (subject, words) = match begun.own {
        Some(own) => own,
        None => texts::text(db, begun.kind, begun.language)?,
    };
    let (subject, words) =
        (texts::filled(&subject, &begun.values), texts::filled(&words, &begun.values));
    let gaps = texts::gaps(&[&subject, &words], &begun.values);
    let from = from(db)?;
    let mut ids = Vec::new();
    for (to, with) in everyone {
        let id = if ids.is_empty() { first } else { db.id() };
        let m = Kept {
            id,
            cause: cause(&about, &to.address),
            together: first,
            kind: begun.kind,
            student: begun.student,
            payer: begun.payer,
            visit: begun.visit,
            invoice: begun.invoice,
            language: begun.language,
            from: from.clone(),
            to: to.clone(),
            with: with.clone(),
            subject: subject.clone(),
            words: words.clone(),
            gaps: gaps.clone(),
            method: begun.method.to_owned(),
            mail_id: mail_id(id, &from.address),
            state: MessageState::ToRead,
            tries: 0,
            first_try: None,
            next: None,
            trouble: None,
            said: String::new(),
            changed: db.now(),
            sha256: None,
        };
        store::insert(db, &m)?;
        ids.push(id);
    }
    for (place, part) in (1..).zip(&begun.parts) {
        store::add_part(db, first, place, part)?;
    }
    Ok((ids, true))
}
