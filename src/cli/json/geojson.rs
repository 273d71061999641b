//! Beds, their positions and nurse plants as a map for other programs: GeoJSON (RFC 7946), a feature a line. What is not
//! known is left out: a bed whose corner nobody wrote is there without a place, and so are its positions.
//!
//! Written as plain JSON: the format is a page long, and every object of it is made in this file.

use serde_json::{Value, json};

use crate::cli::criterion_json::number;
use crate::cli::why_more::positions::state_word;
use crate::nursery::entry::BedSet;
use crate::reckon::field::{nurse_grids, species_plan};
use crate::reckon::picture::{BedPicture, Picture};
use crate::science::ground::degrees_of;

/// Decimals of a degree: a centimetre. Ours.
const DECIMALS: f64 = 1e7;

/// Every feature, bed by bed.
pub(in crate::cli) fn features(picture: &Picture) -> Vec<Value> {
    picture.beds.values().flat_map(|bed| of_bed(bed, picture)).collect()
}

/// The whole text, a feature a line.
pub(in crate::cli) fn text(features: &[Value]) -> String {
    let lines: Vec<String> = features.iter().map(Value::to_string).collect();
    format!("{{\"type\":\"FeatureCollection\",\"features\":[\n{}\n]}}\n", lines.join(",\n"))
}

fn of_bed(bed: &BedPicture, picture: &Picture) -> Vec<Value> {
    let layout = bed.story.layout.on(picture.day);
    let at = layout.and_then(Placed::of);
    let mut all = vec![feature(outline(bed, at.as_ref()), about(bed, layout))];
    let Some(at) = at.filter(|at| at.bearing_deg.is_some()) else { return all };
    for line in &bed.species {
        let plan = species_plan(&bed.story, &picture.site, picture.day, &line.species);
        for spot in plan.map(|plan| plan.spots).unwrap_or_default() {
            let point = at.point([spot.x_m, spot.y_m]);
            let state = state_word(spot.state);
            let said = json!({"what": "position", "bed": bed.name, "species": line.species, "row": spot.row,
                "place": spot.place, "state": state});
            all.push(feature(point, said));
        }
    }
    for grid in nurse_grids(bed) {
        for (x_m, y_m) in &grid.spots {
            let said = json!({"what": "nurse_plant", "bed": bed.name, "species": grid.nurse, "planted": grid.planted,
                "alive": grid.alive});
            all.push(feature(at.point([*x_m, *y_m]), said));
        }
    }
    all
}

fn feature(geometry: Option<Value>, properties: Value) -> Value {
    json!({"type": "Feature", "geometry": geometry, "properties": properties})
}

/// What is known of a bed.
fn about(bed: &BedPicture, layout: Option<&BedSet>) -> Value {
    let mut said =
        json!({"what": "bed", "bed": bed.name, "field": bed.field, "length_m": bed.length_m, "width_m": bed.width_m});
    let line = |line: &crate::reckon::picture::BedSpecies| {
        json!({"species": line.species, "positions": line.positions, "living": line.living,
            "open_positions": line.open_positions, "standing": line.standing})
    };
    said["planned"] = bed.species.iter().map(line).collect();
    if let Some(bearing) = layout.and_then(|layout| layout.row_bearing_deg) {
        said["row_bearing_deg"] = json!(bearing.0);
    }
    if let Some(light) = &bed.light_now {
        said["light_share"] = number(light.share);
        said["light_read_on"] = json!(light.read_on);
    }
    said
}

/// Where a bed lies.
struct Placed {
    /// Latitude and longitude of the corner at which its rows and places begin.
    corner: (f64, f64),
    /// Where its rows run to, degrees from north over east.
    bearing_deg: Option<f64>,
}

impl Placed {
    fn of(layout: &BedSet) -> Option<Placed> {
        let corner = layout.corner_lat_deg?.0;
        let bearing_deg = layout.row_bearing_deg.map(|bearing| bearing.0);
        Some(Placed { corner: (corner, layout.corner_lon_deg?.0), bearing_deg })
    }

    /// Longitude and latitude of a spot so many metres along the rows and across them, to their left.
    fn degrees(&self, [along_m, across_m]: [f64; 2]) -> Option<[f64; 2]> {
        let (east, north) = self.bearing_deg?.to_radians().sin_cos();
        let spot = [along_m * east - across_m * north, along_m * north + across_m * east];
        Some(degrees_of(spot, self.corner)?.map(|degrees| (degrees * DECIMALS).round() / DECIMALS))
    }

    fn point(&self, spot: [f64; 2]) -> Option<Value> {
        self.degrees(spot).map(|degrees| json!({"type": "Point", "coordinates": degrees}))
    }
}

/// The bed from corner to corner, with its ground at the left hand; of one whose rows run nobody knows where, its corner.
fn outline(bed: &BedPicture, at: Option<&Placed>) -> Option<Value> {
    let at = at?;
    let corners = [[0.0, 0.0], [bed.length_m, 0.0], [bed.length_m, bed.width_m], [0.0, bed.width_m], [0.0, 0.0]];
    let ring: Option<Vec<[f64; 2]>> = corners.iter().map(|corner| at.degrees(*corner)).collect();
    match ring {
        Some(ring) => Some(json!({"type": "Polygon", "coordinates": [ring]})),
        None => {
            let (lat, lon) = at.corner;
            Some(json!({"type": "Point", "coordinates": [lon, lat]}))
        }
    }
}
