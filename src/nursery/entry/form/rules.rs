//! Rules of a kind that go beyond one field: which of several must be there, and how many.

use serde_json::{Map, Value};

use super::fault::{FieldFault, Problem};

/// Checks a settled body as a whole.
pub(super) fn whole(kind: &str, body: &Map<String, Value>) -> Result<(), FieldFault> {
    let has = |name: &str| body.contains_key(name);
    let one_of = |names: &'static str, met: bool| {
        if met { Ok(()) } else { Err(FieldFault { field: kind.to_string(), problem: Problem::OneOf(names) }) }
    };
    match kind {
        "lot_received" => one_of(
            "seeds / fruits + seeds_per_fruit / mass_g",
            has("seeds") || has("mass_g") || (has("fruits") && has("seeds_per_fruit")),
        ),
        "plants_received" => at_most(body, "age_days", OLDEST_DAYS),
        "measured" => not_empty(body, "plants"),
        "lot_tested" => {
            not_empty(body, "replicates").and_then(|()| no_more_than(body, "replicates", "germinated", "seeds", 1.0))
        }
        "withdrawn" => not_empty(body, "entries"),
        "positions_blocked" => not_empty(body, "at"),
        "lot_counted" | "sown" => one_of("seeds / mass_g", has("seeds") || has("mass_g")),
        "nursery_set" => at_most(body, "planting_days_per_week", 7.0)
            .and_then(|()| at_most(body, "walk_minutes", f64::from(MINUTES_OF_A_DAY))),
        "shade_set" | "watering_set" | "held" | "released" => exactly_one(kind, body),
        "pest_seen" | "treated" => {
            exactly_one(kind, body).and_then(|()| at_most(body, "safe_after_days", LONGEST_WAIT_DAYS))
        }
        "light_read" => {
            exactly_one(kind, body)?;
            one_of("readings / light_share", has("readings") || has("light_share"))?;
            not_empty(body, "readings")?;
            // Meters differ and clouds pass, but under leaves it is never twice as bright as in the open.
            no_more_than(body, "readings", "under_lux", "open_lux", 2.0)
        }
        "nurse_cut" => one_of("share / count", has("share") || has("count")),
        "let_go" => one_of("until / never", has("until") || has("never")),
        "soil_checked" => one_of(
            "resistance_mpa / rod_mm + push_kg / tubers",
            has("resistance_mpa") || (has("rod_mm") && has("push_kg")) || has("tubers"),
        ),
        "weather" => one_of("rain_mm / tmin_c / tmax_c", has("rain_mm") || has("tmin_c") || has("tmax_c")),
        "season_set" => normals(body),
        "moved_on" => {
            let tray = body.get("from").filter(|from| body.get("to") == Some(*from));
            tray.and_then(Value::as_str).map_or(Ok(()), |tray| {
                Err(FieldFault { field: "to".to_string(), problem: Problem::SameTray(tray.to_string()) })
            })
        }
        _ => Ok(()),
    }
}

/// No plant in a nursery is older, days: a hundred years (ours: beyond it is a slip of the pen).
const OLDEST_DAYS: f64 = 36_525.0;
/// No treatment works longer, days: ten years (ours: beyond it is a slip of the pen).
const LONGEST_WAIT_DAYS: f64 = 3_653.0;
/// Minutes of a day: no walk is longer.
const MINUTES_OF_A_DAY: u16 = 24 * 60;
/// The lowest temperature that can be written, degrees C (as the type of the field says).
const LOWEST_C: f64 = -60.0;

/// The fields of a kind of which exactly one is written, as a list "a / b / c"; empty where there are none.
fn one_only(kind: &str) -> &'static str {
    match kind {
        "shade_set" | "watering_set" => "tray / place",
        "held" | "released" => "tray / lot / place / bed",
        "pest_seen" | "treated" => "tray / bed / place",
        "light_read" => "bed / place",
        _ => "",
    }
}

/// The fields of a kind of which exactly one is written: what the entry is about.
pub fn one_only_of(kind: &str) -> impl Iterator<Item = &'static str> {
    one_only(kind).split(" / ").filter(|name| !name.is_empty())
}

/// Exactly one of the fields of which a kind takes only one is there.
fn exactly_one(kind: &str, body: &Map<String, Value>) -> Result<(), FieldFault> {
    let names = one_only(kind);
    let problem = match one_only_of(kind).filter(|name| body.contains_key(*name)).count() {
        1 => return Ok(()),
        0 => Problem::OneOf(names),
        _ => Problem::OnlyOneOf(names),
    };
    Err(FieldFault { field: kind.to_string(), problem })
}

fn at_most(body: &Map<String, Value>, name: &str, most: f64) -> Result<(), FieldFault> {
    let above = body.get(name).and_then(Value::as_f64).is_some_and(|number| number > most);
    let problem = Problem::OutsideEnds { least: 0.0, most };
    if above { Err(FieldFault { field: name.to_string(), problem }) } else { Ok(()) }
}

/// In each record of a list one number may be at most so many times another.
fn no_more_than(body: &Map<String, Value>, list: &str, part: &str, whole: &str, times: f64) -> Result<(), FieldFault> {
    for (i, record) in body.get(list).and_then(Value::as_array).into_iter().flatten().enumerate() {
        let number = |name: &str| record.get(name).and_then(Value::as_f64);
        if let (Some(part_of), Some(whole_of)) = (number(part), number(whole)) {
            let most = whole_of * times;
            if part_of > most {
                let problem = Problem::OutsideEnds { least: 0.0, most };
                return Err(FieldFault { field: format!("{list}[{}].{part}", i + 1), problem });
            }
        }
    }
    Ok(())
}

fn not_empty(body: &Map<String, Value>, name: &str) -> Result<(), FieldFault> {
    let empty = body.get(name).and_then(Value::as_array).is_some_and(Vec::is_empty);
    if empty { Err(FieldFault { field: name.to_string(), problem: Problem::Empty }) } else { Ok(()) }
}

fn normals(body: &Map<String, Value>) -> Result<(), FieldFault> {
    for name in ["rain_mm", "tmin_c", "tmax_c"] {
        let months = body.get(name).and_then(Value::as_array).map(Vec::len);
        if let Some(months) = months.filter(|months| *months != 12) {
            return Err(FieldFault { field: name.to_string(), problem: Problem::NotTwelve(months) });
        }
    }
    // A month whose lowest temperature lies above its highest.
    let month = |name: &str, i: usize| body.get(name).and_then(|months| months.get(i)).and_then(Value::as_f64);
    for i in 0..12 {
        if let (Some(lowest), Some(highest)) = (month("tmin_c", i), month("tmax_c", i))
            && lowest > highest
        {
            let problem = Problem::OutsideEnds { least: LOWEST_C, most: highest };
            return Err(FieldFault { field: format!("tmin_c[{}]", i + 1), problem });
        }
    }
    Ok(())
}
