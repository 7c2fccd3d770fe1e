//! Invoices: one of them, and lists.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::draft::currency_of;
use super::reckon::{Reckoned, reckon, shown};
use super::store::Head;
use super::{
    Document, DocumentKind, Invoice, InvoiceExtra, InvoiceLack, InvoiceLine, LackIn, WhichInvoice,
    issue, parts, remind, seller::seller, store, structured,
};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::{InvoiceId, PayerId};
use crate::kinds::text::counted;
use crate::kinds::{Currency, Day};
use crate::payers;
use crate::prices;

/// Where an invoice stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum InvoiceState {
    /// Not issued yet.
    Draft,
    /// Issued; nothing is paid.
    Open,
    /// Paid in part.
    PartPaid,
    /// Nothing is to be paid any more.
    Settled,
    /// The last day to pay has passed.
    Overdue,
}

/// An invoice in a list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceListed {
    /// Which one.
    pub id: InvoiceId,
    /// What kind of document.
    pub kind: DocumentKind,
    /// Who pays.
    pub payer: PayerId,
    /// The name.
    pub name: String,
    /// The number; empty while a draft.
    pub number: String,
    /// The day of issue.
    pub day: Option<Day>,
    /// The last day to pay.
    pub due: Option<Day>,
    /// The currency.
    pub currency: String,
    /// What it comes to, a decimal; of a draft, so far.
    pub amount: String,
    /// What is still to be paid, a decimal.
    pub open: String,
    /// Where it stands.
    pub state: InvoiceState,
    /// The same in words.
    pub stands: String,
}

/// Which invoices.
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct InvoicesOf {
    /// Of a payer; left out for everyone\u{2019}s.
    pub payer: Option<PayerId>,
    /// Only those of which something is to be paid, the longest due first.
    pub open: bool,
}

/// Invoices.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Invoices {
    /// Drafts first, then the newest; or the longest due first.
    pub invoices: Vec<InvoiceListed>,
}

/// Lists invoices and credit notes.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>, of: InvoicesOf) -> Result<Invoices> {
    let mut heads = match (of.open, of.payer) {
        (true, _) => store::open(db)?,
        (false, Some(payer)) => store::of_payer(db, payer)?,
        (false, None) => store::all(db)?,
    };
    heads.retain(|head| of.payer.is_none_or(|payer| head.payer == payer));
    let mut invoices = heads.iter().map(|head| listed(db, head)).collect::<Result<Vec<_>>>()?;
    if of.open {
        // A part may be due before the whole is.
        invoices.sort_by_key(|invoice| invoice.due);
    }
    Ok(Invoices { invoices })
}

/// Lists drafts, the newest first.
///
/// # Errors
/// `Storage`.
pub fn drafts(db: &Reading<'_>) -> Result<Vec<InvoiceListed>> {
    store::drafts(db)?.iter().map(|head| listed(db, head)).collect()
}

fn listed(db: &Reading<'_>, head: &Head) -> Result<InvoiceListed> {
    let currency = currency_of(head)?;
    let amount = match head.number {
        Some(_) => head.payable,
        None => {
            let (_, _, whole) = reckoned(db, head, currency)?;
            whole.sums.gross + whole.sums.rounding
        }
    };
    let (due, overdue) = parts::due_of(db, head)?;
    let state = state(head, overdue);
    Ok(InvoiceListed {
        id: head.id,
        kind: head.kind,
        payer: head.payer,
        name: head.payer_name.clone(),
        number: head.number.clone().unwrap_or_default(),
        day: head.day,
        due,
        currency: head.currency.clone(),
        amount: currency.plain(amount),
        open: currency.plain(head.open),
        state,
        stands: stands(head, state, (due, overdue), currency, db.today()),
    })
}

fn state(head: &Head, overdue: i64) -> InvoiceState {
    match head.due {
        None => InvoiceState::Draft,
        Some(_) if head.open <= 0 => InvoiceState::Settled,
        Some(_) if overdue > 0 => InvoiceState::Overdue,
        Some(_) if head.open < head.payable => InvoiceState::PartPaid,
        Some(_) => InvoiceState::Open,
    }
}

fn stands(
    head: &Head,
    state: InvoiceState,
    (due, overdue): (Option<Day>, i64),
    currency: Currency,
    today: Day,
) -> String {
    let open = currency.words(head.open);
    match (state, due) {
        (InvoiceState::Draft, _) | (_, None) => "Draft.".to_owned(),
        (InvoiceState::Settled, _) if head.kind == DocumentKind::CreditNote => "Issued.".to_owned(),
        (InvoiceState::Settled, _) => "Settled.".to_owned(),
        (InvoiceState::Overdue, Some(due)) => {
            let late = counted(today.since(due), "day", "days");
            match overdue < head.open {
                true => format!("{} of {open} open is {late} late.", currency.words(overdue)),
                false => format!("{open} open, {late} late."),
            }
        }
        (InvoiceState::PartPaid, Some(due)) => {
            format!("{open} of {} open, due {}.", currency.words(head.payable), due.words())
        }
        (InvoiceState::Open, Some(due)) => format!("{open} open, due {}.", due.words()),
    }
}

/// The lines of an invoice. On a draft one without a tax has what the coach has set since.
pub(super) fn lines_of(
    db: &Reading<'_>,
    head: &Head,
    currency: Currency,
) -> Result<Vec<InvoiceLine>> {
    let mut lines = store::lines(db, head.id, currency)?;
    for line in lines.iter_mut().filter(|line| head.number.is_none() && line.category.is_none()) {
        let day = line.day.unwrap_or(db.today());
        if let Some(tax) = prices::tax_of(db, line.what, line.facility, day)? {
            (line.category, line.rate, line.why) = (Some(tax.category), tax.rate, tax.why);
        }
    }
    Ok(lines)
}

/// What is taken off the whole or put on it. On a draft one without a tax has that of the lines, where
/// all of them have the same.
fn extras_of(
    db: &Reading<'_>,
    head: &Head,
    lines: &[InvoiceLine],
    currency: Currency,
) -> Result<Vec<InvoiceExtra>> {
    let mut extras = store::extras(db, head.id, currency)?;
    let same = lines.first().filter(|first| {
        lines.iter().all(|line| line.category == first.category && line.rate == first.rate)
    });
    if let (None, Some(first)) = (&head.number, same) {
        for extra in extras.iter_mut().filter(|extra| extra.category.is_none()) {
            extra.category = first.category;
            (extra.rate, extra.why) = (first.rate.clone(), first.why.clone());
        }
    }
    Ok(extras)
}

/// Lines, extras and what they come to.
pub(super) fn reckoned(
    db: &Reading<'_>,
    head: &Head,
    currency: Currency,
) -> Result<(Vec<InvoiceLine>, Vec<InvoiceExtra>, Reckoned)> {
    let lines = lines_of(db, head, currency)?;
    let extras = extras_of(db, head, &lines, currency)?;
    let whole = reckon(&lines, &extras, currency, head.prices, 0, head.step)?;
    Ok((lines, extras, whole))
}

/// Shows an invoice or credit note.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichInvoice) -> Result<Invoice> {
    let head = store::head(db, which.invoice)?;
    let currency = currency_of(&head)?;
    let (mut lines, extras, whole) = reckoned(db, &head, currency)?;
    let missing = match head.number {
        None => missing(db, &head, &lines, &extras, &whole)?,
        Some(_) => Vec::new(),
    };
    let file_lacks = match head.number {
        None => issue::would_lack(db, &head, (&lines, &extras, &whole))?,
        Some(_) => structured::why_none(db, which)?,
    };
    for (line, total) in lines.iter_mut().zip(&whole.sums.lines) {
        line.total = currency.plain(*total);
    }
    let (due, overdue) = parts::due_of(db, &head)?;
    let state = state(&head, overdue);
    let corrects = head.corrects.map(|invoice| store::head(db, invoice)).transpose()?;
    let credits = store::credits(db, which.invoice)?;
    let (name, parts) = match frozen(&head)? {
        Some(document) => (document.buyer.name, document.parts),
        None => (head.payer_name.clone(), Vec::new()),
    };
    Ok(Invoice {
        id: head.id,
        kind: head.kind,
        payer: head.payer,
        name,
        corrects: head.corrects,
        corrects_number: corrects.and_then(|invoice| invoice.number).unwrap_or_default(),
        currency: head.currency.clone(),
        prices: head.prices,
        words: head.words.clone(),
        step: head.step.map(|step| currency.plain(step)).unwrap_or_default(),
        number: head.number.clone().unwrap_or_default(),
        day: head.day,
        due: head.due,
        state,
        stands: stands(&head, state, (due, overdue), currency, db.today()),
        sums: shown(&whole, &lines, &extras, currency),
        open: currency.plain(head.open),
        missing,
        credits: credits.iter().map(|head| listed(db, head)).collect::<Result<_>>()?,
        lines,
        extras,
        file_lacks,
        parts,
        reminders: remind::reminders(db, which.invoice, currency)?,
    })
}

/// What was frozen of an issued invoice; `None` of a draft.
pub(super) fn frozen(head: &Head) -> Result<Option<Document>> {
    head.paper
        .as_ref()
        .map(|paper| serde_json::from_str(paper).map_err(|e| Error::Fault(e.to_string())))
        .transpose()
}

/// What keeps a draft from being issued.
pub(super) fn missing(
    db: &Reading<'_>,
    head: &Head,
    lines: &[InvoiceLine],
    extras: &[InvoiceExtra],
    whole: &Reckoned,
) -> Result<Vec<InvoiceLack>> {
    let mut missing = Vec::new();
    let mut lacks = |lack_in: LackIn, words: String| missing.push(InvoiceLack { words, lack_in });
    let from = seller(db)?;
    if from.name.is_empty() || from.address.is_empty() {
        let words = "Who issues it: set your name and address under Invoices and terms.";
        lacks(LackIn::Seller, words.to_owned());
    }
    let payer = payers::show(db, payers::WhichPayer { payer: head.payer })?;
    if payer.form.address.is_empty() {
        lacks(LackIn::Payer, format!("The address of {}.", payer.form.name));
    }
    if lines.is_empty() {
        lacks(LackIn::Lines, "At least one line.".to_owned());
    }
    let mut untaxed: Vec<&str> =
        lines.iter().filter(|line| line.category.is_none()).map(|line| line.what.words()).collect();
    untaxed.sort_unstable();
    untaxed.dedup();
    if !untaxed.is_empty() {
        let words = format!(
            "What tax counts for {}: set it under Prices, or on the line. An adviser knows.",
            untaxed.join(", ")
        );
        lacks(LackIn::Taxes, words);
    }
    if extras.iter().any(|extra| extra.category.is_none()) && untaxed.is_empty() {
        let words = "What tax counts for what is taken off or put on the whole: the lines differ.";
        lacks(LackIn::Lines, words.to_owned());
    }
    if extras.iter().any(|extra| extra.takes_off) && lines.iter().any(|line| line.package.is_some())
    {
        let words = "A package is made cheaper on its own line, not by the whole.";
        lacks(LackIn::Lines, words.to_owned());
    }
    if whole.sums.net < 0 || whole.sums.tax.iter().any(|row| row.base < 0) {
        let words = "More would be taken off than there is to pay.";
        lacks(LackIn::Lines, words.to_owned());
    }
    let charged = lines.iter().any(|line| line.category == Some(crate::money::Category::S));
    if charged && from.vat_id.is_empty() && from.tax_id.is_empty() {
        let words = "Your tax number: an invoice that charges tax carries it (EN 16931, BR-S-02).";
        lacks(LackIn::Seller, words.to_owned());
    }
    Ok(missing)
}
