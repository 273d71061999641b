//! What the program finds on a machine and gives it: surroundings, the settings file, places, completions and pages for `man`.

pub(super) mod paths;
pub(super) mod settings_faults;
pub(super) mod shells;
pub(super) mod surroundings;
