//! The small changes that might make room for a lesson that found no place, the smallest first, and
//! each of them in words. Whether they do is tried out, never guessed.

use super::board::Board;
use super::gather::Gathered;
use super::{WhatIf, WouldFree};
use crate::kinds::Day;
use crate::kinds::ids::VisitId;
use crate::planner::{Plan, plan};

/// The changes worth trying for a plan that misses lessons.
pub(super) fn worth_trying(of: &Gathered, board: &Board, missing: &Plan) -> Vec<WhatIf> {
    let mut changes = Vec::new();
    let already = &of.ask.changes;
    let days =
        || (0..of.days).map(|n| of.day(n)).filter(|day| of.span.holds(*day) && *day >= of.today);
    // Of a lesson that is shared any of them may make room.
    let mut those: Vec<usize> = Vec::new();
    for guest in missing.unplaced.iter().flat_map(|u| board.who[u.student].iter().copied()) {
        if !those.contains(&guest) {
            those.push(guest);
        }
    }
    for minutes in [30, 60] {
        for day in days() {
            changes.push(WhatIf::BeginEarlier { day, minutes });
            changes.push(WhatIf::GoOnLater { day, minutes });
        }
        for guest in those.iter().map(|n| &of.guests[*n]) {
            let visit = guest.visit;
            if !guest.wish.arrives.is_empty() {
                changes.push(WhatIf::ArriveEarlier { visit, minutes });
            }
            if !guest.wish.leaves.is_empty() {
                changes.push(WhatIf::LeaveLater { visit, minutes });
            }
            if !guest.wish.earliest.is_empty() {
                changes.push(WhatIf::EarlierHours { visit, minutes });
            }
            if !guest.wish.latest.is_empty() {
                changes.push(WhatIf::LaterHours { visit, minutes });
            }
        }
    }
    for day in days() {
        for taken in of.occupied.iter().filter(|taken| taken.day == day) {
            let without = WhatIf::Without { day, what: taken.what.clone() };
            if !changes.contains(&without) {
                changes.push(without);
            }
        }
    }
    if of.own.day_limit > 0 {
        changes.push(WhatIf::LongerDays { minutes: 60 });
    }
    if of.own.week_limit > 0 {
        changes.push(WhatIf::LongerWeeks { minutes: 60 });
    }
    changes
        .extend(of.places.iter().filter(|p| !p.chosen).map(|p| WhatIf::AlsoAt { facility: p.id }));
    for guest in those.iter().map(|n| &of.guests[*n]) {
        let visit = guest.visit;
        changes.push(WhatIf::OneMoreADay { visit });
        changes.push(WhatIf::DayBefore { visit });
        changes.push(WhatIf::DayAfter { visit });
    }
    changes.retain(|change| !already.contains(change));
    changes
}

/// Tries one change: how many lessons more find a place, if any do.
pub(super) fn tried(
    of: &Gathered,
    change: &WhatIf,
    lessons: usize,
    go_on: &dyn Fn() -> bool,
) -> Option<WouldFree> {
    let mut all = of.ask.changes.clone();
    all.push(change.clone());
    let board = of.board(&all);
    let then = plan(&board.ask, go_on).ok()?;
    let more = then.lessons.len().checked_sub(lessons).filter(|more| *more > 0)?;
    Some(WouldFree {
        change: change.clone(),
        words: words(of, change),
        lessons: u32::try_from(more).unwrap_or(0),
    })
}

/// A change as a sentence.
pub(super) fn words(of: &Gathered, change: &WhatIf) -> String {
    let name = |visit: VisitId| {
        of.guests.iter().find(|g| g.visit == visit).map_or("The student", |g| g.name.as_str())
    };
    let on = |day: Day| format!("{} {}", day.date().format("%A"), day.words());
    match change {
        WhatIf::ArriveEarlier { visit, minutes } => {
            format!("{} arrives {minutes} minutes earlier.", name(*visit))
        }
        WhatIf::LeaveLater { visit, minutes } => {
            format!("{} leaves {minutes} minutes later.", name(*visit))
        }
        WhatIf::DayBefore { visit } => format!("{} comes a day earlier.", name(*visit)),
        WhatIf::DayAfter { visit } => format!("{} stays a day longer.", name(*visit)),
        WhatIf::OneMoreADay { visit } => format!("{} has one lesson a day more.", name(*visit)),
        WhatIf::EarlierHours { visit, minutes } => {
            format!("{} takes lessons {minutes} minutes earlier in the day.", name(*visit))
        }
        WhatIf::LaterHours { visit, minutes } => {
            format!("{} takes lessons {minutes} minutes later in the day.", name(*visit))
        }
        WhatIf::BeginEarlier { day, minutes } => {
            format!("You begin {minutes} minutes earlier on {}.", on(*day))
        }
        WhatIf::GoOnLater { day, minutes } => {
            format!("You go on {minutes} minutes later on {}.", on(*day))
        }
        WhatIf::LongerDays { minutes } => format!("You teach {minutes} minutes a day more."),
        WhatIf::LongerWeeks { minutes } => format!("You teach {minutes} minutes a week more."),
        WhatIf::Without { day, what } => {
            format!("{what} on {} moves out of the way.", on(*day))
        }
        WhatIf::AlsoAt { facility } => {
            let place = of.places.iter().find(|p| p.id == *facility);
            format!(
                "You take courts at {} as well.",
                place.map_or("the other place", |p| p.name.as_str())
            )
        }
    }
}
