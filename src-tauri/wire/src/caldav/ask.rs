//! One request and its answer, with everything that bounds it: TLS, time, size, and where it may go.
//!
//! Only here is anything asynchronous. A request runs on the package's own small runtime while the
//! caller waits, so a caller may itself be inside another runtime.

use std::sync::Arc;
use std::sync::mpsc::sync_channel;
use std::time::Duration;

use base64::Engine;
use carryover_core::calendar::remote::{Account, Trouble};
use http::header::{AUTHORIZATION, HeaderValue, LOCATION, USER_AGENT, WWW_AUTHENTICATE};
use http::{HeaderMap, Request, StatusCode, Uri};
use http_body_util::{BodyExt, LengthLimitError, Limited};
use hyper_rustls::{HttpsConnector, HttpsConnectorBuilder};
use hyper_util::client::legacy::Client;
use hyper_util::client::legacy::connect::HttpConnector;
use hyper_util::rt::{TokioExecutor, TokioTimer};
use rustls::pki_types::CertificateDer;
use rustls::{ClientConfig, RootCertStore};
use tokio::runtime::Runtime;

use super::address::{Place, redirected};
use super::trouble;

/// How long an answer may take, and how large it may be.
#[derive(Clone, Copy, Debug)]
pub struct Limits {
    /// Until the connection stands.
    pub connect: Duration,
    /// Until the whole answer is there.
    pub answer: Duration,
    /// The bytes of an answer.
    pub largest: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            connect: Duration::from_secs(10),
            answer: Duration::from_secs(60),
            // No calendar file larger than this would be read.
            largest: carryover_core::ical::LARGEST,
        }
    }
}

/// Redirections that one request follows.
const REDIRECTIONS: usize = 3;

/// What a server answered.
pub(super) struct Answer {
    /// Where the answer came from in the end.
    pub place: Place,
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
}

impl Answer {
    /// A header as text.
    pub(super) fn header(&self, name: http::HeaderName) -> Option<&str> {
        self.headers.get(name)?.to_str().ok()
    }
}

/// Why there is no answer.
pub(super) enum Unanswered {
    /// It is larger than the bound. Less may be asked at a time.
    TooLarge(Trouble),
    /// Anything else.
    For(Trouble),
}

impl From<Trouble> for Unanswered {
    fn from(trouble: Trouble) -> Self {
        Self::For(trouble)
    }
}

impl From<Unanswered> for Trouble {
    fn from(why: Unanswered) -> Self {
        match why {
            Unanswered::TooLarge(trouble) | Unanswered::For(trouble) => trouble,
        }
    }
}

type Http = Client<HttpsConnector<HttpConnector>, String>;

/// Sends requests.
pub(super) struct Wire {
    /// Taken only when dropped.
    runtime: Option<Runtime>,
    client: Http,
    limits: Limits,
    /// Whether any authority is trusted.
    trusts: bool,
}

impl Wire {
    /// Trusts the authorities that the operating system trusts, or only those given.
    pub(super) fn new(
        limits: Limits,
        roots: Option<Vec<CertificateDer<'static>>>,
    ) -> Result<Self, String> {
        let roots = roots.unwrap_or_else(|| rustls_native_certs::load_native_certs().certs);
        let mut trusted = RootCertStore::empty();
        trusted.add_parsable_certificates(roots);
        let trusts = !trusted.is_empty();
        let provider = Arc::new(rustls::crypto::ring::default_provider());
        let tls = ClientConfig::builder_with_provider(provider)
            .with_safe_default_protocol_versions()
            .map_err(|e| e.to_string())?
            .with_root_certificates(trusted)
            .with_no_client_auth();
        let mut tcp = HttpConnector::new();
        tcp.enforce_http(false);
        tcp.set_connect_timeout(Some(limits.connect));
        let connector = HttpsConnectorBuilder::new()
            .with_tls_config(tls)
            .https_or_http()
            .enable_http1()
            .wrap_connector(tcp);
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(1)
            .thread_name("carryover-wire")
            .enable_all()
            .build()
            .map_err(|e| e.to_string())?;
        let client = Client::builder(TokioExecutor::new())
            .pool_timer(TokioTimer::new())
            // Servers close what is idle; a connection that is reused late is often a dead one.
            .pool_idle_timeout(Duration::from_secs(5))
            .build(connector);
        Ok(Self { runtime: Some(runtime), client, limits, trusts })
    }

    /// Asks, following redirections on the same host. `prepare` makes the request for a server.
    pub(super) fn ask(
        &self,
        account: &Account,
        place: &Place,
        prepare: impl FnOnce(Uri) -> Result<Request<String>, http::Error>,
    ) -> Result<Answer, Unanswered> {
        let no_request = |e: http::Error| {
            Trouble::Answer(format!("{} cannot be asked for that: {e}.", place.host()))
        };
        let request = prepare(place.uri()?).map_err(no_request)?;
        let mut place = place.clone();
        for _ in 0..=REDIRECTIONS {
            let mut request = request.clone();
            *request.uri_mut() = place.uri()?;
            let answer = self.send(&place, request, Some(account))?;
            let Some(location) = redirection(&answer) else {
                return if answer.status == StatusCode::UNAUTHORIZED {
                    Err(sign_in(&answer).into())
                } else {
                    Ok(answer)
                };
            };
            place = redirected(&place, location)?;
        }
        Err(Trouble::Answer(format!("{} keeps sending on to another address.", place.host()))
            .into())
    }

    /// Sends one request and follows nothing; with the name and the password, or without.
    pub(super) fn send(
        &self,
        place: &Place,
        mut request: Request<String>,
        account: Option<&Account>,
    ) -> Result<Answer, Unanswered> {
        if place.server.scheme() == "https" && !self.trusts {
            return Err(trouble::nobody_is_trusted().into());
        }
        let headers = request.headers_mut();
        headers.insert(
            USER_AGENT,
            HeaderValue::from_static(concat!("Carryover/", env!("CARGO_PKG_VERSION"))),
        );
        if let Some(account) = account.filter(|account| !account.user.is_empty()) {
            headers.insert(AUTHORIZATION, basic(account)?);
        }
        let Some(runtime) = &self.runtime else {
            return Err(Trouble::Away("The program is closing.".to_owned()).into());
        };
        let (client, limits, host) = (self.client.clone(), self.limits, place.host());
        let (told, answered) = sync_channel(1);
        let place = place.clone();
        runtime.spawn(async move {
            let whole = whole_answer(client, request, limits.largest, place);
            let answer = tokio::time::timeout(limits.answer, whole).await;
            // Nobody listens only if the caller's thread is gone.
            let _ = told.send(answer);
        });
        match answered.recv() {
            Ok(Ok(answer)) => answer,
            Ok(Err(_)) => Err(trouble::too_late(&host, limits.answer).into()),
            Err(_) => Err(Trouble::Away(format!("The request to {host} was broken off.")).into()),
        }
    }
}

impl Drop for Wire {
    fn drop(&mut self) {
        // Waiting for it would not be allowed inside another runtime.
        if let Some(runtime) = self.runtime.take() {
            runtime.shutdown_background();
        }
    }
}

async fn whole_answer(
    client: Http,
    request: Request<String>,
    largest: usize,
    place: Place,
) -> Result<Answer, Unanswered> {
    let host = place.host();
    let answer = client.request(request).await.map_err(|e| trouble::unanswered(&host, &e))?;
    let (head, body) = answer.into_parts();
    let body = Limited::new(body, largest).collect().await.map_err(|e| {
        if e.is::<LengthLimitError>() {
            Unanswered::TooLarge(trouble::too_large(&host, largest))
        } else {
            Unanswered::For(trouble::unanswered(&host, e.as_ref()))
        }
    })?;
    let body = body.to_bytes().to_vec();
    Ok(Answer { place, status: head.status, headers: head.headers, body })
}

/// Where an answer sends on to, if it does.
pub(super) fn redirection(answer: &Answer) -> Option<&str> {
    matches!(answer.status.as_u16(), 301 | 302 | 307 | 308)
        .then(|| answer.header(LOCATION))
        .flatten()
}

/// The name and the password as RFC 7617 has them.
fn basic(account: &Account) -> Result<HeaderValue, Trouble> {
    if account.user.contains(':') {
        return Err(Trouble::SignIn);
    }
    let plain = format!("{}:{}", account.user, account.password);
    let encoded = base64::engine::general_purpose::STANDARD.encode(plain);
    let mut value =
        HeaderValue::from_str(&format!("Basic {encoded}")).map_err(|_| Trouble::SignIn)?;
    value.set_sensitive(true);
    Ok(value)
}

/// A refused name and password; or a server that asks for another way of signing in.
fn sign_in(answer: &Answer) -> Trouble {
    let offers: Vec<String> = answer
        .headers
        .get_all(WWW_AUTHENTICATE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .map(str::to_ascii_lowercase)
        .collect();
    if offers.is_empty() || offers.iter().any(|offer| offer.contains("basic")) {
        return Trouble::SignIn;
    }
    Trouble::Answer(format!(
        "{} does not let you sign in with a name and a password alone. Perhaps it has passwords for single \
         programs, or another address for them.",
        answer.place.host()
    ))
}
