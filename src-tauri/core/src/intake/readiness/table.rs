//! The decision table of the readiness questions, as the American College of Sports Medicine
//! published it in 2015: Riebe D, Franklin BA, Thompson PD, Garber CE, Whitfield GP, Magal M,
//! Pescatello LS. Updating ACSM's Recommendations for Exercise Preparticipation Health Screening.
//! Med Sci Sports Exerc 2015;47(11):2473-2479. "Active" is planned exercise of at least 30 minutes
//! at moderate intensity on at least three days a week for at least the last three months.
//!
//! Not known is no answer of that table. Here it leads to [`Outcome::Ask`], except where a sign of
//! disease was named: then a physician comes first, whatever else is not known.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Answers;
use crate::intake::Answer;
use crate::kinds::text::joined;

/// The table in use, kept with each set of answers.
pub const RULES: &str = "acsm-2015";

/// What the table says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// Something is not known: ask.
    Ask,
    /// Not active, nothing known: clearance not necessary; start at light to moderate effort.
    NotNecessaryLight,
    /// Not active, with a disease or a sign of one: clearance recommended before starting.
    ClearanceFirst,
    /// Active, nothing known: clearance not necessary; go on at moderate or vigorous effort.
    NotNecessaryContinue,
    /// Active, with a disease and no sign: moderate effort goes on; before vigorous effort a
    /// clearance within the last 12 months is recommended.
    ClearanceForVigorous,
    /// Active, with a sign: stop, and seek clearance before going on.
    StopAndAsk,
}

/// What the table says of these answers.
pub fn outcome(a: Answers) -> Outcome {
    use Answer::{No, NotKnown, Yes};
    match (a.active, a.disease, a.symptoms) {
        (Yes, _, Yes) => Outcome::StopAndAsk,
        (No | NotKnown, _, Yes) => Outcome::ClearanceFirst,
        (NotKnown, _, _) | (_, NotKnown, _) | (_, _, NotKnown) => Outcome::Ask,
        (No, No, No) => Outcome::NotNecessaryLight,
        (No, Yes, No) => Outcome::ClearanceFirst,
        (Yes, No, No) => Outcome::NotNecessaryContinue,
        (Yes, Yes, No) => Outcome::ClearanceForVigorous,
    }
}

/// The outcome in words, careful ones: it asks or advises, and clears nobody.
pub fn words(outcome: Outcome, a: Answers) -> String {
    match outcome {
        Outcome::Ask => {
            let open: Vec<&str> = [
                (a.active, "regular exercise"),
                (a.disease, "known disease"),
                (a.symptoms, "signs of disease"),
            ]
            .into_iter()
            .filter(|(answer, _)| *answer == Answer::NotKnown)
            .map(|(_, about)| about)
            .collect();
            format!("Not answered yet: {}. Ask before the lesson.", joined(&open))
        }
        Outcome::NotNecessaryLight => {
            "These answers ask for no physician first. Start at light to moderate effort and build up slowly."
                .to_owned()
        }
        Outcome::ClearanceFirst => {
            "Ask a physician first: a medical clearance is recommended before starting."
                .to_owned()
        }
        Outcome::NotNecessaryContinue => {
            "These answers ask for no physician first. Moderate or vigorous effort can go on as before."
                .to_owned()
        }
        Outcome::ClearanceForVigorous => {
            "Ask a physician before vigorous effort: a clearance from the last 12 months is recommended. Moderate effort can go on."
                .to_owned()
        }
        Outcome::StopAndAsk => {
            "Stop, and ask a physician before going on: a medical clearance is recommended."
                .to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Answer::{No, NotKnown, Yes};
    use super::*;

    /// The eight rows of the published figure (Riebe et al. 2015, figure 2), and every combination
    /// with something not known.
    #[test]
    fn all_27_combinations_lead_where_the_table_says() {
        let mut unknown = 0;
        for active in [Yes, No, NotKnown] {
            for disease in [Yes, No, NotKnown] {
                for symptoms in [Yes, No, NotKnown] {
                    let says = outcome(Answers { active, disease, symptoms });
                    let should = match (active, disease, symptoms) {
                        (No, No, No) => Outcome::NotNecessaryLight,
                        (No, Yes, No) | (No, Yes | No, Yes) => Outcome::ClearanceFirst,
                        (Yes, No, No) => Outcome::NotNecessaryContinue,
                        (Yes, Yes, No) => Outcome::ClearanceForVigorous,
                        (Yes, Yes | No, Yes) => Outcome::StopAndAsk,
                        _ => {
                            unknown += 1;
                            let physician = symptoms == Yes;
                            assert_eq!(
                                says != Outcome::Ask,
                                physician,
                                "what is not known is asked"
                            );
                            assert!(!matches!(
                                says,
                                Outcome::NotNecessaryLight | Outcome::NotNecessaryContinue
                            ));
                            continue;
                        }
                    };
                    assert_eq!(says, should, "{active:?} {disease:?} {symptoms:?}");
                }
            }
        }
        assert_eq!(unknown, 19, "27 combinations, 8 of them in the published table");
    }

    #[test]
    fn no_outcome_calls_anyone_fit() {
        for active in [Yes, No, NotKnown] {
            for disease in [Yes, No, NotKnown] {
                for symptoms in [Yes, No, NotKnown] {
                    let answers = Answers { active, disease, symptoms };
                    let words = words(outcome(answers), answers).to_lowercase();
                    for never in ["fit to", "cleared", "safe to", "healthy", "you can play"] {
                        assert!(!words.contains(never), "{words}");
                    }
                }
            }
        }
    }
}
