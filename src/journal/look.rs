//! How far a look through a file is, and who hears of it.

use std::ops::ControlFlow;
use std::time::Duration;

/// How far a look through a file is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LookStep {
    /// SQLite's own check has run for so long; how far it is it does not say.
    Sqlite(Duration),
    /// So many entries are proved.
    Entries(u64),
    /// Of the bytes of the file, or of its log, so many are looked through.
    Bytes {
        /// So many are.
        done: u64,
        /// So many there are.
        all: u64,
    },
}

/// Hears how far a look through a file is; a break stops it.
pub type LookProgress<'t> = dyn FnMut(LookStep) -> ControlFlow<()> + 't;

/// Where nobody asks how far it is.
pub fn untold(_: LookStep) -> ControlFlow<()> {
    ControlFlow::Continue(())
}
