//! The screen Season.

use crate::wording::messages::messages;

messages! {}
