//! The screen Going out.

use crate::wording::messages::messages;

messages! {}
