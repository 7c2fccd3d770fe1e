//! The ledger: entries that always balance and never change, in whole smallest units. Money and
//! prepaid lessons move in the same entry, so that the two cannot part. What is wrong is taken back by
//! another entry. Balances are sums; none is kept.
//!
//! The coach file itself refuses an entry that does not balance, and any change of one.

mod balances;
mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use balances::{
    Balanced, balanced, credit_of, deferred_of, lessons_of, open_of, owed_of, to_pay_back_of,
};
pub use store::{LedgerEntry, entries_of, entries_of_package, find, postings_of};

use crate::app::Writing;
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{EntryId, FacilityId, InvoiceId, PackageId, PayerId};
use crate::prices::What;

/// Where money is, or whose.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum LedgerAccount {
    /// In the bank.
    Bank,
    /// In cash.
    Cash,
    /// Paid by card, taken by another device.
    Card,
    /// A cheque.
    Cheque,
    /// A payer owes it, on an invoice.
    Receivable,
    /// A payer paid it, and it is not used yet.
    Credit,
    /// It is owed to a payer.
    ToPayBack,
    /// Paid or billed for lessons still to give.
    Deferred,
    /// Earned.
    Earned,
    /// Earned because lessons ran out.
    Lapsed,
    /// Tax that was charged.
    TaxDue,
    /// Rounding for cash.
    Rounding,
    /// Given up.
    WrittenOff,
}

/// What an entry is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EntryKind {
    /// An invoice was issued.
    Invoice,
    /// A credit note was issued.
    CreditNote,
    /// Money came in.
    Payment,
    /// Money that was there was used for an invoice.
    Applied,
    /// Money went back.
    PaidBack,
    /// Something was given up.
    WriteOff,
    /// A prepaid lesson was given.
    Lesson,
    /// A prepaid lesson was lost: called off late, or missed.
    Late,
    /// Prepaid lessons ran out.
    Lapsed,
    /// Lessons were given on top.
    Bonus,
    /// Lessons went from one package to another.
    Moved,
    /// An entry was taken back.
    Reversal,
}

crate::db::words! {
    LedgerAccount {
        Bank = "bank", Cash = "cash", Card = "card", Cheque = "cheque", Receivable = "receivable",
        Credit = "credit", ToPayBack = "to_pay_back", Deferred = "deferred", Earned = "earned",
        Lapsed = "lapsed", TaxDue = "tax_due", Rounding = "rounding", WrittenOff = "written_off",
    }
    EntryKind {
        Invoice = "invoice", CreditNote = "credit_note", Payment = "payment", Applied = "applied",
        PaidBack = "paid_back", WriteOff = "write_off", Lesson = "lesson", Late = "late",
        Lapsed = "lapsed", Bonus = "bonus", Moved = "moved", Reversal = "reversal",
    }
}

impl LedgerAccount {
    /// Where money itself lies.
    pub const MONEY: [Self; 4] = [Self::Bank, Self::Cash, Self::Card, Self::Cheque];
}

/// A part of an entry: above 0 debit, below 0 credit.
#[derive(Clone, Debug)]
pub struct Posting {
    /// The account.
    pub account: LedgerAccount,
    /// In smallest units.
    pub amount: i64,
    /// The day it counts for; `None`: that of the entry.
    pub day: Option<Day>,
    /// Whose.
    pub payer: Option<PayerId>,
    /// On which invoice.
    pub invoice: Option<InvoiceId>,
    /// In which package.
    pub package: Option<PackageId>,
    /// For what.
    pub what: Option<What>,
    /// Where.
    pub facility: Option<FacilityId>,
    /// Category and rate of tax, as in "S 19".
    pub tax: String,
}

impl Posting {
    /// So much on an account.
    pub fn on(account: LedgerAccount, amount: i64) -> Self {
        Self {
            account,
            amount,
            day: None,
            payer: None,
            invoice: None,
            package: None,
            what: None,
            facility: None,
            tax: String::new(),
        }
    }

    /// The same, of a payer.
    pub fn of(mut self, payer: PayerId) -> Self {
        self.payer = Some(payer);
        self
    }

    /// The same, on an invoice.
    pub fn for_invoice(mut self, invoice: InvoiceId) -> Self {
        self.invoice = Some(invoice);
        self
    }

    /// The same, in a package.
    pub fn in_package(mut self, package: PackageId) -> Self {
        self.package = Some(package);
        self
    }
}

/// An entry to make.
#[derive(Clone, Debug)]
pub struct Enter {
    /// What it is an entry of: the same is never entered twice.
    pub reference: String,
    /// The day.
    pub day: Day,
    /// Its kind.
    pub kind: EntryKind,
    /// In words.
    pub words: String,
    /// The currency.
    pub currency: String,
    /// What it takes back.
    pub reverses: Option<EntryId>,
}

/// Makes an entry, with its postings and the lessons it moves. It cannot be undone, only taken back.
/// Nothing is entered, and `None` given, when nothing of it is other than 0.
///
/// # Errors
/// `NotPossible` when the same was entered before; `Fault` when it does not balance.
pub fn enter(
    db: &Writing<'_>,
    entry: &Enter,
    postings: &[Posting],
    lessons: &[(PackageId, i64)],
) -> Result<Option<EntryId>> {
    let sum: i128 = postings.iter().map(|posting| i128::from(posting.amount)).sum();
    if sum != 0 {
        return Err(Error::Fault(format!("the entry {} is out by {sum}", entry.reference)));
    }
    let empty = postings.iter().all(|posting| posting.amount == 0)
        && lessons.iter().all(|(_, many)| *many == 0);
    if empty {
        return Ok(None);
    }
    if store::is_entered(db, &entry.reference)? {
        return Err(Error::not_possible("entered", "This was entered before, and counts once."));
    }
    let id: EntryId = db.id();
    for posting in postings.iter().filter(|posting| posting.amount != 0) {
        store::insert_posting(db, id, posting, entry.day)?;
    }
    for (package, many) in lessons.iter().filter(|(_, many)| *many != 0) {
        store::insert_move(db, id, *package, *many)?;
    }
    store::insert_entry(db, id, entry)?;
    db.cannot_be_undone();
    Ok(Some(id))
}

/// Takes an entry back by one that is its mirror.
///
/// # Errors
/// `NotFound`; `NotPossible` when it was taken back already, or is itself a taking back.
pub fn reverse(db: &Writing<'_>, id: EntryId, day: Day, words: &str) -> Result<EntryId> {
    let entry = find(db, id)?;
    if entry.reversed {
        return Err(Error::not_possible("taken_back", "This was taken back already."));
    }
    if entry.kind == EntryKind::Reversal {
        let words = "This takes something back itself. Enter it anew instead.";
        return Err(Error::not_possible("reversal", words));
    }
    let mut postings = postings_of(db, id)?;
    for posting in &mut postings {
        posting.amount = -posting.amount;
        // What was earned on a day was not; money that lay somewhere did until now.
        if !matches!(
            posting.account,
            LedgerAccount::Earned | LedgerAccount::Lapsed | LedgerAccount::TaxDue
        ) {
            posting.day = None;
        }
    }
    let lessons: Vec<(PackageId, i64)> =
        store::moves_of(db, id)?.into_iter().map(|(package, many)| (package, -many)).collect();
    let reversal = Enter {
        reference: format!("reversal:{id}"),
        day,
        kind: EntryKind::Reversal,
        words: words.to_owned(),
        currency: entry.currency,
        reverses: Some(id),
    };
    enter(db, &reversal, &postings, &lessons)?
        .ok_or_else(|| Error::Fault(format!("the entry {id} was empty")))
}
