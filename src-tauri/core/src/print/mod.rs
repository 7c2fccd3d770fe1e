//! Letters and other documents on paper: a sheet of pieces is laid out into pages once, and the
//! same pages are drawn on the screen and written as a tagged PDF.
//!
//! [`lay_out`] decides every position; [`to_pdf`] only paints. So the preview cannot differ from
//! the file, and the same sheet with the same fonts gives the same bytes every time.
//!
//! What is absent on purpose: no justified text (ragged right reads easier), no hyphenation, no
//! images, no colours but the named inks.

mod error;
mod fonts;
mod lay_out;
mod lines;
mod on_machine;
mod pages;
mod paint;
mod pdf;
mod shape;
mod sheet;
mod table;
mod tags;
mod words;
mod xmp;

pub use error::PrintError;
pub use fonts::{FontUsed, Fonts, machine_font_dirs};
pub use lay_out::lay_out;
pub use on_machine::{file_words, laid_out, page_words, written};
pub use pages::{Bookmark, Element, Frame, Missing, Page, PageItem, Pages, Place, Tag};
pub use pdf::to_pdf;
pub use sheet::{Anchor, Ink, Mark, Paper, Piece, Sheet, Stroke, Weight};

#[cfg(test)]
mod tests;
