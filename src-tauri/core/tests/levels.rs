//! Levels and published tests through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use std::ops::{Deref, DerefMut};

use serde_json::{Value, json};
use world::{codes, text};

/// A world with one student of a sport in it.
struct World {
    base: world::World,
    student: String,
}

impl Deref for World {
    type Target = world::World;

    fn deref(&self) -> &Self::Target {
        &self.base
    }
}

impl DerefMut for World {
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.base
    }
}

impl World {
    fn of(sport: &str) -> Self {
        let mut base = world::World::new();
        base.on("2026-01-10");
        let student = json!({ "name": "Ivo Marsh", "sport": sport });
        let student = text(&base.act("students.add", student)["id"]);
        Self { base, student }
    }

    /// The fields of a refusal, each with its code.
    fn problems(&mut self, name: &str, input: Value) -> Vec<(String, String)> {
        codes(&self.refused(name, input))
    }

    fn assess(&mut self, day: &str, levels: &[(&str, u8)]) -> Value {
        self.on(day);
        let levels: Vec<Value> =
            levels.iter().map(|(skill, level)| json!({ "skill": skill, "level": level })).collect();
        let assess = json!({ "student": self.student, "levels": levels });
        self.act("assessments.assess", assess)
    }
}

#[test]
fn levels_stand_beside_the_time_before_and_say_what_they_rest_on() {
    let mut world = World::of("racquetball");
    let first = world.assess("2026-01-10", &[("lob-serve", 1), ("drive-serve", 2)]);
    let names: Vec<&Value> =
        first["levels"].as_array().unwrap().iter().map(|l| &l["name"]).collect();
    assert_eq!(names, ["Drive serve", "Lob serve"], "in the order of the pack");
    assert_eq!(first["levels"][0]["basis"], "opinion", "nothing was counted yet");
    assert!(text(&first["levels"][0]["anchor"]).starts_with("Fed: Reliable on a fed ball"));

    let goal = json!({
        "student": world.student, "title": "Lob", "skill": "lob-serve", "condition": "fed",
        "counts": "result", "need": 8, "of": 10, "day": "2026-02-01",
    });
    let goal = text(&world.act("goals.set", goal)["goal"]["id"]);
    world.on("2026-03-01");
    let days = json!({
        "student": world.student, "facility": world.hall, "first_day": "2026-03-01", "last_day": "2026-03-02",
    });
    let visit = text(&world.act("visits.plan", days)["id"]);
    world.act("visits.open", json!({ "visit": visit }));
    let total = json!({ "goal": goal, "visit": visit, "kind": "practice", "made": 7, "tries": 10 });
    world.act("goals.enter_total", total);
    let second = json!({
        "student": world.student, "visit": visit,
        "levels": [{ "skill": "lob-serve", "level": 3 }, { "skill": "ceiling-ball", "level": 2 }],
    });
    let second = world.act("assessments.assess", second);
    let of = |skill: &str| {
        let levels = second["levels"].as_array().unwrap();
        levels.iter().find(|l| l["skill"] == skill).unwrap().clone()
    };
    assert_eq!(
        (&of("lob-serve")["basis"], &of("lob-serve")["before"]),
        (&json!("evidence"), &json!([1, "2026-01-10"]))
    );
    assert_eq!(
        (&of("ceiling-ball")["basis"], &of("ceiling-ball")["before"]),
        (&json!("opinion"), &Value::Null)
    );
    let list = world.base.act("assessments.list", json!({ "student": world.student }));
    assert_eq!(list[0]["day"], "2026-03-01", "newest first");
    assert_eq!(list[1]["levels"][1]["basis"], "opinion", "what came later is no evidence for then");

    let change =
        json!({ "assessment": second["id"], "level": { "skill": "lob-serve", "level": 2 } });
    let changed = world.act("assessments.change_level", change);
    let lob =
        changed["levels"].as_array().unwrap().iter().find(|l| l["skill"] == "lob-serve").unwrap();
    assert_eq!(lob["level"], 2);
    let letter = world.act("letters.draft", json!({ "visit": visit }));
    let part = letter["parts"].as_array().unwrap().iter().find(|p| p["key"] == "levels").unwrap();
    assert_eq!(part["text"], "Lob serve: 2, before 1.\n\nCeiling ball: 2.");
}

#[test]
fn levels_outside_the_scale_are_refused_all_at_once() {
    let mut world = World::of("squash");
    let assess = json!({
        "student": world.student,
        "levels": [
            { "skill": "lob-serve", "level": 5 }, { "skill": "", "level": -1 },
        ],
    });
    let fields: Vec<String> =
        world.problems("assessments.assess", assess).into_iter().map(|(field, _)| field).collect();
    for field in ["levels[0].level", "levels[1].level", "levels[1].skill"] {
        assert!(fields.iter().any(|f| f == field), "{field} is not among {fields:?}");
    }
    let none = json!({ "student": world.student, "levels": [] });
    assert_eq!(world.problems("assessments.assess", none), [("levels".into(), "empty".into())]);
}

/// International Tennis Federation, ITN On Court Assessment Guide (2004): 80 + 60 + 70 + 40 points
/// and 24 s (18 points) are 268, which the printed tables call ITN 5 for men and ITN 3 for women.
#[test]
fn the_itn_assessment_is_read_from_its_printed_tables() {
    let mut world = World::of("tennis");
    let parts = |first: i64| {
        json!([
            { "part": "groundstroke-depth", "counted": first }, { "part": "volley-depth", "counted": 60 },
            { "part": "groundstroke-accuracy", "counted": 70 }, { "part": "serve", "counted": 40 },
            { "part": "mobility", "counted": 24 },
        ])
    };
    let take = |world: &World, parts: Value| json!({ "student": world.student, "test": "itn", "parts": parts });
    let input = take(&world, parts(80));
    let taken = world.act("assessments.take_test", input);
    assert_eq!((&taken["total"], &taken["most"]), (&json!(268), &json!(430)));
    let says: Vec<String> = taken["says"].as_array().unwrap().iter().map(text).collect();
    assert!(says.iter().any(|s| s.ends_with("ITN 5")), "men: {says:?}");
    assert!(says.iter().any(|s| s.ends_with("ITN 3")), "women: {says:?}");
    let above = take(&world, parts(91));
    assert_eq!(
        world.problems("assessments.take_test", above),
        [("parts[0].counted".into(), "out_of_bounds".into())]
    );
    let missing =
        take(&world, json!([{ "part": "serve", "counted": 1 }, { "part": "lob", "counted": 1 }]));
    let problems = world.problems("assessments.take_test", missing);
    assert_eq!(problems.iter().filter(|(_, code)| code == "missing").count(), 4);
    assert!(problems.contains(&("parts[1].part".into(), "unknown".into())));
}

/// T-score 62.5 and percentile 89.4 for 31 by norms of mean 24.5 and SD 5.2 (recomputed with scipy);
/// the least real change of that SD at a reliability of .85 is 5.582 (1.96 · √2 · SD · √(1 − r)).
#[test]
fn a_wall_test_is_placed_by_the_coachs_own_norms_and_by_its_error() {
    let mut world = World::of("racquetball");
    let take = |world: &mut World, day: &str, short: i64, long: i64| {
        world.on(day);
        let parts = json!([
            { "part": "short", "counted": short }, { "part": "long", "counted": long },
        ]);
        let take = json!({ "student": world.student, "test": "wall-volley", "parts": parts });
        world.act("assessments.take_test", take)
    };
    let first = take(&mut world, "2026-01-10", 14, 12);
    assert_eq!(
        (&first["total"], &first["t_score"], &first["worth"]),
        (&json!(26), &Value::Null, &json!(""))
    );
    take(&mut world, "2026-03-10", 17, 14);
    take(&mut world, "2026-05-10", 20, 18);
    let norms = json!({
        "sport": "racquetball", "test": "wall-volley", "mean": "24,5", "sd": "5.2", "reliability": "0.85",
        "source": "Twenty-two of my own students",
    });
    let kept = world.act("assessments.give_norms", norms.clone());
    assert_eq!((&kept["mean"], &kept["sd"]), (&json!(24.5), &json!(5.2)), "a comma is a point");
    let ask = json!({ "student": world.student });
    let tests = world.act("assessments.tests", ask.clone());
    assert_eq!(tests[1]["norms"]["source"], "Twenty-two of my own students");
    assert_eq!(tests[1]["t_score"], 62.5);
    assert!((tests[1]["percentile"].as_f64().unwrap() - 89.435).abs() < 0.001);
    assert_eq!(tests[1]["change"], json!([5, "2026-01-10"]));
    assert_eq!(
        tests[1]["worth"],
        "smaller than the error of the test (5.6): no change can be told"
    );
    assert_eq!(tests[0]["worth"], "better by more than the error of the test (5.6)");
    let nothing = json!({ "sport": "racquetball", "test": "wall-volley" });
    let source_alone = json!({
        "sport": "racquetball", "test": "wall-volley", "source": "Players of my own",
    });
    assert_eq!(
        world.problems("assessments.give_norms", source_alone),
        [("mean".into(), "empty".into()), ("sd".into(), "empty".into())],
        "what was typed is not thrown away"
    );
    for (field, typed, code) in [
        ("mean", "", "empty"),
        ("mean", "many", "no_number"),
        ("mean", "100001", "out_of_bounds"),
        ("sd", "0", "out_of_bounds"),
        ("sd", "-5.2", "no_number"),
        ("reliability", "1.5", "out_of_bounds"),
        ("source", " ", "empty"),
    ] {
        let mut wrong = norms.clone();
        wrong[field] = json!(typed);
        assert_eq!(
            world.problems("assessments.give_norms", wrong),
            [(field.into(), code.into())],
            "{field} {typed}"
        );
    }
    let of = json!({ "sport": "racquetball" });
    let listed = world.act("assessments.norms", of.clone());
    assert_eq!(
        listed,
        json!([{ "test": "wall-volley", "norms": kept }]),
        "a refusal changed nothing"
    );
    world.act("assessments.give_norms", nothing.clone());
    assert_eq!(world.act("assessments.norms", of), json!([]), "all left empty takes them away");
    assert_eq!(world.act("assessments.tests", ask)[0]["t_score"], Value::Null);
    assert_eq!(
        world.problems("assessments.give_norms", nothing),
        [("mean".into(), "empty".into())],
        "there is nothing to take away"
    );
}

/// By the same norms turned round: 10 seconds under a mean of 320 with an SD of 10 is T 60, above
/// about 84 in a hundred; 10 seconds over it is T 40.
#[test]
fn of_a_time_fewer_seconds_are_better_and_none_is_no_time() {
    let mut world = World::of("tennis");
    let take = |world: &World, seconds: i64| {
        let parts = json!([{ "part": "hits", "counted": seconds }]);
        json!({ "student": world.student, "test": "wall-200", "parts": parts })
    };
    let none = take(&world, 0);
    assert_eq!(
        world.problems("assessments.take_test", none),
        [("parts[0].counted".into(), "out_of_bounds".into())]
    );
    for seconds in [330, 310] {
        let input = take(&world, seconds);
        world.act("assessments.take_test", input);
    }
    let norms = json!({
        "sport": "tennis", "test": "wall-200", "mean": "320", "sd": "10", "reliability": "0.9",
        "source": "invented",
    });
    world.act("assessments.give_norms", norms);
    let ask = json!({ "student": world.student });
    let tests = world.act("assessments.tests", ask);
    assert_eq!((&tests[0]["total"], &tests[0]["t_score"]), (&json!(310), &json!(60.0)));
    assert_eq!(tests[1]["t_score"], 40.0);
    assert!(text(&tests[0]["worth"]).starts_with("better"), "{}", tests[0]["worth"]);
    let mut ahead = take(&world, 300);
    ahead["day"] = json!("2099-01-01");
    assert_eq!(world.problems("assessments.take_test", ahead), [("day".into(), "to_come".into())]);
}
