//! What becomes of money that is there: used for an invoice, paid back, given up; and slips.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::PaidBy;
use super::account::{PayerAccount, account};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::invoices::{self, WhichInvoice};
use crate::kinds::ids::{EntryId, InvoiceId, PayerId};
use crate::kinds::{Currency, Day};
use crate::ledger::{self, Enter, EntryKind, LedgerAccount, Posting};
use crate::money::typed;
use crate::payers::{self, WhichPayer};

/// Money that was kept, to be used for an invoice.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Apply {
    /// For which invoice.
    pub invoice: InvoiceId,
    /// How much, a decimal; empty for as much as there is and as is open.
    #[serde(default)]
    pub amount: String,
}

/// Money to pay back.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PayBack {
    /// To whom.
    pub payer: PayerId,
    /// The day, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub day: String,
    /// How.
    pub method: PaidBy,
    /// The currency, an ISO 4217 code.
    pub currency: String,
    /// How much, a decimal.
    pub amount: String,
    /// Why.
    #[serde(default)]
    pub words: String,
}

/// What is open, to be given up.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WriteOff {
    /// On which invoice.
    pub invoice: InvoiceId,
    /// Why.
    pub reason: String,
}

/// An entry that was a slip.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeBack {
    /// Which one.
    pub entry: EntryId,
    /// Why.
    pub reason: String,
}

/// Uses money that was kept for an invoice.
///
/// # Errors
/// `NotFound`; `Refused` with more than is kept or open; `NotPossible` when nothing is.
pub fn apply(db: &Writing<'_>, given: Apply) -> Result<PayerAccount> {
    let (invoice, currency) = found(db, given.invoice)?;
    let open = ledger::open_of(db, given.invoice)?;
    let kept = ledger::credit_of(db, invoice.payer, currency.code())?;
    let most = open.min(kept);
    if most <= 0 {
        let words = "Nothing is kept, or nothing is open.";
        return Err(Error::not_possible("nothing", words));
    }
    let mut p = Problems::new();
    let amount = match given.amount.trim() {
        "" => Some(most),
        typed => typed::amount(&mut p, "amount", typed, currency),
    };
    if amount.is_some_and(|amount| amount > most) {
        let words = format!("{} is the most: so much is kept and open.", currency.words(most));
        p.add("amount", "too_much", words);
    }
    p.done()?;
    let amount = amount.unwrap_or_default();
    let postings = [
        Posting::on(LedgerAccount::Credit, amount).of(invoice.payer),
        Posting::on(LedgerAccount::Receivable, -amount)
            .of(invoice.payer)
            .for_invoice(given.invoice),
    ];
    let words = format!("Paid before, used for {}", invoice.number);
    let entry = entry_of(db, EntryKind::Applied, db.today(), words, currency);
    ledger::enter(db, &entry, &postings, &[])?;
    db.label(format!("{} used for {}", currency.words(amount), invoice.number));
    account(db, WhichPayer { payer: invoice.payer })
}

/// Pays money back: first what is owed to the payer, then what was kept.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong, and with more than is there.
pub fn pay_back(db: &Writing<'_>, given: PayBack) -> Result<PayerAccount> {
    let payer = payers::show(db, WhichPayer { payer: given.payer })?;
    let mut p = Problems::new();
    let day = p.day_or_none("day", Some(&given.day), "The day").unwrap_or(db.today());
    if day > db.today() {
        p.add("day", "in_future", "The day lies in the future.");
    }
    let currency = typed::currency(&mut p, "currency", &given.currency);
    let amount =
        currency.and_then(|currency| typed::amount(&mut p, "amount", &given.amount, currency));
    let words = p.line("words", &given.words, "The words");
    let mut owed = 0;
    if let Some(currency) = currency {
        owed = ledger::to_pay_back_of(db, given.payer, currency.code())?;
        let kept = ledger::credit_of(db, given.payer, currency.code())?;
        if amount.is_some_and(|amount| amount > owed + kept) {
            let there = currency.words(owed + kept);
            let words = format!(
                "{there} is owed to them or kept for them: no more can go back. What is to go back beyond that needs a credit note first."
            );
            p.add("amount", "too_much", words);
        }
    }
    p.done()?;
    let (Some(currency), Some(amount)) = (currency, amount) else {
        return Err(Error::Fault("a payment without an amount".to_owned()));
    };
    let from_owed = amount.min(owed);
    let postings = [
        Posting::on(LedgerAccount::ToPayBack, from_owed).of(given.payer),
        Posting::on(LedgerAccount::Credit, amount - from_owed).of(given.payer),
        Posting::on(given.method.account(), -amount).of(given.payer),
    ];
    let mut said = format!("Paid back {}", given.method.words());
    if !words.is_empty() {
        said.push_str(&format!(": {words}"));
    }
    let entry = entry_of(db, EntryKind::PaidBack, day, said, currency);
    ledger::enter(db, &entry, &postings, &[])?;
    db.label(format!("{} paid back: {}", currency.words(amount), payer.form.name));
    account(db, WhichPayer { payer: given.payer })
}

/// Gives up what is open on an invoice.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` when nothing is open.
pub fn write_off(db: &Writing<'_>, given: WriteOff) -> Result<PayerAccount> {
    let (invoice, currency) = found(db, given.invoice)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    let open = ledger::open_of(db, given.invoice)?;
    if open <= 0 {
        return Err(Error::not_possible("nothing", "Nothing is open on this invoice."));
    }
    let postings = [
        Posting::on(LedgerAccount::WrittenOff, open).of(invoice.payer).for_invoice(given.invoice),
        Posting::on(LedgerAccount::Receivable, -open).of(invoice.payer).for_invoice(given.invoice),
    ];
    let words = format!("Given up on {}: {reason}", invoice.number);
    let entry = entry_of(db, EntryKind::WriteOff, db.today(), words, currency);
    ledger::enter(db, &entry, &postings, &[])?;
    db.label(format!("{} given up on {}", currency.words(open), invoice.number));
    account(db, WhichPayer { payer: invoice.payer })
}

/// Takes a payment, or what became of one, back as a slip.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` for anything that is corrected otherwise, for
/// what was taken back already, and for a payment whose money is used elsewhere by now.
pub fn take_back(db: &Writing<'_>, given: TakeBack) -> Result<ledger::LedgerEntry> {
    let entry = ledger::find(db, given.entry)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    match entry.kind {
        EntryKind::Payment | EntryKind::Applied | EntryKind::PaidBack | EntryKind::WriteOff => {}
        EntryKind::Invoice | EntryKind::CreditNote => {
            let words = "What was issued is corrected by a credit note.";
            return Err(Error::not_possible("issued", words));
        }
        _ => {
            let words = "A lesson is taken back on the screen of its package.";
            return Err(Error::not_possible("lesson", words));
        }
    }
    let postings = ledger::postings_of(db, given.entry)?;
    let kept: i64 =
        postings.iter().filter(|p| p.account == LedgerAccount::Credit).map(|p| p.amount).sum();
    if let (true, Some(payer)) = (kept < 0, postings.iter().find_map(|posting| posting.payer)) {
        let there = ledger::credit_of(db, payer, &entry.currency)?;
        if there + kept < 0 && !entry.reversed {
            let words = "What was kept of it is used by now: take that back first.";
            return Err(Error::not_possible("used", words));
        }
    }
    let back = ledger::reverse(db, given.entry, db.today(), &format!("Taken back: {reason}"))?;
    db.label(format!("Taken back: {}", entry.words));
    ledger::find(db, back)
}

fn found(db: &Writing<'_>, invoice: InvoiceId) -> Result<(invoices::Invoice, Currency)> {
    let invoice = invoices::show(db, WhichInvoice { invoice })?;
    let currency = Currency::parse(&invoice.currency)
        .ok_or_else(|| Error::Fault("an invoice without a currency".to_owned()))?;
    Ok((invoice, currency))
}

fn entry_of(
    db: &Writing<'_>,
    kind: EntryKind,
    day: Day,
    words: String,
    currency: Currency,
) -> Enter {
    let own: EntryId = db.id();
    Enter {
        reference: format!("money:{own}"),
        day,
        kind,
        words,
        currency: currency.code().to_owned(),
        reverses: None,
    }
}
