//! Bank statements: what came into the bank, read from the bank\u{2019}s own file (CSV, or ISO 20022
//! camt.053), each row with the payer and the invoices it seems to be for. Nothing is entered that the
//! coach did not confirm, and no row of a file is entered twice.

mod amounts;
mod camt;
mod columns;
mod enter;
mod names;
mod propose;
mod read;
mod reference;
mod sheet;
mod store;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use enter::{BankEnter, BankEntered, BankEnteredRow, BankRowToEnter, enter};
pub use read::{BankRead, read};

use crate::app::{Reading, Writing};
use crate::db::digest::sha256;
use crate::error::Result;
use crate::exchange::season_csv::DateOrder;
use crate::kinds::ids::{InvoiceId, PayerId};
use crate::kinds::text::folded;
use crate::kinds::{Currency, Day};
use crate::settings;

/// The largest file that is read, in bytes.
const MOST_BYTES: usize = 5 * 1024 * 1024;
/// The most rows that are read.
const MOST_ROWS: usize = 20_000;
/// Under which name the choice of columns is kept.
const SETTING: &str = "bank_columns";
/// For how many kinds of file the choice of columns is kept.
const MOST_KEPT: usize = 40;

/// What stands before the decimals of an amount.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BankDecimals {
    /// Not told: found out from the amounts, or asked.
    #[default]
    Unknown,
    /// A point, as in 1,234.50.
    Point,
    /// A comma, as in 1.234,50.
    Comma,
}

/// Which column of a CSV file is what: its place in the head, counted from 0.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct BankColumns {
    /// The day.
    pub day: Option<usize>,
    /// The amount, below 0 for what went out.
    pub amount: Option<usize>,
    /// What came in, where that has a column of its own.
    pub money_in: Option<usize>,
    /// What went out, where that has a column of its own.
    pub money_out: Option<usize>,
    /// Whether the amount came in or went out, where a column says so.
    pub side: Option<usize>,
    /// The currency.
    pub currency: Option<usize>,
    /// The currency of every row that names none; empty while not known.
    pub one_currency: String,
    /// Who paid.
    pub name: Option<usize>,
    /// What stood on it.
    pub words: Option<usize>,
    /// The bank\u{2019}s own reference.
    pub reference: Option<usize>,
    /// In which order day and month stand.
    pub dates: DateOrder,
    /// What stands before the decimals.
    pub decimals: BankDecimals,
}

impl Default for BankColumns {
    fn default() -> Self {
        Self {
            day: None,
            amount: None,
            money_in: None,
            money_out: None,
            side: None,
            currency: None,
            one_currency: String::new(),
            name: None,
            words: None,
            reference: None,
            dates: DateOrder::Unknown,
            decimals: BankDecimals::Unknown,
        }
    }
}

/// How a file was read, to be remembered for the next of the same bank.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BankLayout {
    /// The names of its columns.
    pub head: Vec<String>,
    /// Which is what.
    pub columns: BankColumns,
}

/// What kind of file it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BankFileKind {
    /// A table.
    Csv,
    /// ISO 20022 camt.053.
    Camt,
}

/// What has to be chosen before the rows of a file can be read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankAsk {
    /// Which of the columns, by its field in the choice.
    pub field: String,
    /// What to choose, and why it is asked.
    pub words: String,
}

/// Something in a file that was not read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankNotRead {
    /// The line of the file.
    pub line: u32,
    /// Why.
    pub words: String,
}

/// Where a row stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BankRowState {
    /// Money that came in and is not entered.
    ToEnter,
    /// Money that came in and is entered.
    Entered,
    /// Money that went out.
    Out,
    /// Another booking was taken back by the bank.
    Reversal,
}

/// What a row seems to be.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankProposal {
    /// Whether more than one thing speaks for it.
    pub sure: bool,
    /// From whom; `None` when the coach has to say.
    pub payer: Option<PayerId>,
    /// For which invoices, in this order; none for those that are due first.
    pub invoices: Vec<InvoiceId>,
    /// Whether all of it is kept for later.
    pub keep: bool,
    /// Why, as a sentence.
    pub why: String,
}

/// A row of a bank statement.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct BankRow {
    /// The line of the file it begins on.
    pub line: u32,
    /// The day on which the bank booked it.
    pub day: Day,
    /// The currency.
    pub currency: String,
    /// How much, a decimal above 0 whichever way it went.
    pub amount: String,
    /// Who paid, as the bank has it.
    pub name: String,
    /// What stood on it.
    pub words: String,
    /// The bank\u{2019}s own reference.
    pub bank_reference: String,
    /// Under which reference it is entered, or would be.
    pub reference: String,
    /// Where it stands.
    pub state: BankRowState,
    /// What it seems to be, of money that came in and is not entered.
    pub proposal: BankProposal,
}

/// What a file holds.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct BankStatement {
    /// What kind of file.
    pub kind: BankFileKind,
    /// The same as a sentence.
    pub words: String,
    /// The names of the columns of a CSV file.
    pub head: Vec<String>,
    /// Its first rows, as they stand.
    pub first_rows: Vec<Vec<String>>,
    /// Which column is taken as what.
    pub columns: Option<BankColumns>,
    /// Whether that is remembered from an earlier file.
    pub remembered: bool,
    /// What is to be chosen first; then there are no rows.
    pub asks: Vec<BankAsk>,
    /// The rows, as they stand in the file.
    pub rows: Vec<BankRow>,
    /// What was not read, and why.
    pub not_read: Vec<BankNotRead>,
    /// How many entries the bank has not booked yet; they are left out.
    pub pending: u32,
}

/// A row as it stands in a file, before anything is known of it.
#[derive(Clone, Debug)]
struct Booking {
    line: u32,
    account: String,
    day: Day,
    currency: Currency,
    /// In smallest units, above 0.
    amount: i64,
    way: Way,
    name: String,
    words: String,
    bank_reference: String,
    /// What else the bank says that may hold the number of an invoice.
    structured: String,
}

/// Which way money went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    In,
    Out,
    /// Taken back, whichever way.
    Back,
}

/// What tells files of one bank from those of another: a digest of the names of their columns, so that
/// nothing of a file without a head is kept.
fn layout_key(head: &[String]) -> String {
    let names: Vec<String> = head.iter().map(|name| folded(name)).collect();
    sha256(names.join("\u{1f}").as_bytes())
}

/// The columns that were chosen for an earlier file with this head.
fn remembered(db: &Reading<'_>, head: &[String]) -> Result<Option<BankColumns>> {
    let kept: Option<BTreeMap<String, BankColumns>> = settings::kept(db, SETTING)?;
    Ok(kept.and_then(|mut kept| kept.remove(&layout_key(head))))
}

fn remember(db: &Writing<'_>, layout: BankLayout) -> Result<()> {
    let mut kept: BTreeMap<String, BankColumns> = settings::kept(db, SETTING)?.unwrap_or_default();
    let key = layout_key(&layout.head);
    if kept.get(&key) == Some(&layout.columns) {
        return Ok(());
    }
    if kept.len() >= MOST_KEPT {
        kept.clear();
    }
    kept.insert(key, layout.columns);
    settings::keep(db, SETTING, &kept)
}

#[cfg(test)]
mod tests;
