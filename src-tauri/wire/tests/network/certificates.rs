//! A server is believed by its certificate, and what is wrong with one is told apart.

use std::sync::Arc;

use carryover_core::calendar::remote::{Calendars, Trouble};
use carryover_wire::caldav::OverHttps;
use rcgen::{
    BasicConstraints, CertificateParams, CertifiedIssuer, DnType, ExtendedKeyUsagePurpose, IsCa,
    KeyPair, date_time_ymd,
};
use rustls::ServerConfig;
use rustls::pki_types::CertificateDer;

use super::script::{Script, limits, says, with};

/// An authority of the test's own.
pub struct Authority(CertifiedIssuer<'static, KeyPair>);

impl Authority {
    pub fn new() -> Self {
        Self::called("The test's own")
    }

    fn called(name: &str) -> Self {
        let mut params = CertificateParams::new(Vec::new()).unwrap();
        params.distinguished_name.push(DnType::CommonName, name);
        params.is_ca = IsCa::Ca(BasicConstraints::Unconstrained);
        Self(CertifiedIssuer::self_signed(params, KeyPair::generate().unwrap()).unwrap())
    }

    pub fn der(&self) -> CertificateDer<'static> {
        self.0.der().clone()
    }

    /// A server's side of TLS with a certificate for a name, changed as the test wants it.
    pub fn server(&self, name: &str, change: impl FnOnce(&mut CertificateParams)) -> ServerConfig {
        let mut params = CertificateParams::new(vec![name.to_owned()]).unwrap();
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        change(&mut params);
        let key = KeyPair::generate().unwrap();
        let certificate = params.signed_by(&key, &self.0).unwrap();
        config(certificate.der().clone(), &key)
    }
}

fn config(certificate: CertificateDer<'static>, key: &KeyPair) -> ServerConfig {
    ServerConfig::builder_with_provider(Arc::new(rustls::crypto::ring::default_provider()))
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_no_client_auth()
        .with_single_cert(vec![certificate], key.serialize_der().try_into().unwrap())
        .unwrap()
}

fn trusting(authority: &Authority) -> OverHttps {
    OverHttps::with(limits(), Some(vec![authority.der()])).unwrap()
}

fn refused(authority: &Authority, tls: ServerConfig) -> String {
    let server = Script::on("127.0.0.1", Some(tls), |_| says("200 OK", ""));
    let trouble = trusting(authority).get(&server.account("/"), "/cal/1.ics").unwrap_err();
    assert_eq!(server.lines(), Vec::<String>::new(), "nothing was asked of it");
    match trouble {
        Trouble::Certificate(words) => words,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_good_certificate_is_believed() {
    let authority = Authority::new();
    let tls = authority.server("127.0.0.1", |_| ());
    let server = Script::on("127.0.0.1", Some(tls), |_| with("200 OK", "ETag: \"1\"\r\n", "text"));
    let found = trusting(&authority).get(&server.account("/"), "/cal/1.ics").unwrap().unwrap();
    assert_eq!(found.text, "text");
    assert!(server.asked()[0].header("authorization").is_some());
}

#[test]
fn each_fault_of_a_certificate_has_its_words() {
    let authority = Authority::new();
    let words = refused(&authority, authority.server("calendar.example.org", |_| ()));
    assert!(words.contains("is for another name than 127.0.0.1"), "{words}");
    let words = refused(
        &authority,
        authority.server("127.0.0.1", |params| {
            params.not_before = date_time_ymd(2020, 1, 1);
            params.not_after = date_time_ymd(2021, 1, 1);
        }),
    );
    assert!(words.contains("has expired"), "{words}");
    let words = refused(
        &authority,
        authority.server("127.0.0.1", |params| {
            params.not_before = date_time_ymd(2900, 1, 1);
            params.not_after = date_time_ymd(2901, 1, 1);
        }),
    );
    assert!(words.contains("is not valid yet"), "{words}");
    // Another authority, and one that only has the same name.
    for other in [Authority::called("Somebody else"), Authority::new()] {
        let words = refused(&authority, other.server("127.0.0.1", |_| ()));
        assert!(words.contains("is from nobody this machine knows"), "{words}");
    }
    let key = KeyPair::generate().unwrap();
    let own =
        CertificateParams::new(vec!["127.0.0.1".to_owned()]).unwrap().self_signed(&key).unwrap();
    let words = refused(&authority, config(own.der().clone(), &key));
    assert!(words.contains("is from nobody this machine knows"), "signed by itself: {words}");
}

#[test]
fn a_machine_that_trusts_nobody_says_so() {
    let server =
        Script::on("127.0.0.1", Some(Authority::new().server("127.0.0.1", |_| ())), |_| {
            says("200 OK", "")
        });
    let over = OverHttps::with(limits(), Some(Vec::new())).unwrap();
    let trouble = over.get(&server.account("/"), "/cal/1.ics").unwrap_err();
    assert!(matches!(&trouble, Trouble::Certificate(words) if words.contains("ca-certificates")));
}

#[test]
fn where_no_tls_is_spoken_the_port_may_be_wrong() {
    let server = Script::start(|_| says("200 OK", ""));
    let mut account = server.account("/");
    account.address = account.address.replace("http://", "https://");
    let trouble = trusting(&Authority::new()).get(&account, "/cal/1.ics").unwrap_err();
    assert!(
        matches!(&trouble, Trouble::Address(words) if words.contains("does not speak TLS")),
        "no TLS is no bad certificate: {trouble:?}"
    );
}

#[test]
fn a_protected_server_may_not_lead_to_an_unprotected_one() {
    let authority = Authority::new();
    let plain = super::script::silent("127.0.0.1");
    for to in [plain.url("/cal/1.ics"), "http://127.0.0.1/cal/1.ics".to_owned()] {
        let tls = authority.server("127.0.0.1", |_| ());
        let server = Script::on("127.0.0.1", Some(tls), move |_| {
            with("302 Found", &format!("Location: {to}\r\n"), "")
        });
        let trouble = trusting(&authority).get(&server.account("/"), "/cal/1.ics").unwrap_err();
        assert!(
            matches!(&trouble, Trouble::Address(words) if words.contains("would go unprotected")),
            "{trouble:?}"
        );
    }
    assert_eq!(plain.lines(), Vec::<String>::new());
}
