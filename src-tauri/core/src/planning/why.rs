//! Why a lesson of a plan is where it is, tried against every other place it could have; and what
//! stood in the way of lessons that found none.

use super::board::Board;
use super::gather::Gathered;
use crate::kinds::Span;
use crate::kinds::text::counted;
use crate::planner::{Code, DAY, Limit, Planned, Unplaced, Wish, keeps, sums};

/// Why a lesson is where it is: what the best other place for it alone, all else staying, would
/// cost.
pub(super) fn here(of: &Gathered, board: &Board, lessons: &[Planned], n: usize) -> String {
    let ask = &board.ask;
    let now = ranked(board, sums(ask, lessons));
    let mut others: Vec<Planned> = lessons.to_vec();
    let (mut places, mut as_good) = (0, 0);
    let mut best: Option<[i64; 4]> = None;
    for day in 0..ask.days {
        for start in (0..DAY).step_by(ask.grid as usize) {
            for court in 0..ask.courts.len() {
                let other = Planned { day, start, court, ..lessons[n] };
                if other == lessons[n]
                    || crate::planner::ruled_out(ask, other.student, day, start / ask.grid, court)
                        .is_some()
                {
                    continue;
                }
                others[n] = other;
                if !keeps(ask, &others, n) {
                    continue;
                }
                places += 1;
                let then = ranked(board, sums(ask, &others));
                as_good += i64::from(then <= now);
                best = Some(best.map_or(then, |best| best.min(then)));
            }
        }
    }
    let Some(best) = best else {
        return "The only place left for it beside the other lessons.".to_owned();
    };
    if best <= now {
        return if as_good == 1 {
            "One other place would be just as good.".to_owned()
        } else {
            format!("{as_good} other places would be just as good.")
        };
    }
    // The first wish in which the best other place is worse.
    let at = (0..4).find(|n| best[*n] != now[*n]).unwrap_or(3);
    let by = best[at] - now[at];
    let worse = match at.checked_sub(1).map(|rank| ask.order[rank]) {
        None => "leave a lesson without a place".to_owned(),
        Some(Wish::Spread) if by >= 3 => "leave the student a day without a lesson".to_owned(),
        Some(Wish::Spread) => "mean one more facility on a day".to_owned(),
        Some(Wish::Cost) => format!("cost {} more", money(of, board, lessons[n].court, by)),
        Some(Wish::Times) => {
            let minutes = by * i64::from(ask.grid);
            format!("lie {minutes} minutes further from what is liked best")
        }
    };
    let places = counted(places, "other place", "other places");
    format!("The best of {places} would {worse}.")
}

fn money(of: &Gathered, board: &Board, court: usize, minor: i64) -> String {
    let place = &of.places[board.courts[court].0];
    crate::kinds::Currency::parse(&place.rules.currency)
        .map_or_else(|| minor.to_string(), |currency| currency.words(minor))
}

/// The sums of a plan in the order of its wishes.
pub(super) fn ranked(board: &Board, [missing, spread, cost, off]: [i64; 4]) -> [i64; 4] {
    let [first, second, third] = board.ask.order.map(|wish| match wish {
        Wish::Spread => spread,
        Wish::Cost => cost,
        Wish::Times => off,
    });
    [missing, first, second, third]
}

/// What became of the starts of each day, and which limits over several days are reached, a sentence
/// for each.
pub(super) fn not(
    of: &Gathered,
    board: &Board,
    lessons: &[Planned],
    unplaced: &Unplaced,
) -> Vec<String> {
    if let Some((_, words)) = board.never.iter().find(|(entry, _)| *entry == unplaced.student) {
        return words.clone();
    }
    let mut said = days(of, board, unplaced);
    let length = board.ask.students[unplaced.student].length;
    let full = board.ask.limits.iter().filter(|limit| {
        let there = |day: u32| limit.first <= day && day <= limit.last;
        let s = &board.ask.students[unplaced.student];
        let taught = lessons.iter().filter(|l| {
            let place = board.ask.courts[l.court].facility;
            there(l.day) && limit.facility.is_none_or(|facility| facility == place)
        });
        let minutes: u32 = taught.map(|l| board.ask.students[l.student].length).sum();
        (s.arrive[0]..=s.depart[0]).any(there) && minutes + length > limit.minutes
    });
    said.extend(full.map(|limit| limit_words(of, board, limit)));
    said.dedup();
    said
}

fn limit_words(of: &Gathered, board: &Board, limit: &Limit) -> String {
    let place = limit.facility.map(|facility| &of.places[board.used[facility]]);
    match place {
        None => format!(
            "In the week of Monday {} you teach as much as you wish to.",
            super::gather::monday(of.day(limit.first)).words()
        ),
        Some(place) => {
            let days = Span { first: of.day(limit.first), last: of.day(limit.last) };
            let most = counted(place.rules.week_limit, "minute", "minutes");
            format!(
                "{} gives at most {most} in any seven days; with {} they are used.",
                place.name,
                days.words()
            )
        }
    }
}

fn days(of: &Gathered, board: &Board, unplaced: &Unplaced) -> Vec<String> {
    let mut days: Vec<(u32, Vec<(Code, u32)>)> = Vec::new();
    for because in &unplaced.because {
        match days.last_mut().filter(|(day, _)| *day == because.day) {
            Some((_, codes)) => codes.push((because.code, because.starts)),
            None => days.push((because.day, vec![(because.code, because.starts)])),
        }
    }
    let step = board.ask.grid;
    days.into_iter()
        .map(|(day, codes)| {
            let said: Vec<String> = codes
                .iter()
                .map(|(code, starts)| format!("{starts} {}", words(of, day, *code)))
                .collect();
            let date = of.day(day);
            format!(
                "{} {}, of the starts every {step} minutes on each court: {}.",
                date.date().format("%A"),
                date.words(),
                said.join("; ")
            )
        })
        .collect()
}

fn words(of: &Gathered, day: u32, code: Code) -> String {
    match code {
        Code::NotArrived => "before the arrival".to_owned(),
        Code::Departed => "past the departure".to_owned(),
        Code::Closed => "while the facility is closed".to_owned(),
        Code::NotAStart => "at times at which no booking begins".to_owned(),
        Code::NotBookable => "on a day that cannot be booked yet".to_owned(),
        Code::TooLong => "longer than the facility allows".to_owned(),
        Code::CourtTaken => "while the court is kept for others".to_owned(),
        Code::CoachBusy => {
            let mut what: Vec<String> = of
                .away(of.day(day), &of.ask.changes)
                .into_iter()
                .map(
                    |(_, _, what)| if what.is_empty() { "your own hours".to_owned() } else { what },
                )
                .collect();
            what.sort();
            what.dedup();
            format!("while you cannot teach ({})", what.join(", "))
        }
        Code::NoMeal => "while you have your meal".to_owned(),
        Code::InTheWay => "beside other lessons, the rest between, or a limit".to_owned(),
    }
}
