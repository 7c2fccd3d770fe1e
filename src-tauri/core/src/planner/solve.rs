//! From an ask to a plan.

use super::ask::{Ask, Limit};
use super::check;
use super::day::{self, Day, NEVER, Weights};
use super::days::{Found, Search};
use super::options::{Code, ruled_out, starts};
use super::order::order;
use super::stance::Rules;
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
    let mut proven = true;
    let mut work_out = |day: u32, watched: &[usize]| {
        let day = day::work_out(ask, &rules, weights, day, watched, go_on)
            // Stopped before anything was known: the day has what is locked, no more.
            .unwrap_or_else(|| Day::idle(ask, day, watched));
        proven &= day.whole;
        day
    };
    let mut days: Vec<Day> = (0..ask.days).map(|day| work_out(day, &[])).collect();
    // A limit over several days is left out until a plan breaks it: a plan that keeps it by itself
    // is the best with it as well.
    let mut limits: Vec<Limit> = Vec::new();
    let mut without = Vec::new();
    let (lessons, searched) = loop {
        let found = search(ask, &rules, weights, &limits, &mut days, go_on)?;
        let Some((best, searched)) = found else {
            if limits.is_empty() {
                return Err(too_large("There are too many students and lessons for one plan."));
            }
            // Too many limits for one search.
            break (within_limits(ask, without), false);
        };
        let lessons = laid_out(ask, &rules, weights, &best)?;
        let over = check::over(ask, &lessons);
        if over.is_empty() || !searched {
            break (within_limits(ask, lessons), searched);
        }
        if let Some(twice) = over.iter().find(|limit| limits.contains(limit)) {
            return Err(Refusal::Fault(format!("{twice:?} was watched and is broken")));
        }
        limits.extend(&over);
        without = lessons;
        for day in 0..ask.days {
            let watched = watched(ask, &limits, day);
            let of = &mut days[day as usize];
            if of.watched != watched {
                *of = work_out(day, &watched);
            }
        }
    };
    proven &= searched;
    let objectives = check::objectives(ask, &lessons).map_err(Refusal::Fault)?;
    let unplaced = unplaced(ask, &lessons);
    Ok(Plan { proven, objectives, lessons, unplaced })
}

/// The facilities whose use the choices of a day must tell apart. Of a facility that is the only one
/// the use follows from who is taught.
fn watched(ask: &Ask, limits: &[Limit], day: u32) -> Vec<usize> {
    if ask.facilities.len() == 1 {
        return Vec::new();
    }
    let held = limits.iter().filter(|limit| limit.holds(day));
    let mut watched: Vec<usize> = held.filter_map(|limit| limit.facility).collect();
    watched.sort_unstable();
    watched.dedup();
    watched
}

/// The lessons of each day's choice.
fn laid_out(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    best: &[Chosen],
) -> Result<Vec<Planned>, Refusal> {
    let mut lessons = Vec::new();
    for (day, chosen) in (0..ask.days).zip(best) {
        let Some((_, on)) = order(ask, rules, weights, day, &chosen.counts, &chosen.caps) else {
            return Err(Refusal::Fault(format!("day {day} was promised and cannot be")));
        };
        lessons.extend(on.iter().map(|o| Planned {
            student: o.student,
            day,
            start: o.start * ask.grid,
            court: o.court,
        }));
    }
    Ok(lessons)
}

/// A plan of a search that was not ended, without the lessons by which it breaks a limit: the least
/// of priority first, the last of them. To take a lesson out breaks nothing else.
fn within_limits(ask: &Ask, mut lessons: Vec<Planned>) -> Vec<Planned> {
    while let Some(limit) = check::over(ask, &lessons).first() {
        let counts = |l: &Planned| check::counts(ask, limit, l) && !ask.locked.contains(l);
        let of = (0..lessons.len()).filter(|n| counts(&lessons[*n]));
        let Some(least) =
            of.min_by_key(|n| (ask.students[lessons[*n].student].priority, std::cmp::Reverse(*n)))
        else {
            break;
        };
        lessons.remove(least);
    }
    lessons
}

fn too_large(words: &str) -> Refusal {
    Refusal::TooLarge(words.to_owned())
}

/// What is chosen for a day.
struct Chosen {
    counts: Vec<(usize, u8)>,
    caps: Vec<(usize, u32)>,
}

/// Searches, settles what was only a bound, and searches again until what is least is exact. `None`
/// when there are too many lessons and limits for one search.
fn search(
    ask: &Ask,
    rules: &Rules,
    weights: Weights,
    limits: &[Limit],
    days: &mut [Day],
    go_on: &dyn Fn() -> bool,
) -> Result<Option<(Vec<Chosen>, bool)>, Refusal> {
    let many = days.len();
    let Some(mut search) = Search::new(ask, weights, limits, days, go_on) else {
        return Ok(None);
    };
    // Nobody taught on any day but who is locked is always a plan.
    let mut best: Vec<usize> = (0..many).map(|day| search.locked(day)).collect();
    let mut known = search.total(&best);
    let mut proven = false;
    let (mut next, mut least) = (Found::Plan(search.good()), false);
    loop {
        let plan = match next {
            Found::Plan(plan) => plan,
            Found::NoBetter => {
                proven = true;
                break;
            }
            Found::Open => break,
        };
        let promised = search.total(&plan);
        for (day, choice) in (0..ask.days).zip(&plan) {
            if !search.is_exact(day as usize, *choice) {
                let counts = search.counts(day as usize, *choice);
                let caps = search.caps(day as usize, *choice);
                let exact = order(ask, rules, weights, day, &counts, &caps);
                search.settle(day as usize, *choice, exact.map_or(NEVER, |(value, _)| value));
            }
        }
        let total = search.total(&plan);
        if let Some(total) = total
            && known.is_none_or(|known| total < known)
        {
            (best, known) = (plan, Some(total));
        }
        // The search comes to the least plan first: one that costs what its values said is the best.
        if least && total == promised {
            proven = true;
            break;
        }
        (next, least) = (search.least(&best, go_on), true);
    }
    let chosen = best.iter().enumerate().map(|(day, choice)| Chosen {
        counts: search.counts(day, *choice),
        caps: search.caps(day, *choice),
    });
    Ok(Some((chosen.collect(), proven)))
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
