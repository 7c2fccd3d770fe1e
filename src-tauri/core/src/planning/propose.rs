//! From a plan in numbers to one in words.

use super::board::Board;
use super::gather::Gathered;
use super::{FreeHours, LessonsMissing, PlanMade, PlanPlace, PlannedLesson, why};
use crate::facilities::{Terms, terms_of};
use crate::kinds::{Currency, Time};
use crate::planner::{DAY, Plan, Planned, sums};

/// The shortest free time that is told of, in minutes.
const LEAST_FREE: u32 = 45;

/// The proposal that a plan is.
pub(super) fn proposal(of: &Gathered, board: &Board, plan: &Plan) -> PlanMade {
    let lines: Vec<PlannedLesson> =
        (0..plan.lessons.len()).filter_map(|n| line(of, board, &plan.lessons, n)).collect();
    let mut days: Vec<_> = lines.iter().map(|line| line.place.day).collect();
    days.dedup();
    let mut trips: Vec<_> = lines.iter().map(|line| (line.place.day, line.facility)).collect();
    trips.sort_unstable();
    trips.dedup();
    let missing = plan.unplaced.iter().filter_map(|unplaced| {
        let mut visits = board.who[unplaced.student].iter().map(|guest| of.guests[*guest].visit);
        Some(LessonsMissing {
            visit: visits.next()?,
            with: visits.collect(),
            name: of.names(board, unplaced.student)?,
            lessons: unplaced.count,
            why: why::not(of, board, &plan.lessons, unplaced),
        })
    });
    PlanMade {
        proven: plan.proven,
        missing: missing.collect(),
        cost: cost(of, board, &plan.lessons),
        days: u32::try_from(days.len()).unwrap_or(0),
        trips: u32::try_from(trips.len()).unwrap_or(0),
        sums: sums(&board.ask, &plan.lessons),
        free: free(of, board, &plan.lessons),
        mind: mind(of, &lines),
        lines,
    }
}

/// One line of a plan; `None` for someone who is not planned for.
pub(super) fn line(
    of: &Gathered,
    board: &Board,
    lessons: &[Planned],
    n: usize,
) -> Option<PlannedLesson> {
    let planned = &lessons[n];
    let place: PlanPlace = of.place(board, planned)?;
    let (at, court) = board.courts[planned.court];
    let (at, court) = (&of.places[at], &of.places[at].courts[court]);
    let standing = board.standing.iter().find(|(standing, _)| standing == planned);
    let locked = board.ask.locked.contains(planned);
    let minutes = board.ask.students[planned.student].length;
    let terms: Terms = terms_of(&at.rules, &at.zone, Some(court), place.day, place.starts, minutes);
    Some(PlannedLesson {
        lesson: standing.map(|(_, lesson)| *lesson),
        locked: locked && standing.is_none(),
        students: board.who[planned.student].iter().map(|g| of.guests[*g].student).collect(),
        name: of.names(board, planned.student)?,
        ends: place.starts.plus(minutes),
        facility: at.id,
        facility_name: at.name.clone(),
        court_name: court.name.clone(),
        cost: terms.cost,
        ask_words: terms.ask_words,
        why: match (standing, locked) {
            (Some(_), _) => "It stands already.".to_owned(),
            (None, true) => "You locked it here.".to_owned(),
            _ => why::here(of, board, lessons, n),
        },
        against: terms.against,
        place,
    })
}

/// What the courts of these lessons cost, by the facilities' rules: one amount for each currency.
pub(super) fn cost(of: &Gathered, board: &Board, lessons: &[Planned]) -> Vec<String> {
    let mut amounts: Vec<(Currency, i64)> = Vec::new();
    for planned in lessons.iter().filter(|l| !board.who[l.student].is_empty()) {
        let (at, court) = board.courts[planned.court];
        let (at, court) = (&of.places[at], &of.places[at].courts[court]);
        let minutes = board.ask.students[planned.student].length;
        let starts = Time::MIDNIGHT.plus(planned.start);
        let terms =
            terms_of(&at.rules, &at.zone, Some(court), of.day(planned.day), starts, minutes);
        let Some(currency) = Currency::parse(&at.rules.currency) else { continue };
        let amount = terms.cost.split(' ').next().and_then(|amount| currency.minor(amount));
        let Some(amount) = amount else { continue };
        match amounts.iter_mut().find(|(known, _)| *known == currency) {
            Some((_, sum)) => *sum += amount,
            None => amounts.push((currency, amount)),
        }
    }
    amounts.into_iter().map(|(currency, minor)| currency.words(minor)).collect()
}

/// What the facilities of these lines ask besides the limits that the planner keeps, once for each.
fn mind(of: &Gathered, lines: &[PlannedLesson]) -> Vec<String> {
    let mut all = Vec::new();
    for place in of.places.iter().filter(|place| lines.iter().any(|l| l.facility == place.id)) {
        let said = place.rules.mind_besides_limits();
        all.extend(said.into_iter().map(|words| format!("{}: {words}", place.name)));
    }
    all
}

/// When the coach is free and some court of a chosen facility is, between the first and the last day
/// asked about.
fn free(of: &Gathered, board: &Board, lessons: &[Planned]) -> Vec<FreeHours> {
    let ask = &board.ask;
    let mut all = Vec::new();
    for n in (0..ask.days).filter(|n| of.span.holds(of.day(*n))) {
        let mut from = None;
        for slot in 0..=DAY / ask.grid {
            let (start, end) = (slot * ask.grid, (slot + 1) * ask.grid);
            let meets = |rows: &[[u32; 3]]| {
                rows.iter().any(|row| row[0] == n && row[1] < end && start < row[2])
            };
            let taught = lessons.iter().any(|l| {
                l.day == n && l.start < end && start < l.start + ask.students[l.student].length
            });
            let court = ask.courts.iter().any(|c| {
                let hours = ask.facilities[c.facility].hours[n as usize];
                hours[0] <= start && end <= hours[1] && !meets(&c.taken)
            });
            let is_free = end <= DAY && !taught && !meets(&ask.coach.busy) && court;
            match (from, is_free) {
                (None, true) => from = Some(start),
                (Some(since), false) => {
                    from = None;
                    if start - since >= LEAST_FREE {
                        all.push(FreeHours {
                            day: of.day(n),
                            from: Time::MIDNIGHT.plus(since),
                            to: Time::MIDNIGHT.plus(start % DAY),
                        });
                    }
                }
                _ => {}
            }
        }
    }
    all
}
