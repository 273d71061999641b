//! outplant: see README.md.

use std::process::ExitCode;

use outplant::cli::{Ending, OpenDashboard, Outcome, Surroundings, run};
use outplant::dashboard::{Opening, open};

fn main() -> ExitCode {
    let ending = match run(std::env::args_os().collect(), Surroundings::of_process()) {
        Outcome::Ended(ending) => ending,
        Outcome::Open(open_dashboard) => open(opening(*open_dashboard)).map_or(Ending::File, |()| Ending::Done),
    };
    ExitCode::from(ending as u8)
}

fn opening(open_dashboard: OpenDashboard) -> Opening {
    let OpenDashboard { desk, wording, who, around, on, forecast_basis, plain, settings_faults } = open_dashboard;
    let (shelf, colour, ascii) = (around.folders.settings.clone(), around.colour, around.ascii);
    let touched = around.touched;
    Opening {
        desk,
        wording,
        who,
        shelf,
        on,
        forecast_basis,
        colour,
        ascii,
        plain,
        touched,
        settings_faults,
        clock: Box::new(move || around.now().ok()),
    }
}
