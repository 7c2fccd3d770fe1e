//! `carryover-cli`: the same commands as the window, from a shell. Standard output is one JSON value
//! and a newline; words for people go to standard error.
//!
//! Exit codes: 0 done, 2 input refused, 3 not found, 4 coach file locked or in use, 5 not possible
//! now, 70 a fault in the program.

mod answer;
mod calc;
mod files;
mod papers;
mod verbs;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

/// Carryover from a shell: one JSON value out, words for people on standard error.
#[derive(Parser)]
#[command(name = "carryover-cli", version)]
struct Line {
    /// The coach file.
    #[arg(long, global = true)]
    file: Option<PathBuf>,
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Subcommand)]
enum Verb {
    /// Runs a command: its input as JSON on standard input, its value and changes out.
    Call {
        /// The command, as in students.add.
        name: String,
    },
    /// Lists every command with the JSON Schemas of its input and output.
    Commands {
        /// Those of the window's desk as well, which the page's types are made from.
        #[arg(long)]
        window: bool,
    },
    /// One calculation: JSON in, JSON out, no file and no clock.
    Calc {
        /// One JSON value a line in, one a line out, in the same order.
        #[arg(long)]
        lines: bool,
        /// For plan: after so many seconds the best plan found so far is given.
        #[arg(long)]
        budget: Option<f64>,
        /// Which: wilson, change, criterion, load, score, clock or plan.
        name: String,
    },
    /// Makes the sample season in a new file.
    Sample {
        /// The file to make.
        path: PathBuf,
        /// Years of history.
        #[arg(long, default_value_t = 2)]
        years: u32,
        /// Students in all.
        #[arg(long, default_value_t = 15)]
        students: u32,
        /// The same seed gives the same season.
        #[arg(long, default_value_t = 1)]
        seed: u64,
        /// The day the season leads up to.
        #[arg(long, default_value = "2026-03-12")]
        today: String,
    },
    /// Checks the whole file.
    Check,
    /// Makes a verified copy.
    Backup {
        /// Where; must not exist.
        to: PathBuf,
    },
    /// Writes a paper about money to a file: which one as JSON, as in {"kind":"year","year":2026}
    Paper {
        /// Which paper: an invoice, its structured file, a reminder, a receipt, a statement or a year.
        which: String,
        /// The document to write; must not exist.
        to: PathBuf,
    },
    /// Writes an issued letter's document to a file, byte for byte as it was issued.
    Letter {
        /// The visit: its newest issued letter.
        #[arg(long, conflicts_with = "letter", required_unless_present = "letter")]
        visit: Option<String>,
        /// One issued letter.
        #[arg(long)]
        letter: Option<String>,
        /// Issues the visit's letter first, as it stands.
        #[arg(long, requires = "visit")]
        issue: bool,
        /// The document to write; must not exist.
        to: PathBuf,
    },
    /// Writes the invitations of a visit that are due, each into a file of its own.
    Invitations {
        /// The visit.
        #[arg(long)]
        visit: String,
        /// The folder; made where it is not there.
        folder: PathBuf,
    },
    /// Writes a calendar file of lessons.
    Calendar {
        /// Of one student; left out for everyone's.
        #[arg(long)]
        student: Option<String>,
        /// The file to write; must not exist.
        to: PathBuf,
    },
    /// Takes a season from a CSV file, and says what was taken and what not and why.
    Import {
        /// The CSV file.
        from: PathBuf,
        /// Which column is what, as JSON such as {"student":0,"arrive":1,"goal":2,"result":3}; left
        /// out, what the words above the columns say.
        #[arg(long)]
        columns: Option<String>,
        /// How to read dates that could be read two ways: day_month_year or month_day_year.
        #[arg(long)]
        dates: Option<String>,
        /// The facility of visits whose place the file does not name; needed when there are several.
        #[arg(long)]
        facility: Option<String>,
        /// Names that are one person's, as JSON such as {"Anna Silva":"Ana Silva"}.
        #[arg(long)]
        same: Option<String>,
        /// Only looks, and says what would be taken.
        #[arg(long)]
        look: bool,
    },
    /// Puts a verified backup in the file's place; what was there is kept beside it.
    Restore {
        /// The backup.
        from: PathBuf,
    },
}

fn main() -> ExitCode {
    let line = Line::parse();
    let done = match line.verb {
        Verb::Calc { lines, budget, name } => return calc::run(lines, budget, &name),
        Verb::Call { name } => verbs::call(line.file, &name),
        Verb::Commands { window } => verbs::commands(window),
        Verb::Sample { path, years, students, seed, today } => {
            verbs::sample(&path, years, students, seed, &today)
        }
        Verb::Check => files::check(line.file),
        Verb::Backup { to } => files::backup(line.file, &to),
        Verb::Paper { which, to } => papers::money(line.file, &which, &to),
        Verb::Letter { visit, letter, issue, to } => {
            papers::letter(line.file, visit, letter, issue, &to)
        }
        Verb::Invitations { visit, folder } => papers::invitations(line.file, visit, &folder),
        Verb::Calendar { student, to } => papers::calendar(line.file, student, &to),
        Verb::Import { from, columns, dates, facility, same, look } => papers::import(
            line.file,
            &from,
            &papers::Season { columns, dates, facility, same, look },
        ),
        Verb::Restore { from } => files::restore(line.file, &from),
    };
    answer::give(done)
}
