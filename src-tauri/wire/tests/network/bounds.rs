//! What a server may not do to the program: keep it waiting, fill its memory, lead it astray.

use std::time::{Duration, Instant};

use carryover_core::calendar::remote::{Account, Calendars, Expect, Trouble};
use carryover_wire::caldav::{Limits, OverHttps};

use super::script::{
    Reply, SMALL, Script, closed_port, limits, march, multistatus, only, over_https, part, says,
    silent, with,
};

fn words(trouble: Trouble) -> String {
    match trouble {
        Trouble::Away(words)
        | Trouble::Answer(words)
        | Trouble::Address(words)
        | Trouble::Certificate(words) => words,
        other => panic!("{other:?} has no words"),
    }
}

fn impatient() -> OverHttps {
    let limits = Limits { answer: Duration::from_millis(300), ..limits() };
    OverHttps::with(limits, Some(Vec::new())).unwrap()
}

#[test]
fn a_server_that_says_nothing_is_not_waited_for() {
    let began = Instant::now();
    for begin in ["", "HTTP/1.1 200 OK\r\nETag: \"1\"\r\nContent-Length: 100\r\n\r\nBEGIN:"] {
        let server = Script::start(|_| Reply::Stalls(begin.as_bytes().to_vec()));
        let trouble = impatient().get(&server.account("/"), "/cal/1.ics").unwrap_err();
        assert!(
            matches!(&trouble, Trouble::Away(words) if words.contains("did not answer within"))
        );
        assert_eq!(server.lines(), ["GET /cal/1.ics"], "it was asked at all");
    }
    assert!(began.elapsed() < Duration::from_secs(10), "{:?}", began.elapsed());
}

#[test]
fn a_connection_lost_half_way_is_no_answer() {
    for begin in ["HTTP/1.1 200 OK\r\nETag: \"1\"\r\nContent-Length: 100\r\n\r\nBEGIN:", "HTT", ""]
    {
        let server = Script::start(|_| Reply::Says(begin.as_bytes().to_vec()));
        let trouble = over_https().get(&server.account("/"), "/cal/1.ics").unwrap_err();
        assert!(
            matches!(&trouble, Trouble::Away(words) if words.contains("was lost")),
            "{begin:?}: {trouble:?}"
        );
    }
}

#[test]
fn where_nobody_listens_is_said() {
    let address = format!("http://{}/", closed_port());
    let account = Account { address, user: String::new(), password: String::new() };
    let trouble = over_https().calendars(&account).unwrap_err();
    assert!(
        matches!(&trouble, Trouble::Away(words) if words.contains("No server answers at 127.0.0.1:"))
    );
    let account = Account { address: "https://nobody.invalid/".to_owned(), ..account };
    let over = OverHttps::with(limits(), Some(vec![super::certificates::Authority::new().der()]));
    let trouble = over.unwrap().calendars(&account).unwrap_err();
    assert!(
        matches!(&trouble, Trouble::Away(words) if words.contains("no server called nobody.invalid")),
        "{trouble:?}"
    );
}

#[test]
fn no_more_is_read_than_the_bound() {
    for head in [
        "HTTP/1.1 200 OK\r\nETag: \"1\"\r\nContent-Length: 1000000000\r\n\r\n",
        "HTTP/1.1 200 OK\r\nETag: \"1\"\r\n\r\n",
    ] {
        let first = std::sync::atomic::AtomicBool::new(true);
        let server = Script::start(move |_| {
            let mut bytes = vec![b'x'; 64 * 1024];
            if first.swap(false, std::sync::atomic::Ordering::Relaxed) {
                bytes.splice(0..0, head.bytes());
            }
            Reply::Endless(bytes)
        });
        let trouble = over_https().get(&server.account("/"), "/cal/1.ics").unwrap_err();
        assert_eq!(words(trouble), format!("{} answers with more than 1 MB.", server.at));
        // What the system holds between the two is not read.
        assert!(server.written() < 20 * SMALL, "{}", server.written());
    }
}

#[test]
fn xml_is_read_without_what_xml_can_do_to_a_reader() {
    let laughs = r#"<!DOCTYPE d:multistatus [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;">]><d:multistatus xmlns:d="DAV:">&c;</d:multistatus>"#;
    let file = r#"<!DOCTYPE d:multistatus [<!ENTITY a SYSTEM "file:///etc/passwd">]><d:multistatus xmlns:d="DAV:">&a;</d:multistatus>"#;
    // As deep as the bound allows; dropped or read by recursion it would end the program.
    let deep = format!(
        r#"<d:multistatus xmlns:d="DAV:">{}{}</d:multistatus>"#,
        "<a>".repeat(140_000),
        "</a>".repeat(140_000)
    );
    assert!(deep.len() < SMALL);
    let cut = r#"<d:multistatus xmlns:d="DAV:"><d:response><d:href>/cal/</d:href>"#;
    for (name, body) in
        [("laughs", laughs), ("file", file), ("cut", cut), ("none", "BEGIN:VCALENDAR")]
    {
        let body = body.to_owned();
        let server = Script::start(move |_| says("207 Multi-Status", &body));
        let trouble =
            over_https().changes(&server.account("/"), "/cal/", None, march()).unwrap_err();
        assert!(words(trouble).contains("cannot be read as a calendar server's answer"), "{name}");
        assert_eq!(server.lines(), ["PROPFIND /cal/"]);
    }
    let server = Script::start(move |_| says("207 Multi-Status", &deep));
    let trouble = over_https().changes(&server.account("/"), "/cal/", None, march());
    assert_eq!(trouble, Err(Trouble::NoCalendar), "it names no calendar");
}

#[test]
fn what_a_server_names_elsewhere_is_refused() {
    let other = silent("127.0.0.2");
    for href in [other.url("/cal/1.ics"), format!("//{}/cal/1.ics", other.at), "1.ics".to_owned()] {
        let server = Script::start(move |asked| match asked.method.as_str() {
            "PROPFIND" => {
                multistatus(&part("/cal/", "<d:resourcetype><c:calendar/></d:resourcetype>"))
            }
            _ => multistatus(&part(&href, "<d:getetag>\"1\"</d:getetag>")),
        });
        let over = over_https();
        let account = server.account("/");
        let trouble = over.changes(&account, "/cal/", None, march()).unwrap_err();
        assert!(words(trouble).contains("something that is not its own"));
        let trouble = over.changes(&account, "/cal/", Some("t"), march()).unwrap_err();
        assert!(words(trouble).contains("something that is not its own"), "by token too");
        assert!(!server.lines().iter().any(|line| line.contains("GET")), "{:?}", server.lines());
    }
    assert_eq!(other.lines(), Vec::<String>::new());
}

#[test]
fn a_redirection_to_another_host_is_not_followed() {
    let other = silent("127.0.0.2");
    let to = other.url("/cal/1.ics");
    let server = Script::start(move |asked| {
        if asked.path.starts_with("/.well-known/") {
            return says("404 Not Found", "");
        }
        with("307 Go", &format!("Location: {to}\r\n"), "")
    });
    let (over, account) = (over_https(), server.account("/"));
    let said = format!("says that the calendars are at {}. If you trust", other.url("/cal/1.ics"));
    let trouble = words(over.get(&account, "/cal/1.ics").unwrap_err());
    assert!(trouble.contains(&said), "{trouble}");
    assert!(over.put(&account, "/cal/1.ics", "x", &Expect::Nothing).is_err());
    assert!(over.remove(&account, "/cal/1.ics", "\"1\"").is_err());
    // Nor may the core name another host.
    let trouble = over.get(&account, &other.url("/cal/1.ics")).unwrap_err();
    assert!(words(trouble).contains(&said));
    assert_eq!(other.lines(), Vec::<String>::new(), "it never got the password");
}

#[test]
fn redirections_come_to_an_end() {
    let server =
        Script::start(|asked| with("301 Moved", &format!("Location: {}x\r\n", asked.path), ""));
    let trouble = over_https().get(&server.account("/"), "/a").unwrap_err();
    assert!(words(trouble).contains("keeps sending on"));
    assert_eq!(server.lines(), ["GET /a", "GET /ax", "GET /axx", "GET /axxx"]);
}

#[test]
fn a_redirection_on_the_same_host_keeps_the_request() {
    let server = Script::start(|asked| {
        if asked.path == "/cal/1.ics" {
            return with("308 Moved", "Location: /new/1.ics\r\n", "");
        }
        with("204 No Content", "", "")
    });
    let done = over_https().put(
        &server.account("/"),
        "/cal/1.ics",
        "text",
        &Expect::Version("\"1\"".into()),
    );
    assert_eq!(done, Ok(None));
    let asked = server.asked();
    assert_eq!(server.lines(), ["PUT /cal/1.ics", "PUT /new/1.ics"]);
    for asked in asked {
        assert_eq!(asked.body, "text");
        assert_eq!(asked.header("if-match"), Some("\"1\""));
        // ana:pässword in UTF-8, by Python's base64.
        assert_eq!(asked.header("authorization"), Some("Basic YW5hOnDDpHNzd29yZA=="));
    }
}

#[test]
fn without_a_name_none_is_sent() {
    let server = Script::start(|_| multistatus(&only("/cal/1.ics", "404 Not Found")));
    let account = Account { user: String::new(), ..server.account("/") };
    let _ = over_https().get(&account, "/cal/1.ics");
    assert_eq!(server.asked()[0].header("authorization"), None);
}

#[test]
fn it_can_be_asked_from_inside_another_runtime_and_dropped_there() {
    let server = Script::start(|_| says("404 Not Found", ""));
    let account = server.account("/");
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let over = over_https();
        assert_eq!(over.get(&account, "/cal/1.ics"), Ok(None));
        drop(over);
    });
}
