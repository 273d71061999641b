//! What was typed wrongly, in the person's language.

use clap::error::{ContextKind, ContextValue, Error, ErrorKind};
use std::error::Error as _;
use std::io::Write as _;
use std::num::ParseFloatError;

use crate::base::DayError;
use crate::cli::answer::{Ending, refuse, was_said};
use crate::wording::Wording;

/// Answers what clap could not read, or help and the version where those were asked for.
pub(crate) fn answer(fault: &Error, wording: &Wording, json: bool) -> Ending {
    match fault.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
            if was_said(fault.print().and_then(|()| std::io::stdout().flush())) {
                return Ending::Done;
            }
            refuse(Ending::File, &[wording.answer_not_shown()], json);
            Ending::File
        }
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand if !json => {
            let _ = fault.print();
            Ending::Usage
        }
        _ => {
            refuse(Ending::Usage, &message(fault, wording), json);
            Ending::Usage
        }
    }
}

/// The sentence of a fault, and where to read more.
fn message(fault: &Error, wording: &Wording) -> Vec<String> {
    let usage = text(fault, ContextKind::Usage);
    let command: Vec<String> = usage.map(|usage| command_of(&usage)).unwrap_or_default();
    let command = if command.is_empty() { vec!["outplant".to_string()] } else { command };
    vec![sentence(fault, wording), wording.usage_more(format!("{} --help", command.join(" ")))]
}

/// The command of a usage line: its words up to the first option or value.
fn command_of(usage: &str) -> Vec<String> {
    let at = usage.find("outplant").unwrap_or(usage.len());
    let words = usage.get(at..).unwrap_or_default().split_whitespace();
    words.take_while(|word| word.chars().all(|c| c.is_ascii_lowercase())).map(str::to_string).collect()
}

fn sentence(fault: &Error, wording: &Wording) -> String {
    let argument = text(fault, ContextKind::InvalidArg).unwrap_or_default();
    let value = text(fault, ContextKind::InvalidValue).unwrap_or_default();
    match fault.kind() {
        ErrorKind::InvalidSubcommand => {
            let word = text(fault, ContextKind::InvalidSubcommand).unwrap_or_default();
            wording.nearest_after(wording.usage_unknown_command(word), &list(fault, ContextKind::SuggestedSubcommand))
        }
        ErrorKind::UnknownArgument if argument.starts_with('-') => {
            wording.nearest_after(wording.usage_unknown_option(argument), &list(fault, ContextKind::SuggestedArg))
        }
        ErrorKind::UnknownArgument | ErrorKind::TooManyValues => {
            wording.usage_unexpected(if value.is_empty() { argument } else { value })
        }
        ErrorKind::InvalidValue if value.is_empty() => wording.usage_needs_value(argument),
        ErrorKind::InvalidValue => {
            wording.usage_one_of(value, argument, list(fault, ContextKind::ValidValue).join(", "))
        }
        ErrorKind::ValueValidation => wrong_value(fault, value, argument, wording),
        ErrorKind::MissingRequiredArgument => wording.usage_missing(list(fault, ContextKind::InvalidArg).join(", ")),
        ErrorKind::MissingSubcommand => wording.usage_missing(list(fault, ContextKind::ValidSubcommand).join(", ")),
        ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues | ErrorKind::NoEquals => {
            wording.usage_needs_value(argument)
        }
        ErrorKind::ArgumentConflict => {
            let other = list(fault, ContextKind::PriorArg).join(", ");
            if other == argument { wording.usage_twice(argument) } else { wording.usage_not_together(argument, other) }
        }
        ErrorKind::InvalidUtf8 => wording.usage_not_readable(),
        _ => wording.usage_other(),
    }
}

/// Why a value cannot be read, by what it was read as.
fn wrong_value(fault: &Error, value: String, argument: String, wording: &Wording) -> String {
    let source = fault.source();
    if source.is_some_and(|source| source.is::<DayError>()) {
        return wording.usage_not_a_day(value, argument);
    }
    if source.is_some_and(|source| source.is::<ParseFloatError>()) {
        let with_point = value.replacen(',', ".", 1);
        return match with_point.parse::<f64>() {
            Ok(_) => wording.usage_decimal_comma(value, argument, with_point),
            Err(_) => wording.usage_not_a_number(value, argument),
        };
    }
    if source.is_some_and(|source| source.is::<crate::base::CodeError>()) {
        return wording.usage_bad_name(value, argument);
    }
    if value.chars().all(|sign| sign.is_ascii_digit() || sign == '-') {
        return wording.usage_not_so_many(argument, value);
    }
    wording.usage_not_an_entry(value, argument)
}

fn text(fault: &Error, kind: ContextKind) -> Option<String> {
    match fault.get(kind)? {
        ContextValue::String(text) => Some(text.clone()),
        ContextValue::Strings(texts) => Some(texts.join(", ")),
        ContextValue::StyledStr(text) => Some(text.to_string()),
        _ => None,
    }
}

fn list(fault: &Error, kind: ContextKind) -> Vec<String> {
    match fault.get(kind) {
        Some(ContextValue::Strings(texts)) => texts.clone(),
        Some(ContextValue::String(text)) => vec![text.clone()],
        _ => Vec::new(),
    }
}
