//! From an ask to a plan.

use super::ask::Ask;
use super::check;
use super::day::{self, Day, NEVER, Rules, Weights};
use super::days::{Found, Search};
use super::options::{Code, ruled_out, starts};
use super::order::order;
use super::{Because, Plan, Planned, Refusal, Unplaced};

/// Finds the best plan. `go_on` is asked now and then; once it says no, the best plan found so far is
/// given, not proven.
///
/// The ask's numbers must fit together: one range of hours for each day, courts of facilities that
/// are there, days and minutes inside the plan; whoever builds an ask sees to that.
///
/// # Errors
/// As [`Refusal`] says.
pub fn plan(ask: &Ask, go_on: &dyn Fn() -> bool) -> Result<Plan, Refusal> {
    let weights = Weights::of(ask)
        .ok_or_else(|| too_large("These rates and lessons are too large to be added up."))?;
    let rules = Rules::of(ask);
    let mut days = Vec::new();
    let mut proven = true;
    for day in 0..ask.days {
        match day::work_out(ask, &rules, weights, day, go_on) {
            Some(day) => {
                proven &= day.whole;
                days.push(day);
            }
            None => {
                // Stopped before anything was known: the days left have what is locked, no more.
                proven = false;
                days.push(Day::idle(ask, day));
            }
        }
    }
    let (best, searched) = search(ask, &rules, weights, &mut days, go_on)?;
    proven &= searched;
    let mut lessons: Vec<Planned> = Vec::new();
    for (day, counts) in (0..ask.days).zip(&best) {
        let Some((_, on)) = order(ask, &rules, weights, day, counts) else {
            return Err(Refusal::Fault(format!("day {day} was promised and cannot be")));
        };
        lessons.extend(on.iter().map(|o| Planned {
            student: o.student,
            day,
            start: o.start * ask.grid,
            court: o.court,
        }));
    }
    let objectives = check::objectives(ask, &lessons).map_err(Refusal::Fault)?;
    let unplaced = unplaced(ask, &lessons);
    Ok(Plan { proven, objectives, lessons, unplaced })
}

fn too_large(words: &str) -> Refusal {
    Refusal::TooLarge(words.to_owned())
}

type Chosen = Vec<Vec<(usize, u8)>>;

/// Searches, settles what was only a bound, and searches again until what is least is exact.
fn search(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    days: &mut [Day],
    go_on: &dyn Fn() -> bool,
) -> Result<(Chosen, bool), Refusal> {
    let many = days.len();
    let mut search = Search::new(ask, weights, days, go_on)
        .ok_or_else(|| too_large("There are too many students and lessons for one plan."))?;
    // Nobody taught on any day is always a plan.
    let mut best: Vec<usize> = (0..many).map(|day| search.locked(day)).collect();
    let mut known = search.total(&best);
    let mut proven = false;
    let mut next = Found::Plan(search.good());
    loop {
        let plan = match next {
            Found::Plan(plan) => plan,
            Found::NoBetter => {
                proven = true;
                break;
            }
            Found::Open => break,
        };
        for (day, choice) in (0..ask.days).zip(&plan) {
            if !search.is_exact(day as usize, *choice) {
                let counts = search.counts(day as usize, *choice);
                let exact = order(ask, rules, weights, day, &counts);
                search.settle(day as usize, *choice, exact.map_or(NEVER, |(value, _)| value));
            }
        }
        if let Some(total) = search.total(&plan)
            && known.is_none_or(|known| total < known)
        {
            (best, known) = (plan, Some(total));
        }
        next = search.least(&best, go_on);
    }
    let chosen = best.iter().enumerate().map(|(day, c)| search.counts(day, *c)).collect();
    Ok((chosen, proven))
}

/// What became of each start of the students who miss lessons.
fn unplaced(ask: &Ask, lessons: &[Planned]) -> Vec<Unplaced> {
    let mut unplaced = Vec::new();
    for (student, s) in ask.students.iter().enumerate() {
        let given = lessons.iter().filter(|l| l.student == student).count();
        let count = s.lessons.saturating_sub(u32::try_from(given).unwrap_or(u32::MAX));
        if count > 0 {
            unplaced.push(Unplaced { student, count, because: because(ask, student) });
        }
    }
    unplaced
}

fn because(ask: &Ask, student: usize) -> Vec<Because> {
    let mut all = Vec::new();
    for day in ask.students[student].arrive[0]..=ask.students[student].depart[0] {
        let mut codes: Vec<(Code, u32)> = Vec::new();
        for slot in starts(ask, student) {
            for court in 0..ask.courts.len() {
                let code = ruled_out(ask, student, day, slot, court).unwrap_or(Code::InTheWay);
                match codes.iter_mut().find(|(known, _)| *known == code) {
                    Some((_, starts)) => *starts += 1,
                    None => codes.push((code, 1)),
                }
            }
        }
        codes.sort_unstable();
        all.extend(codes.into_iter().map(|(code, starts)| Because { day, code, starts }));
    }
    all
}
