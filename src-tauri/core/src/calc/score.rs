//! `score`: rallies to points and games.

use super::{CalcRefusal, fields::Fields};
use crate::games::Side;
use crate::games::score::{PointRules, Score, Uncounted, play};
use crate::sports::pack::{Game, NextServer, Scoring};

struct Asked {
    scoring: Scoring,
    games: Vec<Game>,
    games_to_win: u8,
    next_server: NextServer,
    both_serve: bool,
}

pub fn read(mut fields: Fields) -> Result<Option<Score>, CalcRefusal> {
    let rules = fields.inside("rules", rules);
    let first = fields.word("first_server", &[("a", Side::A), ("b", Side::B)]);
    let winners = fields.text("winners").and_then(|text| sides(&mut fields, "winners", &text));
    let next = match fields.text_or_none("next_servers") {
        Some(text) => sides(&mut fields, "next_servers", &text),
        None => Some(Vec::new()),
    };
    if let Some((rules, next)) = rules.as_ref().zip(next.as_ref()) {
        next_servers(&mut fields, rules, next);
    }
    let score =
        rules.zip(first).zip(winners.zip(next)).and_then(|((asked, first), (winners, next))| {
            let rules = PointRules {
                scoring: asked.scoring,
                games: &asked.games,
                games_to_win: asked.games_to_win,
                next_server: asked.next_server,
                both_serve: asked.both_serve,
            };
            play(rules, first, &next, &winners)
                .map_err(|(rally, why)| uncounted(&mut fields, rally, why))
                .ok()
        });
    fields.done()?;
    Ok(score)
}

fn rules(fields: &mut Fields) -> Option<Asked> {
    let scoring = fields.word("scoring", &[("server", Scoring::Server), ("rally", Scoring::Rally)]);
    let games = fields.each("games", game);
    let to_win = fields.whole("games_to_win").and_then(|to_win| {
        let fits = u8::try_from(to_win).ok().filter(|to_win| (1..=100).contains(to_win));
        if fits.is_none() {
            let words = "a match is won by 1 to 100 games".to_owned();
            fields.refuse("games_to_win", "out_of_range", words);
        }
        fits
    });
    let next_server = fields.word(
        "next_server",
        &[
            ("other", NextServer::Other),
            ("winner", NextServer::Winner),
            ("given", NextServer::Given),
        ],
    );
    let both_serve = fields.flag("both_serve");
    if both_serve && scoring == Some(Scoring::Rally) {
        let words = "both serve in turn only where only the server scores".to_owned();
        fields.refuse("both_serve", "not_together", words);
    }
    if let Some((games, to_win)) = games.as_ref().zip(to_win) {
        let most = usize::from(to_win) * 2 - 1;
        if games.len() != most {
            let words = format!("{to_win} to win means up to {most} games, not {}", games.len());
            fields.refuse("games", "wrong_number", words);
            return None;
        }
    }
    let ((scoring, games), (games_to_win, next_server)) =
        scoring.zip(games).zip(to_win.zip(next_server))?;
    Some(Asked { scoring, games, games_to_win, next_server, both_serve })
}

fn game(fields: &mut Fields) -> Option<Game> {
    let (to, win_by) = (points(fields, "to"), points(fields, "win_by"));
    let (to, win_by) = to.zip(win_by)?;
    Some(Game { to, win_by })
}

fn points(fields: &mut Fields, field: &str) -> Option<u16> {
    let whole = fields.whole(field)?;
    let fits = u16::try_from(whole).ok().filter(|points| *points > 0);
    if fits.is_none() {
        fields.refuse(field, "out_of_range", format!("“{field}” is 1 to {}", u16::MAX));
    }
    fits
}

fn sides(fields: &mut Fields, field: &str, text: &str) -> Option<Vec<Side>> {
    let sides: Option<Vec<Side>> = text.chars().map(Side::read).collect();
    if sides.is_none() {
        fields.refuse(field, "not_a_side", format!("“{field}” is made of the letters a and b"));
    }
    sides
}

/// Who serves first in later games is given only where the rules ask for it.
fn next_servers(fields: &mut Fields, rules: &Asked, next: &[Side]) {
    if rules.next_server != NextServer::Given && !next.is_empty() {
        let words = "these rules say who serves first in the next game".to_owned();
        fields.refuse("next_servers", "not_asked", words);
    } else if next.len() >= rules.games.len() && !next.is_empty() {
        let words =
            format!("{} games have {} after the first", rules.games.len(), rules.games.len() - 1);
        fields.refuse("next_servers", "too_many", words);
    }
}

fn uncounted(fields: &mut Fields, rally: usize, why: Uncounted) {
    match why {
        Uncounted::Over => {
            let words = format!("the match was over after {rally} rallies");
            fields.refuse("winners", "after_the_match", words);
        }
        Uncounted::NoServer { game } => {
            let words = format!("say who serves first in game {game}");
            fields.refuse("next_servers", "missing", words);
        }
    }
}
