//! A notice on paper: to be read and signed by hand, or as it was acknowledged.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{NoticeItem, NoticeVersion, store, texts};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::intake::paper::{BLANK, paper};
use crate::intake::{OnWhat, Speaks};
use crate::kinds::ids::{AcknowledgementId, VersionId};
use crate::kinds::{Day, Language};
use crate::print::{Piece, file_words};
use crate::students;

/// Which version.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfVersion {
    /// The version.
    pub version: VersionId,
}

/// Which acknowledgement.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfAcknowledgement {
    /// The acknowledgement.
    pub acknowledgement: AcknowledgementId,
}

/// A notice to be signed by hand: its file's name and bytes.
///
/// # Errors
/// `NotFound`.
pub fn document(db: &Reading<'_>, of: OfVersion) -> Result<(String, Vec<u8>)> {
    let (title, version) = store::version(db, of.version)?;
    let language = language_of(db, of.version)?;
    let mut pieces = text(&title, &version, language);
    let rows = match language {
        Language::En => [
            "Name of the student",
            "Name of who signs, if a guardian",
            "Relation to the student",
            "Date",
            "Signature",
        ],
        Language::De => [
            "Name der Schülerin oder des Schülers",
            "Name der unterschreibenden Person, falls ein Elternteil",
            "Beziehung",
            "Datum",
            "Unterschrift",
        ],
    };
    pieces.push(Piece::Heading(
        match language {
            Language::En => "I have read this",
            Language::De => "Ich habe das gelesen",
        }
        .to_owned(),
    ));
    pieces.push(Piece::Table {
        head: Vec::new(),
        rows: rows.iter().map(|row| vec![(*row).to_owned(), BLANK.to_owned()]).collect(),
        right_aligned: Vec::new(),
    });
    let name = format!("{} version {}.pdf", file_words(&title), version.number);
    Ok((name, paper(db, &title, language, midnight(version.made), pieces)?))
}

/// An acknowledgement with the text it is of: its file's name and bytes.
///
/// # Errors
/// `NotFound`; `Fault` when its seal does not fit.
pub fn acknowledged_document(db: &Reading<'_>, of: OfAcknowledgement) -> Result<(String, Vec<u8>)> {
    let a = store::acknowledgement(db, of.acknowledgement)?;
    if !a.whole {
        return Err(Error::Fault(format!("acknowledgement {} is not what was sealed", a.id)));
    }
    let (_, version) = store::version(db, a.version)?;
    let language = language_of(db, a.version)?;
    let student = students::show(db, students::Which { student: a.student })?.profile.name;
    // The title stands in the text as it was then.
    let title = version.text.lines().next().unwrap_or(&a.title).to_owned();
    let mut pieces = text(&title, &version, language);
    let day = match language {
        Language::En => a.day.words(),
        Language::De => Language::De.span(crate::kinds::Span { first: a.day, last: a.day }),
    };
    let (heading, lines) = match language {
        Language::En => (
            "Acknowledged",
            [
                format!("For {student}."),
                match a.relation {
                    Speaks::Own => format!("By {} themselves, on {day}.", a.name),
                    Speaks::Guardian => format!("By {} ({}), on {day}.", a.name, a.as_what),
                },
                match a.how {
                    OnWhat::Screen => "On the screen, with the name typed.".to_owned(),
                    OnWhat::Paper => "On paper; the scan is kept.".to_owned(),
                },
                format!("Digest of the text (SHA-256): {}", version.sha256),
                format!("Seal (SHA-256): {}", a.seal),
            ],
        ),
        Language::De => (
            "Bestätigt",
            [
                format!("Für {student}."),
                match a.relation {
                    Speaks::Own => format!("Von {} selbst, am {day}.", a.name),
                    Speaks::Guardian => format!("Von {} ({}), am {day}.", a.name, a.as_what),
                },
                match a.how {
                    OnWhat::Screen => "Am Bildschirm, mit getipptem Namen.".to_owned(),
                    OnWhat::Paper => "Auf Papier; das Bild davon ist aufbewahrt.".to_owned(),
                },
                format!("Prüfsumme des Textes (SHA-256): {}", version.sha256),
                format!("Siegel (SHA-256): {}", a.seal),
            ],
        ),
    };
    pieces.push(Piece::Heading(heading.to_owned()));
    pieces.extend(lines.into_iter().map(Piece::Text));
    let name = format!("{} {} {}.pdf", file_words(&title), file_words(&student), a.day);
    Ok((name, paper(db, &title, language, midnight(a.day), pieces)?))
}

fn text(title: &str, version: &NoticeVersion, language: Language) -> Vec<Piece> {
    let mut pieces = vec![
        Piece::Title(title.to_owned()),
        Piece::Note(texts::version_line(language, version.number, version.made)),
    ];
    for part in &version.parts {
        pieces.push(Piece::Heading(part.heading.clone()));
        pieces.extend(part.text.split("\n\n").map(|text| Piece::Text(text.replace('\n', " "))));
    }
    pieces
}

fn language_of(db: &Reading<'_>, version: VersionId) -> Result<Language> {
    db.found(
        "notice",
        &version,
        "SELECT n.language FROM notice_version v JOIN notice n ON n.id = v.notice WHERE v.id = ?",
        [version],
        |row| row.get("language"),
    )
}

/// The instant a day begins, for the file's own record.
fn midnight(day: Day) -> chrono::DateTime<chrono::Utc> {
    day.date().and_time(chrono::NaiveTime::MIN).and_utc()
}

impl NoticeItem {
    /// What this part says, as the end of "A notice says ...".
    pub(super) fn about(self) -> &'static str {
        match self {
            Self::Facility => "that the facility\u{2019}s own forms and rules govern",
            Self::Law => "that local law decides",
            Self::Advice => "that it is no medical or legal advice",
            Self::Emergency => "whom to call in an emergency",
            Self::Risks => "which risks are known",
            Self::Eyewear => "what eyewear is asked for",
            Self::Data => "what is kept about health, why, how long and who sees it",
            Self::Guardian => "who signs for someone under age",
            Self::Pictures => "that recordings and photographs are asked about on their own",
            Self::Version => "which version it is",
        }
    }
}
