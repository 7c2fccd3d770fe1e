//! The year on paper, for an adviser: the same sums as on the screen, with a caution.

use super::year::{MoneyYear, MoneyYearRow, YearAsked, year};
use crate::app::Reading;
use crate::error::Result;
use crate::invoices;
use crate::kinds::{Currency, Language};
use crate::ledger::LedgerAccount;
use crate::prices::What;
use crate::print::{Paper, Piece, Sheet, page_words, written};

/// The year as a document: its file name and bytes.
///
/// # Errors
/// As [`year`].
pub fn year_paper(db: &Reading<'_>, ask: YearAsked) -> Result<(String, Vec<u8>)> {
    let told = year(db, ask)?;
    let seller = invoices::seller(db)?;
    let title = format!("Money in {}", ask.year);
    let mut pieces = vec![
        Piece::Title(title.clone()),
        Piece::Text(
            "What came in and what was earned are two views of the same year: they are never added \
             to each other. This is a record and no tax advice. What of it counts for tax, and when, \
             an adviser who knows the law where you work can say."
                .to_owned(),
        ),
    ];
    if told.to_settle > 0 {
        pieces.push(Piece::Text(format!(
            "{} lessons are over and not settled: none of them is in here.",
            told.to_settle
        )));
    }
    for stands in &told.stands {
        pieces.push(Piece::Heading(stands.currency.clone()));
        let rows = [
            ("Came in, less what was paid back", &stands.received),
            ("Earned, without tax", &stands.earned),
            ("Tax charged", &stands.tax),
            ("Given up", &stands.written_off),
            ("Spent", &stands.spent),
            ("Open on invoices at the end of the year", &stands.open),
            ("Kept for later at the end of the year", &stands.kept),
            ("To be paid back at the end of the year", &stands.to_pay_back),
            ("Owed in lessons at the end of the year, without tax", &stands.deferred),
        ];
        pieces.push(Piece::Table {
            head: vec!["The year and its end".to_owned(), stands.currency.clone()],
            rows: rows
                .iter()
                .map(|(label, sum)| vec![(*label).to_owned(), (*sum).clone()])
                .collect(),
            right_aligned: vec![1],
        });
        by(&mut pieces, &told, &stands.currency, "By month", |row| row.month.clone());
        by(&mut pieces, &told, &stands.currency, "By place", |row| row.place.clone());
        by(&mut pieces, &told, &stands.currency, "By kind", |row| {
            row.what.map(What::words).unwrap_or_default().to_owned()
        });
        by(&mut pieces, &told, &stands.currency, "By tax", |row| row.tax.clone());
        let spent: Vec<Vec<String>> = told
            .spent
            .iter()
            .filter(|row| row.currency == stands.currency)
            .map(|row| vec![row.month.clone(), row.kind.words().to_owned(), row.amount.clone()])
            .collect();
        if !spent.is_empty() {
            pieces.push(Piece::Table {
                head: ["Month", "Spent for", "Amount"].map(str::to_owned).to_vec(),
                rows: spent,
                right_aligned: vec![2],
            });
        }
    }
    pieces.push(Piece::Note(format!("Lessons owed by packages: {}.", told.lessons_owed)));
    let sheet = Sheet {
        title: title.clone(),
        language: "en".to_owned(),
        author: seller.name.clone(),
        issued: db.now().utc(),
        paper: Paper::A4,
        letterhead: invoices::letterhead(&seller),
        pieces,
        footer: title,
        page_words: page_words(Language::En).to_owned(),
    };
    let (pdf, _) = written(&sheet)?;
    Ok((format!("Year {}.pdf", ask.year), pdf))
}

/// A table of what came in and what was earned, by something. Money has no place, kind or tax.
fn by(
    pieces: &mut Vec<Piece>,
    told: &MoneyYear,
    code: &str,
    heading: &str,
    key: impl Fn(&MoneyYearRow) -> String,
) {
    let Some(currency) = Currency::parse(code) else { return };
    let months = heading == "By month";
    let mut sums: Vec<(String, i64, i64)> = Vec::new();
    for row in told.rows.iter().filter(|row| row.currency == code) {
        let received = LedgerAccount::MONEY.contains(&row.account);
        let earned = matches!(
            row.account,
            LedgerAccount::Earned | LedgerAccount::Lapsed | LedgerAccount::Rounding
        );
        if !(earned || received && months) {
            continue;
        }
        let (key, minor) = (key(row), currency.minor(&row.amount).unwrap_or_default());
        if !sums.iter().any(|(known, ..)| *known == key) {
            sums.push((key.clone(), 0, 0));
        }
        if let Some((_, in_sum, earned_sum)) = sums.iter_mut().find(|(known, ..)| *known == key) {
            if received {
                *in_sum += minor;
            } else {
                *earned_sum += minor;
            }
        }
    }
    sums.sort();
    let mut head = vec![heading.to_owned()];
    if months {
        head.push("Came in".to_owned());
    }
    head.push("Earned".to_owned());
    let rows = sums
        .into_iter()
        .map(|(key, received, earned)| {
            let mut cells = vec![if key.is_empty() { "\u{2013}".to_owned() } else { key }];
            if months {
                cells.push(currency.plain(received));
            }
            cells.push(currency.plain(earned));
            cells
        })
        .collect::<Vec<_>>();
    if !rows.is_empty() {
        pieces.push(Piece::Table { right_aligned: (1..head.len()).collect(), head, rows });
    }
}
