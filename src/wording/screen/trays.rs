//! The screen Trays.

use crate::wording::messages::messages;

messages! {}
