//! An invoice as it is printed: everything that stands on it, frozen when it is issued. The paper and
//! the structured file are drawn from the same.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{DocumentKind, Seller};
use crate::kinds::{Day, Language};
use crate::money::{Category, Prices};
use crate::payers::PayerForm;
use crate::prices::What;

/// The buyer, as printed.
pub type Party = PayerForm;

/// A line, as printed. Amounts are decimals in the document's currency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct DocLine {
    /// What it is for.
    pub what: What,
    /// In words.
    pub words: String,
    /// The day of supply.
    pub day: Option<Day>,
    /// How many.
    pub quantity: String,
    /// What one costs.
    pub price: String,
    /// What is taken off.
    pub allowance: String,
    /// Why.
    pub reason: String,
    /// The category of tax.
    pub category: Category,
    /// The rate in percent.
    pub rate: String,
    /// Why no tax is charged.
    pub why: String,
    /// What it comes to.
    pub total: String,
}

/// What is taken off the whole or put on it, as printed. Amounts are decimals in the document's currency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct DocExtra {
    /// Whether it is taken off; otherwise it is put on.
    pub takes_off: bool,
    /// Why.
    pub words: String,
    /// How much.
    pub amount: String,
    /// The category of tax.
    pub category: Category,
    /// The rate in percent.
    pub rate: String,
    /// Why no tax is charged.
    pub why: String,
}

/// Tax of one category and rate. Amounts are decimals in the document's currency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct DocTax {
    /// The category.
    pub category: Category,
    /// The rate in percent.
    pub rate: String,
    /// Why no tax is charged.
    pub why: String,
    /// What is taxed, without the tax.
    pub base: String,
    /// The tax.
    pub amount: String,
}

/// A part in which an invoice is to be paid, as printed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct DocPart {
    /// The last day to pay it.
    pub day: Day,
    /// How much, a decimal in the document's currency.
    pub amount: String,
}

/// A whole invoice or credit note. Amounts are decimals in its currency.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Document {
    /// What kind of document.
    pub kind: DocumentKind,
    /// Its number.
    pub number: String,
    /// The day of issue.
    pub day: Day,
    /// The last day to pay.
    pub due: Day,
    /// The invoice that a credit note corrects: number and day.
    pub corrects: Option<(String, Day)>,
    /// The currency.
    pub currency: String,
    /// Whether the lines are without or with tax.
    pub prices: Prices,
    /// The language.
    pub language: Language,
    /// Who issues it.
    pub seller: Seller,
    /// Who pays.
    pub buyer: Party,
    /// A remark above the lines.
    pub words: String,
    /// The lines.
    pub lines: Vec<DocLine>,
    /// The sum of the lines.
    pub lines_total: String,
    /// What is taken off the whole, or put on it.
    #[serde(default)]
    pub extras: Vec<DocExtra>,
    /// Without tax.
    pub net: String,
    /// Tax, by category and rate.
    pub taxes: Vec<DocTax>,
    /// All tax.
    pub tax: String,
    /// With tax.
    pub gross: String,
    /// What was paid before.
    pub paid: String,
    /// What the cash step adds or takes off.
    pub rounding: String,
    /// What is due.
    pub payable: String,
    /// The parts in which that is to be paid; none for all at once.
    #[serde(default)]
    pub parts: Vec<DocPart>,
}
