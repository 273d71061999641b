//! What a verdict says is the true reason, with the entry it rests on, in both languages.

use crate::support::{Book, bed_species, criterion, day, fitting, open_bed, pair, ready_coffee, small_nursery, tray};
use outplant::base::{Moment, SpeciesKey};
use outplant::cli::species::text::species_text;
use outplant::desk::{Now, sample};
use outplant::nursery::entry::types::Roots;
use outplant::nursery::species::Catalogue;
use outplant::reckon::picture::{Criterion, Gap, Measure, PartSeen, Picture, Rule, RuleSource, Source, Standing};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

const TODAY: &str = "2026-04-15";

fn asked(book: &Book, rule: Rule) -> Criterion {
    criterion(&pair(&book.on(TODAY), "cof-1", "Upper 1").criteria, rule).clone()
}

fn said(criterion: &Criterion, about: About) -> (String, String) {
    let one = |lang| Wording::new(lang).reason(criterion, about);
    (one(Lang::En), one(Lang::Es))
}

/// A nursery with a species of its own: 100 least days and nothing else.
fn own_species() -> Book {
    let mut book = small_nursery();
    let profile = json!({"plantable_least_days": 100});
    book.write("2025-01-01", "species_set", json!({"species":"Markhamia lutea","profile":profile}));
    book.write(
        "2025-10-01",
        "plants_received",
        json!({"tray":"mar-1","species":"Markhamia lutea","count":40,"from":"bought","form":"bag","container":"bag",
            "place":"Half shade","age_days":60}),
    );
    book.write(
        "2025-01-01",
        "bed_set",
        json!({"bed":"Upper 1","field":"Upper","length_m":20,"width_m":6,
        "plan":[{"species":"Markhamia lutea","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    book.write("2026-04-01", "light_read", json!({"bed":"Upper 1","light_share":0.6}));
    book
}

#[test]
fn a_species_without_a_shade_band_or_most_days_says_that_its_profile_lacks_them() {
    let own = SpeciesKey::new("Markhamia lutea");
    let picture = own_species().on(TODAY);
    let criteria = &tray(&picture, "mar-1").criteria;
    let step = criterion(criteria, Rule::ExposureStep);
    assert_eq!((step.met(), step.blocks, step.gap()), (None, true, Some(&Gap::NoShadeBand(own.clone()))));
    assert_eq!(step.source, Source::Rule(RuleSource::NoFigure));
    let (english, spanish) = said(step, About::Tray);
    assert!(english.contains("has no shade band") && english.contains("outplant_shade_least_pct"), "{english}");
    assert!(spanish.contains("no dice con cuánta sombra"), "{spanish}");
    let held = criterion(criteria, Rule::DaysInContainer);
    assert_eq!((held.met(), held.blocks, held.gap()), (None, false, Some(&Gap::NoMostDays(own.clone()))));
    assert!(said(held, About::Tray).0.contains("plantable_most_days"));
    // Only what the profile has is needed: no usual and most days are made up.
    assert_eq!(criterion(criteria, Rule::DaysSinceSowing).needed(), Some(Measure::DaysAtLeast(100)));
    let light = criterion(&bed_species(&picture, "Upper 1", own.as_str()).criteria, Rule::LightNow).clone();
    assert_eq!((light.met(), light.blocks, light.gap()), (None, true, Some(&Gap::NoShadeBand(own))));
}

#[test]
fn a_fresh_step_and_shade_put_back_are_two_reasons_with_their_entries() {
    let mut book = fitting();
    let step = book.write("2026-04-12", "shade_set", json!({"tray":"cof-1","shade_pct":40}));
    let fresh = asked(&book, Rule::Hardening);
    assert_eq!(fresh.known(), Some(Measure::FreshStep { days: 3, last: day("2026-04-12") }));
    assert_eq!((fresh.met(), fresh.expected), (Some(false), Some(day("2026-04-17"))));
    assert!(fresh.entries.contains(&step));
    let (english, spanish) = said(&fresh, About::Pair);
    assert!(english.contains("the last step toward the light was on 12 Apr 2026"), "{english}");
    assert!(spanish.contains("el último paso hacia la luz fue el 12 abr 2026"), "{spanish}");
    let back = book.write("2026-04-13", "shade_set", json!({"tray":"cof-1","shade_pct":70}));
    let put_back = asked(&book, Rule::Hardening);
    assert_eq!((&put_back.known(), &put_back.entries), (&Some(Measure::On(day("2026-04-13"))), &vec![back]));
    assert!(said(&put_back, About::Pair).0.contains("put back up on 13 Apr"));
}

#[test]
fn circling_roots_show_no_number_of_days() {
    let mut book = fitting();
    let plug = book.write("2026-04-14", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    let held = asked(&book, Rule::DaysInContainer);
    let roots = |roots| Some(Measure::Roots(roots));
    assert_eq!((&held.needed(), &held.known()), (&roots(Roots::Holds), &roots(Roots::Circling)));
    assert_eq!((held.met(), &held.entries), (Some(false), &vec![plug]));
    let (english, spanish) = said(&held, About::Pair);
    assert!(!english.chars().chain(spanish.chars()).any(|letter| letter.is_ascii_digit()), "{english} / {spanish}");
}

#[test]
fn a_gauge_read_on_some_days_is_told_from_none_at_all() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    open_bed(&mut book, "Upper 1");
    let usual = asked(&book, Rule::Water);
    assert_eq!((usual.met(), &usual.source), (Some(true), &Source::Rule(RuleSource::UsualRains)));
    assert!(said(&usual, About::Pair).0.contains("no gauge was read for 10 days"));
    book.write("2026-04-15", "weather", json!({"rain_mm":4}));
    book.write("2026-04-13", "weather", json!({"rain_mm":3}));
    let partly = asked(&book, Rule::Water);
    assert_eq!(partly.gap(), Some(&Gap::GaugePartly { days_read: 2, of_days: 3, mm: 7.0 }));
    assert!(said(&partly, About::Pair).0.contains("2 of the last 3 days, 7 mm"));
    assert!(said(&partly, About::Pair).1.contains("2 de los últimos 3 días, 7 mm"));
}

#[test]
fn a_rod_pushed_too_hard_is_told_from_one_pushed_too_weakly() {
    let rod = |push_kg: f64, depth_cm: f64| {
        let mut book = fitting();
        let fields = json!({"bed":"Upper 1","rod_mm":8,"push_kg":push_kg,"depth_cm":depth_cm,"wet":true});
        // Long before the bed was read by other means.
        book.write("2025-05-01", "soil_checked", fields);
        criterion(&bed_species(&book.on("2025-06-01"), "Upper 1", "COA").criteria, Rule::Soil).clone()
    };
    let (hard, weak) = (rod(70.0, 60.0), rod(5.0, 12.0));
    assert!(matches!(hard.gap(), Some(Gap::RodTooHard { depth_cm: Some(depth), .. }) if *depth == 60.0), "{hard:?}");
    assert!(matches!(weak.gap(), Some(Gap::RodTooWeak { depth_cm, .. }) if *depth_cm == 12.0), "{weak:?}");
    assert!(said(&hard, About::Bed).0.contains("goes into hard ground too"));
    assert!(said(&weak, About::Bed).0.contains("too weak a push"));
}

#[test]
fn light_read_in_some_rows_names_them() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    open_bed(&mut book, "Upper 1");
    book.write("2026-04-14", "prepared", json!({"bed":"Upper 1","task":"fenced","rows":"1-3"}));
    let fenced = asked(&book, Rule::Fenced);
    assert_eq!(fenced.part, Some(PartSeen { rows: Some("1-3".into()), places: 0, of_rows: Some(4) }));
    assert!(fenced.warns && said(&fenced, About::Pair).0.ends_with("only in rows 1-3 of 4"));
    assert!(said(&fenced, About::Pair).1.ends_with("solo en las hileras 1-3 de 4"));
    // The whole bed was read too: no warning.
    assert_eq!(asked(&book, Rule::LightNow).part, None);
}

#[test]
fn a_figure_near_its_limit_is_told_from_it_and_a_darker_bed_is_no_small_step() {
    // Half shade is 55 % light; the only reading of the bed is this one.
    let read = |share: f64| {
        let mut book = small_nursery();
        ready_coffee(&mut book, "cof-1");
        let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
        let bed = json!({"bed":"Upper 1","field":"Upper","length_m":20,"width_m":6,"plan":plan});
        book.write("2025-01-01", "bed_set", bed);
        book.write("2026-04-14", "light_read", json!({"bed":"Upper 1","light_share":share}));
        asked(&book, Rule::ExposureStep)
    };
    let near = read(0.846);
    assert_eq!(near.met(), Some(false));
    let (english, spanish) = said(&near, About::Pair);
    assert!(english.contains("1.54 times as bright") && spanish.contains("1.54 veces"), "{english} / {spanish}");
    assert!(Wording::new(Lang::En).known_words(&near).is_some_and(|known| known.contains("1.54 times")));
    let darker = read(0.3);
    assert!(darker.met() == Some(true) && !darker.warns);
    assert!(said(&darker, About::Pair).0.contains("darker") && !said(&darker, About::Pair).0.contains("small step"));
}

#[test]
fn ground_work_says_how_long_it_counts() {
    let weeded = asked(&fitting(), Rule::Weeded);
    let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
    assert!(en.source_words(&weeded.source).contains("30 days") && es.source_words(&weeded.source).contains("30 días"));
    let needed = &weeded.needed().unwrap();
    assert_eq!(
        (en.measure(needed), es.measure(needed)),
        ("weeded, at most 30 d ago".to_string(), "deshierbada, hace a lo más 30 d".to_string())
    );
}

#[test]
fn a_bed_without_nurse_plants_is_bare_and_not_nursing() {
    let mut book = fitting();
    book.write("2026-04-14", "held", json!({"bed":"Upper 1","why":"survey"}));
    assert_eq!(bed_species(&book.on(TODAY), "Upper 1", "COA").standing, Standing::Bare);
    book.write(
        "2026-04-14",
        "nurse_planted",
        json!({"bed":"Upper 1","nurse":"castor","count":9,"row_m":2,"in_row_m":2}),
    );
    assert_eq!(bed_species(&book.on(TODAY), "Upper 1", "COA").standing, Standing::Nursing);
}

/// English words that no Spanish sentence and no name of a publication holds.
const ENGLISH: [&str; 17] = [
    " the ",
    " with ",
    " from ",
    " is ",
    " are ",
    " not ",
    " days",
    " weeks",
    " leaves",
    " seeds",
    " only ",
    " needed",
    " read ",
    "common practice",
    "recalled",
    "weak page",
    ", weak",
];

fn leftovers(page: &str) -> Vec<String> {
    // Publications whose names hold such a word.
    const TITLES: [&str; 6] = [
        "of the University of Puerto Rico",
        "of the Ghana Science Association",
        "of the Indian Society of Coastal Agricultural Research",
        "Advances in the propagation of rambutan tree",
        "Viability of Moringa oleifera seeds",
        "storage of mango seeds",
    ];
    let plain = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let plain = TITLES.iter().fold(plain, |plain, title| plain.replace(title, ""));
    ENGLISH.iter().filter(|word| plain.contains(*word)).map(|word| format!("'{word}' in {plain}")).collect()
}

fn sample_picture() -> Picture {
    let folder = tempfile::tempdir().unwrap();
    let today = day("2026-11-25");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now)
        .unwrap_or_else(|fault| panic!("{fault:?}"));
    desk.picture()
}

#[test]
fn nothing_english_is_left_in_a_spanish_verdict_of_the_sample() {
    let picture = sample_picture();
    let trays = picture.trays.values().flat_map(|tray| tray.criteria.iter().map(|one| (one, About::Tray)));
    let beds = picture.beds.values().flat_map(|bed| &bed.species);
    let beds = beds.flat_map(|line| line.criteria.iter().map(|one| (one, About::Bed)));
    let pairs = picture.pairs.iter().flat_map(|pair| pair.criteria.iter().map(|one| (one, About::Pair)));
    let es = Wording::new(Lang::Es);
    let mut seen = 0;
    for (criterion, about) in trays.chain(beds).chain(pairs) {
        seen += 1;
        let mut texts = vec![es.source_words(&criterion.source), es.rule_name(criterion.rule())];
        // A person's own words stay as they were written.
        if !matches!(criterion.known(), Some(Measure::Said(_) | Measure::Pest { .. })) {
            texts.push(es.reason(criterion, about));
            texts.extend(es.known_words(criterion));
            texts.extend(criterion.needed().map(|needed| es.measure(&needed)));
        }
        assert_eq!(texts.iter().flat_map(|text| leftovers(text)).collect::<Vec<_>>(), Vec::<String>::new());
    }
    assert!(seen > 500, "{seen}");
    let sources = outplant::reckon::round(&picture).stops;
    assert!(sources.len() > 5);
    for stop in &sources {
        assert_eq!(leftovers(&es.source_words(&stop.source)), Vec::<String>::new(), "{}", stop.id);
    }
}

#[test]
fn nothing_english_is_left_on_a_spanish_page_of_a_built_in_species() {
    let catalogue = Catalogue::built_in();
    let es = Wording::new(Lang::Es);
    for (key, profile) in catalogue.iter() {
        let page = species_text(profile, &[], &es, 10_000, false);
        // The English names of a species stand beside its Spanish ones.
        let page: String = page.lines().filter(|line| !line.contains("también")).collect::<Vec<_>>().join("\n");
        assert_eq!(leftovers(&page), Vec::<String>::new(), "{key}");
    }
    // The check itself finds what it looks for.
    assert!(!leftovers("un día from memory, common practice").is_empty());
}
