//! `calc light`: crowns and points one by one, reckoned straight on; a regular bed by the maps (`light_of_bed.rs`).

use serde_json::{Value, json};

use super::light_of_bed;
use super::radiation::slope;
use super::sun::moment;
use crate::base::{Day, Moment};
use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Light;
use crate::cli::calc::given::{Given, Wrong, in_row};
use crate::science::WrongInput;
use crate::science::shade::crown::{Crown, Point};
use crate::science::shade::cuts::{Band, LightTable};
use crate::science::shade::plain::light_at;
use crate::science::shade::reading::{LEAST_FACTOR, MOST_FACTOR, leaf_factor};
use crate::science::shade::sky::{
    Direction, even_sky, of_suns, overcast, sky_patches, sun_by_clock, sun_through, together,
};
use crate::science::sun::place::Place;
use crate::science::sun::position::sun_at;
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{positive, share};
use crate::wording::Wording;

/// Most crowns, and most points. Ours.
const MOST_OF_EACH: usize = 5_000;
/// Most pairs of crown and point: about a minute. Ours.
const MOST_PAIRS: usize = 1_000_000;
/// Moments of the sun where nobody names others. Ours, measured: within 0.001 of every minute.
const SUN_MOMENTS: u32 = 288;
/// Degrees of a patch of the sky where nobody names others. Ours, measured: within 0.002 of single degrees.
const SKY_DEGREES: f64 = 2.0;
/// Directions of the sky for a reading and for cuts. Ours, measured.
const FEW_OF_SKY: u32 = 300;
/// Moments of the sun for cuts. Ours, measured.
const FEW_OF_SUN: u32 = 48;
/// Moments of the sun while a reading is taken. Ours.
const READING_MOMENTS: u32 = 9;
/// Most cuts asked for. Ours.
const MOST_CUTS: f64 = 12.0;
/// The words of a reading's `sky`.
const OVERCAST: &str = "overcast";
const CLEAR: &str = "clear";

/// What was typed: a regular bed.
pub(crate) fn typed(typed: &Light) -> Given {
    let mut given = Given::default();
    for (key, value) in [
        ("lat", typed.lat),
        ("lon", typed.lon),
        ("elev_m", typed.elev),
        ("months", typed.months),
        ("rows", typed.rows),
        ("plants", typed.plants),
        ("row_m", typed.row),
        ("plant_m", typed.plant),
        ("top_m", typed.top),
        ("foot_m", typed.foot),
        ("width_m", typed.width),
        ("lad", typed.lad),
        ("k", typed.k),
        ("heading_deg", typed.heading),
        ("slope_deg", typed.slope),
        ("facing_deg", typed.facing),
    ] {
        given.put(key, value);
    }
    given.put_whole_percent("diffuse_fraction", typed.diffuse);
    given.put_text("date", typed.date.as_ref());
    given
}

/// Light at points under crowns, or in a regular bed.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    if given.value("rows").is_some() {
        return light_of_bed::answer(given, wording);
    }
    if given.value("crowns").is_none() {
        return Err(Wrong::Said(wording.calc_light_of_what()));
    }
    let scene = Scene::of(given)?;
    let (direct, diffuse) = scene.parts(&scene.crowns);
    let light = scene.of_day(&direct, &diffuse);
    let mut answer = Answer::new(wording.calc_light_formula(), wording.calc_light_source());
    if scene.sun.is_empty() {
        answer.say(wording.calc_light_no_sun(scene.day));
    }
    say_light(&mut answer, &light, wording);
    answer.figure("direct", direct);
    answer.figure("diffuse", diffuse);
    answer.figure("relative_light", light);
    if let Some(reading) = given.maybe_object("reading")? {
        read_leaves(&mut answer, &reading, &scene, wording)?;
    }
    if given.value("band").is_some() {
        let sun = sun_through(scene.place, scene.day, FEW_OF_SUN)?;
        let lights = together(scene.diffuse_share, &even_sky(FEW_OF_SKY), &sun);
        let table = LightTable::new(&scene.points, (&scene.crowns, &[]), &lights, scene.ground)?;
        cuts(&mut answer, given, &table, wording)?;
    }
    Ok(answer)
}

/// What was given, with every height told from one level plane.
struct Scene {
    place: Place,
    day: Day,
    diffuse_share: f64,
    crowns: Vec<Crown>,
    points: Vec<Point>,
    ground: Slope,
    sun: Vec<Direction>,
    sky: Vec<Direction>,
}

impl Scene {
    /// On a slope the heights given are heights above the ground there.
    fn of(given: &Given) -> Result<Scene, Wrong> {
        let (place, day) = (place(given)?, day(given)?);
        let ground = slope(given)?.unwrap_or(Slope::LEVEL);
        let (crowns, points) = (crowns(given)?, points(given)?);
        if crowns.len().saturating_mul(points.len()) > MOST_PAIRS {
            let most = (MOST_PAIRS / crowns.len().max(1)) as u32;
            return Err(WrongInput::TooMany { input: "points", most }.into());
        }
        Ok(Scene {
            place,
            day,
            diffuse_share: share("diffuse_fraction", given.number("diffuse_fraction")?)?,
            crowns: crowns.iter().map(|crown| crown.on(ground)).collect(),
            points: points.into_iter().map(|[x, y, z]| [x, y, z + ground.height_m([x, y])]).collect(),
            ground,
            sun: sun(given, place, day)?,
            sky: sky(given)?,
        })
    }

    /// Direct and diffuse light at each point.
    fn parts(&self, crowns: &[Crown]) -> (Vec<f64>, Vec<f64>) {
        let lit = |lights: &[Direction]| light_at(&self.points, crowns, lights, self.ground);
        (lit(&self.sun), lit(&self.sky))
    }

    fn of_day(&self, direct: &[f64], diffuse: &[f64]) -> Vec<f64> {
        // Where the sun does not rise all there is comes from the sky.
        let share = if self.sun.is_empty() { 1.0 } else { self.diffuse_share };
        direct.iter().zip(diffuse).map(|(direct, diffuse)| share * diffuse + (1.0 - share) * direct).collect()
    }
}

/// Mean, darkest and brightest in words.
pub(super) fn say_light(answer: &mut Answer, light: &[f64], wording: &Wording) {
    let mean = light.iter().sum::<f64>() / light.len().max(1) as f64;
    let darkest = light.iter().copied().fold(f64::INFINITY, f64::min);
    let brightest = light.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    answer.say(wording.calc_light_some(wording.percent(mean), wording.percent(darkest), wording.percent(brightest)));
}

/// A place under the keys of `calc light`; at the sea where nothing is said of its height, which hardly moves the sun.
pub(super) fn place(given: &Given) -> Result<Place, Wrong> {
    let elev_m = given.maybe_number("elev_m")?;
    Ok(Place::new(given.number("lat")?, given.number("lon")?, elev_m)?)
}

/// The day under `date`.
pub(super) fn day(given: &Given) -> Result<Day, Wrong> {
    day_under(given, "date")
}

/// The day under a key.
pub(super) fn day_under(given: &Given, input: &'static str) -> Result<Day, Wrong> {
    let written = given.maybe_text(input)?.ok_or(WrongInput::Missing { input })?;
    written.parse().map_err(|_| Wrong::Word { input, written: written.to_string(), known: "2026-03-15" })
}

fn crowns(given: &Given) -> Result<Vec<Crown>, Wrong> {
    let rows = given.objects("crowns")?;
    if rows.len() > MOST_OF_EACH {
        return Err(WrongInput::TooMany { input: "crowns", most: MOST_OF_EACH as u32 }.into());
    }
    let crown = |row: &Given| -> Result<Crown, Wrong> {
        let at = [row.number("x")?, row.number("y")?, row.number("zc")?];
        // A crown may have leaves of its own kind.
        let k = match row.maybe_number("k")? {
            Some(own) => own,
            None => given.number("k")?,
        };
        Ok(Crown::new(at, row.number("rh")?, row.number("hh")?, row.number("lad")?, k)?)
    };
    rows.iter().enumerate().map(|(at, row)| crown(row).map_err(|wrong| in_row("crowns", at, wrong))).collect()
}

fn points(given: &Given) -> Result<Vec<Point>, Wrong> {
    let points = given.rows::<3>("points")?;
    match points.len() {
        0 => Err(WrongInput::Missing { input: "points" }.into()),
        many if many > MOST_OF_EACH => Err(WrongInput::TooMany { input: "points", most: MOST_OF_EACH as u32 }.into()),
        _ => Ok(points),
    }
}

/// The suns of the day: evenly from rising to setting, or by the clock where that is asked for.
fn sun(given: &Given, place: Place, day: Day) -> Result<Vec<Direction>, Wrong> {
    Ok(match given.maybe_number("sun_minutes")? {
        Some(minutes) => sun_by_clock(place, day, given.number("utc_offset_h")?, minutes)?,
        None => sun_through(place, day, SUN_MOMENTS)?,
    })
}

fn sky(given: &Given) -> Result<Vec<Direction>, Wrong> {
    Ok(sky_patches(given.maybe_number("sky_degrees")?.unwrap_or(SKY_DEGREES))?)
}

/// What a reading says of the leaves, and the day's light under leaves corrected by it.
fn read_leaves(answer: &mut Answer, reading: &Given, scene: &Scene, wording: &Wording) -> Result<(), Wrong> {
    let light_share = reading.number("light_share")?;
    let lights = lights_of(reading, scene.place)?;
    let told = leaf_factor(&scene.points, &scene.crowns, &lights, scene.ground, light_share)?;
    let believed = told.factor.map(|factor| factor.clamp(LEAST_FACTOR, MOST_FACTOR));
    let (read, expected) = (wording.percent(light_share), wording.percent(told.expected));
    answer.say(match believed {
        Some(factor) => wording.calc_light_leaves(read, expected, wording.number(factor, 2)),
        None => wording.calc_light_no_leaves(read, expected, wording.percent(told.gaps)),
    });
    if told.factor != believed {
        answer.say(wording.calc_light_held(wording.number(LEAST_FACTOR, 1), wording.number(MOST_FACTOR, 1)));
    }
    let corrected = believed.map(|factor| {
        let crowns: Vec<Crown> = scene.crowns.iter().map(|crown| crown.leafier(factor)).collect();
        let (direct, diffuse) = scene.parts(&crowns);
        scene.of_day(&direct, &diffuse)
    });
    answer.figure(
        "leaves",
        json!({
            "expected": told.expected,
            "gaps": told.gaps,
            "factor": told.factor,
            "believed": believed,
            "sharpness": told.sharpness,
            "relative_light": corrected,
        }),
    );
    Ok(())
}

/// The light of the moment of a reading.
fn lights_of(reading: &Given, place: Place) -> Result<Vec<Direction>, Wrong> {
    let sky = even_sky(FEW_OF_SKY);
    match reading.maybe_text("sky")? {
        None => Err(WrongInput::Missing { input: "sky" }.into()),
        Some(OVERCAST) => Ok(overcast(&sky)),
        Some(CLEAR) => {
            let diffuse_share = share("diffuse_fraction", reading.number("diffuse_fraction")?)?;
            let minutes = positive("minutes", reading.maybe_number("minutes")?.unwrap_or(1.0))?.min(240.0);
            let begin = moment(reading, "utc")?.millis();
            let mut suns = Vec::new();
            for at in 0..READING_MOMENTS {
                let into = (f64::from(at) + 0.5) / f64::from(READING_MOMENTS) * minutes * 60_000.0;
                suns.push(sun_at(place, Moment::from_millis(begin + into as i64))?);
            }
            Ok(together(diffuse_share, &sky, &of_suns(suns)))
        }
        Some(other) => Err(Wrong::Word { input: "sky", written: other.to_string(), known: "overcast, clear" }),
    }
}

/// The line of how many positions come into a band by how many cuts.
fn cuts(answer: &mut Answer, given: &Given, table: &LightTable, wording: &Wording) -> Result<(), Wrong> {
    let band = given.numbers("band")?;
    let [low, high] = band[..] else {
        let written = format!("{band:?}");
        return Err(Wrong::Word { input: "band", written, known: "[low, high]" });
    };
    let most = f64::from(given.maybe_count("cuts")?.unwrap_or(0)).min(MOST_CUTS) as usize;
    let found = table.best_cuts(Band::new(low, high)?, None, most);
    let line: Vec<String> = found.iter().map(|cuts| format!("{}: {}", cuts.crowns.len(), cuts.in_band)).collect();
    answer.say(wording.calc_light_cuts(
        wording.percent(low),
        wording.percent(high),
        line.join(", "),
        table.light().len() as u64,
    ));
    let told: Vec<Value> = found
        .iter()
        .map(|cuts| {
            let crowns: Vec<usize> = cuts.crowns.iter().map(|crown| crown + 1).collect();
            json!({"crowns": crowns, "in_band": cuts.in_band, "proven": cuts.proven, "light": cuts.light})
        })
        .collect();
    answer.figure("cuts", told);
    Ok(())
}
