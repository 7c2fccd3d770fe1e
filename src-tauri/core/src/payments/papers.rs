//! Papers about payments, drawn from the ledger when they are asked for: a receipt for money that came
//! in, and the statement of a payer.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::account::account;
use crate::app::Reading;
use crate::error::{Error, Problems, Result};
use crate::invoices::{self, InvoiceState, Seller, WhichInvoice};
use crate::kinds::ids::{EntryId, PayerId};
use crate::kinds::{Currency, Day, Language, Span};
use crate::ledger::{self, EntryKind, LedgerAccount};
use crate::payers::{self, PayerForm, WhichPayer};
use crate::print::{Paper, Piece, Sheet, file_words, page_words, written};

/// Which payment.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichPayment {
    /// Its entry.
    pub entry: EntryId,
}

/// Which statement.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StatementOf {
    /// Whose.
    pub payer: PayerId,
    /// Since which day, as YYYY-MM-DD; empty for everything.
    #[serde(default)]
    pub since: String,
}

/// A receipt for money that came in: its file name and bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` for anything but a payment, and for one that was taken back.
pub fn receipt(db: &Reading<'_>, which: WhichPayment) -> Result<(String, Vec<u8>)> {
    let entry = ledger::find(db, which.entry)?;
    if entry.kind != EntryKind::Payment || entry.reversed {
        let words = "Only money that came in has a receipt.";
        return Err(Error::not_possible("no_payment", words));
    }
    let fault = || Error::Fault(format!("the payment {} is of nobody", which.entry));
    let postings = ledger::postings_of(db, which.entry)?;
    let payer = postings.iter().find_map(|posting| posting.payer).ok_or_else(fault)?;
    let payer = payers::show(db, WhichPayer { payer })?.form;
    let currency = Currency::parse(&entry.currency).ok_or_else(fault)?;
    let en = payer.language == Language::En;
    let (mut came, mut rows) = (0, Vec::new());
    for posting in &postings {
        match (posting.account, posting.invoice) {
            (LedgerAccount::Receivable, Some(invoice)) => {
                let number = invoices::show(db, WhichInvoice { invoice })?.number;
                let label = if en { "Invoice" } else { "Rechnung" };
                rows.push(vec![format!("{label} {number}"), currency.words(-posting.amount)]);
            }
            (LedgerAccount::Credit, _) => {
                let label = if en { "Kept for later" } else { "Für später verwahrt" };
                rows.push(vec![label.to_owned(), currency.words(-posting.amount)]);
            }
            (account, _) if LedgerAccount::MONEY.contains(&account) => came += posting.amount,
            _ => {}
        }
    }
    let day = payer.language.span(Span { first: entry.day, last: entry.day });
    let how = postings.iter().find_map(|posting| how(posting.account, en)).unwrap_or_default();
    let amount = currency.words(came);
    let text = if en {
        format!("Received from {} on {day}, {how}: {amount}.", payer.name)
    } else {
        format!("Von {} am {day} {how} erhalten: {amount}.", payer.name)
    };
    let title = if en { "Receipt" } else { "Quittung" };
    let head = if en { ["Used for", "Amount"] } else { ["Verwendet für", "Betrag"] };
    let pieces = vec![
        Piece::Lines(invoices::addressee(&payer)),
        Piece::Title(title.to_owned()),
        Piece::Text(text),
        Piece::Table { head: head.map(str::to_owned).to_vec(), rows, right_aligned: vec![1] },
    ];
    let sheet = paper(db, title.to_owned(), &payer, pieces)?;
    drawn(&sheet, format!("{title} {} {}.pdf", entry.day, file_words(&payer.name)))
}

/// The statement of a payer: what was charged and paid, and what is open. Its file name and bytes.
///
/// # Errors
/// `NotFound`; `Refused` when the day is none.
pub fn statement(db: &Reading<'_>, of: StatementOf) -> Result<(String, Vec<u8>)> {
    let mut p = Problems::new();
    let since = p.day_or_none("since", Some(&of.since), "The first day");
    p.done()?;
    let account = account(db, WhichPayer { payer: of.payer })?;
    let payer = &account.payer.form;
    let en = payer.language == Language::En;
    let day = |day: Day| payer.language.span(Span { first: day, last: day });
    let title = if en { "Statement of account" } else { "Kontoauszug" };
    let on = if en { "As of" } else { "Stand" };
    let mut pieces = vec![
        Piece::Lines(invoices::addressee(payer)),
        Piece::Title(title.to_owned()),
        Piece::Lines(vec![format!("{on} {}", day(db.today()))]),
    ];
    if account.lines.is_empty() {
        let none =
            if en { "Nothing was charged or paid." } else { "Nichts berechnet, nichts gezahlt." };
        pieces.push(Piece::Text(none.to_owned()));
    }
    for stands in &account.standing {
        let of_currency = || account.lines.iter().filter(|line| line.currency == stands.currency);
        let before = of_currency().rfind(|line| since.is_some_and(|since| line.day < since));
        let mut rows = Vec::new();
        if let Some(before) = before {
            let label = if en { "Before" } else { "Vortrag" };
            rows.push(vec![String::new(), label.to_owned(), String::new(), before.balance.clone()]);
        }
        for line in of_currency().filter(|line| since.is_none_or(|since| line.day >= since)) {
            let words = said(line.kind, &line.words, en);
            rows.push(vec![day(line.day), words, line.amount.clone(), line.balance.clone()]);
        }
        let head = if en {
            ["Day", "What", "Amount", "Balance"]
        } else {
            ["Tag", "Vorgang", "Betrag", "Saldo"]
        };
        pieces.push(Piece::Heading(stands.currency.clone()));
        pieces.push(Piece::Table {
            head: head.map(str::to_owned).to_vec(),
            rows,
            right_aligned: vec![2, 3],
        });
        let labels = if en {
            ["Open on invoices", "Kept for later", "To be paid back"]
        } else {
            ["Offen auf Rechnungen", "Für später verwahrt", "Zurückzuzahlen"]
        };
        let sums = [&stands.open, &stands.kept, &stands.to_pay_back];
        pieces.push(Piece::Lines(
            labels
                .iter()
                .zip(sums)
                .filter(|(_, sum)| sum.chars().any(|c| matches!(c, '1'..='9')))
                .map(|(label, sum)| format!("{label}: {sum} {}", stands.currency))
                .collect(),
        ));
    }
    let open: Vec<Vec<String>> = account
        .invoices
        .iter()
        .filter(|i| !matches!(i.state, InvoiceState::Draft | InvoiceState::Settled))
        .map(|i| {
            let due = i.due.map(day).unwrap_or_default();
            vec![i.number.clone(), due, format!("{} {}", i.open, i.currency)]
        })
        .collect();
    if !open.is_empty() {
        let (heading, head) = if en {
            ("Open invoices", ["Number", "To be paid by", "Open"])
        } else {
            ("Offene Rechnungen", ["Nummer", "Zahlbar bis", "Offen"])
        };
        pieces.push(Piece::Heading(heading.to_owned()));
        let head = head.map(str::to_owned).to_vec();
        pieces.push(Piece::Table { head, rows: open, right_aligned: vec![2] });
    }
    let sheet = paper(db, title.to_owned(), payer, pieces)?;
    drawn(&sheet, format!("{title} {} {}.pdf", db.today(), file_words(&payer.name)))
}

/// What an entry is, in the payer\u{2019}s language; the coach\u{2019}s own words stay as they were written.
fn said(kind: EntryKind, words: &str, en: bool) -> String {
    if en {
        return words.to_owned();
    }
    let german = match kind {
        EntryKind::Invoice => "Rechnung",
        EntryKind::CreditNote => "Gutschrift",
        EntryKind::Payment => "Zahlung",
        EntryKind::Applied => "Verrechnet",
        EntryKind::PaidBack => "Zurückgezahlt",
        EntryKind::WriteOff => "Erlassen",
        EntryKind::Reversal => "Zurückgenommen",
        _ => return words.to_owned(),
    };
    let number = words.split_whitespace().find(|word| word.chars().any(|c| c.is_ascii_digit()));
    match (kind, number) {
        (EntryKind::Invoice | EntryKind::CreditNote, Some(number)) => format!("{german} {number}"),
        _ => german.to_owned(),
    }
}

fn how(account: LedgerAccount, en: bool) -> Option<&'static str> {
    Some(match (account, en) {
        (LedgerAccount::Bank, true) => "by transfer",
        (LedgerAccount::Bank, false) => "durch Überweisung",
        (LedgerAccount::Cash, true) => "in cash",
        (LedgerAccount::Cash, false) => "in bar",
        (LedgerAccount::Card, true) => "by card",
        (LedgerAccount::Card, false) => "mit Karte",
        (LedgerAccount::Cheque, true) => "by cheque",
        (LedgerAccount::Cheque, false) => "durch Scheck",
        _ => return None,
    })
}

fn paper(db: &Reading<'_>, title: String, payer: &PayerForm, pieces: Vec<Piece>) -> Result<Sheet> {
    let seller: Seller = invoices::seller(db)?;
    Ok(Sheet {
        title: title.clone(),
        language: payer.language.code().to_owned(),
        author: seller.name.clone(),
        issued: db.now().utc(),
        paper: Paper::A4,
        letterhead: invoices::letterhead(&seller),
        pieces,
        footer: title,
        page_words: page_words(payer.language).to_owned(),
    })
}

fn drawn(sheet: &Sheet, name: String) -> Result<(String, Vec<u8>)> {
    let (pdf, _) = written(sheet)?;
    Ok((name, pdf))
}
