//! Tables: columns as wide as their words ask for, rows kept whole where a page can hold them.

use super::error::PrintError;
use super::lay_out::{Band, Setter, Style, hundredth};
use super::pages::{PageItem, Place, Tag};
use super::sheet::{Ink, Weight};

/// Below this width a column cannot be read.
const NARROWEST: f32 = 24.0;
const GAP: f32 = 12.0;
const PAD: f32 = 3.0;
/// A row of more lines than this may be cut at a page's end.
const WHOLE_ROW: usize = 12;

const CELL: Style = Style { weight: Weight::Plain, size: 10.0, lead: 14.0, ink: Ink::Ink };
const HEAD: Style = Style { weight: Weight::Strong, size: 9.0, lead: 13.0, ink: Ink::Soft };

/// A table head as it is drawn again on a further page.
pub(super) struct Head {
    pub(super) height: f32,
    pub(super) items: Vec<PageItem>,
}

struct Column {
    x: f32,
    room: f32,
    right: bool,
}

impl Setter<'_> {
    pub(super) fn table(
        &mut self,
        head: &[String],
        rows: &[Vec<String>],
        right_aligned: &[usize],
        place: Place,
    ) -> Result<(), PrintError> {
        let count = rows.iter().map(Vec::len).chain([head.len()]).max().unwrap_or(0);
        if count == 0 {
            return Ok(());
        }
        if self.room / count as f32 - GAP < NARROWEST {
            return Err(PrintError::TooManyColumns(count));
        }
        let head: Vec<String> = head.iter().map(|words| self.words(HEAD, words, place)).collect();
        let rows: Vec<Vec<String>> = rows
            .iter()
            .map(|row| row.iter().map(|words| self.words(CELL, words, place)).collect())
            .collect();
        let columns = self.columns(count, &head, &rows, right_aligned);
        let table = self.element(Tag::Table, None);
        let from = self.bands.len();
        let mut again = None;
        if head.iter().any(|words| !words.is_empty()) {
            self.row(&columns, (HEAD, Tag::Th), table, &head, None);
            let drawn = &mut self.bands[from..];
            drawn.iter_mut().for_each(|band| band.keep = true);
            if let [only] = drawn
                && only.height < self.frame / 4.0
            {
                again = Some(self.heads.len());
                self.heads.push(Head { height: only.height, items: only.items.clone() });
            }
        }
        for row in &rows {
            self.row(&columns, (CELL, Tag::Td), table, row, again);
        }
        self.space(from, 4.0, 12.0);
        Ok(())
    }

    /// Room for each column: what its longest words need, the rest shared by what is longest.
    fn columns(
        &self,
        count: usize,
        head: &[String],
        rows: &[Vec<String>],
        right_aligned: &[usize],
    ) -> Vec<Column> {
        let room = self.room - GAP * (count - 1) as f32;
        let cap = room / count as f32;
        let mut natural = vec![NARROWEST; count];
        let mut least = vec![NARROWEST; count];
        let all = rows.iter().map(|row| (CELL, row.as_slice())).chain([(HEAD, head)]);
        for (style, row) in all {
            for (at, words) in row.iter().enumerate() {
                natural[at] = natural[at].max(self.line_width(style, words));
                for word in words.split(' ') {
                    least[at] = least[at].max(self.line_width(style, word).min(cap));
                }
            }
        }
        let (wish, floor) = (natural.iter().sum::<f32>(), least.iter().sum::<f32>());
        let widths: Vec<f32> = if wish <= room {
            natural.iter().map(|n| n + (room - wish) * n / wish).collect()
        } else {
            let wanting = (wish - floor).max(0.01);
            let share = (room - floor).max(0.0) / wanting;
            natural.iter().zip(&least).map(|(n, l)| l + (n - l).max(0.0) * share).collect()
        };
        let mut x = self.left;
        let mut columns = Vec::new();
        for (at, wide) in widths.into_iter().enumerate() {
            columns.push(Column { x, room: wide, right: right_aligned.contains(&at) });
            x += wide + GAP;
        }
        columns
    }

    fn row(
        &mut self,
        columns: &[Column],
        (style, tag): (Style, Tag),
        table: usize,
        row: &[String],
        head: Option<usize>,
    ) {
        let element = self.element(Tag::Tr, Some(table));
        let mut cells = Vec::new();
        for (at, column) in columns.iter().enumerate() {
            let words = row.get(at).map_or("", String::as_str);
            cells.push((self.element(tag, Some(element)), self.wrap(style, column.room, words)));
        }
        let tallest = cells.iter().map(|(_, lines)| lines.len()).max().unwrap_or(0).max(1);
        let bands = if tallest <= WHOLE_ROW { 1 } else { tallest };
        let mut drawn = vec![Band { head, keep: true, ..Band::default() }; bands];
        for (column, (element, lines)) in columns.iter().zip(&cells) {
            for (at, line) in lines.iter().enumerate() {
                let (band, within) = if bands == 1 { (0, at) } else { (at, 0) };
                let shift =
                    if column.right { column.room - self.line_width(style, line) } else { 0.0 };
                let top = PAD + within as f32 * style.lead;
                let items = self.set_line(Some(*element), style, (column.x + shift, top), line);
                drawn[band].items.extend(items);
            }
        }
        for band in &mut drawn {
            band.height = PAD + style.lead;
        }
        if let [whole] = drawn.as_mut_slice() {
            whole.height = PAD + tallest as f32 * style.lead;
        }
        let is_head = tag == Tag::Th;
        if let Some(last) = drawn.last_mut() {
            last.keep = false;
            last.height += PAD;
            let rule = if is_head { (0.8, Ink::Ink) } else { (0.4, Ink::Rule) };
            last.items.push(self.rule(hundredth(last.height), rule.0, rule.1));
        }
        if bands > 1 {
            // Lines of a cut row follow each other without the pad above.
            for band in &mut drawn[1..] {
                band.height -= PAD;
                band.items = band.items.iter().map(|item| item.lowered(-PAD)).collect();
            }
            drawn.iter_mut().for_each(|band| band.keep = false);
            drawn[0].keep = true;
        }
        self.bands.extend(drawn);
    }
}
