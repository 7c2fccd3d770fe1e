//! Erasing a student.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Backups, KeptForAccounts, Mentions, accounts, backups, kinds, mentions, store, would};
use crate::app::erase::Erasing;
use crate::app::{CoachFile, Written};
use crate::calendar;
use crate::error::{Error, Problems, Result};
use crate::goals;
use crate::kinds::Day;
use crate::kinds::ids::StudentId;
use crate::kinds::text::{counted, line};
use crate::payers;
use crate::students::Which;

/// What is told when the file could not be written anew.
pub(super) const NOT_CLEARED: &str = "It is erased, but the file could not be written anew, as on a full disk. Free some space and open the file again: that is done then.";

/// What is told when the name typed is not the student's.
pub(super) const OTHER_NAME: &str =
    "This is not the student\u{2019}s full name. Type it as it stands above.";

/// A student to erase.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EraseStudent {
    /// Which student.
    pub student: StudentId,
    /// The student's full name, typed, so that nobody is erased by a slip.
    pub name_typed: String,
    /// Whether what the accounts need is kept apart.
    #[serde(default)]
    pub keep_accounts: bool,
    /// The last day it is kept, as YYYY-MM-DD; left out for the first guess.
    #[serde(default)]
    pub accounts_until: String,
    /// Why it is kept, in the coach's words.
    #[serde(default)]
    pub reason: String,
}

/// What was erased, and what is left to do.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Erased {
    /// What was done, as a sentence.
    pub words: String,
    /// How many rows went.
    pub rows: u32,
    /// How many steps in the history lost their words.
    pub acts: u32,
    /// How many things are kept for the accounts.
    pub kept: u32,
    /// Where others' records still name the person.
    pub mentions: Mentions,
    /// The copies of the file that still hold the person, or may.
    pub backups: Backups,
    /// Whether lessons on a server's calendar are to be brought in step.
    pub calendar: bool,
    /// What is left to do, a sentence each.
    pub left: Vec<String>,
}

/// Erases a student: all that is kept about them, with its history. It cannot be undone.
///
/// # Errors
/// `NotFound`; `Refused` when the name typed is not the student's, or the day is none; `NotPossible`
/// while a visit is open.
pub fn erase(file: &mut CoachFile, ask: EraseStudent) -> Result<Written<Erased>> {
    let (spared, keep, roots, invoiced) = file.read(|db| {
        let (name, folded) = store::name(db, ask.student)?;
        if let Some(words) = would::against(db, Which { student: ask.student })? {
            return Err(Error::not_possible("visit_open", words));
        }
        let mut p = Problems::new();
        if line(&ask.name_typed) != name {
            p.add("name_typed", "other_name", OTHER_NAME);
        }
        let reason = p.note("reason", &ask.reason, "The reason");
        let mut keep = Vec::new();
        if ask.keep_accounts {
            let needed = accounts::needed(db, ask.student)?;
            let guess = needed.last().map(|(_, newest)| accounts::usual_until(newest.day));
            let typed = p.day_or_none("accounts_until", Some(&ask.accounts_until), "The last day");
            if typed.is_some_and(|until| until < db.today()) {
                p.add(
                    "accounts_until",
                    "past",
                    "This day has passed. Choose a later one, or keep nothing.",
                );
            }
            if let Some(until) = typed.or(guess) {
                keep.extend(needed.into_iter().map(|(_, draft)| (draft, until, reason.clone())));
            }
        }
        p.done()?;
        let mut spared: std::collections::BTreeSet<String> =
            store::other_names(db, ask.student)?.into_iter().collect();
        spared.retain(|name| *name == folded);
        let mut roots = vec![(kinds::STUDENT, ask.student.to_string())];
        // Whoever paid for nobody else, and has nothing in the accounts, goes too.
        let payer = payers::without_accounts(db, ask.student)?;
        roots.extend(payer.map(|payer| ("payer", payer.to_string())));
        let invoiced = would::invoiced(db, Which { student: ask.student })?;
        Ok((spared, keep, roots, invoiced))
    })?;
    let what = Erasing { act: "students.erase", label: "A student erased", roots, spared };
    let kept = u32::try_from(keep.len()).unwrap_or(u32::MAX);
    let done = file.erase(
        what,
        |db, belonging| {
            let mentions = mentions::mentions(db, ask.student, belonging)?;
            let backups = backups::holding(db, ask.student)?;
            for (draft, until, reason) in keep {
                let kept = KeptForAccounts {
                    id: db.id(),
                    name: draft.name,
                    address: draft.address,
                    day: draft.day,
                    what: draft.what,
                    price: draft.price,
                    state: draft.state,
                    until,
                    reason,
                };
                store::insert_kept(db, &kept)?;
            }
            let calendar = calendar::forget(db, &store::lessons_of(db, ask.student)?)?;
            Ok((mentions, backups, calendar))
        },
        goals::standing::keep_all,
    )?;
    let (mentions, backups, calendar) = done.written.value;
    let mut left = left(&mentions, &backups, (calendar, done.cleared), file.today());
    left.extend(Some(invoiced).filter(|words| !words.is_empty()));
    let rows = u32::try_from(done.rows).unwrap_or(u32::MAX);
    let words = format!(
        "Everything about this person is erased: {}.",
        counted(i64::from(rows), "entry", "entries")
    );
    let acts = u32::try_from(done.acts).unwrap_or(u32::MAX);
    let value = Erased { words, rows, acts, kept, mentions, backups, calendar, left };
    Ok(Written { value, act: done.written.act, changes: done.written.changes })
}

fn left(
    mentions: &Mentions,
    backups: &Backups,
    (calendar, cleared): (bool, bool),
    today: Day,
) -> Vec<String> {
    let mut left = Vec::new();
    if !cleared {
        left.push(NOT_CLEARED.to_owned());
    }
    left.extend(copies_words(backups, "this person", today));
    let many = mentions.list.len() + mentions.more as usize;
    if many > 0 {
        left.push(format!(
            "{} the name. Go and look.",
            counted(
                i64::try_from(many).unwrap_or(i64::MAX),
                "other record still has",
                "other records still have"
            )
        ));
    }
    if calendar {
        left.push(
            "Bring your calendars on the server in step, so that the lessons go there too."
                .to_owned(),
        );
    }
    left
}

/// That copies of the file hold what was erased still, with the day the last of them lapses.
pub(super) fn copies_words(backups: &Backups, what: &str, today: Day) -> Option<String> {
    let many = backups.backups.len();
    let last = backups.backups.iter().map(|backup| backup.lapses).max()?;
    let copies = if many == 1 {
        "1 copy of the file holds".to_owned()
    } else {
        format!("{many} copies of the file hold")
    };
    let by = if last < today { "now".to_owned() } else { format!("by {}", last.words()) };
    Some(format!("{copies} {what} still, or may. Delete what is left of it {by}."))
}
