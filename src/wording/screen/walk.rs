//! The screen Walk.

use crate::wording::messages::messages;

messages! {}
