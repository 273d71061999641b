//! A bed's readiness for each species of its plan.
