//! What a published test may not say: above all, no gap and no overlap in its tables.

use super::super::{BandTable, Measure, OnCourtTest, Pack, TestPart};
use super::Faults;

pub fn faults(pack: &Pack, faults: &mut Faults) {
    faults.once("tests", "id", pack.tests.iter().map(|test| test.id.as_str()));
    for (number, test) in pack.tests.iter().enumerate() {
        check_test(test, &format!("tests[{number}]"), faults);
    }
}

fn check_test(test: &OnCourtTest, at: &str, faults: &mut Faults) {
    faults.text(format!("{at}.name"), &test.name);
    faults.text(format!("{at}.source"), &test.source);
    if test.procedure.is_empty() {
        faults.add(format!("{at}.procedure"), "there is none");
    }
    if test.parts.is_empty() {
        faults.add(format!("{at}.parts"), "there is none");
    }
    faults.once(&format!("{at}.parts"), "id", test.parts.iter().map(|part| part.id.as_str()));
    for (number, part) in test.parts.iter().enumerate() {
        check_part(part, &format!("{at}.parts[{number}]"), faults);
    }
    if let Some(most) = test.most {
        let sum: Option<u64> = test.parts.iter().map(|part| part.most.map(u64::from)).sum();
        match sum {
            Some(sum) if sum != u64::from(most) => {
                faults.add(format!("{at}.most"), format!("the parts give {sum}, not {most}"));
            }
            Some(_) => {}
            None => faults.add(format!("{at}.most"), "a part has no most"),
        }
    }
    faults.once(&format!("{at}.bands"), "id", test.bands.iter().map(|table| table.id.as_str()));
    for (number, table) in test.bands.iter().enumerate() {
        check_bands(test, table, &format!("{at}.bands[{number}]"), faults);
    }
}

fn check_part(part: &TestPart, at: &str, faults: &mut Faults) {
    faults.text(format!("{at}.name"), &part.name);
    faults.text(format!("{at}.scoring"), &part.scoring);
    for (number, pair) in part.seconds.windows(2).enumerate() {
        let [slower, faster] = pair else { continue };
        let field = format!("{at}.seconds[{}]", number + 1);
        if faster.seconds.checked_add(1) != Some(slower.seconds) {
            faults
                .add(&field, format!("{} s does not follow {} s", faster.seconds, slower.seconds));
        }
        if faster.points < slower.points {
            faults.add(field, "a faster time gives fewer points");
        }
    }
    if let Some(fastest) = part.seconds.last()
        && part.most != Some(fastest.points)
    {
        faults.add(format!("{at}.most"), "is not what the fastest time gives");
    }
}

fn check_bands(test: &OnCourtTest, table: &BandTable, at: &str, faults: &mut Faults) {
    faults.text(format!("{at}.name"), &table.name);
    if table.bands.is_empty() {
        faults.add(format!("{at}.bands"), "there is none");
    }
    faults.once(&format!("{at}.bands"), "level", table.bands.iter().map(|b| b.level.as_str()));
    for (number, band) in table.bands.iter().enumerate() {
        if band.to.is_some_and(|to| to < band.from) {
            faults.add(format!("{at}.bands[{number}].to"), "the band ends before it begins");
        }
    }
    for (number, pair) in table.bands.windows(2).enumerate() {
        let [lower, higher] = pair else { continue };
        let field = format!("{at}.bands[{}].from", number + 1);
        match lower.to {
            Some(to) if higher.from > to.saturating_add(1) => {
                faults.add(field, format!("there is a gap between {to} and {}", higher.from))
            }
            Some(to) if higher.from <= to => faults
                .add(field, format!("{} is in the band before, which ends at {to}", higher.from)),
            Some(_) => {}
            None => faults.add(field, "the band before has no end"),
        }
    }
    let top = table.bands.last().map(|band| band.to);
    if test.measure == Measure::Points
        && let (Some(most), Some(top)) = (test.most, top)
        && top != Some(most)
    {
        faults.add(format!("{at}.bands"), format!("the last band ends at the most, {most}"));
    }
}
