//! Letters in English.

use super::{Count, PartKey, Since, Span, Tongue};
use crate::goals::numbers::ChangeWord;
use crate::goals::{Condition, Criterion, Kind, count_words};
use crate::kinds::Language;
use crate::kinds::text::counted;
use crate::visits::expected_words;

pub(super) struct English;

fn many(n: usize, one: &str, more: &str) -> String {
    counted(i64::try_from(n).unwrap_or(i64::MAX), one, more)
}

impl Tongue for English {
    fn language(&self) -> Language {
        Language::En
    }

    fn expected(&self, span: Span) -> String {
        expected_words(span)
    }

    fn count(&self, count: Count) -> String {
        count_words(count)
    }

    fn condition(&self, condition: Condition) -> &'static str {
        condition.words()
    }

    fn criterion(&self, criterion: Criterion) -> String {
        criterion.words()
    }

    fn kind(&self, kind: Kind) -> &'static str {
        kind.words()
    }

    fn minutes(&self, minutes: u32) -> String {
        match (minutes / 60, minutes % 60) {
            (0, m) => counted(i64::from(m), "minute", "minutes"),
            (1, 0) => "1 hour".to_owned(),
            (h, 0) => format!("{h} hours"),
            (h, 30) => format!("{h}½ hours"),
            (h, m) => format!("{h} h {m} min"),
        }
    }

    fn title(&self, name: &str) -> String {
        format!("Progress letter for {name}")
    }

    fn page(&self) -> &'static str {
        "Page {n} of {m}"
    }

    fn heading(&self, part: PartKey, going: bool) -> &'static str {
        match part {
            PartKey::Opening | PartKey::Closing => "",
            PartKey::Strength => "First, what held",
            PartKey::Worked => "What we worked on",
            PartKey::Noticed => "What I noticed",
            PartKey::Moved => "What moved",
            PartKey::Kept => "What you keep",
            PartKey::Levels => "Your levels, from 0 to 4",
            PartKey::Carried if going => "What comes with you to the next visit",
            PartKey::Carried => "What became of the rest",
            PartKey::Home => "At home",
            PartKey::Next => "When we meet again",
        }
    }

    fn dear(&self, name: &str) -> String {
        format!("Dear {name},")
    }

    fn visit(&self, place: &str, when: &str, lessons: usize, minutes: u32) -> String {
        let place = if place.is_empty() { String::new() } else { format!(" at {place}") };
        let visit = format!("Your visit{place}, {when}");
        if lessons == 0 {
            format!("{visit}, and what we found there.")
        } else {
            let lessons = many(lessons, "lesson", "lessons");
            format!("{visit}: {lessons}, {} on court.", self.minutes(minutes))
        }
    }

    fn still_there(&self, goal: &str, count: &str) -> String {
        format!(
            "\u{201c}{goal}\u{201d} was still there after the weeks between: {count} before we had touched it."
        )
    }

    fn came_back(&self, goal: &str, count: &str) -> String {
        format!("You came back with \u{201c}{goal}\u{201d}: {count} before any coaching.")
    }

    fn reached(&self, goal: &str, count: &str) -> String {
        format!("\u{201c}{goal}\u{201d} reached what we asked of it: {count} at the end.")
    }

    fn gave(&self, goal: &str, count: &str) -> String {
        format!("\u{201c}{goal}\u{201d} gave you {count}.")
    }

    fn seen_strength(&self, words: &str) -> String {
        format!("A strength I saw: {}.", words.trim_end_matches('.'))
    }

    fn seen_fault(&self, words: &str, times: usize) -> String {
        let times = match times {
            0 | 1 => String::new(),
            2 => ", twice".to_owned(),
            n => format!(", {n} times"),
        };
        format!("To watch: {}{times}.", words.trim_end_matches('.'))
    }

    fn worked(&self, goal: &str, condition: &str, asked: &str, cue: &str) -> String {
        let cue = if cue.is_empty() {
            String::new()
        } else {
            format!(" The cue: \u{201c}{}\u{201d}.", cue.trim_end_matches('.'))
        };
        format!("{goal} ({condition}, {asked} asked).{cue}")
    }

    fn landed(&self, cue: &str) -> String {
        format!("What landed: {cue}")
    }

    fn moved(&self, goal: &str, before: Option<&str>, end: Option<&str>) -> String {
        let said: Vec<String> = [
            before.map(|count| format!("{count} before any coaching")),
            end.map(|count| format!("{count} in the end test")),
        ]
        .into_iter()
        .flatten()
        .collect();
        format!("{goal}: {}.", said.join(", "))
    }

    fn since(&self, since: &Since) -> String {
        let before =
            format!("{} in {}", self.count(since.before), Language::En.month_short(since.day));
        match since.word {
            ChangeWord::Up => format!(" That is up from {before}."),
            ChangeWord::LeaningUp => format!(" That leans up from {before}."),
            ChangeWord::TooFewToTell => format!(" It was {before}."),
            ChangeWord::LeaningDown => format!(" That leans down from {before}."),
            ChangeWord::Down => format!(" That is down from {before}."),
        }
    }

    fn games(&self, goal: &str, games: &[u32]) -> String {
        let each: Vec<String> = games.iter().map(u32::to_string).collect();
        format!(
            "{goal}: {} in {}.",
            each.join(", "),
            many(games.len(), "whole game", "whole games")
        )
    }

    fn kept(&self, goal: &str) -> String {
        format!(
            "{goal} is kept: you reached it at two visits, the second time before any coaching."
        )
    }

    fn level(&self, skill: &str, level: u8, before: Option<u8>) -> String {
        match before {
            Some(before) if before != level => format!("{skill}: {level}, before {before}."),
            Some(_) => format!("{skill}: {level}, as before."),
            None => format!("{skill}: {level}."),
        }
    }

    fn goes_on_met(&self, goal: &str) -> String {
        format!(
            "{goal} goes on: it was reached, and the first tries of your next visit will tell whether it stays."
        )
    }

    fn goes_on(&self, goal: &str) -> String {
        format!("{goal} goes on, with the same aim.")
    }

    fn goes_on_slipped(&self, goal: &str) -> String {
        format!("{goal} goes on: it had slipped, and we take it up again.")
    }

    fn set_aside(&self, goal: &str, reason: &str) -> String {
        format!("{goal} is set aside: {reason}.")
    }

    fn closed(&self, goal: &str, reason: &str) -> String {
        format!("{goal} is closed: {reason}.")
    }

    fn raised(&self, goal: &str, to: Option<(&str, &str)>) -> String {
        match to {
            Some((condition, asked)) => {
                format!("{goal} is raised: from now on {condition}, {asked}.")
            }
            None => format!("{goal} is raised to something harder."),
        }
    }

    fn home_told(&self, what: &str, told: &str) -> String {
        format!("You told me of \u{201c}{what}\u{201d}: {told}")
    }

    fn home_warm_up(&self, words: &str) -> String {
        format!("Warm up first: {words}")
    }

    fn next_visit(&self, when: &str, place: &str) -> String {
        let place = if place.is_empty() { String::new() } else { format!(" at {place}") };
        format!("Your next visit: {when}{place}.")
    }

    fn next_expected(&self, when: &str) -> String {
        format!("I expect you {when}; tell me when the days are fixed.")
    }

    fn next_open(&self) -> &'static str {
        "We have not fixed your next visit yet; tell me which days would suit you."
    }

    fn closing(&self) -> &'static str {
        "See you on court,"
    }

    fn counts_heading(&self) -> &'static str {
        "The counts behind this letter"
    }

    fn legend(&self) -> &'static str {
        "Open ring: before any coaching. Filled dot: end test. Upright line: rough range of the true rate, \
         rough because one player\u{2019}s tries are not independent. Red line: what was asked."
    }

    fn asked(&self, condition: &str, criterion: &str) -> String {
        format!("{condition} · {criterion} asked")
    }

    fn not_tested(&self) -> &'static str {
        "not tested"
    }

    fn chart(&self, goal: &str, asked: &str, visits: &str) -> String {
        format!("{goal}, asked {asked}. {visits}.")
    }

    fn table(&self) -> [&'static str; 5] {
        ["Goal", "Visit", "Before coaching", "End test", "Asked"]
    }
}
