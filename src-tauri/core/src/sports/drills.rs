//! The drills of a sport: the pack's and the coach's own.

use rusqlite::params;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use super::skills::OfSport;
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::DrillId;

/// A drill to choose.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct DrillLine {
    /// Its id in the pack, or of the coach's own.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What it is for.
    pub purpose: String,
    /// Who stands where, who feeds what.
    pub layout: String,
    /// How it is made harder, easiest first.
    pub steps: Vec<String>,
    /// The skills it serves.
    pub skills: Vec<String>,
    /// How long it usually takes, where the pack says.
    pub minutes: Option<u16>,
    /// Whether it is the coach's own.
    pub own: bool,
}

/// A drill of the coach's own.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddDrill {
    /// The pack's id.
    pub sport: String,
    /// Its name.
    pub name: String,
    /// A skill it serves; empty for none.
    #[serde(default)]
    pub skill: String,
    /// What it is for.
    #[serde(default)]
    pub purpose: String,
    /// Who stands where, who feeds what.
    #[serde(default)]
    pub layout: String,
    /// How it is made harder, one step a line, easiest first.
    #[serde(default)]
    pub steps: String,
}

/// The drills of a sport: the coach's own by name, then the pack's in its order.
///
/// # Errors
/// `NotFound` when there is no such sport.
pub fn drills(db: &Reading<'_>, of: OfSport) -> Result<Vec<DrillLine>> {
    let sport = if of.sport.is_empty() { super::USUAL.to_owned() } else { of.sport };
    let pack =
        super::pack(&sport).ok_or_else(|| Error::NotFound { what: "sport", id: sport.clone() })?;
    let mut drills = db.all(
        "SELECT id, name, skill, purpose, layout, steps FROM drill
         WHERE sport = ? AND archived IS NULL ORDER BY name",
        [&sport],
        |row| {
            let (skill, steps): (String, String) = (row.get("skill")?, row.get("steps")?);
            Ok(DrillLine {
                id: row.get("id")?,
                name: row.get("name")?,
                purpose: row.get("purpose")?,
                layout: row.get("layout")?,
                steps: steps.lines().map(str::to_owned).collect(),
                skills: Some(skill).filter(|skill| !skill.is_empty()).into_iter().collect(),
                minutes: None,
                own: true,
            })
        },
    )?;
    drills.extend(pack.drills.iter().map(|drill| DrillLine {
        id: drill.id.clone(),
        name: drill.name.clone(),
        purpose: drill.purpose.clone(),
        layout: drill.layout.clone(),
        steps: drill.progression.iter().map(|step| step.words.clone()).collect(),
        skills: drill.skills.clone(),
        minutes: Some(drill.minutes),
        own: false,
    }));
    Ok(drills)
}

/// Adds a drill of the coach's own.
///
/// # Errors
/// `NotFound` when there is no such sport; `Refused` without a name or with one that is there.
pub fn add_drill(db: &Writing<'_>, add: AddDrill) -> Result<Vec<DrillLine>> {
    let known = drills(db, OfSport { sport: add.sport.clone() })?;
    let mut p = Problems::new();
    let name = p.name("name", &add.name, "The name");
    let skill = p.line("skill", &add.skill, "The skill");
    let purpose = p.line("purpose", &add.purpose, "The purpose");
    let layout = p.note("layout", &add.layout, "The layout");
    let steps = p.note("steps", &add.steps, "The steps");
    if known.iter().any(|drill| drill.name == name) {
        p.add("name", "twice", "There is a drill of this name already.");
    }
    p.done()?;
    let id: DrillId = db.id();
    let sport = if add.sport.is_empty() { super::USUAL.to_owned() } else { add.sport };
    db.execute(
        "INSERT INTO drill (id, sport, name, skill, purpose, layout, steps) VALUES (?, ?, ?, ?, ?, ?, ?)",
        params![id, sport, name, skill, purpose, layout, steps],
    )?;
    db.label(format!("Drill added: {name}"));
    drills(db, OfSport { sport })
}
