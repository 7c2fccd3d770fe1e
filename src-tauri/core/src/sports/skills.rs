//! The skills of a sport: the pack's and the coach's own.

use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::pack::Pack;
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::SkillId;

/// Which sport.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OfSport {
    /// The pack's id.
    pub sport: String,
}

/// A skill of the coach's own.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddSkill {
    /// The pack's id.
    pub sport: String,
    /// Its name.
    pub name: String,
    /// What makes a try good.
    #[serde(default)]
    pub good_try: String,
}

/// A skill to choose.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct SkillLine {
    /// Its id in the pack, or of the coach's own.
    pub id: String,
    /// The group it stands in.
    pub group: String,
    /// Its name.
    pub name: String,
    /// What makes a try good.
    pub good_try: String,
    /// A cue to begin with; empty for none.
    pub cue: String,
    /// Whether it is the coach's own.
    pub own: bool,
}

/// The sport packs that came with the program.
pub fn packs() -> Vec<Pack> {
    super::packs().to_vec()
}

/// One sport's pack.
///
/// # Errors
/// `NotFound` when there is no such pack.
pub fn show(ask: OfSport) -> Result<Pack> {
    Ok(pack(&ask)?.clone())
}

fn pack(ask: &OfSport) -> Result<&'static Pack> {
    super::pack(&ask.sport).ok_or_else(|| Error::NotFound { what: "sport", id: ask.sport.clone() })
}

/// The skills of a sport.
///
/// # Errors
/// `NotFound` when there is no such pack.
pub fn list(db: &Reading<'_>, ask: OfSport) -> Result<Vec<SkillLine>> {
    let pack = pack(&ask)?;
    let mut skills: Vec<SkillLine> = pack
        .skills
        .iter()
        .map(|skill| SkillLine {
            id: skill.id.clone(),
            group: pack.group_name(&skill.group).to_owned(),
            name: skill.name.clone(),
            good_try: skill.good_try.clone(),
            cue: skill.cue.clone(),
            own: false,
        })
        .collect();
    skills.extend(db.all(
        "SELECT id, name, good_try FROM skill WHERE sport = ? ORDER BY name, id",
        [&ask.sport],
        |row| {
            Ok(SkillLine {
                id: row.get("id")?,
                group: "your own".to_owned(),
                name: row.get("name")?,
                good_try: row.get("good_try")?,
                cue: String::new(),
                own: true,
            })
        },
    )?);
    Ok(skills)
}

/// Adds a skill of the coach's own.
///
/// # Errors
/// `NotFound` when there is no such pack; `Refused` when the name is empty or taken.
pub fn add(db: &Writing<'_>, add: AddSkill) -> Result<Vec<SkillLine>> {
    let ask = OfSport { sport: add.sport.clone() };
    let skills = list(db, ask.clone())?;
    let mut p = Problems::new();
    let name = p.name("name", &add.name, "The skill\u{2019}s name");
    let good_try = p.note("good_try", &add.good_try, "What makes a try good");
    if skills.iter().any(|skill| skill.name.to_lowercase() == name.to_lowercase()) {
        p.add("name", "taken", format!("There is a skill named \u{201c}{name}\u{201d} already."));
    }
    p.done()?;
    let id: SkillId = db.id();
    db.execute(
        "INSERT INTO skill (id, sport, name, good_try) VALUES (?, ?, ?, ?)",
        params![id, add.sport, name, good_try],
    )?;
    db.label(format!("Skill added: {name}"));
    list(db, ask)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pack_is_shown_by_its_id() {
        let padel = show(OfSport { sport: "padel".to_owned() }).expect("a pack");
        assert_eq!((padel.id.as_str(), packs().len()), ("padel", 5));
        let unknown = show(OfSport { sport: "bowls".to_owned() });
        assert!(matches!(unknown, Err(Error::NotFound { what: "sport", .. })));
    }
}
