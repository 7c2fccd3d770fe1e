//! Reads a plan with separate code: every rule again, lesson by lesson and pair by pair, in minutes,
//! and the four sums anew. The planner gives nothing out that does not pass.

use super::Planned;
use super::ask::Ask;

/// A lesson's end.
fn end(ask: &Ask, lesson: &Planned) -> u32 {
    lesson.start + ask.length(lesson.student) * ask.grid
}

/// What a plan comes to: missing, spread, cost, preference.
///
/// # Errors
/// The first rule it breaks, in words.
pub fn objectives(ask: &Ask, lessons: &[Planned]) -> Result<[i64; 4], String> {
    for lesson in lessons {
        alone(ask, lesson)?;
    }
    for (n, a) in lessons.iter().enumerate() {
        for b in lessons[n + 1..].iter().filter(|b| b.day == a.day) {
            let (a, b) = if a.start <= b.start { (a, b) } else { (b, a) };
            pair(ask, a, b)?;
        }
    }
    for day in 0..ask.days {
        let mut on: Vec<&Planned> = lessons.iter().filter(|l| l.day == day).collect();
        on.sort();
        on.sort_by_key(|l| l.start);
        sums(ask, day, &on)?;
    }
    Ok([missing(ask, lessons)?, spread(ask, lessons), cost(ask, lessons), off(ask, lessons)])
}

fn alone(ask: &Ask, lesson: &Planned) -> Result<(), String> {
    let Planned { student, day, start, court } = *lesson;
    let (s, c) = (&ask.students[student], &ask.courts[court]);
    let f = &ask.facilities[c.facility];
    let end = end(ask, lesson);
    let free = |of: &[[u32; 3]]| {
        of.iter().all(|taken| taken[0] != day || taken[2] <= start || end <= taken[1])
    };
    let hours = f.hours[day as usize];
    for (kept, rule) in [
        (start.is_multiple_of(ask.grid), "starts on the grid"),
        (s.hours[0] <= start && end <= s.hours[1], "inside the student's hours"),
        (day > s.arrive[0] || day == s.arrive[0] && start >= s.arrive[1], "after arrival"),
        (day < s.depart[0] || day == s.depart[0] && end <= s.depart[1], "before departure"),
        (hours[0] <= start && end <= hours[1], "inside the facility's hours"),
        (day < f.days_bookable, "on a day that can be booked"),
        (free(&c.taken), "on a free court"),
        (free(&ask.coach.busy), "while the coach is free"),
    ] {
        if !kept {
            return Err(format!("a lesson of student {student} on day {day} is not {rule}"));
        }
    }
    Ok(())
}

/// Two lessons of a day, the earlier one first.
fn pair(ask: &Ask, a: &Planned, b: &Planned) -> Result<(), String> {
    let facility = |l: &Planned| ask.courts[l.court].facility;
    let mut apart = 0;
    if facility(a) != facility(b) {
        apart = ask.coach.travel[facility(a)][facility(b)].div_ceil(ask.grid) * ask.grid;
    }
    if a.student == b.student {
        apart = apart.max(ask.students[a.student].rest.div_ceil(ask.grid) * ask.grid);
    }
    if end(ask, a) + apart > b.start {
        return Err(format!(
            "lessons on day {} at {} and {} lie closer than {apart} minutes",
            a.day, a.start, b.start
        ));
    }
    Ok(())
}

/// A day's limits, its lessons by start.
fn sums(ask: &Ask, day: u32, on: &[&Planned]) -> Result<(), String> {
    let minutes = |l: &&&Planned| ask.length(l.student) * ask.grid;
    let most = |kept: bool, rule: &str| {
        if kept { Ok(()) } else { Err(format!("on day {day} {rule} is over its limit")) }
    };
    most(on.iter().map(|l| minutes(&l)).sum::<u32>() <= ask.coach.day_limit, "the coach's time")?;
    for (n, f) in ask.facilities.iter().enumerate() {
        let here = on.iter().filter(|l| ask.courts[l.court].facility == n);
        most(here.map(|l| minutes(&l)).sum::<u32>() <= f.day_limit, "a facility")?;
    }
    for (n, s) in ask.students.iter().enumerate() {
        let many = on.iter().filter(|l| l.student == n).count();
        most(many <= s.per_day as usize, "a student")?;
    }
    // Unbroken runs: of the coach, and of the coach on one court.
    let (mut run, mut court_run) = (0, 0);
    for (n, lesson) in on.iter().enumerate() {
        let before = n.checked_sub(1).map(|n| on[n]);
        let joined = before.filter(|b| end(ask, b) == lesson.start);
        let length = minutes(&lesson);
        run = joined.map_or(0, |_| run) + length;
        court_run = joined.filter(|b| b.court == lesson.court).map_or(0, |_| court_run) + length;
        most(run <= ask.coach.longest_run, "the coach's longest run")?;
        let limit = ask.facilities[ask.courts[lesson.court].facility].longest_run;
        most(court_run <= limit, "a court's longest run")?;
    }
    Ok(())
}

fn missing(ask: &Ask, lessons: &[Planned]) -> Result<i64, String> {
    let mut missing = 0;
    for (n, s) in ask.students.iter().enumerate() {
        let given = lessons.iter().filter(|l| l.student == n).count() as i64;
        let short = i64::from(s.lessons) - given;
        if short < 0 {
            return Err(format!("student {n} has more lessons than were wished for"));
        }
        missing += i64::from(s.priority) * short;
    }
    Ok(missing)
}

fn spread(ask: &Ask, lessons: &[Planned]) -> i64 {
    let mut spread = 0;
    for (n, s) in ask.students.iter().enumerate() {
        let there = i64::from(s.depart[0]) - i64::from(s.arrive[0]) + 1;
        let with = (0..ask.days).filter(|d| lessons.iter().any(|l| l.student == n && l.day == *d));
        spread += 3 * (i64::from(s.lessons).min(there) - with.count() as i64);
    }
    for day in 0..ask.days {
        for f in 0..ask.facilities.len() {
            let used = lessons.iter().any(|l| l.day == day && ask.courts[l.court].facility == f);
            spread += if used { 2 } else { 0 };
        }
    }
    spread
}

fn cost(ask: &Ask, lessons: &[Planned]) -> i64 {
    let one = |l: &Planned| {
        let court = &ask.courts[l.court];
        let mut sum = 0;
        for at in (l.start..end(ask, l)).step_by(ask.grid as usize) {
            for [day, from, to, price] in &court.prices {
                if *day == l.day && *from <= at && at < *to {
                    sum += i64::from(*price) * i64::from(ask.grid);
                    break;
                }
            }
        }
        sum / 60 + i64::from(court.fee)
    };
    lessons.iter().map(one).sum()
}

fn off(ask: &Ask, lessons: &[Planned]) -> i64 {
    let one = |l: &Planned| {
        let s = &ask.students[l.student];
        let early = i64::from(s.prefer[0]) - i64::from(l.start);
        let late = i64::from(end(ask, l)) - i64::from(s.prefer[1]);
        let other = s.prefer_court.is_some_and(|court| court != l.court);
        early.max(late).max(0) / i64::from(ask.grid) + if other { 2 } else { 0 }
    };
    lessons.iter().map(one).sum()
}
