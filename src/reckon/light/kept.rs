//! What was reckoned is kept as long as nothing it rests on changes: the same crowns, positions and sun give the same light.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::{Mutex, PoisonError};

/// Most answers kept; when there are more all are let go. Ours.
const MOST_KEPT: usize = 4_096;

/// Answers by what they rest on.
pub(super) struct Kept<T>(Mutex<Option<HashMap<u64, T>>>);

impl<T: Clone> Kept<T> {
    pub(super) const fn nothing() -> Kept<T> {
        Kept(Mutex::new(None))
    }

    /// The answer kept for what it rests on, else a new one.
    pub(super) fn or(&self, rests_on: &[u64], reckon: impl FnOnce() -> T) -> T {
        let mut hasher = DefaultHasher::new();
        rests_on.hash(&mut hasher);
        let key = hasher.finish();
        let all = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = all().as_ref().and_then(|all| all.get(&key)) {
            return kept.clone();
        }
        // Others go on meanwhile.
        let made = reckon();
        let mut all = all();
        let all = all.get_or_insert_default();
        if all.len() >= MOST_KEPT {
            all.clear();
        }
        all.insert(key, made.clone());
        made
    }
}
