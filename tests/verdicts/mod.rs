//! Verdicts as a forester would sign them, one file for each part of the trade.

mod seed;
