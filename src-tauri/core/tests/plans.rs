//! Lesson plans, drills and the court card through the command table.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod world;

use std::ops::{Deref, DerefMut};
use std::process::{Command, Stdio};

use carryover_core::error::Code;
use carryover_core::kinds::ids::LessonId;
use carryover_core::lessons;
use serde_json::{Value, json};
use world::text;

/// A world in which lessons are planned.
struct World {
    base: world::World,
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
        let base = world::World::new();
        base.on("2026-01-10");
        Self { base }
    }

    /// What a refusal is, and its fields, each with its code.
    fn refused(&mut self, name: &str, input: Value) -> (Code, Vec<(String, String)>) {
        let refused = self.base.refused(name, input).failure();
        (refused.code, refused.problems.into_iter().map(|p| (p.field, p.code)).collect())
    }

    fn visit(&mut self, student: &str, first: &str) -> String {
        self.two_days(student, first)
    }

    /// "8 of 10, fed" at a skill.
    fn goal(&mut self, student: &str, visit: &str, title: &str, skill: &str) -> String {
        let goal = json!({
            "student": student, "visit": visit, "title": title, "skill": skill, "condition": "fed",
            "counts": "result", "need": 8, "of": 10, "cue": "Lift",
        });
        text(&self.act("goals.set", goal)["goal"]["id"])
    }

    fn lesson(&mut self, visits: &[&str], day: &str, minutes: u32) -> String {
        let lesson = json!({
            "visits": visits, "facility": self.hall, "day": day, "starts": "09:30", "minutes": minutes,
        });
        text(&self.act("lessons.plan", lesson)["id"])
    }

    /// What stands on the court card of a lesson.
    fn card(&self, lesson: &str) -> String {
        let (_, pdf) = self.file.read(|db| lessons::card(db, which(lesson))).unwrap();
        let path = self.folder.path().join("card.pdf");
        std::fs::write(&path, &pdf).unwrap();
        let read = Command::new("pdftotext")
            .args(["-layout".as_ref(), path.as_os_str(), "-".as_ref()])
            .stderr(Stdio::inherit())
            .output()
            .expect("pdftotext, of poppler-utils");
        String::from_utf8(read.stdout).unwrap()
    }
}

fn which(lesson: &str) -> lessons::Which {
    lessons::Which { lesson: serde_json::from_value::<LessonId>(json!(lesson)).unwrap() }
}

fn words(plan: &Value) -> Vec<String> {
    plan["lines"].as_array().unwrap().iter().map(|l| text(&l["words"])).collect()
}

#[test]
fn a_plan_is_proposed_from_what_is_carried_and_fills_the_lesson() {
    let mut world = World::new();
    let ivo = world.student("Ivo Marsh");
    let before = world.visit(&ivo, "2026-01-10");
    let lob = world.goal(&ivo, &before, "Lob serve", "lob-serve");
    let visit = world.visit(&ivo, "2026-03-10");
    world.goal(&ivo, &visit, "Pinch", "");
    let lesson = world.lesson(&[&visit], "2026-03-10", 60);
    let plan = world.act("lessons.propose_plan", json!({ "lesson": lesson }));
    assert_eq!(
        words(&plan),
        [
            "Warm-up",
            "Retest: Lob serve",
            "Lob serve",
            "Pinch",
            "End test: Lob serve",
            "End test: Pinch"
        ]
    );
    assert_eq!((&plan["minutes"], &plan["differs"]), (&json!(60), &json!("")));
    let drills = world.act("sports.drills", json!({ "sport": "racquetball" }));
    let drill =
        drills.as_array().unwrap().iter().find(|d| d["id"] == plan["lines"][2]["drill"]).unwrap();
    assert!(drill["skills"].as_array().unwrap().contains(&json!("lob-serve")), "a drill that fits");
    assert_eq!(plan["lines"][3]["drill"], "", "no skill, no drill");

    let total = json!({ "goal": lob, "visit": visit, "kind": "retest", "made": 7, "tries": 10 });
    world.act("goals.enter_total", total);
    let plan = world.act("lessons.propose_plan", json!({ "lesson": lesson }));
    assert!(!words(&plan).contains(&"Retest: Lob serve".to_owned()), "it was retested");
    let short = world.lesson(&[&visit], "2026-03-11", 10);
    let plan = world.act("lessons.propose_plan", json!({ "lesson": short }));
    assert_eq!(plan["minutes"], 10, "however short: {plan}");

    let mut lines = plan["lines"].clone();
    lines[0]["minutes"] = json!(7);
    let set = world.act("lessons.set_plan_lines", json!({ "lesson": short, "lines": lines }));
    assert_eq!(set["lines"], lines);
    assert!(
        text(&set["differs"]).ends_with("minutes more than the lesson has."),
        "{}",
        set["differs"]
    );
    let kept = json!({ "name": "Short one", "lines": lines });
    world.act("lessons.keep_template", kept.clone());
    let templates = world.act("lessons.keep_template", kept);
    assert_eq!(templates.as_array().unwrap().len(), 1, "one of that name is replaced");
    let goals = templates[0]["lines"].as_array().unwrap().iter().all(|l| l["goal"].is_null());
    assert!(goals, "goals are one student\u{2019}s");
    let used = json!({ "lesson": lesson, "template": templates[0]["id"] });
    let used = world.act("lessons.use_template", used);
    assert_eq!(used["lines"], templates[0]["lines"]);
    assert_eq!(used["differs"], "45 minutes of the lesson are not planned.");
    let after = world.act("lessons.plan_lines", json!({ "lesson": lesson }));
    assert_eq!(after["lines"], json!([]), "nothing is written by looking");
}

#[test]
fn a_plan_that_says_nothing_or_plans_for_others_is_refused_all_at_once() {
    let mut world = World::new();
    let (ivo, other) = (world.student("Ivo Marsh"), world.student("Ada Quint"));
    let theirs = world.visit(&other, "2026-01-10");
    let goal = world.goal(&other, &theirs, "Lob", "");
    let visit = world.visit(&ivo, "2026-01-10");
    let lesson = world.lesson(&[&visit], "2026-01-10", 60);
    let lines = json!([
        { "minutes": 0, "words": "Warm-up" }, { "minutes": 10 }, { "minutes": 10, "goal": goal },
    ]);
    let (_, problems) =
        world.refused("lessons.set_plan_lines", json!({ "lesson": lesson, "lines": lines }));
    let fields: Vec<&str> = problems.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(fields, ["lines[0].minutes", "lines[1].words", "lines[2].goal"]);
    let drill = json!({ "sport": "racquetball", "name": "Two corners", "skill": "lob-serve" });
    let drills = world.act("sports.add_drill", drill.clone());
    assert_eq!((&drills[0]["name"], &drills[0]["own"]), (&json!("Two corners"), &json!(true)));
    assert_eq!(world.refused("sports.add_drill", drill).1, [("name".into(), "twice".into())]);
}

#[test]
fn a_card_is_typed_in_whole_or_not_at_all() {
    let mut world = World::new();
    let (ivo, ada) = (world.student("Ivo Marsh"), world.student("Ada Quint"));
    let before = world.visit(&ivo, "2026-01-10");
    let lob = world.goal(&ivo, &before, "Lob serve", "");
    let (mine, hers) = (world.visit(&ivo, "2026-03-10"), world.visit(&ada, "2026-03-10"));
    let pinch = world.goal(&ada, &hers, "Pinch", "");
    let shared = world.lesson(&[&mine, &hers], "2026-03-10", 60);
    let alone = world.lesson(&[&mine], "2026-03-11", 60);
    let card = |lesson: &str, rows: Value| json!({ "lesson": lesson, "rows": rows });
    let wrong = card(
        &alone,
        json!([
            { "goal": lob, "retest": { "made": 11, "tries": 10 }, "practice": { "made": 6, "tries": 10 } },
            { "goal": pinch, "end_test": { "made": 1, "tries": 2 } },
        ]),
    );
    let (code, problems) = world.refused("lessons.enter_card", wrong);
    assert_eq!(code, Code::Refused);
    assert_eq!(
        problems,
        [
            ("rows[0].retest.made".into(), "more_than_tries".into()),
            ("rows[1].goal".into(), "not_theirs".into()),
        ]
    );
    let shown = world.act("goals.show", json!({ "goal": lob }));
    assert_eq!(shown["blocks"], json!([]), "nothing of it was written");
    let (_, problems) = world.refused("lessons.enter_card", card(&shared, json!([])));
    assert_eq!(problems, [("rows".into(), "empty".into())]);
    let fresh = card(&shared, json!([{ "goal": pinch, "retest": { "made": 1, "tries": 2 } }]));
    let (_, problems) = world.refused("lessons.enter_card", fresh);
    assert_eq!(problems, [("rows[0].retest.made".into(), "no_retest".into())]);

    let right = card(
        &shared,
        json!([
            {
                "goal": lob, "retest": { "made": 9, "tries": 10 }, "practice": { "made": 15, "tries": 20 },
                "end_test": { "made": 9, "tries": 10 },
            },
            { "goal": pinch, "end_test": { "made": 4, "tries": 10 } },
        ]),
    );
    let entered = world.act("lessons.enter_card", right);
    assert_eq!(entered["blocks"], 4);
    let shown = world.act("goals.show", json!({ "goal": lob }));
    assert_eq!(
        shown["standing"]["state"], "met",
        "the retest on the card came before the coaching"
    );
    let blocks = shown["blocks"].as_array().unwrap();
    assert!(blocks.iter().all(|b| b["lesson"] == json!(shared) && b["source"] == "total_entered"));
}

/// Read back by poppler's pdftotext: each student on the lesson with what is asked, nobody else.
#[test]
fn a_card_names_the_goals_of_its_lesson_and_nobody_else() {
    let mut world = World::new();
    let (ivo, ada, eve) =
        (world.student("Ivo Marsh"), world.student("Ada Quint"), world.student("Eve Noone"));
    let (mine, hers) = (world.visit(&ivo, "2026-03-10"), world.visit(&ada, "2026-03-10"));
    let other = world.visit(&eve, "2026-03-10");
    world.goal(&ivo, &mine, "Lob serve", "");
    world.goal(&ada, &hers, "Pinch", "");
    world.goal(&eve, &other, "Splat", "");
    let lesson = world.lesson(&[&mine, &hers], "2026-03-10", 60);
    let (name, pdf) = world.file.read(|db| lessons::card(db, which(&lesson))).unwrap();
    assert_eq!(name, "Court card Ada Quint and Ivo Marsh 2026-03-10.pdf");
    let (_, again) = world.file.read(|db| lessons::card(db, which(&lesson))).unwrap();
    assert_eq!(pdf, again, "the same lesson gives the same bytes");
    let read = world.card(&lesson);
    for words in [
        "Court card: Ada Quint and Ivo Marsh",
        "Ivo Marsh: Lob serve",
        "Ada Quint: Pinch",
        "8 of 10",
        "End test",
    ] {
        assert!(read.contains(words), "{words:?} is not on the card:\n{read}");
    }
    assert!(!read.contains("Eve") && !read.contains("Splat"), "another student is named:\n{read}");

    // The evening before the next visit: what it will carry, its retest first.
    world.act("visits.close", json!({ "visit": mine }));
    let days = json!({
        "student": ivo, "facility": world.hall, "first_day": "2026-05-04", "last_day": "2026-05-05",
    });
    let next = world.act("visits.plan", days);
    let lesson = world.lesson(&[&text(&next["id"])], "2026-05-04", 60);
    let read = world.card(&lesson);
    for words in ["Court card: Ivo Marsh", "Lob serve", "Retest"] {
        assert!(read.contains(words), "{words:?} is not on the card:\n{read}");
    }
    let goal = world.act("goals.list", json!({ "student": ivo }))[0]["goal"]["id"].clone();
    let early = json!([{ "goal": goal, "end_test": { "made": 1, "tries": 2 } }]);
    let (code, _) = world.refused("lessons.enter_card", json!({ "lesson": lesson, "rows": early }));
    assert_eq!(code, Code::NotPossible, "it is typed in at a visit that was started");

    let nobody = world.student("Nils Ohne");
    let empty = world.visit(&nobody, "2026-03-10");
    let lesson = world.lesson(&[&empty], "2026-03-10", 60);
    let none = world.file.read(|db| lessons::card(db, which(&lesson))).expect_err("no goals");
    assert_eq!(none.code(), Code::NotPossible);
}

#[test]
fn a_pair_gets_its_minutes_by_turns_and_what_was_planned_for_stays() {
    let mut world = World::new();
    let (ivo, ada) = (world.student("Ivo Marsh"), world.student("Ada Quint"));
    let (mine, hers) = (world.visit(&ivo, "2026-03-10"), world.visit(&ada, "2026-03-10"));
    let lob = world.goal(&ivo, &mine, "Lob", "");
    for title in ["Drive", "Splat"] {
        world.goal(&ivo, &mine, title, "");
    }
    world.goal(&ada, &hers, &"x".repeat(198), "");
    let lesson = world.lesson(&[&mine, &hers], "2026-03-10", 30);
    let plan = world.act("lessons.propose_plan", json!({ "lesson": lesson }));
    let said = words(&plan);
    let worked: Vec<&str> = said[1..4].iter().map(|words| &words[..11]).collect();
    assert_eq!(
        worked,
        ["Ada Quint: ", "Ivo Marsh: ", "Ivo Marsh: "],
        "each before the second of one"
    );
    assert_eq!(said[1].chars().count(), 200, "however long a title, its line can be kept");
    let lines = plan["lines"].clone();
    world.act("lessons.set_plan_lines", json!({ "lesson": lesson, "lines": lines }));
    let close = json!({ "goal": lob, "visit": mine, "kind": "close", "reason": "Enough of it." });
    world.act("goals.decide", close);
    let again = json!({ "lesson": lesson, "lines": lines });
    let kept = world.act("lessons.set_plan_lines", again);
    assert_eq!(kept["lines"], lines, "a plan can be kept again after its goal was closed");
    let line = json!({ "minutes": 30, "drill": "no-such-drill" });
    let (_, problems) =
        world.refused("lessons.set_plan_lines", json!({ "lesson": lesson, "lines": [line] }));
    assert_eq!(problems, [("lines[0].drill".into(), "no_such_drill".into())]);
}

#[test]
fn two_of_one_name_each_keep_their_own_card() {
    let mut world = World::new();
    let (one, other) = (world.student("Ivo Marsh"), world.student("Ivo Marsh"));
    let (first, second) = (world.visit(&one, "2026-03-10"), world.visit(&other, "2026-03-10"));
    world.goal(&one, &first, "Lob", "");
    let pinch = world.goal(&other, &second, "Pinch", "");
    let lesson = world.lesson(&[&first, &second], "2026-03-10", 60);
    let rows = json!([{ "goal": pinch, "practice": { "made": 5, "tries": 10 } }]);
    world.act("lessons.enter_card", json!({ "lesson": lesson, "rows": rows }));
    let shown = world.act("goals.show", json!({ "goal": pinch }));
    assert_eq!(shown["blocks"][0]["visit"], json!(second));
}
