//! Evidence of every kind through the command table: criteria, whole games, a second fact counted
//! apart, reasons for misses, the cue that landed, raising, looking back, what was seen.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use std::ops::{Deref, DerefMut};

use carryover_core::error::Code;
use serde_json::{Value, json};
use world::{codes, text};

/// A world with one student in it.
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
    fn new() -> Self {
        let mut base = world::World::new();
        base.on("2026-01-01");
        let student = base.student("Ivo Marsh");
        Self { base, student }
    }

    /// The fields of a refusal, each with its code.
    fn problems(&mut self, name: &str, input: Value) -> Vec<(String, String)> {
        codes(&self.refused(name, input))
    }

    /// A visit of two days from this one, opened.
    fn visit(&mut self, first: &str) -> String {
        let student = self.student.clone();
        self.two_days(&student, first)
    }

    /// A goal set at a visit: the fields that matter, over the usual ones.
    fn goal(&mut self, visit: &str, fields: Value) -> String {
        let mut input = self.goal_input(visit);
        merge(&mut input, fields);
        text(&self.act("goals.set", input)["goal"]["id"])
    }

    fn goal_input(&self, visit: &str) -> Value {
        json!({
            "student": self.student, "visit": visit, "title": "Lob serve", "condition": "fed",
            "counts": "result", "need": 8, "of": 10, "cue": "Lift",
        })
    }

    fn enter(&mut self, goal: &str, visit: &str, fields: Value) -> Value {
        let mut input = json!({ "goal": goal, "visit": visit, "kind": "practice" });
        merge(&mut input, fields);
        self.act("goals.enter_total", input)
    }
}

fn merge(into: &mut Value, fields: Value) {
    for (name, value) in fields.as_object().unwrap() {
        into[name] = value.clone();
    }
}

#[test]
fn a_goal_of_at_most_so_many_a_game_counts_whole_games() {
    let mut world = World::new();
    let first = world.visit("2026-01-10");
    let skips = json!({
        "title": "Skips in a game", "condition": "match", "criterion": "at_most", "need": 3, "of": 2,
    });
    let goal = world.goal(&first, skips);
    for n in [5, 3, 2] {
        let game = json!({ "in_game": n, "source": "game_chances" });
        assert_eq!(world.enter(&goal, &first, game)["in_game"], n);
    }
    assert_eq!(
        world.stands(&goal),
        ("met".into(), "3, 2 in the last 2 games; a later visit will tell".into())
    );
    let chart = world.base.act("goals.chart", json!({ "student": world.student }));
    let cell = &chart["lines"][0]["cells"][0];
    assert_eq!(cell["games"], json!([5, 3, 2]));
    assert_eq!(cell["marks"], json!([]), "a whole game has no rate");

    let touches = json!({ "goal": goal, "visit": first, "kind": "practice" });
    assert_eq!(world.refused("goals.start_block", touches).code(), Code::NotPossible);
    let tries = json!({
        "goal": goal, "visit": first, "kind": "practice", "made": 3, "tries": 5,
    });
    assert_eq!(world.problems("goals.enter_total", tries), [("in_game".into(), "empty".into())]);
    let told = json!({ "in_game": 9, "source": "told" });
    world.enter(&goal, &first, told);
    assert_eq!(world.stands(&goal).0, "met", "what is told moves no state");
}

#[test]
fn criteria_that_nothing_can_reach_are_refused_at_their_fields() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    for (fields, problems) in [
        (json!({ "need": 9, "of": 8 }), vec![("need", "more_than_tries")]),
        (json!({ "criterion": "rate", "need": 101, "least": 15 }), vec![("need", "out_of_bounds")]),
        (json!({ "criterion": "rate", "need": 70, "least": 0 }), vec![("least", "out_of_bounds")]),
        (
            json!({ "criterion": "at_most", "need": -1, "of": 0 }),
            vec![("need", "out_of_bounds"), ("of", "out_of_bounds")],
        ),
        (json!({ "apart": "result" }), vec![("apart", "does_not_fit")]),
        (json!({ "counts": "cue", "apart": "choice" }), vec![("apart", "does_not_fit")]),
        (
            json!({ "apart": "choice", "criterion": "at_most", "need": 3, "of": 3 }),
            vec![("apart", "does_not_fit")],
        ),
    ] {
        let mut input = world.goal_input(&visit);
        merge(&mut input, fields.clone());
        let mut found = world.problems("goals.set", input);
        found.sort();
        let mut wanted: Vec<(String, String)> =
            problems.into_iter().map(|(f, c)| (f.to_owned(), c.to_owned())).collect();
        wanted.sort();
        assert_eq!(found, wanted, "{fields}");
    }
    let goal = world.goal(&visit, json!({ "criterion": "rate", "need": 70, "least": 15 }));
    let none = json!({ "goal": goal, "visit": visit, "kind": "end_test", "made": 0, "tries": 0 });
    assert_eq!(
        world.problems("goals.enter_total", none),
        [("tries".into(), "out_of_bounds".into())],
        "a rate with no chances"
    );
}

#[test]
fn a_criterion_says_what_it_means() {
    let mut world = World::new();
    let mut words = |input: Value| text(&world.act("goals.weigh", input)["words"]);
    // P(X >= 8 of 10) is 0.6778 at 80 % and 0.1673 at 60 %; five goes at 60 %: 0.5996 (binomial).
    assert_eq!(
        words(json!({ "need": 8, "of": 10 })),
        "8 of 10: a player who makes 80 % in truth passes 68 times in 100, one who makes 60 % 17 times in 100. In five goes the 60 % player passes at least once 60 times in 100. Twenty tries, with a pause after ten, tell more."
    );
    assert!(words(json!({ "criterion": "rate", "need": 80, "least": 10 })).starts_with(
        "80 % of at least 10 chances: a player who makes 80 % in truth passes 68 times"
    ));
    assert!(
        words(json!({ "criterion": "at_most", "need": 3, "of": 3 }))
            .starts_with("Reached when each of 3 whole games running has at most 3.")
    );
}

#[test]
fn two_facts_are_counted_apart_try_by_try_and_as_a_total() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world
        .goal(&visit, json!({ "condition": "set_game", "apart": "choice", "of": 4, "need": 3 }));
    let start = json!({ "goal": goal, "visit": visit, "kind": "practice" });
    let block = text(&world.act("goals.start_block", start)["id"]);
    for (made, also) in [(true, true), (false, true), (true, false), (true, true)] {
        world.act("goals.touch", json!({ "block": block, "made": made, "also": also }));
    }
    let ended = world.act("goals.end_block", json!({ "block": block }));
    assert_eq!(ended["count"], json!({ "made": 3, "tries": 4 }));
    assert_eq!(ended["also"], 3, "the choice was right three times");
    let total = json!({ "kind": "end_test", "made": 3, "tries": 4, "also": 2 });
    let test = world.enter(&goal, &visit, total);
    assert_eq!((&test["also"], &test["count"]["made"]), (&json!(2), &json!(3)));
    assert_eq!(world.stands(&goal).0, "met", "only the one thing that counts decides");
    let too_many = json!({
        "goal": goal, "visit": visit, "kind": "practice", "made": 1, "tries": 4, "also": 5,
    });
    assert_eq!(
        world.problems("goals.enter_total", too_many),
        [("also".into(), "more_than_tries".into())]
    );
    let plain = world.goal(&visit, json!({ "title": "Plain" }));
    let none = json!({
        "goal": plain, "visit": visit, "kind": "practice", "made": 1, "tries": 4, "also": 1,
    });
    assert_eq!(world.problems("goals.enter_total", none), [("also".into(), "does_not_fit".into())]);
}

#[test]
fn misses_are_put_down_to_reasons_and_never_to_more_than_there_were() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world.goal(&visit, json!({}));
    let entered = world.enter(&goal, &visit, json!({ "made": 6, "tries": 10 }));
    let block = text(&entered["id"]);
    let give = |misses: Value| json!({ "block": block, "misses": misses });
    let too_many =
        give(json!([{ "reason": "late", "times": 3 }, { "reason": "too high", "times": 2 }]));
    assert_eq!(
        world.problems("goals.give_reasons", too_many),
        [("misses".into(), "more_than_misses".into())]
    );
    let wrong = give(json!([
        { "reason": " ", "times": 1 }, { "reason": "Late", "times": 0 }, { "reason": "late", "times": 1 },
    ]));
    let problems = world.problems("goals.give_reasons", wrong);
    let fields: Vec<&str> = problems.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(fields, ["misses[0].reason", "misses[1].times", "misses[2].reason"]);
    world.act("goals.give_reasons", give(json!([{ "reason": "feet", "times": 4 }])));
    let given = json!([{ "reason": "late", "times": 1 }, { "reason": "too high", "times": 2 }]);
    let said = world.act("goals.give_reasons", give(given));
    assert_eq!(
        said["misses"],
        json!([{ "reason": "too high", "times": 2 }, { "reason": "late", "times": 1 }]),
        "said anew, what was said before is gone"
    );
    let shown = world.act("goals.show", json!({ "goal": goal }));
    assert_eq!(shown["blocks"][0]["misses"], said["misses"]);
    let student = world.student.clone();
    let reasons = world.act("goals.reasons", json!({ "student": student }));
    assert_eq!(reasons, json!(["too high", "late"]));
}

#[test]
fn the_cue_that_landed_is_marked_on_the_words_in_force() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world.goal(&visit, json!({}));
    let landed = world.act("goals.cue_landed", json!({ "goal": goal, "landed": true }));
    assert_eq!(landed["goal"]["words"][0]["landed"], "2026-01-10");
    let before = json!({ "goal": goal, "landed": true, "day": "2026-01-09" });
    assert_eq!(
        world.problems("goals.cue_landed", before),
        [("day".into(), "before_the_cue".into())]
    );
    world.act("goals.change_words", json!({ "goal": goal, "cue": "Brush", "day": "2026-01-11" }));
    let words = world.act("goals.show", json!({ "goal": goal }))["goal"]["words"].clone();
    assert_eq!(
        (&words[0]["landed"], &words[1]["landed"]),
        (&json!("2026-01-10"), &Value::Null),
        "new words have not landed yet"
    );
    let none = world.goal(&visit, json!({ "title": "No cue", "cue": "" }));
    let mark = json!({ "goal": none, "landed": true });
    assert_eq!(world.refused("goals.cue_landed", mark).code(), Code::NotPossible);
}

#[test]
fn a_test_repeated_until_it_passed_says_what_that_is_worth() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world.goal(&visit, json!({}));
    for made in [5, 7, 6, 7] {
        world.enter(&goal, &visit, json!({ "kind": "end_test", "made": made, "tries": 10 }));
    }
    let repeated =
        |world: &mut World| world.act("goals.show", json!({ "goal": goal }))["repeated"].clone();
    assert_eq!(repeated(&mut world), json!([]), "not passed yet");
    world.enter(&goal, &visit, json!({ "kind": "end_test", "made": 8, "tries": 10 }));
    let said = repeated(&mut world);
    assert_eq!(said[0]["goes"], 5);
    // 1 - (1 - 0.1673)^5 = 0.5996 (binomial, recomputed with scipy in the outside checks).
    assert_eq!(
        said[0]["words"],
        "passed in the last of 5 goes at 8 of 10: a player who makes 60 % in truth passes at least once in 5 goes 60 times in 100"
    );
}

#[test]
fn a_goal_is_raised_only_to_something_harder_and_both_stay_joined() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world.goal(&visit, json!({}));
    let raise = |fields: Value, world: &World| {
        let mut to = world.goal_input(&visit);
        merge(&mut to, fields);
        json!({ "goal": goal, "to": to })
    };
    for (fields, field) in [
        (json!({}), "to.condition"),
        (json!({ "need": 7 }), "to.condition"),
        (json!({ "criterion": "rate", "need": 95, "least": 30 }), "to.condition"),
        (json!({ "condition": "live", "need": 11 }), "to.need"),
    ] {
        let input = raise(fields.clone(), &world);
        assert_eq!(world.problems("goals.raise", input)[0].0, field, "{fields}");
    }
    let input = raise(
        json!({ "condition": "set_game", "criterion": "rate", "need": 60, "least": 20 }),
        &world,
    );
    let raised = world.act("goals.raise", input);
    assert_eq!(raised["goal"]["came_from"], json!(goal));
    assert_eq!(world.stands(&goal).0, "raised");
    let student = world.student.clone();
    let chart = world.act("goals.chart", json!({ "student": student }));
    let lines: Vec<&Value> =
        chart["lines"].as_array().unwrap().iter().map(|l| &l["goal"]).collect();
    assert_eq!(lines, [&json!(goal), &raised["goal"]["id"]], "one line in the chart");
    let again = raise(json!({ "condition": "match" }), &world);
    assert_eq!(world.refused("goals.raise", again).code(), Code::NotPossible);
}

#[test]
fn each_visit_offers_a_look_back_at_the_goal_kept_longest_ago() {
    let mut world = World::new();
    let first = world.visit("2026-01-10");
    let old = world.goal(&first, json!({ "title": "Old" }));
    let new = world.goal(&first, json!({ "title": "New" }));
    for goal in [&old, &new] {
        world.enter(goal, &first, json!({ "kind": "end_test", "made": 9, "tries": 10 }));
    }
    let offered = |world: &mut World, visit: &str| {
        let offer = world.act("goals.look_back", json!({ "visit": visit }));
        offer["goal"]["title"].as_str().map(str::to_owned)
    };
    let second = world.visit("2026-03-10");
    world.enter(&old, &second, json!({ "kind": "retest", "made": 9, "tries": 10 }));
    assert_eq!(offered(&mut world, &second), None, "what was kept here needs no look back here");
    let third = world.visit("2026-05-10");
    world.enter(&new, &third, json!({ "kind": "retest", "made": 9, "tries": 10 }));
    assert_eq!(offered(&mut world, &third).as_deref(), Some("Old"));
    let fourth = world.visit("2026-07-10");
    assert_eq!(offered(&mut world, &fourth).as_deref(), Some("Old"));
    let start = json!({ "goal": old, "visit": fourth, "kind": "look_back" });
    let block = text(&world.act("goals.start_block", start)["id"]);
    let on_court = world.act("goals.on_court", json!({ "visit": fourth }));
    assert_eq!(on_court[0]["goal"]["goal"]["title"], "Old");
    assert_eq!(
        (&on_court[0]["offer"], &on_court[0]["waits"]),
        (&json!("look_back"), &json!(false))
    );
    for _ in 0..10 {
        world.act("goals.touch", json!({ "block": block, "made": true }));
    }
    world.act("goals.end_block", json!({ "block": block }));
    assert_eq!(world.stands(&old), ("kept".into(), "still there: 10 of 10 in a later look".into()));
    assert_eq!(offered(&mut world, &fourth), None, "one look back a visit");
    let fifth = world.visit("2026-09-10");
    assert_eq!(offered(&mut world, &fifth).as_deref(), Some("New"), "the other is older now");
}

#[test]
fn what_is_seen_again_is_counted_and_becomes_a_goal_by_one_act() {
    let mut world = World::new();
    let first = world.visit("2026-01-10");
    let student = world.student.clone();
    let see = |visit: &str, words: &str| json!({ "student": student, "visit": visit, "kind": "fault", "words": words, "skill": "" });
    let seen = world.act("observations.see", see(&first, "Stands too far back"));
    assert_eq!(
        (&seen["often"], &seen["seen"][0]["day"]),
        (&json!("first time"), &json!("2026-01-10"))
    );
    world.act("observations.see", see(&first, "stands too FAR back"));
    let second = world.visit("2026-03-10");
    let again = json!({ "observation": seen["id"], "visit": second, "place": "game 2" });
    let again = world.act("observations.see_again", again);
    assert_eq!(again["often"], "third time, two visits");
    assert_eq!(again["seen"][2]["place"], "game 2");
    let strength = json!({ "student": student, "kind": "strength", "words": "Reads the serve" });
    world.act("observations.see", strength);
    let list = world.act("observations.list", json!({ "student": student }));
    let words: Vec<&Value> = list.as_array().unwrap().iter().map(|o| &o["words"]).collect();
    assert_eq!(words, ["Stands too far back", "Reads the serve"], "the most often seen first");

    assert_eq!(
        world.problems("observations.see", see(&second, "  ")),
        [("words".into(), "empty".into())]
    );
    let planned = json!({
        "student": student, "facility": world.hall, "first_day": "2026-05-01", "last_day": "2026-05-02",
    });
    let planned = text(&world.act("visits.plan", planned)["id"]);
    assert_eq!(world.refused("observations.see", see(&planned, "x")).code(), Code::NotPossible);

    let mut goal = world.goal_input(&second);
    merge(&mut goal, json!({ "title": "Stand up to the line", "need": 11 }));
    let make = |goal: &Value| json!({ "observation": seen["id"], "goal": goal });
    assert_eq!(
        world.problems("observations.make_goal", make(&goal)),
        [("goal.need".into(), "more_than_tries".into())]
    );
    goal["need"] = json!(8);
    let made = world.act("observations.make_goal", make(&goal));
    let list = world.act("observations.list", json!({ "student": student }));
    assert_eq!(list[0]["goal"], made["goal"]["id"]);
    assert_eq!(world.refused("observations.make_goal", make(&goal)).code(), Code::NotPossible);
}

/// The visible words of a letter: its headings and its parts.
fn words_of(draft: &Value) -> Vec<String> {
    let parts = draft["parts"].as_array().unwrap().iter();
    parts.map(|p| format!("{}: {}", text(&p["heading"]), text(&p["text"]))).collect()
}

#[test]
fn a_letter_tells_what_was_seen_raised_and_played() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let student = world.student.clone();
    let lob = world.goal(&visit, json!({}));
    world.enter(&lob, &visit, json!({ "kind": "end_test", "made": 9, "tries": 10 }));
    let skips = json!({
        "title": "Skips", "condition": "match", "criterion": "at_most", "need": 3, "of": 2, "cue": "",
    });
    let skips = world.goal(&visit, skips);
    for n in [5, 2] {
        world.enter(&skips, &visit, json!({ "in_game": n, "source": "game_chances" }));
    }
    for (kind, words) in [
        ("strength", "Reads the serve early."),
        ("fault", "Stands too far back"),
        ("fault", "Stands too far back"),
    ] {
        let seen = json!({ "student": student, "visit": visit, "kind": kind, "words": words });
        world.act("observations.see", seen);
    }
    let mut to = world.goal_input(&visit);
    merge(&mut to, json!({ "condition": "live", "need": 7 }));
    world.act("goals.raise", json!({ "goal": lob, "to": to }));

    let draft = world.act("letters.draft", json!({ "visit": visit }));
    let words = words_of(&draft);
    for sentence in [
        "First, what held: \u{201c}Lob serve\u{201d} gave you 9 of 10.\n\nA strength I saw: Reads the serve early.",
        "What I noticed: To watch: Stands too far back, twice.",
        "What moved: Lob serve (fed): 9 of 10 in the end test.\n\nSkips: 5, 2 in 2 whole games.",
    ] {
        assert!(words.iter().any(|w| w == sentence), "{sentence:?} is not in {words:#?}");
    }
    let carried = words.iter().find(|w| w.starts_with("What comes with you")).unwrap();
    assert!(carried.contains("Lob serve (fed) is raised: from now on live, 7 of 10."), "{carried}");
    assert!(!carried.contains("Lob serve goes on"), "said once: {carried}");
}

#[test]
fn a_letter_in_german_has_no_english_left_but_the_coachs_own() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let student = world.student.clone();
    let goal = world.goal(&visit, json!({ "title": "Lob", "cue": "Heben" }));
    world.enter(&goal, &visit, json!({ "kind": "end_test", "made": 9, "tries": 10 }));
    let seen =
        json!({ "student": student, "visit": visit, "kind": "fault", "words": "Zu weit hinten" });
    world.act("observations.see", seen);
    let levels = json!([{ "skill": "lob-serve", "level": 2 }]);
    let assess = json!({ "student": student, "visit": visit, "levels": levels });
    world.act("assessments.assess", assess);
    let english = words_of(&world.act("letters.draft", json!({ "visit": visit })));
    assert!(english.iter().any(|words| words.contains("Lob serve: 2.")), "{english:?}");
    let choose = |language: &str| json!({ "visit": visit, "language": language });
    let draft = world.act("letters.choose_language", choose("de"));
    let german = words_of(&draft);
    assert_eq!(draft["language"], "de");
    assert_eq!(
        german,
        [
            ": Hallo Ivo,\n\nDein Besuch in Hall, 10.–11. Januar 2026, und was wir dabei gesehen haben.",
            "Zuerst: was gehalten hat: „Lob“ hat erreicht, was wir verlangt haben: 9 von 10 am Ende.",
            "Woran wir gearbeitet haben: Lob (zugespielt, verlangt: 8 von 10). Der Merksatz: „Heben“.",
            "Was mir aufgefallen ist: Darauf achten: Zu weit hinten.",
            "Was sich bewegt hat: Lob: 9 von 10 im Schlusstest.",
            "Deine Stufen, von 0 bis 4: Lobaufschlag: 2.",
            "Was zum nächsten Besuch mitkommt: Lob geht weiter: es ist erreicht, und die ersten Versuche beim nächsten Besuch zeigen, ob es bleibt.",
            "Wann wir uns wiedersehen: Dein nächster Besuch steht noch nicht fest; sag mir, welche Tage dir passen.",
            ": Bis bald auf dem Platz,",
        ]
    );
    assert_eq!(english.len(), german.len(), "every part is there in both");
    let pages = draft["pages"].to_string();
    for word in ["Progress", "Page", "Goal", "Visit", "coaching", "asked", " of "] {
        assert!(!pages.contains(word), "{word} is on a page in German");
    }
    assert_eq!(words_of(&world.act("letters.choose_language", choose("en"))), english);
}

#[test]
fn what_changed_of_a_thing_is_told_newest_first_and_undone_from_there() {
    let mut world = World::new();
    let visit = world.visit("2026-01-10");
    let goal = world.goal(&visit, json!({}));
    let other = world.goal(&visit, json!({ "title": "Another" }));
    let start = json!({ "goal": goal, "visit": visit, "kind": "practice" });
    let block = text(&world.act("goals.start_block", start)["id"]);
    for _ in 0..3 {
        world.act("goals.touch", json!({ "block": block, "made": true }));
    }
    world.act("goals.end_block", json!({ "block": block }));
    let past = |world: &mut World, thing: &str, id: &str| {
        let past = world.act("reports.history", json!({ "thing": thing, "id": id }));
        let acts = past["acts"].as_array().unwrap().iter();
        acts.map(|a| text(&a["label"])).collect::<Vec<_>>()
    };
    assert_eq!(
        past(&mut world, "goal", &goal),
        ["Practice ended: Lob serve", "Practice started: Lob serve", "Goal set: Lob serve"],
        "single tries stand in their block"
    );
    assert_eq!(past(&mut world, "goal", &other), ["Goal set: Another"]);
    let student = world.student.clone();
    let all = past(&mut world, "student", &student);
    assert_eq!(all.last().map(String::as_str), Some("Ivo Marsh added"));
    assert_eq!(all.len(), 7, "{all:?}");
    let hall = world.hall.clone();
    assert_eq!(
        past(&mut world, "facility", &hall),
        ["Visit planned: Ivo Marsh, 10 – 11 January 2026", "Hall added"],
        "what names it belongs to it"
    );

    let history = json!({ "thing": "goal", "id": goal, "most": 1 });
    let newest = world.act("reports.history", history);
    assert_eq!(newest["acts"][0]["undoable"], true);
    world.act("journal.undo", json!({ "act": newest["acts"][0]["id"] }));
    let before = json!({ "thing": "goal", "id": goal, "most": 1, "before": newest["further"] });
    let older = world.act("reports.history", before);
    assert_eq!(older["acts"][0]["label"], "Practice started: Lob serve");
    let again = world.act("reports.history", json!({ "thing": "goal", "id": goal, "most": 1 }));
    assert_eq!(
        (&again["acts"][0]["undone"], &again["acts"][0]["undoable"]),
        (&json!(true), &json!(false))
    );
}

#[test]
fn a_goal_set_at_a_visit_written_down_late_was_set_on_a_day_of_that_visit() {
    let mut world = World::new();
    let first = world.visit("2026-01-10");
    world.on("2026-02-20");
    let goal = world.goal(&first, json!({}));
    let shown = world.act("goals.show", json!({ "goal": goal }));
    assert_eq!(shown["goal"]["set_on"], "2026-01-11", "the nearest day of the visit");
    let planned = json!({
        "student": world.student, "facility": world.hall, "first_day": "2026-02-01", "last_day": "2026-02-02",
    });
    let second = text(&world.act("visits.plan", planned)["id"]);
    world.act("visits.open", json!({ "visit": second }));
    let carried = world.act("goals.on_court", json!({ "visit": second }));
    assert_eq!(
        carried[0]["how"], "carried",
        "so it is carried into the next, also written down late"
    );
}
