//! Which acts in the journal hold something of the person in their changes or in their label.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

use rusqlite::fallible_streaming_iterator::FallibleStreamingIterator;
use rusqlite::hooks::Action;
use rusqlite::session::ChangesetIter;

use super::{Belonging, Erasing, HELD};
use crate::app::Reading;
use crate::app::erase::belonging::references;
use crate::error::Result;
use crate::kinds::text::{folded, has_words};

/// One row of a changeset.
struct Image {
    table: String,
    id: String,
    /// Every text in it, old and new, with its column.
    texts: Vec<(usize, String)>,
}

/// What is looked for.
struct Sought {
    /// Ids of rows of the person, those that are long gone among them.
    ids: HashSet<String>,
    /// Ids of what the person shared with others.
    shared: HashSet<String>,
    /// The person's names, ever, folded.
    names: BTreeSet<String>,
}

/// The ids of the acts to erase, first to last.
///
/// # Errors
/// `Storage`.
pub(super) fn naming(
    db: &Reading<'_>,
    what: &Erasing<'_>,
    belonging: &Belonging,
) -> Result<Vec<String>> {
    let mut sought = Sought {
        ids: belonging.rows().flat_map(|(_, ids)| ids.iter().cloned()).collect(),
        shared: belonging.shared().flat_map(|(_, ids)| ids.iter().cloned()).collect(),
        names: BTreeSet::new(),
    };
    look_back(db, what, &mut sought)?;
    let mut found = Vec::new();
    each(db, |act, label, images| {
        if sought.takes(label, images) {
            found.push(act.to_owned());
        }
    })?;
    Ok(found)
}

/// Looks through the whole journal once for what rows no longer tell: shared parents that are gone,
/// and earlier names.
fn look_back(db: &Reading<'_>, what: &Erasing<'_>, sought: &mut Sought) -> Result<()> {
    let mut names_at = HashMap::new();
    for (table, id) in &what.roots {
        let sql = "SELECT cid FROM pragma_table_info(?) WHERE name = 'name'";
        let Some(at) = db.one(sql, [table], |row| row.get::<_, i64>("cid"))? else { continue };
        names_at.insert((*table, id.as_str()), usize::try_from(at).unwrap_or_default());
        let sql = format!("SELECT name FROM \"{table}\" WHERE id = ?");
        let name = db.one(&sql, [id], |row| row.get::<_, String>("name"))?;
        sought.names.extend(name.map(|name| folded(&name)));
    }
    let holds: HashMap<String, (String, usize)> = holds(db)?;
    let mut held: BTreeMap<(String, String), (bool, bool)> = BTreeMap::new();
    each(db, |_, _, images| {
        for image in images {
            if let Some(name_at) = names_at.get(&(image.table.as_str(), image.id.as_str())) {
                let names = image.texts.iter().filter(|(at, _)| at == name_at);
                sought.names.extend(names.map(|(_, name)| folded(name)));
            }
            let Some((parent, at)) = holds.get(&image.table) else { continue };
            let ours = sought.ids.contains(&image.id) || sought.names_row(image);
            for (_, id) in image.texts.iter().filter(|(column, _)| column == at) {
                let (by_us, by_others) = held.entry((parent.clone(), id.clone())).or_default();
                *by_us |= ours;
                *by_others |= !ours;
            }
        }
    })?;
    for ((parent, id), (by_us, by_others)) in held {
        let there = format!("SELECT 1 FROM \"{parent}\" WHERE id = ?");
        if !by_us || sought.ids.contains(&id) {
            continue;
        }
        // One that others held, or that stands here without the person, is not the person's.
        if by_others || db.one(&there, [&id], |_| Ok(()))?.is_some() {
            sought.shared.insert(id);
        } else {
            sought.ids.insert(id);
        }
    }
    sought.names.retain(|name| !name.is_empty() && !what.spared.contains(name));
    Ok(())
}

/// By table that holds a shared parent: the parent, and the column that names it.
fn holds(db: &Reading<'_>) -> Result<HashMap<String, (String, usize)>> {
    let mut holds = HashMap::new();
    for r in references(db)? {
        let Some((parent, _)) = HELD
            .iter()
            .find(|(parent, holders)| *parent == r.parent() && holders.contains(&r.table()))
        else {
            continue;
        };
        let at = db.one(
            "SELECT cid FROM pragma_table_info(?) WHERE name = ?",
            [r.table(), r.column()],
            |row| row.get::<_, i64>("cid"),
        )?;
        if let Some(at) = at.and_then(|at| usize::try_from(at).ok()) {
            holds.insert(r.table().to_owned(), ((*parent).to_owned(), at));
        }
    }
    Ok(holds)
}

impl Sought {
    /// Whether a row names one of the person's: by a reference, whatever its column was called then.
    fn names_row(&self, image: &Image) -> bool {
        image.texts.iter().any(|(_, text)| self.ids.contains(text))
    }

    /// Whether an act holds something of the person. Ids are followed as the journal goes: a block of
    /// a goal that is long gone was written after the goal.
    fn takes(&mut self, label: &str, images: &[Image]) -> bool {
        let (mut takes, mut near) = (false, false);
        for image in images {
            if self.ids.contains(&image.id) {
                takes = true;
            } else if self.names_row(image) {
                takes = true;
                self.ids.insert(image.id.clone());
            }
            near = near
                || self.shared.contains(&image.id)
                || image.texts.iter().any(|(_, text)| self.shared.contains(text));
        }
        takes || self.is_told(label, near) || images.iter().any(|image| self.in_words(image, near))
    }

    /// Whether words name the person. A name of one word is looked for only beside what was shared:
    /// too many people are called Ana.
    fn is_told(&self, words: &str, near: bool) -> bool {
        let words = folded(words);
        let names = self.names.iter().filter(|name| near || name.contains(' '));
        names.into_iter().any(|name| has_words(&words, name))
    }

    fn in_words(&self, image: &Image, near: bool) -> bool {
        image.texts.iter().any(|(_, text)| self.is_told(text, near))
    }
}

/// Hands the acts that are still whole to `look`, first to last.
fn each(db: &Reading<'_>, mut look: impl FnMut(&str, &str, &[Image])) -> Result<()> {
    let mut rows = db
        .conn
        .prepare("SELECT id, label, changes FROM journal WHERE erased IS NULL ORDER BY seq")?;
    let mut rows = rows.query([])?;
    while let Some(row) = rows.next()? {
        let changes: Vec<u8> = row.get("changes")?;
        let (id, label): (String, String) = (row.get("id")?, row.get("label")?);
        look(&id, &label, &images(&changes)?);
    }
    Ok(())
}

fn images(changes: &[u8]) -> Result<Vec<Image>> {
    let mut images = Vec::new();
    if changes.is_empty() {
        return Ok(images);
    }
    let mut input = changes;
    let input: &mut dyn std::io::Read = &mut input;
    let mut all = ChangesetIter::start_strm(&input)?;
    while let Some(change) = all.next()? {
        let operation = change.op()?;
        let code = operation.code();
        let mut texts = Vec::new();
        for column in 0..usize::try_from(operation.number_of_columns()).unwrap_or(0) {
            // A column that an update left alone has no value.
            if code != Action::SQLITE_INSERT
                && let Ok(value) = change.old_value(column)
                && let Ok(text) = value.as_str()
            {
                texts.push((column, text.to_owned()));
            }
            if code != Action::SQLITE_DELETE
                && let Ok(value) = change.new_value(column)
                && let Ok(text) = value.as_str()
            {
                texts.push((column, text.to_owned()));
            }
        }
        // The primary key is each table's first column, its id.
        let id =
            texts.iter().find(|(at, _)| *at == 0).map(|(_, id)| id.clone()).unwrap_or_default();
        images.push(Image { table: operation.table_name().to_owned(), id, texts });
    }
    Ok(images)
}
