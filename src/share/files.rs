//! A file that is there whole or not at all.

use std::fs::{self, File, OpenOptions};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

use crate::base::left_behind::sweep;

/// What to do where a file of that name stands already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Existing {
    /// Leave it and refuse.
    Refuse,
    /// Put the new one in its place.
    Replace,
}

/// Why a file was not written.
#[derive(Debug)]
pub enum FileFault {
    /// One stands there already.
    Exists(PathBuf),
    /// The path ends with no name of a file, or with that of a folder.
    NoFileName(PathBuf),
    /// The folder is not there.
    NoFolder(PathBuf),
    /// The disk or the writer said no; what was begun is taken away again.
    Io {
        /// The file that was to be written.
        path: PathBuf,
        /// What was said.
        error: io::Error,
    },
}

/// Writes a file beside the place where it is to stand, makes sure it is on the disk, and only then gives it its name.
/// Only the owner may read it (mode 0600).
pub fn write_whole(
    path: &Path,
    existing: Existing,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> Result<(), FileFault> {
    let target = place_of(path, existing)?;
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder.to_path_buf(),
        Some(_) | None => PathBuf::from("."),
    };
    if !folder.is_dir() {
        return Err(FileFault::NoFolder(folder));
    }
    let failed = |error: io::Error| FileFault::Io { path: path.to_path_buf(), error };
    let (unfinished, file) = Unfinished::begin(&folder, &target).map_err(failed)?;
    let mut out = BufWriter::new(file);
    write(&mut out).map_err(failed)?;
    let file = out.into_inner().map_err(|error| failed(error.into_error()))?;
    file.sync_all().map_err(failed)?;
    drop(file);
    match unfinished.name(&target, existing) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => return Err(FileFault::Exists(target)),
        named => named.map_err(failed)?,
    }
    // Its first name goes before the folder is settled, so that a power cut leaves no second one.
    drop(unfinished);
    settle_folder(&folder).map_err(failed)
}

/// Where the file is to stand. A link is followed, so that replacing keeps it a link.
fn place_of(path: &Path, existing: Existing) -> Result<PathBuf, FileFault> {
    if path.file_name().is_none() {
        return Err(FileFault::NoFileName(path.to_path_buf()));
    }
    match (fs::symlink_metadata(path), existing) {
        (Err(_), _) => Ok(path.to_path_buf()),
        (Ok(there), _) if there.is_dir() => Err(FileFault::NoFileName(path.to_path_buf())),
        (Ok(_), Existing::Refuse) => Err(FileFault::Exists(path.to_path_buf())),
        (Ok(_), Existing::Replace) => Ok(fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf())),
    }
}

/// A file without its name; taken away when it is dropped before it gets one.
struct Unfinished(PathBuf);

impl Unfinished {
    fn begin(folder: &Path, target: &Path) -> io::Result<(Unfinished, File)> {
        const TRIES: u32 = 100;
        let name = target.file_name().unwrap_or_default().to_string_lossy();
        // A long name would grow too long for the folder with what is put to it (255 bytes on most disks).
        let name: String = name.chars().take(40).collect();
        sweep(folder, &name, &[".part"]);
        let mut last = io::Error::from(io::ErrorKind::AlreadyExists);
        for turn in 0..TRIES {
            let path = folder.join(format!(".{name}.{}-{turn}.part", std::process::id()));
            match owner_only().open(&path) {
                Ok(file) => return Ok((Unfinished(path), file)),
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => last = error,
                Err(error) => return Err(error),
            }
        }
        Err(last)
    }

    fn name(&self, target: &Path, existing: Existing) -> io::Result<()> {
        if existing == Existing::Refuse {
            // A second name for the file is refused by the disk itself where one stands; a renaming would not be.
            match fs::hard_link(&self.0, target) {
                Ok(()) => return Ok(()),
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => return Err(error),
                // Sticks and telephones often have disks without second names.
                Err(_) if fs::symlink_metadata(target).is_ok() => return Err(io::ErrorKind::AlreadyExists.into()),
                Err(_) => {}
            }
        }
        fs::rename(&self.0, target)
    }
}

impl Drop for Unfinished {
    fn drop(&mut self) {
        // After a renaming there is nothing left to take away.
        let _ = fs::remove_file(&self.0);
    }
}

fn owner_only() -> OpenOptions {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options
}

/// Makes sure that the new name is on the disk, where folders can be asked for that.
fn settle_folder(folder: &Path) -> io::Result<()> {
    if !cfg!(unix) {
        return Ok(());
    }
    match File::open(folder).and_then(|folder| folder.sync_all()) {
        // A folder that may be written but not read, or a disk that knows no such order: the file itself is safe.
        Err(error)
            if matches!(
                error.kind(),
                io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported | io::ErrorKind::PermissionDenied
            ) =>
        {
            Ok(())
        }
        settled => settled,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::left_behind::LEFT_BEHIND;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> =
            fs::read_dir(folder).unwrap().map(|there| there.unwrap().file_name().to_string_lossy().into()).collect();
        names.sort();
        names
    }

    #[test]
    fn what_was_left_unfinished_long_ago_is_taken_away_and_what_is_being_written_stays() {
        let folder = tempfile::tempdir().unwrap();
        let (old, new) = (folder.path().join(".book.jsonl.7-0.part"), folder.path().join(".book.jsonl.8-0.part"));
        for path in [&old, &new] {
            fs::write(path, "half").unwrap();
        }
        let long_ago = std::time::SystemTime::now() - 2 * LEFT_BEHIND;
        File::options().write(true).open(&old).unwrap().set_modified(long_ago).unwrap();
        write_whole(&folder.path().join("book.jsonl"), Existing::Refuse, |out| out.write_all(b"whole")).unwrap();
        assert_eq!((old.exists(), new.exists()), (false, true));
    }

    #[test]
    fn a_file_is_written_whole_and_not_over_another_unless_told() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book.jsonl");
        write_whole(&path, Existing::Refuse, |out| out.write_all(b"one")).unwrap();
        let refused = write_whole(&path, Existing::Refuse, |out| out.write_all(b"two"));
        assert!(matches!(refused, Err(FileFault::Exists(_))));
        assert_eq!(fs::read(&path).unwrap(), b"one");
        write_whole(&path, Existing::Replace, |out| out.write_all(b"two")).unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"two");
        assert_eq!(names(folder.path()), ["book.jsonl"]);
    }

    #[test]
    fn a_file_that_appears_meanwhile_is_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book.jsonl");
        let refused = write_whole(&path, Existing::Refuse, |out| {
            fs::write(&path, b"theirs")?;
            out.write_all(b"ours")
        });
        assert!(matches!(refused, Err(FileFault::Exists(_))));
        assert_eq!(fs::read(&path).unwrap(), b"theirs");
    }

    #[test]
    fn a_writer_that_fails_leaves_the_old_file_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book.jsonl");
        fs::write(&path, b"old").unwrap();
        let failed = write_whole(&path, Existing::Replace, |out| {
            out.write_all(b"half")?;
            Err(io::ErrorKind::StorageFull.into())
        });
        assert!(matches!(failed, Err(FileFault::Io { error, .. }) if error.kind() == io::ErrorKind::StorageFull));
        assert_eq!((fs::read(&path).unwrap(), names(folder.path())), (b"old".to_vec(), vec!["book.jsonl".to_string()]));
    }

    #[test]
    fn a_place_where_no_file_can_stand_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let nothing = |_: &mut dyn Write| Ok(());
        let write = |path: &Path| write_whole(path, Existing::Refuse, nothing);
        assert!(matches!(write(folder.path()), Err(FileFault::NoFileName(_))));
        assert!(matches!(write(&folder.path().join("no/book")), Err(FileFault::NoFolder(_))));
        assert!(matches!(write(Path::new("")), Err(FileFault::NoFileName(_))));
    }

    #[cfg(unix)]
    #[test]
    fn only_the_owner_may_read_it_and_a_link_stays_a_link() {
        use std::os::unix::fs::{PermissionsExt, symlink};
        let folder = tempfile::tempdir().unwrap();
        let (path, link) = (folder.path().join("book"), folder.path().join("link"));
        write_whole(&path, Existing::Refuse, |out| out.write_all(b"one")).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
        symlink(&path, &link).unwrap();
        write_whole(&link, Existing::Replace, |out| out.write_all(b"two")).unwrap();
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
        assert_eq!(fs::read(&path).unwrap(), b"two");
    }
}
