//! `walk`: today's round.

pub(super) mod json;

pub(crate) use json::walk_json;

use super::answer::Ending;
use super::page_text::page_text;
use super::run::{Exit, Run};
use crate::page::Asked;
use crate::page::walk::walk;
use crate::reckon::round::round_by;

/// Shows the round of the day looked at.
pub(crate) fn run(run: &Run) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    let picture = run.picture(&desk)?;
    let round = round_by(&picture, run.forecast_basis);
    if run.everywhere.json {
        return run.answer_json(&walk_json(&round, &picture, &run.wording));
    }
    let page = walk(&round, Asked { picture: &picture, wording: &run.wording });
    let text = page_text(&page, &picture, &run.wording, run.around.columns, run.around.colour);
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
