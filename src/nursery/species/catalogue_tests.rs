//! Tests of the catalogue and a walk over every built-in profile.

use super::*;
use crate::nursery::species::figure::{Figure, Flag};
use crate::nursery::species::profile::{Danger, Stem, Storage, Template};
use serde_json::json;

fn species(written: &str) -> Arc<Profile> {
    let catalogue = Catalogue::built_in();
    let key = catalogue.find(written).unwrap_or_else(|| panic!("{written} is not known"));
    catalogue.get(&key).unwrap().clone()
}

fn own(value: Value) -> Map<String, Value> {
    value.as_object().unwrap().clone()
}

/// The value, flag and a word that must stand in its source.
fn reads<T: PartialEq + std::fmt::Debug>(figure: &Option<Figure<T>>, value: T, flag: Flag, source: &str) {
    let figure = figure.as_ref().expect("the figure is known");
    assert_eq!((&figure.value, figure.flag), (&value, flag), "{}", figure.source);
    assert!(figure.source.contains(source), "'{}' does not name {source}", figure.source);
}

#[test]
fn every_text_is_read_and_makes_sense() {
    for (file, text) in TEXTS {
        let profile: Profile = toml::from_str(text).unwrap_or_else(|fault| panic!("{file}: {fault}"));
        assert_eq!(crate::nursery::species::fault(&profile), None, "{file}");
        assert!(text.starts_with(&format!("key = \"{}\"\n", profile.key)), "{file} begins with its key");
        assert!(file.ends_with(&format!("/{}.toml", profile.code)), "{file} holds {}", profile.code);
        assert!(profile.group.is_some(), "{file}");
        assert!(!profile.names.en.is_empty() && !profile.names.es.is_empty(), "{file}");
        assert!(!profile.scientific.is_empty(), "{file}");
    }
    let roles = |role| Catalogue::built_in().iter().filter(|(_, profile)| profile.role == role).count();
    assert_eq!((roles(Role::Nursery), roles(Role::Nurse)), (122, 38));
    let mut folders = std::collections::BTreeMap::<&str, usize>::new();
    for (file, _) in TEXTS {
        *folders.entry(file.split('/').next().unwrap()).or_default() += 1;
    }
    assert!(folders.values().all(|files| *files <= 30), "{folders:?}");
}

#[test]
fn every_file_of_the_folders_is_a_built_in_profile() {
    let here = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/nursery/species");
    let mut files = Vec::new();
    for folder in std::fs::read_dir(&here).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_dir()) {
        for file in std::fs::read_dir(&folder).unwrap() {
            files.push(file.unwrap().path().strip_prefix(&here).unwrap().to_str().unwrap().replace('\\', "/"));
        }
    }
    files.sort();
    assert_eq!(files, TEXTS.iter().map(|(file, _)| file.to_string()).collect::<Vec<_>>());
}

/// What a grower asks first of a plant: seed type, days to emerge, months in the nursery, light in the field, dangers. What is
/// unknown is said on its page; this list holds what that is, so that a figure that is lost is noticed.
#[test]
fn every_species_says_the_five_things_or_is_known_not_to() {
    let mut unknown = Vec::new();
    for (key, profile) in Catalogue::built_in().iter() {
        let seed = profile.raised_without_seed().is_none();
        for (what, known) in [
            ("seed", !seed || profile.storage.is_some()),
            ("emerges", !seed || profile.emerge_first_days.is_some()),
            ("months", profile.is_set_in_place() || profile.plantable_least_days.is_some()),
            ("light", profile.outplant_shade_most_pct.is_some() || profile.shade_tolerance.is_some()),
            ("danger", profile.dangers().is_some()),
        ] {
            if !known {
                unknown.push(format!("{key} {what}"));
            }
        }
    }
    assert_eq!(unknown, UNKNOWN);
}

/// What no profile says yet.
const UNKNOWN: &[&str] = &[
    "CTR seed",
    "GIG months",
    "MAI seed",
    "PIG seed",
    "PIN months",
    "REM months",
    "TEP seed",
    "TUM months",
    "VAI months",
];

#[test]
fn every_figure_names_a_source_and_never_a_bare_tag() {
    for (key, profile) in Catalogue::built_in().iter() {
        for (name, _, source, flag) in profile.figures() {
            let first = source.split([' ', ',', ';']).next().unwrap_or("");
            let bare = source.len() <= 8 || (source == first && source != "common");
            assert!(!bare, "{key} {name}: '{source}' is a tag, not a source");
            assert_ne!(flag, Flag::Own, "{key} {name}");
            if flag == Flag::Common {
                let says = source.contains("common practice");
                assert!(says, "{key} {name}: '{source}' is flagged common practice");
            }
            assert_eq!(flag == Flag::Ours, source.starts_with("ours"), "{key} {name}: '{source}'");
            if flag == Flag::Seen {
                assert!(!source.starts_with("common practice"), "{key} {name}: '{source}' is flagged seen");
            }
            // What is recalled of no work is common practice, and what is reasoned from a relative is ours.
            let recalled = ["general trade", "trade literature", "recalled from", "common practice"];
            if flag == Flag::Memory {
                assert!(
                    recalled.iter().all(|word| !source.starts_with(word)),
                    "{key} {name}: '{source}' names no work"
                );
            }
            if matches!(flag, Flag::Seen | Flag::Memory) {
                let inferred = ["kinship", "read for ", "a few weeks for", "is our reading", "for years, closed"];
                let found = inferred.iter().find(|word| source.contains(**word));
                assert_eq!(found, None, "{key} {name}: '{source}' is flagged {flag:?}");
            }
        }
    }
}

/// Compendia of seed, climate and crops that hold no nursery bags, leaves, shade nets or days until roots circle.
const NO_NURSERY_BOOKS: [&str; 6] = ["Hong, Linington", "Orwa", "Nakasone", "Samson", "Morton", "Greaves"];

#[test]
fn no_work_is_cited_for_what_it_cannot_hold() {
    let of_the_nursery = [
        "container_ml",
        "container_depth_cm",
        "leaves_least",
        "leaves_in_pairs",
        "leaves_note",
        "nursery_shade",
        "plantable_most_days",
        "outplant_shade_least_pct",
        "outplant_shade_most_pct",
    ];
    for (key, profile) in Catalogue::built_in().iter() {
        for (name, _, source, _) in profile.figures().into_iter().filter(|(name, ..)| of_the_nursery.contains(name)) {
            let cited = NO_NURSERY_BOOKS.iter().find(|book| source.contains(**book));
            assert_eq!(cited, None, "{key} {name}: '{source}'");
        }
    }
}

/// Works that are of a few things only, by the beginnings of the names of figures that they can hold. Tindall 1983 is on
/// vegetables, of which none is here.
const HOLDS_ONLY: [(&str, &[&str]); 15] = [
    ("Tindall 1983", &[]),
    ("Hong, Linington", &["storage"]),
    ("Seed Information Database", &["storage", "seeds_per_kg", "germination", "pretreatment", "water_need"]),
    (
        "Seed Leaflet",
        &["storage", "seeds_per_kg", "germination", "emerge", "pretreatment", "sow_place", "plantable", "water_need"],
    ),
    ("ISTA Rules", &["emerge", "germination"]),
    ("Lima et al. 2014", &["storage"]),
    ("Lima et al. 2005", &["storage"]),
    ("Gawankar", &["storage", "germination", "seed_dies"]),
    ("Halma & Frolich", &["storage"]),
    ("Grogan & Galv", &["storage", "germination", "outplant"]),
    ("Mexal", &["collar_floor"]),
    ("CABI", &["danger"]),
    ("Shrivastava", &["danger"]),
    ("Neto et al. 2003", &["danger"]),
    ("Allen et al. 1998", &["depletion_fraction", "water_need", "soil_effect", "growth_points", "stem_life"]),
];

#[test]
fn a_work_of_a_few_things_is_cited_for_those_alone() {
    let mut cited = std::collections::BTreeSet::new();
    let mut wrong = Vec::new();
    for (key, profile) in Catalogue::built_in().iter() {
        // What is ours names what it is reasoned from.
        for (name, _, source, _) in profile.figures().into_iter().filter(|(.., flag)| *flag != Flag::Ours) {
            for (work, holds) in HOLDS_ONLY.iter().filter(|(work, _)| source.contains(work)) {
                cited.insert(*work);
                if !holds.iter().any(|begins| name.starts_with(begins)) {
                    wrong.push(format!("{key} {name}: '{source}'"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let never: Vec<&str> = HOLDS_ONLY.iter().map(|(work, _)| *work).filter(|work| !cited.contains(work)).collect();
    assert_eq!(never, ["Tindall 1983"], "a work that nobody cites guards nothing");
}

#[test]
fn a_work_is_named_and_not_where_it_lies_and_a_weak_page_is_called_so() {
    for (key, profile) in Catalogue::built_in().iter() {
        for (name, _, source, _) in profile.figures() {
            for place in ["www", "http", ".com", ".org", ".co.", ".rw", ".net", "blog", "Scribd", "hobby", "AgEcon"] {
                assert!(!source.contains(place), "{key} {name}: '{source}' names {place}");
            }
            let nameless = ["a page on", "pages on", "a page of", "a page after", "a text on"].iter();
            if nameless.clone().any(|word| source.starts_with(word)) {
                assert!(source.contains("weak") || source.contains("after "), "{key} {name}: '{source}'");
            }
        }
    }
}

/// So many figures were read in the source that they name; a figure that loses its source is noticed.
const FIGURES_SEEN: usize = 499;

/// Figures that a verdict or a sowing hangs on.
const DECIDING: [&str; 18] = [
    "storage",
    "storage_ambient_days",
    "storage_in_pod_days",
    "storage_mucilage_on_days",
    "storage_washed_moist_days",
    "storage_dry_sealed_days",
    "storage_cold_days",
    "germination_fresh_pct",
    "emerge_first_days",
    "emerge_half_days",
    "emerge_last_days",
    "plantable_least_days",
    "plantable_usual_days",
    "height_least_cm",
    "collar_floor_mm",
    "hardening_days",
    "outplant_shade_least_pct",
    "outplant_shade_most_pct",
];
/// So many of them were read.
const DECIDING_SEEN: usize = 261;

#[test]
fn so_many_figures_were_read_in_their_source_and_most_decide_something() {
    let catalogue = Catalogue::built_in();
    let figures = catalogue.iter().flat_map(|(_, profile)| profile.figures());
    let seen: Vec<&str> = figures.filter(|(_, _, _, flag)| *flag == Flag::Seen).map(|(name, ..)| name).collect();
    assert!(seen.len() >= FIGURES_SEEN, "{}", seen.len());
    let deciding = seen.iter().filter(|name| DECIDING.contains(name)).count();
    assert!(deciding >= DECIDING_SEEN, "{deciding}");
}

#[test]
fn what_can_hurt_has_its_word_of_danger() {
    for (name, danger) in [
        ("castor bean", Danger::PoisonousSeed),
        ("Jatropha curcas", Danger::PoisonousSeed),
        ("leucaena", Danger::ToxicToLivestock),
        ("gliricidia", Danger::ToxicToDogs),
        ("gliricidia", Danger::ToxicToLivestock),
        ("tephrosia", Danger::ToxicToFish),
        ("tephrosia", Danger::PoisonousLeaf),
        ("cassava", Danger::RawCyanide),
        ("mango", Danger::IrritatingSap),
        ("cashew", Danger::ShellOil),
        ("jackfruit", Danger::IrritatingSap),
        ("papaya", Danger::IrritatingSap),
        ("macadamia", Danger::ToxicToDogs),
        ("cacao", Danger::ToxicToDogs),
        ("avocado", Danger::ToxicToLivestock),
        ("citrus rootstock", Danger::Spines),
        ("orange", Danger::Spines),
        ("mountain immortelle", Danger::Spines),
        ("peach palm", Danger::Spines),
        ("kapok", Danger::Spines),
        ("star fruit", Danger::HarmsWeakKidneys),
        ("neem", Danger::PoisonousSeed),
    ] {
        assert!(species(name).dangers().unwrap().contains(&danger), "{name}: {danger:?}");
    }
}

#[test]
fn what_is_raised_in_the_nursery_has_what_readiness_needs() {
    for (key, profile) in thick_ones("nursery_trees/") {
        let known: Vec<&str> = profile.figures().iter().map(|(name, ..)| *name).collect();
        for needed in [
            "storage",
            "germination_fresh_pct",
            "emerge_first_days",
            "emerge_half_days",
            "emerge_last_days",
            "container_ml",
            "container_depth_cm",
            "plantable_least_days",
            "plantable_usual_days",
            "plantable_most_days",
            "height_least_cm",
            "height_most_cm",
            "stem",
            "outplant_shade_least_pct",
            "outplant_shade_most_pct",
            "hardening_template",
            "hardening_days",
            "hardening_steps",
        ] {
            assert!(known.contains(&needed), "{key} has no {needed}");
        }
        let woody = profile.stem.as_ref().unwrap().value == Stem::Woody;
        assert_eq!(profile.collar_floor_mm.is_some(), woody, "{key}: a collar floor goes with a woody stem");
        let steps = &profile.hardening_steps.as_ref().unwrap().value;
        let first = f64::from(steps[0].days_before);
        assert_eq!(first, profile.hardening_days.as_ref().unwrap().value, "{key}");
        let last_light = steps.iter().rev().find(|step| step.shade_pct.is_some() || step.bed_shade).unwrap();
        assert!(last_light.bed_shade, "{key}: the last step aims at the light of the bed");
    }
}

/// The profiles of a folder of the first ones, of which more is known than of the others.
fn thick_ones(folder: &str) -> Vec<(SpeciesKey, Profile)> {
    let texts = TEXTS.iter().filter(|(file, _)| file.starts_with(folder));
    let profiles = texts.map(|(_, text)| toml::from_str::<Profile>(text).unwrap());
    profiles.map(|profile| (profile.key.clone(), profile)).collect()
}

#[test]
fn every_nurse_plant_grows_and_gives_shade() {
    for (key, profile) in thick_ones("nurse_plants/") {
        let points = &profile.growth_points.as_ref().unwrap_or_else(|| panic!("{key} does not grow")).value;
        assert!(points.len() >= 4, "{key}");
        assert!(profile.useful_shade_months.is_some() && profile.light_transmitted_least_pct.is_some(), "{key}");
        assert!(profile.notes.iter().any(|note| note.contains("tape measure")), "{key}: the estimates are called so");
    }
}

#[test]
fn codes_are_unique_and_every_name_finds_its_own_species() {
    let catalogue = Catalogue::built_in();
    let mut codes = std::collections::BTreeSet::new();
    for (key, profile) in catalogue.iter() {
        assert!(codes.insert(profile.code.clone()), "{key}: the code {} is taken", profile.code);
        assert_eq!(catalogue.shared_names(profile), Vec::new(), "{key}");
        for (name, kind) in names_of(profile).into_iter().filter(|(_, kind)| *kind < NameKind::Common) {
            // "cas" is a fruit and no cassava: such a key counts only as it is written in files.
            let found = catalogue.find(&name);
            let own = profile.never_confuse_with.iter().all(|never| *never != name);
            assert_eq!(found.as_ref(), Some(key).filter(|_| own), "{kind:?} {name}");
        }
        assert_eq!(catalogue.find(key.as_str()).as_ref(), Some(key), "the key itself");
    }
}

#[test]
fn a_species_is_found_as_people_write_it() {
    let catalogue = Catalogue::built_in();
    let found = |written: &str| catalogue.find(written).map(|key| key.to_string());
    for (written, key) in [
        ("Coffea arabica", "COA"),
        ("coffea  ARABICA", "COA"),
        ("coa", "COA"),
        ("cof", "COA"),
        ("Coffee", "COA"),
        ("CAFE", "COA"),
        ("rob", "COR"),
        ("Musa AAB", "PLA"),
        ("Musa AAA", "BAN"),
        ("Musa AAA (Cavendish type)", "BAN"),
        ("Tephrosia candida", "TEP"),
        ("Citrus spp.", "CIT"),
        ("Citrus", "CIT"),
        ("guanabana", "SOU"),
        ("Mata-ratón", "GLI"),
        ("pigeon_pea", "PIG"),
        ("higuerilla", "CTR"),
    ] {
        assert_eq!(found(written).as_deref(), Some(key), "{written}");
    }
    assert_eq!(found("dragon fruit"), None);
    assert_eq!(catalogue.nearest("pitahaya"), Vec::<String>::new());
    assert_eq!(found(" "), None);
    assert_eq!(catalogue.nearest("grevilea robusta").first().map(String::as_str), Some("Grevillea robusta"));
    assert!(catalogue.nearest("avocadoo").contains(&"avocado".to_string()));
}

#[test]
fn cacao_as_its_sources_say() {
    let cacao = species("cacao");
    reads(&cacao.storage, Storage::Recalcitrant, Flag::Seen, "Kew");
    reads(&cacao.storage_in_pod_days, 7.0, Flag::Seen, "FAO Better Farming Series");
    reads(&cacao.storage_mucilage_on_days, 4.0, Flag::Ours, "Journal of Botany");
    reads(&cacao.storage_washed_moist_days, 32.0, Flag::Ours, "1938359");
    reads(&cacao.outplant_shade_least_pct, 40.0, Flag::Seen, "AAR");
    reads(&cacao.outplant_shade_most_pct, 70.0, Flag::Seen, "Trinidad");
    reads(&cacao.plantable_usual_days, 150.0, Flag::Seen, "4-6 months: the middle");
    reads(&cacao.collar_floor_mm, 6.0, Flag::Ours, "none is published");
    reads(&cacao.plantable_least_days, 120.0, Flag::Seen, "seedlings of 4-6 months");
    reads(&cacao.seeds_per_kg_most, 730.0, Flag::Seen, "Acta Horticulturae");
    reads(&cacao.hardening_template, Template::Shade, Flag::Common, "common practice");
    reads(&cacao.depletion_fraction, 0.3, Flag::Seen, "Allen et al. 1998");
    assert_eq!(cacao.hardening_steps.as_ref().unwrap().value[0].shade_pct, Some(55.0));
    assert_eq!((cacao.row_m.as_ref().unwrap().value, cacao.in_row_m.as_ref().unwrap().value), (3.0, 3.0));
}

#[test]
fn coffee_as_its_sources_say() {
    let coffee = species("coffee");
    reads(&coffee.storage_ambient_days, 90.0, Flag::Seen, "ae939e");
    reads(&coffee.emerge_first_days, 40.0, Flag::Seen, "6 weeks");
    reads(&coffee.plantable_least_days, 210.0, Flag::Seen, "4-5 in the nursery");
    reads(&coffee.hardening_days, 28.0, Flag::Common, "Tearfund");
    reads(&coffee.height_least_cm, 20.0, Flag::Seen, "Coffee Organization");
    reads(&coffee.leaves_least, 5.0, Flag::Memory, "Wintgens 2004");
    reads(&coffee.leaves_in_pairs, true, Flag::Memory, "Wintgens 2004");
    reads(&coffee.outplant_shade_most_pct, 50.0, Flag::Common, "common practice");
    reads(&coffee.container_ml, 1000.0, Flag::Common, "Oliveira et al. 2015");
}

#[test]
fn cedrela_mahogany_and_gliricidia_as_their_sources_say() {
    let cedrela = species("Cedrela odorata");
    reads(&cedrela.collar_floor_mm, 4.0, Flag::Seen, "Ecology and Management 168:125-133");
    reads(&cedrela.height_least_cm, 25.0, Flag::Ours, "Wightman");
    reads(&cedrela.storage_ambient_days, 180.0, Flag::Seen, "6 months");
    reads(&cedrela.hardening_template, Template::PartShade, Flag::Seen, "Espelta 2011");
    reads(&cedrela.plantable_least_days, 90.0, Flag::Seen, "3 months");
    reads(&cedrela.emerge_last_days, 30.0, Flag::Seen, "CATIE");
    reads(&cedrela.germination_fresh_pct, 62.0, Flag::Seen, "83:225-234");
    reads(&cedrela.plantable_usual_days, 110.0, Flag::Common, "common practice");
    let mahogany = species("caoba");
    reads(&mahogany.collar_floor_mm, 5.0, Flag::Seen, "over 5 mm");
    reads(&mahogany.seeds_per_kg_least, 1600.0, Flag::Seen, "Mayhew & Newton 1998");
    let gliricidia = species("madre cacao");
    reads(&gliricidia.collar_floor_mm, 6.0, Flag::Seen, "6-8 mm");
    reads(&gliricidia.emerge_first_days, 4.0, Flag::Seen, "CATIE");
    reads(&gliricidia.emerge_last_days, 15.0, Flag::Seen, "CATIE");
    reads(&gliricidia.seeds_per_kg_most, 13_000.0, Flag::Seen, "Winrock");
    reads(&gliricidia.plantable_usual_days, 90.0, Flag::Seen, "3-4 months");
    let published: Vec<String> = Catalogue::built_in()
        .iter()
        .filter(|(_, profile)| profile.collar_floor_mm.as_ref().is_some_and(|floor| floor.flag == Flag::Seen))
        .map(|(key, _)| key.to_string())
        .collect();
    assert_eq!(published, ["CED", "GLI", "SWI"], "no other collar floor is published");
}

#[test]
fn cacao_jackfruit_mahogany_and_moringa_as_their_sources_say() {
    let cacao = species("cacao");
    reads(&cacao.seed_dies_below_c, 10.0, Flag::Ours, "Pertanika 14:15-19");
    reads(&cacao.germination_fresh_pct, 90.0, Flag::Seen, "80-100 %");
    let jackfruit = species("jackfruit");
    // A closed bottle is no moist sawdust.
    reads(&jackfruit.storage_washed_moist_days, 30.0, Flag::Ours, "closed bottle");
    reads(&jackfruit.seed_dies_below_c, 10.0, Flag::Ours, "Gawankar et al. 2019");
    reads(&jackfruit.emerge_half_days, 28.0, Flag::Seen, "17-28 days");
    let mahogany = species("caoba");
    reads(&mahogany.emerge_half_days, 16.0, Flag::Seen, "INIA Peru");
    reads(&mahogany.plantable_usual_days, 180.0, Flag::Seen, "6 months");
    reads(&species("moringa").emerge_half_days, 9.0, Flag::Seen, "half on day 9");
    // Cold that kills is known only of seed that dies when dried.
    for (key, profile) in Catalogue::built_in().iter().filter(|(_, profile)| profile.seed_dies_below_c.is_some()) {
        assert_eq!(profile.storage.as_ref().map(|storage| storage.value), Some(Storage::Recalcitrant), "{key}");
    }
}

#[test]
fn laurel_pigeon_pea_teak_and_poro_as_their_sources_say() {
    reads(&species("Cordia alliodora").storage, Storage::Orthodox, Flag::Memory, "Hong, Linington");
    let pigeon_pea = species("pigeon pea");
    reads(&pigeon_pea.seeds_per_kg_least, 5_000.0, Flag::Memory, "grain kinds");
    reads(&pigeon_pea.seeds_per_kg_most, 18_000.0, Flag::Seen, "forage kinds");
    let teak = species("Tectona grandis");
    reads(&teak.emerge_half_days, 40.0, Flag::Seen, "Agnote 812");
    reads(&teak.emerge_last_days, 85.0, Flag::Seen, "Agnote 812");
    let poro = species("Erythrina poeppigiana");
    reads(&poro.plantable_least_days, 90.0, Flag::Seen, "CATIE");
    reads(&poro.height_least_cm, 15.0, Flag::Seen, "CATIE");
    reads(&species("Prunus africana").outplant_shade_least_pct, 0.0, Flag::Ours, "Danida");
    reads(&species("macadamia").storage_ambient_days, 365.0, Flag::Ours, "7 years");
}

#[test]
fn banana_and_cassava_as_their_sources_say() {
    let banana = species("banana");
    reads(&banana.depletion_fraction, 0.35, Flag::Seen, "Allen et al. 1998");
    reads(&banana.row_m, 3.0, Flag::Seen, "IITA");
    reads(&banana.stem_life_most_months, 14.0, Flag::Common, "common practice");
    let year = banana.growth_points.as_ref().unwrap().value.iter().find(|point| point.month == 12.0).copied().unwrap();
    assert_eq!((year.height_m, year.radius_m), (3.0, 1.8));
    let cassava = species("yuca");
    reads(&cassava.yield_least_kg, 2.0, Flag::Common, "common practice");
    reads(&cassava.yield_most_kg, 4.0, Flag::Common, "common practice");
    reads(&cassava.shade_tolerance, "none (intolerant of shade)".to_string(), Flag::Seen, "Blomme");
}

#[test]
fn moringa_and_papaya_have_soft_stems_and_polyembryonic_seed_gives_more() {
    let soft: Vec<String> = thick_ones("nursery_trees/")
        .iter()
        .filter(|(_, profile)| profile.stem.as_ref().is_some_and(|stem| stem.value == Stem::Soft))
        .map(|(key, _)| key.to_string())
        .collect();
    assert_eq!(soft, ["MOR", "PAP"]);
    reads(&species("teca").seedlings_per_seed_most, 4.0, Flag::Seen, "viable embryos");
    reads(&species("mango").seedlings_per_seed_most, 3.0, Flag::Common, "polyembryonic");
    assert_eq!(species("avocado").seedlings_per_seed_most, None);
}

#[test]
fn what_is_sold_grafted_is_said_to_be_so() {
    let catalogue = Catalogue::built_in();
    let grafted = catalogue.iter().filter(|(_, profile)| profile.usually_grafted.as_ref().is_some_and(|is| is.value));
    let mut codes: Vec<&str> = grafted.map(|(_, profile)| profile.code.as_str()).collect();
    codes.sort_unstable();
    let fruit = ["avo", "cah", "cai", "che", "cit", "dui", "lem", "maa", "mac", "mae", "man", "num", "ora", "pes"];
    let all: Vec<&str> = fruit.into_iter().chain(["ram", "rue", "sao", "stf"]).collect();
    assert_eq!(codes, all);
    reads(&species("avocado").usually_grafted, true, Flag::Common, "seedling is the stock");
    reads(&species("nutmeg").usually_grafted, true, Flag::Seen, "half of the seedlings are male");
}

#[test]
fn own_figures_lie_over_a_known_species() {
    let mut catalogue = Catalogue::built_in();
    let laid = catalogue.with_own("café", &own(json!({"plantable_least_days": 240})), "our book 2024").unwrap();
    assert_eq!(laid.0.as_str(), "COA");
    assert_eq!(catalogue.get(&laid.0).unwrap().plantable_least_days.as_ref().unwrap().value, 210.0, "not yet put in");
    catalogue.insert(laid.1);
    let coffee = catalogue.get(&laid.0).unwrap();
    reads(&coffee.plantable_least_days, 240.0, Flag::Own, "our book 2024");
    reads(&coffee.height_least_cm, 20.0, Flag::Seen, "Coffee Organization");
    assert_eq!(Catalogue::built_in().get(&laid.0).unwrap().plantable_least_days.as_ref().unwrap().value, 210.0);
    assert_eq!(catalogue.find("cafeto"), Some(laid.0.clone()));

    let above = own(json!({"plantable_least_days": 9999}));
    assert!(catalogue.with_own("coffee", &above, "x").unwrap_err().to_string().contains("plantable_least_days"));
    let shade = own(json!({"outplant_shade_max_pct": 120}));
    assert!(catalogue.with_own("coffee", &shade, "x").unwrap_err().to_string().contains("more than 100"));
    let unknown = own(json!({"hight_least_cm": 20}));
    assert!(
        catalogue.with_own("coffee", &unknown, "x").unwrap_err().to_string().contains("nearest is 'height_least_cm'")
    );
    let empty = own(json!({"row_m": 3}));
    assert!(catalogue.with_own("coffee", &empty, " ").unwrap_err().to_string().contains("no source"));
}

#[test]
fn a_new_species_gets_a_key_a_free_code_and_its_names() {
    let mut catalogue = Catalogue::built_in();
    let figures = json!({"plantable_usual_days": 150, "names": {"en": ["podocarp"]}});
    let (key, profile) = catalogue.with_own("Podocarpus oleifolius", &own(figures), "our book").unwrap();
    assert_eq!(
        (key.as_str(), profile.code.as_str(), profile.scientific.as_str()),
        ("Podocarpus oleifolius", "pod", "Podocarpus oleifolius")
    );
    catalogue.insert(profile);
    assert_eq!(catalogue.find("podocarp"), Some(key.clone()));
    assert_eq!(catalogue.find("pod"), Some(key.clone()));
    let again = catalogue.with_own("PODOCARP", &own(json!({"row_m": 4})), "our book").unwrap();
    assert_eq!(again.0, key);
    assert_eq!(again.1.plantable_usual_days.as_ref().unwrap().value, 150.0);

    let (_, grewia) = catalogue.with_own("Grewia", &own(json!({})), "our book").unwrap();
    assert_eq!(grewia.code, "grw", "gre is the code of grevillea, and so is its next letter");
    let (_, ox) = catalogue.with_own("ñu", &own(json!({"code": "ÑUU", "role": "nurse"})), "our book").unwrap();
    assert_eq!((ox.code.as_str(), ox.role), ("nuu", Role::Nurse));
    assert!(
        catalogue
            .with_own("茶", &own(json!({})), "our book")
            .unwrap_err()
            .to_string()
            .contains("code of three letters")
    );
    assert!(
        catalogue.with_own("a\u{202e}b", &own(json!({})), "our book").unwrap_err().to_string().contains("invisible")
    );
    assert!(catalogue.with_own(" ", &own(json!({})), "our book").is_err());
}

#[test]
fn what_a_book_named_before_a_species_was_built_in_keeps_its_meaning() {
    let mut catalogue = Catalogue::built_in();
    let built_in = catalogue.find("Markhamia lutea").unwrap();
    let key = SpeciesKey::new("Markhamia lutea");
    let figures = own(json!({"plantable_least_days": 100, "names": {"en": ["markhamia"]}}));
    let (stored, profile) = catalogue.with_stored(&key, &figures, "this nursery").unwrap();
    assert_eq!((&stored, profile.emerge_first_days.is_none()), (&key, true), "nothing of the built-in one is taken");
    catalogue.insert(profile);
    assert_eq!(catalogue.find("Markhamia lutea"), Some(key.clone()));
    assert_ne!(built_in, key);
    // Its next figures are laid over it, and its old names are no news.
    let (again, profile) = catalogue.with_own("Markhamia lutea", &own(json!({"row_m": 4})), "this nursery").unwrap();
    assert_eq!((again, profile.plantable_least_days.as_ref().unwrap().value), (key, 100.0));
    assert_eq!(catalogue.shared_names(&profile), Vec::new());
}

#[test]
fn a_word_that_several_plants_bear_is_no_new_species() {
    let refused = Catalogue::built_in().with_own("limón", &own(json!({"row_m": 4})), "this nursery").unwrap_err();
    let ProfileFault::SeveralPlants { name, plants } = refused else { panic!("{refused}") };
    assert_eq!((name.as_str(), plants.len()), ("limón", 3));
}

#[test]
fn shared_names_are_told_and_the_stronger_name_leads() {
    let mut catalogue = Catalogue::built_in();
    let names = json!({"names": {"en": ["coffee"]}, "code": "gre"});
    let (key, profile) = catalogue.with_own("Kahawa", &own(names), "our book").unwrap();
    let shared: Vec<String> =
        catalogue.shared_names(&profile).into_iter().map(|(name, at)| format!("{name} {at}")).collect();
    assert_eq!(shared, ["coffee COA", "gre GRE"]);
    catalogue.insert(profile);
    let of_coffee = catalogue.resolve("coffee").several();
    assert_eq!(of_coffee, [SpeciesKey::new("COA"), key.clone()], "asked about, the earlier one first");
    assert_eq!(catalogue.find("gre").unwrap().as_str(), "GRE");
    assert_eq!(catalogue.find("kahawa"), Some(key));
    catalogue.insert(Profile::named(
        SpeciesKey::new("maize"),
        "",
        "mzz",
        Role::Nurse,
        Names { en: vec!["m".into()], es: vec![] },
    ));
    assert_eq!(catalogue.find("maize").unwrap().as_str(), "maize", "a key leads over a common name");
}
