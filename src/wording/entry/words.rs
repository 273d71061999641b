//! Words that sentences about entries share: what they are about, how much, where in a bed.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use crate::base::text::folded;
use crate::base::word::Word;
use crate::base::{BedName, LotCode, PlaceName, TrayCode};
use crate::nursery::cause::Cause;
use crate::nursery::entry::types::{ArrivedFrom, Count, CutWhat, MovedHow, NotNegative, PlantForm, Sky, Spot, Text};
use crate::wording::{Lang, Wording, theme};

/// Spots named in a sentence; the rest are counted.
const SPOTS_NAMED: usize = 6;
/// What short lines write where no cause is said.
const NOT_SAID: &str = "not said";

/// Whether a text of an entry only says that nothing was said.
pub(crate) fn is_not_said(text: &str) -> bool {
    text == NOT_SAID
}

impl Wording {
    /// What an entry is about: the first of these that is there.
    pub(super) fn about(
        &self,
        tray: Option<&TrayCode>,
        lot: Option<&LotCode>,
        bed: Option<&BedName>,
        place: Option<&PlaceName>,
    ) -> String {
        let named = [
            tray.map(|tray| self.about_tray(tray)),
            lot.map(|lot| self.about_lot(lot)),
            bed.map(|bed| self.about_bed(bed)),
            place.map(|place| self.about_place(place)),
        ];
        let all: Vec<String> = named.into_iter().flatten().collect();
        if all.is_empty() { self.about_nothing() } else { all.join(", ") }
    }

    /// A text of a form as it was written; that no cause was said is said in the person's language.
    pub(crate) fn text_told(&self, text: &str) -> String {
        if is_not_said(text) { self.no_cause_said() } else { text.to_string() }
    }

    /// A cause as it was written; one of ours, and that none was said, in the person's language.
    pub(crate) fn cause_told(&self, cause: &str) -> String {
        if is_not_said(cause) { self.no_cause_said() } else { self.own_cause(cause) }
    }

    /// One of our causes in the person's language, whichever it was written in; another as it was written.
    fn own_cause(&self, written: &str) -> String {
        static NAMES: OnceLock<BTreeMap<String, Cause>> = OnceLock::new();
        let names = NAMES.get_or_init(|| {
            let named = |wording: Wording| {
                Cause::WORDS.iter().map(move |(cause, _)| (folded(&wording.cause_name(*cause)), *cause))
            };
            Lang::ALL.into_iter().map(Wording::new).flat_map(named).collect()
        });
        names.get(&folded(written)).map_or_else(|| written.to_string(), |cause| self.cause_name(*cause))
    }

    /// A cause by its name.
    pub(crate) fn cause_name(&self, cause: Cause) -> String {
        self.of_word(theme::CAUSE, cause)
    }

    /// Why plants were thrown out, the same way.
    pub(super) fn reason_told(&self, why: &str) -> String {
        if is_not_said(why) { self.reason_not_said() } else { self.own_cause(why) }
    }

    /// Seed as it was written: counted, weighed or both.
    pub(super) fn seed_amount(&self, seeds: Option<Count>, mass_g: Option<NotNegative>) -> String {
        let seeds = seeds.map(|seeds| self.seeds(seeds.0));
        let mass = mass_g.map(|mass| format!("{} g", self.number(mass.0, 3)));
        let all: Vec<String> = [seeds, mass].into_iter().flatten().collect();
        if all.is_empty() { "?".to_string() } else { all.join(", ") }
    }

    /// Where in a bed: rows, places.
    pub(super) fn where_in_bed(&self, rows: Option<&Text>, at: Option<&[Spot]>) -> [Option<String>; 2] {
        let rows = rows.map(|rows| self.entry_part_rows(&rows.0));
        [rows, at.filter(|spots| !spots.is_empty()).map(|spots| self.part_spots(self.spot_list(spots)))]
    }

    /// Places in a bed: the first ones, and how many more.
    pub(super) fn spot_list(&self, spots: &[Spot]) -> String {
        let mut said: Vec<String> = spots.iter().take(SPOTS_NAMED).map(|spot| spot.0.to_string()).collect();
        if spots.len() > SPOTS_NAMED {
            said.push(self.change_more((spots.len() - SPOTS_NAMED) as i64));
        }
        said.join(" ")
    }

    /// Where plants that are not from our seed came from.
    pub(crate) fn arrived_name(&self, from: ArrivedFrom) -> String {
        self.of_word(theme::FROM, from)
    }

    /// The form a plant came in.
    pub(crate) fn form_name(&self, form: PlantForm) -> String {
        self.of_word(theme::FORM, form)
    }

    /// How seedlings went into another tray.
    pub(crate) fn moved_how_name(&self, how: MovedHow) -> String {
        self.of_word(theme::MOVED, how)
    }

    /// What was cut of a nurse plant.
    pub(crate) fn cut_name(&self, what: CutWhat) -> String {
        self.of_word(theme::CUT, what)
    }

    /// The sky.
    pub(crate) fn sky_name(&self, sky: Sky) -> String {
        self.of_word(theme::SKY, sky)
    }
}
