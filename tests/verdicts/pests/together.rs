//! What plants took along from where they stood together, slips that were put right, and what nobody walks into.

use crate::support::{Book, criterion, fitting, pair, ready_coffee, tray};
use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Criterion, Rule};
use outplant::reckon::round::{RoundReason, round};
use outplant::wording::round::RoundOn;
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

const TODAY: &str = "2026-04-15";

fn of(book: &Book, code: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(TODAY), code).criteria, rule).clone()
}

fn said(asked: &Criterion, about: About) -> [String; 2] {
    [Lang::En, Lang::Es].map(|lang| Wording::new(lang).reason(asked, about))
}

fn moved(book: &mut Book, on: &str, (from, to): (&str, &str), count: u32, how: &str) {
    let body = json!({"from":from,"to":to,"count":count,"how":how,"container":"bag","place":"Half shade"});
    book.write(on, "moved_on", body);
}

#[test]
fn a_slip_of_the_pen_that_the_next_count_puts_right_loses_nobody_a_plant() {
    let held = |slip: u32, then: u32| {
        let mut book = fitting();
        book.write("2026-03-20", "counted", json!({"tray":"cof-1","standing":slip}));
        book.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":then}));
        let on = book.on(TODAY);
        (tray(&on, "cof-1").standing, criterion(&tray(&on, "cof-1").criteria, Rule::Pest).blocks)
    };
    // 50 stood by the books, of 60 seeds.
    assert_eq!((held(480, 48), held(480, 46)), ((48, false), (46, false)));
    assert_eq!(held(480, 30), (30, true), "what is missing beside the slip is asked about");
    assert_eq!(held(480, 470).0, 470, "nobody put it right");
}

#[test]
fn plants_on_which_a_pest_was_seen_are_not_loaded() {
    let can = |share: f64| {
        let mut book = fitting();
        book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":"aphids","share_pct":share}));
        (tray(&book.on(TODAY), "cof-1").plantable.likely, pair(&book.on(TODAY), "cof-1", "Upper 1").plants)
    };
    let (all, _) = can(0.0);
    // 9 % of 48 are 5.
    let (some, load) = can(9.0);
    assert!((all - some - all * 5.0 / 48.0).abs() < 1e-9 && f64::from(load) <= some, "{all} {some} {load}");
}

#[test]
fn nobody_is_sent_to_a_bench_with_a_nest_on_it() {
    for what in ["wasps nest", "bees", "snake", "avispero", "culebra"] {
        let mut book = fitting();
        book.write("2026-04-14", "pest_seen", json!({"place":"Half shade","what":what}));
        let asked = of(&book, "cof-1", Rule::Pest);
        assert!(asked.blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what}");
        let [en, es] = said(&asked, About::Tray);
        assert!(en.contains("seen on this bench") && es.contains("visto en esta mesa"), "{en} {es}");
        let day = round(&book.on(TODAY));
        let cof = Subject::Tray("cof-1".parse().unwrap());
        assert!(!day.stops.iter().chain(&day.can_wait).any(|stop| stop.subject == cof), "{what}");
        let bench = Subject::Place("Half shade".parse().unwrap());
        assert!(day.stay_away.iter().any(|(subject, _)| *subject == bench), "{what}");
        book.write("2026-04-15", "pest_seen", json!({"place":"Half shade","what":what,"share_pct":0}));
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what}");
    }
}

#[test]
fn what_lives_in_soil_is_asked_of_all_that_were_potted_on_from_it_and_what_shows_at_once_is_not() {
    let sister = |left: &str, what: &str| {
        let mut book = fitting();
        ready_coffee(&mut book, "cof-2");
        moved(&mut book, left, ("cof-2", "cof-9"), 30, "potted_on");
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-2","what":what,"share_pct":8}));
        of(&book, "cof-9", Rule::Pest)
    };
    for what in ["root knot", "fusarium wilt", "root rot"] {
        for left in ["2026-03-25", "2026-03-05", "2026-02-20"] {
            let asked = sister(left, what);
            assert!(asked.blocks, "{what} {left}");
            assert!(said(&asked, About::Tray)[0].contains("came out of cof-2"), "{what} {left}");
        }
    }
    assert!(!sister("2026-03-05", "leaf spot").blocks);
}

#[test]
fn of_few_plants_that_came_from_a_sick_tray_no_more_are_thrown_out_than_came() {
    let told = |moved_plants: u32| {
        let mut book = fitting();
        ready_coffee(&mut book, "cof-2");
        book.write("2026-04-12", "pest_seen", json!({"tray":"cof-2","what":"mosaic virus","share_pct":20}));
        moved(&mut book, "2026-04-13", ("cof-2", "cof-1"), moved_plants, "merged");
        said(&of(&book, "cof-1", Rule::Pest), About::Tray)[0].clone()
    };
    // A fifth of all that stand, 51 and 78, and never more than came.
    assert!(told(3).contains("at least 3 of its plants"), "{}", told(3));
    assert!(told(30).contains("at least 16 of its plants"), "{}", told(30));
}

#[test]
fn of_two_plugs_that_differ_the_one_that_fell_apart_counts_until_three_held() {
    let holds = |plugs: &[(&str, &str)]| {
        let mut book = fitting();
        for (on, roots) in plugs {
            book.write(on, "plug_checked", json!({"tray":"cof-1","roots":roots}));
        }
        let plug = of(&book, "cof-1", Rule::Plug);
        (plug.met() == Some(true), said(&plug, About::Tray)[0].contains("another holds"))
    };
    let apart = ("2026-04-12", "crumbles");
    let held = ("2026-04-13", "holds");
    assert_eq!((holds(&[apart]), holds(&[apart, held])), ((false, false), (false, true)));
    assert_eq!((holds(&[apart, held, held]), holds(&[apart, held, held, held])), ((false, true), (true, false)));
    // Two weeks later new roots have grown.
    assert_eq!(holds(&[("2026-03-31", "crumbles"), ("2026-04-14", "holds")]), (true, false));
}

#[test]
fn roots_that_were_cut_while_potting_on_are_cut_whatever_the_order_of_the_sheet() {
    let circles = |cut: Option<&str>| {
        let mut book = fitting();
        book.write("2026-02-28", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
        moved(&mut book, "2026-03-01", ("cof-1", "cof-9"), 48, "potted_on");
        if let Some(on) = cut {
            book.write(on, "roots_cut", json!({"tray":"cof-9"}));
        }
        let asked = of(&book, "cof-9", Rule::DaysInContainer);
        said(&asked, About::Tray)[0].contains("circle")
    };
    assert_eq!((circles(None), circles(Some("2026-03-01")), circles(Some("2026-03-02"))), (true, false, false));
}

#[test]
fn wildlings_are_in_their_bag_since_they_were_bagged() {
    let mut book = fitting();
    let came = json!({"tray":"wild-1","species":"coffee","count":40,"from":"wildling","form":"bag","age_days":300,"height_cm":25,"place":"Deep shade","container":"bag"});
    book.write("2026-01-05", "plants_received", came);
    let asked = of(&book, "wild-1", Rule::DaysInContainer);
    let days = asked.known().map(|known| Wording::new(Lang::En).measure(&known));
    assert_eq!(days.as_deref(), Some("100 d"));
}

#[test]
fn the_word_hardening_alone_hardens_to_no_brighter_bed() {
    let fits = |carried: Option<&str>| {
        let mut book = fitting();
        // Through the months in the shade that it has now.
        book.write("2026-03-20", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
        book.write("2026-03-21", "hardening_begun", json!({"tray":"cof-1"}));
        if let Some(place) = carried {
            book.write("2026-03-21", "carried", json!({"tray":"cof-1","place":place}));
        }
        let picture = book.on(TODAY);
        let hardening =
            pair(&picture, "cof-1", "Upper 1").criteria.iter().find(|asked| asked.rule() == Rule::Hardening);
        (pair(&picture, "cof-1", "Upper 1").fits, hardening.map(|asked| said(asked, About::Tray)[0].clone()))
    };
    let (fits_so, why) = fits(None);
    assert!(!fits_so && why.as_ref().is_some_and(|why| why.contains("the light never changed")), "{why:?}");
    let (_, why) = fits(Some("Half shade"));
    assert!(!why.as_ref().is_some_and(|why| why.contains("the light never changed")), "{why:?}");
}

#[test]
fn shade_trees_that_fell_end_the_light_reading_before_it_and_shrubs_beneath_do_not() {
    let light = |species: &str, lost: u32| {
        let mut book = fitting();
        let trees = json!({"bed":"Upper 1","species":species,"alive":4,"planted_about":"2018-01-01"});
        book.write("2026-01-01", "plants_found", trees);
        book.write(
            "2026-04-10",
            "plants_lost",
            json!({"bed":"Upper 1","species":species,"count":lost,"cause":"storm"}),
        );
        pair(&book.on(TODAY), "cof-1", "Upper 1").fits
    };
    assert_eq!((light("grevillea", 1), light("mahogany", 4), light("plantain", 2)), (false, false, false));
    assert!(light("coffee", 1));
    let mut counted = fitting();
    let trees = json!({"bed":"Upper 1","species":"grevillea","alive":4,"planted_about":"2018-01-01"});
    counted.write("2026-01-01", "plants_found", trees);
    assert!(pair(&counted.on(TODAY), "cof-1", "Upper 1").fits);
    let look = json!({"bed":"Upper 1","species":"grevillea","alive":2,"dead":2});
    counted.write("2026-04-10", "survival_counted", look);
    assert!(!pair(&counted.on(TODAY), "cof-1", "Upper 1").fits);
}

#[test]
fn what_eats_and_goes_is_thrown_out_with_no_soil() {
    for what in ["mole rats", "rats", "ardillas", "taltuzas"] {
        let mut book = fitting();
        book.write("2026-03-01", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":20}));
        book.write("2026-04-13", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":60}));
        let picture = book.on(TODAY);
        let day = round(&picture);
        let stop = day.stops.iter().find(|stop| matches!(stop.why, RoundReason::SickOpen { .. })).unwrap();
        let on = RoundOn { day: picture.day, species: &picture.site.species };
        let why = Wording::new(Lang::En).round_reason(&stop.why, on);
        assert!(why.contains("set something against it") && !why.contains("throw out"), "{why}");
    }
}

#[test]
fn so_many_watered_are_so_many_and_not_all() {
    let asked = |given: &[(&str, Value)]| {
        let mut book = fitting();
        book.write("2026-06-01", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":20}));
        for (on, body) in given {
            book.write(on, "plants_watered", body.clone());
        }
        let day = round(&book.on("2026-06-30"));
        day.stops.iter().chain(&day.can_wait).any(|stop| matches!(stop.why, RoundReason::YoungDry { .. }))
    };
    let some = |count: u32| json!({"bed":"Upper 1","count":count,"litres_each":3});
    assert!(asked(&[("2026-06-28", some(3))]) && !asked(&[("2026-06-28", some(20))]));
    assert!(!asked(&[("2026-06-27", some(12)), ("2026-06-28", some(8))]));
}

#[test]
fn a_label_of_light_that_cannot_be_is_doubted() {
    let doubts = |under: f64, open: f64| {
        let mut book = fitting();
        let read = json!({"bed":"Upper 1","readings":[{"under_lux":under,"open_lux":open}]});
        book.write("2026-04-14", "light_read", read);
        book.on(TODAY).doubts.len()
    };
    assert!(doubts(65_000.0, 40_000.0) > doubts(25_000.0, 40_000.0));
}

#[test]
fn only_words_that_tell_of_nothing_say_that_nothing_was_seen() {
    for what in
        ["no doubt fusarium", "no aphids but rust", "nothing but wilt", "sin duda roya", "sin agallas, pero nemátodos"]
    {
        let mut book = fitting();
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":what}));
        assert!(of(&book, "cof-1", Rule::Pest).blocks, "{what}");
    }
    for what in ["none", "nothing seen", "no pests found", "ninguna plaga", "healthy", "sana", "nada", "sin síntomas"]
    {
        let mut book = fitting();
        book.write("2026-04-10", "pest_seen", json!({"tray":"cof-1","what":"aphids","share_pct":60}));
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":what,"share_pct":0}));
        assert!(!of(&book, "cof-1", Rule::Pest).blocks, "{what}");
    }
}

#[test]
fn after_a_night_of_frost_or_a_day_of_great_heat_plants_are_looked_at_before_they_go() {
    let after = |weather: Value, on: &str| {
        let mut book = fitting();
        book.write(on, "weather", weather);
        book
    };
    let cares = |book: &Book| {
        let asked = of(book, "cof-1", Rule::Pest);
        (asked.warns || asked.blocks).then(|| said(&asked, About::Tray))
    };
    let mut frost = after(json!({"tmin_c":-1.5}), "2026-04-13");
    assert!(of(&frost, "cof-1", Rule::Pest).blocks, "water froze");
    let mut milder = frost.clone();
    milder.write("2026-04-14", "weather", json!({"tmin_c":1.5}));
    assert!(of(&milder, "cof-1", Rule::Pest).blocks, "a milder night takes no frost back");
    assert!(!of(&after(json!({"tmin_c":1.5}), "2026-04-13"), "cof-1", Rule::Pest).blocks, "it may have hurt nothing");
    let [en, es] = cares(&frost).unwrap();
    assert!(en.contains("look for frost") && en.contains("-1.5 °C"), "{en}");
    assert!(es.contains("busque heladas"), "{es}");
    let [heat, _] = cares(&after(json!({"tmax_c":43}), "2026-04-13")).unwrap();
    assert!(heat.contains("scorched"), "{heat}");
    for (weather, on) in [
        (json!({"tmin_c":6,"tmax_c":38}), "2026-04-13"),
        (json!({"tmin_c":-1.5}), "2026-03-20"),
        (json!({"rain_mm":8}), "2026-04-13"),
    ] {
        assert_eq!(cares(&after(weather, on)), None, "{on}");
    }
    let a_month_on = criterion(&tray(&frost.on("2026-05-20"), "cof-1").criteria, Rule::Pest).clone();
    assert!(a_month_on.blocks, "nobody looked: it is not forgotten");
    frost.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":48}));
    assert_eq!(cares(&frost), None, "somebody looked");
}

#[test]
fn a_look_for_one_pest_settles_no_other_that_has_a_word_in_common() {
    let cleared = |seen: &str, look: &str| {
        let mut book = fitting();
        book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":seen,"share_pct":40}));
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":look,"share_pct":0}));
        !of(&book, "cof-1", Rule::Pest).blocks
    };
    for (seen, look) in [
        ("aphids", "root aphids"),
        ("black aphids", "green aphids"),
        ("green scale", "white scale"),
        ("berry borer", "stem borer"),
        ("mealybugs", "root mealybugs"),
    ] {
        assert!(!cleared(seen, look), "{look} tell nothing of {seen}");
    }
    for (seen, look) in [("aphids", "aphids"), ("black aphids", "aphids"), ("green scale", "scale"), ("aphids", "none")]
    {
        assert_eq!(cleared(seen, look), cleared(seen, seen), "{look} tell of {seen}");
    }
    use outplant::reckon::picture::Measure;
    let open = |seen: &str, look: &str| {
        let mut book = fitting();
        book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":seen,"share_pct":40}));
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":look,"share_pct":0}));
        let known: Option<Measure> = of(&book, "cof-1", Rule::Pest).known();
        known.is_some()
    };
    assert!(open("leaf rust", "rust mites") && open("roya", "acaros de la roya"));
}
