//! What people set against animals that eat plants, and that is no spray: traps, a cat, collars, wire, nets, somebody who watches. Words
//! stand in `set_against.toml`, in both languages. A text is one of these only where every word of it is known: bait and poison are not.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::base::text::folded;

#[derive(Deserialize, Default)]
struct Lists {
    keeps_out: Vec<String>,
    against: Vec<String>,
    fence: Vec<String>,
    beside: Vec<String>,
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
    let known = |word: &str| {
        let figure = word.chars().all(|letter| letter.is_ascii_digit());
        figure || [&lists.keeps_out, &lists.against, &lists.fence, &lists.beside].iter().any(|list| is_in(list, word))
    };
    let words = || folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    words().any(&named) && words().all(known)
}

/// Whether a text names what is set against animals and is no spray, and nothing else: it has no label, and nobody waits for it.
pub(crate) fn sets_against(text: &str) -> bool {
    let lists = lists();
    says(text, |word| [&lists.keeps_out, &lists.against, &lists.fence].iter().any(|list| is_in(list, word)))
}

/// Whether it is against what a fence does not keep out, as rats, ants and birds.
pub(crate) fn keeps_eaters_off(text: &str) -> bool {
    says(text, |word| is_in(&lists().keeps_out, word) || is_in(&lists().against, word))
}

/// Whether it keeps large animals out.
pub(crate) fn keeps_animals_out(text: &str) -> bool {
    says(text, |word| is_in(&lists().keeps_out, word) || is_in(&lists().fence, word))
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
        ] {
            assert!(!sets_against(text), "{text}");
        }
        assert!(keeps_animals_out("goats tied up") && keeps_animals_out("wire guards") && keeps_animals_out("malla"));
        assert!(!keeps_animals_out("traps") && !keeps_animals_out("a cat"));
        assert!(keeps_animals_out("fence") && !keeps_eaters_off("fence") && keeps_eaters_off("traps"));
    }
}
