//! What could hurt somebody who does what a form is about, and what the plants named in it can do.

use super::Form;
use crate::base::word::Word;
use crate::base::{BedName, LotCode, SpeciesKey, TrayCode};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::nursery::caution::Caution;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::round::Stop;
use crate::reckon::round::stop::handled::standing_in;

impl Form {
    /// The lines of care, each behind its label: of the task it does at a stop, else of its kind; then of each plant.
    pub fn care(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let stop = self.stop_it_does(cx);
        let work = self.typed("task").as_deref().and_then(GroundTask::read);
        let cautions = match stop {
            Some(stop) => stop.cautions(),
            None => Caution::of_kind(self.kind(), work).into_iter().collect(),
        };
        let mut plants = self.plants_named(cx);
        if let Some(stop) = stop {
            plants.extend(stop.plants_handled(&cx.book.picture));
        }
        let species = &cx.book.picture.site.species;
        let mut seen: Vec<SpeciesKey> = Vec::new();
        plants.retain(|key| {
            !seen.contains(key) && {
                seen.push(key.clone());
                true
            }
        });
        let said = cautions.into_iter().map(|caution| (wording.caution_label(), wording.caution_words(caution)));
        said.chain(wording.plant_dangers(&wording.caution_plant_label(), &plants, species)).collect()
    }

    /// The stop whose task it does, while that is due.
    pub fn stop_it_does<'a>(&self, cx: &ScreenContext<'a>) -> Option<&'a Stop> {
        let round = &cx.book.round;
        let mut due = round.stops.iter().chain(&round.can_wait);
        due.find(|due| self.stop().id() == Some(due.id.as_str())).filter(|due| due.task.facts().is_done_by(self.kind()))
    }

    pub(super) fn typed(&self, name: &str) -> Option<String> {
        let line = self.lines.iter().find(|line| line.field.name == name)?;
        Some(line.value()).filter(|value| !value.is_empty())
    }

    /// The plants that its fields name: by themselves, by a tray, by a lot, by the bed in which the ground is worked.
    fn plants_named(&self, cx: &ScreenContext<'_>) -> Vec<SpeciesKey> {
        let picture = &cx.book.picture;
        let of_tray = |name| {
            let code = TrayCode::new(&self.typed(name)?).ok()?;
            picture.trays.get(&code)?.species.clone()
        };
        let of_lot = || {
            let code = LotCode::new(&self.typed("lot")?).ok()?;
            picture.lots.get(&code)?.species.clone()
        };
        let named = |name| picture.site.species.find(&self.typed(name)?);
        let single = [of_tray("tray"), of_tray("from"), of_lot(), named("species"), named("nurse")];
        let mut plants: Vec<SpeciesKey> = single.into_iter().flatten().collect();
        if self.kind() == "prepared" {
            let bed = self.typed("bed").and_then(|name| BedName::new(&name).ok());
            plants.extend(bed.and_then(|name| picture.beds.get(&name)).map_or_else(Vec::new, |bed| standing_in(bed)));
        }
        plants
    }

    /// The lines of care as a sheet of at most so many rows; a line that does not fit whole is left to `y`.
    pub(super) fn care_sheet(&self, cx: &ScreenContext<'_>, width: u16, most_rows: usize) -> Sheet {
        let lines = self.care(cx);
        let sheet_of = |lines: &[(String, String)]| {
            let mut sheet = Sheet::new(width);
            sheet.labels(lines.iter().map(|(label, _)| label.as_str()));
            lines.iter().for_each(|(label, line)| sheet.labelled_in(label, line, Ink::Waits));
            sheet
        };
        let fits = (0..=lines.len()).rev().find(|count| sheet_of(&lines[..*count]).height() <= most_rows).unwrap_or(0);
        sheet_of(&lines[..fits])
    }
}
