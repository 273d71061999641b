//! outplant: see README.md.

use std::process::ExitCode;

fn main() -> ExitCode {
    let around = outplant::cli::Surroundings::of_process();
    let ending = outplant::cli::run(std::env::args_os().collect(), around);
    ExitCode::from(ending as u8)
}
