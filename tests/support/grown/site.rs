//! The place: what is written down before the first seed, and how beds are laid out.

use serde_json::{Value, json};

use super::Line;
use super::species::{AVOCADO, COFFEE, CORDIA, GLIRICIDIA, GREVILLEA, JACKFRUIT, TREES};

/// Benches along the path and the shade over them, percent.
const PLACES: [(&str, i32); 10] = [
    ("sand bed", 70),
    ("back house", 70),
    ("shade house", 60),
    ("bench 1", 50),
    ("bench 2", 50),
    ("bench 3", 40),
    ("line 1", 30),
    ("line 2", 15),
    ("open rack", 0),
    ("sick bay", 50),
];
const CONTAINERS: [(&str, i32, i32, i32); 6] = [
    ("seedbed strip", 30, 12, 400),
    ("tube 400", 400, 18, 1),
    ("bag 500", 500, 18, 1),
    ("bag 1 l", 1000, 23, 1),
    ("bag 2 l", 2000, 30, 1),
    ("bag 5 l", 5000, 30, 1),
];
const FIELDS: [(&str, i32, &str); 4] = [
    ("School terraces", 18, "clay loam"),
    ("Spring slope", 25, "loam"),
    ("Ridge", 12, "sandy clay loam"),
    ("Valley foot", 6, "clay"),
];

/// First and last day of each rains, month and day of the month.
const RAINS: [((u32, u32), (u32, u32)); 2] = [((3, 10), (6, 5)), ((10, 1), (12, 31))];

/// Whether a day (month, day of the month) lies in the rains.
pub fn in_the_rains(month_day: (u32, u32)) -> bool {
    RAINS.iter().any(|(from, until)| (*from..=*until).contains(&month_day))
}

/// What describes the place.
pub fn described() -> Vec<Line> {
    let mut lines: Vec<Line> = vec![
        (
            "nursery_set",
            json!({"name":"Kilima school nursery","latitude_deg":-1.2,"longitude_deg":36,"altitude_m":1650,
            "utc_offset_h":3,"plants_per_day":80,"planting_days_per_week":4,"walk_minutes":50,"water_litres_per_day":400}),
        ),
        (
            "season_set",
            json!({"rains":[{"from":"03-10","until":"06-05"},{"from":"10-01","until":"12-31"}],
            "tmin_c":vec![13;12],"tmax_c":vec![25;12]}),
        ),
        ("species_set", json!({"species":"COA","profile":{"plantable_usual_days":280}})),
    ];
    for (i, (place, shade_pct)) in PLACES.iter().enumerate() {
        lines.push(("place_set", json!({"place":place,"order":i + 1,"shade_pct":shade_pct})));
    }
    for (container, volume_ml, depth_cm, cells) in CONTAINERS {
        let body = json!({"container":container,"volume_ml":volume_ml,"depth_cm":depth_cm,"cells":cells});
        lines.push(("container_set", body));
    }
    for (field, slope_pct, texture) in FIELDS {
        lines.push(("field_set", json!({"field":field,"slope_pct":slope_pct,"texture":texture})));
    }
    lines
}

/// A line of a plan: the tree, and metres between rows, in the row and to the edge.
pub type Planned = (usize, f64, f64, f64);

/// How a bed is laid out.
pub struct Layout {
    /// What names of such beds begin with, and the field they lie in.
    pub name: &'static str,
    pub field: &'static str,
    pub length_m: f64,
    pub width_m: f64,
    pub plan: &'static [Planned],
    /// Which of the nurse plants.
    pub nurses: &'static [usize],
    /// The share of the light that its trees want.
    pub light: f64,
}

pub const LAYOUTS: [Layout; 5] = [
    Layout {
        name: "School",
        field: "School terraces",
        length_m: 24.0,
        width_m: 10.0,
        plan: &[(COFFEE, 2.0, 1.5, 0.0)],
        nurses: &[0, 2],
        light: 0.6,
    },
    Layout {
        name: "Spring",
        field: "Spring slope",
        length_m: 36.0,
        width_m: 16.0,
        plan: &[(AVOCADO, 8.0, 8.0, 0.0), (CORDIA, 6.0, 6.0, 2.0)],
        nurses: &[0, 1],
        light: 0.84,
    },
    Layout {
        name: "Ridge",
        field: "Ridge",
        length_m: 40.0,
        width_m: 6.0,
        plan: &[(GREVILLEA, 3.0, 3.0, 0.0), (GLIRICIDIA, 3.0, 1.0, 0.5)],
        nurses: &[1],
        light: 0.95,
    },
    Layout {
        name: "Valley",
        field: "Valley foot",
        length_m: 32.0,
        width_m: 16.0,
        plan: &[(JACKFRUIT, 8.0, 8.0, 0.0), (COFFEE, 2.0, 2.0, 1.0)],
        nurses: &[2],
        light: 0.66,
    },
    Layout {
        name: "Terrace",
        field: "School terraces",
        length_m: 20.0,
        width_m: 8.0,
        plan: &[(COFFEE, 2.0, 2.0, 0.0), (GREVILLEA, 6.0, 6.0, 1.0)],
        nurses: &[0, 1, 2],
        light: 0.62,
    },
];

impl Layout {
    /// The plan as it is written.
    pub fn written(&self) -> Vec<Value> {
        let line = |&(tree, row_m, in_row_m, offset_m): &Planned| json!({"species":TREES[tree].key,"pattern":"rectangle","row_m":row_m,"in_row_m":in_row_m,"offset_m":offset_m});
        self.plan.iter().map(line).collect()
    }
}
