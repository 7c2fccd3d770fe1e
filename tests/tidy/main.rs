//! What prose promises and no compiler checks: the order of knowledge, the schema's history, the
//! window's walls, and how the files of the project are kept.

mod files;
mod order;
mod schema;
mod walls;

use std::path::{Path, PathBuf};

/// The top of the project.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").canonicalize().unwrap()
}

/// A file of the project as text.
fn read(path: &str) -> String {
    std::fs::read_to_string(root().join(path)).unwrap_or_else(|e| panic!("{path}: {e}"))
}

/// Every file below a folder of the project, by its path from the top; what tools make is left out.
fn files_below(folder: &str) -> Vec<String> {
    const MADE: [&str; 8] =
        ["target", "node_modules", "dist", "dist-gallery", ".venv", ".git", "out", "gen"];
    let root = root();
    let (mut found, mut folders) = (Vec::new(), vec![root.join(folder)]);
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).unwrap() {
            let entry = entry.unwrap();
            let name = entry.file_name().to_string_lossy().into_owned();
            if entry.file_type().unwrap().is_dir() {
                if !MADE.contains(&name.as_str()) && name != "__pycache__" {
                    folders.push(entry.path());
                }
            } else {
                let path =
                    entry.path().strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
                found.push(path);
            }
        }
    }
    found.sort();
    found
}
