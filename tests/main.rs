//! All integration tests, one binary.
#![allow(missing_docs, clippy::panic, clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)]

mod answers;
mod asked;
mod at_a_terminal;
mod books_from_stories;
mod books_lazily;
mod books_properties;
mod books_worked;
mod care_said;
mod command_line;
mod docs_true;
mod export_maps;
mod first_day;
mod forecast_sample;
mod gone_and_blocked;
mod grown_nursery;
mod guides;
mod house;
mod imports;
mod lots_and_sowing;
mod own_words;
mod plain;
mod proof;
mod pulled_plug;
mod readiness_worked;
mod real_terminal;
mod refusals;
mod round_worked;
mod said_truly;
mod sample_nursery;
mod science;
mod scribbled;
mod settings_and_shells;
mod support;
mod verdicts;
mod walk_and_sheets;
