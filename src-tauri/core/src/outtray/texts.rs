//! The texts messages begin with: a few of ours, in each language, which the coach may change. A field
//! stands in braces and is filled from the record; one that has no value stays as it stands, with why.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{MessageGap, MessageKind, store};
use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Language;

/// The most characters of a message.
pub(super) const LONGEST: usize = 20_000;

/// A text a kind of message begins with.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct MessageText {
    /// Of which messages.
    pub kind: MessageKind,
    /// In which language.
    pub language: Language,
    /// The subject, with fields.
    pub subject: String,
    /// The words, with fields.
    pub words: String,
    /// Whether the coach changed it.
    pub own: bool,
    /// The fields there are, each with what it says.
    pub fields: Vec<TextField>,
}

/// A field of a text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TextField {
    /// As it is written, between braces.
    pub field: String,
    /// What it says.
    pub says: String,
}

/// A text to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SetMessageText {
    /// Of which messages.
    pub kind: MessageKind,
    /// In which language.
    pub language: Language,
    /// The subject, with fields; empty, with empty words: ours again.
    pub subject: String,
    /// The words, with fields.
    pub words: String,
}

/// The kinds that begin with a text, in the order of the screen.
pub(super) const KINDS: [MessageKind; 10] = [
    MessageKind::Letter,
    MessageKind::Invitation,
    MessageKind::Questions,
    MessageKind::BeforeVisit,
    MessageKind::HomePlan,
    MessageKind::HomeReport,
    MessageKind::ComeAgain,
    MessageKind::Invoice,
    MessageKind::Reminder,
    MessageKind::Words,
];

const LANGUAGES: [Language; 2] = [Language::En, Language::De];

/// Each field with what it says, and the kinds it is for; no kind stands for all.
const FIELDS: [(&str, &str, &[MessageKind]); 17] = [
    ("name", "How the one who gets it is addressed.", &[]),
    ("coach", "Your name.", &[]),
    ("closing", "Your closing, as under Coach.", &[]),
    (
        "student",
        "The student\u{2019}s full name.",
        &[
            MessageKind::Letter,
            MessageKind::HomePlan,
            MessageKind::HomeReport,
            MessageKind::ComeAgain,
            MessageKind::Questions,
            MessageKind::BeforeVisit,
            MessageKind::Words,
        ],
    ),
    (
        "visit",
        "The days of the visit.",
        &[
            MessageKind::Letter,
            MessageKind::HomePlan,
            MessageKind::HomeReport,
            MessageKind::ComeAgain,
            MessageKind::BeforeVisit,
        ],
    ),
    ("next_visit", "When the next visit is.", &[MessageKind::Letter, MessageKind::HomePlan]),
    ("place", "Where.", &[MessageKind::BeforeVisit, MessageKind::Invitation]),
    ("lessons", "The lessons of the visit, a line each.", &[MessageKind::BeforeVisit]),
    (
        "visitors",
        "What the place asks of visitors, as you wrote it down.",
        &[MessageKind::BeforeVisit],
    ),
    ("your_words", "What you have to say, typed for each message.", &[MessageKind::Words]),
    ("said", "That it is an invitation, a change, or called off.", &[MessageKind::Invitation]),
    ("lesson", "When the lesson is.", &[MessageKind::Invitation]),
    ("document", "Invoice or credit note.", &[MessageKind::Invoice]),
    ("number", "Its number.", &[MessageKind::Invoice, MessageKind::Reminder]),
    ("pay", "What is to be paid by when, as a sentence.", &[MessageKind::Invoice]),
    ("amount", "What is open.", &[MessageKind::Reminder]),
    ("due", "By when it is to be paid.", &[MessageKind::Reminder]),
];

fn fields(kind: MessageKind) -> impl Iterator<Item = (&'static str, &'static str)> {
    FIELDS
        .into_iter()
        .filter(move |(_, _, kinds)| kinds.is_empty() || kinds.contains(&kind))
        .map(|(field, says, _)| (field, says))
}

/// Our own text: subject and words.
fn ours(kind: MessageKind, language: Language) -> (&'static str, &'static str) {
    use Language::{De, En};
    match (kind, language) {
        (MessageKind::Letter, En) => (
            "Your visit, {visit}",
            "Dear {name},\n\nhere is the letter about the visit of {visit}: what moved, and what comes next.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Letter, De) => (
            "Dein Besuch, {visit}",
            "Hallo {name},\n\nhier ist der Brief zum Besuch {visit}: was sich bewegt hat und was als Nächstes kommt.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Invitation, En) => {
            ("{said}: {lesson}", "Dear {name},\n\n{said}: {lesson}, {place}.\n\n{closing}\n{coach}")
        }
        (MessageKind::Invitation, De) => (
            "{said}: {lesson}",
            "Hallo {name},\n\n{said}: {lesson}, {place}.\n\n{closing}\n{coach}",
        ),
        (MessageKind::BeforeVisit, En) => (
            "Before your visit, {visit}",
            "Dear {name},\n\nI look forward to your visit to {place}, {visit}. These are our lessons:\n\n{lessons}\n\n{visitors}\n\nPlease bring what you play with, eyewear if you play where it is asked for, shoes for the court, and water. The rules of the place count.\n\nIf anything hurts, or a doctor has told you to take care, tell me before we begin.\n\n{closing}\n{coach}",
        ),
        (MessageKind::BeforeVisit, De) => (
            "Vor deinem Besuch, {visit}",
            "Hallo {name},\n\nich freue mich auf deinen Besuch, {visit}, {place}. Das sind unsere Stunden:\n\n{lessons}\n\n{visitors}\n\nBring bitte mit, womit du spielst, eine Schutzbrille, wo sie verlangt wird, Schuhe für den Platz und Wasser. Es gelten die Regeln der Anlage.\n\nWenn etwas wehtut oder ein Arzt dir zur Vorsicht geraten hat, sag es mir, bevor wir anfangen.\n\n{closing}\n{coach}",
        ),
        (MessageKind::HomePlan, En) => (
            "Until the next visit",
            "Dear {name},\n\nhere is what to do at home after the visit of {visit}. Tell me now and then how it goes: an answer to this message is enough. Stop if anything hurts.\n\n{closing}\n{coach}",
        ),
        (MessageKind::HomePlan, De) => (
            "Bis zum nächsten Besuch",
            "Hallo {name},\n\nhier ist, was nach dem Besuch {visit} zu Hause zu tun ist. Sag mir ab und zu, wie es geht: Eine Antwort auf diese Nachricht genügt. Hör auf, wenn etwas wehtut.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Questions, En) => (
            "Before your lessons",
            "Dear {name},\n\nbefore we begin I ask everyone a few questions. Save the attached page, open it, fill it in at home, and send me the file it makes; nothing in it goes anywhere by itself. You may leave out what you would rather tell me.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Questions, De) => (
            "Vor deinen Stunden",
            "Hallo {name},\n\nbevor wir anfangen, stelle ich allen ein paar Fragen. Speichere die angehängte Seite, öffne sie, füll sie zu Hause aus und schick mir die Datei, die sie macht; von selbst geht nichts davon irgendwohin. Was du mir lieber sagst, lass offen.\n\n{closing}\n{coach}",
        ),
        (MessageKind::HomeReport, En) => (
            "How is it going at home?",
            "Dear {name},\n\nhow is it going with what we set for home after the visit of {visit}? A few words are enough: what you did, how often, and what was hard. If anything hurts, stop, and tell me.\n\n{closing}\n{coach}",
        ),
        (MessageKind::HomeReport, De) => (
            "Wie läuft es zu Hause?",
            "Hallo {name},\n\nwie läuft es mit dem, was wir nach dem Besuch {visit} für zu Hause vereinbart haben? Ein paar Worte genügen: was du gemacht hast, wie oft und was schwer war. Wenn etwas wehtut, hör auf und sag es mir.\n\n{closing}\n{coach}",
        ),
        (MessageKind::ComeAgain, En) => (
            "When do we go on?",
            "Dear {name},\n\nyour last visit was {visit}. When would you like to come again? Tell me the days that suit you, and I look for courts.\n\n{closing}\n{coach}",
        ),
        (MessageKind::ComeAgain, De) => (
            "Wann machen wir weiter?",
            "Hallo {name},\n\ndein letzter Besuch war {visit}. Wann möchtest du wiederkommen? Sag mir, welche Tage dir passen, dann suche ich Plätze.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Invoice, En) => (
            "{document} {number}",
            "Dear {name},\n\nhere is {document} {number}. {pay}\n\n{closing}\n{coach}",
        ),
        (MessageKind::Invoice, De) => (
            "{document} {number}",
            "Guten Tag {name},\n\nanbei {document} {number}. {pay}\n\n{closing}\n{coach}",
        ),
        (MessageKind::Reminder, En) => (
            "Reminder of invoice {number}",
            "Dear {name},\n\nof invoice {number}, {amount} is still open. Please pay by {due}; if you have paid in the meantime, this needs no answer.\n\n{closing}\n{coach}",
        ),
        (MessageKind::Reminder, De) => (
            "Zahlungserinnerung zu Rechnung {number}",
            "Guten Tag {name},\n\nvon der Rechnung {number} sind noch {amount} offen. Bitte zahlen Sie bis {due}; falls Sie inzwischen gezahlt haben, ist diese Nachricht gegenstandslos.\n\n{closing}\n{coach}",
        ),
        (_, En) => {
            ("A word about our lessons", "Dear {name},\n\n{your_words}\n\n{closing}\n{coach}")
        }
        (_, De) => ("Zu unseren Stunden", "Hallo {name},\n\n{your_words}\n\n{closing}\n{coach}"),
    }
}

/// The text of a kind of message in a language: the coach\u{2019}s, or ours.
pub(super) fn text(
    db: &Reading<'_>,
    kind: MessageKind,
    language: Language,
) -> Result<(String, String)> {
    let own = store::text(db, kind, language)?;
    let (subject, words) = ours(kind, language);
    Ok(own.unwrap_or_else(|| (subject.to_owned(), words.to_owned())))
}

/// All texts.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<MessageText>> {
    let mut all = Vec::new();
    for kind in KINDS {
        for language in LANGUAGES {
            let own = store::text(db, kind, language)?.is_some();
            let (subject, words) = text(db, kind, language)?;
            let named = |(field, says): (&str, &str)| TextField {
                field: format!("{{{field}}}"),
                says: says.to_owned(),
            };
            let fields = fields(kind).map(named).collect();
            all.push(MessageText { kind, language, subject, words, own, fields });
        }
    }
    Ok(all)
}

/// Changes a text, or takes the coach\u{2019}s away.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn set(db: &Writing<'_>, given: SetMessageText) -> Result<Vec<MessageText>> {
    if !KINDS.contains(&given.kind) {
        let words = "These messages begin with no text of their own.";
        return Err(crate::error::Error::field("kind", "no_text", words));
    }
    let mut p = Problems::new();
    let subject = p.line("subject", &given.subject, "The subject");
    let words = long(&mut p, "words", &given.words);
    for (field, text) in [("subject", &subject), ("words", &words)] {
        for name in named_in(text) {
            if fields(given.kind).all(|(known, _)| known != name) {
                let known: Vec<String> =
                    fields(given.kind).map(|(known, _)| format!("{{{known}}}")).collect();
                let words =
                    format!("There is no field {{{name}}} here. There are: {}.", known.join(", "));
                p.add(field, "unknown_field", words);
            }
        }
    }
    let gone = subject.is_empty() && words.is_empty();
    if subject.is_empty() && !gone {
        p.add("subject", "empty", "A message needs a subject.");
    }
    p.done()?;
    if gone {
        store::drop_text(db, given.kind, given.language)?;
    } else {
        store::keep_text(db, given.kind, given.language, &subject, &words)?;
    }
    db.label(if gone { "Our own text again" } else { "Text of messages changed" });
    list(db)
}

/// Words of several paragraphs, as long as a message may be.
pub(super) fn long(p: &mut Problems, field: &str, typed: &str) -> String {
    let words = crate::kinds::text::lines(typed);
    if words.chars().count() > LONGEST {
        p.add(field, "too_long", format!("There is room for {LONGEST} characters."));
    }
    words
}

/// The value of a field, or why it has none.
pub(super) type Value = std::result::Result<String, String>;

/// The fields a text names, in their order.
fn named_in(text: &str) -> Vec<&str> {
    let mut named = Vec::new();
    for (at, _) in text.match_indices('{') {
        let rest = &text[at + 1..];
        let end = rest.find(|c: char| !c.is_ascii_lowercase() && c != '_').unwrap_or(rest.len());
        if end > 0 && rest[end..].starts_with('}') {
            named.push(&rest[..end]);
        }
    }
    named
}

/// Fills the fields of a text; those without a value stay as they stand.
pub(super) fn filled(text: &str, values: &[(&str, Value)]) -> String {
    let mut filled = String::new();
    let mut rest = text;
    while let Some(at) = rest.find('{') {
        filled.push_str(&rest[..at]);
        rest = &rest[at..];
        let value = values.iter().find_map(|(field, value)| {
            let written = format!("{{{field}}}");
            rest.starts_with(&written).then_some((written.len(), value.as_ref().ok()?))
        });
        let (length, value) = match value {
            Some((length, value)) => (length, value.as_str()),
            None => (1, "{"),
        };
        filled.push_str(value);
        rest = &rest[length..];
    }
    filled.push_str(rest);
    filled
}

/// The fields that a text still names, of those that had no value.
pub(super) fn open(texts: &[&str], gaps: &[MessageGap]) -> Vec<MessageGap> {
    let named =
        |gap: &&MessageGap| texts.iter().any(|text| named_in(text).contains(&gap.field.as_str()));
    gaps.iter().filter(named).cloned().collect()
}

/// The fields without a value that a text names.
pub(super) fn gaps(texts: &[&str], values: &[(&str, Value)]) -> Vec<MessageGap> {
    let without: Vec<MessageGap> = values
        .iter()
        .filter_map(|(field, value)| {
            Some(MessageGap { field: (*field).to_owned(), why: value.as_ref().err()?.clone() })
        })
        .collect();
    open(texts, &without)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_never_read_for_fields_again() {
        let values = [("name", Ok("{coach} {".to_owned())), ("coach", Ok("Robin".to_owned()))];
        assert_eq!(filled("Dear {name}, {coach}{x}{", &values), "Dear {coach} {, Robin{x}{");
    }

    #[test]
    fn a_field_without_a_value_stays_and_says_why() {
        let values = [("due", Err("It is paid.".to_owned())), ("name", Ok("Ana".to_owned()))];
        let text = filled("{name}: by {due}", &values);
        assert_eq!(text, "Ana: by {due}");
        let gaps = gaps(&[&text], &values);
        assert_eq!(gaps[0].why, "It is paid.");
        assert!(open(&["Ana: soon"], &gaps).is_empty(), "written over");
    }

    #[test]
    fn our_own_texts_name_only_fields_there_are() {
        for kind in KINDS {
            for language in LANGUAGES {
                let (subject, words) = ours(kind, language);
                for name in named_in(subject).into_iter().chain(named_in(words)) {
                    assert!(fields(kind).any(|(known, _)| known == name), "{kind:?} {name}");
                }
            }
        }
    }
}
