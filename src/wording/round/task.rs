//! The names of tasks, alone and counted.

use crate::reckon::round::{AtStake, Stake, Task};
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    task_gauge();
    task_go_out();
    task_last_day();
    task_count();
    task_stop_waiting();
    task_sow_again();
    task_prick_out();
    task_pot_on();
    task_cull();
    task_space_out();
    task_begin_hardening();
    task_shade();
    task_water();
    task_measure();
    task_check_plug();
    task_treatment_over();
    task_test_lot();
    task_sow_lot();
    task_clear();
    task_holes();
    task_weed();
    task_mulch();
    task_fence();
    task_count_nurses();
    task_read_light();
    task_check_soil();
    task_count_survivors();
    tasks_gauge();
    tasks_go_out(n: count);
    tasks_last_day(n: count);
    tasks_count(n: count);
    tasks_stop_waiting(n: count);
    tasks_sow_again(n: count);
    tasks_prick_out(n: count);
    tasks_pot_on(n: count);
    tasks_cull(n: count);
    tasks_space_out(n: count);
    tasks_begin_hardening(n: count);
    tasks_shade(n: count);
    tasks_water(n: count);
    tasks_measure(n: count);
    tasks_check_plug(n: count);
    tasks_treatment_over(n: count);
    tasks_test_lot(n: count);
    tasks_sow_lot(n: count);
    tasks_clear(n: count);
    tasks_holes(n: count);
    tasks_weed(n: count);
    tasks_mulch(n: count);
    tasks_fence(n: count);
    tasks_count_nurses(n: count);
    tasks_read_light(n: count);
    tasks_check_soil(n: count);
    tasks_count_survivors(n: count);
    round_heading(stops: count, minutes: text, allowed: text);
    round_mark_means();
    round_nothing();
    round_on_the_way();
    round_no_place();
    round_seed_store();
    round_bed(bed: text);
    round_can_wait(stops: count, list: text);
    round_let_go(task: text, until: text);
    round_about(task: text, subject: text);
    round_about_species(task: text, subject: text, species: text);
    round_last(figure: text, day: text);
    round_expect(what: text);
    round_expect_good(what: text);
    round_until(day: text);
    round_lose_seedlings(plants: text);
    round_lose_seed(plants: text);
    round_lose_planted(plants: text);
    round_lose_planting(plants: text);
    round_plants_between(low: text, high: text);
    round_mean(mean: text);
    teach_sheet();
}

impl Wording {
    /// What there is to do: "Count".
    pub fn task_name(&self, task: Task) -> String {
        match task {
            Task::Gauge => self.task_gauge(),
            Task::GoOut => self.task_go_out(),
            Task::LastDay => self.task_last_day(),
            Task::Count => self.task_count(),
            Task::StopWaiting => self.task_stop_waiting(),
            Task::SowAgain => self.task_sow_again(),
            Task::PrickOut => self.task_prick_out(),
            Task::PotOn => self.task_pot_on(),
            Task::Cull => self.task_cull(),
            Task::SpaceOut => self.task_space_out(),
            Task::BeginHardening => self.task_begin_hardening(),
            Task::Shade => self.task_shade(),
            Task::Water => self.task_water(),
            Task::Measure => self.task_measure(),
            Task::CheckPlug => self.task_check_plug(),
            Task::TreatmentOver => self.task_treatment_over(),
            Task::TestLot => self.task_test_lot(),
            Task::SowLot => self.task_sow_lot(),
            Task::Clear => self.task_clear(),
            Task::Holes => self.task_holes(),
            Task::Weed => self.task_weed(),
            Task::Mulch => self.task_mulch(),
            Task::Fence => self.task_fence(),
            Task::CountNurses => self.task_count_nurses(),
            Task::ReadLight => self.task_read_light(),
            Task::CheckSoil => self.task_check_soil(),
            Task::CountSurvivors => self.task_count_survivors(),
        }
    }

    /// So many of a task: "12 counts".
    pub fn tasks_counted(&self, task: Task, number: usize) -> String {
        let n = i64::try_from(number).unwrap_or(i64::MAX);
        match task {
            Task::Gauge => self.tasks_gauge(),
            Task::GoOut => self.tasks_go_out(n),
            Task::LastDay => self.tasks_last_day(n),
            Task::Count => self.tasks_count(n),
            Task::StopWaiting => self.tasks_stop_waiting(n),
            Task::SowAgain => self.tasks_sow_again(n),
            Task::PrickOut => self.tasks_prick_out(n),
            Task::PotOn => self.tasks_pot_on(n),
            Task::Cull => self.tasks_cull(n),
            Task::SpaceOut => self.tasks_space_out(n),
            Task::BeginHardening => self.tasks_begin_hardening(n),
            Task::Shade => self.tasks_shade(n),
            Task::Water => self.tasks_water(n),
            Task::Measure => self.tasks_measure(n),
            Task::CheckPlug => self.tasks_check_plug(n),
            Task::TreatmentOver => self.tasks_treatment_over(n),
            Task::TestLot => self.tasks_test_lot(n),
            Task::SowLot => self.tasks_sow_lot(n),
            Task::Clear => self.tasks_clear(n),
            Task::Holes => self.tasks_holes(n),
            Task::Weed => self.tasks_weed(n),
            Task::Mulch => self.tasks_mulch(n),
            Task::Fence => self.tasks_fence(n),
            Task::CountNurses => self.tasks_count_nurses(n),
            Task::ReadLight => self.tasks_read_light(n),
            Task::CheckSoil => self.tasks_check_soil(n),
            Task::CountSurvivors => self.tasks_count_survivors(n),
        }
    }

    /// From so many plants to so many: "38 to 41 plants".
    pub fn plants_span(&self, low: f64, high: f64) -> String {
        if low == high {
            return self.plants(high.clamp(0.0, 1e15) as i64);
        }
        self.round_plants_between(self.number(low, 0), self.number(high, 0))
    }

    /// What is lost without it; nothing where it is less than a plant, or only not known.
    pub fn lost_without(&self, stake: AtStake) -> Option<String> {
        if stake.plants.round() < 1.0 {
            return None;
        }
        let plants = self.rough_number(stake.plants);
        match stake.what {
            Stake::Seedlings => Some(self.round_lose_seedlings(plants)),
            Stake::Seed => Some(self.round_lose_seed(plants)),
            Stake::Planted => Some(self.round_lose_planted(plants)),
            Stake::Planting => Some(self.round_lose_planting(plants)),
            Stake::Knowledge => None,
        }
    }
}
