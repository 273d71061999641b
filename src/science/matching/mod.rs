//! Which plants go to which bed in which week: the best plan, and the proof that none is better.
//!
//! [`Instance`] is what is asked, [`check`] says without any solver whether a plan can be carried out and what it is
//! worth, [`Solver`] is what every solver is. An instance in plain whole numbers is a [`Stated`].

mod check;
mod instance;
mod own;
mod solver;
mod stated;

pub use check::{Broken, Shipment, check};
pub use instance::{Group, Instance, MOST_PLANTS, MOST_VALUE, MOST_WEEKS, Offer, Opening, Share, ShareOf, Unfit};
pub use own::Own;
pub use solver::{Progress, Solved, Solver, Watch};
pub use stated::{Stated, StatedGroup, StatedOpening, Values};
