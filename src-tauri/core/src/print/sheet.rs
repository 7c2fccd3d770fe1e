//! What a document says, before anything has a place: its pieces in reading order.

use chrono::{DateTime, Utc};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A whole document in reading order.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Sheet {
    /// The document's name, for the window title and the file's own record.
    pub title: String,
    /// The language it is written in, as a BCP 47 tag such as `en-GB`.
    pub language: String,
    /// Who issues it.
    pub author: String,
    /// The instant of issue; the only date that enters the file.
    #[schemars(with = "String")]
    pub issued: DateTime<Utc>,
    /// The size of the paper.
    #[serde(default)]
    pub paper: Paper,
    /// The lines at the top of the first page; the first is the sender's name.
    #[serde(default)]
    pub letterhead: Vec<String>,
    /// Everything between letterhead and footer.
    pub pieces: Vec<Piece>,
    /// Words at the foot of every page; may be empty.
    #[serde(default)]
    pub footer: String,
    /// The words of the page number, in which `{n}` and `{m}` are replaced.
    #[serde(default = "page_words")]
    pub page_words: String,
}

fn page_words() -> String {
    "Page {n} of {m}".into()
}

/// A size of paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 × 11 inches.
    Letter,
}

impl Paper {
    /// Width and height in points.
    pub fn size(self) -> (f32, f32) {
        match self {
            Self::A4 => (595.28, 841.89),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// One part of a document.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", content = "is", rename_all = "kebab-case")]
pub enum Piece {
    /// The one large title.
    Title(String),
    /// A heading; it stays with what follows.
    Heading(String),
    /// One paragraph, ragged right.
    Text(String),
    /// One small, soft paragraph: a date line, a caption, the source of a count.
    Note(String),
    /// Lines that stand close together, each on its own, as of an address.
    Lines(Vec<String>),
    /// A list with a dot before each entry.
    Bullets(Vec<String>),
    /// A drawing.
    Figure {
        /// What the drawing shows, for someone who cannot see it; empty means decoration.
        alt: String,
        /// Width of the drawing's box; too wide for the page, it is scaled down.
        width_pt: f32,
        /// Height of the drawing's box; too tall for the page, it is scaled down.
        height_pt: f32,
        /// What is drawn, from the box's top left corner; what lies outside is moved to its edge.
        marks: Vec<Mark>,
    },
    /// A table; the head is drawn again at the top of each further page.
    Table {
        /// The words above each column; may be empty.
        head: Vec<String>,
        /// Rows of cells; a short row ends in empty cells.
        rows: Vec<Vec<String>>,
        /// Columns (counted from 0) whose words end at the right, as figures do.
        #[serde(default)]
        right_aligned: Vec<usize>,
    },
}

/// One stroke or word of a drawing; points are (x, y) with y growing downwards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Mark {
    /// A line through points.
    Line {
        /// The points in order.
        points: Vec<(f32, f32)>,
        /// Thickness in points.
        width: f32,
        /// Colour.
        ink: Ink,
        /// Lengths of stroke and gap; none is an unbroken line.
        #[serde(default)]
        dash: Option<(f32, f32)>,
    },
    /// A circle.
    Circle {
        /// Its centre.
        centre: (f32, f32),
        /// Its radius.
        radius: f32,
        /// The ink inside; none leaves it open.
        #[serde(default)]
        fill: Option<Ink>,
        /// The line around it.
        #[serde(default)]
        stroke: Option<Stroke>,
    },
    /// A rectangle.
    Rect {
        /// Its top left corner.
        at: (f32, f32),
        /// Its width.
        width: f32,
        /// Its height.
        height: f32,
        /// The ink inside; none leaves it open.
        #[serde(default)]
        fill: Option<Ink>,
        /// The line around it.
        #[serde(default)]
        stroke: Option<Stroke>,
    },
    /// Words on one line; too wide for the drawing, they are made smaller.
    Text {
        /// The point on the baseline that `anchor` speaks of.
        at: (f32, f32),
        /// Size in points.
        size: f32,
        /// Plain or strong.
        #[serde(default)]
        weight: Weight,
        /// Which end of the words stands at the point.
        #[serde(default)]
        anchor: Anchor,
        /// Colour.
        ink: Ink,
        /// The words.
        words: String,
    },
}

/// A drawn edge.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Stroke {
    /// Colour.
    pub ink: Ink,
    /// Thickness in points.
    pub width: f32,
}

/// Plain or strong type.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// Regular.
    #[default]
    Plain,
    /// SemiBold (Bold in the fallback fonts).
    Strong,
}

/// Which part of a line of words stands at its point.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Anchor {
    /// The left end.
    #[default]
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

/// The inks of a sheet, by the name they have on the screen.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// Text.
    #[default]
    Ink,
    /// Quiet text.
    Soft,
    /// Thin rules.
    Rule,
    /// The red of court lines, for lines only.
    Line,
    /// Ball blue.
    Ball,
    /// Maple.
    Maple,
}

impl Ink {
    /// Red, green and blue, 0 to 255.
    pub fn rgb(self) -> [u8; 3] {
        match self {
            Self::Ink => [0x1c, 0x22, 0x30],
            Self::Soft => [0x56, 0x5d, 0x6e],
            Self::Rule => [0xd9, 0xd4, 0xc8],
            Self::Line => [0xb3, 0x32, 0x2b],
            Self::Ball => [0x1f, 0x57, 0xc3],
            Self::Maple => [0xb5, 0x7f, 0x3f],
        }
    }
}
