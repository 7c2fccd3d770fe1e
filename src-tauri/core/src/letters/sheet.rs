//! The letter on paper: its parts, a chart of each goal across visits, the counts in a table.

use super::compose::Record;
use super::tongue::Tongue;
use super::{Part, figure};
use crate::app::Reading;
use crate::error::Result;
use crate::goals::Kind;
use crate::goals::chart::{Chart, chart};
use crate::goals::show::OfStudent;
use crate::kinds::Instant;
use crate::print::{Piece, Sheet};

/// The sheet of a letter.
pub(super) fn sheet(
    db: &Reading<'_>,
    record: &Record,
    parts: &[Part],
    issued: Instant,
) -> Result<Sheet> {
    let tongue = record.tongue();
    let whole = chart(db, OfStudent { student: record.student.id })?;
    let chart = up_to_this_visit(whole, record);
    let mut pieces = vec![
        Piece::Title(tongue.title(&record.student.profile.name)),
        Piece::Note(place_and_days(record)),
    ];
    for part in parts.iter().filter(|part| !part.left_out && !part.text.trim().is_empty()) {
        if !part.heading.is_empty() {
            pieces.push(Piece::Heading(part.heading.clone()));
        }
        pieces.extend(paragraphs(&part.text).map(Piece::Text));
    }
    pieces.extend(charts(&chart, tongue));
    Ok(Sheet {
        title: tongue.title(&record.student.profile.name),
        language: tongue.language().code().to_owned(),
        author: record.settings.name.clone(),
        issued: issued.utc(),
        paper: crate::print::Paper::A4,
        letterhead: record.settings.head(),
        pieces,
        footer: String::new(),
        page_words: tongue.page().to_owned(),
    })
}

fn place_and_days(record: &Record) -> String {
    let place = &record.visit.place;
    if place.is_empty() { record.when() } else { format!("{place} · {}", record.when()) }
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
    chart.lines.retain(|line| {
        line.cells.iter().any(|cell| !cell.marks.is_empty() || !cell.games.is_empty())
    });
    chart
}

fn charts(chart: &Chart, tongue: &dyn Tongue) -> Vec<Piece> {
    if chart.lines.is_empty() {
        return Vec::new();
    }
    let mut pieces = vec![
        Piece::Heading(tongue.counts_heading().to_owned()),
        Piece::Note(tongue.legend().to_owned()),
    ];
    pieces.extend(chart.lines.iter().map(|line| figure::figure(line, &chart.columns, tongue)));
    pieces.extend(table(chart, tongue));
    pieces
}

/// The counts of all tests; none where only whole games were counted.
fn table(chart: &Chart, tongue: &dyn Tongue) -> Option<Piece> {
    let mut rows = Vec::new();
    for line in &chart.lines {
        for cell in line.cells.iter().filter(|cell| !cell.marks.is_empty()) {
            let column = chart.columns.iter().find(|c| c.visit == cell.visit);
            let of = |kind: Kind| {
                let marks = cell.marks.iter().filter(|m| m.kind == kind);
                marks.map(|m| tongue.count(m.count)).collect::<Vec<_>>().join(", ")
            };
            rows.push(vec![
                line.title.clone(),
                column.map(|c| tongue.language().month_short(c.first_day)).unwrap_or_default(),
                of(Kind::Retest),
                of(Kind::EndTest),
                tongue.criterion(line.criterion),
            ]);
        }
    }
    (!rows.is_empty()).then(|| Piece::Table {
        head: tongue.table().map(str::to_owned).to_vec(),
        rows,
        right_aligned: vec![2, 3, 4],
    })
}
