//! ISO 20022 camt.053, the bank-to-customer statement, in its versions from .02 on: elements by their
//! local names, since the namespaces differ by the version alone. Only what the bank has booked counts.

use encoding_rs::{Encoding, UTF_8, UTF_16BE, UTF_16LE};
use roxmltree::{Document, Node, ParsingOptions};

use super::{BankNotRead, Booking, MOST_ROWS, Way};
use crate::error::{Error, Result};
use crate::kinds::text::line;
use crate::kinds::{Currency, Day};

/// Elements and texts in one file.
const NODES: u32 = 3_000_000;

/// What a statement holds.
pub(super) struct Camt {
    /// "camt.053.001.08", as the file names itself.
    pub version: String,
    pub accounts: Vec<String>,
    pub bookings: Vec<Booking>,
    pub not_read: Vec<BankNotRead>,
    /// Entries that are not booked yet.
    pub pending: u32,
}

/// Whether bytes are XML, in whatever encoding.
pub(super) fn is_xml(bytes: &[u8]) -> bool {
    let signs =
        bytes.iter().take(200).filter(|b| !matches!(b, 0 | 0xEF | 0xBB | 0xBF | 0xFE | 0xFF));
    signs.copied().find(|b| !b.is_ascii_whitespace()) == Some(b'<')
}

/// The text in the bytes of an XML file, by its mark or its declaration (XML 1.0, appendix F).
fn text_of(bytes: &[u8]) -> Result<String> {
    let encoding = match bytes {
        [b'<', 0, ..] => UTF_16LE,
        [0, b'<', ..] => UTF_16BE,
        _ => Encoding::for_bom(bytes).map_or_else(|| declared(bytes), |(encoding, _)| encoding),
    };
    let (text, wrong) = encoding.decode_with_bom_removal(bytes);
    if wrong {
        let words = format!(
            "The file has signs that {} does not have, which it says it is written in. Get it from the bank once more.",
            encoding.name()
        );
        return Err(refused("encoding", words));
    }
    Ok(text.into_owned())
}

fn declared(bytes: &[u8]) -> &'static Encoding {
    let head: String = bytes.iter().take(200).map(|b| char::from(*b)).collect();
    let found = head.split_once("?>").and_then(|(declaration, _)| {
        let rest =
            declaration.split_once("encoding")?.1.trim_start().strip_prefix('=')?.trim_start();
        let quote = rest.chars().next().filter(|c| matches!(c, '"' | '\''))?;
        Encoding::for_label(rest.get(1..)?.split(quote).next()?.as_bytes())
    });
    // Who can be read as single bytes is not written in pairs of them.
    found.filter(|encoding| *encoding != UTF_16LE && *encoding != UTF_16BE).unwrap_or(UTF_8)
}

fn refused(code: &str, words: impl Into<String>) -> Error {
    Error::field("content", code, words)
}

/// Reads a statement.
///
/// # Errors
/// `Refused` when it is no whole XML, or something else than a statement.
pub(super) fn read(bytes: &[u8]) -> Result<Camt> {
    let text = text_of(bytes)?;
    let options = ParsingOptions { nodes_limit: NODES, ..ParsingOptions::default() };
    let document =
        Document::parse_with_options(&text, options).map_err(|e| unreadable(&text, &e))?;
    let root = document.root_element();
    let message = child(root, "BkToCstmrStmt").filter(|_| is(root, "Document"));
    let Some(message) = message else { return Err(something_else(root)) };
    let lines = Lines::of(&text);
    let namespace = root.tag_name().namespace().unwrap_or_default();
    let mut camt = Camt {
        version: namespace.rsplit(':').next().unwrap_or_default().to_owned(),
        accounts: Vec::new(),
        bookings: Vec::new(),
        not_read: Vec::new(),
        pending: 0,
    };
    for statement in children(message, "Stmt") {
        let account = ["Acct/Id/IBAN", "Acct/Id/Othr/Id", "Acct/Id/PrtryAcct/Id", "Acct/Id/BBAN"]
            .into_iter()
            .map(|path| text_at(statement, path))
            .find(|text| !text.is_empty())
            .unwrap_or_default();
        if !account.is_empty() && !camt.accounts.contains(&account) {
            camt.accounts.push(account.clone());
        }
        for entry in children(statement, "Ntry") {
            let at = lines.line(entry.range().start);
            let status = at_path(entry, "Sts").map(|status| {
                let code = text_at(status, "Cd");
                if code.is_empty() { text_in(status) } else { code }
            });
            if status.as_deref() != Some("BOOK") {
                camt.pending += 1;
                continue;
            }
            match bookings(entry, &account, at, &lines) {
                Ok(found) => camt.bookings.extend(found),
                Err(words) => camt.not_read.push(BankNotRead { line: at, words }),
            }
            if camt.bookings.len() > MOST_ROWS {
                let words =
                    format!("The file has more than {MOST_ROWS} rows. Take a shorter time.");
                return Err(refused("too_large", words));
            }
        }
    }
    Ok(camt)
}

fn unreadable(text: &str, error: &roxmltree::Error) -> Error {
    use roxmltree::Error as Xml;
    match error {
        Xml::DtdDetected => refused(
            "document_type",
            "The file carries a document type definition, which no bank statement has. It is not read.",
        ),
        // Whatever the reader stumbled over: a whole file ends with its last tag.
        Xml::UnclosedRootNode | Xml::UnexpectedEndOfStream | Xml::NoRootNode => cut_short(),
        _ if !text.trim_end().ends_with('>') => cut_short(),
        Xml::NodesLimitReached => {
            refused("too_large", "The file holds too much. Take a shorter time.")
        }
        other => refused(
            "no_xml",
            format!(
                "The file is broken at line {}, and nothing of it is read. Get it from the bank once more.",
                other.pos().row
            ),
        ),
    }
}

fn cut_short() -> Error {
    refused("cut_short", "The file ends half-way. Get it from the bank once more.")
}

/// What a file is that is no statement.
fn something_else(root: Node<'_, '_>) -> Error {
    let holds = |name: &str| child(root, name).is_some();
    if holds("BkToCstmrAcctRpt") {
        let words = "This is a report within the day (camt.052), whose rows may still change. Ask the bank for the statement, camt.053.";
        return refused("camt_052", words);
    }
    if holds("BkToCstmrDbtCdtNtfctn") {
        let words = "This is a notice of single bookings (camt.054). Ask the bank for the statement, camt.053.";
        return refused("camt_054", words);
    }
    let name = root.first_element_child().filter(|_| is(root, "Document")).unwrap_or(root);
    let name: String = name.tag_name().name().chars().take(40).collect();
    let words = format!(
        "This is no bank statement: it begins with “{name}”. A statement in XML is a camt.053; CSV will do as well."
    );
    refused("no_statement", words)
}

/// The rows of one entry: one, or one for each payment that came in it.
fn bookings(
    entry: Node<'_, '_>,
    account: &str,
    at: u32,
    lines: &Lines,
) -> std::result::Result<Vec<Booking>, String> {
    let (currency, amount) =
        amount_at(entry, "Amt").ok_or("The entry has no amount that can be read.")?;
    if amount == 0 {
        return Err("The amount is 0.".to_owned());
    }
    let day = day_at(entry, "BookgDt")
        .or_else(|| day_at(entry, "ValDt"))
        .ok_or("The entry has no day.")?;
    let way = match (text_at(entry, "CdtDbtInd").as_str(), text_at(entry, "RvslInd").as_str()) {
        ("CRDT" | "DBIT", "true" | "1") => Way::Back,
        ("CRDT", _) => Way::In,
        ("DBIT", _) => Way::Out,
        _ => return Err("The entry does not say whether it came in or went out.".to_owned()),
    };
    let own = {
        let own = text_at(entry, "AcctSvcrRef");
        // A short number is a place in this file, not a name that holds in another.
        let counter = |text: &String| text.len() < 6 && text.bytes().all(|b| b.is_ascii_digit());
        if own.is_empty() {
            Some(text_at(entry, "NtryRef")).filter(|text| !counter(text)).unwrap_or_default()
        } else {
            own
        }
    };
    let parts: Vec<Node<'_, '_>> =
        children(entry, "NtryDtls").flat_map(|details| children(details, "TxDtls")).collect();
    let booking = |part: Option<Node<'_, '_>>, amount: i64, way: Way| {
        let mut reference = vec![own.clone()];
        reference.extend(part.map(reference_of));
        reference.retain(|one| !one.is_empty());
        reference.dedup();
        let additional = text_at(entry, "AddtlNtryInf");
        let words = part.map(words_of).filter(|words| !words.is_empty()).unwrap_or(additional);
        Booking {
            line: part.map_or(at, |part| lines.line(part.range().start)),
            account: account.to_owned(),
            day,
            currency,
            amount,
            way,
            name: part.map(name_of).unwrap_or_default(),
            words: line(&words),
            bank_reference: reference.join(" "),
            structured: part.map(structured_of).unwrap_or_default(),
        }
    };
    if let [] | [_] = parts.as_slice() {
        return Ok(vec![Booking { line: at, ..booking(parts.first().copied(), amount, way) }]);
    }
    // Parts count by themselves when they come to the whole.
    let mut shares = Vec::new();
    for part in &parts {
        let share = amount_at(*part, "Amt").or_else(|| amount_at(*part, "AmtDtls/TxAmt/Amt"));
        let against = text_at(*part, "CdtDbtInd");
        let turned = !against.is_empty() && against != text_at(entry, "CdtDbtInd");
        match share {
            Some((own, share)) if own == currency && share > 0 => {
                shares.push((*part, share, turned))
            }
            _ => break,
        }
    }
    let sum: i64 =
        shares.iter().map(|(_, share, turned)| if *turned { -share } else { *share }).sum();
    if shares.len() == parts.len() && sum == amount {
        return Ok(shares
            .into_iter()
            .map(|(part, share, turned)| {
                let way = match (way, turned) {
                    (Way::In, true) => Way::Out,
                    (Way::Out, true) => Way::In,
                    (way, _) => way,
                };
                booking(Some(part), share, way)
            })
            .collect());
    }
    let mut whole = booking(None, amount, way);
    whole.words = line(&format!(
        "{} payments in one, whose amounts the bank does not give. {}",
        parts.len(),
        whole.words
    ));
    Ok(vec![whole])
}

/// What names a payment: the bank\u{2019}s own reference of it, else what went with it from end to end.
fn reference_of(part: Node<'_, '_>) -> String {
    ["Refs/AcctSvcrRef", "Refs/TxId", "Refs/EndToEndId"]
        .into_iter()
        .map(|path| text_at(part, path))
        .find(|text| !text.is_empty() && text != "NOTPROVIDED")
        .unwrap_or_default()
}

fn name_of(part: Node<'_, '_>) -> String {
    [
        "RltdPties/Dbtr/Nm",
        "RltdPties/Dbtr/Pty/Nm",
        "RltdPties/UltmtDbtr/Nm",
        "RltdPties/UltmtDbtr/Pty/Nm",
        "RltdPties/InitgPty/Nm",
        "RltdPties/InitgPty/Pty/Nm",
    ]
    .into_iter()
    .map(|path| text_at(part, path))
    .find(|name| !name.is_empty())
    .unwrap_or_default()
}

/// What stood on it. A bank may cut one text into several, so they are put together again.
fn words_of(part: Node<'_, '_>) -> String {
    let mut said: Vec<String> = children(part, "RmtInf")
        .flat_map(|info| children(info, "Ustrd").collect::<Vec<_>>())
        .map(text_in)
        .collect();
    let structured = structured_of(part);
    if !structured.is_empty() {
        said.push(structured);
    }
    said.retain(|text| !text.is_empty());
    if said.is_empty() { text_at(part, "AddtlTxInf") } else { said.join(" ") }
}

/// References that the payer gave in a field of its own.
fn structured_of(part: Node<'_, '_>) -> String {
    let found: Vec<String> = children(part, "RmtInf")
        .flat_map(|info| children(info, "Strd").collect::<Vec<_>>())
        .flat_map(|one| {
            let documents = children(one, "RfrdDocInf").map(|document| text_at(document, "Nb"));
            std::iter::once(text_at(one, "CdtrRefInf/Ref")).chain(documents).collect::<Vec<_>>()
        })
        .filter(|text| !text.is_empty())
        .collect();
    found.join(" ")
}

fn is(node: Node<'_, '_>, name: &str) -> bool {
    node.is_element() && node.tag_name().name() == name
}

fn children<'a, 'i: 'a>(
    node: Node<'a, 'i>,
    name: &'static str,
) -> impl Iterator<Item = Node<'a, 'i>> {
    node.children().filter(move |child| is(*child, name))
}

fn child<'a, 'i: 'a>(node: Node<'a, 'i>, name: &str) -> Option<Node<'a, 'i>> {
    node.children().find(|child| is(*child, name))
}

fn at_path<'a, 'i: 'a>(node: Node<'a, 'i>, path: &str) -> Option<Node<'a, 'i>> {
    path.split('/').try_fold(node, child)
}

/// The whole text in an element, entities and CDATA read.
fn text_in(node: Node<'_, '_>) -> String {
    let text: String = node.children().filter_map(|part| part.text()).collect();
    line(&text)
}

fn text_at(node: Node<'_, '_>, path: &str) -> String {
    at_path(node, path).map(text_in).unwrap_or_default()
}

fn amount_at(node: Node<'_, '_>, path: &str) -> Option<(Currency, i64)> {
    let amount = at_path(node, path)?;
    let currency = Currency::parse(amount.attribute("Ccy")?)?;
    let text = text_in(amount);
    // A comma is none of XML's decimals.
    (!text.contains(',')).then(|| currency.minor(&text)).flatten().map(|minor| (currency, minor))
}

fn day_at(node: Node<'_, '_>, path: &str) -> Option<Day> {
    let at = at_path(node, path)?;
    let text = Some(text_at(at, "Dt")).filter(|text| !text.is_empty());
    let text = text.unwrap_or_else(|| text_at(at, "DtTm"));
    // A day may carry a zone after it, a moment its time.
    Day::parse(text.get(..10)?)
}

/// Where lines begin, so that a place is found without reading the text again.
struct Lines(Vec<usize>);

impl Lines {
    fn of(text: &str) -> Self {
        Self(text.match_indices('\n').map(|(at, _)| at).collect())
    }

    fn line(&self, at: usize) -> u32 {
        u32::try_from(self.0.partition_point(|end| *end < at) + 1).unwrap_or(u32::MAX)
    }
}
