//! Where everything stands: pages of placed items, the tree that gives them a meaning, and what
//! no font could write. The screen and the PDF both draw from this and nothing else.

use chrono::{DateTime, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::fonts::FontUsed;
use super::sheet::{Ink, Stroke};

/// A document whose every position is decided. Lengths are points, y grows downwards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Pages {
    /// The document's name.
    pub title: String,
    /// Its language (BCP 47).
    pub language: String,
    /// Who issues it.
    pub author: String,
    /// When it was issued.
    #[schemars(with = "String")]
    pub issued: DateTime<Utc>,
    /// Width of every page.
    pub width: f32,
    /// Height of every page.
    pub height: f32,
    /// The fonts in use; a text item names its font by place in this list. A record that must be
    /// reproducible keeps these.
    pub fonts: Vec<FontUsed>,
    /// The meaning of the items, in reading order; an item names its element by place here.
    pub elements: Vec<Element>,
    /// Title and headings, by position.
    pub bookmarks: Vec<Bookmark>,
    /// The pages.
    pub pages: Vec<Page>,
    /// What no font could write, for the coach to see before issuing.
    pub missing: Vec<Missing>,
}

/// One page.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Page {
    /// What is drawn, in reading order.
    pub items: Vec<PageItem>,
}

/// One thing drawn. An item without an element is ornament: rules, page numbers, repeated heads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum PageItem {
    /// A run of words in one font.
    Text {
        /// Place in [`Pages::elements`].
        element: Option<usize>,
        /// Left end.
        x: f32,
        /// Baseline.
        y: f32,
        /// Drawn width, a space at the end of a line not counted.
        width: f32,
        /// Size of type.
        size: f32,
        /// Place in [`Pages::fonts`].
        font: usize,
        /// Colour.
        ink: Ink,
        /// The words, composed (NFC).
        words: String,
    },
    /// A line through points.
    Line {
        /// Place in [`Pages::elements`].
        element: Option<usize>,
        /// The points in order.
        points: Vec<(f32, f32)>,
        /// Thickness.
        width: f32,
        /// Colour.
        ink: Ink,
        /// Lengths of stroke and gap.
        dash: Option<(f32, f32)>,
    },
    /// A circle.
    Circle {
        /// Place in [`Pages::elements`].
        element: Option<usize>,
        /// Its centre.
        centre: (f32, f32),
        /// Its radius.
        radius: f32,
        /// The ink inside.
        fill: Option<Ink>,
        /// The line around it.
        stroke: Option<Stroke>,
    },
    /// A rectangle.
    Rect {
        /// Place in [`Pages::elements`].
        element: Option<usize>,
        /// Left edge.
        x: f32,
        /// Top edge.
        y: f32,
        /// Width.
        width: f32,
        /// Height.
        height: f32,
        /// The ink inside.
        fill: Option<Ink>,
        /// The line around it.
        stroke: Option<Stroke>,
    },
}

impl PageItem {
    /// The element the item belongs to; `None` is ornament.
    pub fn element(&self) -> Option<usize> {
        match self {
            Self::Text { element, .. }
            | Self::Line { element, .. }
            | Self::Circle { element, .. }
            | Self::Rect { element, .. } => *element,
        }
    }

    /// The same item as ornament, as a repeated table head is.
    pub(super) fn as_ornament(&self) -> Self {
        let mut copy = self.clone();
        match &mut copy {
            Self::Text { element, .. }
            | Self::Line { element, .. }
            | Self::Circle { element, .. }
            | Self::Rect { element, .. } => *element = None,
        }
        copy
    }

    /// The same item lower on the page.
    pub(super) fn lowered(&self, by: f32) -> Self {
        let mut copy = self.clone();
        match &mut copy {
            Self::Text { y, .. } | Self::Rect { y, .. } => *y += by,
            Self::Line { points, .. } => points.iter_mut().for_each(|p| p.1 += by),
            Self::Circle { centre, .. } => centre.1 += by,
        }
        copy
    }
}

/// What a part of the document is, for a screen reader.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "SheetElement")]
pub struct Element {
    /// Its kind.
    pub tag: Tag,
    /// The element it is inside of, by place in [`Pages::elements`]; `None` is the document.
    pub inside: Option<usize>,
    /// What a figure shows, in words.
    pub alt: Option<String>,
    /// Where a figure stands.
    pub frame: Option<Frame>,
}

/// The standard structure types of ISO 32000-1 §14.8.4 that a sheet uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(rename = "SheetTag")]
pub enum Tag {
    /// Title.
    H1,
    /// Heading.
    H2,
    /// Paragraph.
    P,
    /// Drawing.
    Figure,
    /// Table.
    Table,
    /// Table row.
    Tr,
    /// Head cell.
    Th,
    /// Cell.
    Td,
    /// List.
    L,
    /// List entry.
    Li,
    /// The dot before an entry.
    Lbl,
    /// The entry's words.
    LBody,
}

/// A box on a page.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "SheetFrame")]
pub struct Frame {
    /// The page, counted from 0.
    pub page: usize,
    /// Left edge.
    pub x: f32,
    /// Top edge.
    pub y: f32,
    /// Width.
    pub width: f32,
    /// Height.
    pub height: f32,
}

/// A heading to jump to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Bookmark {
    /// Its words.
    pub words: String,
    /// The page, counted from 0.
    pub page: usize,
    /// How far down.
    pub y: f32,
}

/// Letters no font at hand can write; a question mark stands in their place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Missing {
    /// The letter with its marks, as it was given.
    pub cluster: String,
    /// Where it first stood.
    pub place: Place,
}

/// A part of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "part", content = "number", rename_all = "kebab-case")]
#[schemars(rename = "SheetPlace")]
pub enum Place {
    /// The letterhead.
    Letterhead,
    /// A piece, counted from 0.
    Piece(usize),
    /// The footer.
    Footer,
}
