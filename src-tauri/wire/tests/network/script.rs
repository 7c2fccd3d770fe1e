//! A server on loopback that answers what the test says, and remembers what it was asked.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use carryover_core::calendar::remote::Account;
use carryover_core::kinds::{Day, Span};
use carryover_wire::caldav::{Limits, OverHttps};
use rustls::{ServerConfig, ServerConnection, StreamOwned};

/// What the server was asked.
#[derive(Clone, Debug)]
pub struct Asked {
    pub method: String,
    pub path: String,
    pub head: String,
    pub body: String,
}

impl Asked {
    pub fn is(&self, method: &str, path: &str) -> bool {
        self.method == method && self.path == path
    }

    /// A header, whose name is given in small letters.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (key, value) = line.split_once(':')?;
            key.eq_ignore_ascii_case(name).then(|| value.trim())
        })
    }
}

/// How it answers.
pub enum Reply {
    /// With these bytes, and closes.
    Says(Vec<u8>),
    /// With these bytes, and then nothing, for as long as the other waits.
    Stalls(Vec<u8>),
    /// With these bytes, and then more of the same for as long as the other reads.
    Endless(Vec<u8>),
}

/// A status with a body.
pub fn says(status: &str, body: &str) -> Reply {
    with(status, "", body)
}

/// A status with headers, each ended by CR LF, and a body.
pub fn with(status: &str, headers: &str, body: &str) -> Reply {
    let length = body.len();
    Reply::Says(
        format!(
            "HTTP/1.1 {status}\r\n{headers}Content-Length: {length}\r\nConnection: close\r\n\r\n{body}"
        )
        .into_bytes(),
    )
}

/// Parts of a `multistatus`.
pub fn multistatus(parts: &str) -> Reply {
    let body = format!(
        r#"<?xml version="1.0"?><d:multistatus xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav">{parts}</d:multistatus>"#
    );
    says("207 Multi-Status", &body)
}

/// One resource with properties that are there.
pub fn part(path: &str, prop: &str) -> String {
    format!(
        "<d:response><d:href>{path}</d:href><d:propstat><d:prop>{prop}</d:prop>\
         <d:status>HTTP/1.1 200 OK</d:status></d:propstat></d:response>"
    )
}

/// One resource with a status.
pub fn only(path: &str, status: &str) -> String {
    format!(
        "<d:response><d:href>{path}</d:href><d:status>HTTP/1.1 {status}</d:status></d:response>"
    )
}

/// An event as calendar servers keep it.
pub fn event(uid: &str) -> String {
    format!(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//x//x//EN\r\nBEGIN:VEVENT\r\nUID:{uid}\r\n\
         DTSTAMP:20260101T000000Z\r\nDTSTART:20260302T090000Z\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
    )
}

pub struct Script {
    pub at: SocketAddr,
    scheme: &'static str,
    asked: Arc<Mutex<Vec<Asked>>>,
    written: Arc<Mutex<usize>>,
}

type Answers = dyn Fn(&Asked) -> Reply + Send + Sync;

impl Script {
    pub fn start(answers: impl Fn(&Asked) -> Reply + Send + Sync + 'static) -> Self {
        Self::on("127.0.0.1", None, answers)
    }

    /// On one of the machine's own addresses, which stand for hosts; with TLS or without.
    pub fn on(
        host: &str,
        tls: Option<ServerConfig>,
        answers: impl Fn(&Asked) -> Reply + Send + Sync + 'static,
    ) -> Self {
        let listener = TcpListener::bind((host, 0)).unwrap();
        let script = Self {
            at: listener.local_addr().unwrap(),
            scheme: if tls.is_some() { "https" } else { "http" },
            asked: Arc::default(),
            written: Arc::default(),
        };
        let (asked, written) = (script.asked.clone(), script.written.clone());
        let (tls, answers): (_, Arc<Answers>) = (tls.map(Arc::new), Arc::new(answers));
        std::thread::spawn(move || {
            for stream in listener.incoming().map_while(Result::ok) {
                let (asked, written) = (asked.clone(), written.clone());
                let (tls, answers) = (tls.clone(), answers.clone());
                std::thread::spawn(move || match tls {
                    None => serve(stream, &asked, &written, &*answers),
                    Some(tls) => {
                        let session = ServerConnection::new(tls).unwrap();
                        serve(StreamOwned::new(session, stream), &asked, &written, &*answers);
                    }
                });
            }
        });
        script
    }

    pub fn url(&self, path: &str) -> String {
        format!("{}://{}{path}", self.scheme, self.at)
    }

    pub fn account(&self, path: &str) -> Account {
        Account {
            address: self.url(path), user: "ana".to_owned(), password: "pässword".to_owned()
        }
    }

    pub fn asked(&self) -> Vec<Asked> {
        self.asked.lock().unwrap().clone()
    }

    /// `METHOD path` of everything asked.
    pub fn lines(&self) -> Vec<String> {
        self.asked().iter().map(|asked| format!("{} {}", asked.method, asked.path)).collect()
    }

    /// Bytes that the other took.
    pub fn written(&self) -> usize {
        *self.written.lock().unwrap()
    }
}

fn serve<S: Read + Write>(
    mut stream: S,
    asked: &Mutex<Vec<Asked>>,
    written: &Mutex<usize>,
    answers: &Answers,
) {
    let Some(one) = read(&mut stream) else {
        // As servers say to what is no request.
        let _ = stream.write_all(b"HTTP/1.1 400 Bad Request\r\n\r\n");
        return;
    };
    asked.lock().unwrap().push(one.clone());
    let write = |stream: &mut S, bytes: &[u8]| {
        let done = stream.write_all(bytes).and_then(|()| stream.flush()).is_ok();
        *written.lock().unwrap() += bytes.len();
        done
    };
    match answers(&one) {
        Reply::Says(bytes) => {
            write(&mut stream, &bytes);
        }
        Reply::Stalls(bytes) => {
            write(&mut stream, &bytes);
            // Ends when the other gives up.
            let _ = stream.read(&mut [0]);
        }
        Reply::Endless(bytes) => while write(&mut stream, &bytes) {},
    }
}

fn read(stream: &mut impl Read) -> Option<Asked> {
    let (mut bytes, mut buffer) = (Vec::new(), [0; 8192]);
    loop {
        let count = stream.read(&mut buffer).ok().filter(|count| *count > 0)?;
        bytes.extend_from_slice(&buffer[..count]);
        if !bytes[0].is_ascii_uppercase() {
            return None;
        }
        let Some(end) = bytes.windows(4).position(|four| four == b"\r\n\r\n") else { continue };
        let head = String::from_utf8_lossy(&bytes[..end]).into_owned();
        let mut first = head.lines().next()?.split(' ');
        let mut asked = Asked {
            method: first.next()?.to_owned(),
            path: first.next()?.to_owned(),
            head: head.clone(),
            body: String::new(),
        };
        let length: usize =
            asked.header("content-length").map_or(0, |value| value.parse().unwrap());
        while bytes.len() < end + 4 + length {
            let count = stream.read(&mut buffer).ok().filter(|count| *count > 0)?;
            bytes.extend_from_slice(&buffer[..count]);
        }
        asked.body = String::from_utf8(bytes[end + 4..].to_vec()).unwrap();
        return Some(asked);
    }
}

/// Whether anybody could connect where the address stands for a host that nobody should ask.
pub fn silent(host: &str) -> Script {
    Script::on(host, None, |asked| panic!("nobody may ask here: {asked:?}"))
}

pub const SMALL: usize = 1_048_576;

/// Limits that a test can wait for.
pub fn limits() -> Limits {
    Limits { connect: Duration::from_secs(5), answer: Duration::from_secs(20), largest: SMALL }
}

pub fn over_https() -> OverHttps {
    OverHttps::with(limits(), Some(Vec::new())).unwrap()
}

pub fn march() -> Span {
    let day = |text: &str| Day::from_date(text.parse().unwrap()).unwrap();
    Span { first: day("2026-03-01"), last: day("2026-03-31") }
}

/// Asks whether a port of this machine accepts, which a closed one does not.
pub fn closed_port() -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let at = listener.local_addr().unwrap();
    drop(listener);
    assert!(TcpStream::connect(at).is_err(), "the port is closed");
    at
}
