//! The words of the dashboard, a file for each screen.

mod names;
mod season;
mod seed;
mod walk;
