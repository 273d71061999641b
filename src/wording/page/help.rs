//! The help of commands and options.

use crate::wording::{Wording, said, theme};

impl Wording {
    /// The help of a command or option by its path (`why_tray`), where it has one.
    pub fn help(&self, path: &str) -> Option<String> {
        said(&self.bundle, &format!("{}{path}", theme::HELP), &[])
    }
}
