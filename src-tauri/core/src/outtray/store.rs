//! All SQL of the out-tray.

use rusqlite::{Row, named_params, params};

use super::render::Carried;
use super::{
    Addressee, MailTrouble, MessageGap, MessageKind, MessageLine, MessagePart, MessageState,
    MessageStep, state_words,
};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::ids::{
    InvoiceId, LetterId, MessageId, MessagePartId, MessageStepId, PayerId, StudentId, VisitId,
};
use crate::kinds::{Day, Instant, Language};

/// A message as kept.
#[derive(Clone, Debug)]
pub(super) struct Kept {
    pub id: MessageId,
    pub cause: String,
    pub together: MessageId,
    pub kind: MessageKind,
    pub student: Option<StudentId>,
    pub payer: Option<PayerId>,
    pub visit: Option<VisitId>,
    pub invoice: Option<InvoiceId>,
    pub language: Language,
    pub from: Addressee,
    pub to: Addressee,
    pub with: Addressee,
    pub subject: String,
    pub words: String,
    pub gaps: Vec<MessageGap>,
    pub method: String,
    pub mail_id: String,
    pub state: MessageState,
    pub tries: i64,
    pub first_try: Option<Instant>,
    pub next: Option<Instant>,
    pub trouble: Option<MailTrouble>,
    pub said: String,
    pub changed: Instant,
    pub sha256: Option<String>,
}

impl Kept {
    /// As a list shows it.
    pub(super) fn line(&self) -> MessageLine {
        MessageLine {
            id: self.id,
            together: self.together,
            kind: self.kind,
            student: self.student,
            to: self.to.clone(),
            subject: self.subject.clone(),
            state: self.state,
            stands: state_words(self.state, self.trouble, &self.said),
            changed: self.changed,
            next: self.next,
        }
    }
}

fn language(code: &str) -> Language {
    if code == Language::De.code() { Language::De } else { Language::En }
}

fn kept(row: &Row<'_>) -> rusqlite::Result<Kept> {
    let gaps: String = row.get("gaps")?;
    Ok(Kept {
        id: row.get("id")?,
        cause: row.get("cause")?,
        together: row.get("together")?,
        kind: row.get("kind")?,
        student: row.get("student")?,
        payer: row.get("payer")?,
        visit: row.get("visit")?,
        invoice: row.get("invoice")?,
        language: language(&row.get::<_, String>("language")?),
        from: Addressee { name: row.get("from_name")?, address: row.get("from_address")? },
        to: Addressee { name: row.get("to_name")?, address: row.get("to_address")? },
        with: Addressee { name: row.get("with_name")?, address: row.get("with_address")? },
        subject: row.get("subject")?,
        words: row.get("words")?,
        gaps: serde_json::from_str(&gaps)
            .map_err(|_| rusqlite::types::FromSqlError::other(crate::error::Unreadable(gaps)))?,
        method: row.get("method")?,
        mail_id: row.get("mail_id")?,
        state: row.get("state")?,
        tries: row.get("tries")?,
        first_try: row.get("first_try")?,
        next: row.get("next")?,
        trouble: row.get("trouble")?,
        said: row.get("said")?,
        changed: row.get("changed")?,
        sha256: row.get("sha256")?,
    })
}

fn json(gaps: &[MessageGap]) -> Result<String> {
    serde_json::to_string(gaps).map_err(|e| Error::Fault(e.to_string()))
}

pub(super) fn insert(db: &Writing<'_>, m: &Kept) -> Result<()> {
    db.execute(
        "INSERT INTO message (id, cause, together, kind, student, payer, visit, invoice, made, language,
           from_name, from_address, to_name, to_address, with_name, with_address, subject, words, gaps, method,
           mail_id, state, changed)
         VALUES (:id, :cause, :together, :kind, :student, :payer, :visit, :invoice, :now, :language,
           :from_name, :from_address, :to_name, :to_address, :with_name, :with_address, :subject, :words, :gaps,
           :method, :mail_id, :state, :now)",
        named_params! {
            ":id": m.id, ":cause": m.cause, ":together": m.together, ":kind": m.kind, ":student": m.student,
            ":payer": m.payer, ":visit": m.visit, ":invoice": m.invoice, ":now": db.now(),
            ":language": m.language.code(), ":from_name": m.from.name, ":from_address": m.from.address,
            ":to_name": m.to.name, ":to_address": m.to.address, ":with_name": m.with.name,
            ":with_address": m.with.address, ":subject": m.subject, ":words": m.words, ":gaps": json(&m.gaps)?,
            ":method": m.method, ":mail_id": m.mail_id, ":state": m.state,
        },
    )?;
    step(db, m.id, m.state, None, "")
}

pub(super) fn one(db: &Reading<'_>, id: MessageId) -> Result<Kept> {
    db.found("message", &id, "SELECT * FROM message WHERE id = ?", [id], kept)
}

/// Those that say the same to several people, the first first.
pub(super) fn together(db: &Reading<'_>, first: MessageId) -> Result<Vec<Kept>> {
    db.all("SELECT * FROM message WHERE together = ? ORDER BY id <> together, id", [first], kept)
}

/// The message of a cause that was not withdrawn.
pub(super) fn of_cause(db: &Reading<'_>, cause: &str) -> Result<Option<MessageId>> {
    let sql = "SELECT id FROM message WHERE cause = ? AND state <> 'withdrawn'";
    db.one(sql, [cause], |row| row.get("id"))
}

pub(super) fn in_state(db: &Reading<'_>, state: MessageState, most: u32) -> Result<Vec<Kept>> {
    db.all(
        "SELECT * FROM message WHERE state = ? ORDER BY changed, id LIMIT ?",
        params![state, most],
        kept,
    )
}

pub(super) fn count(db: &Reading<'_>, state: MessageState) -> Result<u32> {
    let sql = "SELECT count(*) AS n FROM message WHERE state = ?";
    Ok(db.one(sql, [state], |row| row.get("n"))?.unwrap_or_default())
}

/// What is over, the newest first, from before a moment on.
pub(super) fn over(db: &Reading<'_>, before: Option<Instant>, most: u32) -> Result<Vec<Kept>> {
    let before = before.map_or_else(|| "9".to_owned(), |at| at.to_string());
    let mut all = Vec::new();
    for state in [MessageState::Accepted, MessageState::Told, MessageState::Withdrawn] {
        all.extend(db.all(
            "SELECT * FROM message WHERE state = ? AND changed < ? ORDER BY changed DESC, id DESC LIMIT ?",
            params![state, before, most],
            kept,
        )?);
    }
    all.sort_by(|a, b| b.changed.cmp(&a.changed).then(b.id.to_string().cmp(&a.id.to_string())));
    all.truncate(usize::try_from(most).unwrap_or(usize::MAX));
    Ok(all)
}

pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<Kept>> {
    db.all(
        "SELECT * FROM message WHERE student = ? ORDER BY changed DESC, id DESC",
        [student],
        kept,
    )
}

pub(super) fn of_invoice(db: &Reading<'_>, invoice: InvoiceId) -> Result<Vec<Kept>> {
    db.all(
        "SELECT * FROM message WHERE invoice = ? ORDER BY changed DESC, id DESC",
        [invoice],
        kept,
    )
}

pub(super) fn reword(
    db: &Writing<'_>,
    id: MessageId,
    subject: &str,
    words: &str,
    gaps: &[MessageGap],
) -> Result<()> {
    db.execute(
        "UPDATE message SET subject = ?, words = ?, gaps = ? WHERE id = ?",
        params![subject, words, json(gaps)?, id],
    )?;
    Ok(())
}

/// Another address of who gets it; what it is for stays the same otherwise.
pub(super) fn readdress(
    db: &Writing<'_>,
    id: MessageId,
    cause: &str,
    to_address: &str,
) -> Result<()> {
    db.execute(
        "UPDATE message SET cause = ?, to_address = ? WHERE id = ?",
        params![cause, to_address, id],
    )?;
    Ok(())
}

pub(super) fn set_with(db: &Writing<'_>, id: MessageId, with_address: &str) -> Result<()> {
    db.execute("UPDATE message SET with_address = ? WHERE id = ?", params![with_address, id])?;
    Ok(())
}

pub(super) fn add_part(
    db: &Writing<'_>,
    message: MessageId,
    place: i64,
    part: &Carried,
) -> Result<()> {
    let id: MessagePartId = db.id();
    let size = i64::try_from(part.bytes.len()).unwrap_or(i64::MAX);
    db.execute(
        "INSERT INTO message_part (id, message, place, name, type, size, sha256) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, message, place, part.name, part.media, size, digest::sha256(&part.bytes)],
    )?;
    keep_bytes(db, &id.to_string(), message, &part.bytes)
}

fn keep_bytes(db: &Writing<'_>, id: &str, message: MessageId, bytes: &[u8]) -> Result<()> {
    db.execute(
        "INSERT INTO message_bytes (id, message, bytes) VALUES (?, ?, ?)",
        params![id, message, bytes],
    )?;
    Ok(())
}

/// The bytes under an id, which must have this digest.
fn bytes(db: &Reading<'_>, id: &str, sha256: &str) -> Result<Vec<u8>> {
    let bytes: Vec<u8> = db.found(
        "bytes of a message",
        &id,
        "SELECT bytes FROM message_bytes WHERE id = ?",
        [id],
        |row| row.get("bytes"),
    )?;
    if digest::sha256(&bytes) != sha256 {
        return Err(Error::Fault(format!("the bytes of {id} are not what was written")));
    }
    Ok(bytes)
}

pub(super) fn parts(db: &Reading<'_>, message: MessageId) -> Result<Vec<MessagePart>> {
    db.all("SELECT * FROM message_part WHERE message = ? ORDER BY place", [message], |row| {
        Ok(MessagePart {
            id: row.get("id")?,
            name: row.get("name")?,
            media: row.get("type")?,
            size: row.get("size")?,
        })
    })
}

pub(super) fn last_place(db: &Reading<'_>, message: MessageId) -> Result<i64> {
    let sql = "SELECT coalesce(max(place), 0) AS place FROM message_part WHERE message = ?";
    Ok(db.one(sql, [message], |row| row.get("place"))?.unwrap_or_default())
}

/// The parts with their bytes, while the message can still be changed.
pub(super) fn carried(db: &Reading<'_>, message: MessageId) -> Result<Vec<Carried>> {
    let rows: Vec<(String, String, String, String)> = db.all(
        "SELECT id, name, type, sha256 FROM message_part WHERE message = ? ORDER BY place",
        [message],
        |row| Ok((row.get("id")?, row.get("name")?, row.get("type")?, row.get("sha256")?)),
    )?;
    let read = |(id, name, media, sha256): (String, String, String, String)| {
        Ok(Carried { name, media, bytes: bytes(db, &id, &sha256)? })
    };
    rows.into_iter().map(read).collect()
}

pub(super) fn drop_part(db: &Writing<'_>, message: MessageId, part: MessagePartId) -> Result<bool> {
    let sql = "DELETE FROM message_part WHERE id = ? AND message = ?";
    let gone = db.execute(sql, params![part, message])? > 0;
    db.execute("DELETE FROM message_bytes WHERE id = ?", [part])?;
    Ok(gone)
}

/// Keeps the bytes of a message as it goes out, with its Message-ID and from whom it is.
pub(super) fn seal(
    db: &Writing<'_>,
    m: &Kept,
    from: &Addressee,
    mail_id: &str,
    mime: &[u8],
) -> Result<()> {
    keep_bytes(db, &m.id.to_string(), m.id, mime)?;
    let size = i64::try_from(mime.len()).unwrap_or(i64::MAX);
    db.execute(
        "UPDATE message SET from_name = ?, from_address = ?, mail_id = ?, sha256 = ?, size = ? WHERE id = ?",
        params![from.name, from.address, mail_id, digest::sha256(mime), size, m.id],
    )?;
    Ok(())
}

/// The bytes of parts, once every message that carries them is made whole.
pub(super) fn drop_part_bytes(db: &Writing<'_>, message: MessageId) -> Result<()> {
    db.execute("DELETE FROM message_bytes WHERE message = ?1 AND id <> ?1", [message])?;
    Ok(())
}

/// The bytes of a message that was released.
pub(super) fn mime(db: &Reading<'_>, m: &Kept) -> Result<Option<Vec<u8>>> {
    m.sha256.as_ref().map(|sha256| bytes(db, &m.id.to_string(), sha256)).transpose()
}

/// What a message becomes.
pub(super) struct Becomes<'a> {
    pub state: MessageState,
    pub next: Option<Instant>,
    pub trouble: Option<MailTrouble>,
    pub said: &'a str,
    pub tries: i64,
    pub first_try: Option<Instant>,
}

impl<'a> Becomes<'a> {
    /// With nothing in its way and nothing to be tried.
    pub(super) fn plain(m: &Kept, state: MessageState, said: &'a str) -> Self {
        Self { state, next: None, trouble: None, said, tries: m.tries, first_try: m.first_try }
    }
}

pub(super) fn become_so(db: &Writing<'_>, id: MessageId, to: &Becomes<'_>) -> Result<()> {
    db.execute(
        "UPDATE message SET state = :state, next = :next, trouble = :trouble, said = :said, tries = :tries,
           first_try = :first_try, changed = :now
         WHERE id = :id",
        named_params! {
            ":state": to.state, ":next": to.next, ":trouble": to.trouble, ":said": to.said, ":tries": to.tries,
            ":first_try": to.first_try, ":now": db.now(), ":id": id,
        },
    )?;
    step(db, id, to.state, to.trouble, to.said)
}

fn step(
    db: &Writing<'_>,
    message: MessageId,
    state: MessageState,
    trouble: Option<MailTrouble>,
    said: &str,
) -> Result<()> {
    let id: MessageStepId = db.id();
    db.execute(
        "INSERT INTO message_step (id, message, at, state, trouble, said) VALUES (?, ?, ?, ?, ?, ?)",
        params![id, message, db.now(), state, trouble, said],
    )?;
    Ok(())
}

pub(super) fn steps(db: &Reading<'_>, message: MessageId) -> Result<Vec<MessageStep>> {
    db.all("SELECT * FROM message_step WHERE message = ? ORDER BY at, id", [message], |row| {
        let (state, trouble, said): (MessageState, Option<MailTrouble>, String) =
            (row.get("state")?, row.get("trouble")?, row.get("said")?);
        Ok(MessageStep {
            id: row.get("id")?,
            at: row.get("at")?,
            state,
            words: state_words(state, trouble, &said),
        })
    })
}

/// Whether a message was ever taken by a server, or may have been.
pub(super) fn may_have_gone(db: &Reading<'_>, message: MessageId) -> Result<bool> {
    let sql = "SELECT 1 AS one FROM message_step WHERE message = ? AND state IN ('accepted', 'unsure') LIMIT 1";
    Ok(db.one(sql, [message], |row| row.get::<_, i64>("one"))?.is_some())
}

/// The next message to be tried, when that may be.
pub(super) fn next(db: &Reading<'_>) -> Result<Option<(MessageId, Instant)>> {
    db.one(
        "SELECT id, next FROM message WHERE next IS NOT NULL ORDER BY next, id LIMIT 1",
        [],
        |row| Ok((row.get("id")?, row.get("next")?)),
    )
}

pub(super) fn text(
    db: &Reading<'_>,
    kind: MessageKind,
    language: Language,
) -> Result<Option<(String, String)>> {
    db.one(
        "SELECT subject, words FROM message_text WHERE kind = ? AND language = ?",
        params![kind, language.code()],
        |row| Ok((row.get("subject")?, row.get("words")?)),
    )
}

pub(super) fn keep_text(
    db: &Writing<'_>,
    kind: MessageKind,
    language: Language,
    subject: &str,
    words: &str,
) -> Result<()> {
    let id = text_id(kind, language)?;
    db.execute(
        "INSERT INTO message_text (id, kind, language, subject, words) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET subject = excluded.subject, words = excluded.words",
        params![id, kind, language.code(), subject, words],
    )?;
    Ok(())
}

pub(super) fn drop_text(db: &Writing<'_>, kind: MessageKind, language: Language) -> Result<()> {
    db.execute("DELETE FROM message_text WHERE id = ?", [text_id(kind, language)?])?;
    Ok(())
}

fn text_id(kind: MessageKind, language: Language) -> Result<String> {
    let kind = serde_json::to_value(kind).map_err(|e| Error::Fault(e.to_string()))?;
    Ok(format!("{} {}", kind.as_str().unwrap_or_default(), language.code()))
}

/// Messages whose bytes are not what their digest says, by id.
pub(super) fn astray(db: &Reading<'_>) -> Result<Vec<String>> {
    let sealed: Vec<(String, String)> =
        db.all("SELECT id, sha256 FROM message WHERE sha256 IS NOT NULL", [], |row| {
            Ok((row.get("id")?, row.get("sha256")?))
        })?;
    Ok(sealed
        .into_iter()
        .filter(|(id, sha256)| bytes(db, id, sha256).is_err())
        .map(|(id, _)| id)
        .collect())
}

/// Whether a message that was not withdrawn is about something: causes that begin so.
pub(super) fn has_about(db: &Reading<'_>, about: &str) -> Result<bool> {
    // ";" comes after ":", so that exactly what begins so lies between.
    let end = about.strip_suffix(':').map(|head| format!("{head};")).unwrap_or_default();
    let sql = "SELECT 1 AS one FROM message WHERE state <> 'withdrawn' AND cause >= ? AND cause < ? LIMIT 1";
    Ok(db.one(sql, [about, end.as_str()], |row| row.get::<_, i64>("one"))?.is_some())
}

/// Letters issued since a day about which there is no message, with their visits.
pub(super) fn letters_not_sent(db: &Reading<'_>, since: Day) -> Result<Vec<(LetterId, VisitId)>> {
    db.all(
        "SELECT l.id, l.visit FROM letter l
         WHERE l.issued >= ? AND NOT EXISTS (
           SELECT 1 FROM message m WHERE m.state <> 'withdrawn'
             AND m.cause >= 'letter:' || l.id || ':' AND m.cause < 'letter:' || l.id || ';')
         ORDER BY l.issued",
        [since.to_string()],
        |row| Ok((row.get("id")?, row.get("visit")?)),
    )
}

pub(super) fn is_left(db: &Reading<'_>, key: &str) -> Result<bool> {
    let sql = "SELECT 1 AS one FROM follow_up_left WHERE id = ?";
    Ok(db.one(sql, [key], |row| row.get::<_, i64>("one"))?.is_some())
}

pub(super) fn leave(
    db: &Writing<'_>,
    key: &str,
    student: Option<StudentId>,
    day: Day,
) -> Result<()> {
    db.execute(
        "INSERT INTO follow_up_left (id, student, day) VALUES (?, ?, ?) ON CONFLICT (id) DO NOTHING",
        params![key, student, day],
    )?;
    Ok(())
}
