//! What a pack may not say. Every fault is found, each with its field.

mod court;
mod drills;
mod on_court;
mod scoring;

use std::collections::BTreeSet;

use super::{Fault, Pack};

/// Gathers what is wrong.
#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn add(&mut self, field: impl Into<String>, words: impl Into<String>) {
        self.0.push(Fault { field: field.into(), words: words.into() });
    }

    /// A text that says something.
    fn text(&mut self, field: impl Into<String>, text: &str) {
        if text.trim().is_empty() {
            self.add(field, "is empty");
        }
    }

    /// Ids that are each there once.
    fn once<'a>(&mut self, list: &str, part: &str, ids: impl Iterator<Item = &'a str>) {
        let mut seen = BTreeSet::new();
        for (number, id) in ids.enumerate() {
            let field = format!("{list}[{number}].{part}");
            if !seen.insert(id) {
                self.add(&field, format!("“{id}” is there twice"));
            }
            self.text(field, id);
        }
    }
}

/// Everything wrong with a pack.
pub fn faults(pack: &Pack) -> Vec<Fault> {
    let mut faults = Faults::default();
    for (field, text) in [("id", &pack.id), ("name", &pack.name), ("version", &pack.version)] {
        faults.text(field, text);
    }
    skills(pack, &mut faults);
    levels(pack, &mut faults);
    court::faults(pack, &mut faults);
    scoring::faults(pack, &mut faults);
    drills::faults(pack, &mut faults);
    on_court::faults(pack, &mut faults);
    faults.0
}

fn skills(pack: &Pack, faults: &mut Faults) {
    if pack.skills.is_empty() {
        faults.add("skills", "there is none");
    }
    faults.once("groups", "id", pack.groups.iter().map(|group| group.id.as_str()));
    faults.once("skills", "id", pack.skills.iter().map(|skill| skill.id.as_str()));
    for (number, group) in pack.groups.iter().enumerate() {
        faults.text(format!("groups[{number}].name"), &group.name);
        if pack.skills_of(&group.id).next().is_none() {
            faults.add(format!("groups[{number}]"), format!("“{}” has no skill", group.id));
        }
    }
    for (number, skill) in pack.skills.iter().enumerate() {
        let at = |part: &str| format!("skills[{number}].{part}");
        if !pack.groups.iter().any(|group| group.id == skill.group) {
            faults.add(at("group"), format!("“{}” is no group", skill.group));
        }
        faults.text(at("name"), &skill.name);
        faults.text(at("good_try"), &skill.good_try);
        faults.text(at("cue"), &skill.cue);
        faults.text(at("source"), &skill.source);
    }
}

fn levels(pack: &Pack, faults: &mut Faults) {
    let levels: Vec<u8> = pack.levels.anchors.iter().map(|anchor| anchor.level).collect();
    if levels != [0, 1, 2, 3, 4] {
        faults.add("levels.anchors", format!("the levels are 0 to 4 in order, not {levels:?}"));
    }
    for (number, anchor) in pack.levels.anchors.iter().enumerate() {
        faults.text(format!("levels.anchors[{number}].name"), &anchor.name);
        faults.text(format!("levels.anchors[{number}].words"), &anchor.words);
    }
    faults.text("levels.source", &pack.levels.source);
}
