//! Bank statements: read in the ways banks write them, each row with what it may be, entered once.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use std::time::{Duration, Instant};

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use carryover_core::commands::check;
use carryover_core::error::Error;
use encoding_rs::WINDOWS_1252;
use serde_json::{Value, json};
use world::{World, codes, id, problems, text};

/// A coach in business, on 30 April 2026.
fn business() -> World {
    let mut w = World::new();
    w.on("2026-03-01");
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "tax_id": "IE 77/123",
                "account": "DE33100205000001194700", "prices": "gross" }),
    );
    w.act("prices.set_tax", json!({ "category": "S", "rate": "19" }));
    w
}

fn payer(w: &mut World, name: &str) -> String {
    let student = w.student(name);
    let payer = w.act("payers.choose", json!({ "student": student }));
    let form = json!({ "name": name, "address": "2 Mole Road\nSaltmere", "country": "IE" });
    w.act("payers.change", json!({ "id": payer["id"], "payer": form }));
    id(&payer, "/id")
}

/// An issued invoice over so much; its id and number.
fn invoice(w: &mut World, payer: &str, currency: &str, price: &str) -> (String, String) {
    let line = json!({ "what": "analysis", "words": "A game", "price": price });
    let draft =
        w.act("invoices.draft", json!({ "payer": payer, "currency": currency, "lines": [line] }));
    let issued = w.act("invoices.issue", json!({ "invoice": draft["id"] }));
    (text(&issued["id"]), text(&issued["number"]))
}

fn look(w: &mut World, bytes: &[u8]) -> Value {
    w.act("bank.read", json!({ "content": STANDARD.encode(bytes) }))
}

/// The one code with which a file is refused.
fn refused(w: &mut World, bytes: &[u8]) -> String {
    let error = w.refused("bank.read", json!({ "content": STANDARD.encode(bytes) }));
    let [(field, code)] = &codes(&error)[..] else { panic!("{error}") };
    assert_eq!(field, "content");
    code.clone()
}

fn rows(statement: &Value) -> &Vec<Value> {
    assert_eq!(statement["asks"], json!([]), "nothing is asked");
    statement["rows"].as_array().unwrap()
}

/// A row as it is proposed, to be entered.
fn as_proposed(row: &Value) -> Value {
    json!({
        "reference": row["reference"], "day": row["day"], "currency": row["currency"], "amount": row["amount"],
        "words": row["words"], "payer": row["proposal"]["payer"], "invoices": row["proposal"]["invoices"],
        "keep": row["proposal"]["keep"],
    })
}

fn sure(statement: &Value) -> Vec<Value> {
    let waits = |row: &&Value| row["state"] == "to_enter" && row["proposal"]["sure"] == true;
    rows(statement).iter().filter(waits).map(as_proposed).collect()
}

fn balanced(w: &mut World) {
    let found = w.act("accounts.balanced", json!({}));
    assert_eq!(found["wrong"], json!([]), "the ledger balances after everything");
    assert!(check(&w.file).unwrap().sound);
}

fn open_of(w: &mut World, invoice: &str) -> String {
    text(&w.act("invoices.show", json!({ "invoice": invoice }))["open"])
}

fn why(row: &Value) -> &str {
    row["proposal"]["why"].as_str().unwrap()
}

const HEAD: &str = "Date;Payer;Description;Amount;Currency\n";

fn csv(lines: &[&str]) -> Vec<u8> {
    format!("{HEAD}{}\n", lines.join("\n")).into_bytes()
}

#[test]
fn rows_find_their_invoices_by_number_by_name_and_amount_and_by_name() {
    let mut w = business();
    let (ana, ben) = (payer(&mut w, "Ana Silva"), payer(&mut w, "Ben Okafor"));
    let (cleo, _) = (payer(&mut w, "Cléo Müller"), payer(&mut w, "Dan Reed"));
    let (a1, n1) = invoice(&mut w, &ana, "EUR", "100.00");
    let (a2, n2) = invoice(&mut w, &ana, "EUR", "40.00");
    let (b1, n3) = invoice(&mut w, &ben, "EUR", "75.00");
    let (c1, _) = invoice(&mut w, &cleo, "EUR", "60.00");
    let (c2, _) = invoice(&mut w, &cleo, "EUR", "60.00");
    w.on("2026-04-30");
    let spaced = n1.replace('-', " ");
    let joined = format!("re{}", n3.replace('-', ""));
    let file = csv(&[
        &format!("2026-04-01;Somebody Else;Invoice {spaced} thanks;100.00;EUR"),
        &format!("2026-04-02;Okafor;{joined};50.00;EUR"),
        "2026-04-03;SILVA ANA;lessons;40.00;EUR",
        "2026-04-04;Cleo Mueller;;60.00;EUR",
        "2026-04-05;Cleo Mueller;;120.00;EUR",
        "2026-04-06;Nobody Known;;75.00;EUR",
        "2026-04-07;Nobody Known;;1.00;EUR",
        "2026-04-08;Dan Reed;thank you;30.00;EUR",
        &format!("2026-04-09;Nobody Known;{n1}1 {n1};9.00;EUR"),
        &format!("2026-04-10;Ana Silva;both {n2} and {n3};115.00;EUR"),
        "2026-04-11;Ben Okafor;balls;-12.00;EUR",
    ]);
    let seen = look(&mut w, &file);
    let rows = rows(&seen);
    assert_eq!(rows.len(), 11);
    let want = [
        (true, Some(&ana), vec![&a1], "and the amount is what is open"),
        (false, Some(&ben), vec![&b1], "75.00 EUR is open: paid in part"),
        (true, Some(&ana), vec![&a2], "the amount is what is open on"),
        (false, Some(&cleo), vec![], "alike: choose"),
        (true, Some(&cleo), vec![&c1, &c2], "the amount is that of"),
        (false, Some(&ben), vec![&b1], "Only the amount fits"),
        (false, None, vec![], "Neither the name nor the amount is known"),
        (false, None, vec![], "kept for later"),
    ];
    for (row, (sure, payer, invoices, words)) in rows.iter().zip(want) {
        let p = &row["proposal"];
        assert!(why(row).contains(words), "{words} in {row}");
        assert_eq!(p["sure"], sure, "{row}");
        if words != "kept for later" {
            assert_eq!(p["payer"], json!(payer), "{row}");
        }
        assert_eq!(p["invoices"], json!(invoices), "{row}");
    }
    assert_eq!(rows[7]["proposal"]["keep"], true);
    assert!(why(&rows[8]).contains("where nothing is open"), "paid by the first row: {}", rows[8]);
    assert_eq!(rows[8]["proposal"]["sure"], false);
    assert!(why(&rows[9]).contains("nothing is open") || why(&rows[9]).contains("choose"));
    assert_eq!(rows[10]["state"], "out");

    let entered = w.act("bank.enter", json!({ "rows": sure(&seen) }));
    assert_eq!(entered["words"], "3 payments entered, 260.00 EUR.");
    for (paid, open) in [(&a1, "0.00"), (&a2, "0.00"), (&b1, "75.00"), (&c1, "0.00"), (&c2, "0.00")]
    {
        assert_eq!(open_of(&mut w, paid), open);
    }
    balanced(&mut w);
    let lines = w.act("payments.account", json!({ "payer": ana }))["lines"].clone();
    assert!(lines.to_string().contains(&format!("Payment by transfer: Invoice {spaced} thanks")));

    // The same file once more, and one that overlaps it.
    let again = look(&mut w, &file);
    let states: Vec<&Value> =
        again["rows"].as_array().unwrap().iter().map(|r| &r["state"]).collect();
    assert_eq!(states[..5], ["entered", "to_enter", "entered", "to_enter", "entered"]);
    let twice =
        w.refused("bank.enter", json!({ "rows": [as_proposed(&rows[5]), as_proposed(&rows[0])] }));
    assert_eq!(codes(&twice), [("rows[1].reference".into(), "entered".into())]);
    assert_eq!(open_of(&mut w, &b1), "75.00", "nothing of a refused act is entered");
    balanced(&mut w);
}

#[test]
fn equal_rows_are_two_payments_and_never_four() {
    let mut w = business();
    let ana = payer(&mut w, "Ana Silva");
    invoice(&mut w, &ana, "EUR", "55.00");
    invoice(&mut w, &ana, "EUR", "55.00");
    w.on("2026-04-30");
    let line = "2026-04-01;Ana Silva;lesson;55.00;EUR";
    let all = |w: &mut World, file: &[u8]| {
        let seen = look(w, file);
        let waiting: Vec<Value> = seen["rows"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|row| row["state"] == "to_enter")
            .map(as_proposed)
            .map(|mut row| {
                row["payer"] = json!(ana);
                row["invoices"] = json!([]);
                row
            })
            .collect();
        if !waiting.is_empty() {
            w.act("bank.enter", json!({ "rows": waiting }));
        }
        waiting.len()
    };
    assert_eq!(all(&mut w, &csv(&[line])), 1);
    assert_eq!(
        all(&mut w, &csv(&["2026-03-01;Cleo;;1.00;EUR", line, line])),
        2,
        "the new one, and Cleo's"
    );
    assert_eq!(all(&mut w, &csv(&[line, line])), 0);
    let account = w.act("payments.account", json!({ "payer": ana }));
    assert_eq!(account["standing"][0]["open"], "0.00");
    assert_eq!(account["standing"][0]["kept"], "1.00");
    balanced(&mut w);

    // What was taken back can be entered again, under the next reference, once.
    let entry =
        account["lines"].as_array().unwrap().iter().find(|l| l["amount"] == "-55.00").unwrap();
    w.act("payments.take_back", json!({ "entry": entry["entry"], "reason": "Another payer" }));
    assert_eq!(all(&mut w, &csv(&[line, line])), 1);
    assert_eq!(all(&mut w, &csv(&[line, line])), 0);
    balanced(&mut w);
}

#[test]
fn a_payment_entered_by_hand_is_not_proposed_again_as_sure() {
    let mut w = business();
    let ana = payer(&mut w, "Ana Silva");
    invoice(&mut w, &ana, "EUR", "55.00");
    invoice(&mut w, &ana, "EUR", "55.00");
    w.on("2026-04-30");
    let by_hand = json!({ "payer": ana, "day": "2026-04-02", "method": "transfer", "currency": "EUR", "amount": "55" });
    w.act("payments.receive", by_hand);
    let seen =
        look(&mut w, &csv(&["2026-04-01;Ana Silva;;55.00;EUR", "2026-04-20;Ana Silva;;55.00;EUR"]));
    assert!(why(&seen["rows"][0]).contains("is entered on 2 April 2026: it may be this one"));
    assert_eq!(seen["rows"][0]["proposal"]["sure"], false);
    assert_eq!(seen["rows"][1]["proposal"]["sure"], true, "18 days later it is another one");
}

#[test]
fn what_cannot_be_entered_is_told_by_its_field_and_nothing_is() {
    let mut w = business();
    let ana = payer(&mut w, "Ana Silva");
    let (dollars, _) = invoice(&mut w, &ana, "USD", "20.00");
    w.on("2026-04-10");
    let row = |reference: &str, day: &str, more: Value| {
        let mut row = json!({ "reference": reference, "day": day, "currency": "EUR", "amount": "20.00", "payer": ana });
        row.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        row
    };
    let error = w.refused(
        "bank.enter",
        json!({ "rows": [
            row("a", "2026-04-01", json!({})),
            row("b", "2026-04-11", json!({})),
            row("c", "2026-04-01", json!({ "invoices": [dollars] })),
            row("d", "2026-04-01", json!({ "payer": null })),
            row("a", "2026-04-01", json!({})),
            row("e", "", json!({})),
            row("", "2026-04-01", json!({})),
            row("f", "2026-04-01", json!({ "amount": "0" })),
            row("g", "2026-04-01", json!({ "payer": "01890000-0000-7000-8000-000000000000" })),
        ] }),
    );
    let told: Vec<(String, String)> = codes(&error);
    let want = [
        ("rows[1].day", "in_future"),
        ("rows[2].invoices[0].invoice", "other_currency"),
        ("rows[3].payer", "empty"),
        ("rows[4].reference", "twice"),
        ("rows[5].day", "empty"),
        ("rows[6].reference", "empty"),
        ("rows[7].amount", "nothing"),
        ("rows[8].payer", "not_found"),
    ];
    assert_eq!(told, want.map(|(field, code)| (field.to_owned(), code.to_owned())));
    assert!(problems(&error)[1].1.contains("cannot settle it"), "in the payment's own words");
    assert_eq!(w.act("payments.account", json!({ "payer": ana }))["standing"][0]["kept"], "0.00");
    let none = w.refused("bank.enter", json!({ "rows": [] }));
    assert_eq!(codes(&none), [("rows".into(), "none".into())]);
    let kept = w.act("bank.enter", json!({ "rows": [row("h", "2026-04-01", json!({ "keep": true, "words": "é".repeat(500) }))] }));
    assert!(kept["rows"][0]["words"].as_str().unwrap().contains("20.00 EUR is kept for later"));
    balanced(&mut w);
}

#[test]
fn encodings_are_told_apart() {
    let mut w = business();
    let text = format!("{HEAD}2026-04-01;Jörg Müller;Überweisung für März;55.00;EUR\n");
    let utf16 = |big: bool| -> Vec<u8> {
        let units = std::iter::once(0xFEFF).chain(text.encode_utf16());
        units
            .flat_map(|unit: u16| if big { unit.to_be_bytes() } else { unit.to_le_bytes() })
            .collect()
    };
    for (what, bytes) in [
        ("UTF-8", text.clone().into_bytes()),
        ("UTF-8 with its mark", format!("\u{feff}{text}").into_bytes()),
        ("UTF-16, little end first", utf16(false)),
        ("UTF-16, big end first", utf16(true)),
        ("Windows-1252", WINDOWS_1252.encode(&text).0.into_owned()),
    ] {
        let seen = look(&mut w, &bytes);
        assert_eq!(rows(&seen)[0]["name"], "Jörg Müller", "{what}");
        assert_eq!(rows(&seen)[0]["words"], "Überweisung für März", "{what}");
    }
}

#[test]
fn a_choice_is_remembered_for_the_next_file_of_the_same_bank() {
    let mut w = business();
    let ana = payer(&mut w, "Ana Silva");
    w.on("2026-04-30");
    let file = |day: &str| format!("Wann,Wer,Wieviel\n{day},Ana Silva,12.50\n").into_bytes();
    let seen = look(&mut w, &file("03/04/2026"));
    assert_eq!(
        seen["asks"].as_array().unwrap().iter().map(|a| text(&a["field"])).collect::<Vec<_>>(),
        ["dates", "one_currency"]
    );
    assert_eq!(seen["rows"], json!([]), "nothing is guessed");
    assert_eq!(seen["first_rows"], json!([["03/04/2026", "Ana Silva", "12.50"]]));
    let columns = json!({ "day": 0, "name": 1, "amount": 2, "one_currency": "EUR", "dates": "day_month_year" });
    let content = STANDARD.encode(file("03/04/2026"));
    let seen = w.act("bank.read", json!({ "content": content, "columns": columns }));
    assert_eq!(rows(&seen)[0]["day"], "2026-04-03");
    let mut row = as_proposed(&rows(&seen)[0]);
    row["payer"] = json!(ana);
    w.act(
        "bank.enter",
        json!({ "rows": [row], "layout": { "head": seen["head"], "columns": seen["columns"] } }),
    );
    let next = look(&mut w, &file("04/04/2026"));
    assert_eq!(next["remembered"], true);
    assert_eq!(rows(&next)[0]["day"], "2026-04-04");
    let other = look(&mut w, b"Wann,Wer,Wie viel\n04/04/2026,Ana Silva,12.50\n");
    assert_eq!(other["remembered"], false, "another head is another bank");
    balanced(&mut w);
}

/// A camt.053 in the shapes of three versions, made from the message definition report.
fn camt(version: &str, entries: &str) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<Document xmlns=\"urn:iso:std:iso:20022:tech:xsd:camt.053.001.{version}\">\
         <BkToCstmrStmt><GrpHdr><MsgId>M</MsgId><CreDtTm>2026-04-30T10:00:00</CreDtTm></GrpHdr>\
         <Stmt><Id>S</Id><CreDtTm>2026-04-30T10:00:00</CreDtTm>\
         <Acct><Id><IBAN>DE33100205000001194700</IBAN></Id></Acct>\n{entries}</Stmt></BkToCstmrStmt></Document>"
    )
}

struct Shape {
    version: &'static str,
    /// Whether a status has a code of its own element, an amount of a part stands in it, a party too.
    newer: bool,
}

const SHAPES: [Shape; 3] = [
    Shape { version: "02", newer: false },
    Shape { version: "08", newer: true },
    Shape { version: "13", newer: true },
];

impl Shape {
    fn entry(&self, amount: &str, side: &str, more: &str, details: &str) -> String {
        let status = if self.newer { "<Cd>BOOK</Cd>" } else { "BOOK" };
        format!(
            "<Ntry><Amt Ccy=\"EUR\">{amount}</Amt><CdtDbtInd>{side}</CdtDbtInd>{more}<Sts>{status}</Sts>\
             <BookgDt><Dt>2026-04-02</Dt></BookgDt><AcctSvcrRef>R-{amount}</AcctSvcrRef>\
             <NtryDtls>{details}</NtryDtls></Ntry>\n"
        )
    }

    fn part(&self, amount: &str, name: &str, words: &str) -> String {
        let (own, inside) = if self.newer {
            (format!("<Amt Ccy=\"EUR\">{amount}</Amt><CdtDbtInd>CRDT</CdtDbtInd>"), String::new())
        } else {
            (
                String::new(),
                format!("<AmtDtls><TxAmt><Amt Ccy=\"EUR\">{amount}</Amt></TxAmt></AmtDtls>"),
            )
        };
        let name = if self.newer {
            format!("<Pty><Nm>{name}</Nm></Pty>")
        } else {
            format!("<Nm>{name}</Nm>")
        };
        format!(
            "<TxDtls><Refs><EndToEndId>NOTPROVIDED</EndToEndId></Refs>{own}{inside}\
             <RltdPties><Dbtr>{name}</Dbtr></RltdPties><RmtInf>{words}</RmtInf></TxDtls>"
        )
    }
}

#[test]
fn camt_is_read_in_its_versions() {
    for shape in SHAPES {
        let mut w = business();
        let ana = payer(&mut w, "Ana & Rui <Silva>");
        let (own, number) = invoice(&mut w, &ana, "EUR", "100.00");
        w.on("2026-04-30");
        let structured = format!(
            "<Ustrd>Lessons</Ustrd><Ustrd>of March</Ustrd><Strd><CdtrRefInf><Ref>{number}</Ref></CdtrRefInf></Strd>"
        );
        let mut entries = shape.entry(
            "100.00",
            "CRDT",
            "",
            &shape.part("100.00", "Ana &amp; Rui &lt;Silva&gt;", &structured),
        );
        // A batch of two, whose parts come to the whole; one whose parts do not.
        let batch = [("30.00", "Ben Okafor"), ("20.50", "Cleo")]
            .map(|(sum, name)| shape.part(sum, name, "<Ustrd>x</Ustrd>"));
        entries += &shape.entry("50.50", "CRDT", "", &batch.concat());
        entries += &shape.entry("51.50", "CRDT", "", &batch.concat());
        entries += &shape.entry("12.00", "DBIT", "", "");
        entries += &shape.entry("13.00", "DBIT", "<RvslInd>true</RvslInd>", "");
        entries += &shape.entry("14.00", "CRDT", "<RvslInd>false</RvslInd>", "");
        entries += &shape.entry("15.00", "CRDT", "", "").replace("BOOK", "PDNG");
        entries += &shape.entry("0.001", "CRDT", "", "");
        let file = camt(shape.version, &entries);
        let seen = look(&mut w, file.as_bytes());
        assert_eq!(seen["kind"], "camt");
        assert!(text(&seen["words"]).contains(&format!("camt.053.001.{}", shape.version)));
        assert_eq!(seen["pending"], 1);
        assert_eq!(seen["not_read"].as_array().unwrap().len(), 1);
        assert_eq!(seen["not_read"][0]["line"], 10, "the line of the entry");
        let got: Vec<(String, String, String)> = rows(&seen)
            .iter()
            .map(|r| (text(&r["amount"]), text(&r["state"]), text(&r["name"])))
            .collect();
        let want = [
            ("100.00", "to_enter", "Ana & Rui <Silva>"),
            ("30.00", "to_enter", "Ben Okafor"),
            ("20.50", "to_enter", "Cleo"),
            ("51.50", "to_enter", ""),
            ("12.00", "out", ""),
            ("13.00", "reversal", ""),
            ("14.00", "to_enter", ""),
        ];
        assert_eq!(
            got,
            want.map(|(a, b, c)| (a.to_owned(), b.to_owned(), c.to_owned())),
            "{}",
            shape.version
        );
        let row = &rows(&seen)[0];
        assert_eq!(row["words"], format!("Lessons of March {number}"));
        assert_eq!(row["bank_reference"], "R-100.00");
        assert_eq!(row["proposal"]["invoices"], json!([own]));
        assert_eq!(row["proposal"]["sure"], true);
        assert!(text(&rows(&seen)[3]["words"]).contains("2 payments in one"));
        w.act("bank.enter", json!({ "rows": sure(&seen) }));
        assert_eq!(open_of(&mut w, &own), "0.00");
        // The next month's file overlaps.
        let seen = look(&mut w, file.replace("<Id>S</Id>", "<Id>T</Id>").as_bytes());
        assert_eq!(rows(&seen)[0]["state"], "entered");
        balanced(&mut w);
    }
}

#[test]
fn camt_in_another_encoding_is_read_by_its_declaration() {
    let mut w = business();
    let shape = &SHAPES[0];
    let part = shape.part("10.00", "Jörg Müller", "<Ustrd>März</Ustrd>");
    let file = camt("02", &shape.entry("10.00", "CRDT", "", &part));
    let latin = file.replace("UTF-8", "ISO-8859-1");
    let wide = file.replace("UTF-8", "UTF-16");
    let wide: Vec<u8> = wide.encode_utf16().flat_map(u16::to_be_bytes).collect();
    for bytes in [file.clone().into_bytes(), WINDOWS_1252.encode(&latin).0.into_owned(), wide] {
        let seen = look(&mut w, &bytes);
        assert_eq!(rows(&seen)[0]["name"], "Jörg Müller");
    }
    // Bytes that are none of what the declaration says.
    assert_eq!(refused(&mut w, &WINDOWS_1252.encode(&file).0), "encoding");
}

#[test]
fn what_is_no_statement_is_told_and_not_read() {
    let mut w = business();
    let whole = camt("08", &SHAPES[1].entry("10.00", "CRDT", "", ""));
    let other = |root: &str| format!("<Document><{root}/></Document>").into_bytes();
    let laughs = format!("<!DOCTYPE a [<!ENTITY x \"y\">]>{}", whole.split_once("?>").unwrap().1);
    for (bytes, code) in [
        (&whole.as_bytes()[..whole.len() / 2], "cut_short"),
        (&whole.as_bytes()[..whole.len() - 4], "cut_short"),
        (&other("BkToCstmrAcctRpt"), "camt_052"),
        (&other("BkToCstmrDbtCdtNtfctn"), "camt_054"),
        (&other("CstmrCdtTrfInitn"), "no_statement"),
        (b"<html><body/></html>", "no_statement"),
        (b"<a><b></a>", "no_xml"),
        (laughs.as_bytes(), "document_type"),
        (b"PK\x03\x04rest", "archive"),
        (b"%PDF-1.7", "pdf"),
        (b":20:STARTUMS", "mt940"),
        (b"", "empty"),
        (b"Just words", "no_table"),
        (b"\x00\x01\x02\x03", "unreadable"),
        (&[b'a'; 5 * 1024 * 1024 + 3], "too_large"),
    ] {
        let got = refused(&mut w, bytes);
        let shown = String::from_utf8_lossy(&bytes[..bytes.len().min(60)]).into_owned();
        assert_eq!(got, code, "{shown}");
    }
    let error = w.refused("bank.read", json!({ "content": "no base64!" }));
    assert_eq!(codes(&error), [("content".into(), "no_base64".into())]);
    let deep = format!("{}{}", "<a>".repeat(200_000), "</a>".repeat(200_000));
    assert_eq!(refused(&mut w, deep.as_bytes()), "no_statement", "depth takes nothing down");
}

#[test]
fn three_thousand_rows_are_read_in_reasonable_time() {
    let mut w = business();
    let names: Vec<String> = (0..60).map(|n| format!("Player{n} Family{n}")).collect();
    let payers: Vec<String> = names.iter().map(|name| payer(&mut w, name)).collect();
    for payer in &payers {
        invoice(&mut w, payer, "EUR", "55.00");
    }
    w.on("2026-04-30");
    let line = |n: usize| {
        format!(
            "2026-04-{:02};{};lesson {n} of many, with thanks;55.00;EUR",
            n % 28 + 1,
            names[n % 60]
        )
    };
    let lines: Vec<String> = (0..3000).map(line).collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let file = csv(&lines);
    let begun = Instant::now();
    let seen = look(&mut w, &file);
    let took = begun.elapsed();
    assert_eq!(rows(&seen).len(), 3000);
    assert!(took < Duration::from_secs(15), "{took:?}");
    let sure = sure(&seen);
    assert_eq!(sure.len(), 60, "each invoice is paid by one row, the others are not sure");
    w.act("bank.enter", json!({ "rows": sure }));
    let open = w.act("invoices.list", json!({ "open": true }));
    assert_eq!(open["invoices"], json!([]));
    balanced(&mut w);
    let error = w.refused("bank.enter", json!({ "rows": sure }));
    assert!(matches!(&error, Error::Refused(problems) if problems.len() == 60));
}
