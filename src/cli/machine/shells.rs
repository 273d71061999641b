//! What shells and `man` read: `completions` and `man`.

use clap_complete::generate;
use clap_mangen::Man as Page;

use crate::cli::answer::{Ending, note};
use crate::cli::args::{Cli, Completions, Man};
use crate::cli::run::{Exit, Run};

/// The name of the program.
const NAME: &str = "outplant";

/// Prints a script by which a shell completes commands and options.
pub(crate) fn completions(run: &Run, arguments: &Completions) -> Result<Ending, Exit> {
    let mut script = Vec::new();
    generate(arguments.shell, &mut Cli::definition(&run.wording), NAME, &mut script);
    run.answer(&String::from_utf8_lossy(&script))
}

/// Prints the page of the program, or puts the page of every command into a folder.
pub(crate) fn man(run: &Run, arguments: &Man) -> Result<Ending, Exit> {
    let definition = Cli::definition(&run.wording);
    let Some(folder) = &arguments.to else {
        let mut page = Vec::new();
        let printed = Page::new(definition).render(&mut page);
        return printed
            .map_err(|fault| not_written(run, &fault))
            .and_then(|()| run.answer(&String::from_utf8_lossy(&page)));
    };
    std::fs::create_dir_all(folder).map_err(|fault| not_written(run, &fault))?;
    clap_mangen::generate_to(definition, folder).map_err(|fault| not_written(run, &fault))?;
    note(&run.wording.man_written(folder.display()));
    Ok(Ending::Done)
}

fn not_written(run: &Run, fault: &std::io::Error) -> Exit {
    Exit { ending: Ending::File, lines: vec![run.wording.system_fault(fault)] }
}
