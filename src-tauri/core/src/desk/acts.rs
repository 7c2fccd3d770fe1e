//! The desk's commands.

use std::path::{Path, PathBuf};

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{Desk, FileName, OnDesk, calendars, post};
use crate::accounts::{self, MoneyPaper};
use crate::app::CoachFile;
use crate::commands::{self, Listed, Nothing};
use crate::db::{backup, check};
use crate::error::{Error, Problems, Result};
use crate::kinds::ids::{AcknowledgementId, IncidentId, LetterId, ScanId, StudentId, VersionId};
use crate::kinds::{Clock, SystemClock};
use crate::outtray::{self, MessageFile, WhichMessage};
use crate::{calendar, costs, erasing, home, intake, lessons, letters, students, visits};

/// A file by its path.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AtPath {
    /// Where it is.
    pub path: PathBuf,
}

/// A new file by its name.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NewFile {
    /// Its name, without folder and ending.
    pub name: String,
}

/// An issued letter.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Documents {
    /// Which letter.
    pub letter: LetterId,
}

/// Where something was saved; nothing when the coach thought better of it.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub struct SavedAt {
    /// The path.
    pub path: Option<PathBuf>,
}

/// A paper about someone before court, or about what happened there.
#[derive(Clone, Copy, Debug, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum Sheet {
    /// A notice at a version, to be signed by hand.
    Notice {
        /// The version.
        version: VersionId,
    },
    /// An acknowledgement with its text.
    Acknowledgement {
        /// The acknowledgement.
        acknowledgement: AcknowledgementId,
    },
    /// An incident report.
    Incident {
        /// The report.
        incident: IncidentId,
    },
    /// A scan as it was handed in.
    Scan {
        /// The scan.
        scan: ScanId,
    },
    /// The questions before court, to be filled in by hand.
    Questions {
        /// The student; left out for someone who is not in the file yet.
        student: Option<StudentId>,
    },
}

type Run = Box<dyn Fn(&mut Desk, Value) -> Result<Value>>;

pub(super) struct DeskCommand {
    name: &'static str,
    about: &'static str,
    input: fn(&mut SchemaGenerator) -> Schema,
    output: fn(&mut SchemaGenerator) -> Schema,
    run: Run,
}

impl DeskCommand {
    pub(super) fn listed(&self) -> Listed {
        Listed {
            name: self.name,
            about: self.about,
            writes: true,
            input: commands::whole_schema(SchemaSettings::default().for_deserialize(), self.input),
            output: commands::whole_schema(SchemaSettings::default().for_serialize(), self.output),
        }
    }
}

fn act<I, O>(
    name: &'static str,
    about: &'static str,
    act: fn(&mut Desk, I) -> Result<O>,
) -> DeskCommand
where
    I: DeserializeOwned + JsonSchema + 'static,
    O: Serialize + JsonSchema + 'static,
{
    DeskCommand {
        name,
        about,
        input: |schemas| I::json_schema(schemas),
        output: |schemas| O::json_schema(schemas),
        run: Box::new(move |desk, input| commands::json(&act(desk, commands::typed(input)?)?)),
    }
}

pub(super) fn table() -> Vec<DeskCommand> {
    vec![
        act("desk.look", "What lies on the desk", look),
        act("desk.sample", "Opens the sample season, making it first if need be", sample),
        act("desk.create", "Makes an empty coach file and opens it", create),
        act("desk.open", "Opens a coach file", open),
        act("desk.choose", "Lets the coach choose a coach file, and opens it", choose),
        act("desk.close", "Closes the coach file", close),
        act("desk.check", "Checks the open file", check_file),
        act("desk.back_up", "Makes a verified copy where the coach chooses", back_up),
        act("desk.restore", "Puts a chosen backup in the open file's place", restore),
        act(
            "desk.save_letter",
            "Saves an issued letter's document where the coach chooses",
            save_letter,
        ),
        act("desk.open_letter", "Opens an issued letter's document", open_letter),
        act(
            "desk.save_home_plan",
            "Saves the page of a visit's home plan where the coach chooses",
            save_home_plan,
        ),
        act(
            "desk.save_card",
            "Saves the court card of a lesson where the coach chooses",
            save_card,
        ),
        act("desk.open_card", "Opens the court card of a lesson", open_card),
        act(
            "desk.write_invitations",
            "Writes the invitations of a visit that are due, each into a file of its own",
            write_invitations,
        ),
        act(
            "desk.save_calendar",
            "Saves a calendar file of lessons where the coach chooses",
            save_calendar,
        ),
        act(
            "desk.read_calendar",
            "Lets the coach choose a calendar file, and reads it",
            calendars::read_file,
        ),
        act("desk.keychain", "Whether this machine keeps passwords", calendars::keychain),
        act("desk.find_calendars", "Begins to look for calendars on a server", calendars::find),
        act("desk.make_calendar", "Begins to make a calendar on a server", calendars::make),
        act(
            "desk.exchange_calendars",
            "Begins to bring the calendars on a server in step",
            calendars::exchange,
        ),
        act("desk.calendar_talk", "Where the talk with the server is", calendars::look),
        act("desk.stop_calendar_talk", "Stops the talk with the server", calendars::stop),
        act(
            "desk.leave_calendars",
            "Leaves the server, and forgets its password",
            calendars::leave,
        ),
        act(
            "desk.save_page",
            "Saves a page that a student fills in at home where the coach chooses",
            save_page,
        ),
        act(
            "desk.save_sheet",
            "Saves a notice, a report, a scan or the questions on paper where the coach chooses",
            save_sheet,
        ),
        act(
            "desk.open_sheet",
            "Opens a notice, a report, a scan or the questions on paper",
            open_sheet,
        ),
        act("desk.open_home_plan", "Opens the page of a visit's home plan", open_home_plan),
        act(
            "desk.save_costs",
            "Saves what was spent on some days as a table where the coach chooses",
            save_costs,
        ),
        act(
            "desk.save_money_paper",
            "Saves an invoice, a receipt, a statement or a year where the coach chooses",
            save_money_paper,
        ),
        act(
            "desk.open_money_paper",
            "Opens an invoice, a receipt, a statement or a year",
            open_money_paper,
        ),
        act(
            "desk.save_everything",
            "Saves a copy of everything about one student, with their documents, into a folder",
            save_everything,
        ),
        act("desk.send", "Hands over what was released, on a thread of its own", post::send),
        act("desk.sending", "How far handing over has come", post::look),
        act("desk.stop_sending", "Stops handing over, after the message under way", post::stop),
        act("desk.send_trial", "Sends a trial to the coach", post::send_trial),
        act("desk.forget_mail", "Forgets the password of the mail account", post::forget),
        act("desk.save_message", "Saves a message as a file where the coach chooses", save_message),
        act(
            "desk.save_message_part",
            "Saves a part of a message where the coach chooses",
            save_message_part,
        ),
        act("desk.papers", "Documents on this machine whose name has a student's in it", papers),
    ]
}

pub(super) fn call(desk: &mut Desk, name: &str, input: Value) -> Result<Value> {
    let table = table();
    let command = table
        .iter()
        .find(|command| command.name == name)
        .ok_or_else(|| Error::NotFound { what: "command", id: name.to_owned() })?;
    (command.run)(desk, input)
}

fn look(desk: &mut Desk, _: Nothing) -> Result<OnDesk> {
    let open = desk.open.as_ref().map(|file| file.path().to_owned());
    Ok(OnDesk {
        open: open.map(|path| desk.named(&path)).transpose()?,
        recent: desk.recent.files(),
        folder: desk.folder.clone(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        today: desk.open.as_ref().map_or_else(|| SystemClock.today(), CoachFile::today),
        zone: crate::kinds::zones::of_this_machine(),
    })
}

fn sample(desk: &mut Desk, _: Nothing) -> Result<FileName> {
    let path = ready_folder(desk)?.join("Sample season.carryover");
    if !path.exists() {
        // Made beside its place, so that a half-made season is never opened as a whole one.
        let making = path.with_extension("filling");
        for leftover in ["", "-wal", "-shm", ".lock"] {
            let _ = std::fs::remove_file(crate::db::open::beside(&making, leftover));
        }
        (desk.sample)(&making)?;
        std::fs::rename(&making, &path)
            .map_err(|e| Error::storage("Making the sample season", e))?;
        let _ = std::fs::remove_file(crate::db::open::beside(&making, ".lock"));
    }
    desk.open_file(&path)
}

fn create(desk: &mut Desk, new: NewFile) -> Result<FileName> {
    let mut p = Problems::new();
    let name = p.name("name", &new.name, "The file\u{2019}s name");
    if name.contains(['/', '\\', ':']) || name.starts_with('.') {
        p.add(
            "name",
            "no_file_name",
            "A file\u{2019}s name cannot have / \\ or : in it, nor begin with a dot.",
        );
    }
    let path = ready_folder(desk)?.join(format!("{name}.carryover"));
    if path.exists() {
        p.add("name", "taken", format!("There is a file named \u{201c}{name}\u{201d} already. Choose another name, or open that one."));
    }
    p.done()?;
    CoachFile::create(&path)?;
    desk.open_file(&path)
}

fn ready_folder(desk: &Desk) -> Result<&Path> {
    std::fs::create_dir_all(&desk.folder)
        .map_err(|e| Error::storage("Making the folder for coach files", e))?;
    Ok(&desk.folder)
}

fn open(desk: &mut Desk, at: AtPath) -> Result<FileName> {
    desk.open_file(&at.path)
}

fn choose(desk: &mut Desk, _: Nothing) -> Result<Option<FileName>> {
    match desk.host.choose_to_open("Open a coach file", "Coach file", "carryover") {
        Some(path) => desk.open_file(&path).map(Some),
        None => Ok(None),
    }
}

fn close(desk: &mut Desk, _: Nothing) -> Result<Nothing> {
    post::leave(desk)?;
    desk.open = None;
    desk.recent.closed();
    Ok(Nothing {})
}

fn check_file(desk: &mut Desk, _: Nothing) -> Result<check::Checked> {
    commands::check(desk.file()?)
}

fn back_up(desk: &mut Desk, _: Nothing) -> Result<SavedAt> {
    let name = super::name_of(desk.file()?.path());
    let name = format!("{name} {}.carryover", backup::stamp(&SystemClock));
    let Some(path) = desk.host.choose_to_save("Save a backup", &name) else {
        return Ok(SavedAt { path: None });
    };
    let made = commands::back_up(desk.file()?, &path)?;
    Ok(SavedAt { path: Some(made.path) })
}

fn restore(desk: &mut Desk, _: Nothing) -> Result<SavedAt> {
    let path = desk.file()?.path().to_owned();
    post::leave(desk)?;
    let Some(from) = desk.host.choose_to_open("Choose a backup", "Coach file", "carryover") else {
        return Ok(SavedAt { path: None });
    };
    desk.open = None;
    let restored = commands::restore(&path, &from, &SystemClock);
    desk.open_file(&path)?;
    Ok(SavedAt { path: restored?.kept })
}

/// A document: its file's name and bytes.
type Document = (String, Vec<u8>);

/// Saves a document where the coach chooses.
fn save_as(desk: &mut Desk, title: &str, (name, bytes): Document) -> Result<SavedAt> {
    let Some(path) = desk.host.choose_to_save(title, &name) else {
        return Ok(SavedAt { path: None });
    };
    write_whole(&path, &bytes)?;
    Ok(SavedAt { path: Some(path) })
}

/// Puts a document into a folder of the desk's, and opens it.
fn open_in(desk: &mut Desk, folder: &str, (name, bytes): Document) -> Result<SavedAt> {
    let folder = desk.folder.join(folder);
    std::fs::create_dir_all(&folder).map_err(|e| Error::storage("Saving the document", e))?;
    let path = folder.join(name);
    write_whole(&path, &bytes)?;
    desk.host.open_document(&path)?;
    Ok(SavedAt { path: Some(path) })
}

fn letter(desk: &mut Desk, which: Documents) -> Result<Document> {
    desk.file()?.read(|db| letters::document(db, which.letter))
}

fn save_letter(desk: &mut Desk, which: Documents) -> Result<SavedAt> {
    let letter = letter(desk, which)?;
    save_as(desk, "Save the letter", letter)
}

fn open_letter(desk: &mut Desk, which: Documents) -> Result<SavedAt> {
    let letter = letter(desk, which)?;
    open_in(desk, LETTERS, letter)
}

fn money_paper(desk: &mut Desk, which: MoneyPaper) -> Result<Document> {
    desk.file()?.read(|db| accounts::paper(db, which))
}

fn save_money_paper(desk: &mut Desk, which: MoneyPaper) -> Result<SavedAt> {
    let paper = money_paper(desk, which)?;
    save_as(desk, "Save the document", paper)
}

fn open_money_paper(desk: &mut Desk, which: MoneyPaper) -> Result<SavedAt> {
    let paper = money_paper(desk, which)?;
    open_in(desk, MONEY, paper)
}

fn card(desk: &mut Desk, which: lessons::Which) -> Result<Document> {
    desk.file()?.read(|db| lessons::card(db, which))
}

fn save_card(desk: &mut Desk, which: lessons::Which) -> Result<SavedAt> {
    let card = card(desk, which)?;
    save_as(desk, "Save the court card", card)
}

fn open_card(desk: &mut Desk, which: lessons::Which) -> Result<SavedAt> {
    let card = card(desk, which)?;
    open_in(desk, CARDS, card)
}

fn sheet(desk: &mut Desk, sheet: Sheet) -> Result<Document> {
    use intake::{incidents, notices, page, scans};
    desk.file()?.read(|db| match sheet {
        Sheet::Notice { version } => notices::document(db, notices::OfVersion { version }),
        Sheet::Acknowledgement { acknowledgement } => {
            notices::acknowledged_document(db, notices::OfAcknowledgement { acknowledgement })
        }
        Sheet::Incident { incident } => {
            incidents::document(db, incidents::WhichIncident { incident })
        }
        Sheet::Scan { scan } => scans::document(db, scans::WhichScan { scan }),
        Sheet::Questions { student } => page::blank(db, page::BlankFor { student }),
    })
}

/// The place is chosen first: a page that was not saved has no token.
fn save_page(desk: &mut Desk, of: intake::page::MakePage) -> Result<SavedAt> {
    let student =
        desk.file()?.read(|db| students::show(db, students::Which { student: of.student }))?;
    let name = intake::page::file_name(&student.profile.name);
    let Some(path) = desk.host.choose_to_save("Save the page", &name) else {
        return Ok(SavedAt { path: None });
    };
    let input = serde_json::json!({ "student": of.student });
    let made = commands::call(desk.file()?, "intake.make_page", input)?.value;
    let html = made["html"].as_str().unwrap_or_default();
    write_whole(&path, html.as_bytes())?;
    Ok(SavedAt { path: Some(path) })
}

fn save_sheet(desk: &mut Desk, which: Sheet) -> Result<SavedAt> {
    let sheet = sheet(desk, which)?;
    save_as(desk, "Save the paper", sheet)
}

fn open_sheet(desk: &mut Desk, which: Sheet) -> Result<SavedAt> {
    let sheet = sheet(desk, which)?;
    open_in(desk, SHEETS, sheet)
}

fn home_plan(desk: &mut Desk, of: home::OfVisit) -> Result<Document> {
    desk.file()?.read(|db| home::document(db, of))
}

fn save_home_plan(desk: &mut Desk, of: home::OfVisit) -> Result<SavedAt> {
    let plan = home_plan(desk, of)?;
    save_as(desk, "Save the home plan", plan)
}

fn open_home_plan(desk: &mut Desk, of: home::OfVisit) -> Result<SavedAt> {
    let plan = home_plan(desk, of)?;
    open_in(desk, HOME_PLANS, plan)
}

fn write_invitations(desk: &mut Desk, which: visits::Which) -> Result<SavedAt> {
    let visit = desk.file()?.read(|db| visits::show(db, which))?;
    let day = visit.from().map(|day| day.to_string()).unwrap_or_default();
    let name = format!("{} {day}", crate::print::file_words(&visit.name));
    let folder = desk.folder.join(INVITATIONS).join(name);
    invitations_into(desk.file()?, which, &folder)?;
    Ok(SavedAt { path: Some(folder) })
}

/// Writes the invitations of a visit that are due into a folder, and gives their names. They are
/// there before it is noted that they were written: a full disk leaves them due.
///
/// # Errors
/// `NotPossible` when none is due or none can be written; `Storage`.
pub fn invitations_into(
    file: &mut CoachFile,
    which: visits::Which,
    folder: &Path,
) -> Result<Vec<String>> {
    let stamp = SystemClock.now().utc();
    let files = file.read(|db| calendar::files(db, which, stamp))?;
    std::fs::create_dir_all(folder).map_err(|e| Error::storage("Writing invitations", e))?;
    for (name, text) in &files {
        write_whole(&folder.join(name), text.as_bytes())?;
    }
    let input = serde_json::json!({ "visit": which.visit });
    commands::call(file, "calendar.written", input)?;
    Ok(files.into_iter().map(|(name, _)| name).collect())
}

fn save_message(desk: &mut Desk, which: WhichMessage) -> Result<SavedAt> {
    let file = desk.file()?.read(|db| outtray::file(db, which))?;
    save_as(desk, "Save the message", file)
}

fn save_message_part(desk: &mut Desk, which: MessageFile) -> Result<SavedAt> {
    let part = desk.file()?.read(|db| outtray::part(db, which))?;
    save_as(desk, "Save the file", part)
}

fn save_costs(desk: &mut Desk, of: costs::CostsOf) -> Result<SavedAt> {
    let table = desk.file()?.read(|db| costs::document(db, of))?;
    save_as(desk, "Save the costs", table)
}

fn save_everything(desk: &mut Desk, which: students::Which) -> Result<SavedAt> {
    let (copy, documents) = desk.file()?.read(|db| {
        let copy = erasing::everything(db, which)?;
        let documents = copy.documents.iter().map(|document| erasing::document(db, document));
        let documents = documents.collect::<Result<Vec<_>>>()?;
        Ok((copy, documents))
    })?;
    let folder = desk.folder.join(COPIES).join(&copy.file_name);
    std::fs::create_dir_all(&folder).map_err(|e| Error::storage("Saving the copy", e))?;
    for (n, (name, bytes)) in documents.iter().enumerate() {
        // Two letters of one day bear the same name.
        let taken = documents.iter().take(n).filter(|(before, _)| before == name).count();
        let (stem, ending) = name.rsplit_once('.').unwrap_or((name, ""));
        let name =
            if taken == 0 { name.clone() } else { format!("{stem} ({}).{ending}", taken + 1) };
        write_whole(&folder.join(name), bytes)?;
    }
    let named = |ending: &str| folder.join(format!("{}.{ending}", copy.file_name));
    let rows = serde_json::json!({
        "name": copy.name, "day": copy.day, "rows": copy.rows, "named": copy.named,
    });
    let rows = serde_json::to_vec_pretty(&rows).map_err(|e| Error::Fault(e.to_string()))?;
    write_whole(&named("json"), &rows)?;
    write_whole(&named("txt"), copy.text.as_bytes())?;
    Ok(SavedAt { path: Some(folder) })
}

const LETTERS: &str = "Letters";
const INVITATIONS: &str = "Invitations";
const CARDS: &str = "Court cards";
const MONEY: &str = "Money";
const HOME_PLANS: &str = "Home plans";
const SHEETS: &str = "Papers";
const COPIES: &str = "Copies for students";

/// The folders that the program puts documents into by itself.
const FOLDERS: [&str; 6] = [LETTERS, INVITATIONS, CARDS, HOME_PLANS, SHEETS, COPIES];

/// A name to look for.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PapersOf {
    /// The student's full name.
    pub name: String,
}

/// Documents that were found.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub struct Papers {
    /// Their paths.
    pub paths: Vec<PathBuf>,
}

/// Documents that the program put on this machine and whose name has a student's in it. It deletes
/// none: some may be all the coach has of a letter that was sent.
fn papers(desk: &mut Desk, of: PapersOf) -> Result<Papers> {
    let name = crate::kinds::text::folded(&crate::print::file_words(&of.name));
    let mut paths = Vec::new();
    for folder in FOLDERS {
        let Ok(entries) = std::fs::read_dir(desk.folder.join(folder)) else { continue };
        let named = entries.flatten().filter(|entry| {
            let file = crate::kinds::text::folded(&entry.file_name().to_string_lossy());
            crate::kinds::text::has_words(&file, &name)
        });
        paths.extend(named.map(|entry| entry.path()));
    }
    paths.sort();
    Ok(Papers { paths })
}

fn save_calendar(desk: &mut Desk, of: calendar::CalendarOf) -> Result<SavedAt> {
    let stamp = SystemClock.now().utc();
    let (name, text) = desk.file()?.read(|db| calendar::file(db, of, stamp))?;
    save_as(desk, "Save the calendar file", (name, text.into_bytes()))
}

/// Saves a document: written beside and renamed, so that a full disk leaves no half document under
/// the chosen name.
///
/// # Errors
/// `Storage`.
pub fn write_whole(path: &Path, bytes: &[u8]) -> Result<()> {
    let making = crate::db::open::beside(path, ".making");
    let written = std::fs::write(&making, bytes).and_then(|()| std::fs::rename(&making, path));
    if written.is_err() {
        let _ = std::fs::remove_file(&making);
    }
    written.map_err(|e| Error::storage("Saving the document", e))
}
