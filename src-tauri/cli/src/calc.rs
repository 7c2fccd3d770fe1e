//! `carryover-cli calc [--lines] [--budget SECONDS] NAME`: one calculation, from standard input to
//! standard output.

use std::io::{self, BufRead, Read, Write};
use std::process::ExitCode;
use std::time::{Duration, Instant};

use carryover_core::calc::{CalcRefusal, NAMES, calc, plan_while};
use serde_json::{Value, json};

/// The exit codes of the command line.
const REFUSED: u8 = 2;
const NOT_FOUND: u8 = 3;
const FAULT: u8 = 70;

/// Runs one calculation, or one a line; with a budget, each plan is sought for so many seconds.
pub fn run(lines: bool, budget: Option<f64>, name: &str) -> ExitCode {
    let budget = budget.and_then(|seconds| Duration::try_from_secs_f64(seconds).ok());
    let ran = if !NAMES.contains(&name) {
        // Asked before any input is read, so that --lines answers once.
        say(calc(name, Value::Null))
    } else if lines {
        each_line(name, budget)
    } else {
        once(name, budget)
    };
    ran.unwrap_or_else(|error| {
        eprintln!("{error}");
        ExitCode::from(FAULT)
    })
}

fn once(name: &str, budget: Option<Duration>) -> anyhow::Result<ExitCode> {
    let mut input = Vec::new();
    io::stdin().read_to_end(&mut input)?;
    say(one(name, budget, &input))
}

/// Answers every line in its place; a refused line is an answer too.
fn each_line(name: &str, budget: Option<Duration>) -> anyhow::Result<ExitCode> {
    let mut input = io::stdin().lock();
    let mut output = io::BufWriter::new(io::stdout().lock());
    let mut line = Vec::new();
    while input.read_until(b'\n', &mut line)? > 0 {
        let answer = one(name, budget, &line).unwrap_or_else(|refusal| json!({ "error": refusal }));
        writeln!(output, "{answer}")?;
        line.clear();
    }
    output.flush()?;
    Ok(ExitCode::SUCCESS)
}

fn one(name: &str, budget: Option<Duration>, input: &[u8]) -> Result<Value, CalcRefusal> {
    let input = serde_json::from_slice(input).map_err(|error| CalcRefusal {
        code: "refused",
        words: format!("the input is not one JSON value: {error}"),
        problems: Vec::new(),
    })?;
    match budget {
        Some(budget) if name == "plan" => {
            let begun = Instant::now();
            plan_while(input, &|| begun.elapsed() < budget)
        }
        _ => calc(name, input),
    }
}

fn say(answer: Result<Value, CalcRefusal>) -> anyhow::Result<ExitCode> {
    let (value, code) = match answer {
        Ok(value) => (value, 0),
        Err(refusal) => {
            eprintln!("{}", refusal.words);
            let code = match refusal.code {
                "not_found" => NOT_FOUND,
                "fault" => FAULT,
                _ => REFUSED,
            };
            (json!({ "error": refusal }), code)
        }
    };
    writeln!(io::stdout(), "{value}")?;
    Ok(ExitCode::from(code))
}
