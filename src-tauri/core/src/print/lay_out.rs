//! A sheet becomes pages: each piece is cut into bands as high as they are, and bands are stacked
//! down the pages; a band that must stay with the next one takes it along.

use super::error::PrintError;
use super::fonts::Fonts;
use super::lines::{Setting, lines, width};
use super::pages::{Bookmark, Element, Frame, Missing, Page, PageItem, Pages, Place, Tag};
use super::shape::Shaper;
use super::sheet::{Anchor, Ink, Mark, Piece, Sheet, Weight};
use super::table::Head;
use super::words::{printable, tidy};

/// 20 mm on all four sides.
pub(super) const MARGIN: f32 = 56.69;
/// The last baseline of the footer stands this far above the paper's edge.
const FOOT: f32 = 34.0;

/// How a kind of words is set: strength, size, distance of baselines, ink.
#[derive(Debug, Clone, Copy)]
pub(super) struct Style {
    pub(super) weight: Weight,
    pub(super) size: f32,
    pub(super) lead: f32,
    pub(super) ink: Ink,
}

const fn style(weight: Weight, size: f32, lead: f32, ink: Ink) -> Style {
    Style { weight, size, lead, ink }
}

const TITLE: Style = style(Weight::Strong, 22.0, 27.0, Ink::Ink);
const HEADING: Style = style(Weight::Strong, 13.0, 18.0, Ink::Ink);
const BODY: Style = style(Weight::Plain, 11.0, 16.0, Ink::Ink);
const NOTE: Style = style(Weight::Plain, 9.0, 13.0, Ink::Soft);
const SENDER: Style = style(Weight::Strong, 11.0, 13.0, Ink::Ink);
const ADDRESS: Style = style(Weight::Plain, 9.0, 13.0, Ink::Soft);
const FOOTER: Style = style(Weight::Plain, 8.5, 12.0, Ink::Soft);

/// A strip of the page that is never cut; its items count down from its top.
#[derive(Debug, Clone, Default)]
pub(super) struct Band {
    /// Space above, dropped at the top of a page.
    pub(super) before: f32,
    pub(super) height: f32,
    /// Stays on one page with the band after it.
    pub(super) keep: bool,
    /// The table head to draw again if a page begins here.
    pub(super) head: Option<usize>,
    /// The figure in this band, and the frame's width and height.
    pub(super) figure: Option<(usize, (f32, f32))>,
    pub(super) bookmark: Option<String>,
    pub(super) items: Vec<PageItem>,
}

/// Everything gathered on the way.
pub(super) struct Setter<'a> {
    pub(super) shaper: Shaper<'a>,
    pub(super) left: f32,
    pub(super) room: f32,
    /// Height between the margins.
    pub(super) frame: f32,
    pub(super) elements: Vec<Element>,
    pub(super) missing: Vec<Missing>,
    pub(super) bands: Vec<Band>,
    pub(super) heads: Vec<Head>,
    fonts: Vec<usize>,
    titled: bool,
}

/// Decides where every word and stroke of a sheet stands.
///
/// Letters no font can write become question marks and are listed in [`Pages::missing`]; the
/// caller shows that list before the sheet is issued.
///
/// # Errors
/// If the sheet has no title or no clear language, or if its letterhead, footer or a table
/// cannot fit the paper.
pub fn lay_out(sheet: &Sheet, fonts: &Fonts) -> Result<Pages, PrintError> {
    let title = tidy(&sheet.title);
    if title.is_empty() {
        return Err(PrintError::TitleMissing);
    }
    if !is_language_tag(&sheet.language) {
        return Err(PrintError::LanguageUnclear(sheet.language.clone()));
    }
    let (page_width, page_height) = sheet.paper.size();
    let mut setter = Setter {
        shaper: Shaper::new(fonts),
        left: MARGIN,
        room: page_width - 2.0 * MARGIN,
        frame: page_height - 2.0 * MARGIN,
        elements: Vec::new(),
        missing: Vec::new(),
        bands: Vec::new(),
        heads: Vec::new(),
        fonts: Vec::new(),
        titled: false,
    };
    let footer = setter.footer_lines(&sheet.footer)?;
    let foot_top = page_height - FOOT - footer.len().max(1) as f32 * FOOTER.lead - 4.0;
    setter.frame = (foot_top - 14.0).min(page_height - MARGIN) - MARGIN;
    setter.letterhead(&sheet.letterhead)?;
    for (number, piece) in sheet.pieces.iter().enumerate() {
        setter.piece(piece, Place::Piece(number))?;
    }
    let (mut pages, bookmarks) = setter.stack();
    let count = pages.len();
    for (at, page) in pages.iter_mut().enumerate() {
        setter.foot(page, (&footer, foot_top), &page_number(&sheet.page_words, at + 1, count));
    }
    let used = setter.fonts.iter().filter_map(|&font| fonts.used(font)).collect();
    Ok(Pages {
        title,
        language: sheet.language.clone(),
        author: tidy(&sheet.author),
        issued: sheet.issued,
        width: page_width,
        height: page_height,
        fonts: used,
        elements: setter.elements,
        bookmarks,
        pages,
        missing: setter.missing,
    })
}

fn page_number(words: &str, n: usize, m: usize) -> String {
    words.replace("{n}", &n.to_string()).replace("{m}", &m.to_string())
}

/// The shape of a BCP 47 tag: letters first, then parts of 1 to 8 letters or digits.
fn is_language_tag(tag: &str) -> bool {
    let mut parts = tag.split('-');
    parts
        .next()
        .is_some_and(|p| (2..=8).contains(&p.len()) && p.bytes().all(|b| b.is_ascii_alphabetic()))
        && parts.all(|p| (1..=8).contains(&p.len()) && p.bytes().all(|b| b.is_ascii_alphanumeric()))
}

/// To a hundredth of a point: finer than any printer, and short to write down.
pub(super) fn hundredth(length: f32) -> f32 {
    (length * 100.0).round() / 100.0
}

impl Setter<'_> {
    pub(super) fn element(&mut self, tag: Tag, inside: Option<usize>) -> usize {
        self.elements.push(Element { tag, inside, alt: None, frame: None });
        self.elements.len() - 1
    }

    pub(super) fn words(&mut self, style: Style, words: &str, place: Place) -> String {
        printable(&self.shaper, style.weight, words, place, &mut self.missing)
    }

    pub(super) fn wrap(&self, style: Style, room: f32, words: &str) -> Vec<String> {
        lines(&self.shaper, Setting { weight: style.weight, size: style.size, room }, words)
    }

    pub(super) fn line_width(&self, style: Style, words: &str) -> f32 {
        let setting = Setting { weight: style.weight, size: style.size, room: 0.0 };
        width(&self.shaper, setting, words.trim_end_matches(' '))
    }

    /// Words on one line from `x`, in the middle of a line that begins at `top`.
    pub(super) fn set_line(
        &mut self,
        element: Option<usize>,
        style: Style,
        (x, top): (f32, f32),
        words: &str,
    ) -> Vec<PageItem> {
        // Capitals of the shipped face are 0.668 em high.
        self.set_at(element, style, (x, top + (style.lead + 0.668 * style.size) / 2.0), words)
    }

    fn set_at(
        &mut self,
        element: Option<usize>,
        style: Style,
        (x, y): (f32, f32),
        words: &str,
    ) -> Vec<PageItem> {
        let mut items = Vec::new();
        for run in self.shaper.runs(style.weight, words) {
            let font = self.font(run.font);
            let seen = run.words.trim_end_matches(' ');
            let width = if seen.len() == run.words.len() {
                run.width
            } else {
                self.shaper.glyphs(run.font, seen).iter().map(|glyph| glyph.advance).sum()
            };
            items.push(PageItem::Text {
                element,
                x: hundredth(x + run.x * style.size),
                y: hundredth(y),
                width: hundredth(width * style.size),
                size: hundredth(style.size),
                font,
                ink: style.ink,
                words: run.words,
            });
        }
        items
    }

    fn font(&mut self, font: usize) -> usize {
        self.fonts.iter().position(|&known| known == font).unwrap_or_else(|| {
            self.fonts.push(font);
            self.fonts.len() - 1
        })
    }

    fn letterhead(&mut self, letterhead: &[String]) -> Result<(), PrintError> {
        let mut band = Band::default();
        let half = self.room / 2.0 - 8.0;
        let (mut left, mut right) = (0.0, 0.0);
        for (number, words) in letterhead.iter().enumerate() {
            let style = if number == 0 { SENDER } else { ADDRESS };
            let words = self.words(style, words, Place::Letterhead);
            if words.is_empty() {
                continue;
            }
            let element = Some(self.element(Tag::P, None));
            for line in self.wrap(style, half, &words) {
                let (x, top) = if number == 0 {
                    (self.left, &mut left)
                } else {
                    (self.left + self.room - self.line_width(style, &line), &mut right)
                };
                let at = (x, *top);
                *top += style.lead;
                band.items.extend(self.set_line(element, style, at, &line));
            }
        }
        if band.items.is_empty() {
            return Ok(());
        }
        let below = f32::max(left, right) + 8.0;
        if below > self.frame / 3.0 {
            return Err(PrintError::LetterheadTooTall);
        }
        band.items.push(self.rule(below, 0.9, Ink::Line));
        band.height = below + 14.0;
        self.bands.push(band);
        Ok(())
    }

    pub(super) fn rule(&self, y: f32, width: f32, ink: Ink) -> PageItem {
        let points = vec![(self.left, y), (hundredth(self.left + self.room), y)];
        PageItem::Line { element: None, points, width, ink, dash: None }
    }

    fn piece(&mut self, piece: &Piece, place: Place) -> Result<(), PrintError> {
        match piece {
            Piece::Title(words) => self.heading(TITLE, (14.0, 10.0), words, place),
            Piece::Heading(words) => self.heading(HEADING, (12.0, 4.0), words, place),
            Piece::Text(words) => self.paragraph(BODY, (0.0, 8.0), words, place),
            Piece::Note(words) => self.paragraph(NOTE, (0.0, 8.0), words, place),
            Piece::Lines(lines) => {
                for (n, line) in lines.iter().enumerate() {
                    let below = if n + 1 == lines.len() { 8.0 } else { 0.0 };
                    self.paragraph(BODY, (0.0, below), line, place);
                }
            }
            Piece::Bullets(entries) => self.bullets(entries, place),
            Piece::Figure { alt, width_pt, height_pt, marks } => {
                self.figure((alt, marks), (*width_pt, *height_pt), place);
            }
            Piece::Table { head, rows, right_aligned } => {
                return self.table(head, rows, right_aligned, place);
            }
        }
        Ok(())
    }

    fn heading(&mut self, style: Style, (before, after): (f32, f32), words: &str, place: Place) {
        let words = self.words(style, words, place);
        if words.is_empty() {
            return;
        }
        // The first heading of a document is its title, whatever it was called (ISO 14289-1 §7.4).
        let tag = if self.titled && style.size < TITLE.size { Tag::H2 } else { Tag::H1 };
        self.titled = true;
        let element = self.element(tag, None);
        let from = self.bands.len();
        self.line_bands(Some(element), style, (self.left, self.room), &words);
        for band in &mut self.bands[from..] {
            band.keep = true;
        }
        self.space(from, before, after);
        if let Some(first) = self.bands.get_mut(from) {
            first.bookmark = Some(words);
        }
    }

    fn paragraph(&mut self, style: Style, (before, after): (f32, f32), words: &str, place: Place) {
        let words = self.words(style, words, place);
        if words.is_empty() {
            return;
        }
        let element = self.element(Tag::P, None);
        let from = self.bands.len();
        self.line_bands(Some(element), style, (self.left, self.room), &words);
        self.space(from, before, after);
    }

    fn bullets(&mut self, entries: &[String], place: Place) {
        const INDENT: f32 = 14.0;
        let mut list = None;
        for entry in entries {
            let words = self.words(BODY, entry, place);
            if words.is_empty() {
                continue;
            }
            let list = *list.get_or_insert_with(|| self.element(Tag::L, None));
            let entry = self.element(Tag::Li, Some(list));
            let dot = self.element(Tag::Lbl, Some(entry));
            let body = self.element(Tag::LBody, Some(entry));
            let from = self.bands.len();
            self.line_bands(Some(body), BODY, (self.left + INDENT, self.room - INDENT), &words);
            let mut items = self.set_line(Some(dot), BODY, (self.left, 0.0), "•");
            if let Some(first) = self.bands.get_mut(from) {
                items.append(&mut first.items);
                first.items = items;
            }
            self.space(from, 0.0, 3.0);
        }
        if list.is_some() {
            self.space(self.bands.len(), 0.0, 5.0);
        }
    }

    /// One band a line. Two lines at least stay together at each end of a paragraph.
    fn line_bands(
        &mut self,
        element: Option<usize>,
        style: Style,
        (x, room): (f32, f32),
        words: &str,
    ) {
        let lines = self.wrap(style, room, words);
        let last = lines.len().saturating_sub(1);
        for (at, line) in lines.iter().enumerate() {
            let items = self.set_line(element, style, (x, 0.0), line);
            let keep = at < last && (at == 0 || at + 1 == last);
            self.bands.push(Band { height: style.lead, keep, items, ..Band::default() });
        }
    }

    /// Space above the band at `from` and below the last one.
    pub(super) fn space(&mut self, from: usize, before: f32, after: f32) {
        if let Some(first) = self.bands.get_mut(from) {
            first.before += before;
        }
        if let Some(last) = self.bands.last_mut() {
            last.height += after;
        }
    }

    fn figure(&mut self, (alt, marks): (&str, &[Mark]), size: (f32, f32), place: Place) {
        let (wide, tall) = (length(size.0), length(size.1));
        if wide <= 0.0 || tall <= 0.0 {
            return;
        }
        let alt = tidy(alt);
        let element = (!alt.is_empty()).then(|| self.element(Tag::Figure, None));
        if let Some(figure) = element.and_then(|at| self.elements.get_mut(at)) {
            figure.alt = Some(alt);
        }
        let after = 12.0;
        let scale = (self.room / wide).min((self.frame - after) / tall).min(1.0);
        let drawing = Drawing { element, scale, size: (wide * scale, tall * scale) };
        let mut items = Vec::new();
        for mark in marks {
            self.mark(&drawing, mark, place, &mut items);
        }
        let figure = element.map(|at| (at, drawing.size));
        let height = drawing.size.1 + after;
        self.bands.push(Band { before: 2.0, height, figure, items, ..Band::default() });
    }

    fn mark(&mut self, drawing: &Drawing, mark: &Mark, place: Place, items: &mut Vec<PageItem>) {
        let (element, scale, left) = (drawing.element, drawing.scale, self.left);
        let stroke = |stroke: &Option<super::sheet::Stroke>| {
            stroke.map(|s| super::sheet::Stroke { width: hundredth(length(s.width) * scale), ..s })
        };
        match mark {
            Mark::Line { points, width, ink, dash } => items.push(PageItem::Line {
                element,
                points: points.iter().map(|&p| drawing.point(left, p)).collect(),
                width: hundredth(length(*width) * scale),
                ink: *ink,
                dash: dash
                    .map(|(on, off)| (length(on) * scale, length(off) * scale))
                    .filter(|(on, off)| *on > 0.0 && *off > 0.0),
            }),
            Mark::Circle { centre, radius, fill, stroke: edge } => {
                let (wide, tall) = drawing.size;
                let radius = (length(*radius) * scale).min(wide / 2.0).min(tall / 2.0);
                let (x, y) = drawing.point(0.0, *centre);
                let x = x.clamp(radius, wide - radius);
                let y = y.clamp(radius, tall - radius);
                items.push(PageItem::Circle {
                    element,
                    centre: (hundredth(left + x), hundredth(y)),
                    radius: hundredth(radius),
                    fill: *fill,
                    stroke: stroke(edge),
                });
            }
            Mark::Rect { at, width, height, fill, stroke: edge } => {
                let (x, y) = drawing.point(left, *at);
                let far = (at.0 + length(*width), at.1 + length(*height));
                let (right, below) = drawing.point(left, far);
                items.push(PageItem::Rect {
                    element,
                    x,
                    y,
                    width: hundredth((right - x).max(0.0)),
                    height: hundredth((below - y).max(0.0)),
                    fill: *fill,
                    stroke: stroke(edge),
                });
            }
            Mark::Text { at, size, weight, anchor, ink, words } => {
                let size = (length(*size) * scale).clamp(0.1, drawing.size.1.max(0.1));
                let mut style = style(*weight, size, size, *ink);
                let words = self.words(style, words, place);
                let room = drawing.size.0;
                let natural = self.line_width(style, &words);
                if natural > room {
                    style.size *= room / natural * 0.999;
                }
                let wide = natural.min(room);
                let (x, y) = drawing.point(0.0, *at);
                let x = match anchor {
                    Anchor::Start => x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                let x = left + x.clamp(0.0, (room - wide).max(0.0));
                let y = y.clamp((0.8 * style.size).min(drawing.size.1), drawing.size.1);
                items.extend(self.set_at(element, style, (x, y), &words));
            }
        }
    }

    fn footer_lines(&mut self, footer: &str) -> Result<Vec<String>, PrintError> {
        let words = self.words(FOOTER, footer, Place::Footer);
        let lines = self.wrap(FOOTER, self.room * 0.75, &words);
        if lines.len() as f32 * FOOTER.lead > self.frame / 3.0 {
            return Err(PrintError::FooterTooTall);
        }
        Ok(lines)
    }

    fn foot(&mut self, page: &mut Page, (footer, top): (&[String], f32), number: &str) {
        page.items.push(self.rule(hundredth(top), 0.5, Ink::Rule));
        let first = top + 4.0;
        for (at, line) in footer.iter().enumerate() {
            let y = first + at as f32 * FOOTER.lead;
            page.items.extend(self.set_line(None, FOOTER, (self.left, y), line));
        }
        let words = self.words(FOOTER, number, Place::Footer);
        let room = self.room * 0.25 - 8.0;
        let line = self.wrap(FOOTER, room, &words).into_iter().next().unwrap_or_default();
        let x = self.left + self.room - self.line_width(FOOTER, &line);
        page.items.extend(self.set_line(None, FOOTER, (x, first), &line));
    }

    /// Stacks the bands down as many pages as they need.
    fn stack(&mut self) -> (Vec<Page>, Vec<Bookmark>) {
        let bands = std::mem::take(&mut self.bands);
        let mut pages = vec![Page::default()];
        let mut bookmarks = Vec::new();
        let mut y = 0.0;
        let mut fresh = true;
        let mut from = 0;
        while from < bands.len() {
            let kept = bands[from..].iter().take_while(|band| band.keep).count();
            let to = (from + kept + 1).min(bands.len());
            let chain = &bands[from..to];
            let need: f32 =
                chain.iter().map(|b| b.before + b.height).sum::<f32>() - chain[0].before;
            let mut turn = !fresh && y + chain[0].before + need > self.frame && need <= self.frame;
            for band in chain {
                let before = if fresh { 0.0 } else { band.before };
                if turn || (!fresh && y + before + band.height > self.frame) {
                    pages.push(Page::default());
                    (y, fresh, turn) = (0.0, true, false);
                    if let Some(head) = band.head.and_then(|at| self.heads.get(at)) {
                        let repeated = head.items.iter().map(|i| i.as_ornament().lowered(MARGIN));
                        pages.last_mut().into_iter().for_each(|p| p.items.extend(repeated.clone()));
                        y = head.height;
                    }
                }
                y += if fresh { 0.0 } else { band.before };
                fresh = false;
                let page = pages.len() - 1;
                if let Some(words) = &band.bookmark {
                    bookmarks.push(Bookmark {
                        words: words.clone(),
                        page,
                        y: hundredth(MARGIN + y),
                    });
                }
                if let Some((at, (width, height))) = band.figure
                    && let Some(element) = self.elements.get_mut(at)
                {
                    let y = hundredth(MARGIN + y);
                    element.frame = Some(Frame { page, x: self.left, y, width, height });
                }
                let lowered = band.items.iter().map(|item| item.lowered(hundredth(MARGIN + y)));
                pages.last_mut().into_iter().for_each(|p| p.items.extend(lowered.clone()));
                y += band.height;
            }
            from = to;
        }
        (pages, bookmarks)
    }
}

/// The box a figure is drawn in.
struct Drawing {
    element: Option<usize>,
    scale: f32,
    size: (f32, f32),
}

impl Drawing {
    fn point(&self, left: f32, (x, y): (f32, f32)) -> (f32, f32) {
        let inside = |at: f32, end: f32| {
            if at.is_finite() { (at * self.scale).clamp(0.0, end) } else { 0.0 }
        };
        (hundredth(left + inside(x, self.size.0)), hundredth(inside(y, self.size.1)))
    }
}

/// A length that can be drawn: finite and not negative.
fn length(value: f32) -> f32 {
    if value.is_finite() { value.clamp(0.0, 100_000.0) } else { 0.0 }
}
