//! `calc sun`.

use crate::base::Moment;
use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Sun;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::sun::place::Place;
use crate::science::sun::position::{Rising, sun_at, sun_day};
use crate::wording::Wording;

/// How a moment is written.
const MOMENT: &str = "2026-03-15T16:00:00Z, 2026-03-15T10:00:00-06:00";

/// What was typed.
pub(crate) fn typed(typed: &Sun) -> Given {
    let mut given = Given::default();
    given.put("lat_deg", typed.lat);
    given.put("lon_deg", typed.lon);
    given.put("elev_m", typed.elev);
    given.put_text("utc", typed.utc.as_ref());
    given
}

/// A place under the keys of `calc sun`; at the sea where nothing is said of its height, which hardly moves the sun.
fn place(given: &Given) -> Result<Place, Wrong> {
    let elev_m = given.maybe_number("elev_m")?;
    Ok(Place::new(given.number("lat_deg")?, given.number("lon_deg")?, elev_m)?)
}

/// The moment under a key.
pub(crate) fn moment(given: &Given, input: &'static str) -> Result<Moment, Wrong> {
    let written = given.maybe_text(input)?.ok_or(WrongInput::Missing { input })?;
    written.parse().map_err(|_| Wrong::Word { input, written: written.to_string(), known: MOMENT })
}

/// Where the sun stands, and its day.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (place, moment) = (place(given)?, moment(given, "utc")?);
    let (now, day) = (sun_at(place, moment)?, sun_day(place, moment, Rising::Seen)?);
    let mut answer = Answer::new(wording.calc_sun_formula(), wording.calc_sun_source());
    let (high, from_north) = (wording.number(now.elevation_deg.abs(), 2), wording.number(now.azimuth_deg, 2));
    answer.say(if now.elevation_deg < 0.0 {
        wording.calc_sun_below(high, from_north)
    } else {
        wording.calc_sun_above(high, from_north)
    });
    answer.say(match (day.rises, day.sets) {
        (Some(rises), Some(sets)) => wording.calc_sun_day(clock(rises), clock(sets), wording.number(day.length_h, 2)),
        _ => wording.calc_sun_no_end(wording.number(day.length_h, 1)),
    });
    answer.figure("elevation_deg", now.elevation_deg);
    answer.figure("azimuth_deg", now.azimuth_deg);
    answer.figure("sunrise", day.rises.map(|at| at.to_string()));
    answer.figure("noon", day.noon.map(|at| at.to_string()));
    answer.figure("sunset", day.sets.map(|at| at.to_string()));
    answer.figure("day_length_h", day.length_h);
    Ok(answer)
}

/// Day, hour and minute in UTC.
fn clock(moment: Moment) -> String {
    moment.to_string().chars().take(16).collect::<String>().replace('T', " ")
}
