//! Credit notes: against the lines of an issued invoice, in part or whole, and for what is left of a
//! package. A whole credit note voids an invoice.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::draft::{currency_of, day_of};
use super::issue::{Content, Issue, entry_of, extra_postings, issue, on, tax_postings};
use super::list::reckoned;
use super::reckon::flag;
use super::store::{Extra, Head, Line, NewHead};
use super::{DocumentKind, Invoice, InvoiceExtra, InvoiceLine, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{InvoiceId, InvoiceLineId, PackageId};
use crate::kinds::{Currency, Day};
use crate::ledger::{self, EntryKind, LedgerAccount, Posting};
use crate::money::{Fraction, at_single_price, typed};
use crate::packages::{self, WhichPackage};
use crate::prices::What;
use crate::terms::PaidBackAs;

/// What of a line is credited.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CreditLine {
    /// Which line.
    pub line: InvoiceLineId,
    /// How much, a decimal, with or without tax as the invoice\u{2019}s prices are; empty for all that is left.
    #[serde(default)]
    pub amount: String,
}

/// A credit note to issue.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Credit {
    /// Against which invoice.
    pub invoice: InvoiceId,
    /// Why, as it is to stand on it.
    pub reason: String,
    /// Which lines; none for all that is left of all.
    #[serde(default)]
    pub lines: Vec<CreditLine>,
}

/// Lessons of a package to give back.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveBackPackage {
    /// Which package: all that is left of it.
    pub package: PackageId,
    /// Why, as it is to stand on the credit note.
    pub reason: String,
}

/// Issues a credit note.
///
/// # Errors
/// `NotFound`; `Refused` without a reason, or with more than is left of a line; `NotPossible` for a
/// draft, or when nothing is left to credit.
pub fn credit(db: &Writing<'_>, given: Credit) -> Result<Invoice> {
    let invoice = issued(db, given.invoice)?;
    let currency = currency_of(&invoice)?;
    let lines = store::lines(db, given.invoice, currency)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    let mut chosen: Vec<(&InvoiceLine, i64)> = Vec::new();
    for (n, ask) in given.lines.iter().enumerate() {
        let Some(line) = lines.iter().find(|line| line.id == ask.line) else {
            p.add(&format!("lines[{n}].line"), "not_found", "This line is not on the invoice.");
            continue;
        };
        if chosen.iter().any(|(known, _)| known.id == line.id) {
            p.add(&format!("lines[{n}].line"), "twice", "This line stands above already.");
            continue;
        }
        let left = left(line, currency);
        let field = format!("lines[{n}].amount");
        let amount = match ask.amount.trim() {
            "" => Some(left),
            typed => typed::amount(&mut p, &field, typed, currency),
        };
        if amount.is_some_and(|amount| amount > left) {
            let words = format!("Only {} of this line is left to credit.", currency.words(left));
            p.add(&field, "too_much", words);
        }
        if line.package.is_some() {
            let words = "A package is given back from its own screen, by what is left of it.";
            p.add(&field, "package", words);
        }
        chosen.extend(amount.map(|amount| (line, amount)));
    }
    p.done()?;
    if given.lines.is_empty() {
        if lines.iter().any(|line| line.package.is_some() && left(line, currency) > 0) {
            let words = "There is a package on it: give that back first, by what is left of it, then credit the other lines.";
            return Err(Error::not_possible("package", words));
        }
        chosen = lines.iter().map(|line| (line, left(line, currency))).collect();
    }
    chosen.retain(|(_, amount)| *amount > 0);
    if chosen.is_empty() {
        return Err(Error::not_possible("credited", "Nothing is left to credit."));
    }
    let all = chosen.iter().map(|(line, amount)| (*line, *amount, None)).collect::<Vec<_>>();
    let note = begin(db, &invoice, &reason, &all, currency)?;
    let extras = store::extras(db, given.invoice, currency)?;
    if !extras.is_empty() {
        if given.lines.is_empty() && !store::extras_credited(db, given.invoice)? {
            store::put_extras(db, note, &kept(&extras, currency))?;
        }
        let gross = |head: &Head| -> Result<i64> { Ok(reckoned(db, head, currency)?.2.sums.gross) };
        let left = gross(&invoice)? - store::credited(db, given.invoice)?;
        if gross(&store::head(db, note)?)? > left {
            let words = format!(
                "Only {} of the invoice is left to credit, with what was taken off the whole.",
                currency.words(left)
            );
            return Err(Error::field("lines", "too_much", words));
        }
    }
    issue(db, now(note))
}

fn kept(extras: &[InvoiceExtra], currency: Currency) -> Vec<Extra> {
    extras
        .iter()
        .map(|extra| Extra {
            takes_off: extra.takes_off,
            words: extra.words.clone(),
            amount: currency.minor(&extra.amount).unwrap_or_default(),
            category: extra.category,
            rate: Some(extra.rate.clone()).filter(|rate| !rate.is_empty()),
            why: extra.why.clone(),
        })
        .collect()
}

/// What giving a package back would come to: with or without tax as its invoice\u{2019}s prices are.
///
/// # Errors
/// `NotFound`; `NotPossible` when nothing is left, or when it was never invoiced.
pub fn would_give_back(db: &Reading<'_>, which: WhichPackage) -> Result<String> {
    let worked = worked(db, which.package)?;
    Ok(worked.currency.words(worked.amount))
}

/// Gives back all that is left of a package, by the terms it was sold with, as a credit note.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` when nothing is left, or when it was never
/// invoiced.
pub fn give_back(db: &Writing<'_>, given: GiveBackPackage) -> Result<Invoice> {
    let Worked { invoice, line, amount, currency, lessons } = worked(db, given.package)?;
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    let note = begin(db, &invoice, &reason, &[(&line, amount, Some(lessons))], currency)?;
    issue(db, now(note))
}

fn now(invoice: InvoiceId) -> Issue {
    Issue { invoice, day: String::new(), due: String::new(), use_credit: false, in_parts: false }
}

/// The sale of a package, and what is paid back of it.
struct Worked {
    invoice: Head,
    line: InvoiceLine,
    amount: i64,
    currency: Currency,
    lessons: i64,
}

fn worked(db: &Reading<'_>, package: PackageId) -> Result<Worked> {
    let found = packages::show(db, WhichPackage { package })?.package;
    let nothing = || Error::not_possible("nothing_left", "No lesson of this package is left.");
    let Some((invoice, line)) = store::sale_of(db, package)? else {
        let words =
            "This package was not invoiced by itself: credit the invoice of the one it came from.";
        return Err(Error::not_possible("not_invoiced", words));
    };
    let invoice = issued(db, invoice)?;
    let currency = currency_of(&invoice)?;
    let line = store::lines(db, invoice.id, currency)?
        .into_iter()
        .find(|known| known.id == line)
        .ok_or_else(nothing)?;
    if found.left <= 0 {
        return Err(nothing());
    }
    let price = currency.minor(&line.total).unwrap_or_default();
    let gone = found.used + found.lost;
    let single = currency.minor(&found.single);
    // Of lessons that went elsewhere (moved, given back before) nothing is paid back again.
    let in_part = part(price, found.left, found.whole);
    let amount = match (found.refund, single) {
        (PaidBackAs::AtSingle, Some(single)) => u32::try_from(gone)
            .ok()
            .and_then(|gone| at_single_price(price, gone, single))
            .zip(in_part)
            .map(|(at_single, in_part)| at_single.min(in_part)),
        _ => in_part,
    };
    let amount = amount.unwrap_or_default().min(left(&line, currency));
    Ok(Worked { invoice, line, amount, currency, lessons: found.left })
}

/// So many of so many parts of a price.
fn part(price: i64, some: i64, all: i64) -> Option<i64> {
    Fraction::whole(price).times(Fraction::whole(some).by(Fraction::whole(all))?)?.rounded()
}

fn issued(db: &Reading<'_>, invoice: InvoiceId) -> Result<Head> {
    let head = store::head(db, invoice)?;
    if head.number.is_none() {
        let words = "A draft is not credited: change it, or discard it.";
        return Err(Error::not_possible("draft", words));
    }
    if head.kind == DocumentKind::CreditNote {
        return Err(Error::not_possible("credit_note", "A credit note is not credited itself."));
    }
    Ok(head)
}

/// What of a line is left to credit.
fn left(line: &InvoiceLine, currency: Currency) -> i64 {
    let total = currency.minor(&line.total).unwrap_or_default();
    total - currency.minor(&line.credited).unwrap_or_default()
}

fn begin(
    db: &Writing<'_>,
    invoice: &Head,
    reason: &str,
    lines: &[(&InvoiceLine, i64, Option<i64>)],
    currency: Currency,
) -> Result<InvoiceId> {
    let id: InvoiceId = db.id();
    let head = NewHead {
        kind: DocumentKind::CreditNote,
        payer: invoice.payer,
        corrects: Some(invoice.id),
        currency: &invoice.currency,
        prices: invoice.prices,
        words: reason,
        step: None,
    };
    store::insert(db, id, &head)?;
    for (n, (line, amount, lessons)) in lines.iter().enumerate() {
        let credited = Line {
            what: line.what,
            words: line.words.clone(),
            day: line.day,
            facility: line.facility,
            quantity: "1".to_owned(),
            price: currency.plain(*amount),
            allowance: 0,
            reason: String::new(),
            category: line.category,
            rate: Some(line.rate.clone()).filter(|rate| !rate.is_empty()),
            why: line.why.clone(),
            package: line.package,
            lessons: *lessons,
            corrects: Some(line.id),
        };
        let place = i64::try_from(n + 1).unwrap_or(i64::MAX);
        store::put_line(db, id, db.id(), place, &credited)?;
    }
    Ok(id)
}

/// The entry of a credit note: what was earned is not, what was charged is paid back or no longer owed.
pub(super) fn enter(
    db: &Writing<'_>,
    head: &Head,
    (lines, extras, whole): Content<'_>,
    (number, day): (&str, Day),
) -> Result<()> {
    let Some(invoice) = head.corrects else {
        return Err(Error::Fault(format!("the credit note {} corrects nothing", head.id)));
    };
    let gross = whole.sums.gross;
    let open = ledger::open_of(db, invoice)?.clamp(0, gross);
    let against = |account: LedgerAccount, amount: i64| {
        Posting::on(account, amount).of(head.payer).for_invoice(invoice)
    };
    let mut postings = vec![
        against(LedgerAccount::Receivable, -open),
        Posting::on(LedgerAccount::ToPayBack, open - gross).of(head.payer),
    ];
    let mut lessons: Vec<(PackageId, i64)> = Vec::new();
    for (line, net) in lines.iter().zip(&whole.nets) {
        let mut earned = on(head, LedgerAccount::Earned, *net);
        earned.what = Some(line.what);
        earned.facility = line.facility;
        earned.tax = flag(line.category, &line.rate);
        earned.day = Some(day_of(line.day, day));
        if let (What::Package, Some(package), Some(many)) = (line.what, line.package, line.lessons)
        {
            let released = u32::try_from(many)
                .ok()
                .zip(ledger::owed_of(db, package)?)
                .and_then(|(many, mut owed)| owed.release(many))
                .ok_or_else(|| Error::not_possible("nothing_left", "No lesson is left."))?;
            let mut owed = on(head, LedgerAccount::Deferred, released);
            owed.package = Some(package);
            postings.push(owed);
            lessons.push((package, -many));
            // What is not paid back of what was owed counts as earned with the lessons that were given.
            earned.amount = net - released;
            earned.day = None;
            earned.what = Some(What::Lesson);
        }
        postings.push(earned);
    }
    postings.extend(extra_postings(head, extras, whole, day, 1));
    postings.extend(tax_postings(head, whole, 1));
    let entry = entry_of(head, EntryKind::CreditNote, format!("Credit note {number}"), day);
    ledger::enter(db, &entry, &postings, &lessons)?;
    Ok(())
}
