//! What words of sicknesses mean.

use super::*;

#[test]
fn what_lives_in_soil_and_roots_is_known_in_both_languages() {
    let in_soil = |text: &str| nature_of(text, None).in_soil;
    for text in ["nematodes", "Nematodos en la raíz", "damping-off, stems pinched", "mal del talluelo", "termites"] {
        assert!(in_soil(text), "{text}");
    }
    for text in ["mealybug on roots", "root rot", "cochinilla de las raíces", "white grubs", "bacterial wilt"] {
        assert!(in_soil(text), "{text}");
    }
    for text in ["eelworm", "crown gall", "collar rot", "Sclerotium", "Verticillium", "gallina ciega", "llaga negra"] {
        assert!(in_soil(text), "{text}");
    }
    for text in ["aphids", "leaf spot on the lower leaves", "roya", "pulgones", "rats", "shoot borer", "gallinas"] {
        assert!(!in_soil(text), "{text}");
    }
}

#[test]
fn sicknesses_of_which_one_plant_is_enough_are_known_in_both_languages() {
    let listed = "witches' broom|Escoba de bruja|swollen shoot virus|CSSVD|CSSV|greening (HLB)|frosty pod rot|moniliasis|\
        marchitez bacteriana|mosaico|Fusarium|lethal yellowing|sunblotch|sun blotch|mancha de sol|ringspot|papaya ring spot|\
        mancha anular|PRSV|virus|tristeza virus|virosis|crown gall|agallas de la corona|CMV|psorosis|quick decline|leaf curl|\
        hojas rizadas|yellow vein|tristeza|citrus canker|chancro|blackleg|pierna negra|dieback|muerte descendente|bunchy top|\
        cogollo racimoso|cassava mosaic|banana streak|brown streak|panama|mal de Panamá|moko|Xanthomonas|Ralstonia|pink disease|\
        mal rosado|black pod|mazorca negra|verticillium|wilting|se marchitan|cuero de sapo|xylella|huanglongbing|mal del machete|\
        exocortis|meleira|dying back from the tip|fitoplasma|amarillamiento letal|bacteriosis|TR4";
    for text in listed.split('|') {
        assert!(nature_of(text, None).spreads, "{text}");
    }
    for text in ["aphids", "leaf spot", "roya", "minador de la hoja", "leaf cutters", "snails", "red spider mites"] {
        let nature = nature_of(text, None);
        assert!(nature.goes_by_itself() && !nature.has_cure && !nature.in_stem, "{text}");
    }
    for text in ["damping off", "collar rot", "crown rot", "Phytophthora", "root rot", "pudrición de la raíz"] {
        let nature = nature_of(text, None);
        assert!(nature.in_soil && nature.has_cure && !nature.goes_by_itself(), "{text}");
    }
    for text in ["nematodes", "fusarium wilt", "virus", "phytoplasma", "crown gall", "Ralstonia"] {
        assert!(!nature_of(text, None).has_cure, "{text}");
    }
}

#[test]
fn what_no_name_says_is_unknown_until_a_person_says_it_and_a_named_sickness_is_not_talked_away() {
    for text in ["something odd", "algo raro", "fungus", "enfermedad", "xyz"] {
        let asked = nature_of(text, None);
        assert!(asked.is_unknown && !asked.goes_by_itself(), "{text}");
        assert!(nature_of(text, Some(false)).goes_by_itself(), "{text}");
        assert!(nature_of(text, Some(true)).spreads && !nature_of(text, Some(true)).has_cure, "{text}");
    }
    // A sign has many causes, and a person knows which.
    assert!(nature_of("wilted, nobody watered", None).spreads);
    assert!(nature_of("wilted, nobody watered", Some(false)).goes_by_itself());
    for text in
        ["yellow leaves", "hoja amarilla", "hojas amarillas", "leaves yellowing", "tizón", "blight", "marchitez"]
    {
        let asked = nature_of(text, None);
        assert!(asked.is_sign && !asked.goes_by_itself() && nature_of(text, Some(false)).takes_leaves, "{text}");
    }
    for text in ["nematodes", "mosaic virus", "bacterial wilt"] {
        assert!(!nature_of(text, Some(false)).goes_by_itself(), "{text}");
    }
}

#[test]
fn short_names_of_viruses_and_wilts_are_known_and_borers_go_along_in_the_stem() {
    for text in ["TSV", "CBD", "PRSV-W", "TSWV", "CWD", "ASBVd", "ACMV", "SPVD", "CTV", "late blight", "tizón tardío"]
    {
        assert!(nature_of(text, None).spreads, "{text}");
    }
    for text in
        ["stem borer", "barrenador", "picudo", "Hypsipyla", "shoot borer", "barrenador del tallo", "broca del tallo"]
    {
        let nature = nature_of(text, None);
        assert!(nature.in_stem && !nature.goes_by_itself() && !nature.has_cure && !nature.in_soil, "{text}");
    }
    for text in ["corm borer", "picudo negro"] {
        assert!(nature_of(text, None).by_eye && !nature_of(text, None).in_stem, "{text}");
    }
    for text in ["leaf blight", "tizón de la hoja", "yellow spots", "yellow scale", "coffee rust"] {
        assert!(nature_of(text, None).goes_by_itself(), "{text}");
    }
}

#[test]
fn weather_and_what_eats_and_goes_is_carried_along_with_no_plant() {
    for text in ["hail", "granizo", "sunburn", "leaf cutters", "zompopos", "hormigas", "grasshoppers", "chapulines"] {
        assert!(nature_of(text, None).takes_leaves && nature_of(text, None).goes_by_itself(), "{text}");
    }
    for text in ["aphids", "leaf spot", "mealybug and ants", "mites after the hail", "wilting", "xyz", "nematodes"] {
        assert!(!nature_of(text, None).takes_leaves, "{text}");
    }
    for text in ["nematodes", "virus", "root rot", "stem borer"] {
        assert!(!nature_of(text, Some(false)).takes_leaves, "{text}");
    }
}

#[test]
fn plants_thrown_out_for_their_growth_name_no_sickness() {
    for text in ["stunted", "runts", "yellow and small", "amarillas", "too small", "goose-neck roots", "thinned"] {
        assert_eq!(died_of(text), DiedOf::NotSaid, "{text}");
    }
}

#[test]
fn of_what_plants_in_a_bed_died_is_told_from_the_words_of_a_loss_in_both_languages() {
    for text in [
        "fusarium wilt",
        "nematodos",
        "marchitez",
        "root rot",
        "collar rot, wet ground",
        "mal de cuello",
        "grubs",
        "comején",
        "virus del mosaico",
        "died of bacterial wilt",
        "nudos en la raíz",
    ] {
        assert_eq!(died_of(text), DiedOf::Sickness, "{text}");
    }
    for text in [
        "drought",
        "wilted, no rain",
        "marchitas por falta de agua",
        "cattle at night",
        "ganado",
        "zompopos",
        "slugs",
        "slashed in weeding",
        "cut by a mower of grass",
        "planted deep",
        "stood in water",
        "roots dried out in the sun",
        "fuego",
        "robadas",
        "mole rat",
    ] {
        assert_eq!(died_of(text), DiedOf::Harm, "{text}");
    }
    for text in
        ["died", "unknown", "nobody knows why", "se murieron, nadie sabe de qué", "muertas", "sin causa", "xyz", ""]
    {
        assert_eq!(died_of(text), DiedOf::NotSaid, "{text}");
    }
}

#[test]
fn what_has_other_hosts_alone_harms_no_others_in_a_bed() {
    assert!(!harms("Panama disease", Some("Coffea arabica")) && harms("Panama disease", Some("Musa acuminata")));
    assert!(harms("panama", None) && harms("nematodes", Some("Coffea arabica")));
    assert!(!harms("swollen shoot virus", Some("Coffea arabica")) && harms("CSSV", Some("Theobroma cacao")));
}

#[test]
fn every_list_of_names_is_read() {
    let lists: Lists = toml::from_str(WORDS).unwrap();
    for names in [&lists.incurable, &lists.eater, &lists.comes_and_goes] {
        assert!(names.words.len() > 20);
    }
    for word in lists.rot.words.iter().chain(&lists.sign.words).chain(&lists.leaf.words) {
        let plain = folded(word).replace('-', " ");
        assert_eq!(plain, word.replace('-', " "), "no capitals, no accents");
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
    for (one, other) in [("leaf spot", "leaf miner"), ("aphids", "mites"), ("mancha de la hoja", "minador de la hoja")]
    {
        assert!(!is_same_pest(one, other), "{one} / {other}");
    }
    assert!(!comes_along("rats") && !comes_along("ratones") && comes_along("gallina ciega") && comes_along("mites"));
    assert!(says_none("none seen") && says_none("ninguna") && !says_none("nematodes"));
}
