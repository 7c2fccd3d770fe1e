//! What is not entered yet: lines on drafts, lessons to settle, lessons to come. By packages and the
//! price list; what neither says is asked for by name.

use std::collections::{HashMap, HashSet};

use super::sums::Row;
use super::{TripRowFor, TripRowFrom, store};
use crate::app::Reading;
use crate::error::Result;
use crate::invoices::{self, WhichInvoice};
use crate::kinds::ids::{FacilityId, LessonId, PackageId, StudentId};
use crate::kinds::text::counted;
use crate::kinds::{Currency, Day, Span};
use crate::ledger;
use crate::lessons::{Lesson, LessonState};
use crate::money::{Owed, Prices, without_tax};
use crate::packages::{self, ListPackages, Package};
use crate::prices::{self, What};
use crate::terms;

/// A lesson to find the price of.
pub(super) struct ToPrice {
    /// Which one, where it is one already.
    pub lesson: Option<LessonId>,
    pub day: Day,
    pub facility: FacilityId,
    pub place: String,
    pub minutes: u32,
    /// All who share it, in the order in which they stand in it.
    pub students: Vec<(StudentId, String)>,
}

/// What is known of packages, prices and tax; packages are used up as they are asked.
pub(super) struct Pricing<'a> {
    db: &'a Reading<'a>,
    prices: Prices,
    packages: HashMap<StudentId, Vec<Package>>,
    used: HashMap<PackageId, (i64, Option<Owed>)>,
    pub asks: Vec<String>,
}

impl<'a> Pricing<'a> {
    pub fn new(db: &'a Reading<'a>) -> Result<Self> {
        let prices = invoices::seller(db)?.prices;
        Ok(Self { db, prices, packages: HashMap::new(), used: HashMap::new(), asks: Vec::new() })
    }

    /// Asks for something, once.
    pub fn ask(&mut self, words: String) {
        if !self.asks.contains(&words) {
            self.asks.push(words);
        }
    }

    /// What those who share a lesson would pay for it: each that is not settled, by a package or the
    /// price list.
    pub fn lesson(
        &mut self,
        lesson: &ToPrice,
        from: TripRowFrom,
        open: impl Fn(StudentId) -> bool,
    ) -> Result<Vec<Row>> {
        let many = lesson.students.len();
        let mut rows = Vec::new();
        for (place, (student, name)) in lesson.students.iter().enumerate() {
            if !open(*student) {
                continue;
            }
            let words = format!("{name}, {} minutes, {}", lesson.minutes, lesson.place);
            let of = (TripRowFor::Lesson, from);
            if let Some((package, amount)) = self.by_package(lesson, *student)? {
                let row = Row::new(of, lesson.day, words, amount);
                rows.push(Row { package: Some(package), lesson: lesson.lesson, ..row });
                continue;
            }
            let (db, day) = (self.db, lesson.day);
            let known = prices::of_lesson(db, day, lesson.facility, lesson.minutes, many)?;
            let mine = known.and_then(|(currency, parts)| Some((currency, *parts.get(place)?)));
            let Some((currency, amount)) = mine else {
                let shared = if many > 1 { format!(", {many} sharing") } else { String::new() };
                self.ask(format!(
                    "No price is known for {} minutes at {}{shared}.",
                    lesson.minutes, lesson.place
                ));
                continue;
            };
            let net = self.without_tax(amount, What::Lesson, Some(lesson.facility), day)?;
            let row = Row::new(of, day, words, (currency, net));
            rows.push(Row { lesson: lesson.lesson, ..row });
        }
        Ok(rows)
    }

    /// What the next lesson of a package that pays for this one comes to.
    fn by_package(
        &mut self,
        lesson: &ToPrice,
        student: StudentId,
    ) -> Result<Option<(PackageId, (Currency, i64))>> {
        if !self.packages.contains_key(&student) {
            let of = ListPackages { student: Some(student) };
            self.packages.insert(student, packages::list(self.db, of)?);
        }
        for package in self.packages.get(&student).into_iter().flatten() {
            let Some(currency) = Currency::parse(&package.currency) else { continue };
            if !package.pays_for(lesson.day, i64::from(lesson.minutes)) {
                continue;
            }
            let (used, owed) = match self.used.get_mut(&package.id) {
                Some(known) => known,
                None => {
                    let owed = ledger::owed_of(self.db, package.id)?;
                    self.used.entry(package.id).or_insert((0, owed))
                }
            };
            if package.left <= *used {
                continue;
            }
            if let Some(released) = owed.as_mut().and_then(|owed| owed.release(1)) {
                *used += 1;
                return Ok(Some((package.id, (currency, released))));
            }
        }
        Ok(None)
    }

    /// A price without the tax that the coach set for it, where prices are with tax.
    pub fn without_tax(
        &mut self,
        amount: i64,
        what: What,
        facility: Option<FacilityId>,
        day: Day,
    ) -> Result<i64> {
        if self.prices == Prices::Net {
            return Ok(amount);
        }
        match prices::tax_of(self.db, what, facility, day)? {
            Some(rule) => Ok(out_of(amount, &rule.rate)),
            None => {
                self.ask_tax(what);
                Ok(amount)
            }
        }
    }

    fn ask_tax(&mut self, what: What) {
        self.ask(format!(
            "No tax is set for {}: prices with tax are counted as they stand.",
            what.words()
        ));
    }
}

/// The tax taken out of an amount.
fn out_of(amount: i64, rate: &str) -> i64 {
    rate.parse().ok().and_then(|rate| without_tax(amount, rate)).unwrap_or(amount)
}

/// What lessons of some days, and drafts for them, may still come to.
pub(super) fn of_lessons(
    pricing: &mut Pricing<'_>,
    days: Span,
    lessons: &[Lesson],
) -> Result<Vec<Row>> {
    let db = pricing.db;
    let mut rows = on_drafts(pricing, days)?;
    let settled: HashSet<_> = store::settled(db, days)?.into_iter().collect();
    let since = Day::parse(&terms::show(db)?.since);
    let mut to_say = 0;
    for lesson in lessons {
        let open = |student: StudentId| !settled.contains(&(lesson.id, student));
        let from = match lesson.state {
            LessonState::Planned => TripRowFrom::Planned,
            // What was over before the coach kept money here was paid elsewhere.
            _ if since.is_some_and(|since| lesson.day < since) => continue,
            LessonState::Given => TripRowFrom::ToSettle,
            LessonState::CutShort | LessonState::Missed | LessonState::CalledOff => {
                to_say += lesson.students.iter().filter(|s| open(s.student)).count();
                continue;
            }
        };
        rows.extend(pricing.lesson(&to_price(lesson), from, open)?);
    }
    if to_say > 0 {
        let many = i64::try_from(to_say).unwrap_or(i64::MAX);
        pricing.ask(format!(
            "{} did not take place whole: what comes of {} is known once {} settled.",
            counted(many, "lesson", "lessons"),
            if many == 1 { "it" } else { "them" },
            if many == 1 { "it is" } else { "they are" },
        ));
    }
    rows.sort_by_key(|row| row.day);
    Ok(rows)
}

/// A lesson as its price is looked for.
pub(super) fn to_price(lesson: &Lesson) -> ToPrice {
    ToPrice {
        lesson: Some(lesson.id),
        day: lesson.day,
        facility: lesson.facility,
        place: lesson.place.clone(),
        minutes: lesson.minutes,
        students: lesson.students.iter().map(|s| (s.student, s.name.clone())).collect(),
    }
}

/// Lines on drafts for these days.
fn on_drafts(pricing: &mut Pricing<'_>, days: Span) -> Result<Vec<Row>> {
    let mut rows = Vec::new();
    for invoice in store::drafts(pricing.db, days)? {
        let draft = invoices::show(pricing.db, WhichInvoice { invoice })?;
        let Some(currency) = Currency::parse(&draft.currency) else { continue };
        for line in draft.lines {
            let Some(day) = line.day.filter(|day| days.holds(*day)) else { continue };
            let what = match line.what {
                What::Lesson => TripRowFor::Lesson,
                What::Late => TripRowFor::Late,
                What::Court => TripRowFor::Court,
                What::Travel => TripRowFor::Travel,
                What::Package | What::Analysis | What::Other => continue,
            };
            let Some(total) = currency.minor(&line.total) else { continue };
            let net = match (draft.prices, line.category) {
                (Prices::Net, _) => total,
                (Prices::Gross, Some(_)) => out_of(total, &line.rate),
                (Prices::Gross, None) => {
                    pricing.ask_tax(line.what);
                    total
                }
            };
            let words = format!("{}, {}", line.words, draft.name);
            let row = Row::new((what, TripRowFrom::Draft), day, words, (currency, net));
            rows.push(Row { invoice: Some(invoice), ..row });
        }
    }
    Ok(rows)
}
