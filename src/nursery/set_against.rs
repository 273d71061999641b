//! What people set against animals that eat plants, and that is no spray: traps, a cat, collars, wire, nets, somebody who watches. Words
//! stand in `set_against.toml`, in both languages. A text is one of these only where every word of it is known: bait and poison are not.

use std::sync::LazyLock;

use serde::Deserialize;

use super::pest::comes_along;
use crate::base::text::folded;

/// A figure of so many digits at the end of a name is the strength of a product ("guard 480"), and no number of traps. Ours.
const STRENGTH_DIGITS: usize = 3;

#[derive(Deserialize, Default)]
struct Lists {
    keeps_out: Vec<String>,
    watches: Vec<String>,
    hunts: Vec<String>,
    rodents: Vec<String>,
    frights: Vec<String>,
    against: Vec<String>,
    fence: Vec<String>,
    beside: Vec<String>,
}

impl Lists {
    /// What is set against animals, of every sort.
    fn named(&self) -> [&Vec<String>; 6] {
        [&self.keeps_out, &self.watches, &self.hunts, &self.frights, &self.against, &self.fence]
    }
}

fn lists() -> &'static Lists {
    static READ: LazyLock<Lists> =
        LazyLock::new(|| toml::from_str(include_str!("set_against.toml")).unwrap_or_default());
    &READ
}

fn is_in(list: &[String], word: &str) -> bool {
    list.iter().any(|listed| listed.strip_suffix('*').map_or(word == listed, |start| word.starts_with(start)))
}

fn says(text: &str, named: impl Fn(&str) -> bool) -> bool {
    let folded = folded(text);
    let lists = lists();
    let is_figure = |word: &str| word.chars().all(|letter| letter.is_ascii_digit());
    let known =
        |word: &str| is_figure(word) || lists.named().into_iter().chain([&lists.beside]).any(|list| is_in(list, word));
    let words = || folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let strength = words().next_back().is_some_and(|word| is_figure(word) && word.len() >= STRENGTH_DIGITS);
    words().any(&named) && words().all(known) && !strength
}

/// Whether a text names what is set against animals and is no spray, and nothing else: it has no label, and nobody waits for it.
pub(crate) fn sets_against(text: &str) -> bool {
    says(text, |word| lists().named().into_iter().any(|list| is_in(list, word)))
}

/// Whether it is against a pest that a fence does not keep out, as rats, ants and birds: a cat hunts rats and mice alone, and a watchman
/// stops no snail.
pub(crate) fn keeps_eaters_off(text: &str, pest: &str) -> bool {
    let lists = lists();
    let pest = folded(pest);
    let is_small = comes_along(&pest);
    let is_hunted = pest.split(|letter: char| !letter.is_alphanumeric()).any(|word| is_in(&lists.rodents, word));
    says(text, |word| {
        let on_all = is_in(&lists.keeps_out, word) || is_in(&lists.against, word);
        let on_large = is_in(&lists.watches, word) || is_in(&lists.frights, word);
        on_all || is_hunted && is_in(&lists.hunts, word) || !is_small && on_large
    })
}

/// Whether it keeps large animals out.
pub(crate) fn keeps_animals_out(text: &str) -> bool {
    let lists = lists();
    says(text, |word| [&lists.keeps_out, &lists.watches, &lists.fence].into_iter().any(|list| is_in(list, word)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn traps_cats_and_guards_are_no_sprays_and_poison_is_none_of_them_in_both_languages() {
        for text in [
            "traps",
            "20 rat traps",
            "Cat",
            "collars",
            "wire guards",
            "tins",
            "nets",
            "a watchman at night",
            "goats tied up",
            "fence",
            "beer traps",
            "trampas",
            "gatos",
            "mallas de alambre",
            "cabras amarradas",
            "vigilante de noche",
            "guards",
            "guard",
            "20 traps",
            "traps 20",
        ] {
            assert!(sets_against(text), "{text}");
        }
        for text in [
            "bait",
            "poison bait",
            "traps with poison",
            "rat poison",
            "cebo",
            "veneno",
            "trampas con veneno",
            "glue",
            "",
            "wire and glyphosate",
            "rats",
            "neem",
            "sprayed the collars",
            "copper bands and captan",
            "traps, something from town",
            "Guardian",
            "guard 480",
            "a guardian",
            "Vigil",
            "Wiretox",
        ] {
            assert!(!sets_against(text), "{text}");
        }
        assert!(keeps_animals_out("goats tied up") && keeps_animals_out("wire guards") && keeps_animals_out("malla"));
        assert!(!keeps_animals_out("traps") && !keeps_animals_out("a cat"));
        assert!(keeps_animals_out("fence") && !keeps_eaters_off("fence", "rats") && keeps_eaters_off("traps", "rats"));
    }

    #[test]
    fn a_cat_is_set_against_rats_and_mice_alone_and_a_watchman_stops_no_snails_or_insects() {
        for (with, pest) in [
            ("a cat", "rats"),
            ("gato", "ratones"),
            ("cats", "mice"),
            ("a watchman", "monkeys"),
            ("beer traps", "snails"),
            ("collars", "crickets"),
            ("nets", "caterpillars"),
        ] {
            assert!(keeps_eaters_off(with, pest), "{with} {pest}");
        }
        for (with, pest) in [
            ("a cat", "snails"),
            ("gatos", "gusanos"),
            ("cat", "crickets"),
            ("a cat", "monkeys"),
            ("dogs", "slugs"),
            ("vigilante de noche", "babosas"),
            ("foil", "stem borer"),
        ] {
            assert!(!keeps_eaters_off(with, pest), "{with} {pest}");
        }
    }
}
