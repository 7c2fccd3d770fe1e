//! What can go wrong on the way, told apart and put in a coach's words.

use std::error::Error;
use std::io;
use std::time::Duration;

use carryover_core::calendar::remote::Trouble;
use http::StatusCode;
use roxmltree::{Document, ParsingOptions};
use rustls::CertificateError as Bad;

use super::ask::Answer;

/// A request that got no whole answer.
pub(super) fn unanswered(host: &str, error: &(dyn Error + 'static)) -> Trouble {
    let mut causes = causes(error);
    if let Some(tls) = causes.find_map(|cause| cause.downcast_ref::<rustls::Error>()) {
        return untrusted(host, tls);
    }
    let why = self::causes(error).filter_map(|cause| cause.downcast_ref::<io::Error>()).last();
    let text = self::causes(error).map(ToString::to_string).collect::<Vec<_>>().join(": ");
    Trouble::Away(match why.map(io::Error::kind) {
        Some(io::ErrorKind::ConnectionRefused) => {
            format!("No server answers at {host}. Is the address right, and the server running?")
        }
        Some(io::ErrorKind::TimedOut) => format!("{host} did not answer in time."),
        Some(
            io::ErrorKind::ConnectionReset
            | io::ErrorKind::ConnectionAborted
            | io::ErrorKind::BrokenPipe
            | io::ErrorKind::UnexpectedEof,
        ) => lost(host),
        Some(io::ErrorKind::NetworkUnreachable | io::ErrorKind::HostUnreachable) => {
            format!("There is no way to {host}. Is this machine on the network?")
        }
        _ if text.contains("dns error") => {
            format!("There is no server called {host}, or this machine is not on the network.")
        }
        _ if text.contains("connect") && text.contains("deadline") => {
            format!("{host} did not answer in time.")
        }
        _ => lost(host),
    })
}

fn lost(host: &str) -> String {
    format!("The connection to {host} was lost before its answer was whole.")
}

/// The error and what caused it. An [`io::Error`] gives out the error inside it.
fn causes<'a>(error: &'a (dyn Error + 'static)) -> impl Iterator<Item = &'a (dyn Error + 'static)> {
    std::iter::successors(Some(error), |error| {
        let error: &'a (dyn Error + 'static) = *error;
        match error.downcast_ref::<io::Error>().and_then(io::Error::get_ref) {
            Some(inside) => Some(inside as &(dyn Error + 'static)),
            None => error.source(),
        }
    })
}

/// A certificate that is not to be trusted, or no TLS at all.
fn untrusted(host: &str, error: &rustls::Error) -> Trouble {
    let rustls::Error::InvalidCertificate(bad) = error else {
        return match error {
            rustls::Error::InvalidMessage(_) => Trouble::Address(format!(
                "{host} does not speak TLS (https) there. Is the port right?"
            )),
            rustls::Error::PeerIncompatible(_) | rustls::Error::AlertReceived(_) => {
                Trouble::Certificate(format!(
                    "{host} and this program found no way to protect the connection: {error}."
                ))
            }
            _ => Trouble::Certificate(format!(
                "The connection to {host} cannot be protected: {error}."
            )),
        };
    };
    Trouble::Certificate(match bad {
        Bad::Expired | Bad::ExpiredContext { .. } => format!(
            "The certificate of {host} has expired. Whoever runs the server has to renew it; or this \
             machine's date is wrong."
        ),
        Bad::NotValidYet | Bad::NotValidYetContext { .. } => format!(
            "The certificate of {host} is not valid yet. Perhaps this machine's date is wrong."
        ),
        Bad::NotValidForName | Bad::NotValidForNameContext { .. } => format!(
            "The certificate is for another name than {host}. Perhaps the address has a mistake, or \
             somebody else answers in its place."
        ),
        // A bad signature is that of an authority which only has a known one's name.
        Bad::UnknownIssuer | Bad::BadSignature => format!(
            "The certificate of {host} is from nobody this machine knows. If the server is your own, add \
             its authority to this machine's trusted ones."
        ),
        Bad::Revoked => format!("The certificate of {host} was revoked."),
        other => format!("The certificate of {host} is not to be trusted: {other}."),
    })
}

/// No authority is known to this machine.
pub(super) fn nobody_is_trusted() -> Trouble {
    Trouble::Certificate(
        "This machine has no list of trusted certificate authorities, so no server can prove who it is. On \
         Debian the package ca-certificates has it."
            .to_owned(),
    )
}

/// The time is out.
pub(super) fn too_late(host: &str, after: Duration) -> Trouble {
    Trouble::Away(format!("{host} did not answer within {} seconds.", after.as_secs().max(1)))
}

/// More than is read.
pub(super) fn too_large(host: &str, largest: usize) -> Trouble {
    Trouble::Answer(format!("{host} answers with more than {} MB.", largest.div_ceil(1_048_576)))
}

/// An answer that is none of a calendar server.
pub(super) fn unreadable(host: &str) -> Trouble {
    Trouble::Answer(format!("{host} answers what cannot be read as a calendar server's answer."))
}

/// An answer that refuses what was asked.
pub(super) fn refused(answer: &Answer) -> Trouble {
    let host = answer.place.host();
    let said = preconditions(&answer.body);
    let says = |name: &str| said.iter().any(|one| one == name);
    match answer.status {
        _ if says("quota-not-exceeded")
            || says("sufficient-disk-space")
            || says("max-resource-size") =>
        {
            Trouble::NoRoom
        }
        _ if says("no-uid-conflict") => Trouble::Answer(format!(
            "{host} has this event already, at another place in the calendar."
        )),
        StatusCode::UNAUTHORIZED => Trouble::SignIn,
        // A refusal for a reason about what was sent is no matter of rights.
        StatusCode::FORBIDDEN if said.is_empty() || says("need-privileges") => Trouble::Forbidden,
        StatusCode::NOT_FOUND | StatusCode::GONE => Trouble::Gone,
        StatusCode::PRECONDITION_FAILED => Trouble::OtherVersion,
        StatusCode::PAYLOAD_TOO_LARGE | StatusCode::INSUFFICIENT_STORAGE => Trouble::NoRoom,
        StatusCode::TOO_MANY_REQUESTS
        | StatusCode::BAD_GATEWAY
        | StatusCode::SERVICE_UNAVAILABLE
        | StatusCode::GATEWAY_TIMEOUT => Trouble::Away(format!(
            "{host} is busy or out of service at the moment ({}).",
            answer.status
        )),
        status if said.is_empty() => Trouble::Answer(format!("{host} answers “{status}”.")),
        status => Trouble::Answer(format!("{host} answers “{status}”: {}.", said.join(", "))),
    }
}

/// The conditions that a `DAV:error` names (RFC 4918 §16).
pub(super) fn preconditions(body: &[u8]) -> Vec<String> {
    let options = ParsingOptions { nodes_limit: 1_000, ..ParsingOptions::default() };
    let Ok(text) = std::str::from_utf8(body) else { return Vec::new() };
    let Ok(document) = Document::parse_with_options(text, options) else { return Vec::new() };
    let root = document.root_element();
    if root.tag_name().name() != "error" {
        return Vec::new();
    }
    let names = root.children().filter(roxmltree::Node::is_element);
    names.map(|node| node.tag_name().name().chars().take(60).collect()).take(5).collect()
}
