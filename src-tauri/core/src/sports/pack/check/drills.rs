//! What drills and divisions may not say.

use std::collections::BTreeSet;

use super::super::{Drill, Pack};
use super::Faults;

pub fn faults(pack: &Pack, faults: &mut Faults) {
    let mut seen = BTreeSet::new();
    for (number, division) in pack.divisions.iter().enumerate() {
        let at = |part: &str| format!("divisions[{number}].{part}");
        faults.text(at("list"), &division.list);
        faults.text(at("name"), &division.name);
        faults.text(at("source"), &division.source);
        if !seen.insert((&division.list, &division.name)) {
            faults.add(at("name"), format!("“{}” is there twice", division.name));
        }
    }
    faults.once("drills", "id", pack.drills.iter().map(|drill| drill.id.as_str()));
    for (number, drill) in pack.drills.iter().enumerate() {
        check_drill(pack, drill, &format!("drills[{number}]"), faults);
    }
    loops(pack, faults);
}

fn check_drill(pack: &Pack, drill: &Drill, at: &str, faults: &mut Faults) {
    for (part, text) in [
        ("name", &drill.name),
        ("purpose", &drill.purpose),
        ("layout", &drill.layout),
        ("source", &drill.source),
    ] {
        faults.text(format!("{at}.{part}"), text);
    }
    if drill.skills.is_empty() {
        faults.add(format!("{at}.skills"), "the drill serves no skill");
    }
    for (number, skill) in drill.skills.iter().enumerate() {
        let field = format!("{at}.skills[{number}]");
        if pack.find_skill(skill).is_none() {
            faults.add(&field, format!("“{skill}” is no skill of this pack"));
        }
        if drill.skills.iter().take(number).any(|other| other == skill) {
            faults.add(field, format!("“{skill}” is there twice"));
        }
    }
    let [lowest, highest] = drill.levels;
    if lowest > highest || highest > 4 {
        faults.add(format!("{at}.levels"), "the levels run from 0 to 4, the lower one first");
    }
    if drill.minutes == 0 {
        faults.add(format!("{at}.minutes"), "a drill takes at least a minute");
    }
    for (number, line) in drill.progression.iter().enumerate() {
        let field = format!("{at}.progression[{number}]");
        faults.text(format!("{field}.words"), &line.words);
        if let Some(id) = line.drill.as_ref().filter(|id| pack.find_drill(id).is_none()) {
            faults.add(format!("{field}.drill"), format!("“{id}” is no drill of this pack"));
        }
    }
}

/// A progression never leads back to where it began.
fn loops(pack: &Pack, faults: &mut Faults) {
    for (number, drill) in pack.drills.iter().enumerate() {
        let mut way = Vec::new();
        if leads_back(pack, drill, &drill.id, &mut BTreeSet::new(), &mut way) {
            way.reverse();
            let words = format!("the progression leads back: {} → {}", drill.id, way.join(" → "));
            faults.add(format!("drills[{number}].progression"), words);
        }
    }
}

/// Whether a way leads from `drill` to `goal`; `way` is then that way, backwards.
fn leads_back<'a>(
    pack: &'a Pack,
    drill: &'a Drill,
    goal: &str,
    seen: &mut BTreeSet<&'a str>,
    way: &mut Vec<&'a str>,
) -> bool {
    for next in drill.progression.iter().filter_map(|line| line.drill.as_deref()) {
        let found = next == goal
            || seen.insert(next)
                && pack
                    .find_drill(next)
                    .is_some_and(|there| leads_back(pack, there, goal, seen, way));
        if found {
            way.push(next);
            return true;
        }
    }
    false
}
