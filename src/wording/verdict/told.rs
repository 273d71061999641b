//! What a verdict rests on, as pairs of a label and what stands behind it: of a tray, of a question, of a bed's line.

use crate::base::Day;
use crate::nursery::species::Catalogue;
use crate::reckon::light::in_band::{InBand, TurnTo};
use crate::reckon::light::months::LightMonth;
use crate::reckon::light::{AS_GOOD_AS_FULL, LightTold};
use crate::reckon::picture::answered::Answered;
use crate::reckon::picture::quantity::{EndsBy, LightApart, LightSpan, ShadeEnd};
use crate::reckon::picture::{BedSpecies, Criterion, DaySpread, LightNow, NoLight, PairPicture, TrayPicture};
use crate::reckon::stock::{Graft, PlaceStory, Since};
use crate::wording::Wording;

impl Wording {
    /// How a question stands, in a word or two.
    pub(crate) fn answered_words(&self, answered: Answered) -> String {
        match answered {
            Answered::HoldsBack => self.state_blocks(),
            Answered::UnknownHoldsBack => self.state_unknown_blocks(),
            Answered::Warns => self.state_warns(),
            Answered::Unmet => self.state_unmet(),
            Answered::Unknown => self.state_unknown(),
            Answered::Met => self.state_met(),
        }
    }

    /// The labels of [`Wording::tray_facts`] and [`Wording::criterion_facts`], for alignment.
    pub(crate) fn fact_labels(&self) -> Vec<String> {
        vec![
            self.label_needed(),
            self.label_known(),
            self.label_expected(),
            self.label_source(),
            self.label_entries(),
            self.label_stage(),
            self.label_standing(),
            self.label_counted(),
            self.label_plantable(),
            self.label_place(),
            self.label_grafted(),
            self.label_light(),
            self.label_ready_from(),
            self.label_best_before(),
            self.label_care(),
            self.label_plant(),
        ]
    }

    /// What is known of a tray: stage, plants, place, light, its days.
    pub(crate) fn tray_facts(&self, tray: &TrayPicture, before: Option<(Day, &PairPicture)>) -> Vec<(String, String)> {
        let mut facts = vec![
            (self.label_stage(), self.stage_name(tray.stage)),
            (self.label_standing(), self.plants(tray.standing)),
        ];
        facts.extend(tray.counted_on.map(|day| (self.label_counted(), self.day(day))));
        let plantable = self.plants_range(tray.plantable);
        let plantable = self.known_how(plantable, self.basis_name(tray.plantable_basis));
        facts.push((self.label_plantable(), plantable));
        facts.extend(tray.place.as_ref().map(|place| (self.label_place(), place.to_string())));
        facts.extend(tray.story.grafts.iter().map(|graft| (self.label_grafted(), self.graft_words(graft))));
        facts.extend(tray.light_share.map(|share| (self.label_light(), self.light_of_tray(share, tray.light_changed))));
        let whole = |day| self.day(day);
        let sooner = before.map(|(day, pair)| self.ready_for_bed(self.day(day), &pair.bed));
        let said = [sooner, self.ready_words(tray, whole)].into_iter().flatten().collect::<Vec<_>>();
        facts.extend((!said.is_empty()).then(|| (self.label_ready(tray), said.join("; "))));
        let best = self.day_spread(tray.best_before, tray.best_before_spread, whole);
        facts.extend(best.map(|said| (self.label_best_before(), said)));
        facts
    }

    /// How many trays stand at a place, of how many that it holds where that is known.
    pub(crate) fn place_trays_words(&self, trays: i64, most: Option<i64>) -> String {
        most.map_or_else(|| self.place_trays(trays), |most| self.place_trays_of(trays, most))
    }

    /// The light at a place on a day, as read or by its shade.
    pub(crate) fn light_of_place(&self, place: Option<&PlaceStory>, day: Day) -> String {
        let light = place.and_then(|place| place.light_on(day));
        match light.map(|light| (light.read, light.nominal, light.from)) {
            Some((Some(read), _, on)) => self.bed_light(self.percent(read), self.day(on)),
            Some((None, Some(nominal), _)) => self.place_light_shade(self.percent(nominal)),
            Some((None, None, _)) | None => self.bed_light_unknown(),
        }
    }

    /// From when a tray is ready: the first day it can be, as `ready` says it, and the usual one.
    pub(crate) fn ready_words(&self, tray: &TrayPicture, written: impl Fn(Day) -> String) -> Option<String> {
        match tray.ready_spread {
            Some(spread) if spread.low != spread.likely => {
                Some(self.ready_at_the_earliest(written(spread.low), written(spread.likely)))
            }
            Some(_) | None => tray.ready_from.map(written),
        }
    }

    /// From when a tray is ready; of one that is, since when.
    pub(crate) fn label_ready(&self, tray: &TrayPicture) -> String {
        if tray.ready { self.label_ready_since() } else { self.label_ready_from() }
    }

    /// The light of a tray's last days, and that of today where it is another.
    pub(crate) fn light_of_tray(&self, share: f64, changed: Option<(f64, Day)>) -> String {
        match changed {
            Some((now, since)) => self.tray_light_changed(self.percent(share), self.percent(now), self.day(since)),
            None => self.percent(share),
        }
    }

    /// How many plants were grafted when, to what and on what.
    fn graft_words(&self, graft: &Since<Graft>) -> String {
        let variety = graft.what.variety.as_ref().map(|variety| self.part_variety(variety));
        let stock = graft.what.rootstock.as_ref().map(|stock| self.part_rootstock(stock));
        let parts = [Some(self.plants(graft.what.plants)), Some(self.day(graft.from)), variety, stock];
        parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
    }

    /// What a question rests on: what is needed, what is known and how, when it comes, where the rule is from.
    pub(crate) fn criterion_facts(&self, criterion: &Criterion) -> Vec<(String, String)> {
        let mut facts = Vec::new();
        if let Some(needed) = criterion.needed() {
            facts.push((self.label_needed(), self.measure(&needed)));
        }
        let basis = self.basis_name(criterion.basis());
        let known = match self.known_words(criterion) {
            Some(known) => self.known_how(known, basis),
            None => basis,
        };
        facts.push((self.label_known(), known));
        if let Some(day) = criterion.expected {
            let said = if criterion.met() == Some(true) { self.was_from(self.day(day)) } else { self.day(day) };
            facts.push((self.label_expected(), said));
        }
        facts.push((self.label_source(), self.source_words(&criterion.source)));
        facts
    }

    /// A day with how early and late it may be; `written` says how a day is written.
    pub(crate) fn day_spread(
        &self,
        day: Option<Day>,
        spread: Option<DaySpread>,
        written: impl Fn(Day) -> String,
    ) -> Option<String> {
        match (day, spread) {
            (_, Some(spread)) if spread.low != spread.high => {
                Some(self.day_between(written(spread.likely), written(spread.low), written(spread.high)))
            }
            (Some(day), _) => Some(written(day)),
            (None, Some(spread)) => Some(written(spread.likely)),
            (None, None) => None,
        }
    }

    /// The light of a bed with the day of its readings, and how far these lie apart; `written` says how a day is written.
    pub(crate) fn light_of_bed(&self, light: &LightNow, written: impl Fn(Day) -> String) -> String {
        let (share, read) = (self.percent(light.share), written(light.read_on));
        match light.apart {
            Some(LightApart { low, high, since }) => {
                self.bed_light_apart(share, self.percent(low), self.percent(high), written(since), read)
            }
            None => self.bed_light(share, read),
        }
    }

    /// That the light of a bed was not read, and what is reckoned instead.
    pub(crate) fn light_not_read(&self, reckoned: Option<LightSpan>) -> String {
        match reckoned {
            Some(span) => self.bed_light_reckoned(self.span_words(span)),
            None => self.bed_light_unknown(),
        }
    }

    /// Light as it is reckoned from the nurse plants.
    pub(crate) fn light_reckoned_words(&self, span: LightSpan) -> String {
        self.light_from_nurses(self.span_words(span))
    }

    /// How the light of a bed is reckoned: without a reading, what a reading says of the leaves, and with it.
    pub(crate) fn light_formulas(&self, told: &LightTold) -> Vec<(String, String)> {
        if let Some(why) = &told.left_out {
            return vec![(self.label_light_unread(), self.light_at_most_words(told.light.high, why))];
        }
        let mut pairs = vec![(self.label_light_unread(), self.span_words(told.unread))];
        if let Some(by) = &told.by_reading {
            let (read, day, expected) = (self.percent(by.read), self.day(by.read_on), self.percent(by.expected));
            let said = match by.factor {
                Some(factor) => self.light_leaves_told(read, day, expected, self.number(factor, 2)),
                None => self.light_leaves_not_told(read, day, expected),
            };
            pairs.push((self.label_light_leaves(), said));
            pairs.push((self.label_light_corrected(), self.span_words(told.light)));
        }
        let (low, high) = told.ends;
        let spread = match told.inside {
            Some((share, (least, most))) => self.light_positions_in_band(
                self.percent(low),
                self.percent(high),
                self.percent(share),
                self.band_words(least, most),
            ),
            None => self.light_positions(self.percent(low), self.percent(high)),
        };
        pairs.push((self.label_light_positions(), spread));
        pairs.push((self.label_formula(), self.calc_light_formula()));
        pairs.push((self.label_source(), self.source_light_model()));
        pairs
    }

    /// The light of months to come: `Sep 2026 45 %, Oct 2026 48 %`.
    pub(crate) fn light_months_words(&self, months: &[LightMonth]) -> String {
        let said = |one: &LightMonth| {
            let (year, month, _) = one.on.ymd();
            let (month, light) = (self.month_short(month), self.percent(one.light.share));
            match one.left_out {
                None => self.light_of_month(month, year, light),
                Some(_) => self.light_of_month_at_most(month, year, light),
            }
        };
        months.iter().map(said).collect::<Vec<_>>().join(", ")
    }

    /// Light that is known from above only, and why; where that is full light, why alone.
    pub(crate) fn light_at_most_words(&self, most: f64, why: &NoLight) -> String {
        let why = self.light_not_reckoned(why);
        if most <= AS_GOOD_AS_FULL { self.light_at_most(self.percent(most), why) } else { why }
    }

    /// How many positions suit a species now and through the first months, and when and by what that turns.
    pub(crate) fn light_ahead_words(&self, told: &InBand, (least, most): (f64, f64)) -> String {
        let (now, half_year) = (self.percent(told.now), self.percent(told.half_year));
        let said = self.light_ahead_inside(now, half_year, self.band_words(least, most));
        let Some(turn) = &told.turn else { return said };
        let (year, month, _) = turn.on.ymd();
        let month = format!("{} {year}", self.month_short(month));
        let name = |end: &ShadeEnd| self.species_of(&end.nurse, &Catalogue::built_in());
        let why = match &turn.by {
            Some(end) => match end.by {
                EndsBy::Bunches(_) => self.light_turns_by_bunches(name(end)),
                EndsBy::Stems => self.light_turns_by_stems(name(end)),
                EndsBy::Age => self.light_turns_by_age(name(end)),
            },
            None if turn.brighter => self.light_turns_by_thinning(),
            None => self.light_turns_by_growth(),
        };
        match turn.to {
            TurnTo::Bright => self.light_turns_bright(said, month, why),
            TurnTo::Dark => self.light_turns_dark(said, month, why),
            TurnTo::Inside => self.light_turns_inside(said, month, why),
        }
    }

    /// How a bed stands for a species, and how many of its places are open; and whether anything holds it back.
    pub(crate) fn bed_line_words(&self, line: &BedSpecies) -> (bool, String) {
        let open = line.criteria.iter().all(|criterion| !criterion.blocks);
        let positions = self.bed_has_open(line.open_positions, line.positions);
        (open, format!("{}: {positions}", self.standing_name(line.standing)))
    }
}
