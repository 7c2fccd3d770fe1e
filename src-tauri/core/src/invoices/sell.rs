//! Selling a package: the package, and the line that charges for it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::draft::{LineForm, add_line};
use super::issue::{Issue, issue};
use super::{Invoice, WhichInvoice, list::show};
use crate::app::Writing;
use crate::error::{Problems, Result};
use crate::kinds::ids::{PackageId, StudentId};
use crate::money::typed;
use crate::packages::{self, Sold};
use crate::payers;
use crate::prices::What;
use crate::students;
use crate::terms;

/// A package to sell.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SellPackage {
    /// For whom.
    pub student: StudentId,
    /// Others whose lessons it pays for too.
    #[serde(default)]
    pub also: Vec<StudentId>,
    /// Its name, as it stands on the invoice; empty for one made from the numbers.
    #[serde(default)]
    pub words: String,
    /// Lessons.
    pub lessons: i64,
    /// The length of each in minutes; left out for any.
    #[serde(default)]
    pub minutes: Option<i64>,
    /// The currency, an ISO 4217 code.
    pub currency: String,
    /// What it costs, a decimal.
    pub price: String,
    /// What one such lesson costs on its own, a decimal; empty while not known.
    #[serde(default)]
    pub single: String,
    /// The last day, as YYYY-MM-DD; empty without end.
    #[serde(default)]
    pub expires: String,
    /// Whether it is a gift: nothing is paid for it.
    #[serde(default)]
    pub gift: bool,
    /// Whether to issue its invoice at once.
    #[serde(default)]
    pub issue: bool,
}

/// Sells a package: it stands on the payer\u{2019}s draft, and is sold when that is issued.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; as [`issue`] when it is issued at once.
pub fn sell_package(db: &Writing<'_>, given: SellPackage) -> Result<Invoice> {
    let student = students::show(db, students::Which { student: given.student })?;
    let terms = terms::show(db)?;
    let mut p = Problems::new();
    let lessons = p.within_bounds("lessons", given.lessons, 1, 500, "The number of lessons");
    let minutes =
        given.minutes.map(|minutes| p.within_bounds("minutes", minutes, 5, 480, "The length"));
    let currency = typed::currency(&mut p, "currency", &given.currency);
    let amount = |p: &mut Problems, field: &str, typed: &str| {
        currency.and_then(|currency| typed::amount_or_nothing(p, field, typed, currency))
    };
    let price = match (given.gift, given.price.trim()) {
        (true, "") => Some(0),
        _ => amount(&mut p, "price", &given.price),
    };
    if given.gift && price.is_some_and(|price| price > 0) {
        p.add(
            "price",
            "gift",
            "Nothing is paid for a gift. What someone pays is no gift here: sell it to them.",
        );
    }
    let single = match given.single.trim() {
        "" => None,
        typed => amount(&mut p, "single", typed),
    };
    let expires = p.day_or_none("expires", Some(&given.expires), "The last day");
    if expires.is_some_and(|last| last < db.today()) {
        p.add("expires", "before", "It would run out before it is sold.");
    }
    let words = match p.line("words", &given.words, "The name").as_str() {
        "" => {
            let of = minutes.map(|minutes| format!(" of {minutes} minutes")).unwrap_or_default();
            format!("Package of {}{of}", crate::kinds::text::counted(lessons, "lesson", "lessons"))
        }
        typed => typed.to_owned(),
    };
    p.done()?;
    let (Some(currency), Some(price)) = (currency, price) else {
        return Err(crate::error::Error::Fault("a package without a price".to_owned()));
    };
    let payer = payers::ensure(db, given.student)?;
    let package: PackageId = db.id();
    let sold = Sold {
        payer,
        words: words.clone(),
        lessons,
        minutes,
        currency: currency.code().to_owned(),
        price,
        single,
        refund: terms.paid_back,
        expires,
        gift: given.gift,
    };
    packages::keep(db, package, &sold)?;
    for one in std::iter::once(given.student).chain(given.also) {
        students::show(db, students::Which { student: one })?;
        packages::link(db, package, one)?;
    }
    let said = format!("{words}: {}", student.profile.name);
    let line = LineForm::of(What::Package, said, currency.plain(price));
    let (invoice, _) = add_line(db, payer, currency, line, Some(package))?;
    db.label(format!("{words}: {}", student.profile.name));
    if given.issue {
        let ask = Issue {
            invoice,
            day: String::new(),
            due: String::new(),
            use_credit: true,
            in_parts: false,
        };
        return issue(db, ask);
    }
    show(db, WhichInvoice { invoice })
}
