//! All SQL of rules. Amounts are kept in smallest units, days of the week as their numbers in a row.

use rusqlite::{Row, params};

use super::{Ahead, Closure, Hours, Rate, Release, Rules};
use crate::app::{Reading, Writing};
use crate::error::{Error, Result};
use crate::kinds::Currency;
use crate::kinds::ids::FacilityId;

/// The lists of rules, each a table of its own.
const LISTS: [&str; 5] =
    ["facility_hours", "facility_closure", "facility_rate", "facility_ahead", "facility_release"];

fn packed(days: &[u8]) -> String {
    days.iter().map(ToString::to_string).collect()
}

fn unpacked(days: &str) -> Vec<u8> {
    days.bytes().map(|b| b.wrapping_sub(b'0')).collect()
}

/// An empty text is no value.
fn some(text: &str) -> Option<&str> {
    Some(text).filter(|text| !text.is_empty())
}

fn none(text: Option<String>) -> String {
    text.unwrap_or_default()
}

pub(super) fn write(db: &Writing<'_>, facility: FacilityId, r: &Rules) -> Result<()> {
    let currency = Currency::parse(&r.currency);
    let minor = |amount: &str| {
        some(amount).map_or(Ok(0), |amount| {
            currency
                .and_then(|currency| currency.minor(amount))
                .ok_or_else(|| Error::Fault(format!("the amount {amount:?} was not read")))
        })
    };
    db.execute(
        "INSERT INTO facility_rules (id, currency, books_as, grid, shortest, longest, day_limit, week_limit,
           day_bookings, apart, one_by_one, people, booking_fee, guest_fee, grace, weather_free, youngest,
           needs, source, source_seen)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET currency = excluded.currency, books_as = excluded.books_as,
           grid = excluded.grid, shortest = excluded.shortest, longest = excluded.longest,
           day_limit = excluded.day_limit, week_limit = excluded.week_limit,
           day_bookings = excluded.day_bookings, apart = excluded.apart,
           one_by_one = excluded.one_by_one, people = excluded.people,
           booking_fee = excluded.booking_fee, guest_fee = excluded.guest_fee, grace = excluded.grace,
           weather_free = excluded.weather_free, youngest = excluded.youngest, needs = excluded.needs,
           source = excluded.source, source_seen = excluded.source_seen",
        params![
            facility,
            r.currency,
            r.books_as,
            r.grid,
            r.shortest,
            r.longest,
            r.day_limit,
            r.week_limit,
            r.day_bookings,
            r.apart,
            r.one_by_one,
            r.people,
            minor(&r.booking_fee)?,
            minor(&r.guest_fee)?,
            r.grace,
            r.weather_free,
            r.youngest,
            r.needs,
            r.source,
            some(&r.source_seen),
        ],
    )?;
    for table in LISTS {
        db.execute(&format!("DELETE FROM {table} WHERE facility = ?"), [facility])?;
    }
    for (place, row) in (1_i64..).zip(&r.hours) {
        db.execute(
            "INSERT INTO facility_hours (id, facility, place, weekdays, opens, closes, first, last)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                new(db),
                facility,
                place,
                packed(&row.weekdays),
                row.opens,
                row.closes,
                some(&row.first),
                some(&row.last),
            ],
        )?;
    }
    for (place, row) in (1_i64..).zip(&r.closures) {
        db.execute(
            "INSERT INTO facility_closure (id, facility, place, court, first, last, weekdays, starts, ends, reason)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                new(db),
                facility,
                place,
                row.court,
                some(&row.first),
                some(&row.last),
                packed(&row.weekdays),
                some(&row.starts),
                some(&row.ends),
                row.reason,
            ],
        )?;
    }
    for (place, row) in (1_i64..).zip(&r.rates) {
        db.execute(
            "INSERT INTO facility_rate (id, facility, place, who, ground, weekdays, starts, ends, hour)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                new(db),
                facility,
                place,
                row.who,
                row.ground,
                packed(&row.weekdays),
                some(&row.starts),
                some(&row.ends),
                minor(&row.hour)?,
            ],
        )?;
    }
    for (place, row) in (1_i64..).zip(&r.ahead) {
        db.execute(
            "INSERT INTO facility_ahead (id, facility, place, who, ground, amount, unit, opens)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                new(db),
                facility,
                place,
                row.who,
                row.ground,
                row.amount,
                row.unit,
                some(&row.opens),
            ],
        )?;
    }
    for (place, row) in (1_i64..).zip(&r.release) {
        db.execute(
            "INSERT INTO facility_release (id, facility, place, ground, hours, clock, later, fee)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                new(db),
                facility,
                place,
                row.ground,
                row.hours,
                row.counted,
                row.later,
                minor(&row.fee)?,
            ],
        )?;
    }
    Ok(())
}

fn new(db: &Writing<'_>) -> String {
    db.id::<uuid::Uuid>().to_string()
}

pub(super) fn rules(db: &Reading<'_>, facility: FacilityId) -> Result<Rules> {
    let sql = "SELECT * FROM facility_rules WHERE id = ?";
    let Some(mut rules) = db.one(sql, [facility], head)? else { return Ok(Rules::default()) };
    let currency = Currency::parse(&rules.currency);
    let plain = |minor: i64| currency.map(|c| c.plain(minor)).unwrap_or_default();
    let of = |table: &str| format!("SELECT * FROM {table} WHERE facility = ? ORDER BY place");
    let days = |row: &Row<'_>| -> rusqlite::Result<Vec<u8>> {
        Ok(unpacked(&row.get::<_, String>("weekdays")?))
    };
    let text = |row: &Row<'_>, column: &str| -> rusqlite::Result<String> {
        Ok(none(row.get::<_, Option<String>>(column)?))
    };
    rules.hours = db.all(&of("facility_hours"), [facility], |row| {
        Ok(Hours {
            weekdays: days(row)?,
            opens: row.get("opens")?,
            closes: row.get("closes")?,
            first: text(row, "first")?,
            last: text(row, "last")?,
        })
    })?;
    rules.closures = db.all(&of("facility_closure"), [facility], |row| {
        Ok(Closure {
            court: row.get("court")?,
            first: text(row, "first")?,
            last: text(row, "last")?,
            weekdays: days(row)?,
            starts: text(row, "starts")?,
            ends: text(row, "ends")?,
            reason: row.get("reason")?,
        })
    })?;
    rules.rates = db.all(&of("facility_rate"), [facility], |row| {
        Ok(Rate {
            who: row.get("who")?,
            ground: row.get("ground")?,
            weekdays: days(row)?,
            starts: text(row, "starts")?,
            ends: text(row, "ends")?,
            hour: plain(row.get("hour")?),
        })
    })?;
    rules.ahead = db.all(&of("facility_ahead"), [facility], |row| {
        Ok(Ahead {
            who: row.get("who")?,
            ground: row.get("ground")?,
            amount: row.get("amount")?,
            unit: row.get("unit")?,
            opens: text(row, "opens")?,
        })
    })?;
    rules.release = db.all(&of("facility_release"), [facility], |row| {
        let (later, fee): (super::Later, i64) = (row.get("later")?, row.get("fee")?);
        let fee = if later == super::Later::Fee { plain(fee) } else { String::new() };
        Ok(Release {
            ground: row.get("ground")?,
            hours: row.get("hours")?,
            counted: row.get("clock")?,
            later,
            fee,
        })
    })?;
    Ok(rules)
}

fn head(row: &Row<'_>) -> rusqlite::Result<Rules> {
    let currency: String = row.get("currency")?;
    let known = Currency::parse(&currency);
    let fee = |column: &str| -> rusqlite::Result<String> {
        let minor: i64 = row.get(column)?;
        Ok(known.filter(|_| minor > 0).map(|c| c.plain(minor)).unwrap_or_default())
    };
    Ok(Rules {
        books_as: row.get("books_as")?,
        grid: row.get("grid")?,
        shortest: row.get("shortest")?,
        longest: row.get("longest")?,
        day_limit: row.get("day_limit")?,
        week_limit: row.get("week_limit")?,
        day_bookings: row.get("day_bookings")?,
        apart: row.get("apart")?,
        one_by_one: row.get("one_by_one")?,
        people: row.get("people")?,
        booking_fee: fee("booking_fee")?,
        guest_fee: fee("guest_fee")?,
        grace: row.get("grace")?,
        weather_free: row.get("weather_free")?,
        youngest: row.get("youngest")?,
        needs: row.get("needs")?,
        source: row.get("source")?,
        source_seen: none(row.get("source_seen")?),
        currency,
        ..Rules::default()
    })
}
