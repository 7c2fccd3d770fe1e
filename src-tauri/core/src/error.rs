//! What can go wrong, as facts. The window has words and a way out for each [`Code`]; a refused
//! input names every field that is wrong, all at once.

use std::fmt;
use std::path::PathBuf;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The outcome of everything in the core.
pub type Result<T> = std::result::Result<T, Error>;

/// What kept an act or a reading from being done.
#[derive(Debug)]
pub enum Error {
    /// The input was wrong in these places; nothing was written.
    Refused(Vec<Problem>),
    /// There is no such thing in the coach file.
    NotFound {
        /// The noun, as in "student".
        what: &'static str,
        /// What was asked for.
        id: String,
    },
    /// Another window or program holds this coach file.
    InUse(PathBuf),
    /// The coach file is locked with a passphrase.
    Locked(PathBuf),
    /// It cannot be done as things stand; the words say why and what to do.
    NotPossible {
        /// A short name of the reason.
        code: &'static str,
        /// Why, and what to do now.
        words: String,
    },
    /// The coach file was written by a newer version of the program.
    NewerFile {
        /// Where it is.
        path: PathBuf,
        /// The schema the file has.
        file: i64,
        /// The newest schema this program knows.
        program: i64,
    },
    /// The file is no coach file.
    NotACoachFile(PathBuf),
    /// No coach file is open.
    NoFile,
    /// The disk or the database refused.
    Storage {
        /// What was being done, as in "saving".
        doing: &'static str,
        /// What the system said.
        source: Box<dyn std::error::Error + Send + Sync>,
    },
    /// A fault in the program.
    Fault(String),
}

/// The kinds of failure the window acts on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Code {
    /// Fields are wrong.
    Refused,
    /// The thing is not there.
    NotFound,
    /// Another window has the file.
    InUse,
    /// A passphrase is needed.
    Locked,
    /// Not now; the words say why.
    NotPossible,
    /// The file is from a newer version.
    NewerFile,
    /// The file is something else.
    NotACoachFile,
    /// No file is open.
    NoFile,
    /// The disk or database refused.
    Storage,
    /// A fault in the program.
    Fault,
}

/// One thing wrong with an input, at one field.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Problem {
    /// The field's path, as in `students[0].depart`; empty for the input as a whole.
    pub field: String,
    /// A short name of what is wrong.
    pub code: String,
    /// A sentence for the person who typed it.
    pub words: String,
}

/// A failure as it crosses to the window or the command line.
#[derive(Clone, Debug, Serialize, Deserialize, JsonSchema)]
pub struct Failure {
    /// The kind.
    pub code: Code,
    /// What could not be done, why, and what to do.
    pub words: String,
    /// For a refused input: everything wrong with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub problems: Vec<Problem>,
    /// What the system said, for "copy details"; never shown as the message.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub details: Option<String>,
}

/// A stored value that no version of the program writes.
#[derive(Debug)]
pub struct Unreadable(pub String);

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the stored value {:?} cannot be read", self.0)
    }
}

impl std::error::Error for Unreadable {}

impl Error {
    /// The kind the window acts on.
    pub fn code(&self) -> Code {
        match self {
            Self::Refused(_) => Code::Refused,
            Self::NotFound { .. } => Code::NotFound,
            Self::InUse(_) => Code::InUse,
            Self::Locked(_) => Code::Locked,
            Self::NotPossible { .. } => Code::NotPossible,
            Self::NewerFile { .. } => Code::NewerFile,
            Self::NotACoachFile(_) => Code::NotACoachFile,
            Self::NoFile => Code::NoFile,
            Self::Storage { .. } => Code::Storage,
            Self::Fault(_) => Code::Fault,
        }
    }

    /// One problem at one field.
    pub fn field(field: &str, code: &str, words: impl Into<String>) -> Self {
        Self::Refused(vec![Problem { field: field.into(), code: code.into(), words: words.into() }])
    }

    /// The same with the fields of a refusal below another, as in `to.`; any other failure as it is.
    #[must_use]
    pub fn below(self, prefix: &str) -> Self {
        match self {
            Self::Refused(problems) => Self::Refused(
                problems
                    .into_iter()
                    .map(|p| Problem { field: format!("{prefix}{}", p.field), ..p })
                    .collect(),
            ),
            other => other,
        }
    }

    /// Not possible now, and why.
    pub fn not_possible(code: &'static str, words: impl Into<String>) -> Self {
        Self::NotPossible { code, words: words.into() }
    }

    /// The disk or database refused while `doing`.
    pub fn storage(
        doing: &'static str,
        source: impl Into<Box<dyn std::error::Error + Send + Sync>>,
    ) -> Self {
        Self::Storage { doing, source: source.into() }
    }

    /// How it crosses to the window or the command line.
    pub fn failure(&self) -> Failure {
        let problems =
            if let Self::Refused(problems) = self { problems.clone() } else { Vec::new() };
        let details = match self {
            Self::Storage { source, .. } => Some(source.to_string()),
            Self::Fault(details) => Some(details.clone()),
            _ => None,
        };
        Failure { code: self.code(), words: self.to_string(), problems, details }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused(problems) if problems.len() == 1 => f.write_str(&problems[0].words),
            Self::Refused(problems) => {
                write!(f, "{} things need another look before this can be saved.", problems.len())
            }
            Self::NotFound { what, .. } => {
                write!(f, "This {what} is not in the coach file. It may have been undone in the meantime.")
            }
            Self::InUse(path) => write!(
                f,
                "{} is open in another window or program. Close it there, then try again.",
                path.display()
            ),
            Self::Locked(path) => write!(f, "{} is locked with a passphrase.", path.display()),
            Self::NotPossible { words, .. } => f.write_str(words),
            Self::NewerFile { path, file, program } => write!(
                f,
                "{} was saved by a newer version of Carryover (file version {file}; this program reads up to \
                 {program}). It was not touched. Install the newer version to open it, or open another file.",
                path.display()
            ),
            Self::NotACoachFile(path) => write!(
                f,
                "{} is not a coach file, or it is damaged at its very start. It was not touched.",
                path.display()
            ),
            Self::NoFile => f.write_str("No coach file is open."),
            Self::Storage { doing, source } => write!(f, "{doing} did not work: {}", plain(source.as_ref())),
            Self::Fault(_) => f.write_str(
                "Something in the program went wrong. Nothing was saved by this step; everything before it is safe.",
            ),
        }
    }
}

impl std::error::Error for Error {}

/// What the disk said, in a coach's words where we know them.
fn plain(source: &(dyn std::error::Error + Send + Sync + 'static)) -> String {
    use rusqlite::ErrorCode as C;
    let known =
        source.downcast_ref::<rusqlite::Error>().and_then(|e| match e.sqlite_error_code() {
            Some(C::DiskFull) => {
                Some("the disk is full. Free some space, then try again; nothing is lost.")
            }
            Some(C::ReadOnly) => {
                Some("the file or its folder cannot be written. Choose a folder of your own.")
            }
            Some(C::CannotOpen) => Some("the file or its folder cannot be opened for writing."),
            Some(C::SystemIoFailure) => {
                Some("the disk reported a fault. Make a backup to another disk now.")
            }
            Some(C::DatabaseCorrupt) => {
                Some("the coach file is damaged. Restore the newest backup.")
            }
            _ => None,
        });
    let io = source.downcast_ref::<std::io::Error>().and_then(|e| match e.kind() {
        std::io::ErrorKind::PermissionDenied | std::io::ErrorKind::ReadOnlyFilesystem => {
            Some("the folder cannot be written. Choose a folder of your own.")
        }
        std::io::ErrorKind::NotFound => Some("the file or folder is not there."),
        std::io::ErrorKind::AlreadyExists => {
            Some("there is a file of that name already. Choose another name.")
        }
        std::io::ErrorKind::StorageFull => {
            Some("the disk is full. Free some space, then try again.")
        }
        _ => None,
    });
    known.or(io).map_or_else(|| "the system refused (see the details).".to_owned(), str::to_owned)
}

impl From<rusqlite::Error> for Error {
    fn from(e: rusqlite::Error) -> Self {
        Self::storage("Reading or saving the coach file", e)
    }
}

/// Collects everything wrong with an input, so that a form hears it all at once.
#[derive(Default)]
pub struct Problems {
    prefix: String,
    found: Vec<Problem>,
}

impl Problems {
    /// Nothing wrong yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Notes that this field is wrong.
    pub fn add(&mut self, field: &str, code: &str, words: impl Into<String>) {
        self.found.push(Problem {
            field: format!("{}{field}", self.prefix),
            code: code.into(),
            words: words.into(),
        });
    }

    /// Looks at a part of the input; its fields get this prefix, as in `guardian.`.
    pub fn within<T>(&mut self, prefix: &str, look: impl FnOnce(&mut Self) -> T) -> T {
        let outer = self.prefix.len();
        self.prefix.push_str(prefix);
        let found = look(self);
        self.prefix.truncate(outer);
        found
    }

    /// Whether anything is wrong so far.
    pub fn any(&self) -> bool {
        !self.found.is_empty()
    }

    /// `Err` with all problems, if there are any.
    pub fn done(self) -> Result<()> {
        if self.found.is_empty() { Ok(()) } else { Err(Error::Refused(self.found)) }
    }
}
