//! Where goals stand is kept beside the evidence: whatever the coach does and takes back, in any order,
//! what is kept says what the evidence says, and the season is the one that the goals themselves tell.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::commands::{call, catch_up, check};
use carryover_core::kinds::Day;
use serde_json::{Value, json};
use world::{World, id, text};

/// Numbers that repeat: a linear congruential generator with the constants of Knuth's MMIX.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % n.max(1)
    }

    fn of<'a>(&mut self, these: &'a [String]) -> &'a str {
        &these[self.below(these.len())]
    }
}

/// The moves and what waits, read goal by goal: the season as it was defined before anything was kept.
fn told_by_goals(w: &mut World, from: &str, to: &str) -> (Vec<Value>, Vec<Value>) {
    let (mut moves, mut waits) = (Vec::new(), Vec::new());
    for archived in [false, true] {
        let people = w.act("students.list", json!({ "archived": archived }));
        for student in people.as_array().unwrap().clone() {
            let student = text(&student["id"]);
            let visits = w.act("visits.list", json!({ "student": student }));
            for listed in w.act("goals.list", json!({ "student": student })).as_array().unwrap() {
                let goal = &listed["goal"]["id"];
                let shown = w.act("goals.show", json!({ "goal": goal }));
                for step in shown["standing"]["steps"].as_array().unwrap() {
                    let (day, to_state) = (text(&step["day"]), text(&step["to"]));
                    let moved = ["met", "kept", "slipped", "raised"].contains(&to_state.as_str())
                        && step["from"] != step["to"];
                    if moved && day.as_str() >= from && day.as_str() <= to {
                        moves.push(json!([goal, to_state, day, step["visit"], step["why"]]));
                    }
                }
                let Some(last) = shown["visits"].as_array().unwrap().last() else { continue };
                let visit = visits.as_array().unwrap().iter().find(|v| v["id"] == *last).unwrap();
                let open = visit["stage"] == "open";
                let tried = shown["blocks"].as_array().unwrap().iter().any(|b| {
                    b["visit"] == *last
                        && (b["count"]["tries"] != 0
                            || b["tries"] != json!([])
                            || !b["in_game"].is_null())
                });
                let set_here = shown["visits"].as_array().unwrap().len() == 1;
                let state = text(&shown["standing"]["state"]);
                if !archived
                    && ["working", "met", "slipped"].contains(&state.as_str())
                    && !(open && (tried || set_here))
                {
                    let since = if open { &visit["days"]["first"] } else { &visit["days"]["last"] };
                    waits.push(json!([goal, state, last, since, shown["standing"]["why"]]));
                }
            }
        }
    }
    let key = Value::to_string;
    moves.sort_by_key(key);
    waits.sort_by_key(key);
    (moves, waits)
}

fn same_as_told(w: &mut World, when: &str) {
    let (from, to) = ("2025-06-01", "2027-12-31");
    let ask = json!({ "from": from, "to": to, "most_moves": 1000, "most_waits": 1000 });
    let season = w.act("reports.season", ask);
    let list = |name: &str, fields: [&str; 5]| -> Vec<Value> {
        let mut these: Vec<Value> = season[name]
            .as_array()
            .unwrap()
            .iter()
            .map(|one| json!(fields.map(|field| one[field].clone())))
            .collect();
        these.sort_by_key(Value::to_string);
        these
    };
    let (moves, waits) = told_by_goals(w, from, to);
    assert_eq!(list("moves", ["goal", "to", "day", "visit", "why"]), moves, "moves, {when}");
    assert_eq!(list("waits", ["goal", "state", "visit", "since", "why"]), waits, "waits, {when}");
    let moved = &season["moved"];
    let sum: u64 =
        ["met", "kept", "slipped", "raised"].iter().map(|k| moved[k].as_u64().unwrap()).sum();
    assert_eq!(sum, u64::try_from(moves.len()).unwrap(), "all that moved are counted, {when}");
    assert_eq!(season["waiting"], waits.len(), "all that wait are counted, {when}");
    let checked = check(&w.file).unwrap();
    assert!(checked.sound, "{when}: {:?}", checked.wrong);
}

/// Something a coach does, refused or not; gives its name and the act, where one was written.
fn something(w: &mut World, dice: &mut Dice, s: &mut Stage) -> (&'static str, Option<String>) {
    let day = Day::parse("2026-03-01").unwrap().plus(i64::try_from(dice.below(400)).unwrap());
    w.on(&day.to_string());
    let (student, goal, visit) = (dice.of(&s.students), dice.of(&s.goals), dice.of(&s.visits));
    let kinds = ["retest", "practice", "end_test", "look_back"];
    let (name, input) = match dice.below(20) {
        0 => (
            "visits.plan",
            json!({
                "student": student, "facility": w.hall, "first_day": day.to_string(),
                "last_day": day.plus(3).to_string(),
            }),
        ),
        1 | 2 => ("visits.open", json!({ "visit": visit })),
        3 => ("visits.close", json!({ "visit": visit })),
        4 => ("visits.reopen", json!({ "visit": visit })),
        5 | 6 => {
            let made = dice.below(11);
            (
                "goals.enter_total",
                json!({
                    "goal": goal, "visit": visit, "kind": kinds[dice.below(4)], "made": made, "tries": 10,
                }),
            )
        }
        7 | 13 | 14 => (
            "goals.start_block",
            json!({
                "goal": goal, "visit": visit, "kind": kinds[dice.below(4)],
            }),
        ),
        8 | 9 | 15 | 16 | 17 => (
            "goals.touch",
            json!({
                "block": s.blocks.last(), "made": dice.below(4) > 0,
            }),
        ),
        10 | 18 => ("goals.end_block", json!({ "block": s.blocks.last() })),
        11 => {
            let kind = ["carry_on", "close", "set_aside", "take_up"][dice.below(4)];
            ("goals.decide", json!({ "goal": goal, "visit": visit, "kind": kind, "reason": "so" }))
        }
        12 => ("goals.accept", json!({ "visit": visit })),
        _ => (
            "goals.set",
            json!({
                "student": student, "visit": visit, "title": "Lob serve", "condition": "fed",
                "counts": "result", "need": 8, "of": 10,
            }),
        ),
    };
    match call(&mut w.file, name, input) {
        Ok(done) => {
            match name {
                "visits.plan" => s.visits.push(id(&done.value, "/id")),
                "goals.set" => s.goals.push(id(&done.value, "/goal/id")),
                "goals.start_block" => s.blocks.push(id(&done.value, "/id")),
                _ => {}
            }
            (name, done.act.map(|act| act.to_string()))
        }
        Err(_) => (name, None),
    }
}

struct Stage {
    students: Vec<String>,
    visits: Vec<String>,
    goals: Vec<String>,
    blocks: Vec<String>,
}

#[test]
fn what_is_kept_is_what_the_evidence_says_whatever_is_done_and_undone() {
    let mut reached = std::collections::BTreeSet::new();
    for seed in 1..=12 {
        let mut w = World::new();
        let mut dice = Dice(seed);
        let students: Vec<String> = ["Ana", "Bo"].map(|name| w.student(name)).to_vec();
        let visits: Vec<String> =
            students.iter().map(|s| w.visit(s, "2026-03-01", "2026-03-03")).collect();
        let goals: Vec<String> = (0..2).map(|n| w.goal(&students[n], &visits[n], "Drop")).collect();
        let mut stage = Stage { students, visits, goals, blocks: vec![String::new()] };
        let mut acts: Vec<String> = Vec::new();
        for n in 0..90 {
            let (name, act) = something(&mut w, &mut dice, &mut stage);
            if let Some(act) = act {
                reached.insert(name);
                acts.push(act);
            }
            if dice.below(6) == 0 && !acts.is_empty() {
                // Some undoings are refused: something was built upon the act.
                let act = acts[dice.below(acts.len())].clone();
                if call(&mut w.file, "journal.undo", json!({ "act": act })).is_ok() {
                    reached.insert("journal.undo");
                }
            }
            if n % 6 == 0 {
                same_as_told(&mut w, &format!("seed {seed}, after {n} acts, the last {name}"));
            }
        }
        let who = stage.students[0].clone();
        w.act("students.archive", json!({ "student": who }));
        same_as_told(&mut w, &format!("seed {seed}, one put away"));
    }
    let all = [
        "goals.accept",
        "goals.decide",
        "goals.end_block",
        "goals.enter_total",
        "goals.set",
        "goals.start_block",
        "goals.touch",
        "journal.undo",
        "visits.close",
        "visits.open",
        "visits.plan",
        "visits.reopen",
    ];
    assert_eq!(reached.into_iter().collect::<Vec<_>>(), all, "every kind of act took place");
}

#[test]
fn only_so_many_lines_are_given_and_all_are_counted() {
    let mut w = World::new();
    let ana = w.student("Ana");
    let first = w.two_days(&ana, "2026-03-10");
    let goals: Vec<String> = (0..5).map(|n| w.goal(&ana, &first, &format!("Drop {n}"))).collect();
    for goal in &goals {
        w.total(goal, &first, "end_test", 8);
    }
    w.act("visits.close", json!({ "visit": first }));
    w.on("2026-04-01");
    let ask = json!({ "only": "met", "most_moves": 2, "most_waits": 3 });
    let season = w.act("reports.season", ask);
    assert_eq!(
        (season["moves"].as_array().unwrap().len(), &season["moved"]["met"]),
        (2, &json!(5))
    );
    assert_eq!((season["waits"].as_array().unwrap().len(), &season["waiting"]), (3, &json!(5)));
    let none = w.act("reports.season", json!({ "only": "kept" }));
    assert_eq!((&none["moves"], &none["moved"]["met"]), (&json!([]), &json!(5)));
}

#[test]
fn a_goal_whose_evidence_cannot_be_read_keeps_nobody_from_working_on() {
    let mut w = World::new();
    let ana = w.student("Ana");
    let visit = w.two_days(&ana, "2026-03-10");
    let goal = w.goal(&ana, &visit, "Drop");
    w.total(&goal, &visit, "end_test", 9);
    let other = rusqlite::Connection::open(w.file.path()).unwrap();
    other.execute("UPDATE block SET day = 'no day'", []).unwrap();
    w.refused("goals.show", json!({ "goal": goal }));
    let bo = w.student("Bo");
    w.two_days(&bo, "2026-03-10");
    catch_up(&mut w.file).unwrap();
    assert!(!check(&w.file).unwrap().sound, "and the damage is found");
    // The same where the file itself was damaged, of which no trigger knows.
    other.execute("DELETE FROM standing_due", []).unwrap();
    let wrong = check(&w.file).unwrap().wrong;
    assert!(wrong.iter().any(|line| line.contains(&goal)), "{wrong:?}");
}

#[test]
fn a_file_whose_standings_were_never_kept_is_read_right_and_caught_up_with() {
    let mut w = World::new();
    let ana = w.student("Ana");
    let visit = w.two_days(&ana, "2026-03-10");
    let goal = w.goal(&ana, &visit, "Drop");
    w.total(&goal, &visit, "end_test", 9);
    w.act("visits.close", json!({ "visit": visit }));
    let path = w.file.path().to_owned();
    let other = rusqlite::Connection::open(&path).unwrap();
    let kept = |sql: &str| other.query_row(sql, [], |row| row.get::<_, i64>(0)).unwrap();
    other.execute("DELETE FROM standing_move", []).unwrap();
    other.execute("UPDATE standing SET rules = 0, state = 'working'", []).unwrap();
    same_as_told(&mut w, "derived by other rules");
    catch_up(&mut w.file).unwrap();
    assert_eq!(kept("SELECT count(*) FROM standing WHERE state = 'met' AND rules > 0"), 1);
    assert_eq!(kept("SELECT count(*) FROM standing_move"), 1);
    let acts = kept("SELECT count(*) FROM journal");
    catch_up(&mut w.file).unwrap();
    assert_eq!(kept("SELECT count(*) FROM journal"), acts, "catching up is no act");
    // What is kept and wrong is found.
    other.execute("UPDATE standing SET state = 'kept'", []).unwrap();
    let checked = check(&w.file).unwrap();
    assert!(!checked.sound && checked.wrong[0].contains(&goal), "{:?}", checked.wrong);
}
