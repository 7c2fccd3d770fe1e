//! Releasing messages, sending one again, telling it in another way, taking it out of the tray.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::change::to_read;
use super::list::{against, from, show};
use super::put::mail_id;
use super::render::{self, Whole};
use super::store::{self, Becomes, Kept};
use super::{MessageShown, MessageState, WhichMessage, follow_up};
use crate::app::Writing;
use crate::calendar;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{LessonId, MessageId, StudentId};

/// Messages that the coach has read and that may go out.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReleaseMessages {
    /// Which ones.
    pub messages: Vec<MessageId>,
}

/// A message to send again.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Again {
    /// Which one.
    pub message: MessageId,
    /// Whether the coach accepts that it may arrive twice.
    #[serde(default)]
    pub twice: bool,
}

/// How a message was told in another way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ToldHow {
    /// By telephone.
    Phone,
    /// In person.
    Person,
    /// As a short text.
    ShortText,
    /// On paper.
    Paper,
    /// With another mail program, from a saved file.
    File,
    /// They say that it arrived.
    Arrived,
}

/// A message that was told in another way.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Told {
    /// Which one.
    pub message: MessageId,
    /// How.
    pub how: ToldHow,
    /// What was said besides; empty for nothing.
    #[serde(default)]
    pub words: String,
}

/// A message not to send.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WithdrawMessage {
    /// Which one.
    pub message: MessageId,
    /// Why; empty for no reason.
    #[serde(default)]
    pub reason: String,
}

/// Messages that were released.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct ReleasedMessages {
    /// How many go out now.
    pub released: u32,
}

/// Makes messages whole, byte for byte, and lets them go out. Those that say the same to several people
/// go together. All of them, or none.
///
/// # Errors
/// `NotFound`; `NotPossible` when one was released already, or cannot be sent, with why.
pub fn release(db: &Writing<'_>, given: ReleaseMessages) -> Result<ReleasedMessages> {
    let mut firsts: Vec<MessageId> = Vec::new();
    for message in given.messages {
        let first = to_read(db, message)?.together;
        if !firsts.contains(&first) {
            firsts.push(first);
        }
    }
    if firsts.is_empty() {
        return Err(Error::not_possible("nothing", "There is nothing to send."));
    }
    let (mut released, mut label) = (0, String::new());
    for first in firsts {
        let all = store::together(db, first)?;
        for m in &all {
            let against = against(db, m)?;
            if !against.is_empty() {
                let words =
                    format!("\u{201c}{}\u{201d} cannot be sent: {}", m.subject, against.join(" "));
                return Err(Error::not_possible("cannot_be_sent", words));
            }
        }
        let parts = store::carried(db, first)?;
        for m in &all {
            seal(db, m, &parts)?;
            let to = Becomes {
                next: Some(follow_up::not_before(db, m.student)?),
                ..Becomes::plain(m, MessageState::Waiting, "")
            };
            store::become_so(db, m.id, &to)?;
            label = format!("Released: {} to {}", m.subject, m.to.name);
            released += 1;
        }
        store::drop_part_bytes(db, first)?;
    }
    db.cannot_be_undone();
    db.label(if released == 1 { label } else { format!("{released} messages released") });
    Ok(ReleasedMessages { released })
}

/// Makes a message whole and keeps its bytes.
fn seal(db: &Writing<'_>, m: &Kept, parts: &[render::Carried]) -> Result<()> {
    let from = from(db)?;
    let mail_id = mail_id(m.id, &from.address);
    let mime = render::render(&Whole {
        mail_id: &mail_id,
        at: db.now(),
        language: m.language,
        from: &from,
        to: &m.to,
        with: &m.with,
        subject: &m.subject,
        words: &m.words,
        method: &m.method,
        parts,
    })?;
    store::seal(db, m, &from, &mail_id, &mime)
}

/// Lets a message go out again, byte for byte as before.
///
/// # Errors
/// `NotFound`; `NotPossible` while it was not released, or is going; `Refused` when it may arrive twice and
/// the coach did not accept that.
pub fn again(db: &Writing<'_>, given: Again) -> Result<MessageShown> {
    let m = store::one(db, given.message)?;
    let may_be_there = match m.state {
        MessageState::Accepted | MessageState::Unsure => true,
        MessageState::Told => m.tries > 0,
        MessageState::Stopped | MessageState::Again | MessageState::Waiting => false,
        MessageState::ToRead | MessageState::Going | MessageState::Withdrawn => {
            let words = "This message cannot be sent again as it stands.";
            return Err(Error::not_possible("not_now", words));
        }
    };
    if m.sha256.is_none() {
        let words = "This message was never made to be sent.";
        return Err(Error::not_possible("not_now", words));
    }
    if may_be_there && !given.twice {
        let words = "It may be there already, and would then arrive twice.";
        return Err(Error::field("twice", "may_be_there", words));
    }
    let to = Becomes {
        next: Some(db.now()),
        tries: 0,
        first_try: None,
        ..Becomes::plain(&m, MessageState::Waiting, "")
    };
    store::become_so(db, m.id, &to)?;
    db.cannot_be_undone();
    db.label(format!("Sent again: {} to {}", m.subject, m.to.name));
    show(db, WhichMessage { message: m.id })
}

/// Notes that a message was told in another way; it does not go out any more.
///
/// # Errors
/// `NotFound`; `NotPossible` while it is going, or once the server took it or it was withdrawn; `Refused`
/// when the words are too long.
pub fn tell(db: &Writing<'_>, given: Told) -> Result<MessageShown> {
    let m = store::one(db, given.message)?;
    if matches!(m.state, MessageState::Going | MessageState::Withdrawn | MessageState::Accepted) {
        let words = "This message is going, or is over already.";
        return Err(Error::not_possible("not_now", words));
    }
    let mut p = Problems::new();
    let words = p.line("words", &given.words, "What was said");
    p.done()?;
    let how = match given.how {
        ToldHow::Phone => "Told by telephone.",
        ToldHow::Person => "Told in person.",
        ToldHow::ShortText => "Told as a short text.",
        ToldHow::Paper => "Handed over on paper.",
        ToldHow::File => "Sent with another mail program.",
        ToldHow::Arrived => "They say that it arrived.",
    };
    let said = format!("{how} {words}").trim().to_owned();
    store::become_so(db, m.id, &Becomes::plain(&m, MessageState::Told, &said))?;
    db.cannot_be_undone();
    db.label(format!("{}: {how}", m.subject));
    show(db, WhichMessage { message: m.id })
}

/// Takes a message out of the tray. An invitation is due again then.
///
/// # Errors
/// `NotFound`; `NotPossible` when it is going or over; `Refused` when the reason is too long.
pub fn withdraw(db: &Writing<'_>, given: WithdrawMessage) -> Result<MessageShown> {
    let m = store::one(db, given.message)?;
    let can = matches!(
        m.state,
        MessageState::ToRead | MessageState::Waiting | MessageState::Again | MessageState::Stopped
    );
    if !can {
        let words = "This message is going, may have been sent, or is over already.";
        return Err(Error::not_possible("not_now", words));
    }
    let mut p = Problems::new();
    let reason = p.line("reason", &given.reason, "The reason");
    p.done()?;
    let gone = store::may_have_gone(db, m.id)?;
    let mut others = false;
    for one in store::together(db, m.together)? {
        if one.id == m.id || (one.state == MessageState::ToRead && m.state == MessageState::ToRead)
        {
            let to = Becomes::plain(&one, MessageState::Withdrawn, &reason);
            store::become_so(db, one.id, &to)?;
        } else {
            others |= one.state != MessageState::Withdrawn;
        }
    }
    if let Some((lesson, student, sequence)) = invitation(&m).filter(|_| !others && !gone) {
        calendar::withdrawn(db, lesson, student, sequence)?;
    }
    db.cannot_be_undone();
    db.label(format!("Withdrawn: {} to {}", m.subject, m.to.name));
    show(db, WhichMessage { message: m.id })
}

/// The lesson, the student and the SEQUENCE of an invitation.
fn invitation(m: &Kept) -> Option<(LessonId, StudentId, u32)> {
    let mut parts = m.cause.strip_prefix("invitation:")?.splitn(4, ':');
    let lesson = uuid::Uuid::parse_str(parts.next()?).ok()?;
    let student = uuid::Uuid::parse_str(parts.next()?).ok()?;
    Some((lesson.into(), student.into(), parts.next()?.parse().ok()?))
}
