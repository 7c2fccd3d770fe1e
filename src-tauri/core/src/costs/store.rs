//! All SQL of costs and their rates.

use rusqlite::{Row, named_params, params};

use super::note::Read;
use super::rates::{CostRate, Read as RateRead};
use super::{Cost, CostKind, Per, passed};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::intake::scans;
use crate::kinds::ids::{CostId, CostPassedId, InvoiceId, InvoiceLineId, PayerId, RateId, ScanId};
use crate::kinds::{Currency, Day, Span};

/// Keeps a cost, new or changed; without a new receipt the one there is stays.
pub(super) fn put(
    db: &Writing<'_>,
    id: CostId,
    read: &Read,
    receipt: Option<ScanId>,
) -> Result<()> {
    db.execute(
        "INSERT INTO cost (id, kind, day, last, words, town, currency, amount, tax, distance, unit, worked, receipt)
         VALUES (:id, :kind, :day, :last, :words, :town, :currency, :amount, :tax, :distance, :unit, :worked,
           :receipt)
         ON CONFLICT (id) DO UPDATE SET kind = excluded.kind, day = excluded.day, last = excluded.last,
           words = excluded.words, town = excluded.town, currency = excluded.currency,
           amount = excluded.amount, tax = excluded.tax, distance = excluded.distance, unit = excluded.unit,
           worked = excluded.worked, receipt = coalesce(excluded.receipt, receipt)",
        named_params! {
            ":id": id, ":kind": read.kind, ":day": read.days.first, ":last": read.days.last,
            ":words": read.words, ":town": read.town, ":currency": read.amount.currency.code(),
            ":amount": read.amount.minor, ":tax": read.tax, ":distance": read.drive.as_ref().map(|(length, _)| length),
            ":unit": read.drive.as_ref().map(|(_, unit)| *unit), ":worked": read.amount.worked,
            ":receipt": receipt,
        },
    )?;
    Ok(())
}

/// Another day rate that counts for one of some days.
pub(super) fn day_rate_within(
    db: &Reading<'_>,
    days: Span,
    besides: Option<CostId>,
) -> Result<Option<Cost>> {
    let found = db.one(
        "SELECT * FROM cost WHERE kind = 'day_rate' AND taken_back IS NULL AND day <= ? AND last >= ?
           AND id IS NOT ? ORDER BY day, id LIMIT 1",
        params![days.last, days.first, besides],
        a_cost,
    )?;
    Ok(found.map(|(cost, _)| cost))
}

pub(super) fn take_back(db: &Writing<'_>, id: CostId, day: Day, why: &str) -> Result<()> {
    db.execute("UPDATE cost SET taken_back = ?, why = ? WHERE id = ?", params![day, why, id])?;
    Ok(())
}

pub(super) fn find(db: &Reading<'_>, id: CostId) -> Result<Cost> {
    let found = db.found("cost", &id, "SELECT * FROM cost WHERE id = ?", [id], a_cost)?;
    with_receipt(db, found)
}

/// Costs that begin on some days, the newest first.
pub(super) fn within(db: &Reading<'_>, days: Span) -> Result<Vec<Cost>> {
    let found = db.all(
        "SELECT * FROM cost WHERE day BETWEEN ? AND ? ORDER BY day DESC, id DESC",
        params![days.first, days.last],
        a_cost,
    )?;
    found.into_iter().map(|found| with_receipt(db, found)).collect()
}

fn with_receipt(db: &Reading<'_>, (mut cost, receipt): (Cost, Option<ScanId>)) -> Result<Cost> {
    cost.receipt = scans::named(db, receipt)?;
    passed::tell(db, &mut cost)?;
    Ok(cost)
}

fn a_cost(row: &Row<'_>) -> rusqlite::Result<(Cost, Option<ScanId>)> {
    let code: String = row.get("currency")?;
    let minor: i64 = row.get("amount")?;
    let cost = Cost {
        id: row.get("id")?,
        kind: row.get::<_, CostKind>("kind")?,
        day: row.get("day")?,
        last: row.get("last")?,
        words: row.get("words")?,
        town: row.get("town")?,
        amount: Currency::parse(&code).map_or_else(|| minor.to_string(), |c| c.plain(minor)),
        tax: row
            .get::<_, Option<i64>>("tax")?
            .map(|tax| Currency::parse(&code).map_or_else(|| tax.to_string(), |c| c.plain(tax)))
            .unwrap_or_default(),
        currency: code,
        distance: row.get::<_, Option<String>>("distance")?.unwrap_or_default(),
        unit: row.get::<_, Option<Per>>("unit")?,
        worked: row.get("worked")?,
        receipt: None,
        taken_back: row.get("taken_back")?,
        why: row.get("why")?,
        passed: Vec::new(),
        passed_on: String::new(),
    };
    Ok((cost, row.get("receipt")?))
}

/// A line on which a part of a cost stands.
pub(super) struct PassedLine {
    pub payer: PayerId,
    pub name: String,
    pub invoice: InvoiceId,
    pub number: String,
    pub line: InvoiceLineId,
    pub words: String,
    pub quantity: String,
    pub price: String,
    pub allowance: i64,
    /// As issued; `None` on a draft.
    pub total: Option<i64>,
    pub credited: i64,
}

/// The lines on which parts of a cost stand. One that was taken off its draft, or went with it, is not
/// there any more.
pub(super) fn passed(db: &Reading<'_>, cost: CostId) -> Result<Vec<PassedLine>> {
    db.all(
        "SELECT y.id AS payer, y.name, i.id AS invoice, coalesce(i.number, '') AS number, l.id AS line,
                l.words, l.quantity, l.price, l.allowance, l.total,
                coalesce((SELECT sum(c.total) FROM invoice_line c JOIN invoice n ON n.id = c.invoice
                          WHERE c.corrects = l.id AND n.issued IS NOT NULL), 0) AS credited
         FROM cost_passed s JOIN invoice_line l ON l.id = s.line JOIN invoice i ON i.id = l.invoice
           JOIN payer y ON y.id = i.payer
         WHERE s.cost = ? ORDER BY s.id",
        [cost],
        |row| {
            Ok(PassedLine {
                payer: row.get("payer")?,
                name: row.get("name")?,
                invoice: row.get("invoice")?,
                number: row.get("number")?,
                line: row.get("line")?,
                words: row.get("words")?,
                quantity: row.get("quantity")?,
                price: row.get("price")?,
                allowance: row.get("allowance")?,
                total: row.get("total")?,
                credited: row.get("credited")?,
            })
        },
    )
}

pub(super) fn insert_passed(db: &Writing<'_>, cost: CostId, line: InvoiceLineId) -> Result<()> {
    let id: CostPassedId = db.id();
    db.execute(
        "INSERT INTO cost_passed (id, cost, line, day) VALUES (?, ?, ?, ?)",
        params![id, cost, line, db.today()],
    )?;
    Ok(())
}

pub(super) fn insert_rate(db: &Writing<'_>, read: &RateRead) -> Result<()> {
    let id: RateId = db.id();
    db.execute(
        "INSERT INTO cost_rate (id, per, since, until, currency, amount, edge, source)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        params![
            id,
            read.per,
            read.since,
            read.until,
            read.currency.code(),
            read.amount.normalize().to_string(),
            read.edge.map(|edge| edge.normalize().to_string()),
            read.source
        ],
    )?;
    Ok(())
}

pub(super) fn end_rate(db: &Writing<'_>, id: RateId, until: Day) -> Result<()> {
    db.execute("UPDATE cost_rate SET until = ? WHERE id = ?", params![until, id])?;
    Ok(())
}

pub(super) fn put_rate_away(db: &Writing<'_>, id: RateId, day: Day) -> Result<()> {
    db.found(
        "rate",
        &id,
        "SELECT 1 FROM cost_rate WHERE id = ? AND archived IS NULL",
        [id],
        |_| Ok(()),
    )?;
    db.execute("UPDATE cost_rate SET archived = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn rates(db: &Reading<'_>) -> Result<Vec<CostRate>> {
    db.all(
        "SELECT * FROM cost_rate WHERE archived IS NULL
         ORDER BY CASE per WHEN 'mile' THEN 0 WHEN 'km' THEN 1 ELSE 2 END, since DESC",
        [],
        |row| {
            Ok(CostRate {
                id: row.get("id")?,
                per: row.get("per")?,
                since: row.get("since")?,
                until: row.get("until")?,
                currency: row.get("currency")?,
                amount: row.get("amount")?,
                edge: row.get::<_, Option<String>>("edge")?.unwrap_or_default(),
                source: row.get("source")?,
            })
        },
    )
}
