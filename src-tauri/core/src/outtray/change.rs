//! Changing a message while the coach reads it: its words, its address, what it carries. Those that say
//! the same to several people change together.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::show;
use super::put::{about, cause};
use super::render::{self, Carried};
use super::store::{self, Kept};
use super::{MessageShown, MessageState, WhichMessage, texts};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{MessageId, MessagePartId};

/// The most bytes of what a message carries: encoded, they come to about 25 MB, which many mail servers
/// take and few go beyond (common practice, no source).
const MOST: usize = 18_000_000;

/// New words of a message.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EditMessage {
    /// Which one.
    pub message: MessageId,
    /// Its subject.
    pub subject: String,
    /// Its words.
    pub words: String,
    /// The address of who gets it; left out: as it is.
    #[serde(default)]
    pub to_address: Option<String>,
}

/// A file to carry.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Attach {
    /// With which message.
    pub message: MessageId,
    /// The file\u{2019}s name.
    pub name: String,
    /// Its bytes, in base64.
    pub base64: String,
}

/// A file not to carry.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeOff {
    /// Of which message.
    pub message: MessageId,
    /// Which file.
    pub part: MessagePartId,
}

/// A message that can still be changed.
pub(super) fn to_read(db: &Writing<'_>, message: MessageId) -> Result<Kept> {
    let m = store::one(db, message)?;
    if m.state == MessageState::ToRead {
        return Ok(m);
    }
    let words = "This message was released or withdrawn; it cannot be changed any more.";
    Err(Error::not_possible("released", words))
}

/// Changes the words of a message, and to which address it goes.
///
/// # Errors
/// `NotFound`; `NotPossible` once it was released; `Refused` with every field that is wrong.
pub fn edit(db: &Writing<'_>, given: EditMessage) -> Result<MessageShown> {
    let m = to_read(db, given.message)?;
    let mut p = Problems::new();
    let subject = p.line("subject", &given.subject, "The subject");
    if subject.is_empty() {
        p.add("subject", "empty", "A message needs a subject.");
    }
    let words = texts::long(&mut p, "words", &given.words);
    if words.is_empty() {
        p.add("words", "empty", "The message is empty.");
    }
    let to = given.to_address.as_deref().map(|typed| p.email("to_address", typed));
    if let Some(to) = to.as_deref().filter(|to| !to.is_empty()) {
        if let Err(words) = render::address(to) {
            p.add("to_address", "no_such_address", words);
        }
        let another = store::of_cause(db, &cause(about(&m), to))?.filter(|id| *id != m.id);
        if another.is_some() {
            p.add("to_address", "already", "The same goes to that address already.");
        }
    }
    p.done()?;
    let gaps = texts::open(&[&subject, &words], &m.gaps);
    for one in store::together(db, m.together)? {
        store::reword(db, one.id, &subject, &words, &gaps)?;
        if one.id != m.id
            && let Some(to) = &to
        {
            store::set_with(db, one.id, to)?;
        }
    }
    if let Some(to) = to {
        store::readdress(db, m.id, &cause(about(&m), &to), &to)?;
    }
    db.cannot_be_undone();
    db.label(format!("Message changed: {subject}"));
    show(db, WhichMessage { message: m.id })
}

/// Adds a file to what a message carries.
///
/// # Errors
/// `NotFound`; `NotPossible` once it was released; `Refused` when the file is too large, or has no name.
pub fn attach(db: &Writing<'_>, given: Attach) -> Result<MessageShown> {
    let m = to_read(db, given.message)?;
    let mut p = Problems::new();
    let name = p.name("name", &crate::print::file_words(&given.name), "The file\u{2019}s name");
    let bytes = STANDARD.decode(given.base64.as_bytes()).unwrap_or_default();
    if bytes.is_empty() {
        p.add("base64", "empty", "The file is empty, or could not be read.");
    }
    let carried: i64 = store::parts(db, m.together)?.iter().map(|part| part.size).sum();
    let all = bytes.len() + usize::try_from(carried).unwrap_or_default();
    if all > MOST {
        let words = format!(
            "With it, the files of this message come to {} MB; {} MB are as much as most mail servers take. Send a link, or the file in another way.",
            all.div_ceil(1_000_000),
            MOST / 1_000_000
        );
        p.add("base64", "too_large", words);
    }
    p.done()?;
    let media = media_of(&name).to_owned();
    let place = store::last_place(db, m.together)? + 1;
    store::add_part(db, m.together, place, &Carried { name: name.clone(), media, bytes })?;
    db.cannot_be_undone();
    db.label(format!("Carried with {}: {name}", m.subject));
    show(db, WhichMessage { message: m.id })
}

/// The media type of a file by its ending (RFC 6838's registry), as far as coaches send them.
fn media_of(name: &str) -> &'static str {
    let ending = name.rsplit_once('.').map(|(_, ending)| ending.to_ascii_lowercase());
    match ending.as_deref() {
        Some("pdf") => "application/pdf",
        Some("png") => "image/png",
        Some("jpg" | "jpeg") => "image/jpeg",
        Some("txt") => "text/plain; charset=utf-8",
        Some("html" | "htm") => "text/html; charset=utf-8",
        Some("csv") => "text/csv; charset=utf-8",
        Some("xml") => "application/xml",
        Some("mp4") => "video/mp4",
        _ => "application/octet-stream",
    }
}

/// Takes a file off what a message carries.
///
/// # Errors
/// `NotFound`; `NotPossible` once it was released, or for the calendar object of an invitation.
pub fn take_off(db: &Writing<'_>, given: TakeOff) -> Result<MessageShown> {
    let m = to_read(db, given.message)?;
    let parts = store::parts(db, m.together)?;
    let part = parts.iter().find(|part| part.id == given.part);
    if !m.method.is_empty() && part.is_some_and(|part| part.media == render::CALENDAR) {
        let words = "An invitation is nothing without it. Withdraw the message instead.";
        return Err(Error::not_possible("invitation", words));
    }
    if !store::drop_part(db, m.together, given.part)? {
        return Err(Error::NotFound { what: "file of a message", id: given.part.to_string() });
    }
    db.cannot_be_undone();
    db.label(format!("Not carried any more with {}", m.subject));
    show(db, WhichMessage { message: m.id })
}
