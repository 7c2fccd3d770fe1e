//! Every paper about money, by what it is of.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{YearAsked, document, year_paper};
use crate::app::Reading;
use crate::error::Result;
use crate::invoices::{self, InvoiceSyntax, WhichInvoice, WhichInvoiceFile, WhichReminder};
use crate::kinds::ids::{EntryId, InvoiceId, PayerId, ReminderId};
use crate::payments::{self, StatementOf, WhichPayment};

/// A paper about money.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum MoneyPaper {
    /// An issued invoice or credit note.
    Invoice {
        /// Which one.
        invoice: InvoiceId,
    },
    /// Its structured file.
    InvoiceFile {
        /// Which one.
        invoice: InvoiceId,
        /// In which syntax.
        syntax: InvoiceSyntax,
    },
    /// A reminder of one.
    Reminder {
        /// Which one.
        reminder: ReminderId,
    },
    /// A receipt for money that came in.
    Receipt {
        /// The entry of the payment.
        entry: EntryId,
    },
    /// The statement of a payer.
    Statement {
        /// Whose.
        payer: PayerId,
        /// Since which day, as YYYY-MM-DD; empty for everything.
        #[serde(default)]
        since: String,
    },
    /// A year on paper.
    Year {
        /// Its number.
        year: i32,
    },
    /// A year as a table (CSV).
    YearTable {
        /// Its number.
        year: i32,
    },
}

/// A paper about money: its file name and bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` when there is none, as of a draft.
pub fn paper(db: &Reading<'_>, which: MoneyPaper) -> Result<(String, Vec<u8>)> {
    match which {
        MoneyPaper::Invoice { invoice } => invoices::file(db, WhichInvoice { invoice }),
        MoneyPaper::InvoiceFile { invoice, syntax } => {
            invoices::structured_file(db, WhichInvoiceFile { invoice, syntax })
        }
        MoneyPaper::Reminder { reminder } => {
            invoices::reminder_file(db, WhichReminder { reminder })
        }
        MoneyPaper::Receipt { entry } => payments::receipt(db, WhichPayment { entry }),
        MoneyPaper::Statement { payer, since } => {
            payments::statement(db, StatementOf { payer, since })
        }
        MoneyPaper::Year { year } => year_paper(db, YearAsked { year }),
        MoneyPaper::YearTable { year } => document(db, YearAsked { year }),
    }
}
