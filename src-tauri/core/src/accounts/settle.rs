//! Settling lessons, and taking that back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{self, Kept};
use super::to_settle::{AskSettle, propose};
use super::{SettledBy, ToSettle};
use crate::app::Writing;
use crate::error::{Error, Problems, Result};
use crate::invoices::{self, LineForm, WhichInvoice};
use crate::kinds::Day;
use crate::kinds::ids::{EntryId, InvoiceLineId, LessonId, PackageId, StudentId};
use crate::ledger::{self, Enter, EntryKind, LedgerAccount, Posting};
use crate::lessons::{self, Lesson, LessonState};
use crate::money::typed;
use crate::packages::{self, WhichPackage};
use crate::payers;
use crate::prices::What;
use crate::terms::EndedBy;

/// How a lesson is to be settled.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Settle {
    /// The lesson.
    pub lesson: LessonId,
    /// Whose.
    pub student: StudentId,
    /// Who called it off or broke it off.
    #[serde(default)]
    pub because: Option<EndedBy>,
    /// When it was told, on the facility\u{2019}s clock, as YYYY-MM-DDTHH:MM.
    #[serde(default)]
    pub told: String,
    /// How.
    pub how: SettledBy,
    /// With which package; left out for the one that is proposed.
    #[serde(default)]
    pub package: Option<PackageId>,
    /// What is charged, a decimal; empty for what is proposed.
    #[serde(default)]
    pub amount: String,
    /// The currency, an ISO 4217 code; empty for what is proposed.
    #[serde(default)]
    pub currency: String,
    /// What is charged for the court, a decimal; empty for what is proposed, 0 for nothing.
    #[serde(default)]
    pub court: String,
    /// Why, where it is settled otherwise than the terms say.
    #[serde(default)]
    pub reason: String,
}

/// Several lessons to settle.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SettleAll {
    /// Each.
    pub lessons: Vec<Settle>,
}

/// A settling to take back.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Unsettle {
    /// The lesson.
    pub lesson: LessonId,
    /// Whose.
    pub student: StudentId,
    /// Why.
    pub reason: String,
}

/// What was settled.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Settled {
    /// With packages.
    pub by_package: usize,
    /// On invoices.
    pub on_invoices: usize,
    /// For nothing.
    pub free: usize,
    /// The same as a sentence.
    pub words: String,
}

/// Settles lessons. Prepaid lessons that are used cannot be undone, only taken back.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong, and where the terms are not followed without a
/// reason; `NotPossible` when one is settled already.
pub fn settle(db: &Writing<'_>, given: SettleAll) -> Result<Settled> {
    if given.lessons.is_empty() {
        return Err(Error::field("lessons", "empty", "Choose the lessons to settle."));
    }
    let (mut by_package, mut on_invoices, mut free) = (0, 0, 0);
    for (n, one) in given.lessons.into_iter().enumerate() {
        let how = one.how;
        settle_one(db, one).map_err(|e| e.below(&format!("lessons[{n}].")))?;
        match how {
            SettledBy::Package => by_package += 1,
            SettledBy::Invoice => on_invoices += 1,
            SettledBy::Free => free += 1,
        }
    }
    let count = by_package + on_invoices + free;
    db.label(format!(
        "{} settled",
        crate::kinds::text::counted(i64::try_from(count).unwrap_or(i64::MAX), "lesson", "lessons")
    ));
    let words =
        format!("{by_package} with packages, {on_invoices} on invoices, {free} for nothing.");
    Ok(Settled { by_package, on_invoices, free, words })
}

fn settle_one(db: &Writing<'_>, given: Settle) -> Result<()> {
    if store::of(db, given.lesson, given.student)?.is_some() {
        return Err(Error::not_possible("settled", "This lesson is settled already."));
    }
    let lesson = lessons::show(db, lessons::Which { lesson: given.lesson })?;
    if lesson.state == LessonState::Planned {
        let words = "It is still planned: say first how it ended.";
        return Err(Error::not_possible("planned", words));
    }
    let ask = AskSettle {
        lesson: given.lesson,
        student: given.student,
        because: given.because,
        told: given.told.clone(),
    };
    let proposed = propose(db, ask)?;
    let mut p = Problems::new();
    let reason = p.note("reason", &given.reason, "The reason");
    if proposed.proposal.how != Some(given.how) && reason.is_empty() {
        let asks = proposed.proposal.asks.join(" ");
        let words = format!("Say why it is settled so. {asks}");
        p.add("reason", "empty", words.trim());
    }
    let mut kept = Kept {
        how: given.how,
        rule: proposed.proposal.rule.clone(),
        reason,
        entry: None,
        line: None,
        court: None,
    };
    match given.how {
        SettledBy::Free => p.done()?,
        SettledBy::Package => {
            let Some(package) = given.package.or(proposed.proposal.package) else {
                p.add("package", "empty", "No package has a lesson left for this.");
                return p.done();
            };
            p.done()?;
            kept.entry = Some(use_lesson(db, package, &lesson, given.student)?);
        }
        SettledBy::Invoice => {
            let code = match given.currency.trim() {
                "" => proposed.proposal.currency.as_str(),
                typed => typed,
            };
            let currency = typed::currency(&mut p, "currency", code);
            let typed = match given.amount.trim() {
                "" => proposed.proposal.amount.as_str(),
                typed => typed,
            };
            let amount = currency.and_then(|c| typed::amount(&mut p, "amount", typed, c));
            let differs = given.amount.trim().is_empty()
                || amount.zip(currency).is_some_and(|(a, c)| {
                    proposed.proposal.amount.is_empty() || c.plain(a) == proposed.proposal.amount
                });
            if !differs && kept.reason.is_empty() {
                let words = "Say why it costs other than your prices and terms say.";
                p.add("reason", "empty", words);
            }
            p.done()?;
            let (Some(currency), Some(amount)) = (currency, amount) else { return Ok(()) };
            let payer = payers::ensure(db, given.student)?;
            let taught = matches!(lesson.state, LessonState::Given | LessonState::CutShort);
            let what = if taught { What::Lesson } else { What::Late };
            let line = line(&lesson, &proposed, what, currency.plain(amount));
            let (_, line) = invoices::add_line(db, payer, currency, line, None)?;
            kept.line = Some(line);
        }
    }
    kept.court = pass_court_on(db, &given, &proposed, &lesson)?;
    store::insert(db, &lesson, given.student, &kept)
}

/// The court on the payer\u{2019}s draft, at cost and on a line of its own.
fn pass_court_on(
    db: &Writing<'_>,
    given: &Settle,
    proposed: &ToSettle,
    lesson: &Lesson,
) -> Result<Option<InvoiceLineId>> {
    let mut p = Problems::new();
    let code = match proposed.proposal.court_currency.as_str() {
        "" if given.currency.trim().is_empty() => proposed.proposal.currency.as_str(),
        "" => given.currency.as_str(),
        code => code,
    };
    let typed = match given.court.trim() {
        "" => proposed.proposal.court.as_str(),
        typed => typed,
    };
    if typed.chars().all(|c| matches!(c, '0' | '.' | ',')) {
        return Ok(None);
    }
    let Some(currency) = typed::currency(&mut p, "currency", code) else {
        p.done()?;
        return Ok(None);
    };
    let amount = typed::amount_or_nothing(&mut p, "court", typed, currency);
    p.done()?;
    let Some(amount) = amount.filter(|amount| *amount > 0) else { return Ok(None) };
    let payer = payers::ensure(db, given.student)?;
    let court = if lesson.court_name.is_empty() { "Court" } else { lesson.court_name.as_str() };
    let mut line =
        LineForm::of(What::Court, format!("{court}, {}", lesson.place), currency.plain(amount));
    line.day = lesson.day.to_string();
    line.facility = Some(lesson.facility);
    let (_, line) = invoices::add_line(db, payer, currency, line, None)?;
    Ok(Some(line))
}

fn line(lesson: &Lesson, proposed: &ToSettle, what: What, price: String) -> LineForm {
    let words = match what {
        What::Late => {
            let how =
                if lesson.state == LessonState::Missed { "missed" } else { "called off late" };
            format!("Lesson {how}, {} minutes, {}: {}", lesson.minutes, lesson.place, proposed.name)
        }
        _ => {
            let shared = if lesson.students.len() > 1 { ", shared" } else { "" };
            format!(
                "Lesson of {} minutes{shared}, {}: {}",
                lesson.minutes, lesson.place, proposed.name
            )
        }
    };
    let mut line = LineForm::of(what, words, price);
    line.day = lesson.day.to_string();
    line.facility = Some(lesson.facility);
    line
}

/// Uses a prepaid lesson, or loses it: what goes with it of the price is earned on the lesson\u{2019}s day.
fn use_lesson(
    db: &Writing<'_>,
    package: PackageId,
    lesson: &Lesson,
    student: StudentId,
) -> Result<EntryId> {
    let found = packages::show(db, WhichPackage { package })?;
    let none = || Error::not_possible("nothing_left", "No lesson of this package is left.");
    let mut owed = ledger::owed_of(db, package)?.ok_or_else(none)?;
    if found.package.left <= 0 {
        return Err(none());
    }
    if !found.package.students.iter().any(|known| known.student == student) {
        let words = "This package does not pay for their lessons.";
        return Err(Error::field("package", "not_theirs", words));
    }
    let released = owed.release(1).ok_or_else(none)?;
    let taught = matches!(lesson.state, LessonState::Given | LessonState::CutShort);
    let (kind, what, words) = if taught {
        (EntryKind::Lesson, What::Lesson, "Lesson")
    } else {
        (EntryKind::Late, What::Late, "Lesson lost")
    };
    let mut earned = Posting::on(LedgerAccount::Earned, -released).in_package(package);
    earned.what = Some(what);
    earned.facility = Some(lesson.facility);
    earned.day = Some(lesson.day);
    let postings = [Posting::on(LedgerAccount::Deferred, released).in_package(package), earned];
    let own: EntryId = db.id();
    let sold = found.package.sold.unwrap_or(lesson.day);
    let entry = Enter {
        reference: format!("lesson:{}:{own}", lesson.id),
        day: later(lesson.day, sold),
        kind,
        words: format!("{words} of {}", lesson.day.words()),
        currency: found.package.currency.clone(),
        reverses: None,
    };
    ledger::enter(db, &entry, &postings, &[(package, -1)])?.ok_or_else(none)
}

fn later(one: Day, other: Day) -> Day {
    one.max(other)
}

/// Takes the settling of a lesson back: it is to be settled anew.
///
/// # Errors
/// `NotFound`; `Refused` without a reason; `NotPossible` when it was not settled, or stands on an
/// invoice that was issued.
pub fn unsettle(db: &Writing<'_>, given: Unsettle) -> Result<ToSettle> {
    let Some(kept) = store::of(db, given.lesson, given.student)? else {
        return Err(Error::not_possible("not_settled", "This lesson is not settled."));
    };
    let mut p = Problems::new();
    let reason = p.reason("reason", &given.reason, "The reason");
    p.done()?;
    for line in [kept.line, kept.court].into_iter().flatten() {
        if let Some(invoice) = store::invoice_of(db, line)? {
            let found = invoices::show(db, WhichInvoice { invoice })?;
            if !found.number.is_empty() {
                let words = format!(
                    "It stands on {}, which was issued: credit that line instead.",
                    found.number
                );
                return Err(Error::not_possible("issued", words));
            }
        }
    }
    for line in [kept.line, kept.court].into_iter().flatten() {
        if let Some(invoice) = store::invoice_of(db, line)? {
            invoices::drop_line(db, invoice, line)?;
        }
    }
    if let Some(entry) = kept.entry {
        ledger::reverse(db, entry, db.today(), &format!("Taken back: {reason}"))?;
    }
    store::remove(db, given.lesson, given.student)?;
    db.label("A lesson is to be settled again");
    propose(
        db,
        AskSettle {
            lesson: given.lesson,
            student: given.student,
            because: None,
            told: String::new(),
        },
    )
}
