//! What is kept beside the entries, so that a program begins without reading all of them. It follows from the entries
//! alone and can be thrown away at any time.

mod checkpoint;
pub(super) mod lookup;

pub use checkpoint::Checkpoint;
pub(crate) use checkpoint::KeptStory;
pub use lookup::{Sort, Sought};
