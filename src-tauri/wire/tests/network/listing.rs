//! What became of a calendar: nothing looks gone that is not, whatever the server leaves out.

use carryover_core::calendar::remote::{Calendars, Changes, Trouble};

use super::script::{
    Asked, Reply, SMALL, Script, event, march, multistatus, only, over_https, part, says, with,
};

const SYNCS: &str = "<d:resourcetype><d:collection/><c:calendar/></d:resourcetype>\
    <d:supported-report-set><d:supported-report><d:report><d:sync-collection/></d:report>\
    </d:supported-report></d:supported-report-set><d:sync-token>now</d:sync-token>";
const PLAIN: &str = "<d:resourcetype><d:collection/><c:calendar/></d:resourcetype>";

fn etag(path: &str) -> String {
    part(path, "<d:getetag>\"1\"</d:getetag>")
}

/// An event with its text, whose UID is its path.
fn whole(path: &str) -> String {
    let text = event(path);
    part(path, &format!("<d:getetag>\"1\"</d:getetag><c:calendar-data>{text}</c:calendar-data>"))
}

/// The paths that a multiget asks for.
fn wanted(asked: &Asked) -> Vec<String> {
    let hrefs = asked.body.split("<D:href>").skip(1);
    hrefs.map(|rest| rest.split('<').next().unwrap().to_owned()).collect()
}

fn fetched(asked: &Asked) -> Reply {
    multistatus(&wanted(asked).iter().map(|path| whole(path)).collect::<String>())
}

fn has(asked: &Asked, element: &str) -> bool {
    asked.body.contains(&format!("<C:{element} ")) || asked.body.contains(&format!("<D:{element} "))
}

/// A calendar of two events that answers everything but what the test answers.
fn calendar(
    prop: &'static str,
    answers: impl Fn(&Asked) -> Option<Reply> + Send + Sync + 'static,
) -> Script {
    Script::start(move |asked| {
        answers(asked).unwrap_or_else(|| match asked.method.as_str() {
            "PROPFIND" if asked.header("depth") == Some("0") => multistatus(&part("/cal/", prop)),
            "PROPFIND" => {
                multistatus(&[part("/cal/", prop), etag("/cal/1.ics"), etag("/cal/2.ics")].concat())
            }
            _ if has(asked, "calendar-multiget") => fetched(asked),
            _ if has(asked, "calendar-query") => {
                multistatus(&[etag("/cal/1.ics"), etag("/cal/2.ics")].concat())
            }
            _ => says("403 Forbidden", ""),
        })
    })
}

fn read(server: &Script, token: Option<&str>) -> Result<Changes, Trouble> {
    over_https().changes(&server.account("/"), "/cal/", token, march())
}

fn paths(changes: &Changes) -> Vec<&str> {
    changes.changed.iter().map(|stored| stored.href.as_str()).collect()
}

#[test]
fn a_server_without_sync_is_listed_over_the_span() {
    let server = calendar(PLAIN, |_| None);
    let changes = read(&server, None).unwrap();
    assert_eq!((changes.token.as_deref(), changes.whole), (None, true));
    assert_eq!(paths(&changes), ["/cal/1.ics", "/cal/2.ics"]);
    assert_eq!(changes.changed[0].text, event("/cal/1.ics"), "with the line ends of iCalendar");
    assert_eq!(changes.changed[0].etag, "\"1\"");
    assert_eq!(server.lines(), ["PROPFIND /cal/", "REPORT /cal/", "REPORT /cal/"]);
    let query = &server.asked()[1];
    // A day more on either side, for times without a zone.
    assert!(
        query.body.contains("start=\"20260228T000000Z\" end=\"20260402T000000Z\""),
        "{}",
        query.body
    );
}

#[test]
fn a_server_with_sync_gives_its_token_with_the_first_listing() {
    let server = calendar(SYNCS, |_| None);
    let changes = read(&server, None).unwrap();
    assert_eq!((changes.token.as_deref(), changes.whole), (Some("now"), true));
    assert_eq!(paths(&changes), ["/cal/1.ics", "/cal/2.ics"]);
}

#[test]
fn by_a_token_only_what_changed_is_fetched() {
    let server = calendar(SYNCS, |asked| {
        has(asked, "sync-collection").then(|| {
            assert!(
                asked.body.contains("<D:sync-token>before&amp;</D:sync-token>"),
                "{}",
                asked.body
            );
            let parts =
                [etag("/cal/2.ics"), only("/cal/3.ics", "404 Not Found"), etag("/cal/")].concat();
            multistatus(&(parts + "<d:sync-token>after</d:sync-token>"))
        })
    });
    let changes = read(&server, Some("before&")).unwrap();
    assert_eq!((changes.token.as_deref(), changes.whole), (Some("after"), false));
    assert_eq!(
        (paths(&changes), changes.gone.as_slice()),
        (vec!["/cal/2.ics"], &["/cal/3.ics".to_owned()][..])
    );
    assert_eq!(server.lines(), ["REPORT /cal/", "REPORT /cal/"]);
}

#[test]
fn a_forgotten_token_however_it_is_said_means_everything_anew() {
    let named = r#"<d:error xmlns:d="DAV:"><d:valid-sync-token/></d:error>"#;
    for (status, body) in [
        ("403 Forbidden", named),
        ("403 Forbidden", ""),
        ("400 Bad Request", ""),
        ("405 Method Not Allowed", ""),
        ("409 Conflict", named),
        ("410 Gone", ""),
        ("412 Precondition Failed", ""),
        ("501 Not Implemented", ""),
        ("507 Insufficient Storage", named),
    ] {
        let server =
            calendar(SYNCS, move |asked| has(asked, "sync-collection").then(|| says(status, body)));
        let changes = read(&server, Some("old")).unwrap_or_else(|e| panic!("{status}: {e:?}"));
        assert_eq!((changes.token.as_deref(), changes.whole), (Some("now"), true), "{status}");
        assert_eq!(paths(&changes), ["/cal/1.ics", "/cal/2.ics"], "{status}");
    }
}

#[test]
fn a_calendar_that_is_gone_or_closed_is_no_empty_calendar() {
    for (status, want) in [
        ("404 Not Found", Trouble::NoCalendar),
        ("403 Forbidden", Trouble::Forbidden),
        ("401 No", Trouble::SignIn),
    ] {
        for token in [None, Some("old")] {
            let server = Script::start(move |_| says(status, ""));
            assert_eq!(read(&server, token), Err(want.clone()), "{status}");
        }
    }
    let server = Script::start(|_| says("500 Internal Server Error", ""));
    assert!(
        matches!(read(&server, Some("old")), Err(Trouble::Answer(_))),
        "a fault forgets no token"
    );
    assert_eq!(server.lines(), ["REPORT /cal/"]);
}

#[test]
fn a_truncated_account_of_changes_is_followed_to_its_end() {
    let server = calendar(SYNCS, |asked| {
        let (before, more, after) = if asked.body.contains(">one<") {
            (etag("/cal/a.ics"), true, "two")
        } else if asked.body.contains(">two<") {
            // What was there in the first piece went in between.
            (only("/cal/a.ics", "404 Not Found") + &etag("/cal/b.ics"), true, "three")
        } else {
            (etag("/cal/c.ics"), false, "four")
        };
        has(asked, "sync-collection").then(|| {
            let cut = if more { only("/cal/", "507 Insufficient Storage") } else { String::new() };
            multistatus(&format!("{before}{cut}<d:sync-token>{after}</d:sync-token>"))
        })
    });
    let changes = read(&server, Some("one")).unwrap();
    assert_eq!((changes.token.as_deref(), changes.whole), (Some("four"), false));
    assert_eq!(paths(&changes), ["/cal/b.ics", "/cal/c.ics"]);
    assert_eq!(changes.gone, ["/cal/a.ics"]);
}

#[test]
fn a_truncated_account_that_does_not_go_on_means_everything_anew() {
    let server = calendar(SYNCS, |asked| {
        has(asked, "sync-collection").then(|| {
            let parts = etag("/cal/2.ics") + &only("/cal/", "507 Insufficient Storage");
            multistatus(&(parts + "<d:sync-token>old</d:sync-token>"))
        })
    });
    let changes = read(&server, Some("old")).unwrap();
    assert!(changes.whole);
    assert_eq!(paths(&changes), ["/cal/1.ics", "/cal/2.ics"]);
}

#[test]
fn an_account_without_a_token_is_none() {
    let server = calendar(SYNCS, |asked| {
        has(asked, "sync-collection").then(|| multistatus(&etag("/cal/2.ics")))
    });
    let changes = read(&server, Some("old")).unwrap();
    assert_eq!((changes.whole, changes.changed.len()), (true, 2));
}

#[test]
fn a_truncated_listing_is_never_the_whole() {
    let cut = || only("/cal/", "507 Insufficient Storage");
    // The members are listed instead.
    let server = calendar(PLAIN, move |asked| {
        has(asked, "calendar-query").then(|| multistatus(&(etag("/cal/1.ics") + &cut())))
    });
    assert_eq!(paths(&read(&server, None).unwrap()), ["/cal/1.ics", "/cal/2.ics"]);
    // And when they are truncated as well, the calendar is not read at all.
    let server = calendar(PLAIN, move |asked| {
        let lists = has(asked, "calendar-query")
            || asked.header("depth") == Some("1") && asked.method == "PROPFIND";
        lists.then(|| multistatus(&(etag("/cal/1.ics") + &cut())))
    });
    let Err(Trouble::Answer(words)) = read(&server, None) else { panic!("it was read as whole") };
    assert!(words.contains("does not list the whole calendar"), "{words}");
    // A server with sync gives it in pieces.
    let server = calendar(SYNCS, move |asked| {
        if has(asked, "calendar-query") {
            return Some(multistatus(&(etag("/cal/1.ics") + &cut())));
        }
        has(asked, "sync-collection").then(|| {
            if asked.body.contains(">half<") {
                multistatus(&(etag("/cal/2.ics") + "<d:sync-token>all</d:sync-token>"))
            } else {
                multistatus(&(etag("/cal/1.ics") + &cut() + "<d:sync-token>half</d:sync-token>"))
            }
        })
    });
    let changes = read(&server, None).unwrap();
    assert_eq!(paths(&changes), ["/cal/1.ics", "/cal/2.ics"]);
    assert_eq!((changes.token.as_deref(), changes.whole), (Some("all"), true));
}

#[test]
fn what_is_listed_but_not_sent_is_asked_for_by_itself() {
    let without_second =
        |asked: &Asked| has(asked, "calendar-multiget").then(|| multistatus(&whole("/cal/1.ics")));
    let server = calendar(PLAIN, move |asked| {
        without_second(asked).or_else(|| {
            asked.is("GET", "/cal/2.ics").then(|| with("200 OK", "ETag: \"9\"\r\n", &event("2")))
        })
    });
    assert_eq!(read(&server, None).unwrap().changed[1].etag, "\"9\"");
    let server = calendar(PLAIN, move |asked| {
        without_second(asked).or_else(|| (asked.method == "GET").then(|| says("500 Fault", "")))
    });
    assert!(matches!(read(&server, None), Err(Trouble::Answer(_))), "a fault makes nothing gone");
}

#[test]
fn a_server_without_multiget_is_asked_one_by_one() {
    let server = calendar(PLAIN, |asked| {
        if has(asked, "calendar-multiget") {
            return Some(says("403 Forbidden", ""));
        }
        (asked.method == "GET").then(|| with("200 OK", "ETag: \"9\"\r\n", &event(&asked.path)))
    });
    assert_eq!(paths(&read(&server, None).unwrap()), ["/cal/1.ics", "/cal/2.ics"]);
}

#[test]
fn what_went_between_listing_and_fetching_is_gone() {
    let multiget = |asked: &Asked| {
        has(asked, "calendar-multiget")
            .then(|| multistatus(&(whole("/cal/1.ics") + &only("/cal/2.ics", "404 Not Found"))))
    };
    let server = calendar(SYNCS, move |asked| {
        multiget(asked).or_else(|| {
            has(asked, "sync-collection").then(|| {
                let parts = etag("/cal/1.ics") + &etag("/cal/2.ics");
                multistatus(&(parts + "<d:sync-token>after</d:sync-token>"))
            })
        })
    });
    let changes = read(&server, Some("before")).unwrap();
    assert_eq!(
        (paths(&changes), changes.gone.clone()),
        (vec!["/cal/1.ics"], vec!["/cal/2.ics".to_owned()])
    );
    let changes = read(&server, None).unwrap();
    assert_eq!(
        (paths(&changes), changes.gone.clone()),
        (vec!["/cal/1.ics"], vec![]),
        "of the whole it is not said"
    );
}

#[test]
fn notes_and_collections_are_no_events() {
    let server = calendar(SYNCS, |asked| {
        if has(asked, "calendar-multiget") {
            let note = whole("/cal/note.ics").replace("VEVENT", "VJOURNAL");
            return Some(multistatus(&(whole("/cal/1.ics") + &note)));
        }
        has(asked, "sync-collection").then(|| {
            let parts = [etag("/cal/1.ics"), etag("/cal/note.ics"), etag("/cal/below/")].concat();
            multistatus(&(parts + "<d:sync-token>after</d:sync-token>"))
        })
    });
    let changes = read(&server, Some("before")).unwrap();
    assert_eq!(
        (paths(&changes), changes.gone.clone()),
        (vec!["/cal/1.ics"], vec!["/cal/note.ics".to_owned()])
    );
}

#[test]
fn one_path_in_two_spellings_is_one_path() {
    let server = calendar(PLAIN, |asked| {
        if has(asked, "calendar-multiget") {
            assert_eq!(wanted(asked), ["/cal/100%25.ics", "/cal/a@j%C3%B6rg.ics"]);
            return Some(multistatus(&(whole("/cal/a@jörg.ics") + &whole("/cal/100%25.ics"))));
        }
        has(asked, "calendar-query")
            .then(|| multistatus(&(etag("/cal/a%40j%c3%b6rg.ics") + &etag("/cal/100%25.ics"))))
    });
    let changes = read(&server, None).unwrap();
    assert_eq!(paths(&changes), ["/cal/100%25.ics", "/cal/a@j%C3%B6rg.ics"]);
    assert!(
        !server.lines().iter().any(|line| line.starts_with("GET")),
        "none was asked for by itself"
    );
}

#[test]
fn text_in_pieces_of_xml_is_one_text() {
    let server = calendar(PLAIN, |asked| {
        has(asked, "calendar-multiget").then(|| {
            let data = "<d:getetag>\"1\"</d:getetag><c:calendar-data><![CDATA[BEGIN:VCALENDAR\r\nBEGIN:VE]]>VENT\r\n\
                        SUMMARY:a &lt;b&gt; <!-- no -->&amp; ü\r\n<![CDATA[END:VEVENT\r\nEND:VCALENDAR\r\n]]></c:calendar-data>"
;
            multistatus(&(part("/cal/1.ics", data) + &only("/cal/2.ics", "404 Not Found")))
        })
    });
    let changes = read(&server, None).unwrap();
    assert_eq!(
        changes.changed[0].text,
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nSUMMARY:a <b> & ü\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
    );
}

#[test]
fn a_batch_that_is_too_large_is_asked_for_in_smaller_ones() {
    let listed = || (0..60).map(|n| etag(&format!("/cal/{n:02}.ics"))).collect::<String>();
    let padding = "x".repeat(SMALL / 10);
    let server = calendar(PLAIN, move |asked| {
        if has(asked, "calendar-multiget") {
            let one = |path: &String| whole(path).replace("-//x//x//EN", &padding);
            return Some(multistatus(&wanted(asked).iter().map(one).collect::<String>()));
        }
        has(asked, "calendar-query").then(|| multistatus(&listed()))
    });
    let changes = read(&server, None).unwrap();
    let want: Vec<String> = (0..60).map(|n| format!("/cal/{n:02}.ics")).collect();
    assert_eq!(paths(&changes), want, "all of them, in order");
}
