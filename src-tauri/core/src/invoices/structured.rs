//! An invoice as a structured file: the model of EN 16931-1, written as UBL 2.1 and as CII, the latter
//! also inside the document (Factur-X, profile EN 16931). The sums are the program's own; the rules of
//! the standard are checked by another library before anything is written.

use std::time::{Duration, UNIX_EPOCH};

use en16931::invoice::{
    CreditTransfer, Delivery, DocumentAllowanceCharge, DocumentTotals, Item, LineAllowanceCharge,
    LineVat, Party, PaymentInstructions, PaymentMeans, Period, PostalAddress, PrecedingInvoice,
    PriceDetails, VatBreakdown,
};
use en16931::profiles::En16931;
use en16931::validation::profile::Validated;
use en16931::{
    DocumentReference, Identifier, InvoiceAmount, InvoiceLine, Percentage, Quantity,
    UnitPriceAmount,
};
use en16931_formats::zugferd::{self, EmbedOptions, Metadata};
use en16931_formats::{Syntax, write};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{DocExtra, DocLine, DocTax, Document, DocumentKind, WhichInvoice, store};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::kinds::ids::InvoiceId;
use crate::kinds::{Currency, Day, Instant};
use crate::money::{Category, Prices};
use crate::print::file_words;

/// The syntaxes of EN 16931.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum InvoiceSyntax {
    /// UBL 2.1 (ISO/IEC 19845).
    Ubl,
    /// UN/CEFACT Cross Industry Invoice, D16B.
    Cii,
}

/// Which structured file.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichInvoiceFile {
    /// Of which invoice.
    pub invoice: InvoiceId,
    /// In which syntax.
    pub syntax: InvoiceSyntax,
}

/// The files of an invoice that satisfies the rules of EN 16931.
pub(super) struct Structured {
    proof: Validated<En16931>,
    pub ubl: String,
    pub cii: String,
}

/// What each line and each extra comes to without tax, in smallest units.
#[derive(Clone, Copy)]
pub(super) struct Nets<'a> {
    pub lines: &'a [i64],
    pub extras: &'a [i64],
}

/// Makes the structured files of a document.
///
/// # Errors
/// Why none can be made, a sentence each.
pub(super) fn structured(
    d: &Document,
    nets: Nets<'_>,
) -> std::result::Result<Structured, Vec<String>> {
    let lacks = lacks(d);
    if !lacks.is_empty() {
        return Err(lacks);
    }
    let unwritable = || vec!["An amount has more decimals than the standard writes.".to_owned()];
    let invoice = model(d, nets).ok_or_else(unwritable)?;
    let proof = Validated::<En16931>::new(invoice).map_err(|rejected| {
        rejected
            .report()
            .fatal()
            .map(|f| format!("{} of EN 16931 is not kept: {}", f.rule, f.message))
            .collect::<Vec<_>>()
    })?;
    let (ubl, cii) = (write(&proof, Syntax::Ubl).xml, write(&proof, Syntax::Cii).xml);
    Ok(Structured { proof, ubl, cii })
}

impl Structured {
    /// The document with the file inside (PDF/A-3, ISO 19005-3).
    ///
    /// # Errors
    /// `Fault` when the document cannot carry it.
    pub fn inside(
        &self,
        pdf: &[u8],
        d: &Document,
        title: &str,
        issued: Instant,
    ) -> Result<Vec<u8>> {
        let seconds = u64::try_from(issued.utc().timestamp()).unwrap_or_default();
        let options = EmbedOptions {
            metadata: Some(Metadata {
                title: title.to_owned(),
                subject: format!("{} {}", d.seller.name, d.number),
                author: d.seller.name.clone(),
            }),
            modified: Some(UNIX_EPOCH + Duration::from_secs(seconds)),
            ..EmbedOptions::default()
        };
        zugferd::embed(pdf, &self.proof, &options).map_err(|e| Error::Fault(e.to_string()))
    }
}

/// An issued invoice\u{2019}s structured file: its name and bytes, as it was issued.
///
/// # Errors
/// `NotFound`; `NotPossible` for a draft, and where none could be made.
pub fn structured_file(db: &Reading<'_>, which: WhichInvoiceFile) -> Result<(String, Vec<u8>)> {
    let head = store::head(db, which.invoice)?;
    let number = head.number.as_deref().unwrap_or_default();
    let kept = store::file(db, which.invoice)?;
    let xml = kept.and_then(|kept| match which.syntax {
        InvoiceSyntax::Ubl => kept.ubl,
        InvoiceSyntax::Cii => kept.cii,
    });
    let Some(xml) = xml else {
        let words = "There is no structured file of it: its page says why.";
        return Err(Error::not_possible("no_file", words));
    };
    let kind = match which.syntax {
        InvoiceSyntax::Ubl => "UBL",
        InvoiceSyntax::Cii => "CII",
    };
    Ok((format!("{} {kind}.xml", file_words(number)), xml.into_bytes()))
}

/// Why an issued document has no structured file; nothing when it has one.
pub(super) fn why_none(db: &Reading<'_>, which: WhichInvoice) -> Result<Vec<String>> {
    Ok(match store::file(db, which.invoice)? {
        Some(kept) => kept.lacks.lines().map(str::to_owned).collect(),
        None => vec!["It was issued before the program made such files.".to_owned()],
    })
}

/// What is missing that only the coach knows.
fn lacks(d: &Document) -> Vec<String> {
    let mut lacks = Vec::new();
    let mut lack = |is: bool, words: &str| {
        if is {
            lacks.push(words.to_owned());
        }
    };
    let decimals = Currency::parse(&d.currency).map(Currency::decimals);
    lack(decimals != Some(2), "The standard writes amounts with two decimals: not this currency.");
    lack(d.seller.country.is_empty(), "Your country is not set (BT-40).");
    lack(d.buyer.country.is_empty(), "The country of who pays is not set (BT-55).");
    lack(
        d.seller.vat_id.is_empty() && d.seller.tax_id.is_empty(),
        "Your tax number, or number for value added tax, is not set (BT-31, BT-32).",
    );
    let outside = d.taxes.iter().any(|tax| tax.category == Category::O);
    lack(
        outside && d.taxes.len() > 1,
        "Lines outside the scope of tax do not stand beside others (BR-O-11).",
    );
    lack(
        d.kind == DocumentKind::CreditNote
            && amount(&d.payable).is_none_or(|due| due.is_negative()),
        "More would be taken off than is credited.",
    );
    lacks
}

fn model(d: &Document, nets: Nets<'_>) -> Option<en16931::Invoice> {
    let currency = Currency::parse(&d.currency)?;
    let plain = |minor: i64| amount(&currency.plain(minor));
    let type_code = match d.kind {
        DocumentKind::Invoice => "380",
        DocumentKind::CreditNote => "381",
    };
    let specification = "urn:cen.eu:en16931:2017";
    let day = date(d.day)?;
    let mut builder =
        en16931::Invoice::builder(specification, &*d.number, day, type_code, &*d.currency)
            .seller(seller(d))
            .buyer(buyer(d));
    if d.kind == DocumentKind::CreditNote {
        builder = builder.credit_note();
    }
    for note in [&d.words, &d.seller.words] {
        if !note.trim().is_empty() {
            builder = builder.note(note.trim());
        }
    }
    for (n, (line, net)) in d.lines.iter().zip(nets.lines).enumerate() {
        builder = builder.line(one_line(n + 1, line, d.prices, plain(*net)?)?);
    }
    for (extra, net) in d.extras.iter().zip(nets.extras) {
        let on_whole = DocumentAllowanceCharge {
            amount: plain(*net)?,
            base_amount: None,
            percentage: None,
            vat: vat(extra.category, &extra.rate)?,
            reason: Some(extra.words.clone()),
            reason_code: None,
        };
        builder =
            if extra.takes_off { builder.allowance(on_whole) } else { builder.charge(on_whole) };
    }
    for tax in &d.taxes {
        builder = builder.vat_breakdown(breakdown(tax)?);
    }
    let mut invoice = builder.totals(totals(d, nets, plain)?).build();
    invoice.due_date = date(d.due);
    if d.parts.len() > 1 {
        let parts =
            d.parts.iter().map(|part| format!("{} {} {}", part.day, part.amount, d.currency));
        invoice.payment_terms = Some(parts.collect::<Vec<_>>().join("; "));
    }
    if d.kind == DocumentKind::Invoice && !d.seller.account.is_empty() {
        invoice.payment = Some(payment(d));
    }
    if let Some((number, of)) = &d.corrects {
        invoice.preceding_invoices = vec![PrecedingInvoice {
            reference: DocumentReference::new(number.as_str()),
            issue_date: date(*of),
        }];
    }
    if d.taxes.iter().any(|tax| tax.category == Category::K) {
        let last = d.lines.iter().filter_map(|line| line.day).max().unwrap_or(d.day);
        let address =
            PostalAddress { country: Some(d.buyer.country.as_str().into()), ..Default::default() };
        invoice.delivery =
            Some(Delivery { date: date(last), address: Some(address), ..Default::default() });
    }
    Some(invoice)
}

fn seller(d: &Document) -> Party {
    let s = &d.seller;
    let mut party = Party {
        name: Some(s.name.clone()),
        address: address(&s.address, &s.country),
        tax_registration: text(&s.tax_id),
        ..Party::default()
    };
    if taxable(d) {
        party.vat_identifier = text(&s.vat_id);
    } else if party.tax_registration.is_none() {
        party.tax_registration = text(&s.vat_id);
    }
    if party.vat_identifier.is_none() {
        // BR-CO-26 wants one of BT-29, BT-30 and BT-31.
        party.identifiers.extend(party.tax_registration.clone().map(Identifier::new));
    }
    party.electronic_address = text(&s.email).map(|email| Identifier::schemed(email, "EM"));
    party.contact.phone = text(&s.phone);
    party.contact.email = text(&s.email);
    party
}

fn buyer(d: &Document) -> Party {
    let b = &d.buyer;
    Party {
        name: Some(b.name.clone()),
        address: address(&b.address, &b.country),
        vat_identifier: text(&b.tax_id).filter(|_| taxable(d)),
        electronic_address: text(&b.email).map(|email| Identifier::schemed(email, "EM")),
        ..Party::default()
    }
}

/// Outside the scope of tax no number for value added tax stands on it (BR-O-02 to BR-O-04).
fn taxable(d: &Document) -> bool {
    d.taxes.iter().all(|tax| tax.category != Category::O)
}

/// An address as its lines; more than three are joined in the third.
fn address(lines: &str, country: &str) -> PostalAddress {
    let mut lines = lines.lines().map(str::trim).filter(|line| !line.is_empty());
    let (line1, line2) = (lines.next().map(str::to_owned), lines.next().map(str::to_owned));
    let rest = lines.collect::<Vec<_>>().join(", ");
    PostalAddress {
        line1,
        line2,
        line3: text(&rest),
        country: Some(country.into()),
        ..PostalAddress::default()
    }
}

/// One line. With prices that hold the tax, the price without it is that of all of them together
/// (BT-149), so that nothing is rounded.
fn one_line(n: usize, line: &DocLine, prices: Prices, net: InvoiceAmount) -> Option<InvoiceLine> {
    let quantity: Decimal = line.quantity.parse().ok()?;
    let mut made = InvoiceLine::new(
        n.to_string(),
        line.words.as_str(),
        Quantity::new(quantity),
        // One: UN/ECE Recommendation 20.
        "C62",
        net,
        line.category.code(),
        rate(line.category, &line.rate)?,
    );
    made.item = Item { name: Some(line.words.clone()), ..Item::default() };
    made.price = match prices {
        Prices::Net => PriceDetails {
            net_price: UnitPriceAmount::new(line.price.parse().ok()?),
            ..PriceDetails::default()
        },
        Prices::Gross => PriceDetails {
            net_price: UnitPriceAmount::new(net.into_decimal()),
            base_quantity: Some(Quantity::new(quantity)),
            base_quantity_code: Some("C62".into()),
            ..PriceDetails::default()
        },
    };
    let off = amount(&line.allowance)?;
    if prices == Prices::Net && off.is_positive() {
        made.allowances.push(LineAllowanceCharge {
            amount: off,
            base_amount: None,
            percentage: None,
            reason: text(&line.reason),
            reason_code: None,
        });
    }
    if let Some(day) = line.day {
        made.period = Some(Period { start: date(day), end: date(day) });
    }
    Some(made)
}

fn breakdown(tax: &DocTax) -> Option<VatBreakdown> {
    Some(VatBreakdown {
        taxable_amount: amount(&tax.base)?,
        tax_amount: amount(&tax.amount)?,
        category: tax.category.code().into(),
        rate: rate(tax.category, &tax.rate)?,
        exemption_reason: text(&tax.why),
        exemption_reason_code: None,
    })
}

fn totals(
    d: &Document,
    nets: Nets<'_>,
    plain: impl Fn(i64) -> Option<InvoiceAmount>,
) -> Option<DocumentTotals> {
    let of = |off: bool| -> i64 {
        let extras = d.extras.iter().zip(nets.extras).filter(|(e, _)| e.takes_off == off);
        extras.map(|(_, net)| net).sum()
    };
    let has = |off: bool| d.extras.iter().any(|extra: &DocExtra| extra.takes_off == off);
    let some = |typed: &str| amount(typed).filter(|amount| !amount.is_zero());
    Some(DocumentTotals {
        line_total: plain(nets.lines.iter().sum())?,
        allowance_total: plain(of(true)).filter(|_| has(true)),
        charge_total: plain(of(false)).filter(|_| has(false)),
        taxable_total: amount(&d.net)?,
        vat_total: Some(amount(&d.tax)?),
        vat_total_accounting: None,
        gross_total: amount(&d.gross)?,
        paid: some(&d.paid),
        rounding: some(&d.rounding),
        due: amount(&d.payable)?,
    })
}

/// A transfer, named by its number; an IBAN of the euro area as SEPA (UNTDID 4461: 58), else 30.
fn payment(d: &Document) -> PaymentInstructions {
    let s = &d.seller;
    let sepa = d.currency == "EUR" && super::seller::is_iban(&s.account);
    let account: String = s.account.chars().filter(|c| !c.is_whitespace()).collect();
    PaymentInstructions {
        means_code: Some(if sepa { "58" } else { "30" }.into()),
        means_text: None,
        remittance_information: Some(d.number.clone()),
        means: Some(PaymentMeans::CreditTransfer(vec![CreditTransfer {
            account_identifier: Some(account),
            account_name: text(&s.account_name),
            provider_identifier: text(&s.bank).filter(|bank| super::pay_code::is_bic(bank)),
        }])),
    }
}

fn vat(category: Category, percent: &str) -> Option<LineVat> {
    Some(LineVat { category: category.code().into(), rate: rate(category, percent)? })
}

/// The rate; there is none outside the scope of tax (BR-O-05).
fn rate(category: Category, percent: &str) -> Option<Option<Percentage>> {
    match category {
        Category::O => Some(None),
        _ => Some(Some(Percentage::new(percent.parse().ok()?))),
    }
}

fn amount(plain: &str) -> Option<InvoiceAmount> {
    InvoiceAmount::from_decimal_exact(plain.parse().ok()?).ok()
}

fn text(typed: &str) -> Option<String> {
    Some(typed.trim()).filter(|typed| !typed.is_empty()).map(str::to_owned)
}

fn date(day: Day) -> Option<en16931::Date> {
    en16931::Date::parse(&day.to_string()).ok()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::reckon::{reckon, taxes};
    use super::super::{InvoiceExtra, Seller};
    use super::*;
    use crate::payers::PayerForm;
    use crate::prices::What;

    const TAXES: [(Category, &str, &str); 4] = [
        (Category::S, "19", ""),
        (Category::S, "7", ""),
        (Category::Z, "0", ""),
        (Category::E, "0", "Exempt"),
    ];

    fn a_line(price: u32, quantity: u32, allowance: u32, tax: usize) -> super::super::InvoiceLine {
        let (category, rate, why) = TAXES[tax];
        super::super::InvoiceLine {
            id: uuid::Uuid::nil().into(),
            what: What::Lesson,
            words: "Lesson".to_owned(),
            day: None,
            facility: None,
            quantity: quantity.to_string(),
            price: Decimal::new(price.into(), 2).to_string(),
            allowance: Decimal::new(i64::from(allowance.min(price * quantity)), 2).to_string(),
            reason: "Rain".to_owned(),
            category: Some(category),
            rate: rate.to_owned(),
            why: why.to_owned(),
            package: None,
            lessons: None,
            corrects: None,
            total: String::new(),
            credited: String::new(),
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]

        /// The sums of the program beside those that another library makes of the same lines; and every
        /// invoice keeps the rules of EN 16931-1, with prices that hold the tax as well.
        #[test]
        fn sums_are_those_of_another_library(
            lines in prop::collection::vec((1_u32..200_000, 1_u32..12, 0_u32..5_000, 0_usize..4), 1..12),
            off in 0_u32..100, on in 0_u32..5_000, gross in any::<bool>(),
        ) {
            let currency = Currency::parse("EUR").unwrap();
            let prices = if gross { Prices::Gross } else { Prices::Net };
            let lines: Vec<_> =
                lines.into_iter().map(|(price, many, less, tax)| a_line(price + 100, many, less.min(50), tax)).collect();
            let first = &lines[0];
            let extra = |takes_off, amount: u32| InvoiceExtra {
                takes_off,
                words: "For the whole".to_owned(),
                amount: Decimal::new(amount.into(), 2).to_string(),
                category: first.category,
                rate: first.rate.clone(),
                why: first.why.clone(),
            };
            let extras: Vec<_> = [(true, off.min(40)), (false, on)]
                .into_iter()
                .filter(|(_, amount)| *amount > 0)
                .map(|(off, amount)| extra(off, amount))
                .collect();
            let whole = reckon(&lines, &extras, currency, prices, 0, None).unwrap();
            prop_assert_eq!(
                whole.nets.iter().sum::<i64>()
                    + extras.iter().zip(&whole.extra_nets).map(|(e, n)| if e.takes_off { -n } else { *n }).sum::<i64>(),
                whole.sums.net
            );
            let plain = |minor: i64| currency.plain(minor);
            let document = Document {
                kind: DocumentKind::Invoice,
                number: "1".to_owned(),
                day: Day::EPOCH,
                due: Day::EPOCH,
                corrects: None,
                currency: "EUR".to_owned(),
                prices,
                language: crate::kinds::Language::En,
                seller: Seller {
                    name: "Robin Hale".to_owned(), address: "1 Quay".to_owned(), country: "IE".to_owned(),
                    vat_id: "IE1234567T".to_owned(), ..Seller::default()
                },
                buyer: PayerForm { name: "Ana".to_owned(), country: "IE".to_owned(), ..PayerForm::default() },
                words: String::new(),
                lines: lines.iter().zip(&whole.sums.lines).map(|(line, total)| DocLine {
                    what: line.what, words: line.words.clone(), day: line.day, quantity: line.quantity.clone(),
                    price: line.price.clone(), allowance: line.allowance.clone(), reason: line.reason.clone(),
                    category: line.category.unwrap(), rate: line.rate.clone(), why: line.why.clone(),
                    total: plain(*total),
                }).collect(),
                lines_total: plain(whole.sums.lines_total),
                extras: extras.iter().map(|extra| DocExtra {
                    takes_off: extra.takes_off, words: extra.words.clone(), amount: extra.amount.clone(),
                    category: extra.category.unwrap(), rate: extra.rate.clone(), why: extra.why.clone(),
                }).collect(),
                net: plain(whole.sums.net),
                taxes: taxes(&whole.sums, &lines, &extras, currency),
                tax: plain(whole.sums.tax_total),
                gross: plain(whole.sums.gross),
                paid: "0.00".to_owned(),
                rounding: "0.00".to_owned(),
                payable: plain(whole.sums.gross),
                parts: Vec::new(),
            };
            let nets = Nets { lines: &whole.nets, extras: &whole.extra_nets };
            let made = structured(&document, nets);
            prop_assert!(made.is_ok(), "{:?}", made.err());
            let ours = model(&document, nets).unwrap();
            if prices == Prices::Net {
                let theirs = en16931::Reconciler::new()
                    .exemption("E", Some("Exempt"), None)
                    .compute(&ours)
                    .unwrap();
                prop_assert_eq!(theirs.totals.taxable_total, ours.totals.taxable_total);
                prop_assert_eq!(theirs.totals.vat_total, ours.totals.vat_total);
                prop_assert_eq!(theirs.totals.gross_total, ours.totals.gross_total);
                prop_assert_eq!(theirs.totals.due, ours.totals.due);
            }
        }
    }
}
