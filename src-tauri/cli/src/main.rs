//! `carryover-cli`: the program's commands without a window.

mod calc;

use std::process::ExitCode;

fn main() -> anyhow::Result<ExitCode> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match arguments.split_first() {
        Some((verb, rest)) if verb == "calc" => calc::run(rest),
        _ => {
            eprintln!("carryover-cli calc [--lines] NAME");
            Ok(ExitCode::from(2))
        }
    }
}
