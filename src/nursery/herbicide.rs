//! What people write when they have used something in a bed: what is against weeds, or clears the soil of all life, stays in the ground,
//! and what is planted in it may die of it. Names of such things are without number, so the words of what is known to be something else
//! are listed, and all else may be such a thing. Words are compared without accents or case, in the languages the book is kept in.

use super::pest::is_only_water;
use super::set_against::sets_against;
use crate::base::text::folded;

/// Beginnings of words of what kills insects, mites, snails, rats or fungi, feeds, or is a thing of the kitchen, and lets plants live.
/// Ours, from common practice: what is missing here is asked about.
const LETS_PLANTS_LIVE: &[&str] = &[
    // Things of the house and the land.
    "foliar",
    "feed",
    "npk",
    "vermicompost",
    "biol",
    "bokashi",
    "worm",
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
    "urea",
    "fertil",
    "abono",
    "lombri",
    "humus",
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
    "gypsum",
    "yeso",
    "dolomi",
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

/// Beginnings of words of what is made at home or fed, and mostly has no label.
const HOMEMADE: &[&str] = &[
    "soap",
    "jabon",
    "ash",
    "ashes",
    "ceniza",
    "neem",
    "nim",
    "urea",
    "compost",
    "trichoderma",
    "water",
    "agua",
    "milk",
    "leche",
    "garlic",
    "ajo",
    "chil",
    "aji",
    "molas",
    "melaza",
    "vinegar",
    "vinagre",
    "bicarb",
    "bicarbonat",
    "baking",
    "manure",
    "estiercol",
    "bocashi",
    "gallinaza",
    "marigold",
    "lime",
    "cal",
    "fertil",
    "abono",
    "lombri",
    "humus",
    "gypsum",
    "yeso",
    "dolomi",
];

/// Words of what feeds plants and is on no label with a time to wait, and of water. Ours.
const FEEDS: &[&str] = &[
    "compost",
    "urea",
    "fertil",
    "abono",
    "abonad",
    "lombri",
    "humus",
    "manure",
    "estiercol",
    "bocashi",
    "gallinaza",
    "foliar",
    "feed",
    "npk",
    "worm",
    "vermicompost",
    "biol",
    "bokashi",
];
/// Words that stand beside those and name nothing else.
const BESIDE_FEEDS: &[&str] = &[
    "tea",
    "te",
    "de",
    "del",
    "la",
    "el",
    "con",
    "with",
    "and",
    "y",
    "in",
    "en",
    "a",
    "of",
    "on",
    "the",
    "al",
    "spray",
    "sprayed",
    "liquid",
    "liquido",
    "castings",
    "casting",
    "leaf",
    "leaves",
    "hoja",
    "hojas",
    "water",
    "agua",
    "some",
    "un",
    "poco",
    "granules",
    "granulado",
    "organic",
    "organico",
    "chicken",
    "cow",
    "vaca",
    "gallina",
    "plant",
    "plantas",
    "soil",
    "suelo",
    "tierra",
    "nitrogen",
    "nitrogeno",
    "completo",
    "complete",
];

/// Whether a text names food of plants, or water, and nothing else: nobody waits for it.
fn is_food(text: &str) -> bool {
    let words = words_of(text);
    let feeds = |word: &String| FEEDS.iter().any(|start| begins(word, start));
    let beside =
        |word: &String| BESIDE_FEEDS.contains(&word.as_str()) || word.chars().all(|letter| letter.is_ascii_digit());
    is_only_water(text) || (words.iter().any(feeds) && words.iter().all(|word| feeds(word) || beside(word)))
}

/// Whether nobody waits for what a text names: food of plants, water, and what is set against animals and is no spray.
pub(crate) fn has_no_wait(text: &str) -> bool {
    is_food(text) || sets_against(text)
}

/// Whether all that a text names is made at home or fed, and may have no label.
pub(crate) fn may_have_no_label(text: &str) -> bool {
    let words = words_of(text);
    let home = |word: &String| HOMEMADE.iter().any(|start| begins(word, start));
    let bought = |word: &String| AGAINST_PESTS.iter().any(|start| begins(word, start)) && !home(word);
    words.iter().any(home) && !words.iter().any(bought) && !kills_weeds(text)
}

/// Beginnings of words of what kills plants that it wets: what is against weeds, and the names of its common kinds. Ours, from common
/// practice; what is missing is one of which nobody knows it.
const WEED_KILLERS: &[&str] = &[
    "herbic", "weedk", "matamal", "matahier", "matamont", "matazac", "desbroz", "brushk", "stumpk", "glyph", "glifos",
    "gliph", "roundup", "paraq", "gramox", "diquat", "dicuat", "glufos", "picloram", "tordon", "triclop", "metsulf",
    "dicamba", "mcpa", "imazap", "fluazi", "haloxy", "haloxi", "clethod", "cletod", "diuron", "linuron", "karmex",
    "atraz", "ametr", "simaz", "hexaz", "bromac", "terbut", "metrib", "oxyfl", "oxifl", "pendim", "metolac", "alachl",
    "alaclo", "trifl", "oxadi", "sulfent", "indazi", "diesel", "gasoil",
];
/// The same of which one word alone says too little.
const WEEDS: &[&str] = &["weed", "malez", "monte", "maton", "zacate"];
/// Of those the ones that lie in the soil and are taken up by roots for weeks to years.
const LIES_IN_SOIL: &[&str] = &[
    "picloram", "tordon", "triclop", "metsulf", "dicamba", "imazap", "diuron", "linuron", "karmex", "atraz", "ametr",
    "simaz", "hexaz", "bromac", "terbut", "metrib", "oxyfl", "oxifl", "pendim", "metolac", "alachl", "alaclo", "trifl",
    "oxadi", "sulfent", "indazi", "salt", "sal", "diesel", "gasoil", "metam", "dazomet", "bromide", "bromur",
];
/// Of those the ones that work through leaves alone, and that soil binds.
const LEAVES_ALONE: &[&str] =
    &["glyph", "glifos", "gliph", "roundup", "paraq", "gramox", "diquat", "dicuat", "glufos", "vinegar", "vinagr"];

fn words_of(text: &str) -> Vec<String> {
    let folded = folded(text);
    let words = folded.split(|letter: char| !letter.is_alphanumeric());
    words.filter(|word| !word.is_empty()).map(str::to_string).collect()
}

/// Whether a word begins so; short beginnings are whole words: "cal" is lime, and "calixin" is not.
fn begins(word: &str, start: &str) -> bool {
    if start.len() <= 4 { word == start } else { word.starts_with(start) }
}

fn names(text: &str, starts: &[&str]) -> bool {
    words_of(text).iter().any(|word| starts.iter().any(|start| begins(word, start)))
}

/// Whether a text names what kills the plants that it wets.
pub(crate) fn kills_weeds(text: &str) -> bool {
    let words = words_of(text);
    // "2,4-D" and "round up" fall into several words.
    let in_pieces = |pieces: &[&str]| words.windows(pieces.len()).any(|some| some.iter().eq(pieces));
    let by_name = names(text, WEED_KILLERS)
        || in_pieces(&["2", "4", "d"])
        || in_pieces(&["2", "4d"])
        || in_pieces(&["round", "up"]);
    let weeds = words.iter().any(|word| WEEDS.iter().any(|start| word.starts_with(start)));
    by_name || (weeds && !is_no_spray(text))
}

/// Whether what a text names may lie in the ground and be taken up by roots there: what is known to, and what nobody knows.
pub(crate) fn may_lie_in_soil(text: &str) -> bool {
    names(text, LIES_IN_SOIL) || (may_kill_plants(text) && !names(text, LEAVES_ALONE))
}

/// Whether planting may have to wait for what a text names: all but what is known to let plants live. What names such a thing beside
/// another is asked about too.
pub(crate) fn may_kill_plants(text: &str) -> bool {
    let words = words_of(text);
    let named = words.iter().any(|word| AGAINST_WEEDS.iter().any(|start| word.starts_with(start)));
    let known = words.iter().any(|word| LETS_PLANTS_LIVE.iter().chain(AGAINST_PESTS).any(|start| begins(word, start)));
    (named || !known || kills_weeds(text)) && !sets_against(text)
}

/// Beginnings of words of food of plants that burns young roots while it is fresh. Common practice.
const BURNS_ROOTS: &[&str] = &[
    "manure",
    "dung",
    "droppings",
    "slurry",
    "purin",
    "estiercol",
    "gallinaza",
    "pollinaza",
    "porquinaza",
    "bosta",
    "boniga",
    "urea",
];
/// Beginnings of words that say that it no longer does.
const ROTTED: &[&str] = &[
    "compost",
    "rotted",
    "rotten",
    "cured",
    "aged",
    "matured",
    "old",
    "curtid",
    "descompuest",
    "madur",
    "viej",
    "anej",
    "podrid",
    "bocashi",
    "bokashi",
    "humus",
    "lombri",
    "vermi",
];

/// Words beside those that take them back.
const NOT_ALL: &[&str] = &[
    "not",
    "half",
    "partly",
    "partially",
    "badly",
    "poorly",
    "semi",
    "almost",
    "nearly",
    "un",
    "raw",
    "fresh",
    "no",
    "sin",
    "mal",
    "medio",
    "media",
    "poco",
    "casi",
    "cruda",
    "crudo",
    "fresco",
    "fresca",
    "todavia",
    "still",
];

/// Whether a text names food of plants that burns young roots in a hole.
pub(crate) fn burns_roots(text: &str) -> bool {
    // "Half rotted" and "sin compostar" say that it still does; old urea is urea.
    let rotted = names(text, ROTTED) && !names(text, NOT_ALL) && !names(text, &["urea"]);
    names(text, BURNS_ROOTS) && !rotted
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

/// Beginnings of words of what is strewn or dusted dry.
const DUST: &[&str] = &["dust", "espolvor", "polvo", "powder", "urea", "granul", "ash", "ashes", "ceniza"];

/// Whether a text names what is put on dry and has not to dry.
pub(crate) fn is_dust(text: &str) -> bool {
    names(text, DUST)
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
    "gasoil", "diesel",
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
    fn what_kills_the_plants_that_it_wets_is_known_by_name_in_both_languages() {
        for text in [
            "glyphosate",
            "Glifosato al 2 %",
            "2,4-D amine",
            "2.4 D",
            "weed killer",
            "matamaleza",
            "mata monte",
            "Herbicida",
            "paraquat",
            "round up",
            "weeds sprayed with oil",
            "diuron",
        ] {
            assert!(kills_weeds(text) && may_kill_plants(text), "{text}");
        }
        for text in [
            "something from town",
            "copper, every 24 days",
            "weeds pulled by hand",
            "monte cortado",
            "fumigado con cobre",
            "jabón",
            "matababosas con metaldehído",
        ] {
            assert!(!kills_weeds(text), "{text}");
        }
    }

    #[test]
    fn what_may_lie_in_the_soil_is_told_from_what_leaves_alone_take_up() {
        for text in ["diuron", "Tordon", "atrazina", "sal", "herbicida", "something from town"] {
            assert!(may_lie_in_soil(text), "{text}");
        }
        for text in ["glyphosate", "paraquat", "copper", "jabón", "ceniza"] {
            assert!(!may_lie_in_soil(text), "{text}");
        }
    }

    #[test]
    fn what_is_made_at_home_may_have_no_label_and_what_is_bought_has_one() {
        for text in ["soap water", "ash", "neem", "urea", "compost tea", "trichoderma", "jabón con ajo", "ceniza"] {
            assert!(may_have_no_label(text) && !may_kill_plants(text), "{text}");
        }
        for text in
            ["dimethoate", "copper soap", "soap with cypermethrin", "glyphosate and urea", "something from town"]
        {
            assert!(!may_have_no_label(text), "{text}");
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
