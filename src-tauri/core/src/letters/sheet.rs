//! The letter on paper: its parts, a chart of each goal across visits, the counts in a table.

use super::compose::Record;
use super::{Part, figure};
use crate::app::Reading;
use crate::error::Result;
use crate::goals::chart::{Chart, chart};
use crate::goals::show::OfStudent;
use crate::goals::{Kind, count_words};
use crate::kinds::Instant;
use crate::print::{Piece, Sheet};

/// The sheet of a letter.
pub(super) fn sheet(
    db: &Reading<'_>,
    record: &Record,
    parts: &[Part],
    issued: Instant,
) -> Result<Sheet> {
    let whole = chart(db, OfStudent { student: record.student.id })?;
    let chart = up_to_this_visit(whole, record);
    let mut pieces = vec![
        Piece::Title(format!("Progress letter for {}", record.student.profile.name)),
        Piece::Note(place_and_days(record)),
    ];
    for part in parts.iter().filter(|part| !part.left_out && !part.text.trim().is_empty()) {
        if !part.heading.is_empty() {
            pieces.push(Piece::Heading(part.heading.clone()));
        }
        pieces.extend(paragraphs(&part.text).map(Piece::Text));
    }
    pieces.extend(charts(&chart));
    let mut letterhead = vec![record.settings.name.clone()];
    letterhead.extend(record.settings.letterhead.lines().map(str::to_owned));
    letterhead.retain(|line| !line.trim().is_empty());
    Ok(Sheet {
        title: format!("Progress letter for {}", record.student.profile.name),
        language: "en".to_owned(),
        author: record.settings.name.clone(),
        issued: issued.utc(),
        paper: crate::print::Paper::A4,
        letterhead,
        pieces,
        footer: String::new(),
        page_words: "Page {n} of {m}".to_owned(),
    })
}

fn place_and_days(record: &Record) -> String {
    let place = &record.visit.place;
    if place.is_empty() {
        record.visit.when()
    } else {
        format!("{place} · {}", record.visit.when())
    }
}

fn paragraphs(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split("\n\n").map(|p| p.trim().replace('\n', " ")).filter(|p| !p.is_empty())
}

/// The chart as it was at this visit: no later visit, and the goals that were at this one.
fn up_to_this_visit(mut chart: Chart, record: &Record) -> Chart {
    if let Some(here) = chart.columns.iter().position(|c| c.visit == record.visit.id) {
        chart.columns.truncate(here + 1);
    }
    let here: Vec<_> = record.goals.iter().map(|g| g.goal.id).collect();
    chart.lines.retain(|line| here.contains(&line.goal));
    for line in &mut chart.lines {
        line.cells.retain(|cell| chart.columns.iter().any(|c| c.visit == cell.visit));
    }
    chart.lines.retain(|line| line.cells.iter().any(|cell| !cell.marks.is_empty()));
    chart
}

fn charts(chart: &Chart) -> Vec<Piece> {
    if chart.lines.is_empty() {
        return Vec::new();
    }
    let mut pieces = vec![
        Piece::Heading("The counts behind this letter".to_owned()),
        Piece::Note(
            "Open ring: before any coaching. Filled dot: end test. Upright line: rough range of the true rate, \
             rough because one player\u{2019}s tries are not independent. Red line: what was asked."
                .to_owned(),
        ),
    ];
    pieces.extend(chart.lines.iter().map(|line| figure::figure(line, &chart.columns)));
    pieces.push(table(chart));
    pieces
}

fn table(chart: &Chart) -> Piece {
    let mut rows = Vec::new();
    for line in &chart.lines {
        for cell in line.cells.iter().filter(|cell| !cell.marks.is_empty()) {
            let column = chart.columns.iter().find(|c| c.visit == cell.visit);
            let of = |kind: Kind| {
                let marks = cell.marks.iter().filter(|m| m.kind == kind);
                marks.map(|m| count_words(m.count)).collect::<Vec<_>>().join(", ")
            };
            rows.push(vec![
                line.title.clone(),
                column.map(|c| c.head.clone()).unwrap_or_default(),
                of(Kind::Retest),
                of(Kind::EndTest),
                line.criterion.words(),
            ]);
        }
    }
    Piece::Table {
        head: ["Goal", "Visit", "Before coaching", "End test", "Asked"].map(str::to_owned).to_vec(),
        rows,
        right_aligned: vec![2, 3, 4],
    }
}
