//! What is reckoned in the background: frames and writing never wait for it.

pub(crate) mod light;
pub(crate) mod year;

use std::sync::Arc;
use std::sync::atomic::AtomicU64;

/// Counts what was asked for: an older one is given up.
pub(crate) type Newest = Arc<AtomicU64>;
