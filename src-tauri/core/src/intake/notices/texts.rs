//! The words a notice begins with, for the coach to change. They ask, inform and defer; they say
//! nothing that only a physician, a lawyer or the facility can say.
//!
//! The emergency numbers are from memory; the facility's emergency card holds the one that counts.

use super::{NoticeItem, NoticePart};
use crate::facilities::Card;
use crate::intake::forms::Policy;
use crate::kinds::{Day, Language};

/// What the texts are written from.
pub(super) struct About {
    pub(super) place: String,
    pub(super) policy: Policy,
    pub(super) card: Card,
    pub(super) sport: String,
    pub(super) language: Language,
}

pub(super) fn title(language: Language) -> String {
    match language {
        Language::En => "Before you go on court",
        Language::De => "Bevor Sie auf den Court gehen",
    }
    .to_owned()
}

pub(super) fn part(item: NoticeItem, about: &About) -> NoticePart {
    let (heading, text) = match about.language {
        Language::En => english(item, about),
        Language::De => german(item, about),
    };
    NoticePart { item, heading: heading.to_owned(), text }
}

fn english(item: NoticeItem, a: &About) -> (&'static str, String) {
    match item {
        NoticeItem::Facility => {
            let place = if a.place.is_empty() { "the facility" } else { &a.place };
            let mut text = format!(
                "This notice does not replace the forms, waiver, rules or incident process of {place}. On its premises they govern."
            );
            if !a.policy.name.is_empty() {
                text.push_str(&format!(" Its own text is \u{201c}{}\u{201d}", a.policy.name));
                if !a.policy.link.is_empty() {
                    text.push_str(&format!(" ({})", a.policy.link));
                }
                if let Some(seen) = Day::parse(&a.policy.seen) {
                    text.push_str(&format!(", read on {}", seen.words()));
                }
                text.push('.');
            }
            text.push_str(" Ask at the desk what else is to be signed.");
            ("The facility comes first", text)
        }
        NoticeItem::Law => (
            "Local law decides",
            "What a notice or a waiver can do differs from place to place, and local law decides it. Nothing here takes away a right that the law gives you."
                .to_owned(),
        ),
        NoticeItem::Advice => (
            "No medical or legal advice",
            "This is neither medical nor legal advice. Ask a licensed physician about your health, and a lawyer about the law."
                .to_owned(),
        ),
        NoticeItem::Emergency => {
            let number = if a.card.phone.is_empty() {
                "Call the local emergency number first: 911 in the United States and Canada, 112 in the European Union, 999 or 112 in the United Kingdom, 000 in Australia.".to_owned()
            } else {
                format!(
                    "Call the local emergency number first. Here: {}.",
                    a.card.phone.trim_end_matches('.')
                )
            };
            let desk = if a.card.desk_phone.is_empty() {
                "the facility\u{2019}s desk".to_owned()
            } else {
                format!("the facility\u{2019}s desk ({})", a.card.desk_phone)
            };
            ("In an emergency", format!("{number} Then tell {desk} and the coach."))
        }
        NoticeItem::Risks => {
            let sport = if a.sport.is_empty() { "Racket sports" } else { &a.sport };
            (
                "Known risks",
                format!(
                    "{sport} can injure: a ball or a racquet in the eye or on the head, a fall, a collision with a wall or a player, strains and overuse, and, as with any hard effort, trouble of the heart or the circulation. Say so at once when something hurts or feels wrong, and stop. After a blow to the head nobody plays on."
                ),
            )
        }
        NoticeItem::Eyewear => (
            "Eyewear",
            "Wear eyewear made for racket sports, with the standard printed on it (such as ASTM F3164), wherever the rules of the sport, the facility or the coach ask for it; on closed courts that is always. Glasses and contact lenses do not protect. Who sees well with one eye only always wears it."
                .to_owned(),
        ),
        NoticeItem::Data => (
            "What is kept about your health",
            "Kept are your answers about health and injuries, this acknowledgement, and what happened on court: to plan lessons with care, and to help in an emergency. They stay in the coach\u{2019}s own file for as long as lessons go on and the time that local law or an insurer asks for after them; you may ask how long that is. The coach sees them, and whoever helps in an emergency; nobody else, unless the law asks. You may have a copy, have them corrected, and withdraw your consent at any time: tell the coach."
                .to_owned(),
        ),
        NoticeItem::Guardian => (
            "Under age",
            "For someone under age a parent or guardian reads, consents and signs, with name and date. The age of majority differs from place to place; in doubt a guardian signs."
                .to_owned(),
        ),
        NoticeItem::Pictures => (
            "Recordings and photographs",
            "They are asked about on their own, one by one. A no changes nothing about the lessons."
                .to_owned(),
        ),
        NoticeItem::Version => (
            "Version",
            "Version and date stand at the end. When this text changes, you are shown the new one and asked again."
                .to_owned(),
        ),
    }
}

fn german(item: NoticeItem, a: &About) -> (&'static str, String) {
    match item {
        NoticeItem::Facility => {
            let place = if a.place.is_empty() { "der Anlage" } else { &a.place };
            let mut text = format!(
                "Dieser Hinweis ersetzt keine Formulare, Haftungserklärungen, Regeln oder Meldewege von {place}. Auf der Anlage gelten diese."
            );
            if !a.policy.name.is_empty() {
                text.push_str(&format!(" Der eigene Text heißt „{}“", a.policy.name));
                if !a.policy.link.is_empty() {
                    text.push_str(&format!(" ({})", a.policy.link));
                }
                if let Some(seen) = Day::parse(&a.policy.seen) {
                    text.push_str(&format!(
                        ", gelesen am {}",
                        Language::De.span(crate::kinds::Span { first: seen, last: seen })
                    ));
                }
                text.push('.');
            }
            text.push_str(" Fragen Sie am Empfang, was noch zu unterschreiben ist.");
            ("Die Anlage geht vor", text)
        }
        NoticeItem::Law => (
            "Das örtliche Recht entscheidet",
            "Was ein Hinweis oder eine Haftungserklärung bewirken kann, ist von Ort zu Ort verschieden und entscheidet das örtliche Recht. Nichts hier nimmt Ihnen ein Recht, das das Gesetz Ihnen gibt."
                .to_owned(),
        ),
        NoticeItem::Advice => (
            "Keine ärztliche oder rechtliche Beratung",
            "Dies ist weder ärztliche noch rechtliche Beratung. Fragen Sie zu Ihrer Gesundheit eine Ärztin oder einen Arzt und zum Recht eine Anwältin oder einen Anwalt."
                .to_owned(),
        ),
        NoticeItem::Emergency => {
            let number = if a.card.phone.is_empty() {
                "Rufen Sie zuerst die örtliche Notrufnummer an: 112 in der Europäischen Union, 112 oder 144 in der Schweiz, 911 in den USA und Kanada.".to_owned()
            } else {
                format!(
                    "Rufen Sie zuerst die örtliche Notrufnummer an. Hier: {}.",
                    a.card.phone.trim_end_matches('.')
                )
            };
            let desk = if a.card.desk_phone.is_empty() {
                "dem Empfang der Anlage".to_owned()
            } else {
                format!("dem Empfang der Anlage ({})", a.card.desk_phone)
            };
            ("Im Notfall", format!("{number} Sagen Sie dann {desk} und dem Coach Bescheid."))
        }
        NoticeItem::Risks => {
            let sport = if a.sport.is_empty() { "Beim Schlägersport" } else { &a.sport };
            let begin = if a.sport.is_empty() {
                format!("{sport} kann man sich verletzen")
            } else {
                format!("Bei {sport} kann man sich verletzen")
            };
            (
                "Bekannte Gefahren",
                format!(
                    "{begin}: durch einen Ball oder Schläger im Auge oder am Kopf, durch Stürze, durch Zusammenstöße mit einer Wand oder anderen, durch Zerrungen und Überlastung und, wie bei jeder starken Anstrengung, durch Beschwerden von Herz oder Kreislauf. Sagen Sie sofort, wenn etwas schmerzt oder sich falsch anfühlt, und hören Sie auf. Nach einem Schlag auf den Kopf spielt niemand weiter."
                ),
            )
        }
        NoticeItem::Eyewear => (
            "Schutzbrille",
            "Tragen Sie eine Schutzbrille für Schlägersport, auf der die Norm steht (etwa ASTM F3164), wo immer die Regeln des Sports, die Anlage oder der Coach es verlangen; auf geschlossenen Courts immer. Brillen und Kontaktlinsen schützen nicht. Wer nur mit einem Auge gut sieht, trägt sie immer."
                .to_owned(),
        ),
        NoticeItem::Data => (
            "Was über Ihre Gesundheit aufbewahrt wird",
            "Aufbewahrt werden Ihre Antworten zu Gesundheit und Verletzungen, diese Bestätigung und was auf dem Court geschehen ist: um Stunden mit Bedacht zu planen und im Notfall zu helfen. Sie bleiben in der eigenen Datei des Coaches, solange es Stunden gibt, und danach so lange, wie das örtliche Recht oder eine Versicherung es verlangt; Sie können fragen, wie lange das ist. Der Coach sieht sie, und wer im Notfall hilft; sonst niemand, außer das Gesetz verlangt es. Sie können eine Kopie haben, sie berichtigen lassen und Ihre Einwilligung jederzeit widerrufen: sagen Sie es dem Coach."
                .to_owned(),
        ),
        NoticeItem::Guardian => (
            "Minderjährige",
            "Für Minderjährige liest, willigt ein und unterschreibt ein Elternteil oder Vormund, mit Name und Datum. Ab wann jemand volljährig ist, ist von Ort zu Ort verschieden; im Zweifel unterschreibt ein Elternteil."
                .to_owned(),
        ),
        NoticeItem::Pictures => (
            "Aufnahmen und Fotos",
            "Danach wird einzeln gefragt. Ein Nein ändert nichts an den Stunden.".to_owned(),
        ),
        NoticeItem::Version => (
            "Fassung",
            "Fassung und Datum stehen am Ende. Ändert sich dieser Text, wird Ihnen der neue gezeigt und noch einmal gefragt."
                .to_owned(),
        ),
    }
}

/// The line at the end of a text.
pub(super) fn version_line(language: Language, number: i64, made: Day) -> String {
    match language {
        Language::En => format!("Version {number}, {}", made.words()),
        Language::De => format!(
            "Fassung {number}, {}",
            Language::De.span(crate::kinds::Span { first: made, last: made })
        ),
    }
}
