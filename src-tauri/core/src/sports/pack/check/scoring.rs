//! What a rule set may not say.

use chrono::NaiveDate;

use super::super::{Game, LastSet, Pack, RuleSet, Scoring, SetRule, SetRuleSet};
use super::Faults;

pub fn faults(pack: &Pack, faults: &mut Faults) {
    if pack.rules().next().is_none() {
        faults.add("scoring", "there is no rule set");
    }
    faults.once("scoring", "id", pack.scoring.iter().map(|rules| rules.id.as_str()));
    faults.once("set_scoring", "id", pack.set_scoring.iter().map(|rules| rules.id.as_str()));
    for (number, rules) in pack.scoring.iter().enumerate() {
        points(rules, &format!("scoring[{number}]"), faults);
    }
    for (number, rules) in pack.set_scoring.iter().enumerate() {
        let at = format!("set_scoring[{number}]");
        if pack.scoring.iter().any(|other| other.id == rules.id) {
            faults.add(format!("{at}.id"), format!("“{}” is there twice", rules.id));
        }
        sets(rules, &at, faults);
    }
}

fn named(at: &str, name: &str, source: &str, faults: &mut Faults) {
    faults.text(format!("{at}.name"), name);
    faults.text(format!("{at}.source"), source);
}

fn dates(at: &str, from: Option<NaiveDate>, until: Option<NaiveDate>, faults: &mut Faults) {
    if from.zip(until).is_some_and(|(from, until)| until < from) {
        faults.add(format!("{at}.until"), "the rule set ends before it begins");
    }
}

fn points(rules: &RuleSet, at: &str, faults: &mut Faults) {
    named(at, &rules.name, &rules.source, faults);
    dates(at, rules.from, rules.until, faults);
    if rules.both_serve && rules.scoring != Scoring::Server {
        faults.add(
            format!("{at}.both_serve"),
            "both serve in turn only where only the server scores",
        );
    }
    let most = (usize::from(rules.games_to_win) * 2).saturating_sub(1);
    if rules.games_to_win == 0 || rules.games.len() != most {
        faults.add(
            format!("{at}.games"),
            format!("{} games do not fit {} to win", rules.games.len(), rules.games_to_win),
        );
    }
    for (number, game) in rules.games.iter().enumerate() {
        if game.to == 0 || game.win_by == 0 {
            faults.add(format!("{at}.games[{number}]"), "a game to nothing");
        }
    }
}

fn sets(rules: &SetRuleSet, at: &str, faults: &mut Faults) {
    named(at, &rules.name, &rules.source, faults);
    dates(at, rules.from, rules.until, faults);
    if rules.sets_to_win == 0 {
        faults.add(format!("{at}.sets_to_win"), "at least one set wins a match");
    }
    set(&rules.set, &format!("{at}.set"), faults);
    let at = format!("{at}.last_set");
    match rules.last_set {
        None => {}
        Some(LastSet { set: Some(rule), tiebreak: None }) => {
            set(&rule, &format!("{at}.set"), faults);
        }
        Some(LastSet { set: None, tiebreak: Some(tiebreak) }) => {
            check_tiebreak(tiebreak, &format!("{at}.tiebreak"), faults);
        }
        Some(_) => faults.add(at, "is either a set or a tiebreak"),
    }
}

fn set(rule: &SetRule, at: &str, faults: &mut Faults) {
    if rule.games == 0 || rule.win_by == 0 {
        faults.add(at, "a set to nothing");
    }
    if let Some(tiebreak) = rule.tiebreak {
        let points = Game { to: tiebreak.to, win_by: tiebreak.win_by };
        check_tiebreak(points, &format!("{at}.tiebreak"), faults);
        // Below this the set could not be level and still open.
        if tiebreak.at.saturating_add(1) < rule.games {
            faults.add(format!("{at}.tiebreak.at"), "the tiebreak comes before the set is decided");
        }
    }
}

fn check_tiebreak(tiebreak: Game, at: &str, faults: &mut Faults) {
    if tiebreak.to == 0 || tiebreak.win_by == 0 {
        faults.add(at, "a tiebreak to nothing");
    }
}
