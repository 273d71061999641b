//! Entries about trays in a sentence.

use super::{is_not_said, with_parts};
use crate::nursery::entry::subject::is_unknown_lot;
use crate::nursery::entry::{
    Counted, Held, Measured, MovedOn, PestSeen, PlantsReceived, Released, Sown, TrayEntry, Treated, WateringSet,
};
use crate::nursery::species::Catalogue;
use crate::wording::Wording;

impl Wording {
    pub(super) fn tray_sentence(&self, entry: &TrayEntry, species: &Catalogue) -> String {
        match entry {
            TrayEntry::Sown(sown) => self.sown_sentence(sown, species),
            TrayEntry::Resown(resown) => self.entry_resown(&resown.tray, resown.seeds.0, &resown.lot),
            TrayEntry::PlantsReceived(received) => self.plants_received_sentence(received, species),
            TrayEntry::Counted(counted) => self.counted_sentence(counted),
            TrayEntry::Lost(lost) => self.entry_lost(&lost.tray, lost.count.0, self.cause_told(&lost.cause.0)),
            TrayEntry::Culled(culled) => {
                self.entry_culled(&culled.tray, culled.count.0, self.reason_told(&culled.why.0))
            }
            TrayEntry::MovedOn(moved) => self.moved_sentence(moved),
            TrayEntry::Carried(carried) => self.entry_carried(&carried.tray, &carried.place),
            TrayEntry::Measured(measured) => self.measured_sentence(measured),
            TrayEntry::PlugChecked(plug) => self.entry_plug_checked(&plug.tray, self.roots_words(plug.roots)),
            TrayEntry::RootsCut(cut) => match cut.count {
                Some(count) => self.entry_roots_cut_of(&cut.tray, count.0),
                None => self.entry_roots_cut(&cut.tray),
            },
            TrayEntry::Grafted(grafted) => with_parts(
                self.entry_grafted(&grafted.tray, grafted.count.0),
                [
                    grafted.variety.as_ref().map(|variety| self.part_variety(&variety.0)),
                    grafted.rootstock.as_ref().map(|stock| self.part_rootstock(&stock.0)),
                ],
            ),
            TrayEntry::Flushed(flushed) => self.entry_flushed(&flushed.tray),
            TrayEntry::HardeningBegun(begun) => {
                let bed = begun.for_bed.as_ref().map(|bed| self.part_for_bed(bed));
                with_parts(self.entry_hardening_begun(&begun.tray), [bed])
            }
            TrayEntry::Stocktaken(taken) => self.entry_stocktaken(&taken.tray, taken.standing.0),
            TrayEntry::GivenOut(given) if is_not_said(&given.to.0) => {
                self.entry_given_out_somewhere(&given.tray, given.count.0)
            }
            TrayEntry::GivenOut(given) => self.entry_given_out(&given.tray, given.count.0, &given.to.0),
            TrayEntry::Relabelled(label) => match &label.was {
                Some(was) => self.entry_relabelled(&label.tray, was),
                None => self.entry_label_renewed(&label.tray),
            },
            TrayEntry::LetGo(gone) => {
                let until = gone.until.map(|until| self.part_until(self.day(until)));
                let never = (gone.never == Some(true)).then(|| self.part_never());
                let why = gone.why.as_ref().map(|why| why.0.to_string());
                with_parts(self.entry_let_go(self.task_told(&gone.task.0)), [until, never, why])
            }
            TrayEntry::ShadeSet(set) => {
                let about = self.about(set.tray.as_ref(), None, None, set.place.as_ref());
                self.entry_shade_set(about, self.percent(set.shade_pct.0 / 100.0))
            }
            TrayEntry::WateringSet(set) => self.watering_sentence(set),
            TrayEntry::Held(held) => self.held_sentence(held),
            TrayEntry::Released(free) => self.released_sentence(free),
            TrayEntry::PestSeen(seen) => self.pest_sentence(seen),
            TrayEntry::Treated(treated) => self.treated_sentence(treated),
        }
    }

    fn watering_sentence(&self, set: &WateringSet) -> String {
        let about = self.about(set.tray.as_ref(), None, None, set.place.as_ref());
        if set.every_days.0 == 1.0 {
            return self.entry_watering_daily(about);
        }
        self.entry_watering_set(about, self.number(set.every_days.0, 2))
    }

    fn held_sentence(&self, held: &Held) -> String {
        let about = self.about(held.tray.as_ref(), held.lot.as_ref(), held.bed.as_ref(), held.place.as_ref());
        let until = held.until.map(|until| self.part_until(self.day(until)));
        with_parts(self.entry_held(about, &held.why.0), [until])
    }

    fn released_sentence(&self, free: &Released) -> String {
        let about = self.about(free.tray.as_ref(), free.lot.as_ref(), free.bed.as_ref(), free.place.as_ref());
        with_parts(self.entry_released(about), [free.why.as_ref().map(|why| why.0.to_string())])
    }

    fn pest_sentence(&self, seen: &PestSeen) -> String {
        let about = self.about(seen.tray.as_ref(), None, seen.bed.as_ref(), seen.place.as_ref());
        let share = seen.share_pct.map(|share| self.part_on_share(self.percent(share.0 / 100.0)));
        let yes_or_no = |said: Option<bool>, yes: String, no: String| said.map(|said| if said { yes } else { no });
        let spreads = yes_or_no(seen.spreads, self.part_spreads(), self.part_spreads_not());
        let plants = seen.plants_seen.map(|plants| self.part_plants_seen(i64::from(plants.0)));
        let roots = yes_or_no(seen.roots_seen, self.part_roots_seen(), self.part_roots_unseen());
        with_parts(self.entry_pest_seen(about, &seen.what.0), [share, spreads, plants, roots])
    }

    fn treated_sentence(&self, treated: &Treated) -> String {
        let about = self.about(treated.tray.as_ref(), None, treated.bed.as_ref(), treated.place.as_ref());
        let safe = treated.safe_after_days.map(|days| self.safe_after(days.0));
        let plant = treated.plant_after_days.map(|days| self.part_plant_after(self.number(days.0, 1)));
        with_parts(self.entry_treated(about, &treated.with.0), [safe, plant])
    }

    fn sown_sentence(&self, sown: &Sown, species: &Catalogue) -> String {
        let amount = self.seed_amount(sown.seeds, sown.mass_g);
        let said = if is_unknown_lot(&sown.lot) {
            self.entry_sown_lot_unknown(&sown.tray, amount, &sown.container)
        } else {
            self.entry_sown(&sown.tray, amount, &sown.lot, &sown.container)
        };
        with_parts(
            said,
            [
                sown.species.as_ref().map(|key| self.species_of(key, species)),
                sown.cells.map(|cells| self.part_cells(cells.0)),
                sown.place.as_ref().map(|place| self.part_at_place(place)),
                sown.share_of.as_ref().map(|tray| self.part_shares_tray(&tray.0)),
                sown.sign.as_ref().map(|sign| self.part_sign(self.sign(&sign.0))),
            ],
        )
    }

    fn plants_received_sentence(&self, received: &PlantsReceived, species: &Catalogue) -> String {
        let said = self.entry_plants_received(
            &received.tray,
            received.count.0,
            self.species_of(&received.species, species),
            self.arrived_name(received.from),
            self.form_name(received.form),
        );
        let shade = received.shade_now_pct.map(|shade| self.part_shade_now(self.percent(shade.0 / 100.0)));
        with_parts(
            said,
            [
                received.variety.as_ref().map(|variety| self.part_variety(&variety.0)),
                received.age_days.map(|days| self.part_age_days(days.0)),
                received.height_cm.map(|height| self.part_height(self.number(height.0, 1))),
                received.container.as_ref().map(|container| self.part_container(container)),
                received.place.as_ref().map(|place| self.part_at_place(place)),
                received.source.as_ref().map(|source| self.part_source(&source.0)),
                shade,
                received.good_until.map(|until| self.part_until(self.day(until))),
                received.heeled_in.map(|heeled| if heeled { self.part_heeled_in() } else { self.part_not_heeled_in() }),
                received.stands_since.map(|since| self.part_stands_since(self.day(since))),
                received.sign.as_ref().map(|sign| self.part_sign(self.sign(&sign.0))),
            ],
        )
    }

    fn counted_sentence(&self, counted: &Counted) -> String {
        with_parts(
            self.entry_counted(&counted.tray, counted.standing.0),
            [
                counted.dead.map(|dead| self.part_dead(dead.0)),
                (counted.about == Some(true)).then(|| self.part_about()),
                counted.cells_seen.map(|cells| self.part_cells_seen(cells.0)),
                counted.cells_filled.map(|cells| self.part_cells_filled(cells.0)),
            ],
        )
    }

    fn moved_sentence(&self, moved: &MovedOn) -> String {
        let how = self.moved_how_name(moved.how);
        with_parts(
            self.entry_moved_on(moved.count.0, &moved.from, &moved.to, how),
            [
                moved.container.as_ref().map(|container| self.part_container(container)),
                moved.cells.map(|cells| self.part_cells(cells.0)),
                moved.place.as_ref().map(|place| self.part_at_place(place)),
            ],
        )
    }

    /// A waiting time: labels give hours where it is short.
    fn safe_after(&self, days: f64) -> String {
        let is_hours = days < 3.0 && days.fract() > 0.0;
        if is_hours {
            self.part_safe_after_hours((days * 24.0).round() as i64)
        } else {
            self.part_safe_after(self.number(days, 1))
        }
    }

    fn measured_sentence(&self, measured: &Measured) -> String {
        let mean = |values: Vec<f64>| {
            let many = values.len() as f64;
            (!values.is_empty()).then(|| self.number(values.iter().sum::<f64>() / many, 1))
        };
        let height = mean(measured.plants.iter().map(|plant| plant.height_cm.0).collect());
        let collar = mean(measured.plants.iter().filter_map(|plant| plant.collar_mm).map(|mm| mm.0).collect());
        let pairs = mean(measured.plants.iter().filter_map(|plant| plant.leaf_pairs).map(|n| n.0).collect());
        let leaves = mean(measured.plants.iter().filter_map(|plant| plant.leaves).map(|n| n.0).collect());
        let said = self.entry_measured(
            &measured.tray,
            measured.plants.len() as i64,
            height.unwrap_or_else(|| "?".to_string()),
        );
        let parts = [
            collar.map(|mm| self.part_collar(mm)),
            pairs.map(|n| self.part_leaf_pairs(n)),
            leaves.map(|n| self.part_leaves(n)),
        ];
        with_parts(said, parts)
    }
}
