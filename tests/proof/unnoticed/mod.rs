//! What could go unnoticed: a file put back to an earlier state, a copied machine, a guard or table changed by another program,
//! a clock years off, a program that stands still while it holds a lock. A try fails where nothing was said.

mod clock;
mod copied;
mod put_back;
mod schema;
mod stands_still;
