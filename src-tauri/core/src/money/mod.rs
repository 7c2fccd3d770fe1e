//! What money comes to: amounts rounded by one rule, split without loss, and the sums of an invoice.
//!
//! Everything here is whole numbers of a currency's smallest unit and exact fractions; no float, and
//! nothing is rounded twice.

mod fraction;
mod invoice;
mod split;

pub use fraction::Fraction;
pub use invoice::{Category, Extra, Line, Paper, Prices, Sums, Tax, TaxRow, TooLarge, sums};
pub use split::split;
