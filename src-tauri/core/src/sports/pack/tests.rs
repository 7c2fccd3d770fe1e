//! The pack against the rulebook, and what a broken pack is told.

use super::*;
use crate::sports::racquetball;

fn pack() -> Pack {
    racquetball().expect("the built-in pack reads")
}

/// USA Racquetball Official Rules, rule 2.1 (court and lines): 20 ft wide, 40 ft long, 20 ft high,
/// back wall at least 12 ft; lines 1½ in; the back edge of the short line midway; the front edge of
/// the service line 5 ft in front of it; the back edge of the receiving line 5 ft behind it, of a
/// 21 in piece at each wall, 17 gaps and 16 dashes of 6 in; service boxes 18 in and drive-serve
/// lines 3 ft from each side wall, to the inner edge.
#[test]
fn the_court_is_the_one_in_the_rulebook() {
    let pack = pack();
    let foot = 12.0;
    assert_eq!(
        (pack.court.width, pack.court.length, pack.court.height),
        (20.0 * foot, 40.0 * foot, 20.0 * foot)
    );
    let back = pack.court.surfaces.iter().find(|s| s.id == SurfaceId::Back).expect("a back wall");
    assert_eq!((back.along, back.at_least), (12.0 * foot, true));
    assert!(pack.court.lines.iter().all(|line| line.width == 1.5));
    let line = |id: &str| pack.find_line(id).unwrap_or_else(|| panic!("no line {id}"));
    for (id, y, edge) in [
        ("short", 20.0 * foot, Edge::Back),
        ("service", 15.0 * foot, Edge::Front),
        ("receiving", 25.0 * foot, Edge::Back),
    ] {
        let line = line(id);
        assert_eq!((line.from, line.to), ([0.0, y], [240.0, y]), "{id}");
        assert_eq!(line.measured, edge, "{id}");
    }
    for (id, x) in [
        ("service-box-left", 18.0),
        ("service-box-right", 240.0 - 18.0),
        ("drive-left", 3.0 * foot),
        ("drive-right", 240.0 - 3.0 * foot),
    ] {
        let line = line(id);
        assert_eq!((line.from, line.to), ([x, 180.0], [x, 240.0]), "{id} spans the service zone");
        assert_eq!(line.measured, Edge::Inner, "{id}");
    }
    let broken = line("receiving").broken.expect("it is broken");
    assert_eq!((broken.at_each_wall, broken.gaps, broken.dashes), (21.0, 17, 16));
    assert_eq!((broken.gap, broken.dash), (6.0, 6.0));
    assert_eq!(broken.length(), 2.0 * 21.0 + 17.0 * 6.0 + 16.0 * 6.0, "240 in, wall to wall");
    assert_eq!(broken.length(), 240.0);
}

/// USA Racquetball Official Rules, rule 1 (The Game): two games to 15, a tiebreaker to 11, no lead
/// of two; only the server scores. International Racquetball Federation: from 1 February 2022
/// rally scoring, best of five, four games to 15 by one, the fifth to 11 by two; European
/// federation from 1 January 2024 best of five to 11 by two.
#[test]
fn the_rule_sets_are_the_published_ones() {
    let pack = pack();
    let find = |id: &str| pack.scoring.iter().find(|r| r.id == id).expect("a rule set");
    let targets = |r: &RuleSet| r.games.iter().map(|g| (g.to, g.win_by)).collect::<Vec<_>>();
    for id in ["usar-2023", "usar-before-2023"] {
        let usar = find(id);
        assert_eq!(targets(usar), [(15, 1), (15, 1), (11, 1)]);
        assert_eq!((usar.scoring, usar.games_to_win), (Scoring::Server, 2));
    }
    let irf = find("irf-2022-to-15");
    assert_eq!(targets(irf), [(15, 1), (15, 1), (15, 1), (15, 1), (11, 2)]);
    assert_eq!((irf.scoring, irf.games_to_win), (Scoring::Rally, 3));
    assert_eq!(irf.from, NaiveDate::from_ymd_opt(2022, 2, 1));
    let erf = find("erf-2024");
    assert_eq!(targets(erf), [(11, 2); 5]);
    assert_eq!(erf.from, NaiveDate::from_ymd_opt(2024, 1, 1));
    let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).expect("a day");
    assert!(find("usar-before-2023").may_hold_on(day(2023, 8, 31)));
    assert!(!find("usar-before-2023").may_hold_on(day(2023, 9, 1)));
    assert!(find("usar-2023").may_hold_on(day(2023, 9, 1)));
    assert!(!find("usar-2023").may_hold_on(day(2023, 8, 31)));
}

#[test]
fn skills_are_found_by_id_and_by_group() {
    let pack = pack();
    assert_eq!(pack.find_skill("lob-serve").map(|s| s.group.as_str()), Some("serve"));
    assert_eq!(pack.find_skill("no-such-shot"), None);
    for group in ["serve", "return", "rear-court", "front-court", "movement"] {
        assert!(pack.skills_of(group).count() >= 2, "{group} has something to choose from");
    }
}

#[test]
fn the_committed_schema_is_the_one_of_these_types() {
    let committed = include_str!("../../../packs/pack.schema.json");
    assert!(
        committed == schema(),
        "packs/pack.schema.json is out of date; write it again with \
         `cargo run -p carryover-core --example pack_schema`:\n{}",
        schema()
    );
}

#[test]
fn a_pack_reads_back_as_it_was() {
    let pack = pack();
    let json = serde_json::to_string(&pack).expect("json");
    assert_eq!(serde_json::from_str::<Pack>(&json).expect("read back"), pack);
}

/// The built-in pack with one passage replaced, and what the reader says to it.
fn told(find: &str, put: &str) -> String {
    let text = include_str!("../../../packs/racquetball.toml");
    assert!(text.contains(find), "the passage is in the pack: {find}");
    read(&text.replacen(find, put, 1)).expect_err("it is refused").to_string()
}

#[test]
fn a_broken_pack_is_told_what_is_wrong() {
    for (find, put, words) in [
        (
            "id = \"racquetball\"",
            "id = \"racquetball\"\ncolour = \"blue\"",
            "unknown field `colour`",
        ),
        ("condition = \"fed\"", "condition = \"easy\"", "unknown variant `easy`"),
        ("gaps = 17", "gaps = 16", "add up to 234 inches"),
        ("group = \"serve\"", "group = \"serves\"", "“serves”, which is no group"),
        ("id = \"short\"", "id = \"service\"", "the line “service” is there twice"),
        ("games_to_win = 2", "games_to_win = 3", "does not fit 3 to win"),
        ("games_to_win = 2", "games_to_win = 0", "does not fit 0 to win"),
        ("until = \"2023-08-31\"", "until = \"2023-08-31\"\nfrom = \"2023-09-01\"", "ends before"),
        ("until = \"2023-08-31\"", "until = \"2023-02-30\"", "line"),
        ("level = 4", "level = 5", "the levels are 0 to 4 in order"),
        ("width = 240.0", "width = 239.0", "does not fit the court"),
        ("version = \"1\"", "version = \" \"", "the pack's version is empty"),
    ] {
        let said = told(find, put);
        assert!(said.contains(words), "{put}: {said}");
    }
}
