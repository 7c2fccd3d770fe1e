//! Words into glyphs: the font of each letter, kerning, marks, and the order of left-to-right
//! and right-to-left runs on a line (Unicode UAX #9).

use std::cell::{OnceCell, RefCell};
use std::collections::HashMap;
use std::rc::Rc;

use rustybuzz::ttf_parser::{GlyphId, Tag};
use rustybuzz::{Direction, Feature, Script, ShapePlan, UnicodeBuffer};
use unicode_segmentation::UnicodeSegmentation;

use super::fonts::Fonts;
use super::sheet::Weight;
use super::words::is_invisible;

/// The fonts opened for shaping, each when first needed.
pub(super) struct Shaper<'a> {
    pub(super) fonts: &'a Fonts,
    faces: Vec<OnceCell<Option<rustybuzz::Face<'a>>>>,
    /// How each font shapes a script; finding it out costs more than shaping a word.
    plans: RefCell<HashMap<(usize, Direction, Script), Rc<ShapePlan>>>,
    /// Widths found so far: lines are broken by measuring the same words again and again.
    widths: RefCell<HashMap<(Weight, String), f32>>,
}

/// A glyph and how far it moves the pen; lengths are fractions of the size of type.
#[derive(Debug, Clone)]
pub(super) struct Glyph {
    pub(super) id: u16,
    /// The width a PDF writes down for it: whole thousandths of the size of type.
    pub(super) written: f32,
    /// What shaping made of it.
    pub(super) advance: f32,
    /// A mark's own displacement, right and up.
    pub(super) shift: (f32, f32),
    /// The letters it stands for; empty if a glyph before it stands for them.
    pub(super) letters: String,
}

/// Neighbouring letters of one font and one direction.
#[derive(Debug, Clone)]
pub(super) struct Run {
    pub(super) font: usize,
    pub(super) words: String,
    /// Distance from the left end of the line.
    pub(super) x: f32,
    pub(super) width: f32,
}

impl<'a> Shaper<'a> {
    pub(super) fn new(fonts: &'a Fonts) -> Self {
        Self {
            fonts,
            faces: (0..fonts.len()).map(|_| OnceCell::new()).collect(),
            plans: RefCell::default(),
            widths: RefCell::default(),
        }
    }

    fn face(&self, font: usize) -> Option<&rustybuzz::Face<'a>> {
        self.faces
            .get(font)?
            .get_or_init(|| {
                rustybuzz::Face::from_slice(self.fonts.bytes(font)?, self.fonts.index(font))
            })
            .as_ref()
    }

    /// The first font that has every letter of a cluster.
    pub(super) fn font_for(&self, weight: Weight, cluster: &str) -> Option<usize> {
        self.fonts.order(weight).find(|&font| {
            self.face(font).is_some_and(|face| {
                cluster.chars().all(|c| {
                    is_invisible(c) || face.glyph_index(c).is_some_and(|glyph| glyph.0 != 0)
                })
            })
        })
    }

    /// The runs of one line in reading order, each with its place from the left.
    pub(super) fn runs(&self, weight: Weight, words: &str) -> Vec<Run> {
        let mut runs = Vec::new();
        let mut x = 0.0;
        for (span, backwards) in directions(words) {
            let mut pieces = self.by_font(weight, &words[span.clone()]);
            if backwards {
                pieces.reverse();
            }
            for (font, at, piece) in pieces {
                let width = self.glyphs(font, piece).iter().map(|glyph| glyph.advance).sum();
                runs.push((span.start + at, Run { font, words: piece.into(), x, width }));
                x += width;
            }
        }
        runs.sort_by_key(|(start, _)| *start);
        runs.into_iter().map(|(_, run)| run).collect()
    }

    /// The width of one line, in fractions of the size of type.
    pub(super) fn width(&self, weight: Weight, words: &str) -> f32 {
        let key = (weight, words.to_owned());
        if let Some(width) = self.widths.borrow().get(&key) {
            return *width;
        }
        let width = self
            .by_font(weight, words)
            .into_iter()
            .flat_map(|(font, _, piece)| self.glyphs(font, piece))
            .map(|glyph| glyph.advance)
            .sum();
        self.widths.borrow_mut().insert(key, width);
        width
    }

    fn plan(
        &self,
        font: usize,
        face: &rustybuzz::Face<'a>,
        buffer: &UnicodeBuffer,
        figures: Feature,
    ) -> Rc<ShapePlan> {
        let (direction, script) = (buffer.direction(), buffer.script());
        let mut plans = self.plans.borrow_mut();
        let plan = plans.entry((font, direction, script)).or_insert_with(|| {
            let known = (script != rustybuzz::script::UNKNOWN).then_some(script);
            Rc::new(ShapePlan::new(face, direction, known, None, &[figures]))
        });
        Rc::clone(plan)
    }

    fn by_font<'t>(&self, weight: Weight, words: &'t str) -> Vec<(usize, usize, &'t str)> {
        let mut pieces: Vec<(usize, usize, &str)> = Vec::new();
        for (at, cluster) in words.grapheme_indices(true) {
            let font = self.font_for(weight, cluster).unwrap_or(0);
            match pieces.last_mut() {
                Some((last, start, piece)) if *last == font => {
                    *piece = &words[*start..at + cluster.len()];
                }
                _ => pieces.push((font, at, cluster)),
            }
        }
        pieces
    }

    /// The glyphs of one run, left to right as they are drawn.
    pub(super) fn glyphs(&self, font: usize, words: &str) -> Vec<Glyph> {
        let Some(face) = self.face(font) else { return Vec::new() };
        let em = face.units_per_em().max(1) as f32;
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(words);
        buffer.guess_segment_properties();
        let backwards = directions(words).first().is_some_and(|(_, backwards)| *backwards);
        buffer.set_direction(if backwards {
            Direction::RightToLeft
        } else {
            Direction::LeftToRight
        });
        // Figures of one width, so that columns of them line up.
        let figures = Feature::new(Tag::from_bytes(b"tnum"), 1, ..);
        let plan = self.plan(font, face, &buffer, figures);
        let shaped = rustybuzz::shape_with_plan(face, &plan, buffer);
        let (infos, places) = (shaped.glyph_infos(), shaped.glyph_positions());
        let mut starts: Vec<usize> = infos.iter().map(|info| info.cluster as usize).collect();
        starts.sort_unstable();
        starts.dedup();
        let mut glyphs = Vec::with_capacity(infos.len());
        let mut from = 0;
        while from < infos.len() {
            let start = infos[from].cluster as usize;
            let to =
                from + infos[from..].iter().take_while(|i| i.cluster as usize == start).count();
            let next = starts.iter().find(|&&s| s > start);
            let letters = words.get(start..next.copied().unwrap_or(words.len())).unwrap_or("");
            let shared = share(letters, to - from);
            for ((info, place), letters) in
                infos[from..to].iter().zip(&places[from..to]).zip(shared)
            {
                let id = info.glyph_id as u16;
                let natural = f32::from(face.glyph_hor_advance(GlyphId(id)).unwrap_or(0));
                glyphs.push(Glyph {
                    id,
                    written: (natural * 1000.0 / em).trunc(),
                    advance: place.x_advance as f32 / em,
                    shift: (place.x_offset as f32 / em, place.y_offset as f32 / em),
                    letters,
                });
            }
            from = to;
        }
        glyphs
    }
}

/// Gives each glyph of a cluster its own letter where there are as many, else all to the first.
fn share(letters: &str, glyphs: usize) -> Vec<String> {
    let seen: Vec<char> = letters.chars().filter(|&c| !is_invisible(c)).collect();
    if seen.len() == glyphs {
        return seen.into_iter().map(String::from).collect();
    }
    let mut shared = vec![String::new(); glyphs];
    if let Some(first) = shared.first_mut() {
        *first = letters.into();
    }
    shared
}

/// The spans of a line in the order they are seen from the left; `true` reads right to left.
fn directions(words: &str) -> Vec<(std::ops::Range<usize>, bool)> {
    let info = unicode_bidi::BidiInfo::new(words, Some(unicode_bidi::Level::ltr()));
    if !info.has_rtl() {
        return vec![(0..words.len(), false)];
    }
    let mut spans = Vec::new();
    for paragraph in &info.paragraphs {
        let (levels, runs) = info.visual_runs(paragraph, paragraph.range.clone());
        for run in runs {
            let backwards = levels.get(run.start).is_some_and(|level| level.is_rtl());
            spans.push((run, backwards));
        }
    }
    spans
}
