//! A CSV file of a bank as a table: what separates its cells, which row is the head, which lines are
//! broken. Everything that can be read is, and the rest is told by its line.

use super::columns::{heads_a_statement, is_date};
use super::{BankNotRead, MOST_ROWS};
use crate::exchange::season_csv::{Row, rows_until};

/// Lines before the head that are looked at.
const PREAMBLE: usize = 60;
/// Quotes that are never closed, after each of which the file is read on.
const OPEN_QUOTES: usize = 20;

/// A CSV file as a table.
pub(super) struct Sheet {
    /// The names of the columns; for a file without a head, their numbers.
    pub head: Vec<String>,
    /// The rows below it, each as wide as the head.
    pub rows: Vec<Row>,
    /// Lines that are none.
    pub broken: Vec<BankNotRead>,
    /// Whether there is more than can be read.
    pub too_long: bool,
}

/// The table in a text; `None` when there is none in it.
pub(super) fn sheet(text: &str) -> Option<Sheet> {
    let merit = |delimiter: char| {
        let (rows, _) = rows_until(text, delimiter, 1, PREAMBLE + 40);
        let named = rows.iter().any(|row| heads_a_statement(&row.cells));
        let (width, even) = usual_width(&rows);
        if width < 2 { (false, 0, 0) } else { (named, even, width) }
    };
    let mut best = (',', merit(','));
    for delimiter in [';', '\t'] {
        let merit = merit(delimiter);
        if merit > best.1 {
            best = (delimiter, merit);
        }
    }
    if best.1.2 < 2 {
        return None;
    }
    let (rows, mut broken) = all_rows(text, best.0);
    let too_long = rows.len() > MOST_ROWS;
    let (at, head) = head_of(&rows)?;
    let (usual, _) = usual_width(rows.get(at..)?);
    let width = head.len().min(usual);
    let mut whole = Vec::new();
    for mut row in rows.into_iter().skip(at) {
        while row.cells.len() > head.len() && row.cells.last().is_some_and(String::is_empty) {
            row.cells.pop();
        }
        let many = row.cells.len();
        if many < width {
            let words = format!("The line is cut short: it has {many} cells of {width}.");
            broken.push(BankNotRead { line: row.line, words });
        } else if many > head.len() {
            let words = format!("The line has {many} cells, and there are {} columns.", head.len());
            broken.push(BankNotRead { line: row.line, words });
        } else {
            row.cells.resize(head.len(), String::new());
            whole.push(row);
        }
    }
    broken.sort_by_key(|one| one.line);
    Some(Sheet { head, rows: whole, broken, too_long })
}

/// Every row, read on after a quote that is never closed: what such a quote would swallow are whole rows.
fn all_rows(text: &str, delimiter: char) -> (Vec<Row>, Vec<BankNotRead>) {
    let (mut rows, mut broken) = (Vec::new(), Vec::new());
    let (mut rest, mut line) = (text, 1);
    for _ in 0..OPEN_QUOTES {
        let (more, open) = rows_until(rest, delimiter, line, MOST_ROWS + 1);
        rows.extend(more);
        let Some(open) = open else { break };
        let words = "A quotation mark on this line is never closed.".to_owned();
        broken.push(BankNotRead { line: open, words });
        while line <= open {
            rest = after_line(rest);
            line += 1;
        }
        if rest.is_empty() {
            break;
        }
    }
    (rows, broken)
}

/// What stands after the first line of a text.
fn after_line(text: &str) -> &str {
    match text.find(['\n', '\r']) {
        None => "",
        Some(at) => {
            let rest = &text[at..];
            rest.strip_prefix("\r\n").or_else(|| rest.get(1..)).unwrap_or_default()
        }
    }
}

/// How wide most rows are, and how many are.
fn usual_width(rows: &[Row]) -> (usize, usize) {
    let mut widths: Vec<usize> = rows.iter().map(|row| row.cells.len()).collect();
    widths.sort_unstable();
    let counted = widths.chunk_by(|a, b| a == b);
    let best = counted.max_by_key(|same| (same.len(), same.first().copied()));
    best.and_then(|same| Some((*same.first()?, same.len()))).unwrap_or_default()
}

/// The names of the columns, and the place of the first row below them.
fn head_of(rows: &[Row]) -> Option<(usize, Vec<String>)> {
    let named = rows.iter().take(PREAMBLE).position(|row| heads_a_statement(&row.cells));
    let (width, _) = usual_width(rows);
    let at = named.or_else(|| rows.iter().position(|row| row.cells.len() == width))?;
    let first = rows.get(at)?;
    if named.is_none() && first.cells.iter().any(|cell| is_date(cell)) {
        let numbered = (1..=first.cells.len()).map(|n| format!("Column {n}")).collect();
        return Some((at, numbered));
    }
    let mut head = first.cells.clone();
    while head.last().is_some_and(String::is_empty) {
        head.pop();
    }
    Some((at + 1, head))
}
