//! The map of `export --as geojson`, against distances and bearings reckoned another way.

use serde_json::Value;

use crate::support::program::Home;

const PLAN: &str = r#"plan=[{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3}]"#;

fn features(home: &Home) -> Vec<Value> {
    let map: Value = serde_json::from_str(&home.done(&["export", "--as", "geojson"])).unwrap();
    assert_eq!(map["type"], "FeatureCollection");
    map["features"].as_array().unwrap().clone()
}

fn of<'a>(all: &'a [Value], what: &'a str, bed: &'a str) -> impl Iterator<Item = &'a Value> {
    let wanted = move |one: &&Value| one["properties"]["what"] == what && one["properties"]["bed"] == bed;
    all.iter().filter(wanted)
}

fn degrees(point: &Value) -> [f64; 2] {
    [0, 1].map(|at| point[at].as_f64().unwrap())
}

/// Metres between two points on a ball of 6,371 km (haversine), within half a percent of any ellipsoid.
fn apart_m([lon_a, lat_a]: [f64; 2], [lon_b, lat_b]: [f64; 2]) -> f64 {
    let half = |a: f64, b: f64| ((b - a).to_radians() / 2.0).sin().powi(2);
    let cos = lat_a.to_radians().cos() * lat_b.to_radians().cos();
    2.0 * 6_371_000.0 * (half(lat_a, lat_b) + cos * half(lon_a, lon_b)).sqrt().asin()
}

#[test]
fn a_bed_with_a_corner_lies_there_with_its_positions() {
    let home = Home::default().begun();
    let bed = ["bed=Upper 1", "field=Upper", "length_m=30", "width_m=12", "edges=half", "row_bearing_deg=90"];
    home.write("bed_set", &[&bed[..], &["corner_lat_deg=-1.2", "corner_lon_deg=36.1", PLAN]].concat());
    home.write("positions_blocked", &["bed=Upper 1", "at=1.2", "why=rock"]);
    home.write("nurse_planted", &["bed=Upper 1", "nurse=banana", "count=40", "row_m=3", "in_row_m=3"]);
    let all = features(&home);
    let ring = &of(&all, "bed", "Upper 1").next().unwrap()["geometry"]["coordinates"][0];
    let corners: Vec<[f64; 2]> = ring.as_array().unwrap().iter().map(degrees).collect();
    assert_eq!((corners.len(), corners[0], corners[4]), (5, [36.1, -1.2], [36.1, -1.2]));
    // Rows run east, and the bed lies to their left, north of the corner: 30 m by 12 m.
    assert!(corners[1][0] > 36.1 && (corners[1][1] + 1.2).abs() < 1e-7 && corners[3][1] > -1.2, "{corners:?}");
    assert!((apart_m(corners[0], corners[1]) - 30.0).abs() < 0.2, "{corners:?}");
    assert!((apart_m(corners[1], corners[2]) - 12.0).abs() < 0.1, "{corners:?}");
    // RFC 7946, 3.1.6: an outer ring runs against the clock, so its area is above nothing.
    let area: f64 = corners.windows(2).map(|pair| pair[0][0] * pair[1][1] - pair[1][0] * pair[0][1]).sum();
    assert!(area > 0.0, "{area}");
    let positions: Vec<&Value> = of(&all, "position", "Upper 1").collect();
    assert_eq!(positions.len(), 40);
    let at = |row: u64, place: u64| {
        let found = |one: &&&Value| one["properties"]["row"] == row && one["properties"]["place"] == place;
        *positions.iter().find(found).unwrap()
    };
    assert_eq!(
        (&at(1, 2)["properties"]["state"], &at(1, 3)["properties"]["state"]),
        (&"blocked".into(), &"open".into())
    );
    let spot = |row, place| degrees(&at(row, place)["geometry"]["coordinates"]);
    assert!(
        (apart_m(spot(1, 1), spot(1, 2)) - 3.0).abs() < 0.05 && (apart_m(spot(1, 1), spot(2, 1)) - 3.0).abs() < 0.05
    );
    assert!((apart_m(corners[0], spot(1, 1)) - 1.5 * 2.0_f64.sqrt()).abs() < 0.05, "half a spacing inside");
    assert_eq!(of(&all, "nurse_plant", "Upper 1").count(), 40);
}

#[test]
fn what_is_not_known_of_a_bed_has_no_place_on_the_map() {
    let home = Home::default().begun();
    home.write("bed_set", &["bed=Lost", "field=Upper", "length_m=30", "width_m=12", "row_bearing_deg=90", PLAN]);
    let corner = ["corner_lat_deg=-1.2", "corner_lon_deg=36.1"];
    let turned = ["bed=Turned", "field=Upper", "length_m=30", "width_m=12", PLAN];
    home.write("bed_set", &[&turned[..], &corner].concat());
    let all = features(&home);
    let lost = of(&all, "bed", "Lost").next().unwrap();
    assert!(lost["geometry"].is_null() && lost["properties"]["length_m"] == 30.0, "{lost}");
    // Where its rows run nobody wrote: the corner alone.
    let turned = of(&all, "bed", "Turned").next().unwrap();
    assert_eq!(turned["geometry"]["type"], "Point");
    assert_eq!(all.len(), 2, "no position is made up");
}

#[test]
fn positions_one_by_one_are_those_of_the_map_with_their_light() {
    let home = Home::default().begun();
    let bed = ["bed=Upper 1", "field=Upper", "length_m=30", "width_m=12", "edges=half", "happened=2025-01-05"];
    home.write(
        "bed_set",
        &[&bed[..], &["corner_lat_deg=-1.2", "corner_lon_deg=36.1", "row_bearing_deg=90", PLAN]].concat(),
    );
    home.write("positions_blocked", &["bed=Upper 1", "at=1.2", "why=rock"]);
    let told = home.json(&["why", "bed", "Upper 1", "--positions"]);
    let positions = told["positions"].as_array().unwrap();
    let map = features(&home);
    let on_map: Vec<&Value> = of(&map, "position", "Upper 1").collect();
    assert_eq!((positions.len(), on_map.len()), (40, 40));
    for (one, other) in positions.iter().zip(on_map) {
        for name in ["row", "place", "species", "state"] {
            assert_eq!(one[name], other["properties"][name]);
        }
        assert!(one["light"].is_null() && one["light_now"].is_null(), "nothing shades: {one}");
    }
    assert_eq!((&positions[1]["x_m"], &positions[1]["y_m"]), (&4.5.into(), &1.5.into()));
    home.write(
        "nurse_planted",
        &["bed=Upper 1", "nurse=banana", "count=40", "row_m=3", "in_row_m=3", "happened=2025-07-01"],
    );
    let told = home.json(&["why", "bed", "Upper 1", "--positions"]);
    for one in told["positions"].as_array().unwrap() {
        let light: Vec<f64> = one["light"].as_array().unwrap().iter().filter_map(Value::as_f64).collect();
        assert_eq!((light.len(), one["light_now"].as_f64()), (24, Some(light[0])), "{one}");
        assert!(light.iter().all(|light| (0.0..=1.0).contains(light)) && light[0] < 0.95, "{one}");
    }
}

#[test]
fn half_a_corner_is_refused_and_a_map_goes_whole_into_a_new_file() {
    let home = Home::default().begun();
    let bed = ["bed=Half", "field=Upper", "length_m=30", "width_m=12", "plan=[]"];
    let ended = home.run(&[&["write", "bed_set"], &bed[..], &["corner_lat_deg=95"]].concat());
    assert!(ended.code == 1 && ended.err.contains("corner_lat_deg"), "{}", ended.err);
    let ended = home.run(&[&["write", "bed_set"], &bed[..], &["corner_lat_deg=-1.2"]].concat());
    assert!(ended.code == 1 && ended.err.contains("corner_lon_deg"), "{}", ended.err);
    home.write("bed_set", &bed);
    let file = home.file("map.geojson");
    home.done(&["export", "--as", "geojson", "--to", file.to_str().unwrap()]);
    let text = std::fs::read_to_string(&file).unwrap();
    assert_eq!(text, home.done(&["export", "--as", "geojson"]));
    assert_eq!(
        home.run(&["export", "--as", "geojson", "--to", file.to_str().unwrap()]).code,
        1,
        "nothing is overwritten"
    );
}
