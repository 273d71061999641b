//! The screen Beds.

use crate::wording::messages::messages;

messages! {}
