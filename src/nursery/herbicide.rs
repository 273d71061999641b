//! What people write when they have used something against weeds: such a thing stays in the ground, and what is planted in it may die of
//! it. Words are compared without accents or case, in the languages the book is kept in.

use crate::base::text::folded;

/// Beginnings of words of what kills plants. Ours, from common practice: no list is whole, and "weed" or "herbicide" in the text says it
/// as well.
const KILLS_PLANTS: &[&str] = &[
    "herbicid",
    "weedkill",
    "weedicid",
    "matamalez",
    "matamont",
    "matahierb",
    "quemant",
    "glyphos",
    "glifos",
    "glufosin",
    "paraquat",
    "diquat",
    "atrazin",
    "ametr",
    "simazin",
    "diuron",
    "linuron",
    "hexazinon",
    "picloram",
    "triclopyr",
    "dicamba",
    "mcpa",
    "metsulfur",
    "imazap",
    "imazethap",
    "fluazifop",
    "haloxyfop",
    "fluroxypyr",
    "oxyfluor",
    "pendimethal",
    "pendimetal",
    "metribuzin",
    "metolachl",
    "terbuthyl",
    "bromacil",
    "tebuthiur",
];

/// Whether a text names something that kills plants.
pub(crate) fn is_herbicide(text: &str) -> bool {
    let folded = folded(text);
    let mut words = folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let named = words.clone().any(|word| KILLS_PLANTS.iter().any(|start| word.starts_with(start)));
    // "2,4-D", however it is written.
    let joined: String = words.clone().collect();
    named || joined.contains("24d") || (words.clone().any(|word| word == "weed") && words.any(|word| word == "killer"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_kills_plants_is_known_in_both_languages() {
        for text in [
            "glyphosate",
            "Glifosato al 2 %",
            "2,4-D amine",
            "2.4 D",
            "weed killer",
            "matamaleza",
            "Herbicida",
            "paraquat",
        ] {
            assert!(is_herbicide(text), "{text}");
        }
        for text in ["copper oxychloride", "wood ash around the collars", "neem", "jabón", "weeded by hand", "mancozeb"]
        {
            assert!(!is_herbicide(text), "{text}");
        }
    }
}
