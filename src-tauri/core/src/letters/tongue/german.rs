//! Letters in German, in the familiar form of a coach to a player.

use super::{Count, PartKey, Since, Span, Tongue};
use crate::goals::numbers::ChangeWord;
use crate::goals::{Condition, Criterion, CriterionKind, Kind};
use crate::kinds::Language;

pub(super) struct German;

fn many(n: u64, one: &str, more: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { more })
}

impl Tongue for German {
    fn language(&self) -> Language {
        Language::De
    }

    fn expected(&self, span: Span) -> String {
        if span.is_whole_month() {
            format!("ungefähr im {}", Language::De.month(span.first))
        } else {
            format!("in der Zeit {}", Language::De.span(span))
        }
    }

    fn count(&self, count: Count) -> String {
        format!("{} von {}", count.made, count.tries)
    }

    fn condition(&self, condition: Condition) -> &'static str {
        match condition {
            Condition::Fed => "zugespielt",
            Condition::Live => "im Ballwechsel",
            Condition::SetGame => "im Übungsspiel",
            Condition::Match => "im Wettkampf",
        }
    }

    fn criterion(&self, c: Criterion) -> String {
        match c.kind {
            CriterionKind::Of => format!("{} von {}", c.need, c.of),
            CriterionKind::Rate => format!(
                "{} % bei mindestens {}",
                c.need,
                many(u64::from(c.least.unwrap_or(1)), "Gelegenheit", "Gelegenheiten")
            ),
            CriterionKind::AtMost if c.of == 1 => format!("höchstens {} je Spiel", c.need),
            CriterionKind::AtMost => {
                format!("höchstens {} je Spiel, in {} Spielen hintereinander", c.need, c.of)
            }
        }
    }

    fn kind(&self, kind: Kind) -> &'static str {
        match kind {
            Kind::Retest => "zu Beginn",
            Kind::Practice => "Übung",
            Kind::EndTest => "Schlusstest",
            Kind::LookBack => "Rückblick",
        }
    }

    fn minutes(&self, minutes: u32) -> String {
        match (minutes / 60, minutes % 60) {
            (0, m) => many(u64::from(m), "Minute", "Minuten"),
            (h, 0) => many(u64::from(h), "Stunde", "Stunden"),
            (h, 30) => format!("{h}½ Stunden"),
            (h, m) => format!("{h} Std. {m} Min."),
        }
    }

    fn title(&self, name: &str) -> String {
        format!("Brief über den Fortschritt von {name}")
    }

    fn page(&self) -> &'static str {
        "Seite {n} von {m}"
    }

    fn heading(&self, part: PartKey, going: bool) -> &'static str {
        match part {
            PartKey::Opening | PartKey::Closing => "",
            PartKey::Strength => "Zuerst: was gehalten hat",
            PartKey::Worked => "Woran wir gearbeitet haben",
            PartKey::Noticed => "Was mir aufgefallen ist",
            PartKey::Moved => "Was sich bewegt hat",
            PartKey::Kept => "Was dir bleibt",
            PartKey::Levels => "Deine Stufen, von 0 bis 4",
            PartKey::Carried if going => "Was zum nächsten Besuch mitkommt",
            PartKey::Carried => "Was aus dem Übrigen wurde",
            PartKey::Home => "Zu Hause",
            PartKey::Next => "Wann wir uns wiedersehen",
        }
    }

    fn dear(&self, name: &str) -> String {
        // Without a form of address that would have to know more than the name.
        format!("Hallo {name},")
    }

    fn visit(&self, place: &str, when: &str, lessons: usize, minutes: u32) -> String {
        let place = if place.is_empty() { String::new() } else { format!(" in {place}") };
        let visit = format!("Dein Besuch{place}, {when}");
        if lessons == 0 {
            format!("{visit}, und was wir dabei gesehen haben.")
        } else {
            let lessons = many(lessons as u64, "Stunde Unterricht", "Unterrichtseinheiten");
            format!("{visit}: {lessons}, zusammen {} auf dem Platz.", self.minutes(minutes))
        }
    }

    fn still_there(&self, goal: &str, count: &str) -> String {
        format!(
            "„{goal}“ war nach den Wochen dazwischen noch da: {count}, bevor wir daran gearbeitet haben."
        )
    }

    fn came_back(&self, goal: &str, count: &str) -> String {
        format!("„{goal}“ hast du mitgebracht: {count}, bevor wir daran gearbeitet haben.")
    }

    fn reached(&self, goal: &str, count: &str) -> String {
        format!("„{goal}“ hat erreicht, was wir verlangt haben: {count} am Ende.")
    }

    fn gave(&self, goal: &str, count: &str) -> String {
        format!("„{goal}“ ist dir in {count} Versuchen gelungen.")
    }

    fn seen_strength(&self, words: &str) -> String {
        format!("Eine Stärke, die ich gesehen habe: {}.", words.trim_end_matches('.'))
    }

    fn seen_fault(&self, words: &str, times: usize) -> String {
        let times = match times {
            0 | 1 => String::new(),
            2 => ", zweimal".to_owned(),
            n => format!(", {n}-mal"),
        };
        format!("Darauf achten: {}{times}.", words.trim_end_matches('.'))
    }

    fn worked(&self, goal: &str, condition: &str, asked: &str, cue: &str) -> String {
        let cue = if cue.is_empty() {
            String::new()
        } else {
            format!(" Der Merksatz: „{}“.", cue.trim_end_matches('.'))
        };
        format!("{goal} ({condition}, verlangt: {asked}).{cue}")
    }

    fn landed(&self, cue: &str) -> String {
        format!("Was angekommen ist: {cue}")
    }

    fn moved(&self, goal: &str, before: Option<&str>, end: Option<&str>) -> String {
        let said: Vec<String> = [
            before.map(|count| format!("{count} zu Beginn")),
            end.map(|count| format!("{count} im Schlusstest")),
        ]
        .into_iter()
        .flatten()
        .collect();
        format!("{goal}: {}.", said.join(", "))
    }

    fn since(&self, since: &Since) -> String {
        let before =
            format!("{} ({})", self.count(since.before), Language::De.month_short(since.day));
        match since.word {
            ChangeWord::Up => format!(" Das ist mehr als vorher: {before}."),
            ChangeWord::LeaningUp => format!(" Das deutet auf mehr als vorher: {before}."),
            ChangeWord::TooFewToTell => format!(" Vorher waren es {before}."),
            ChangeWord::LeaningDown => format!(" Das deutet auf weniger als vorher: {before}."),
            ChangeWord::Down => format!(" Das ist weniger als vorher: {before}."),
        }
    }

    fn games(&self, goal: &str, games: &[u32]) -> String {
        let each: Vec<String> = games.iter().map(u32::to_string).collect();
        let many = many(games.len() as u64, "ganzen Spiel", "ganzen Spielen");
        format!("{goal}: {} in {many}.", each.join(", "))
    }

    fn kept(&self, goal: &str) -> String {
        format!(
            "{goal} bleibt dir: du hast es bei zwei Besuchen erreicht, beim zweiten, bevor wir daran gearbeitet haben."
        )
    }

    fn level(&self, skill: &str, level: u8, before: Option<u8>) -> String {
        match before {
            Some(before) if before != level => format!("{skill}: {level}, vorher {before}."),
            Some(_) => format!("{skill}: {level}, wie vorher."),
            None => format!("{skill}: {level}."),
        }
    }

    fn goes_on_met(&self, goal: &str) -> String {
        format!(
            "{goal} geht weiter: es ist erreicht, und die ersten Versuche beim nächsten Besuch zeigen, ob es bleibt."
        )
    }

    fn goes_on(&self, goal: &str) -> String {
        format!("{goal} geht weiter, mit demselben Ziel.")
    }

    fn goes_on_slipped(&self, goal: &str) -> String {
        format!("{goal} geht weiter: es war verloren gegangen, und wir nehmen es wieder auf.")
    }

    fn set_aside(&self, goal: &str, reason: &str) -> String {
        format!("{goal} ruht: {reason}.")
    }

    fn closed(&self, goal: &str, reason: &str) -> String {
        format!("{goal} ist abgeschlossen: {reason}.")
    }

    fn raised(&self, goal: &str, to: Option<(&str, &str)>) -> String {
        match to {
            Some((condition, asked)) => {
                format!("{goal} wird schwerer: ab jetzt {condition}, {asked}.")
            }
            None => format!("{goal} wird schwerer."),
        }
    }

    fn home_told(&self, what: &str, told: &str) -> String {
        format!("Zu \u{201e}{what}\u{201c} hast du mir erzählt: {told}")
    }

    fn home_warm_up(&self, words: &str) -> String {
        format!("Erst aufwärmen: {words}")
    }

    fn next_visit(&self, when: &str, place: &str) -> String {
        let place = if place.is_empty() { String::new() } else { format!(" in {place}") };
        format!("Dein nächster Besuch: {when}{place}.")
    }

    fn next_expected(&self, when: &str) -> String {
        format!("Ich erwarte dich {when}; sag mir Bescheid, wenn die Tage feststehen.")
    }

    fn next_open(&self) -> &'static str {
        "Dein nächster Besuch steht noch nicht fest; sag mir, welche Tage dir passen."
    }

    fn closing(&self) -> &'static str {
        "Bis bald auf dem Platz,"
    }

    fn counts_heading(&self) -> &'static str {
        "Die Zahlen hinter diesem Brief"
    }

    fn legend(&self) -> &'static str {
        "Offener Ring: bevor wir daran gearbeitet haben. Gefüllter Punkt: Schlusstest. Senkrechter Strich: ungefährer \
         Bereich der wahren Quote, ungefähr, weil die Versuche eines Spielers nicht unabhängig sind. Rote Linie: was \
         verlangt war."
    }

    fn asked(&self, condition: &str, criterion: &str) -> String {
        format!("{condition} · verlangt: {criterion}")
    }

    fn not_tested(&self) -> &'static str {
        "nicht geprüft"
    }

    fn chart(&self, goal: &str, asked: &str, visits: &str) -> String {
        format!("{goal}, verlangt: {asked}. {visits}.")
    }

    fn table(&self) -> [&'static str; 5] {
        ["Ziel", "Besuch", "Zu Beginn", "Schlusstest", "Verlangt"]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_whole_month_is_said_as_one() {
        let day = |day: u32| crate::kinds::Day::of(2026, 5, day).unwrap();
        let expected =
            |first: u32, last: u32| German.expected(Span { first: day(first), last: day(last) });
        assert_eq!(expected(1, 31), "ungefähr im Mai 2026");
        assert_eq!(expected(1, 30), "in der Zeit 1.–30. Mai 2026");
    }

    #[test]
    fn one_and_many_are_told_apart() {
        assert_eq!(German.minutes(60), "1 Stunde");
        assert_eq!(German.minutes(150), "2½ Stunden");
        assert_eq!(German.games("Fehler", &[3]), "Fehler: 3 in 1 ganzen Spiel.");
        assert_eq!(German.games("Fehler", &[3, 1]), "Fehler: 3, 1 in 2 ganzen Spielen.");
        assert_eq!(German.criterion(Criterion::at_most(3, 1)), "höchstens 3 je Spiel");
    }
}
