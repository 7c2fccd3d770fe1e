//! A lesson shared by two students: each has goals, blocks and a record of their own.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::commands::call;
use serde_json::{Value, json};
use world::{World, id};

#[test]
fn a_shared_lesson_ends_the_blocks_of_each_student_and_one_undo_opens_them_again() {
    let mut w = World::new();
    let students = ["Ana", "Bo"].map(|name| w.student(name));
    let visits = students.clone().map(|s| w.two_days(&s, "2026-03-10"));
    let goals = [0, 1].map(|n: usize| w.goal(&students[n], &visits[n], "Drop"));
    let lesson = w.act(
        "lessons.plan",
        json!({ "visits": visits, "facility": w.hall, "day": "2026-03-10", "starts": "09:00", "minutes": 60 }),
    );
    let lesson = id(&lesson, "/id");
    for (n, tries) in [(0, [true, true, false]), (1, [false, false, true])] {
        let start =
            json!({ "goal": goals[n], "visit": visits[n], "lesson": lesson, "kind": "practice" });
        let block = id(&w.act("goals.start_block", start), "/id");
        for made in tries {
            w.act("goals.touch", json!({ "block": block, "made": made }));
        }
    }
    // One that was begun and not tried at stays as it is: there is nothing to end.
    let other = w.goal(&students[0], &visits[0], "Lob serve");
    let start = json!({ "goal": other, "visit": visits[0], "lesson": lesson, "kind": "practice" });
    w.act("goals.start_block", start);

    let ended = |w: &mut World, goal: &str| -> Vec<Value> {
        let shown = w.act("goals.show", json!({ "goal": goal }));
        let blocks = shown["blocks"].as_array().unwrap().iter();
        blocks.map(|b| json!([b["ended"], b["count"]["made"], b["count"]["tries"]])).collect()
    };
    let done = call(&mut w.file, "lessons.give", json!({ "lesson": lesson })).unwrap();
    assert_eq!(ended(&mut w, &goals[0]), [json!([true, 2, 3])]);
    assert_eq!(ended(&mut w, &goals[1]), [json!([true, 1, 3])]);
    assert_eq!(ended(&mut w, &other), [json!([false, 0, 0])]);
    call(&mut w.file, "journal.undo", json!({ "act": done.act })).unwrap();
    assert_eq!(ended(&mut w, &goals[0]), [json!([false, 2, 3])]);
    assert_eq!(ended(&mut w, &goals[1]), [json!([false, 1, 3])]);
    // A lesson that was missed ends nothing.
    w.act("lessons.miss", json!({ "lesson": lesson, "reason": "ill" }));
    assert_eq!(ended(&mut w, &goals[1]), [json!([false, 1, 3])]);
}
