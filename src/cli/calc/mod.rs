//! `calc`: one formula, for people (options in, a sentence with the formula and its source out) and for programs (JSON in,
//! JSON out). Opens no nursery.

mod answer;
pub(crate) mod args;
mod field;
mod given;
mod topics;

use std::io::{IsTerminal, Read};

use super::answer::Ending;
use super::run::{Exit, Run};
use crate::wording::Wording;
use answer::Answer;
use args::{Calc, Topic};
use given::{Given, Wrong};

/// Longest text that is read, bytes. Ours.
const MOST_READ: u64 = 16_000_000;

/// A formula: what is given, the sentences, the answer.
type Formula = fn(&Given, &Wording) -> Result<Answer, Wrong>;

/// Reckons one topic.
pub(crate) fn run(run: &Run, arguments: &Calc) -> Result<Ending, Exit> {
    let (typed, formula) = asked(&arguments.topic);
    let piped = typed.is_empty();
    if let Some(share) = typed.asked_about() {
        return Err(Exit::refused(run.wording.share_asked_words(share)));
    }
    let told = if piped {
        read_piped(run).and_then(|given| formula(&given, &run.wording))
    } else {
        formula(&typed, &run.wording)
    };
    let answer = told.map_err(|wrong| Exit::refused(message(&wrong, &run.wording)))?;
    if piped || run.everywhere.json {
        return run.answer_json(&answer.json());
    }
    run.answer(&answer.text(&run.wording, run.around.columns, run.around.colour))
}

fn asked(topic: &Topic) -> (Given, Formula) {
    match topic {
        Topic::Germination(typed) => (topics::germination::typed(typed), topics::germination::answer),
        Topic::Emergence(typed) => (topics::emergence::typed(typed), topics::emergence::answer),
        Topic::Sowing(typed) => (topics::sowing::typed(typed), topics::sowing::answer),
        Topic::Interval(typed) => (topics::interval::typed(typed), topics::interval::answer),
        Topic::Replicates(typed) => (topics::replicates::typed(typed), topics::replicates::answer),
        Topic::Viability(typed) => (topics::viability::typed(typed), topics::viability::answer),
        Topic::Quality(typed) => (topics::quality::typed(typed), topics::quality::answer),
        Topic::SampleSize(typed) => (topics::sample_size::typed(typed), topics::sample_size::answer),
        Topic::Growth(typed) => (topics::growth::typed(typed), topics::growth::answer),
        Topic::Sun(typed) => (field::sun::typed(typed), field::sun::answer),
        Topic::Radiation(typed) => (field::radiation::typed(typed), field::radiation::answer),
        Topic::Et0(typed) => (field::et0::typed(typed), field::et0::answer),
        Topic::Water(typed) => (field::water::typed(typed), field::water::answer),
        Topic::Rains(typed) => (field::rains::typed(typed), field::rains::answer),
        Topic::Leaves(typed) => (field::leaves::typed(typed), field::leaves::answer),
        Topic::Light(typed) => (field::light::typed(typed), field::light::answer),
    }
}

fn read_piped(run: &Run) -> Result<Given, Wrong> {
    if std::io::stdin().is_terminal() {
        return Err(Wrong::NotJson(run.wording.calc_nothing_given()));
    }
    let mut text = String::new();
    // What is no text is no JSON either; its reader says so.
    let read = std::io::stdin().take(MOST_READ).read_to_string(&mut text);
    read.map_err(|fault| Wrong::NotJson(run.wording.system_fault(&fault)))?;
    if text.trim().is_empty() {
        return Err(Wrong::NotJson(run.wording.calc_nothing_given()));
    }
    Given::read(&text)
}

fn message(wrong: &Wrong, wording: &Wording) -> String {
    match wrong {
        Wrong::Input(wrong) => wording.wrong_input(wrong),
        Wrong::NotJson(fault) => wording.calc_not_json(fault),
        Wrong::InRow { list, row, wrong } => wording.calc_in_row(list, row, message(wrong, wording)),
        Wrong::Said(message) => message.clone(),
        Wrong::Word { input, written, known } => wording.calc_word(input, written, known),
    }
}
