//! Twelve facilities' published rules, written down as data and asked about bookings.
//!
//! The rules are those of real places, kept anonymous: colleges and universities, city sports
//! centres and park districts, private clubs, in the United States and the United Kingdom, as their
//! pages stated them when they were read in 2025 and 2026. Beside each stands what its page says.

use super::*;
use crate::facilities::Court;
use crate::kinds::{Day, Time};

fn court(ground: &str) -> Court {
    Court {
        id: CourtId(uuid::Uuid::nil()),
        name: "Court 2".to_owned(),
        notes: String::new(),
        ground: ground.to_owned(),
        seen: None,
        archived: None,
    }
}

fn facility() -> crate::facilities::Facility {
    crate::facilities::Facility {
        id: crate::kinds::ids::FacilityId(uuid::Uuid::nil()),
        place: crate::facilities::Place::default(),
        courts: vec![court("")],
        archived: None,
    }
}

/// A place's rules, its zone, and the kind of its court.
struct At {
    rules: Rules,
    zone: &'static str,
    ground: &'static str,
}

/// The rules as they can be stored: what is written down here must be taken.
fn at(zone: &'static str, rules: Rules) -> At {
    At { rules: rules.read(&facility()).expect("rules that can be stored"), zone, ground: "" }
}

impl At {
    fn on(&self, ground: &'static str) -> At {
        At { rules: self.rules.clone(), zone: self.zone, ground }
    }

    fn booked_as(&self, who: &str) -> At {
        let rules = Rules { books_as: who.to_owned(), ..self.rules.clone() };
        At { rules, zone: self.zone, ground: self.ground }
    }

    fn ask(&self, day: &str, starts: &str, minutes: u32) -> Terms {
        let (day, starts) = (Day::parse(day), Time::parse(starts));
        let (day, starts) = day.zip(starts).expect("a day and a time");
        terms::of(&self.rules, self.zone, Some(&court(self.ground)), day, starts, minutes)
    }
}

fn from(terms: &Terms) -> String {
    terms.ask_from.map(|g| format!("{} {}", g.day, g.time)).unwrap_or_default()
}

fn free_until(terms: &Terms) -> String {
    terms.free_until.map(|g| format!("{} {}", g.day, g.time)).unwrap_or_default()
}

fn text(words: &str) -> String {
    words.to_owned()
}

fn ahead(who: &str, amount: i64, unit: AheadUnit) -> Ahead {
    Ahead { who: text(who), amount, unit, ..Ahead::default() }
}

fn rate(who: &str, hour: &str) -> Rate {
    Rate { who: text(who), hour: text(hour), ..Rate::default() }
}

fn release(hours: i64) -> Release {
    Release { hours, ..Release::default() }
}

const NEW_YORK: &str = "America/New_York";
const CHICAGO: &str = "America/Chicago";

#[test]
fn college_a_48_hours_ahead_one_hour_none_in_a_row() {
    let a = at(
        NEW_YORK,
        Rules {
            ahead: vec![ahead("", 48, AheadUnit::Hours)],
            longest: 60,
            apart: true,
            grace: 10,
            youngest: 16,
            ..Rules::default()
        },
    );
    let asked = a.ask("2026-03-12", "17:00", 60);
    assert_eq!(from(&asked), "2026-03-10 17:00");
    assert!(asked.against.is_empty());
    assert_eq!(
        asked.mind,
        [
            "No two bookings in a row.",
            "Whoever is 10 minutes late loses the court.",
            "Only those of 16 or older may book.",
        ]
    );
    assert_eq!(a.ask("2026-03-12", "17:00", 90).against, ["The longest booking is 60 minutes."]);
    // The clocks go forward in between: 48 hours as they pass are one more on the wall.
    assert_eq!(from(&a.ask("2026-03-09", "09:00", 60)), "2026-03-07 08:00");
}

#[test]
fn university_b_today_or_tomorrow_an_hour_a_day() {
    let b = at(
        NEW_YORK,
        Rules {
            ahead: vec![ahead("", 1, AheadUnit::Days)],
            longest: 60,
            day_limit: 60,
            day_bookings: 1,
            grace: 10,
            ..Rules::default()
        },
    );
    assert_eq!(from(&b.ask("2026-03-12", "17:00", 60)), "2026-03-11 00:00");
    let long = b.ask("2026-03-12", "17:00", 75);
    assert_eq!(
        long.against,
        ["The longest booking is 60 minutes.", "The most a day is 60 minutes."]
    );
}

#[test]
fn city_c_three_days_a_fee_a_half_hour_grid_open_play() {
    let c = at(
        CHICAGO,
        Rules {
            currency: text("usd"),
            books_as: text("member"),
            ahead: vec![ahead("member", 3, AheadUnit::Days)],
            rates: vec![rate("", "0")],
            booking_fee: text("3"),
            grid: 30,
            people: 4,
            release: vec![release(2)],
            closures: vec![Closure {
                weekdays: vec![4, 2],
                starts: text("18:00"),
                ends: text("21:00"),
                reason: text("open play"),
                ..Closure::default()
            }],
            needs: text("eye protection"),
            ..Rules::default()
        },
    );
    let tuesday = c.ask("2026-03-10", "17:30", 60);
    assert_eq!(tuesday.against, ["It cannot be booked 18:00 to 21:00: open play."]);
    let wednesday = c.ask("2026-03-11", "17:15", 60);
    assert_eq!(wednesday.against, ["Bookings start every 30 minutes, counted from midnight."]);
    assert_eq!(wednesday.cost, "3.00 USD");
    assert_eq!(from(&wednesday), "2026-03-08 00:00");
    assert_eq!(free_until(&wednesday), "2026-03-11 15:15");
    assert_eq!(
        wednesday.mind.last().map(String::as_str),
        Some("Everyone on court needs: eye protection.")
    );
    // Members only: no row fits a guest, so that nothing says when a guest may ask.
    assert_eq!(c.booked_as("guest").ask("2026-03-11", "17:00", 60).ask_from, None);
}

#[test]
fn sports_centre_d_a_month_ahead_one_booking_after_the_other() {
    let d = at(
        NEW_YORK,
        Rules {
            ahead: vec![ahead("", 1, AheadUnit::Months)],
            grid: 30,
            shortest: 30,
            one_by_one: true,
            needs: text("eyewear"),
            ..Rules::default()
        },
    );
    assert_eq!(from(&d.ask("2026-03-12", "17:00", 60)), "2026-02-12 00:00");
    // A month before the 31st is that month's last day.
    assert_eq!(from(&d.ask("2026-03-31", "17:00", 60)), "2026-02-28 00:00");
    assert_eq!(d.ask("2026-03-12", "17:00", 15).against, ["The shortest booking is 30 minutes."]);
}

#[test]
fn club_e_rates_by_the_hour_and_days_ahead_by_membership_and_court() {
    let mut indoor = ahead("member", 7, AheadUnit::Days);
    indoor.ground = text("indoor");
    let mut outdoor = ahead("member", 4, AheadUnit::Days);
    outdoor.ground = text("outdoor");
    let e = at(
        CHICAGO,
        Rules {
            currency: text("USD"),
            ahead: vec![indoor, outdoor, ahead("", 24, AheadUnit::Hours)],
            hours: vec![Hours { opens: text("06:00"), closes: text("22:00"), ..Hours::default() }],
            rates: vec![
                rate("member", "0"),
                Rate { starts: text("09:00"), ends: text("13:00"), ..rate("", "20") },
                Rate { starts: text("15:00"), ends: text("00:00"), ..rate("", "20") },
                rate("", "12"),
            ],
            guest_fee: text("10"),
            release: vec![release(3)],
            ..Rules::default()
        },
    );
    let member = e.booked_as("Member").on("Indoor");
    assert_eq!(from(&member.ask("2026-03-12", "17:00", 60)), "2026-03-05 00:00");
    assert_eq!(member.ask("2026-03-12", "17:00", 60).cost, "0.00 USD");
    assert_eq!(from(&member.on("outdoor").ask("2026-03-12", "17:00", 60)), "2026-03-08 00:00");
    let guest = e.booked_as("guest").on("indoor");
    let asked = guest.ask("2026-03-12", "12:30", 60);
    assert_eq!(from(&asked), "2026-03-11 12:30");
    // Half an hour at 20 and half an hour at 12.
    assert_eq!(asked.cost, "16.00 USD");
    assert_eq!(guest.ask("2026-03-12", "14:00", 60).cost, "12.00 USD");
    assert_eq!(asked.mind, ["Each guest costs 10.00 USD."]);
    assert_eq!(
        guest.ask("2026-03-12", "21:30", 60).against,
        ["On Thursday 12 March 2026 it is open 06:00 to 22:00."]
    );
}

#[test]
fn park_district_f_full_price_unless_given_back_a_day_before_or_rained_out() {
    let f = at(
        CHICAGO,
        Rules {
            ahead: vec![ahead("member", 7, AheadUnit::Days), ahead("", 2, AheadUnit::Days)],
            release: vec![release(24)],
            weather_free: true,
            ..Rules::default()
        },
    );
    let asked = f.ask("2026-06-12", "17:00", 60);
    assert_eq!(from(&asked), "2026-06-10 00:00");
    assert_eq!(
        asked.release,
        [
            "It can be given back free until Thursday 11 June 2026, 17:00; later it costs the whole price.",
            "If the weather takes it, it costs nothing.",
        ]
    );
    assert_eq!(from(&f.booked_as("member").ask("2026-06-12", "17:00", 60)), "2026-06-05 00:00");
}

#[test]
fn park_district_g_a_release_hour_and_two_deadlines_by_court() {
    let opens =
        |who: &str, amount| Ahead { opens: text("07:30"), ..ahead(who, amount, AheadUnit::Days) };
    let g = at(
        CHICAGO,
        Rules {
            books_as: text("resident"),
            ahead: vec![opens("resident", 7), opens("", 6)],
            day_bookings: 2,
            release: vec![
                Release { ground: text("indoor"), ..release(48) },
                Release { ground: text("outdoor"), ..release(4) },
            ],
            ..Rules::default()
        },
    );
    // A court on 7 November opens on 31 October for one, on 1 November for the other.
    let asked = g.on("indoor").ask("2026-11-07", "10:00", 60);
    assert_eq!(from(&asked), "2026-10-31 07:30");
    assert_eq!(asked.ask_words, "It can be asked for from Saturday 31 October 2026, 07:30.");
    assert_eq!(free_until(&asked), "2026-11-05 10:00");
    assert_eq!(from(&g.booked_as("visitor").ask("2026-11-07", "10:00", 60)), "2026-11-01 07:30");
    assert_eq!(free_until(&g.on("outdoor").ask("2026-11-07", "10:00", 60)), "2026-11-07 06:00");
    // No kind of court, no rule for it.
    assert_eq!(g.ask("2026-11-07", "10:00", 60).free_until, None);
}

#[test]
fn club_h_an_hour_and_a_half_a_day_and_four_a_week() {
    let h = at(NEW_YORK, Rules { day_limit: 90, week_limit: 240, ..Rules::default() });
    assert!(h.ask("2026-03-12", "17:00", 90).against.is_empty());
    assert_eq!(h.ask("2026-03-12", "17:00", 120).against, ["The most a day is 90 minutes."]);
    assert_eq!(h.ask("2026-03-12", "17:00", 300).against.len(), 2);
}

#[test]
fn centre_i_prices_by_time_and_by_who_asks() {
    let peak = |who: &str, hour: &str| Rate {
        weekdays: vec![1, 2, 3, 4, 5],
        starts: text("17:00"),
        ends: text("22:00"),
        ..rate(who, hour)
    };
    let outdoor = |who: &str, hour: &str| Rate { ground: text("outdoor"), ..rate(who, hour) };
    let i = at(
        "Europe/London",
        Rules {
            currency: text("GBP"),
            ahead: vec![ahead("", 7, AheadUnit::Days)],
            rates: vec![
                outdoor("concession", "5"),
                outdoor("", "7"),
                rate("approved coach", "10"),
                peak("", "21.50"),
                rate("concession", "13"),
                rate("", "17"),
            ],
            release: vec![release(24)],
            ..Rules::default()
        },
    );
    for (who, ground, starts, cost) in [
        ("", "indoor", "10:00", "17.00 GBP"),
        ("", "indoor", "18:00", "21.50 GBP"),
        // Forty minutes at 17 and twenty at 21.50.
        ("", "indoor", "16:20", "18.50 GBP"),
        ("concession", "indoor", "10:00", "13.00 GBP"),
        ("approved coach", "indoor", "18:00", "10.00 GBP"),
        ("concession", "outdoor", "18:00", "5.00 GBP"),
        ("", "outdoor", "18:00", "7.00 GBP"),
    ] {
        let place = i.booked_as(who).on(ground);
        assert_eq!(place.ask("2026-03-12", starts, 60).cost, cost, "{who} {ground} {starts}");
    }
}

#[test]
fn university_l_a_day_ahead_and_a_quarter_of_an_hour_of_waiting() {
    // Cities J and K and this university let nobody from outside teach at all, which is no rule of
    // booking: see `facilities::teaching`.
    let l = at(CHICAGO, Rules { release: vec![release(24)], grace: 15, ..Rules::default() });
    let asked = l.ask("2026-03-12", "17:00", 60);
    assert_eq!(free_until(&asked), "2026-03-11 17:00");
    assert_eq!(asked.mind, ["Whoever is 15 minutes late loses the court."]);
}

#[test]
fn hours_by_the_wall_keep_their_time_of_day_where_hours_that_pass_do_not() {
    let by = |counted| {
        at(
            NEW_YORK,
            Rules { release: vec![Release { counted, ..release(48) }], ..Rules::default() },
        )
    };
    // 48 hours before Monday 9 March 2026, 09:00, across the change of 8 March.
    assert_eq!(
        free_until(&by(CountedBy::Elapsed).ask("2026-03-09", "09:00", 60)),
        "2026-03-07 08:00"
    );
    assert_eq!(free_until(&by(CountedBy::Wall).ask("2026-03-09", "09:00", 60)), "2026-03-07 09:00");
    // 24 hours before 02:30 on the 9th is a time that the 8th skips: the next that comes.
    let day = at(
        NEW_YORK,
        Rules {
            release: vec![Release { counted: CountedBy::Wall, ..release(24) }],
            ..Rules::default()
        },
    );
    assert_eq!(free_until(&day.ask("2026-03-09", "02:30", 60)), "2026-03-08 03:00");
}

#[test]
fn the_first_deadline_to_pass_stands_first_and_each_says_what_then() {
    let place = at(
        "Europe/Lisbon",
        Rules {
            currency: text("EUR"),
            release: vec![release(4), Release { later: Later::Fee, fee: text("5"), ..release(48) }],
            ..Rules::default()
        },
    );
    assert_eq!(
        place.ask("2026-03-12", "17:00", 60).release,
        [
            "It can be given back free until Tuesday 10 March 2026, 17:00; later it costs 5.00 EUR.",
            "After Thursday 12 March 2026, 13:00 it costs the whole price.",
        ]
    );
}

#[test]
fn a_season_stands_for_the_usual_hours_on_its_days_only() {
    let hours = |weekdays: &[u8], opens: &str, closes: &str, season: (&str, &str)| Hours {
        weekdays: weekdays.to_vec(),
        opens: text(opens),
        closes: text(closes),
        first: text(season.0),
        last: text(season.1),
    };
    let place = at(
        "Europe/Lisbon",
        Rules {
            hours: vec![
                hours(&[1, 2, 3, 4, 5], "08:00", "12:00", ("", "")),
                hours(&[1, 2, 3, 4, 5], "12:00", "00:00", ("", "")),
                hours(&[6], "10:00", "18:00", ("", "")),
                hours(&[1, 2, 3, 4, 5], "17:00", "21:00", ("2026-08-01", "2026-08-31")),
            ],
            ..Rules::default()
        },
    );
    let fine = |day: &str, starts: &str| place.ask(day, starts, 60).against.is_empty();
    assert!(fine("2026-07-31", "11:30"), "two rows that meet are one opening");
    assert!(fine("2026-07-31", "23:00"), "until midnight");
    assert!(!fine("2026-08-03", "11:30"), "a Monday of the season");
    assert!(fine("2026-08-03", "17:00"));
    assert!(fine("2026-08-01", "10:00"), "the season says nothing of Saturdays");
    assert_eq!(
        place.ask("2026-08-02", "10:00", 60).against,
        ["It is closed on Sunday 2 August 2026."]
    );
}

#[test]
fn what_no_row_says_is_not_known() {
    let asked = at("Europe/Lisbon", Rules::default()).ask("2026-03-12", "17:00", 60);
    assert_eq!(asked, Terms::default());
    // A price for the morning alone says nothing of a booking that ends after it.
    let morning = Rate { starts: text("08:00"), ends: text("12:00"), ..rate("", "10") };
    let some = at(
        "Europe/Lisbon",
        Rules { currency: text("EUR"), rates: vec![morning], ..Rules::default() },
    );
    assert_eq!(some.ask("2026-03-12", "11:00", 60).cost, "10.00 EUR");
    assert_eq!(some.ask("2026-03-12", "11:30", 60).cost, "");
}

#[test]
fn every_fault_is_named_at_its_field() {
    let rules = Rules {
        currency: text("euros"),
        hours: vec![Hours {
            weekdays: vec![0],
            opens: text("20:00"),
            closes: text("8"),
            ..Hours::default()
        }],
        closures: vec![
            Closure::default(),
            Closure { first: text("2026-03-12"), last: text("2026-03-11"), ..Closure::default() },
            Closure {
                court: Some(CourtId(uuid::Uuid::max())),
                weekdays: vec![1],
                ..Closure::default()
            },
        ],
        rates: vec![rate("", "")],
        ahead: vec![Ahead { opens: text("07:30"), ..ahead("", -1, AheadUnit::Hours) }],
        release: vec![Release { later: Later::Fee, ..release(3000) }],
        shortest: 90,
        longest: 60,
        grace: -5,
        ..Rules::default()
    };
    let Err(crate::error::Error::Refused(problems)) = rules.read(&facility()) else {
        panic!("these rules are refused")
    };
    let fields: Vec<&str> = problems.iter().map(|p| p.field.as_str()).collect();
    assert_eq!(
        fields,
        [
            "currency",
            "hours[0].weekdays",
            "hours[0].closes",
            "closures[0].first",
            "closures[1].last",
            "closures[2].court",
            "rates[0].hour",
            "ahead[0].amount",
            "ahead[0].opens",
            "release[0].hours",
            "release[0].fee",
            "grace",
            "shortest",
        ]
    );
}

#[test]
fn a_price_needs_its_currency_and_keeps_its_decimals() {
    let refused = |rules: Rules| match rules.read(&facility()) {
        Err(crate::error::Error::Refused(problems)) => {
            problems.into_iter().map(|p| p.field).collect::<Vec<_>>()
        }
        _ => Vec::new(),
    };
    let rates = vec![rate("", "10"), rate("", "12")];
    assert_eq!(refused(Rules { rates, ..Rules::default() }), ["currency"]);
    let yen = Rules { currency: text("JPY"), rates: vec![rate("", "1500.5")], ..Rules::default() };
    assert_eq!(refused(yen), ["rates[0].hour"]);
}
