//! Files and folders: private modes, and whole files or none.

use std::fs::{self, File, OpenOptions};
use std::hash::{BuildHasher, RandomState};
use std::io::Write;
use std::path::{Path, PathBuf};

use super::error::JournalError;
use crate::nursery::envelope::Hash;

/// Makes a folder, and those above it that are missing, for this person only (0700).
pub(super) fn make_folder(folder: &Path) -> Result<(), JournalError> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|error| JournalError::io(folder, &error))
}

/// Makes a new empty file for this person only (0600); one that is there is refused, also where it is a link.
pub(super) fn make_file(path: &Path) -> Result<File, JournalError> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path).map_err(|error| match error.kind() {
        std::io::ErrorKind::AlreadyExists => JournalError::AlreadyThere(path.to_path_buf()),
        _ => JournalError::io(path, &error),
    })
}

/// The folder a file lies in.
pub(super) fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// A path beside another: its name with something before and behind.
pub(super) fn beside(path: &Path, before: &str, behind: &str) -> PathBuf {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    folder_of(path).join(format!("{before}{name}{behind}"))
}

/// Waits until the disk has what a file holds.
pub(super) fn sync_file(path: &Path) -> Result<(), JournalError> {
    File::open(path).and_then(|file| file.sync_all()).map_err(|error| JournalError::io(path, &error))
}

/// Waits until the disk has the names in a folder.
pub(super) fn sync_folder(folder: &Path) -> Result<(), JournalError> {
    #[cfg(unix)]
    return sync_file(folder);
    #[cfg(not(unix))]
    return folder.exists().then_some(()).ok_or_else(|| JournalError::NotThere(folder.to_path_buf()));
}

/// Gives a finished file its name; a file that has the name is never replaced.
pub(super) fn name_finished(finished: &Path, path: &Path) -> Result<(), JournalError> {
    sync_file(finished)?;
    match fs::hard_link(finished, path) {
        Ok(()) => fs::remove_file(finished).map_err(|error| JournalError::io(finished, &error))?,
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
            return Err(JournalError::AlreadyThere(path.to_path_buf()));
        }
        // Some file systems (FAT, some network shares) know no second name for a file.
        Err(_) if fs::symlink_metadata(path).is_ok() => return Err(JournalError::AlreadyThere(path.to_path_buf())),
        Err(_) => fs::rename(finished, path).map_err(|error| JournalError::io(path, &error))?,
    }
    sync_folder(folder_of(path))
}

/// Replaces a small file wholly or not at all.
pub(super) fn replace_file(path: &Path, content: &[u8]) -> Result<(), JournalError> {
    let fresh = beside(path, ".", &format!(".{}.new", random_word()));
    let written = make_file(&fresh).and_then(|mut file| {
        file.write_all(content)
            .and_then(|()| file.sync_all())
            .and_then(|()| fs::rename(&fresh, path))
            .map_err(|error| JournalError::io(path, &error))
    });
    if written.is_err() {
        // What could not be finished is not left lying about; that it cannot be removed changes nothing.
        let _ = fs::remove_file(&fresh);
    }
    written.and_then(|()| sync_folder(folder_of(path)))
}

/// Whether the owner took away the right to write to a file or folder. Also respected for the system's administrator,
/// whom the system itself would not stop.
pub(super) fn marked_read_only(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|about| about.permissions().readonly())
}

/// Whether a folder's disk has no room for what SQLite puts beside a file, 32 KiB at the least.
pub(super) fn has_no_room(folder: &Path) -> bool {
    let path = folder.join(format!(".outplant-room-{}.part", random_word()));
    let tried = fs::write(&path, [0; 1 << 15]);
    let _ = fs::remove_file(&path);
    tried
        .is_err_and(|error| matches!(error.kind(), std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded))
}

/// The length of a file, bytes; nothing where it is not there.
pub(super) fn length(path: &Path) -> u64 {
    fs::metadata(path).map_or(0, |about| about.len())
}

/// What tells this very file from a copy of it, where the system has such a mark.
pub(super) fn file_mark(path: &Path) -> Option<String> {
    #[cfg(unix)]
    return fs::metadata(path).ok().map(|about| {
        use std::os::unix::fs::MetadataExt;
        format!("{}:{}", about.dev(), about.ino())
    });
    #[cfg(not(unix))]
    return fs::metadata(path).ok().and(None);
}

/// What tells this machine from another, where the system has such a mark; not the mark itself, which says too much.
pub(super) fn machine_mark() -> Option<String> {
    const WHERE: [&str; 2] = ["/etc/machine-id", "/var/lib/dbus/machine-id"];
    let id = WHERE.iter().find_map(|path| fs::read_to_string(path).ok().filter(|text| !text.trim().is_empty()))?;
    Some(Hash::of_text(&format!("outplant {}", id.trim())).to_string().chars().take(16).collect())
}

/// 64 bits nobody can foretell: the standard library seeds each of its hashers from the system's randomness.
pub(super) fn random_bits() -> u64 {
    RandomState::new().hash_one(std::process::id())
}

/// Eight lower-case letters and digits, a letter first.
pub(super) fn random_word() -> String {
    const SIGNS: &[u8; 36] = b"abcdefghijklmnopqrstuvwxyz0123456789";
    const LENGTH: usize = 8;
    let mut bits = random_bits();
    let mut word = String::with_capacity(LENGTH);
    for place in 0..LENGTH {
        let choice = if place == 0 { 26 } else { SIGNS.len() as u64 };
        word.push(char::from(SIGNS[(bits % choice) as usize]));
        bits /= choice;
    }
    word
}
