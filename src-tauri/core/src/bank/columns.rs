//! Which column of a bank\u{2019}s CSV file is what, by its name and by what stands in it; what has to be
//! asked; and the rows read so.

use super::sheet::Sheet;
use super::{BankAsk, BankColumns, BankDecimals, BankNotRead, Booking, Way, amounts};
use crate::exchange::season_csv::{DateEvidence, DateOrder, Row, dates};
use crate::kinds::text::{folded, line};
use crate::kinds::{Currency, Day};

/// What a column can be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Day,
    In,
    Out,
    Side,
    Amount,
    Currency,
    Name,
    Words,
    Reference,
}

const PARTS: [Part; 9] = [
    Part::Day,
    Part::In,
    Part::Out,
    Part::Side,
    Part::Amount,
    Part::Currency,
    Part::Name,
    Part::Words,
    Part::Reference,
];

/// The names that a column goes by in English and German, the likeliest first.
fn names(part: Part) -> &'static [&'static str] {
    match part {
        Part::Day => &[
            "booking date",
            "buchungstag",
            "buchungsdatum",
            "posting date",
            "transaction date",
            "date",
            "datum",
            "completed date",
            "buchung",
            "value date",
            "valuta",
            "valutadatum",
            "wertstellung",
            "day",
            "tag",
        ],
        Part::Amount => {
            &["amount", "betrag", "transaction amount", "umsatz", "umsatzbetrag", "sum", "summe"]
        }
        Part::In => &[
            "money in",
            "paid in",
            "credit amount",
            "credit",
            "credits",
            "gutschrift",
            "haben",
            "deposit",
            "deposits",
            "einnahmen",
            "eingang",
            "zahlungseingang",
            "in",
        ],
        Part::Out => &[
            "money out",
            "paid out",
            "debit amount",
            "debit",
            "debits",
            "belastung",
            "lastschrift",
            "soll",
            "withdrawal",
            "withdrawals",
            "ausgaben",
            "ausgang",
            "zahlungsausgang",
            "out",
        ],
        Part::Side => &[
            "credit debit",
            "debit credit",
            "credit or debit",
            "soll haben",
            "haben soll",
            "s h",
            "h s",
            "c d",
            "d c",
            "cr dr",
            "dr cr",
            "sh",
            "credit debit indicator",
            "soll haben kennzeichen",
        ],
        Part::Currency => &["currency", "wahrung", "waehrung", "ccy", "currency code"],
        Part::Name => &[
            "payer",
            "name",
            "auftraggeber",
            "zahler",
            "zahlungspflichtiger",
            "debtor",
            "counterparty",
            "counterparty name",
            "sender",
            "beguenstigter zahlungspflichtiger",
            "begunstigter zahlungspflichtiger",
            "name zahlungsbeteiligter",
            "auftraggeber empfanger",
            "auftraggeber empfaenger",
            "auftraggeber beguenstigter",
            "auftraggeber begunstigter",
            "zahlungspflichtige r",
            "from",
            "von",
            "payee payer",
            "payer payee",
            "payee",
        ],
        Part::Words => &[
            "verwendungszweck",
            "payment details",
            "remittance information",
            "purpose",
            "description",
            "details",
            "message",
            "mitteilung",
            "zahlungszweck",
            "buchungstext",
            "narrative",
            "memo",
            "text",
            "notes",
        ],
        Part::Reference => &[
            "transaction id",
            "bank reference",
            "reference",
            "referenz",
            "transaktions id",
            "transaktionsnummer",
            "bankreferenz",
            "id",
            "end to end reference",
            "kundenreferenz",
            "kundenreferenz end to end",
        ],
    }
}

/// Words in the name of a column that holds none of these.
const NOT_THESE: [&str; 6] = ["balance", "saldo", "kontostand", "fee", "gebuhr", "gebuehr"];

fn plain(head: &str) -> String {
    let plain: String =
        folded(head).chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// How well a name fits, 0 for not at all.
fn by_name(part: Part, head: &str) -> usize {
    let head = plain(head);
    if head.split(' ').any(|word| NOT_THESE.contains(&word)) {
        return 0;
    }
    let names = names(part);
    if let Some(at) = names.iter().position(|name| *name == head) {
        return 100 - at;
    }
    let held = |name: &&&str| name.len() >= 4 && format!(" {head} ").contains(&format!(" {name} "));
    names.iter().filter(held).map(|name| 20 + name.len()).max().unwrap_or(0)
}

/// Whether the cells are the names of a statement\u{2019}s columns: a day among them, and one other.
pub(super) fn heads_a_statement(cells: &[String]) -> bool {
    let has = |part: Part| {
        cells
            .iter()
            .any(|cell| cell.len() < 60 && by_name(part, cell) > 0 && !amounts::is_amount(cell))
    };
    cells.len() > 1
        && has(Part::Day)
        && [Part::Amount, Part::In, Part::Out].into_iter().any(has)
        && !cells.iter().any(|cell| is_date(cell))
}

/// The day in a cell, without the time beside it.
fn date_in(cell: &str) -> &str {
    let cell = cell.trim();
    let timed = |(at, c): &(usize, char)| {
        (c.is_whitespace() || *c == 'T')
            && cell[at + c.len_utf8()..].split(':').count() > 1
            && cell[at + c.len_utf8()..].starts_with(|c: char| c.is_ascii_digit())
    };
    cell.char_indices().find(timed).map_or(cell, |(at, _)| cell[..at].trim_end_matches(','))
}

/// Whether a cell is a day. "1.234,50" could be one by its numbers alone.
pub(super) fn is_date(cell: &str) -> bool {
    let day = date_in(cell);
    let mut marks: Vec<char> = day.chars().filter(|c| !c.is_alphanumeric()).collect();
    marks.dedup();
    let sum = marks.len() > 1 && amounts::is_amount(day);
    compact(cell).is_some() || dates::is_full_date(day) && !sum
}

/// A day as eight digits, year first.
fn compact(cell: &str) -> Option<Day> {
    let cell = date_in(cell);
    let digits = cell.len() == 8 && cell.bytes().all(|b| b.is_ascii_digit());
    let day =
        digits.then(|| Some(format!("{}-{}-{}", cell.get(..4)?, cell.get(4..6)?, cell.get(6..)?)));
    Day::parse(&day.flatten()?)
}

fn cells(sheet: &Sheet, at: usize) -> impl Iterator<Item = &str> {
    sheet
        .rows
        .iter()
        .filter_map(move |row| row.cells.get(at))
        .map(String::as_str)
        .filter(|cell| !cell.is_empty())
}

/// Whether so much of what stands in a column is such, and there is something in it.
fn mostly(sheet: &Sheet, at: usize, percent: usize, such: impl Fn(&str) -> bool) -> bool {
    let (mut all, mut those) = (0_usize, 0_usize);
    for cell in cells(sheet, at).take(300) {
        all += 1;
        those += usize::from(such(cell));
    }
    those > 0 && those * 100 >= all * percent
}

/// Proposes which column is what. Each is one thing at most; what no column seems to be is left out.
pub(super) fn propose(sheet: &Sheet) -> BankColumns {
    let mut merits: Vec<(usize, Part, usize)> = Vec::new();
    for (at, head) in sheet.head.iter().enumerate() {
        for part in PARTS {
            let fits = match part {
                Part::Day => mostly(sheet, at, 50, is_date),
                Part::Amount | Part::In | Part::Out => mostly(sheet, at, 50, amounts::is_amount),
                Part::Side => mostly(sheet, at, 50, |cell| side(cell).is_some()),
                Part::Currency => mostly(sheet, at, 50, |cell| Currency::parse(cell).is_some()),
                Part::Name | Part::Words | Part::Reference => true,
            };
            let merit = by_name(part, head);
            if merit > 0 && fits {
                merits.push((merit, part, at));
            }
        }
    }
    merits.sort_by_key(|&(merit, part, at)| (std::cmp::Reverse(merit), part, at));
    let mut found: Vec<(Part, usize)> = Vec::new();
    for (_, part, at) in merits {
        if found.iter().all(|(known, taken)| *known != part && *taken != at) {
            found.push((part, at));
        }
    }
    let named = |part: Part| found.iter().find(|(known, _)| *known == part).map(|(_, at)| *at);
    let only = |such: &dyn Fn(&str) -> bool| {
        let free = |at: &usize| {
            let head = sheet.head.get(*at).map(|head| plain(head)).unwrap_or_default();
            found.iter().all(|(_, taken)| taken != at)
                && !head.split(' ').any(|word| NOT_THESE.contains(&word))
                && mostly(sheet, *at, 80, such)
        };
        let mut those = (0..sheet.head.len()).filter(free);
        those.next().filter(|_| those.next().is_none())
    };
    let (money_in, money_out) = (named(Part::In), named(Part::Out));
    // A column for what came in stands beside one for what went out, or is the amount itself.
    let both = money_in.is_some() && (money_out.is_some() || named(Part::Amount).is_none());
    let amount = if both {
        None
    } else {
        named(Part::Amount).or_else(|| only(&|cell| amounts::is_money(cell) && !is_date(cell)))
    };
    let currency = named(Part::Currency).or_else(|| {
        only(&|cell| {
            cell.len() == 3 && cell == cell.to_uppercase() && Currency::parse(cell).is_some()
        })
    });
    let mut columns = BankColumns {
        day: named(Part::Day).or_else(|| only(&is_date)),
        amount,
        money_in: money_in.filter(|_| both),
        money_out: money_out.filter(|_| both),
        side: named(Part::Side).filter(|_| !both),
        currency,
        name: named(Part::Name),
        words: named(Part::Words),
        reference: named(Part::Reference),
        ..BankColumns::default()
    };
    if columns.currency.is_none() {
        let heads = [columns.amount, columns.money_in].into_iter().flatten();
        let found = heads.filter_map(|at| sheet.head.get(at)).find_map(|head| currency_of(head));
        columns.one_currency = found.map(|found| found.code().to_owned()).unwrap_or_default();
    }
    columns
}

/// The currency that the name of a column speaks of, as "Amount (EUR)".
fn currency_of(head: &str) -> Option<Currency> {
    let code = head.split(|c: char| !c.is_alphabetic()).find_map(|word| {
        (word.len() == 3 && word == word.to_uppercase()).then(|| Currency::parse(word)).flatten()
    });
    code.or_else(|| head.contains('\u{20ac}').then(|| Currency::parse("EUR")).flatten())
        .or_else(|| head.contains('\u{a3}').then(|| Currency::parse("GBP")).flatten())
}

/// Which way money went, as a column of its own says; `None` for anything else.
fn side(cell: &str) -> Option<Way> {
    match plain(cell).as_str() {
        "h" | "haben" | "c" | "cr" | "crdt" | "credit" | "in" | "gutschrift" => Some(Way::In),
        "s" | "soll" | "d" | "dr" | "dbit" | "debit" | "out" | "belastung" | "lastschrift" => {
            Some(Way::Out)
        }
        _ => match cell.trim() {
            "+" => Some(Way::In),
            "-" | "\u{2212}" => Some(Way::Out),
            _ => None,
        },
    }
}

/// The choice with what the cells themselves tell: the order of dates, the mark before decimals; and what
/// has to be asked.
pub(super) fn settle(sheet: &Sheet, mut columns: BankColumns) -> (BankColumns, Vec<BankAsk>) {
    let mut asks = Vec::new();
    let mut ask = |field: &str, words: &str| {
        asks.push(BankAsk { field: field.to_owned(), words: words.to_owned() });
    };
    for (field, at) in [
        ("day", columns.day),
        ("amount", columns.amount),
        ("money_in", columns.money_in),
        ("money_out", columns.money_out),
        ("side", columns.side),
        ("currency", columns.currency),
        ("name", columns.name),
        ("words", columns.words),
        ("reference", columns.reference),
    ] {
        if at.is_some_and(|at| at >= sheet.head.len()) {
            ask(field, "This file has no such column: choose another.");
        }
    }
    match columns.day {
        None => ask("day", "Choose the column with the day."),
        Some(at) => {
            let evidence = dates::evidence(cells(sheet, at).map(date_in));
            match (columns.dates, evidence) {
                (DateOrder::Unknown, DateEvidence::DayMonthYear) => {
                    columns.dates = DateOrder::DayMonthYear;
                }
                (DateOrder::Unknown, DateEvidence::MonthDayYear) => {
                    columns.dates = DateOrder::MonthDayYear;
                }
                (DateOrder::Unknown, DateEvidence::Undecidable) => {
                    let words = "Every day in this file could be read two ways: say whether the day or the month comes first.";
                    ask("dates", words);
                }
                (DateOrder::Unknown, DateEvidence::Mixed) => {
                    let words = "Some days of this file can only be day first, some only month first: say which it is, and look at what is not read.";
                    ask("dates", words);
                }
                _ => {}
            }
        }
    }
    match (columns.amount, columns.money_in) {
        (None, None) => ask("amount", "Choose the column with the amount, or with what came in."),
        (Some(_), Some(_)) => {
            ask("money_in", "Choose either one column for the amount, or one for what came in.");
        }
        _ => {}
    }
    let sums = || {
        [columns.amount, columns.money_in, columns.money_out]
            .into_iter()
            .flatten()
            .flat_map(|at| cells(sheet, at))
    };
    let one = Currency::parse(&columns.one_currency);
    if one.is_none() && !columns.one_currency.trim().is_empty() {
        let words = "This is no currency. Write its three letters, as in EUR.";
        ask("one_currency", words);
    } else if columns.currency.is_none()
        && one.is_none()
        && !sums().all(|cell| amounts::currency_in(cell).is_some())
    {
        let words = "Choose the column with the currency, or write the one that all of it is in.";
        ask("one_currency", words);
    }
    let own =
        columns.currency.into_iter().flat_map(|at| cells(sheet, at)).filter_map(Currency::parse);
    let decimals = own.chain(one).map(Currency::decimals).max().unwrap_or(2);
    if columns.decimals == BankDecimals::Unknown {
        match amounts::marks(sums(), decimals) {
            amounts::Marks::One(mark) => columns.decimals = mark,
            amounts::Marks::NotNeeded => {}
            amounts::Marks::Mixed => {
                let words = "Some amounts of this file have a comma before the decimals, some a point: say which it is, and look at what is not read.";
                ask("decimals", words);
            }
            amounts::Marks::Undecidable => {
                let words = "The amounts could be read two ways: say whether a comma or a point stands before the decimals.";
                ask("decimals", words);
            }
        }
    }
    (columns, asks)
}

/// The rows, read with a choice of which nothing is to be asked any more; and those that cannot be.
pub(super) fn bookings(sheet: &Sheet, columns: &BankColumns) -> (Vec<Booking>, Vec<BankNotRead>) {
    let (mut read, mut not_read) = (Vec::new(), Vec::new());
    for row in &sheet.rows {
        match booking(row, columns) {
            Ok(booking) => read.push(booking),
            Err(words) => not_read.push(BankNotRead { line: row.line, words }),
        }
    }
    (read, not_read)
}

fn booking(row: &Row, columns: &BankColumns) -> Result<Booking, String> {
    let cell = |at: Option<usize>| at.and_then(|at| row.cells.get(at)).map_or("", String::as_str);
    let day = day(cell(columns.day), columns.dates)?;
    let (text, way) = match columns.money_in {
        None => (cell(columns.amount), None),
        Some(_) => {
            let nothing = |text: &str| !text.bytes().any(|b| (b'1'..=b'9').contains(&b));
            let (came, went) = (cell(columns.money_in), cell(columns.money_out));
            match (nothing(came), nothing(went)) {
                (false, true) => (came, Some(Way::In)),
                (true, false) => (went, Some(Way::Out)),
                (false, false) => {
                    return Err("It has both what came in and what went out.".to_owned());
                }
                (true, true) => (if came.is_empty() { went } else { came }, Some(Way::In)),
            }
        }
    };
    if text.is_empty() {
        return Err("There is no amount on this line.".to_owned());
    }
    let own = match cell(columns.currency) {
        "" => None,
        code => Some(Currency::parse(code).ok_or_else(|| format!("“{code}” is no currency."))?),
    };
    let inside = amounts::currency_in(text);
    if let (Some(own), Some(inside)) = (own, inside)
        && own != inside
    {
        return Err(format!("The amount “{text}” is in another currency than {}.", own.code()));
    }
    let currency = own
        .or(inside)
        .or_else(|| Currency::parse(&columns.one_currency))
        .ok_or("The currency of this line is not known.")?;
    let minor = amounts::minor(text, columns.decimals, currency)?;
    if minor == 0 {
        return Err("The amount is 0.".to_owned());
    }
    let way = match (way, columns.side) {
        // What went out may be written with a minus in its own column, what came in may not.
        (Some(Way::Out), _) => Way::Out,
        (Some(_), _) if minor > 0 => Way::In,
        (Some(_), _) => return Err(format!("“{text}” came in, and is below 0.")),
        (None, Some(at)) => {
            let said = cell(Some(at));
            side(said)
                .ok_or_else(|| format!("“{said}” does not say whether it came in or went out."))?
        }
        (None, None) if minor < 0 => Way::Out,
        (None, None) => Way::In,
    };
    if columns.side.is_some() && minor < 0 && way == Way::In {
        return Err(format!("“{text}” came in, and is below 0."));
    }
    Ok(Booking {
        line: row.line,
        account: String::new(),
        day,
        currency,
        amount: minor.abs(),
        way,
        name: line(cell(columns.name)),
        words: line(cell(columns.words)),
        bank_reference: line(cell(columns.reference)),
        structured: String::new(),
    })
}

fn day(cell: &str, order: DateOrder) -> Result<Day, String> {
    if cell.is_empty() {
        return Err("There is no day on this line.".to_owned());
    }
    if let Some(day) = compact(cell) {
        return Ok(day);
    }
    let date = dates::date(date_in(cell), order, DateEvidence::NotNeeded)
        .map_err(|(_, words)| format!("{words}."))?;
    Day::from_date(date).ok_or_else(|| format!("“{cell}” is no day of the calendar."))
}
