//! One stop of the round in words: where it is, what it is about, its figures.

use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::{Measure, Picture};
use crate::reckon::round::{Stop, Task, Where};
use crate::wording::Wording;

impl Wording {
    /// Where a stop is: "bench 1", "Bed Ridge 1", "Seed store".
    pub(crate) fn stop_place(&self, at: &Where, subject: &Subject) -> String {
        match at {
            Where::Place(place) => place.to_string(),
            Where::Bed(bed) => self.round_bed(bed),
            Where::SeedStore => self.round_seed_store(),
            Where::Nowhere if *subject == Subject::Site => self.round_on_the_way(),
            Where::Nowhere => self.round_no_place(),
        }
    }

    /// The task and its tray, lot or place; at a bed the place says the bed.
    pub(crate) fn stop_about(&self, task: Task, subject: &Subject, picture: &Picture) -> String {
        let task = self.task_name(task);
        match subject {
            Subject::Tray(code) => {
                let species = picture.trays.get(code).and_then(|tray| tray.species.as_ref());
                self.about_species(task, code.to_string(), species, picture)
            }
            Subject::Lot(lot) => {
                let species = picture.lots.get(lot).and_then(|lot| lot.species.as_ref());
                self.about_species(task, lot.to_string(), species, picture)
            }
            Subject::Bed(_) | Subject::Place(_) | Subject::Site => task,
        }
    }

    fn about_species(&self, task: String, subject: String, species: Option<&SpeciesKey>, picture: &Picture) -> String {
        match species {
            Some(key) => {
                let name = self.species_of(key, &picture.site.species);
                self.round_about_species(task, subject, name)
            }
            None => self.round_about(task, subject),
        }
    }

    /// The last figure and its day; nothing where the reason says it already, as of work that is done.
    pub(crate) fn stop_last(&self, stop: &Stop) -> Option<(String, Day)> {
        let last = stop.last.as_ref().filter(|last| !matches!(last.figure, Measure::Work(_)))?;
        Some((self.stop_figure(stop, &last.figure), last.day))
    }

    /// What to expect; nothing where it stands as it stood.
    pub(crate) fn stop_expect(&self, stop: &Stop) -> Option<String> {
        let said = self.stop_figure(stop, stop.expect.as_ref()?);
        let same = stop.last.as_ref().is_some_and(|last| self.stop_figure(stop, &last.figure) == said);
        (!same).then_some(said)
    }

    /// A figure of a stop: plants as a span, seeds of a lot, the mean of a sample.
    pub(crate) fn stop_figure(&self, stop: &Stop, figure: &Measure) -> String {
        if let (Subject::Lot(_), Measure::Plants(seeds)) = (&stop.subject, figure) {
            return self.seeds(seeds.likely.round() as i64);
        }
        if let Measure::Plants(range) = figure {
            let (low, high) = (range.low.floor(), range.high.ceil());
            // How many of the nurse plants stand nobody can say.
            if stop.task == Task::CountNurses && low <= 0.0 {
                return self.plants(high as i64);
            }
            return self.plants_span(low, high);
        }
        if let Measure::Sample { mean, .. } = figure {
            return self.round_mean(self.number(*mean, 1));
        }
        self.measure(figure)
    }
}
