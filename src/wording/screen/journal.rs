//! The screen Journal.

use crate::wording::messages::messages;

messages! {}
