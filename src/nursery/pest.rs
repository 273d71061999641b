//! What people write when they have seen a pest or a sickness: whether it lives in the soil or the roots, whether two texts
//! mean the same one, and whether a text says that there is none. Words are compared without accents or case, in the
//! languages the book is kept in.

use crate::base::text::folded;

/// Beginnings of words of what lives in soil and roots and goes into a bed with the plug. Ours, from common practice: no
/// list is whole, and "root" or "soil" in the text says it as well.
const OF_THE_SOIL: &[&str] = &[
    "root",
    "soil",
    "raiz",
    "raic",
    "suelo",
    "nematod",
    "termit",
    "comejen",
    "damping",
    "talluelo",
    "chupadera",
    "wilt",
    "marchit",
    "fusari",
    "phytoph",
    "fitoft",
    "pythium",
    "rhizoct",
    "rizoct",
    "ralston",
    "armillar",
    "grub",
    "gallina",
    "jogoto",
    "wireworm",
    "knot",
];
/// Beginnings of words of sicknesses of which one plant that has it is enough: viruses, phytoplasmas, bacteria, wilts, witches'
/// broom, frosty pod rot, and what a law asks to be reported. Ours, from common practice: no list is whole.
const SPREADS: &[&str] = &[
    "virus",
    "viros",
    "viroid",
    "phytoplasm",
    "fitoplasm",
    "bacteri",
    "witch",
    "escoba",
    "bruja",
    "wilt",
    "marchit",
    "greening",
    "hlb",
    "huanglong",
    "cssvd",
    "swollen",
    "mosaic",
    "bunchy",
    "tristeza",
    "psorosis",
    "leprosis",
    "canker",
    "cancro",
    "moko",
    "frosty",
    "monilia",
    "moniliophthor",
    "fusari",
    "ralston",
    "xanthomon",
    "xylella",
    "erwinia",
    "ceratocyst",
    "lethal",
    "letal",
    "notifiable",
    "quarantin",
    "cuarenten",
];
/// Animals that come and go by themselves: they harm plants and are not carried along with them.
const COMES_AND_GOES: &[&str] = &[
    "rat",
    "mouse",
    "mice",
    "bird",
    "hen",
    "chicken",
    "goat",
    "cow",
    "cattle",
    "pig",
    "dog",
    "squirrel",
    "rabbit",
    "monkey",
    "porcupine",
    "gopher",
    "pajaro",
    "ave",
    "gallo",
    "raton",
    "ratone",
    "rata",
    "pato",
    "cabra",
    "vaca",
    "ganado",
    "cerdo",
    "perro",
    "ardilla",
    "conejo",
    "mono",
    "taltuza",
    "zompopo",
];
/// Words that do not tell one pest from another.
const SAYS_LITTLE: &[&str] = &[
    "leaf", "leave", "hoja", "root", "raiz", "raice", "stem", "tallo", "young", "old", "tierna", "black", "white",
    "red", "brown", "yellow", "green", "negra", "negro", "blanca", "blanco", "roja", "rojo", "some", "few", "many",
    "poco", "poca", "algun", "alguna", "mal", "de", "del", "la", "las", "el", "los", "en", "on", "of", "the", "in",
    "a", "una", "un", "more", "still", "no",
];
/// What says that nothing was found.
const NONE: &[&str] = &[
    "none", "nothing", "clear", "clean", "healthy", "no", "ninguna", "ninguno", "nada", "limpia", "limpio", "sana",
    "sano", "sin",
];

/// Words that say water and nothing else. Hot water is not among them: it cures corms and suckers.
const WATER: &[&str] = &["water", "agua"];
const BESIDE_WATER: &[&str] = &[
    "clean",
    "clear",
    "plain",
    "pure",
    "rain",
    "rainwater",
    "tap",
    "well",
    "river",
    "cold",
    "fresh",
    "only",
    "just",
    "with",
    "limpia",
    "pura",
    "lluvia",
    "rio",
    "pozo",
    "fria",
    "sola",
    "solo",
    "con",
    "de",
    "del",
    "la",
];

/// Whether a text names water and nothing else.
pub(crate) fn is_only_water(text: &str) -> bool {
    let words = words_of(text);
    let is = |list: &[&str], word: &String| list.contains(&word.as_str());
    words.iter().any(|word| is(WATER, word)) && words.iter().all(|word| is(WATER, word) || is(BESIDE_WATER, word))
}

/// Whether a pest or sickness lives in the soil or the roots.
pub(crate) fn is_of_the_soil(text: &str) -> bool {
    words_of(text).iter().any(|word| OF_THE_SOIL.iter().any(|start| word.starts_with(start)))
}

/// Whether one plant that has it is enough to hold a tray.
pub(crate) fn spreads(text: &str) -> bool {
    words_of(text).iter().any(|word| SPREADS.iter().any(|start| word.starts_with(start)))
}

/// Whether it goes where the plants go: a rat does not.
pub(crate) fn comes_along(text: &str) -> bool {
    named_by(&words_of(text)).is_none_or(|name| !COMES_AND_GOES.contains(&name.as_str()))
}

/// Beginnings of words by which a person says that plants are kept apart because they are sick, or may be. Ours.
const KEPT_APART: &[&str] =
    &["sick", "disease", "quarantin", "infest", "infect", "enferm", "cuarenten", "plaga", "pest"];

/// Whether plants are held because they are sick, or may be.
pub(crate) fn keeps_apart(why: &str) -> bool {
    words_of(why).iter().any(|word| KEPT_APART.iter().any(|start| word.starts_with(start)))
}

/// Whether a text says that nothing was found.
pub(crate) fn says_none(text: &str) -> bool {
    words_of(text).first().is_some_and(|first| NONE.contains(&first.as_str()))
}

/// Whether two texts mean the same pest: the first word of one that tells something stands in the other.
pub(crate) fn is_same_pest(one: &str, other: &str) -> bool {
    let (one, other) = (words_of(one), words_of(other));
    let names = |of: &[String], all: &[String]| named_by(of).is_some_and(|name| all.contains(name));
    one == other || names(&one, &other) || names(&other, &one)
}

fn named_by(words: &[String]) -> Option<&String> {
    words.iter().find(|word| !SAYS_LITTLE.contains(&word.as_str())).or(words.first())
}

/// The words of a text, folded, each without the ending of many.
fn words_of(text: &str) -> Vec<String> {
    let folded = folded(text);
    let words = folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(|word| word.strip_suffix('s').filter(|one| one.len() > 2).unwrap_or(word).to_string()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lives_in_soil_and_roots_is_known_in_both_languages() {
        for text in ["nematodes", "Nematodos en la raíz", "damping-off, stems pinched", "mal del talluelo", "termites"]
        {
            assert!(is_of_the_soil(text), "{text}");
        }
        for text in ["mealybug on roots", "root rot", "cochinilla de las raíces", "white grubs", "bacterial wilt"] {
            assert!(is_of_the_soil(text), "{text}");
        }
        for text in ["aphids", "leaf spot on the lower leaves", "roya", "pulgones", "rats", "shoot borer"] {
            assert!(!is_of_the_soil(text), "{text}");
        }
    }

    #[test]
    fn sicknesses_of_which_one_plant_is_enough_are_known_in_both_languages() {
        for text in
            ["witches' broom", "Escoba de bruja", "swollen shoot virus", "CSSVD", "greening (HLB)", "frosty pod rot"]
        {
            assert!(spreads(text), "{text}");
        }
        for text in ["moniliasis", "marchitez bacteriana", "mosaico", "Fusarium", "lethal yellowing"] {
            assert!(spreads(text), "{text}");
        }
        for text in ["aphids", "leaf spot", "roya", "nematodes", "minador de la hoja"] {
            assert!(!spreads(text), "{text}");
        }
    }

    #[test]
    fn water_alone_is_known_in_both_languages() {
        for text in ["water", "Agua", "agua de lluvia", "clean water", "solo agua"] {
            assert!(is_only_water(text), "{text}");
        }
        for text in ["hot water", "soapy water", "agua con jabón", "agua caliente", "neem", "water and copper"] {
            assert!(!is_only_water(text), "{text}");
        }
    }

    #[test]
    fn texts_mean_the_same_pest_by_the_word_that_tells() {
        for (one, other) in [
            ("black spots on the young leaves", "spots"),
            ("damping-off, stems pinched at the soil", "damping-off, still spreading"),
            ("root-knot nematodes", "nematodes"),
            ("Pulgón", "pulgon"),
        ] {
            assert!(is_same_pest(one, other), "{one} / {other}");
        }
        for (one, other) in
            [("leaf spot", "leaf miner"), ("aphids", "mites"), ("mancha de la hoja", "minador de la hoja")]
        {
            assert!(!is_same_pest(one, other), "{one} / {other}");
        }
        assert!(
            !comes_along("rats") && !comes_along("ratones") && comes_along("gallina ciega") && comes_along("mites")
        );
        assert!(says_none("none seen") && says_none("ninguna") && !says_none("nematodes"));
    }
}
