//! Where the money stands today.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::store;
use crate::app::Reading;
use crate::error::Result;
use crate::invoices::{self, InvoiceListed, InvoiceState, InvoicesOf};
use crate::kinds::Currency;
use crate::ledger::LedgerAccount;
use crate::packages::{self, ListPackages, Package};

/// What stands in one currency, as decimals.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Stands {
    /// The currency.
    pub currency: String,
    /// Open on invoices.
    pub open: String,
    /// Paid and kept for later.
    pub kept: String,
    /// To be paid back.
    pub to_pay_back: String,
    /// Owed in lessons, without tax.
    pub deferred: String,
}

/// Where the money stands.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Overview {
    /// By currency.
    pub stands: Vec<Stands>,
    /// Lessons that are over and not settled.
    pub to_settle: usize,
    /// Lessons that are otherwise now than when they were settled.
    pub changed: usize,
    /// Drafts.
    pub drafts: Vec<InvoiceListed>,
    /// Invoices of which something is open, the longest due first.
    pub open: Vec<InvoiceListed>,
    /// Of these, overdue.
    pub overdue: usize,
    /// Packages with lessons left, those that run out first on top.
    pub packages: Vec<Package>,
}

/// Where the money stands today.
///
/// # Errors
/// `Storage`.
pub fn overview(db: &Reading<'_>) -> Result<Overview> {
    let mut stands: Vec<(Currency, [i64; 4])> = Vec::new();
    for (account, code, amount) in store::standing(db, db.today())? {
        let Some(currency) = Currency::parse(&code) else { continue };
        let (at, sign) = match account {
            LedgerAccount::Receivable => (0, 1),
            LedgerAccount::Credit => (1, -1),
            LedgerAccount::ToPayBack => (2, -1),
            _ => (3, -1),
        };
        if !stands.iter().any(|(known, _)| *known == currency) {
            stands.push((currency, [0; 4]));
        }
        let sums = stands.iter_mut().find(|(known, _)| *known == currency);
        if let Some(sum) = sums.and_then(|(_, sums)| sums.get_mut(at)) {
            *sum += sign * amount;
        }
    }
    let open = invoices::list(db, InvoicesOf { payer: None, open: true })?.invoices;
    let mut packages = packages::list(db, ListPackages::default())?;
    packages.retain(|package| package.left > 0);
    Ok(Overview {
        stands: stands
            .into_iter()
            .map(|(currency, [open, kept, back, deferred])| Stands {
                currency: currency.code().to_owned(),
                open: currency.plain(open),
                kept: currency.plain(kept),
                to_pay_back: currency.plain(back),
                deferred: currency.plain(deferred),
            })
            .collect(),
        to_settle: store::many_unsettled(db)?,
        changed: store::many_changed(db)?,
        drafts: invoices::drafts(db)?,
        overdue: open.iter().filter(|i| i.state == InvoiceState::Overdue).count(),
        open,
        packages,
    })
}
