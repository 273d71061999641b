//! `calc light` of a regular bed: nurse plants all alike, young trees in the middles between them, month by month.

use serde_json::{Value, json};

use super::light::{day, place, say_light};
use super::radiation::slope;
use crate::base::Day;
use crate::cli::calc::answer::Answer;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::shade::crown::Crown;
use crate::science::shade::map::{Month, SKY_DIRECTIONS, SUN_MOMENTS, maps};
use crate::science::shade::positions::Positions;
use crate::science::shade::sky::{even_sky, sun_through};
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{positive, share, within};
use crate::wording::Wording;

/// Most nurse plants of a bed. Ours.
const MOST_PLANTS: u32 = 20_000;
/// Most months in a row. Ours: after that the plants are others.
const MOST_MONTHS: u32 = 60;
/// How high a young tree stands, m. Ours: its upper leaves in the first months.
const TREE_M: f64 = 0.3;

/// A bed of nurse plants.
struct Bed {
    rows: u32,
    plants: u32,
    row_m: f64,
    plant_m: f64,
}

impl Bed {
    fn of(given: &Given) -> Result<Bed, Wrong> {
        let (rows, plants) = (given.count("rows")?, given.count("plants")?);
        positive("rows", f64::from(rows))?;
        positive("plants", f64::from(plants))?;
        if rows.saturating_mul(plants) > MOST_PLANTS {
            return Err(WrongInput::TooMany { input: "plants", most: MOST_PLANTS / rows }.into());
        }
        let distance =
            |input| -> Result<f64, Wrong> { Ok(within(input, positive(input, given.number(input)?)?, 0.0, 100.0)?) };
        Ok(Bed { rows, plants, row_m: distance("row_m")?, plant_m: distance("plant_m")? })
    }

    /// A spot for each plant, `aside` of a step along the rows and across them.
    fn spots(&self, aside: f64) -> Vec<[f64; 2]> {
        let each = (0..self.rows).flat_map(|row| (0..self.plants).map(move |plant| (row, plant)));
        each.map(|(row, plant)| [(f64::from(plant) + aside) * self.plant_m, (f64::from(row) + aside) * self.row_m])
            .collect()
    }
}

/// Light in the middles between the plants, on the day and on the same day of the months after it.
pub(super) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let place = place(given)?;
    let first = day(given)?;
    let diffuse_share = share("diffuse_fraction", given.number("diffuse_fraction")?)?;
    let bed = Bed::of(given)?;
    let heading_deg = within("heading_deg", given.maybe_number("heading_deg")?.unwrap_or(90.0), 0.0, 360.0)?;
    let crowns = crowns(given, &bed)?;
    let ground = slope(given)?.map_or(Slope::LEVEL, |slope| slope.along_rows(heading_deg));
    let positions = Positions::new(&bed.spots(0.5), TREE_M, ground)?;
    let mut days = Vec::new();
    let mut months = Vec::new();
    for at in 0..months_asked(given)? {
        let day = months_later(first, at);
        let sun = sun_through(place, day, SUN_MOMENTS)?;
        months.push(Month { crowns: crowns.clone(), sun: sun.iter().map(|sun| sun.along_rows(heading_deg)).collect() });
        days.push(day);
    }
    let sky: Vec<_> = even_sky(SKY_DIRECTIONS).iter().map(|patch| patch.along_rows(heading_deg)).collect();
    let mut answer = Answer::new(wording.calc_light_formula(), wording.calc_light_source());
    let mut told: Vec<Value> = Vec::new();
    let has_sun: Vec<bool> = months.iter().map(|month| !month.sun.is_empty()).collect();
    for ((day, has_sun), map) in days.into_iter().zip(has_sun).zip(maps(&positions, &months, &sky)) {
        // Where the sun does not rise all there is comes from the sky.
        let light = map.light(if has_sun { diffuse_share } else { 1.0 });
        if told.is_empty() {
            if !has_sun {
                answer.say(wording.calc_light_no_sun(day));
            }
            say_light(&mut answer, &light, wording);
        }
        let mean = light.iter().sum::<f64>() / light.len() as f64;
        let rows: Vec<&[f64]> = light.chunks(bed.plants as usize).collect();
        told.push(json!({"date": day.to_string(), "mean": mean, "relative_light": rows}));
    }
    answer.figure("maps", told);
    Ok(answer)
}

fn months_asked(given: &Given) -> Result<u32, Wrong> {
    match given.maybe_count("months")? {
        Some(many) if many > MOST_MONTHS => Err(WrongInput::TooMany { input: "months", most: MOST_MONTHS }.into()),
        asked => Ok(asked.unwrap_or(1).max(1)),
    }
}

/// The same day of a later month; the last of it where it is shorter.
fn months_later(first: Day, months: u32) -> Day {
    let (year, month, day) = first.ymd();
    let after = month - 1 + months;
    let (year, month) = (year + (after / 12) as i32, after % 12 + 1);
    (1..=day).rev().find_map(|day| Day::from_ymd(year, month, day)).unwrap_or(first)
}

/// The crown of each plant, from its top, its foot and its width.
fn crowns(given: &Given, bed: &Bed) -> Result<Vec<Crown>, Wrong> {
    let (top, foot) = (given.number("top_m")?, given.number("foot_m")?);
    let width = positive("width_m", given.number("width_m")?)?;
    positive("top_m", top)?;
    within("foot_m", foot, 0.0, top)?;
    positive("top_m", top - foot)?;
    let (lad, k) = (given.number("lad")?, given.number("k")?);
    let each = bed.spots(0.0).into_iter();
    Ok(each
        .map(|[x, y]| Crown::new([x, y, (top + foot) / 2.0], width / 2.0, (top - foot) / 2.0, lad, k))
        .collect::<Result<Vec<Crown>, WrongInput>>()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_month_later_is_the_same_day_or_the_last_of_a_shorter_month() {
        let later = |months| months_later(Day::from_ymd(2026, 11, 30).unwrap(), months).to_string();
        assert_eq!([later(0), later(1), later(3), later(26)], ["2026-11-30", "2026-12-30", "2027-02-28", "2029-01-30"]);
    }
}
