//! The chart of one goal across visits, drawn for paper with the same marks as on screen.

use super::tongue::Tongue;
use crate::goals::Kind;
use crate::goals::chart::{Column, Line, Mark as Block};
use crate::print::{Anchor, Ink, Mark, Piece, Stroke, Weight};

const WIDTH: f32 = 482.0;
const HEIGHT: f32 = 104.0;
const LEFT: f32 = 6.0;
const TOP: f32 = 34.0;
const BOTTOM: f32 = 84.0;
/// At most so many visits fit; the newest are drawn.
const MOST: usize = 8;

/// The figure of a goal.
pub(super) fn figure(line: &Line, columns: &[Column], tongue: &dyn Tongue) -> Piece {
    let seen: Vec<&Column> =
        columns.iter().filter(|c| line.cells.iter().any(|cell| cell.visit == c.visit)).collect();
    let seen = &seen[seen.len().saturating_sub(MOST)..];
    let step = (WIDTH - 2.0 * LEFT) / seen.len().max(1) as f32;
    let mut marks =
        vec![text(LEFT, 10.0, 10.0, Weight::Strong, Anchor::Start, Ink::Ink, &line.title)];
    let asked = tongue.asked(tongue.condition(line.condition), &tongue.criterion(line.criterion));
    marks.push(text(WIDTH - LEFT, 10.0, 9.0, Weight::Plain, Anchor::End, Ink::Soft, &asked));
    if let Some(share) = line.criterion.share() {
        marks.push(rule(&[(LEFT, y(share)), (WIDTH - LEFT, y(share))], 0.8, Ink::Line, None));
    }
    let mut points: Vec<(usize, f32, &Block)> = Vec::new();
    for (n, column) in seen.iter().enumerate() {
        let x = LEFT + step * (n as f32 + 0.5);
        let head = tongue.language().month_short(column.first_day);
        marks.push(text(x, 24.0, 8.5, Weight::Plain, Anchor::Middle, Ink::Soft, &head));
        marks.push(rule(&[(x, TOP - 4.0), (x, BOTTOM)], 0.4, Ink::Rule, None));
        let here = || line.cells.iter().filter(|c| c.visit == column.visit);
        let games: Vec<String> = here().flat_map(|c| &c.games).map(u32::to_string).collect();
        if !games.is_empty() {
            let games = games.join(", ");
            marks.push(text(x, HEIGHT - 6.0, 8.5, Weight::Plain, Anchor::Middle, Ink::Ink, &games));
        }
        let blocks = here().flat_map(|c| &c.marks);
        let blocks: Vec<&Block> = blocks.collect();
        let apart = (step * 0.24).min(16.0);
        for (k, block) in blocks.iter().enumerate() {
            let shift = if blocks.len() < 2 {
                0.0
            } else {
                apart * (2.0 * k as f32 / (blocks.len() - 1) as f32 - 1.0)
            };
            points.push((n, x + shift, block));
        }
    }
    for pair in points.windows(2) {
        let [(n1, x1, a), (n2, x2, b)] = pair else { continue };
        let dash = (n2 - n1 > 1).then_some((2.0, 3.0));
        marks.push(rule(&[(*x1, y(a.rate)), (*x2, y(b.rate))], 1.4, Ink::Ball, dash));
    }
    for (_, x, block) in &points {
        marks.push(rule(&[(*x, y(block.low)), (*x, y(block.high))], 0.7, Ink::Ball, None));
        marks.push(Mark::Circle {
            centre: (*x, y(block.rate)),
            radius: 3.2,
            fill: Some(Ink::Ball).filter(|_| block.kind == Kind::EndTest),
            stroke: Some(Stroke { ink: Ink::Ball, width: 1.3 }),
        });
        let count = format!("{}/{}", block.count.made, block.count.tries);
        marks.push(text(*x, HEIGHT - 6.0, 8.5, Weight::Plain, Anchor::Middle, Ink::Ink, &count));
    }
    Piece::Figure { alt: alt(line, seen, tongue), width_pt: WIDTH, height_pt: HEIGHT, marks }
}

fn y(rate: f64) -> f32 {
    BOTTOM - rate as f32 * (BOTTOM - TOP)
}

fn rule(points: &[(f32, f32)], width: f32, ink: Ink, dash: Option<(f32, f32)>) -> Mark {
    Mark::Line { points: points.to_vec(), width, ink, dash }
}

fn text(x: f32, y: f32, size: f32, weight: Weight, anchor: Anchor, ink: Ink, words: &str) -> Mark {
    Mark::Text { at: (x, y), size, weight, anchor, ink, words: words.to_owned() }
}

/// The figure in words: each visit with its counts.
fn alt(line: &Line, seen: &[&Column], tongue: &dyn Tongue) -> String {
    let visits: Vec<String> = seen
        .iter()
        .map(|column| {
            let here = || line.cells.iter().filter(|c| c.visit == column.visit);
            let mut said: Vec<String> = here()
                .flat_map(|c| &c.marks)
                .map(|m| format!("{} {}", tongue.kind(m.kind), tongue.count(m.count)))
                .collect();
            said.extend(here().flat_map(|c| &c.games).map(u32::to_string));
            let said =
                if said.is_empty() { tongue.not_tested().to_owned() } else { said.join(", ") };
            format!("{}: {said}", tongue.language().month_short(column.first_day))
        })
        .collect();
    tongue.chart(&line.title, &tongue.criterion(line.criterion), &visits.join("; "))
}
