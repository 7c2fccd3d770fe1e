//! All SQL of prices and taxes.

use rusqlite::{Row, named_params, params};
use rust_decimal::Decimal;

use super::add::Read;
use super::{Price, SetTax, TaxRule};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{PriceId, TaxRuleId};
use crate::kinds::{Currency, Day};

pub(super) fn insert(db: &Writing<'_>, id: PriceId, read: &Read) -> Result<()> {
    db.execute(
        "INSERT INTO price (id, what, words, facility, minutes, sharing, each, lessons, months, currency, amount, since)
         VALUES (:id, :what, :words, :facility, :minutes, :sharing, :each, :lessons, :months, :currency, :amount, :since)",
        named_params! {
            ":id": id, ":what": read.what, ":words": read.words, ":facility": read.facility,
            ":minutes": read.minutes, ":sharing": read.sharing, ":each": read.each,
            ":lessons": read.lessons, ":months": read.months, ":currency": read.currency.code(),
            ":amount": read.amount, ":since": read.since,
        },
    )?;
    Ok(())
}

pub(super) fn end(db: &Writing<'_>, id: PriceId, until: Day) -> Result<()> {
    db.execute("UPDATE price SET until = ? WHERE id = ?", params![until, id])?;
    Ok(())
}

pub(super) fn forget(db: &Writing<'_>, id: PriceId) -> Result<()> {
    db.execute("DELETE FROM price WHERE id = ?", [id])?;
    Ok(())
}

const SELECT: &str = "SELECT p.*, coalesce(f.name, '') AS place FROM price p LEFT JOIN facility f ON f.id = p.facility";

pub(super) fn find(db: &Reading<'_>, id: PriceId) -> Result<Price> {
    db.found("price", &id, &format!("{SELECT} WHERE p.id = ?"), [id], a_price)
}

/// By what they are for, then by length, the newest first.
pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Price>> {
    let order = "ORDER BY CASE p.what WHEN 'lesson' THEN 0 WHEN 'package' THEN 1 WHEN 'analysis' THEN 2
                   WHEN 'travel' THEN 3 ELSE 4 END, place, p.words, p.sharing, p.minutes, p.lessons, p.since DESC, p.id";
    db.all(&format!("{SELECT} {order}"), [], a_price)
}

fn a_price(row: &Row<'_>) -> rusqlite::Result<Price> {
    let code: String = row.get("currency")?;
    let minor: i64 = row.get("amount")?;
    let mut price = Price {
        id: row.get("id")?,
        what: row.get("what")?,
        words: row.get("words")?,
        facility: row.get("facility")?,
        place: row.get("place")?,
        minutes: row.get("minutes")?,
        sharing: row.get("sharing")?,
        each: row.get("each")?,
        lessons: row.get("lessons")?,
        months: row.get("months")?,
        amount: Currency::parse(&code).map_or_else(|| minor.to_string(), |c| c.plain(minor)),
        currency: code,
        since: row.get("since")?,
        until: row.get("until")?,
        says: String::new(),
    };
    price.says = price.says();
    Ok(price)
}

pub(super) fn insert_tax(
    db: &Writing<'_>,
    id: TaxRuleId,
    set: &SetTax,
    rate: Decimal,
    why: &str,
    since: Day,
) -> Result<()> {
    db.execute(
        "INSERT INTO tax_rule (id, what, facility, category, rate, why, since) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, set.what, set.facility, set.category, rate.to_string(), why, since],
    )?;
    Ok(())
}

pub(super) fn end_tax(db: &Writing<'_>, id: TaxRuleId, until: Day) -> Result<()> {
    db.execute("UPDATE tax_rule SET until = ? WHERE id = ?", params![until, id])?;
    Ok(())
}

pub(super) fn forget_tax(db: &Writing<'_>, id: TaxRuleId) -> Result<()> {
    db.execute("DELETE FROM tax_rule WHERE id = ?", [id])?;
    Ok(())
}

pub(super) fn taxes(db: &Reading<'_>) -> Result<Vec<TaxRule>> {
    db.all(
        "SELECT t.*, coalesce(f.name, '') AS place FROM tax_rule t LEFT JOIN facility f ON f.id = t.facility
         ORDER BY t.what IS NOT NULL, t.what, place, t.since DESC, t.id",
        [],
        |row| {
            Ok(TaxRule {
                id: row.get("id")?,
                what: row.get("what")?,
                facility: row.get("facility")?,
                place: row.get("place")?,
                category: row.get("category")?,
                rate: row.get("rate")?,
                why: row.get("why")?,
                since: row.get("since")?,
                until: row.get("until")?,
            })
        },
    )
}
