//! What an entry is about: the trays, lots, beds and places whose story it belongs to.

use super::{BookEntry, GroundEntry, SeedEntry, SiteEntry, TrayEntry, What};
use crate::base::{BedName, LotCode, PlaceName, TrayCode};

/// Something with a story of its own.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Subject {
    /// A tray.
    Tray(TrayCode),
    /// A seed lot.
    Lot(LotCode),
    /// A bed.
    Bed(BedName),
    /// A place where trays stand.
    Place(PlaceName),
    /// The site: nursery, seasons, species, containers, fields, weather.
    Site,
}

/// The lot named when nobody knows which it was.
pub const UNKNOWN_LOT: &str = "unknown";

/// Whether a lot's name says that nobody knows which it was.
pub fn is_unknown_lot(lot: &LotCode) -> bool {
    matches!(crate::base::text::folded(lot.as_str()).as_str(), "unknown" | "desconocido")
}

/// Every subject an entry belongs to; none for notes, withdrawals and kinds of a newer version.
pub fn subjects(what: &What) -> Vec<Subject> {
    match what {
        What::Site(entry) => site_subjects(entry),
        What::Seed(entry) => vec![Subject::Lot(match entry {
            SeedEntry::LotReceived(lot) => lot.lot.clone(),
            SeedEntry::LotKept(lot) => lot.lot.clone(),
            SeedEntry::LotCounted(lot) => lot.lot.clone(),
            SeedEntry::LotTested(lot) => lot.lot.clone(),
        })],
        What::Tray(entry) => tray_subjects(entry),
        What::Ground(entry) => ground_subjects(entry),
        What::Book(BookEntry::Weather(_)) => vec![Subject::Site],
        What::Book(BookEntry::Noted(_) | BookEntry::Withdrawn(_)) | What::Foreign { .. } => Vec::new(),
    }
}

fn site_subjects(entry: &SiteEntry) -> Vec<Subject> {
    match entry {
        SiteEntry::NurserySet(_)
        | SiteEntry::SeasonSet(_)
        | SiteEntry::SpeciesSet(_)
        | SiteEntry::ContainerSet(_)
        | SiteEntry::FieldSet(_) => vec![Subject::Site],
        SiteEntry::PlaceSet(place) => vec![Subject::Place(place.place.clone())],
        SiteEntry::BedSet(bed) => vec![Subject::Bed(bed.bed.clone())],
        SiteEntry::PositionsBlocked(bed) => vec![Subject::Bed(bed.bed.clone())],
    }
}

fn of(
    tray: Option<&TrayCode>,
    lot: Option<&LotCode>,
    bed: Option<&BedName>,
    place: Option<&PlaceName>,
) -> Vec<Subject> {
    let mut all = Vec::with_capacity(2);
    all.extend(tray.cloned().map(Subject::Tray));
    all.extend(lot.filter(|lot| !is_unknown_lot(lot)).cloned().map(Subject::Lot));
    all.extend(bed.cloned().map(Subject::Bed));
    all.extend(place.cloned().map(Subject::Place));
    all
}

fn tray_subjects(entry: &TrayEntry) -> Vec<Subject> {
    match entry {
        TrayEntry::Sown(sown) => of(Some(&sown.tray), Some(&sown.lot), None, None),
        TrayEntry::Resown(sown) => of(Some(&sown.tray), Some(&sown.lot), None, None),
        TrayEntry::PlantsReceived(received) => of(Some(&received.tray), None, None, None),
        TrayEntry::Counted(look) => of(Some(&look.tray), None, None, None),
        TrayEntry::Lost(lost) => of(Some(&lost.tray), None, None, None),
        TrayEntry::Culled(culled) => of(Some(&culled.tray), None, None, None),
        TrayEntry::MovedOn(moved) => vec![Subject::Tray(moved.from.clone()), Subject::Tray(moved.to.clone())],
        TrayEntry::Carried(carried) => of(Some(&carried.tray), None, None, None),
        TrayEntry::Measured(measured) => of(Some(&measured.tray), None, None, None),
        TrayEntry::PlugChecked(plug) => of(Some(&plug.tray), None, None, None),
        TrayEntry::Flushed(flushed) => of(Some(&flushed.tray), None, None, None),
        TrayEntry::ShadeSet(step) => of(step.tray.as_ref(), None, None, step.place.as_ref()),
        TrayEntry::WateringSet(step) => of(step.tray.as_ref(), None, None, step.place.as_ref()),
        TrayEntry::HardeningBegun(begun) => of(Some(&begun.tray), None, None, None),
        TrayEntry::Held(held) => of(held.tray.as_ref(), held.lot.as_ref(), held.bed.as_ref(), held.place.as_ref()),
        TrayEntry::Released(free) => of(free.tray.as_ref(), free.lot.as_ref(), free.bed.as_ref(), free.place.as_ref()),
        TrayEntry::PestSeen(pest) => of(pest.tray.as_ref(), None, pest.bed.as_ref(), pest.place.as_ref()),
        TrayEntry::Treated(treated) => of(treated.tray.as_ref(), None, treated.bed.as_ref(), treated.place.as_ref()),
        TrayEntry::Stocktaken(look) => of(Some(&look.tray), None, None, None),
        TrayEntry::GivenOut(given) => of(Some(&given.tray), None, None, None),
        TrayEntry::Relabelled(label) => {
            let mut all = of(Some(&label.tray), None, None, None);
            all.extend(label.was.clone().map(Subject::Tray));
            all
        }
        TrayEntry::LetGo(_) => vec![Subject::Site],
    }
}

fn ground_subjects(entry: &GroundEntry) -> Vec<Subject> {
    let bed = |bed: &BedName| vec![Subject::Bed(bed.clone())];
    match entry {
        GroundEntry::SownInBed(sown) => of(None, sown.lot.as_ref(), Some(&sown.bed), None),
        GroundEntry::PlantsFound(found) => bed(&found.bed),
        GroundEntry::NursePlanted(planted) => of(None, planted.lot.as_ref(), Some(&planted.bed), None),
        GroundEntry::NurseCounted(look) => bed(&look.bed),
        GroundEntry::NurseMeasured(look) => bed(&look.bed),
        GroundEntry::NurseCut(cut) => bed(&cut.bed),
        GroundEntry::LightRead(read) => of(None, None, read.bed.as_ref(), read.place.as_ref()),
        GroundEntry::SoilChecked(check) => bed(&check.bed),
        GroundEntry::Prepared(work) => bed(&work.bed),
        GroundEntry::Outplanted(out) => vec![Subject::Tray(out.tray.clone()), Subject::Bed(out.bed.clone())],
        GroundEntry::PlantsLost(lost) => bed(&lost.bed),
        GroundEntry::SurvivalCounted(look) => bed(&look.bed),
    }
}

/// Whether an entry hands something on to what comes of it: species, sowings, or where plants came from.
pub fn lends(what: &What) -> bool {
    match what {
        What::Tray(entry) => matches!(
            entry,
            TrayEntry::Sown(_)
                | TrayEntry::Resown(_)
                | TrayEntry::PlantsReceived(_)
                | TrayEntry::MovedOn(_)
                | TrayEntry::Relabelled(_)
                | TrayEntry::Carried(_)
                | TrayEntry::Treated(_)
                | TrayEntry::PlugChecked(_)
        ),
        What::Seed(entry) => matches!(entry, SeedEntry::LotReceived(_)),
        What::Site(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => false,
    }
}
