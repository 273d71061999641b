//! The screen Seed.

use crate::wording::messages::messages;

messages! {}
