//! The account of a payer: everything that was invoiced and paid, with what is open.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::app::Reading;
use crate::error::Result;
use crate::invoices::{self, InvoiceListed, InvoicesOf};
use crate::kinds::ids::{EntryId, InvoiceId};
use crate::kinds::{Currency, Day};
use crate::ledger::{self, EntryKind, LedgerAccount};
use crate::packages::{self, Package};
use crate::payers::{self, Payer, WhichPayer};

/// A line of an account: what was charged, or paid.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct AccountLine {
    /// The entry.
    pub entry: EntryId,
    /// The day.
    pub day: Day,
    /// What.
    pub kind: EntryKind,
    /// In words.
    pub words: String,
    /// The invoice, if it is of one.
    pub invoice: Option<InvoiceId>,
    /// The currency.
    pub currency: String,
    /// What the payer owes more by it, a decimal; below 0 less.
    pub amount: String,
    /// What the payer owes after it, a decimal; below 0 what is owed to them.
    pub balance: String,
    /// Whether it was taken back.
    pub taken_back: bool,
}

/// What stands on an account in one currency, as decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct AccountStands {
    /// The currency.
    pub currency: String,
    /// What is open on invoices.
    pub open: String,
    /// What is kept for later.
    pub kept: String,
    /// What is to be paid back.
    pub to_pay_back: String,
}

/// The account of a payer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PayerAccount {
    /// Who.
    pub payer: Payer,
    /// What stands on it, by currency.
    pub standing: Vec<AccountStands>,
    /// Their invoices: drafts first, then the newest.
    pub invoices: Vec<InvoiceListed>,
    /// Their packages.
    pub packages: Vec<Package>,
    /// All that was charged and paid, the oldest first.
    pub lines: Vec<AccountLine>,
}

/// Shows the account of a payer.
///
/// # Errors
/// `NotFound`.
pub fn account(db: &Reading<'_>, which: WhichPayer) -> Result<PayerAccount> {
    let payer = payers::show(db, which)?;
    let mut standing: Vec<(Currency, i64, [i64; 3])> = Vec::new();
    let mut lines = Vec::new();
    for entry in ledger::entries_of(db, which.payer)? {
        let Some(currency) = Currency::parse(&entry.currency) else { continue };
        let at = match standing.iter().position(|(known, ..)| *known == currency) {
            Some(at) => at,
            None => {
                standing.push((currency, 0, [0; 3]));
                standing.len() - 1
            }
        };
        let Some((_, balance, sums)) = standing.get_mut(at) else { continue };
        let (mut owed, mut invoice) = (0, None);
        for posting in ledger::postings_of(db, entry.id)? {
            let kind = match posting.account {
                LedgerAccount::Receivable => 0,
                LedgerAccount::Credit => 1,
                LedgerAccount::ToPayBack => 2,
                _ => continue,
            };
            if posting.payer != Some(which.payer) {
                continue;
            }
            owed += posting.amount;
            invoice = invoice.or(posting.invoice);
            if let Some(sum) = sums.get_mut(kind) {
                *sum += posting.amount;
            }
        }
        *balance += owed;
        lines.push(AccountLine {
            entry: entry.id,
            day: entry.day,
            kind: entry.kind,
            words: entry.words,
            invoice,
            currency: currency.code().to_owned(),
            amount: currency.plain(owed),
            balance: currency.plain(*balance),
            taken_back: entry.reversed,
        });
    }
    let standing = standing
        .into_iter()
        .map(|(currency, _, [open, kept, back])| AccountStands {
            currency: currency.code().to_owned(),
            open: currency.plain(open),
            kept: currency.plain(-kept),
            to_pay_back: currency.plain(-back),
        })
        .collect();
    Ok(PayerAccount {
        standing,
        invoices: invoices::list(db, InvoicesOf { payer: Some(which.payer), open: false })?
            .invoices,
        packages: packages::list_of_payer(db, which.payer)?,
        lines,
        payer,
    })
}
