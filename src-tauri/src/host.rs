//! What the desk asks of this machine: the system's own file dialogs, and its viewer for a saved
//! document. Never called on the window's thread, where a dialog would wait for itself.

use std::path::{Path, PathBuf};

use carryover_core::desk::Host;
use carryover_core::error::{Error, Result};
use tauri::{AppHandle, Manager};
use tauri_plugin_dialog::{DialogExt, FileDialogBuilder};

use crate::window;

/// The machine the window runs on.
pub struct ThisMachine {
    /// The program, for its dialogs.
    pub app: AppHandle,
    /// The only folder documents are opened from.
    pub folder: PathBuf,
}

impl ThisMachine {
    fn dialog(&self, title: &str) -> FileDialogBuilder<tauri::Wry> {
        let dialog = self.app.dialog().file().set_title(title);
        match self.app.get_webview_window(window::LABEL) {
            Some(window) => dialog.set_parent(&window),
            None => dialog,
        }
    }
}

impl Host for ThisMachine {
    fn choose_to_open(&self, title: &str, kind: &str, ending: &str) -> Option<PathBuf> {
        let chosen = self.dialog(title).add_filter(kind, &[ending]).blocking_pick_file();
        chosen.and_then(|path| path.into_path().ok())
    }

    fn choose_to_save(&self, title: &str, name: &str) -> Option<PathBuf> {
        let chosen = self.dialog(title).set_file_name(name).blocking_save_file();
        chosen.and_then(|path| path.into_path().ok())
    }

    fn open_document(&self, path: &Path) -> Result<()> {
        if !may_open(&self.folder, path) {
            return Err(Error::Fault(format!("{} is no document of ours", path.display())));
        }
        tauri_plugin_opener::open_path(path, None::<&str>).map_err(|_| {
            Error::not_possible(
                "no_viewer",
                format!(
                    "This machine has no program that opens it. The document is saved as {}.",
                    path.display()
                ),
            )
        })
    }
}

/// Only a PDF that lies in the program's own folder, links followed, is handed to the machine.
fn may_open(folder: &Path, path: &Path) -> bool {
    let pdf = path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("pdf"));
    let inside = || Some(path.canonicalize().ok()?.starts_with(folder.canonicalize().ok()?));
    pdf && path.is_file() && inside().unwrap_or(false)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_documents_of_ours_are_opened() {
        let outside = tempfile::tempdir().unwrap();
        let folder = tempfile::tempdir().unwrap();
        let letter = folder.path().join("letter.pdf");
        let script = folder.path().join("letter.sh");
        let stranger = outside.path().join("stranger.pdf");
        for path in [&letter, &script, &stranger] {
            std::fs::write(path, "x").unwrap();
        }
        assert!(may_open(folder.path(), &letter));
        assert!(!may_open(folder.path(), &script), "not a PDF");
        assert!(!may_open(folder.path(), &stranger), "not in the folder");
        assert!(!may_open(folder.path(), &folder.path().join("none.pdf")), "not there");
        #[cfg(unix)]
        {
            let link = folder.path().join("link.pdf");
            std::os::unix::fs::symlink(&stranger, &link).unwrap();
            assert!(!may_open(folder.path(), &link), "a link that leads outside");
        }
    }
}
