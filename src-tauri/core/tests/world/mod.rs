//! A small world for tests through the command table: a file, a clock that is put where it should
//! be, one hall, and short verbs.

use std::sync::Arc;

use carryover_core::app::CoachFile;
use carryover_core::commands::call;
use carryover_core::error::Error;
use carryover_core::kinds::{CountedIds, Day, FixedClock};
use serde_json::{Value, json};
use tempfile::TempDir;

/// A coach file with one hall.
pub struct World {
    _folder: TempDir,
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
        let mut world = Self { _folder: folder, file, clock, hall: String::new() };
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

    /// A visit that is open from its first day.
    pub fn visit(&mut self, student: &str, first: &str, last: &str) -> String {
        self.on(first);
        let input = json!({
            "student": student, "facility": self.hall, "first_day": first, "last_day": last,
        });
        let visit = id(&self.act("visits.plan", input), "/id");
        self.act("visits.open", json!({ "visit": visit }));
        visit
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
}

/// A text in a value.
pub fn id(value: &Value, at: &str) -> String {
    value
        .pointer(at)
        .and_then(Value::as_str)
        .unwrap_or_else(|| panic!("{at} in {value}"))
        .to_owned()
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
