//! Why a place is as it is: whether hands may be there, its light, and what stands on it.

use super::ready::Ready;
use super::{Asked, Page, Tone};
use crate::base::PlaceName;
use crate::reckon::Picture;
use crate::reckon::bed::water::told::bench_litres;
use crate::reckon::picture::{Criterion, Stage, TrayPicture};
use crate::reckon::tray::hold;
use crate::reckon::tray::pest::nest_at;
use crate::wording::verdict::About;

/// Whether a book knows a place: somebody described it, wrote of it, or put a tray there.
pub(crate) fn places(picture: &Picture) -> impl Iterator<Item = &PlaceName> {
    let of_trays = picture.trays.values().filter_map(|tray| tray.place.as_ref());
    picture.site.places.keys().chain(picture.places.keys()).chain(of_trays)
}

/// What keeps hands or plants at a place: a waiting time, a hold.
pub(crate) fn waits_at(name: &PlaceName, picture: &Picture) -> Vec<Criterion> {
    let waits = hold::waiting_at(&picture.closed, name, picture.day);
    let held = picture.places.get(name).and_then(|place| hold::held_at(place, picture.day));
    let nest = nest_at(name, (&picture.places, &picture.sick), picture.day);
    nest.into_iter().chain(waits).chain(held).collect()
}

/// The trays that live at a place.
pub(crate) fn trays_at<'a>(name: &PlaceName, picture: &'a Picture) -> Vec<&'a TrayPicture> {
    let here =
        picture.trays.values().map(AsRef::as_ref).filter(|tray: &&TrayPicture| tray.place.as_ref() == Some(name));
    here.filter(|tray| tray.stage != Stage::Spent).collect()
}

/// Its page.
pub(crate) fn why_place(name: &PlaceName, asked: Asked<'_>) -> Page {
    let (wording, picture) = (asked.wording, asked.picture);
    let mut page = asked.page();
    page.heading(wording.why_place_heading(name));
    let waits = waits_at(name, picture);
    if waits.is_empty() {
        page.verdict(true, wording.why_place_open());
    }
    for criterion in &waits {
        page.verdict(false, wording.reason(criterion, About::Tray));
    }
    Ready::new(asked).spared_at(name, None).into_iter().for_each(|said| page.line(1, said, Tone::Plain));
    let trays = trays_at(name, picture);
    let set = picture.site.places.get(name).and_then(|described| described.on(picture.day));
    let most = set.and_then(|set| set.holds_trays).map(|most| i64::from(most.0));
    let mut facts = vec![
        (wording.label_standing(), wording.place_trays_words(trays.len() as i64, most)),
        (wording.label_light(), wording.light_of_place(picture.places.get(name), picture.day)),
    ];
    let litres = bench_litres(name, picture);
    if litres.plants > 0 {
        facts.push((wording.label_litres(), wording.bench_litres_words(&litres)));
    }
    page.facts(facts);
    if !trays.is_empty() {
        page.gap();
        let ready = Ready::new(asked);
        page.trays(vec![(None, trays.into_iter().map(|tray| ready.row_of(tray)).collect())]);
    }
    page
}
