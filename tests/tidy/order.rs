//! The order of knowledge in the core: a module may use those before it, never those after it; and
//! the core knows no window, no network and no async runtime.

use std::process::Command;

use crate::{files_below, read, root};

/// Modules that may use each other stand in one line; each line may use the lines before it.
const ORDER: &[&[&str]] = &[
    &["kinds", "error"],
    &["db", "app"],
    &["input", "settings"],
    &["print", "sports", "load", "money"],
    &["ical"],
    &["students", "facilities"],
    &["own_time", "intake", "prices"],
    &["goals"],
    &["visits", "lessons", "games"],
    &["ready"],
    &["observations", "assessments"],
    &["home", "planner"],
    &["planning", "bookings", "offers"],
    &["timetable"],
    &["costs", "payers", "terms"],
    &["ledger"],
    &["packages"],
    &["invoices"],
    &["payments"],
    &["accounts"],
    &["trips"],
    &["letters", "calendar", "keeping"],
    &["outtray"],
    &["reports", "exchange", "calc"],
    &["bank"],
    &["erasing"],
    &["commands"],
    &["desk"],
];

const CORE: &str = "src-tauri/core/src/";

fn place(module: &str) -> Option<usize> {
    ORDER.iter().position(|line| line.contains(&module))
}

/// The top-level modules that a text names as `crate::x` or in `crate::{x, y::z}`.
fn named_in(text: &str) -> Vec<String> {
    let mut named = Vec::new();
    for (at, _) in text.match_indices("crate::") {
        if text[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_') {
            continue;
        }
        let rest = &text[at + "crate::".len()..];
        if let Some(group) = rest.strip_prefix('{') {
            named.extend(heads_of(group));
        } else {
            named.extend(word(rest));
        }
    }
    named
}

/// The first word of each entry of a group, up to the brace that closes it.
fn heads_of(group: &str) -> Vec<String> {
    let (mut heads, mut depth, mut begin) = (Vec::new(), 0, true);
    for (at, c) in group.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => begin = true,
            c if begin && !c.is_whitespace() => {
                heads.extend(word(&group[at..]));
                begin = false;
            }
            _ => {}
        }
    }
    heads
}

fn word(text: &str) -> Option<String> {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(text.len());
    (end > 0).then(|| text[..end].to_owned())
}

/// The part of a source file that is in the program: not its tests, which may build a whole world,
/// and not its comments.
fn program_part(text: &str) -> String {
    let text = text.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
    let lines = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    lines.collect::<Vec<_>>().join("\n")
}

fn is_tests(path: &str) -> bool {
    path.ends_with("tests.rs") || path.contains("/tests/")
}

#[test]
fn every_module_of_the_core_has_its_place() {
    let lib = read(&format!("{CORE}lib.rs"));
    let modules: Vec<&str> =
        lib.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    assert!(modules.len() > 10, "lib.rs lists its modules as `pub mod x;`");
    for module in modules {
        assert!(place(module).is_some(), "{module} has no place in the order of knowledge");
    }
}

#[test]
fn no_module_uses_one_that_comes_after_it() {
    let mut wrong = Vec::new();
    let mut looked_at = 0;
    for path in files_below(CORE).iter().filter(|path| path.ends_with(".rs") && !is_tests(path)) {
        let module = path[CORE.len()..].split(['/', '.']).next().unwrap();
        let Some(here) = place(module) else { continue };
        for used in named_in(&program_part(&read(path))) {
            looked_at += 1;
            if place(&used).is_some_and(|there| there > here) {
                wrong.push(format!("{path} uses {used}"));
            }
        }
    }
    assert!(looked_at > 100, "the uses were found at all: {looked_at}");
    assert!(wrong.is_empty(), "against the order of knowledge:\n{}", wrong.join("\n"));
}

#[test]
fn uses_are_read_in_every_form() {
    let text = "use crate::db::open;\nuse crate::{goals::{self, set}, visits, students as s};\nlet x = crate::lessons::f(mycrate::x);";
    assert_eq!(named_in(text), ["db", "goals", "visits", "students", "lessons"]);
}

#[test]
fn the_core_knows_no_window_no_network_and_no_runtime() {
    let tree = Command::new(env!("CARGO"))
        .args(["tree", "--package", "carryover-core", "--edges", "normal", "--prefix", "none"])
        .args(["--format", "{p}", "--offline", "--locked"])
        .current_dir(root())
        .output()
        .unwrap();
    let text = String::from_utf8_lossy(&tree.stdout);
    assert!(tree.status.success(), "{}", String::from_utf8_lossy(&tree.stderr));
    let packages: Vec<&str> = text.lines().filter_map(|line| line.split(' ').next()).collect();
    assert!(packages.contains(&"rusqlite"), "the tree is that of the core");
    for never in ["tauri", "wry", "tokio", "hyper", "zbus", "rustls", "async-std"] {
        assert!(!packages.contains(&never), "the core leans on {never}");
    }
}
