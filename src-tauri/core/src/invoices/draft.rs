//! Drafts: begun, changed line by line, and discarded.

use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store::{Extra, Head, Line, NewHead};
use super::{DocumentKind, Invoice, WhichInvoice, list::show, seller::seller, store};
use crate::app::{Reading, Writing};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{FacilityId, InvoiceId, InvoiceLineId, PackageId, PayerId};
use crate::kinds::{Currency, Day, decimal};
use crate::money::{Category, Prices, typed};
use crate::payers;
use crate::prices::{self, What};

/// The most lines of an invoice.
pub(super) const MOST: usize = 500;
/// The most that is taken off the whole or put on it.
const MOST_EXTRAS: usize = 20;
/// The most decimals of a price or a quantity.
const DECIMALS: u32 = 4;

/// An invoice to begin.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DraftInvoice {
    /// Who pays.
    pub payer: PayerId,
    /// The currency, an ISO 4217 code.
    pub currency: String,
    /// The lines.
    #[serde(default)]
    pub lines: Vec<LineForm>,
}

/// A draft to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangeInvoice {
    /// Which one.
    pub invoice: InvoiceId,
    /// A remark above the lines.
    #[serde(default)]
    pub words: String,
    /// Whether prices are without or with tax; left out to leave it.
    #[serde(default)]
    pub prices: Option<Prices>,
    /// The cash step to which what is due is rounded, a decimal; empty for none.
    #[serde(default)]
    pub step: String,
    /// All lines: one that is left out goes.
    pub lines: Vec<LineForm>,
    /// All that is taken off the whole, or put on it; left out to leave it.
    #[serde(default)]
    pub extras: Option<Vec<ExtraForm>>,
}

/// What is taken off the whole or put on it, as typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ExtraForm {
    /// Whether it is taken off; otherwise it is put on.
    pub takes_off: bool,
    /// Why, as it is to stand there.
    pub words: String,
    /// How much, a decimal, without or with tax as the prices are.
    pub amount: String,
    /// The tax; left out for that of the lines, where all have the same.
    #[serde(default)]
    pub tax: Option<LineTax>,
}

/// The tax of a line, as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LineTax {
    /// The category.
    pub category: Category,
    /// The rate in percent; empty for 0.
    #[serde(default)]
    pub rate: String,
    /// Why no tax is charged.
    #[serde(default)]
    pub why: String,
}

/// A line as typed.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LineForm {
    /// The line to change; left out for a new one.
    #[serde(default)]
    pub id: Option<InvoiceLineId>,
    /// What it is for.
    pub what: What,
    /// In words.
    pub words: String,
    /// The day of supply, as YYYY-MM-DD; empty: that of the invoice.
    #[serde(default)]
    pub day: String,
    /// Where.
    #[serde(default)]
    pub facility: Option<FacilityId>,
    /// How many, a decimal above 0; empty for one.
    #[serde(default)]
    pub quantity: String,
    /// What one costs, a decimal.
    pub price: String,
    /// What is taken off, a decimal; empty for nothing.
    #[serde(default)]
    pub allowance: String,
    /// Why.
    #[serde(default)]
    pub reason: String,
    /// The tax; left out for what the coach set for this kind of line.
    #[serde(default)]
    pub tax: Option<LineTax>,
}

impl LineForm {
    /// A line for one of something, of no day and no place, with the tax that is set for its kind.
    pub fn of(what: What, words: String, price: String) -> Self {
        Self {
            id: None,
            what,
            words,
            day: String::new(),
            facility: None,
            quantity: String::new(),
            price,
            allowance: String::new(),
            reason: String::new(),
            tax: None,
        }
    }
}

/// Begins an invoice.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn draft(db: &Writing<'_>, given: DraftInvoice) -> Result<Invoice> {
    let payer = payers::show(db, payers::WhichPayer { payer: given.payer })?;
    let mut p = Problems::new();
    let currency = typed::currency(&mut p, "currency", &given.currency);
    let lines = match currency {
        Some(currency) => read_all(db, &mut p, given.lines, currency)?,
        None => Vec::new(),
    };
    p.done()?;
    let code = currency.map(Currency::code).unwrap_or_default();
    let id = begin(db, given.payer, code)?;
    for (n, (_, line)) in lines.iter().enumerate() {
        let place = i64::try_from(n + 1).unwrap_or(i64::MAX);
        store::put_line(db, id, db.id(), place, line)?;
    }
    db.label(format!("Invoice begun: {}", payer.form.name));
    show(db, WhichInvoice { invoice: id })
}

pub(super) fn begin(db: &Writing<'_>, payer: PayerId, currency: &str) -> Result<InvoiceId> {
    let id: InvoiceId = db.id();
    let prices = seller(db)?.prices;
    let head = NewHead {
        kind: DocumentKind::Invoice,
        payer,
        corrects: None,
        currency,
        prices,
        words: "",
        step: None,
    };
    store::insert(db, id, &head)?;
    Ok(id)
}

/// Adds a line to the payer's draft in a currency, beginning one where there is none.
///
/// # Errors
/// `Storage`.
pub fn add_line(
    db: &Writing<'_>,
    payer: PayerId,
    currency: Currency,
    line: LineForm,
    package: Option<PackageId>,
) -> Result<(InvoiceId, InvoiceLineId)> {
    let mut p = Problems::new();
    let read = read(db, &mut p, &line, currency)?;
    p.done()?;
    let Some(mut read) = read else {
        return Err(Error::Fault("a line without a price".to_owned()));
    };
    read.package = package;
    let invoice = match store::draft_of(db, payer, currency.code())? {
        Some(invoice) => invoice,
        None => begin(db, payer, currency.code())?,
    };
    let id: InvoiceLineId = db.id();
    store::put_line(db, invoice, id, store::next_place(db, invoice)?, &read)?;
    Ok((invoice, id))
}

/// Takes a line off a draft.
///
/// # Errors
/// `NotPossible` once it is issued.
pub fn drop_line(db: &Writing<'_>, invoice: InvoiceId, line: InvoiceLineId) -> Result<()> {
    a_draft(db, invoice)?;
    store::remove_line(db, line)
}

/// Changes a draft.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` once it is issued.
pub fn change(db: &Writing<'_>, given: ChangeInvoice) -> Result<Invoice> {
    let head = a_draft(db, given.invoice)?;
    if head.kind == DocumentKind::CreditNote {
        let words = "A credit note is not changed: discard it, and credit anew.";
        return Err(Error::not_possible("credit_note", words));
    }
    let currency = currency_of(&head)?;
    let mut p = Problems::new();
    let words = p.note("words", &given.words, "The remark");
    if words.chars().count() > 1000 {
        p.add("words", "too_long", "There is room for 1000 characters.");
    }
    let step = match given.step.trim() {
        "" => None,
        typed => typed::amount(&mut p, "step", typed, currency),
    };
    let before = store::lines(db, given.invoice, currency)?;
    for (n, line) in given.lines.iter().enumerate() {
        if line.id.is_some_and(|id| before.iter().all(|known| known.id != id)) {
            p.add(&format!("lines[{n}].id"), "not_found", "This line is not on the invoice.");
        }
    }
    let lines = read_all(db, &mut p, given.lines, currency)?;
    let extras = given.extras.map(|forms| read_extras(&mut p, &forms, currency));
    p.done()?;
    store::shift(db, given.invoice)?;
    for known in &before {
        if lines.iter().all(|(id, _)| *id != Some(known.id)) {
            store::remove_line(db, known.id)?;
            if let Some(package) = known.package {
                store::remove_package(db, package)?;
            }
        }
    }
    for (n, (id, line)) in lines.iter().enumerate() {
        let place = i64::try_from(n + 1).unwrap_or(i64::MAX);
        store::put_line(db, given.invoice, id.unwrap_or_else(|| db.id()), place, line)?;
    }
    if let Some(extras) = extras {
        store::put_extras(db, given.invoice, &extras)?;
    }
    store::update(db, given.invoice, given.prices.unwrap_or(head.prices), &words, step)?;
    db.label(format!("Draft changed: {}", head.payer_name));
    show(db, WhichInvoice { invoice: given.invoice })
}

/// Discards a draft. Lessons on it are to be settled again.
///
/// # Errors
/// `NotFound`; `NotPossible` once it is issued.
pub fn discard(db: &Writing<'_>, which: WhichInvoice) -> Result<()> {
    let head = a_draft(db, which.invoice)?;
    for line in store::lines(db, which.invoice, currency_of(&head)?)? {
        store::remove_line(db, line.id)?;
        if let Some(package) = line.package.filter(|_| head.kind == DocumentKind::Invoice) {
            store::remove_package(db, package)?;
        }
    }
    store::remove(db, which.invoice)?;
    db.label(format!("Draft discarded: {}", head.payer_name));
    Ok(())
}

pub(super) fn a_draft(db: &Reading<'_>, invoice: InvoiceId) -> Result<Head> {
    let head = store::head(db, invoice)?;
    match &head.number {
        None => Ok(head),
        Some(number) => Err(Error::not_possible(
            "issued",
            format!("{number} was issued and does not change. Correct it by a credit note."),
        )),
    }
}

pub(super) fn currency_of(head: &Head) -> Result<Currency> {
    Currency::parse(&head.currency)
        .ok_or_else(|| Error::Fault(format!("the invoice {} is in no currency", head.id)))
}

fn read_all(
    db: &Reading<'_>,
    p: &mut Problems,
    lines: Vec<LineForm>,
    currency: Currency,
) -> Result<Vec<(Option<InvoiceLineId>, Line)>> {
    if lines.len() > MOST {
        p.add("lines", "too_many", format!("An invoice has room for {MOST} lines."));
        return Ok(Vec::new());
    }
    let mut all = Vec::new();
    for (n, line) in lines.iter().enumerate() {
        let read = p.within(&format!("lines[{n}]."), |p| read(db, p, line, currency))?;
        all.extend(read.map(|read| (line.id, read)));
    }
    Ok(all)
}

fn read(
    db: &Reading<'_>,
    p: &mut Problems,
    form: &LineForm,
    currency: Currency,
) -> Result<Option<Line>> {
    let words = p.name("words", &form.words, "What it is for");
    let day = p.day_or_none("day", Some(&form.day), "The day");
    let quantity = match form.quantity.trim() {
        "" => Some(Decimal::ONE),
        typed => number(typed)
            .filter(|quantity| *quantity > Decimal::ZERO && *quantity <= Decimal::from(1_000_000)),
    };
    if quantity.is_none() {
        p.add("quantity", "no_number", "A number above 0, with at most 4 decimals.");
    }
    let price = number(&form.price).filter(|price| *price <= Decimal::from(1_000_000_000_i64));
    if price.is_none() {
        let typed = form.price.trim();
        if typed.is_empty() {
            p.add("price", "empty", "The price is empty.");
        } else if typed.starts_with(['-', '\u{2212}']) {
            let words = "A price is 0 or more. What goes back is a credit note or a discount.";
            p.add("price", "negative", words);
        } else {
            p.add("price", "no_amount", "An amount of 0 or more, with at most 4 decimals.");
        }
    }
    let allowance = match form.allowance.trim() {
        "" => Some(0),
        typed => typed::amount_or_nothing(p, "allowance", typed, currency),
    };
    let reason = p.line("reason", &form.reason, "The reason");
    if allowance.is_some_and(|allowance| allowance > 0) && reason.is_empty() {
        p.add("reason", "empty", "Say why something is taken off, as it is to stand there.");
    }
    if let (Some(quantity), Some(price), Some(allowance)) = (quantity, price, allowance) {
        let unit = Decimal::from(10_i64.pow(currency.decimals()));
        let whole = quantity.checked_mul(price).and_then(|whole| whole.checked_mul(unit));
        if whole.is_none_or(|whole| whole > Decimal::from(1_000_000_000_000_i64)) {
            p.add("price", "too_large", "This comes to more than can be counted.");
        } else if whole.is_some_and(|whole| Decimal::from(allowance) > whole.ceil()) {
            p.add("allowance", "too_large", "More would be taken off than the line comes to.");
        }
    }
    let (category, rate, why) = match &form.tax {
        Some(tax) => {
            let (rate, why) =
                p.within("tax.", |p| prices::read_tax(p, tax.category, &tax.rate, &tax.why));
            (Some(tax.category), rate, why)
        }
        None => {
            let on = day.unwrap_or(db.today());
            match prices::tax_of(db, form.what, form.facility, on)? {
                Some(rule) => (Some(rule.category), rule.rate.parse().ok(), rule.why),
                None => (None, None, String::new()),
            }
        }
    };
    let (Some(quantity), Some(price), Some(allowance)) = (quantity, price, allowance) else {
        return Ok(None);
    };
    Ok(Some(Line {
        what: form.what,
        words,
        day,
        facility: form.facility,
        quantity: quantity.normalize().to_string(),
        price: price.normalize().to_string(),
        allowance,
        reason,
        category: category.filter(|_| rate.is_some()),
        rate: rate.map(|rate| rate.normalize().to_string()),
        why,
        package: None,
        lessons: None,
        corrects: None,
    }))
}

fn read_extras(p: &mut Problems, forms: &[ExtraForm], currency: Currency) -> Vec<Extra> {
    if forms.len() > MOST_EXTRAS {
        p.add("extras", "too_many", format!("There is room for {MOST_EXTRAS}."));
        return Vec::new();
    }
    let mut all = Vec::new();
    for (n, form) in forms.iter().enumerate() {
        all.extend(p.within(&format!("extras[{n}]."), |p| {
            let words = p.reason("words", &form.words, "The reason");
            if words.chars().count() > 200 {
                p.add("words", "too_long", "There is room for 200 characters.");
            }
            let amount = typed::amount(p, "amount", &form.amount, currency)?;
            let tax = form.tax.as_ref().map(|tax| {
                p.within("tax.", |p| prices::read_tax(p, tax.category, &tax.rate, &tax.why))
            });
            let (rate, why) = tax.unwrap_or_default();
            Some(Extra {
                takes_off: form.takes_off,
                words,
                amount,
                category: form.tax.as_ref().map(|tax| tax.category).filter(|_| rate.is_some()),
                rate: rate.map(|rate| rate.normalize().to_string()),
                why,
            })
        }));
    }
    all
}

fn number(typed: &str) -> Option<Decimal> {
    decimal(typed).map(|number| number.normalize()).filter(|number| number.scale() <= DECIMALS)
}

/// The day a line counts for.
pub(super) fn day_of(line: Option<Day>, invoice: Day) -> Day {
    line.unwrap_or(invoice)
}
