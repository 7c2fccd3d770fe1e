//! What a letter says by itself: sentences written from the record, each with the facts it rests on.

use super::{Part, PartKey};
use crate::app::Reading;
use crate::error::Result;
use crate::goals::carry;
use crate::goals::numbers::ChangeWord;
use crate::goals::show::{Shown, as_of};
use crate::goals::state::{Since, State, is_carried};
use crate::goals::{Block, Kind, Source, count_words};
use crate::kinds::text::counted;
use crate::lessons::{self, Lesson, LessonState};
use crate::settings::Settings;
use crate::students::{self, Student};
use crate::visits::{self, Stage, Visit};

/// All that a letter is written from.
pub(super) struct Record {
    pub visit: Visit,
    pub student: Student,
    pub lessons: Vec<Lesson>,
    pub goals: Vec<Shown>,
    pub next: Option<Visit>,
    pub settings: Settings,
}

/// Reads the record of a visit.
pub(super) fn record(db: &Reading<'_>, visit: visits::Which) -> Result<Record> {
    let visit = visits::show(db, visit)?;
    let student = students::show(db, students::Which { student: visit.student })?;
    let ask = lessons::ListLessons { visit: Some(visit.id), ..lessons::ListLessons::default() };
    let goals = carry::at_visit(db, visit.id)?
        .into_iter()
        .map(|(goal, _)| as_of(db, goal, visit.id))
        .collect::<Result<_>>()?;
    let others =
        visits::ListVisits { student: Some(visit.student), ..visits::ListVisits::default() };
    let next = visits::list(db, others)?.into_iter().find(|other| {
        other.id != visit.id
            && matches!(other.stage, Stage::Expected | Stage::Planned)
            && other.from() >= visit.from()
    });
    let lessons = lessons::list(db, ask)?;
    Ok(Record { lessons, goals, next, settings: crate::settings::show(db)?, student, visit })
}

/// Writes the letter. A part with nothing to say is not there.
pub(super) fn compose(record: &Record) -> Vec<Part> {
    [
        opening(record),
        strength(record),
        worked(record),
        moved(record),
        kept(record),
        carried(record),
        next(record),
        closing(record),
    ]
    .into_iter()
    .filter(|part| !part.text.is_empty())
    .collect()
}

fn part(key: PartKey, heading: &str, sentences: &[String], from: Vec<String>) -> Part {
    Part {
        key,
        heading: heading.to_owned(),
        text: sentences.iter().filter(|s| !s.is_empty()).cloned().collect::<Vec<_>>().join("\n\n"),
        from,
        edited: false,
        outdated: false,
        left_out: false,
    }
}

fn opening(r: &Record) -> Part {
    let taught: Vec<&Lesson> = r
        .lessons
        .iter()
        .filter(|l| matches!(l.state, LessonState::Given | LessonState::CutShort))
        .collect();
    let minutes: u32 = taught.iter().map(|l| l.given.unwrap_or(l.minutes)).sum();
    let place =
        if r.visit.place.is_empty() { String::new() } else { format!(" at {}", r.visit.place) };
    let visit = format!("Your visit{place}, {}", r.visit.when());
    let sentence = if taught.is_empty() {
        format!("{visit}, and what we found there.")
    } else {
        let lessons = counted(i64::try_from(taught.len()).unwrap_or(0), "lesson", "lessons");
        format!("{visit}: {lessons}, {} on court.", hours(minutes))
    };
    let from = taught
        .iter()
        .map(|l| {
            format!("lesson {}, {} – {}: {}", l.day.words(), l.starts, l.ends, l.state.words())
        })
        .collect();
    part(PartKey::Opening, "", &[format!("Dear {},", r.student.addressed), sentence], from)
}

/// "3 hours", "2½ hours", "45 minutes".
fn hours(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, m) => counted(i64::from(m), "minute", "minutes"),
        (1, 0) => "1 hour".to_owned(),
        (h, 0) => format!("{h} hours"),
        (h, 30) => format!("{h}½ hours"),
        (h, m) => format!("{h} h {m} min"),
    }
}

/// The blocks of a goal at this visit that are tests: under its own condition, ended, not told.
fn tests<'a>(r: &Record, goal: &'a Shown) -> (Option<&'a Block>, Option<&'a Block>) {
    let here = |b: &&Block| {
        b.visit == r.visit.id
            && b.ended
            && b.count.tries > 0
            && b.source != Source::Told
            && b.condition == goal.goal.condition
    };
    let retest = goal.blocks.iter().filter(here).find(|b| b.kind == Kind::Retest);
    let end = goal.blocks.iter().filter(here).rfind(|b| b.kind == Kind::EndTest);
    (retest, end)
}

/// Whole games at this visit, with how often it happened in each.
fn games<'a>(r: &Record, goal: &'a Shown) -> Vec<(&'a Block, u32)> {
    goal.blocks
        .iter()
        .filter(|b| {
            b.visit == r.visit.id && b.source != Source::Told && b.condition == goal.goal.condition
        })
        .filter_map(|b| Some((b, b.in_game?)))
        .collect()
}

fn fact(goal: &Shown, block: &Block) -> String {
    format!(
        "{}, {}: {} of {} ({})",
        goal.goal.title,
        block.day.words(),
        block.count.made,
        block.count.tries,
        block.kind.words()
    )
}

fn facts(r: &Record, goal: &Shown) -> Vec<String> {
    let (retest, end) = tests(r, goal);
    retest.into_iter().chain(end).map(|b| fact(goal, b)).collect()
}

fn was_kept_here(r: &Record, goal: &Shown) -> bool {
    goal.standing.kept_at == Some(r.visit.id)
}

fn strength(r: &Record) -> Part {
    let kept = r.goals.iter().find(|g| was_kept_here(r, g));
    let came_back = r.goals.iter().find(|g| {
        g.standing
            .steps
            .iter()
            .any(|s| s.visit == Some(r.visit.id) && s.to == State::Met && s.from != State::Met)
            && tests(r, g).0.is_some_and(|b| g.goal.criterion.share_reached_by(b.count))
    });
    let met = r.goals.iter().find(|g| {
        let reached = |b: &Block| {
            g.goal.criterion.share_reached_by(b.count) && !g.goal.criterion.is_short(b.count)
        };
        g.standing.state == State::Met && tests(r, g).1.is_some_and(reached)
    });
    let best = r
        .goals
        .iter()
        .filter_map(|g| {
            let (retest, end) = tests(r, g);
            let block = end.or(retest)?;
            Some((g, block, block.count.rate()?))
        })
        .max_by(|a, b| a.2.total_cmp(&b.2));
    let (sentence, goal) = if let Some(goal) = kept {
        let count = tests(r, goal).0.map_or_else(String::new, |b| count_words(b.count));
        (
            format!(
                "\u{201c}{}\u{201d} was still there after the weeks between: {count} before we had touched it.",
                goal.goal.title
            ),
            goal,
        )
    } else if let Some(goal) = came_back {
        let count = tests(r, goal).0.map_or_else(String::new, |b| count_words(b.count));
        (
            format!(
                "You came back with \u{201c}{}\u{201d}: {count} before any coaching.",
                goal.goal.title
            ),
            goal,
        )
    } else if let Some(goal) = met {
        let count = tests(r, goal).1.map_or_else(String::new, |b| count_words(b.count));
        (
            format!(
                "\u{201c}{}\u{201d} reached what we asked of it: {count} at the end.",
                goal.goal.title
            ),
            goal,
        )
    } else if let Some((goal, block, _)) = best.filter(|best| best.2 > 0.0) {
        (
            format!("\u{201c}{}\u{201d} gave you {}.", goal.goal.title, count_words(block.count)),
            goal,
        )
    } else {
        return part(PartKey::Strength, "", &[], Vec::new());
    };
    part(PartKey::Strength, "First, what held", &[sentence], facts(r, goal))
}

fn worked(r: &Record) -> Part {
    let worked: Vec<&Shown> = r
        .goals
        .iter()
        .filter(|g| g.blocks.iter().any(|b| b.visit == r.visit.id && b.was_tried()))
        .collect();
    let mut sentences: Vec<String> = worked
        .iter()
        .map(|g| {
            let cue = g.goal.cue();
            let cue = if cue.is_empty() {
                String::new()
            } else {
                format!(" The cue: \u{201c}{}\u{201d}.", cue.trim_end_matches('.'))
            };
            format!(
                "{} ({}, {} asked).{cue}",
                g.goal.title,
                g.goal.condition.words(),
                g.goal.criterion.words()
            )
        })
        .collect();
    let landed: Vec<&str> =
        r.lessons.iter().map(|l| l.landed.as_str()).filter(|l| !l.is_empty()).collect();
    if let Some(landed) = landed.last() {
        sentences.push(format!("What landed: {landed}"));
    }
    let from = worked.iter().map(|g| format!("{}: {}", g.goal.title, practised(r, g))).collect();
    part(PartKey::Worked, "What we worked on", &sentences, from)
}

fn practised(r: &Record, goal: &Shown) -> String {
    let tries: u32 =
        goal.blocks.iter().filter(|b| b.visit == r.visit.id).map(|b| b.count.tries).sum();
    counted(i64::from(tries), "try counted", "tries counted")
}

fn moved(r: &Record) -> Part {
    let mut sentences = Vec::new();
    let mut from = Vec::new();
    for goal in &r.goals {
        let (retest, end) = tests(r, goal);
        let games = games(r, goal);
        if !games.is_empty() {
            let many =
                counted(i64::try_from(games.len()).unwrap_or(0), "whole game", "whole games");
            let each: Vec<String> = games.iter().map(|(_, n)| n.to_string()).collect();
            sentences.push(format!("{}: {} in {many}.", goal.goal.title, each.join(", ")));
            from.extend(
                games.iter().map(|(b, n)| format!("{}, {}: {n}", goal.goal.title, b.day.words())),
            );
            continue;
        }
        let said = match (retest, end) {
            (None, None) => continue,
            (Some(b), None) => format!("{} before any coaching", count_words(b.count)),
            (None, Some(b)) => format!("{} in the end test", count_words(b.count)),
            (Some(a), Some(b)) => {
                format!(
                    "{} before any coaching, {} in the end test",
                    count_words(a.count),
                    count_words(b.count)
                )
            }
        };
        let last = end.or(retest).map(|b| b.id);
        let since =
            goal.standing.steps.iter().rfind(|s| s.block == last).and_then(|s| s.since.as_ref());
        sentences.push(format!("{}: {said}.{}", goal.goal.title, moved_words(since)));
        from.extend(facts(r, goal));
        from.extend(since.map(|s| {
            format!(
                "{}, {}: {} (measured from)",
                goal.goal.title,
                s.day.month_words(),
                count_words(s.before)
            )
        }));
    }
    part(PartKey::Moved, "What moved", &sentences, from)
}

/// " That is up from 4 of 10 in Jan 25." — a word only where it says something.
fn moved_words(since: Option<&Since>) -> String {
    let Some(since) = since else { return String::new() };
    let before = format!("{} in {}", count_words(since.before), since.day.month_words());
    match since.word {
        ChangeWord::Up => format!(" That is up from {before}."),
        ChangeWord::LeaningUp => format!(" That leans up from {before}."),
        ChangeWord::TooFewToTell => format!(" It was {before}."),
        ChangeWord::LeaningDown => format!(" That leans down from {before}."),
        ChangeWord::Down => format!(" That is down from {before}."),
    }
}

fn kept(r: &Record) -> Part {
    let kept: Vec<&Shown> = r.goals.iter().filter(|g| was_kept_here(r, g)).collect();
    let sentences: Vec<String> = kept
        .iter()
        .map(|g| {
            format!(
                "{} is kept: you reached it at two visits, the second time before any coaching.",
                g.goal.title
            )
        })
        .collect();
    part(
        PartKey::Kept,
        "What you keep",
        &sentences,
        kept.iter().flat_map(|g| facts(r, g)).collect(),
    )
}

fn carried(r: &Record) -> Part {
    let mut sentences = Vec::new();
    let mut from = Vec::new();
    for goal in &r.goals {
        let title = &goal.goal.title;
        let step = goal
            .standing
            .steps
            .iter()
            .rfind(|s| s.visit == Some(r.visit.id) && s.block.is_none() && s.to != s.from);
        let sentence = match goal.standing.state {
            State::Met => format!(
                "{title} goes on: it was reached, and the first tries of your next visit will tell whether it stays."
            ),
            State::Working => format!("{title} goes on, with the same aim."),
            State::Slipped => format!("{title} goes on: it had slipped, and we take it up again."),
            State::SetAside => step.map_or_else(String::new, |s| format!("{title} is {}.", s.why)),
            State::Closed => step.map_or_else(String::new, |s| format!("{title} is {}.", s.why)),
            State::Raised => format!("{title} is raised to something harder."),
            State::Kept => String::new(),
        };
        if !sentence.is_empty() {
            from.push(format!("{title}: {}", goal.standing.why));
            sentences.push(sentence);
        }
    }
    let any = r.goals.iter().any(|g| is_carried(g.standing.state));
    let heading =
        if any { "What comes with you to the next visit" } else { "What became of the rest" };
    part(PartKey::Carried, heading, &sentences, from)
}

fn next(r: &Record) -> Part {
    let sentence = match &r.next {
        Some(visit) if visit.stage == Stage::Planned => {
            let place =
                if visit.place.is_empty() { String::new() } else { format!(" at {}", visit.place) };
            format!("Your next visit: {}{place}.", visit.when())
        }
        Some(visit) => visit.expected.map_or_else(String::new, |span| {
            format!(
                "I expect you {}; tell me when the days are fixed.",
                visits::expected_words(span)
            )
        }),
        None => {
            "We have not fixed your next visit yet; tell me which days would suit you.".to_owned()
        }
    };
    let from = r.next.iter().map(|v| format!("visit {}", v.when())).collect();
    part(PartKey::Next, "When we meet again", &[sentence], from)
}

fn closing(r: &Record) -> Part {
    let signed = [r.settings.closing.clone(), r.settings.name.clone()];
    part(PartKey::Closing, "", &signed, Vec::new())
}
