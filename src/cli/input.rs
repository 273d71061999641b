//! Where a command reads from: a file, or what is piped in.

use std::fs::{File, OpenOptions};
use std::io::{self, BufRead, BufReader, ErrorKind, IsTerminal, Read, Seek, SeekFrom};
use std::path::Path;
use std::sync::mpsc;
use std::time::Duration;

use super::answer::note;
use super::run::{Exit, Run};
use crate::base::text::in_ascii;

/// The most that is piped in, bytes: a million lines are a quarter of it (ours).
const MOST_PIPED_BYTES: u64 = 2 << 30;

/// A file opened to be read, or what is piped in. A pipe is read to its end first: nobody must wait for a pipe that stands
/// still, and what is read may hold the nursery's file.
pub(crate) fn opened(run: &Run, path: &Path) -> Result<Box<dyn BufRead>, Exit> {
    if path.as_os_str() == "-" {
        let input = std::io::stdin();
        if input.is_terminal() {
            run.note(&run.wording.input_typed());
            return to_its_end(run, path, &mut input.lock(), None);
        }
        return to_its_end(run, path, &mut input.lock(), Some(Waiting::begin(run, path)));
    }
    // A pipe that nobody writes to is not even opened.
    let waiting = Waiting::begin(run, path);
    let mut file = File::open(path).map_err(|fault| {
        Exit::refused(match fault.kind() {
            ErrorKind::NotFound => run.wording.input_not_there(path.display()),
            _ => run.wording.file_other(path.display(), run.wording.system_fault(&fault)),
        })
    })?;
    let about = file
        .metadata()
        .map_err(|fault| Exit::refused(run.wording.file_other(path.display(), run.wording.system_fault(&fault))))?;
    if about.is_file() {
        return Ok(Box::new(BufReader::new(file)));
    }
    if is_device(&about) && !file.is_terminal() {
        return Err(Exit::refused(run.wording.file_other(path.display(), run.wording.settings_no_file())));
    }
    to_its_end(run, path, &mut file, Some(waiting))
}

/// Says once what is waited for, where that is long.
struct Waiting {
    /// Dropped with this: then nothing is said any more.
    _over: mpsc::Sender<()>,
}

impl Waiting {
    fn begin(run: &Run, path: &Path) -> Waiting {
        /// How long nothing is said (ours: as long as a write waits for another).
        const PATIENCE: Duration = Duration::from_secs(5);
        let (_over, is_over) = mpsc::channel::<()>();
        let (sentence, json) = (run.wording.input_waits(path.display()), run.everywhere.json);
        let sentence = if run.around.ascii && run.around.notes_are_seen { in_ascii(&sentence) } else { sentence };
        std::thread::spawn(move || {
            if is_over.recv_timeout(PATIENCE) == Err(mpsc::RecvTimeoutError::Timeout) && !json {
                note(&sentence);
            }
        });
        Waiting { _over }
    }
}

/// Whether it is a device, which may have no end: nothing to read entries from.
fn is_device(about: &std::fs::Metadata) -> bool {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        about.file_type().is_char_device() || about.file_type().is_block_device()
    }
    #[cfg(not(unix))]
    {
        let _ = about;
        false
    }
}

/// Reads to the end: a little in memory, more in a file that nobody else sees.
fn to_its_end(run: &Run, path: &Path, from: &mut dyn Read, waiting: Option<Waiting>) -> Result<Box<dyn BufRead>, Exit> {
    const IN_MEMORY_BYTES: u64 = 4 << 20;
    let fault =
        |fault: io::Error| Exit::refused(run.wording.file_other(path.display(), run.wording.system_fault(&fault)));
    let mut first = Vec::new();
    from.take(1).read_to_end(&mut first).map_err(fault)?;
    // Once something comes it is not waited for any more.
    drop(waiting);
    from.take(IN_MEMORY_BYTES).read_to_end(&mut first).map_err(fault)?;
    if (first.len() as u64) < IN_MEMORY_BYTES {
        return Ok(Box::new(io::Cursor::new(first)));
    }
    let mut kept = unseen_file().map_err(fault)?;
    let copied = io::copy(&mut first.as_slice().chain(from.take(MOST_PIPED_BYTES)), &mut kept).map_err(fault)?;
    if copied >= MOST_PIPED_BYTES {
        return Err(Exit::refused(run.wording.sheet_too_long(format!("{} GB", MOST_PIPED_BYTES >> 30))));
    }
    kept.seek(SeekFrom::Start(0)).map_err(fault)?;
    Ok(Box::new(BufReader::new(kept)))
}

/// A file in the system's folder for such, of this person alone; its name is taken away at once where that can be.
fn unseen_file() -> io::Result<File> {
    let name = format!("outplant-{}-{:x}", std::process::id(), std::time::Instant::now().elapsed().as_nanos());
    let path = std::env::temp_dir().join(name);
    let mut options = OpenOptions::new();
    options.read(true).write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let file = options.open(&path)?;
    let _ = std::fs::remove_file(&path);
    Ok(file)
}
