//! Where a command reads from: a file, or what is piped in.

use std::fs::File;
use std::io::{BufRead, BufReader, ErrorKind};
use std::path::Path;

use super::run::{Exit, Run};

/// A file opened to be read, or what is piped in.
pub(crate) fn opened(run: &Run, path: &Path) -> Result<Box<dyn BufRead>, Exit> {
    if path.as_os_str() == "-" {
        return Ok(Box::new(BufReader::new(std::io::stdin())));
    }
    let shown = path.display();
    let file = File::open(path).map_err(|fault| {
        Exit::refused(match fault.kind() {
            ErrorKind::NotFound => run.wording.input_not_there(shown),
            _ => run.wording.file_other(path.display(), fault),
        })
    })?;
    Ok(Box::new(BufReader::new(file)))
}
