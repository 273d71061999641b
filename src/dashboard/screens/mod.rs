//! The seven screens. Each is a folder: what is chosen there, what its keys mean, how it is drawn.

pub(crate) mod beds;
pub(crate) mod going_out;
pub(crate) mod journal;
mod list_detail;
mod named;
pub(crate) mod screen;
pub(crate) mod season;
pub(crate) mod seed;
mod signs;
pub(crate) mod trays;
pub(crate) mod walk;

use screen::Screen;

use super::act::ScreenName;

/// The seven screens.
#[derive(Default)]
pub(crate) struct Screens {
    /// The walk, which the round in prompts uses too.
    pub(crate) walk: walk::Walk,
    trays: trays::Trays,
    beds: beds::Beds,
    going_out: going_out::GoingOut,
    seed: seed::Seed,
    season: season::Season,
    journal: journal::Journal,
}

impl Screens {
    /// A screen.
    pub(crate) fn at(&self, name: ScreenName) -> &dyn Screen {
        match name {
            ScreenName::Walk => &self.walk,
            ScreenName::Trays => &self.trays,
            ScreenName::Beds => &self.beds,
            ScreenName::GoingOut => &self.going_out,
            ScreenName::Seed => &self.seed,
            ScreenName::Season => &self.season,
            ScreenName::Journal => &self.journal,
        }
    }

    /// A screen, to be changed.
    pub(crate) fn at_mut(&mut self, name: ScreenName) -> &mut dyn Screen {
        match name {
            ScreenName::Walk => &mut self.walk,
            ScreenName::Trays => &mut self.trays,
            ScreenName::Beds => &mut self.beds,
            ScreenName::GoingOut => &mut self.going_out,
            ScreenName::Seed => &mut self.seed,
            ScreenName::Season => &mut self.season,
            ScreenName::Journal => &mut self.journal,
        }
    }
}
