//! `calc` as a program and as a person would use it.

use serde_json::{Value, json};

use crate::support::program::{Ended, Home};
use crate::support::reference::{list, near, number, numbers, reference};

/// One topic with JSON on standard input.
fn piped(home: &Home, topic: &str, given: &Value) -> Value {
    let ended = home.run_with(&["calc", topic], &given.to_string());
    assert_eq!((ended.code, ended.err.as_str()), (0, ""), "{topic} {given}");
    serde_json::from_str(&ended.out).unwrap()
}

fn refused(home: &Home, topic: &str, given: &str) -> Ended {
    let ended = home.run_with(&["calc", topic], given);
    assert_eq!((ended.code, ended.out.as_str()), (1, ""), "{topic} {given}: {}", ended.err);
    assert!(!ended.err.trim().is_empty() && !ended.err.contains("panicked"), "{topic} {given}: {}", ended.err);
    ended
}

/// A small scene for `light`, with more keys.
fn scene(more: Value) -> Value {
    let mut given = json!({"lat":10.43,"lon":-84,"elev_m":120,"date":"2026-03-15","utc_offset_h":-6,"diffuse_fraction":0.5,
        "k":0.5,"sky_degrees":10,"crowns":[{"x":0,"y":0,"zc":3.1,"rh":1.5,"hh":1.7,"lad":1.2},
        {"x":2,"y":0,"zc":2.4,"rh":1.2,"hh":1.1,"lad":1.5}],"points":[[0,0.8,0.3],[1,-1,0.3],[2,1.5,0.3]]});
    given.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    given
}

/// A small regular bed for `light`.
fn bed() -> Value {
    json!({"lat":10.43,"lon":-84,"date":"2026-03-15","diffuse_fraction":0.5,"rows":3,"plants":4,"row_m":3,"plant_m":2.5,
        "top_m":3,"foot_m":0.8,"width_m":2.6,"lad":1.2,"k":0.6,"months":2})
}

/// Whether each topic answers what is given with all of its keys.
fn answers_with<const N: usize>(promised: [(&str, Value, &str); N]) {
    let home = Home::default();
    for (topic, given, keys) in promised {
        let told = piped(&home, topic, &given);
        assert_eq!(told["version"], 1, "{topic}");
        for key in keys.split_whitespace() {
            assert!(told.get(key).is_some_and(|value| !value.is_null()), "{topic} has no {key}: {told}");
        }
    }
}

#[test]
fn every_topic_answers_a_program_with_the_keys_it_promised() {
    answers_with([
        (
            "germination",
            json!({"times":[7,10,14],"counts":[3,8,5],"seeds":50}),
            "germinated germination_pct mean_days days_variance mean_days_standard_error days_spread_pct half_up_days \
             half_up_days_farooq mean_rate velocity rate_index_seeds rate_index_percent uncertainty synchrony \
             uniformity",
        ),
        (
            "emergence",
            json!({"edges":[0,7,10,14,18],"counts":[3,8,5,1],"seeds":50,"last_day":40}),
            "d b t50 se_d se_b se_t50 loglik at_boundary_d1 identifiable d_ci95 forecast",
        ),
        (
            "sowing",
            json!({"prior_a":1,"prior_b":1,"sown":25,"germinated":19,"survival_beta":null,"wanted":12,"confidence":0.95}),
            "seeds prob_at_n prob_at_n_minus_1 mean_success",
        ),
        ("interval", json!({"x":38,"n":50,"level":0.95}), "clopper_pearson wilson jeffreys_equal_tail"),
        (
            "replicates",
            json!({"replicates":[84,79,88,81],"n_each":100}),
            "mean range max_tolerated_range within_tolerance chi2 p_value",
        ),
        (
            "viability",
            json!({"KE":8.242,"CW":4.345,"CH":0.0307,"CQ":0.000501,"initial_pct":98,"moisture_pct_fresh":10,
                   "temp_c":5,"days":365,"target_pct":95}),
            "Ki sigma_days v_probit viability_pct p50_days days_to_target",
        ),
        ("quality", json!({"height_cm":36,"collar_mm":4.2,"shoot_g":4,"root_g":2}), "sturdiness dickson"),
        (
            "sample_size",
            json!({"kind":"proportion","confidence":0.95,"p":0.5,"half_width":0.1,"population":200}),
            "n_infinite n_finite",
        ),
        ("growth", json!({"t":[20,40,60,80,100],"y":[3,8,17,24,28],"target":[25]}), "logistic gompertz"),
    ]);
}

#[test]
fn every_topic_of_the_land_answers_a_program_with_the_keys_it_promised() {
    answers_with([
        (
            "sun",
            json!({"lat_deg":10.43,"lon_deg":-84.0,"elev_m":120,"utc":"2025-06-21T18:00:00Z"}),
            "elevation_deg azimuth_deg sunrise noon sunset day_length_h",
        ),
        (
            "radiation",
            json!({"lat_deg":-20,"doy":246,"slope_deg":15,"facing_deg":0}),
            "ra daylight_h decl_rad ws_rad dr ra_slope",
        ),
        (
            "et0",
            json!({"lat":15.771,"elev_m":2,"doy":71,"tmax":20.8,"tmin":17.2,"rhmax":62,"rhmin":30,"u2":3.22,"rs":24.01}),
            "et0 hargreaves_et0 ra delta pressure gamma es ea rs rso rns rnl rn",
        ),
        (
            "water",
            json!({"taw":42,"p_table":0.45,"p_adjusted":true,"ks_from":"previous_end","dr0":0,"rain":[0,12],
                   "irrigation":[0,0],"et0":[6.92,4.85],"kc":[0.45,0.453]}),
            "taw p ks eta dp dr_end",
        ),
        (
            "light",
            scene(json!({"reading":{"light_share":0.5,"sky":"overcast"},"band":[0.3,0.6],"cuts":2})),
            "direct diffuse relative_light leaves cuts",
        ),
        ("light", bed(), "maps"),
        ("rains", json!({"first_date":"2026-05-01","rain":[0,12,9,0,0]}), "climate_service sivakumar stern blocks"),
        (
            "leaves",
            json!({"height_m":3.0,"girth_m":0.7,"leaves":10,"spacing_m2":9,"k":0.7,"width_m":3,"depth_m":2}),
            "middle_leaf_m2 plant_m2 lai light lad",
        ),
    ]);
}

#[test]
fn light_of_every_scene_is_that_of_the_reference() {
    let home = Home::default();
    let all = reference(include_str!("../reference/light.json"));
    for scene in list(&all, "scenes") {
        let mut given = scene.clone();
        let keys = given.as_object_mut().unwrap();
        keys.extend(json!({"sun_minutes":10,"sky_degrees":5}).as_object().unwrap().clone());
        let told = piped(&home, "light", &given);
        for (key, want, within) in [
            // The suns of another library: 0.0001 degrees, where a crown's edge is crossed.
            ("direct", "direct_10min", 5e-5),
            ("diffuse", "diffuse_5deg", 1e-7),
            ("relative_light", "relative_light", 5e-5),
            ("relative_light", "fine_relative_light", 0.012),
        ] {
            let (got, want) = (numbers(&told, key), numbers(scene, want));
            assert_eq!(got.len(), 25);
            for (got, want) in got.iter().zip(&want) {
                assert!((got - want).abs() < within, "{} {key}: {got} {want}", scene["id"]);
            }
        }
    }
    // Of its own suns and sky, one scene.
    let scene = &all["scenes"][0];
    let told = piped(&home, "light", scene);
    for (got, want) in numbers(&told, "relative_light").iter().zip(numbers(scene, "fine_relative_light")) {
        assert!((got - want).abs() < 0.001, "{got} {want}");
    }
}

#[test]
fn a_regular_bed_has_the_light_of_its_crowns_and_points_one_by_one() {
    let home = Home::default();
    let told = piped(&home, "light", &bed());
    let maps = list(&told, "maps");
    assert_eq!((maps.len(), &maps[1]["date"]), (2, &json!("2026-04-15")));
    let each = (0..3).flat_map(|row| (0..4).map(move |plant| (f64::from(row), f64::from(plant))));
    let crowns: Vec<Value> = each
        .clone()
        .map(|(row, plant)| json!({"x":plant * 2.5,"y":row * 3.0,"zc":1.9,"rh":1.3,"hh":1.1,"lad":1.2}))
        .collect();
    let points: Vec<Value> = each.map(|(row, plant)| json!([(plant + 0.5) * 2.5, (row + 0.5) * 3.0, 0.3])).collect();
    let exact = piped(&home, "light", &scene(json!({"k":0.6,"crowns":crowns,"points":points,"sky_degrees":5})));
    let mapped: Vec<f64> = list(&maps[0], "relative_light")
        .iter()
        .flat_map(|row| row.as_array().unwrap().clone())
        .map(|light| light.as_f64().unwrap())
        .collect();
    for (map, exact) in mapped.iter().zip(numbers(&exact, "relative_light")) {
        assert!((map - exact).abs() < 0.012, "{map} {exact}");
    }
    // The last row and the last of a row have no plants beyond them.
    assert!(mapped[0] < 0.75 * mapped[11], "{mapped:?}");
}

#[test]
fn a_reading_corrects_the_leaves_and_cuts_are_counted() {
    let home = Home::default();
    let told = piped(
        &home,
        "light",
        &scene(json!({"reading":{"light_share":0.69,"sky":"overcast"},"band":[0.5,0.9],"cuts":2})),
    );
    let leaves = &told["leaves"];
    assert!(number(leaves, "factor") > 1.2 && number(leaves, "expected") > 0.70, "{leaves}");
    let (before, after) = (numbers(&told, "relative_light"), numbers(leaves, "relative_light"));
    assert!(before.iter().zip(&after).all(|(before, after)| after < before), "{before:?} {after:?}");
    let cuts = list(&told, "cuts");
    assert_eq!((cuts.len(), &cuts[2]["crowns"], &cuts[2]["proven"]), (3, &json!([1, 2]), &json!(true)));
    assert_eq!(numbers(&cuts[2], "light").len(), 3);
    for (share, sky) in [(1.0, "overcast"), (0.001, "overcast")] {
        let told = piped(&home, "light", &scene(json!({"reading":{"light_share":share,"sky":sky}})));
        assert_eq!((&told["leaves"]["factor"], &told["leaves"]["relative_light"]), (&Value::Null, &Value::Null));
    }
    let clear =
        json!({"light_share":0.30,"sky":"clear","diffuse_fraction":0.2,"utc":"2026-03-15T10:00:00-06:00","minutes":15});
    let told = piped(&home, "light", &scene(json!({"reading":clear})));
    assert!(number(&told["leaves"], "expected") > 0.0, "{told}");
}

/// The keys of `germination`, the columns of the reference file they stand for, and how often the one holds the other.
const GERMINATION: [(&str, &str, f64); 15] = [
    ("germinated", "germinated", 1.0),
    ("germination_pct", "germ_pct", 1.0),
    ("mean_days", "mgt", 1.0),
    ("days_variance", "var_gt", 1.0),
    ("mean_days_standard_error", "se_mgt", 1.0),
    ("days_spread_pct", "cv_gt", 100.0),
    ("half_up_days", "t50_coolbear", 1.0),
    ("half_up_days_farooq", "t50_farooq", 1.0),
    ("mean_rate", "mgr", 1.0),
    ("velocity", "cvg", 1.0),
    ("rate_index_seeds", "gri_counts", 1.0),
    ("rate_index_percent", "gri_percent", 1.0),
    ("uncertainty", "uncertainty", 1.0),
    ("synchrony", "synchrony", 1.0),
    ("uniformity", "cug", 1.0),
];

#[test]
fn each_key_of_germination_is_the_figure_of_its_column() {
    let home = Home::default();
    let all = reference(include_str!("../reference/germination_indices.json"));
    let set = all["published_cases"].as_array().unwrap().iter().find(|set| set["id"] == "gcdata_row1").unwrap();
    let told = piped(&home, "germination", &json!({"times":set["times"],"counts":set["counts"],"seeds":set["n"]}));
    for (key, column, times) in GERMINATION {
        near(number(&told, key), times * number(&set["computed"], column), 1e-9, key);
    }
}

#[test]
fn figures_arrive_with_all_their_digits() {
    let home = Home::default();
    let all = reference(include_str!("../reference/germination_fit.json"));
    let set = &all["datasets"][0];
    let told = piped(&home, "emergence", &json!({"edges":set["edges"],"counts":set["counts"],"seeds":set["n"]}));
    near(number(&told, "d"), number(&set["fit"], "d"), 1e-6, "d");
    near(number(&told, "loglik"), number(&set["fit"], "loglik"), 1e-9, "loglik");
    near(number(&told["forecast"], "final"), number(&set["fit"], "predicted_final_count"), 1e-3, "final");
    assert_eq!(told["forecast"]["at_last_day"], Value::Null);
    let growth = reference(include_str!("../reference/growth.json"));
    let set = &growth["datasets"][0];
    let told = piped(&home, "growth", set);
    let want = &set["fits"]["gompertz"]["predictions"][0];
    near(number(&told["gompertz"]["predictions"][0], "t"), number(want, "t"), 1e-6, "t");
}

#[test]
fn what_has_no_answer_is_an_answer_with_nulls() {
    let home = Home::default();
    let none = piped(&home, "germination", &json!({"times":[7,14],"counts":[0,0],"seeds":50}));
    assert_eq!((none["mean_days"].clone(), none["germination_pct"].clone()), (Value::Null, json!(0.0)));
    let flat = piped(&home, "emergence", &json!({"edges":[0,5,10,15],"counts":[0,41,0],"seeds":50}));
    assert_eq!((flat["identifiable"].clone(), flat["b"].clone()), (json!(false), Value::Null));
    let all = piped(&home, "replicates", &json!({"replicates":[100,100,100,100],"n_each":100}));
    assert_eq!((all["chi2"].clone(), all["max_tolerated_range"].clone()), (Value::Null, Value::Null));
    let whole =
        json!({"KE":8.2,"CW":4.3,"CH":0.03,"CQ":0.0005,"initial_pct":100,"moisture_pct_fresh":10,"temp_c":5,"days":3});
    assert_eq!(piped(&home, "viability", &whole)["viability_pct"], Value::Null);
    let few = piped(&home, "growth", &json!({"t":[1,2],"y":[3,4],"target":[5]}));
    assert_eq!(
        (few["logistic"]["A"].clone(), few["logistic"]["predictions"][0]["t"].clone()),
        (Value::Null, Value::Null)
    );
}

#[test]
fn heights_of_three_days_are_said_to_tell_neither_a_day_nor_an_end() {
    let home = Home::default();
    for (lang, says) in [("en", "tell neither a day nor an end"), ("es", "no dicen")] {
        let three =
            home.done(&["calc", "growth", "--t", "20,40,60", "--y", "3,8,17", "--target", "25", "--lang", lang]);
        assert!(three.contains(says) && !three.contains("ends at"), "{three}");
    }
    let five = home.done(&["calc", "growth", "--t", "20,40,60,80,100", "--y", "3,8,17,24,28", "--target", "25"]);
    assert!(!five.contains("tell neither") && five.contains("growth ends at"), "{five}");
}

#[test]
fn an_end_that_is_no_better_known_than_it_is_large_is_not_told_and_no_day_lies_before_the_last_that_was_below() {
    let home = Home::default();
    for (lang, no_end) in [("en", "Gompertz: no end in sight"), ("es", "Gompertz: no se le ve fin")] {
        let wide = ["calc", "growth", "--t", "0,10,20,30", "--y", "10,14,20,27", "--target", "40", "--lang", lang];
        let said = home.done(&wide);
        assert!(said.contains(no_end), "{said}");
    }
    // The last that was below stood on day 30, or 120: what is told in words and in figures begins there.
    for (t, y, target, last) in [("0,10,20,30", "10,14,20,27", "40", 30.0), ("30,60,90,120", "4,9,16,22", "30", 120.0)]
    {
        let told = home.json(&["calc", "growth", "--t", t, "--y", y, "--target", target]);
        for curve in ["logistic", "gompertz"] {
            let low = told[curve]["predictions"][0]["ci95"][0].as_f64();
            assert!(low.is_none_or(|low| low >= last), "{curve}: {told}");
        }
        assert!(told.to_string().contains("ci95"), "{told}");
    }
}

/// Whether each topic refuses what is given with one sentence that says what.
fn each_says<const N: usize>(nonsense: [(&str, &str, &str); N]) {
    let home = Home::default();
    for (topic, given, says) in nonsense {
        let ended = refused(&home, topic, given);
        assert!(ended.err.contains(says), "{topic} {given}: {}", ended.err);
        assert_eq!(ended.err.trim().lines().count(), 1, "{topic} {given}: {}", ended.err);
    }
}

#[test]
fn nonsense_gets_a_sentence_and_ends_with_1() {
    each_says([
        ("germination", r#"{"times":[7,10],"counts":[30,30],"seeds":50}"#, "60"),
        ("germination", r#"{"times":[10,7],"counts":[3,3],"seeds":50}"#, "times"),
        ("germination", r#"{"times":[],"counts":[],"seeds":50}"#, "times"),
        ("germination", r#"{"times":[7,10],"counts":[-3,3],"seeds":50}"#, "counts"),
        ("germination", r#"{"times":[7,10],"counts":[2.5,3],"seeds":50}"#, "whole"),
        ("germination", r#"{"times":[7,NaN],"counts":[3,3],"seeds":50}"#, "JSON"),
        ("germination", r#"{"times":[7,10],"counts":[3,3],"seeds":1000000000}"#, "seeds"),
        ("germination", r#"{"times":[7,10],"counts":[3],"seeds":50}"#, "equally"),
        ("germination", "", "JSON"),
        ("germination", "[1,2]", "JSON"),
        ("emergence", r#"{"edges":[0,9,7],"counts":[1,1],"seeds":5}"#, "edges"),
        ("emergence", r#"{"edges":[3,9],"counts":[1],"seeds":5}"#, "edge"),
        ("emergence", r#"{"edges":[0,9],"counts":[6],"seeds":5}"#, "counts"),
        ("emergence", r#"{"edges":[0,9],"counts":[1],"seeds":5,"last_day":3}"#, "last_day"),
        ("sowing", r#"{"prior_a":1,"prior_b":1,"sown":5,"germinated":9,"wanted":3,"confidence":0.9}"#, "germinated"),
        (
            "sowing",
            r#"{"prior_a":1,"prior_b":1,"sown":5,"germinated":4,"wanted":1000000000,"confidence":0.9}"#,
            "wanted",
        ),
        ("sowing", r#"{"prior_a":1,"prior_b":1,"sown":5,"germinated":4,"wanted":3,"confidence":1}"#, "confidence"),
        (
            "sowing",
            r#"{"prior_a":1,"prior_b":1,"sown":5,"germinated":4,"wanted":3,"confidence":0.9,"survival_beta":[1]}"#,
            "survival_beta",
        ),
        ("interval", r#"{"x":5,"n":3,"level":0.95}"#, "x"),
        ("interval", r#"{"x":0,"n":0,"level":0.95}"#, "n"),
        ("interval", r#"{"x":1,"n":3,"level":2}"#, "level"),
        ("replicates", r#"{"replicates":[101,99],"n_each":100}"#, "germinated"),
        ("replicates", r#"{"replicates":[5,6],"n_each":1000000000}"#, "seeds_each"),
        ("sowing", r#"{"species":"nothing that grows","wanted":3,"confidence":0.9}"#, "nothing that grows"),
        ("sowing", r#"{"species":"coffee","wanted":1000000000,"confidence":0.9}"#, "wanted"),
        ("sowing", r#"{"species":7,"wanted":3,"confidence":0.9}"#, "species"),
        (
            "viability",
            r#"{"species":"Coffea arabica","initial_pct":90,"moisture_pct_fresh":9,"temp_c":20,"days":3}"#,
            "Cedrela",
        ),
        (
            "viability",
            r#"{"KE":8,"CW":4,"CH":0.03,"CQ":0.0005,"initial_pct":110,"moisture_pct_fresh":9,"temp_c":20,"days":3}"#,
            "initial_pct",
        ),
        ("quality", r#"{"height_cm":36,"collar_mm":0}"#, "collar_mm"),
        ("sample_size", r#"{"kind":"guess","confidence":0.95}"#, "detection"),
        ("growth", r#"{"t":[3,2,1],"y":[1,2,3],"target":[5]}"#, "t"),
        ("growth", r#"{"t":[1,2,3],"y":[1,2,3],"target":[-5]}"#, "target"),
    ]);
}

#[test]
fn nonsense_about_the_land_gets_a_sentence_and_ends_with_1() {
    each_says([
        (
            "sun",
            r#"{"lat_deg":95,"lon_deg":0,"elev_m":0,"utc":"2026-03-15T16:00:00Z"}"#,
            "lat_deg must be from -90 to 90",
        ),
        ("sun", r#"{"lat_deg":5,"lon_deg":0,"elev_m":0,"utc":"tomorrow"}"#, "tomorrow"),
        ("sun", r#"{"lat_deg":5,"lon_deg":0,"elev_m":0}"#, "utc is missing"),
        ("radiation", r#"{"lat_deg":5,"doy":400}"#, "doy must be from 1 to 366"),
        ("radiation", r#"{"lat_deg":5,"doy":40,"slope_deg":95,"facing_deg":10}"#, "slope_deg"),
        ("et0", r#"{"lat":5,"elev_m":0,"doy":40,"tmax":20,"tmin":25}"#, "tmin"),
        ("et0", r#"{"lat":5,"elev_m":0,"doy":40,"tmax":20,"tmin":15,"rhmax":80}"#, "rhmin is missing"),
        ("water", r#"{"taw":40,"p_table":0.3,"dr0":0,"rain":[1,-3],"et0":4,"kc":1}"#, "day 2: rain must be from 0"),
        ("water", r#"{"taw":40,"p_table":0.3,"dr0":0,"rain":[4000],"et0":4,"kc":1}"#, "day 1: rain must be from 0"),
        ("water", r#"{"taw":0,"p_table":0.3,"dr0":0,"rain":[4],"et0":4,"kc":1}"#, "taw must be more than 0"),
        ("water", r#"{"taw":40,"p_table":0.3,"dr0":0,"rain":[4,5,6],"et0":[4,4],"kc":1}"#, "equally"),
        ("water", r#"{"taw":40,"p_table":0.3,"dr0":0,"rain":[4],"et0":4,"kc":1,"ks_from":"noon"}"#, "start_of_day"),
        ("rains", r#"{"first_date":"2026-05-01","rain":[4000]}"#, "rain must be from 0"),
        ("rains", r#"{"first_date":"May","rain":[4]}"#, "May"),
        ("rains", r#"{"first_date":"2026-05-01","rain":[4,null,2]}"#, "rain is not a number"),
        ("leaves", r#"{"height_m":300,"girth_m":0.7,"leaves":10}"#, "height_m must be from 0 to 15"),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5,"k":0.5,"points":[[0,0,0]],
                "crowns":[{"x":0,"y":0,"zc":3,"rh":1,"hh":1,"lad":1},{"x":0,"y":0,"zc":3,"rh":0,"hh":1,"lad":1}]}"#,
            "crowns 2: rh must be more than 0",
        ),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5,"k":0.5,"points":[[0,0]],"crowns":[]}"#,
            "points 1",
        ),
        ("light", r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5}"#, "--rows"),
        (
            "light",
            r#"{"lat":95,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5,"k":0.5,"points":[[0,0,0]],"crowns":[]}"#,
            "lat",
        ),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"15 March","diffuse_fraction":0.5,"k":0.5,"points":[[0,0,0]],"crowns":[]}"#,
            "15 March",
        ),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":1.5,"k":0.5,"points":[[0,0,0]],"crowns":[]}"#,
            "diffuse_fraction must be from 0 to 1",
        ),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5,"rows":3,"plants":4,"row_m":3,"plant_m":2,
                "top_m":1,"foot_m":2,"width_m":2,"lad":1,"k":0.5}"#,
            "foot_m",
        ),
        (
            "light",
            r#"{"lat":5,"lon":0,"date":"2026-03-15","diffuse_fraction":0.5,"k":0.5,"points":[[0,0,0]],"crowns":[],
                "reading":{"light_share":0.5,"sky":"blue"}}"#,
            "overcast, clear",
        ),
    ]);
}

#[test]
fn a_person_gets_a_sentence_the_formula_and_the_source_in_both_languages() {
    let home = Home::default();
    let told = home.run(&["calc", "sowing", "--wanted", "100", "--germination", "70"]);
    assert_eq!(told.code, 0, "{}", told.err);
    assert!(told.out.starts_with("156 seeds for 100 plants, 95 % sure"), "{}", told.out);
    assert!(told.out.contains("would give 143") && told.out.contains("Formula:") && told.out.contains("Source:"));
    let es = home.run(&["--lang", "es", "calc", "sowing", "--wanted", "100", "--germination", "70"]);
    assert!(es.out.starts_with("156 semillas para 100 plantas") && es.out.contains("Fuente:"), "{}", es.out);
    let json = home.run(&["calc", "sowing", "--wanted", "100", "--germination", "70", "--json"]);
    assert_eq!(serde_json::from_str::<Value>(&json.out).unwrap()["seeds"], 156);
    let typed = home.run(&["calc", "emergence", "--edges", "7,10,14", "--counts", "3,8,50", "--seeds", "50"]);
    assert_eq!((typed.code, typed.out.as_str()), (1, ""), "{}", typed.err);
    let nan = home.run(&["calc", "interval", "--x", "nan", "--n", "50"]);
    assert_eq!(nan.code, 1, "{}", nan.err);
    let lot = home.run(&[
        "calc",
        "viability",
        "--species",
        "Cedrela odorata",
        "--initial",
        "90",
        "--moisture",
        "8",
        "--temp",
        "25",
        "--days",
        "180",
    ]);
    assert!(lot.code == 0 && lot.out.contains("Lima et al. 2005"), "{} {}", lot.out, lot.err);
    let water =
        ["calc", "water", "--taw", "30", "--p", "0.3", "--dr0", "0", "--rain", "0,0,-3", "--et0", "4", "--kc", "1"];
    let told = home.run(&water);
    assert!(told.code == 1 && told.err.contains("day 3: rain must be from 0 to 2000"), "{}", told.err);
    let told = home.run(&[&["--lang", "es"][..], &water].concat());
    assert!(told.code == 1 && told.err.contains("día 3: rain debe estar entre 0 y 2000"), "{}", told.err);
    let dry = water.map(|word| if word == "0,0,-3" { "0,0,0,0" } else { word });
    let told = home.run(&dry);
    // 4, 8 and 12 mm gone, then 3.43 at a stress of 18/21.
    for says in ["After 4 days 14.6 mm of 30 mm are left", "Days of thirst: 1, the first is day 4"] {
        assert!(told.out.contains(says), "{}", told.out);
    }
    let sun = home.run(&["calc", "sun", "--lat", "95", "--lon", "0", "--utc", "2026-03-15T16:00:00Z", "--lang", "es"]);
    assert!(sun.code == 1 && sun.err.contains("--lat debe estar entre -90 y 90"), "{}", sun.err);
    let words = "calc light --lat 10.4 --lon -84 --date 2026-03-15 --diffuse 50 --rows 3 --plants 4 --row 3 --plant 2.5 \
                 --top 3 --foot 0.8 --width 2.6 --lad 1.2 --k 0.6 --months 3";
    let words: Vec<&str> = words.split_whitespace().collect();
    let told = home.run(&words);
    assert!(
        told.code == 0
            && told.out.starts_with("On that day ")
            && told.out.contains("2026-05-15")
            && told.out.contains("maps 1 relative_light 3  0."),
        "{}",
        told.out
    );
    let es = home.run(&[&["--lang", "es"][..], &words].concat());
    assert!(es.code == 0 && es.out.starts_with("Ese día llega en promedio"), "{}", es.out);
    assert!(!home.file("nursery.outplant").exists(), "calc opens no nursery");
}

#[test]
fn a_formula_names_what_was_typed_as_it_was_typed() {
    let home = Home::default();
    for (typed, said) in [
        ("interval --x 60 --n 50", "--x"),
        ("sun --lat 95 --lon 0 --utc 2026-03-15T16:00:00Z", "--lat must be from -90 to 90"),
        ("leaves --height 2 --girth 0.5 --leaves 8 --ground -1 --k 0.5", "--ground must be"),
        ("sample_size --kind proportion --confidence 140 --p 50 --half-width 5", "100 %"),
        ("light --lat 10,4 --lon -84", "10.4"),
    ] {
        let words: Vec<&str> = ["calc"].into_iter().chain(typed.split(' ')).collect();
        let ended = home.run(&words);
        assert!(ended.code == 1 || ended.code == 2, "{typed}: {}", ended.out);
        assert!(ended.err.contains(said), "{typed}: {}", ended.err);
        assert!(!ended.err.contains("_deg") && !ended.err.contains("_m2"), "{typed}: {}", ended.err);
    }
    let bed =
        "--diffuse 50 --rows 3 --plants 4 --row 3 --plant 2.5 --top 5 --foot 2 --width 3 --lad 0.5 --k 0.5 --json";
    let of = |place: &str, day: &str| {
        let words = format!("calc light {place} --date {day} {bed}");
        home.run(&words.split(' ').collect::<Vec<_>>()).out
    };
    assert_eq!(of("--lat 10 --lon 36", "+0"), of("--lat 10 --lon 36", &home.today), "days as people say them");
}

#[test]
fn a_formula_says_which_names_it_does_not_use_and_takes_none_twice() {
    let home = Home::default();
    let ended = home.run_with(&["calc", "interval"], r#"{"x":7,"n":50,"level":0.9,"levle":0.8}"#);
    assert_eq!(ended.code, 0, "{}", ended.err);
    let answer: Value = serde_json::from_str(&ended.out).unwrap();
    assert_eq!(answer["not_used"], json!(["levle"]));
    assert_eq!(ended.err, "", "a program is told by the answer alone");
    let twice = home.run_with(&["calc", "interval", "--lang", "es"], r#"{"x":7,"n":50,"x":8}"#);
    assert_eq!(twice.code, 1, "{}", twice.out);
    assert!(twice.err.contains("x está escrito dos veces"), "{}", twice.err);
}

#[test]
fn where_the_sun_does_not_rise_all_light_comes_from_the_sky() {
    let home = Home::default();
    let scene = r#"{"lat":80,"lon":0,"date":"2026-12-21","diffuse_fraction":0.3,"k":0.5,
        "crowns":[{"x":0,"y":0,"zc":3,"rh":1,"hh":1,"lad":0.5}],"points":[[40,0,0.3]]}"#;
    let told: Value = serde_json::from_str(&home.run_with(&["calc", "light"], scene).out).unwrap();
    let light = told["relative_light"][0].as_f64().unwrap();
    assert_eq!(told["relative_light"], told["diffuse"]);
    assert!(light > 0.99, "{light}");
}
