//! A small Picture made by hand, for the tests of the pages.

use std::sync::Arc;

use crate::base::{Day, DeviceId, EntryId, Range, SpeciesKey, TrayCode};
use crate::nursery::entry::NurserySet;
use crate::nursery::entry::types::{GroundTask, Roots};
use crate::nursery::species::Catalogue;
use crate::reckon::picture::quantity::*;
use crate::reckon::picture::question::Known;
use crate::reckon::picture::*;
use crate::reckon::site::{Described, Site};
use crate::reckon::stock::{BedStory, TrayStory};
use crate::reckon::tray::age_of_count::WeeklyLoss;

/// A day.
pub(crate) fn day(written: &str) -> Day {
    written.parse().unwrap()
}

/// An entry of the invented device.
pub(crate) fn entry(seq: u64) -> EntryId {
    EntryId { device: DeviceId::new("k3f9").unwrap(), seq }
}

fn met<N, K>(question: impl FnOnce(Known<N, K>) -> Question, needed: N, known: K) -> Criterion {
    Criterion::found(question, needed, known, Basis::Measured, true, "common practice")
}

fn unmet<N, K>(question: impl FnOnce(Known<N, K>) -> Question, needed: N, known: K) -> Criterion {
    Criterion::found(question, needed, known, Basis::Reckoned, false, "common practice")
}

fn age(days: i32) -> Criterion {
    let is_met = days >= 210;
    let needed = DaysOfSpecies { least: 210, usual: None, most: None };
    let source = "Wintgens 2004, Coffee";
    Criterion::found(Question::DaysSinceSowing, needed, days, Basis::Counted, is_met, source)
        .expected_on(Some(day("2026-03-14").plus(210 - days)))
        .resting_on([entry(12)])
}

fn step(from: f64, to: f64) -> Criterion {
    let (needed, known) =
        (RatioAtMost(1.6), LightStep { from, to, burns: None, in_sun: false, back: None, rests_until: None });
    if to / from <= 1.6 {
        met(Question::ExposureStep, needed, known)
    } else {
        unmet(Question::ExposureStep, needed, known)
    }
}

fn tray(code: &str, species: &str, stage: Stage, standing: u32, criteria: Vec<Criterion>) -> TrayPicture {
    let code = TrayCode::new(code).unwrap();
    let standing_f = f64::from(standing);
    TrayPicture {
        code: code.clone(),
        species: Some(SpeciesKey::new(species)),
        lots: vec![crate::base::LotCode::new("cof-L07").unwrap()],
        stage,
        standing,
        standing_range: Range::exact(standing_f),
        seed: 0,
        counted_on: Some(day("2026-03-10")),
        plantable: Range::new((standing_f * 0.7).floor() - 0.5, standing_f * 0.8, (standing_f * 0.95).floor()),
        plantable_basis: Basis::Measured,
        place: Some(crate::base::PlaceName::new("bench 2").unwrap()),
        sown_on: Some(day("2025-05-08")),
        age_days: Some(310),
        light_share: Some(0.35),
        light_changed: None,
        ready: criteria.iter().all(|criterion| !criterion.blocks) && standing >= 5,
        ready_from: criteria.iter().find(|criterion| criterion.blocks).and_then(|criterion| criterion.expected),
        ready_spread: None,
        best_before: Some(day("2026-04-20")),
        best_before_spread: None,
        criteria,
        story: Arc::new(TrayStory::blank(code)),
    }
}

fn bed(name: &str, light: Option<f64>, species: Vec<BedSpecies>) -> BedPicture {
    let name = crate::base::BedName::new(name).unwrap();
    BedPicture {
        name: name.clone(),
        field: crate::base::FieldName::new("Terraces").unwrap(),
        length_m: 30.0,
        width_m: 12.0,
        light_now: light.map(|share| LightNow {
            share,
            read_on: day("2026-03-02"),
            apart: None,
            basis: Basis::Measured,
            entries: vec![entry(40)],
        }),
        species,
        nurses: Vec::new(),
        story: Arc::new(BedStory {
            name,
            layout: Described::default(),
            blocked: Vec::new(),
            cohorts: Vec::new(),
            nurses: Vec::new(),
            light: Vec::new(),
            soil: Vec::new(),
            watered: Vec::new(),
            work: Vec::new(),
            cuts: Vec::new(),
            survival: Vec::new(),
            held: crate::reckon::stock::Holds::default(),
            treatments: crate::reckon::stock::Treatments::default(),
            pests: Vec::new(),
            deaths: Vec::new(),
            sprayed: Vec::new(),
            came_from: Vec::new(),
            brought: Vec::new(),
            last_on: None,
            unexplained: 0,
            doubts: Vec::new(),
        }),
    }
}

fn bed_species(species: &str, standing: Standing, open: u32, criteria: Vec<Criterion>) -> BedSpecies {
    BedSpecies {
        species: SpeciesKey::new(species),
        positions: 80,
        living: 80 - open,
        open_positions: open,
        in_light: open.saturating_sub(9),
        light_reckoned: None,
        standing,
        criteria,
    }
}

/// The criteria of a pair made by hand: the step of light is its own, the rest is the bed's.
fn held_by(criterion: &Criterion) -> HeldBy {
    let of = if criterion.rule() == Rule::ExposureStep { Side::Pair } else { Side::Bed };
    HeldBy { of, rule: criterion.rule() }
}

fn pair(tray: &str, bed: &str, plants: u32, criteria: Vec<Criterion>) -> Arc<PairPicture> {
    Arc::new(PairPicture {
        tray: TrayCode::new(tray).unwrap(),
        bed: crate::base::BedName::new(bed).unwrap(),
        species: SpeciesKey::new("COA"),
        fits: criteria.iter().all(|criterion| !criterion.blocks),
        held_by: criteria.iter().filter(|criterion| criterion.blocks).map(held_by).collect(),
        misses: {
            let held = criteria.iter().filter(|criterion| criterion.blocks);
            Misses::of(&held.map(|criterion| (criterion.rule(), criterion.expected)).collect::<Vec<_>>())
        },
        plants,
        in_light: true,
        criteria: criteria.into(),
    })
}

fn nursery() -> NurserySet {
    let body = r#"{"name":"Tumbaro school nursery","latitude_deg":-3.2,"longitude_deg":37.1,"altitude_m":1450,"utc_offset_h":2}"#;
    serde_json::from_str(body).unwrap()
}

/// A nursery in which nothing was written but its name.
pub(crate) fn empty() -> Picture {
    let mut site = Site { species: Arc::new(Catalogue::built_in()), ..Site::default() };
    site.nursery.add(day("2025-01-01"), entry(1), nursery());
    Picture {
        places: std::sync::Arc::default(),
        day: day("2026-03-14"),
        looking: Looking::Today,
        known: None,
        site: Arc::new(site),
        weekly_loss: WeeklyLoss::USUAL,
        archived: Arc::from([]),
        closed: Arc::default(),
        sick: Arc::default(),
        kin: Arc::default(),
        broken_into: Arc::default(),
        trays: imbl::OrdMap::new(),
        lots: imbl::OrdMap::new(),
        beds: imbl::OrdMap::new(),
        pairs: Default::default(),
        doubts: Vec::new(),
        unplanned: Vec::new(),
    }
}

/// A nursery with a tray that goes out to two beds, one ready without a bed, others that wait, and an empty one.
pub(crate) fn small() -> Picture {
    let mut picture = empty();
    let band = || LightBand { least: 0.3, most: 0.5 };
    let hardening = unmet(Question::Hardening, DaysAtLeast(28), Hardened::For(12))
        .expected_on(Some(day("2026-03-30")))
        .resting_on([entry(31), entry(33)]);
    let crumbles = unmet(Question::Plug, Roots::Holds, Roots::Crumbles);
    let outgrown = unmet(Question::DaysInContainer, Holds::Days(300), InContainer::Days(430));
    let trays = [
        tray("cof-031", "COA", Stage::Ready, 30, vec![age(310), met(Question::Flush, NotSo, None)]),
        tray("avo-002", "AVO", Stage::Ready, 12, vec![age(300)]),
        tray("cof-040", "COA", Stage::Hardening, 41, vec![hardening, crumbles]),
        tray("cof-052", "COA", Stage::GrowingOn, 118, vec![age(193)]),
        tray("gre-009", "GRE", Stage::Overdue, 7, vec![outgrown]),
        tray("cof-001", "COA", Stage::Spent, 0, vec![unmet(Question::Living, PlantsAtLeast(1), Range::exact(0.0))]),
    ];
    picture.trays = trays.into_iter().map(|tray| (tray.code.clone(), Arc::new(tray))).collect();
    let weeded = unmet(
        Question::Weeded,
        WorkWithin { task: GroundTask::Weeded, days: 30, at_least_cm: None, eaten_on: None, eaten_beside_on: None },
        None,
    );
    let unread = Criterion::unknown(Question::LightNow, Some(band()), true, "common practice for young arabica");
    let in_band = met(Question::LightNow, band(), LightRead { share: 0.45, apart: None, reckoned: None });
    let beds = [
        bed("Lower terrace", Some(0.45), vec![bed_species("COA", Standing::Open, 40, vec![in_band.clone()])]),
        bed("School plot", Some(0.4), vec![bed_species("COA", Standing::Refill, 12, vec![in_band.clone()])]),
        bed(
            "Upper terrace",
            None,
            vec![bed_species("COA", Standing::Nursing, 80, vec![unread.clone(), weeded.clone()])],
        ),
        bed("Windbreak", None, vec![]),
    ];
    picture.beds = beds.into_iter().map(|bed| (bed.name.clone(), Arc::new(bed))).collect();
    picture.pairs = vec![
        pair("cof-031", "Lower terrace", 24, vec![age(310), step(0.35, 0.45), in_band.clone()]),
        pair("cof-031", "School plot", 12, vec![age(310), step(0.35, 0.4), in_band]),
        pair("cof-031", "Upper terrace", 24, vec![age(310), step(0.3, 0.6), unread.clone(), weeded.clone()]),
    ]
    .into();
    picture.unplanned = vec![TrayCode::new("avo-002").unwrap()];
    picture
}
