//! What a terminal that can do no more gets: the round and the commands as plain lines.

mod round;
mod terminal;
