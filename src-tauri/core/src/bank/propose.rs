//! From whom money seems to be and for which invoices: by a number of ours that stands on it, by the
//! name and the amount, by the name. Nothing is proposed where two things fit alike.

use std::collections::{BTreeSet, HashMap, HashSet};

use super::names::{Likeness, likeness, words_of};
use super::store::{self, KnownPayment};
use super::{BankProposal, Booking};
use crate::app::Reading;
use crate::error::Result;
use crate::invoices::{self, DocumentKind, InvoicesOf};
use crate::kinds::ids::{InvoiceId, PayerId};
use crate::kinds::text::{folded, has_words, joined};
use crate::kinds::{Currency, Day};
use crate::payers;

/// How many days apart two payments may be and still be one, entered by hand and read from the bank.
const DAYS_APART: i64 = 7;

/// An issued invoice.
struct Issued {
    id: InvoiceId,
    payer: PayerId,
    number: String,
    currency: Currency,
    due: Option<Day>,
    /// What is open, without what rows before are sure to pay.
    left: i64,
}

/// Who pays.
struct Known {
    id: PayerId,
    name: String,
    words: Vec<String>,
    /// Their own name and those of whom they pay for, folded, where these are of several words.
    spoken: Vec<String>,
}

/// What is known of payers, invoices and payments while the rows of a file are looked at.
pub(super) struct Books {
    payers: Vec<Known>,
    /// Those due first before the others.
    invoices: Vec<Issued>,
    /// Invoices by their number, letters and digits alone.
    numbers: HashMap<Vec<char>, usize>,
    /// How long such numbers are.
    lengths: BTreeSet<usize>,
    payments: Vec<KnownPayment>,
}

/// Letters and digits of a text, and where in the folded text each stands.
fn squashed(folded: &[char]) -> (Vec<char>, Vec<usize>) {
    folded.iter().enumerate().filter(|(_, c)| c.is_alphanumeric()).map(|(at, c)| (*c, at)).unzip()
}

impl Books {
    /// Reads the books for rows of some days, of a file with these references.
    pub(super) fn of(
        db: &Reading<'_>,
        (first, last): (Day, Day),
        here: HashSet<String>,
    ) -> Result<Self> {
        let payers = payers::list(db)?
            .into_iter()
            .map(|payer| {
                let for_them = payer.students.iter().map(|one| folded(&one.name));
                let spoken = std::iter::once(folded(&payer.form.name)).chain(for_them);
                Known {
                    id: payer.id,
                    words: words_of(&payer.form.name),
                    spoken: spoken.filter(|name| name.contains(' ')).collect(),
                    name: payer.form.name,
                }
            })
            .collect();
        let listed = invoices::list(db, InvoicesOf { payer: None, open: false })?.invoices;
        let mut issued: Vec<Issued> = listed
            .into_iter()
            .filter(|one| one.kind == DocumentKind::Invoice && !one.number.is_empty())
            .filter_map(|one| {
                let currency = Currency::parse(&one.currency)?;
                Some(Issued {
                    id: one.id,
                    payer: one.payer,
                    number: one.number,
                    currency,
                    due: one.due,
                    left: currency.minor(&one.open).unwrap_or_default(),
                })
            })
            .collect();
        issued.sort_by(|a, b| (a.due, &a.number).cmp(&(b.due, &b.number)));
        let mut numbers = HashMap::new();
        for (at, one) in issued.iter().enumerate() {
            let signs: Vec<char> = folded(&one.number).chars().collect();
            numbers.insert(squashed(&signs).0, at);
        }
        let mut payments = store::payments(db, first.plus(-DAYS_APART), last.plus(DAYS_APART))?;
        payments.retain(|payment| !here.contains(&payment.reference));
        Ok(Self {
            payers,
            invoices: issued,
            lengths: numbers.keys().map(Vec::len).collect(),
            numbers,
            payments,
        })
    }

    /// What a row seems to be. What it is sure to pay is open no more for the rows after it.
    pub(super) fn propose(&mut self, booking: &Booking) -> BankProposal {
        let (named, remark) = self.by_number(booking);
        let mut proposal =
            named.or_else(|| self.by_name(booking)).unwrap_or_else(|| self.by_amount(booking));
        if !remark.is_empty() {
            proposal.sure = false;
            proposal.why = format!("{remark} {}", proposal.why);
        }
        if let Some(known) = self.entered_by_hand(booking, &proposal) {
            proposal.sure = false;
            proposal.why.push_str(&format!(
                " A payment of the same amount by them is entered on {}: it may be this one.",
                known.words()
            ));
        }
        if proposal.sure {
            self.use_up(booking, &proposal);
        }
        proposal
    }

    /// The invoices whose numbers stand on a row, those due first before the others.
    fn mentioned(&self, booking: &Booking) -> Vec<usize> {
        let text = format!("{} | {} | {}", booking.words, booking.structured, booking.name);
        let text: Vec<char> = folded(&text).chars().collect();
        let (signs, places) = squashed(&text);
        let mut found = BTreeSet::new();
        for long in self.lengths.iter().copied().filter(|long| *long > 0) {
            for (at, window) in signs.windows(long).enumerate() {
                let Some(invoice) = self.numbers.get(window) else { continue };
                let (Some(first), Some(last)) = (places.get(at), places.get(at + long - 1)) else {
                    continue;
                };
                let stretch = text.get(*first..=*last).unwrap_or_default();
                let digit = |at: Option<usize>| {
                    at.and_then(|at| text.get(at)).is_some_and(|c| c.is_ascii_digit())
                };
                // Part of a longer number it is another one, and so is a day.
                let part = window.first().is_some_and(char::is_ascii_digit)
                    && digit(first.checked_sub(1))
                    || window.last().is_some_and(char::is_ascii_digit) && digit(Some(last + 1));
                let far = stretch.contains(&'|');
                if !part && !far && !is_a_day(stretch) {
                    found.insert(*invoice);
                }
            }
        }
        found.into_iter().collect()
    }

    fn open(&self, at: usize, currency: Currency) -> Option<&Issued> {
        self.invoices.get(at).filter(|one| one.currency == currency && one.left > 0)
    }

    fn name(&self, payer: PayerId) -> &str {
        self.payers.iter().find(|known| known.id == payer).map_or("somebody", |known| &known.name)
    }

    /// By a number of ours; and what is to be said although it leads to nothing.
    fn by_number(&self, booking: &Booking) -> (Option<BankProposal>, String) {
        let mentioned = self.mentioned(booking);
        let open: Vec<&Issued> =
            mentioned.iter().filter_map(|at| self.open(*at, booking.currency)).collect();
        let closed: Vec<&str> = mentioned
            .iter()
            .filter(|at| self.open(**at, booking.currency).is_none())
            .filter_map(|at| self.invoices.get(*at))
            .map(|one| one.number.as_str())
            .collect();
        let remark = if closed.is_empty() {
            String::new()
        } else {
            let code = booking.currency.code();
            format!("It names {}, where nothing is open in {code}.", joined(&closed))
        };
        let Some(payer) = open.first().map(|one| one.payer) else { return (None, remark) };
        if let Some(other) = open.iter().find(|one| one.payer != payer) {
            let why = format!(
                "It names invoices of {} and of {}: choose.",
                self.name(payer),
                self.name(other.payer)
            );
            return (Some(BankProposal { why, ..BankProposal::default() }), remark);
        }
        let sum: i64 = open.iter().map(|one| one.left).sum();
        let numbers: Vec<&str> = open.iter().map(|one| one.number.as_str()).collect();
        let numbers = joined(&numbers);
        let words = |minor: i64| booking.currency.words(minor);
        let mut why = match booking.amount - sum {
            0 => format!("It names {numbers}, and the amount is what is open."),
            less if less < 0 => {
                format!("It names {numbers}, of which {} is open: paid in part.", words(sum))
            }
            more => format!("It names {numbers}; {} is more than is open and kept.", words(more)),
        };
        let known = self.payers.iter().find(|known| known.id == payer);
        let like = known
            .is_some_and(|known| likeness(&words_of(&booking.name), &known.words) > Likeness::No);
        if !like {
            why.push_str(&format!(" The name is not that of {}.", self.name(payer)));
        }
        let proposal = BankProposal {
            sure: booking.amount == sum || like,
            payer: Some(payer),
            invoices: open.iter().map(|one| one.id).collect(),
            keep: false,
            why,
        };
        (Some(proposal), remark)
    }

    /// Whose the name may be: all that are equally like.
    fn alike(&self, booking: &Booking) -> (Likeness, Vec<&Known>) {
        let name = words_of(&booking.name);
        let said = folded(&format!("{} | {}", booking.name, booking.words));
        let (mut best, mut found) = (Likeness::No, Vec::new());
        for known in &self.payers {
            let mut how = likeness(&name, &known.words);
            if how == Likeness::No && known.spoken.iter().any(|spoken| has_words(&said, spoken)) {
                how = Likeness::Like;
            }
            if how > best {
                (best, found) = (how, Vec::new());
            }
            if how == best && how > Likeness::No {
                found.push(known);
            }
        }
        (best, found)
    }

    fn by_name(&self, booking: &Booking) -> Option<BankProposal> {
        let (how, alike) = self.alike(booking);
        let known = match alike.as_slice() {
            [] => return None,
            [one] => *one,
            several => {
                let names: Vec<&str> = several.iter().map(|known| known.name.as_str()).collect();
                let why = format!("It may be from {} alike: choose.", joined(&names));
                return Some(BankProposal { why, ..BankProposal::default() });
            }
        };
        let open: Vec<&Issued> = self
            .invoices
            .iter()
            .filter(|one| one.payer == known.id && one.currency == booking.currency && one.left > 0)
            .collect();
        let from = |rest: &str| match how {
            Likeness::Same => format!("From {}{rest}", known.name),
            _ => format!("The name is like that of {}{rest}", known.name),
        };
        let proposal = BankProposal { payer: Some(known.id), ..BankProposal::default() };
        let exact: Vec<&&Issued> = open.iter().filter(|one| one.left == booking.amount).collect();
        let numbers = |those: &[&&Issued]| {
            let numbers: Vec<&str> = those.iter().map(|one| one.number.as_str()).collect();
            joined(&numbers)
        };
        Some(match exact.as_slice() {
            [one] => BankProposal {
                sure: true,
                invoices: vec![one.id],
                why: from(&format!(", and the amount is what is open on {}.", one.number)),
                ..proposal
            },
            [] => {
                let mut sum = 0;
                let first: Vec<&&Issued> = open
                    .iter()
                    .take_while(|one| {
                        let more = sum < booking.amount;
                        sum += if more { one.left } else { 0 };
                        more
                    })
                    .collect();
                if open.is_empty() {
                    let code = booking.currency.code();
                    let why =
                        from(&format!(", of whom nothing is open in {code}: kept for later."));
                    BankProposal { keep: true, why, ..proposal }
                } else if sum == booking.amount {
                    let why = from(&format!(", and the amount is that of {}.", numbers(&first)));
                    let invoices = first.iter().map(|one| one.id).collect();
                    BankProposal { sure: how == Likeness::Same, invoices, why, ..proposal }
                } else {
                    let why =
                        from(", but no invoice comes to this amount: used for what is due first.");
                    BankProposal { why, ..proposal }
                }
            }
            several => {
                let why = from(&format!(
                    "; {} is open on {} alike: choose.",
                    booking.currency.words(booking.amount),
                    numbers(several)
                ));
                BankProposal { why, ..proposal }
            }
        })
    }

    fn by_amount(&self, booking: &Booking) -> BankProposal {
        let fits = |one: &&Issued| one.currency == booking.currency && one.left == booking.amount;
        let those: Vec<&Issued> = self.invoices.iter().filter(fits).collect();
        match those.as_slice() {
            [] => BankProposal {
                why: "Neither the name nor the amount is known: choose who paid.".to_owned(),
                ..BankProposal::default()
            },
            [one] => BankProposal {
                payer: Some(one.payer),
                invoices: vec![one.id],
                why: format!(
                    "Only the amount fits: it is open on {} of {}.",
                    one.number,
                    self.name(one.payer)
                ),
                ..BankProposal::default()
            },
            several => {
                let numbers: Vec<&str> =
                    several.iter().take(4).map(|one| one.number.as_str()).collect();
                let and_others = if several.len() > 4 { " and others" } else { "" };
                BankProposal {
                    why: format!(
                        "Only the amount fits, and it is open on {}{and_others} alike: choose.",
                        if and_others.is_empty() { joined(&numbers) } else { numbers.join(", ") }
                    ),
                    ..BankProposal::default()
                }
            }
        }
    }

    /// The day of a payment that may be this row and was entered in another way.
    fn entered_by_hand(&self, booking: &Booking, proposal: &BankProposal) -> Option<Day> {
        let payer = proposal.payer?;
        self.payments
            .iter()
            .find(|known| {
                known.payer == payer
                    && known.amount == booking.amount
                    && known.currency == booking.currency.code()
                    && known.day.since(booking.day).abs() <= DAYS_APART
            })
            .map(|known| known.day)
    }

    fn use_up(&mut self, booking: &Booking, proposal: &BankProposal) {
        let mut rest = booking.amount;
        for one in &mut self.invoices {
            let meant = if proposal.invoices.is_empty() {
                Some(one.payer) == proposal.payer && one.currency == booking.currency
            } else {
                proposal.invoices.contains(&one.id)
            };
            if meant && !proposal.keep && one.left > 0 {
                let part = one.left.min(rest);
                one.left -= part;
                rest -= part;
            }
        }
    }
}

/// Whether signs are a day, year first: "2026-03-12" is no invoice 2026-0312.
fn is_a_day(signs: &[char]) -> bool {
    let text: String = signs.iter().map(|c| if c.is_alphanumeric() { *c } else { '-' }).collect();
    Day::parse(&text).is_some()
}
