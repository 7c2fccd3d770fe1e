//! The court of a sport: its size, its walls or its net, and its lines.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The unit a pack's lengths are written in, so that a metric court and one in feet are both exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Unit {
    /// Inches.
    Inch,
    /// Millimetres.
    Mm,
}

impl Unit {
    /// The unit's name beside a number.
    pub fn words(self) -> &'static str {
        match self {
            Self::Inch => "inches",
            Self::Mm => "mm",
        }
    }
}

/// A length in feet. An inch is 25.4 mm exactly (international yard and pound agreement, 1959).
///
/// ```
/// use carryover_core::sports::pack::{Unit, feet};
/// assert_eq!(feet(240.0, Unit::Inch), 20.0);
/// assert_eq!(feet(304.8, Unit::Mm), 1.0);
/// ```
pub fn feet(length: f64, unit: Unit) -> f64 {
    match unit {
        Unit::Inch => length / 12.0,
        Unit::Mm => length / 304.8,
    }
}

/// A court in the pack's unit: x from the left, z from the floor, y from the front wall or, on a
/// court with a net, from the far end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackCourt")]
pub struct Court {
    /// From the left side to the right side.
    pub width: f64,
    /// From the front wall to the back wall, or from end to end.
    pub length: f64,
    /// From the floor to the ceiling, or the least clear height where the ceiling is no part of
    /// the game; left out where no source gives one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<f64>,
    /// What the ball can touch: the floor alone on an open court.
    pub surfaces: Vec<Surface>,
    /// The net, on a court that has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub net: Option<Net>,
    /// The lines.
    pub lines: Vec<Line>,
    /// Where the size comes from.
    pub source: String,
}

impl Court {
    /// Whether a ball can come off a wall.
    pub fn has_walls(&self) -> bool {
        self.surfaces.iter().any(|surface| surface.id.is_wall())
    }

    /// The surface of that name.
    pub fn surface(&self, id: SurfaceId) -> Option<&Surface> {
        self.surfaces.iter().find(|surface| surface.id == id)
    }
}

/// A wall, the floor or the ceiling.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackSurface")]
pub struct Surface {
    /// Which one.
    pub id: SurfaceId,
    /// Its extent across.
    pub across: f64,
    /// Its other extent: up for a wall, along the court for floor and ceiling.
    pub along: f64,
    /// Whether the rules give `along` as a least height and the wall may be higher.
    #[serde(default)]
    pub at_least: bool,
    /// What a wall is made of, piece by piece, where it is not one solid wall.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub panels: Vec<Panel>,
}

/// A rectangle of a wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackPanel")]
pub struct Panel {
    /// What it is made of.
    pub kind: PanelKind,
    /// The corner nearest the origin: along the wall, and up.
    pub from: [f64; 2],
    /// The opposite corner.
    pub to: [f64; 2],
}

/// What a piece of wall is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
#[schemars(rename = "PackPanelKind")]
pub enum PanelKind {
    /// Smooth: the ball comes off it as off a wall.
    Wall,
    /// Wire mesh.
    Mesh,
}

/// The surfaces a court can have.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum SurfaceId {
    /// The wall the ball is served to, or the wall at the far end.
    Front,
    /// The left wall, seen facing the front.
    Left,
    /// The right wall, seen facing the front.
    Right,
    /// The wall behind the players.
    Back,
    /// The ceiling.
    Ceiling,
    /// The floor.
    Floor,
}

impl SurfaceId {
    /// Whether it stands upright.
    pub fn is_wall(self) -> bool {
        !matches!(self, Self::Ceiling | Self::Floor)
    }
}

/// The net.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackNet")]
pub struct Net {
    /// Its distance from the far end.
    pub at: f64,
    /// Its height in the middle.
    pub centre: f64,
    /// Its height at the sides, or at its posts.
    pub sides: f64,
    /// How far outside the court the posts stand.
    #[serde(default)]
    pub posts_outside: f64,
    /// Where it comes from.
    pub source: String,
}

/// A line, given by the edge the rules measure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "PackLine")]
pub struct Line {
    /// A short name that never changes.
    pub id: String,
    /// The name shown.
    pub name: String,
    /// The surface it is painted on.
    pub surface: SurfaceId,
    /// One end of the measured edge: x and y on floor and ceiling, x and z on the front and back
    /// wall, y and z on a side wall.
    pub from: [f64; 2],
    /// The other end.
    pub to: [f64; 2],
    /// The width of the paint.
    pub width: f64,
    /// The edge `from` and `to` describe.
    pub measured: Edge,
    /// How it is broken, where it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub broken: Option<Broken>,
    /// Where it comes from.
    pub source: String,
}

/// An edge of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
#[schemars(rename = "PackEdge")]
pub enum Edge {
    /// The edge nearest the front.
    Front,
    /// The edge nearest the back.
    Back,
    /// The edge nearest the middle of the court.
    Inner,
    /// The edge farthest from the middle of the court.
    Outer,
    /// No edge: the middle of the paint.
    Middle,
    /// The lower edge of a line on a wall.
    Lower,
    /// The upper edge of a line on a wall.
    Upper,
}

/// How a broken line is made up: a piece at each wall, and between them gaps and dashes in turn.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Broken {
    /// The length of the piece at each wall.
    pub at_each_wall: f64,
    /// The number of gaps.
    pub gaps: u32,
    /// The length of a gap.
    pub gap: f64,
    /// The number of dashes between the gaps.
    pub dashes: u32,
    /// The length of a dash.
    pub dash: f64,
}

impl Broken {
    /// The length of the whole line.
    pub fn length(&self) -> f64 {
        2.0 * self.at_each_wall
            + f64::from(self.gaps) * self.gap
            + f64::from(self.dashes) * self.dash
    }
}
