//! Amounts, names, tables and columns of bank statements, each by a table of cases.

use super::amounts::{Marks, marks, minor};
use super::columns::{bookings, propose, settle};
use super::names::{Likeness, likeness, words_of};
use super::reference::references;
use super::sheet::sheet;
use super::{BankDecimals, Booking, Way, camt};
use crate::exchange::season_csv::DateOrder;
use crate::kinds::{Currency, Day};

const EURO: &str = "EUR";

fn currency(code: &str) -> Currency {
    Currency::parse(code).unwrap()
}

#[test]
fn amounts_are_read_as_banks_write_them() {
    // Grouping and marks as CLDR 45 lists them for en, de, fr, de-CH, en-IN; signs from memory.
    for (mark, cell, want) in [
        (BankDecimals::Comma, "1.234,50", Some(123_450)),
        (BankDecimals::Point, "1,234.50", Some(123_450)),
        (BankDecimals::Comma, "1 234,50", Some(123_450)),
        (BankDecimals::Comma, "1\u{202f}234,50", Some(123_450)),
        (BankDecimals::Point, "1'234.50", Some(123_450)),
        (BankDecimals::Point, "1\u{2019}234\u{2019}567.50", Some(123_456_750)),
        (BankDecimals::Point, "12,34,567.50", Some(123_456_750)),
        (BankDecimals::Comma, "-12,5", Some(-1250)),
        (BankDecimals::Comma, "12,50-", Some(-1250)),
        (BankDecimals::Point, "(12.50)", Some(-1250)),
        (BankDecimals::Point, "\u{2212}12.50", Some(-1250)),
        (BankDecimals::Comma, "+ 12,50", Some(1250)),
        (BankDecimals::Comma, "12,50 EUR", Some(1250)),
        (BankDecimals::Comma, "EUR -12,50", Some(-1250)),
        (BankDecimals::Comma, "\u{20ac}12,50", Some(1250)),
        (BankDecimals::Point, ".50", Some(50)),
        (BankDecimals::Unknown, "55", Some(5500)),
        (BankDecimals::Point, "12.5000", Some(1250)),
        (BankDecimals::Point, "1.234,50", None),
        (BankDecimals::Comma, "1.23,50", None),
        (BankDecimals::Comma, "1..234,50", None),
        (BankDecimals::Comma, "12,345", None),
        (BankDecimals::Comma, "1,2,3", None),
        (BankDecimals::Point, "12.50.", None),
        (BankDecimals::Point, "twelve", None),
        (BankDecimals::Point, "1e3", None),
        (BankDecimals::Point, "", None),
        (BankDecimals::Point, "-", None),
    ] {
        assert_eq!(minor(cell, mark, currency(EURO)).ok(), want, "{cell} with {mark:?}");
    }
}

#[test]
fn the_mark_is_told_by_the_amounts_or_asked() {
    use BankDecimals::{Comma, Point};
    for (cells, decimals, want) in [
        (&["1.234,50"][..], 2, Marks::One(Comma)),
        (&["1,234.50"], 2, Marks::One(Point)),
        (&["12,50", "7"], 2, Marks::One(Comma)),
        (&["1.234.567"], 2, Marks::One(Comma)),
        (&["1.234"], 2, Marks::One(Comma)),
        (&["1.234"], 3, Marks::Undecidable),
        (&["1.234", "2.5"], 3, Marks::One(Point)),
        (&["0.125"], 3, Marks::One(Point)),
        (&["1234.567"], 3, Marks::One(Point)),
        (&["12,50", "12.50"], 2, Marks::Mixed),
        (&["55", "1'200"], 2, Marks::NotNeeded),
    ] {
        assert_eq!(marks(cells.iter().copied(), decimals), want, "{cells:?}");
    }
}

#[test]
fn names_are_like_one_another() {
    use Likeness::{Like, No, Same};
    for (ours, bank, want) in [
        ("Ana Silva", "SILVA, ANA", Same),
        ("Jörg Müller", "JOERG MUELLER", Same),
        ("Jörg Müller", "Jorg Muller", Same),
        ("Mrs Zoë Straße", "Zoe Strasse", Same),
        ("Ana Silva", "Ana Silva und Rui Silva", Like),
        ("Ana Maria Silva", "Ana Silva", Like),
        ("Ana Silva", "A. Silva", Like),
        ("Ana Silva", "A M Silva", Like),
        ("Katharina Lindqvist", "Katarina Lindqvist", Like),
        ("Ana Silva", "Rui Silva", No),
        ("Ana Silva", "Silva", No),
        ("Ana Silva", "A. S.", No),
        ("Jan Berg", "Jon Berg", No),
        ("Ana Silva", "", No),
        ("", "", No),
    ] {
        assert_eq!(likeness(&words_of(ours), &words_of(bank)), want, "{ours} and {bank}");
        assert_eq!(likeness(&words_of(bank), &words_of(ours)), want, "{bank} and {ours}");
    }
}

/// A row as it is compared: line, day, smallest units, way, name.
type Read = (u32, String, i64, Way, String);

/// What is asked of a file, its rows, and what is not read.
fn read(text: &str) -> (Vec<String>, Vec<Read>, Vec<(u32, String)>) {
    let sheet = sheet(text).expect("a table");
    let (columns, asks) = settle(&sheet, propose(&sheet));
    let (read, mut not_read) = bookings(&sheet, &columns);
    not_read.extend(sheet.broken);
    (
        asks.into_iter().map(|ask| ask.field).collect(),
        read.into_iter().map(|b| (b.line, b.day.to_string(), b.amount, b.way, b.name)).collect(),
        not_read.into_iter().map(|one| (one.line, one.words)).collect(),
    )
}

/// Files in the ways of writing that banks have; invented, the ways from memory.
#[test]
fn the_dialects_of_banks_are_read_without_a_choice() {
    let ana =
        |line, day: &str, amount, way| (line, day.to_owned(), amount, way, "Ana Silva".to_owned());
    for (what, text) in [
        (
            "English, commas",
            "Date,Payer,Description,Amount,Currency,Balance\n2026-03-13,Ana Silva,Lessons,\"1,055.00\",EUR,\"2,000.00\"\n2026-03-14,Ana Silva,Balls,-12.50,EUR,\"1,987.50\"\n",
        ),
        (
            "German, semicolons, quoted, a preamble",
            "\"Umsätze\";\"Konto 12\"\r\n\"Zeitraum\";\"März\"\r\n\r\n\"Buchungstag\";\"Wertstellung\";\"Auftraggeber\";\"Verwendungszweck\";\"Betrag\";\"Währung\"\r\n\"13.03.2026\";\"13.03.2026\";\"Ana Silva\";\"Stunden\";\"1.055,00\";\"EUR\"\r\n\"14.03.2026\";\"14.03.2026\";\"Ana Silva\";\"Bälle\";\"-12,50\";\"EUR\"\r\n",
        ),
        (
            "in and out apart, the currency in the head, day first",
            "Transaction date\tName\tPaid in (EUR)\tPaid out (EUR)\n13/03/2026\tAna Silva\t1055.00\t\n14/03/2026\tAna Silva\t\t12.50\n",
        ),
        (
            "a column for the way",
            "Buchungstag;Name;Betrag;S/H;Währung\n13.03.26;Ana Silva;1 055,00;H;EUR\n14.03.26;Ana Silva;12,50;S;EUR\n",
        ),
        (
            "month first, the currency beside the amount",
            "Posting Date,Name,Amount\n03/13/2026 10:15,Ana Silva,1055.00 EUR\n03/14/2026 00:00,Ana Silva,-12.50 EUR\n",
        ),
        ("no head", "20260313;Ana Silva;1055,00;EUR\n20260314;Ana Silva;-12,50;EUR\n"),
    ] {
        let (asks, rows, not_read) = read(text);
        assert_eq!(asks, Vec::<String>::new(), "{what}");
        assert_eq!(not_read, [], "{what}");
        let first = rows.first().map(|row| row.0).expect(what);
        let mut want = vec![
            ana(first, "2026-03-13", 105_500, Way::In),
            ana(first + 1, "2026-03-14", 1250, Way::Out),
        ];
        if what == "no head" {
            // Nobody says that the second column is a name.
            want.iter_mut().for_each(|row| row.4 = String::new());
        }
        assert_eq!(rows, want, "{what}");
    }
}

#[test]
fn what_could_be_two_things_is_asked() {
    for (text, asks) in [
        ("Date,Payer,Amount,Currency\n03/04/2026,Ana,12.50,EUR\n", &["dates"][..]),
        ("Date,Payer,Amount\n2026-04-03,Ana,12.50\n", &["one_currency"]),
        ("Date,Payer,Amount,Currency\n2026-04-03,Ana,1.234,BHD\n", &["decimals"]),
        (
            "Date,Payer,Amount,Currency\n2026-04-03,Ana,12.50,EUR\n2026-04-04,Ana,\"12,50\",EUR\n",
            &["decimals"],
        ),
        (
            "Date,Payer,Amount,Currency\n13/04/2026,Ana,12.50,EUR\n04/13/2026,Ana,12.50,EUR\n",
            &["dates"],
        ),
        ("When,Who,What\nMonday,Ana,balls\n", &["day", "amount"]),
        ("Date,Start,End\n2026-04-03,1.50,2.50\n", &["amount"]),
    ] {
        assert_eq!(read(text).0, asks, "{text}");
    }
}

#[test]
fn a_broken_line_is_told_and_the_others_are_read() {
    let text = "Date;Name;Words;Amount;Currency\n2026-03-01;Ana;\"one\ntwo\";1,50;EUR\n2026-02-30;Ana;no day;1,50;EUR\n\
                2026-03-02;Ana;no sum;x;EUR\n2026-03-03;Ana;a; b;1,50;EUR\n2026-03-04;Ana;\"open;1,50;EUR\n\
                2026-03-05;Ana;fine;2,50;EUR\n2026-03-06;An";
    let (asks, rows, not_read) = read(text);
    assert_eq!(asks, Vec::<String>::new());
    assert_eq!(rows.iter().map(|row| (row.0, row.2)).collect::<Vec<_>>(), [(2, 150), (8, 250)]);
    let mut lines: Vec<u32> = not_read.iter().map(|(line, _)| *line).collect();
    lines.sort_unstable();
    assert_eq!(lines, [4, 5, 6, 7, 9], "{not_read:?}");
    let words = |line| not_read.iter().find(|(at, _)| *at == line).map(|(_, words)| words.as_str());
    assert_eq!(words(9), Some("The line is cut short: it has 2 cells of 5."));
    assert_eq!(words(7), Some("A quotation mark on this line is never closed."));
}

#[test]
fn a_text_without_cells_is_no_table() {
    for text in ["Hello", "one\ntwo\nthree\n", " \n"] {
        assert!(sheet(text).is_none(), "{text:?}");
    }
}

#[test]
fn a_chosen_order_is_kept_to() {
    let sheet =
        sheet("Date,Payer,Amount,Currency\n03/04/2026,Ana,12.50,EUR\n31/04/2026,Ana,1.50,EUR\n")
            .unwrap();
    let mut columns = propose(&sheet);
    columns.dates = DateOrder::DayMonthYear;
    let (columns, asks) = settle(&sheet, columns);
    assert_eq!(asks, []);
    let (rows, not_read) = bookings(&sheet, &columns);
    assert_eq!(rows.iter().map(|row| row.day.to_string()).collect::<Vec<_>>(), ["2026-04-03"]);
    assert_eq!(not_read.len(), 1, "31 April is no day, and never 4 March");
}

fn booked(words: &str, reference: &str) -> Booking {
    Booking {
        line: 1,
        account: "A".to_owned(),
        day: Day::of(2026, 3, 1).unwrap(),
        currency: currency(EURO),
        amount: 100,
        way: Way::In,
        name: "Ana".to_owned(),
        words: words.to_owned(),
        bank_reference: reference.to_owned(),
        structured: String::new(),
    }
}

#[test]
fn rows_that_say_the_same_are_counted_and_a_reference_outweighs_words() {
    let rows =
        [booked("a", ""), booked("a", ""), booked("b", ""), booked("a", "X"), booked("b", "Y")];
    let all = references(&rows);
    let mut each = all.clone();
    each.sort_unstable();
    each.dedup();
    assert_eq!(each.len(), 5, "each has its own");
    assert_eq!(
        references(&rows[1..]).first(),
        all.first(),
        "the first of its kind, wherever it stands"
    );
    assert_eq!(
        references(&[booked("other words", "X")]).first(),
        all.get(3),
        "words count no more"
    );
}

#[test]
fn xml_is_known_in_every_encoding_and_a_table_is_not() {
    for (bytes, xml) in [
        (&b"<?xml"[..], true),
        (b"\xEF\xBB\xBF \n<Document/>", true),
        (b"\xFF\xFE<\0D\0", true),
        (b"\0<\0D", true),
        (b"Date,<b>", false),
        (b"", false),
    ] {
        assert_eq!(camt::is_xml(bytes), xml, "{bytes:?}");
    }
}
