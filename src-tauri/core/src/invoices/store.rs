//! All SQL of invoices.

use rusqlite::{Row, named_params, params};

use super::{DocumentKind, InvoiceExtra, InvoiceLine};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{InvoiceId, InvoiceLineId, PackageId, PayerId, ReminderId};
use crate::kinds::{Currency, Day, Instant};
use crate::money::Prices;

/// The row of an invoice.
#[derive(Clone, Debug)]
pub(super) struct Head {
    pub id: InvoiceId,
    pub kind: DocumentKind,
    pub payer: PayerId,
    pub corrects: Option<InvoiceId>,
    pub currency: String,
    pub prices: Prices,
    pub words: String,
    pub step: Option<i64>,
    pub number: Option<String>,
    pub day: Option<Day>,
    pub due: Option<Day>,
    pub paper: Option<String>,
    /// With tax and rounded, as issued.
    pub payable: i64,
    /// What is still to be paid.
    pub open: i64,
    /// The name of the payer now.
    pub payer_name: String,
}

/// What is frozen.
pub(super) struct Frozen {
    pub series: String,
    pub place: i64,
    pub number: String,
    pub day: Day,
    pub due: Day,
    pub issued: Instant,
    pub paper: String,
    pub net: i64,
    pub tax: i64,
    pub gross: i64,
    pub rounding: i64,
}

/// A line, read and ready to be kept.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub what: crate::prices::What,
    pub words: String,
    pub day: Option<Day>,
    pub facility: Option<crate::kinds::ids::FacilityId>,
    pub quantity: String,
    pub price: String,
    pub allowance: i64,
    pub reason: String,
    pub category: Option<crate::money::Category>,
    pub rate: Option<String>,
    pub why: String,
    pub package: Option<PackageId>,
    pub lessons: Option<i64>,
    pub corrects: Option<InvoiceLineId>,
}

/// What is taken off the whole or put on it, read and ready to be kept.
#[derive(Clone, Debug)]
pub(super) struct Extra {
    pub takes_off: bool,
    pub words: String,
    pub amount: i64,
    pub category: Option<crate::money::Category>,
    pub rate: Option<String>,
    pub why: String,
}

/// The structured files of an issued document.
pub(super) struct Files {
    pub ubl: Option<String>,
    pub cii: Option<String>,
    /// Why there are none, a line each.
    pub lacks: String,
}

pub(super) struct NewHead<'a> {
    pub kind: DocumentKind,
    pub payer: PayerId,
    pub corrects: Option<InvoiceId>,
    pub currency: &'a str,
    pub prices: Prices,
    pub words: &'a str,
    pub step: Option<i64>,
}

pub(super) fn insert(db: &Writing<'_>, id: InvoiceId, head: &NewHead<'_>) -> Result<()> {
    db.execute(
        "INSERT INTO invoice (id, kind, payer, corrects, currency, prices, words, step)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            head.kind,
            head.payer,
            head.corrects,
            head.currency,
            head.prices,
            head.words,
            head.step
        ],
    )?;
    Ok(())
}

pub(super) fn update(
    db: &Writing<'_>,
    id: InvoiceId,
    prices: Prices,
    words: &str,
    step: Option<i64>,
) -> Result<()> {
    db.execute(
        "UPDATE invoice SET prices = ?, words = ?, step = ? WHERE id = ?",
        params![prices, words, step, id],
    )?;
    Ok(())
}

pub(super) fn put_line(
    db: &Writing<'_>,
    invoice: InvoiceId,
    id: InvoiceLineId,
    place: i64,
    line: &Line,
) -> Result<()> {
    db.execute(
        "INSERT INTO invoice_line (id, invoice, place, what, words, day, facility, quantity, price, allowance,
                                   reason, category, rate, why, package, lessons, corrects)
         VALUES (:id, :invoice, :place, :what, :words, :day, :facility, :quantity, :price, :allowance,
                 :reason, :category, :rate, :why, :package, :lessons, :corrects)
         ON CONFLICT (id) DO UPDATE SET place = excluded.place, what = excluded.what, words = excluded.words,
           day = excluded.day, facility = excluded.facility, quantity = excluded.quantity,
           price = excluded.price, allowance = excluded.allowance, reason = excluded.reason,
           category = excluded.category, rate = excluded.rate, why = excluded.why",
        named_params! {
            ":id": id, ":invoice": invoice, ":place": place, ":what": line.what, ":words": line.words,
            ":day": line.day, ":facility": line.facility, ":quantity": line.quantity,
            ":price": line.price, ":allowance": line.allowance, ":reason": line.reason,
            ":category": line.category, ":rate": line.rate, ":why": line.why, ":package": line.package,
            ":lessons": line.lessons, ":corrects": line.corrects,
        },
    )?;
    Ok(())
}

/// Moves all lines of a draft out of the way, so that their places can be taken anew.
pub(super) fn shift(db: &Writing<'_>, invoice: InvoiceId) -> Result<()> {
    db.execute("UPDATE invoice_line SET place = place + 100000 WHERE invoice = ?", [invoice])?;
    Ok(())
}

pub(super) fn next_place(db: &Reading<'_>, invoice: InvoiceId) -> Result<i64> {
    let last = db.one(
        "SELECT coalesce(max(place), 0) AS last FROM invoice_line WHERE invoice = ?",
        [invoice],
        |row| row.get::<_, i64>("last"),
    )?;
    Ok(last.unwrap_or_default() + 1)
}

/// Removes a line of a draft; lessons that it settled are to be settled again.
pub(super) fn remove_line(db: &Writing<'_>, line: InvoiceLineId) -> Result<()> {
    db.execute("DELETE FROM settled WHERE line = ?", [line])?;
    db.execute("UPDATE settled SET court = NULL WHERE court = ?", [line])?;
    db.execute("DELETE FROM invoice_line WHERE id = ?", [line])?;
    Ok(())
}

/// Puts extras in the place of those that a draft has.
pub(super) fn put_extras(db: &Writing<'_>, invoice: InvoiceId, extras: &[Extra]) -> Result<()> {
    db.execute("DELETE FROM invoice_extra WHERE invoice = ?", [invoice])?;
    for (n, extra) in extras.iter().enumerate() {
        db.execute(
            "INSERT INTO invoice_extra (id, invoice, place, takes_off, words, amount, category, rate, why)
             VALUES (:id, :invoice, :place, :takes_off, :words, :amount, :category, :rate, :why)",
            named_params! {
                ":id": db.id::<crate::kinds::ids::InvoiceExtraId>(), ":invoice": invoice,
                ":place": i64::try_from(n + 1).unwrap_or(i64::MAX), ":takes_off": extra.takes_off,
                ":words": extra.words, ":amount": extra.amount, ":category": extra.category,
                ":rate": extra.rate, ":why": extra.why,
            },
        )?;
    }
    Ok(())
}

/// Keeps the taxes that extras are issued with.
pub(super) fn freeze_extras(
    db: &Writing<'_>,
    invoice: InvoiceId,
    extras: &[InvoiceExtra],
) -> Result<()> {
    for (n, extra) in extras.iter().enumerate() {
        db.execute(
            "UPDATE invoice_extra SET category = ?, rate = ?, why = ? WHERE invoice = ? AND place = ?",
            params![
                extra.category,
                extra.category.map(|_| extra.rate.as_str()),
                extra.why,
                invoice,
                i64::try_from(n + 1).unwrap_or(i64::MAX)
            ],
        )?;
    }
    Ok(())
}

pub(super) fn extras(
    db: &Reading<'_>,
    invoice: InvoiceId,
    currency: Currency,
) -> Result<Vec<InvoiceExtra>> {
    db.all("SELECT * FROM invoice_extra WHERE invoice = ? ORDER BY place", [invoice], |row| {
        Ok(InvoiceExtra {
            takes_off: row.get("takes_off")?,
            words: row.get("words")?,
            amount: currency.plain(row.get("amount")?),
            category: row.get("category")?,
            rate: row.get::<_, Option<String>>("rate")?.unwrap_or_default(),
            why: row.get("why")?,
        })
    })
}

pub(super) fn insert_parts(
    db: &Writing<'_>,
    invoice: InvoiceId,
    parts: &[(Day, i64)],
) -> Result<()> {
    for (n, (day, amount)) in parts.iter().enumerate() {
        db.execute(
            "INSERT INTO invoice_part (id, invoice, place, day, amount) VALUES (?, ?, ?, ?, ?)",
            params![
                db.id::<crate::kinds::ids::InvoicePartId>(),
                invoice,
                i64::try_from(n + 1).unwrap_or(i64::MAX),
                day,
                amount
            ],
        )?;
    }
    Ok(())
}

/// The parts in which an invoice is to be paid: the day and how much.
pub(super) fn parts(db: &Reading<'_>, invoice: InvoiceId) -> Result<Vec<(Day, i64)>> {
    db.all(
        "SELECT day, amount FROM invoice_part WHERE invoice = ? ORDER BY place",
        [invoice],
        |row| Ok((row.get("day")?, row.get("amount")?)),
    )
}

/// Keeps the structured files of a document that is being issued, or why there are none.
pub(super) fn insert_file(db: &Writing<'_>, id: InvoiceId, files: &Files) -> Result<()> {
    db.execute(
        "INSERT INTO invoice_file (id, ubl, cii, lacks) VALUES (?, ?, ?, ?)",
        params![id, files.ubl, files.cii, files.lacks],
    )?;
    Ok(())
}

pub(super) fn file(db: &Reading<'_>, id: InvoiceId) -> Result<Option<Files>> {
    db.one("SELECT ubl, cii, lacks FROM invoice_file WHERE id = ?", [id], |row| {
        Ok(Files { ubl: row.get("ubl")?, cii: row.get("cii")?, lacks: row.get("lacks")? })
    })
}

/// A reminder's row, without its document.
pub(super) struct KeptReminder {
    pub place: i64,
    pub day: Day,
    pub due: Day,
    pub open: i64,
    pub interest: i64,
}

pub(super) fn insert_reminder(
    db: &Writing<'_>,
    invoice: InvoiceId,
    r: &KeptReminder,
    pdf: &[u8],
    sha256: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO reminder (id, invoice, place, day, due, open, interest, pdf, sha256)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            db.id::<ReminderId>(),
            invoice,
            r.place,
            r.day,
            r.due,
            r.open,
            r.interest,
            pdf,
            sha256
        ],
    )?;
    Ok(())
}

/// How many reminders of an invoice were written.
pub(super) fn reminded(db: &Reading<'_>, invoice: InvoiceId) -> Result<usize> {
    let sql = "SELECT count(*) AS n FROM reminder WHERE invoice = ?";
    let count: i64 = db.one(sql, [invoice], |row| row.get("n"))?.unwrap_or_default();
    Ok(usize::try_from(count).unwrap_or_default())
}

pub(super) fn reminders(
    db: &Reading<'_>,
    invoice: InvoiceId,
) -> Result<Vec<(ReminderId, KeptReminder)>> {
    db.all(
        "SELECT id, place, day, due, open, interest FROM reminder WHERE invoice = ? ORDER BY place",
        [invoice],
        |row| {
            let kept = KeptReminder {
                place: row.get("place")?,
                day: row.get("day")?,
                due: row.get("due")?,
                open: row.get("open")?,
                interest: row.get("interest")?,
            };
            Ok((row.get("id")?, kept))
        },
    )
}

/// A reminder's invoice, place, document and its digest.
pub(super) fn reminder(
    db: &Reading<'_>,
    id: ReminderId,
) -> Result<(InvoiceId, i64, Vec<u8>, String)> {
    db.found(
        "reminder",
        &id,
        "SELECT invoice, place, pdf, sha256 FROM reminder WHERE id = ?",
        [id],
        |row| Ok((row.get("invoice")?, row.get("place")?, row.get("pdf")?, row.get("sha256")?)),
    )
}

/// With tax and rounded, of all credit notes of an invoice that were issued.
pub(super) fn credited(db: &Reading<'_>, invoice: InvoiceId) -> Result<i64> {
    let sum = db.one(
        "SELECT coalesce(sum(gross), 0) AS sum FROM invoice WHERE corrects = ? AND issued IS NOT NULL",
        [invoice],
        |row| row.get("sum"),
    )?;
    Ok(sum.unwrap_or_default())
}

/// Whether a credit note of an invoice took its extras back.
pub(super) fn extras_credited(db: &Reading<'_>, invoice: InvoiceId) -> Result<bool> {
    let many: Option<i64> = db.one(
        "SELECT count(*) AS many FROM invoice_extra x JOIN invoice i ON i.id = x.invoice
         WHERE i.corrects = ? AND i.issued IS NOT NULL",
        [invoice],
        |row| row.get("many"),
    )?;
    Ok(many.unwrap_or_default() > 0)
}

/// Removes a draft that has no lines any more.
pub(super) fn remove(db: &Writing<'_>, invoice: InvoiceId) -> Result<()> {
    db.execute("DELETE FROM invoice_extra WHERE invoice = ?", [invoice])?;
    db.execute("DELETE FROM invoice WHERE id = ?", [invoice])?;
    Ok(())
}

/// Removes a package that was never sold.
pub(super) fn remove_package(db: &Writing<'_>, package: PackageId) -> Result<()> {
    db.execute("DELETE FROM package_student WHERE package = ?", [package])?;
    db.execute("DELETE FROM package_extension WHERE package = ?", [package])?;
    db.execute("DELETE FROM package WHERE id = ?", [package])?;
    Ok(())
}

/// Keeps what a line comes to, and the tax it is issued with.
pub(super) fn freeze_line(db: &Writing<'_>, line: &InvoiceLine, total: i64) -> Result<()> {
    db.execute(
        "UPDATE invoice_line SET total = ?, category = ?, rate = ?, why = ? WHERE id = ?",
        params![total, line.category, line.category.map(|_| line.rate.as_str()), line.why, line.id],
    )?;
    Ok(())
}

/// The last place and day of a series.
pub(super) fn last_of(db: &Reading<'_>, series: &str) -> Result<(i64, Option<Day>)> {
    let last = db.one(
        "SELECT coalesce(max(place), 0) AS place, max(day) AS day FROM invoice WHERE series = ?",
        [series],
        |row| Ok((row.get("place")?, row.get("day")?)),
    )?;
    Ok(last.unwrap_or_default())
}

pub(super) fn freeze(db: &Writing<'_>, id: InvoiceId, f: &Frozen) -> Result<()> {
    db.execute(
        "UPDATE invoice SET series = :series, place = :place, number = :number, day = :day, due = :due,
           issued = :issued, paper = :paper, net = :net, tax = :tax, gross = :gross, rounding = :rounding
         WHERE id = :id",
        named_params! {
            ":id": id, ":series": f.series, ":place": f.place, ":number": f.number, ":day": f.day,
            ":due": f.due, ":issued": f.issued, ":paper": f.paper, ":net": f.net, ":tax": f.tax,
            ":gross": f.gross, ":rounding": f.rounding,
        },
    )?;
    Ok(())
}

pub(super) fn insert_document(
    db: &Writing<'_>,
    id: InvoiceId,
    pdf: &[u8],
    sha256: &str,
    fonts: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO invoice_document (id, pdf, sha256, fonts) VALUES (?, ?, ?, ?)",
        params![id, pdf, sha256, fonts],
    )?;
    Ok(())
}

pub(super) fn document(db: &Reading<'_>, id: InvoiceId) -> Result<(Vec<u8>, String)> {
    db.found("invoice", &id, "SELECT pdf, sha256 FROM invoice_document WHERE id = ?", [id], |row| {
        Ok((row.get("pdf")?, row.get("sha256")?))
    })
}

const SELECT: &str = "SELECT i.*, y.name AS payer_name,
       CASE WHEN i.issued IS NULL THEN 0 ELSE i.gross + i.rounding END AS payable,
       coalesce((SELECT sum(p.amount) FROM posting p WHERE p.invoice = i.id AND p.account = 'receivable'), 0) AS open
     FROM invoice i JOIN payer y ON y.id = i.payer";

pub(super) fn head(db: &Reading<'_>, id: InvoiceId) -> Result<Head> {
    db.found("invoice", &id, &format!("{SELECT} WHERE i.id = ?"), [id], a_head)
}

/// Drafts first, then the newest.
pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Head>> {
    db.all(
        &format!("{SELECT} ORDER BY i.issued IS NOT NULL, i.day DESC, i.place DESC, i.id DESC"),
        [],
        a_head,
    )
}

/// Drafts, the newest first.
pub(super) fn drafts(db: &Reading<'_>) -> Result<Vec<Head>> {
    db.all(&format!("{SELECT} WHERE i.issued IS NULL ORDER BY i.id DESC"), [], a_head)
}

pub(super) fn of_payer(db: &Reading<'_>, payer: PayerId) -> Result<Vec<Head>> {
    db.all(
        &format!(
            "{SELECT} WHERE i.payer = ? ORDER BY i.issued IS NOT NULL, i.day DESC, i.place DESC, i.id DESC"
        ),
        [payer],
        a_head,
    )
}

/// Invoices that something is still to be paid of, the oldest due day first.
pub(super) fn open(db: &Reading<'_>) -> Result<Vec<Head>> {
    db.all(
        &format!(
            "{SELECT} WHERE i.id IN (SELECT invoice FROM posting WHERE account = 'receivable'
               GROUP BY invoice HAVING sum(amount) <> 0) ORDER BY i.due, i.id"
        ),
        [],
        a_head,
    )
}

pub(super) fn credits(db: &Reading<'_>, invoice: InvoiceId) -> Result<Vec<Head>> {
    db.all(&format!("{SELECT} WHERE i.corrects = ? ORDER BY i.id"), [invoice], a_head)
}

/// The draft of a payer in a currency that was begun last.
pub(super) fn draft_of(
    db: &Reading<'_>,
    payer: PayerId,
    currency: &str,
) -> Result<Option<InvoiceId>> {
    db.one(
        "SELECT id FROM invoice WHERE payer = ? AND currency = ? AND kind = 'invoice' AND issued IS NULL
         ORDER BY id DESC LIMIT 1",
        params![payer, currency],
        |row| row.get("id"),
    )
}

fn a_head(row: &Row<'_>) -> rusqlite::Result<Head> {
    Ok(Head {
        id: row.get("id")?,
        kind: row.get("kind")?,
        payer: row.get("payer")?,
        corrects: row.get("corrects")?,
        currency: row.get("currency")?,
        prices: row.get("prices")?,
        words: row.get("words")?,
        step: row.get("step")?,
        number: row.get("number")?,
        day: row.get("day")?,
        due: row.get("due")?,
        paper: row.get("paper")?,
        payable: row.get("payable")?,
        open: row.get("open")?,
        payer_name: row.get("payer_name")?,
    })
}

/// The lines of an invoice, each with what of it was credited by notes that were issued.
pub(super) fn lines(
    db: &Reading<'_>,
    invoice: InvoiceId,
    currency: Currency,
) -> Result<Vec<InvoiceLine>> {
    db.all(
        "SELECT l.*, coalesce((SELECT sum(c.total) FROM invoice_line c WHERE c.corrects = l.id), 0) AS credited
         FROM invoice_line l WHERE l.invoice = ? ORDER BY l.place",
        [invoice],
        |row| a_line(row, currency),
    )
}

/// The line that sold a package: which invoice, and the line.
pub(super) fn sale_of(
    db: &Reading<'_>,
    package: PackageId,
) -> Result<Option<(InvoiceId, InvoiceLineId)>> {
    db.one(
        "SELECT invoice, id FROM invoice_line WHERE package = ? AND corrects IS NULL ORDER BY id LIMIT 1",
        [package],
        |row| Ok((row.get("invoice")?, row.get("id")?)),
    )
}

fn a_line(row: &Row<'_>, currency: Currency) -> rusqlite::Result<InvoiceLine> {
    let allowance: i64 = row.get("allowance")?;
    Ok(InvoiceLine {
        id: row.get("id")?,
        what: row.get("what")?,
        words: row.get("words")?,
        day: row.get("day")?,
        facility: row.get("facility")?,
        quantity: row.get("quantity")?,
        price: row.get("price")?,
        allowance: currency.plain(allowance),
        reason: row.get("reason")?,
        category: row.get("category")?,
        rate: row.get::<_, Option<String>>("rate")?.unwrap_or_default(),
        why: row.get("why")?,
        package: row.get("package")?,
        lessons: row.get("lessons")?,
        corrects: row.get("corrects")?,
        total: row
            .get::<_, Option<i64>>("total")?
            .map(|total| currency.plain(total))
            .unwrap_or_default(),
        credited: currency.plain(row.get("credited")?),
    })
}
