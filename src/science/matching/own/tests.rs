//! Each step by itself, on instances whose best is known.

use super::super::check::check;
use super::super::instance::{Group, Instance, Offer, Opening, Share, ShareOf};
use super::best::Best;
use super::corner::whole_corner;
use super::model::{Model, Row, Shares};
use super::prices::estimate;
use super::root::root;
use super::rounding::{by_value, greedy, rounded};
use super::simplex::Ended;
use super::start::begin;
use super::task::{Limit, Task};

/// Groups by source and supply, openings of beds by positions, work of weeks; an offer by group, opening, week and value.
fn instance(
    groups: &[(&str, i64)],
    openings: &[(&str, &str, i64)],
    work: &[i64],
    share: Share,
    offers: &[(usize, usize, u32, i64)],
) -> Instance {
    let group = |(at, (source, supply)): (usize, &(&str, i64))| Group {
        id: format!("G{at:02}"),
        source: (*source).to_string(),
        supply: *supply,
    };
    let opening = |(bed, species, positions): &(&str, &str, i64)| Opening {
        bed: (*bed).to_string(),
        species: (*species).to_string(),
        positions: *positions,
    };
    let offer = |(group, opening, week, value): &(usize, usize, u32, i64)| Offer {
        group: *group,
        opening: *opening,
        week: *week,
        value: *value,
    };
    let groups = groups.iter().enumerate().map(group).collect();
    let openings = openings.iter().map(opening).collect();
    Instance::new(groups, openings, work.to_vec(), share, offers.iter().map(offer).collect()).unwrap()
}

const FREE: Share = Share { of: ShareOf::Positions, parts: 1, whole: 1 };

/// The smallest instance known whose best plan with fractions is better than that of whole plants: 10.5 against 10. Bed A is open in
/// weeks 1 and 2, bed B in week 2 alone; the first group may go in both weeks, the second in the second.
fn odd() -> Instance {
    let offers = [(0, 0, 1, 8), (0, 0, 2, 8), (0, 1, 2, 3), (1, 0, 2, 10), (1, 1, 2, 2)];
    instance(&[("M1", 1), ("M1", 1)], &[("A", "S", 1), ("B", "S", 1)], &[1, 1], FREE, &offers)
}

#[test]
fn groups_that_nothing_tells_apart_are_one_lot_and_offers_that_bring_nothing_go() {
    let offers = [(0, 0, 1, 5), (1, 0, 1, 5), (2, 0, 1, 5), (2, 0, 2, 4), (3, 0, 1, 5), (0, 0, 2, -1), (1, 0, 2, -1)];
    let groups = [("M1", 3), ("M1", 4), ("M1", 5), ("M2", 6)];
    let asked = instance(&groups, &[("A", "S", 9)], &[9, 9], FREE, &offers);
    let task = Task::new(&asked);
    assert_eq!(task.lots.iter().map(|lot| lot.supply).collect::<Vec<i64>>(), [7, 5, 6]);
    assert_eq!(task.ways.len(), 4);
    // What a lot sends is split among its groups again.
    let plan = task.plan(&asked, &[7, 0, 0, 0]);
    assert_eq!(plan.iter().map(|row| (row.group, row.plants)).collect::<Vec<_>>(), [(0, 3), (1, 4)]);
}

#[test]
fn the_greatest_total_of_a_bed_needs_sources_enough() {
    let offers = [(0, 0, 1, 5), (1, 0, 1, 5), (2, 0, 1, 5)];
    let third = Share { of: ShareOf::Planted, parts: 2, whole: 5 };
    let of = |supplies: [i64; 3]| {
        let groups = [("M1", supplies[0]), ("M2", supplies[1]), ("M3", supplies[2])];
        Task::new(&instance(&groups, &[("A", "S", 30)], &[30], third, &offers)).total_most[0]
    };
    // 2 of 5 at most: 4 + 4 + 3 of 11 would need 4.4; 10 is 4 + 4 + 2.
    assert_eq!(of([9, 9, 2]), 10);
    // Two sources of 40 % each never make a whole.
    assert_eq!(of([9, 9, 0]), 0);
}

#[test]
fn rows_that_cannot_bind_are_left_out() {
    let offers = [(0, 0, 1, 5), (1, 0, 2, 5)];
    let asked = instance(&[("M1", 3), ("M2", 4)], &[("A", "S", 7)], &[3, 3], FREE, &offers);
    let task = Task::new(&asked);
    let rows = Model::new(&task, vec![0, 1], &Shares::All).rows;
    assert_eq!(rows, [Row::Lot(0), Row::Lot(1), Row::Week(1)]);
}

#[test]
fn at_estimated_prices_the_greedy_plan_is_near_the_best_and_fits() {
    // Two groups want the dear bed; the one that loses most by the other bed must have it.
    let offers = [(0, 0, 1, 100), (0, 1, 1, 90), (1, 0, 1, 95), (1, 1, 1, 20)];
    let asked = instance(&[("M1", 5), ("M2", 5)], &[("A", "S", 5), ("B", "S", 5)], &[10], FREE, &offers);
    let task = Task::new(&asked);
    let order = by_value(&task);
    assert_eq!(task.worth(&greedy(&task, &order)), 5 * 100 + 5 * 20);
    let mut model = Model::new(&task, (0..4).collect(), &Shares::All);
    let prices = estimate(&model);
    begin(&mut model, &prices);
    model.program.find_amounts();
    let plants = model.plants(&task);
    assert_eq!(task.worth(&plants), 5 * 90 + 5 * 95);
    assert!(Best::nothing(&task).take(&task, plants));
}

#[test]
fn the_best_with_fractions_is_a_bound_and_rounding_fits() {
    let asked = odd();
    let task = Task::new(&asked);
    let (model, ended) = root(&task);
    assert_eq!(ended, Ended::Best);
    assert!(model.program.total() >= 10.0 && model.program.total() < 11.0, "{}", model.program.total());
    let plants = rounded(&task, &model, &by_value(&task));
    assert!(Best::nothing(&task).take(&task, plants));
}

#[test]
fn shares_that_join_afterwards_hold() {
    let offers = [(0, 0, 1, 9), (1, 0, 1, 5), (2, 0, 1, 4)];
    for (of, best) in [(ShareOf::Positions, 5 * 9 + 5 * 5), (ShareOf::Planted, 5 * 9 + 5 * 5)] {
        let half = Share { of, parts: 1, whole: 2 };
        let groups = [("M1", 9), ("M2", 9), ("M3", 9)];
        let asked = instance(&groups, &[("A", "S", 10)], &[20], half, &offers);
        let (model, ended) = root(&Task::new(&asked));
        assert_eq!((ended, model.program.total().round() as i64), (Ended::Best, best));
    }
}

#[test]
fn a_corner_of_whole_plants_is_found_beside_one_of_fractions() {
    // Every plan of one plant each is worth the same: the whole face is best.
    let offers = [(0, 0, 1, 5), (0, 1, 1, 5), (1, 0, 1, 5), (1, 1, 1, 5)];
    let asked = instance(&[("M1", 1), ("M2", 1)], &[("A", "S", 1), ("B", "S", 1)], &[2], FREE, &offers);
    let task = Task::new(&asked);
    let (mut model, _) = root(&task);
    model.program.find_gains();
    let before = model.program.state.amounts.clone();
    let corner = whole_corner(&model, 3, &[], 4).unwrap();
    assert_eq!(task.worth(&corner.plants(&task)), 10);
    assert_eq!(model.program.state.amounts, before, "the model itself stays as it was");
}

#[test]
fn the_counted_numbers_of_a_bed_bind_each_other() {
    let offers = [(0, 0, 1, 9), (1, 0, 1, 5), (2, 0, 1, 4)];
    let share = Share { of: ShareOf::Planted, parts: 2, whole: 5 };
    let asked = instance(&[("M1", 9), ("M2", 9), ("M3", 9)], &[("A", "S", 20)], &[20], share, &offers);
    let task = Task::new(&asked);
    assert_eq!(task.limit, Limit::Planted { parts: 2, whole: 5 });
    let (model, _) = root(&task);
    let of = model.counted[0].unwrap();
    let amounts = &model.program.state.amounts;
    assert!(amounts[of.most] <= 0.4 * amounts[of.total] + 1e-6);
    let mut goes = |_: &Best, _: f64, _: u64| true;
    let mut best = Best::nothing(&task);
    assert_eq!(super::branching::search(&task, &model, &by_value(&task), &mut best, &mut goes), None);
    let plan = task.plan(&asked, &best.plants);
    assert_eq!(check(&asked, &plan), Ok(best.worth));
}

#[test]
fn branching_finds_the_best_of_whole_plants() {
    let asked = odd();
    let task = Task::new(&asked);
    let (mut model, _) = root(&task);
    model.program.find_gains();
    let mut best = Best::nothing(&task);
    let mut goes = |_: &Best, _: f64, _: u64| true;
    assert_eq!(super::branching::search(&task, &model, &by_value(&task), &mut best, &mut goes), None);
    assert_eq!(best.worth, 10);
}
