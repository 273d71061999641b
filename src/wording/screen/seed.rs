//! The screen Seed.

use crate::reckon::seed::LotState;
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    seed_lots(lots: count);
    seed_hidden(lots: count);
    seed_all_used_up(lots: count);
    seed_column_lot();
    seed_column_state();
    seed_column_left();
    seed_column_days_left();
    seed_column_test();
    seed_column_kept();
    seed_column_next_test();
    seed_column_came_up();
    seed_column_collected();
    seed_about(seeds: count);
    seed_left_unknown();
    seed_left_of(left: text, seeds: count);
    seed_state_keeps();
    seed_state_ending();
    seed_state_over();
    seed_state_dead();
    seed_state_life_unknown();
    seed_state_used_up();
    seed_state_held();
    seed_heading(lot: text, species: text);
    seed_verdict_used_up();
    seed_verdict_held_until(day: text, why: text);
    seed_verdict_held(why: text);
    seed_verdict_keeps(kept: text, days: text, day: text);
    seed_verdict_ending(kept: text, days: text, day: text);
    seed_verdict_over(day: text, dead: text);
    seed_verdict_dead(day: text);
    seed_verdict_unknown(kept: text);
    seed_label_source();
    seed_tests();
    seed_never_tested();
    seed_how_many();
    seed_for_plants(typed: text);
    seed_none_open();
    seed_share(likely: text, low: text, high: text);
    seed_sowings();
    seed_not_sown();
    seed_unknown_seeds();
    seed_sown_in(tray: text, day: text, seeds: text, seedlings: count);
    seed_more_may_come();
    seed_with_other_seed();
    seed_came_up_in_all(seedlings: count, seeds: text);
    seed_history();
}

impl Wording {
    /// How a lot stands.
    pub fn lot_state_name(&self, state: LotState) -> String {
        match state {
            LotState::Keeps => self.seed_state_keeps(),
            LotState::Ending => self.seed_state_ending(),
            LotState::Over => self.seed_state_over(),
            LotState::Dead => self.seed_state_dead(),
            LotState::LifeUnknown => self.seed_state_life_unknown(),
            LotState::UsedUp => self.seed_state_used_up(),
            LotState::Held => self.seed_state_held(),
        }
    }
}
