//! Carrying messages to the mail server: which is next, and what came of it. The core keeps the order of
//! things; the network is behind [`Carrier`].
//!
//! A message is noted as *going* and that is committed before the server is asked. What the server then
//! says is noted when it is known. A program that dies between the two finds the message *unsure*.

use chrono::Duration;

use super::account::{self, MailAccount};
use super::store::{self, Becomes, Kept};
use super::{MailTrouble, MessageState};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Instant;
use crate::kinds::ids::MessageId;
use crate::settings;

/// A message to hand over: its envelope (RFC 5321) and its bytes.
#[derive(Clone, Debug)]
pub struct Parcel {
    /// Which one.
    pub message: MessageId,
    /// Whom the server tells when it cannot be delivered.
    pub from: String,
    /// Who gets it: one.
    pub to: String,
    /// The bytes.
    pub bytes: Vec<u8>,
}

/// Who signs in.
#[derive(Clone)]
pub struct SignIn {
    /// The name.
    pub user: String,
    /// The password. It is never written down or shown.
    pub password: String,
}

impl std::fmt::Debug for SignIn {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("SignIn").field("user", &self.user).finish_non_exhaustive()
    }
}

/// Something that stood in the way, and what the server said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InTheWay {
    /// What.
    pub trouble: MailTrouble,
    /// What the server said, or the system; empty for nothing.
    pub said: String,
}

/// What came of handing a message over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Came {
    /// The server took it; what it said.
    Accepted(String),
    /// The server did not take it for now.
    Later(InTheWay),
    /// The server does not take it.
    Refused(InTheWay),
    /// The connection was gone before the message was begun: nothing was sent.
    Closed(InTheWay),
    /// The connection broke while it was handed over, before an answer: it may have been sent.
    Unsure(String),
}

/// A way to a mail server.
pub trait Carrier: Send + Sync {
    /// Opens a connection and signs in. Without encryption nothing is sent.
    ///
    /// # Errors
    /// What stood in the way.
    fn open(
        &self,
        account: &MailAccount,
        sign_in: &SignIn,
    ) -> std::result::Result<Box<dyn Line>, InTheWay>;
}

/// A connection on which messages are handed over, one after the other.
pub trait Line: Send {
    /// Hands one over.
    fn hand_over(&mut self, parcel: &Parcel) -> Came;
}

/// What is to be done next.
#[derive(Clone, Debug)]
pub enum Next {
    /// Hand this over. It is noted as going.
    Parcel(Parcel),
    /// Nothing before this moment.
    At(Instant),
    /// Nothing at all.
    Nothing,
}

/// How long is waited before another try: minutes after the first, the second and so on, then a day each
/// time (common practice; RFC 5321, 4.5.4.1, wants at least 30 minutes between most tries of a server, and
/// at least four to five days before it gives up).
const PAUSES: [i64; 4] = [1, 5, 30, 120];

/// For so long it is tried.
const DAYS: i64 = 5;

/// How long is waited after so many tries that came to nothing.
pub fn pause(tries: i64) -> Duration {
    let place = usize::try_from(tries.saturating_sub(1)).unwrap_or_default();
    PAUSES.get(place).map_or(Duration::days(1), |minutes| Duration::minutes(*minutes))
}

fn after(at: Instant, pause: Duration) -> Instant {
    Instant::from_chrono(&(at.utc() + pause))
}

/// Takes the next message that is due, and notes that it is going.
///
/// # Errors
/// `Storage`; `Fault` when its bytes are not what was released.
pub fn next(db: &Writing<'_>) -> Result<Next> {
    let Some((id, at)) = store::next(db)? else { return Ok(Next::Nothing) };
    if at > db.now() {
        return Ok(Next::At(at));
    }
    let m = store::one(db, id)?;
    let Some(bytes) = store::mime(db, &m)? else {
        return Err(crate::error::Error::Fault(format!("message {id} waits without its bytes")));
    };
    store::become_so(
        db,
        id,
        &Becomes {
            tries: m.tries + 1,
            first_try: m.first_try.or(Some(db.now())),
            ..Becomes::plain(&m, MessageState::Going, "")
        },
    )?;
    db.cannot_be_undone();
    db.label(format!("Handed to the mail server: {}", m.subject));
    Ok(Next::Parcel(Parcel { message: id, from: m.from.address, to: m.to.address, bytes }))
}

/// Notes what came of a message that was going.
///
/// # Errors
/// `NotFound`, `Storage`.
pub fn came(db: &Writing<'_>, message: MessageId, came: &Came) -> Result<()> {
    let m = store::one(db, message)?;
    if m.state != MessageState::Going {
        return Ok(());
    }
    let (to, words) = match came {
        Came::Accepted(said) => (
            Becomes::plain(&m, MessageState::Accepted, said),
            format!("Taken by the mail server: {}", m.subject),
        ),
        Came::Later(way) | Came::Closed(way) => {
            (later(db, &m, way), format!("Not yet sent: {}", m.subject))
        }
        Came::Refused(way) => (
            Becomes {
                trouble: Some(way.trouble),
                ..Becomes::plain(&m, MessageState::Stopped, &way.said)
            },
            format!("Not sent: {}", m.subject),
        ),
        Came::Unsure(said) => (
            Becomes {
                trouble: Some(MailTrouble::Broke),
                ..Becomes::plain(&m, MessageState::Unsure, said)
            },
            format!("It may have been sent: {}", m.subject),
        ),
    };
    store::become_so(db, message, &to)?;
    db.cannot_be_undone();
    db.label(words);
    Ok(())
}

fn later<'a>(db: &Writing<'_>, m: &Kept, way: &'a InTheWay) -> Becomes<'a> {
    let over = m.first_try.is_some_and(|first| after(first, Duration::days(DAYS)) <= db.now());
    let state = if over { MessageState::Stopped } else { MessageState::Again };
    Becomes {
        trouble: Some(way.trouble),
        next: (!over).then(|| after(db.now(), pause(m.tries))),
        ..Becomes::plain(m, state, &way.said)
    }
}

/// Notes that a message that was going was not begun: the connection could not be opened. Where only time
/// helps it is tried again; otherwise it waits until the coach has seen to the account.
///
/// # Errors
/// `NotFound`, `Storage`.
pub fn not_opened(db: &Writing<'_>, message: MessageId, way: &InTheWay) -> Result<()> {
    let m = store::one(db, message)?;
    if m.state != MessageState::Going {
        return Ok(());
    }
    let to = match way.trouble {
        MailTrouble::Away | MailTrouble::Later => later(db, &m, way),
        trouble => Becomes {
            trouble: Some(trouble),
            next: Some(db.now()),
            tries: m.tries - 1,
            ..Becomes::plain(&m, MessageState::Waiting, &way.said)
        },
    };
    store::become_so(db, message, &to)?;
    db.cannot_be_undone();
    db.label(format!("Not yet sent: {}", m.subject));
    Ok(())
}

/// How many messages were going when the program came to its end.
///
/// # Errors
/// `Storage`.
pub fn behind(db: &Reading<'_>) -> Result<u32> {
    store::count(db, MessageState::Going)
}

/// Notes that whatever was going when the program came to its end may have been sent.
///
/// # Errors
/// `Storage`.
pub fn catch_up(db: &Writing<'_>) -> Result<()> {
    for m in store::in_state(db, MessageState::Going, u32::MAX)? {
        let said = "the program came to its end meanwhile";
        let to = Becomes {
            trouble: Some(MailTrouble::Broke),
            ..Becomes::plain(&m, MessageState::Unsure, said)
        };
        store::become_so(db, m.id, &to)?;
    }
    db.cannot_be_undone();
    Ok(())
}

/// The account and the name to sign in with; `None` while none is set.
///
/// # Errors
/// `Storage`.
pub fn signing_in(db: &Reading<'_>) -> Result<Option<(MailAccount, String)>> {
    let account = account::show(db)?;
    if !account.is_set() {
        return Ok(None);
    }
    let user = match account.user.as_str() {
        "" => settings::show(db)?.email,
        user => user.to_owned(),
    };
    Ok(Some((account, user)))
}

/// How many messages are released and not handed over yet.
///
/// # Errors
/// `Storage`.
pub fn left(db: &Reading<'_>) -> Result<u32> {
    let mut left = 0;
    for state in [MessageState::Waiting, MessageState::Going, MessageState::Again] {
        left += store::count(db, state)?;
    }
    Ok(left)
}
