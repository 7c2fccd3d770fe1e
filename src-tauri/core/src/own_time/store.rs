//! All SQL of what takes the coach's time; the week is one record among the settings.

use rusqlite::{Row, params};

use super::{Again, Busy};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::Day;
use crate::kinds::ids::BusyId;

pub(super) fn write(db: &Writing<'_>, id: BusyId, b: &Busy) -> Result<()> {
    let some = |text: &str| Some(text.to_owned()).filter(|text| !text.is_empty());
    let weekdays: String = b.weekdays.iter().map(ToString::to_string).collect();
    db.execute(
        "INSERT INTO own_busy (id, what, first, last, starts, ends, zone, again, weekdays, except_days)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT (id) DO UPDATE SET what = excluded.what, first = excluded.first, last = excluded.last,
           starts = excluded.starts, ends = excluded.ends, zone = excluded.zone, again = excluded.again,
           weekdays = excluded.weekdays, except_days = excluded.except_days",
        params![
            id,
            b.what,
            b.first,
            some(&b.last),
            some(&b.starts),
            some(&b.ends),
            some(&b.zone),
            b.again,
            weekdays,
            b.except.join(" "),
        ],
    )?;
    Ok(())
}

pub(super) fn remove(db: &Writing<'_>, id: BusyId, today: Day) -> Result<()> {
    db.execute("UPDATE own_busy SET removed = ? WHERE id = ?", params![today, id])?;
    Ok(())
}

const SELECT: &str =
    "SELECT id, what, first, last, starts, ends, zone, again, weekdays, except_days
     FROM own_busy WHERE removed IS NULL";

fn busy(row: &Row<'_>) -> rusqlite::Result<(BusyId, Busy)> {
    let none = |name: &str| row.get::<_, Option<String>>(name).map(Option::unwrap_or_default);
    let weekdays: String = row.get("weekdays")?;
    let except: String = row.get("except_days")?;
    let busy = Busy {
        what: row.get("what")?,
        first: row.get("first")?,
        last: none("last")?,
        starts: none("starts")?,
        ends: none("ends")?,
        zone: none("zone")?,
        again: row.get::<_, Again>("again")?,
        weekdays: weekdays.bytes().map(|b| b.wrapping_sub(b'0')).collect(),
        except: except.split_whitespace().map(str::to_owned).collect(),
    };
    Ok((row.get("id")?, busy))
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<(BusyId, Busy)>> {
    db.all(&format!("{SELECT} ORDER BY first, starts, id"), [], busy)
}

pub(super) fn one(db: &Reading<'_>, id: BusyId) -> Result<Busy> {
    let found = db.found("busy time", &id, &format!("{SELECT} AND id = ?"), [id], busy)?;
    Ok(found.1)
}
