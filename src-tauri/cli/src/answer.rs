//! How the command line answers: the value on standard output, an exit code by the kind of failure.

use std::io::Write;
use std::process::ExitCode;

use carryover_core::error::{Code, Error};
use serde_json::{Value, json};

/// What a verb came to.
pub struct Answered {
    /// The JSON value to print.
    pub value: Value,
    /// Whether it is good news; a check that finds damage is not.
    pub fine: bool,
}

/// Done, with this value.
pub fn done(value: Value) -> Answered {
    Answered { value, fine: true }
}

/// Prints the answer and gives the exit code of contract and manual.
pub fn give(answer: Result<Answered, Error>) -> ExitCode {
    let (value, code) = match answer {
        Ok(answered) => (answered.value, if answered.fine { 0 } else { 5 }),
        Err(error) => {
            eprintln!("{error}");
            (json!({ "error": error.failure() }), exit_code(error.code()))
        }
    };
    let mut out = std::io::stdout().lock();
    if writeln!(out, "{value}").and_then(|()| out.flush()).is_err() {
        return ExitCode::from(70);
    }
    ExitCode::from(code)
}

fn exit_code(code: Code) -> u8 {
    match code {
        Code::Refused => 2,
        Code::NotFound | Code::NoFile => 3,
        Code::Locked | Code::InUse => 4,
        Code::NotPossible | Code::NewerFile | Code::NotACoachFile | Code::Storage => 5,
        Code::Fault => 70,
    }
}
