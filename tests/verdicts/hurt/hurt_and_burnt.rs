//! What hurts people beside a tray, and what burns plants: nests among them, a sun that came too soon, fresh dung in the holes; and
//! trees of which nobody knows when they are large enough.

use crate::support::program::Home;
use crate::support::{Book, bed_species, criterion, fitting, pair, tray};
use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Criterion, Rule};
use outplant::reckon::round::{RoundReason, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

const TODAY: &str = "2026-04-15";

fn of(book: &Book, code: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(TODAY), code).criteria, rule).clone()
}

#[test]
fn nobody_works_at_a_tray_with_a_nest_or_a_snake_in_it_nor_at_those_beside() {
    for what in ["coral snake", "wasp nest", "nido de avispas", "barba amarilla", "terciopelo", "hormigas bala", "hive"]
    {
        let mut book = fitting();
        crate::support::ready_coffee(&mut book, "cof-2");
        for share in [None, Some(5.0)] {
            let mut seen = json!({"tray":"cof-1","what":what});
            share.into_iter().for_each(|share| seen["share_pct"] = json!(share));
            book.write("2026-04-14", "pest_seen", seen);
            for code in ["cof-1", "cof-2"] {
                let asked = of(&book, code, Rule::Pest);
                let said = Wording::new(Lang::En).reason(&asked, About::Tray);
                assert!(asked.blocks && said.contains("stings or bites"), "{what} {code}: {said}");
                assert!(!pair(&book.on(TODAY), code, "Upper 1").fits, "{what} {code}");
                let day = round(&book.on(TODAY));
                let subject = Subject::Tray(code.parse().unwrap());
                assert!(!day.stops.iter().chain(&day.can_wait).any(|stop| stop.subject == subject), "{what} {code}");
                let bench = Subject::Place("Half shade".parse().unwrap());
                assert_eq!(day.stay_away.iter().filter(|(subject, _)| *subject == bench).count(), 1, "{what}");
            }
        }
        book.write("2026-04-15", "pest_seen", json!({"tray":"cof-1","what":what,"share_pct":0}));
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what} is gone");
        assert!(pair(&book.on(TODAY), "cof-2", "Upper 1").fits, "{what} is gone from beside");
    }
    // Spider mites are no spiders that bite.
    let mut book = fitting();
    book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":"spider mites","share_pct":3}));
    assert!(!of(&book, "cof-1", Rule::Pest).blocks);
}

#[test]
fn plants_that_came_too_far_into_the_sun_go_back_to_no_more_than_they_came_from() {
    for ahead in [2, 12] {
        let mut book = fitting();
        book.write("2026-01-01", "place_set", json!({"place":"Open rack","order":5,"shade_pct":0}));
        book.write("2026-01-01", "place_set", json!({"place":"Light shade","order":6,"shade_pct":15}));
        let on = "2026-04-15".parse::<outplant::base::Day>().unwrap();
        book.write(&on.plus(-ahead).to_string(), "carried", json!({"tray":"cof-1","place":"Open rack"}));
        let picture = book.on(TODAY);
        let came_from = 0.55;
        let day = round(&picture);
        let back = day.stops.iter().find_map(|stop| match &stop.why {
            RoundReason::IntoShade { step, .. } => step.next.clone(),
            _ => None,
        });
        let light = back.unwrap_or_else(|| panic!("back into the shade, {ahead} days later")).light;
        assert!(light <= came_from + 1e-9, "{light}, {ahead} days later");
        let said = Wording::new(Lang::En).reason(&of(&book, "cof-1", Rule::Hardening), About::Tray);
        assert!(!said.contains("leave it there"), "{said}");
        assert!(of(&book, "cof-1", Rule::ExposureStep).blocks, "they may be scorched");
    }
}

#[test]
fn a_net_of_thirty_percent_may_be_taken_off_with_care_and_a_thicker_one_not_at_once() {
    for (shade_pct, fits) in [(25, true), (30, true), (35, false), (45, false)] {
        let mut book = fitting();
        book.write("2025-01-01", "place_set", json!({"place":"Half shade","order":2,"shade_pct":shade_pct}));
        let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
        let set = json!({"bed":"Low","field":"Upper","length_m":20,"width_m":6,"plan":plan});
        book.write("2025-01-01", "bed_set", set);
        book.write("2026-04-14", "light_read", json!({"bed":"Low","light_share":1.0}));
        let picture = book.on(TODAY);
        let step = criterion(&pair(&picture, "cof-1", "Low").criteria, Rule::ExposureStep).clone();
        assert_eq!((!step.blocks, step.warns || step.blocks), (fits, true), "{shade_pct}");
    }
}

#[test]
fn fresh_dung_in_the_holes_of_a_bed_waits_four_weeks_and_rotted_dung_does_not() {
    for (with, waits) in [
        ("fresh chicken manure in the holes", true),
        ("urea in the holes", true),
        ("gallinaza", true),
        ("well rotted manure", false),
        ("estiercol curtido", false),
        ("half-rotted manure", true),
        ("estiercol mal descompuesto", true),
        ("gallinaza sin compostar", true),
        ("old urea", true),
        ("compost", false),
        ("gypsum", false),
    ] {
        let mut book = fitting();
        let put = json!({"bed":"Upper 1","with":with,"safe_after_days":0});
        book.write("2026-04-12", "treated", put.clone());
        let fits = |book: &Book, on: &str| pair(&book.on(on), "cof-1", "Upper 1").fits;
        assert_eq!(!fits(&book, TODAY), waits, "{with}");
        if waits {
            let line = bed_species(&book.on(TODAY), "Upper 1", "COA").criteria.clone();
            let asked = criterion(&line, Rule::PlantBack);
            assert_eq!(asked.expected, "2026-05-10".parse().ok(), "{with}: 28 days");
            let said = Wording::new(Lang::En).reason(asked, About::Bed);
            assert!(said.contains("burn young roots"), "{said}");
            // What a person writes of it leads.
            let mut known = put;
            known["plant_after_days"] = json!(2);
            book.write("2026-04-12", "treated", known);
            assert!(fits(&book, "2026-04-15"), "{with}");
        }
    }
    // Food given to plants in their bags holds none of them.
    let mut book = fitting();
    book.write("2026-04-12", "treated", json!({"tray":"cof-1","with":"urea","safe_after_days":0}));
    assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
}

#[test]
fn seedlings_of_a_tree_of_which_nobody_knows_the_size_are_measured_and_small_ones_do_not_go() {
    let with = |height_cm: Option<f64>| {
        let mut book = fitting();
        let came = json!({"tray":"mom-1","species":"Spondias purpurea","count":30,"from":"opening","form":"bag","age_days":60,
            "container":"bag","place":"Half shade"});
        book.write("2026-04-10", "plants_received", came);
        if let Some(height_cm) = height_cm {
            let plants: Vec<_> = (0..30).map(|_| json!({"height_cm":height_cm,"collar_mm":4})).collect();
            book.write("2026-04-12", "measured", json!({"tray":"mom-1","plants":plants}));
        }
        of(&book, "mom-1", Rule::Height)
    };
    let [unknown, small, tall] = [with(None), with(Some(3.0)), with(Some(30.0))];
    assert!(unknown.met().is_none() && unknown.blocks, "{unknown:?}");
    assert!(small.met() == Some(false) && small.blocks, "{small:?}");
    assert!(!tall.blocks, "{tall:?}");
}

#[test]
fn shade_is_not_said_to_be_cut_before_rains_that_are_months_away() {
    let first = |rains_from: &str| {
        let home = Home { today: TODAY.into(), ..Home::default() }.begun();
        let rains = format!(r#"rains=[{{"from":"{rains_from}","until":"12-30"}}]"#);
        home.write("season_set", &[&rains, "happened=2026-01-01"]);
        let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
        let bed = ["bed=B1", "field=Upper", "length_m=20", "width_m=6", plan, "happened=2026-01-01"];
        home.write("bed_set", &bed);
        home.write("light_read", &["bed=B1", "light_share=0.08", "sky=overcast", "happened=2026-04-14"]);
        let why = home.done(&["why", "bed", "B1"]);
        let at = |words: &str| why.find(words).unwrap_or_else(|| panic!("{words}: {why}"));
        at("x rains left") < at("x light now")
    };
    assert_eq!((first("09-01"), first("05-10")), (true, false));
}

#[test]
fn plants_that_were_eaten_stay_behind_until_somebody_counts_the_whole_ones_and_a_burnt_bed_waits() {
    let go = |book: &Book| pair(&book.on(TODAY), "cof-1", "Upper 1").plants;
    let all = go(&fitting());
    for (what, share_pct) in [("goats", 80), ("cabras comieron las puntas", 40), ("rats", 12)] {
        let mut book = fitting();
        book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":what,"share_pct":share_pct}));
        // Of 48, and the bed has no more room than `all`.
        let left = (48.0 * (1.0 - f64::from(share_pct) / 100.0)).min(f64::from(all));
        assert!((f64::from(go(&book)) - left).abs() <= 1.0, "{what} {share_pct}: {} of {all}", go(&book));
        book.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":47}));
        assert!(go(&book) + 1 >= all, "{what}: counted");
    }
    for what in ["burnt", "burned two days ago", "fire", "se quemaron"] {
        let mut book = fitting();
        book.write("2026-04-13", "pest_seen", json!({"bed":"Upper 1","what":what}));
        assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what}");
    }
}

#[test]
fn a_spot_that_was_soaked_for_the_rod_makes_no_wet_bed_where_the_gauge_says_dry() {
    let fits = |soaked: bool| {
        let mut book = fitting();
        for ago in 0..41 {
            let on: outplant::base::Day = TODAY.parse().unwrap();
            book.write(&on.plus(-ago).to_string(), "weather", json!({"rain_mm":0,"tmin_c":18,"tmax_c":30}));
        }
        let mut look = json!({"bed":"Upper 1","resistance_mpa":1.1,"depth_cm":60,"wet":true,"where":"undug"});
        if soaked {
            look["days_since_soaking"] = json!(2);
        }
        book.write("2026-04-15", "soil_checked", look);
        pair(&book.on(TODAY), "cof-1", "Upper 1").fits
    };
    assert!(fits(false), "a finger found the undug ground wet");
    assert!(!fits(true), "somebody soaked it there");
}
