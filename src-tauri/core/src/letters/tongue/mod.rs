//! The languages that letters are written in. A language is complete or it does not compile: every
//! sentence of a letter is a method of [`Tongue`]; only the lines of a home plan, which has a page of
//! its own too, are said by `home`.
//!
//! What the coach writes (titles, cues, notes, reasons) is left as it is.

mod english;
mod german;

use super::PartKey;
use crate::goals::numbers::Count;
use crate::goals::state::Since;
use crate::goals::{Condition, Criterion, Kind};
use crate::kinds::{Language, Span};

/// What is said in a language.
pub(super) fn of(language: Language) -> &'static dyn Tongue {
    match language {
        Language::En => &english::English,
        Language::De => &german::German,
    }
}

/// Every sentence of a letter. A method takes facts and gives words; it decides nothing.
pub(super) trait Tongue: Sync {
    /// The language it is.
    fn language(&self) -> Language;
    /// A span in which a visit may fall: "around May 2026" for a whole month.
    fn expected(&self, span: Span) -> String;
    /// "8 of 10".
    fn count(&self, count: Count) -> String;
    /// How the ball comes.
    fn condition(&self, condition: Condition) -> &'static str;
    /// What is asked.
    fn criterion(&self, criterion: Criterion) -> String;
    /// What a block is for.
    fn kind(&self, kind: Kind) -> &'static str;
    /// How long on court.
    fn minutes(&self, minutes: u32) -> String;

    /// The title of the document.
    fn title(&self, name: &str) -> String;
    /// The line at the foot of a page, with `{n}` of `{m}`.
    fn page(&self) -> &'static str;
    /// The heading of a part; empty for opening and closing. `going`: something is carried on.
    fn heading(&self, part: PartKey, going: bool) -> &'static str;

    /// The greeting.
    fn dear(&self, name: &str) -> String;
    /// What the visit was: where and when, and how many lessons of how many minutes in all.
    fn visit(&self, place: &str, when: &str, lessons: usize, minutes: u32) -> String;

    /// A goal kept at this visit.
    fn still_there(&self, goal: &str, count: &str) -> String;
    /// A goal reached before any coaching.
    fn came_back(&self, goal: &str, count: &str) -> String;
    /// A goal reached in the end test.
    fn reached(&self, goal: &str, count: &str) -> String;
    /// The best count of the visit.
    fn gave(&self, goal: &str, count: &str) -> String;
    /// A strength seen, in the coach's words.
    fn seen_strength(&self, words: &str) -> String;
    /// Something to watch, in the coach's words; how many times it was seen at this visit.
    fn seen_fault(&self, words: &str, times: usize) -> String;

    /// What was worked on, as it was asked, with its cue where there is one.
    fn worked(&self, goal: &str, condition: &str, asked: &str, cue: &str) -> String;
    /// The cue that landed.
    fn landed(&self, cue: &str) -> String;

    /// What moved: before any coaching, in the end test.
    fn moved(&self, goal: &str, before: Option<&str>, end: Option<&str>) -> String;
    /// The change against an earlier visit, beginning with a blank.
    fn since(&self, since: &Since) -> String;
    /// How often in each whole game.
    fn games(&self, goal: &str, games: &[u32]) -> String;

    /// A goal that is kept.
    fn kept(&self, goal: &str) -> String;
    /// A level on a skill, 0 to 4, and the one before.
    fn level(&self, skill: &str, level: u8, before: Option<u8>) -> String;

    /// A goal that was met and goes on.
    fn goes_on_met(&self, goal: &str) -> String;
    /// A goal that goes on.
    fn goes_on(&self, goal: &str) -> String;
    /// A goal that had slipped and goes on.
    fn goes_on_slipped(&self, goal: &str) -> String;
    /// A goal set aside, with the coach's reason.
    fn set_aside(&self, goal: &str, reason: &str) -> String;
    /// A goal closed, with the coach's reason.
    fn closed(&self, goal: &str, reason: &str) -> String;
    /// A goal raised, to what is asked now where that is known.
    fn raised(&self, goal: &str, to: Option<(&str, &str)>) -> String;

    /// What the student told of a line of the plan before, in the student's words.
    fn home_told(&self, what: &str, told: &str) -> String;
    /// The standing warm-up, in the coach's words.
    fn home_warm_up(&self, words: &str) -> String;
    /// The next visit: its days and its place.
    fn next_visit(&self, when: &str, place: &str) -> String;
    /// When the next visit is expected.
    fn next_expected(&self, when: &str) -> String;
    /// No next visit is fixed.
    fn next_open(&self) -> &'static str;
    /// The closing, where the coach has none of their own.
    fn closing(&self) -> &'static str;

    /// The heading over the charts.
    fn counts_heading(&self) -> &'static str;
    /// What the signs of the charts mean.
    fn legend(&self) -> &'static str;
    /// What is asked, beside a chart.
    fn asked(&self, condition: &str, criterion: &str) -> String;
    /// Nothing was tested.
    fn not_tested(&self) -> &'static str;
    /// A chart in words: the goal, what is asked, each visit.
    fn chart(&self, goal: &str, asked: &str, visits: &str) -> String;
    /// The heads of the table of counts: goal, visit, before coaching, end test, asked.
    fn table(&self) -> [&'static str; 5];
}
