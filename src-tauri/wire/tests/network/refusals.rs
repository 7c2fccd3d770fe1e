//! What a server refuses, each told as what it is.

use carryover_core::calendar::remote::{Calendars, Expect, Trouble};

use super::script::{Reply, Script, event, march, multistatus, over_https, part, says, with};

/// What comes of one answer to everything.
struct Told {
    calendars: Trouble,
    get: Result<Option<String>, Trouble>,
    create: Trouble,
    update: Trouble,
    remove: Trouble,
}

fn told(answer: impl Fn() -> Reply + Send + Sync + 'static) -> Told {
    let server = Script::start(move |_| answer());
    let (over, account) = (over_https(), server.account("/dav/"));
    let version = || Expect::Version("\"1\"".to_owned());
    Told {
        calendars: over.calendars(&account).unwrap_err(),
        get: over.get(&account, "/dav/1.ics").map(|found| found.map(|found| found.text)),
        create: over.put(&account, "/dav/1.ics", "x", &Expect::Nothing).unwrap_err(),
        update: over.put(&account, "/dav/1.ics", "x", &version()).unwrap_err(),
        remove: over.remove(&account, "/dav/1.ics", "\"1\"").unwrap_err(),
    }
}

#[test]
fn the_name_or_the_password_is_wrong() {
    for challenge in
        ["", "WWW-Authenticate: Digest realm=\"x\"\r\nWWW-Authenticate: Basic realm=\"x\"\r\n"]
    {
        let told = told(move || with("401 Unauthorized", challenge, ""));
        assert_eq!(told.calendars, Trouble::SignIn);
        assert_eq!(told.get, Err(Trouble::SignIn));
        assert_eq!([told.create, told.update, told.remove], [const { Trouble::SignIn }; 3]);
    }
}

#[test]
fn another_way_of_signing_in_is_not_a_wrong_password() {
    let told = told(|| with("401 Unauthorized", "WWW-Authenticate: Bearer\r\n", ""));
    let Trouble::Answer(words) = told.calendars else { panic!("{:?}", told.calendars) };
    assert!(words.contains("does not let you sign in with a name and a password alone"));
}

#[test]
fn this_account_may_not() {
    let told = told(|| says("403 Forbidden", "<html>no</html>"));
    assert_eq!(told.calendars, Trouble::Forbidden);
    assert_eq!(told.get, Err(Trouble::Forbidden));
    assert_eq!([told.create, told.update, told.remove], [const { Trouble::Forbidden }; 3]);
}

#[test]
fn it_is_not_there() {
    for status in ["404 Not Found", "410 Gone"] {
        let told = told(move || says(status, ""));
        assert_eq!(told.calendars, Trouble::NoCalendar);
        assert_eq!(told.get, Ok(None));
        assert_eq!(told.update, Trouble::Gone);
        assert_eq!(told.remove, Trouble::Gone);
    }
    assert_eq!(told(|| says("404 Not Found", "")).create, Trouble::NoCalendar);
    // RFC 4918 §9.7.1: the collection is missing.
    assert_eq!(told(|| says("409 Conflict", "Conflict")).create, Trouble::NoCalendar);
}

#[test]
fn another_version_is_there() {
    let told = told(|| says("412 Precondition Failed", ""));
    assert_eq!([told.create, told.update], [const { Trouble::OtherVersion }; 2]);
}

#[test]
fn removing_another_version_is_told_from_removing_nothing() {
    let removed = |there: bool| {
        let server = Script::start(move |asked| match (asked.method.as_str(), there) {
            ("DELETE", _) => says("412 Precondition Failed", ""),
            (_, true) => with("200 OK", "ETag: \"2\"\r\n", &event("1")),
            (_, false) => says("404 Not Found", ""),
        });
        over_https().remove(&server.account("/"), "/cal/1.ics", "\"1\"")
    };
    assert_eq!(removed(true), Err(Trouble::OtherVersion));
    assert_eq!(removed(false), Err(Trouble::Gone));
}

#[test]
fn there_is_no_room() {
    let named = |name: &str| {
        format!(
            r#"<d:error xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"><{name}/></d:error>"#
        )
    };
    for (status, body) in [
        ("507 Insufficient Storage", String::new()),
        ("413 Content Too Large", String::new()),
        ("403 Forbidden", named("c:max-resource-size")),
        ("403 Forbidden", named("d:quota-not-exceeded")),
    ] {
        let told = told(move || says(status, &body));
        assert_eq!([told.create, told.update], [const { Trouble::NoRoom }; 2], "{status}");
    }
}

#[test]
fn it_does_not_take_the_event_and_says_why() {
    let body = r#"<d:error xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"><c:valid-calendar-data/></d:error>"#;
    let told = told(move || says("403 Forbidden", body));
    let Trouble::Answer(words) = told.create else { panic!("{:?}", told.create) };
    assert!(words.ends_with("answers “403 Forbidden”: valid-calendar-data."), "{words}");
    let body = body.replace("valid-calendar-data", "no-uid-conflict");
    let told = self::told(move || says("409 Conflict", &body));
    let Trouble::Answer(words) = told.create else { panic!("{:?}", told.create) };
    assert!(words.contains("has this event already"), "{words}");
}

#[test]
fn it_is_out_of_service() {
    let told = told(|| says("503 Service Unavailable", ""));
    assert!(matches!(told.create, Trouble::Away(_)));
    assert!(matches!(told.calendars, Trouble::Away(_)));
    let told = self::told(|| says("500 Internal Server Error", "<html>"));
    let Trouble::Answer(words) = told.create else { panic!("{:?}", told.create) };
    assert!(words.ends_with("answers “500 Internal Server Error”."), "{words}");
}

#[test]
fn a_page_for_people_is_no_calendar() {
    let server = Script::start(|_| says("200 OK", "<html>Welcome</html>"));
    assert_eq!(over_https().calendars(&server.account("/dav/")), Err(Trouble::NoCalendar));
    let trouble = over_https().changes(&server.account("/"), "/cal/", None, march());
    assert_eq!(trouble, Err(Trouble::NoCalendar));
}

#[test]
fn a_version_is_given_only_for_the_text_as_it_was_sent() {
    let put = |etag: &'static str, kept: fn(&str) -> String| {
        let server = Script::start(move |asked| match asked.method.as_str() {
            "PUT" => with("201 Created", etag, ""),
            _ => with("200 OK", etag, &kept(&event("1"))),
        });
        over_https().put(&server.account("/"), "/cal/1.ics", &event("1"), &Expect::Nothing).unwrap()
    };
    let same: fn(&str) -> String = str::to_owned;
    assert_eq!(put("ETag: \"7\"\r\n", same), Some("\"7\"".to_owned()));
    assert_eq!(put("ETag: \"7\"\r\n", |text| text.replace("\r\n", "\n")), Some("\"7\"".to_owned()));
    assert_eq!(put("ETag: \"7\"\r\n", |text| text.replace("//x//EN", "//server//EN")), None);
    assert_eq!(put("ETag: W/\"7\"\r\n", same), None, "a weak version is none");
    assert_eq!(put("", same), None);
}

#[test]
fn a_put_whose_text_cannot_be_read_back_is_a_put() {
    let server = Script::start(|asked| match asked.method.as_str() {
        "PUT" => with("201 Created", "ETag: \"7\"\r\n", ""),
        _ => Reply::Says(Vec::new()),
    });
    let done = over_https().put(&server.account("/"), "/cal/1.ics", &event("1"), &Expect::Nothing);
    assert_eq!(done, Ok(None));
    let asked = &server.asked()[0];
    assert_eq!(asked.header("if-none-match"), Some("*"));
    assert_eq!(asked.header("content-type"), Some("text/calendar; charset=utf-8"));
}

#[test]
fn a_server_that_tells_no_version_with_a_text_is_asked_for_both_together() {
    let server = Script::start(|asked| match asked.method.as_str() {
        "GET" => says("200 OK", &event("1")),
        "REPORT" => {
            let prop = format!(
                "<d:getetag>\"3\"</d:getetag><c:calendar-data>{}</c:calendar-data>",
                event("1")
            );
            multistatus(&part("/cal/1.ics", &prop))
        }
        other => panic!("{other}"),
    });
    let found = over_https().get(&server.account("/"), "/cal/1.ics").unwrap().unwrap();
    assert_eq!((found.etag.as_str(), found.text), ("\"3\"", event("1")));
    assert_eq!(server.lines(), ["GET /cal/1.ics", "REPORT /cal/"]);
}
