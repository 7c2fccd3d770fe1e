//! Reads a `multistatus` (RFC 4918 §13), the XML that calendar servers answer with.
//!
//! libdav writes the requests; its readings of answers are not used, because they take paths apart
//! (`%25` becomes `%`), let a truncated listing pass for a whole one, and fail on a property that is
//! merely not there. A document type declaration is refused, so no entity is ever expanded; elements are
//! counted, and reading does not recurse.

use carryover_core::calendar::remote::Trouble;
use http::StatusCode;
use libdav::names::{self, CALDAV, DAV};
use libdav::xmlutils::{normalise_newlines, parse_statusline};
use roxmltree::{Document, Node, ParsingOptions};

use super::address::{Place, href};
use super::ask::Answer;
use super::trouble::{refused, unreadable};

/// Elements and texts in one answer.
const NODES: u32 = 2_000_000;

/// What a server says of several of its resources.
pub(super) struct Multistatus {
    /// The server, and the path that was asked.
    pub place: Place,
    pub parts: Vec<Part>,
    /// The state that the answer speaks of (RFC 6578).
    pub token: Option<String>,
}

/// What it says of one resource.
pub(super) struct Part {
    /// Its path.
    pub path: String,
    /// The status of the resource as a whole, where it has one.
    pub status: Option<StatusCode>,
    /// The properties that are there.
    pub has: Properties,
}

/// The properties that the program asks for.
#[derive(Default)]
pub(super) struct Properties {
    pub name: Option<String>,
    pub etag: Option<String>,
    /// The iCalendar text, with the ends of lines that iCalendar has.
    pub text: Option<String>,
    pub is_calendar: bool,
    /// Addresses, as the server writes them.
    pub principal: Option<String>,
    pub homes: Vec<String>,
    /// The kinds of component it takes, where it says.
    pub components: Option<Vec<String>>,
    /// What the account may do, where it says.
    pub privileges: Option<Vec<String>>,
    pub token: Option<String>,
    /// Whether it reports what changed.
    pub syncs: bool,
}

impl Multistatus {
    /// Reads an answer, whose status must say that it is one.
    pub(super) fn read(answer: &Answer) -> Result<Self, Trouble> {
        if answer.status != StatusCode::MULTI_STATUS {
            return Err(if answer.status.is_success() {
                unreadable(&answer.place.host())
            } else {
                refused(answer)
            });
        }
        let unreadable = || unreadable(&answer.place.host());
        let text = std::str::from_utf8(&answer.body).map_err(|_| unreadable())?;
        let options = ParsingOptions { nodes_limit: NODES, ..ParsingOptions::default() };
        let document = Document::parse_with_options(text, options).map_err(|_| unreadable())?;
        let root = document.root_element();
        if !is(&root, DAV, "multistatus") {
            return Err(unreadable());
        }
        let (mut parts, mut token) = (Vec::new(), None);
        for node in root.children() {
            if is(&node, DAV, "sync-token") {
                token = words(&node);
            } else if is(&node, DAV, "response") {
                read_part(&answer.place, &node, &mut parts)
                    .map_err(|e| e.unwrap_or_else(unreadable))?;
            }
        }
        Ok(Self { place: answer.place.clone(), parts, token })
    }

    /// What it says of the very resource that was asked.
    pub(super) fn own(&self) -> Option<&Part> {
        self.parts.iter().find(|part| self.is_own(part))
    }

    /// Whether this is the resource that was asked; with or without the slash that ends a collection.
    pub(super) fn is_own(&self, part: &Part) -> bool {
        part.path.trim_end_matches('/') == self.place.path.trim_end_matches('/')
    }

    /// Whether the server left something out (RFC 6578 §3.6, RFC 4791 §7.8).
    pub(super) fn is_truncated(&self) -> bool {
        self.parts.iter().any(|part| part.status == Some(StatusCode::INSUFFICIENT_STORAGE))
    }
}

/// One `response`. It has several paths where they share a status.
fn read_part(place: &Place, node: &Node, parts: &mut Vec<Part>) -> Result<(), Option<Trouble>> {
    let mut paths = Vec::new();
    let (mut status, mut has) = (None, Properties::default());
    for node in node.children() {
        if is(&node, DAV, "href") {
            paths.push(href(place, &words(&node).unwrap_or_default()).map_err(Some)?);
        } else if is(&node, DAV, "status") {
            status = Some(read_status(&node)?);
        } else if is(&node, DAV, "propstat") {
            let Some(of) = node.children().find(|node| is(node, DAV, "status")) else {
                return Err(None);
            };
            if read_status(&of)?.is_success() {
                let props = node.children().filter(|node| is(node, DAV, "prop"));
                props.flat_map(|prop| prop.children()).for_each(|node| has.take(&node));
            }
        }
    }
    let Some(last) = paths.pop() else { return Err(None) };
    for path in paths {
        parts.push(Part { path, status, has: Properties::default() });
    }
    parts.push(Part { path: last, status, has });
    Ok(())
}

fn read_status(node: &Node) -> Result<StatusCode, Option<Trouble>> {
    parse_statusline(&words(node).unwrap_or_default()).map_err(|_| None)
}

impl Properties {
    fn take(&mut self, node: &Node) {
        let name = node.tag_name();
        match (name.namespace().unwrap_or_default(), name.name()) {
            (DAV, "displayname") => self.name = words(node),
            (DAV, "getetag") => self.etag = words(node),
            (DAV, "sync-token") => self.token = words(node),
            (DAV, "resourcetype") => {
                self.is_calendar = node.children().any(|node| is(&node, CALDAV, "calendar"));
            }
            (DAV, "current-user-principal") => {
                self.principal = hrefs(node).next();
            }
            (DAV, "current-user-privilege-set") => {
                let each = node.descendants().filter(|node| is(node, DAV, "privilege"));
                let each = each.flat_map(|node| node.children()).filter(Node::is_element);
                self.privileges =
                    Some(each.map(|node| node.tag_name().name().to_owned()).collect());
            }
            (DAV, "supported-report-set") => {
                self.syncs =
                    node.descendants().any(|node| node.tag_name() == names::SYNC_COLLECTION);
            }
            (CALDAV, "calendar-home-set") => self.homes = hrefs(node).collect(),
            (CALDAV, "supported-calendar-component-set") => {
                let each = node.children().filter_map(|node| node.attribute("name"));
                self.components = Some(each.map(str::to_ascii_uppercase).collect());
            }
            (CALDAV, "calendar-data") => {
                // XML reads CR LF as LF, which iCalendar is not.
                self.text = Some(normalise_newlines(&all_text(node)));
            }
            _ => {}
        }
    }

    /// Whether it is a calendar that takes events.
    pub(super) fn holds_events(&self) -> bool {
        let takes = self.components.as_ref();
        self.is_calendar && takes.is_none_or(|each| each.iter().any(|one| one == "VEVENT"))
    }

    /// Whether the account may add to it and change what is in it; yes where the server does not say.
    pub(super) fn writable(&self) -> bool {
        let Some(may) = &self.privileges else { return true };
        let may = |name: &str| may.iter().any(|one| one == name);
        may("all") || may("write") || (may("bind") && may("write-content"))
    }
}

/// The property that says what the account may do.
pub(super) const PRIVILEGES: libdav::PropertyName =
    libdav::PropertyName::new(DAV, "current-user-privilege-set");

fn is(node: &Node, namespace: &str, name: &str) -> bool {
    node.is_element()
        && node.tag_name().name() == name
        && node.tag_name().namespace() == Some(namespace)
}

/// The text of an element in one piece, however many comments and CDATA sections it is made of.
fn all_text(node: &Node) -> String {
    node.children().filter(Node::is_text).filter_map(|node| node.text()).collect()
}

/// The text of an element without blanks around it; `None` when nothing is left.
fn words(node: &Node) -> Option<String> {
    let text = all_text(node);
    let text = text.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

fn hrefs<'a>(node: &'a Node) -> impl Iterator<Item = String> + 'a {
    node.children().filter(|node| is(node, DAV, "href")).filter_map(|node| words(&node))
}
