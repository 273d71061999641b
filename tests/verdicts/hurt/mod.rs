//! What hurts people or plants.

mod hurt_and_burnt;
mod safety;
