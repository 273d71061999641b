//! What shells and `man` read: `completions` and `man`.

use clap_complete::generate;
use clap_mangen::Man as Page;
use std::path::Path;

use crate::cli::answer::{Ending, note};
use crate::cli::args::{Cli, Completions, Man};
use crate::cli::run::{Exit, Run};
use crate::wording::Wording;

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
        return run.answer(&with_headings(&String::from_utf8_lossy(&page), &run.wording));
    };
    run.made_in_a_file(folder)?;
    let made = std::fs::create_dir_all(folder).and_then(|()| clap_mangen::generate_to(definition, folder));
    let made = made.and_then(|()| name_parts(folder, &run.wording));
    made.map_err(|fault| not_written(run, folder, &fault))?;
    note(&run.wording.man_written(folder.display()));
    Ok(Ending::Done)
}

/// The pages in a folder, their parts called as the person's language calls them.
fn name_parts(folder: &Path, wording: &Wording) -> std::io::Result<()> {
    for page in std::fs::read_dir(folder)? {
        let path = page?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if name.starts_with(NAME) && name.ends_with(".1") {
            let text = std::fs::read_to_string(&path)?;
            std::fs::write(&path, with_headings(&text, wording))?;
        }
    }
    Ok(())
}

/// A page with the headings of its parts in words of the person's language.
fn with_headings(page: &str, wording: &Wording) -> String {
    let commands = format!(".SH {}", wording.help_commands());
    let headings = [
        (".SH NAME", wording.man_part_name()),
        (".SH SYNOPSIS", wording.man_part_synopsis()),
        (".SH DESCRIPTION", wording.man_part_description()),
        (".SH OPTIONS", wording.man_part_options()),
        (commands.as_str(), wording.man_part_commands()),
        (".SH EXTRA", wording.man_part_examples()),
        (".SH VERSION", wording.man_part_version()),
    ];
    let said = |line: &str| {
        let heading = headings.iter().find(|(of_page, _)| *of_page == line);
        heading.map_or(line.to_string(), |(_, said)| format!(".SH {said}"))
    };
    page.lines().map(said).fold(String::with_capacity(page.len()), |all, line| all + &line + "\n")
}

fn not_written(run: &Run, folder: &Path, fault: &std::io::Error) -> Exit {
    let line = run.wording.file_other(folder.display(), run.wording.system_fault(fault));
    Exit { ending: Ending::File, lines: vec![line] }
}
