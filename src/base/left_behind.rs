//! Files that a kill or a power cut left unfinished.

use std::fs;
use std::path::Path;
use std::time::Duration;

/// How long ago something unfinished was last written that nobody goes on with. Ours: no copy takes so long.
pub(crate) const LEFT_BEHIND: Duration = Duration::from_secs(60 * 60);

/// Takes away what was left unfinished of files of a name: `.NAME.`, anything, and one of the endings. What cannot be
/// taken away stays.
pub(crate) fn sweep(folder: &Path, name: &str, endings: &[&str]) {
    for there in fs::read_dir(folder).into_iter().flatten().flatten() {
        let called = there.file_name().to_string_lossy().into_owned();
        let rest = called.strip_prefix(&format!(".{name}."));
        let is_part = rest.is_some_and(|rest| endings.iter().any(|ending| rest.ends_with(ending)));
        let age = || there.metadata().ok()?.modified().ok()?.elapsed().ok();
        if is_part && age().is_some_and(|age| age > LEFT_BEHIND) {
            let _ = fs::remove_file(there.path());
        }
    }
}
