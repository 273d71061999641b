//! What people write when they have used something in a bed: what is against weeds, or clears the soil of all life, stays in the ground,
//! and what is planted in it may die of it. Names of such things are without number, so the words of what is known to be something else
//! are listed, and all else may be such a thing. Words are compared without accents or case, in the languages the book is kept in.

use super::pest::is_only_water;
use crate::base::text::folded;

/// Beginnings of words of what kills insects, mites, snails, rats or fungi, feeds, or is a thing of the kitchen, and lets plants live.
/// Ours, from common practice: what is missing here is asked about.
const LETS_PLANTS_LIVE: &[&str] = &[
    // Things of the house and the land.
    "soap",
    "jabon",
    "ash",
    "ashes",
    "ceniza",
    "lime",
    "cal",
    "calcium",
    "water",
    "agua",
    "milk",
    "leche",
    "garlic",
    "ajo",
    "chil",
    "aji",
    "tobacco",
    "tabaco",
    "molas",
    "melaza",
    "vinagre",
    "bicarb",
    "bicarbonat",
    "baking",
    "compost",
    "manure",
    "estiercol",
    "bocashi",
    "gallinaza",
    "marigold",
    "neem",
    "nim",
    "oil",
    "aceite",
    "kaolin",
    "caolin",
    "diatom",
    "diatomac",
    "trap",
    "trampa",
    "bait",
    "cebo",
    "cut",
    "cortad",
    "burn",
    "quemad",
    "hand",
    "mano",
    "picked",
    "prun",
    "poda",
];
/// The same of what is sprayed or dusted against fungi, insects, mites, snails and rats.
const AGAINST_PESTS: &[&str] = &[
    // Of copper and sulphur.
    "copper",
    "cobre",
    "bordeaux",
    "bordeles",
    "burdeos",
    "sulphur",
    "sulfur",
    "azufr",
    "sulfocal",
    "calcico",
    "cuprav",
    "oxiclor",
    "oxychlor",
    "hidroxid",
    "hydroxid",
    // Living things.
    "bacillus",
    "bt",
    "thuring",
    "beauveria",
    "metarhizium",
    "trichoderma",
    "purpureocill",
    "paecilomyces",
    "spinosad",
    "virus",
    // Against insects, mites, snails and rats.
    "pyreth",
    "piretr",
    "permethr",
    "permetr",
    "cypermethr",
    "cipermetr",
    "deltamethr",
    "deltametr",
    "lambda",
    "bifenth",
    "bifentr",
    "malath",
    "malat",
    "dimeth",
    "dimetoat",
    "chlorpyr",
    "clorpir",
    "diazinon",
    "carbaryl",
    "carbaril",
    "imidaclo",
    "thiameth",
    "tiamet",
    "acetamip",
    "fipronil",
    "abamect",
    "emamect",
    "chlorantran",
    "clorantran",
    "metaldehyd",
    "metaldehid",
    "insectic",
    "acaricid",
    "rodentic",
    "hormig",
    // Against fungi and bacteria.
    "mancozeb",
    "maneb",
    "zineb",
    "captan",
    "thiram",
    "tiram",
    "chlorothal",
    "clorotal",
    "metalax",
    "fosetyl",
    "fosetil",
    "phosphit",
    "fosfit",
    "phosphon",
    "carbendaz",
    "benomyl",
    "benomil",
    "thiophan",
    "tiofan",
    "propicon",
    "tebucon",
    "difenocon",
    "azoxystr",
    "azoxistr",
    "iprodion",
    "streptom",
    "estreptom",
    "kasugam",
    "fungicid",
    "bactericid",
];

/// Whether planting may have to wait for what a text names: all but what is known to let plants live. What names such a thing beside
/// another is asked about too.
pub(crate) fn may_kill_plants(text: &str) -> bool {
    let folded = folded(text);
    let mut words = folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let named = words.clone().any(|word| AGAINST_WEEDS.iter().any(|start| word.starts_with(start)));
    let known = words.any(|word| {
        // Short names are whole words: "cal" is lime, and "calixin" is not.
        LETS_PLANTS_LIVE
            .iter()
            .chain(AGAINST_PESTS)
            .any(|start| if start.len() <= 4 { word == *start } else { word.starts_with(start) })
    });
    named || !known
}

/// Beginnings of words of what neither wets nor dusts the trays beside: what is cut, picked, trapped or burned, poured into the soil,
/// or heat. Ours.
const NO_SPRAY: &[&str] = &[
    "cut", "cortad", "prun", "poda", "podad", "pick", "hand", "mano", "recogid", "trap", "trampa", "bait", "cebo",
    "burn", "quemad", "dug", "dig", "pulled", "arrancad", "sacad", "drench", "poured", "regad", "vertid", "empapad",
    "solari", "steam", "vapor", "ash", "ashes", "ceniza", "marigold", "compost", "hot", "calient", "released",
    "soltad",
];
/// Beginnings of words of what wets or dusts, whatever else stands there.
const SPRAYED: &[&str] = &["spray", "rocia", "fumig", "asperj", "pulveriz", "dust", "espolvor", "mist", "nebul"];

/// Whether a text names what neither wets nor dusts the trays beside.
pub(crate) fn is_no_spray(text: &str) -> bool {
    let folded = folded(text);
    let any = |list: &[&str]| {
        let mut words = folded.split(|letter: char| !letter.is_alphanumeric());
        words.any(|word| list.iter().any(|start| word.starts_with(start)))
    };
    is_only_water(text) || (any(NO_SPRAY) && !any(SPRAYED))
}

/// Beginnings of words by which a note says that something was used.
const USED: &[&str] = &[
    "spray", "treated", "tratad", "fumig", "rocia", "dusted", "espolvor", "drench", "herbic", "glyph", "glif", "paraq",
    "roundup",
];

/// Whether a note says that something was used on plants or ground.
pub(crate) fn names_treatment(text: &str) -> bool {
    let folded = folded(text);
    let mut words = folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| word.len() > 2);
    words.any(|word| {
        let is = |start: &&str| if start.len() <= 4 { word == *start } else { word.starts_with(*start) };
        USED.iter().any(|start| word.starts_with(start)) || AGAINST_PESTS.iter().any(is)
    })
}

/// Beginnings of words that say it whatever else stands there: salt and vinegar kill, oil may carry a weed killer.
const AGAINST_WEEDS: &[&str] = &[
    "herbic", "weed", "brush", "stump", "mata", "monte", "malez", "hierb", "maton", "vinegar", "vinagr", "salt", "sal",
    "gasoil", "diesel", "fumig",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_wets_or_dusts_is_told_from_what_does_not_in_both_languages() {
        for text in
            ["cut out and burned the spotted leaves", "neem soil drench", "traps", "agua", "ceniza", "regado al suelo"]
        {
            assert!(is_no_spray(text), "{text}");
        }
        for text in ["soap", "jabón", "neem", "sulphur dust", "copper", "something", "sprayed with ash water", ""] {
            assert!(!is_no_spray(text), "{text}");
        }
    }

    #[test]
    fn what_is_not_known_to_let_plants_live_may_kill_them_in_both_languages() {
        for text in [
            "glyphosate",
            "Glifosato al 2 %",
            "2,4-D amine",
            "2.4 D",
            "weed killer",
            "matamaleza",
            "Herbicida",
            "paraquat",
            "gramoxone",
            "Tordon",
            "round up",
            "metam sodium",
            "methyl bromide",
            "brush killer",
            "veneno para monte",
            "salt",
            "something from town",
            "weeds sprayed with oil",
            "",
        ] {
            assert!(may_kill_plants(text), "{text}");
        }
        for text in [
            "copper oxychloride",
            "Copper spray",
            "wood ash around the collars",
            "neem",
            "jabón",
            "mancozeb",
            "caldo bordelés",
            "cal",
            "dimethoate",
            "cut out and burned the spotted leaves",
            "marigold, turned in",
        ] {
            assert!(!may_kill_plants(text), "{text}");
        }
    }
}
