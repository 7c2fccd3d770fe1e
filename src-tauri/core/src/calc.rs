//! The calculations of the program, callable by name: JSON in, JSON out, no file, no clock.
//!
//! They exist so that anyone can compare the program's arithmetic with another program's. Each one
//! calls the function the rest of the core calls. An input is refused with all its problems at
//! once, each with the field it concerns.

mod before_court;
mod fields;
mod load;
mod money;
mod plan;
mod score;

use chrono::NaiveDateTime;
use serde::Serialize;
use serde_json::Value;

use crate::goals::numbers::{self, Count};
use crate::kinds::zones::{self, Zone};
use fields::Fields;

/// The names [`calc`] knows.
pub const NAMES: [&str; 11] = [
    "wilson",
    "change",
    "criterion",
    "load",
    "score",
    "clock",
    "plan",
    "readiness",
    "age",
    "split",
    "invoice",
];

/// Why a calculation was not done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CalcRefusal {
    /// `not_found`, `refused`, or `fault` where the program itself is wrong.
    pub code: &'static str,
    /// The reason, for a person.
    pub words: String,
    /// What is wrong with the input, field by field.
    pub problems: Vec<Problem>,
}

/// One thing wrong with an input.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// Where, such as `before.made`; empty for the input as a whole.
    pub field: String,
    /// The kind of problem.
    pub code: &'static str,
    /// What is wrong and what would be right.
    pub words: String,
}

/// Does the calculation `name` on `input`.
///
/// ```
/// use carryover_core::calc::calc;
/// use serde_json::json;
/// let refused = calc("wilson", json!({"made": 11, "tries": 10, "level": 2, "x": 1})).unwrap_err();
/// assert_eq!(refused.problems.len(), 3, "all problems at once");
/// ```
pub fn calc(name: &str, input: Value) -> Result<Value, CalcRefusal> {
    let mut fields = Fields::of(input);
    match name {
        "wilson" => {
            let count = read_count(&mut fields);
            let level = read_level(&mut fields);
            fields.done()?;
            answer(count.zip(level).map(|(count, level)| numbers::wilson(count, level)))
        }
        "change" => {
            let before = fields.inside("before", read_count);
            let after = fields.inside("after", read_count);
            fields.done()?;
            answer(before.zip(after).map(|(before, after)| numbers::change(before, after)))
        }
        "criterion" => answer(criterion(fields)?),
        "load" => answer(load::read(fields)?),
        "score" => answer(score::read(fields)?),
        "clock" => answer(clock(fields)?),
        "plan" => plan::read(fields, &|| true),
        "readiness" => before_court::readiness(fields),
        "age" => before_court::age(fields),
        "split" => money::split(fields),
        "invoice" => money::invoice(fields),
        _ => Err(CalcRefusal {
            code: "not_found",
            words: format!("there is no calculation “{name}”; there are {}", NAMES.join(", ")),
            problems: Vec::new(),
        }),
    }
}

/// Does the calculation `plan`, until `go_on` says no: then the best plan found so far is given, not
/// proven.
///
/// # Errors
/// As [`calc`].
pub fn plan_while(input: Value, go_on: &dyn Fn() -> bool) -> Result<Value, CalcRefusal> {
    plan::read(Fields::of(input), go_on)
}

/// A count: `made` and `tries`, not more made than tried.
fn read_count(fields: &mut Fields) -> Option<Count> {
    let (made, tries) = (fields.whole("made"), fields.whole("tries"));
    let (made, tries) = made.zip(tries)?;
    let count = Count::new(made, tries);
    if count.is_none() {
        fields.refuse(
            "made",
            "more_made_than_tried",
            format!("{made} made of {tries} tries: not more can be made than were tried"),
        );
    }
    count
}

fn read_level(fields: &mut Fields) -> Option<f64> {
    let level = fields.number("level")?;
    if level > 0.0 && level < 1.0 {
        return Some(level);
    }
    fields.refuse("level", "out_of_range", "a level lies between 0 and 1, such as 0.95".to_owned());
    None
}

fn criterion(mut fields: Fields) -> Result<Option<numbers::Meaning>, CalcRefusal> {
    let made = fields.whole("made");
    let of = fields.whole("of");
    let blocks = fields.whole("blocks");
    let rate = fields.number("true_rate");
    if of == Some(0) {
        fields.refuse("of", "out_of_range", "a criterion needs at least one try".to_owned());
    }
    if let Some((made, of)) = made.zip(of).filter(|(made, of)| *of > 0 && made > of) {
        fields.refuse(
            "made",
            "more_made_than_tried",
            format!("{made} of {of}: a criterion cannot ask for more than all tries"),
        );
    }
    if blocks == Some(0) {
        fields.refuse("blocks", "out_of_range", "there is at least one block".to_owned());
    }
    if rate.is_some_and(|rate| !(0.0..=1.0).contains(&rate)) {
        fields.refuse("true_rate", "out_of_range", "a true rate lies from 0 to 1".to_owned());
    }
    fields.done()?;
    let all = made.zip(of).zip(blocks.zip(rate));
    Ok(all.map(|((made, of), (blocks, rate))| numbers::criterion(made, of, blocks, rate)))
}

fn clock(mut fields: Fields) -> Result<Option<zones::Moment>, CalcRefusal> {
    let local = fields.text("local").and_then(|text| {
        let local = read_local(&text);
        if local.is_none() {
            fields.refuse(
                "local",
                "not_a_time",
                format!("“{text}” is no date and time; one reads like 2026-03-08T02:30"),
            );
        }
        local
    });
    let zone = fields.text("zone").and_then(|name| match Zone::parse(&name) {
        Ok(zone) => Some(zone),
        Err(unknown) => {
            fields.refuse("zone", "unknown_zone", unknown.to_string());
            None
        }
    });
    let moment = local.zip(zone).and_then(|(local, zone)| match zones::resolve(local, &zone) {
        Ok(moment) => Some(moment),
        Err(far) => {
            fields.refuse("local", "out_of_range", far.to_string());
            None
        }
    });
    fields.done()?;
    Ok(moment)
}

/// A date and a time to the minute, every digit written: `2026-03-08T02:30`.
fn read_local(text: &str) -> Option<NaiveDateTime> {
    let shape = "0000-00-00T00:00";
    let fits = text.len() == shape.len()
        && text.bytes().zip(shape.bytes()).all(|(is, want)| match want {
            b'0' => is.is_ascii_digit(),
            _ => is == want,
        });
    fits.then(|| NaiveDateTime::parse_from_str(text, "%Y-%m-%dT%H:%M").ok()).flatten()
}

/// The result as JSON. Nothing to say although nothing was refused is a fault of the program.
fn answer<T: Serialize>(result: Option<T>) -> Result<Value, CalcRefusal> {
    result.and_then(|result| serde_json::to_value(result).ok()).ok_or_else(|| CalcRefusal {
        code: "fault",
        words: "the calculation gave no answer, which is a fault in the program".to_owned(),
        problems: Vec::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// The problems of a refused input as `field: code`.
    fn problems(name: &str, input: Value) -> Vec<String> {
        let refusal = calc(name, input.clone()).expect_err(&format!("{name} refuses {input}"));
        assert_eq!(refusal.code, "refused");
        assert!(refusal.problems.iter().all(|p| !p.words.is_empty()));
        refusal.problems.iter().map(|p| format!("{}: {}", p.field, p.code)).collect()
    }

    #[test]
    fn every_name_answers() {
        for (name, input, part) in [
            ("wilson", json!({"made":8,"tries":10,"level":0.95}), "\"rate\":0.8,\"low\":0.490162"),
            (
                "change",
                json!({"before":{"made":4,"tries":10},"after":{"made":8,"tries":10}}),
                "\"word\":\"leaning up\"",
            ),
            (
                "criterion",
                json!({"made":8,"of":10,"blocks":5,"true_rate":0.6}),
                "{\"one_block\":0.16728975",
            ),
            (
                "load",
                json!({"days":[0,0,0,780,930,840,240]}),
                "{\"total\":2790.0,\"mean\":398.57142857142856,\"sd\":432.9137",
            ),
            (
                "score",
                json!({"rules":{"scoring":"server","games":[{"to":15,"win_by":1},
                    {"to":15,"win_by":1},{"to":11,"win_by":1}],"games_to_win":2,
                    "next_server":"other"},"first_server":"a","winners":"aabb"}),
                "{\"games\":[[2,1]],\"serving\":\"b\",\"winner\":null}",
            ),
            (
                "readiness",
                json!({"active":"yes","disease":"yes","symptoms":"no"}),
                "{\"outcome\":\"clearance_for_vigorous\"",
            ),
            (
                "split",
                json!({"amount":"100.00","currency":"USD","shares":[1,1,1]}),
                "{\"parts\":[\"33.34\",\"33.33\",\"33.33\"]}",
            ),
            (
                "invoice",
                json!({"currency":"EUR","prices":"net","lines":[{"quantity":"3","unit_price":"33.33",
                    "tax":{"category":"S","rate":"20"}}]}),
                "\"due\":\"119.99\"",
            ),
            ("age", json!({"born":"2008-02-29","on":"2026-02-28"}), "{\"years\":17}"),
            (
                "clock",
                json!({"local":"2026-03-08T02:30","zone":"America/New_York"}),
                "{\"kind\":\"gap\",\"next\":\"2026-03-08T03:00:00-04:00\"}",
            ),
            (
                "plan",
                json!({"grid":30,"days":1,"facilities":[{"hours":[[480,1260]],"peak":[1020,1260],
                    "longest_run":120,"day_limit":240,"days_bookable":1}],
                    "courts":[{"facility":0,"rate":2000,"peak_rate":2800,"taken":[[0,540,660]]}],
                    "coach":{"busy":[],"travel":30,"day_limit":300,"longest_run":240},
                    "students":[{"arrive":[0,480],"depart":[0,1080],"hours":[480,1260],"lessons":2,
                    "length":60,"per_day":1,"rest":60,"prefer":[480,720],"prefer_court":0,
                    "priority":1}]}),
                "{\"proven\":true,\"objectives\":[1,2,2000,0],\"lessons\":\
                 [{\"student\":0,\"day\":0,\"start\":480,\"court\":0}],\"unplaced\":",
            ),
        ] {
            let said = calc(name, input).expect("an answer").to_string();
            assert!(said.contains(part), "{name}: {said}");
        }
        assert_eq!(NAMES.len(), 11, "a new name gets its row above");
    }

    #[test]
    fn an_input_gets_all_its_problems_at_once() {
        for (name, input, expect) in [
            (
                "wilson",
                json!({"made":11,"tries":10,"level":1}),
                vec!["made: more_made_than_tried", "level: out_of_range"],
            ),
            (
                "wilson",
                json!({"made":1.5,"tries":-1,"level":"0.95","of":1}),
                vec![
                    "made: not_whole",
                    "tries: not_whole",
                    "level: not_a_number",
                    "of: unknown_field",
                ],
            ),
            ("wilson", json!({}), vec!["made: missing", "tries: missing", "level: missing"]),
            (
                "wilson",
                json!({"made":1,"tries":4_294_967_296u64,"level":0.0}),
                vec!["tries: too_large", "level: out_of_range"],
            ),
            ("wilson", json!([8, 10, 0.95]), vec![": not_an_object"]),
            ("wilson", json!(null), vec![": not_an_object"]),
            ("wilson", json!({"made":null,"tries":1,"level":0.5}), vec!["made: missing"]),
            (
                "change",
                json!({"before":{"made":2,"tries":1},"after":{"made":1}}),
                vec!["before.made: more_made_than_tried", "after.tries: missing"],
            ),
            (
                "change",
                json!({"before":3,"after":{"made":1,"tries":2,"level":1},"x":0}),
                vec!["before: not_an_object", "after.level: unknown_field", "x: unknown_field"],
            ),
            (
                "criterion",
                json!({"made":0,"of":0,"blocks":0,"true_rate":-0.1}),
                vec!["of: out_of_range", "blocks: out_of_range", "true_rate: out_of_range"],
            ),
            (
                "criterion",
                json!({"made":11,"of":10,"blocks":1,"true_rate":1.0}),
                vec!["made: more_made_than_tried"],
            ),
            (
                "clock",
                json!({"local":"2026-3-8T2:30","zone":"Nowhere"}),
                vec!["local: not_a_time", "zone: unknown_zone"],
            ),
            ("clock", json!({"local":"2026-02-29T10:00","zone":"UTC"}), vec!["local: not_a_time"]),
            ("clock", json!({"local":"2026-02-28T24:00","zone":"UTC"}), vec!["local: not_a_time"]),
            (
                "clock",
                json!({"local":"2026-02-28T10:00Z","zone":7}),
                vec!["local: not_a_time", "zone: not_text"],
            ),
        ] {
            assert_eq!(problems(name, input.clone()), expect, "{name} {input}");
        }
    }

    #[test]
    fn the_edges_that_have_an_answer_get_one() {
        let nulls = json!({"rate":null,"low":null,"high":null});
        assert_eq!(calc("wilson", json!({"made":0,"tries":0,"level":0.95})), Ok(nulls));
        let none = json!({"change":null,"level95":{"low":null,"high":null},
            "level90":{"low":null,"high":null},"word":"too few to tell"});
        let no_tries = json!({"made":0,"tries":0});
        let some = json!({"made":1,"tries":2});
        assert_eq!(calc("change", json!({"before":no_tries,"after":some})), Ok(none));
        for made in 0..=10 {
            let text = calc("wilson", json!({"made":made,"tries":10,"level":0.5}))
                .expect("an answer")
                .to_string();
            assert!(!text.contains("-0"), "no minus zero: {text}");
        }
        assert!(calc("criterion", json!({"made":0,"of":1,"blocks":1,"true_rate":0})).is_ok());
        assert!(calc("criterion", json!({"made":1,"of":1,"blocks":1,"true_rate":1})).is_ok());
    }

    #[test]
    fn an_unknown_name_is_told_the_known_ones() {
        let refusal = calc("average", json!({})).expect_err("no such calculation");
        assert_eq!(refusal.code, "not_found");
        assert!(NAMES.iter().all(|name| refusal.words.contains(name)));
    }
}
