//! Which rows belong to a person: worked out from the schema's own foreign keys.

use std::collections::{BTreeMap, BTreeSet};

use crate::app::Reading;
use crate::app::journal::JOURNAL;
use crate::db::digest;
use crate::error::Result;

/// Parents that are shared: each with the tables whose rows hold it. It belongs to whoever all of its
/// holders belong to; while someone else holds it, it stays.
pub const HELD: &[(&str, &[&str])] = &[
    ("lesson", &["lesson_student"]),
    ("scan", &["acknowledgement", "clearance", "consent", "facility_form"]),
];

/// A reference of one table to another.
pub(super) struct Reference {
    table: String,
    column: String,
    parent: String,
    /// It cannot be NULL.
    must: bool,
}

impl Reference {
    pub(super) fn table(&self) -> &str {
        &self.table
    }

    pub(super) fn column(&self) -> &str {
        &self.column
    }

    pub(super) fn parent(&self) -> &str {
        &self.parent
    }
}

/// A row that stays, and a column of it that says something of the person.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Loosened {
    /// The table.
    pub table: String,
    /// The row.
    pub id: String,
    /// The column that becomes NULL.
    pub column: String,
}

/// All that belongs to one row: by table, the ids.
#[derive(Debug, Default)]
pub struct Belonging {
    rows: BTreeMap<String, BTreeSet<String>>,
    loosened: BTreeSet<Loosened>,
    shared: BTreeMap<String, BTreeSet<String>>,
}

/// The references of all tables that an act writes.
pub(super) fn references(db: &Reading<'_>) -> Result<Vec<Reference>> {
    let all = db.all(
        "SELECT m.name AS tbl, f.\"from\" AS col, f.\"table\" AS parent, c.\"notnull\" AS must
         FROM sqlite_schema m JOIN pragma_foreign_key_list(m.name) f
           JOIN pragma_table_info(m.name) c ON c.name = f.\"from\"
         WHERE m.type = 'table' ORDER BY m.name, c.cid",
        [],
        |row| {
            Ok(Reference {
                table: row.get("tbl")?,
                column: row.get("col")?,
                parent: row.get("parent")?,
                must: row.get("must")?,
            })
        },
    )?;
    let ours = |r: &Reference| r.table != JOURNAL && !digest::DERIVED.contains(&r.table.as_str());
    Ok(all.into_iter().filter(ours).collect())
}

/// The tables that can hold rows of someone who stands in `table`.
///
/// # Errors
/// `Storage`.
pub fn tables_of(db: &Reading<'_>, table: &str) -> Result<BTreeSet<String>> {
    Ok(reached(&references(db)?, BTreeSet::from([table.to_owned()])))
}

fn reached(references: &[Reference], mut reached: BTreeSet<String>) -> BTreeSet<String> {
    loop {
        let before = reached.len();
        for r in references {
            if reached.contains(&r.parent) {
                reached.insert(r.table.clone());
            }
        }
        for (parent, holders) in HELD {
            if holders.iter().any(|holder| reached.contains(*holder)) {
                reached.insert((*parent).to_owned());
            }
        }
        if reached.len() == before {
            return reached;
        }
    }
}

/// Whose a row is: the ids in `root` that its references lead to, over what it cannot be without, or
/// over those who hold it. Empty when it is nobody's.
///
/// # Errors
/// `Storage`.
pub fn owners(db: &Reading<'_>, table: &str, id: &str, root: &str) -> Result<BTreeSet<String>> {
    let references = references(db)?;
    let personal = reached(&references, BTreeSet::from([root.to_owned()]));
    let mut owners = BTreeSet::new();
    let mut seen = BTreeSet::new();
    let mut next = vec![(table.to_owned(), id.to_owned())];
    while let Some((table, id)) = next.pop() {
        if !seen.insert((table.clone(), id.clone())) {
            continue;
        }
        if table == root {
            owners.insert(id);
            continue;
        }
        let leads = |r: &&Reference| {
            r.table == table && (r.parent == root || (r.must && personal.contains(&r.parent)))
        };
        for r in references.iter().filter(leads) {
            let sql = format!("SELECT \"{}\" AS parent FROM \"{table}\" WHERE id = ?", r.column);
            let parent = db.one(&sql, [&id], |row| row.get::<_, Option<String>>("parent"))?;
            next.extend(parent.flatten().map(|id| (r.parent.clone(), id)));
        }
        let holders = HELD.iter().find(|(held, _)| *held == table).map_or(&[][..], |(_, by)| by);
        for r in references.iter().filter(|r| r.parent == table && holders.contains(&r.table())) {
            let sql = format!("SELECT id FROM \"{}\" WHERE \"{}\" = ?", r.table, r.column);
            let holders = db.all(&sql, [&id], |row| row.get::<_, String>("id"))?;
            next.extend(holders.into_iter().map(|id| (r.table.clone(), id)));
        }
    }
    Ok(owners)
}

impl Belonging {
    /// What belongs to the row `id` of `table`, itself included.
    ///
    /// # Errors
    /// `Storage`.
    pub fn of(db: &Reading<'_>, table: &str, id: &str) -> Result<Self> {
        Self::of_all(db, &[(table, id.to_owned())])
    }

    /// What belongs to several rows, each with its table and id, themselves included.
    ///
    /// # Errors
    /// `Storage`.
    pub fn of_all(db: &Reading<'_>, rows: &[(&str, String)]) -> Result<Self> {
        let references = references(db)?;
        let roots: BTreeSet<String> = rows.iter().map(|(table, _)| (*table).to_owned()).collect();
        let personal = reached(&references, roots.clone());
        let mut all = Self::default();
        for (table, id) in rows {
            all.add(table, id.clone());
        }
        loop {
            let before = all.count();
            all.loosened.clear();
            for r in references.iter().filter(|r| personal.contains(&r.table)) {
                all.follow(db, r, (&roots, &references, &personal))?;
            }
            for (parent, holders) in HELD {
                all.hold(db, parent, holders, &references)?;
            }
            if all.count() == before {
                return Ok(all);
            }
        }
    }

    /// The ids by table.
    pub fn rows(&self) -> impl Iterator<Item = (&str, &BTreeSet<String>)> {
        self.rows.iter().map(|(table, ids)| (table.as_str(), ids))
    }

    /// The ids of one table.
    pub fn of_table(&self, table: &str) -> impl Iterator<Item = &str> {
        self.rows.get(table).into_iter().flatten().map(String::as_str)
    }

    /// Whether a row belongs.
    pub fn has(&self, table: &str, id: &str) -> bool {
        self.rows.get(table).is_some_and(|ids| ids.contains(id))
    }

    /// How many rows belong.
    pub fn count(&self) -> usize {
        self.rows.values().map(BTreeSet::len).sum()
    }

    /// Rows that stay and lose a reference.
    pub fn loosened(&self) -> impl Iterator<Item = &Loosened> {
        self.loosened.iter()
    }

    /// Parents of [`HELD`] that someone else holds too.
    pub fn shared(&self) -> impl Iterator<Item = (&str, &BTreeSet<String>)> {
        self.shared.iter().map(|(table, ids)| (table.as_str(), ids))
    }

    fn add(&mut self, table: &str, id: String) -> bool {
        self.rows.entry(table.to_owned()).or_default().insert(id)
    }

    /// The ids of one table as one value of a statement.
    fn listed(&self, table: &str) -> String {
        serde_json::json!(self.of_table(table).collect::<Vec<_>>()).to_string()
    }

    /// Takes in the rows that a reference leads from.
    fn follow(
        &mut self,
        db: &Reading<'_>,
        r: &Reference,
        (roots, references, personal): (&BTreeSet<String>, &[Reference], &BTreeSet<String>),
    ) -> Result<()> {
        if !self.rows.contains_key(&r.parent) {
            return Ok(());
        }
        // Who else the row may belong to: whoever it names outright, and what it cannot be without.
        let sure = r.must || roots.contains(&r.parent);
        let others: Vec<&Reference> = references
            .iter()
            .filter(|o| !sure && o.table == r.table && o.column != r.column)
            .filter(|o| roots.contains(&o.parent) || (o.must && personal.contains(&o.parent)))
            .collect();
        let columns: String = others.iter().map(|o| format!(", \"{}\"", o.column)).collect();
        let sql = format!(
            "SELECT id{columns} FROM \"{}\" WHERE \"{}\" IN (SELECT value FROM json_each(?))",
            r.table, r.column
        );
        let found = db.all(&sql, [self.listed(&r.parent)], |row| {
            let others = (0..others.len()).map(|n| row.get::<_, Option<String>>(n + 1));
            Ok((row.get::<_, String>("id")?, others.collect::<rusqlite::Result<Vec<_>>>()?))
        })?;
        for (id, belongs_to) in found {
            let someone_elses = others
                .iter()
                .zip(&belongs_to)
                .any(|(o, id)| id.as_ref().is_some_and(|id| !self.has(&o.parent, id)));
            if !someone_elses {
                self.add(&r.table, id);
            } else if !self.has(&r.table, &id) {
                let (table, column) = (r.table.clone(), r.column.clone());
                self.loosened.insert(Loosened { table, id, column });
            }
        }
        Ok(())
    }

    /// Takes in the shared parents that nobody else holds, and notes those that somebody does.
    fn hold(
        &mut self,
        db: &Reading<'_>,
        parent: &str,
        holders: &[&str],
        references: &[Reference],
    ) -> Result<()> {
        let holds: Vec<&Reference> = references
            .iter()
            .filter(|r| r.parent == parent && holders.contains(&r.table.as_str()))
            .collect();
        let mut held: BTreeSet<String> = BTreeSet::new();
        for r in &holds {
            let sql = format!(
                "SELECT DISTINCT \"{}\" AS held FROM \"{}\"
                 WHERE \"{0}\" IS NOT NULL AND id IN (SELECT value FROM json_each(?))",
                r.column, r.table
            );
            held.extend(db.all(&sql, [self.listed(&r.table)], |row| row.get::<_, String>("held"))?);
        }
        let mut shared: BTreeSet<String> = BTreeSet::new();
        for r in &holds {
            let sql = format!(
                "SELECT DISTINCT \"{}\" AS held FROM \"{}\"
                 WHERE \"{0}\" IN (SELECT value FROM json_each(?1)) AND id NOT IN (SELECT value FROM json_each(?2))",
                r.column, r.table
            );
            let all = serde_json::json!(held).to_string();
            let found =
                db.all(&sql, [all, self.listed(&r.table)], |row| row.get::<_, String>("held"))?;
            shared.extend(found);
        }
        for id in held.difference(&shared) {
            self.add(parent, id.clone());
        }
        self.shared.insert(parent.to_owned(), shared);
        Ok(())
    }
}
