//! A message as it goes out: plain text and HTML, a calendar object, and what it carries
//! (RFC 5322, 2045 to 2049, 2231; RFC 6047 for calendar objects).
//!
//! The same message gives the same bytes: its boundaries are made of its id, its date is that of its release.

use std::time::{Duration, UNIX_EPOCH};

use lettre::Address;
use lettre::message::header::{ContentDisposition, ContentType, Header, HeaderName, HeaderValue};
use lettre::message::{Attachment, Mailbox, Message, MultiPart, SinglePart};

use super::Addressee;
use crate::error::{Error, Result};
use crate::kinds::{Instant, Language};

/// The media type of a calendar object; where a message has a method it stands among the texts, for a
/// calendar program to read.
pub(super) const CALENDAR: &str = "text/calendar";

/// What a message is made of.
pub(super) struct Whole<'a> {
    pub mail_id: &'a str,
    pub at: Instant,
    pub language: Language,
    pub from: &'a Addressee,
    pub to: &'a Addressee,
    pub with: &'a Addressee,
    pub subject: &'a str,
    pub words: &'a str,
    pub method: &'a str,
    pub parts: &'a [Carried],
}

/// A file that a message carries.
#[derive(Clone, Debug)]
pub(super) struct Carried {
    pub name: String,
    pub media: String,
    pub bytes: Vec<u8>,
}

/// `Content-Language` (RFC 3282).
#[derive(Clone)]
struct ContentLanguage(String);

impl Header for ContentLanguage {
    fn name() -> HeaderName {
        HeaderName::new_from_ascii_str("Content-Language")
    }

    fn parse(said: &str) -> std::result::Result<Self, Box<dyn std::error::Error + Send + Sync>> {
        Ok(Self(said.to_owned()))
    }

    fn display(&self) -> HeaderValue {
        HeaderValue::new(Self::name(), self.0.clone())
    }
}

/// Reads an e-mail address; what is wrong with it, as a sentence, where it is none.
pub(super) fn address(typed: &str) -> std::result::Result<Address, String> {
    typed.parse().map_err(|_| format!("\u{201c}{typed}\u{201d} is not an e-mail address."))
}

fn mailbox(who: &Addressee) -> Result<Mailbox> {
    let email = address(&who.address)
        .map_err(|words| Error::field("to_address", "no_such_address", words))?;
    let name = (!who.name.is_empty() && who.name != who.address).then(|| who.name.clone());
    Ok(Mailbox::new(name, email))
}

fn media(said: &str) -> Result<ContentType> {
    ContentType::parse(said).map_err(|e| Error::Fault(format!("{said}: {e}")))
}

/// The bytes of a message.
///
/// # Errors
/// `Refused` when an address is none.
pub(super) fn render(whole: &Whole<'_>) -> Result<Vec<u8>> {
    let (seconds, nanos) = whole.at.unix();
    // "=w" and "=t" stand in no quoted-printable text and in no base64, so no boundary can be in a part.
    let id = whole.mail_id.split('@').next().unwrap_or_default().replace('.', "_");
    let boundary = |which: &str| format!("={which}={id}");
    let mut message = Message::builder()
        .message_id(Some(format!("<{}>", whole.mail_id)))
        .date(UNIX_EPOCH + Duration::new(seconds, nanos))
        .from(mailbox(whole.from)?)
        .to(mailbox(whole.to)?)
        .subject(whole.subject)
        .header(ContentLanguage(whole.language.code().to_owned()));
    if !whole.with.address.is_empty() {
        message = message.cc(mailbox(whole.with)?);
    }
    let mut texts = MultiPart::alternative()
        .boundary(boundary("texts"))
        .singlepart(SinglePart::plain(whole.words.to_owned()))
        .singlepart(SinglePart::html(html(whole.words, whole.language)));
    let mut attached = Vec::new();
    for part in whole.parts {
        if part.media == CALENDAR && !whole.method.is_empty() {
            let kind = format!("{CALENDAR}; method={}; charset=UTF-8", whole.method);
            let text = String::from_utf8_lossy(&part.bytes).into_owned();
            texts = texts.singlepart(
                SinglePart::builder()
                    .header(media(&kind)?)
                    .header(ContentDisposition::inline())
                    .body(text),
            );
        } else {
            let file = Attachment::new(part.name.clone());
            attached.push(file.body(part.bytes.clone(), media(&part.media)?));
        }
    }
    let made = if attached.is_empty() {
        message.multipart(texts)
    } else {
        let whole = MultiPart::mixed().boundary(boundary("whole")).multipart(texts);
        message.multipart(attached.into_iter().fold(whole, MultiPart::singlepart))
    };
    let made = made.map_err(|e| Error::Fault(e.to_string()))?;
    Ok(made.formatted())
}

/// The same words as HTML: paragraphs and line breaks, nothing else.
fn html(words: &str, language: Language) -> String {
    let mut html = format!(
        "<!doctype html>\n<html lang=\"{}\"><head><meta charset=\"utf-8\"></head><body>\n",
        language.code()
    );
    for paragraph in words.split("\n\n").map(str::trim).filter(|p| !p.is_empty()) {
        html.push_str("<p>");
        html.push_str(&escaped(paragraph).replace('\n', "<br>\n"));
        html.push_str("</p>\n");
    }
    html.push_str("</body></html>\n");
    html
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
