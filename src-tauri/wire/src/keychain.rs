//! The operating system's keychain: the Keychain of macOS, the Credential Manager of Windows, the Secret
//! Service of a Linux desktop.
//!
//! The stores are linked one by one, not through the `keyring` crate, which tries to reach the keychain
//! once and then never again: a keychain that is started or unlocked later would not be found.
//!
//! On Linux there are three states, told apart in words: nothing to talk to (no session bus, or no
//! keychain on it), a keychain that is locked or was never set up, and one that works.

use std::sync::{Arc, Mutex, PoisonError};

use carryover_core::calendar::remote::Secrets;
use keyring_core::{CredentialStore, Entry, Error};

/// The name all passwords are kept under.
const SERVICE: &str = "carryover";

/// What to do where no password can be kept.
const WITHOUT: &str = "The password is then asked for each time the program starts.";

/// The keychain of this machine.
#[derive(Default)]
pub struct Keychain {
    /// The store, as soon as it was reached.
    store: Mutex<Option<Arc<CredentialStore>>>,
}

impl Keychain {
    /// Reaches for nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn store(&self) -> Result<Arc<CredentialStore>, String> {
        let mut kept = self.store.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(store) = &*kept {
            return Ok(store.clone());
        }
        let store = open()?;
        *kept = Some(store.clone());
        Ok(store)
    }

    fn entry(&self, name: &str) -> Result<Entry, String> {
        self.store()?.build(SERVICE, name, None).map_err(|e| self.words(e))
    }

    /// What went wrong, in a sentence. What reaches no keychain is forgotten, to be tried anew.
    fn words(&self, error: Error) -> String {
        match error {
            Error::NoStorageAccess(_) => locked(),
            Error::PlatformFailure(why) => {
                *self.store.lock().unwrap_or_else(PoisonError::into_inner) = None;
                format!("This machine's keychain does not answer ({why}). {WITHOUT}")
            }
            Error::TooLong(_, most) => {
                format!("This machine's keychain takes at most {most} characters.")
            }
            Error::Ambiguous(_) => {
                "This machine's keychain has several passwords for that account. Remove the ones of \
                 “carryover” there."
                    .to_owned()
            }
            other => format!("This machine's keychain refuses: {other}."),
        }
    }
}

impl Secrets for Keychain {
    fn ready(&self) -> Result<(), String> {
        self.store()?;
        set_up()
    }

    fn get(&self, name: &str) -> Result<Option<String>, String> {
        match self.entry(name)?.get_password() {
            Ok(password) => Ok(Some(password)),
            Err(Error::NoEntry) => Ok(None),
            Err(error) => Err(self.words(error)),
        }
    }

    fn keep(&self, name: &str, password: &str) -> Result<(), String> {
        self.entry(name)?.set_password(password).map_err(|e| self.words(e))
    }

    fn forget(&self, name: &str) -> Result<(), String> {
        match self.entry(name)?.delete_credential() {
            Ok(()) | Err(Error::NoEntry) => Ok(()),
            Err(error) => Err(self.words(error)),
        }
    }
}

fn locked() -> String {
    format!(
        "This machine's keychain is locked, or was never set up. Unlock it and try again. {WITHOUT}"
    )
}

#[cfg(target_os = "macos")]
fn open() -> Result<Arc<CredentialStore>, String> {
    let store = apple_native_keyring_store::keychain::Store::new();
    Ok(store.map_err(|e| format!("The keychain cannot be opened: {e}. {WITHOUT}"))?)
}

#[cfg(windows)]
fn open() -> Result<Arc<CredentialStore>, String> {
    let store = windows_native_keyring_store::Store::new();
    Ok(store.map_err(|e| format!("The Credential Manager cannot be opened: {e}. {WITHOUT}"))?)
}

#[cfg(all(unix, not(target_os = "macos")))]
fn open() -> Result<Arc<CredentialStore>, String> {
    match zbus_secret_service_keyring_store::Store::new() {
        Ok(store) => Ok(store),
        Err(why) => Err(no_keychain(&why)),
    }
}

/// Nothing to talk to: no session bus, or nobody on it who keeps secrets.
#[cfg(all(unix, not(target_os = "macos")))]
fn no_keychain(why: &dyn std::error::Error) -> String {
    let why = std::iter::successors(Some(why), |why| why.source()).map(ToString::to_string);
    let why = why.collect::<Vec<_>>().join(": ");
    if why.contains("ServiceUnknown") || why.contains("not provided by any") {
        format!(
            "No keychain runs on this desktop (nothing answers as the Secret Service). Most desktops have \
             one, for example GNOME Keyring or KWallet. {WITHOUT}"
        )
    } else {
        format!(
            "This machine has no keychain that can be reached: there is no desktop session (D-Bus) to ask. \
             {WITHOUT}"
        )
    }
}

/// Whether there is a collection that passwords go into. One that is only locked will do: the desktop asks
/// to unlock it when a password is kept.
#[cfg(all(unix, not(target_os = "macos")))]
fn set_up() -> Result<(), String> {
    use secret_service::EncryptionType;
    use secret_service::blocking::SecretService;
    let service = SecretService::connect(EncryptionType::Plain).map_err(|e| no_keychain(&e))?;
    match service.get_default_collection() {
        Ok(_) => Ok(()),
        Err(_) => Err(locked()),
    }
}

#[cfg(not(all(unix, not(target_os = "macos"))))]
fn set_up() -> Result<(), String> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A keychain in memory, as the library has it for tests.
    fn in_memory() -> (Keychain, Arc<keyring_core::mock::Store>) {
        let store = keyring_core::mock::Store::new().unwrap();
        (Keychain { store: Mutex::new(Some(store.clone())) }, store)
    }

    #[test]
    fn a_password_is_kept_until_it_is_forgotten() {
        let (keychain, _) = in_memory();
        assert_eq!(keychain.get("ana at dav.example.org"), Ok(None));
        keychain.keep("ana at dav.example.org", "pä55 wörd").unwrap();
        assert_eq!(keychain.get("ana at dav.example.org"), Ok(Some("pä55 wörd".to_owned())));
        assert_eq!(keychain.get("bo at dav.example.org"), Ok(None), "it is another account's");
        keychain.keep("ana at dav.example.org", "new").unwrap();
        assert_eq!(keychain.get("ana at dav.example.org"), Ok(Some("new".to_owned())));
        keychain.forget("ana at dav.example.org").unwrap();
        assert_eq!(keychain.get("ana at dav.example.org"), Ok(None));
        assert_eq!(
            keychain.forget("ana at dav.example.org"),
            Ok(()),
            "forgetting twice is no fault"
        );
    }

    fn failing(error: Error) -> Keychain {
        let (keychain, store) = in_memory();
        let entry = keyring_core::api::CredentialStoreApi::build(&*store, SERVICE, "ana", None);
        let entry = entry.unwrap();
        let credential = entry.as_any().downcast_ref::<keyring_core::mock::Cred>().unwrap();
        credential.set_error(error);
        keychain
    }

    #[test]
    fn a_locked_keychain_is_told_from_one_that_is_gone() {
        let locked = failing(Error::NoStorageAccess("prompt dismissed".into()));
        let words = locked.keep("ana", "secret").unwrap_err();
        assert!(words.contains("locked") && !words.contains("secret"), "{words}");
        let gone = failing(Error::PlatformFailure("connection closed".into()));
        let words = gone.get("ana").unwrap_err();
        assert!(words.contains("does not answer (connection closed)"), "{words}");
        let reached = gone.store.lock().unwrap().is_some();
        assert!(!reached, "it is looked for anew the next time");
    }
}
