//! What money comes to: amounts rounded by one rule, split without loss, the sums of an
//! invoice, and what a prepaid package still owes.
//!
//! Everything here is whole numbers of a currency's smallest unit and exact fractions; no float, and
//! nothing is rounded twice.

mod fraction;
mod invoice;
mod package;
mod split;
pub mod typed;

pub use fraction::Fraction;
pub use invoice::{
    Category, Extra, Line, Paper, Prices, Sums, Tax, TaxRow, TooLarge, sums, without_tax,
};
pub use package::{Owed, at_single_price, earned_with_breakage, pro_rata};
pub use split::split;
