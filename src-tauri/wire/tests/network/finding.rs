//! The calendars are found from whatever address a person has for them.

use carryover_core::calendar::remote::{Calendars, Found, Trouble};
use carryover_wire::caldav::OverHttps;

use super::certificates::Authority;
use super::script::{
    Asked, Reply, Script, event, limits, multistatus, over_https, part, says, silent, with,
};

const CALENDAR: &str = "<d:resourcetype><d:collection/><c:calendar/></d:resourcetype>";
const PLAIN: &str = "<d:resourcetype><d:collection/></d:resourcetype>";

fn may(name: &str) -> String {
    format!(
        "<d:current-user-privilege-set><d:privilege><d:{name}/></d:privilege></d:current-user-privilege-set>"
    )
}

/// A server below `/dav/` with a principal, a home and three collections in it.
fn usual(asked: &Asked) -> Reply {
    if asked.is("GET", "/.well-known/caldav") {
        return with("301 Moved", "Location: /dav/\r\n", "");
    }
    if asked.path == "/dav" || asked.path == "/cal/ana" {
        return with("301 Moved", &format!("Location: {}/\r\n", asked.path), "");
    }
    if asked.method != "PROPFIND" {
        return says("405 Method Not Allowed", "");
    }
    let deep = asked.header("depth") == Some("1");
    let principal =
        "<d:current-user-principal><d:href>/who/ana/</d:href></d:current-user-principal>";
    let home = "<c:calendar-home-set><d:href>/cal/ana/</d:href></c:calendar-home-set>";
    let name = |name: &str| format!("<d:displayname>{name}</d:displayname>");
    let takes = |kind: &str| {
        format!(
            "<c:supported-calendar-component-set><c:comp name=\"{kind}\"/></c:supported-calendar-component-set>"
        )
    };
    let private = part(
        "/cal/ana/j%c3%b6rg/",
        &[CALENDAR, &name("Jörg &amp; &lt;b&gt;Zoë&lt;/b&gt;"), &may("write"), &takes("VEVENT")]
            .concat(),
    );
    let club = part("/cal/ana/club", &[CALENDAR, &name("Club"), &may("read")].concat());
    let notes = part("/cal/ana/notes/", &[CALENDAR, &name("Notes"), &takes("VJOURNAL")].concat());
    match (asked.path.as_str(), deep) {
        ("/dav/", false) => multistatus(&part("/dav/", &[PLAIN, principal].concat())),
        ("/dav/", true) => multistatus(&part("/dav/", PLAIN)),
        ("/who/ana/", false) => multistatus(&part("/who/ana/", &[PLAIN, home].concat())),
        ("/cal/ana/", false) => multistatus(&part("/cal/ana/", &[PLAIN, principal].concat())),
        ("/cal/ana/", true) => {
            multistatus(&[part("/cal/ana/", PLAIN), private, club, notes].concat())
        }
        ("/cal/ana/j%C3%B6rg/", _) => multistatus(&private),
        ("/cal/ana/notes/", _) => multistatus(&notes),
        _ => says("404 Not Found", ""),
    }
}

fn jorg() -> Found {
    Found {
        href: "/cal/ana/j%C3%B6rg/".to_owned(),
        name: "Jörg & <b>Zoë</b>".to_owned(),
        writable: true,
    }
}

fn club() -> Found {
    Found { href: "/cal/ana/club/".to_owned(), name: "Club".to_owned(), writable: false }
}

#[test]
fn any_address_a_person_is_likely_to_have_will_do() {
    for path in ["/", "", "/dav/", "/dav", "/who/ana/", "/cal/ana/", "/cal/ana", "/no/such/page"] {
        let server = Script::start(usual);
        let found = over_https().calendars(&server.account(path));
        assert_eq!(found, Ok(vec![jorg(), club()]), "{path:?}: {:?}", server.lines());
    }
    for path in ["/cal/ana/jörg/", "/cal/ana/j%c3%b6rg/?export"] {
        let server = Script::start(usual);
        assert_eq!(over_https().calendars(&server.account(path)), Ok(vec![jorg()]), "{path}");
    }
}

#[test]
fn a_calendar_of_notes_alone_is_none() {
    let server = Script::start(|asked| match asked.path.as_str() {
        "/cal/ana/notes/" => usual(asked),
        _ => says("404 Not Found", ""),
    });
    assert_eq!(
        over_https().calendars(&server.account("/cal/ana/notes/")),
        Err(Trouble::NoCalendar)
    );
}

#[test]
fn the_well_known_address_is_asked_without_the_password() {
    let server = Script::start(usual);
    over_https().calendars(&server.account("/")).unwrap();
    let asked = server.asked();
    assert!(asked[0].is("GET", "/.well-known/caldav"), "{:?}", server.lines());
    assert_eq!(asked[0].header("authorization"), None);
    assert!(asked[1..].iter().all(|asked| asked.header("authorization").is_some()));
}

#[test]
fn a_domain_may_have_its_calendars_on_another_host() {
    let authority = Authority::new();
    let tls = authority.server("127.0.0.2", |_| ());
    let there = Script::on("127.0.0.2", Some(tls), |asked| match asked.method.as_str() {
        "GET" => with("200 OK", "ETag: \"1\"\r\n", &event("1")),
        _ => usual(asked),
    });
    let to = there.url("/dav/");
    let domain = Script::start(move |asked| match asked.path.as_str() {
        "/.well-known/caldav" => with("302 Found", &format!("Location: {to}\r\n"), ""),
        _ => says("404 Not Found", ""),
    });
    let over = || OverHttps::with(limits(), Some(vec![authority.der()])).unwrap();
    let account = domain.account("/");
    let found = over().calendars(&account).unwrap();
    let href = there.url("/cal/ana/j%C3%B6rg/");
    assert_eq!(found[0].href, href, "in full, since it is not on the host of the account");
    assert!(domain.asked().iter().all(|asked| asked.header("authorization").is_none()));

    // Later, in another run of the program, the same address is asked with what it names.
    let stored = over().get(&account, &format!("{href}1.ics")).unwrap().unwrap();
    assert_eq!(stored.href, format!("{href}1.ics"));
    let other = silent("127.0.0.3");
    let trouble = over().get(&account, &other.url("/1.ics")).unwrap_err();
    assert!(matches!(trouble, Trouble::Address(_)), "no third host gets the password: {trouble:?}");
    assert_eq!(other.lines(), Vec::<String>::new());
}

#[test]
fn a_lead_to_another_host_is_the_coachs_to_follow() {
    let other = silent("127.0.0.2");
    for kind in ["principal", "home"] {
        let to = other.url("/cal/ana/");
        let server = Script::start(move |asked| {
            let prop = if kind == "home" {
                format!("<c:calendar-home-set><d:href>{to}</d:href></c:calendar-home-set>")
            } else {
                format!(
                    "<d:current-user-principal><d:href>{to}</d:href></d:current-user-principal>"
                )
            };
            match asked.method.as_str() {
                "PROPFIND" => multistatus(&part(&asked.path, &[PLAIN, &prop].concat())),
                _ => says("404 Not Found", ""),
            }
        });
        let trouble = over_https().calendars(&server.account("/dav/")).unwrap_err();
        let said =
            format!("are at {}. If you trust that address, enter it", other.url("/cal/ana/"));
        assert!(
            matches!(&trouble, Trouble::Address(words) if words.contains(&said)),
            "{kind}: {trouble:?}"
        );
    }
    assert_eq!(other.lines(), Vec::<String>::new());
}

#[test]
fn a_property_that_is_not_there_spoils_nothing() {
    let server = Script::start(|asked| {
        let missing = "<d:propstat><d:prop><c:calendar-home-set/></d:prop><d:status>HTTP/1.1 404 Not Found\
                       </d:status></d:propstat></d:response>";
        let one = part("/one/", CALENDAR).replace("</d:response>", missing);
        if asked.is("PROPFIND", "/one/") { multistatus(&one) } else { says("404 Not Found", "") }
    });
    let found = over_https().calendars(&server.account("/one/")).unwrap();
    assert_eq!(found, [Found { href: "/one/".to_owned(), name: String::new(), writable: true }]);
}

#[test]
fn a_calendar_is_made_beside_the_others_where_nothing_is() {
    let server = Script::start(|asked| {
        match (asked.method.as_str(), asked.path.as_str()) {
            // Taken, though it was not listed: by somebody else, a moment ago.
            ("MKCALENDAR", "/cal/ana/club-2/") => says("403 Forbidden", ""),
            ("PROPFIND", "/cal/ana/club-2/") => multistatus(&part("/cal/ana/club-2/", PLAIN)),
            ("MKCALENDAR", "/cal/ana/club-3/") => says("201 Created", ""),
            ("PROPFIND", "/cal/ana/club-3/") => {
                let name = "<d:displayname>Club &amp; Hall</d:displayname>";
                multistatus(&part("/cal/ana/club-3/", &[CALENDAR, name, &may("all")].concat()))
            }
            _ => usual(asked),
        }
    });
    let made = over_https().make(&server.account("/"), "Club").unwrap();
    let want = Found {
        href: "/cal/ana/club-3/".to_owned(),
        name: "Club & Hall".to_owned(),
        writable: true,
    };
    assert_eq!(made, want);
    let asked = server.asked();
    let make = asked.iter().find(|asked| asked.method == "MKCALENDAR").unwrap();
    assert!(make.body.contains("<D:displayname>Club</D:displayname>"), "{}", make.body);
    assert!(make.body.contains("<C:comp name=\"VEVENT\"/>"), "{}", make.body);
}

#[test]
fn a_server_that_knows_only_the_newer_request_makes_a_calendar_too() {
    let made = std::sync::atomic::AtomicBool::new(false);
    let server = Script::start(move |asked| match (asked.method.as_str(), asked.path.as_str()) {
        ("MKCALENDAR", _) => says("501 Not Implemented", ""),
        ("MKCOL", "/cal/ana/lessons/") => {
            made.store(true, std::sync::atomic::Ordering::Relaxed);
            says("201 Created", "")
        }
        ("PROPFIND", "/cal/ana/lessons/") if made.load(std::sync::atomic::Ordering::Relaxed) => {
            multistatus(&part("/cal/ana/lessons/", CALENDAR))
        }
        _ => usual(asked),
    });
    let made = over_https().make(&server.account("/"), "Lessons <&>").unwrap();
    assert_eq!((made.href.as_str(), made.name.as_str()), ("/cal/ana/lessons/", "Lessons <&>"));
}
