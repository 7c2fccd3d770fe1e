//! What a pack may not say.

use std::collections::BTreeSet;

use super::{Broken, Line, Pack, RuleSet, SurfaceId};

/// Everything wrong with a pack, in words that name the part.
pub fn faults(pack: &Pack) -> Vec<String> {
    let mut faults = Vec::new();
    named(pack, &mut faults);
    skills(pack, &mut faults);
    levels(pack, &mut faults);
    court(pack, &mut faults);
    for rules in &pack.scoring {
        scoring(rules, &mut faults);
    }
    faults
}

/// Every id once, and nothing left empty.
fn named(pack: &Pack, faults: &mut Vec<String>) {
    let lists: [(&str, Vec<&str>); 4] = [
        ("group", pack.groups.iter().map(|g| g.id.as_str()).collect()),
        ("skill", pack.skills.iter().map(|s| s.id.as_str()).collect()),
        ("line", pack.court.lines.iter().map(|l| l.id.as_str()).collect()),
        ("rule set", pack.scoring.iter().map(|r| r.id.as_str()).collect()),
    ];
    for (what, ids) in lists {
        if ids.is_empty() {
            faults.push(format!("there is no {what}"));
        }
        let mut seen = BTreeSet::new();
        for id in ids {
            if !seen.insert(id) {
                faults.push(format!("the {what} “{id}” is there twice"));
            }
        }
    }
    let mut texts: Vec<(String, &str)> = vec![
        ("the pack's id".into(), &pack.id),
        ("the pack's name".into(), &pack.name),
        ("the pack's version".into(), &pack.version),
        ("the source of the levels".into(), &pack.levels.source),
        ("the source of the court".into(), &pack.court.source),
    ];
    for skill in &pack.skills {
        for (part, text) in [
            ("name", &skill.name),
            ("good try", &skill.good_try),
            ("cue", &skill.cue),
            ("source", &skill.source),
        ] {
            texts.push((format!("the {part} of the skill “{}”", skill.id), text));
        }
    }
    for line in &pack.court.lines {
        texts.push((format!("the source of the line “{}”", line.id), &line.source));
    }
    for rules in &pack.scoring {
        texts.push((format!("the source of the rule set “{}”", rules.id), &rules.source));
    }
    faults.extend(
        texts
            .into_iter()
            .filter(|(_, text)| text.trim().is_empty())
            .map(|(what, _)| format!("{what} is empty")),
    );
}

fn skills(pack: &Pack, faults: &mut Vec<String>) {
    for skill in &pack.skills {
        if !pack.groups.iter().any(|group| group.id == skill.group) {
            faults.push(format!(
                "the skill “{}” belongs to “{}”, which is no group",
                skill.id, skill.group
            ));
        }
    }
    for group in &pack.groups {
        if pack.skills_of(&group.id).next().is_none() {
            faults.push(format!("the group “{}” has no skill", group.id));
        }
    }
}

fn levels(pack: &Pack, faults: &mut Vec<String>) {
    let levels: Vec<u8> = pack.levels.anchors.iter().map(|anchor| anchor.level).collect();
    if levels != [0, 1, 2, 3, 4] {
        faults.push(format!("the levels are 0 to 4 in order, not {levels:?}"));
    }
    for anchor in &pack.levels.anchors {
        if anchor.words.trim().is_empty() {
            faults.push(format!("level {} has no words", anchor.level));
        }
    }
}

fn court(pack: &Pack, faults: &mut Vec<String>) {
    let court = &pack.court;
    if ![court.width, court.length, court.height].iter().all(|x| x.is_finite() && *x > 0.0) {
        faults.push("the court has no size".into());
    }
    for surface in &court.surfaces {
        let (across, along) = match surface.id {
            SurfaceId::Front | SurfaceId::Back => (court.width, court.height),
            SurfaceId::Left | SurfaceId::Right => (court.length, court.height),
            SurfaceId::Ceiling | SurfaceId::Floor => (court.width, court.length),
        };
        let fits = if surface.at_least { surface.along <= along } else { surface.along == along };
        if surface.across != across || !fits {
            faults.push(format!("the surface {:?} does not fit the court", surface.id));
        }
    }
    for line in &court.lines {
        if !court.surfaces.iter().any(|surface| surface.id == line.surface) {
            faults.push(format!("the line “{}” is on a surface the court lacks", line.id));
        }
        let inside = [line.from, line.to]
            .iter()
            .all(|[x, y]| (0.0..=court.width).contains(x) && (0.0..=court.length).contains(y));
        if line.surface == SurfaceId::Floor && !inside {
            faults.push(format!("the line “{}” leaves the floor", line.id));
        }
        if !(line.width > 0.0 && line.width.is_finite()) {
            faults.push(format!("the line “{}” has no width", line.id));
        }
        if let Some(broken) = &line.broken {
            pieces(line, broken, faults);
        }
    }
}

fn pieces(line: &Line, broken: &Broken, faults: &mut Vec<String>) {
    let length = (line.to[0] - line.from[0]).hypot(line.to[1] - line.from[1]);
    if broken.length() != length {
        faults.push(format!(
            "the pieces of the line “{}” add up to {} inches, the line is {length}",
            line.id,
            broken.length()
        ));
    }
    if broken.gaps != broken.dashes.saturating_add(1) {
        faults.push(format!("the line “{}” does not change between gap and dash", line.id));
    }
}

fn scoring(rules: &RuleSet, faults: &mut Vec<String>) {
    let id = &rules.id;
    if rules.games_to_win == 0
        || rules.games.len() != (usize::from(rules.games_to_win) * 2).saturating_sub(1)
    {
        faults.push(format!(
            "the rule set “{id}” lists {} games, which does not fit {} to win",
            rules.games.len(),
            rules.games_to_win
        ));
    }
    if rules.games.iter().any(|game| game.to == 0 || game.win_by == 0) {
        faults.push(format!("the rule set “{id}” has a game to nothing"));
    }
    if rules.from.zip(rules.until).is_some_and(|(from, until)| until < from) {
        faults.push(format!("the rule set “{id}” ends before it begins"));
    }
}
