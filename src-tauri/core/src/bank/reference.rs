//! Under which reference a row of a bank statement is entered: the same for the same row in whatever
//! file it comes, so that it is never entered twice.

use std::collections::HashMap;

use super::{Booking, Way};
use crate::db::digest::sha256;

/// What every reference of a row begins with.
pub(super) const BEGINS: &str = "bank-";

/// A reference for each row, in the same order. Where the bank gives none of its own, it is made of what
/// the row says; rows that say the same are told apart by counting them.
pub(super) fn references(bookings: &[Booking]) -> Vec<String> {
    let mut seen: HashMap<String, u32> = HashMap::new();
    bookings
        .iter()
        .map(|booking| {
            let way = match booking.way {
                Way::In => "in",
                Way::Out => "out",
                Way::Back => "back",
            };
            let mut said = vec![
                way.to_owned(),
                booking.account.clone(),
                booking.day.to_string(),
                booking.currency.code().to_owned(),
                booking.amount.to_string(),
                booking.bank_reference.clone(),
            ];
            if booking.bank_reference.is_empty() {
                said.extend([booking.name.clone(), booking.words.clone()]);
            }
            let said = said.join("\u{1f}");
            let many = seen.entry(said.clone()).or_default();
            *many += 1;
            let digest = sha256(format!("{said}\u{1f}{many}").as_bytes());
            format!("{BEGINS}{}", digest.get(..32).unwrap_or(&digest))
        })
        .collect()
}

/// Whether a row is entered, and under which reference it is or would be. What was taken back can be
/// entered again, under the next.
pub(super) fn stands(reference: &str, entered: &HashMap<String, bool>) -> (bool, String) {
    let (mut now, mut again) = (reference.to_owned(), 2);
    while let Some(taken_back) = entered.get(&now) {
        if !taken_back {
            return (true, now);
        }
        now = format!("{reference}-{again}");
        again += 1;
    }
    (false, now)
}
