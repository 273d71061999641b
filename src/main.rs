//! outplant: see README.md.

use std::process::ExitCode;

use outplant::cli::{Ending, Ran, Surroundings, ToOpen, run};
use outplant::dashboard::{Opening, open};

fn main() -> ExitCode {
    let ending = match run(std::env::args_os().collect(), Surroundings::of_process()) {
        Ran::Ended(ending) => ending,
        Ran::Open(to_open) => open(opening(*to_open)).map_or(Ending::File, |()| Ending::Done),
    };
    ExitCode::from(ending as u8)
}

fn opening(to_open: ToOpen) -> Opening {
    let ToOpen { desk, wording, who, around, on, leads, plain } = to_open;
    let (shelf, colour, ascii) = (around.folders.settings.clone(), around.colour, around.ascii);
    Opening { desk, wording, who, shelf, on, leads, colour, ascii, plain, clock: Box::new(move || around.now().ok()) }
}
