//! The full screen: seven screens over the books. A key becomes a message, `update` turns it into effects, the clerk at
//! the desk answers on a thread of its own, and `view` draws what the model holds. Nothing here counts: figures come
//! from the Picture, sentences from `wording`.

mod act;
mod aside;
mod clerk;
mod context;
mod form;
mod frame;
mod keys;
mod layer;
mod look;
mod message;
mod model;
mod parts;
mod plain;
mod screens;
mod tap;
mod terminal;
mod update;

#[cfg(test)]
mod tests;

pub use terminal::Opening;

use std::io::{self, IsTerminal};

/// Opens the dashboard and stays until it is left; as questions and answers where that is wanted.
///
/// # Errors
/// The terminal cannot be taken or drawn on.
pub fn open(opening: Opening) -> io::Result<()> {
    if !opening.plain {
        return terminal::open(opening);
    }
    let columns = io::stdout().is_terminal().then(terminal::columns).flatten();
    plain::talk(opening, io::stdin().lock(), io::stdout().lock(), columns)
}
