//! Addresses: what a person pasted, what a server says of itself, and where a password may go.
//!
//! The password is only ever sent to the host that was asked for, over TLS or on this machine, and to
//! the one `https` host that this host itself names by its well-known address (RFC 6764 §5), which is
//! how a domain says where its calendars are. Every other lead to another host is refused, with the
//! address in the words, so that the coach decides. DNS SRV records (RFC 6764 §3) are not asked:
//! unsigned, they would let whoever answers a name choose the host that gets the password.

use std::fmt::Write;
use std::net::IpAddr;

use carryover_core::calendar::remote::Trouble;
use url::{Host, Url};

/// Where a server says its calendars begin (RFC 6764 §5).
pub(super) const WELL_KNOWN: &str = "/.well-known/caldav";

/// Something on a server.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Place {
    /// The server alone, its path being `/`.
    pub server: Url,
    /// The path, as [`tidy`] writes it.
    pub path: String,
}

impl Place {
    /// The place that a whole address names; what follows `?` or `#` is left out.
    pub(super) fn of(url: &Url) -> Self {
        let mut server = url.clone();
        server.set_path("/");
        server.set_query(None);
        server.set_fragment(None);
        Self { server, path: tidy(url.path()) }
    }

    /// Another path on the same server.
    pub(super) fn at(&self, path: &str) -> Self {
        Self { server: self.server.clone(), path: tidy(path) }
    }

    /// The collection that holds it.
    pub(super) fn parent(&self) -> Self {
        let path = self.path.trim_end_matches('/');
        let end = path.rfind('/').map_or(0, |at| at + 1);
        self.at(if end == 0 { "/" } else { &path[..end] })
    }

    /// How the core names it: by its path where that is on the server of the account, else in full.
    pub(super) fn named(&self, account: &Url) -> String {
        if self.server == *account {
            self.path.clone()
        } else {
            format!("{}{}", self.server.as_str().trim_end_matches('/'), self.path)
        }
    }

    /// The host, as it is said to a person.
    pub(super) fn host(&self) -> String {
        said(&self.server)
    }

    /// The address that requests are sent to.
    pub(super) fn uri(&self) -> Result<http::Uri, Trouble> {
        let whole = format!("{}{}", self.server.as_str().trim_end_matches('/'), self.path);
        whole.parse().map_err(|_| Trouble::Address(format!("{whole} is not an address.")))
    }
}

/// A server as a person would say it: its host, with the port where it is an unusual one.
pub(super) fn said(url: &Url) -> String {
    let host = url.host_str().unwrap_or_default();
    url.port().map_or_else(|| host.to_owned(), |port| format!("{host}:{port}"))
}

/// Reads what a person gave as the address of their calendars: with or without `https://`, a name
/// alone, a mail address at the domain, or an address out of another program.
pub(super) fn read(typed: &str) -> Result<Place, Trouble> {
    let trouble = |words: &str| Err(Trouble::Address(words.to_owned()));
    let typed = typed.trim();
    if typed.is_empty() {
        return trouble("Enter the address of the calendar server.");
    }
    let with_scheme = match typed.split_once("://") {
        Some((scheme, rest)) => match scheme.to_ascii_lowercase().as_str() {
            "https" | "caldavs" | "caldav" => format!("https://{rest}"),
            "http" => format!("http://{rest}"),
            "webcal" | "webcals" => {
                return trouble(
                    "This is a calendar file to subscribe to, not a calendar server. Enter the \
                     server's CalDAV address.",
                );
            }
            _ => return trouble("The address of a calendar server begins with https://."),
        },
        // Of a mail address only the domain is asked.
        None => match typed.split_once('@') {
            Some((_, domain)) if !typed.contains('/') => format!("https://{domain}"),
            _ => format!("https://{typed}"),
        },
    };
    let Ok(mut url) = Url::parse(&with_scheme) else {
        return trouble(
            "This is not an address. It should look like https://calendar.example.org/.",
        );
    };
    if !url.username().is_empty() || url.password().is_some() {
        return trouble(
            "Leave the name and the password out of the address: they have fields of their own.",
        );
    }
    if !typed.contains("://") && is_here(&url) && url.set_scheme("http").is_err() {
        return trouble("This is not an address.");
    }
    if !keeps_secret(&url) {
        let host = said(&url);
        return Err(Trouble::Address(format!(
            "http:// would send your password unprotected. Enter https://{host}/ if the server has it."
        )));
    }
    Ok(Place::of(&url))
}

/// Whether the address is on this machine itself.
fn is_here(url: &Url) -> bool {
    match url.host() {
        Some(Host::Ipv4(ip)) => IpAddr::V4(ip).is_loopback(),
        Some(Host::Ipv6(ip)) => IpAddr::V6(ip).is_loopback(),
        Some(Host::Domain(name)) => name.trim_end_matches('.') == "localhost",
        None => false,
    }
}

/// Whether nobody on the way can listen: over TLS, or on this machine.
pub(super) fn keeps_secret(url: &Url) -> bool {
    url.scheme() == "https" || (url.scheme() == "http" && is_here(url))
}

/// Whether two addresses name the same host. Its port may differ.
pub(super) fn same_host(one: &Url, other: &Url) -> bool {
    one.host().is_some() && one.host() == other.host()
}

/// Where a redirection leads, if it may be followed with the password: to the same host, and never from
/// TLS to what has none.
pub(super) fn redirected(from: &Place, location: &str) -> Result<Place, Trouble> {
    let to = located(from, location)?;
    if !same_host(&from.server, &to) {
        return Err(leads_elsewhere(from, &to));
    }
    Ok(Place::of(&to))
}

/// Where a redirection leads, on any host, if nobody on the way can listen there.
pub(super) fn located(from: &Place, location: &str) -> Result<Url, Trouble> {
    let base = Url::parse(&format!("{}{}", from.server.as_str().trim_end_matches('/'), from.path));
    let to = base.and_then(|base| base.join(location)).map_err(|_| {
        Trouble::Answer(format!("{} sends on to what is not an address.", from.host()))
    })?;
    let weaker = from.server.scheme() == "https" && to.scheme() != "https";
    if weaker || !keeps_secret(&to) {
        return Err(Trouble::Address(format!(
            "{} sends on to {}, where your password would go unprotected. Whoever runs the server has to \
             correct that.",
            from.host(),
            shown(&to)
        )));
    }
    Ok(to)
}

/// The words for a lead to another host, which the coach may follow but the program does not.
pub(super) fn leads_elsewhere(from: &Place, to: &Url) -> Trouble {
    Trouble::Address(format!(
        "{} says that the calendars are at {}. If you trust that address, enter it instead.",
        from.host(),
        shown(to)
    ))
}

/// An address without what could be secret in it, and not too long.
fn shown(url: &Url) -> String {
    let whole = format!("{}://{}{}", url.scheme(), said(url), url.path());
    whole.chars().take(200).collect()
}

/// The path that a server names on itself: an absolute path, or an address whose host is this one
/// (RFC 4918 §8.3). Its scheme and port are not looked at, since servers behind another often tell them
/// wrong; only the path is ever used.
pub(super) fn href(at: &Place, text: &str) -> Result<String, Trouble> {
    let text = text.trim();
    if text.starts_with('/') && !text.starts_with("//") {
        return Ok(tidy(text));
    }
    match Url::parse(text) {
        Ok(url) if same_host(&at.server, &url) => Ok(tidy(url.path())),
        _ => Err(Trouble::Answer(format!(
            "{} answers with something that is not its own: {}",
            at.host(),
            text.chars().take(100).collect::<String>()
        ))),
    }
}

/// A path in one spelling: what may stand in a path stands as it is, everything else as `%XX`. Servers
/// spell one path in several ways (`@` and `%40`), and `%2F` is not `/` (RFC 3986 §2.2).
pub(super) fn tidy(path: &str) -> String {
    let (bytes, mut out, mut at) = (path.as_bytes(), String::with_capacity(path.len()), 0);
    while let Some(&byte) = bytes.get(at) {
        let escaped = (byte == b'%')
            .then(|| path.get(at + 1..at + 3))
            .flatten()
            .filter(|pair| pair.bytes().all(|b| b.is_ascii_hexdigit()))
            .and_then(|pair| u8::from_str_radix(pair, 16).ok());
        at += if escaped.is_some() { 3 } else { 1 };
        let means = escaped.unwrap_or(byte);
        let stands = means.is_ascii_alphanumeric() || b"-._~!$&'()*+,;=:@".contains(&means);
        if stands || (means == b'/' && escaped.is_none()) {
            out.push(char::from(means));
        } else {
            // Writing to a string cannot fail.
            let _ = write!(out, "%{means:02X}");
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reads(typed: &str) -> String {
        match read(typed) {
            Ok(place) => place.named(&Url::parse("x://y").unwrap()),
            Err(Trouble::Address(words)) => {
                words.split_whitespace().take(3).collect::<Vec<_>>().join(" ")
            }
            Err(other) => panic!("{typed}: {other:?}"),
        }
    }

    #[test]
    fn an_address_is_read_as_people_paste_it() {
        for (typed, want) in [
            ("https://dav.example.org/cal/ana/", "https://dav.example.org/cal/ana/"),
            ("  dav.example.org ", "https://dav.example.org/"),
            ("DAV.Example.ORG:8443/x", "https://dav.example.org:8443/x"),
            ("ana@example.org", "https://example.org/"),
            ("caldavs://dav.example.org/", "https://dav.example.org/"),
            ("https://dav.example.org/cal?export#top", "https://dav.example.org/cal"),
            ("https://büro.example/jörg/", "https://xn--bro-hoa.example/j%C3%B6rg/"),
            ("https://dav.example.org/a%40b/%7euser", "https://dav.example.org/a@b/~user"),
            ("localhost:5232", "http://localhost:5232/"),
            ("http://127.0.0.1:5232/ana/", "http://127.0.0.1:5232/ana/"),
            ("http://127.9.9.9/", "http://127.9.9.9/"),
            ("http://[::1]:80/", "http://[::1]/"),
            ("http://dav.example.org/", "http:// would send"),
            ("http://localhost.example.org/", "http:// would send"),
            ("http://127.0.0.1.example.org/", "http:// would send"),
            ("http://0.0.0.0/", "http:// would send"),
            ("http://192.168.1.4/", "http:// would send"),
            ("https://ana:pw@example.org/", "Leave the name"),
            ("webcal://example.org/a.ics", "This is a"),
            ("ftp://example.org/", "The address of"),
            ("file:///etc/passwd", "The address of"),
            ("", "Enter the address"),
            ("https://", "This is not"),
            ("not an address", "This is not"),
        ] {
            assert_eq!(reads(typed), want, "{typed:?}");
        }
    }

    #[test]
    fn a_path_has_one_spelling() {
        for (path, want) in [
            ("/a%40b/", "/a@b/"),
            ("/a@b/", "/a@b/"),
            ("/j%c3%b6rg/ü", "/j%C3%B6rg/%C3%BC"),
            ("/a%2fb", "/a%2Fb"),
            ("/100%25.ics", "/100%25.ics"),
            ("/100%.ics", "/100%25.ics"),
            ("/a b?c#d", "/a%20b%3Fc%23d"),
            ("/%", "/%25"),
            ("/%ü", "/%25%C3%BC"),
        ] {
            assert_eq!(tidy(path), want);
            assert_eq!(tidy(want), want, "written again it stays");
        }
    }

    #[test]
    fn an_href_stays_on_its_host() {
        let at = read("https://dav.example.org/cal/").unwrap();
        for (text, want) in [
            ("/cal/1.ics", Some("/cal/1.ics")),
            (" /cal/1.ics\n", Some("/cal/1.ics")),
            ("https://DAV.example.org/cal/1.ics", Some("/cal/1.ics")),
            // Behind another server its own address is often told wrong; only the path counts.
            ("http://dav.example.org:8080/cal/1.ics", Some("/cal/1.ics")),
            ("https://example.org/cal/1.ics", None),
            ("https://dav.example.org.evil.example/cal/1.ics", None),
            ("https://dav.example.org@evil.example/cal/1.ics", None),
            ("//evil.example/cal/1.ics", None),
            ("1.ics", None),
            ("file:///cal/1.ics", None),
            ("", None),
        ] {
            assert_eq!(href(&at, text).ok().as_deref(), want, "{text:?}");
        }
    }

    #[test]
    fn a_redirection_stays_on_its_host_and_protected() {
        let at = read("https://dav.example.org/cal").unwrap();
        let leads = |to: &str| redirected(&at, to).map(|place| place.path);
        assert_eq!(leads("/cal/"), Ok("/cal/".to_owned()));
        assert_eq!(leads("cal/"), Ok("/cal/".to_owned()));
        assert_eq!(leads("https://dav.example.org:8443/cal/"), Ok("/cal/".to_owned()));
        for to in
            ["http://dav.example.org/cal/", "https://evil.example/", "//evil.example/", "ftp://x/"]
        {
            assert!(matches!(leads(to), Err(Trouble::Address(_))), "{to}");
        }
        let here = read("http://127.0.0.1:5232/").unwrap();
        assert!(redirected(&here, "http://127.0.0.1:5232/ana/").is_ok());
        assert!(redirected(&here, "http://192.168.1.4/ana/").is_err());
    }

    #[test]
    fn a_collection_has_a_parent() {
        let at = |path| read("https://x.example").unwrap().at(path).parent().path;
        assert_eq!([at("/a/b/c.ics"), at("/a/b/"), at("/a"), at("/")], ["/a/b/", "/a/", "/", "/"]);
    }
}
