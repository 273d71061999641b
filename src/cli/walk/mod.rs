//! `walk`: today's round.

mod json;
mod text;

pub(crate) use json::walk_json;
pub(crate) use text::walk_text;

use super::answer::Ending;
use super::run::{Exit, Run};
use crate::reckon::round::round_by;

/// Shows the round of the day looked at.
pub(crate) fn run(run: &Run) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    let picture = run.picture(&desk)?;
    let round = round_by(&picture, run.forecast_basis);
    if run.everywhere.json {
        return run.answer_json(&walk_json(&round, &picture, &run.wording));
    }
    let text = walk_text(&round, &picture, &run.wording, run.around.columns, run.around.colour);
    run.answer(&if run.around.ascii { signs_in_ascii(&text) } else { text })
}

/// The shapes and dots of signs in letters that every terminal has, each shape another one.
fn signs_in_ascii(text: &str) -> String {
    let plain = |letter| match letter {
        '▲' => '^',
        '●' => 'o',
        '■' => '#',
        '◆' => 'v',
        '★' => '*',
        '✚' => '+',
        '•' => '.',
        other => other,
    };
    text.chars().map(plain).collect()
}
