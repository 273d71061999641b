//! For tests: entries as a grower writes them, one after the other.

use serde_json::json;
use std::sync::Arc;

use crate::base::{BedName, Day, DeviceId, EntryId, Moment};
use crate::nursery::entry::Entry;
use crate::nursery::entry::reading::{read_body, settle_body};
use crate::reckon::bed::eaten::BrokenInto;
use crate::reckon::bed::water::balance::Waters;
use crate::reckon::bed::{Then, picture_bed};
use crate::reckon::draw_picture;
use crate::reckon::ledger::{Ledger, View};
use crate::reckon::picture::{BedPicture, BedSpecies, Criterion, Looking, Picture, Rule};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, Places, fold_bed};
use crate::reckon::tray::pest::kin::Kin;

/// Entries of a small book.
#[derive(Default)]
pub(crate) struct TestBook {
    entries: Vec<Arc<Entry>>,
}

pub(crate) fn day(written: &str) -> Day {
    written.parse().unwrap()
}

/// The picture of a bed in a nursery without places.
pub(crate) fn picture_of(story: &Arc<BedStory>, site: &Site, on: &str, looking: Looking) -> BedPicture {
    let places = Places::new();
    let waters = Waters::of(site, day(on));
    let (kin, broken_into) = (Kin::default(), BrokenInto::new());
    let (day, broken_into) = (day(on), &broken_into);
    let then = Then { site, places: &places, kin: &kin, broken_into, waters: &waters, day, looking };
    picture_bed(story, then).unwrap()
}

impl TestBook {
    /// The bed "Upper terrace" of such a length and width, for coffee in a square of 3 m.
    pub(crate) fn upper_terrace(length_m: f64, width_m: f64) -> TestBook {
        let mut page = TestBook::default();
        let plan = json!([{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3}]);
        let set = json!({"bed":"Upper terrace","field":"Old maize","length_m":length_m,"width_m":width_m,
            "edges":"half","plan":plan});
        page.write("2025-01-05", "bed_set", set);
        page
    }

    /// Nurse plants in it, in a square.
    pub(crate) fn nurses(&mut self, on: &str, nurse: &str, count: u32, apart_m: f64) {
        let fields = json!({"bed":"Upper terrace","nurse":nurse,"count":count,"row_m":apart_m,"in_row_m":apart_m});
        self.write(on, "nurse_planted", fields);
    }

    /// Writes an entry: its day, its kind, and its fields as JSON.
    pub(crate) fn write(&mut self, happened: &str, kind: &str, fields: serde_json::Value) -> EntryId {
        let body = settle_body(kind, fields.as_object().unwrap()).unwrap();
        let what = read_body(kind, &serde_json::Value::Object(body).to_string()).unwrap();
        let seq = self.entries.len() as u64 + 1;
        let id = EntryId { device: DeviceId::new("kilima").unwrap(), seq };
        self.entries.push(Arc::new(Entry {
            id: id.clone(),
            happened: day(happened),
            clock: None,
            recorded: Moment::from_millis(seq as i64),
            who: Arc::from("wanja"),
            command: seq,
            what,
        }));
        id
    }

    /// What is written.
    pub(crate) fn entries(&self) -> &[Arc<Entry>] {
        &self.entries
    }

    /// The story of the bed "Upper terrace" on a day, and the site.
    pub(crate) fn story(&self, on: &str) -> (BedStory, Site) {
        let ledger = Ledger::new(View { day: day(on), known: None }, self.entries.iter().cloned());
        let site = Site::of(&ledger);
        (fold_bed(&ledger, &site, &BedName::new("Upper terrace").unwrap()), site)
    }

    /// The picture of that bed on a day.
    pub(crate) fn picture(&self, on: &str) -> BedPicture {
        let (story, site) = self.story(on);
        picture_of(&Arc::new(story), &site, on, Looking::Today)
    }

    /// The picture of everything on a day.
    pub(crate) fn whole(&self, on: &str) -> Picture {
        draw_picture(View { day: day(on), known: None }, day(on), self.entries.iter().cloned())
    }

    /// The first species of its plan on a day.
    pub(crate) fn first(&self, on: &str) -> BedSpecies {
        self.picture(on).species.remove(0)
    }

    /// One question about the first species of its plan on a day.
    pub(crate) fn asked(&self, on: &str, rule: Rule) -> Criterion {
        self.first(on).criteria.into_iter().find(|criterion| criterion.rule() == rule).unwrap()
    }
}
