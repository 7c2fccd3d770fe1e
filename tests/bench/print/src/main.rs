//! Times the same laid-out two-page letter written by the program and by krilla 0.8.2.
//!
//! krilla's file is neither tagged nor given bookmarks, so the program does more for its time.
//! Prints one JSON value.

#[path = "../../../../src-tauri/core/tests/print/sample.rs"]
mod sample;

use std::path::PathBuf;
use std::time::Instant;

use carryover_core::print::{
    Fonts, Ink, PageItem, Pages, Stroke as Edge, lay_out, machine_font_dirs, to_pdf,
};
use krilla::Document;
use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder, Point, Rect};
use krilla::page::PageSettings;
use krilla::paint::{Fill, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};

const ROUNDS: u32 = 50;

fn main() {
    let dirs: Vec<PathBuf> = machine_font_dirs();
    let fonts = Fonts::with_found(&dirs);
    let pages = lay_out(&sample::letter(), &fonts).expect("the letter can be laid out");
    let written = |font| {
        let (bytes, index) = fonts.bytes_of(font).expect("the font is at hand");
        Font::new(bytes.to_vec().into(), index).expect("krilla reads the font")
    };
    let faces: Vec<Font> = pages.fonts.iter().map(written).collect();
    let (ours, our_size) = time(|| to_pdf(&pages, &fonts).expect("our file"));
    let (theirs, their_size) = time(|| with_krilla(&pages, &faces));
    let (whole, _) = time(|| {
        let pages = lay_out(&sample::letter(), &fonts).expect("the letter can be laid out");
        to_pdf(&pages, &fonts).expect("our file")
    });
    assert_eq!(pages.missing.len(), 0, "every letter of {:?} has its shape", sample::NAMES);
    println!(
        "{}",
        serde_json::json!({
            "ours_ms": { "median": ours, "with_layout": whole },
            "krilla_ms": { "median": theirs },
            "ratio": ours / theirs,
            "ours_bytes": our_size,
            "krilla_bytes": their_size,
            "rounds": ROUNDS,
        })
    );
}

/// The median of many rounds, in milliseconds, after one round to warm up.
fn time(work: impl Fn() -> Vec<u8>) -> (f64, usize) {
    let size = work().len();
    let mut took: Vec<f64> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            assert_eq!(work().len(), size, "each round writes the same file");
            start.elapsed().as_secs_f64() * 1000.0
        })
        .collect();
    took.sort_by(f64::total_cmp);
    (took[took.len() / 2], size)
}

fn with_krilla(pages: &Pages, faces: &[Font]) -> Vec<u8> {
    let mut document = Document::new();
    for page in &pages.pages {
        let size = PageSettings::from_wh(pages.width, pages.height).expect("a page has a size");
        let mut paper = document.start_page_with(size);
        let mut surface = paper.surface();
        page.items.iter().for_each(|item| paint(&mut surface, item, faces));
        surface.finish();
        paper.finish();
    }
    document.finish().expect("krilla writes its file")
}

fn paint(surface: &mut Surface<'_>, item: &PageItem, faces: &[Font]) {
    match item {
        PageItem::Text { x, y, size, font, ink, words, .. } => {
            ready(surface, Some(*ink), None, None);
            let at = Point::from_xy(*x, *y);
            surface.draw_text(at, faces[*font].clone(), *size, words, false, TextDirection::Auto);
        }
        PageItem::Line { points, width, ink, dash, .. } => {
            ready(surface, None, Some(Edge { ink: *ink, width: *width }), *dash);
            draw(surface, |path| {
                for (at, (x, y)) in points.iter().enumerate() {
                    if at == 0 { path.move_to(*x, *y) } else { path.line_to(*x, *y) }
                }
            });
        }
        PageItem::Circle { centre: (x, y), radius: r, fill, stroke, .. } => {
            ready(surface, *fill, *stroke, None);
            let h = 0.552_285 * r;
            draw(surface, |path| {
                path.move_to(x + r, *y);
                path.cubic_to(x + r, y + h, x + h, y + r, *x, y + r);
                path.cubic_to(x - h, y + r, x - r, y + h, x - r, *y);
                path.cubic_to(x - r, y - h, x - h, y - r, *x, y - r);
                path.cubic_to(x + h, y - r, x + r, y - h, x + r, *y);
            });
        }
        PageItem::Rect { x, y, width, height, fill, stroke, .. } => {
            ready(surface, *fill, *stroke, None);
            let rect = Rect::from_xywh(*x, *y, *width, *height);
            draw(surface, |path| rect.into_iter().for_each(|rect| path.push_rect(rect)));
        }
    }
}

fn ready(
    surface: &mut Surface<'_>,
    fill: Option<Ink>,
    edge: Option<Edge>,
    dash: Option<(f32, f32)>,
) {
    let colour = |ink: Ink| {
        let [r, g, b] = ink.rgb();
        rgb::Color::new(r, g, b)
    };
    surface.set_fill(fill.map(|ink| Fill { paint: colour(ink).into(), ..Fill::default() }));
    surface.set_stroke(edge.map(|edge| Stroke {
        paint: colour(edge.ink).into(),
        width: edge.width,
        dash: dash.map(|(on, off)| StrokeDash { array: vec![on, off], offset: 0.0 }),
        ..Stroke::default()
    }));
}

fn draw(surface: &mut Surface<'_>, trace: impl FnOnce(&mut PathBuilder)) {
    let mut path = PathBuilder::new();
    trace(&mut path);
    let path: Option<Path> = path.finish();
    path.iter().for_each(|path| surface.draw_path(path));
}
