//! The home plan on paper: a page of its own for the wall or the bag, with room to write on.

use super::{HomePlan, HomeUnit, OfVisit, of_visit, often};
use crate::app::Reading;
use crate::error::{Error, Result};
use crate::goals;
use crate::kinds::Instant;
use crate::kinds::text::counted;
use crate::print::{Paper, Piece, Sheet, laid_out, to_pdf};
use crate::settings::{self, Settings};
use crate::students::{self, Student};
use crate::visits;

/// The usual caution of anything that is done alone.
const CAUTION: &str = "Stop when something hurts, and ask a physician or a physiotherapist. This plan knows nothing \
    of injuries.";

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
    let sheet = sheet(db, &plan, &student, &settings::show(db)?)?;
    let (pages, fonts) = laid_out(&sheet)?;
    let pdf = to_pdf(&pages, fonts).map_err(|e| Error::Fault(e.to_string()))?;
    let day = visit.from().map(|day| format!(" {day}")).unwrap_or_default();
    Ok((format!("At home {}{day}.pdf", crate::print::file_words(&visit.name)), pdf))
}

fn sheet(
    db: &Reading<'_>,
    plan: &HomePlan,
    student: &Student,
    settings: &Settings,
) -> Result<Sheet> {
    let title = format!("At home: {}", student.profile.name);
    let mut pieces =
        vec![Piece::Title(title.clone()), Piece::Note(format!("After the visit of {}", plan.when))];
    part(&mut pieces, "Warm up first", &plan.warm_up);
    if !plan.lines.is_empty() {
        pieces.push(Piece::Heading("Then".to_owned()));
        pieces.push(table(plan));
        pieces.extend(cues(db, plan)?);
    }
    part(&mut pieces, "And", &plan.note);
    pieces.push(Piece::Note(CAUTION.to_owned()));
    pieces.push(Piece::Note(
        "Write down what you did, and bring this page: it is read as you tell it, and no goal is met by it."
            .to_owned(),
    ));
    let mut letterhead = vec![settings.name.clone()];
    letterhead.extend(settings.letterhead.lines().map(str::to_owned));
    letterhead.retain(|line| !line.trim().is_empty());
    Ok(Sheet {
        title,
        language: "en".to_owned(),
        author: settings.name.clone(),
        // The same plan gives the same bytes: the page carries no moment of printing.
        issued: Instant::from_unix_millis(0).utc(),
        paper: Paper::A4,
        letterhead,
        pieces,
        footer: String::new(),
        page_words: "Page {n} of {m}".to_owned(),
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

fn table(plan: &HomePlan) -> Piece {
    let rows = plan
        .lines
        .iter()
        .map(|line| {
            let amount = i64::from(line.amount);
            let much = match line.unit {
                HomeUnit::Tries => counted(amount, "try", "tries"),
                HomeUnit::Minutes => counted(amount, "minute", "minutes"),
            };
            vec![line.what.clone(), much, often(line.a_week), String::new()]
        })
        .collect();
    Piece::Table {
        head: ["What", "At a time", "How often", "What you did"].map(str::to_owned).to_vec(),
        rows,
        right_aligned: Vec::new(),
    }
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
