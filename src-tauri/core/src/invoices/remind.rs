//! Reminders: letters about an invoice that is overdue. Each is kept as it was written. Interest is told
//! of only where the coach has set a rate; what may be asked, the law where the coach works says.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::list::frozen;
use super::print::{addressee, letterhead};
use super::store::{self, KeptReminder};
use super::{Document, DocumentKind, Invoice, WhichInvoice, draft::currency_of, parts, show};
use crate::app::{Reading, Writing};
use crate::db::digest;
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{InvoiceId, ReminderId};
use crate::kinds::{Currency, Day, Instant, Language, Span};
use crate::money::Fraction;
use crate::print::{Paper, Piece, Sheet, file_words, page_words, written};
use crate::terms;

/// A reminder to write.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Remind {
    /// About which invoice.
    pub invoice: InvoiceId,
    /// The new last day to pay, as YYYY-MM-DD; empty: the days to pay of the terms from today.
    #[serde(default)]
    pub due: String,
    /// Words of the coach\u{2019}s own; empty for none.
    #[serde(default)]
    pub words: String,
    /// Whether the interest that the terms set is told of.
    #[serde(default)]
    pub with_interest: bool,
}

/// Which reminder.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhichReminder {
    /// Which one.
    pub reminder: ReminderId,
}

/// A reminder as it was written.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct InvoiceReminder {
    /// Which one.
    pub id: ReminderId,
    /// The first, the second and so on.
    pub place: i64,
    /// The day.
    pub day: Day,
    /// The new last day to pay.
    pub due: Day,
    /// What was open, a decimal.
    pub open: String,
    /// The interest it told of, a decimal; 0 for none.
    pub interest: String,
}

/// What a reminder written today would say.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WouldRemind {
    /// How many days late it is.
    pub late: i64,
    /// The new last day to pay.
    pub due: Day,
    /// The interest until today, a decimal; empty where the terms set none.
    pub interest: String,
    /// How it is worked out; empty without interest.
    pub worked: String,
}

/// What a reminder written today would say.
///
/// # Errors
/// `NotFound`; `NotPossible` when the invoice is not overdue.
pub fn would_remind(db: &Reading<'_>, which: WhichInvoice) -> Result<WouldRemind> {
    let (Overdue { open, late, .. }, currency) = overdue(db, which)?;
    let terms = terms::show(db)?;
    let interest = interest(open, &terms.interest, late).filter(|_| !terms.interest.is_empty());
    let worked = match interest {
        Some(_) => format!(
            "{} at {} % a year for {late} of 365 days.",
            currency.words(open),
            terms.interest
        ),
        None => String::new(),
    };
    Ok(WouldRemind {
        late,
        due: db.today().plus(terms.due_days.max(1)),
        interest: interest.map(|minor| currency.plain(minor)).unwrap_or_default(),
        worked,
    })
}

/// Writes a reminder and keeps it.
///
/// # Errors
/// `NotFound`; `Refused` with every field that is wrong; `NotPossible` when the invoice is not overdue.
pub fn remind(db: &Writing<'_>, given: Remind) -> Result<Invoice> {
    let which = WhichInvoice { invoice: given.invoice };
    let (Overdue { document, due: was_due, open, late }, currency) = overdue(db, which)?;
    let terms = terms::show(db)?;
    let mut p = Problems::new();
    let due = p
        .day_or_none("due", Some(&given.due), "The last day to pay")
        .unwrap_or(db.today().plus(terms.due_days.max(1)));
    if due < db.today() {
        p.add("due", "before", "The last day to pay has passed.");
    }
    let words = p.note("words", &given.words, "The words");
    if words.chars().count() > 1000 {
        p.add("words", "too_long", "There is room for 1000 characters.");
    }
    if given.with_interest && terms.interest.is_empty() {
        let words = "No rate of interest is set under Invoices and terms.";
        p.add("with_interest", "not_set", words);
    }
    p.done()?;
    let interest = match given.with_interest {
        true => interest(open, &terms.interest, late).unwrap_or_default(),
        false => 0,
    };
    let place = i64::try_from(store::reminders(db, given.invoice)?.len()).unwrap_or(i64::MAX) + 1;
    let said =
        Said { place, was_due, due, open, interest, rate: &terms.interest, late, words: &words };
    let sheet = sheet(&document, &said, currency, db.today(), db.now());
    let (pdf, _) = written(&sheet)?;
    let kept = KeptReminder { place, day: db.today(), due, open, interest };
    store::insert_reminder(db, given.invoice, &kept, &pdf, &digest::sha256(&pdf))?;
    db.label(format!("Reminder of {} written: {}", document.number, document.buyer.name));
    show(db, which)
}

/// A reminder\u{2019}s file name and bytes, as it was written.
///
/// # Errors
/// `NotFound`; `Fault` when the stored bytes are not those that were written.
pub fn reminder_file(db: &Reading<'_>, which: WhichReminder) -> Result<(String, Vec<u8>)> {
    let (invoice, place, pdf, sha256) = store::reminder(db, which.reminder)?;
    let head = store::head(db, invoice)?;
    let number = head.number.unwrap_or_default();
    if digest::sha256(&pdf) != sha256 {
        return Err(Error::Fault(format!("the reminder of {number} is not what was written")));
    }
    Ok((format!("{} reminder {place}.pdf", file_words(&number)), pdf))
}

/// The invoice that a reminder is about.
///
/// # Errors
/// `NotFound`.
pub fn of_reminder(db: &Reading<'_>, which: WhichReminder) -> Result<InvoiceId> {
    store::reminder(db, which.reminder).map(|(invoice, ..)| invoice)
}

/// How many reminders of an invoice were written.
///
/// # Errors
/// `Storage`.
pub fn reminded(db: &Reading<'_>, which: WhichInvoice) -> Result<usize> {
    store::reminded(db, which.invoice)
}

/// The reminders of an invoice, the oldest first.
pub(super) fn reminders(
    db: &Reading<'_>,
    invoice: InvoiceId,
    currency: Currency,
) -> Result<Vec<InvoiceReminder>> {
    let kept = store::reminders(db, invoice)?;
    let shown = |(id, kept): (ReminderId, KeptReminder)| InvoiceReminder {
        id,
        place: kept.place,
        day: kept.day,
        due: kept.due,
        open: currency.plain(kept.open),
        interest: currency.plain(kept.interest),
    };
    Ok(kept.into_iter().map(shown).collect())
}

/// The interest on what is open, at a rate in percent a year, for so many days: simple, a day as one of
/// 365 (common practice, no source). What was paid late before bears none here.
fn interest(open: i64, rate: &str, days: i64) -> Option<i64> {
    let rate = Fraction::decimal(rate.parse().ok()?)?;
    let part = Fraction::whole(days).by(Fraction::whole(36_500))?;
    Fraction::whole(open).times(rate)?.times(part)?.rounded()
}

/// What of an invoice is overdue, and since when.
struct Overdue {
    document: Document,
    due: Day,
    open: i64,
    late: i64,
}

fn overdue(db: &Reading<'_>, which: WhichInvoice) -> Result<(Overdue, Currency)> {
    let head = store::head(db, which.invoice)?;
    let not = || Error::not_possible("not_overdue", "Nothing of this invoice is overdue.");
    let document = frozen(&head)?.filter(|d| d.kind == DocumentKind::Invoice).ok_or_else(not)?;
    let (due, overdue) = parts::due_of(db, &head)?;
    let late = due.map(|due| db.today().since(due)).unwrap_or_default();
    if overdue <= 0 || late <= 0 {
        return Err(not());
    }
    Ok((
        Overdue { document, due: due.unwrap_or(db.today()), open: overdue, late },
        currency_of(&head)?,
    ))
}

struct Said<'a> {
    place: i64,
    was_due: Day,
    due: Day,
    open: i64,
    interest: i64,
    rate: &'a str,
    late: i64,
    words: &'a str,
}

fn sheet(d: &Document, said: &Said<'_>, currency: Currency, today: Day, now: Instant) -> Sheet {
    let day = |day: Day| d.language.span(Span { first: day, last: day });
    let (open, interest) = (currency.words(said.open), currency.words(said.interest));
    let all = currency.words(said.open + said.interest);
    let en = d.language == Language::En;
    let title = match (en, said.place) {
        (true, 1) => format!("Reminder: invoice {}", d.number),
        (true, place) => format!("Reminder {place}: invoice {}", d.number),
        (false, 1) => format!("Zahlungserinnerung: Rechnung {}", d.number),
        (false, place) => format!("{place}. Zahlungserinnerung: Rechnung {}", d.number),
    };
    let mut pieces = vec![
        Piece::Lines(addressee(&d.buyer)),
        Piece::Title(title.clone()),
        Piece::Lines(vec![format!("{}: {}", if en { "Date" } else { "Datum" }, day(today))]),
    ];
    pieces.push(Piece::Text(if en {
        format!(
            "Of invoice {} of {}, which was to be paid by {}, {open} is still open.",
            d.number,
            day(d.day),
            day(said.was_due)
        )
    } else {
        format!(
            "Von der Rechnung {} vom {}, zahlbar bis {}, sind noch {open} offen.",
            d.number,
            day(d.day),
            day(said.was_due)
        )
    }));
    if said.interest > 0 {
        pieces.push(Piece::Text(if en {
            format!(
                "Interest at {} % a year for {} days comes to {interest}: {all} in all.",
                said.rate, said.late
            )
        } else {
            format!(
                "Zinsen von {} % im Jahr für {} Tage betragen {interest}: zusammen {all}.",
                said.rate, said.late
            )
        }));
    }
    pieces.push(Piece::Text(if en {
        format!("Please pay by {}.", day(said.due))
    } else {
        format!("Bitte zahlen Sie bis {}.", day(said.due))
    }));
    pieces.extend(said.words.lines().map(|line| Piece::Text(line.to_owned())));
    let account: Vec<&str> = [&d.seller.account_name, &d.seller.account, &d.seller.bank]
        .into_iter()
        .map(String::as_str)
        .filter(|part| !part.is_empty())
        .collect();
    if !d.seller.account.is_empty() {
        let label = if en { "Account" } else { "Konto" };
        pieces.push(Piece::Text(format!("{label}: {}", account.join(", "))));
    }
    pieces.push(Piece::Note(
        if en {
            "If you have paid in the meantime, this letter needs no answer."
        } else {
            "Falls Sie inzwischen gezahlt haben, ist dieser Brief gegenstandslos."
        }
        .to_owned(),
    ));
    Sheet {
        title: title.clone(),
        language: d.language.code().to_owned(),
        author: d.seller.name.clone(),
        issued: now.utc(),
        paper: Paper::A4,
        letterhead: letterhead(&d.seller),
        pieces,
        footer: title,
        page_words: page_words(d.language).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 1,000.00 at 8 % for 73 of 365 days is 16.00; half a cent goes up.
    #[test]
    fn interest_is_simple() {
        assert_eq!(interest(100_000, "8", 73), Some(1_600));
        assert_eq!(interest(100_000, "8.12", 365), Some(8_120));
        assert_eq!(interest(3_650, "5", 1), Some(1));
        assert_eq!(interest(3_649, "5", 1), Some(0));
        assert_eq!(interest(100, "", 10), None);
    }
}
