//! A message as it arrives: made whole, then taken apart again by a reader of messages, so that what the
//! coach sees is what the bytes say.

use mailparse::{MailHeaderMap, ParsedMail};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::WhichMessage;
use super::list::from;
use super::put::mail_id;
use super::render::{self, Whole};
use super::store;
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::MessageId;

/// A part of a message as a reader of messages finds it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SeenPart {
    /// Its place, from 0.
    pub place: u32,
    /// Its file\u{2019}s name; empty for a text.
    pub name: String,
    /// Its media type.
    pub media: String,
    /// How many bytes it comes to.
    pub size: u64,
}

/// A message as it arrives.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageLook {
    /// From whom, as the header says.
    pub from: String,
    /// To whom.
    pub to: String,
    /// Who gets the same.
    pub with: String,
    /// The subject.
    pub subject: String,
    /// The date, as the header says.
    pub date: String,
    /// Its Message-ID.
    pub mail_id: String,
    /// The plain text.
    pub text: String,
    /// Everything it is made of.
    pub parts: Vec<SeenPart>,
    /// How many bytes the whole comes to.
    pub size: u64,
    /// Whether these are the bytes that went out; otherwise as they would now.
    pub sealed: bool,
}

/// A message as it arrives, or why that cannot be shown yet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageLooked {
    /// As it arrives.
    pub look: Option<MessageLook>,
    /// Why it cannot be shown, as a sentence; empty when it can.
    pub why: String,
}

/// A part of a message.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MessageFile {
    /// Of which message.
    pub message: MessageId,
    /// Which part, from 0.
    pub place: u32,
}

/// The bytes of a message: those that were released, or as they would be now.
fn bytes(db: &Reading<'_>, which: WhichMessage) -> Result<(Vec<u8>, bool, String)> {
    let m = store::one(db, which.message)?;
    if let Some(mime) = store::mime(db, &m)? {
        return Ok((mime, true, m.subject));
    }
    let from = from(db)?;
    if from.address.is_empty() {
        let words = "Your own e-mail address is not known yet; write it down under Coach.";
        return Err(Error::not_possible("no_address", words));
    }
    if m.to.address.is_empty() {
        let words = format!("{} has no e-mail address.", m.to.name);
        return Err(Error::not_possible("no_address", words));
    }
    if m.state == super::MessageState::Withdrawn && store::carried(db, m.together).is_err() {
        let words = "This message was withdrawn before it was made whole.";
        return Err(Error::not_possible("withdrawn", words));
    }
    let mime = render::render(&Whole {
        mail_id: &mail_id(m.id, &from.address),
        at: db.now(),
        language: m.language,
        from: &from,
        to: &m.to,
        with: &m.with,
        subject: &m.subject,
        words: &m.words,
        method: &m.method,
        parts: &store::carried(db, m.together)?,
    })?;
    Ok((mime, false, m.subject))
}

fn parsed(bytes: &[u8]) -> Result<ParsedMail<'_>> {
    mailparse::parse_mail(bytes).map_err(|e| Error::Fault(format!("our own message: {e}")))
}

/// Parts that hold no others, in their order.
fn leaves<'a, 'b>(mail: &'b ParsedMail<'a>, all: &mut Vec<&'b ParsedMail<'a>>) {
    if mail.subparts.is_empty() {
        all.push(mail);
    }
    for part in &mail.subparts {
        leaves(part, all);
    }
}

fn name_of(part: &ParsedMail<'_>) -> String {
    let disposition = part.get_content_disposition();
    disposition.params.get("filename").cloned().unwrap_or_default()
}

/// A message as it arrives; while an address is missing, that.
///
/// # Errors
/// `NotFound`.
pub fn look(db: &Reading<'_>, which: WhichMessage) -> Result<MessageLooked> {
    match bytes(db, which) {
        Ok((bytes, sealed, _)) => {
            Ok(MessageLooked { look: Some(taken_apart(&bytes, sealed)?), why: String::new() })
        }
        Err(Error::NotPossible { words, .. }) => Ok(MessageLooked { look: None, why: words }),
        Err(other) => Err(other),
    }
}

fn taken_apart(bytes: &[u8], sealed: bool) -> Result<MessageLook> {
    let mail = parsed(bytes)?;
    let header = |name: &str| mail.headers.get_first_value(name).unwrap_or_default();
    let mut all = Vec::new();
    leaves(&mail, &mut all);
    let mut parts = Vec::new();
    let mut text = String::new();
    for (place, part) in (0..).zip(&all) {
        let body = part.get_body_raw().map_err(|e| Error::Fault(e.to_string()))?;
        let name = name_of(part);
        if text.is_empty() && name.is_empty() && part.ctype.mimetype == "text/plain" {
            text = part.get_body().map_err(|e| Error::Fault(e.to_string()))?.replace("\r\n", "\n");
        }
        parts.push(SeenPart {
            place,
            name,
            media: part.ctype.mimetype.clone(),
            size: body.len() as u64,
        });
    }
    Ok(MessageLook {
        from: header("From"),
        to: header("To"),
        with: header("Cc"),
        subject: header("Subject"),
        date: header("Date"),
        mail_id: header("Message-ID"),
        text,
        parts,
        size: bytes.len() as u64,
        sealed,
    })
}

/// A message as a file (RFC 5322): its name and bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` while an address is missing.
pub fn file(db: &Reading<'_>, which: WhichMessage) -> Result<(String, Vec<u8>)> {
    let (bytes, _, subject) = bytes(db, which)?;
    Ok((format!("{}.eml", crate::print::file_words(&subject)), bytes))
}

/// A part of a message as a file: its name and bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` while an address is missing.
pub fn part(db: &Reading<'_>, which: MessageFile) -> Result<(String, Vec<u8>)> {
    let (bytes, ..) = bytes(db, WhichMessage { message: which.message })?;
    let mail = parsed(&bytes)?;
    let mut all = Vec::new();
    leaves(&mail, &mut all);
    let part = usize::try_from(which.place).ok().and_then(|place| all.get(place).copied());
    let Some(part) = part else {
        return Err(Error::NotFound { what: "part of a message", id: which.place.to_string() });
    };
    let name = match (name_of(part).as_str(), part.ctype.mimetype.as_str()) {
        ("", "text/calendar") => "invitation.ics".to_owned(),
        ("", "text/html") => "message.html".to_owned(),
        ("", _) => "message.txt".to_owned(),
        (name, _) => crate::print::file_words(name),
    };
    let bytes = part.get_body_raw().map_err(|e| Error::Fault(e.to_string()))?;
    Ok((name, bytes))
}
