//! All SQL of costs and their rates.

use rusqlite::{Row, named_params, params};

use super::note::Read;
use super::rates::{CostRate, Read as RateRead};
use super::{Cost, CostKind, Per};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::intake::scans;
use crate::kinds::ids::{CostId, RateId, ScanId};
use crate::kinds::{Currency, Day, Span};

/// Keeps a cost, new or changed; without a new receipt the one there is stays.
pub(super) fn put(
    db: &Writing<'_>,
    id: CostId,
    read: &Read,
    receipt: Option<ScanId>,
) -> Result<()> {
    db.execute(
        "INSERT INTO cost (id, kind, day, last, words, town, currency, amount, distance, unit, worked, receipt)
         VALUES (:id, :kind, :day, :last, :words, :town, :currency, :amount, :distance, :unit, :worked, :receipt)
         ON CONFLICT (id) DO UPDATE SET kind = excluded.kind, day = excluded.day, last = excluded.last,
           words = excluded.words, town = excluded.town, currency = excluded.currency,
           amount = excluded.amount, distance = excluded.distance, unit = excluded.unit,
           worked = excluded.worked, receipt = coalesce(excluded.receipt, receipt)",
        named_params! {
            ":id": id, ":kind": read.kind, ":day": read.days.first, ":last": read.days.last,
            ":words": read.words, ":town": read.town, ":currency": read.amount.currency.code(),
            ":amount": read.amount.minor, ":distance": read.drive.as_ref().map(|(length, _)| length),
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
        currency: code,
        distance: row.get::<_, Option<String>>("distance")?.unwrap_or_default(),
        unit: row.get::<_, Option<Per>>("unit")?,
        worked: row.get("worked")?,
        receipt: None,
        taken_back: row.get("taken_back")?,
        why: row.get("why")?,
    };
    Ok((cost, row.get("receipt")?))
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
