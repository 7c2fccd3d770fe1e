//! The desk's post: released messages are handed over on a thread of its own, one after the other, so that
//! nothing waits for the network. The thread comes back to the desk for each message and for what came of
//! it, so that both are in the file before anything else happens.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::Duration;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Desk;
use crate::commands::{self, Nothing};
use crate::error::{Error, Result};
use crate::kinds::{Clock, Instant, SystemClock};
use crate::outtray::account::MailAccount;
use crate::outtray::carry::{self, Came, Carrier, InTheWay, Line, Next, Parcel, SignIn, pause};
use crate::outtray::{MailTrouble, PutMessage};

/// Runs something at the desk, from another thread; nothing when the desk stands no more.
pub type Back = Arc<dyn Fn(&mut dyn FnMut(&mut Desk)) + Send + Sync>;

/// What the desk knows of handing over.
#[derive(Default)]
pub(super) struct Post {
    /// Passwords that a server took since the program began, by account.
    passwords: HashMap<String, String>,
    run: Option<Run>,
    last: Sending,
    /// How many runs there were: a thread that comes late does not speak for another.
    runs: u64,
}

struct Run {
    number: u64,
    stop: Arc<Stop>,
    shown: Sending,
}

/// Asks a thread to stop, and wakes it.
#[derive(Default)]
struct Stop {
    asked: Mutex<Asked>,
    bell: Condvar,
}

#[derive(Default)]
struct Asked {
    stop: bool,
    wake: bool,
}

impl Stop {
    fn ask(&self, stop: bool) {
        let mut asked = self.asked.lock().unwrap_or_else(PoisonError::into_inner);
        asked.stop |= stop;
        asked.wake = true;
        self.bell.notify_all();
    }

    fn asked(&self) -> bool {
        self.asked.lock().unwrap_or_else(PoisonError::into_inner).stop
    }

    /// Waits so long, or until it is woken.
    fn wait(&self, long: Duration) {
        let asked = self.asked.lock().unwrap_or_else(PoisonError::into_inner);
        let woken = self.bell.wait_timeout_while(asked, long, |asked| !asked.wake);
        let (mut asked, _) = woken.unwrap_or_else(PoisonError::into_inner);
        asked.wake = false;
    }
}

/// How far handing over is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SendingStage {
    /// Nothing is handed over.
    #[default]
    Resting,
    /// Messages are handed over.
    Sending,
    /// It is waited before another try.
    Pausing,
    /// Something stands in the way that the coach has to see to.
    Failed,
}

/// Handing over, as it is shown.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Sending {
    /// How far.
    pub stage: SendingStage,
    /// How many messages were seen to in this run.
    pub done: u32,
    /// How many are left.
    pub left: u32,
    /// When the next try is, while it pauses.
    pub next: Option<Instant>,
    /// Whether the password is needed.
    pub password: bool,
    /// What stands in the way, as sentences; empty for nothing.
    pub trouble: String,
}

/// Handing over to begin.
#[derive(Clone, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct BeginSending {
    /// The password; empty for the one typed or kept before.
    pub password: String,
    /// Whether to keep it in this machine\u{2019}s keychain.
    pub keep: bool,
}

fn key(account: &MailAccount, user: &str) -> String {
    format!("mail of {user} at {}", account.host)
}

/// Begins to hand over. The coach asks for it once each time a file was opened: a file that somebody else
/// prepared sends nothing by being opened.
pub(super) fn send(desk: &mut Desk, with: BeginSending) -> Result<Sending> {
    let account = desk.file()?.read(carry::signing_in)?;
    let Some((account, user)) = account else {
        let words = "No mail account is set yet. Set it under Coach, or save the message as a file, or tell it in another way.";
        return Err(Error::not_possible("no_account", words));
    };
    if let Some(run) = desk.post.run.as_ref().filter(|_| with.password.is_empty()) {
        run.stop.ask(false);
        return look(desk, Nothing {});
    }
    leave(desk)?;
    let Some(password) = password(desk, &key(&account, &user), &with.password) else {
        desk.post.last = Sending {
            stage: SendingStage::Failed,
            left: desk.file()?.read(carry::left)?,
            password: true,
            trouble: "The password is needed. This machine does not keep it.".to_owned(),
            ..Sending::default()
        };
        return look(desk, Nothing {});
    };
    begin(desk, account, SignIn { user, password }, with.keep)
}

/// The password of an account: as typed now, or before, or as the keychain has it.
fn password(desk: &Desk, key: &str, typed: &str) -> Option<String> {
    if !typed.is_empty() {
        return Some(typed.to_owned());
    }
    let before = desk.post.passwords.get(key).cloned();
    before.or_else(|| desk.beyond().ok()?.secrets.get(key).ok().flatten())
}

fn begin(desk: &mut Desk, account: MailAccount, sign_in: SignIn, keep: bool) -> Result<Sending> {
    let (carrier, back) = {
        let beyond = desk.beyond()?;
        (Arc::clone(&beyond.carrier), Arc::clone(&beyond.back))
    };
    // What came of a message could not be written down, as on a full disk: it may have been sent.
    if desk.file()?.read(carry::behind)? > 0 {
        let label = "Messages that may have been sent";
        let written = desk.file()?.write("outtray.catch_up", label, carry::catch_up)?;
        desk.changed.extend(written.changes);
    }
    let left = desk.file()?.read(carry::left)?;
    let file = desk.file()?.path().to_owned();
    desk.post.runs += 1;
    let (number, stop) = (desk.post.runs, Arc::new(Stop::default()));
    let worker =
        Worker { number, file, back, carrier, account, sign_in, keep, stop: Arc::clone(&stop) };
    std::thread::Builder::new()
        .name("post".to_owned())
        .spawn(move || worker.work())
        .map_err(|e| Error::Fault(e.to_string()))?;
    let shown = Sending { stage: SendingStage::Sending, left, ..Sending::default() };
    desk.post.run = Some(Run { number, stop, shown });
    look(desk, Nothing {})
}

/// How far it is.
pub(super) fn look(desk: &mut Desk, _: Nothing) -> Result<Sending> {
    let left = match desk.open.as_ref() {
        Some(file) => file.read(carry::left)?,
        None => 0,
    };
    let shown = desk.post.run.as_ref().map_or(&desk.post.last, |run| &run.shown);
    Ok(Sending { left, ..shown.clone() })
}

pub(super) fn stop(desk: &mut Desk, _: Nothing) -> Result<Sending> {
    let _ = leave(desk);
    look(desk, Nothing {})
}

/// Asks the thread to stop, and lets it go where it only waits.
///
/// # Errors
/// `NotPossible` while a message is being handed over: it is not left alone with that.
pub(super) fn leave(desk: &mut Desk) -> Result<()> {
    let Some(run) = &desk.post.run else { return Ok(()) };
    run.stop.ask(true);
    if run.shown.stage == SendingStage::Sending {
        let words =
            "Messages are being sent. It stops after the one under way; try again in a moment.";
        return Err(Error::not_possible("sending", words));
    }
    desk.post.last = Sending { stage: SendingStage::Resting, ..run.shown.clone() };
    desk.post.run = None;
    Ok(())
}

pub(super) fn send_trial(desk: &mut Desk, with: BeginSending) -> Result<Sending> {
    if desk.file()?.read(carry::signing_in)?.is_none() {
        return send(desk, with);
    }
    let put = commands::call(
        desk.file()?,
        "outtray.put",
        serde_json::json!({ "of": { "kind": "trial" } }),
    )?;
    let messages: PutMessage =
        serde_json::from_value(put.value).map_err(|e| Error::Fault(e.to_string()))?;
    let input = serde_json::json!({ "messages": messages.messages });
    let released = commands::call(desk.file()?, "outtray.release", input);
    desk.changed.extend(put.changes);
    match released {
        Ok(released) => desk.changed.extend(released.changes),
        Err(error) => {
            for message in messages.messages {
                let input = serde_json::json!({ "message": message });
                commands::call(desk.file()?, "outtray.withdraw", input)?;
            }
            return Err(error);
        }
    }
    send(desk, with)
}

pub(super) fn forget(desk: &mut Desk, _: Nothing) -> Result<Nothing> {
    if let Some((account, user)) = desk.file()?.read(carry::signing_in)? {
        let key = key(&account, &user);
        desk.post.passwords.remove(&key);
        if let Ok(beyond) = desk.beyond() {
            let forgotten = beyond.secrets.forget(&key);
            forgotten.map_err(|words| Error::not_possible("keychain", words))?;
        }
    }
    Ok(Nothing {})
}

/// The thread that hands over.
struct Worker {
    number: u64,
    file: PathBuf,
    back: Back,
    carrier: Arc<dyn Carrier>,
    account: MailAccount,
    sign_in: SignIn,
    keep: bool,
    stop: Arc<Stop>,
}

impl Worker {
    fn work(self) {
        let mut line: Option<Box<dyn Line>> = None;
        let mut failures = 0;
        while !self.stop.asked() {
            match self.at_desk(next) {
                Some(Ok(Next::Parcel(parcel))) => match self.carry(&mut line, &parcel) {
                    Ok(came) => {
                        failures = 0;
                        let kept = self.at_desk(|desk, file| came_of(desk, file, &parcel, &came));
                        match kept {
                            Some(Ok(())) => {}
                            Some(Err(error)) => return self.broke(error),
                            None => break,
                        }
                    }
                    Err(way) => {
                        failures += 1;
                        if !self.cannot_open(&parcel, &way, failures) {
                            return;
                        }
                    }
                },
                Some(Ok(Next::At(when))) => {
                    // A server does not keep a silent connection for long.
                    line = None;
                    self.pause(when, "");
                }
                Some(Err(error)) => return self.broke(error),
                Some(Ok(Next::Nothing)) | None => break,
            }
        }
        self.end(Sending::default());
    }

    /// Hands a message over, on the connection that is open or a new one. A connection that the server had
    /// closed since is made anew, once.
    fn carry(
        &self,
        line: &mut Option<Box<dyn Line>>,
        parcel: &Parcel,
    ) -> std::result::Result<Came, InTheWay> {
        let mut reused = line.is_some();
        loop {
            let open = match line {
                Some(open) => open,
                None => {
                    let opened = self.carrier.open(&self.account, &self.sign_in)?;
                    self.at_desk(|desk, _| remember(desk, &self.account, &self.sign_in, self.keep));
                    line.insert(opened)
                }
            };
            let came = open.hand_over(parcel);
            if matches!(came, Came::Closed(_) | Came::Unsure(_)) {
                *line = None;
            }
            if matches!(came, Came::Closed(_)) && reused {
                reused = false;
                continue;
            }
            return Ok(came);
        }
    }

    /// The connection could not be opened. Gives whether it is tried again.
    fn cannot_open(&self, parcel: &Parcel, way: &InTheWay, failures: i64) -> bool {
        let kept = self.at_desk(|desk, file| {
            at(desk, file, |file| {
                let label = "Message not sent";
                file.write("outtray.not_opened", label, |db| {
                    carry::not_opened(db, parcel.message, way)
                })
            })
        });
        let words = way.trouble.words(&way.said);
        let only_time = matches!(way.trouble, MailTrouble::Away | MailTrouble::Later);
        if only_time && matches!(kept, Some(Ok(()))) {
            let when = SystemClock.now().utc() + pause(failures);
            self.pause(Instant::from_chrono(&when), &words);
            return true;
        }
        self.end(Sending {
            stage: SendingStage::Failed,
            password: way.trouble == MailTrouble::SignIn,
            trouble: words,
            ..Sending::default()
        });
        false
    }

    /// Waits until a moment, as the desk shows.
    fn pause(&self, until: Instant, trouble: &str) {
        self.at_desk(|desk, _| {
            if let Some(run) = &mut desk.post.run {
                run.shown.stage = SendingStage::Pausing;
                run.shown.next = Some(until);
                run.shown.trouble = trouble.to_owned();
            }
        });
        // A clock that is put back makes no pause longer than half an hour.
        let long = (until.utc() - SystemClock.now().utc()).to_std().unwrap_or_default();
        self.stop.wait(long.min(Duration::from_secs(1800)));
    }

    /// Something went wrong here, not at the server.
    fn broke(&self, error: Error) {
        let trouble = error.failure().words;
        self.end(Sending { stage: SendingStage::Failed, trouble, ..Sending::default() });
    }

    fn end(&self, last: Sending) {
        self.at_desk(|desk, _| {
            if let Some(run) = desk.post.run.take() {
                let last = Sending { done: run.shown.done, ..last.clone() };
                desk.post.last = last;
            }
        });
    }

    /// Runs something at the desk, if it still has this run and its file.
    fn at_desk<T>(&self, act: impl Fn(&mut Desk, &Path) -> T) -> Option<T> {
        let mut said = None;
        (self.back)(&mut |desk| {
            let mine = desk.post.run.as_ref().is_some_and(|run| run.number == self.number);
            let open = desk.open.as_ref().is_some_and(|file| file.path() == self.file);
            if mine && open {
                said = Some(act(desk, &self.file));
            }
        });
        said
    }
}

/// Runs something on the file, and tells the page what changed.
fn at<T>(
    desk: &mut Desk,
    _: &Path,
    act: impl Fn(&mut crate::app::CoachFile) -> Result<crate::app::Written<T>>,
) -> Result<T> {
    let written = act(desk.file()?)?;
    desk.changed.extend(written.changes);
    Ok(written.value)
}

fn next(desk: &mut Desk, file: &Path) -> Result<Next> {
    let next = at(desk, file, |file| {
        file.write("outtray.next", "Message handed to the mail server", carry::next)
    })?;
    if let (Some(run), Next::Parcel(_)) = (&mut desk.post.run, &next) {
        run.shown =
            Sending { stage: SendingStage::Sending, done: run.shown.done, ..Sending::default() };
    }
    Ok(next)
}

fn came_of(desk: &mut Desk, file: &Path, parcel: &Parcel, came: &Came) -> Result<()> {
    at(desk, file, |file| {
        let label = "What came of a message";
        file.write("outtray.came", label, |db| carry::came(db, parcel.message, came))
    })?;
    if let Some(run) = &mut desk.post.run {
        run.shown.done += 1;
    }
    Ok(())
}

/// Keeps a password that the server took: while the program runs, and in the keychain where that was asked.
fn remember(desk: &mut Desk, account: &MailAccount, sign_in: &SignIn, keep: bool) {
    let key = key(account, &sign_in.user);
    if keep && let Ok(beyond) = desk.beyond() {
        // Where it cannot be kept it is asked for the next time.
        let _ = beyond.secrets.keep(&key, &sign_in.password);
    }
    desk.post.passwords.insert(key, sign_in.password.clone());
}
