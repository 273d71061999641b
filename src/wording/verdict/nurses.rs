//! What the nurse plants of a bed give to eat, and which to cut for more light, in words.

use crate::base::Day;
use crate::nursery::entry::types::CutWhat;
use crate::nursery::species::Catalogue;
use crate::reckon::bed::water::ahead::{DrawnFrom, SAFE_CHANCE, WaterAhead};
use crate::reckon::bed::water::told::{BedWater, Litres};
use crate::reckon::field::{Crop, FoodAhead, FoodTaken};
use crate::reckon::light::advice::fewest_cuts::{Advice, FewestCuts, ToCut};
use crate::reckon::light::advice::new_nurses::NewNurses;
use crate::reckon::light::beside::Beside;
use crate::wording::Wording;

impl Wording {
    /// What is on the way, when, and how much of it.
    pub(crate) fn food_ahead_words(&self, food: &FoodAhead) -> String {
        let (least, most) = (self.kg(food.kg.0), self.kg(food.kg.1));
        let from = self.month_and_year(food.from);
        let until = food.until.map(|until| self.month_and_year(until)).unwrap_or_default();
        let said = match (food.crop, food.counted) {
            (Crop::Bunches, true) => self.food_bunches_counted(from, food.plants, least, most),
            (Crop::Bunches, false) => self.food_bunches_by_age(from, food.plants, least, most),
            (Crop::Tubers, _) => self.food_tubers(from, until, food.plants, least, most),
            (Crop::Grain, _) => self.food_grain(from, until, food.plants, least, most),
        };
        food.loosens.map_or(said.clone(), |positions| self.food_loosens(said, positions))
    }

    /// What was taken in a month.
    pub(crate) fn food_taken_words(&self, (year, month): (i32, u32), taken: &FoodTaken) -> String {
        let month = format!("{} {year}", self.month_short(month));
        match (taken.kg > 0.0, taken.unweighed) {
            (true, 0) => self.food_taken_weighed(month, taken.plants, self.kg(taken.kg)),
            (true, _) => self.food_taken_partly(month, taken.plants, self.kg(taken.kg)),
            (false, _) => self.food_taken_unweighed(month, taken.plants),
        }
    }

    /// Month and year of a day.
    pub(crate) fn month_and_year(&self, day: Day) -> String {
        let (year, month, _) = day.ymd();
        format!("{} {year}", self.month_short(month))
    }

    fn kg(&self, kg: f64) -> String {
        self.number(kg, if kg < 10.0 { 1 } else { 0 })
    }

    /// What other beds take of the light; none where none does.
    pub(crate) fn beside_shading_words(&self, told: &Beside) -> Option<String> {
        let shading = told.shading.iter().map(|(bed, taken)| self.beside_takes(bed, self.percent(*taken)));
        let said: Vec<String> = shading.collect();
        (!said.is_empty()).then(|| said.join("; "))
    }

    /// Of which beds nobody wrote where they lie; none where it is written of all.
    pub(crate) fn beside_not_placed_words(&self, told: &Beside) -> Option<String> {
        let names = told.not_placed.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
        (!names.is_empty()).then(|| self.beside_not_placed(names))
    }

    /// How many positions come into the band by how many cuts: `no cut: 17, 1: 22, 2: 26`.
    pub(crate) fn cuts_tried_words(&self, told: &FewestCuts) -> String {
        let each = told.tried.iter().map(|one| match one.cuts {
            0 => self.cuts_none_made(one.inside),
            cuts => format!("{cuts}: {}", one.inside),
        });
        let (least, most) = told.band;
        let line = each.collect::<Vec<_>>().join(", ");
        self.cuts_tried(self.band_words(least, most), line, told.positions)
    }

    /// Which plants to cut, and whether no other so few bring as much; or that none helps.
    pub(crate) fn cuts_advice_words(&self, told: &FewestCuts) -> String {
        let Some(advice) = &told.advice else {
            return if told.some_help() { self.cuts_too_little() } else { self.cuts_no_advice() };
        };
        let list = advice.plants.iter().map(|plant| self.cut_words(plant)).collect::<Vec<_>>().join("; ");
        let said = if advice.proven { self.cuts_proven(list) } else { self.cuts_found(list) };
        if advice.places_known { said } else { self.cuts_places_unknown(said) }
    }

    /// What the cuts bring and cost.
    pub(crate) fn cuts_bring_words(&self, advice: &Advice) -> String {
        let (before, after) = advice.half_year;
        let lost = self.percent(advice.shade_lost.max(0.0));
        let said = self.cuts_bring(self.percent(after), self.percent(before), lost, self.kg(advice.mulch_kg));
        let (least, most) = advice.food_kg;
        let said = if most > 0.0 { self.cuts_food(said, self.kg(least), self.kg(most)) } else { said };
        match advice.step {
            Some(step) => self.cuts_step(said, self.number(step.max(1.0), 1)),
            None => said,
        }
    }

    /// Which nurse plants to set, how far apart, how long before, and in how many parts.
    pub(crate) fn new_nurses_words(&self, one: &NewNurses) -> String {
        let nurse = self.species_of(&one.nurse, &Catalogue::built_in());
        let (row, in_row) = (self.number(one.row_m, 1), self.number(one.in_row_m, 1));
        let inside = self.percent(one.inside);
        let (set_by, from) = (self.day(one.set_by), self.day(one.suits_from));
        let said = if one.is_late() {
            self.new_nurses_late(one.plants, nurse, row, in_row, from, inside, self.day(one.wanted_on))
        } else {
            self.new_nurses_set(one.plants, nurse, row, in_row, set_by, from, inside)
        };
        if one.parts > 1 { self.new_nurses_parts(said, one.parts) } else { said }
    }

    /// The same in short, without the source.
    pub(crate) fn water_ahead_short(&self, told: &WaterAhead) -> Vec<(String, String)> {
        let mut facts = self.water_ahead_facts(told);
        facts.pop();
        facts
    }

    /// How likely what is planted runs dry, the last safe day by that, and when the rains began by the gauge.
    pub(crate) fn water_ahead_facts(&self, told: &WaterAhead) -> Vec<(String, String)> {
        let mut facts = vec![
            (self.label_water_today(), self.water_ahead_today(self.percent(told.today))),
            (self.label_water_lasts(), self.water_lasts(told.lasts_days)),
        ];
        if let Some(rains) = told.rains {
            let last = match told.last_safe {
                Some(last) => self.water_ahead_last_safe(self.day(last), self.percent(SAFE_CHANCE)),
                None => {
                    self.water_ahead_never_safe(self.day(rains.from), self.day(rains.until), self.percent(SAFE_CHANCE))
                }
            };
            facts.push((self.label_water_last_safe(), last));
        }
        facts.extend(told.began.map(|began| (self.label_rains_began(), self.rains_began_by_gauge(self.day(began)))));
        let from = match told.from {
            DrawnFrom::Gauge => self.water_drawn_from_gauge(),
            DrawnFrom::Usual => self.water_drawn_from_usual(),
            DrawnFrom::Both => self.water_drawn_from_both(),
        };
        facts.push((self.label_source(), from));
        facts
    }

    /// What the young plants of a bed take a day, and what its open positions would; none where there are neither.
    pub(crate) fn bed_litres_words(&self, told: &BedWater) -> Option<String> {
        let young = (told.young.plants > 0).then(|| self.litres_young(told.young.plants, self.kg(told.young.a_day)));
        let open = (told.open.plants > 0).then(|| self.litres_open(told.open.plants, self.kg(told.open.a_day)));
        let said: Vec<String> = young.into_iter().chain(open).collect();
        (!said.is_empty()).then(|| said.join("; "))
    }

    /// What the plants at a place take a day.
    pub(crate) fn bench_litres_words(&self, told: &Litres) -> String {
        self.litres_bench(told.plants, self.kg(told.a_day))
    }

    fn cut_words(&self, plant: &ToCut) -> String {
        let nurse = self.species_of(&plant.nurse, &Catalogue::built_in());
        let [along, across] = plant.at_m.map(|metres| self.number(metres, 1));
        match plant.what {
            CutWhat::Leaves => self.cut_leaves_at(nurse, along, across),
            CutWhat::Harvest => self.cut_lifted_at(nurse, along, across),
            CutWhat::Stem | CutWhat::Felled => self.cut_stem_at(nurse, along, across),
        }
    }
}
