//! Bytes to a table.
//!
//! The cells are split here and not by a library because a quote that is never closed has to be
//! refused: read leniently, it swallows the rest of the season into one cell.

use std::fmt;

use encoding_rs::{UTF_8, UTF_16BE, UTF_16LE, WINDOWS_1252};

use super::{Encoding, Row, Table};

/// The largest file that is read, in bytes.
pub const MOST_BYTES: usize = 10 * 1024 * 1024;
/// The most rows that are read, the head not counted.
pub const MOST_ROWS: usize = 100_000;
/// The most cells a row may have.
pub const MOST_COLUMNS: usize = 500;

/// Why a file cannot be read as a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ReadError {
    /// There is nothing in it.
    Empty,
    /// It is larger than [`MOST_BYTES`].
    TooLarge,
    /// It has more rows than [`MOST_ROWS`].
    TooManyRows,
    /// A row has more cells than [`MOST_COLUMNS`].
    TooManyColumns {
        /// The line.
        line: u32,
    },
    /// It is a workbook, not a CSV file.
    Workbook,
    /// It is not text.
    NotText,
    /// A quote is opened and never closed.
    OpenQuote {
        /// The line the quote is on.
        line: u32,
    },
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ReadError::Empty => f.write_str("the file is empty"),
            ReadError::TooLarge => f.write_str("the file is larger than 10 MiB; split it by year"),
            ReadError::TooManyRows => {
                f.write_str("the file has more than 100 000 rows; split it by year")
            }
            ReadError::TooManyColumns { line } => {
                write!(f, "line {line} has more than {MOST_COLUMNS} cells")
            }
            ReadError::Workbook => {
                f.write_str("this is a spreadsheet's own file; save the sheet as CSV first")
            }
            ReadError::NotText => f.write_str("this is not a text file; save the sheet as CSV"),
            ReadError::OpenQuote { line } => write!(
                f,
                "the quotation mark on line {line} is never closed, so the rows after it cannot be told apart"
            ),
        }
    }
}

impl std::error::Error for ReadError {}

/// Reads the bytes of a CSV file. Comma, semicolon and tab are told apart by what makes the rows
/// even, the encoding by its marks.
pub fn read(bytes: &[u8]) -> Result<Table, ReadError> {
    if bytes.len() > MOST_BYTES {
        return Err(ReadError::TooLarge);
    }
    let (text, encoding) = decode(bytes)?;
    let (named, text) = delimiter_line(&text);
    // A line that names its delimiter was the first line of the file.
    let first_line = if named.is_some() { 2 } else { 1 };
    let delimiter = named.unwrap_or_else(|| sniff(text));
    let mut rows = split(text, delimiter, first_line, MOST_ROWS + 1)?;
    if rows.is_empty() {
        return Err(ReadError::Empty);
    }
    let head = rows.remove(0).cells;
    if rows.len() > MOST_ROWS {
        return Err(ReadError::TooManyRows);
    }
    Ok(Table { head, rows, delimiter, encoding })
}

/// The text in the bytes of a file that says nothing of its encoding: by its mark, else UTF-8 where it is
/// that, else Windows-1252.
///
/// # Errors
/// [`ReadError::Workbook`], and [`ReadError::NotText`].
pub fn decode(bytes: &[u8]) -> Result<(String, Encoding), ReadError> {
    if bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"\xD0\xCF\x11\xE0") {
        return Err(ReadError::Workbook);
    }
    let wide = if bytes.starts_with(b"\xFF\xFE") {
        Some(UTF_16LE)
    } else if bytes.starts_with(b"\xFE\xFF") {
        Some(UTF_16BE)
    } else {
        unmarked_wide(bytes)
    };
    let (text, wrong, encoding) = if let Some(wide) = wide {
        let (text, wrong) = wide.decode_with_bom_removal(bytes);
        (text, wrong, Encoding::Utf16)
    } else {
        let (text, wrong) = UTF_8.decode_with_bom_removal(bytes);
        if wrong {
            let (text, wrong) = WINDOWS_1252.decode_without_bom_handling(bytes);
            (text, wrong, Encoding::Windows1252)
        } else {
            (text, wrong, Encoding::Utf8)
        }
    };
    if wrong || text.contains('\0') {
        return Err(ReadError::NotText);
    }
    Ok((text.into_owned(), encoding))
}

/// UTF-16 without its mark: text in which every other byte is mostly zero.
fn unmarked_wide(bytes: &[u8]) -> Option<&'static encoding_rs::Encoding> {
    let sample = &bytes[..bytes.len().min(2000) / 2 * 2];
    let zeros = |at: usize| sample.iter().skip(at).step_by(2).filter(|b| **b == 0).count();
    let mostly = |zeros: usize| zeros * 2 > sample.len() / 2 && zeros > 0;
    match (mostly(zeros(0)), mostly(zeros(1))) {
        (false, true) => Some(UTF_16LE),
        (true, false) => Some(UTF_16BE),
        _ => None,
    }
}

/// A first line such as `sep=;`, which some spreadsheets write, and the text after it.
fn delimiter_line(text: &str) -> (Option<char>, &str) {
    for delimiter in [',', ';', '\t'] {
        let rest = text.strip_prefix("sep=").and_then(|rest| rest.strip_prefix(delimiter));
        if let Some(rest) = rest.map(|rest| rest.strip_prefix('\r').unwrap_or(rest))
            && let Some(rest) = rest.strip_prefix('\n')
        {
            return (Some(delimiter), rest);
        }
    }
    (None, text)
}

/// The delimiter under which most of the first rows are as wide as the head; between equals the
/// one that makes more columns.
fn sniff(text: &str) -> char {
    let merit = |delimiter: char| {
        let rows = split_leniently(text, delimiter, 50);
        let head = rows.first().map_or(0, |row| row.cells.len());
        let even = rows.iter().filter(|row| row.cells.len() == head).count();
        if head < 2 { (0, 0) } else { (even, head) }
    };
    let mut best = (',', merit(','));
    for delimiter in [';', '\t'] {
        let merit = merit(delimiter);
        if merit > best.1 {
            best = (delimiter, merit);
        }
    }
    best.0
}

fn split_leniently(text: &str, delimiter: char, most: usize) -> Vec<Row> {
    let mut splitter = Splitter::new(delimiter, 1);
    splitter.run(text, most);
    splitter.rows
}

/// The rows of a text whose first line has this number, without those that hold nothing. Where a quote is
/// opened and never closed, the rows before it, and the line the quote is on.
pub fn rows_until(text: &str, delimiter: char, line: u32, most: usize) -> (Vec<Row>, Option<u32>) {
    let mut splitter = Splitter::new(delimiter, line);
    let whole = splitter.run(text, most);
    if splitter.open_quote.is_some() {
        splitter.rows.truncate(whole);
    }
    (splitter.rows, splitter.open_quote)
}

/// The rows that hold anything, at most one more than `most`.
fn split(text: &str, delimiter: char, line: u32, most: usize) -> Result<Vec<Row>, ReadError> {
    let mut splitter = Splitter::new(delimiter, line);
    splitter.run(text, most);
    if let Some(line) = splitter.open_quote {
        return Err(ReadError::OpenQuote { line });
    }
    if let Some(row) = splitter.rows.iter().find(|row| row.cells.len() > MOST_COLUMNS) {
        return Err(ReadError::TooManyColumns { line: row.line });
    }
    Ok(splitter.rows)
}

/// Splits text into cells: quotes around a cell, doubled quotes inside it, any line ending.
struct Splitter {
    delimiter: char,
    line: u32,
    rows: Vec<Row>,
    row: Row,
    cell: String,
    open_quote: Option<u32>,
}

impl Splitter {
    fn new(delimiter: char, line: u32) -> Splitter {
        Splitter {
            delimiter,
            line,
            rows: Vec::new(),
            row: Row { line, cells: Vec::new() },
            cell: String::new(),
            open_quote: None,
        }
    }

    /// Gives how many rows ended before the text did.
    fn run(&mut self, text: &str, most: usize) -> usize {
        let mut chars = text.chars().peekable();
        while let Some(c) = chars.next() {
            if c == '\n' || (c == '\r' && chars.peek() != Some(&'\n')) {
                self.line = self.line.saturating_add(1);
            }
            if self.open_quote.is_some() {
                match c {
                    '"' if chars.peek() == Some(&'"') => {
                        chars.next();
                        self.cell.push('"');
                    }
                    '"' => self.open_quote = None,
                    _ => self.cell.push(c),
                }
            } else if c == '"' && self.cell.trim().is_empty() {
                self.cell.clear();
                self.open_quote = Some(self.line);
            } else if c == self.delimiter {
                self.end_cell();
            } else if c == '\n' || c == '\r' {
                if c == '\r' && chars.peek() == Some(&'\n') {
                    continue;
                }
                self.end_row();
                if self.rows.len() > most {
                    return self.rows.len();
                }
            } else {
                self.cell.push(c);
            }
        }
        let whole = self.rows.len();
        self.end_row();
        whole
    }

    fn end_cell(&mut self) {
        // One cell past the limit is kept, so that the row is seen to pass it.
        let cell = std::mem::take(&mut self.cell);
        if self.row.cells.len() <= MOST_COLUMNS {
            self.row.cells.push(cell.trim().to_owned());
        }
    }

    fn end_row(&mut self) {
        self.end_cell();
        let next = Row { line: self.line, cells: Vec::new() };
        let row = std::mem::replace(&mut self.row, next);
        if row.cells.iter().any(|cell| !cell.is_empty()) {
            self.rows.push(row);
        }
    }
}
