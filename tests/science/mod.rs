//! The formulas of `science` against handbooks, other libraries, printed examples and simulated sowings.

mod calc;
mod curves;
mod handbook;
mod matching;
mod reference;
mod simulated;
mod storage;
mod worked;
