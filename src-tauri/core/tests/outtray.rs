//! The out-tray: what goes into it, what the coach reads, what goes out once, and what came of it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests"
)]

mod world;

use carryover_core::commands::{call, catch_up, check};
use carryover_core::error::Error;
use carryover_core::kinds::ids::MessageId;
use carryover_core::outtray::carry::{self, Came, InTheWay, Next, Parcel};
use carryover_core::outtray::{MailTrouble, WhichMessage, file};
use serde_json::{Value, json};
use world::{World, codes, id, problems, text};

/// A coach with a mail account, and a student with an address.
fn business() -> (World, String) {
    let mut w = World::new();
    w.on("2026-03-02");
    coach(&mut w);
    w.act("outtray.set_account", json!({ "host": "mail.example.org", "port": 465 }));
    let ana = guest(&mut w, "Ana Silva", "ana@example.org");
    (w, ana)
}

fn coach(w: &mut World) {
    let me = json!({ "name": "Robin Hale", "email": "robin@hale.example", "closing": "See you on court," });
    w.act("settings.change", me);
}

fn guest(w: &mut World, name: &str, email: &str) -> String {
    id(&w.act("students.add", json!({ "name": name, "email": email })), "/id")
}

fn ids(put: &Value) -> Vec<String> {
    put["messages"].as_array().unwrap().iter().map(text).collect()
}

/// A word to a student, in the tray.
fn word(w: &mut World, student: &str) -> String {
    let put = w.act("outtray.put", json!({ "of": { "kind": "words", "student": student } }));
    ids(&put).remove(0)
}

fn reword(w: &mut World, message: &str, words: &str) {
    w.act(
        "outtray.edit",
        json!({ "message": message, "subject": "About Tuesday", "words": words }),
    );
}

fn release(w: &mut World, messages: &[&String]) {
    w.act("outtray.release", json!({ "messages": messages }));
}

fn shown(w: &mut World, message: &str) -> Value {
    w.act("outtray.show", json!({ "message": message }))
}

fn state(w: &mut World, message: &str) -> String {
    text(&shown(w, message)["state"])
}

fn next(w: &mut World) -> Next {
    w.file.write("outtray.next", "Next", carry::next).unwrap().value
}

fn parcel(w: &mut World) -> Parcel {
    match next(w) {
        Next::Parcel(parcel) => parcel,
        other => panic!("no parcel: {other:?}"),
    }
}

fn came(w: &mut World, message: MessageId, what: Came) {
    w.file.write("outtray.came", "Came", |db| carry::came(db, message, &what)).unwrap();
}

fn way(trouble: MailTrouble) -> InTheWay {
    InTheWay { trouble, said: "451 4.7.1 later".to_owned() }
}

fn not_possible(error: Error) -> String {
    match error {
        Error::NotPossible { code, .. } => code.to_owned(),
        other => panic!("{other}"),
    }
}

/// The message as its bytes, for looking at headers.
fn mime(w: &World, message: &str) -> String {
    let message = serde_json::from_value(json!(message)).unwrap();
    let (_, bytes) = w.file.read(|db| file(db, WhichMessage { message })).unwrap();
    String::from_utf8(bytes).unwrap()
}

#[test]
fn nothing_goes_out_that_the_coach_has_not_released() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    assert!(matches!(next(&mut w), Next::Nothing));
    let why = w.refused("outtray.release", json!({ "messages": [message] })).to_string();
    assert!(why.contains("Type what you have to say."), "an empty word does not go out: {why}");
    reword(&mut w, &message, "Dear Ana,\n\nbring the blue racket.");
    assert_eq!(state(&mut w, &message), "to_read");
    release(&mut w, &[&message]);
    assert_eq!(state(&mut w, &message), "waiting");
    let parcel = parcel(&mut w);
    assert_eq!(
        (parcel.from.as_str(), parcel.to.as_str()),
        ("robin@hale.example", "ana@example.org")
    );
    assert_eq!(state(&mut w, &message), "going", "noted before the server is asked");
    assert!(matches!(next(&mut w), Next::Nothing), "what is going is not taken twice");
    came(&mut w, parcel.message, Came::Accepted("2.0.0 queued".to_owned()));
    let shown = shown(&mut w, &message);
    assert_eq!(shown["state"], "accepted");
    let steps: Vec<String> =
        shown["steps"].as_array().unwrap().iter().map(|s| text(&s["state"])).collect();
    assert_eq!(steps, ["to_read", "waiting", "going", "accepted"]);
    assert!(matches!(next(&mut w), Next::Nothing));
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn a_released_message_is_frozen_byte_for_byte() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana, one <b> & two");
    let before = w.act("outtray.look", json!({ "message": message }))["look"].clone();
    assert_eq!(before["sealed"], false);
    assert_eq!(before["text"], "Dear Ana, one <b> & two");
    release(&mut w, &[&message]);
    let bytes = mime(&w, &message);
    assert!(bytes.contains("one &lt;b&gt; &amp; two"), "escaped in the HTML: {bytes}");
    assert!(!bytes.to_lowercase().contains("x-mailer"), "it says nothing of the program");
    let id_line = bytes.lines().find(|line| line.starts_with("Message-ID:")).unwrap();
    assert_eq!(id_line, format!("Message-ID: <{message}.1@hale.example>"));
    w.act("settings.change", json!({ "name": "Another", "email": "another@example.org" }));
    assert_eq!(mime(&w, &message), bytes);
    for (name, input) in [
        ("outtray.edit", json!({ "message": message, "subject": "x", "words": "y" })),
        ("outtray.release", json!({ "messages": [message] })),
        ("outtray.attach", json!({ "message": message, "name": "a.txt", "base64": "YQ==" })),
    ] {
        assert_eq!(not_possible(w.refused(name, input)), "released", "{name}");
    }
}

#[test]
fn a_crash_while_it_is_handed_over_leaves_it_unsure_and_it_is_never_sent_again_by_itself() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana");
    release(&mut w, &[&message]);
    let first = parcel(&mut w);
    catch_up(&mut w.file).unwrap();
    assert_eq!(state(&mut w, &message), "unsure");
    assert!(matches!(next(&mut w), Next::Nothing));
    came(&mut w, first.message, Came::Accepted(String::new()));
    assert_eq!(state(&mut w, &message), "unsure", "a late voice changes nothing");
    let asked = w.refused("outtray.again", json!({ "message": message }));
    assert_eq!(codes(&asked)[0], ("twice".to_owned(), "may_be_there".to_owned()));
    w.act("outtray.again", json!({ "message": message, "twice": true }));
    let second = parcel(&mut w);
    assert_eq!(second.bytes, first.bytes, "the same Message-ID, so that a reader can tell");
}

#[test]
fn what_is_not_taken_for_now_is_tried_again_with_growing_pauses_and_given_up_after_five_days() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana");
    release(&mut w, &[&message]);
    let minutes: Vec<i64> = (1..=6).map(|tries| carry::pause(tries).num_minutes()).collect();
    assert_eq!(minutes, [1, 5, 30, 120, 1440, 1440]);
    let first = parcel(&mut w);
    came(&mut w, first.message, Came::Later(way(MailTrouble::Later)));
    assert_eq!(state(&mut w, &message), "again");
    assert!(matches!(next(&mut w), Next::At(_)), "not before its time");
    for day in ["2026-03-03", "2026-03-05"] {
        w.on(day);
        let again = parcel(&mut w);
        came(&mut w, again.message, Came::Later(way(MailTrouble::Later)));
        assert_eq!(state(&mut w, &message), "again");
    }
    w.on("2026-03-08");
    let last = parcel(&mut w);
    came(&mut w, last.message, Came::Later(way(MailTrouble::Later)));
    assert_eq!(state(&mut w, &message), "stopped");
    assert_eq!(shown(&mut w, &message)["tries"], 4);
}

#[test]
fn what_stands_in_the_way_of_the_account_costs_no_try_and_waits() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana");
    release(&mut w, &[&message]);
    let taken = parcel(&mut w).message;
    let way = way(MailTrouble::SignIn);
    w.file.write("outtray.not_opened", "x", |db| carry::not_opened(db, taken, &way)).unwrap();
    let shown = shown(&mut w, &message);
    assert_eq!((shown["state"].as_str(), shown["tries"].as_i64()), (Some("waiting"), Some(0)));
    assert!(text(&shown["stands"]).contains("does not take this name and password"));
    assert_eq!(parcel(&mut w).message, taken, "it goes out as soon as the account is right");
}

#[test]
fn a_letter_is_issued_and_put_in_one_act_and_never_twice() {
    let (mut w, ana) = business();
    let visit = w.two_days(&ana, "2026-03-02");
    let put = w.act("outtray.issue_letter", json!({ "visit": visit }));
    let message = ids(&put).remove(0);
    let letter = id(&w.act("letters.list", json!({}))[0], "/letter");
    let again = w.act("outtray.put", json!({ "of": { "kind": "letter", "letter": letter } }));
    assert_eq!((ids(&again), again["already"].as_bool()), (vec![message.clone()], Some(true)));
    let seen = w.act("outtray.look", json!({ "message": message }))["look"].clone();
    let media: Vec<String> =
        seen["parts"].as_array().unwrap().iter().map(|p| text(&p["media"])).collect();
    assert_eq!(media, ["text/plain", "text/html", "application/pdf"]);
    assert_eq!(seen["subject"], "Your visit, 2 – 3 March 2026");
    // A letter that cannot be issued leaves nothing in the tray.
    let none = w.planned(&ana, "2026-06-01", "2026-06-02");
    assert_eq!(
        not_possible(w.refused("outtray.issue_letter", json!({ "visit": none }))),
        "not_started"
    );
    assert_eq!(w.act("outtray.list", json!({}))["to_read"]["count"], 1);
}

#[test]
fn a_minor_s_message_goes_to_the_guardian_or_has_a_second_adult_on_it() {
    let (mut w, _) = business();
    let profile = json!({ "name": "Kim Roe", "email": "kim@example.org", "born": "2013-05-01", "language": "de",
        "guardian": { "name": "Jo Roe", "relation": "mother", "email": "jo@example.org" } });
    let kim = id(&w.act("students.add", profile), "/id");
    let through = word(&mut w, &kim);
    assert_eq!(
        shown(&mut w, &through)["to"],
        json!({ "name": "Jo Roe", "address": "jo@example.org" })
    );
    let words = text(&shown(&mut w, &through)["words"]);
    assert!(
        words.starts_with("Hallo Jo Roe,")
            && words.ends_with("Bis bald auf dem Platz,\nRobin Hale"),
        "{words}"
    );
    let agreed = json!({ "student": kim, "kind": "messages", "given": true,
        "by": { "name": "Jo Roe", "relation": "guardian", "as_what": "mother" } });
    w.act("intake.give_consent", agreed);
    let put = w.act("outtray.put", json!({ "of": { "kind": "words", "student": kim } }));
    let both = ids(&put);
    assert_eq!(both.len(), 2, "one for each");
    reword(&mut w, &both[0], "Hallo Kim");
    assert_eq!(shown(&mut w, &both[1])["words"], "Hallo Kim", "both say the same");
    release(&mut w, &[&both[0]]);
    let (kim, jo) = (mime(&w, &both[0]), mime(&w, &both[1]));
    assert!(
        kim.contains("To: \"Kim Roe\" <kim@example.org>")
            && kim.contains("Cc: \"Jo Roe\" <jo@example.org>"),
        "{kim}"
    );
    assert!(
        jo.contains("To: \"Jo Roe\" <jo@example.org>")
            && jo.contains("Cc: \"Kim Roe\" <kim@example.org>"),
        "{jo}"
    );
    let envelope = (parcel(&mut w).to, parcel(&mut w).to);
    assert_eq!(envelope, ("kim@example.org".to_owned(), "jo@example.org".to_owned()));
}

#[test]
fn a_field_without_a_value_says_why_and_is_never_sent_as_a_gap() {
    let (mut w, ana) = business();
    let visit = w.planned(&ana, "2026-03-10", "2026-03-11");
    let put = w.act("outtray.put", json!({ "of": { "kind": "before_visit", "visit": visit } }));
    let message = ids(&put).remove(0);
    let shown_first = shown(&mut w, &message);
    let gaps: Vec<String> =
        shown_first["gaps"].as_array().unwrap().iter().map(|g| text(&g["field"])).collect();
    assert_eq!(gaps, ["lessons", "visitors"]);
    assert_eq!(shown_first["gaps"][0]["why"], "The visit has no lessons to come.");
    let why = w.refused("outtray.release", json!({ "messages": [message] })).to_string();
    assert_eq!(
        not_possible(w.refused("outtray.release", json!({ "messages": [message] }))),
        "cannot_be_sent"
    );
    assert!(why.contains("{lessons} has no value"), "{why}");
    reword(&mut w, &message, "Dear Ana, all as always.");
    release(&mut w, &[&message]);
}

#[test]
fn the_coach_s_own_text_is_taken_and_an_unknown_field_refused() {
    let (mut w, ana) = business();
    let own = json!({ "kind": "words", "language": "en", "subject": "{nmae}", "words": "Hello {name} {due}" });
    let refused = problems(&w.refused("outtray.set_text", own));
    assert_eq!(refused.len(), 2);
    assert!(
        refused[0].1.starts_with("There is no field {nmae} here. There are: {name}, {coach}"),
        "{refused:?}"
    );
    let own = json!({ "kind": "words", "language": "en", "subject": "Hi {name}", "words": "{student}: {coach} {x" });
    w.act("outtray.set_text", own);
    let message = word(&mut w, &ana);
    let shown = shown(&mut w, &message);
    assert_eq!(
        (text(&shown["subject"]), text(&shown["words"])),
        ("Hi Ana".to_owned(), "Ana Silva: Robin Hale {x".to_owned())
    );
    w.act(
        "outtray.set_text",
        json!({ "kind": "words", "language": "en", "subject": "", "words": "" }),
    );
    let texts = w.act("outtray.texts", json!({}));
    assert!(texts.as_array().unwrap().iter().all(|text| text["own"] == false));
}

#[test]
fn an_invitation_carries_its_calendar_object_and_is_due_again_when_withdrawn() {
    let (mut w, ana) = business();
    let visit = w.planned(&ana, "2026-03-10", "2026-03-11");
    let lesson = json!({ "visits": [visit], "facility": w.hall, "day": "2026-03-10", "starts": "09:00", "minutes": 60 });
    let lesson = id(&w.act("lessons.plan", lesson), "/id");
    let of = json!({ "of": { "kind": "invitations", "visit": visit } });
    let message = ids(&w.act("outtray.put", of.clone())).remove(0);
    assert_eq!(w.act("calendar.due", json!({ "visit": visit })), json!([]));
    w.act("outtray.withdraw", json!({ "message": message, "reason": "Wrong hour" }));
    assert_eq!(w.act("calendar.due", json!({ "visit": visit }))[0]["kind"], "new");
    let message = ids(&w.act("outtray.put", of.clone())).remove(0);
    release(&mut w, &[&message]);
    let bytes = mime(&w, &message);
    assert!(
        bytes.contains("Content-Type: text/calendar; method=REQUEST; charset=utf-8"),
        "{bytes}"
    );
    // Refused by the server, it never went out: withdrawn, it is due again.
    let taken = parcel(&mut w).message;
    came(&mut w, taken, Came::Refused(way(MailTrouble::Content)));
    w.act("outtray.withdraw", json!({ "message": message }));
    let again = w.act("outtray.put", json!({ "of": { "kind": "invitations", "visit": visit } }));
    release(&mut w, &[&ids(&again)[0]]);
    let moved = json!({ "lesson": lesson, "facility": w.hall, "day": "2026-03-11", "starts": "10:00", "minutes": 60 });
    w.act("lessons.change", moved);
    let changed = ids(&w.act("outtray.put", of)).remove(0);
    assert_eq!(
        shown(&mut w, &changed)["subject"],
        "Our lesson is at another time or place: Wednesday 11 March 2026, 10:00 to 11:00"
    );
}

#[test]
fn an_invoice_goes_to_whoever_pays_with_its_structured_file_and_leads_to_no_student() {
    let (mut w, ana) = business();
    w.act(
        "invoices.set_seller",
        json!({ "name": "Robin Hale", "address": "1 Quay Street\nSaltmere", "country": "IE", "tax_id": "IE 77/123" }),
    );
    w.act(
        "prices.set_tax",
        json!({ "category": "E", "rate": "0", "why": "Exempt by local rule (invented)" }),
    );
    let payer = id(&w.act("payers.choose", json!({ "student": ana })), "/id");
    let form = json!({ "name": "Ana Silva", "address": "2 Mole Road\nSaltmere", "country": "IE", "email": "ana@example.org" });
    w.act("payers.change", json!({ "id": payer, "payer": form }));
    let draft = json!({ "payer": payer, "currency": "EUR", "lines": [
        { "what": "lesson", "words": "A lesson", "quantity": "2", "price": "40" }] });
    let draft = id(&w.act("invoices.draft", draft), "/id");
    let early = json!({ "of": { "kind": "invoice", "invoice": draft } });
    assert_eq!(not_possible(w.refused("outtray.put", early)), "draft");
    let put = w.act("outtray.issue_invoice", json!({ "invoice": draft }));
    let message = ids(&put).remove(0);
    let shown = shown(&mut w, &message);
    assert_eq!((shown["student"].clone(), text(&shown["payer"])), (Value::Null, payer));
    assert!(text(&shown["words"]).contains("Please pay 80.00 EUR by 16 March 2026."), "{shown}");
    let names: Vec<String> =
        shown["parts"].as_array().unwrap().iter().map(|p| text(&p["media"])).collect();
    assert_eq!(names, ["application/pdf", "application/xml"]);
    release(&mut w, &[&message]);
    assert!(
        w.act("outtray.of_invoice", json!({ "invoice": draft }))["messages"][0]["id"] == message
    );
    // Erasing the student leaves the invoice and its message, which name nobody but the payer.
    w.act("students.erase", json!({ "student": ana, "name_typed": "Ana Silva" }));
    assert_eq!(state(&mut w, &message), "waiting");
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn erasing_takes_a_student_s_messages_with_their_bytes() {
    let (mut w, ana) = business();
    let bo = guest(&mut w, "Bo Wren", "bo@example.org");
    let (hers, his) = (word(&mut w, &ana), word(&mut w, &bo));
    for message in [&hers, &his] {
        reword(&mut w, message, "Secret of the day");
        release(&mut w, &[message]);
    }
    w.act("students.erase", json!({ "student": ana, "name_typed": "Ana Silva" }));
    assert!(matches!(
        w.refused("outtray.show", json!({ "message": hers })),
        Error::NotFound { .. }
    ));
    assert_eq!(state(&mut w, &his), "waiting");
    let left = w.file.read(|db| {
        db.one("SELECT count(*) AS n FROM message_bytes", [], |row| row.get::<_, i64>("n"))
    });
    assert_eq!(left.unwrap(), Some(1));
    assert!(check(&w.file).unwrap().sound);
}

#[test]
fn bad_input_is_said_by_its_field() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    let edit = |subject: &str, words: &str, to: &str| json!({ "message": message, "subject": subject, "words": words, "to_address": to });
    let refused = codes(&w.refused("outtray.edit", edit("", " ", "ana@@example")));
    let fields: Vec<&str> = refused.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(fields, ["subject", "words", "to_address", "to_address"]);
    // A line break in a subject cannot begin another header.
    w.act("outtray.edit", edit("One\r\nBcc: all@example.org", "Words", "ana@example.org"));
    release(&mut w, &[&message]);
    let bytes = mime(&w, &message);
    assert!(bytes.contains("Subject: One Bcc: all@example.org\r\n"), "{bytes}");
    let large = "A".repeat(40_000_000 / 3 * 4);
    let another = word(&mut w, &ana);
    let attach = json!({ "message": another, "name": "film.mp4", "base64": large });
    let refused = problems(&w.refused("outtray.attach", attach));
    assert!(refused[0].1.contains("come to 40 MB"), "{refused:?}");
    let account = json!({ "host": "https://mail.example.org", "port": 70000 });
    let refused = codes(&w.refused("outtray.set_account", account));
    assert_eq!(refused.iter().map(|(f, _)| f.as_str()).collect::<Vec<_>>(), ["host", "port"]);
}

#[test]
fn without_an_account_it_is_saved_told_or_withdrawn() {
    let mut w = World::new();
    w.on("2026-03-02");
    coach(&mut w);
    let ana = guest(&mut w, "Ana Silva", "");
    let message = word(&mut w, &ana);
    let gap = "{your_words} has no value: Type what you have to say.";
    let against = shown(&mut w, &message)["against"].clone();
    assert_eq!(
        against,
        json!(["Ana Silva has no e-mail address.", gap, "No mail account is set yet."])
    );
    let told = w.act(
        "outtray.tell",
        json!({ "message": message, "how": "phone", "words": "She comes at nine" }),
    );
    assert_eq!(told["stands"], "Told by telephone. She comes at nine");
    assert_eq!(not_possible(w.refused("outtray.again", json!({ "message": message }))), "not_now");
    assert_eq!(
        not_possible(w.refused("outtray.withdraw", json!({ "message": message }))),
        "not_now"
    );
    let of = w.act("outtray.of_student", json!({ "student": ana }));
    assert_eq!(of["messages"][0]["state"], "told");
}

#[test]
fn nothing_is_sent_from_the_sample_season() {
    let (mut w, ana) = business();
    let me = json!({ "name": "Robin Hale", "email": "robin@hale.example", "sample": true });
    w.act("settings.change", me);
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana");
    assert_eq!(
        not_possible(w.refused("outtray.release", json!({ "messages": [message] }))),
        "cannot_be_sent"
    );
}

#[test]
fn bytes_that_changed_on_the_disk_are_found() {
    let (mut w, ana) = business();
    let message = word(&mut w, &ana);
    reword(&mut w, &message, "Dear Ana");
    release(&mut w, &[&message]);
    w.file
        .write("test.break", "Broken", |db| {
            db.execute("DROP TRIGGER message_bytes_stay", [])?;
            db.execute("UPDATE message_bytes SET bytes = x'00'", [])
        })
        .unwrap();
    assert!(!check(&w.file).unwrap().sound);
    let broken = w.file.write("outtray.next", "Next", carry::next);
    assert!(matches!(broken, Err(Error::Fault(_))), "what was not released is not sent");
    assert!(call(&mut w.file, "outtray.list", json!({})).is_ok());
}

fn keys(w: &mut World) -> Vec<String> {
    let found = w.act("outtray.follow_ups", json!({}));
    found["proposals"].as_array().unwrap().iter().map(|one| text(&one["kind"])).collect()
}

#[test]
fn what_may_be_written_is_proposed_by_rules_and_never_twice_for_the_same_cause() {
    let (mut w, ana) = business();
    let visit = w.planned(&ana, "2026-03-10", "2026-03-11");
    assert_eq!(keys(&mut w), Vec::<String>::new(), "eight days before it");
    w.on("2026-03-03");
    assert_eq!(keys(&mut w), ["before_visit"]);
    let put = w.act("outtray.put", json!({ "of": { "kind": "before_visit", "visit": visit } }));
    assert_eq!(keys(&mut w), Vec::<String>::new());
    let found = w.act("outtray.follow_ups", json!({}));
    assert_eq!((found["to_read"].as_u64(), found["needs"].as_u64()), (Some(1), Some(0)));
    w.act("outtray.withdraw", json!({ "message": ids(&put)[0] }));
    assert_eq!(keys(&mut w), ["before_visit"], "what was withdrawn was not written");
    let key = text(&w.act("outtray.follow_ups", json!({}))["proposals"][0]["key"]);
    w.act("outtray.leave_follow_up", json!({ "key": key }));
    assert_eq!(keys(&mut w), Vec::<String>::new(), "left is left");
    assert_eq!(
        not_possible(w.refused("outtray.leave_follow_up", json!({ "key": key }))),
        "not_proposed"
    );

    w.on("2026-03-10");
    w.act("visits.open", json!({ "visit": visit }));
    let line = json!({ "what": "Lob serve", "amount": 20, "unit": "tries", "a_week": 3 });
    w.act("home.plan", json!({ "visit": visit, "warm_up": "", "note": "", "lines": [line] }));
    w.on("2026-03-11");
    w.act("visits.close", json!({ "visit": visit }));
    let put = w.act("outtray.issue_letter", json!({ "visit": visit }));
    assert_eq!(keys(&mut w), Vec::<String>::new(), "the letter is in the tray");
    w.act("outtray.withdraw", json!({ "message": ids(&put)[0] }));
    assert_eq!(keys(&mut w), ["letter"]);
    w.act("outtray.set_rules", json!({ "letters": false }));
    w.on("2026-03-24");
    assert_eq!(keys(&mut w), Vec::<String>::new());
    w.on("2026-03-25");
    assert_eq!(keys(&mut w), ["home_report"], "fourteen days after the visit");
    let put = w.act("outtray.put", json!({ "of": { "kind": "home_report", "visit": visit } }));
    assert!(
        text(&shown(&mut w, &ids(&put)[0])["words"]).contains("the visit of 10 – 11 March 2026")
    );
    w.on("2026-05-13");
    assert_eq!(keys(&mut w), ["come_again"], "nine weeks");
    w.planned(&ana, "2026-06-01", "2026-06-02");
    assert_eq!(keys(&mut w), Vec::<String>::new(), "a visit is planned");
    let refused = codes(
        &w.refused("outtray.set_rules", json!({ "before_visit": -1, "quiet_from": "25:00" })),
    );
    assert_eq!(
        refused.iter().map(|(f, _)| f.as_str()).collect::<Vec<_>>(),
        ["before_visit", "quiet_from"]
    );
}

#[test]
fn a_message_waits_for_the_morning_where_the_student_lives() {
    let (mut w, _) = business();
    let far = json!({ "name": "Haruka W", "email": "h@example.org", "zone": "Asia/Tokyo" });
    let far = id(&w.act("students.add", far), "/id");
    let message = word(&mut w, &far);
    reword(&mut w, &message, "Good morning");
    // Noon in UTC is nine in the evening there.
    release(&mut w, &[&message]);
    assert_eq!(shown(&mut w, &message)["next"], "2026-03-02T22:00:00.000+00:00");
    assert!(matches!(next(&mut w), Next::At(_)));
    w.act("outtray.again", json!({ "message": message }));
    assert_eq!(parcel(&mut w).to, "h@example.org", "all the same, as the coach wants");
}

#[test]
fn the_questions_before_court_go_as_a_page_made_once() {
    let (mut w, ana) = business();
    let of = json!({ "of": { "kind": "questions", "student": ana } });
    let message = ids(&w.act("outtray.put", of.clone())).remove(0);
    assert_eq!(w.act("outtray.put", of)["already"], true);
    let parts = shown(&mut w, &message)["parts"].clone();
    assert_eq!(parts[0]["media"], "text/html; charset=utf-8");
    let pages = w.file.read(|db| {
        db.one("SELECT count(*) AS n FROM intake_page", [], |row| row.get::<_, i64>("n"))
    });
    assert_eq!(pages.unwrap(), Some(1), "a token for each message, not for each look");
}
