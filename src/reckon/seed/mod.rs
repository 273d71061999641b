//! Seed and what comes of it: how long a lot lives, what its tests say, what was sown from it, and what may be expected
//! to come up. The round and the screens ask here, so that both say the same.

mod emergence;
mod life;
mod share_up;
mod sown;
mod state;
mod test;
#[cfg(test)]
mod tests;

pub use emergence::emerged;
pub(crate) use emergence::{expected_seedlings, own_sowings};
pub(crate) use life::{LIFE_NOTICE_DAYS, RECALCITRANT_DAYS, days_kept, dies_dried, longest_days};
pub use life::{SeedLife, life};
pub(crate) use share_up::share_up;
pub(crate) use sown::{SownFrom, came_up, sown_from};
pub use state::LotState;
pub(crate) use state::{is_held, lot_state, lot_to_sow, lots_to_sow};
pub use test::germinated;
pub(crate) use test::test_due_from;
