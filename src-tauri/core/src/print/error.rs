//! Why a sheet could not become pages, or pages a file. Facts only; the words are the caller's.

/// A sheet that cannot be printed, with the fact that stopped it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PrintError {
    /// The sheet has no title; a reader's window and a screen reader both need one.
    TitleMissing,
    /// The language is not written as a BCP 47 tag such as `en-GB`.
    LanguageUnclear(String),
    /// The letterhead would take more than a third of the first page.
    LetterheadTooTall,
    /// The footer would take more than a third of every page.
    FooterTooTall,
    /// A table has more columns than the page can hold in a readable width.
    TooManyColumns(usize),
    /// The pages were laid out with a font that is not (or no longer) among the fonts given.
    FontGone(String),
    /// A font file could not be read or reduced to the glyphs in use.
    FontUnreadable(String),
    /// The file could not be put together; the text is for the log.
    File(String),
}

impl std::fmt::Display for PrintError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::TitleMissing => write!(f, "the sheet has no title"),
            Self::LanguageUnclear(tag) => write!(f, "not a language tag: {tag:?}"),
            Self::LetterheadTooTall => write!(f, "the letterhead takes over a third of the page"),
            Self::FooterTooTall => write!(f, "the footer takes over a third of the page"),
            Self::TooManyColumns(n) => write!(f, "a table of {n} columns does not fit the page"),
            Self::FontGone(family) => write!(f, "the font {family} is not at hand"),
            Self::FontUnreadable(family) => write!(f, "the font {family} cannot be read"),
            Self::File(why) => write!(f, "the PDF could not be put together: {why}"),
        }
    }
}

impl std::error::Error for PrintError {}

impl From<lopdf::Error> for PrintError {
    fn from(error: lopdf::Error) -> Self {
        Self::File(error.to_string())
    }
}
