//! Issuing: the next number, the frozen words and sums, the document and the entry, all in one act.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::draft::{a_draft, currency_of, day_of};
use super::list::{missing, reckoned, show};
use super::reckon::{Reckoned, flag, taxes};
use super::store::{Files, Frozen, Head};
use super::structured::{Nets, structured};
use super::{
    DocExtra, DocLine, DocPart, Document, DocumentKind, Invoice, InvoiceExtra, InvoiceLine,
    WhichInvoice, parts, print, seller::seller, store,
};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{InvoiceId, PackageId};
use crate::kinds::{Currency, Day};
use crate::ledger::{self, Enter, EntryKind, LedgerAccount, Posting};
use crate::money::Prices;
use crate::payers;
use crate::prices::What;
use crate::terms;

/// An invoice to issue.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Issue {
    /// Which draft.
    pub invoice: InvoiceId,
    /// The day of issue, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub day: String,
    /// The last day to pay; empty: as the terms say.
    #[serde(default)]
    pub due: String,
    /// Whether what the payer has paid already is used for it.
    #[serde(default)]
    pub use_credit: bool,
    /// Whether it is to be paid in parts, as the terms say.
    #[serde(default)]
    pub in_parts: bool,
}

/// A draft that may be issued to be paid in parts.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct InvoiceInParts {
    /// Which draft.
    pub invoice: InvoiceId,
    /// The day of issue, as YYYY-MM-DD; empty for today.
    #[serde(default)]
    pub day: String,
    /// The last day to pay; empty: as the terms say.
    #[serde(default)]
    pub due: String,
}

/// The parts in which a draft would be paid, issued on a day, before anything is used for it; none where
/// the terms set none, and once it is issued.
///
/// # Errors
/// `NotFound`; `Refused` when a day is none.
pub fn in_parts(db: &Reading<'_>, given: InvoiceInParts) -> Result<Vec<DocPart>> {
    let head = store::head(db, given.invoice)?;
    let terms = terms::show(db)?;
    let mut p = Problems::new();
    let day = p.day_or_none("day", Some(&given.day), "The day of issue").unwrap_or(db.today());
    let due = p
        .day_or_none("due", Some(&given.due), "The last day to pay")
        .unwrap_or(day.plus(terms.due_days));
    p.done()?;
    if terms.parts.is_empty() || head.number.is_some() {
        return Ok(Vec::new());
    }
    let currency = currency_of(&head)?;
    let (_, _, whole) = reckoned(db, &head, currency)?;
    let payable = whole.sums.gross + whole.sums.rounding;
    Ok(parts::printed(&parts::shared(payable, &terms.parts, day, due), currency))
}

/// Issues a draft. It takes the next number of its series and cannot be undone: a correction is a
/// credit note.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong, and with what the draft lacks; `NotPossible`
/// when it was issued already.
pub fn issue(db: &Writing<'_>, given: Issue) -> Result<Invoice> {
    let head = a_draft(db, given.invoice)?;
    let currency = currency_of(&head)?;
    let (lines, extras, whole) = reckoned(db, &head, currency)?;
    let mut p = Problems::new();
    let day = p.day_or_none("day", Some(&given.day), "The day of issue").unwrap_or(db.today());
    if day > db.today() {
        p.add("day", "in_future", "The day of issue lies in the future.");
    }
    let due_days = match head.kind {
        DocumentKind::Invoice => terms::show(db)?.due_days,
        DocumentKind::CreditNote => 0,
    };
    let due =
        p.day_or_none("due", Some(&given.due), "The last day to pay").unwrap_or(day.plus(due_days));
    if due < day {
        p.add("due", "before", "The last day to pay lies before the day of issue.");
    }
    let rows = match given.in_parts {
        true => terms::show(db)?.parts,
        false => Vec::new(),
    };
    if given.in_parts && rows.is_empty() {
        p.add("in_parts", "not_set", "No parts are set under Invoices and terms.");
    }
    if let Some(row) = rows.last().filter(|row| day.plus(row.days) >= due) {
        let words = format!(
            "The last part before the rest is to be paid by {}: the rest comes after it.",
            day.plus(row.days).words()
        );
        p.add("due", "before_parts", words);
    }
    for lack in missing(db, &head, &lines, &extras, &whole)? {
        p.add("", "missing", lack.words);
    }
    let from = seller(db)?;
    let (series, year) = (from.series.clone(), day.date().format("%Y").to_string());
    let series = format!("{series}{}{year}", if series.is_empty() { "" } else { "-" });
    let (place, last_day) = store::last_of(db, &series)?;
    if let Some(last) = last_day.filter(|last| *last > day) {
        let words = format!(
            "The invoice before it in the series is of {}: numbers follow the days.",
            last.words()
        );
        p.add("day", "out_of_order", words);
    }
    p.done()?;
    let credit = match head.kind {
        DocumentKind::Invoice if given.use_credit => {
            ledger::credit_of(db, head.payer, currency.code())?
        }
        _ => 0,
    };
    let payable = whole.sums.gross + whole.sums.rounding;
    let used = credit.clamp(0, payable.max(0));
    let shared = match rows.is_empty() {
        true => Vec::new(),
        false => parts::shared(payable - used, &rows, day, due),
    };
    let number = format!("{series}-{:04}", place + 1);
    let mut document =
        document(db, &head, (&lines, &extras, &whole), (number.clone(), day, due), used, from)?;
    document.parts = parts::printed(&shared, currency);
    let paper = serde_json::to_string(&document).map_err(|e| Error::Fault(e.to_string()))?;
    let made = structured(&document, nets_of(&whole));
    let drawn = print::draw(&document, db.now(), made.as_ref().ok())?;
    let files = match made {
        Ok(made) => Files { ubl: Some(made.ubl), cii: Some(made.cii), lacks: String::new() },
        Err(lacks) => Files { ubl: None, cii: None, lacks: lacks.join("\n") },
    };
    for (line, total) in lines.iter().zip(&whole.sums.lines) {
        store::freeze_line(db, line, *total)?;
    }
    store::freeze_extras(db, head.id, &extras)?;
    store::insert_parts(db, head.id, &shared)?;
    store::freeze(
        db,
        head.id,
        &Frozen {
            series,
            place: place + 1,
            number: number.clone(),
            day,
            due,
            issued: db.now(),
            paper,
            net: whole.sums.net,
            tax: whole.sums.tax_total,
            gross: whole.sums.gross,
            rounding: whole.sums.rounding,
        },
    )?;
    store::insert_document(db, head.id, &drawn.pdf, &digest::sha256(&drawn.pdf), &drawn.fonts)?;
    store::insert_file(db, head.id, &files)?;
    match head.kind {
        DocumentKind::Invoice => {
            enter(db, &head, (&lines, &extras, &whole), (&number, day))?;
            if used > 0 {
                use_credit(db, &head, used, (&number, day))?;
            }
        }
        DocumentKind::CreditNote => {
            super::credit::enter(db, &head, (&lines, &extras, &whole), (&number, day))?;
        }
    }
    db.cannot_be_undone();
    let what = match head.kind {
        DocumentKind::Invoice => "Invoice",
        DocumentKind::CreditNote => "Credit note",
    };
    db.label(format!("{what} {number} issued: {}", document.buyer.name));
    show(db, WhichInvoice { invoice: head.id })
}

fn nets_of(whole: &Reckoned) -> Nets<'_> {
    Nets { lines: &whole.nets, extras: &whole.extra_nets }
}

/// Lines, extras and what they come to.
pub(super) type Content<'a> = (&'a [InvoiceLine], &'a [InvoiceExtra], &'a Reckoned);

/// Why a draft, issued as it stands, would have no structured file; nothing when it would.
pub(super) fn would_lack(
    db: &Reading<'_>,
    head: &Head,
    content: Content<'_>,
) -> Result<Vec<String>> {
    let today = db.today();
    let of = ("1".to_owned(), today, today);
    let document = document(db, head, content, of, 0, seller(db)?)?;
    if document.lines.len() < content.0.len() || document.lines.is_empty() {
        return Ok(Vec::new());
    }
    Ok(structured(&document, nets_of(content.2)).err().unwrap_or_default())
}

fn document(
    db: &Reading<'_>,
    head: &Head,
    (lines, extras, whole): Content<'_>,
    (number, day, due): (String, Day, Day),
    used: i64,
    seller: super::Seller,
) -> Result<Document> {
    let currency = currency_of(head)?;
    let sums = &whole.sums;
    let plain = |minor: i64| currency.plain(minor);
    let buyer = payers::show(db, payers::WhichPayer { payer: head.payer })?.form;
    let corrects = head.corrects.map(|invoice| store::head(db, invoice)).transpose()?;
    Ok(Document {
        kind: head.kind,
        number,
        day,
        due,
        corrects: corrects.and_then(|invoice| invoice.number.zip(invoice.day)),
        currency: currency.code().to_owned(),
        prices: head.prices,
        language: buyer.language,
        seller,
        buyer,
        words: head.words.clone(),
        lines: lines
            .iter()
            .zip(&sums.lines)
            .filter_map(|(line, total)| {
                Some(DocLine {
                    what: line.what,
                    words: line.words.clone(),
                    day: line.day,
                    quantity: line.quantity.clone(),
                    price: line.price.clone(),
                    allowance: line.allowance.clone(),
                    reason: line.reason.clone(),
                    category: line.category?,
                    rate: line.rate.clone(),
                    why: line.why.clone(),
                    total: plain(*total),
                })
            })
            .collect(),
        lines_total: plain(sums.lines_total),
        extras: extras
            .iter()
            .filter_map(|extra| {
                Some(DocExtra {
                    takes_off: extra.takes_off,
                    words: extra.words.clone(),
                    amount: extra.amount.clone(),
                    category: extra.category?,
                    rate: extra.rate.clone(),
                    why: extra.why.clone(),
                })
            })
            .collect(),
        net: plain(sums.net),
        taxes: taxes(sums, lines, extras, currency),
        tax: plain(sums.tax_total),
        gross: plain(sums.gross),
        paid: plain(used),
        rounding: plain(sums.rounding),
        payable: plain(sums.gross + sums.rounding - used),
        parts: Vec::new(),
    })
}

/// The entry of an invoice: what the payer owes, what is earned with each line, what packages owe,
/// what tax is due.
fn enter(
    db: &Writing<'_>,
    head: &Head,
    (lines, extras, whole): Content<'_>,
    (number, day): (&str, Day),
) -> Result<()> {
    let sums = &whole.sums;
    let mut postings = vec![
        on(head, LedgerAccount::Receivable, sums.gross + sums.rounding),
        on(head, LedgerAccount::Rounding, -sums.rounding),
    ];
    let mut lessons: Vec<(PackageId, i64)> = Vec::new();
    for (line, net) in lines.iter().zip(&whole.nets) {
        let mut posting = on(head, LedgerAccount::Earned, -net);
        posting.what = Some(line.what);
        posting.facility = line.facility;
        posting.tax = flag(line.category, &line.rate);
        posting.day = Some(day_of(line.day, day));
        if let (What::Package, Some(package)) = (line.what, line.package) {
            let found = crate::packages::show(db, crate::packages::WhichPackage { package })?;
            lessons.push((package, found.package.lessons));
            posting.account = LedgerAccount::Deferred;
            posting.package = Some(package);
            posting.day = None;
        }
        postings.push(posting);
    }
    postings.extend(extra_postings(head, extras, whole, day, -1));
    postings.extend(tax_postings(head, whole, -1));
    let entry = entry_of(head, EntryKind::Invoice, format!("Invoice {number}"), day);
    ledger::enter(db, &entry, &postings, &lessons)?;
    Ok(())
}

/// The entry of a document, made once.
pub(super) fn entry_of(head: &Head, kind: EntryKind, words: String, day: Day) -> Enter {
    Enter {
        reference: format!("invoice:{}", head.id),
        day,
        kind,
        words,
        currency: head.currency.clone(),
        reverses: None,
    }
}

fn use_credit(db: &Writing<'_>, head: &Head, used: i64, (number, day): (&str, Day)) -> Result<()> {
    let entry = Enter {
        reference: format!("applied:{}", head.id),
        day,
        kind: EntryKind::Applied,
        words: format!("Paid before, used for {number}"),
        currency: head.currency.clone(),
        reverses: None,
    };
    let mut credit = Posting::on(LedgerAccount::Credit, used).of(head.payer);
    credit.invoice = None;
    ledger::enter(db, &entry, &[credit, on(head, LedgerAccount::Receivable, -used)], &[])?;
    Ok(())
}

/// A posting of an invoice and its payer.
pub(super) fn on(head: &Head, account: LedgerAccount, amount: i64) -> Posting {
    Posting::on(account, amount).of(head.payer).for_invoice(head.id)
}

/// What is taken off the whole or put on it, on one side or the other.
pub(super) fn extra_postings(
    head: &Head,
    extras: &[InvoiceExtra],
    whole: &Reckoned,
    day: Day,
    sign: i64,
) -> Vec<Posting> {
    extras
        .iter()
        .zip(&whole.extra_nets)
        .map(|(extra, net)| {
            let net = if extra.takes_off { -net } else { *net };
            let mut posting = on(head, LedgerAccount::Earned, sign * net);
            posting.what = Some(What::Other);
            posting.tax = flag(extra.category, &extra.rate);
            posting.day = Some(day);
            posting
        })
        .collect()
}

/// The tax, by category and rate, on one side or the other.
pub(super) fn tax_postings(head: &Head, whole: &Reckoned, sign: i64) -> Vec<Posting> {
    whole
        .sums
        .tax
        .iter()
        .map(|row| {
            let mut posting = on(head, LedgerAccount::TaxDue, sign * row.amount);
            posting.tax = format!("{} {}", row.tax.category.code(), row.tax.rate.normalize());
            posting
        })
        .collect()
}

/// Prices as they stand on a document, in words.
pub(super) fn prices_words(prices: Prices, currency: Currency) -> String {
    match prices {
        Prices::Net => format!("{currency} without tax"),
        Prices::Gross => format!("{currency} with tax"),
    }
}
