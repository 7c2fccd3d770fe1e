//! Reading the file of a bank: what it holds, what is to be chosen first, and what each row may be.

use base64::Engine;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::propose::Books;
use super::{
    BankColumns, BankFileKind, BankProposal, BankRow, BankRowState, BankStatement, Booking,
    MOST_BYTES, MOST_ROWS, Way, camt, columns, reference, remembered, sheet, store,
};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::exchange::season_csv;
use crate::kinds::Day;
use crate::kinds::text::counted;

/// A file of a bank to read.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BankRead {
    /// The file\u{2019}s bytes, in base64.
    pub content: String,
    /// For a CSV file, which column is what; left out for what is remembered or proposed.
    #[serde(default)]
    pub columns: Option<BankColumns>,
}

/// Reads the file of a bank. Nothing is entered.
///
/// # Errors
/// `Refused` when it is no file of a bank that can be read, with what it seems to be.
pub fn read(db: &Reading<'_>, given: BankRead) -> Result<BankStatement> {
    let refused = |code: &str, words: &str| Err(Error::field("content", code, words));
    if given.content.len() > MOST_BYTES.div_ceil(3) * 4 {
        return refused("too_large", "The file is larger than 5 MB. Take a shorter time.");
    }
    let Ok(bytes) = base64::engine::general_purpose::STANDARD.decode(&given.content) else {
        return refused("no_base64", "The file did not arrive whole. Choose it again.");
    };
    match bytes.as_slice() {
        [] => refused("empty", "The file is empty."),
        [b'P', b'K', 3, 4, ..] => refused(
            "archive",
            "This is an archive or a spreadsheet\u{2019}s own file. Unpack it, or save the sheet as CSV, first.",
        ),
        [b'%', b'P', b'D', b'F', ..] => {
            refused("pdf", "This is a PDF. Ask the bank for the same as CSV or camt.053.")
        }
        [b':', b'2', b'0', b':', ..] | [b'{', b'1', b':', ..] => refused(
            "mt940",
            "This is a statement in the older format MT940. Ask the bank for CSV or camt.053.",
        ),
        bytes if camt::is_xml(bytes) => of_camt(db, bytes),
        bytes => of_csv(db, bytes, given.columns),
    }
}

fn of_camt(db: &Reading<'_>, bytes: &[u8]) -> Result<BankStatement> {
    let camt = camt::read(bytes)?;
    let rows = rows(db, &camt.bookings)?;
    let mut words = format!("A bank statement, {}", camt.version);
    if !camt.accounts.is_empty() {
        words.push_str(&format!(", of account {}", camt.accounts.join(" and ")));
    }
    words.push_str(&format!(": {}.", counted_rows(&rows)));
    Ok(BankStatement {
        kind: BankFileKind::Camt,
        words,
        head: Vec::new(),
        first_rows: Vec::new(),
        columns: None,
        remembered: false,
        asks: Vec::new(),
        rows,
        not_read: camt.not_read,
        pending: camt.pending,
    })
}

fn of_csv(db: &Reading<'_>, bytes: &[u8], chosen: Option<BankColumns>) -> Result<BankStatement> {
    let (text, _) = season_csv::decode(bytes)
        .map_err(|e| Error::field("content", "unreadable", format!("{e}.")))?;
    let Some(sheet) = sheet::sheet(&text) else {
        let words = "This is no table: no line of it has cells. A bank gives statements as CSV or camt.053.";
        return Err(Error::field("content", "no_table", words));
    };
    if sheet.too_long {
        let words = format!("The file has more than {MOST_ROWS} rows. Take a shorter time.");
        return Err(Error::field("content", "too_large", words));
    }
    let known = match &chosen {
        Some(_) => None,
        None => remembered(db, &sheet.head)?,
    };
    let is_remembered = known.is_some();
    let first = chosen.or(known).unwrap_or_else(|| columns::propose(&sheet));
    let (columns, asks) = columns::settle(&sheet, first);
    let (bookings, mut not_read) =
        if asks.is_empty() { columns::bookings(&sheet, &columns) } else { Default::default() };
    not_read.extend(sheet.broken);
    not_read.sort_by_key(|one| one.line);
    let rows = rows(db, &bookings)?;
    let words = if asks.is_empty() {
        format!("A table: {}.", counted_rows(&rows))
    } else {
        format!("A table of {}.", counted_lines(sheet.rows.len()))
    };
    Ok(BankStatement {
        kind: BankFileKind::Csv,
        words,
        first_rows: sheet.rows.iter().take(5).map(|row| row.cells.clone()).collect(),
        head: sheet.head,
        columns: Some(columns),
        remembered: is_remembered,
        asks,
        rows,
        not_read,
        pending: 0,
    })
}

fn counted_lines(many: usize) -> String {
    counted(i64::try_from(many).unwrap_or(i64::MAX), "row", "rows")
}

fn counted_rows(rows: &[BankRow]) -> String {
    let days = rows.iter().map(|row| row.day);
    match (days.clone().min(), days.max()) {
        (Some(first), Some(last)) => {
            let many = counted_lines(rows.len());
            format!("{many}, {}", crate::kinds::Span { first, last }.words())
        }
        _ => "no rows".to_owned(),
    }
}

/// The rows with where each stands. What is sure of an earlier day is counted as paid for a later one.
fn rows(db: &Reading<'_>, bookings: &[Booking]) -> Result<Vec<BankRow>> {
    let references = reference::references(bookings);
    let entered = store::entered(db)?;
    let stands: Vec<(bool, String)> =
        references.iter().map(|own| reference::stands(own, &entered)).collect();
    let mut proposals: Vec<BankProposal> = vec![BankProposal::default(); bookings.len()];
    let waits = |at: &usize| {
        bookings.get(*at).is_some_and(|booking| booking.way == Way::In)
            && stands.get(*at).is_some_and(|(entered, _)| !entered)
    };
    let mut waiting: Vec<usize> = (0..bookings.len()).filter(waits).collect();
    waiting.sort_by_key(|at| bookings.get(*at).map(|booking| (booking.day, booking.line)));
    let day = |at: Option<&usize>| at.and_then(|at| bookings.get(*at)).map(|booking| booking.day);
    if let (Some(first), Some(last)) = (day(waiting.first()), day(waiting.last())) {
        let here = stands.iter().map(|(_, own)| own.clone()).collect();
        let mut books = Books::of(db, (first, last), here)?;
        for at in waiting {
            if let (Some(booking), Some(place)) = (bookings.get(at), proposals.get_mut(at)) {
                *place = books.propose(booking);
            }
        }
    }
    let today: Day = db.today();
    let rows = bookings.iter().zip(stands).zip(proposals);
    Ok(rows
        .map(|((booking, (entered, own)), mut proposal)| {
            if proposal.sure && booking.day > today {
                proposal.sure = false;
                proposal.why.push_str(" Its day lies in the future.");
            }
            BankRow {
                line: booking.line,
                day: booking.day,
                currency: booking.currency.code().to_owned(),
                amount: booking.currency.plain(booking.amount),
                name: booking.name.clone(),
                words: booking.words.clone(),
                bank_reference: booking.bank_reference.clone(),
                reference: own,
                state: match booking.way {
                    Way::Out => BankRowState::Out,
                    Way::Back => BankRowState::Reversal,
                    Way::In if entered => BankRowState::Entered,
                    Way::In => BankRowState::ToEnter,
                },
                proposal,
            }
        })
        .collect())
}
