//! An invoice on paper.

use super::issue::prices_words;
use super::list::frozen;
use super::structured::Structured;
use super::{DocLine, Document, DocumentKind, Party, Seller, WhichInvoice, pay_code, store};
use crate::app::Reading;
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::{Currency, Day, Instant, Language, Span};
use crate::money::{Category, Prices};
use crate::print::{Paper, Piece, Sheet, file_words, page_words, written};

/// A document, drawn.
pub(super) struct Drawn {
    pub pdf: Vec<u8>,
    pub fonts: String,
}

/// The words of a document in its language.
struct Words {
    invoice: &'static str,
    credit_note: &'static str,
    day: &'static str,
    due: &'static str,
    corrects: &'static str,
    what: &'static str,
    quantity: &'static str,
    price: &'static str,
    off: &'static str,
    total: &'static str,
    sums: &'static str,
    lines: &'static str,
    net: &'static str,
    tax_on: &'static str,
    gross: &'static str,
    rounding: &'static str,
    paid: &'static str,
    payable: &'static str,
    credited: &'static str,
    pay: &'static str,
    code: &'static str,
    code_says: &'static str,
    vat_number: &'static str,
    tax_number: &'static str,
}

const ENGLISH: Words = Words {
    invoice: "Invoice",
    credit_note: "Credit note",
    day: "Date",
    due: "Please pay by",
    corrects: "Corrects invoice",
    what: "For",
    quantity: "Quantity",
    price: "Price",
    off: "taken off",
    total: "Amount",
    sums: "Sums",
    lines: "Sum of the lines",
    net: "Total without tax",
    tax_on: "Tax",
    gross: "Total",
    rounding: "Rounding for cash",
    paid: "Paid before",
    payable: "To be paid",
    credited: "Credited",
    pay: "Please pay to",
    code: "Code for a SEPA transfer: account, amount and number of this invoice",
    code_says: " The code says the same to your bank\u{2019}s program.",
    vat_number: "VAT number",
    tax_number: "Tax number",
};

const GERMAN: Words = Words {
    invoice: "Rechnung",
    credit_note: "Gutschrift zur Rechnungskorrektur",
    day: "Datum",
    due: "Zahlbar bis",
    corrects: "Berichtigt Rechnung",
    what: "Leistung",
    quantity: "Menge",
    price: "Preis",
    off: "Nachlass",
    total: "Betrag",
    sums: "Summen",
    lines: "Summe der Positionen",
    net: "Summe ohne Steuer",
    tax_on: "Steuer",
    gross: "Gesamtbetrag",
    rounding: "Rundung bei Barzahlung",
    paid: "Bereits bezahlt",
    payable: "Zu zahlen",
    credited: "Gutgeschrieben",
    pay: "Bitte zahlen Sie auf das Konto",
    code: "Code für eine SEPA-Überweisung: Konto, Betrag und Nummer dieser Rechnung",
    code_says: " Der Code sagt dem Programm Ihrer Bank dasselbe.",
    vat_number: "USt-IdNr.",
    tax_number: "Steuernummer",
};

/// Draws a document; its structured file lies inside, where there is one.
///
/// # Errors
/// `Fault` when it cannot be drawn.
pub(super) fn draw(
    document: &Document,
    issued: Instant,
    structured: Option<&Structured>,
) -> Result<Drawn> {
    let sheet = sheet(document, issued);
    let (pdf, fonts) = written(&sheet)?;
    let fonts = serde_json::to_string(&fonts).map_err(|e| Error::Fault(e.to_string()))?;
    let pdf = match structured {
        Some(file) => file.inside(&pdf, document, &sheet.title, issued)?,
        None => pdf,
    };
    Ok(Drawn { pdf, fonts })
}

fn sheet(d: &Document, issued: Instant) -> Sheet {
    let w = match d.language {
        Language::En => &ENGLISH,
        Language::De => &GERMAN,
    };
    let kind = match d.kind {
        DocumentKind::Invoice => w.invoice,
        DocumentKind::CreditNote => w.credit_note,
    };
    let day = |day: Day| d.language.span(Span { first: day, last: day });
    let mut pieces = vec![Piece::Lines(addressee(&d.buyer))];
    pieces.push(Piece::Title(format!("{kind} {}", d.number)));
    let mut facts = vec![format!("{}: {}", w.day, day(d.day))];
    if let Some((number, of)) = &d.corrects {
        facts.push(format!("{}: {number}, {}", w.corrects, day(*of)));
    }
    for (label, number) in [(w.vat_number, &d.seller.vat_id), (w.tax_number, &d.seller.tax_id)] {
        if !number.is_empty() {
            facts.push(format!("{label}: {number}"));
        }
    }
    pieces.push(Piece::Lines(facts));
    pieces.extend(d.words.lines().map(|line| Piece::Text(line.to_owned())));

    let code = Currency::parse(&d.currency);
    let note = code.map(|c| prices_words(d.prices, c)).unwrap_or_default();
    // Where no tax is charged at all, nothing but the reason speaks of it.
    let taxed = d.taxes.iter().any(|tax| !is_nothing(&tax.rate));
    let mut head = vec![w.what.to_owned(), w.quantity.to_owned(), w.price.to_owned()];
    if taxed {
        head.push(w.tax_on.to_owned());
    }
    head.push(w.total.to_owned());
    pieces.push(Piece::Table {
        right_aligned: (1..head.len()).collect(),
        head,
        rows: d.lines.iter().map(|line| row(line, d, w, taxed)).collect(),
    });
    pieces.push(Piece::Note(match (taxed, d.language) {
        (false, _) => d.currency.clone(),
        (true, Language::En) => note,
        (true, Language::De) => match d.prices {
            Prices::Net => format!("{} ohne Steuer", d.currency),
            Prices::Gross => format!("{} mit Steuer", d.currency),
        },
    }));

    let head = vec![w.sums.to_owned(), d.currency.clone()];
    pieces.push(Piece::Table { head, rows: sums(d, w, taxed), right_aligned: vec![1] });
    // Why no tax is charged stands where it is read.
    let mut whys: Vec<&str> =
        d.taxes.iter().map(|tax| tax.why.as_str()).filter(|why| !why.is_empty()).collect();
    whys.dedup();
    pieces.extend(whys.into_iter().map(|why| Piece::Text(why.to_owned())));
    if d.kind == DocumentKind::Invoice {
        match d.parts.len() {
            0 | 1 => pieces.push(Piece::Text(format!("{} {}.", w.due, day(d.due)))),
            _ => pieces.push(Piece::Table {
                head: vec![w.due.to_owned(), d.currency.clone()],
                rows: d.parts.iter().map(|p| vec![day(p.day), p.amount.clone()]).collect(),
                right_aligned: vec![1],
            }),
        }
        if !d.seller.account.is_empty() {
            let name = if d.seller.account_name.is_empty() {
                &d.seller.name
            } else {
                &d.seller.account_name
            };
            let parts: Vec<&str> = [name.as_str(), &d.seller.account, &d.seller.bank]
                .into_iter()
                .filter(|part| !part.is_empty())
                .collect();
            let code = pay_code::drawn(d, w.code);
            let says = if code.is_some() { w.code_says } else { "" };
            pieces.push(Piece::Text(format!("{}: {}.{says}", w.pay, parts.join(", "))));
            pieces.extend(code);
        }
    }
    pieces.extend(d.seller.words.lines().map(|line| Piece::Text(line.to_owned())));
    Sheet {
        title: format!("{kind} {}", d.number),
        language: d.language.code().to_owned(),
        author: d.seller.name.clone(),
        issued: issued.utc(),
        paper: Paper::A4,
        letterhead: letterhead(&d.seller),
        pieces,
        footer: format!("{kind} {}", d.number),
        page_words: page_words(d.language).to_owned(),
    }
}

/// The lines at the top of a document: who issues it, and how they are reached.
pub fn letterhead(seller: &Seller) -> Vec<String> {
    let mut lines = vec![seller.name.clone()];
    lines.extend(seller.address.lines().map(str::to_owned));
    let reach: Vec<&str> = [seller.email.as_str(), seller.phone.as_str()]
        .into_iter()
        .filter(|s| !s.is_empty())
        .collect();
    lines.push(reach.join(" · "));
    lines.retain(|line| !line.trim().is_empty());
    lines
}

/// To whom a document goes, line by line.
pub fn addressee(buyer: &Party) -> Vec<String> {
    let mut to = vec![buyer.name.as_str()];
    to.extend(buyer.address.lines());
    to.push(&buyer.tax_id);
    to.into_iter().filter(|line| !line.trim().is_empty()).map(str::to_owned).collect()
}

fn row(line: &DocLine, d: &Document, w: &Words, taxed: bool) -> Vec<String> {
    let language = d.language;
    let mut words = line.words.clone();
    if let Some(day) = line.day {
        words.push_str(&format!(", {}", language.span(Span { first: day, last: day })));
    }
    if !line.reason.is_empty() {
        words.push_str(&format!(" ({} {}: {})", line.allowance, w.off, line.reason));
    }
    let tax = match line.category {
        Category::O => "\u{2013}".to_owned(),
        _ => format!("{} %", line.rate),
    };
    // A price has at least the decimals of its currency.
    let least = Currency::parse(&d.currency).map_or(0, Currency::decimals);
    let price = line.price.parse::<rust_decimal::Decimal>().map(|mut price| {
        price.rescale(price.scale().max(least));
        price.to_string()
    });
    let mut cells =
        vec![words, line.quantity.clone(), price.unwrap_or_else(|_| line.price.clone())];
    if taxed {
        cells.push(tax);
    }
    cells.push(line.total.clone());
    cells
}

fn is_nothing(amount: &str) -> bool {
    amount.chars().all(|c| matches!(c, '0' | '.'))
}

fn sums(d: &Document, w: &Words, taxed: bool) -> Vec<Vec<String>> {
    let amount = |label: String, amount: &str| vec![label, amount.to_owned()];
    let mut rows = Vec::new();
    if !d.extras.is_empty() {
        rows.push(amount(w.lines.to_owned(), &d.lines_total));
    }
    for extra in &d.extras {
        let sign = if extra.takes_off { "\u{2212}" } else { "" };
        let words = match extra.category {
            Category::O => extra.words.clone(),
            _ if taxed => format!("{} ({} %)", extra.words, extra.rate),
            _ => extra.words.clone(),
        };
        rows.push(amount(words, &format!("{sign}{}", extra.amount)));
    }
    if taxed {
        rows.push(amount(w.net.to_owned(), &d.net));
    }
    for tax in d.taxes.iter().filter(|tax| !is_nothing(&tax.rate)) {
        rows.push(amount(format!("{} {} %: {}", w.tax_on, tax.rate, tax.base), &tax.amount));
    }
    rows.push(amount(w.gross.to_owned(), &d.gross));
    if !is_nothing(&d.rounding) {
        rows.push(amount(w.rounding.to_owned(), &d.rounding));
    }
    if !is_nothing(&d.paid) {
        rows.push(amount(w.paid.to_owned(), &d.paid));
    }
    let last = match d.kind {
        DocumentKind::Invoice => w.payable,
        DocumentKind::CreditNote => w.credited,
    };
    rows.push(amount(last.to_owned(), &d.payable));
    rows
}

/// An issued document\u{2019}s file name and bytes, byte for byte as it was issued.
///
/// # Errors
/// `NotFound`; `NotPossible` for a draft; `Fault` when the stored bytes are not those that were issued.
pub fn file(db: &Reading<'_>, which: WhichInvoice) -> Result<(String, Vec<u8>)> {
    let head = store::head(db, which.invoice)?;
    let Some(document) = frozen(&head)? else {
        let words = "A draft has no document: issue it first.";
        return Err(Error::not_possible("draft", words));
    };
    let (pdf, sha256) = store::document(db, which.invoice)?;
    if digest::sha256(&pdf) != sha256 {
        return Err(Error::Fault(format!(
            "the document of {} is not what was issued",
            document.number
        )));
    }
    let name = format!("{} {}.pdf", file_words(&document.number), file_words(&document.buyer.name));
    Ok((name, pdf))
}
