//! What the program finds on a machine and gives it: surroundings, the settings file, places, completions and pages for `man`.

pub(super) mod paths;
pub(super) mod settings_faults;
pub(super) mod shells;
pub(super) mod surroundings;

/// A file that grows past what the system allows is a fault with a sentence, and no end of the program: what was begun is
/// taken away again.
pub(super) fn outlive_full_files() {
    #[cfg(unix)]
    {
        let _ = signal_hook::flag::register(signal_hook::consts::SIGXFSZ, std::sync::Arc::default());
    }
}
