//! A small world for tests through the command table: a file, a clock that is put where it should
//! be, one hall, and short verbs.
#![allow(dead_code, reason = "each test program uses the verbs it needs")]

use std::sync::Arc;

use carryover_core::app::CoachFile;
use carryover_core::commands::call;
use carryover_core::error::Error;
use carryover_core::kinds::{CountedIds, Day, FixedClock};
use serde_json::{Value, json};
use tempfile::TempDir;

/// A coach file with one hall.
pub struct World {
    pub folder: TempDir,
    pub file: CoachFile,
    clock: Arc<FixedClock>,
    pub hall: String,
}

impl World {
    pub fn new() -> Self {
        let folder = TempDir::new().unwrap();
        let path = folder.path().join("world.carryover");
        CoachFile::create(&path).unwrap();
        let clock = Arc::new(FixedClock::on(Day::of(2026, 3, 1).unwrap()));
        let ids = Arc::new(CountedIds::new(5));
        let file = CoachFile::open_with(&path, clock.clone(), ids).unwrap();
        let mut world = Self { folder, file, clock, hall: String::new() };
        let hall = json!({ "name": "Hall", "zone": "Europe/Lisbon" });
        world.hall = id(&world.act("facilities.add", hall), "/id");
        world
    }

    pub fn on(&self, day: &str) {
        self.clock.set(Day::parse(day).unwrap());
    }

    pub fn act(&mut self, name: &str, input: Value) -> Value {
        call(&mut self.file, name, input).unwrap_or_else(|e| panic!("{name}: {e}")).value
    }

    pub fn refused(&mut self, name: &str, input: Value) -> Error {
        call(&mut self.file, name, input).map(|a| a.value).expect_err(name)
    }

    pub fn student(&mut self, name: &str) -> String {
        id(&self.act("students.add", json!({ "name": name })), "/id")
    }

    /// A visit with its days agreed.
    pub fn planned(&mut self, student: &str, first: &str, last: &str) -> String {
        let input = json!({
            "student": student, "facility": self.hall, "first_day": first, "last_day": last,
        });
        id(&self.act("visits.plan", input), "/id")
    }

    /// A visit that is open from its first day.
    pub fn visit(&mut self, student: &str, first: &str, last: &str) -> String {
        self.on(first);
        let visit = self.planned(student, first, last);
        self.act("visits.open", json!({ "visit": visit }));
        visit
    }

    /// A visit of two days, open from its first.
    pub fn two_days(&mut self, student: &str, first: &str) -> String {
        let last = Day::parse(first).unwrap().plus(1).to_string();
        self.visit(student, first, &last)
    }

    /// "8 of 10, fed" at a visit.
    pub fn goal(&mut self, student: &str, visit: &str, title: &str) -> String {
        let input = json!({
            "student": student, "visit": visit, "title": title, "condition": "fed", "counts": "result",
            "need": 8, "of": 10, "cue": "Lift",
        });
        id(&self.act("goals.set", input), "/goal/id")
    }

    pub fn total(&mut self, goal: &str, visit: &str, kind: &str, made: u32) {
        let input =
            json!({ "goal": goal, "visit": visit, "kind": kind, "made": made, "tries": 10 });
        self.act("goals.enter_total", input);
    }

    /// Where a goal stands, and why.
    pub fn stands(&mut self, goal: &str) -> (String, String) {
        let shown = self.act("goals.show", json!({ "goal": goal }));
        (id(&shown, "/standing/state"), id(&shown, "/standing/why"))
    }
}

/// A text in a value.
pub fn id(value: &Value, at: &str) -> String {
    value
        .pointer(at)
        .and_then(Value::as_str)
        .unwrap_or_else(|| panic!("{at} in {value}"))
        .to_owned()
}

/// A value that is a text.
pub fn text(value: &Value) -> String {
    id(value, "")
}

/// The fields of a refusal, with the code of each.
pub fn codes(error: &Error) -> Vec<(String, String)> {
    match error {
        Error::Refused(problems) => {
            problems.iter().map(|p| (p.field.clone(), p.code.clone())).collect()
        }
        other => panic!("not a refusal of fields: {other}"),
    }
}

/// The fields of a refusal, with the words of each.
pub fn problems(error: &Error) -> Vec<(String, String)> {
    match error {
        Error::Refused(problems) => {
            problems.iter().map(|p| (p.field.clone(), p.words.clone())).collect()
        }
        other => panic!("not a refusal of fields: {other}"),
    }
}
