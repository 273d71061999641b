//! What several tests need: entries as a grower writes them, and a small nursery.

pub mod grown;
pub mod plans;
pub mod program;
pub mod reference;
pub mod schema;
pub mod screen;
pub mod sowings;

use std::sync::Arc;

use outplant::base::{BedName, Day, DeviceId, EntryId, Moment, TrayCode};
use outplant::nursery::entry::{Entry, reading};
use outplant::nursery::envelope::canonical;
use outplant::reckon::picture::{BedSpecies, Criterion, PairPicture, Picture, Rule, TrayPicture};
use outplant::reckon::{View, draw_picture};
use serde_json::{Value, json};

/// A day from its ISO text.
pub fn day(text: &str) -> Day {
    text.parse().unwrap()
}

/// The evening of a day, UTC.
pub fn evening(day: Day) -> Moment {
    format!("{day}T18:00:00Z").parse().unwrap()
}

/// An entry as device `device` wrote it on the evening of the day it happened.
pub fn entry_of(device: &str, seq: u64, happened: &str, kind: &str, body: Value) -> Arc<Entry> {
    let happened = day(happened);
    let settled =
        reading::settle_body(kind, body.as_object().unwrap()).unwrap_or_else(|fault| panic!("{kind}: {fault:?}"));
    Arc::new(Entry {
        id: EntryId { device: DeviceId::new(device).unwrap(), seq },
        happened,
        clock: None,
        recorded: evening(happened),
        who: "tester".into(),
        command: seq,
        what: reading::read_body(kind, &canonical(&Value::Object(settled))).unwrap(),
    })
}

/// A journal being written by hand.
#[derive(Default, Clone)]
pub struct Book {
    pub entries: Vec<Arc<Entry>>,
}

impl Book {
    /// Writes one entry.
    pub fn write(&mut self, happened: &str, kind: &str, body: Value) -> EntryId {
        let entry = entry_of("a", self.entries.len() as u64 + 1, happened, kind, body);
        let id = entry.id.clone();
        self.entries.push(entry);
        id
    }

    /// The Picture of a day.
    pub fn on(&self, on: &str) -> Picture {
        self.seen_from(day(on), day(on))
    }

    /// The Picture of a day, seen from another.
    pub fn seen_from(&self, on: Day, today: Day) -> Picture {
        draw_picture(View { day: on, known: None }, today, self.entries.iter().cloned())
    }
}

/// A nursery with rains from 1 March to 15 June, one bench in 45 % shade and one in 70 %, a 1,000 ml bag.
pub fn small_nursery() -> Book {
    let mut book = Book::default();
    book.write(
        "2025-01-01",
        "nursery_set",
        json!({"name":"Test terrace","latitude_deg":-1.2,"longitude_deg":36.0,"altitude_m":1650,"utc_offset_h":3}),
    );
    book.write("2025-01-01", "season_set", json!({"rains":[{"from":"03-01","until":"06-15"}]}));
    book.write("2025-01-01", "place_set", json!({"place":"Deep shade","order":1,"shade_pct":70}));
    book.write("2025-01-01", "place_set", json!({"place":"Half shade","order":2,"shade_pct":45}));
    book.write("2025-01-01", "container_set", json!({"container":"bag","volume_ml":1000,"depth_cm":23}));
    book.write("2025-01-01", "lot_received", json!({"lot":"cof-L1","species":"COA","source":"school row","collected":"2025-01-01","seeds":1000,"kept":"in_parchment"}));
    book
}

/// A tray of 60 coffee seeds sown on a day in deep shade, of which 50 stand on another.
pub fn coffee_in_deep_shade(book: &mut Book, tray: &str, sown: &str, counted: &str) {
    book.write(sown, "sown", json!({"tray":tray,"lot":"cof-L1","seeds":60,"container":"bag","place":"Deep shade"}));
    book.write(counted, "counted", json!({"tray":tray,"standing":50}));
}

/// A tray of coffee that is ready on 2026-04-15 by every rule: sown 2025-06-01, hardened from 2026-02-20.
pub fn ready_coffee(book: &mut Book, tray: &str) {
    ready_coffee_sown(book, tray, "2025-06-01", "2025-09-10");
}

/// The same sown on another day, and first counted on one.
pub fn ready_coffee_sown(book: &mut Book, tray: &str, sown: &str, counted: &str) {
    book.write(
        sown,
        "sown",
        json!({"tray":tray,"lot":"cof-L1","seeds":60,"container":"bag","cells":60,"place":"Deep shade"}),
    );
    book.write(counted, "counted", json!({"tray":tray,"standing":50}));
    book.write("2026-02-20", "carried", json!({"tray":tray,"place":"Half shade"}));
    book.write("2026-04-10", "counted", json!({"tray":tray,"standing":48}));
    let plants: Vec<Value> =
        (0..20).map(|i| json!({"height_cm": 25 + i % 5, "collar_mm": 4.5, "leaf_pairs": 7})).collect();
    book.write("2026-04-10", "measured", json!({"tray":tray,"plants":plants}));
    book.write("2026-04-10", "plug_checked", json!({"tray":tray,"roots":"holds"}));
}

/// A bed of 20 x 6 m for coffee that is open on 2026-04-15: light 60 %, soil 1.2 MPa, all work done, rain.
pub fn open_bed(book: &mut Book, bed: &str) {
    book.write(
        "2025-01-01",
        "bed_set",
        json!({"bed":bed,"field":"Upper","length_m":20,"width_m":6,
        "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    book.write("2026-04-01", "light_read", json!({"bed":bed,"light_share":0.6}));
    book.write("2026-04-01", "soil_checked", json!({"bed":bed,"resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    for task in ["cleared", "holes", "weeded", "mulched"] {
        book.write("2026-04-05", "prepared", json!({"bed":bed,"task":task}));
    }
}

/// Rain of 10 mm on each of the last days before 2026-04-15.
pub fn wet_days(book: &mut Book) {
    for date in ["2026-04-13", "2026-04-14", "2026-04-15"] {
        book.write(date, "weather", json!({"rain_mm":10}));
    }
}

/// A tray of a Picture.
pub fn tray<'a>(picture: &'a Picture, code: &str) -> &'a TrayPicture {
    picture.trays.get(&TrayCode::new(code).unwrap()).unwrap_or_else(|| panic!("no tray {code}"))
}

/// A species of a bed of a Picture.
pub fn bed_species<'a>(picture: &'a Picture, bed: &str, species: &str) -> &'a BedSpecies {
    let bed = picture.beds.get(&BedName::new(bed).unwrap()).unwrap_or_else(|| panic!("no bed {bed}"));
    bed.species.iter().find(|line| line.species.as_str() == species).unwrap_or_else(|| panic!("no {species} there"))
}

/// A pair of a Picture.
pub fn pair<'a>(picture: &'a Picture, tray: &str, bed: &str) -> &'a PairPicture {
    picture
        .pair(&TrayCode::new(tray).unwrap(), &BedName::new(bed).unwrap())
        .unwrap_or_else(|| panic!("no pair {tray} {bed}"))
}

/// A criterion by its rule.
pub fn criterion(criteria: &[Criterion], rule: Rule) -> &Criterion {
    criteria.iter().find(|criterion| criterion.rule() == rule).unwrap_or_else(|| panic!("no {rule} among {criteria:?}"))
}

/// So many random cases, unless `PROPTEST_CASES` asks for more; failures found once are kept in tests/regressions.txt.
pub fn cases(usual: u32) -> proptest::prelude::ProptestConfig {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|text| text.parse().ok());
    proptest::prelude::ProptestConfig {
        cases: asked.unwrap_or(usual),
        failure_persistence: Some(Box::new(proptest::test_runner::FileFailurePersistence::Direct(
            "tests/regressions.txt",
        ))),
        ..Default::default()
    }
}

/// A ready tray of coffee and an open bed that it fits, on 15 April 2026.
pub fn fitting() -> Book {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    open_bed(&mut book, "Upper 1");
    wet_days(&mut book);
    book
}
