//! Writing a notice, and making a version of it that no longer changes.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{ITEMS, Notice, NoticePart, NoticeVersion, store, texts};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Problems, Result};
use crate::intake::forms;
use crate::kinds::ids::{FacilityId, NoticeId, VersionId};
use crate::kinds::{Day, Language};
use crate::{facilities, sports};

/// What a notice is to be for.
#[derive(Clone, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct DraftNotice {
    /// A new version of this one; left out for a new notice.
    pub notice: Option<NoticeId>,
    /// For which facility; left out for every one.
    pub facility: Option<FacilityId>,
    /// For which sport; empty for every one.
    pub sport: String,
    /// In which language.
    pub language: Language,
}

/// A notice to be read through before it is published.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct NoticeDraft {
    /// Its title.
    pub title: String,
    /// Its parts.
    pub parts: Vec<NoticePart>,
    /// For a new version: the parts' texts as they would be written today, where they differ.
    pub suggested: Vec<NoticePart>,
}

/// A notice to publish.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PublishNotice {
    /// A new version of this one; left out for a new notice.
    #[serde(default)]
    pub notice: Option<NoticeId>,
    /// Its title.
    pub title: String,
    /// For which facility; left out for every one.
    #[serde(default)]
    pub facility: Option<FacilityId>,
    /// For which sport; empty for every one.
    #[serde(default)]
    pub sport: String,
    /// Its language.
    #[serde(default)]
    pub language: Language,
    /// Its ten parts.
    pub parts: Vec<NoticePart>,
}

/// Which notice.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichNotice {
    /// The notice.
    pub notice: NoticeId,
}

/// The words a notice begins with: those of its newest version, or the program's own.
///
/// # Errors
/// `NotFound`.
pub fn draft(db: &Reading<'_>, ask: DraftNotice) -> Result<NoticeDraft> {
    let before = ask.notice.map(|notice| show(db, WhichNotice { notice })).transpose()?;
    let (facility, sport, language) = match &before {
        Some(notice) => (notice.facility, notice.sport.clone(), notice.language),
        None => (ask.facility, ask.sport, ask.language),
    };
    let about = match facility {
        None => texts::About {
            place: String::new(),
            policy: forms::Policy::default(),
            card: facilities::Card::default(),
            sport: sport_name(&sport),
            language,
        },
        Some(id) => {
            let which = facilities::Which { facility: id };
            texts::About {
                place: facilities::show(db, which)?.place.name,
                policy: forms::policy(db, which)?.unwrap_or_default(),
                card: facilities::card(db, which)?,
                sport: sport_name(&sport),
                language,
            }
        }
    };
    let ours: Vec<NoticePart> = ITEMS.iter().map(|item| texts::part(*item, &about)).collect();
    Ok(match before {
        None => NoticeDraft { title: texts::title(language), parts: ours, suggested: Vec::new() },
        Some(notice) => {
            let parts = notice.version.parts;
            let differs = |ours: &NoticePart| {
                parts.iter().all(|p| p.item != ours.item || p.text != ours.text)
            };
            let suggested = ours.into_iter().filter(differs).collect();
            NoticeDraft { title: notice.title, parts, suggested }
        }
    })
}

fn sport_name(sport: &str) -> String {
    sports::pack(sport).map(|pack| pack.name.clone()).unwrap_or_default()
}

/// Publishes a notice, or a new version of one: from now on the text does not change, and whoever
/// it is for is asked to acknowledge it.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: a part that is missing or empty, a text
/// that is the newest version's; a sport that is none.
pub fn publish(db: &Writing<'_>, given: PublishNotice) -> Result<Notice> {
    let before = given.notice.map(|notice| show(db, WhichNotice { notice })).transpose()?;
    let mut p = Problems::new();
    let title = p.name("title", &given.title, "The title");
    let mut parts = Vec::new();
    for item in ITEMS {
        let at = given.parts.iter().position(|part| part.item == item);
        let Some((n, part)) = at.and_then(|n| Some((n, given.parts.get(n)?))) else {
            p.add("parts", "missing_part", format!("A part is missing: {}.", item.about()));
            continue;
        };
        let heading = p.name(&format!("parts[{n}].heading"), &part.heading, "The heading");
        let text = p.note(&format!("parts[{n}].text"), &part.text, "The text");
        if text.is_empty() {
            p.add(
                &format!("parts[{n}].text"),
                "empty",
                format!("This part is empty. A notice says {}.", item.about()),
            );
        }
        parts.push(NoticePart { item, heading, text });
    }
    if given.parts.len() > ITEMS.len() {
        p.add("parts", "twice", "A part stands here twice.");
    }
    if before.is_none() && !given.sport.is_empty() && sports::pack(&given.sport).is_none() {
        p.add(
            "sport",
            "no_such_sport",
            format!("There is no sport pack named \u{201c}{}\u{201d}.", given.sport),
        );
    }
    if before.as_ref().is_some_and(|b| b.version.parts == parts && b.title == title) {
        p.add("parts", "unchanged", "Nothing has changed since the newest version.");
    }
    p.done()?;
    let notice: NoticeId = match &before {
        Some(notice) => {
            if notice.archived.is_some() {
                return Err(Error::not_possible(
                    "archived",
                    "This notice was put away. Write a new one.",
                ));
            }
            store::rename(db, notice.id, &title)?;
            notice.id
        }
        None => {
            if let Some(facility) = given.facility {
                facilities::show(db, facilities::Which { facility })?;
            }
            let id: NoticeId = db.id();
            store::insert(db, id, &title, given.facility, &given.sport, given.language)?;
            id
        }
    };
    let language = before.as_ref().map_or(given.language, |b| b.language);
    let number = before.as_ref().map_or(1, |b| b.version.number + 1);
    let text = whole_text(&title, &parts, language, number, db.today());
    let id: VersionId = db.id();
    let version = NoticeVersion {
        id,
        number,
        made: db.today(),
        sha256: digest::sha256(text.as_bytes()),
        text,
        parts,
    };
    store::insert_version(db, notice, &version)?;
    db.label(format!("Notice published: {title}, version {number}"));
    show(db, WhichNotice { notice })
}

/// The text that is acknowledged, to the letter: title, parts, version and day.
fn whole_text(
    title: &str,
    parts: &[NoticePart],
    language: Language,
    number: i64,
    made: Day,
) -> String {
    let mut text = format!("{title}\n");
    for part in parts {
        text.push_str(&format!("\n{}\n{}\n", part.heading, part.text));
    }
    text.push_str(&format!("\n{}\n", texts::version_line(language, number, made)));
    text
}

/// Puts a notice away: nobody is asked for it any more, and what was acknowledged stays.
///
/// # Errors
/// `NotFound`.
pub fn archive(db: &Writing<'_>, which: WhichNotice) -> Result<Notice> {
    let notice = show(db, which)?;
    store::archive(db, which.notice, db.today())?;
    db.label(format!("Notice put away: {}", notice.title));
    show(db, which)
}

/// The notices that are not put away, each with its newest version.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<Notice>> {
    store::current(db)
}

/// One notice with its newest version.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichNotice) -> Result<Notice> {
    store::find(db, which.notice)
}
