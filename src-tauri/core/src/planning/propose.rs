//! From a plan in numbers to one in words.

use super::board::Board;
use super::gather::Gathered;
use super::{
    FreeHours, LessonsMissing, PlanMade, PlanPlace, PlannedLesson, Room, RoomOnCourt,
    room_for_lessons, why,
};
use crate::facilities::{Terms, terms_of};
use crate::kinds::stretches::{Stretch, joined, without};
use crate::kinds::{Currency, Time};
use crate::planner::{DAY, Plan, Planned, sums};

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

/// When one more lesson of the shortest length wished for would fit, between the first and the last
/// day asked about.
fn free(of: &Gathered, board: &Board, lessons: &[Planned]) -> Vec<FreeHours> {
    let ask = &board.ask;
    let mut all = Vec::new();
    for n in (0..ask.days).filter(|n| of.span.holds(of.day(*n))) {
        let mut stretches = Vec::new();
        for (at, facility) in ask.facilities.iter().enumerate() {
            let step = if facility.step == 0 { ask.grid } else { facility.step };
            let room = room(of, board, lessons, (n, at));
            stretches.extend(room_for_lessons(&room, |start| start % step == 0));
        }
        all.extend(joined(stretches).into_iter().map(|(from, to)| FreeHours {
            day: of.day(n),
            from: Time::MIDNIGHT.plus(from),
            to: Time::MIDNIGHT.plus(to % DAY),
        }));
    }
    all
}

/// What a plan leaves of a day at a facility.
fn room(of: &Gathered, board: &Board, lessons: &[Planned], (day, facility): (u32, usize)) -> Room {
    let ask = &board.ask;
    let rules = &ask.facilities[facility];
    let time = |l: &Planned| (l.start, l.start + ask.students[l.student].length);
    let there = |l: &Planned| ask.courts[l.court].facility;
    let on: Vec<&Planned> = lessons.iter().filter(|l| l.day == day).collect();
    // Lessons that stand but could not be locked count in the limits as well.
    let unlocked = of.lessons.iter().filter(|l| {
        of.number(l.day) == Some(day) && !board.standing.iter().any(|(_, id)| *id == l.id)
    });
    let minutes: u32 = on.iter().map(|l| time(l).1 - time(l).0).sum();
    let minutes = minutes + unlocked.map(|l| l.minutes).sum::<u32>();
    let here = on.iter().filter(|l| there(l) == facility);
    let here: u32 = here.map(|l| time(l).1 - time(l).0).sum();
    let left = [(ask.coach.day_limit, minutes), (rules.day_limit, here)]
        .map(|(limit, taken)| limit.saturating_sub(taken));
    let mut busy: Vec<Stretch> =
        ask.coach.busy.iter().filter(|row| row[0] == day).map(rest).collect();
    busy.extend(on.iter().map(|l| {
        let way = ask.coach.travel[there(l)][facility];
        (time(l).0.saturating_sub(way), (time(l).1 + way).min(DAY))
    }));
    let hours = (rules.hours[day as usize][0], rules.hours[day as usize][1]);
    let courts = ask.courts.iter().enumerate().filter(|(_, court)| court.facility == facility);
    let courts = courts.map(|(number, court)| {
        let taken: Vec<Stretch> =
            court.taken.iter().filter(|row| row[0] == day).map(rest).collect();
        RoomOnCourt {
            open: without(&[hours], &taken),
            lessons: on.iter().filter(|l| l.court == number).map(|l| time(l)).collect(),
        }
    });
    let shortest = of.guests.iter().map(|guest| guest.wish.minutes).min();
    Room {
        least: shortest.and_then(|minutes| u32::try_from(minutes).ok()).unwrap_or(DAY),
        left: left.into_iter().min(),
        courts: courts.collect(),
        busy,
        lessons: on.iter().map(|l| time(l)).collect(),
        longest_run: Some(ask.coach.longest_run),
        longest_on_court: Some(rules.longest_run),
    }
}

/// What follows a day's number: from, to.
fn rest(row: &[u32; 3]) -> Stretch {
    (row[1], row[2])
}
