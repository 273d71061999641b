//! What shells and `man` read: `completions` and `man`.

use clap_complete::generate;
use clap_mangen::Man as Page;
use std::path::Path;

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
        // A list of bytes takes all that is written.
        let _ = Page::new(definition).render(&mut page);
        return run.answer(&String::from_utf8_lossy(&page));
    };
    let made = std::fs::create_dir_all(folder).and_then(|()| clap_mangen::generate_to(definition, folder));
    made.map_err(|fault| not_written(run, folder, &fault))?;
    note(&run.wording.man_written(folder.display()));
    Ok(Ending::Done)
}

fn not_written(run: &Run, folder: &Path, fault: &std::io::Error) -> Exit {
    let line = run.wording.file_other(folder.display(), run.wording.system_fault(fault));
    Exit { ending: Ending::File, lines: vec![line] }
}
