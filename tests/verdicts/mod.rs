//! Worlds by hand, one for each rule of a verdict, as a forester would tell them.

mod eight_days;
mod kinds;
mod pairs;
mod rules;
mod safety;
mod seed;
mod soil;
