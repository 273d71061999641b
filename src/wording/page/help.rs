//! The help of commands and options.

use crate::wording::{Wording, theme};

impl Wording {
    /// The help of a command or option by its path (`why_tray`), where it has one.
    pub fn help(&self, path: &str) -> Option<String> {
        self.said(&format!("{}{path}", theme::HELP), &[])
    }
}
