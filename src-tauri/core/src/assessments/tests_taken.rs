//! Published tests taken on court: what was counted part by part, what it adds up to, what the
//! printed tables say of it, and whether a change is more than the test's own error.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::levels::sport_of;
use super::list::OfStudent;
use super::norms::Norms;
use super::store;
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::Day;
use crate::kinds::ids::{StudentId, TestId, VisitId};
use crate::sports::measure::{least_real_change, percentile, t_score};
use crate::sports::pack::{Measure, OnCourtTest};
use crate::students;
use crate::visits::day_at;

/// What was counted in one part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PartCounted {
    /// The part of the test.
    pub part: String,
    /// Its points or hits; of a timed part, whole seconds.
    pub counted: i64,
}

/// A test to write down.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeTest {
    /// Whose.
    pub student: StudentId,
    /// The visit, if it is at one.
    #[serde(default)]
    pub visit: Option<VisitId>,
    /// The day, as YYYY-MM-DD; left out for today, or the visit's nearest day.
    #[serde(default)]
    pub day: String,
    /// The test of the student's sport.
    pub test: String,
    /// What was counted, each part once.
    pub parts: Vec<PartCounted>,
    /// A word about it.
    #[serde(default)]
    pub note: String,
}

/// A test as it was taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct TestTaken {
    /// Which one.
    pub id: TestId,
    /// The visit, if it was at one.
    pub visit: Option<VisitId>,
    /// The day.
    pub day: Day,
    /// The test.
    pub test: String,
    /// Its name.
    pub name: String,
    /// Where it is published.
    pub source: String,
    /// What was counted, part by part.
    pub parts: Vec<PartCounted>,
    /// What it adds up to.
    pub total: u32,
    /// The most it can give, where there is one.
    pub most: Option<u32>,
    /// What the printed tables say of the total, each with for whom: "Men: ITN 6".
    pub says: Vec<String>,
    /// The total less that of the time before, and the day of it.
    pub change: Option<(i64, Day)>,
    /// The coach's own norms of the test, where there are any.
    pub norms: Option<Norms>,
    /// What the change is worth by those norms: "smaller than the error of the test (5.6)".
    pub worth: String,
    /// By those norms: the T-score, 50 at their mean and 10 a standard deviation.
    pub t_score: Option<f64>,
    /// By those norms: how many in a hundred are below, were they normally distributed.
    pub percentile: Option<f64>,
    /// A word about it.
    pub note: String,
}

/// Writes a test down.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong: a test of another sport, a part that is
/// missing, given twice or above its most.
pub fn take_test(db: &Writing<'_>, take: TakeTest) -> Result<TestTaken> {
    let student = students::show(db, students::Which { student: take.student })?;
    let sport = sport_of(&student);
    let Some(test) = crate::sports::pack(&sport).and_then(|pack| pack.find_test(&take.test)) else {
        return Err(Error::field(
            "test",
            "unknown",
            "This is no test of the student\u{2019}s sport.",
        ));
    };
    let nearest = day_at(db, student.id, take.visit)?;
    let mut p = Problems::new();
    let day = p.day_or_none("day", Some(&take.day), "The day").unwrap_or(nearest);
    if day > db.today() {
        p.add("day", "to_come", "This day is still to come.");
    }
    let note = p.note("note", &take.note, "The note");
    let points = points(&mut p, test, &take.parts);
    p.done()?;
    let total = points
        .and_then(|points| test.total(&points))
        .ok_or_else(|| Error::field("parts", "does_not_add_up", "These parts do not add up."))?;
    let id: TestId = db.id();
    let stored = store::StoredTest {
        id,
        visit: take.visit,
        day,
        sport,
        test: take.test,
        parts: take.parts,
        total,
        note,
    };
    store::insert_test(db, student.id, &stored)?;
    db.label(format!("{} taken: {total}", test.name));
    tests(db, OfStudent { student: student.id })?
        .into_iter()
        .find(|taken| taken.id == id)
        .ok_or_else(|| Error::Fault("a test that was just written is not there".to_owned()))
}

/// The points of each part in the order of the test; a timed part's seconds are read in its table.
fn points(p: &mut Problems, test: &OnCourtTest, given: &[PartCounted]) -> Option<Vec<u32>> {
    for (n, one) in given.iter().enumerate() {
        let again = given[..n].iter().any(|other| other.part == one.part);
        if test.parts.iter().all(|part| part.id != one.part) {
            p.add(&format!("parts[{n}].part"), "unknown", "This test has no such part.");
        } else if again {
            p.add(&format!("parts[{n}].part"), "twice", "This part is given twice.");
        }
    }
    let mut points = Vec::new();
    for part in &test.parts {
        let Some((n, one)) = given.iter().enumerate().find(|(_, one)| one.part == part.id) else {
            p.add("parts", "missing", format!("{} is missing.", part.name));
            continue;
        };
        let field = format!("parts[{n}].counted");
        let timed = !part.seconds.is_empty();
        let most = if timed { 600 } else { part.most.map_or(10_000, i64::from) };
        // Nothing takes no time; no points can be had.
        let least = i64::from(timed || test.measure == Measure::Seconds);
        let counted = p.within_bounds(&field, one.counted, least, most, &part.name);
        let counted = u32::try_from(counted).unwrap_or(0);
        if timed {
            // Slower than the slowest time printed: no points.
            points.push(part.points_for(counted).unwrap_or(0));
        } else {
            points.push(counted);
        }
    }
    (points.len() == test.parts.len()).then_some(points)
}

/// A student's tests, newest first, each beside the time before and the coach's own norms.
///
/// # Errors
/// `Storage`.
pub fn tests(db: &Reading<'_>, ask: OfStudent) -> Result<Vec<TestTaken>> {
    let all = store::tests_of(db, ask)?;
    let read = |(n, one): (usize, &store::StoredTest)| {
        Ok(taken(one, &all[..n], store::norms(db, &one.sport, &one.test)?))
    };
    let mut shown: Vec<TestTaken> = all.iter().enumerate().map(read).collect::<Result<_>>()?;
    shown.reverse();
    Ok(shown)
}

fn taken(
    one: &store::StoredTest,
    earlier: &[store::StoredTest],
    norms: Option<Norms>,
) -> TestTaken {
    let test = crate::sports::pack(&one.sport).and_then(|pack| pack.find_test(&one.test));
    let before = earlier.iter().rfind(|past| past.sport == one.sport && past.test == one.test);
    let change = before.map(|past| (i64::from(one.total) - i64::from(past.total), past.day));
    let says = test.map_or_else(Vec::new, |test| {
        let tables = test.bands.iter();
        tables
            .map(|table| {
                let level = test.level(&table.id, one.total).unwrap_or("outside the table");
                format!("{}: {level}", table.name)
            })
            .collect()
    });
    // Fewer seconds are better: a time is placed as far above the mean as it is below it.
    let place = |mean: f64| match test.map(|test| test.measure) {
        Some(Measure::Seconds) => 2.0 * mean - f64::from(one.total),
        _ => f64::from(one.total),
    };
    let least = norms.as_ref().and_then(|n| least_real_change(n.sd, n.reliability?));
    let better = |by: i64| match test.map(|test| test.measure) {
        Some(Measure::Seconds) => by < 0,
        _ => by > 0,
    };
    let worth = match (change, least) {
        (Some((by, _)), Some(least)) if by.unsigned_abs() as f64 <= least => {
            format!("smaller than the error of the test ({least:.1}): no change can be told")
        }
        (Some((by, _)), Some(least)) => {
            let way = if better(by) { "better" } else { "worse" };
            format!("{way} by more than the error of the test ({least:.1})")
        }
        _ => String::new(),
    };
    TestTaken {
        id: one.id,
        visit: one.visit,
        day: one.day,
        test: one.test.clone(),
        name: test.map_or_else(|| one.test.clone(), |test| test.name.clone()),
        source: test.map_or_else(String::new, |test| test.source.clone()),
        parts: one.parts.clone(),
        total: one.total,
        most: test.and_then(|test| test.most),
        says,
        change,
        worth,
        t_score: norms.as_ref().and_then(|n| t_score(place(n.mean), n.mean, n.sd)),
        percentile: norms.as_ref().and_then(|n| percentile(place(n.mean), n.mean, n.sd)),
        norms,
        note: one.note.clone(),
    }
}
