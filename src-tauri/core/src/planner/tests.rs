//! The planner beside a search through every plan there is, on asks small enough for that, and each
//! rule and each reason by itself.

use proptest::prelude::*;

use super::*;

/// One court in one facility, one student who stays all of two days; nothing binds.
fn easy() -> Ask {
    Ask {
        grid: 60,
        days: 2,
        facilities: vec![facility(2)],
        courts: vec![court(0)],
        coach: Coach {
            busy: vec![],
            travel: vec![vec![0]],
            day_limit: DAY,
            longest_run: DAY,
            meals: vec![],
        },
        students: vec![student(1)],
        locked: vec![],
        limits: vec![],
        order: Wish::USUAL,
    }
}

fn facility(days: usize) -> Facility {
    let hours = vec![[540, 780]; days];
    Facility {
        hours,
        step: 0,
        longest_run: DAY,
        day_limit: DAY,
        day_bookings: u32::MAX,
        days_bookable: 9,
    }
}

fn court(facility: usize) -> Court {
    at_the_hour(facility, 1000)
}

/// A court that costs the same whenever it is.
fn at_the_hour(facility: usize, price: u32) -> Court {
    let prices = (0..9).map(|day| [day, 0, DAY, price]).collect();
    Court { facility, prices, fee: 0, taken: vec![] }
}

/// Two facilities so many minutes apart.
fn apart(minutes: u32) -> Vec<Vec<u32>> {
    vec![vec![0, minutes], vec![minutes, 0]]
}

/// A court with a price of its own from nine to ten, another on the second day, and a fee.
fn priced(facility: usize, hour: u32, peak: u32) -> Court {
    let prices =
        vec![[0, 540, 600, peak], [1, 600, 660, peak], [0, 0, DAY, hour], [1, 0, DAY, hour + 70]];
    Court { facility, prices, fee: hour / 7, taken: vec![] }
}

fn student(lessons: u32) -> Student {
    Student {
        arrive: [0, 0],
        depart: [1, DAY],
        hours: [0, DAY],
        lessons,
        length: 60,
        per_day: 9,
        rest: 0,
        prefer: [0, DAY],
        prefer_court: None,
        priority: 1,
        people: vec![],
    }
}

fn best(ask: &Ask) -> Plan {
    let plan = plan(ask, &|| true).expect("a plan");
    assert!(plan.proven);
    assert_eq!(objectives(ask, &plan.lessons), Ok(plan.objectives));
    plan
}

/// What a plan comes to, in the order of the ask's wishes.
fn ranked(ask: &Ask, [missing, spread, cost, off]: [i64; 4]) -> [i64; 4] {
    let [first, second, third] = ask.order.map(|wish| match wish {
        Wish::Spread => spread,
        Wish::Cost => cost,
        Wish::Times => off,
    });
    [missing, first, second, third]
}

/// The least sums of all plans, by trying each: every opening is taken or not. A plan that breaks a
/// rule is not made any better by more lessons, so there it turns back.
fn by_trying_all(ask: &Ask) -> [i64; 4] {
    let mut all = Vec::new();
    for day in 0..ask.days {
        for o in options::openings(ask, day) {
            let start = o.start * ask.grid;
            all.push(Planned { student: o.student, day, start, court: o.court });
        }
    }
    assert!(all.len() <= MOST_TRIED, "{} openings are too many to try", all.len());
    let mut least = None;
    try_from(ask, &all, &mut Vec::new(), &mut least);
    least.expect("what is locked, and no more, is a plan")
}

/// So many openings are tried.
const MOST_TRIED: usize = 26;

fn try_from(ask: &Ask, all: &[Planned], taken: &mut Vec<Planned>, least: &mut Option<[i64; 4]>) {
    let faults = broken(ask, taken);
    if faults.iter().any(|fault| fault.rule != Rule::Locked) {
        return;
    }
    if faults.is_empty() {
        let sums = sums(ask, taken);
        if least.is_none_or(|least| ranked(ask, sums) < ranked(ask, least)) {
            *least = Some(sums);
        }
    }
    for (n, lesson) in all.iter().enumerate() {
        taken.push(*lesson);
        try_from(ask, &all[n + 1..], taken, least);
        taken.pop();
    }
}

/// The openings that a search through every plan goes through.
fn openings(ask: &Ask) -> usize {
    (0..ask.days).map(|day| options::openings(ask, day).len()).sum()
}

prop_compose! {
    /// A small ask with all that reaches beyond one student, one hour or one day: a shared lesson,
    /// a meal, bookings a day, limits over several days.
    fn wide()(
        ask in small(),
        shared in (0_u32..3, prop::sample::subsequence(vec![0_usize, 1], 1..=2), 1_u32..3, 60_u32..121),
        longer in proptest::bool::weighted(0.3),
        meal in (0_u32..2, 8_u32..10, 8_u32..11, prop::sample::select(vec![30_u32, 60, 75, 90])),
        second in (9_u32..12, any::<bool>()),
        bookings in proptest::array::uniform2(1_u32..4),
        limits in proptest::collection::vec(
            (proptest::option::of(0_usize..2), 0_u32..3, 0_u32..3, 0_u32..5), 0..4),
        travel in 0_u32..3,
        half in any::<bool>(),
        more_hours in 0_u32..4,
        third in proptest::bool::weighted(0.6),
    ) -> Ask {
        let mut ask = ask;
        if third {
            // Three days are what it takes for two ways to the same lessons so far.
            ask.days = 3;
            for f in &mut ask.facilities {
                f.hours.push([540, 600]);
                f.days_bookable = 3;
            }
            for student in &mut ask.students {
                student.depart[0] *= 2;
            }
        }
        for hours in ask.facilities.iter_mut().flat_map(|f| &mut f.hours) {
            hours[1] += more_hours * 60;
        }
        for student in &mut ask.students {
            student.hours[1] += more_hours * 60;
        }
        let alone = ask.students.len();
        // A second person to share with, who wishes for nothing alone.
        if alone == 1 {
            ask.students.push(Student { lessons: 0, rest: 60 * (shared.0 % 2), ..ask.students[0].clone() });
        }
        let people: Vec<usize> = shared.1;
        ask.students[0].per_day = ask.students[0].per_day.min(shared.2);
        let first = ask.students[people[0]].clone();
        let depart = people.iter().map(|p| ask.students[*p].depart).min().unwrap();
        let length = if longer { shared.3 } else { 60 };
        ask.students.push(Student { lessons: shared.0, length, depart, people, per_day: 9, ..first });
        let spans = if second.1 {
            vec![[meal.1 * 60, meal.2 * 60 + 45], [second.0 * 60 - 10, second.0 * 60 + 80]]
        } else {
            vec![[meal.1 * 60 - 15, meal.1 * 60 + 150]]
        };
        ask.coach.meals = vec![Meal { day: meal.0, minutes: meal.3, spans }];
        ask.coach.travel = apart(travel * 25);
        ask.facilities[0].day_bookings = bookings[0];
        ask.facilities[1].day_bookings = bookings[1];
        ask.limits = limits.iter().map(|(facility, first, long, hours)| Limit {
            facility: *facility, first: (*first).min(ask.days - 1), last: (*first + *long).min(ask.days - 1), minutes: hours * 60 + 30 * u32::from(half),
        }).collect();
        ask
    }
}

prop_compose! {
    fn small()(
        grid in Just(60_u32),
        opens in proptest::array::uniform4(8_u32..10),
        far in any::<bool>(),
        travel in 0_u32..2,
        coach in (1_u32..5, 1_u32..4),
        limits in (1_u32..4, 1_u32..4),
        rates in proptest::array::uniform2(0_u32..3),
        wishes in proptest::collection::vec(
            (0_u32..3, 1_u32..3, 1_u32..3, 0_u32..3, 0_u32..2, 0_u32..4, 1_u32..3), 1..3),
        busy in (0_u32..2, 8_u32..11),
        order in Just(Wish::USUAL.to_vec()).prop_shuffle(),
    ) -> Ask {
        let hours = |n: usize| vec![
            [opens[n] * 60, (opens[n] + 2) * 60],
            [opens[n + 1] * 60, (opens[n + 1] + 2) * 60],
        ];
        let place = |n: usize| Facility {
            hours: hours(n),
            step: 0,
            longest_run: limits.0 * 60,
            day_limit: limits.1 * 60,
            day_bookings: u32::MAX,
            days_bookable: 2,
        };
        Ask {
            grid,
            days: 2,
            facilities: vec![place(0), place(2)],
            courts: vec![
                priced(0, rates[0] * 100, 250),
                priced(usize::from(far), rates[1] * 100, 150),
            ],
            coach: Coach {
                busy: vec![[busy.0, busy.1 * 60, busy.1 * 60 + 60]],
                travel: apart(travel * 45),
                day_limit: coach.0 * 60,
                longest_run: coach.1 * 60,
                meals: vec![],
            },
            students: wishes.iter().map(|w| Student {
                arrive: [0, 0],
                depart: [w.4, DAY],
                hours: [480, 720],
                lessons: w.0,
                length: 60,
                per_day: w.2,
                rest: w.3 * 60,
                prefer: [(8 + w.5) * 60, (9 + w.5) * 60],
                prefer_court: (w.5 as usize).checked_sub(2),
                priority: w.6,
                people: vec![],
            }).collect(),
            locked: vec![],
            limits: vec![],
            order: [order[0], order[1], order[2]],
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 20_000, ..ProptestConfig::with_cases(2_000) })]
    #[test]
    fn no_plan_is_better(ask in small()) {
        prop_assume!(openings(&ask) <= MOST_TRIED);
        prop_assert_eq!(best(&ask).objectives, by_trying_all(&ask));
    }

    #[test]
    fn locked_lessons_stay_and_no_plan_around_them_is_better(ask in small(), which in any::<prop::sample::Index>()) {
        prop_assume!((1..=MOST_TRIED).contains(&openings(&ask)));
        let all: Vec<Planned> = (0..2).flat_map(|day| {
            options::openings(&ask, day).into_iter().map(move |o| Planned {
                student: o.student, day, start: o.start * 60, court: o.court,
            })
        }).collect();
        let mut ask = ask;
        ask.locked = vec![all[which.index(all.len())]];
        prop_assume!(objectives(&ask, &ask.locked.clone()).is_ok());
        let plan = best(&ask);
        prop_assert!(plan.lessons.contains(&ask.locked[0]));
        prop_assert_eq!(ranked(&ask, plan.objectives), ranked(&ask, by_trying_all(&ask)));
    }

    #[test]
    fn no_plan_is_better_where_lessons_are_shared_and_limits_reach_over_days(ask in wide()) {
        prop_assume!(openings(&ask) <= MOST_TRIED);
        let plan = best(&ask);
        prop_assert_eq!(ranked(&ask, plan.objectives), ranked(&ask, by_trying_all(&ask)));
    }

    #[test]
    fn the_same_ask_gives_the_same_plan(ask in wide()) {
        prop_assert_eq!(plan(&ask, &|| true), plan(&ask, &|| true));
    }

    #[test]
    fn stopped_at_any_time_it_keeps_every_rule(ask in wide(), turns in 0_u32..40) {
        let left = std::cell::Cell::new(turns);
        let go_on = || left.replace(left.get().saturating_sub(1)) > 0;
        let stopped = plan(&ask, &go_on).expect("a plan");
        prop_assert_eq!(broken(&ask, &stopped.lessons), vec![]);
        prop_assert!(!stopped.proven || stopped.objectives == best(&ask).objectives);
    }
}

#[test]
fn each_rule_by_itself_leaves_room_for_so_many_lessons() {
    let most = |change: &dyn Fn(&mut Ask)| {
        let mut ask = easy();
        ask.students = vec![student(9)];
        change(&mut ask);
        best(&ask).lessons.len()
    };
    // Four hours on each of two days.
    assert_eq!(most(&|_| ()), 8);
    for (rule, change, lessons) in [
        ("lessons wished for", (|a| a.students[0].lessons = 3) as fn(&mut Ask), 3),
        ("lessons a day", |a| a.students[0].per_day = 1, 2),
        ("rest", |a| a.students[0].rest = 60, 4),
        ("rest rounded up", |a| a.students[0].rest = 1, 4),
        ("length", |a| a.students[0].length = 120, 4),
        ("length rounded up", |a| a.students[0].length = 90, 4),
        ("the student's hours", |a| a.students[0].hours = [600, 720], 4),
        ("arrival", |a| a.students[0].arrive = [0, 601], 6),
        ("departure", |a| a.students[0].depart = [1, 659], 5),
        ("hours of the facility", |a| a.facilities[0].hours[1] = [0, 0], 4),
        ("hours off the grid", |a| a.facilities[0].hours[1] = [541, 779], 6),
        ("starts of the facility", |a| a.facilities[0].step = 120, 4),
        ("days that can be booked", |a| a.facilities[0].days_bookable = 1, 4),
        ("a court taken", |a| a.courts[0].taken = vec![[0, 650, 670]], 6),
        ("the coach busy", |a| a.coach.busy = vec![[1, 540, 720]], 5),
        ("the coach's day", |a| a.coach.day_limit = 179, 4),
        ("the coach's run", |a| a.coach.longest_run = 60, 4),
        ("a run on a court", |a| a.facilities[0].longest_run = 120, 6),
        ("a facility's day", |a| a.facilities[0].day_limit = 60, 2),
        ("a facility's bookings", |a| a.facilities[0].day_bookings = 3, 6),
        ("the coach's week", |a| a.limits = vec![within(None, [0, 1], 359)], 5),
        ("a facility's week", |a| a.limits = vec![within(Some(0), [0, 1], 180)], 3),
        ("a limit on one day", |a| a.limits = vec![within(None, [1, 1], 60)], 5),
        ("a limit that does not bind", |a| a.limits = vec![within(None, [0, 1], 9000)], 8),
        ("a meal", |a| a.coach.meals = vec![meal(60, &[[600, 720]])], 7),
        ("a meal longer than a slot", |a| a.coach.meals = vec![meal(61, &[[600, 720]])], 6),
        ("a meal at the day's edge", |a| a.coach.meals = vec![meal(60, &[[510, 600]])], 7),
        ("a meal past the lessons", |a| a.coach.meals = vec![meal(60, &[[700, 840]])], 8),
        ("a meal that could never be", |a| a.coach.meals = vec![meal(90, &[[600, 660]])], 8),
        ("a meal of two spans", |a| a.coach.meals = vec![meal(60, &[[600, 630], [630, 660]])], 7),
        (
            "a meal that no two spans make together",
            |a| {
                a.coach.meals = vec![meal(90, &[[540, 630], [660, 750]])];
                a.courts[0].taken = vec![[0, 600, 720]];
            },
            5,
        ),
        (
            "someone else's meal",
            |a| a.coach.meals = vec![Meal { day: 2, ..meal(60, &[[540, 780]]) }],
            8,
        ),
        ("two students in one", |a| shares(a, 9, 60), 4),
        ("lessons a day of who shares", |a| shares(a, 1, 0), 2),
    ] {
        assert_eq!(most(&change), lessons, "{rule}");
    }
}

fn within(facility: Option<usize>, [first, last]: [u32; 2], minutes: u32) -> Limit {
    Limit { facility, first, last, minutes }
}

fn meal(minutes: u32, spans: &[[u32; 2]]) -> Meal {
    Meal { day: 0, minutes, spans: spans.to_vec() }
}

/// All lessons are shared by two; the first has so many a day and so many minutes of rest.
fn shares(ask: &mut Ask, per_day: u32, rest: u32) {
    ask.students = vec![
        Student { lessons: 0, per_day, rest, ..student(0) },
        Student { lessons: 0, ..student(0) },
        Student { people: vec![0, 1], ..student(9) },
    ];
}

#[test]
fn a_third_persons_rest_counts_between_a_lesson_alone_and_one_that_is_shared() {
    // Ana rests for an hour; Ben and Cleo do not. One day of four hours.
    let mut ask = easy();
    ask.days = 1;
    let of = |lessons, rest, people: &[usize]| Student {
        depart: [0, DAY],
        rest,
        people: people.to_vec(),
        ..student(lessons)
    };
    ask.students = vec![of(1, 60, &[]), of(1, 0, &[]), of(0, 0, &[]), of(1, 0, &[0, 2])];
    let plan = best(&ask);
    assert_eq!(plan.objectives[0], 0);
    let of = |s: usize| plan.lessons.iter().find(|l| l.student == s).unwrap().start;
    assert!(of(0).abs_diff(of(3)) >= 120, "Ana's own and the shared one: {:?}", plan.lessons);
    // One hour less, and there is no room for all three of them.
    ask.facilities[0].hours = vec![[540, 720]];
    assert_eq!(best(&ask).lessons.len(), 3, "Ben between Ana's two");
    ask.students[0].rest = 61;
    assert_eq!(best(&ask).lessons.len(), 2);
}

#[test]
fn a_way_needs_its_own_time_beside_the_meal() {
    // Two facilities, a lesson at each; half an hour between them, a meal of an hour in between.
    let lessons = |travel, latest: u32| {
        let mut ask = easy();
        ask.grid = 30;
        ask.days = 1;
        ask.facilities = vec![
            Facility { hours: vec![[540, 600]], ..facility(1) },
            Facility { hours: vec![[660, latest]], ..facility(1) },
        ];
        ask.courts = vec![court(0), court(1)];
        ask.students = vec![Student { depart: [0, DAY], ..student(2) }];
        ask.coach.travel = apart(travel);
        ask.coach.meals = vec![meal(60, &[[600, 720]])];
        best(&ask).lessons.len()
    };
    assert_eq!(
        [lessons(0, 720), lessons(30, 720), lessons(30, 750), lessons(31, 750)],
        [2, 1, 2, 1]
    );
}

#[test]
fn a_facilitys_week_is_shared_out_although_a_rest_forbids_what_would_use_least_of_it() {
    // Two lessons side by side at the free facility would use nothing of the other; the rest between
    // them forbids it, and one at each is what the week has room for.
    let mut ask = easy();
    ask.facilities = vec![
        Facility { hours: vec![[540, 720], [540, 600]], ..facility(2) },
        Facility { hours: vec![[540, 660], [0, 0]], ..facility(2) },
    ];
    ask.courts = vec![court(0), at_the_hour(1, 0)];
    ask.coach.travel = apart(0);
    ask.students = vec![Student { rest: 60, ..student(3) }];
    assert_eq!(best(&ask).objectives, [0, 4, 3000, 0], "all at the first, but for the week");
    ask.limits = vec![within(Some(0), [0, 1], 120)];
    let plan = best(&ask);
    assert_eq!(plan.objectives, [0, 6, 2000, 0]);
    let there = plan.lessons.iter().filter(|l| l.court == 1).count();
    assert_eq!((plan.lessons.len(), there), (3, 1));
}

#[test]
fn two_facilities_weeks_are_kept_together() {
    let mut ask = easy();
    ask.days = 1;
    ask.facilities = vec![facility(1), facility(1)];
    ask.courts = vec![court(0), at_the_hour(1, 900)];
    ask.coach.travel = apart(0);
    ask.students = vec![Student { depart: [0, DAY], ..student(3) }];
    assert_eq!(best(&ask).objectives, [0, 2, 2700, 0], "all at the cheap one");
    ask.limits = vec![within(Some(0), [0, 0], 60), within(Some(1), [0, 0], 60)];
    assert_eq!(best(&ask).objectives, [1, 4, 1900, 0], "one at each");
}

#[test]
fn travel_takes_the_time_between_two_facilities() {
    let lessons = |travel| {
        let mut ask = easy();
        ask.facilities = vec![facility(2), facility(2)];
        ask.facilities[0].day_limit = 60;
        ask.facilities[1].day_limit = 60;
        ask.courts = vec![court(0), court(1)];
        ask.students = vec![Student { depart: [0, DAY], hours: [540, 720], ..student(2) }];
        ask.coach.travel = apart(travel);
        best(&ask).lessons.len()
    };
    assert_eq!([lessons(0), lessons(1), lessons(60), lessons(61)], [2, 2, 2, 1]);
}

#[test]
fn a_run_on_one_court_ends_when_the_court_changes() {
    let mut ask = easy();
    ask.days = 1;
    ask.facilities[0].longest_run = 120;
    ask.courts = vec![court(0), court(0)];
    ask.students = vec![Student { depart: [0, DAY], ..student(4) }];
    assert_eq!(best(&ask).lessons.len(), 4);
}

#[test]
fn the_wishes_rank_as_stated() {
    // A lesson at any price rather than none.
    let mut ask = easy();
    ask.courts[0] = at_the_hour(0, 1_000_000);
    assert_eq!(best(&ask).objectives, [0, 2, 1_000_000, 0]);
    // Two days rather than one, although the other day is dearer.
    ask.students = vec![student(2)];
    ask.courts = vec![Court { taken: vec![[1, 0, DAY]], ..court(0) }, at_the_hour(0, 9000)];
    assert_eq!(best(&ask).objectives, [0, 4, 10_000, 0]);
    // A cheap court rather than the preferred one.
    let mut ask = easy();
    ask.courts.push(at_the_hour(0, 900));
    ask.students[0].prefer_court = Some(0);
    assert_eq!(best(&ask).objectives, [0, 2, 900, 2]);
    // The student who counts more, when there is room for one.
    ask.facilities[0].hours = vec![[540, 600], [0, 0]];
    ask.students = vec![student(1), Student { priority: 3, ..student(1) }];
    let plan = best(&ask);
    assert_eq!((plan.objectives[0], plan.lessons[0].student), (1, 1));
}

#[test]
fn a_lesson_without_a_place_says_what_became_of_each_start() {
    let mut ask = easy();
    ask.students[0].arrive = [0, 600];
    ask.students[0].depart = [1, 660];
    ask.students[0].hours = [540, 720];
    ask.courts[0].taken = vec![[0, 600, 660]];
    ask.coach.busy = vec![[0, 660, 720]];
    ask.facilities[0].hours[1] = [0, 0];
    let because = best(&ask).unplaced[0].because.clone();
    let said: Vec<(u32, Code, u32)> = because.iter().map(|b| (b.day, b.code, b.starts)).collect();
    assert_eq!(
        said,
        [
            (0, Code::NotArrived, 1),
            (0, Code::CourtTaken, 1),
            (0, Code::CoachBusy, 1),
            (1, Code::Departed, 1),
            (1, Code::Closed, 2),
        ]
    );
}

#[test]
fn stopped_at_once_it_gives_a_plan_that_is_not_proven() {
    let stopped = plan(&easy(), &|| false).expect("a plan");
    assert!(!stopped.proven);
    assert_eq!(objectives(&easy(), &stopped.lessons), Ok(stopped.objectives));
}

#[test]
fn amounts_beyond_all_sums_are_refused() {
    let mut ask = easy();
    ask.courts[0] = at_the_hour(0, u32::MAX);
    ask.students = vec![Student { length: DAY, ..student(100) }; 60];
    assert!(matches!(plan(&ask, &|| true), Err(Refusal::TooLarge(_))));
}

#[test]
fn nobody_and_nothing_is_a_plan() {
    let none = Ask { students: vec![], ..easy() };
    assert_eq!(best(&none).objectives, [0; 4]);
    let nowhere = Ask { courts: vec![], facilities: vec![], ..easy() };
    assert_eq!(best(&nowhere).objectives, [1, 3, 0, 0]);
}
