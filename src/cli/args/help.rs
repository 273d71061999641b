//! The help of every command in the person's language, its headings and the names of values too.

use clap::{CommandFactory, FromArgMatches};
use std::ffi::OsString;

use super::Cli;
use crate::base::columns::{left_aligned, width_of};
use crate::desk::{FORMS, FORMS_IN_SPANISH};
use crate::wording::{Lang, Wording};

/// What clap writes into a usage line where there are options.
const ANY_OPTIONS: &str = "[OPTIONS]";
/// What clap writes before a usage line.
const USAGE: &str = "Usage: ";

impl Cli {
    /// The definition with its help in a language.
    pub fn definition(wording: &Wording) -> clap::Command {
        let mut command = Cli::command();
        // Built first, so that the help of --help and --version can be put into the person's language too.
        command.build();
        worded(command, wording, "outplant")
    }

    /// Reads what was typed.
    pub(crate) fn read(arguments: impl IntoIterator<Item = OsString>, wording: &Wording) -> Result<Cli, clap::Error> {
        let arguments = help_of_what_is_named(arguments.into_iter().collect());
        // Help is put into words only where it is asked for, or something cannot be read: it is a tenth of a short run.
        let matches = match matches(&arguments, &Cli::command) {
            Ok(read) => read,
            Err(_) => matches(&arguments, &|| Cli::definition(wording))?,
        };
        Cli::from_arg_matches(&matches)
    }
}

/// What was typed, read by a definition of the commands.
fn matches(arguments: &[OsString], definition: &dyn Fn() -> clap::Command) -> Result<clap::ArgMatches, clap::Error> {
    match definition().try_get_matches_from(arguments) {
        Err(fault) if fault.kind() == clap::error::ErrorKind::InvalidSubcommand => {
            // "why c1": a name stands where tray, bed or pair would.
            let Some(named) = with_bare_names(arguments) else { return Err(fault) };
            definition().try_get_matches_from(named)
        }
        read => read,
    }
}

/// `help why tray` is `why tray --help`.
fn help_of_what_is_named(mut arguments: Vec<OsString>) -> Vec<OsString> {
    // Options before it, and their values, stay where they are.
    let is_option = |at: usize| arguments[at].to_string_lossy().starts_with('-');
    let takes_value = |at: usize| is_option(at) && !arguments[at].to_string_lossy().contains('=');
    let first = (1..arguments.len()).find(|at| !(is_option(*at) || *at > 1 && takes_value(at - 1)));
    if let Some(at) = first.filter(|at| arguments[*at] == "help") {
        arguments.remove(at);
        arguments.push("--help".into());
    }
    arguments
}

/// The arguments of `why` with names alone, as its hidden subcommand takes them.
fn with_bare_names(arguments: &[OsString]) -> Option<Vec<OsString>> {
    let at = arguments.iter().position(|word| word == "why")? + 1;
    let mut named = arguments.to_vec();
    named.insert(at, "named".into());
    Some(named)
}

/// Puts the help of a command, its arguments and its subcommands into the person's language.
fn worded(command: clap::Command, wording: &Wording, path: &str) -> clap::Command {
    let about = wording.help(path);
    let longer = wording.help(&format!("{path}_more"));
    let names: Vec<String> = command.get_arguments().map(|argument| argument.get_id().to_string()).collect();
    let below: Vec<String> = command.get_subcommands().map(|inner| inner.get_name().to_string()).collect();
    let mut command = command;
    if let Some(about) = about {
        command = command.about(about);
    }
    if let Some(longer) = longer {
        let lists_forms = path == "write";
        let longer = if lists_forms { format!("{longer}\n\n{}", short_forms(wording)) } else { longer };
        command = command.after_help(longer);
    }
    for name in names {
        let own = wording.help(&format!("{path}_{name}")).or_else(|| wording.help(&format!("any_{name}")));
        command = command.mut_arg(name, |argument| worded_argument(argument, own, wording));
    }
    command = command.subcommand_value_name(wording.help_value_command());
    for name in below {
        let inner = format!("{path}_{name}").replace("outplant_", "");
        command = command.mut_subcommand(name, |command| worded(command, wording, &inner));
    }
    let names: Vec<(String, bool, bool)> = command
        .get_arguments()
        .map(|argument| {
            let name = argument.get_id().to_string();
            let is_general = argument.is_global_set() || ["help", "version"].contains(&name.as_str());
            (name, argument.is_positional(), is_general)
        })
        .collect();
    for (name, is_positional, is_general) in names {
        let heading = match (is_positional, is_general) {
            (true, _) => wording.help_arguments(),
            (false, true) => wording.help_general(),
            (false, false) => wording.help_options(),
        };
        let is_hidden = is_general && means_nothing(path, &name);
        command = command.mut_arg(name, |argument| {
            let is_hidden = is_hidden || argument.is_hide_set();
            argument.help_heading(heading).hide(is_hidden)
        });
    }
    headed(command, wording)
}

/// Whether a general option means nothing for a command: it is taken there, and its help does not show it.
fn means_nothing(path: &str, option: &str) -> bool {
    let command = path.split('_').next().unwrap_or(path);
    let is_one_of = |commands: &[&str]| commands.contains(&command);
    match option {
        "nursery" => is_one_of(&["sample", "calc", "schema", "completions", "man"]),
        "on" | "known" => !is_one_of(&["outplant", "ready", "walk", "why", "log"]),
        "plain" => !is_one_of(&["outplant", "sample"]),
        "handbook" => !is_one_of(&["outplant", "ready", "walk", "why", "sample"]),
        "yes" | "who" => !is_one_of(&["outplant", "begin", "write", "undo", "import", "species"]),
        _ => false,
    }
}

/// An argument with its help, the name of its value, and the values it can have.
fn worded_argument(argument: clap::Arg, help: Option<String>, wording: &Wording) -> clap::Arg {
    let takes_value = argument.get_action().takes_values();
    let mut argument = argument;
    if takes_value {
        let written = argument.get_value_names().and_then(|names| names.first()).map(|name| name.to_lowercase());
        let written = written.unwrap_or_else(|| argument.get_id().as_str().to_string()).replace("key=value", "fields");
        if let Some(name) = wording.help(&format!("value_{written}")) {
            argument = argument.value_name(name);
        }
    }
    let values: Vec<String> = argument.get_possible_values().iter().map(|value| value.get_name().to_string()).collect();
    let usual: Vec<String> =
        argument.get_default_values().iter().map(|value| value.to_string_lossy().into_owned()).collect();
    let help = match (help, takes_value && !values.is_empty(), usual.first()) {
        (Some(help), true, Some(usual)) => Some(wording.help_choice_usual(help, values.join(", "), usual)),
        (Some(help), true, None) => Some(wording.help_choice(help, values.join(", "))),
        (help, _, _) => help,
    };
    // What clap would say of values and defaults is said in the help itself.
    let argument = argument.hide_possible_values(true).hide_default_value(true);
    match help {
        Some(help) => argument.help(help),
        None => argument,
    }
}

/// A command with its usage line and the headings of its help.
fn headed(mut command: clap::Command, wording: &Wording) -> clap::Command {
    let usage = command.render_usage().to_string();
    let usage = usage.trim_start_matches(USAGE).replace(ANY_OPTIONS, &wording.help_some_options());
    let mut template = format!("{{about-with-newline}}\n{} {{usage}}\n", wording.help_usage());
    template.push_str("\n{all-args}{after-help}");
    command.override_usage(usage).help_template(template).subcommand_help_heading(wording.help_commands())
}

/// The short lines that `write --batch` reads, each with the kind of entry it makes.
fn short_forms(wording: &Wording) -> String {
    let forms = match wording.lang() {
        Lang::En => FORMS,
        Lang::Es => FORMS_IN_SPANISH,
    };
    let room = forms.iter().map(|(example, _)| width_of(example)).max().unwrap_or(0);
    let mut text = wording.short_forms_heading();
    for (example, kind) in forms {
        text.push_str(&format!("\n    {}  {}", left_aligned(example, room), wording.kind_typed(kind)));
    }
    text
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use proptest::prelude::*;

    use super::*;
    use crate::wording::words_of;

    /// Words as they are typed, or nearly.
    fn typed() -> impl Strategy<Value = Vec<String>> {
        let near = "(ready|walk|why|tray|write|undo|import|export|help|--on|--json|--lang|--nursery|-|--|=|es|[a-z]{1,4}|-?[0-9]{1,3})";
        proptest::collection::vec(prop_oneof![4 => near, 1 => any::<String>()], 0..6)
    }

    proptest! {
        #[test]
        fn no_words_typed_make_it_panic(words in typed(), lang in proptest::sample::select(&Lang::ALL[..])) {
            let wording = Wording::new(lang);
            let all = std::iter::once("outplant".to_string()).chain(words).map(OsString::from);
            if let Err(fault) = Cli::read(all, &wording) {
                prop_assert!(!fault.to_string().is_empty());
            }
        }
    }

    /// Every path under which help is looked up below a command.
    fn looked_up(command: &clap::Command, path: &str, all: &mut BTreeSet<String>) {
        all.extend([path.to_string(), format!("{path}_more")]);
        for argument in command.get_arguments() {
            all.extend([format!("{path}_{}", argument.get_id()), format!("any_{}", argument.get_id())]);
            all.extend(argument.get_value_names().into_iter().flatten().map(|name| {
                let name = name.to_lowercase().replace("key=value", "fields");
                format!("value_{name}")
            }));
        }
        for inner in command.get_subcommands() {
            looked_up(inner, &format!("{path}_{}", inner.get_name()).replace("outplant_", ""), all);
        }
    }

    #[test]
    fn help_of_a_command_is_asked_for_in_either_order() {
        let typed = |line: &str| line.split(' ').map(OsString::from).collect::<Vec<_>>();
        let read = |line: &str| help_of_what_is_named(typed(line));
        assert_eq!(read("outplant help why tray"), typed("outplant why tray --help"));
        assert_eq!(read("outplant --lang es help walk"), typed("outplant --lang es walk --help"));
        assert_eq!(read("outplant help"), typed("outplant --help"));
        assert_eq!(read("outplant species help"), typed("outplant species help"));
    }

    #[test]
    fn every_help_belongs_to_a_command_an_option_or_a_value() {
        let mut command = Cli::command();
        command.build();
        let mut all = BTreeSet::new();
        looked_up(&command, "outplant", &mut all);
        let written = words_of("help_");
        assert!(written.len() > 100, "only {} were found", written.len());
        let lost: Vec<&str> = written.into_iter().filter(|word| !all.contains(*word)).collect();
        assert_eq!(lost, Vec::<&str>::new());
    }
}
