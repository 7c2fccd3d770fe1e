//! What a letter says by itself: sentences written from the record, each with the facts it rests on.
//! What is said is decided here; how it is said, in [`super::tongue`].

use super::tongue::{self, Tongue};
use super::{Part, PartKey};
use crate::app::Reading;
use crate::assessments::{self, Assessment, Basis, Level};
use crate::error::Result;
use crate::goals::carry;
use crate::goals::show::{Shown, as_of};
use crate::goals::state::{State, is_carried};
use crate::goals::{Block, Kind, Source, count_words};
use crate::home::{self, HomePlan};
use crate::kinds::Language;
use crate::kinds::text::counted;
use crate::lessons::{self, Lesson, LessonState};
use crate::observations::{self, Observation, ObservationKind};
use crate::settings::Settings;
use crate::sports;
use crate::students::{self, Student};
use crate::visits::{self, Stage, Visit};

/// All that a letter is written from.
pub(super) struct Record {
    pub language: Language,
    pub visit: Visit,
    pub student: Student,
    pub lessons: Vec<Lesson>,
    pub goals: Vec<Shown>,
    /// What was seen at this visit.
    pub seen: Vec<Observation>,
    /// Levels given at this visit.
    pub levels: Vec<Level>,
    pub next: Option<Visit>,
    /// The home plan made at this visit, and the one before it.
    pub home: (Option<HomePlan>, Option<HomePlan>),
    pub settings: Settings,
}

impl Record {
    /// The language it is said in.
    pub(super) fn tongue(&self) -> &'static dyn Tongue {
        tongue::of(self.language)
    }

    /// When the visit was, in the letter's language.
    pub(super) fn when(&self) -> String {
        self.visit.days.map_or_else(|| self.visit.when(), |days| self.language.span(days))
    }
}

/// Reads the record of a visit.
pub(super) fn record(db: &Reading<'_>, visit: visits::Which) -> Result<Record> {
    let visit = visits::show(db, visit)?;
    let student = students::show(db, students::Which { student: visit.student })?;
    let ask = lessons::ListLessons { visit: Some(visit.id), ..lessons::ListLessons::default() };
    let language = student.profile.language;
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
    let mut seen =
        observations::list(db, observations::ListObservations { student: visit.student })?;
    for one in &mut seen {
        one.seen.retain(|sighting| sighting.visit == Some(visit.id));
    }
    seen.retain(|one| !one.seen.is_empty());
    let before = home::LastOf { student: visit.student, before: Some(visit.id) };
    let home = (home::of_visit(db, visit.id)?, home::last(db, before)?);
    let levels = assessments::list(db, assessments::OfStudent { student: visit.student })?
        .into_iter()
        .rev()
        .filter(|one| one.visit == Some(visit.id))
        .flat_map(|one| said_in(language, one))
        .collect();
    Ok(Record {
        levels,
        language,
        lessons,
        goals,
        seen,
        next,
        home,
        settings: crate::settings::show(db)?,
        student,
        visit,
    })
}

/// The levels of an assessment, the pack's skills by their names in the letter's language.
fn said_in(language: Language, one: Assessment) -> impl Iterator<Item = Level> {
    let pack = sports::pack(&one.sport);
    one.levels.into_iter().map(move |level| match pack.and_then(|p| p.find_skill(&level.skill)) {
        Some(skill) => Level { name: skill.name_in(language).to_owned(), ..level },
        None => level,
    })
}

/// Writes the letter. A part with nothing to say is not there.
pub(super) fn compose(record: &Record) -> Vec<Part> {
    [
        opening(record),
        strength(record),
        worked(record),
        noticed(record),
        moved(record),
        kept(record),
        levels(record),
        carried(record),
        at_home(record),
        next(record),
        closing(record),
    ]
    .into_iter()
    .filter(|part| !part.text.is_empty())
    .collect()
}

fn home_line(language: Language, line: &home::HomeLine) -> String {
    format!("{}.", home::line_words(language, &line.what, line.amount, line.unit, line.a_week))
}

fn part(r: &Record, key: PartKey, sentences: &[String], from: Vec<String>) -> Part {
    let going = r.goals.iter().any(|g| is_carried(g.standing.state));
    Part {
        key,
        heading: r.tongue().heading(key, going).to_owned(),
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
    let tongue = r.tongue();
    let from = taught
        .iter()
        .map(|l| {
            format!("lesson {}, {} – {}: {}", l.day.words(), l.starts, l.ends, l.state.words())
        })
        .collect();
    let sentences = [
        tongue.dear(&r.student.addressed),
        tongue.visit(&r.visit.place, &r.when(), taught.len(), minutes),
    ];
    part(r, PartKey::Opening, &sentences, from)
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
    let tongue = r.tongue();
    let said = |block: Option<&Block>| block.map_or_else(String::new, |b| tongue.count(b.count));
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
        .max_by(|a, b| a.2.total_cmp(&b.2))
        .filter(|best| best.2 > 0.0);
    let shown = if let Some(goal) = kept.filter(|g| tests(r, g).0.is_some()) {
        Some((tongue.still_there(&goal.goal.title, &said(tests(r, goal).0)), goal))
    } else if let Some(goal) = came_back {
        Some((tongue.came_back(&goal.goal.title, &said(tests(r, goal).0)), goal))
    } else if let Some(goal) = met {
        Some((tongue.reached(&goal.goal.title, &said(tests(r, goal).1)), goal))
    } else {
        best.map(|(goal, block, _)| {
            (tongue.gave(&goal.goal.title, &tongue.count(block.count)), goal)
        })
    };
    let strengths: Vec<&Observation> =
        r.seen.iter().filter(|o| o.kind == ObservationKind::Strength).collect();
    let mut from = shown.as_ref().map_or_else(Vec::new, |(_, goal)| facts(r, goal));
    from.extend(strengths.iter().map(|o| sighted(o)));
    let sentences: Vec<String> = shown
        .map(|(sentence, _)| sentence)
        .into_iter()
        .chain(strengths.iter().map(|o| tongue.seen_strength(&o.words)))
        .collect();
    part(r, PartKey::Strength, &sentences, from)
}

/// "strength: Reads the serve, 12 March 2026".
fn sighted(seen: &Observation) -> String {
    let days: Vec<String> = seen.seen.iter().map(|s| s.day.words()).collect();
    format!("{}: {}, {}", seen.kind.words(), seen.words, days.join(", "))
}

fn worked(r: &Record) -> Part {
    let tongue = r.tongue();
    let worked: Vec<&Shown> = r
        .goals
        .iter()
        .filter(|g| g.blocks.iter().any(|b| b.visit == r.visit.id && b.was_tried()))
        .collect();
    let mut sentences: Vec<String> = worked
        .iter()
        .map(|g| {
            tongue.worked(
                &g.goal.title,
                tongue.condition(g.goal.condition),
                &tongue.criterion(g.goal.criterion),
                g.goal.cue(),
            )
        })
        .collect();
    let mut from: Vec<String> =
        worked.iter().map(|g| format!("{}: {}", g.goal.title, practised(r, g))).collect();
    // The lesson note says what landed; where it does not, the mark on a goal's cue does.
    let noted = r.lessons.iter().map(|l| l.landed.as_str()).rfind(|l| !l.is_empty());
    let marked = r.goals.iter().rev().find_map(|g| {
        let words = g.goal.words.last()?;
        let landed = words.landed?;
        r.visit.days.is_some_and(|days| days.holds(landed)).then_some(words.cue.as_str())
    });
    if let Some(landed) = noted.or(marked) {
        sentences.push(tongue.landed(landed));
        from.push(format!("landed: {landed}"));
    }
    part(r, PartKey::Worked, &sentences, from)
}

fn practised(r: &Record, goal: &Shown) -> String {
    let games = games(r, goal).len();
    if games > 0 {
        return counted(i64::try_from(games).unwrap_or(0), "whole game", "whole games");
    }
    let tries: u32 =
        goal.blocks.iter().filter(|b| b.visit == r.visit.id).map(|b| b.count.tries).sum();
    counted(i64::from(tries), "try counted", "tries counted")
}

/// What was seen and is to be watched. What is a goal stands among the goals.
fn noticed(r: &Record) -> Part {
    let faults: Vec<&Observation> =
        r.seen.iter().filter(|o| o.kind == ObservationKind::Fault && o.goal.is_none()).collect();
    let sentences: Vec<String> =
        faults.iter().map(|o| r.tongue().seen_fault(&o.words, o.seen.len())).collect();
    part(r, PartKey::Noticed, &sentences, faults.iter().map(|o| sighted(o)).collect())
}

/// A goal by its title, and by how the ball comes where two of a title stand in one letter.
fn name(r: &Record, goal: &Shown) -> String {
    let title = &goal.goal.title;
    let same = |g: &&Shown| g.goal.title == *title && g.goal.condition != goal.goal.condition;
    match r.goals.iter().find(same) {
        Some(_) => format!("{title} ({})", r.tongue().condition(goal.goal.condition)),
        None => title.clone(),
    }
}

fn moved(r: &Record) -> Part {
    let tongue = r.tongue();
    let mut sentences = Vec::new();
    let mut from = Vec::new();
    for goal in &r.goals {
        let title = &name(r, goal);
        let games = games(r, goal);
        if !games.is_empty() {
            let each: Vec<u32> = games.iter().map(|(_, n)| *n).collect();
            sentences.push(tongue.games(title, &each));
            from.extend(games.iter().map(|(b, n)| format!("{title}, {}: {n}", b.day.words())));
            continue;
        }
        let (retest, end) = tests(r, goal);
        if retest.is_none() && end.is_none() {
            continue;
        }
        let count = |block: Option<&Block>| block.map(|b| tongue.count(b.count));
        let last = end.or(retest).map(|b| b.id);
        let since =
            goal.standing.steps.iter().rfind(|s| s.block == last).and_then(|s| s.since.as_ref());
        let change = since.map_or_else(String::new, |since| tongue.since(since));
        let (before, end) = (count(retest), count(end));
        sentences
            .push(format!("{}{change}", tongue.moved(title, before.as_deref(), end.as_deref())));
        from.extend(facts(r, goal));
        from.extend(since.map(|s| {
            let day = s.day.month_words();
            format!("{title}, {day}: {} (measured from)", count_words(s.before))
        }));
    }
    part(r, PartKey::Moved, &sentences, from)
}

fn kept(r: &Record) -> Part {
    let kept: Vec<&Shown> = r.goals.iter().filter(|g| was_kept_here(r, g)).collect();
    let sentences: Vec<String> = kept.iter().map(|g| r.tongue().kept(&g.goal.title)).collect();
    part(r, PartKey::Kept, &sentences, kept.iter().flat_map(|g| facts(r, g)).collect())
}

fn levels(r: &Record) -> Part {
    let sentences: Vec<String> = r
        .levels
        .iter()
        .map(|level| {
            let before = level.before.map(|(before, _)| before);
            r.tongue().level(&level.name, level.level, before)
        })
        .collect();
    let from = r.levels.iter().map(|level| {
        let basis = match level.basis {
            Basis::Evidence => "evidence",
            Basis::Opinion => "opinion",
        };
        format!("{}: {} ({basis})", level.name, level.level)
    });
    part(r, PartKey::Levels, &sentences, from.collect())
}

fn carried(r: &Record) -> Part {
    let tongue = r.tongue();
    let mut sentences = Vec::new();
    let mut from = Vec::new();
    for goal in &r.goals {
        let title = &name(r, goal);
        let raised_from = goal.goal.came_from.is_some_and(|from| {
            r.goals.iter().any(|g| g.goal.id == from && g.standing.state == State::Raised)
        });
        let decided = goal
            .standing
            .steps
            .iter()
            .rfind(|s| s.visit == Some(r.visit.id) && s.block.is_none() && s.to != s.from);
        let reason = |word: &str| {
            decided.map(|s| s.why.strip_prefix(word).unwrap_or(&s.why).trim_end_matches('.'))
        };
        let sentence = match goal.standing.state {
            // It is named with the goal it was raised from.
            State::Working if raised_from => String::new(),
            State::Met => tongue.goes_on_met(title),
            State::Working => tongue.goes_on(title),
            State::Slipped => tongue.goes_on_slipped(title),
            State::SetAside => {
                reason("set aside: ").map_or_else(String::new, |why| tongue.set_aside(title, why))
            }
            State::Closed => {
                reason("closed: ").map_or_else(String::new, |why| tongue.closed(title, why))
            }
            State::Raised => {
                let to = r.goals.iter().find(|g| g.goal.came_from == Some(goal.goal.id));
                let asked = to.map(|g| tongue.criterion(g.goal.criterion));
                let to = to
                    .zip(asked.as_deref())
                    .map(|(g, asked)| (tongue.condition(g.goal.condition), asked));
                tongue.raised(title, to)
            }
            State::Kept => String::new(),
        };
        if !sentence.is_empty() {
            from.push(format!("{title}: {}", goal.standing.why));
            sentences.push(sentence);
        }
    }
    part(r, PartKey::Carried, &sentences, from)
}

/// The home plan, a sentence a line; and what was told of the plan before, only as told.
fn at_home(r: &Record) -> Part {
    let tongue = r.tongue();
    let (plan, before) = &r.home;
    let last_day = r.visit.days.map(|days| days.last);
    let mut sentences = Vec::new();
    let mut from = Vec::new();
    for line in before.iter().flat_map(|before| &before.lines) {
        let by_then = line.told_on.is_some_and(|on| last_day.is_none_or(|last| on <= last));
        if by_then && !line.told.is_empty() {
            let told = line.told.split_whitespace().collect::<Vec<_>>().join(" ");
            sentences.push(tongue.home_told(&line.what, &told));
            from.push(format!("as told by the student, {}: {told}", line.words));
        }
    }
    if let Some(plan) = plan {
        let warm_up = plan.warm_up.split_whitespace().collect::<Vec<_>>().join(" ");
        if !warm_up.is_empty() {
            sentences.push(tongue.home_warm_up(&warm_up));
        }
        sentences.extend(plan.lines.iter().map(|line| home_line(r.language, line)));
        sentences.push(plan.note.clone());
        from.extend(plan.lines.iter().map(|line| format!("home plan: {}", line.words)));
    }
    part(r, PartKey::Home, &sentences, from)
}

fn next(r: &Record) -> Part {
    let tongue = r.tongue();
    let sentence = match &r.next {
        Some(visit) if visit.stage == Stage::Planned => {
            let when = visit.days.map_or_else(|| visit.when(), |days| r.language.span(days));
            tongue.next_visit(&when, &visit.place)
        }
        Some(visit) => visit
            .expected
            .map_or_else(String::new, |span| tongue.next_expected(&tongue.expected(span))),
        None => tongue.next_open().to_owned(),
    };
    let from = r.next.iter().map(|v| format!("visit {}", v.when())).collect();
    part(r, PartKey::Next, &[sentence], from)
}

/// The coach\u{2019}s own closing; the usual one in the language of who reads it.
pub fn closing_in(settings: &Settings, language: Language) -> String {
    let own = &settings.closing;
    let usual = *own == Settings::default().closing;
    if usual { tongue::of(language).closing().to_owned() } else { own.clone() }
}

fn closing(r: &Record) -> Part {
    let closing = closing_in(&r.settings, r.language);
    part(r, PartKey::Closing, &[closing, r.settings.name.clone()], Vec::new())
}
