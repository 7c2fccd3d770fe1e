//! All SQL of notices and acknowledgements.

use rusqlite::{Row, params};

use super::acknowledge::{Sealed, seal};
use super::{Acknowledgement, Notice, NoticeVersion};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Result};
use crate::intake::scans;
use crate::intake::{OnWhat, Speaks};
use crate::kinds::ids::{AcknowledgementId, FacilityId, NoticeId, ScanId, StudentId, VersionId};
use crate::kinds::{Day, Language};

pub(super) fn insert(
    db: &Writing<'_>,
    id: NoticeId,
    title: &str,
    facility: Option<FacilityId>,
    sport: &str,
    language: Language,
) -> Result<()> {
    db.execute(
        "INSERT INTO notice (id, title, facility, sport, language) VALUES (?, ?, ?, ?, ?)",
        params![id, title, facility, sport, language],
    )?;
    Ok(())
}

pub(super) fn rename(db: &Writing<'_>, id: NoticeId, title: &str) -> Result<()> {
    db.execute("UPDATE notice SET title = ? WHERE id = ?", params![title, id])?;
    Ok(())
}

pub(super) fn archive(db: &Writing<'_>, id: NoticeId, day: Day) -> Result<()> {
    db.execute("UPDATE notice SET archived = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn insert_version(db: &Writing<'_>, notice: NoticeId, v: &NoticeVersion) -> Result<()> {
    let parts = serde_json::to_string(&v.parts).map_err(|e| Error::Fault(e.to_string()))?;
    db.execute(
        "INSERT INTO notice_version (id, notice, version, made, text, sha256, parts) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![v.id, notice, v.number, v.made, v.text, v.sha256, parts],
    )?;
    Ok(())
}

const NOTICE: &str = "SELECT n.*, coalesce(f.name, '') AS place FROM notice n LEFT JOIN facility f ON f.id = n.facility";

/// Those that are not put away: for every place first, then by place and title.
pub(super) fn current(db: &Reading<'_>) -> Result<Vec<Notice>> {
    let ids: Vec<NoticeId> = db.all(
        "SELECT n.id FROM notice n LEFT JOIN facility f ON f.id = n.facility WHERE n.archived IS NULL
         ORDER BY n.facility IS NOT NULL, f.name, n.title, n.id",
        [],
        |row| row.get("id"),
    )?;
    ids.into_iter().map(|id| find(db, id)).collect()
}

pub(super) fn find(db: &Reading<'_>, id: NoticeId) -> Result<Notice> {
    let newest = db.found(
        "notice",
        &id,
        "SELECT id FROM notice_version WHERE notice = ? ORDER BY version DESC LIMIT 1",
        [id],
        |row| row.get::<_, VersionId>("id"),
    )?;
    let (_, version) = self::version(db, newest)?;
    let acknowledged = db
        .one(
            "SELECT count(DISTINCT student) AS many FROM acknowledgement WHERE version = ?",
            [newest],
            |row| row.get("many"),
        )?
        .unwrap_or(0);
    db.found("notice", &id, &format!("{NOTICE} WHERE n.id = ?"), [id], |row| {
        Ok(Notice {
            id,
            title: row.get("title")?,
            facility: row.get("facility")?,
            place: row.get("place")?,
            sport: row.get("sport")?,
            language: row.get("language")?,
            archived: row.get("archived")?,
            version,
            acknowledged,
        })
    })
}

/// A version with its notice's title; `Fault` when its text is not the one that was published.
pub(super) fn version(db: &Reading<'_>, id: VersionId) -> Result<(String, NoticeVersion)> {
    let (title, parts, version) = db.found(
        "notice",
        &id,
        "SELECT v.*, n.title FROM notice_version v JOIN notice n ON n.id = v.notice WHERE v.id = ?",
        [id],
        |row| {
            let version = NoticeVersion {
                id,
                number: row.get("version")?,
                made: row.get("made")?,
                text: row.get("text")?,
                sha256: row.get("sha256")?,
                parts: Vec::new(),
            };
            Ok((row.get("title")?, row.get::<_, String>("parts")?, version))
        },
    )?;
    if digest::sha256(version.text.as_bytes()) != version.sha256 {
        return Err(Error::Fault(format!(
            "the text of notice version {id} is not what was published"
        )));
    }
    let parts = serde_json::from_str(&parts).map_err(|e| Error::Fault(e.to_string()))?;
    Ok((title, NoticeVersion { parts, ..version }))
}

pub(super) fn insert_acknowledgement(
    db: &Writing<'_>,
    id: AcknowledgementId,
    version: VersionId,
    student: StudentId,
    (name, relation, as_what): (&str, Speaks, &str),
    (day, how, scan): (Day, OnWhat, Option<ScanId>),
    seal: &str,
) -> Result<()> {
    db.execute(
        "INSERT INTO acknowledgement (id, version, student, name, relation, as_what, day, how, scan, seal)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        params![id, version, student, name, relation, as_what, day, how, scan, seal],
    )?;
    Ok(())
}

const ACKNOWLEDGEMENT: &str =
    "SELECT a.*, v.notice, v.version AS number, v.sha256 AS text, n.title FROM acknowledgement a
    JOIN notice_version v ON v.id = a.version JOIN notice n ON n.id = v.notice";

pub(super) fn acknowledgement(db: &Reading<'_>, id: AcknowledgementId) -> Result<Acknowledgement> {
    let found = db.found(
        "acknowledgement",
        &id,
        &format!("{ACKNOWLEDGEMENT} WHERE a.id = ?"),
        [id],
        an_acknowledgement,
    )?;
    with_scan(db, found)
}

pub(super) fn acknowledgements(
    db: &Reading<'_>,
    student: StudentId,
) -> Result<Vec<Acknowledgement>> {
    let rows = db.all(
        &format!("{ACKNOWLEDGEMENT} WHERE a.student = ? ORDER BY a.day DESC, a.id DESC"),
        [student],
        an_acknowledgement,
    )?;
    rows.into_iter().map(|found| with_scan(db, found)).collect()
}

fn with_scan(
    db: &Reading<'_>,
    (mut a, scan): (Acknowledgement, Option<ScanId>),
) -> Result<Acknowledgement> {
    a.scan = scans::named(db, scan)?;
    Ok(a)
}

fn an_acknowledgement(row: &Row<'_>) -> rusqlite::Result<(Acknowledgement, Option<ScanId>)> {
    let text: String = row.get("text")?;
    let scan: Option<ScanId> = row.get("scan")?;
    let mut a = Acknowledgement {
        id: row.get("id")?,
        notice: row.get("notice")?,
        title: row.get("title")?,
        version: row.get("version")?,
        number: row.get("number")?,
        student: row.get("student")?,
        name: row.get("name")?,
        relation: row.get("relation")?,
        as_what: row.get("as_what")?,
        day: row.get("day")?,
        how: row.get("how")?,
        scan: None,
        seal: row.get("seal")?,
        whole: false,
    };
    a.whole = a.seal
        == seal(&Sealed {
            text: &text,
            student: a.student,
            name: &a.name,
            relation: a.relation,
            as_what: &a.as_what,
            day: a.day,
            how: a.how,
            scan,
        });
    Ok((a, scan))
}
