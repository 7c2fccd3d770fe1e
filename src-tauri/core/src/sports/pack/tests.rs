//! The packs against the rulebooks, and what a broken pack is told.

use chrono::NaiveDate;

use super::*;
use crate::sports::{self, USUAL, packs, read_built_in};

fn of(id: &str) -> &'static Pack {
    sports::pack(id).unwrap_or_else(|| panic!("no pack {id}"))
}

fn pack() -> &'static Pack {
    of(USUAL)
}

#[test]
fn every_built_in_pack_reads() {
    for read in read_built_in() {
        if let Err(error) = read {
            panic!("{error}");
        }
    }
    let ids: Vec<&str> = packs().iter().map(|pack| pack.id.as_str()).collect();
    assert_eq!(ids, ["racquetball", "squash", "tennis", "padel", "pickleball"]);
    for pack in packs() {
        assert!(pack.skills.len() >= 18, "{} has skills to choose from", pack.id);
        assert!(pack.drills.len() >= 9, "{} has drills to plan with", pack.id);
        for skill in &pack.skills {
            assert!(!skill.german.is_empty(), "{} of {} has no German name", skill.id, pack.id);
            assert!(
                pack.drills_for(&skill.id).next().is_some(),
                "no drill of {} serves {}",
                pack.id,
                skill.id
            );
        }
    }
}

/// Ends of a line, and the edge they describe.
type Drawn = ([f64; 2], [f64; 2], Edge);

fn drawn(pack: &Pack, id: &str) -> Drawn {
    let line = pack.find_line(id).unwrap_or_else(|| panic!("no line {id}"));
    (line.from, line.to, line.measured)
}

/// World Squash Federation, court specifications, singles court: 9750 by 6400 mm, diagonal 11 665;
/// front wall line 4570, back wall line 2130, service line 1780 to their lower edges, tin 480 to
/// its upper edge; the short line's near edge 4260 from the back wall; boxes 1600 inside; all 50.
#[test]
fn the_squash_court_is_the_specified_one() {
    let pack = of("squash");
    let court = &pack.court;
    assert_eq!((pack.unit, court.width, court.length), (Unit::Mm, 6400.0, 9750.0));
    assert!((court.width.hypot(court.length) - 11665.0).abs() <= 25.0, "the diagonal");
    assert!(court.lines.iter().all(|line| line.width == 50.0));
    let across = |z: f64| ([0.0, z], [6400.0, z]);
    for (id, height, edge) in [
        ("front-out", 4570.0, Edge::Lower),
        ("service", 1780.0, Edge::Lower),
        ("tin", 480.0, Edge::Upper),
        ("back-out", 2130.0, Edge::Lower),
    ] {
        let (from, to) = across(height);
        assert_eq!(drawn(pack, id), (from, to, edge), "{id}");
    }
    let (from, _, edge) = drawn(pack, "short");
    assert_eq!((from[1], edge), (9750.0 - 4260.0 - 50.0, Edge::Front));
    for side in ["left-out", "right-out"] {
        assert_eq!(drawn(pack, side), ([0.0, 4570.0], [9750.0, 2130.0], Edge::Lower));
    }
    assert_eq!(drawn(pack, "box-right-side").0[0], 6400.0 - 1600.0);
    assert!(court.has_walls() && court.net.is_none());
}

/// International Tennis Federation, Rules of Tennis 2017, rule 1: 23.77 m long, 8.23 m and 10.97 m
/// wide, to the outside of the lines; service lines 6.40 m from the net; the net 0.914 m in the
/// middle, 1.07 m at posts 0.914 m outside.
#[test]
fn the_tennis_court_is_the_one_in_the_rules() {
    let pack = of("tennis");
    let court = &pack.court;
    assert_eq!((pack.unit, court.width, court.length), (Unit::Mm, 10970.0, 23770.0));
    assert!(!court.has_walls() && court.height.is_none());
    let net = court.net.as_ref().expect("a net");
    assert_eq!((net.at, net.centre, net.sides), (23770.0 / 2.0, 914.0, 1070.0));
    assert_eq!(net.posts_outside, 914.0);
    let x = |id: &str| drawn(pack, id).0[0];
    assert_eq!(x("right-singles") - x("left-singles"), 8230.0);
    assert_eq!(x("right-sideline") - x("left-sideline"), 10970.0);
    let y = |id: &str| drawn(pack, id).0[1];
    assert_eq!(net.at - y("far-service"), 6400.0);
    assert_eq!(y("near-service") - net.at, 6400.0);
}

/// International Padel Federation, rules of padel: 20 m by 10 m; the net 0.88 m in the middle and
/// 0.92 m at the sides; service lines 6.95 m from the net; end walls 3 m and 1 m of mesh; lines
/// 5 cm.
#[test]
fn the_padel_court_has_walls_and_a_net() {
    let pack = of("padel");
    let court = &pack.court;
    assert_eq!((court.width, court.length, court.height), (10_000.0, 20_000.0, Some(6000.0)));
    let net = court.net.as_ref().expect("a net");
    assert_eq!((net.at, net.centre, net.sides), (10_000.0, 880.0, 920.0));
    assert_eq!(net.at - drawn(pack, "far-service").0[1], 6950.0);
    assert_eq!(drawn(pack, "near-service").0[1] - net.at, 6950.0);
    assert!(court.has_walls() && court.lines.iter().all(|line| line.width == 50.0));
    for end in [SurfaceId::Front, SurfaceId::Back] {
        let panels = &court.surface(end).expect("an end wall").panels;
        let heights: Vec<_> = panels.iter().map(|p| (p.kind, p.from[1], p.to[1])).collect();
        assert_eq!(
            heights,
            [(PanelKind::Wall, 0.0, 3000.0), (PanelKind::Mesh, 3000.0, 4000.0)],
            "{end:?}"
        );
    }
    for side in [SurfaceId::Left, SurfaceId::Right] {
        let panels = &court.surface(side).expect("a side wall").panels;
        for panel in panels {
            let (from, to) = (20_000.0 - panel.to[0], 20_000.0 - panel.from[0]);
            assert!(
                panels.iter().any(|other| other.kind == panel.kind
                    && (other.from, other.to) == ([from, panel.from[1]], [to, panel.to[1]])),
                "the two halves of the court are alike: {panel:?}"
            );
        }
    }
}

/// USA Pickleball, Official Rulebook, section 2: 20 by 44 ft to the outside of the lines, 2 in wide;
/// the non-volley line 7 ft from the net; the net 34 in in the middle and 36 in at the sidelines.
#[test]
fn the_pickleball_court_is_the_one_in_the_rulebook() {
    let pack = of("pickleball");
    let court = &pack.court;
    assert_eq!((pack.unit, court.width, court.length), (Unit::Inch, 240.0, 528.0));
    assert_eq!((feet(court.width, pack.unit), feet(court.length, pack.unit)), (20.0, 44.0));
    let net = court.net.as_ref().expect("a net");
    assert_eq!((net.at, net.centre, net.sides), (264.0, 34.0, 36.0));
    assert_eq!(net.at - drawn(pack, "far-non-volley").0[1], 84.0);
    assert_eq!(drawn(pack, "near-non-volley").0[1] - net.at, 84.0);
    assert!(!court.has_walls() && court.lines.iter().all(|line| line.width == 2.0));
}

/// Squash: World Squash Singles Rules 2010. Pickleball: USA Pickleball, Official Rulebook. Padel:
/// International Padel Federation, General Assembly of 28 November 2025. Tennis: Rules of Tennis
/// 2017, rules 5 to 7 and Appendix V.
#[test]
fn the_other_sports_are_scored_as_published() {
    for (sport, id, scoring, games) in [
        ("squash", "wsf-best-of-five", Scoring::Rally, 5),
        ("squash", "wsf-best-of-three", Scoring::Rally, 3),
        ("pickleball", "usap-one-to-11", Scoring::Server, 1),
    ] {
        let Some(Rules::Points(rules)) = of(sport).find_rules(id) else { panic!("no {id}") };
        assert_eq!(rules.scoring, scoring, "{id}");
        assert_eq!(rules.games, vec![Game { to: 11, win_by: 2 }; games], "{id}");
    }
    for (sport, id, deuce) in [
        ("tennis", "itf-best-of-three", Deuce::Advantage),
        ("tennis", "itf-no-ad", Deuce::DecidingPoint),
        ("padel", "fip-advantage", Deuce::Advantage),
        ("padel", "fip-golden-point", Deuce::DecidingPoint),
        ("padel", "fip-star-point", Deuce::StarPoint),
    ] {
        let Some(Rules::Sets(rules)) = of(sport).find_rules(id) else { panic!("no {id}") };
        assert_eq!(rules.deuce, deuce, "{id}");
        let tiebreak = SetTiebreak { at: 6, to: 7, win_by: 2 };
        assert_eq!(rules.set, SetRule { games: 6, win_by: 2, tiebreak: Some(tiebreak) });
    }
}

/// The lists of the associations: Racquetball magazine, July–August 2002; US Squash rating
/// criteria; the NTRP in half steps from 1.0 to 7.0; the ITN from 10 to 1.
#[test]
fn divisions_are_those_of_the_lists() {
    let names = |sport: &str, list: &str| -> Vec<&str> {
        let of_list = of(sport).divisions.iter().filter(|division| division.list == list);
        of_list.map(|division| division.name.as_str()).collect()
    };
    let skill = ["Open", "Elite", "A", "B", "C", "D", "Novice"];
    assert_eq!(names("racquetball", "Skill divisions"), skill);
    let squash = names("squash", "US Squash rating");
    assert_eq!((squash.len(), squash[0], squash[8]), (9, "2.0 (E)", "6.0 (AA)"));
    let halves: Vec<String> = (2..=14).map(|n| format!("{:.1}", f64::from(n) / 2.0)).collect();
    assert_eq!(names("tennis", "NTRP"), halves);
    let itn: Vec<String> = (1..=10).rev().map(|n: u8| n.to_string()).collect();
    assert_eq!(names("tennis", "ITN"), itn);
    assert!(of("padel").divisions.is_empty(), "none was found");
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
        (20.0 * foot, 40.0 * foot, Some(20.0 * foot))
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
    for pack in packs() {
        reads_back(pack);
    }
}

fn reads_back(pack: &Pack) {
    let json = serde_json::to_string(&pack).expect("json");
    assert_eq!(serde_json::from_str::<Pack>(&json).expect("read back"), *pack);
}

/// What the reader says to the text of a built-in pack with passages replaced.
fn faults(text: &str, changes: &[(&str, &str)]) -> Vec<String> {
    let mut text = text.to_owned();
    for (find, put) in changes {
        assert!(text.contains(find), "the passage is in the pack: {find}");
        text = text.replacen(find, put, 1);
    }
    match read(&text) {
        Ok(_) => panic!("it reads: {changes:?}"),
        Err(PackError::Unreadable(why)) => panic!("it is no TOML: {why}"),
        Err(PackError::Unsound(faults)) => faults.iter().map(ToString::to_string).collect(),
    }
}

const RACQUETBALL: &str = include_str!("../../../packs/racquetball.toml");
const SQUASH: &str = include_str!("../../../packs/squash.toml");
const TENNIS: &str = include_str!("../../../packs/tennis.toml");
const PADEL: &str = include_str!("../../../packs/padel.toml");

#[test]
fn each_fault_is_found_in_its_field() {
    for (text, find, put, expect) in [
        (
            RACQUETBALL,
            "gaps = 17",
            "gaps = 16",
            "court.lines[2].broken: the pieces add up to 234 in",
        ),
        (RACQUETBALL, "group = \"serve\"", "group = \"serves\"", "skills[0].group: “serves” is no"),
        (
            RACQUETBALL,
            "id = \"short\"",
            "id = \"service\"",
            "court.lines[1].id: “service” is there",
        ),
        (
            RACQUETBALL,
            "id = \"half-lob-serve\"",
            "id = \"z-serve\"",
            "skills[3].id: “z-serve” is there",
        ),
        (
            RACQUETBALL,
            "games_to_win = 2",
            "games_to_win = 3",
            "scoring[0].games: 3 games do not fit 3",
        ),
        (
            RACQUETBALL,
            "scoring = \"rally\"",
            "both_serve = true\nscoring = \"rally\"",
            "scoring[2].both_serve: both serve in turn only where",
        ),
        (
            RACQUETBALL,
            "games_to_win = 2",
            "games_to_win = 0",
            "scoring[0].games: 3 games do not fit 0",
        ),
        (
            RACQUETBALL,
            "until = \"2023-08-31\"",
            "until = \"2023-08-31\"\nfrom = \"2023-09-01\"",
            "scoring[1].until: the rule set ends before",
        ),
        (RACQUETBALL, "level = 4", "level = 5", "levels.anchors: the levels are 0 to 4 in order"),
        (RACQUETBALL, "width = 240.0", "width = 239.0", "court.surfaces[0].across: does not fit"),
        (RACQUETBALL, "version = \"2\"", "version = \" \"", "version: is empty"),
        (
            RACQUETBALL,
            "skills = [\"drive-serve\"]",
            "skills = [\"drive\"]",
            "drills[0].skills[0]: “drive” is no skill",
        ),
        (
            RACQUETBALL,
            "skills = [\"drive-serve\"]",
            "skills = []",
            "drills[0].skills: the drill serves no",
        ),
        (
            RACQUETBALL,
            "levels = [1, 4]",
            "levels = [1, 5]",
            "drills[0].levels: the levels run from 0 to 4",
        ),
        (
            RACQUETBALL,
            "levels = [1, 4]",
            "levels = [3, 2]",
            "drills[0].levels: the levels run from 0 to 4",
        ),
        (RACQUETBALL, "minutes = 10", "minutes = 0", "drills[0].minutes: a drill takes"),
        (
            RACQUETBALL,
            "drill = \"serve-and-one\"",
            "drill = \"rest\"",
            "drills[0].progression[2].drill: “rest” is no drill",
        ),
        (
            RACQUETBALL,
            "name = \"Elite\"",
            "name = \"Open\"",
            "divisions[1].name: “Open” is there twice",
        ),
        (
            TENNIS,
            "seconds = 30,",
            "seconds = 31,",
            "tests[0].parts[4].seconds[10]: 31 s does not follow 31 s",
        ),
        (
            TENNIS,
            "seconds = 27, points = 14",
            "seconds = 27, points = 11",
            "tests[0].parts[4].seconds[13]: a faster",
        ),
        (
            TENNIS,
            "seconds = 15, points = 76",
            "seconds = 15, points = 77",
            "tests[0].parts[4].most: is not what",
        ),
        (TENNIS, "most = 430", "most = 431", "tests[0].most: the parts give 430, not 431"),
        (
            TENNIS,
            "from = 80, to = 108",
            "from = 81, to = 108",
            "tests[0].bands[0].bands[1].from: there is a gap between 79 and 81",
        ),
        (
            TENNIS,
            "from = 80, to = 108",
            "from = 79, to = 108",
            "tests[0].bands[0].bands[1].from: 79 is in the band before",
        ),
        (
            TENNIS,
            "from = 345, to = 430",
            "from = 345, to = 429",
            "tests[0].bands[0].bands: the last band ends",
        ),
        (
            TENNIS,
            "level = \"ITN 9\"",
            "level = \"ITN 10\"",
            "tests[0].bands[0].bands[1].level: “ITN 10” is there",
        ),
        (
            TENNIS,
            "net = { at = 11885,",
            "net = { at = 23770,",
            "court.net.at: the net stands inside",
        ),
        (
            TENNIS,
            "last_set = { set =",
            "last_set = { tiebreak = { to = 7, win_by = 2 }, set =",
            "set_scoring[2].last_set: is either",
        ),
        (
            TENNIS,
            "tiebreak = { at = 6,",
            "tiebreak = { at = 4,",
            "set_scoring[0].set.tiebreak.at: the tiebreak comes",
        ),
        (TENNIS, "to = [10970, 0]", "to = [10971, 0]", "court.lines[0].to: leaves the surface"),
        (
            TENNIS,
            "measured = \"outer\"",
            "measured = \"upper\"",
            "court.lines[0].measured: only a line on a wall",
        ),
        (
            PADEL,
            "from = [0, 3000]",
            "from = [0, 2999]",
            "court.surfaces[0].panels[1]: covers another",
        ),
        (
            PADEL,
            "to = [10000, 4000]",
            "to = [10000, 4001]",
            "court.surfaces[0].panels[1]: does not lie",
        ),
        (PADEL, "id = \"floor\"", "id = \"ceiling\"", "court.surfaces: there is no floor"),
    ] {
        let said = faults(text, &[(find, put)]);
        assert!(said.iter().any(|fault| fault.starts_with(expect)), "{find} → {put}: {said:?}");
    }
    let open = faults(TENNIS, &[("net = {", "# net = {")]);
    assert_eq!(open, ["court.net: a court without walls has a net"]);
}

#[test]
fn a_progression_that_leads_back_is_shown() {
    let words = "words = \"Three in a row before changing sides.\"";
    let back = format!("{words}, drill = \"lob-serve-window\"");
    let said = faults(RACQUETBALL, &[(words, &back)]);
    assert_eq!(
        said,
        ["drills[1].progression: the progression leads back: lob-serve-window → lob-serve-window"]
    );
    // serve-and-one → live-from-the-corner → serve-and-one, each told where it stands.
    let words = "words = \"The opponent starts in front of the short line, then behind the receiving line.\"";
    let said = faults(RACQUETBALL, &[(words, &format!("{words}, drill = \"serve-and-one\""))]);
    assert_eq!(
        said,
        [
            "drills[9].progression: the progression leads back: \
             serve-and-one → live-from-the-corner → serve-and-one",
            "drills[10].progression: the progression leads back: \
             live-from-the-corner → serve-and-one → live-from-the-corner",
        ]
    );
}

#[test]
fn all_faults_are_told_at_once() {
    let said = faults(
        SQUASH,
        &[
            ("version = \"1\"", "version = \"1\"\ncolour = \"blue\""),
            ("group = \"serve\"", "groop = \"x\"\ngroup = \"serves\""),
            ("surface = \"front\"", "surface = \"front\"\nwide = 3"),
            ("levels = [0, 3]", "levels = [0, 7]"),
            ("to = 11, win_by = 2 }", "to = 11, win_by = 2, by = 2 }"),
        ],
    );
    assert_eq!(
        said,
        [
            "colour: there is no such field",
            "court.lines[0].wide: there is no such field",
            "scoring[0].games[0].by: there is no such field",
            "skills[0].groop: there is no such field",
            "skills[0].group: “serves” is no group",
            "drills[0].levels: the levels run from 0 to 4, the lower one first",
        ]
    );
}

#[test]
fn what_is_no_pack_says_where() {
    let said = |find, put| faults(RACQUETBALL, &[(find, put)]).join("; ");
    assert!(
        said("condition = \"fed\"", "condition = \"easy\"").starts_with("skills[0].condition: ")
    );
    assert!(
        said("until = \"2023-08-31\"", "until = \"2023-02-30\"").starts_with("scoring[1].until")
    );
    assert!(said("unit = \"inch\"", "unit = \"foot\"").starts_with("unit: unknown variant"));
    assert!(said("unit = \"inch\"", "").contains("missing field `unit`"));
    let broken = read("name = ").expect_err("no TOML");
    assert!(matches!(broken, PackError::Unreadable(_)), "{broken}");
}
