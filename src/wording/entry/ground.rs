//! Entries about beds and what grows in them, in a sentence.

use super::with_parts;
use crate::nursery::entry::types::{Size, SoilWhere};
use crate::nursery::entry::{
    GroundEntry, LightRead, NurseCounted, NurseCut, NursePlanted, SoilChecked, SownInBed, SurvivalCounted,
};
use crate::nursery::species::Catalogue;
use crate::wording::Wording;

impl Wording {
    pub(super) fn ground_sentence(&self, entry: &GroundEntry, species: &Catalogue) -> String {
        match entry {
            GroundEntry::SownInBed(sown) => self.stake_sentence(sown, species),
            GroundEntry::PlantsFound(found) => {
                let name = self.species_of(&found.species, species);
                let about = found.planted_about.map(|day| self.part_planted_about(self.day(day)));
                let said = self.entry_plants_found(&found.bed, found.alive.0, name);
                with_parts(said, self.where_in_bed(found.rows.as_ref(), found.at.as_deref()).into_iter().chain([about]))
            }
            GroundEntry::NursePlanted(planted) => self.nurse_planted_sentence(planted, species),
            GroundEntry::NurseCounted(counted) => self.nurse_counted_sentence(counted, species),
            GroundEntry::NurseMeasured(look) => {
                let [height, radius] = [look.height_m, look.crown_radius_m].map(|m| self.number(m.0, 2));
                let said = self.entry_nurse_measured(&look.bed, self.species_of(&look.nurse, species), height, radius);
                with_parts(said, self.where_in_bed(look.rows.as_ref(), look.at.as_deref()))
            }
            GroundEntry::NurseCut(cut) => self.nurse_cut_sentence(cut, species),
            GroundEntry::LightRead(read) => self.light_read_sentence(read),
            GroundEntry::SoilChecked(check) => self.soil_sentence(check),
            GroundEntry::PlantsWatered(given) => {
                let litres = given.litres_each.map(|litres| self.part_litres_each(self.number(litres.0, 1)));
                let count = given.count.map(|count| self.plants(count.0));
                with_parts(self.entry_plants_watered(&given.bed), [count, litres])
            }
            GroundEntry::Prepared(work) => {
                let said = self.entry_prepared(&work.bed, self.work_words(work.task));
                let deep = work.depth_cm.map(|depth| self.part_depth(self.number(depth.0, 0)));
                with_parts(said, [deep].into_iter().chain(self.where_in_bed(work.rows.as_ref(), work.at.as_deref())))
            }
            GroundEntry::Outplanted(out) => {
                let said = self.entry_outplanted(out.count.0, &out.tray, &out.bed);
                let metres = |size: Option<Size>| size.map_or_else(|| "?".to_string(), |m| self.number(m.0, 2));
                let (row, in_row) = (metres(out.row_m), metres(out.in_row_m));
                let row = out.row_m.or(out.in_row_m).map(|_| self.part_nurse_row(row, in_row));
                with_parts(said, [row].into_iter().chain(self.where_in_bed(out.rows.as_ref(), out.at.as_deref())))
            }
            GroundEntry::PlantsLost(lost) => {
                let name = self.species_of(&lost.species, species);
                let said = self.entry_plants_lost(&lost.bed, lost.count.0, name, self.cause_told(&lost.cause.0));
                with_parts(said, self.where_in_bed(lost.rows.as_ref(), lost.at.as_deref()))
            }
            GroundEntry::SurvivalCounted(look) => self.survival_sentence(look, species),
        }
    }

    fn stake_sentence(&self, sown: &SownInBed, species: &Catalogue) -> String {
        let name = self.species_of(&sown.species, species);
        let said = self.entry_sown_in_bed(&sown.bed, name, sown.holes.0, sown.seeds_per_hole.0);
        let lot = sown.lot.as_ref().map(|lot| self.part_of_lot(lot));
        let place = self.where_in_bed(sown.rows.as_ref(), sown.at.as_deref());
        with_parts(said, [lot].into_iter().chain(place))
    }

    fn nurse_planted_sentence(&self, planted: &NursePlanted, species: &Catalogue) -> String {
        let [row, in_row] = [planted.row_m, planted.in_row_m].map(|m| self.number(m.0, 2));
        let name = self.species_of(&planted.nurse, species);
        let said = self.entry_nurse_planted(&planted.bed, planted.count.0, name, row, in_row);
        let offset = planted.offset_m.map(|offset| self.part_offset(self.number(offset.0, 2)));
        let lot = planted.lot.as_ref().map(|lot| self.part_of_lot(lot));
        let place = self.where_in_bed(planted.rows.as_ref(), planted.at.as_deref());
        with_parts(said, [offset, lot].into_iter().chain(place))
    }

    fn nurse_counted_sentence(&self, counted: &NurseCounted, species: &Catalogue) -> String {
        let name = self.species_of(&counted.nurse, species);
        let said = self.entry_nurse_counted(&counted.bed, counted.alive.0, name);
        let bunches = counted.bunches_showing.map(|bunches| self.part_bunches(bunches.0));
        let cause = counted.cause.as_ref().map(|cause| self.cause_told(&cause.0));
        let place = self.where_in_bed(counted.rows.as_ref(), counted.at.as_deref());
        with_parts(said, [bunches, cause].into_iter().chain(place))
    }

    fn nurse_cut_sentence(&self, cut: &NurseCut, species: &Catalogue) -> String {
        let name = self.species_of(&cut.nurse, species);
        let said = self.entry_nurse_cut(&cut.bed, name, self.cut_name(cut.what));
        let parts = [
            cut.share.map(|share| self.part_share(self.percent(share.0))),
            cut.count.map(|count| self.plants(count.0)),
            cut.yield_kg.map(|kg| self.part_yield(self.number(kg.0, 1))),
        ];
        with_parts(said, parts.into_iter().chain(self.where_in_bed(cut.rows.as_ref(), cut.at.as_deref())))
    }

    fn light_read_sentence(&self, read: &LightRead) -> String {
        let pairs = read.readings.as_deref().unwrap_or_default();
        let under: f64 = pairs.iter().map(|pair| pair.under_lux.0 / pair.open_lux.0).sum();
        let light = match read.light_share {
            Some(share) => self.measure_light(self.percent(share.0)),
            None if pairs.is_empty() => "?".to_string(),
            None => self.light_of_pairs(self.percent(under / pairs.len() as f64), pairs.len() as i64),
        };
        let said = self.entry_light_read(self.about(None, None, read.bed.as_ref(), read.place.as_ref()), light);
        let place = self.where_in_bed(read.rows.as_ref(), read.at.as_deref());
        with_parts(said, [read.sky.map(|sky| self.sky_name(sky))].into_iter().chain(place))
    }

    fn soil_sentence(&self, check: &SoilChecked) -> String {
        let [rod, push] = [check.rod_mm.map(|mm| mm.0), check.push_kg.map(|kg| kg.0)]
            .map(|value| value.map(|value| self.number(value, 1)));
        let rod = match (rod, push) {
            (Some(mm), Some(kg)) => Some(self.part_rod(mm, kg)),
            (Some(mm), None) => Some(self.part_rod_only(mm)),
            (None, Some(kg)) => Some(self.part_push_only(kg)),
            (None, None) => None,
        };
        let parts = [
            check.resistance_mpa.map(|mpa| self.part_resistance(self.number(mpa.0, 2))),
            rod,
            check.depth_cm.map(|depth| self.part_at_depth(self.number(depth.0, 1))),
            check.days_since_soaking.map(|days| self.part_since_soaking(self.number(days.0, 1))),
            check.wet.map(|wet| if wet { self.part_wet() } else { self.part_not_wet() }),
            check.r#where.map(|place| match place {
                SoilWhere::Beneath => self.part_beneath_hole(),
                SoilWhere::Beside => self.part_beside_hole(),
                SoilWhere::Undug => self.part_undug(),
            }),
            check.tubers.map(|tubers| self.tuber_words(tubers)),
        ];
        let place = self.where_in_bed(check.rows.as_ref(), check.at.as_deref());
        with_parts(self.entry_soil_checked(&check.bed), parts.into_iter().chain(place))
    }

    fn survival_sentence(&self, look: &SurvivalCounted, species: &Catalogue) -> String {
        let name = self.species_of(&look.species, species);
        let said = self.entry_survival(&look.bed, name, look.alive.0, look.dead.0);
        let parts = [
            look.tray.as_ref().map(|tray| self.part_from_tray(tray)),
            look.outplanted_on.map(|day| self.part_outplanted_on(self.day(day))),
            look.causes.as_ref().map(|causes| self.cause_told(&causes.0)),
        ];
        with_parts(said, parts.into_iter().chain(self.where_in_bed(look.rows.as_ref(), look.at.as_deref())))
    }
}
