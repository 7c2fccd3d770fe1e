//! Files that were open before: a small JSON file on this machine. Losing it loses nothing.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::{FileName, name_of};

/// How many are remembered.
const MOST: usize = 8;

#[derive(Default, Serialize, Deserialize)]
struct Kept {
    files: Vec<KeptFile>,
    /// Whether a file was open when the program was left.
    open: bool,
}

#[derive(Serialize, Deserialize)]
struct KeptFile {
    path: PathBuf,
    sample: bool,
}

/// The list, newest first.
pub(super) struct Recent {
    memory: PathBuf,
    kept: Kept,
}

impl Recent {
    pub(super) fn remembered(memory: &Path) -> Self {
        let kept = std::fs::read(memory).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok());
        Self { memory: memory.to_owned(), kept: kept.unwrap_or_default() }
    }

    pub(super) fn last_open(&self) -> Option<PathBuf> {
        self.kept.files.first().filter(|_| self.kept.open).map(|file| file.path.clone())
    }

    pub(super) fn opened(&mut self, path: &Path) {
        self.kept.files.retain(|file| file.path != path);
        self.kept.files.insert(0, KeptFile { path: path.to_owned(), sample: false });
        self.kept.files.truncate(MOST);
        self.kept.open = true;
        self.keep();
    }

    pub(super) fn closed(&mut self) {
        self.kept.open = false;
        self.keep();
    }

    pub(super) fn is_sample(&mut self, path: &Path, sample: bool) {
        if let Some(file) =
            self.kept.files.iter_mut().find(|file| file.path == path && file.sample != sample)
        {
            file.sample = sample;
            self.keep();
        }
    }

    pub(super) fn files(&self) -> Vec<FileName> {
        let there = self.kept.files.iter().filter(|file| file.path.is_file());
        there
            .map(|file| FileName {
                path: file.path.clone(),
                name: name_of(&file.path),
                sample: file.sample,
            })
            .collect()
    }

    /// Written beside and renamed, so that a pulled plug leaves the old list or the new one.
    fn keep(&self) {
        let Ok(bytes) = serde_json::to_vec_pretty(&self.kept) else { return };
        let making = self.memory.with_extension("making");
        let _ = self.memory.parent().map(std::fs::create_dir_all);
        let _ =
            std::fs::write(&making, bytes).and_then(|()| std::fs::rename(&making, &self.memory));
    }
}
