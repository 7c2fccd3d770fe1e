//! Pages into drawing operations, each wrapped in the marked content that ties it to its element.

use std::collections::BTreeMap;

use printpdf::{
    Codepoint, Color, DictItem, FontId, Line, LineCapStyle, LineDashPattern, LineJoinStyle,
    LinePoint, Op, PaintMode, PdfFontHandle, Point, Polygon, PolygonRing, Pt, Rgb, TextItem,
    TextMatrix, WindingOrder,
};
use subsetter::GlyphRemapper;

use super::pages::{Element, Page, PageItem, Tag};
use super::shape::{Glyph, Shaper};
use super::sheet::{Ink, Stroke};

/// One font of the file: its place among the fonts at hand, the glyphs in use and what they say.
pub(super) struct Face {
    pub(super) at: usize,
    pub(super) kept: GlyphRemapper,
    /// What copying a glyph gives; a glyph can say one thing only in a whole file.
    pub(super) says: BTreeMap<u16, String>,
}

/// A stretch of a page that belongs to an element: (page, number on that page).
pub(super) type Marked = BTreeMap<usize, Vec<(usize, i64)>>;

/// Notes every glyph the pages use.
pub(super) fn gather(pages: &[Page], shaper: &Shaper<'_>, faces: &mut [Face]) {
    for item in pages.iter().flat_map(|page| &page.items) {
        let PageItem::Text { font, words, .. } = item else { continue };
        let Some(face) = faces.get_mut(*font) else { continue };
        for glyph in shaper.glyphs(face.at, words) {
            face.kept.remap(glyph.id);
            let says = face.says.entry(glyph.id).or_default();
            if says.is_empty() || (!glyph.letters.is_empty() && glyph.letters < *says) {
                *says = glyph.letters;
            }
        }
    }
}

/// Paints one page.
pub(super) struct Painter<'a> {
    pub(super) shaper: &'a Shaper<'a>,
    pub(super) faces: &'a [Face],
    pub(super) elements: &'a [Element],
    pub(super) height: f32,
    pub(super) marked: Marked,
}

#[derive(PartialEq, Clone, Copy)]
enum Group {
    Element(usize),
    Pagination,
    Layout,
}

impl Painter<'_> {
    pub(super) fn page(&mut self, number: usize, page: &Page) -> Vec<Op> {
        let mut ops = vec![
            Op::SetLineCapStyle { cap: LineCapStyle::Round },
            Op::SetLineJoinStyle { join: LineJoinStyle::Round },
        ];
        let mut open = None;
        let mut next = 0;
        for item in &page.items {
            let group = match (item.element(), item) {
                (Some(element), _) => Group::Element(element),
                (None, PageItem::Text { .. }) => Group::Pagination,
                (None, _) => Group::Layout,
            };
            if open != Some(group) {
                if open.is_some() {
                    ops.push(Op::EndMarkedContent);
                }
                ops.push(self.begin(group, number, &mut next));
                open = Some(group);
            }
            self.item(&mut ops, item);
        }
        if open.is_some() {
            ops.push(Op::EndMarkedContent);
        }
        ops
    }

    fn begin(&mut self, group: Group, page: usize, next: &mut i64) -> Op {
        let mut map = BTreeMap::new();
        let tag = match group {
            Group::Element(element) => {
                map.insert("MCID".to_string(), DictItem::Int(*next));
                self.marked.entry(element).or_default().push((page, *next));
                *next += 1;
                self.elements.get(element).map_or("P", |e| tag_name(e.tag))
            }
            Group::Pagination => {
                map.insert("Type".to_string(), DictItem::Name(b"Pagination".to_vec()));
                "Artifact"
            }
            Group::Layout => {
                map.insert("Type".to_string(), DictItem::Name(b"Layout".to_vec()));
                "Artifact"
            }
        };
        Op::BeginMarkedContentWithProperties { tag: tag.into(), properties: DictItem::Dict { map } }
    }

    fn item(&self, ops: &mut Vec<Op>, item: &PageItem) {
        match item {
            PageItem::Text { x, y, size, font, ink, words, .. } => {
                let Some(face) = self.faces.get(*font) else { return };
                ops.push(Op::SetFillColor { col: colour(*ink) });
                ops.push(Op::StartTextSection);
                let font = PdfFontHandle::External(font_id(*font));
                ops.push(Op::SetFont { font, size: Pt(*size) });
                self.glyphs(ops, face, (*x, *y, *size), words);
                ops.push(Op::EndTextSection);
            }
            PageItem::Line { points, width, ink, dash, .. } => {
                let dash = dash.unwrap_or_default();
                let dashed = dash.0 > 0.0;
                if dashed {
                    let dash = LineDashPattern::new(0.0, &[dash.0, dash.1]);
                    ops.push(Op::SetLineDashPattern { dash });
                }
                self.pen(ops, Stroke { ink: *ink, width: *width });
                let points = points.iter().map(|&p| self.at(p, false)).collect();
                ops.push(Op::DrawLine { line: Line { points, is_closed: false } });
                if dashed {
                    ops.push(Op::SetLineDashPattern { dash: LineDashPattern::solid() });
                }
            }
            PageItem::Circle { centre, radius, fill, stroke, .. } => {
                self.shape(ops, self.circle(*centre, *radius), *fill, *stroke);
            }
            PageItem::Rect { x, y, width, height, fill, stroke, .. } => {
                let (right, below) = (x + width, y + height);
                let corners = [(*x, *y), (right, *y), (right, below), (*x, below)];
                let corners = corners.iter().map(|&p| self.at(p, false)).collect();
                self.shape(ops, corners, *fill, *stroke);
            }
        }
    }

    /// One show operation for what stands on the baseline, one for each displaced mark.
    fn glyphs(&self, ops: &mut Vec<Op>, face: &Face, (x, y, size): (f32, f32, f32), words: &str) {
        let mut pen = x;
        let mut open: Vec<Codepoint> = Vec::new();
        let mut start = pen;
        let show = |ops: &mut Vec<Op>, (x, y): (f32, f32), glyphs: Vec<Codepoint>| {
            if !glyphs.is_empty() {
                let matrix = TextMatrix::Translate(Pt(x), Pt(self.height - y));
                ops.push(Op::SetTextMatrix { matrix });
                ops.push(Op::ShowText { items: vec![TextItem::GlyphIds(glyphs)] });
            }
        };
        for glyph in self.shaper.glyphs(face.at, words) {
            let code = code(face, &glyph);
            if glyph.shift == (0.0, 0.0) {
                open.push(code);
            } else {
                show(ops, (start, y), std::mem::take(&mut open));
                let at = (pen + glyph.shift.0 * size, y - glyph.shift.1 * size);
                show(ops, at, vec![code]);
                start = pen + glyph.advance * size;
            }
            pen += glyph.advance * size;
        }
        show(ops, (start, y), open);
    }

    fn pen(&self, ops: &mut Vec<Op>, stroke: Stroke) {
        ops.push(Op::SetOutlineColor { col: colour(stroke.ink) });
        ops.push(Op::SetOutlineThickness { pt: Pt(stroke.width) });
    }

    fn shape(
        &self,
        ops: &mut Vec<Op>,
        points: Vec<LinePoint>,
        fill: Option<Ink>,
        stroke: Option<Stroke>,
    ) {
        let mode = match (fill, stroke) {
            (Some(_), Some(_)) => PaintMode::FillStroke,
            (Some(_), None) => PaintMode::Fill,
            (None, Some(_)) => PaintMode::Stroke,
            (None, None) => return,
        };
        if let Some(ink) = fill {
            ops.push(Op::SetFillColor { col: colour(ink) });
        }
        if let Some(stroke) = stroke {
            self.pen(ops, stroke);
        }
        let rings = vec![PolygonRing { points }];
        let polygon = Polygon { rings, mode, winding_order: WindingOrder::NonZero };
        ops.push(Op::DrawPolygon { polygon });
    }

    fn at(&self, (x, y): (f32, f32), bezier: bool) -> LinePoint {
        LinePoint { p: Point { x: Pt(x), y: Pt(self.height - y) }, bezier }
    }

    /// Four Bézier arcs; their handles are 0.5523 of the radius long.
    fn circle(&self, (x, y): (f32, f32), r: f32) -> Vec<LinePoint> {
        let h = 0.552_285 * r;
        [
            ((x + r, y), false),
            ((x + r, y + h), true),
            ((x + h, y + r), true),
            ((x, y + r), false),
            ((x - h, y + r), true),
            ((x - r, y + h), true),
            ((x - r, y), false),
            ((x - r, y - h), true),
            ((x - h, y - r), true),
            ((x, y - r), false),
            ((x + h, y - r), true),
            ((x + r, y - h), true),
            ((x + r, y), false),
        ]
        .into_iter()
        .map(|(p, handle)| self.at(p, handle))
        .collect()
    }
}

/// The name a font has inside the file.
pub(super) fn font_id(font: usize) -> FontId {
    FontId(format!("F{font}"))
}

fn code(face: &Face, glyph: &Glyph) -> Codepoint {
    // Every gid was gathered before; 0 would only draw the font's own sign of absence.
    let gid = face.kept.get(glyph.id).unwrap_or(0);
    let offset = (glyph.written - glyph.advance * 1000.0) * 100.0;
    let says = face.says.get(&glyph.id).filter(|says| !says.is_empty());
    let cid = Some(says.cloned().unwrap_or_else(|| "\u{200b}".into()));
    Codepoint { gid, offset: offset.round() / 100.0, cid }
}

fn colour(ink: Ink) -> Color {
    let [r, g, b] = ink.rgb().map(|part| (f32::from(part) / 2.55).round() / 100.0);
    Color::Rgb(Rgb::new(r, g, b, None))
}

/// The name of a structure type in ISO 32000-1 §14.8.4.
pub(super) fn tag_name(tag: Tag) -> &'static str {
    match tag {
        Tag::H1 => "H1",
        Tag::H2 => "H2",
        Tag::P => "P",
        Tag::Figure => "Figure",
        Tag::Table => "Table",
        Tag::Tr => "TR",
        Tag::Th => "TH",
        Tag::Td => "TD",
        Tag::L => "L",
        Tag::Li => "LI",
        Tag::Lbl => "Lbl",
        Tag::LBody => "LBody",
    }
}
