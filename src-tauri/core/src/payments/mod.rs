//! Payments: money that came in, over one invoice or several, or before there is one; money that went
//! back; what was given up. Each is an entry in the ledger; a slip is taken back by another.

mod account;
mod act;
mod papers;
mod receive;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use account::{AccountLine, AccountStands, PayerAccount, account};
pub use act::{Apply, PayBack, TakeBack, WriteOff, apply, pay_back, take_back, write_off};
pub use papers::{StatementOf, WhichPayment, receipt, statement};
pub use receive::{ForInvoice, Receive, Received, receive};

use crate::ledger::LedgerAccount;

/// How money was paid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PaidBy {
    /// Into the bank.
    Transfer,
    /// In cash.
    Cash,
    /// By card, on another device.
    Card,
    /// By cheque.
    Cheque,
}

impl PaidBy {
    /// Where the money lies then.
    pub fn account(self) -> LedgerAccount {
        match self {
            Self::Transfer => LedgerAccount::Bank,
            Self::Cash => LedgerAccount::Cash,
            Self::Card => LedgerAccount::Card,
            Self::Cheque => LedgerAccount::Cheque,
        }
    }

    /// As said in a list.
    pub fn words(self) -> &'static str {
        match self {
            Self::Transfer => "by transfer",
            Self::Cash => "in cash",
            Self::Card => "by card",
            Self::Cheque => "by cheque",
        }
    }
}
