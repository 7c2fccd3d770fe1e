//! Messages about money: they go to whoever pays, and lead to no student.

use super::begun::{Begun, common, pdf};
use super::render::Carried;
use super::{Addressee, MessageKind};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::invoices::{self, DocumentKind, Invoice, InvoiceState, WhichInvoice, WhichReminder};
use crate::kinds::ids::{InvoiceId, ReminderId};
use crate::kinds::{Currency, Day, Language, Span};
use crate::payers::{self, WhichPayer};

fn to_payer(
    db: &Reading<'_>,
    invoice: &Invoice,
    kind: MessageKind,
    about: String,
) -> Result<Begun> {
    let payer = payers::show(db, WhichPayer { payer: invoice.payer })?;
    let mut values = common(db, &payer.form.name, payer.form.language)?;
    values.push(("number", Ok(invoice.number.clone())));
    Ok(Begun {
        about,
        kind,
        student: None,
        payer: Some(payer.id),
        visit: None,
        invoice: Some(invoice.id),
        language: payer.form.language,
        to: Addressee { name: payer.form.name, address: payer.form.email },
        second: None,
        values,
        own: None,
        method: "",
        parts: Vec::new(),
    })
}

/// An issued invoice or credit note, with its structured file where it has one.
pub(super) fn of_invoice(db: &Reading<'_>, id: InvoiceId) -> Result<Begun> {
    let invoice = invoices::show(db, WhichInvoice { invoice: id })?;
    if invoice.state == InvoiceState::Draft {
        let words = "This is a draft still. Issue it, then it can be sent.";
        return Err(Error::not_possible("draft", words));
    }
    let mut begun = to_payer(db, &invoice, MessageKind::Invoice, format!("invoice:{id}"))?;
    let (en, credit) = (begun.language == Language::En, invoice.kind == DocumentKind::CreditNote);
    let document = match (en, credit) {
        (true, false) => "Invoice",
        (true, true) => "Credit note",
        (false, false) => "Rechnung",
        (false, true) => "Gutschrift",
    };
    begun.values.push(("document", Ok(document.to_owned())));
    begun.values.push(("pay", Ok(pay(&invoice, begun.language))));
    begun.parts.push(pdf(invoices::file(db, WhichInvoice { invoice: id })?));
    if invoice.file_lacks.is_empty() {
        let which =
            invoices::WhichInvoiceFile { invoice: id, syntax: invoices::InvoiceSyntax::Ubl };
        let (name, bytes) = invoices::structured_file(db, which)?;
        begun.parts.push(Carried { name, media: "application/xml".to_owned(), bytes });
    }
    Ok(begun)
}

/// What is to be paid by when, as a sentence.
fn pay(invoice: &Invoice, language: Language) -> String {
    let open = format!("{} {}", invoice.open, invoice.currency);
    let due = invoice.due.map(|day| on(day, language)).unwrap_or_default();
    let nothing =
        Currency::parse(&invoice.currency).and_then(|c| c.minor(&invoice.open)) == Some(0);
    match (language, invoice.kind, nothing) {
        (Language::En, DocumentKind::CreditNote, _) => "There is nothing to pay.".to_owned(),
        (Language::De, DocumentKind::CreditNote, _) => "Es ist nichts zu zahlen.".to_owned(),
        (Language::En, _, true) => "It is paid already.".to_owned(),
        (Language::De, _, true) => "Sie ist bereits bezahlt.".to_owned(),
        (Language::En, ..) => format!("Please pay {open} by {due}."),
        (Language::De, ..) => format!("Bitte zahlen Sie {open} bis {due}."),
    }
}

fn on(day: Day, language: Language) -> String {
    language.span(Span { first: day, last: day })
}

/// A reminder of an invoice.
pub(super) fn of_reminder(db: &Reading<'_>, reminder: ReminderId) -> Result<Begun> {
    let which = WhichReminder { reminder };
    let id = invoices::of_reminder(db, which)?;
    let invoice = invoices::show(db, WhichInvoice { invoice: id })?;
    let mut begun = to_payer(db, &invoice, MessageKind::Reminder, format!("reminder:{reminder}"))?;
    if let Some(told) = invoice.reminders.iter().find(|told| told.id == reminder) {
        begun.values.push(("amount", Ok(format!("{} {}", told.open, invoice.currency))));
        begun.values.push(("due", Ok(on(told.due, begun.language))));
    }
    begun.parts.push(pdf(invoices::reminder_file(db, which)?));
    Ok(begun)
}
