//! Notices about injury, liability and health data: a text in ten parts, in versions that never
//! change, for a place and a sport; and who acknowledged which.
//!
//! A notice stands in nobody's place: it says that the facility's own forms and rules govern, that
//! local law decides, and that it is no medical or legal advice. It takes no right away.

mod acknowledge;
mod needed;
mod print;
mod publish;
mod store;
mod texts;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use acknowledge::{Acknowledge, Acknowledgement, acknowledge, of as acknowledgements};
pub use needed::{NoticeNeeded, NoticesFor, missing_on, needed};
pub use print::{OfAcknowledgement, OfVersion, acknowledged_document, document};
pub use publish::{
    DraftNotice, NoticeDraft, PublishNotice, WhichNotice, archive, draft, list, publish, show,
};

use crate::kinds::ids::{FacilityId, NoticeId, VersionId};
use crate::kinds::{Day, Language};

/// What a part of a notice says; a notice has each of them once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum NoticeItem {
    /// The facility's own forms, rules and incident process govern.
    Facility,
    /// Local law decides what a waiver can do.
    Law,
    /// Neither medical nor legal advice.
    Advice,
    /// Whom to call in an emergency.
    Emergency,
    /// The known risks.
    Risks,
    /// Eyewear.
    Eyewear,
    /// What is kept about health, why, how long, who sees it, how to withdraw.
    Data,
    /// The guardian of someone under age.
    Guardian,
    /// Recordings and photographs are asked about on their own.
    Pictures,
    /// Version and date, and that a new version asks again.
    Version,
}

/// All of them, in their order.
pub const ITEMS: [NoticeItem; 10] = [
    NoticeItem::Facility,
    NoticeItem::Law,
    NoticeItem::Advice,
    NoticeItem::Emergency,
    NoticeItem::Risks,
    NoticeItem::Eyewear,
    NoticeItem::Data,
    NoticeItem::Guardian,
    NoticeItem::Pictures,
    NoticeItem::Version,
];

/// A part of a notice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoticePart {
    /// What it says.
    pub item: NoticeItem,
    /// Its heading.
    pub heading: String,
    /// Its text.
    pub text: String,
}

/// A notice with its newest version.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Notice {
    /// Which one.
    pub id: NoticeId,
    /// Its title.
    pub title: String,
    /// For which facility; `None` for every one.
    pub facility: Option<FacilityId>,
    /// The facility's name; empty for every one.
    pub place: String,
    /// For which sport; empty for every one.
    pub sport: String,
    /// Its language.
    pub language: Language,
    /// The day it was put away.
    pub archived: Option<Day>,
    /// Its newest version.
    pub version: NoticeVersion,
    /// How many students have acknowledged that version.
    pub acknowledged: u32,
}

/// One version of a notice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct NoticeVersion {
    /// Which one.
    pub id: VersionId,
    /// Its number.
    pub number: i64,
    /// The day it was made.
    pub made: Day,
    /// What is acknowledged, to the letter.
    pub text: String,
    /// The text's SHA-256, in hexadecimal.
    pub sha256: String,
    /// The same text by its parts.
    pub parts: Vec<NoticePart>,
}
