//! Whoever pays: a student, a parent, a club. A record of its own, because an invoice outlives the
//! student's: the law has it kept. What leads from a student to their payer is a link that goes with
//! the student.

mod store;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use store::{issued_for, of_students, without_accounts};

use crate::app::{Reading, Writing};
use crate::error::{Problems, Result};
use crate::kinds::Language;
use crate::kinds::ids::{PayerId, StudentId};
use crate::students::{self, Contact};

/// The most lines of an address.
const LINES: usize = 6;

/// Who pays; the form and the record are the same.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct PayerForm {
    /// Full name, as it stands on an invoice.
    pub name: String,
    /// Postal address, several lines.
    pub address: String,
    /// The country, two letters of ISO 3166-1; empty while not known.
    pub country: String,
    /// E-mail address.
    pub email: String,
    /// The payer's own number for value added tax; empty for a private person.
    pub tax_id: String,
    /// The language of invoices.
    pub language: Language,
}

/// Who pays, as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Payer {
    /// Which one.
    pub id: PayerId,
    /// Who.
    #[serde(flatten)]
    pub form: PayerForm,
    /// For whom, by name.
    pub students: Vec<PaysFor>,
}

/// A student for whom someone pays.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct PaysFor {
    /// The student.
    pub student: StudentId,
    /// The name.
    pub name: String,
}

/// A payer to add.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AddPayer {
    /// Who.
    pub payer: PayerForm,
}

/// A payer to change.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChangePayer {
    /// Which one.
    pub id: PayerId,
    /// All that is to be kept.
    pub payer: PayerForm,
}

/// Which payer.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichPayer {
    /// Who.
    pub payer: PayerId,
}

/// Who is to pay for a student.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChoosePayer {
    /// For whom.
    pub student: StudentId,
    /// Who; left out for whoever the student's own record names.
    #[serde(default)]
    pub payer: Option<PayerId>,
}

/// Who pays for a student: as chosen, or as the student's record has it.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct PayerOf {
    /// The payer; `None` until something was invoiced or somebody chosen.
    pub payer: Option<Payer>,
    /// Who it would be by the student's record.
    pub proposed: PayerForm,
}

/// All payers, by name.
///
/// # Errors
/// `Storage`.
pub fn list(db: &Reading<'_>) -> Result<Vec<Payer>> {
    store::all(db)
}

/// One payer.
///
/// # Errors
/// `NotFound`.
pub fn show(db: &Reading<'_>, which: WhichPayer) -> Result<Payer> {
    store::find(db, which.payer)
}

/// Adds a payer.
///
/// # Errors
/// `Refused` with every field that is wrong.
pub fn add(db: &Writing<'_>, given: AddPayer) -> Result<Payer> {
    let mut p = Problems::new();
    let read = p.within("payer.", |p| read(p, &given.payer));
    p.done()?;
    let id: PayerId = db.id();
    store::put(db, id, &read)?;
    db.label(format!("Payer added: {}", read.name));
    store::find(db, id)
}

/// Changes a payer. What was issued keeps the words it was issued with.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong.
pub fn change(db: &Writing<'_>, given: ChangePayer) -> Result<Payer> {
    store::find(db, given.id)?;
    let mut p = Problems::new();
    let read = p.within("payer.", |p| read(p, &given.payer));
    p.done()?;
    store::put(db, given.id, &read)?;
    db.label(format!("Payer changed: {}", read.name));
    store::find(db, given.id)
}

/// Who pays for a student.
///
/// # Errors
/// `NotFound`.
pub fn of_student(db: &Reading<'_>, of: students::Which) -> Result<PayerOf> {
    let payer = store::of(db, of.student)?.map(|id| store::find(db, id)).transpose()?;
    Ok(PayerOf { payer, proposed: proposed(db, of.student)? })
}

/// Chooses who pays for a student from now on.
///
/// # Errors
/// `NotFound`.
pub fn choose(db: &Writing<'_>, given: ChoosePayer) -> Result<Payer> {
    let student = students::show(db, students::Which { student: given.student })?;
    let payer = match given.payer {
        Some(payer) => store::find(db, payer)?.id,
        None => from_record(db, given.student)?,
    };
    store::link(db, given.student, payer)?;
    let payer = store::find(db, payer)?;
    db.label(format!("{} pays for {}", payer.form.name, student.profile.name));
    Ok(payer)
}

/// The payer of a student; one is made from the student's record where there is none yet.
///
/// # Errors
/// `NotFound`.
pub fn ensure(db: &Writing<'_>, student: StudentId) -> Result<PayerId> {
    match store::of(db, student)? {
        Some(payer) => Ok(payer),
        None => {
            let payer = from_record(db, student)?;
            store::link(db, student, payer)?;
            Ok(payer)
        }
    }
}

/// A payer as the student's record names them: one of the same name and address who is there already,
/// or a new one.
fn from_record(db: &Writing<'_>, student: StudentId) -> Result<PayerId> {
    let form = proposed(db, student)?;
    let known = store::all(db)?
        .into_iter()
        .find(|payer| payer.form.name == form.name && payer.form.address == form.address);
    if let Some(known) = known.filter(|_| !form.address.is_empty()) {
        return Ok(known.id);
    }
    let id: PayerId = db.id();
    store::put(db, id, &form)?;
    Ok(id)
}

/// The payer that the record names, else the guardian, else the student.
fn proposed(db: &Reading<'_>, student: StudentId) -> Result<PayerForm> {
    let profile = students::show(db, students::Which { student })?.profile;
    let from = |c: &Contact| PayerForm {
        name: c.name.clone(),
        address: c.address.clone(),
        email: c.email.clone(),
        language: profile.language,
        ..PayerForm::default()
    };
    let contact = profile.payer.as_ref().or(profile.guardian.as_ref());
    Ok(contact.map(from).unwrap_or_else(|| PayerForm {
        name: profile.name.clone(),
        email: profile.email.clone(),
        language: profile.language,
        ..PayerForm::default()
    }))
}

fn read(p: &mut Problems, form: &PayerForm) -> PayerForm {
    let address = p.note("address", &form.address, "The address");
    if address.lines().count() > LINES || address.chars().count() > 400 {
        p.add("address", "too_long", format!("An address has room for {LINES} lines."));
    }
    PayerForm {
        name: p.name("name", &form.name, "The name"),
        address,
        country: country(p, "country", &form.country),
        email: p.email("email", &form.email),
        tax_id: p.line("tax_id", &form.tax_id, "The number"),
        language: form.language,
    }
}

/// A country as typed: two letters, or nothing.
pub fn country(p: &mut Problems, field: &str, typed: &str) -> String {
    let code = typed.trim().to_ascii_uppercase();
    let letters = code.chars().all(|c| c.is_ascii_uppercase());
    if !matches!(code.len(), 0 | 2) || !letters {
        let words = "Write the country\u{2019}s two letters, as in DE or US.";
        p.add(field, "no_country", words);
    }
    code
}
