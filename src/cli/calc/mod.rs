//! `calc`: one formula, for people (options in, a sentence with the formula and its source out) and for programs (JSON in,
//! JSON out). Opens no nursery.

mod answer;
pub mod args;
mod given;
mod seed;

use std::io::{IsTerminal, Read};

use super::answer::Ending;
use super::run::{Run, Stopped};
use crate::wording::Wording;
use answer::Answer;
use args::{Calc, Topic};
use given::{Given, Wrong};

/// Longest text that is read, bytes. Ours.
const MOST_READ: u64 = 16_000_000;

/// A formula: what is given, the sentences, the answer.
type Formula = fn(&Given, &Wording) -> Result<Answer, Wrong>;

/// Reckons one topic.
pub fn run(run: &Run, arguments: &Calc) -> Result<Ending, Stopped> {
    let (typed, formula) = asked(&arguments.topic);
    let piped = typed.is_empty();
    if let Some(share) = typed.asked_about() {
        return Err(Stopped::refused(run.wording.share_asked_words(share)));
    }
    let told = if piped {
        read_piped(run).and_then(|given| formula(&given, &run.wording))
    } else {
        formula(&typed, &run.wording)
    };
    let answer = told.map_err(|wrong| Stopped::refused(said(&wrong, &run.wording)))?;
    if piped || run.everywhere.json {
        return run.answer_json(&answer.json());
    }
    run.answer(&answer.text(&run.wording, run.around.columns, run.around.colour))
}

fn asked(topic: &Topic) -> (Given, Formula) {
    match topic {
        Topic::Germination(typed) => (seed::germination::typed(typed), seed::germination::answer),
        Topic::Emergence(typed) => (seed::emergence::typed(typed), seed::emergence::answer),
        Topic::Sowing(typed) => (seed::sowing::typed(typed), seed::sowing::answer),
        Topic::Interval(typed) => (seed::interval::typed(typed), seed::interval::answer),
        Topic::Replicates(typed) => (seed::replicates::typed(typed), seed::replicates::answer),
        Topic::Viability(typed) => (seed::viability::typed(typed), seed::viability::answer),
        Topic::Quality(typed) => (seed::quality::typed(typed), seed::quality::answer),
        Topic::SampleSize(typed) => (seed::sample_size::typed(typed), seed::sample_size::answer),
        Topic::Growth(typed) => (seed::growth::typed(typed), seed::growth::answer),
    }
}

fn read_piped(run: &Run) -> Result<Given, Wrong> {
    if std::io::stdin().is_terminal() {
        return Err(Wrong::NotJson(run.wording.calc_nothing_given()));
    }
    let mut text = String::new();
    // What is no text is no JSON either; its reader says so.
    let read = std::io::stdin().take(MOST_READ).read_to_string(&mut text);
    read.map_err(|fault| Wrong::NotJson(fault.to_string()))?;
    Given::read(&text)
}

fn said(wrong: &Wrong, wording: &Wording) -> String {
    match wrong {
        Wrong::Input(wrong) => wording.wrong_input(wrong),
        Wrong::NotJson(fault) => wording.calc_not_json(fault),
        Wrong::Said(said) => said.clone(),
        Wrong::Word { input, written, known } => wording.calc_word(input, written, known),
    }
}
