//! Rates that were published, to be taken over: what they were when this program was made. A year
//! that is not in them is to be written down by the coach, from the newest notice.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::rates::{CostRate, Read, keep};
use super::{Per, store};
use crate::app::Writing;
use crate::error::{Error, Result};
use crate::kinds::{Currency, Day};

/// One published rate.
struct Row {
    since: (i32, u32, u32),
    until: (i32, u32, u32),
    per: Per,
    currency: &'static str,
    /// In ten-thousandths.
    amount: i64,
    /// In percent.
    edge: Option<i64>,
    source: &'static str,
}

/// A list of published rates.
struct List {
    id: &'static str,
    about: &'static str,
    rows: &'static [Row],
}

const LISTS: &[List] = &[
    List {
        id: "us_mileage",
        about: "United States: standard mileage rate for business, by the IRS",
        rows: &[
            Row {
                since: (2025, 1, 1),
                until: (2025, 12, 31),
                per: Per::Mile,
                currency: "USD",
                amount: 7_000,
                edge: None,
                source: "IRS Notice 2025-5",
            },
            Row {
                since: (2026, 1, 1),
                until: (2026, 12, 31),
                per: Per::Mile,
                currency: "USD",
                amount: 7_250,
                edge: None,
                source: "IRS Notice 2026-10",
            },
        ],
    },
    List {
        id: "us_meals",
        about: "United States: standard meals and incidentals, by the GSA, October 2025 to September 2026; for places that have no rate of their own",
        rows: &[Row {
            since: (2025, 10, 1),
            until: (2026, 9, 30),
            per: Per::Day,
            currency: "USD",
            amount: 680_000,
            edge: Some(75),
            source: "GSA per diem, fiscal year 2026, standard rate",
        }],
    },
];

/// A list of published rates, as offered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PublishedRates {
    /// Its name, to take it over.
    pub list: String,
    /// What it is.
    pub about: String,
    /// Its rates, a line each.
    pub lines: Vec<String>,
}

/// A list to take over.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakePublished {
    /// Its name.
    pub list: String,
}

/// The lists of published rates.
pub fn published() -> Vec<PublishedRates> {
    let line = |row: &Row| {
        let part = row.edge.map(|edge| format!(", first and last day {edge} %"));
        format!(
            "{} {} a {}{}, {} to {}: {}",
            Decimal::new(row.amount, 4).normalize(),
            row.currency,
            row.per.words(),
            part.unwrap_or_default(),
            day(row.since).words(),
            day(row.until).words(),
            row.source
        )
    };
    LISTS
        .iter()
        .map(|list| PublishedRates {
            list: list.id.to_owned(),
            about: list.about.to_owned(),
            lines: list.rows.iter().map(line).collect(),
        })
        .collect()
}

/// Takes a list of published rates over.
///
/// # Errors
/// `NotFound`; `Refused` when a rate holds on some of its days already.
pub fn take_published(db: &Writing<'_>, take: TakePublished) -> Result<Vec<CostRate>> {
    let Some(list) = LISTS.iter().find(|list| list.id == take.list) else {
        return Err(Error::NotFound { what: "list of rates", id: take.list });
    };
    for row in list.rows {
        let Some(currency) = Currency::parse(row.currency) else { continue };
        let read = Read {
            per: row.per,
            since: day(row.since),
            until: Some(day(row.until)),
            currency,
            amount: Decimal::new(row.amount, 4).normalize(),
            edge: row.edge.map(Decimal::from),
            source: row.source.to_owned(),
        };
        keep(db, &read, "list")?;
    }
    db.label(format!("Rates taken over: {}", list.about));
    store::rates(db)
}

fn day((year, month, day): (i32, u32, u32)) -> Day {
    Day::of(year, month, day).unwrap_or(Day::EPOCH)
}
