//! `why` of a place.

use serde_json::{Value, json};

use super::criterion_json::number;
use super::run::{Exit, Run};
use super::why_json::{answer, litres_json};
use crate::base::text::folded;
use crate::base::{PlaceName, name_search};
use crate::page::place::{places, trays_at, waits_at};
use crate::reckon::Picture;
use crate::reckon::bed::water::told::bench_litres;
use crate::wording::Wording;
use crate::wording::verdict::About;

/// A place of the Picture, typed without capitals or accents too; one that is not there is refused with the names nearest to it.
pub(super) fn place_of<'a>(run: &Run, picture: &'a Picture, place: &PlaceName) -> Result<&'a PlaceName, Exit> {
    let wanted = folded(place.as_str());
    places(picture).find(|name| folded(name.as_str()) == wanted).ok_or_else(|| {
        let nearest = name_search::nearest(place.as_str(), places(picture).map(PlaceName::as_str));
        Exit::refused(run.wording.nearest_after(run.wording.refused_unknown_place(place), &nearest))
    })
}

/// The answer of `why place --json`.
pub(super) fn why_place_json(name: &PlaceName, picture: &Picture, wording: &Wording) -> Value {
    let story = picture.places.get(name);
    let light = story.and_then(|story| story.light_on(picture.day)).and_then(|light| light.read.or(light.nominal));
    let set = picture.site.places.get(name).and_then(|described| described.on(picture.day));
    let trays = trays_at(name, picture).into_iter().map(
        |tray| json!({"tray": tray.code, "species": tray.species, "stage": tray.stage, "standing": tray.standing}),
    );
    let waits = waits_at(name, picture);
    let place = json!({
        "place": name,
        "light_share": light.map(number),
        "light_text": wording.light_of_place(story, picture.day),
        "holds_trays": set.and_then(|set| set.holds_trays).map(|most| most.0),
        "water": litres_json(&bench_litres(name, picture)),
        "trays": trays.collect::<Vec<_>>(),
        "waits": waits.iter().map(|criterion| wording.reason(criterion, About::Tray)).collect::<Vec<_>>(),
    });
    answer(picture, "place", place)
}
