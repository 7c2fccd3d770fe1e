//! The desk: which coach file is open on this machine, which were open before, and what the window
//! does for a screen besides the file's own commands (choosing paths, saving and opening a
//! document). The window and the bridge for browser tests stand on the same desk.

mod acts;
mod calendars;
mod post;
mod recent;

use std::path::{Path, PathBuf};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value;

pub use acts::{Documents, invitations_into, write_whole};
pub use calendars::Beyond;
pub use post::Back;

use crate::app::{Change, CoachFile};
use crate::commands::{self, Answer, Listed};
use crate::error::{Error, Result};
use recent::Recent;

/// What the desk asks of the machine it stands on.
pub trait Host: Send {
    /// Lets the coach choose a file to open; `None` when they thought better of it.
    fn choose_to_open(&self, title: &str, kind: &str, ending: &str) -> Option<PathBuf>;
    /// Lets the coach choose where to save; `None` when they thought better of it.
    fn choose_to_save(&self, title: &str, name: &str) -> Option<PathBuf>;
    /// Opens a saved document with the program the machine has for it.
    ///
    /// # Errors
    /// `NotPossible` when the machine has none.
    fn open_document(&self, path: &Path) -> Result<()>;
}

/// Opens a coach file, with the clock and ids of whoever stands the desk up.
pub type Opener = Box<dyn Fn(&Path) -> Result<CoachFile> + Send>;

/// Makes the sample season at a path.
pub type MakeSample = fn(&Path) -> Result<()>;

/// The desk.
pub struct Desk {
    folder: PathBuf,
    recent: Recent,
    open: Option<CoachFile>,
    opener: Opener,
    sample: MakeSample,
    host: Box<dyn Host>,
    beyond: Option<Beyond>,
    talks: calendars::Talks,
    post: post::Post,
    /// What an act of the desk changed in the file.
    changed: Vec<Change>,
}

/// A coach file as the desk names it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct FileName {
    /// Where it is.
    pub path: PathBuf,
    /// Its name without folder and ending.
    pub name: String,
    /// Whether it holds the invented sample season.
    pub sample: bool,
}

/// What lies on the desk.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct OnDesk {
    /// The file that is open.
    pub open: Option<FileName>,
    /// Files that were open before and are still there, newest first.
    pub recent: Vec<FileName>,
    /// The folder new files go to.
    pub folder: PathBuf,
    /// The program's version.
    pub version: String,
    /// Today on the coach's calendar.
    pub today: crate::kinds::Day,
    /// The machine's own zone, as a first guess for a new facility.
    pub zone: String,
}

impl Desk {
    /// A desk whose new files go to `folder` and whose recent list is kept in `memory`.
    pub fn new(
        folder: &Path,
        memory: &Path,
        opener: Opener,
        sample: MakeSample,
        host: Box<dyn Host>,
    ) -> Self {
        Self {
            folder: folder.to_owned(),
            recent: Recent::remembered(memory),
            open: None,
            opener,
            sample,
            host,
            beyond: None,
            talks: calendars::Talks::default(),
            post: post::Post::default(),
            changed: Vec::new(),
        }
    }

    /// The same desk with a way to servers and to the machine's keychain.
    #[must_use]
    pub fn reaching(self, beyond: Beyond) -> Self {
        Self { beyond: Some(beyond), ..self }
    }

    fn beyond(&self) -> Result<&Beyond> {
        let words = "This program was started without a way to a network.";
        self.beyond.as_ref().ok_or_else(|| Error::not_possible("no_network", words))
    }

    /// Opens the file that was open last, if it is still there. What is wrong with it waits until
    /// the coach opens it by hand.
    pub fn open_last(&mut self) {
        if let Some(last) = self.recent.last_open() {
            let _ = self.open_file(&last);
        }
    }

    /// Runs one of the desk's commands, or one of the open file's.
    ///
    /// # Errors
    /// `NoFile` when none is open, and those of the command.
    pub fn call(&mut self, name: &str, input: Value) -> Result<Answer> {
        if name.starts_with("desk.") {
            let value = acts::call(self, name, input)?;
            return Ok(Answer { value, changes: std::mem::take(&mut self.changed), act: None });
        }
        commands::call(self.open.as_mut().ok_or(Error::NoFile)?, name, input)
    }

    /// The file that is open.
    pub fn file(&mut self) -> Result<&mut CoachFile> {
        self.open.as_mut().ok_or(Error::NoFile)
    }

    fn open_file(&mut self, path: &Path) -> Result<FileName> {
        // The lock of the file that is open goes first, so that opening it again is no clash.
        if self.open.as_ref().is_some_and(|open| open.path() == path) {
            return self.named(path);
        }
        post::leave(self)?;
        let mut file = (self.opener)(path)?;
        // On a full disk the file opens all the same.
        let _ = commands::catch_up(&mut file);
        self.open = Some(file);
        self.recent.opened(path);
        self.named(path)
    }

    /// Whether a message is being handed over now; if so, nothing more is begun after it.
    pub fn is_sending(&mut self) -> bool {
        post::leave(self).is_err()
    }

    fn named(&mut self, path: &Path) -> Result<FileName> {
        let sample = self.file()?.read(crate::settings::show)?.sample;
        self.recent.is_sample(path, sample);
        Ok(FileName { path: path.to_owned(), name: name_of(path), sample })
    }
}

/// The desk's own commands, for the generated TypeScript.
pub fn listed() -> Vec<Listed> {
    acts::table().iter().map(acts::DeskCommand::listed).collect()
}

fn name_of(path: &Path) -> String {
    path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default()
}
