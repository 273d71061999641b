//! What the round asks because of what is expected: sowings to make again, and looks that change what is done.

mod sow_again;
mod worth;

pub(super) use sow_again::{seeds_again, sow_again};
pub(super) use worth::worth_looking;
