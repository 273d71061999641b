//! Words that only say that something was done: "finished planting", "terminamos de sembrar", "se me murieron".

use std::collections::HashMap;
use std::sync::LazyLock;

use super::lexicon::{lexicon, list};
use super::words::Word;

/// Words between "se" and its verb that say to whom it happened.
const TO_WHOM: [&str; 4] = ["me", "nos", "le", "les"];

/// Infinitives, and the same verb as it is said of what was done.
fn as_done() -> &'static HashMap<String, String> {
    static READ: LazyLock<HashMap<String, String>> =
        LazyLock::new(|| list("helpers", "infinitives").into_iter().zip(list("helpers", "as_done")).collect());
    &READ
}

/// The words without those that only help another verb, which is said as done.
pub(super) fn without_helpers(words: Vec<Word>) -> Vec<Word> {
    let mut kept: Vec<Word> = Vec::with_capacity(words.len());
    let mut at = 0;
    while let Some(word) = words.get(at) {
        let next = |far: usize| words.get(at + far).map_or("", |word| word.folded.as_str());
        let two = format!("{} {}", word.folded, next(1));
        let is_led = |far: usize| as_done().get(next(far)).map(|done| (far, done));
        let done = [(2, two.as_str()), (1, word.folded.as_str())]
            .into_iter()
            .filter(|(_, helper)| lexicon().is(helper, "helpers.before_infinitive"))
            .find_map(|(far, _)| is_led(far));
        if let Some((far, done)) = done {
            let verb = words.get(at + far).is_some_and(|word| word.apart);
            kept.push(Word::new(done, verb));
            at += far + 1;
            continue;
        }
        let is_helped = next(1).ends_with("ing") && !lexicon().roles(next(1)).is_empty();
        let before = words.get(at.wrapping_sub(1)).map_or("", |word| word.folded.as_str());
        let to_whom = before == "se" && TO_WHOM.contains(&word.folded.as_str());
        // "se me fueron 3": they are lost.
        if to_whom && matches!(next(1), "fue" | "fueron") {
            kept.push(Word::new("murieron", true));
            at += 2;
            continue;
        }
        if !(is_helped && lexicon().is(&word.folded, "helpers.before_ing") || to_whom) {
            kept.push(word.clone());
        }
        at += 1;
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::super::words::words;
    use super::*;

    #[test]
    fn what_only_helps_a_verb_is_left_out_and_work_to_be_done_stays() {
        let said = |line: &str| {
            let kept = without_helpers(words(line));
            kept.iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ")
        };
        for (line, kept) in [
            ("finished planting 12 k1 in Upper", "planting 12 k1 in Upper"),
            ("terminamos de sembrar 12 k1 en Upper", "sembramos 12 k1 en Upper"),
            ("acabo de regar k1", "regamos k1"),
            ("se me murieron 3 k1", "se murieron 3 k1"),
            ("se nos fueron 3 k1", "se murieron 3 k1"),
            ("sembrar 20 k1 en Upper", "sembrar 20 k1 en Upper"),
            ("ants finished 3 k1", "ants finished 3 k1"),
        ] {
            assert_eq!(said(line), kept);
        }
    }
}
