//! Invoices and credit notes. A draft is a draft: it has no number and can go. Issuing takes the next
//! number of its series, freezes the words and sums, draws the document and makes the entry, all in one
//! act. What was issued never changes; the coach file itself refuses it. A correction is a credit note.
//!
//! Sums follow EN 16931-1 (see `money`). Nothing here is tax advice: what tax counts, the coach sets.

mod credit;
mod document;
mod draft;
mod issue;
mod list;
mod parts;
mod pay_code;
mod print;
mod reckon;
mod remind;
mod sell;
mod seller;
mod store;
mod structured;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use credit::{Credit, CreditLine, GiveBackPackage, credit, give_back, would_give_back};
pub use document::{DocExtra, DocLine, DocPart, DocTax, Document, Party};
pub use draft::{
    ChangeInvoice, DraftInvoice, ExtraForm, LineForm, LineTax, add_line, change, discard, draft,
    drop_line,
};
pub use issue::{InvoiceInParts, Issue, in_parts, issue};
pub use list::{InvoiceListed, InvoiceState, Invoices, InvoicesOf, drafts, list, show};
pub use print::{addressee, file, letterhead};
pub use remind::{
    InvoiceReminder, Remind, WhichReminder, WouldRemind, of_reminder, remind, reminded,
    reminder_file, would_remind,
};
pub use sell::{SellPackage, sell_package};
pub use seller::{Seller, seller, set_seller};
pub use structured::{InvoiceSyntax, WhichInvoiceFile, structured_file};

use crate::kinds::Day;
use crate::kinds::ids::{FacilityId, InvoiceId, InvoiceLineId, PackageId, PayerId};
use crate::money::{Category, Prices};
use crate::prices::What;

/// What kind of document.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DocumentKind {
    /// An invoice.
    Invoice,
    /// A credit note against an invoice.
    CreditNote,
}

crate::db::words! {
    DocumentKind { Invoice = "invoice", CreditNote = "credit_note" }
}

/// Which invoice.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichInvoice {
    /// Which one.
    pub invoice: InvoiceId,
}

/// A line as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceLine {
    /// Which one.
    pub id: InvoiceLineId,
    /// What it is for.
    pub what: What,
    /// In words.
    pub words: String,
    /// The day of supply; `None`: that of the invoice.
    pub day: Option<Day>,
    /// Where.
    pub facility: Option<FacilityId>,
    /// How many, a decimal.
    pub quantity: String,
    /// What one costs, a decimal.
    pub price: String,
    /// What is taken off, a decimal.
    pub allowance: String,
    /// Why.
    pub reason: String,
    /// The category of tax; `None` while not set.
    pub category: Option<Category>,
    /// The rate in percent; empty while not set.
    pub rate: String,
    /// Why no tax is charged.
    pub why: String,
    /// The package that it sells.
    pub package: Option<PackageId>,
    /// Of a credit note: lessons given back.
    pub lessons: Option<i64>,
    /// Of a credit note: the line it corrects.
    pub corrects: Option<InvoiceLineId>,
    /// What it comes to, a decimal.
    pub total: String,
    /// What of it was credited since, a decimal.
    pub credited: String,
}

/// What is taken off the whole, or put on it, as kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceExtra {
    /// Whether it is taken off; otherwise it is put on.
    pub takes_off: bool,
    /// Why, as printed.
    pub words: String,
    /// How much, a decimal, without or with tax as the prices are.
    pub amount: String,
    /// The category of tax; `None` while not set.
    pub category: Option<Category>,
    /// The rate in percent; empty while not set.
    pub rate: String,
    /// Why no tax is charged.
    pub why: String,
}

/// Where something is set that a draft lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LackIn {
    /// With who issues.
    Seller,
    /// With who pays.
    Payer,
    /// On its lines.
    Lines,
    /// With the taxes.
    Taxes,
}

/// Something that keeps a draft from being issued.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceLack {
    /// What, in words.
    pub words: String,
    /// Where it is set.
    pub lack_in: LackIn,
}

/// The sums of an invoice, as decimals.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceSums {
    /// The lines together, as their prices are.
    pub lines: String,
    /// Without tax.
    pub net: String,
    /// Tax.
    pub tax: String,
    /// With tax.
    pub gross: String,
    /// What the cash step adds or takes off.
    pub rounding: String,
    /// What is to be paid, all together.
    pub payable: String,
    /// Tax by category and rate.
    pub taxes: Vec<DocTax>,
}

/// An invoice or credit note.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Invoice {
    /// Which one.
    pub id: InvoiceId,
    /// What kind of document.
    pub kind: DocumentKind,
    /// Who pays.
    pub payer: PayerId,
    /// The name: as printed, once issued.
    pub name: String,
    /// Of a credit note: the invoice.
    pub corrects: Option<InvoiceId>,
    /// Its number.
    pub corrects_number: String,
    /// The currency.
    pub currency: String,
    /// Whether prices are without or with tax.
    pub prices: Prices,
    /// A remark above the lines.
    pub words: String,
    /// The cash step, a decimal; empty for none.
    pub step: String,
    /// The number; empty while a draft.
    pub number: String,
    /// The day of issue.
    pub day: Option<Day>,
    /// The last day to pay.
    pub due: Option<Day>,
    /// Where it stands.
    pub state: InvoiceState,
    /// The same in words.
    pub stands: String,
    /// The lines.
    pub lines: Vec<InvoiceLine>,
    /// What is taken off the whole, or put on it.
    pub extras: Vec<InvoiceExtra>,
    /// The sums.
    pub sums: InvoiceSums,
    /// What is still to be paid, a decimal.
    pub open: String,
    /// What keeps a draft from being issued, a sentence each.
    pub missing: Vec<InvoiceLack>,
    /// Its credit notes.
    pub credits: Vec<InvoiceListed>,
    /// The parts in which it is to be paid; none for all at once.
    pub parts: Vec<DocPart>,
    /// Its reminders, the oldest first.
    pub reminders: Vec<InvoiceReminder>,
    /// Why it has no structured file by EN 16931, or as a draft would have none; empty when it has.
    pub file_lacks: Vec<String>,
}
