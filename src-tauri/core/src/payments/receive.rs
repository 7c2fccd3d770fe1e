//! Money that came in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::PaidBy;
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::invoices::{self, InvoicesOf};
use crate::kinds::ids::{EntryId, InvoiceId, PayerId};
use crate::ledger::{self, Enter, EntryKind, LedgerAccount, Posting};
use crate::money::typed;
use crate::payers::{self, WhichPayer};

/// What of a payment is for an invoice.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ForInvoice {
    /// Which one.
    pub invoice: InvoiceId,
    /// How much, a decimal.
    pub amount: String,
}

/// A payment that came in.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Receive {
    /// From whom.
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
    /// What stood on it; empty for nothing.
    #[serde(default)]
    pub words: String,
    /// For which invoices; none for those that are due first. What is over is kept for later.
    #[serde(default)]
    pub invoices: Vec<ForInvoice>,
    /// Whether it is a deposit: all of it is kept for later.
    #[serde(default)]
    pub deposit: bool,
    /// A name that the payment has elsewhere, so that the same is never counted twice.
    #[serde(default)]
    pub reference: String,
}

/// A payment as entered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Received {
    /// The entry.
    pub entry: EntryId,
    /// What was used for invoices, a decimal.
    pub used: String,
    /// What is kept for later, a decimal.
    pub kept: String,
    /// The same as a sentence.
    pub words: String,
}

/// Enters a payment.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: an amount that is none, a day to come, more
/// for an invoice than is open, an invoice in another currency or of somebody else; `NotPossible` when
/// one of the same reference was entered.
pub fn receive(db: &Writing<'_>, given: Receive) -> Result<Received> {
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
    let reference = p.line("reference", &given.reference, "The reference");
    let open = invoices::list(db, InvoicesOf { payer: Some(given.payer), open: true })?.invoices;
    let mut shares: Vec<(InvoiceId, i64)> = Vec::new();
    if let Some(currency) = currency {
        for (n, share) in given.invoices.iter().enumerate() {
            let at = |field: &str| format!("invoices[{n}].{field}");
            let Some(invoice) = open.iter().find(|invoice| invoice.id == share.invoice) else {
                let words = "Nothing is open on this invoice of theirs.";
                p.add(&at("invoice"), "not_open", words);
                continue;
            };
            if invoice.currency != currency.code() {
                let words = format!(
                    "{} is in {}: a payment in {} cannot settle it.",
                    invoice.number,
                    invoice.currency,
                    currency.code()
                );
                p.add(&at("invoice"), "other_currency", words);
                continue;
            }
            if shares.iter().any(|(known, _)| *known == share.invoice) {
                p.add(&at("invoice"), "twice", "This invoice stands above already.");
            }
            let Some(part) = typed::amount(&mut p, &at("amount"), &share.amount, currency) else {
                continue;
            };
            let left = currency.minor(&invoice.open).unwrap_or_default();
            if part > left {
                let words = format!("Only {} is open on {}.", currency.words(left), invoice.number);
                p.add(&at("amount"), "too_much", words);
            }
            shares.push((share.invoice, part));
        }
        let named: i64 = shares.iter().map(|(_, part)| part).sum();
        if amount.is_some_and(|amount| named > amount) {
            let words = format!("The invoices come to {}, which is more.", currency.words(named));
            p.add("amount", "too_little", words);
        }
        if given.deposit && !given.invoices.is_empty() {
            let words = "A deposit is kept for later: name no invoice.";
            p.add("deposit", "for_invoice", words);
        }
    }
    p.done()?;
    let (Some(currency), Some(amount)) = (currency, amount) else {
        return Err(Error::Fault("a payment without an amount".to_owned()));
    };
    if given.invoices.is_empty() && !given.deposit {
        let mut rest = amount;
        for invoice in open.iter().filter(|invoice| invoice.currency == currency.code()) {
            let part = currency.minor(&invoice.open).unwrap_or_default().min(rest);
            if part > 0 {
                shares.push((invoice.id, part));
                rest -= part;
            }
        }
    }
    let used: i64 = shares.iter().map(|(_, part)| part).sum();
    let kept = amount - used;
    let mut postings = vec![
        Posting::on(given.method.account(), amount).of(given.payer),
        Posting::on(LedgerAccount::Credit, -kept).of(given.payer),
    ];
    for (invoice, part) in &shares {
        postings.push(
            Posting::on(LedgerAccount::Receivable, -part).of(given.payer).for_invoice(*invoice),
        );
    }
    let own: EntryId = db.id();
    let what = if given.deposit { "Deposit" } else { "Payment" };
    let mut said = format!("{what} {}", given.method.words());
    if !words.is_empty() {
        said.push_str(&format!(": {words}"));
    }
    let entry = Enter {
        reference: if reference.is_empty() {
            format!("payment:{own}")
        } else {
            format!("payment:{reference}")
        },
        day,
        kind: EntryKind::Payment,
        words: said,
        currency: currency.code().to_owned(),
        reverses: None,
    };
    let entry = ledger::enter(db, &entry, &postings, &[])?
        .ok_or_else(|| Error::Fault("an empty payment".to_owned()))?;
    let told = match (used, kept) {
        (_, 0) => format!("{} was used for invoices.", currency.words(used)),
        (0, _) => format!("{} is kept for later.", currency.words(kept)),
        _ => format!(
            "{} was used for invoices, {} is kept for later.",
            currency.words(used),
            currency.words(kept)
        ),
    };
    db.label(format!("{what} of {}: {}", currency.words(amount), payer.form.name));
    Ok(Received { entry, used: currency.plain(used), kept: currency.plain(kept), words: told })
}
