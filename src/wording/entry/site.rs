//! Entries that describe the site, in a sentence.

use super::with_parts;
use crate::base::word::Word;
use crate::nursery::entry::shape::month_day;
use crate::nursery::entry::types::MonthDay;
use crate::nursery::entry::{BedSet, NurserySet, PlanLine, SeasonSet, SiteEntry};
use crate::nursery::species::Catalogue;
use crate::reckon::bed::positions::own_positions;
use crate::science::spacing::Position;
use crate::wording::Wording;

const SQUARE_METRES_PER_HA: f64 = 10_000.0;

impl Wording {
    pub(super) fn site_sentence(&self, entry: &SiteEntry, species: &Catalogue) -> String {
        match entry {
            SiteEntry::NurserySet(nursery) => self.nursery_sentence(nursery),
            SiteEntry::SeasonSet(season) => self.season_sentence(season),
            SiteEntry::SpeciesSet(own) => {
                let mut named: Vec<String> = own.profile.0.keys().map(|name| self.profile_part(name)).collect();
                named.dedup();
                self.entry_species_set(self.species_of(&own.species, species), named.join("; "))
            }
            SiteEntry::PlaceSet(place) => {
                let shade = self.percent(place.shade_pct.0 / 100.0);
                let room = place.holds_trays.map(|trays| self.part_holds_trays(trays.0));
                let sign = place.sign.as_ref().map(|sign| self.part_sign(self.sign(&sign.0)));
                with_parts(self.entry_place_set(&place.place, place.order.0, shade), [room, sign])
            }
            SiteEntry::ContainerSet(container) => {
                let said = self.entry_container_set(&container.container, self.number(container.volume_ml.0, 1));
                let depth = container.depth_cm.map(|depth| self.part_depth(self.number(depth.0, 1)));
                with_parts(said, [depth, container.cells.map(|cells| self.part_cells(cells.0))])
            }
            SiteEntry::FieldSet(field) => {
                let slope = field.slope_pct.map(|slope| self.part_slope(self.percent(slope.0 / 100.0)));
                let texture = field.texture.as_ref().map(|texture| self.part_texture(&texture.0));
                with_parts(self.entry_field_set(&field.field), [slope, texture])
            }
            SiteEntry::BedSet(bed) => self.bed_sentence(bed, species),
            SiteEntry::PositionsBlocked(blocked) => {
                let (count, spots) = (blocked.at.len() as i64, self.spot_list(&blocked.at));
                self.entry_positions_blocked(&blocked.bed, count, spots, &blocked.why.0)
            }
        }
    }

    fn nursery_sentence(&self, nursery: &NurserySet) -> String {
        let degrees = |value: f64| self.number(value, 4);
        let said = self.entry_nursery_set(
            &nursery.name.0,
            degrees(nursery.latitude_deg.0),
            degrees(nursery.longitude_deg.0),
            nursery
                .altitude_m
                .map_or_else(|| self.altitude_unknown(), |altitude| self.altitude_said(self.number(altitude.0, 0))),
        );
        let offset = nursery.utc_offset_h.0;
        let offset = format!("{}{}", if offset < 0.0 { "" } else { "+" }, self.number(offset, 2));
        with_parts(
            said,
            [
                Some(self.part_clock_offset(offset)),
                nursery.plants_per_day.map(|plants| self.part_plants_a_day(plants.0)),
                nursery.planting_days_per_week.map(|days| self.part_planting_days(days.0)),
                nursery.walk_minutes.map(|minutes| self.part_walk_minutes(minutes.0)),
                nursery.water_litres_per_day.map(|litres| self.part_water_a_day(self.number(litres.0, 1))),
            ],
        )
    }

    fn season_sentence(&self, season: &SeasonSet) -> String {
        let rains: Vec<String> = season
            .rains
            .iter()
            .map(|rains| self.season_from_until(self.day_of_year(&rains.from), self.day_of_year(&rains.until)))
            .collect();
        let rains = if rains.is_empty() { self.season_no_rains() } else { rains.join("; ") };
        let heat = season.tmin_c.is_some() || season.tmax_c.is_some();
        let normals = season.rain_mm.as_ref().map(|_| self.part_rain_normals());
        with_parts(self.entry_season_set(rains), [normals, heat.then(|| self.part_heat_normals())])
    }

    fn day_of_year(&self, day: &MonthDay) -> String {
        let read = month_day(&day.0);
        read.map_or_else(|| day.0.to_string(), |(month, date)| self.day_in_year(date, self.month_short(month)))
    }

    fn bed_sentence(&self, bed: &BedSet, species: &Catalogue) -> String {
        let metres = |value: f64| self.number(value, 2);
        let said = self.entry_bed_set(&bed.bed, &bed.field, metres(bed.length_m.0), metres(bed.width_m.0));
        let bearing = bed.row_bearing_deg.map(|bearing| self.part_bearing(self.number(bearing.0, 0)));
        let own = own_positions(bed);
        let area_ha = bed.length_m.0 * bed.width_m.0 / SQUARE_METRES_PER_HA;
        let line = |(line, own): (&PlanLine, &Vec<Position>)| {
            let name = self.species_of(&line.species, species);
            // To tens: a bed is measured by paces.
            let per_ha = self.number((own.len() as f64 / area_ha / 10.0).round() * 10.0, 0);
            let said = self.plan_line(name, metres(line.row_m.0), metres(line.in_row_m.0), own.len() as i64, per_ha);
            let parts = [
                line.offset_m.map(|offset| self.part_offset(metres(offset.0))),
                line.row_offset_m.map(|offset| self.part_row_offset(metres(offset.0))),
                line.rows.as_ref().map(|rows| self.entry_part_rows(&rows.0)),
                line.share.map(|share| self.part_plan_share(self.percent(share.0))),
                (line.keeps_spot == Some(true)).then(|| self.part_keeps_spot()),
            ];
            with_parts(said, parts)
        };
        let plan: Vec<String> = bed.plan.iter().zip(&own).map(line).collect();
        let edges = bed.edges.map(|edges| self.part_edges(self.choice_name(edges.spelled())));
        let slope = bed
            .slope_pct
            .zip(bed.slope_bearing_deg)
            .map(|(slope, bearing)| self.part_ground_falls(self.percent(slope.0 / 100.0), self.number(bearing.0, 0)));
        let corner = bed.corner_lat_deg.zip(bed.corner_lon_deg);
        let corner = corner.map(|(lat, lon)| self.part_corner(self.number(lat.0, 6), self.number(lon.0, 6)));
        with_parts(said, [bearing, edges, slope, corner, (!plan.is_empty()).then(|| self.part_plan(plan.join("; ")))])
    }
}
