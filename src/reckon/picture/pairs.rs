//! Trays against beds: which fits where. Their questions are put together only where somebody asks.

use imbl::OrdMap;
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use super::{BedPicture, BedSpecies, Criterion, Rule, TrayPicture};
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::reckon::pair::{misses_of, own_questions, plants_of, questions_of, whole_of};
use crate::reckon::tray::Stood;
use crate::words;

words! {
    /// Whose question it is.
    Side {
        /// Of the tray, whatever the bed.
        Tray: "tray";
        /// Of the bed, whatever the tray.
        Bed: "bed";
        /// Of this tray in this bed.
        Pair: "pair";
    }
}

/// A question that holds a pair back, and whose it is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct HeldBy {
    /// Whose.
    pub of: Side,
    /// The question.
    pub rule: Rule,
}

/// How much holds a pair back: fewer reasons come first, then what ends sooner; what has no end comes last.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(crate) struct Misses {
    /// Questions that hold it back, each once.
    pub(in crate::reckon) reasons: u8,
    /// Whether one of them has no day on which it is expected to be met, or none holds it back.
    is_open: bool,
    /// The day on which the last of them is expected to be met; always the same one where it is open.
    last: Day,
}

impl Misses {
    /// Of the questions that hold back and when each is expected to be met.
    pub(crate) fn of(held: &[(Rule, Option<Day>)]) -> Misses {
        let is_open = held.is_empty() || held.iter().any(|(_, until)| until.is_none());
        let last = held.iter().filter_map(|(_, until)| *until).max().filter(|_| !is_open);
        let reasons = u8::try_from(held.len()).unwrap_or(u8::MAX);
        Misses { reasons, is_open, last: last.unwrap_or_else(|| Day::from_number(0)) }
    }

    /// The day on which the last of them is expected to be met; none where one has none.
    pub(in crate::reckon) fn until(&self) -> Option<Day> {
        (!self.is_open).then_some(self.last)
    }
}

/// A tray against a bed on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct PairPicture {
    /// The tray.
    pub tray: TrayCode,
    /// The bed.
    pub bed: BedName,
    /// The species of the tray, which the bed's plan names.
    pub species: SpeciesKey,
    /// Whether nothing holds it back.
    pub fits: bool,
    /// What holds it back: the tray's questions, the bed's, its own.
    pub held_by: Vec<HeldBy>,
    /// How much holds it back, and how long.
    pub(crate) misses: Misses,
    /// How many could go: the smaller of the likely plantable and the open positions.
    pub plants: u32,
    /// Whether some of the bed's open positions lie in the species' band of light.
    pub in_light: bool,
    /// The questions of the pair: the tray's, its own (hardening and the step in light), the bed's.
    pub criteria: Questions,
}

/// What a pair is made of.
#[derive(Clone, Debug)]
pub(in crate::reckon) struct MadeOf {
    pub of: Arc<TrayPaired>,
    pub bed: Arc<BedPicture>,
}

impl MadeOf {
    /// What the bed's plan says of the species.
    pub(in crate::reckon) fn line(&self) -> Option<&BedSpecies> {
        line_of(&self.of.tray, &self.bed)
    }
}

/// What a bed's plan says of the species of a tray.
pub(in crate::reckon) fn line_of<'a>(tray: &TrayPicture, bed: &'a BedPicture) -> Option<&'a BedSpecies> {
    let species = tray.species.as_ref()?;
    bed.species.iter().find(|line| line.species == *species)
}

/// The questions of a pair: as a slice, put together when first looked at.
#[derive(Clone, Debug)]
pub struct Questions {
    made_of: Option<MadeOf>,
    asked: OnceLock<Vec<Criterion>>,
}

impl Questions {
    pub(in crate::reckon) fn made_of(made_of: MadeOf) -> Questions {
        Questions { made_of: Some(made_of), asked: OnceLock::new() }
    }

    /// All of them without keeping them: of very many pairs each is looked at once.
    pub(crate) fn once(&self) -> Cow<'_, [Criterion]> {
        match (self.asked.get(), &self.made_of) {
            (Some(asked), _) => Cow::Borrowed(asked),
            (None, Some(made_of)) => Cow::Owned(questions_of(made_of)),
            (None, None) => Cow::Borrowed(&[]),
        }
    }

    /// Those of the pair alone: neither the tray's nor the bed's.
    pub fn own(&self) -> Vec<Criterion> {
        match &self.made_of {
            Some(made_of) => own_questions(made_of),
            None => self.iter().filter(|criterion| criterion.rule() == Rule::ExposureStep).cloned().collect(),
        }
    }
}

impl From<Vec<Criterion>> for Questions {
    fn from(criteria: Vec<Criterion>) -> Questions {
        Questions { made_of: None, asked: OnceLock::from(criteria) }
    }
}

impl std::ops::Deref for Questions {
    type Target = [Criterion];

    fn deref(&self) -> &[Criterion] {
        self.asked.get_or_init(|| self.made_of.as_ref().map(questions_of).unwrap_or_default())
    }
}

impl PartialEq for Questions {
    fn eq(&self, other: &Questions) -> bool {
        **self == **other
    }
}

/// A tray against a bed as it is kept: there are very many, and few are looked at. The rest of it is put together where
/// somebody asks for it. What is missed is kept in its parts: so they take no more room than they need.
#[derive(Clone, Debug)]
pub struct Pair {
    /// Whether nothing holds it back.
    pub fits: bool,
    /// Whether some of the bed's open positions lie in the species' band of light.
    pub in_light: bool,
    reasons: u8,
    is_open: bool,
    last: Day,
    /// How many could go.
    pub plants: u32,
    /// Its number among the pairs of the tray that were made together.
    number: u32,
    of: Of,
}

#[derive(Clone, Debug)]
enum Of {
    Made { tray: Arc<TrayPaired>, bed: Arc<BedPicture> },
    Given(Arc<PairPicture>),
}

/// A pair that was put together, or not yet.
type Whole = OnceLock<Arc<PairPicture>>;

/// What is the same in all pairs of a tray that are made together.
#[derive(Debug)]
pub(in crate::reckon) struct TrayPaired {
    pub tray: Arc<TrayPicture>,
    pub stood: Stood,
    /// How many pairs these are.
    pairs: usize,
    /// Those that were put together, by number; none where nobody asked yet.
    whole: OnceLock<Box<[Whole]>>,
}

impl TrayPaired {
    /// A tray that makes so many pairs.
    pub(in crate::reckon) fn of(tray: &Arc<TrayPicture>, stood: Stood, pairs: usize) -> TrayPaired {
        TrayPaired { tray: tray.clone(), stood, pairs, whole: OnceLock::new() }
    }

    fn whole(&self, number: u32) -> &Whole {
        &self.whole.get_or_init(|| (0..self.pairs).map(|_| Whole::new()).collect())[number as usize]
    }

    fn whole_already(&self, number: u32) -> Option<&Arc<PairPicture>> {
        self.whole.get()?[number as usize].get()
    }
}

impl Pair {
    /// The pair of a tray and a bed whose plan names its species, the first of a tray being 0.
    pub(in crate::reckon) fn made_of(tray: &Arc<TrayPaired>, bed: &Arc<BedPicture>, number: u32) -> Option<Pair> {
        let made_of = MadeOf { of: tray.clone(), bed: bed.clone() };
        let planned = made_of.line()?;
        let Misses { reasons, is_open, last } = misses_of(&made_of, planned);
        let (fits, in_light, plants) = (reasons == 0, planned.in_light > 0, plants_of(&tray.tray, planned));
        let of = Of::Made { tray: tray.clone(), bed: bed.clone() };
        Some(Pair { fits, in_light, reasons, is_open, last, plants, number, of })
    }

    /// How much holds it back, and how long.
    pub(in crate::reckon) fn missed(&self) -> Misses {
        Misses { reasons: self.reasons, is_open: self.is_open, last: self.last }
    }

    /// All of it, kept from then on.
    pub fn whole(&self) -> &Arc<PairPicture> {
        match &self.of {
            Of::Made { tray, bed } => tray.whole(self.number).get_or_init(|| self.put_together(tray, bed)),
            Of::Given(given) => given,
        }
    }

    /// The same without keeping it: of very many each is looked at once.
    pub(crate) fn once(&self) -> Arc<PairPicture> {
        match &self.of {
            Of::Made { tray, bed } => {
                tray.whole_already(self.number).cloned().unwrap_or_else(|| self.put_together(tray, bed))
            }
            Of::Given(given) => given.clone(),
        }
    }

    fn put_together(&self, tray: &Arc<TrayPaired>, bed: &Arc<BedPicture>) -> Arc<PairPicture> {
        Arc::new(whole_of(MadeOf { of: tray.clone(), bed: bed.clone() }, self))
    }

    /// A question that is asked of the bed, whatever the tray.
    pub(crate) fn asked_of_bed(&self, rule: Rule) -> Option<&Criterion> {
        let of_bed: &[Criterion] = match &self.of {
            Of::Made { tray, bed } => line_of(&tray.tray, bed).map_or(&[], |line| &line.criteria),
            Of::Given(given) => &given.criteria,
        };
        of_bed.iter().find(|criterion| criterion.rule() == rule)
    }

    /// The bed; the rest is not put together for it.
    pub fn bed(&self) -> &BedName {
        match &self.of {
            Of::Made { bed, .. } => &bed.name,
            Of::Given(given) => &given.bed,
        }
    }

    /// The tray; the rest is not put together for it.
    pub fn tray(&self) -> &TrayCode {
        match &self.of {
            Of::Made { tray, .. } => &tray.tray.code,
            Of::Given(given) => &given.tray,
        }
    }
}

impl std::ops::Deref for Pair {
    type Target = PairPicture;

    fn deref(&self) -> &PairPicture {
        self.whole()
    }
}

impl AsRef<PairPicture> for Pair {
    fn as_ref(&self) -> &PairPicture {
        self.whole()
    }
}

impl PartialEq for Pair {
    fn eq(&self, other: &Pair) -> bool {
        self.once() == other.once()
    }
}

/// Every tray with living plants against every bed whose plan names its species.
#[derive(Clone, Default, Debug)]
pub struct Pairs {
    of_tray: OrdMap<TrayCode, Arc<[Pair]>>,
}

impl Pairs {
    pub(in crate::reckon) fn set(&mut self, tray: &TrayCode, pairs: impl Into<Arc<[Pair]>>) {
        let pairs = pairs.into();
        if pairs.is_empty() {
            self.of_tray.remove(tray);
        } else {
            self.of_tray.insert(tray.clone(), pairs);
        }
    }

    /// Fits first, those in the light before others, then by tray and bed.
    pub fn iter(&self) -> impl Iterator<Item = &Pair> {
        const PASSES: [(bool, bool); 4] = [(true, true), (true, false), (false, true), (false, false)];
        let of_pass = |pass: (bool, bool)| move |pair: &&Pair| (pair.fits, pair.in_light) == pass;
        PASSES.into_iter().flat_map(move |pass| self.of_tray.values().flat_map(|of| of.iter()).filter(of_pass(pass)))
    }

    /// The pairs of one tray, by bed.
    pub fn of(&self, tray: &TrayCode) -> &[Pair] {
        self.of_tray.get(tray).map_or(&[], |pairs| &**pairs)
    }

    /// The pair of a tray that misses least; of several the bed that comes first by name.
    pub(crate) fn nearest(&self, tray: &TrayCode) -> Option<&Pair> {
        self.of(tray).iter().min_by_key(|pair| (pair.missed(), pair.bed()))
    }

    /// Those of which something is true.
    pub(in crate::reckon) fn kept(&self, keep: impl Fn(&Pair) -> bool) -> Pairs {
        let mut kept = Pairs::default();
        for (tray, of_it) in &self.of_tray {
            kept.set(tray, of_it.iter().filter(|pair| keep(pair)).cloned().collect::<Vec<_>>());
        }
        kept
    }

    /// The pair of a tray and a bed.
    pub fn get(&self, tray: &TrayCode, bed: &BedName) -> Option<&Pair> {
        let pairs = self.of(tray);
        pairs.binary_search_by(|pair| pair.bed().cmp(bed)).ok().and_then(|at| pairs.get(at))
    }
}

impl PartialEq for Pairs {
    fn eq(&self, other: &Pairs) -> bool {
        self.of_tray == other.of_tray
    }
}

impl From<Vec<Arc<PairPicture>>> for Pairs {
    fn from(all: Vec<Arc<PairPicture>>) -> Pairs {
        let mut by_tray: BTreeMap<TrayCode, Vec<Pair>> = BTreeMap::new();
        for pair in all {
            let PairPicture { fits, in_light, plants, misses: Misses { reasons, is_open, last }, .. } = *pair;
            let of_it = by_tray.entry(pair.tray.clone()).or_default();
            of_it.push(Pair { fits, in_light, reasons, is_open, last, plants, number: 0, of: Of::Given(pair) });
        }
        let mut pairs = Pairs::default();
        for (tray, mut of_it) in by_tray {
            of_it.sort_by(|a, b| a.bed().cmp(b.bed()));
            pairs.set(&tray, of_it);
        }
        pairs
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::reckon::changes::Turned;
    use crate::reckon::test_book::{TestBook, day};
    use crate::reckon::{Change, FromThen, View, changes, shared_offers};

    impl Pairs {
        fn put_together(&self) -> usize {
            let is_whole =
                |pair: &&Pair| matches!(&pair.of, Of::Made { tray, .. } if tray.whole_already(pair.number).is_some());
            self.of_tray.values().flat_map(|of_it| of_it.iter()).filter(is_whole).count()
        }
    }

    fn book() -> TestBook {
        let mut book = TestBook::default();
        let nursery =
            json!({"name":"Slope","latitude_deg":-1.2,"longitude_deg":36.1,"altitude_m":1650,"utc_offset_h":3});
        book.write("2025-01-01", "nursery_set", nursery);
        book.write("2025-01-01", "season_set", json!({"rains":[{"from":"10-15","until":"02-28"}]}));
        book.write("2025-01-01", "place_set", json!({"place":"Half shade","order":1,"shade_pct":45}));
        book.write("2025-01-01", "place_set", json!({"place":"Deep shade","order":2,"shade_pct":70}));
        let lot = json!({"lot":"L-1","species":"COA","source":"school row","collected":"2025-01-01","kept":"in_parchment","seeds":2000});
        book.write("2025-01-01", "lot_received", lot);
        book.write("2025-01-01", "container_set", json!({"container":"bag","volume_ml":1000,"depth_cm":23}));
        let plants = vec![json!({"height_cm":26,"collar_mm":4.5,"leaf_pairs":7}); 20];
        for tray in ["t-1", "t-2", "t-3"] {
            let sown = json!({"tray":tray,"lot":"L-1","seeds":60,"container":"bag","cells":60,"place":"Deep shade"});
            book.write("2025-12-01", "sown", sown);
            book.write("2026-03-10", "counted", json!({"tray":tray,"standing":50}));
            book.write("2026-09-01", "carried", json!({"tray":tray,"place":"Half shade"}));
            book.write("2026-11-10", "counted", json!({"tray":tray,"standing":40}));
            book.write("2026-11-10", "measured", json!({"tray":tray,"plants":plants}));
        }
        for (bed, light_share) in [("Lower", 0.5), ("Upper", 0.95)] {
            let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
            let body = json!({"bed":bed,"field":"Hill","length_m":20,"width_m":6,"plan":plan});
            book.write("2025-01-01", "bed_set", body);
            book.write("2026-11-01", "light_read", json!({"bed":bed,"light_share":light_share}));
            let soil = json!({"bed":bed,"resistance_mpa":1.2,"depth_cm":30,"wet":true});
            book.write("2026-11-01", "soil_checked", soil);
            for task in ["cleared", "holes", "weeded", "mulched"] {
                book.write("2026-11-05", "prepared", json!({"bed":bed,"task":task}));
            }
        }
        for day in 10..25 {
            book.write(&format!("2026-11-{day}"), "weather", json!({"rain_mm":8}));
        }
        book
    }

    #[test]
    fn a_pair_that_nobody_looks_at_is_small() {
        assert!(size_of::<Pair>() <= 32, "{} bytes", size_of::<Pair>());
    }

    #[test]
    fn what_turned_and_what_is_offered_is_found_without_putting_pairs_together() {
        let mut book = book();
        let before = book.whole("2026-11-24");
        book.write("2026-11-25", "held", json!({"tray":"t-1","why":"promised"}));
        let after = book.whole("2026-11-25");
        let then = FromThen::whole(View { day: day("2026-11-24"), known: None }, day("2026-11-25"), book.entries());
        let turned = changes(&before, &after, &then);
        let of_pair = |change: &&Change| matches!(change.turned, Turned::Pair { .. });
        assert!(turned.iter().filter(of_pair).count() > 0, "{turned:?}");
        let _ = shared_offers(&after);
        assert_eq!(after.pairs.iter().filter(|pair| pair.fits || pair.missed().reasons > 0).count(), 6);
        assert!(after.pairs.nearest(&TrayCode::new("t-1").unwrap()).is_some());
        assert_eq!((before.pairs.put_together(), after.pairs.put_together()), (0, 0));
    }

    #[test]
    fn a_pair_that_is_put_together_says_what_was_kept_of_it() {
        let picture = book().whole("2026-11-25");
        for pair in picture.pairs.iter() {
            let whole = pair.once();
            let kept = (pair.fits, pair.in_light, pair.plants, pair.missed(), pair.tray(), pair.bed());
            let said = (whole.fits, whole.in_light, whole.plants, whole.misses, &whole.tray, &whole.bed);
            assert_eq!(kept, said);
            assert_eq!(whole.fits, whole.held_by.is_empty());
            let rules: std::collections::BTreeSet<Rule> = whole.held_by.iter().map(|held| held.rule).collect();
            assert_eq!(usize::from(whole.misses.reasons), rules.len());
            assert!(
                whole
                    .held_by
                    .iter()
                    .all(|held| held.of != Side::Pair || whole.criteria.own().iter().any(|own| own.blocks))
            );
        }
        assert_eq!(picture.pairs.put_together(), 0);
        let first = picture.pairs.iter().next().unwrap();
        assert!(Arc::ptr_eq(first.whole(), first.whole()));
        assert_eq!(picture.pairs.put_together(), 1);
    }
}
