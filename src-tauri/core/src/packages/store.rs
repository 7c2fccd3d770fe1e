//! All SQL of packages.

use rusqlite::{Row, named_params, params};

use super::{Extension, Package, Sold};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{EntryId, ExtensionId, LessonId, PackageId, PayerId, StudentId};
use crate::kinds::{Currency, Day};
use crate::payers::PaysFor;

pub(crate) fn insert(db: &Writing<'_>, id: PackageId, sold: &Sold) -> Result<()> {
    db.execute(
        "INSERT INTO package (id, payer, words, lessons, minutes, currency, price, single, refund, expires, gift)
         VALUES (:id, :payer, :words, :lessons, :minutes, :currency, :price, :single, :refund, :expires, :gift)",
        named_params! {
            ":id": id, ":payer": sold.payer, ":words": sold.words, ":lessons": sold.lessons,
            ":minutes": sold.minutes, ":currency": sold.currency, ":price": sold.price,
            ":single": sold.single, ":refund": sold.refund, ":expires": sold.expires, ":gift": sold.gift,
        },
    )?;
    Ok(())
}

pub(crate) fn link(db: &Writing<'_>, package: PackageId, student: StudentId) -> Result<()> {
    db.execute(
        "INSERT INTO package_student (id, package, student) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
        params![format!("{package}:{student}"), package, student],
    )?;
    Ok(())
}

pub(super) fn extend(
    db: &Writing<'_>,
    package: PackageId,
    until: Day,
    reason: &str,
    day: Day,
) -> Result<()> {
    let id: ExtensionId = db.id();
    db.execute(
        "INSERT INTO package_extension (id, package, until, reason, day) VALUES (?, ?, ?, ?, ?)",
        params![id, package, until, reason, day],
    )?;
    Ok(())
}

pub(super) fn extensions(db: &Reading<'_>, package: PackageId) -> Result<Vec<Extension>> {
    db.all("SELECT * FROM package_extension WHERE package = ? ORDER BY id", [package], |row| {
        Ok(Extension { until: row.get("until")?, reason: row.get("reason")?, day: row.get("day")? })
    })
}

pub(super) fn students(db: &Reading<'_>, package: PackageId) -> Result<Vec<PaysFor>> {
    db.all(
        "SELECT s.id, s.name FROM package_student ps JOIN student s ON s.id = ps.student
         WHERE ps.package = ? ORDER BY s.name, s.id",
        [package],
        |row| Ok(PaysFor { student: row.get("id")?, name: row.get("name")? }),
    )
}

const SELECT: &str = "SELECT p.*, y.name AS paid_by,
       coalesce((SELECT x.until FROM package_extension x WHERE x.package = p.id ORDER BY x.id DESC LIMIT 1), p.expires) AS last,
       (SELECT min(e.day) FROM unit_move m JOIN entry e ON e.id = m.entry WHERE m.package = p.id) AS sold,
       coalesce((SELECT sum(m.lessons) FROM unit_move m WHERE m.package = p.id), 0) AS \"left\",
       coalesce((SELECT sum(m.lessons) FROM unit_move m JOIN entry e ON e.id = m.entry
         WHERE m.package = p.id AND e.kind IN ('invoice', 'bonus')), 0) AS whole,
       coalesce((SELECT -sum(m.lessons) FROM unit_move m JOIN entry e ON e.id = m.entry
         WHERE m.package = p.id AND e.kind = 'lesson' AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)), 0) AS used,
       coalesce((SELECT -sum(m.lessons) FROM unit_move m JOIN entry e ON e.id = m.entry
         WHERE m.package = p.id AND e.kind = 'late' AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)), 0) AS lost,
       coalesce((SELECT -sum(m.lessons) FROM unit_move m JOIN entry e ON e.id = m.entry
         WHERE m.package = p.id AND e.kind = 'lapsed' AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.reverses = e.id)), 0) AS lapsed,
       coalesce((SELECT -sum(d.amount) FROM posting d WHERE d.package = p.id AND d.account = 'deferred'), 0) AS deferred
     FROM package p JOIN payer y ON y.id = p.payer";

pub(super) fn find(db: &Reading<'_>, id: PackageId) -> Result<Package> {
    let sql = format!("{SELECT} WHERE p.id = ?");
    db.found("package", &id, &sql, [id], |row| a_package(row, db.today()))
}

/// By when they run out, the earliest first; then by when they were sold.
pub(super) fn of_student(db: &Reading<'_>, student: StudentId) -> Result<Vec<Package>> {
    let sql = format!(
        "{SELECT} WHERE p.id IN (SELECT package FROM package_student WHERE student = ?)
         ORDER BY last IS NULL, last, sold IS NULL, sold, p.id"
    );
    db.all(&sql, [student], |row| a_package(row, db.today()))
}

pub(super) fn of_payer(db: &Reading<'_>, payer: PayerId) -> Result<Vec<Package>> {
    let sql = format!("{SELECT} WHERE p.payer = ? ORDER BY sold IS NULL, sold, p.id");
    db.all(&sql, [payer], |row| a_package(row, db.today()))
}

pub(super) fn all(db: &Reading<'_>) -> Result<Vec<Package>> {
    let sql = format!("{SELECT} ORDER BY last IS NULL, last, sold IS NULL, sold, p.id");
    db.all(&sql, [], |row| a_package(row, db.today()))
}

fn a_package(row: &Row<'_>, today: Day) -> rusqlite::Result<Package> {
    let code: String = row.get("currency")?;
    let plain =
        |minor: i64| Currency::parse(&code).map_or_else(|| minor.to_string(), |c| c.plain(minor));
    let expires: Option<Day> = row.get("last")?;
    Ok(Package {
        id: row.get("id")?,
        payer: row.get("payer")?,
        paid_by: row.get("paid_by")?,
        students: Vec::new(),
        words: row.get("words")?,
        lessons: row.get("lessons")?,
        minutes: row.get("minutes")?,
        price: plain(row.get("price")?),
        single: row.get::<_, Option<i64>>("single")?.map(plain).unwrap_or_default(),
        refund: row.get("refund")?,
        gift: row.get("gift")?,
        sold: row.get("sold")?,
        expires,
        run_out: expires.is_some_and(|last| last < today),
        whole: row.get("whole")?,
        left: row.get("left")?,
        reserved: 0,
        used: row.get("used")?,
        lost: row.get("lost")?,
        lapsed: row.get("lapsed")?,
        deferred: plain(row.get("deferred")?),
        currency: code.clone(),
        stands: String::new(),
    })
}

/// The lesson that an entry settled, and whose.
pub(super) fn settled_by(
    db: &Reading<'_>,
    entry: EntryId,
) -> Result<Option<(LessonId, StudentId)>> {
    db.one("SELECT lesson, student FROM settled WHERE entry = ?", [entry], |row| {
        Ok((row.get("lesson")?, row.get("student")?))
    })
}

/// Lessons of a student that are planned and not settled, by day: their day and length.
pub(super) fn planned(db: &Reading<'_>, student: StudentId) -> Result<Vec<(Day, i64)>> {
    db.all(
        "SELECT l.day, l.minutes FROM lesson_student ls JOIN lesson l ON l.id = ls.lesson
         WHERE ls.student = ? AND l.state = 'planned'
           AND NOT EXISTS (SELECT 1 FROM settled s WHERE s.id = ls.id)
         ORDER BY l.day, l.starts, l.id",
        [student],
        |row| Ok((row.get("day")?, row.get("minutes")?)),
    )
}
