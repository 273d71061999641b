//! `calc`: one formula, for people (options in, a sentence with the formula and its source out) and for programs (JSON in,
//! JSON out). Opens no nursery.

mod answer;
pub(crate) mod args;
mod examples;
mod field;
mod given;
mod topics;

use clap::CommandFactory;
use std::io::{IsTerminal, Read};

use super::answer::Ending;
use super::args::Cli;
use super::run::{Exit, Run};
use crate::wording::{InputName, Wording};
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
    let read_day = |text: &str| crate::desk::day_asked(text, run.now.today).ok().map(|day| day.to_string());
    let typed = typed.with_days(read_day);
    match typed.asked_about() {
        // One percent there may be.
        Some(1.0) if run.everywhere.yes => {}
        Some(1.0) => return Err(Exit::refused(run.wording.one_percent_asked())),
        Some(share) => return Err(Exit::refused(run.wording.share_asked_words(share))),
        None => {}
    }
    let told = if piped {
        read_piped(run, examples::of(&arguments.topic)).and_then(|given| {
            let mut answer = formula(&given, &run.wording)?;
            let not_used = given.not_used();
            if !not_used.is_empty() {
                // A program may hand over more than a formula needs; it is told in the answer.
                answer.figure("not_used", not_used);
            }
            Ok(answer)
        })
    } else {
        formula(&typed, &run.wording)
    };
    let name = |input: &str| match piped {
        true => InputName { text: input.to_string(), is_percent: false },
        false => InputName { text: option_of(input), is_percent: typed.is_percent(input) },
    };
    let answer = told.map_err(|wrong| Exit::refused(message(&wrong, &run.wording, &name)))?;
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
        Topic::Matching(typed) => (topics::matching::typed(typed), topics::matching::answer),
        Topic::Sun(typed) => (field::sun::typed(typed), field::sun::answer),
        Topic::Radiation(typed) => (field::radiation::typed(typed), field::radiation::answer),
        Topic::Et0(typed) => (field::et0::typed(typed), field::et0::answer),
        Topic::Water(typed) => (field::water::typed(typed), field::water::answer),
        Topic::Rains(typed) => (field::rains::typed(typed), field::rains::answer),
        Topic::Leaves(typed) => (field::leaves::typed(typed), field::leaves::answer),
        Topic::Light(typed) => (field::light::typed(typed), field::light::answer),
    }
}

fn read_piped(run: &Run, example: &str) -> Result<Given, Wrong> {
    if std::io::stdin().is_terminal() {
        return Err(Wrong::NotJson(run.wording.calc_nothing_given(example)));
    }
    let mut text = String::new();
    // What is no text is no JSON either; its reader says so.
    let read = std::io::stdin().take(MOST_READ).read_to_string(&mut text);
    read.map_err(|fault| Wrong::NotJson(run.wording.system_fault(&fault)))?;
    if text.trim().is_empty() {
        return Err(Wrong::NotJson(run.wording.calc_nothing_given(example)));
    }
    Given::read(&text)
}

fn message(wrong: &Wrong, wording: &Wording, name: &dyn Fn(&str) -> InputName) -> String {
    match wrong {
        Wrong::Input(wrong) => wording.wrong_input_named(wrong, name),
        Wrong::NotJson(fault) => wording.calc_not_json(fault),
        Wrong::Unread(fault) => {
            let sentence = wording.pair_fault(fault);
            let column = fault.column.and_then(|column| i64::try_from(column).ok());
            wording.calc_not_json(column.map_or(sentence.clone(), |column| wording.at_column(column, sentence)))
        }
        Wrong::InRow { list, row, wrong } => wording.calc_in_row(list, row, message(wrong, wording, name)),
        Wrong::Said(message) => message.clone(),
        Wrong::Word { input, written, known } => wording.calc_word(name(input).text, written, known),
    }
}

/// The option by which a key is typed: its own name without the unit.
fn option_of(key: &str) -> String {
    const NAMED_OTHERWISE: [(&str, &str); 1] = [("spacing_m2", "ground")];
    if let Some((_, option)) = NAMED_OTHERWISE.iter().find(|(input, _)| *input == key) {
        return format!("--{option}");
    }
    let all = Cli::command();
    let topics = all.find_subcommand("calc").into_iter().flat_map(clap::Command::get_subcommands);
    let fits = |option: &str| key == option || key.strip_prefix(option).is_some_and(|unit| unit.starts_with('_'));
    let options = topics.flat_map(clap::Command::get_arguments).filter(|option| fits(option.get_id().as_str()));
    let longest = options.max_by_key(|option| option.get_id().as_str().len()).and_then(clap::Arg::get_long);
    longest.map_or_else(|| key.to_string(), |long| format!("--{long}"))
}
