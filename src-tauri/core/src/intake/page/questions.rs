//! The questions of the page: the one list that draws it and reads its answers.

use serde::Serialize;

/// One question.
#[derive(Clone, Copy, Debug, Serialize)]
pub(super) struct Question {
    pub(super) field: &'static str,
    pub(super) group: &'static str,
    pub(super) label: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    pub(super) hint: &'static str,
    pub(super) long: bool,
    pub(super) most: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) options: Option<&'static [(&'static str, &'static str)]>,
}

const fn line(
    field: &'static str,
    group: &'static str,
    label: &'static str,
    hint: &'static str,
) -> Question {
    Question { field, group, label, hint, long: false, most: 200, options: None }
}

const fn text(
    field: &'static str,
    group: &'static str,
    label: &'static str,
    hint: &'static str,
) -> Question {
    Question { field, group, label, hint, long: true, most: 4000, options: None }
}

const fn one_of(
    field: &'static str,
    group: &'static str,
    label: &'static str,
    options: &'static [(&'static str, &'static str)],
) -> Question {
    Question { field, group, label, hint: "", long: false, most: 20, options: Some(options) }
}

const ANSWERS: &[(&str, &str)] = &[("yes", "yes"), ("no", "no"), ("not_known", "I do not know")];

/// All of them, in the order in which they are asked.
pub(super) const QUESTIONS: &[Question] = &[
    line("called", "You", "What shall we call you", ""),
    line("born", "You", "Birth date", "As 1984-03-12."),
    line("phone", "You", "Telephone", ""),
    line("home", "You", "The town you come from", ""),
    text("wants", "You", "What do you want from the lessons", ""),
    line("guardian.name", "If you are under age", "A parent or guardian", ""),
    line("guardian.relation", "If you are under age", "Who they are to you", ""),
    line("guardian.phone", "If you are under age", "Their telephone", ""),
    line("emergency.name", "In an emergency", "Whom to call", ""),
    line("emergency.relation", "In an emergency", "Who they are to you", ""),
    line("emergency.phone", "In an emergency", "Their telephone", ""),
    one_of("hand", "Playing", "Racquet hand", &[("right", "right"), ("left", "left")]),
    text("experience", "Playing", "Since when have you played, where, with whom", ""),
    line("level_said", "Playing", "How would you rate your play", ""),
    text("available", "Playing", "When can you usually come", ""),
    line("racquet", "Equipment", "Racquet", ""),
    line("grip", "Equipment", "Grip", ""),
    line("strings", "Equipment", "Strings and tension", ""),
    line(
        "eyewear",
        "Equipment",
        "Eyewear for racket sports",
        "Glasses and contact lenses do not protect.",
    ),
    line("eyewear_standard", "Equipment", "The standard printed on it", "Such as ASTM F3164."),
    text(
        "injuries",
        "Health",
        "Injuries, and what you should not do",
        "In your own words. Leave it empty to say it on court.",
    ),
    one_of(
        "active",
        "Health",
        "Planned exercise of half an hour or more, at moderate effort, on three days a week or more, for the last three months?",
        ANSWERS,
    ),
    one_of(
        "disease",
        "Health",
        "A known disease of the heart, the circulation, the metabolism (such as diabetes) or the kidneys?",
        ANSWERS,
    ),
    one_of(
        "symptoms",
        "Health",
        "Any sign of one: pain or pressure in the chest, short of breath at rest or with little effort, dizzy or fainting, a racing heart, swollen ankles, pain in the legs on walking?",
        ANSWERS,
    ),
];
