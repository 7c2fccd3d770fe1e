//! Undo: an act's changes are taken back by a new act, if nothing has been built on them since.

use rusqlite::session::{ChangesetItem, ConflictAction, ConflictType, invert_strm};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{CoachFile, Writing, Written};
use crate::error::{Error, Result};
use crate::kinds::ids::ActId;

/// What was undone.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub struct Undone {
    /// The label of the act that was taken back.
    pub label: String,
}

impl CoachFile {
    /// Takes an act back: each row it wrote gets its old values again. Refused as a whole when one
    /// of those rows was changed since, or when something else now leans on one of them.
    ///
    /// # Errors
    /// `NotFound`; `NotPossible` when it was undone already, left the program, or was built upon.
    pub fn undo(&mut self, act: ActId) -> Result<Written<Undone>> {
        self.write_undoing("journal.undo", "Undo", Some(act), |db| take_back(db, act))
    }
}

fn take_back(db: &Writing<'_>, act: ActId) -> Result<Undone> {
    let (label, honest, changes, itself_undo, erased) = db.found(
        "act",
        &act,
        "SELECT label, honest, changes, undoes IS NOT NULL AS itself_undo, erased IS NOT NULL AS erased
         FROM journal WHERE id = ?",
        [act],
        |row| {
            Ok((
                row.get::<_, String>("label")?,
                row.get::<_, bool>("honest")?,
                row.get::<_, Vec<u8>>("changes")?,
                row.get::<_, bool>("itself_undo")?,
                row.get::<_, bool>("erased")?,
            ))
        },
    )?;
    let undone = db.one("SELECT 1 FROM journal WHERE undoes = ?", [act], |_| Ok(()))?.is_some();
    if undone || itself_undo {
        return Err(Error::not_possible("undone", "This was undone already."));
    }
    if erased {
        return Err(Error::not_possible(
            "erased",
            "This cannot be undone any more: what it did was erased together with a person\u{2019}s record.",
        ));
    }
    // An act of the program always changes something: only an erasing keeps nothing of it.
    if changes.is_empty() {
        return Err(Error::not_possible(
            "erased",
            "This cannot be undone: what was erased is nowhere in this file any more.",
        ));
    }
    if !honest {
        return Err(Error::not_possible(
            "left_the_program",
            format!(
                "\u{201c}{label}\u{201d} cannot be undone: it may have left this machine. Write a new one instead."
            ),
        ));
    }
    db.label(format!("Undone: {label}"));
    let mut inverse = Vec::new();
    invert_strm(&mut changes.as_slice(), &mut inverse)?;
    let mut input = inverse.as_slice();
    let input: &mut dyn std::io::Read = &mut input;
    db.reading
        .conn
        .apply_strm(input, None::<fn(&str) -> bool>, stop)
        .map_err(|_| built_upon(&label))?;
    Ok(Undone { label })
}

/// Any conflict stops the whole undo.
fn stop(_: ConflictType, _: &ChangesetItem) -> ConflictAction {
    ConflictAction::SQLITE_CHANGESET_ABORT
}

fn built_upon(label: &str) -> Error {
    Error::not_possible(
        "built_upon",
        format!(
            "\u{201c}{label}\u{201d} cannot be undone any more: what it wrote was changed or used since. \
             Undo the later steps first, or change it by hand."
        ),
    )
}
