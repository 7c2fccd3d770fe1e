//! The command table: the program's only door. The window, the command line, the bridge for browser
//! tests and the generated TypeScript are all fed from it.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::LazyLock;

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::app::{Change, CoachFile, Reading, Undone, Writing, Written, journal};
use crate::db::backup;
use crate::db::check::Checked;
use crate::error::{Error, Result};
use crate::kinds::Clock;
use crate::kinds::ids::ActId;
use crate::{
    accounts, assessments, bank, bookings, calendar, costs, erasing, exchange, facilities, goals,
    home, intake, invoices, keeping, ledger, lessons, letters, observations, offers, outtray,
    own_time, packages, payers, payments, planning, prices, ready, reports, settings, sports,
    students, terms, timetable, trips, visits,
};

/// What a command gave back.
#[derive(Debug, Serialize)]
pub struct Answer {
    /// Its value.
    pub value: Value,
    /// The things that changed; empty for a reading.
    pub changes: Vec<Change>,
    /// The act in the journal, where one was written: what Undo takes back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub act: Option<ActId>,
}

type Run = Box<dyn Fn(&mut CoachFile, Value) -> Result<Answer> + Send + Sync>;

/// One command.
pub struct Command {
    /// Its name: the capability, a dot, the act.
    pub name: &'static str,
    /// What it does.
    pub about: &'static str,
    /// Whether it writes.
    pub writes: bool,
    input: fn(&mut SchemaGenerator) -> Schema,
    output: fn(&mut SchemaGenerator) -> Schema,
    run: Run,
}

/// A command as `commands` lists it.
#[derive(Debug, Serialize)]
pub struct Listed {
    /// Its name.
    pub name: &'static str,
    /// What it does.
    pub about: &'static str,
    /// Whether it writes.
    pub writes: bool,
    /// JSON Schema of its input.
    pub input: Schema,
    /// JSON Schema of its output's value.
    pub output: Schema,
}

/// An input with nothing in it.
#[derive(Debug, Default, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Nothing {}

/// An act to undo.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UndoAct {
    /// The act.
    pub act: ActId,
}

/// How much history.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct NewestActs {
    /// How many acts at most.
    pub most: u32,
}

impl Default for NewestActs {
    fn default() -> Self {
        Self { most: 50 }
    }
}

fn reads<I, O>(
    name: &'static str,
    about: &'static str,
    act: fn(&Reading<'_>, I) -> Result<O>,
) -> Command
where
    I: DeserializeOwned + JsonSchema + 'static,
    O: Serialize + JsonSchema + 'static,
{
    let run = move |file: &mut CoachFile, input: Value| {
        let input = typed(input)?;
        let value = file.read(|db| act(db, input))?;
        Ok(Answer { value: json(&value)?, changes: Vec::new(), act: None })
    };
    Command {
        name,
        about,
        writes: false,
        input: |schemas| I::json_schema(schemas),
        output: |schemas| O::json_schema(schemas),
        run: Box::new(run),
    }
}

fn writes<I, O>(
    name: &'static str,
    about: &'static str,
    act: fn(&Writing<'_>, I) -> Result<O>,
) -> Command
where
    I: DeserializeOwned + JsonSchema + 'static,
    O: Serialize + JsonSchema + 'static,
{
    let run = move |file: &mut CoachFile, input: Value| {
        let input = typed(input)?;
        let written = file.write(name, about, |db| {
            let value = act(db, input)?;
            goals::standing::keep(db)?;
            Ok(value)
        })?;
        Ok(Answer { value: json(&written.value)?, changes: written.changes, act: written.act })
    };
    Command {
        name,
        about,
        writes: true,
        input: |schemas| I::json_schema(schemas),
        output: |schemas| O::json_schema(schemas),
        run: Box::new(run),
    }
}

/// An act that takes rows out of the file for good, which is no ordinary write: the file is written
/// anew after it.
fn erases<I, O>(
    name: &'static str,
    about: &'static str,
    act: fn(&mut CoachFile, I) -> Result<Written<O>>,
) -> Command
where
    I: DeserializeOwned + JsonSchema + 'static,
    O: Serialize + JsonSchema + 'static,
{
    let run = move |file: &mut CoachFile, input: Value| {
        let written = act(file, typed(input)?)?;
        Ok(Answer { value: json(&written.value)?, changes: written.changes, act: written.act })
    };
    Command {
        name,
        about,
        writes: true,
        input: |schemas| I::json_schema(schemas),
        output: |schemas| O::json_schema(schemas),
        run: Box::new(run),
    }
}

fn undo() -> Command {
    let run = |file: &mut CoachFile, input: Value| {
        let UndoAct { act } = typed(input)?;
        let written = file.undo(act)?;
        Ok(Answer { value: json(&written.value)?, changes: written.changes, act: written.act })
    };
    Command {
        name: "journal.undo",
        about: "Take an act back",
        writes: true,
        input: UndoAct::json_schema,
        output: Undone::json_schema,
        run: Box::new(run),
    }
}

/// Every command, by capability.
static TABLE: LazyLock<Vec<Command>> = LazyLock::new(|| {
    vec![
        reads("journal.newest", "The newest acts, newest first", |db, ask: NewestActs| {
            journal::newest(db, ask.most)
        }),
        undo(),
        reads(
            "reports.history",
            "What changed of a thing, newest first",
            reports::history::history,
        ),
        reads("settings.show", "The coach's own settings", |db, _: Nothing| settings::show(db)),
        writes("settings.change", "Settings changed", settings::change),
        reads("sports.list", "The sport packs", |_, _: Nothing| Ok(sports::skills::packs())),
        reads("sports.show", "One sport’s pack", |_, ask| sports::skills::show(ask)),
        reads(
            "sports.skills",
            "The skills of a sport, the coach's own among them",
            sports::skills::list,
        ),
        writes("sports.add_skill", "Skill added", sports::skills::add),
        reads(
            "sports.drills",
            "The drills of a sport, the coach's own among them",
            sports::drills::drills,
        ),
        writes("sports.add_drill", "Drill added", sports::drills::add_drill),
        writes("students.add", "Student added", students::add),
        writes("students.change", "Student changed", students::change),
        writes("students.archive", "Student put away", students::archive),
        writes("students.bring_back", "Student brought back", students::bring_back),
        reads("students.list", "Students by name, searched as one types", students::list),
        reads("students.show", "One student", students::show),
        writes("students.add_fact", "Fact written down", students::add_fact),
        writes("students.change_fact", "Fact changed", students::change_fact),
        writes("students.remove_fact", "Fact taken away", students::remove_fact),
        reads(
            "students.facts",
            "Equipment, level and playing history of a student, the newest of each first",
            students::facts,
        ),
        reads(
            "students.erasing",
            "What is kept about a student, and what erasing would do",
            erasing::would_erase,
        ),
        erases("students.erase", "A student erased", erasing::erase),
        erases("students.erase_health", "Health answers erased", erasing::erase_health),
        erases("intake.erase_incident", "An incident report erased", erasing::erase_report),
        reads("prices.list", "The price list", |db, _: Nothing| prices::list(db)),
        writes("prices.add", "Price written down", prices::add),
        writes("prices.end", "Price ended", prices::end),
        reads("prices.taxes", "What tax counts for which kind of line", |db, _: Nothing| {
            prices::taxes(db)
        }),
        writes("prices.set_tax", "Tax set", prices::set_tax),
        writes("prices.drop_tax", "Tax taken away", prices::drop_tax),
        reads("terms.show", "What the coach\u{2019}s terms say", |db, _: Nothing| terms::show(db)),
        writes("terms.set", "Terms set", terms::set),
        reads("payers.list", "Whoever pays", |db, _: Nothing| payers::list(db)),
        reads("payers.show", "One who pays", payers::show),
        writes("payers.add", "Payer added", payers::add),
        writes("payers.change", "Payer changed", payers::change),
        reads("payers.of_student", "Who pays for a student", payers::of_student),
        writes("payers.choose", "Payer chosen", payers::choose),
        reads("packages.list", "Packages and what they owe", packages::list),
        reads("packages.show", "A package with its history", packages::show),
        writes("packages.sell", "Package put on an invoice", invoices::sell_package),
        writes("packages.extend", "New last day for a package", packages::extend),
        writes("packages.give_bonus", "Lessons on top of a package", packages::give_bonus),
        writes("packages.lapse", "What is left of a package runs out", packages::lapse),
        writes("packages.move_lessons", "Lessons moved to somebody else", packages::move_lessons),
        reads(
            "packages.would_give_back",
            "What giving a package back would come to",
            invoices::would_give_back,
        ),
        writes("packages.give_back", "Package given back", invoices::give_back),
        reads("invoices.seller", "Who issues invoices", |db, _: Nothing| invoices::seller(db)),
        writes("invoices.set_seller", "Who issues invoices is set", invoices::set_seller),
        reads("invoices.list", "Invoices and credit notes", invoices::list),
        reads("invoices.show", "An invoice or credit note", invoices::show),
        writes("invoices.draft", "Invoice begun", invoices::draft),
        writes("invoices.change", "Draft changed", invoices::change),
        writes("invoices.discard", "Draft discarded", |db, which| {
            invoices::discard(db, which).map(|()| Nothing {})
        }),
        reads("invoices.in_parts", "The parts in which a draft would be paid", invoices::in_parts),
        writes("invoices.issue", "Invoice issued", invoices::issue),
        writes("invoices.credit", "Credit note issued", invoices::credit),
        reads(
            "invoices.would_remind",
            "What a reminder of an overdue invoice would say",
            invoices::would_remind,
        ),
        writes("invoices.remind", "Reminder written", invoices::remind),
        reads("payments.account", "The account of a payer", payments::account),
        writes("payments.receive", "Payment entered", payments::receive),
        writes("payments.apply", "Money used for an invoice", payments::apply),
        writes("payments.pay_back", "Money paid back", payments::pay_back),
        writes("payments.write_off", "What is open is given up", payments::write_off),
        writes("payments.take_back", "An entry taken back", payments::take_back),
        reads("bank.read", "What a bank statement holds, with what each row may be", bank::read),
        writes("bank.enter", "Payments of a bank statement entered", bank::enter),
        reads("accounts.overview", "Where the money stands", |db, _: Nothing| {
            accounts::overview(db)
        }),
        reads("accounts.to_settle", "Lessons that are over and not settled", |db, _: Nothing| {
            accounts::to_settle(db)
        }),
        reads("accounts.propose", "How a lesson would be settled", accounts::propose),
        writes("accounts.settle", "Lessons settled", accounts::settle),
        writes("accounts.unsettle", "A lesson is to be settled again", accounts::unsettle),
        reads(
            "accounts.changed",
            "Lessons that are otherwise now than when they were settled",
            |db, _: Nothing| accounts::changed(db),
        ),
        reads(
            "accounts.owed_in_lessons",
            "What is owed in lessons, as it stands and as expected",
            |db, _: Nothing| accounts::owed_in_lessons(db),
        ),
        reads("accounts.year", "What a year comes to", accounts::year),
        reads("accounts.balanced", "Whether the ledger balances", |db, _: Nothing| {
            ledger::balanced(db)
        }),
        reads("costs.list", "What was spent on some days, with sums", costs::list),
        writes("costs.note", "Cost noted", costs::note),
        writes("costs.change", "Cost changed", costs::change),
        writes("costs.take_back", "Cost taken back", costs::take_back),
        reads(
            "costs.split_proposal",
            "How costs would be split over students",
            trips::split_proposal,
        ),
        writes("costs.pass_on", "Costs passed on", trips::pass_on),
        reads("trips.result", "What a trip earned and cost", trips::result),
        writes("trips.note_courts", "Courts noted as costs", trips::note_courts),
        reads("trips.others", "A trip beside those of the year before it", trips::others),
        reads("trips.outlook", "What a trip would come to", trips::outlook),
        reads(
            "costs.rates",
            "The rates by which drives and days away are counted",
            |db, _: Nothing| costs::rates(db),
        ),
        writes("costs.add_rate", "Rate written down", costs::add_rate),
        writes("costs.put_rate_away", "Rate put away", costs::put_rate_away),
        reads("costs.published", "Rates that were published, to take over", |_, _: Nothing| {
            Ok(costs::published())
        }),
        writes("costs.take_published", "Rates taken over", costs::take_published),
        reads("keeping.spans", "How long things are kept", |db, _: Nothing| keeping::spans(db)),
        writes("keeping.set_spans", "How long things are kept is noted", keeping::set_spans),
        reads("keeping.due", "What has been kept longer than the coach said", |db, _: Nothing| {
            keeping::due(db, db.today())
        }),
        reads(
            "students.everything",
            "A copy of everything about one student, for them",
            erasing::everything,
        ),
        reads(
            "erasing.kept_for_accounts",
            "What is kept for the accounts of people who were erased",
            |db, _: Nothing| erasing::kept_for_accounts(db),
        ),
        erases("erasing.let_go", "A record for the accounts erased", erasing::let_go),
        reads(
            "erasing.backups",
            "The copies of the file, and when they lapse",
            |db, _: Nothing| erasing::backups(db),
        ),
        writes("erasing.keep_backups_for", "How long backups are kept", erasing::keep_backups_for),
        writes("facilities.add", "Facility added", facilities::add),
        writes("facilities.change", "Facility changed", facilities::change),
        writes("facilities.archive", "Facility put away", facilities::archive),
        writes("facilities.bring_back", "Facility brought back", facilities::bring_back),
        reads("facilities.list", "Facilities by name, with their courts", facilities::list),
        reads("facilities.show", "One facility with its courts", facilities::show),
        writes("facilities.add_court", "Court added", facilities::add_court),
        writes("facilities.change_court", "Court changed", facilities::change_court),
        writes(
            "facilities.archive_court",
            "Court put away or brought back",
            facilities::archive_court,
        ),
        writes(
            "facilities.set_rules",
            "Facility\u{2019}s rules written down",
            facilities::set_rules,
        ),
        reads("facilities.rules", "A facility\u{2019}s rules of booking", facilities::rules),
        reads(
            "facilities.terms",
            "What a facility\u{2019}s rules say of one booking",
            facilities::terms,
        ),
        writes("facilities.set_teaching", "Permission to teach noted", facilities::set_teaching),
        reads(
            "facilities.teaching",
            "Whether the coach may teach at a facility",
            facilities::teaching,
        ),
        writes("facilities.set_card", "Emergency card written", facilities::set_card),
        reads(
            "facilities.card",
            "A facility\u{2019}s desk and where to turn in an emergency",
            facilities::card,
        ),
        reads("intake.show", "What was asked of a student before court", intake::record::show),
        writes("intake.set", "Intake gone through", intake::record::set),
        reads("intake.eyewear", "The standards of eyewear", |_, _: Nothing| {
            Ok(intake::eyewear::STANDARDS.to_vec())
        }),
        reads(
            "intake.injuries",
            "A student\u{2019}s injuries and restrictions",
            intake::injuries::of,
        ),
        writes("intake.note_injury", "Injury written down", intake::injuries::note),
        writes("intake.change_injury", "Injury changed", intake::injuries::change),
        reads(
            "intake.clearances",
            "What professionals wrote about a student",
            intake::clearances::of,
        ),
        writes("intake.record_clearance", "Clearance recorded", intake::clearances::record),
        writes("intake.withdraw_clearance", "Clearance withdrawn", intake::clearances::withdraw),
        reads(
            "intake.readiness",
            "A student\u{2019}s answers to the readiness questions, the newest first",
            intake::readiness::answers,
        ),
        writes(
            "intake.answer_readiness",
            "Readiness questions answered",
            intake::readiness::answer,
        ),
        reads("intake.notices", "The notices, each at its newest version", |db, _: Nothing| {
            intake::notices::list(db)
        }),
        reads("intake.notice", "One notice at its newest version", intake::notices::show),
        reads("intake.draft_notice", "The words a notice begins with", intake::notices::draft),
        writes("intake.publish_notice", "Notice published", intake::notices::publish),
        writes("intake.archive_notice", "Notice put away", intake::notices::archive),
        reads(
            "intake.notices_needed",
            "The notices a student is asked for, and what came of them",
            intake::notices::needed,
        ),
        reads(
            "intake.acknowledgements",
            "What was acknowledged for a student",
            intake::notices::acknowledgements,
        ),
        writes("intake.acknowledge_notice", "Notice acknowledged", intake::notices::acknowledge),
        reads("intake.consents", "A student\u{2019}s consents, one by one", intake::consents::of),
        reads("intake.guest_consents", "The consents of guests", |db, _: Nothing| {
            intake::consents::of_guests(db)
        }),
        writes("intake.give_consent", "Consent answered", intake::consents::give),
        writes("intake.withdraw_consent", "Consent withdrawn", intake::consents::withdraw),
        reads("intake.policy", "A facility\u{2019}s own policy", intake::forms::policy),
        writes(
            "intake.set_policy",
            "Facility\u{2019}s policy written down",
            intake::forms::set_policy,
        ),
        reads("intake.forms", "The facilities\u{2019} forms a student signed", intake::forms::of),
        writes("intake.sign_form", "Facility\u{2019}s form signed", intake::forms::sign),
        reads("intake.minor_rules", "The rules for minors", |db, _: Nothing| {
            intake::minors::rules(db)
        }),
        writes(
            "intake.set_minor_rules",
            "Rules for minors written down",
            intake::minors::set_rules,
        ),
        reads("intake.certificates", "The coach\u{2019}s own papers", |db, _: Nothing| {
            intake::certificates::list(db)
        }),
        writes("intake.add_certificate", "Own paper added", intake::certificates::add),
        writes("intake.change_certificate", "Own paper changed", intake::certificates::change),
        writes("intake.archive_certificate", "Own paper put away", intake::certificates::archive),
        reads("intake.incidents", "The incident reports, the newest first", |db, _: Nothing| {
            intake::incidents::list(db)
        }),
        reads("intake.incident", "One incident report", intake::incidents::show),
        writes("intake.record_incident", "Incident written down", intake::incidents::record),
        writes("intake.change_incident", "Incident changed", intake::incidents::change),
        writes("intake.sign_incident", "Incident report signed", intake::incidents::sign),
        writes("intake.add_to_incident", "Added to an incident report", intake::incidents::add),
        writes("intake.make_page", "Intake page made", intake::page::make),
        reads("intake.read_answers", "What a file of answers says", intake::page::read),
        writes("intake.take_answers", "Answers taken", intake::page::take),
        reads("intake.ready", "How everyone on a lesson stands before it", ready::of_lesson),
        reads(
            "intake.ready_person",
            "How a student stands before a first lesson",
            ready::before_first,
        ),
        reads(
            "intake.ready_at",
            "How people stand where and when a plan has them",
            ready::at_places,
        ),
        writes("intake.go_on", "Went on although not ready", ready::go_on),
        reads("own_time.show", "The coach\u{2019}s own week and its limits", |db, _: Nothing| {
            own_time::show(db)
        }),
        writes("own_time.set", "The coach\u{2019}s own week written down", own_time::set),
        reads(
            "own_time.list",
            "What takes the coach\u{2019}s time besides lessons",
            own_time::list,
        ),
        writes("own_time.add", "Something added to the coach\u{2019}s own time", own_time::add),
        writes(
            "own_time.change",
            "Something changed in the coach\u{2019}s own time",
            own_time::change,
        ),
        writes(
            "own_time.remove",
            "Something taken out of the coach\u{2019}s own time",
            own_time::remove,
        ),
        reads("planning.wish", "What the student of a visit wishes for", planning::wish),
        writes("planning.set_wish", "A student\u{2019}s wish written down", planning::set_wish),
        writes("planning.clear_wish", "A student\u{2019}s wish taken away", planning::clear_wish),
        reads(
            "planning.begin",
            "Begins the best plan for everyone who comes on some days",
            planning::begin,
        ),
        reads("planning.look", "How far a plan is", planning::look),
        reads("planning.stop", "Stops a plan; what was found stays", planning::stop),
        reads("planning.weigh", "What speaks against a plan as it was moved", planning::weigh),
        writes("planning.take", "A plan\u{2019}s lines made lessons", planning::take),
        reads(
            "bookings.list",
            "The courts that lessons need, and those to give back",
            bookings::list,
        ),
        reads("bookings.message", "The words with which courts are asked for", bookings::message),
        writes("bookings.ask", "Courts asked for", bookings::ask),
        writes("bookings.confirm", "Court confirmed", bookings::confirm),
        writes("bookings.refuse", "Court refused", bookings::refuse),
        writes("bookings.give_back", "Court given back", bookings::give_back),
        reads("offers.terms", "Rates by length and the coach\u{2019}s terms", |db, _: Nothing| {
            offers::terms(db)
        }),
        writes("offers.set_terms", "Rates and terms written down", offers::set_terms),
        reads("offers.draft", "The offer of a visit, before it is made", offers::draft),
        reads("offers.list", "The offers of a visit, and what changed since", offers::list),
        writes("offers.make", "Visit offered", offers::make),
        writes("offers.answer", "Offer answered", offers::answer),
        reads(
            "timetable.week",
            "A week: the coach, and everyone who has a lesson, is in town or was offered days",
            timetable::week,
        ),
        reads(
            "timetable.trip",
            "A run of days: facilities, people, lessons, ways, and the hours still to sell",
            timetable::trip,
        ),
        reads("timetable.year", "A year in figures, by person and month", timetable::year),
        reads(
            "timetable.counted",
            "What one of a year\u{2019}s figures counts",
            timetable::counted,
        ),
        reads("calendar.due", "The invitations of a visit that are due", calendar::due),
        reads(
            "calendar.follows",
            "What follows when a lesson was moved or called off",
            calendar::follows,
        ),
        writes("calendar.written", "Invitations written", calendar::written),
        reads("calendar.calendars", "The coach\u{2019}s calendars", |db, _: Nothing| {
            own_time::calendars(db)
        }),
        writes("calendar.read", "Calendar file read", calendar::read),
        writes("calendar.remove", "Calendar taken out", own_time::remove_calendar),
        reads("calendar.account", "The calendars on a server", |db, _: Nothing| {
            calendar::server::show(db)
        }),
        writes("calendar.set_account", "Calendars on a server chosen", calendar::server::set),
        writes("calendar.leave", "Calendars on a server left", |db, _: Nothing| {
            calendar::server::leave(db)
        }),
        writes("calendar.take", "Lesson moved as the calendar says", calendar::server::take),
        writes(
            "calendar.put_back",
            "Lesson to be written into the calendar again",
            calendar::server::put_back,
        ),
        reads("facilities.zones", "The time zones, by IANA name", |_, _: Nothing| {
            Ok(crate::kinds::zones::names())
        }),
        writes("goals.set", "Goal set", goals::set::set),
        writes("goals.change_words", "New words for a goal", goals::set::change_words),
        writes("goals.rank", "Goals put in a new order", goals::set::rank),
        reads("goals.show", "One goal with where it stands", goals::show::show),
        reads("goals.list", "A student's goals by priority", goals::show::list),
        reads("goals.chart", "A student's carry chart", goals::chart::chart),
        reads("goals.on_court", "The goals worked on at a visit", goals::court::on_court),
        writes("goals.jot", "A note written", goals::court::jot),
        reads("goals.jottings", "The quick notes of a visit", goals::court::jottings),
        writes("goals.start_block", "Block started", goals::blocks::start),
        writes("goals.touch", "A try counted", goals::blocks::touch),
        writes("goals.take_back", "A try taken back", goals::blocks::take_back),
        writes("goals.end_block", "Block ended", goals::blocks::end),
        writes("goals.enter_total", "Total entered", goals::blocks::enter_total),
        writes("goals.decide", "Decision taken", goals::decide::decide),
        reads(
            "goals.proposals",
            "What is proposed for each goal at a visit's end",
            goals::decide::proposals,
        ),
        writes("goals.accept", "Decisions taken as proposed", goals::decide::accept),
        writes("goals.raise", "Goal raised", goals::raise::raise),
        writes("goals.cue_landed", "The cue landed", goals::landed::cue_landed),
        writes("goals.give_reasons", "Reasons for misses", goals::misses::give_reasons),
        reads("goals.reasons", "The reasons given for a student's misses", goals::misses::reasons),
        reads(
            "goals.look_back",
            "The kept goal a visit offers a look back at",
            goals::look_back::look_back,
        ),
        reads(
            "goals.weigh",
            "What a criterion means for players of different strength",
            |_, ask| goals::weigh::weigh(&ask),
        ),
        writes("visits.plan", "Visit planned", visits::plan),
        writes("visits.expect", "Visit expected", visits::expect),
        writes("visits.change", "Visit changed", visits::change),
        writes("visits.open", "Visit started: its goals are carried into it", visits::open),
        writes("visits.close", "Visit closed", visits::close),
        writes("visits.reopen", "Visit opened again", visits::reopen),
        writes("visits.call_off", "Visit called off", visits::call_off),
        reads("visits.show", "One visit", visits::show),
        reads("visits.list", "Visits in time", visits::list),
        writes("lessons.plan", "Lesson planned", lessons::plan),
        writes("lessons.change", "Lesson moved", lessons::change),
        reads("lessons.clashes", "Clashes of a time with the lessons that stand", lessons::clashes),
        writes("lessons.give", "Lesson given", lessons::give),
        writes("lessons.cut_short", "Lesson cut short", lessons::cut_short),
        writes("lessons.call_off", "Lesson called off", lessons::call_off),
        writes("lessons.miss", "Lesson missed", lessons::miss),
        writes("lessons.note", "Lesson note written", lessons::note),
        writes("lessons.rate_effort", "Effort rated by the student", lessons::rate_effort),
        reads("lessons.plan_lines", "A lesson's plan", lessons::plan_lines),
        reads("lessons.propose_plan", "A plan proposed for a lesson", lessons::propose_plan),
        writes("lessons.set_plan_lines", "Lesson planned", lessons::set_plan_lines),
        writes("lessons.keep_template", "Template kept", lessons::keep_template),
        reads("lessons.templates", "Templates of lesson plans, by name", lessons::templates),
        reads("lessons.use_template", "A template as a plan for a lesson", lessons::use_template),
        writes("lessons.enter_card", "Court card entered", lessons::enter_card),
        reads("lessons.show", "One lesson", lessons::show),
        reads("lessons.list", "Lessons in time", lessons::list),
        writes("assessments.assess", "Assessed", assessments::assess),
        writes("assessments.change_level", "A level changed", assessments::change_level),
        reads("assessments.list", "A student's levels, newest first", assessments::list),
        writes("assessments.take_test", "Test taken", assessments::take_test),
        writes("assessments.give_norms", "Norms of a test given", assessments::give_norms),
        reads("assessments.norms", "The coach's own norms of a sport's tests", assessments::norms),
        reads("assessments.tests", "The published tests a student took", assessments::tests),
        writes("observations.see", "Seen", observations::see),
        writes("observations.see_again", "Seen again", observations::see_again),
        writes("observations.make_goal", "Made a goal of what was seen", observations::make_goal),
        reads("observations.list", "Strengths and faults seen of a student", observations::list),
        writes("home.plan", "Home plan", home::plan),
        reads("home.show", "The home plan of a visit, or what one would begin with", home::show),
        writes("home.tell", "As told by the student", home::tell),
        reads("home.last", "The home plan of the visit before, with what was told", home::last),
        reads(
            "letters.draft",
            "The letter of a visit as it stands, with its pages",
            letters::draft,
        ),
        writes("letters.edit", "Letter edited", letters::edit),
        writes(
            "letters.compose_anew",
            "Letter composed anew from the record",
            letters::compose_anew,
        ),
        writes("letters.choose_language", "Language of letters chosen", letters::choose_language),
        writes("letters.issue", "Letter issued", letters::issue),
        reads("letters.list", "Letters owed, in draft and issued", letters::list),
        reads("letters.show", "An issued letter with its document", letters::show),
        reads("outtray.list", "What is in the out-tray, and what was", outtray::list),
        reads("outtray.show", "One message with what became of it", outtray::show),
        reads("outtray.look", "A message as it arrives", outtray::look),
        reads("outtray.of_student", "What went out about a student", outtray::of_student),
        reads("outtray.of_invoice", "What went out about an invoice", outtray::of_invoice),
        writes("outtray.put", "Put into the out-tray", outtray::put),
        writes("outtray.issue_letter", "Letter issued into the out-tray", outtray::issue_letter),
        writes("outtray.issue_invoice", "Invoice issued into the out-tray", outtray::issue_invoice),
        writes("outtray.edit", "Message changed", outtray::edit),
        writes("outtray.attach", "File added to a message", outtray::attach),
        writes("outtray.take_off", "File taken off a message", outtray::take_off),
        writes("outtray.release", "Messages released", outtray::release),
        writes("outtray.again", "Message sent again", outtray::again),
        writes("outtray.tell", "Message told in another way", outtray::tell),
        writes("outtray.withdraw", "Message withdrawn", outtray::withdraw),
        reads("outtray.account", "The mail account", |db, _: Nothing| outtray::account::show(db)),
        writes("outtray.set_account", "Mail account set", outtray::account::set),
        reads("outtray.texts", "The texts messages begin with", |db, _: Nothing| {
            outtray::texts::list(db)
        }),
        writes("outtray.set_text", "Text of messages changed", outtray::texts::set),
        reads("outtray.follow_ups", "What may be written now", |db, _: Nothing| {
            outtray::follow_up::list(db)
        }),
        writes("outtray.leave_follow_up", "Not written this time", outtray::follow_up::leave),
        reads("outtray.rules", "When what is proposed to be written", |db, _: Nothing| {
            outtray::follow_up::rules(db)
        }),
        writes("outtray.set_rules", "Rules of writing set", outtray::follow_up::set_rules),
        reads("exchange.read_csv", "What a CSV file of a season holds", exchange::preview::preview),
        writes("exchange.take_csv", "A season taken from a CSV file", exchange::take::take),
        reads("reports.day_sheet", "The day sheet", reports::day_sheet::day_sheet),
        reads(
            "reports.load",
            "The load of a visit: minutes and effort, beside the usual court time",
            reports::load::of_visit,
        ),
        reads(
            "reports.season",
            "What was met, kept, slipped and raised across all students, and what waits",
            reports::season::season,
        ),
        reads("reports.find", "People, places and goals by name", reports::find::find),
    ]
});

/// Every command.
pub fn all() -> &'static [Command] {
    &TABLE
}

/// Every command with its schemas.
pub fn listed() -> Vec<Listed> {
    all()
        .iter()
        .map(|c| Listed {
            name: c.name,
            about: c.about,
            writes: c.writes,
            input: whole_schema(SchemaSettings::default().for_deserialize(), c.input),
            output: whole_schema(SchemaSettings::default().for_serialize(), c.output),
        })
        .collect()
}

/// A schema that stands by itself, with the definitions it names inside.
pub(crate) fn whole_schema(
    settings: SchemaSettings,
    make: fn(&mut SchemaGenerator) -> Schema,
) -> Schema {
    let mut schemas = settings.into_generator();
    let mut schema = make(&mut schemas);
    let definitions = schemas.take_definitions(true);
    if !definitions.is_empty() {
        schema.insert("$defs".to_owned(), Value::Object(definitions));
    }
    schema
}

/// Runs a command. A fault in the program is caught: the act is rolled back and the file stays
/// usable.
///
/// # Errors
/// `NotFound` when there is no such command, `Refused` when the input is not of its kind, and those
/// of the command.
pub fn call(file: &mut CoachFile, name: &str, input: Value) -> Result<Answer> {
    let command = all()
        .iter()
        .find(|command| command.name == name)
        .ok_or_else(|| Error::NotFound { what: "command", id: name.to_owned() })?;
    catch_unwind(AssertUnwindSafe(|| (command.run)(file, input))).unwrap_or_else(|panic| {
        let said = panic
            .downcast_ref::<String>()
            .cloned()
            .or_else(|| panic.downcast_ref::<&str>().map(|s| (*s).to_owned()))
            .unwrap_or_default();
        Err(Error::Fault(format!("{name}: {said}")))
    })
}

/// Checks the whole file, and that what is kept of each goal is what its evidence says.
///
/// # Errors
/// As [`CoachFile::check`].
pub fn check(file: &CoachFile) -> Result<Checked> {
    let mut checked = file.check()?;
    checked.wrong.extend(file.read(goals::standing::astray)?);
    checked.wrong.extend(file.read(outtray::astray)?);
    checked.sound = checked.wrong.is_empty();
    Ok(checked)
}

/// Makes a verified copy at `to`, and notes in the file where it was put. It is noted first, so that no
/// copy is there that the file does not know of.
///
/// # Errors
/// As [`CoachFile::backup`].
pub fn back_up(file: &mut CoachFile, to: &std::path::Path) -> Result<backup::BackedUp> {
    if to.exists() {
        return file.backup(to);
    }
    file.write("erasing.note_backup", "Backup made", |db| erasing::note_backup(db, to))?;
    let made = file.backup(to);
    if made.is_err() {
        file.write("erasing.forget_backup", "No backup made", |db| erasing::forget_backup(db, to))?;
    }
    made
}

/// Puts a verified backup in the place of a file, which must not be open. The backups that the file of
/// before knew of are still known.
///
/// # Errors
/// As [`backup::restore`].
pub fn restore(
    path: &std::path::Path,
    from: &std::path::Path,
    clock: &dyn Clock,
) -> Result<backup::Restored> {
    // A damaged file is what a restore is for: then nothing is known of its backups.
    let known = CoachFile::open(path).and_then(|file| file.read(erasing::made)).unwrap_or_default();
    let restored = backup::restore(path, from, clock)?;
    CoachFile::open(path)?
        .write("erasing.note_backup", "Backups noted", |db| erasing::note_backups(db, &known))?;
    Ok(restored)
}

/// Keeps where goals stand that an older edition of the program did not keep: once after a file was
/// brought to a newer schema; and writes the file anew where an erasing could not. Whatever comes of it, what is read is right: it is only faster then.
///
/// # Errors
/// `Storage`.
pub fn catch_up(file: &mut CoachFile) -> Result<()> {
    file.clear()?;
    if !file.read(goals::standing::behind)?.is_empty() {
        file.write("goals.keep_standing", "Where goals stand is kept", goals::standing::keep_all)?;
    }
    if file.read(offers::behind)? {
        file.write("prices.catch_up", "Rates put into the price list", offers::catch_up)?;
    }
    if file.read(outtray::carry::behind)? > 0 {
        let label = "Messages that may have been sent";
        file.write("outtray.catch_up", label, outtray::carry::catch_up)?;
    }
    if !file.read(own_time::behind)?.is_empty() {
        file.write("calendar.catch_up", "Calendars worked out anew", calendar::catch_up)?;
    }
    Ok(())
}

/// The input as the command's own kind.
pub(crate) fn typed<I: DeserializeOwned>(input: Value) -> Result<I> {
    // Null stands for an input left out.
    let input = if input.is_null() { Value::Object(serde_json::Map::new()) } else { input };
    serde_path_to_error::deserialize(input).map_err(|e| {
        let path = e.path().to_string();
        let field = if path == "." { String::new() } else { path };
        let said = e.inner().to_string();
        let code = if said.starts_with("unknown field") {
            "unknown_field"
        } else if said.starts_with("missing field") {
            "missing_field"
        } else {
            "wrong_kind"
        };
        Error::field(&field, code, format!("The input is not as expected: {said}."))
    })
}

pub(crate) fn json<T: Serialize>(value: &T) -> Result<Value> {
    serde_json::to_value(value).map_err(|e| Error::Fault(e.to_string()))
}
