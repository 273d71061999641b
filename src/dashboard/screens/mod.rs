//! The seven screens. Each is a folder: what is chosen there, what its keys mean, how it is drawn.

pub mod beds;
pub mod going_out;
pub mod journal;
mod list_detail;
pub mod screen;
pub mod season;
pub mod seed;
pub mod trays;
pub mod walk;

use screen::Screen;

use super::act::ScreenName;

/// The seven screens.
#[derive(Default)]
pub struct Screens {
    /// The walk, which the round in prompts uses too.
    pub walk: walk::Walk,
    trays: trays::Trays,
    beds: beds::Beds,
    going_out: going_out::GoingOut,
    seed: seed::Seed,
    season: season::Season,
    journal: journal::Journal,
}

impl Screens {
    /// A screen.
    pub fn at(&self, name: ScreenName) -> &dyn Screen {
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
    pub fn at_mut(&mut self, name: ScreenName) -> &mut dyn Screen {
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
