//! How the files of the project are kept.

use crate::{files_below, read, root};

/// The only entries at the top, besides hidden ones that tools need.
const TOP: &[&str] = &[
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "Makefile",
    "README.md",
    "clippy.toml",
    "demo-db",
    "migrations",
    "rustfmt.toml",
    "src-tauri",
    "target",
    "tests",
    "ui",
];

/// Source in one of the languages that have comments, with what a comment begins with.
const SOURCE: &[(&str, &[&str])] = &[
    ("rs", &["//!", "//"]),
    ("ts", &["//", "/*"]),
    ("mjs", &["//", "/*"]),
    ("js", &["//", "/*"]),
    ("svelte", &["<!--"]),
    ("css", &["/*"]),
    ("sql", &["--"]),
    ("sh", &["#"]),
    ("py", &["\"\"\"", "#"]),
];

fn ending(path: &str) -> &str {
    path.rsplit('/').next().and_then(|name| name.rsplit_once('.')).map_or("", |(_, ending)| ending)
}

fn is_source(path: &str) -> bool {
    SOURCE.iter().any(|(of, _)| *of == ending(path))
}

/// Everything that is kept as text, with its content.
fn texts() -> Vec<(String, String)> {
    let binary = ["ttf", "png", "pdf", "lock", "carryover", "ico", "jpg"];
    let files = files_below("").into_iter().filter(|path| !binary.contains(&ending(path)));
    let texts: Vec<_> = files
        .filter_map(|path| Some((std::fs::read_to_string(root().join(&path)).ok()?, path)))
        .collect();
    assert!(texts.len() > 100, "the files were found at all");
    texts.into_iter().map(|(text, path)| (path, text)).collect()
}

#[test]
fn the_top_holds_only_what_belongs_there() {
    for entry in std::fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().to_string_lossy().into_owned();
        assert!(
            name.starts_with('.') || TOP.contains(&name.as_str()),
            "{name} does not belong at the top"
        );
    }
}

#[test]
fn every_source_file_opens_with_what_it_is_for() {
    for path in files_below("").iter().filter(|path| is_source(path)) {
        let text = read(path);
        let text =
            text.strip_prefix("#!").map_or(text.as_str(), |rest| rest.split_once('\n').unwrap().1);
        let (_, begins) = SOURCE.iter().find(|(of, _)| *of == ending(path)).unwrap();
        assert!(
            begins.iter().any(|begin| text.starts_with(begin)),
            "{path} opens without a comment"
        );
    }
}

#[test]
fn no_file_names_a_machine_or_a_registry() {
    // In pieces, so that this file does not name them either.
    let never = [
        ["/wo", "rk/"],
        ["/ro", "ot/"],
        ["/tmp", "/w/"],
        ["/ho", "me/"],
        ["arti", "factory"],
        ["index.cra", "tes.io"],
        ["registry.np", "mjs"],
        ["pypi", ".org"],
        ["pythonho", "sted"],
    ]
    .map(|pieces| pieces.concat());
    for (path, text) in texts() {
        for never in &never {
            assert!(!text.contains(never), "{path} names {never}");
        }
    }
}

#[test]
fn no_test_is_skipped() {
    let never = [["#[ig", "nore"], [".sk", "ip("], [".on", "ly("], [".fix", "me("], [".to", "do("]]
        .map(|p| p.concat());
    for (path, text) in texts().iter().filter(|(path, _)| is_source(path)) {
        for (number, line) in (1..).zip(text.lines()) {
            // An iterator of Rust may leave out its first items.
            let rust_iterator = ending(path) == "rs" && line.contains(&never[1]);
            let found = never.iter().find(|never| line.contains(*never) && !rust_iterator);
            assert!(found.is_none(), "{path}:{number} leaves a test out: {line}");
        }
    }
}

#[test]
fn nothing_is_left_to_be_done_later() {
    let never = [["TO", "DO"], ["FIX", "ME"], ["XX", "X"]].map(|pieces| pieces.concat());
    for (path, text) in texts().iter().filter(|(path, _)| is_source(path)) {
        for never in &never {
            assert!(!text.contains(never.as_str()), "{path} has a {never}");
        }
    }
}
