//! The bridge: serves the built page and the real core to a browser under test, on 127.0.0.1 only.
//! It is a binary of the tests alone; the packaged program has nothing like it.
//!
//! `carryover-bridge FOLDER [DIST]` keeps coach files in FOLDER, prints the address to open as its
//! first line, and serves until its standard input closes. A random token is needed for each call,
//! and requests whose Host or Origin is not the bridge's own are refused. The content policy is the
//! window's own, read from its configuration.

use std::io::{BufRead, Read};
use std::net::{SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use anyhow::{Context, bail};
use carryover_core::app::CoachFile;
use carryover_core::calendar::remote::Secrets;
use carryover_core::desk::{Back, Beyond, Desk, Host};
use carryover_core::error::Result as CoreResult;
use carryover_wire::caldav::OverHttps;
use carryover_wire::smtp::OverSmtp;
use serde_json::{Value, json};
use tiny_http::{Header, Method, Request, Response, Server};

/// A host without dialogs: files are chosen by fixed names in the folder, documents are "opened" by
/// being there.
struct TestHost(PathBuf);

impl Host for TestHost {
    fn choose_to_open(&self, _title: &str, _kind: &str, ending: &str) -> Option<PathBuf> {
        let path = self.0.join(format!("chosen.{ending}"));
        path.is_file().then_some(path)
    }

    fn choose_to_save(&self, _title: &str, name: &str) -> Option<PathBuf> {
        Some(self.0.join(name))
    }

    fn open_document(&self, _path: &Path) -> CoreResult<()> {
        Ok(())
    }
}

/// A machine that keeps no passwords, so that no test leaves one in the real keychain.
struct NoKeychain;

impl Secrets for NoKeychain {
    fn ready(&self) -> Result<(), String> {
        Err("This machine keeps no passwords.".to_owned())
    }

    fn get(&self, _name: &str) -> Result<Option<String>, String> {
        Ok(None)
    }

    fn keep(&self, _name: &str, _password: &str) -> Result<(), String> {
        self.ready()
    }

    fn forget(&self, _name: &str) -> Result<(), String> {
        Ok(())
    }
}

struct Bridge {
    desk: Arc<Mutex<Option<Desk>>>,
    dist: PathBuf,
    origin: String,
    host: String,
    token: String,
    policy: String,
}

fn main() -> anyhow::Result<()> {
    let mut arguments = std::env::args().skip(1);
    let folder = PathBuf::from(arguments.next().context("carryover-bridge FOLDER [DIST]")?);
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let dist = arguments.next().map_or_else(|| root.join("ui/dist"), PathBuf::from);
    if !dist.join("index.html").is_file() {
        bail!("{} has no index.html: build the page first", dist.display());
    }
    let server = Server::http("127.0.0.1:0").map_err(|e| anyhow::anyhow!("{e}"))?;
    let address = server.server_addr().to_ip().context("an address")?;
    let place: Arc<Mutex<Option<Desk>>> = Arc::new(Mutex::new(None));
    let desk = Desk::new(
        &folder,
        &folder.join("recent.json"),
        Box::new(CoachFile::open),
        carryover_demo::make_for_window,
        Box::new(TestHost(folder.clone())),
    );
    let calendars = OverHttps::new().map_err(anyhow::Error::msg)?;
    let way = Arc::clone(&place);
    let back: Back = Arc::new(move |act| {
        if let Some(desk) = way.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
            act(desk);
        }
    });
    let desk = desk.reaching(Beyond {
        calendars: Arc::new(calendars),
        secrets: Arc::new(NoKeychain),
        carrier: Arc::new(OverSmtp::new()),
        back,
    });
    *place.lock().unwrap_or_else(PoisonError::into_inner) = Some(desk);
    let mut bridge = Bridge {
        desk: place,
        dist,
        origin: format!("http://{address}"),
        host: address.to_string(),
        token: token(),
        policy: policy(&root.join("src-tauri/tauri.conf.json"))?,
    };
    println!("{}/", bridge.origin);
    std::thread::spawn(|| {
        // Ends with the test that started it.
        for _ in std::io::stdin().lock().lines() {}
        std::process::exit(0);
    });
    std::thread::spawn(move || nudge(address));
    for request in server.incoming_requests() {
        bridge.answer(request);
    }
    Ok(())
}

/// Opens a connection now and then and closes it at once. The server's pool counts a thread as idle
/// until it has woken up: of two connections that come together, one may be left in its queue until
/// another ends, which a browser's do not. Whoever serves a nudge takes what waits in the queue next.
fn nudge(address: SocketAddr) {
    loop {
        std::thread::sleep(Duration::from_millis(100));
        let _ = TcpStream::connect(address);
    }
}

#[allow(clippy::disallowed_methods, reason = "a token is random, not an id in a coach file")]
fn token() -> String {
    uuid::Uuid::new_v4().simple().to_string()
}

/// The window's content policy.
fn policy(configuration: &Path) -> anyhow::Result<String> {
    let text = std::fs::read_to_string(configuration)
        .with_context(|| configuration.display().to_string())?;
    let configuration: Value = serde_json::from_str(&text)?;
    let policy = configuration.pointer("/app/security/csp").and_then(Value::as_str);
    Ok(policy.context("app.security.csp in the window's configuration")?.to_owned())
}

impl Bridge {
    fn answer(&mut self, mut request: Request) {
        let response = self.respond(&mut request);
        let _ = request.respond(response);
    }

    fn respond(&mut self, request: &mut Request) -> Response<std::io::Cursor<Vec<u8>>> {
        let header = |name: &str| {
            request
                .headers()
                .iter()
                .find(|h| h.field.as_str().as_str().eq_ignore_ascii_case(name))
                .map(|h| h.value.as_str().to_owned())
        };
        if header("host").as_deref() != Some(&self.host) {
            return plain(403, "another host");
        }
        if header("origin").is_some_and(|origin| origin != self.origin) {
            return plain(403, "another origin");
        }
        match (request.method(), request.url()) {
            (Method::Post, "/call") => {
                if header("x-carryover-token").as_deref() != Some(&self.token) {
                    return plain(403, "no token");
                }
                self.call(request)
            }
            (Method::Get, url) => {
                let url = url.split(['?', '#']).next().unwrap_or("/").to_owned();
                self.page(&url)
            }
            _ => plain(405, "only GET and POST /call"),
        }
    }

    fn call(&mut self, request: &mut Request) -> Response<std::io::Cursor<Vec<u8>>> {
        let mut body = String::new();
        let read = request.as_reader().take(64 << 20).read_to_string(&mut body);
        let asked = read.ok().and_then(|_| serde_json::from_str::<Value>(&body).ok());
        let Some(asked) = asked else { return plain(400, "no JSON") };
        let name = asked["name"].as_str().unwrap_or_default().to_owned();
        let called = match self.desk.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
            Some(desk) => desk.call(&name, asked["input"].clone()),
            None => Err(carryover_core::error::Error::NoFile),
        };
        let (code, answer) = match called {
            Ok(answer) => (200, json!(answer)),
            Err(error) => (422, json!({ "error": error.failure() })),
        };
        Response::from_data(answer.to_string())
            .with_status_code(code)
            .with_header(named("Content-Type", "application/json"))
    }

    fn page(&self, url: &str) -> Response<std::io::Cursor<Vec<u8>>> {
        let path = url.trim_start_matches('/');
        let path = if path.is_empty() { "index.html" } else { path };
        if path.split('/').any(|part| part == "..") {
            return plain(404, "not here");
        }
        let Ok(mut bytes) = std::fs::read(self.dist.join(path)) else {
            return plain(404, "not here");
        };
        if path == "index.html" {
            let tag = format!("<head><meta name=\"carryover-bridge\" content=\"{}\">", self.token);
            bytes = String::from_utf8_lossy(&bytes).replacen("<head>", &tag, 1).into_bytes();
        }
        let kind = match path.rsplit('.').next() {
            Some("html") => "text/html; charset=utf-8",
            Some("js") => "text/javascript; charset=utf-8",
            Some("css") => "text/css; charset=utf-8",
            Some("ttf") => "font/ttf",
            Some("svg") => "image/svg+xml",
            _ => "application/octet-stream",
        };
        Response::from_data(bytes)
            .with_header(named("Content-Type", kind))
            .with_header(named("Content-Security-Policy", &self.policy))
            .with_header(named("X-Content-Type-Options", "nosniff"))
    }
}

fn named(name: &str, value: &str) -> Header {
    Header::from_bytes(name.as_bytes(), value.as_bytes())
        .unwrap_or_else(|()| unreachable!("header names and values here are plain ASCII"))
}

fn plain(code: u16, words: &str) -> Response<std::io::Cursor<Vec<u8>>> {
    Response::from_data(words.as_bytes().to_vec()).with_status_code(code)
}
