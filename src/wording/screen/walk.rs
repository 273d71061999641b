//! The screen Walk, and the round in prompts.

use crate::reckon::round::{AtStake, Stake};
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    walk_progress(behind: count, all: count, minutes: text, allowed: text);
    walk_all_done(stops: count);
    walk_skipped_count(stops: count);
    walk_rest(stops: count);
    walk_rest_shown(stops: count);
    walk_can_wait();
    walk_done();
    walk_over();
    walk_skipped();
    walk_where();
    walk_why();
    walk_last();
    walk_last_figure(figure: text, day: text);
    walk_expect();
    walk_good_enough(what: text);
    walk_until();
    walk_without();
    walk_lose_seedlings(plants: text);
    walk_lose_seed(plants: text);
    walk_lose_planted(plants: text);
    walk_lose_planting(plants: text);
    walk_more_right(lines: count);
    walk_more_left();
    walk_large_hint();
    walk_nothing_comes();
    walk_set_apart();
    walk_sign();
    walk_mark_short();
    plain_begin();
    plain_prompt(number: count, all: count);
    plain_not_understood(answer: text);
    plain_next();
    plain_before();
    plain_quit();
    plain_also(list: text);
    plain_empty_does();
    plain_write_it();
    plain_take_back();
    plain_left();
    plain_loses_most();
    plain_writing_day(day: text);
    plain_more(lines: count);
    plain_only_tray();
}

impl Wording {
    /// What is lost without a stop, as a sentence of its own; nothing where it is less than a plant, or only not known.
    pub fn walk_lost(&self, stake: AtStake) -> Option<String> {
        if stake.plants.round() < 1.0 {
            return None;
        }
        let plants = self.rough_number(stake.plants);
        match stake.what {
            Stake::Seedlings => Some(self.walk_lose_seedlings(plants)),
            Stake::Seed => Some(self.walk_lose_seed(plants)),
            Stake::Planted => Some(self.walk_lose_planted(plants)),
            Stake::Planting => Some(self.walk_lose_planting(plants)),
            Stake::Knowledge => None,
        }
    }
}
