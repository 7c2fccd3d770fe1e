//! All SQL of students.

use rusqlite::{Row, named_params, params};

use super::{Contact, Fact, FactKind, Hand, Plays, Profile, Student, StudentLine};
use crate::app::{Reading, Writing};
use crate::error::Result;
use crate::kinds::ids::{FactId, StudentId};
use crate::kinds::text::folded;
use crate::kinds::{Day, Language};

crate::db::words! {
    Hand { Right = "right", Left = "left" }
    Language { En = "en", De = "de" }
    FactKind { Equipment = "equipment", Level = "level", History = "history" }
    Plays { Singles = "singles", Doubles = "doubles", Both = "both" }
}

pub(super) fn insert(db: &Writing<'_>, id: StudentId, p: &Profile) -> Result<()> {
    db.execute(
        "INSERT INTO student (id, name, called, folded, email, phone, hand, plays, zone, born, sport, wants, about,
                              division, usual_minutes, language, home, heard, enquired)
         VALUES (:id, :name, :called, :folded, :email, :phone, :hand, :plays, :zone, :born, :sport, :wants, :about,
                 :division, :usual_minutes, :language, :home, :heard, :enquired)",
        named_params! {
            ":id": id, ":name": p.name, ":called": p.called, ":folded": folded(&p.name),
            ":email": p.email, ":phone": p.phone, ":hand": p.hand, ":plays": p.plays, ":zone": p.zone,
            ":born": Day::parse(&p.born), ":sport": p.sport, ":wants": p.wants, ":about": p.about,
            ":division": Some(&p.division).filter(|d| !d.is_empty()), ":usual_minutes": p.usual_minutes,
            // English is stored as none.
            ":language": Some(p.language).filter(|language| *language != Language::En),
            ":home": Some(&p.home).filter(|h| !h.is_empty()), ":heard": Some(&p.heard).filter(|h| !h.is_empty()),
            ":enquired": Day::parse(&p.enquired),
        },
    )?;
    set_contacts(db, id, p)
}

pub(super) fn update(db: &Writing<'_>, id: StudentId, p: &Profile) -> Result<()> {
    db.execute(
        "UPDATE student SET name = :name, called = :called, folded = :folded, email = :email, phone = :phone,
           hand = :hand, plays = :plays, zone = :zone, born = :born, sport = :sport, wants = :wants, about = :about,
           division = :division, usual_minutes = :usual_minutes, language = :language,
           home = :home, heard = :heard, enquired = :enquired
         WHERE id = :id",
        named_params! {
            ":id": id, ":name": p.name, ":called": p.called, ":folded": folded(&p.name),
            ":email": p.email, ":phone": p.phone, ":hand": p.hand, ":plays": p.plays, ":zone": p.zone,
            ":born": Day::parse(&p.born), ":sport": p.sport, ":wants": p.wants, ":about": p.about,
            ":division": Some(&p.division).filter(|d| !d.is_empty()), ":usual_minutes": p.usual_minutes,
            // English is stored as none.
            ":language": Some(p.language).filter(|language| *language != Language::En),
            ":home": Some(&p.home).filter(|h| !h.is_empty()), ":heard": Some(&p.heard).filter(|h| !h.is_empty()),
            ":enquired": Day::parse(&p.enquired),
        },
    )?;
    set_contacts(db, id, p)
}

fn set_contacts(db: &Writing<'_>, student: StudentId, p: &Profile) -> Result<()> {
    for (role, contact) in [("guardian", &p.guardian), ("payer", &p.payer)] {
        let id = format!("{student}:{role}");
        if let Some(c) = contact {
            db.execute(
                "INSERT INTO student_contact (id, student, role, name, relation, email, phone, address, born)
                 VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
                 ON CONFLICT (id) DO UPDATE SET name = excluded.name, relation = excluded.relation,
                   email = excluded.email, phone = excluded.phone, address = excluded.address,
                   born = excluded.born",
                params![id, student, role, c.name, c.relation, c.email, c.phone, c.address, Day::parse(&c.born)],
            )?;
        } else {
            db.execute("DELETE FROM student_contact WHERE id = ?", [id])?;
        }
    }
    Ok(())
}

pub(super) fn set_archived(db: &Writing<'_>, id: StudentId, day: Option<Day>) -> Result<()> {
    db.execute("UPDATE student SET archived = ? WHERE id = ?", params![day, id])?;
    Ok(())
}

pub(super) fn find(db: &Reading<'_>, id: StudentId) -> Result<Student> {
    let (mut profile, archived) =
        db.found("student", &id, "SELECT * FROM student WHERE id = ?", [id], |row| {
            Ok((profile(row)?, row.get("archived")?))
        })?;
    let contacts = db.all("SELECT * FROM student_contact WHERE student = ?", [id], |row| {
        Ok((row.get::<_, String>("role")?, contact(row)?))
    })?;
    for (role, contact) in contacts {
        *(if role == "guardian" { &mut profile.guardian } else { &mut profile.payer }) =
            Some(contact);
    }
    let age = Day::parse(&profile.born).and_then(|born| db.today().date().years_since(born.date()));
    Ok(Student {
        id,
        addressed: profile.addressed(),
        age: age.and_then(|years| i32::try_from(years).ok()),
        profile,
        archived,
    })
}

fn profile(row: &Row<'_>) -> rusqlite::Result<Profile> {
    Ok(Profile {
        name: row.get("name")?,
        called: row.get("called")?,
        email: row.get("email")?,
        phone: row.get("phone")?,
        hand: row.get("hand")?,
        plays: row.get("plays")?,
        zone: row.get("zone")?,
        born: row.get::<_, Option<String>>("born")?.unwrap_or_default(),
        language: row.get::<_, Option<Language>>("language")?.unwrap_or_default(),
        sport: row.get("sport")?,
        division: row.get::<_, Option<String>>("division")?.unwrap_or_default(),
        usual_minutes: row.get("usual_minutes")?,
        wants: row.get("wants")?,
        about: row.get("about")?,
        home: row.get::<_, Option<String>>("home")?.unwrap_or_default(),
        heard: row.get::<_, Option<String>>("heard")?.unwrap_or_default(),
        enquired: row.get::<_, Option<String>>("enquired")?.unwrap_or_default(),
        guardian: None,
        payer: None,
    })
}

fn contact(row: &Row<'_>) -> rusqlite::Result<Contact> {
    Ok(Contact {
        name: row.get("name")?,
        relation: row.get("relation")?,
        email: row.get("email")?,
        phone: row.get("phone")?,
        address: row.get("address")?,
        born: row.get::<_, Option<String>>("born")?.unwrap_or_default(),
    })
}

/// Everyone current (or put away) by folded name, with that name.
pub(super) fn all(db: &Reading<'_>, archived: bool) -> Result<Vec<(StudentLine, String)>> {
    db.all(
        "SELECT id, name, folded, archived,
           CASE WHEN enquired IS NOT NULL AND NOT EXISTS (SELECT 1 FROM visit v WHERE v.student = student.id)
             THEN enquired END AS asked
         FROM student WHERE (archived IS NOT NULL) = ? ORDER BY folded, id",
        [archived],
        |row| Ok((line(row)?, row.get("folded")?)),
    )
}

fn line(row: &Row<'_>) -> rusqlite::Result<StudentLine> {
    Ok(StudentLine {
        id: row.get("id")?,
        name: row.get("name")?,
        archived: row.get("archived")?,
        asked: row.get("asked")?,
    })
}

pub(super) fn insert_fact(db: &Writing<'_>, fact: &Fact) -> Result<()> {
    db.execute(
        "INSERT INTO student_fact (id, student, kind, day, words) VALUES (?, ?, ?, ?, ?)",
        params![fact.id, fact.student, fact.kind, fact.day, fact.words],
    )?;
    Ok(())
}

pub(super) fn update_fact(db: &Writing<'_>, fact: &Fact) -> Result<()> {
    db.execute(
        "UPDATE student_fact SET kind = ?, day = ?, words = ? WHERE id = ?",
        params![fact.kind, fact.day, fact.words, fact.id],
    )?;
    Ok(())
}

pub(super) fn delete_fact(db: &Writing<'_>, id: FactId) -> Result<()> {
    db.execute("DELETE FROM student_fact WHERE id = ?", [id])?;
    Ok(())
}

pub(super) fn fact(db: &Reading<'_>, id: FactId) -> Result<Fact> {
    db.found("fact", &id, "SELECT * FROM student_fact WHERE id = ?", [id], a_fact)
}

pub(super) fn facts(db: &Reading<'_>, student: StudentId) -> Result<Vec<Fact>> {
    db.all("SELECT * FROM student_fact WHERE student = ?", [student], a_fact)
}

fn a_fact(row: &Row<'_>) -> rusqlite::Result<Fact> {
    Ok(Fact {
        id: row.get("id")?,
        student: row.get("student")?,
        kind: row.get("kind")?,
        day: row.get("day")?,
        words: row.get("words")?,
    })
}
