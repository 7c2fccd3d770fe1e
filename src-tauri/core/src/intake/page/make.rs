//! Making the page: one file that holds everything it needs, forbids itself everything else, and
//! names the student by a token that counts once.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::json;
use sha2::{Digest, Sha256};

use super::questions::QUESTIONS;
use crate::app::Writing;
use crate::db::digest;
use crate::error::{Error, Result};
use crate::kinds::Day;
use crate::kinds::ids::{PageId, StudentId};
use crate::print::file_words;
use crate::students;

/// For so many days the answers of a page can be read in.
const COUNTS_FOR: i64 = 60;

const PAGE: &str = include_str!("page.html");
const STYLE: &str = include_str!("page.css");
const SCRIPT: &str = include_str!("page.js");

/// For whom.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MakePage {
    /// The student.
    pub student: StudentId,
}

/// A page as made.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct PageMade {
    /// A name for its file.
    pub name: String,
    /// The whole page.
    pub html: String,
    /// The last day its answers can be read in.
    pub until: Day,
}

/// Makes the page of a student. Pages made before still count, each once.
///
/// # Errors
/// `NotFound`.
pub fn make(db: &Writing<'_>, of: MakePage) -> Result<PageMade> {
    let student = students::show(db, students::Which { student: of.student })?;
    let (id, token): (PageId, PageId) = (db.id(), db.id());
    let token = token.to_string();
    let until = db.today().plus(COUNTS_FOR);
    db.execute(
        "INSERT INTO intake_page (id, student, token, made, until) VALUES (?, ?, ?, ?, ?)",
        params![id, student.id, digest::sha256(token.as_bytes()), db.today(), until],
    )?;
    db.label(format!("Intake page made: {}", student.profile.name));
    // A page that left the program cannot be called back, only not be read.
    Ok(PageMade {
        name: file_name(&student.profile.name),
        html: page(&student.addressed, &token)?,
        until,
    })
}

/// The name of the file of a student's page.
pub fn file_name(student: &str) -> String {
    format!("Before your lessons {}.html", file_words(student))
}

/// The page with its token and its own policy: only this style and this script run, nothing is asked
/// of any network, no form is sent.
fn page(name: &str, token: &str) -> Result<String> {
    let data = json!({ "token": token, "name": name, "questions": QUESTIONS });
    // In a script element nothing but `<` could end it; as an escape it is the same JSON.
    let data = serde_json::to_string(&data)
        .map_err(|e| Error::Fault(e.to_string()))?
        .replace('<', "\\u003c");
    let own = |text: &str| {
        format!("sha256-{}", STANDARD.encode(Sha256::digest(format!("\n{text}").as_bytes())))
    };
    Ok(PAGE
        .replace("{{STYLE}}", &own(STYLE))
        .replace("{{SCRIPT}}", &own(SCRIPT))
        .replace("{{CSS}}", STYLE)
        .replace("{{JS}}", SCRIPT)
        .replace("{{DATA}}", &data))
}
