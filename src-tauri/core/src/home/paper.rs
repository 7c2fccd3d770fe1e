//! The home plan on paper: a page of its own for the wall or the bag, with room to write on.

use super::{HomePlan, OfVisit, of_visit, words};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::goals;
use crate::kinds::{Instant, Language};
use crate::print::{Paper, Piece, Sheet, page_words, written};
use crate::settings::{self, Settings};
use crate::students::{self, Student};
use crate::visits;

/// The document of a visit's home plan: its file name and its bytes.
///
/// # Errors
/// `NotFound`; `NotPossible` where the visit has no plan.
pub fn document(db: &Reading<'_>, of: OfVisit) -> Result<(String, Vec<u8>)> {
    let visit = visits::show(db, visits::Which { visit: of.visit })?;
    let student = students::show(db, students::Which { student: visit.student })?;
    let Some(plan) = of_visit(db, of.visit)? else {
        return Err(Error::not_possible(
            "no_plan",
            "This visit has no home plan yet. Make one, then print it.",
        ));
    };
    let language = student.profile.language;
    let when = visit.days.map_or_else(|| plan.when.clone(), |days| language.span(days));
    let sheet = sheet(db, &plan, &when, &student, &settings::show(db)?)?;
    let (pdf, _) = written(&sheet)?;
    let day = visit.from().map(|day| format!(" {day}")).unwrap_or_default();
    Ok((format!("At home {}{day}.pdf", crate::print::file_words(&visit.name)), pdf))
}

fn sheet(
    db: &Reading<'_>,
    plan: &HomePlan,
    when: &str,
    student: &Student,
    settings: &Settings,
) -> Result<Sheet> {
    let language = student.profile.language;
    let page = words::page(language);
    let title = format!("{}: {}", page.title, student.profile.name);
    let mut pieces =
        vec![Piece::Title(title.clone()), Piece::Note(format!("{} {when}", page.after))];
    part(&mut pieces, page.warm_up, &plan.warm_up);
    if !plan.lines.is_empty() {
        pieces.push(Piece::Heading(page.then.to_owned()));
        pieces.push(table(plan, language, page.head));
        pieces.extend(cues(db, plan)?);
    }
    part(&mut pieces, page.and, &plan.note);
    pieces.push(Piece::Note(page.caution.to_owned()));
    pieces.push(Piece::Note(page.bring.to_owned()));
    let mut letterhead = vec![settings.name.clone()];
    letterhead.extend(settings.letterhead.lines().map(str::to_owned));
    letterhead.retain(|line| !line.trim().is_empty());
    Ok(Sheet {
        title,
        language: language.code().to_owned(),
        author: settings.name.clone(),
        // The same plan gives the same bytes: the page carries no moment of printing.
        issued: Instant::from_unix_millis(0).utc(),
        paper: Paper::A4,
        letterhead,
        pieces,
        footer: String::new(),
        page_words: page_words(student.profile.language).to_owned(),
    })
}

fn part(pieces: &mut Vec<Piece>, heading: &str, text: &str) {
    if !text.trim().is_empty() {
        pieces.push(Piece::Heading(heading.to_owned()));
        pieces.extend(paragraphs(text).map(Piece::Text));
    }
}

fn paragraphs(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split('\n').map(|p| p.trim().to_owned()).filter(|p| !p.is_empty())
}

fn table(plan: &HomePlan, language: Language, head: [&str; 4]) -> Piece {
    let rows = plan
        .lines
        .iter()
        .map(|line| {
            let much = words::amount_words(language, line.amount, line.unit);
            vec![line.what.clone(), much, words::often(language, line.a_week), String::new()]
        })
        .collect();
    Piece::Table { head: head.map(str::to_owned).to_vec(), rows, right_aligned: Vec::new() }
}

/// The cue of each goal that a line works for, once.
fn cues(db: &Reading<'_>, plan: &HomePlan) -> Result<Vec<Piece>> {
    let mut cues: Vec<String> = Vec::new();
    for goal in plan.lines.iter().filter_map(|line| line.goal) {
        let shown = goals::show::as_of(db, goal, plan.visit)?;
        let cue = shown.goal.cue();
        let words = format!("{}: \u{201c}{cue}\u{201d}", shown.goal.title);
        if !cue.is_empty() && !cues.contains(&words) {
            cues.push(words);
        }
    }
    Ok(if cues.is_empty() { Vec::new() } else { vec![Piece::Bullets(cues)] })
}
