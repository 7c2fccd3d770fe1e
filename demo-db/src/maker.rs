//! The hand that builds: a coach file with a clock that goes where the story is, and short verbs for
//! the commands.

use std::path::Path;
use std::sync::Arc;

use carryover_core::app::CoachFile;
use carryover_core::commands;
use carryover_core::error::{Error, Result};
use carryover_core::kinds::{CountedIds, Day, FixedClock};
use serde_json::{Value, json};

use crate::Season;

/// Builds a season.
pub struct Maker {
    file: CoachFile,
    clock: Arc<FixedClock>,
    /// The day the season leads up to.
    pub today: Day,
    /// Where most of it happens.
    pub hall: String,
    /// Its courts.
    pub courts: Vec<String>,
}

/// A visit that is being told.
#[derive(Clone)]
pub struct Told {
    /// Its id.
    pub visit: String,
    /// Its first day.
    pub first: Day,
}

impl Maker {
    pub fn open(path: &Path, season: &Season) -> Result<Self> {
        let clock =
            Arc::new(FixedClock::on(season.today.plus(-365 * i64::from(season.years.max(3)))));
        let ids = Arc::new(CountedIds::new(season.seed));
        let file = CoachFile::open_with(path, clock.clone(), ids)?;
        Ok(Self { file, clock, today: season.today, hall: String::new(), courts: Vec::new() })
    }

    /// Puts the clock to noon of a day.
    pub fn on(&mut self, day: Day) {
        self.clock.set(day);
    }

    /// Runs a command and gives its value.
    pub fn act(&mut self, name: &str, input: Value) -> Result<Value> {
        commands::call(&mut self.file, name, input).map(|answer| answer.value)
    }

    /// Runs a command and gives the id in its value.
    pub fn id(&mut self, name: &str, input: Value, at: &str) -> Result<String> {
        let value = self.act(name, input)?;
        let id = value.pointer(at).and_then(Value::as_str);
        id.map(str::to_owned).ok_or_else(|| Error::Fault(format!("{name} gave no {at}")))
    }

    pub fn student(&mut self, profile: Value) -> Result<String> {
        self.id("students.add", profile, "/id")
    }

    /// A short dated fact about a student.
    pub fn fact(&mut self, student: &str, kind: &str, day: Day, words: &str) -> Result<()> {
        let fact =
            json!({ "student": student, "kind": kind, "day": day.to_string(), "words": words });
        self.act("students.add_fact", fact).map(drop)
    }

    /// Plans a visit of so many days, with a lesson on each, and opens it on its first day.
    pub fn visit(&mut self, student: &str, first: Day, days: i64, note: &str) -> Result<Told> {
        let told = self.planned(student, first, days, note)?;
        self.on(first);
        self.act("visits.open", json!({ "visit": told.visit }))?;
        Ok(told)
    }

    /// Plans a visit, ten days ahead of it.
    pub fn planned(&mut self, student: &str, first: Day, days: i64, note: &str) -> Result<Told> {
        self.on(first.plus(-10).min(self.today));
        let input = json!({
            "student": student, "facility": self.hall, "note": note,
            "first_day": first.to_string(), "last_day": first.plus(days - 1).to_string(),
        });
        Ok(Told { visit: self.id("visits.plan", input, "/id")?, first })
    }

    /// A lesson; `court` is its place in the list of courts.
    pub fn lesson(
        &mut self,
        visits: &[&str],
        day: Day,
        starts: &str,
        court: usize,
    ) -> Result<String> {
        let input = json!({
            "visits": visits, "facility": self.hall, "court": self.courts.get(court),
            "day": day.to_string(), "starts": starts, "minutes": 60,
        });
        self.id("lessons.plan", input, "/id")
    }

    /// A lesson whose court the desk confirmed.
    pub fn booked(
        &mut self,
        visits: &[&str],
        day: Day,
        starts: &str,
        court: usize,
        reference: &str,
    ) -> Result<String> {
        let lesson = self.lesson(visits, day, starts, court)?;
        let answer = json!({ "lesson": lesson, "reference": reference, "by_whom": "Nuala" });
        self.act("bookings.confirm", answer)?;
        Ok(lesson)
    }

    pub fn given(
        &mut self,
        visits: &[&str],
        day: Day,
        starts: &str,
        court: usize,
    ) -> Result<String> {
        let lesson = self.lesson(visits, day, starts, court)?;
        self.act("lessons.give", json!({ "lesson": lesson }))?;
        Ok(lesson)
    }

    pub fn goal(&mut self, student: &str, told: &Told, goal: Goal) -> Result<String> {
        let input = goal.input(student, told);
        self.id("goals.set", input, "/goal/id")
    }

    /// Counts a block live, try by try: `x` made, `-` missed.
    pub fn live(&mut self, goal: &str, told: &Told, kind: &str, tries: &str) -> Result<()> {
        let start = json!({ "goal": goal, "visit": told.visit, "kind": kind });
        let block = self.id("goals.start_block", start, "/id")?;
        for made in tries.chars().filter(|c| *c == 'x' || *c == '-') {
            self.act("goals.touch", json!({ "block": block, "made": made == 'x' }))?;
        }
        self.act("goals.end_block", json!({ "block": block }))?;
        Ok(())
    }

    pub fn total(
        &mut self,
        goal: &str,
        told: &Told,
        kind: &str,
        made: u32,
        tries: u32,
    ) -> Result<()> {
        self.total_from(goal, told, kind, "total_entered", made, tries)
    }

    pub fn total_from(
        &mut self,
        goal: &str,
        told: &Told,
        kind: &str,
        source: &str,
        made: u32,
        tries: u32,
    ) -> Result<()> {
        let input = json!({
            "goal": goal, "visit": told.visit, "kind": kind, "source": source, "made": made, "tries": tries,
        });
        self.act("goals.enter_total", input)?;
        Ok(())
    }

    /// Something seen so many times at a visit, on the day it is.
    pub fn see(&mut self, student: &str, told: &Told, seen: &Seen, times: u32) -> Result<()> {
        let Seen { kind, words, skill, place } = seen;
        let input = json!({
            "student": student, "visit": told.visit, "kind": kind, "words": words, "skill": skill,
            "place": place,
        });
        for _ in 0..times {
            self.act("observations.see", input.clone())?;
        }
        Ok(())
    }

    /// Levels of skills, given at a visit.
    pub fn levels(
        &mut self,
        student: &str,
        told: &Told,
        note: &str,
        levels: &[(&str, u8)],
    ) -> Result<()> {
        let levels: Vec<Value> =
            levels.iter().map(|(skill, level)| json!({ "skill": skill, "level": level })).collect();
        let input =
            json!({ "student": student, "visit": told.visit, "note": note, "levels": levels });
        self.act("assessments.assess", input).map(drop)
    }

    /// The wall test, taken at a visit: hits near the wall and far from it.
    pub fn wall_test(&mut self, student: &str, told: &Told, short: u32, long: u32) -> Result<()> {
        let parts = json!([
            { "part": "short", "counted": short }, { "part": "long", "counted": long },
        ]);
        let input = json!({
            "student": student, "visit": told.visit, "test": "wall-volley", "parts": parts,
        });
        self.act("assessments.take_test", input).map(drop)
    }

    /// Accepts what is proposed, closes the visit, issues its letter two days later.
    pub fn end(&mut self, told: &Told, days: i64, letter: bool) -> Result<()> {
        self.on(told.first.plus(days - 1));
        self.act("goals.accept", json!({ "visit": told.visit }))?;
        self.act("visits.close", json!({ "visit": told.visit }))?;
        if letter {
            self.on(told.first.plus(days + 1));
            self.act("letters.issue", json!({ "visit": told.visit }))?;
        }
        Ok(())
    }
}

/// A strength or a fault.
pub struct Seen {
    pub kind: &'static str,
    pub words: &'static str,
    pub skill: &'static str,
    pub place: &'static str,
}

/// A goal in few words.
pub struct Goal {
    pub title: &'static str,
    pub skill: &'static str,
    pub condition: &'static str,
    pub counts: &'static str,
    pub need: u32,
    pub of: u32,
    pub cue: &'static str,
    pub aim: &'static str,
}

impl Goal {
    pub fn input(&self, student: &str, told: &Told) -> Value {
        json!({
            "student": student, "visit": told.visit, "title": self.title, "skill": self.skill,
            "condition": self.condition, "counts": self.counts, "need": self.need, "of": self.of,
            "cue": self.cue, "aim": self.aim,
        })
    }
}
