//! Worlds by hand, one for each rule of a verdict, as a forester would tell them.

mod at_the_number;
mod back_again;
mod bare_roots;
mod benches;
mod eight_days;
mod ground;
mod holds;
mod hurt;
mod kinds;
mod light;
mod pairs;
mod pests;
mod rules;
mod said;
mod seed;
mod sun_and_stakes;
