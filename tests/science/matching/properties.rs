//! What holds of every plan, on instances drawn at random. `MATCHING_CASES` says how many; a failing case names its seed.

use std::time::Duration;

use outplant::science::matching::{Instance, Own, Progress, ShareOf, Shipment, Solved, Solver, Stated, check};

use super::library::ByLibrary;
use crate::support::plans::{Shape, drawn, of_json};

/// So many cases, or as many as the surroundings ask for.
fn cases(usual: u64) -> std::ops::Range<u64> {
    let asked = std::env::var("MATCHING_CASES").ok().and_then(|asked| asked.parse().ok());
    0..asked.unwrap_or(usual)
}

fn solved(instance: &Instance) -> Solved {
    Own.solve(instance, &mut |_| true)
}

/// Small instances of every kind: without shares, of positions, of what is planted; much work and little.
fn small(seed: u64, groups: u64, plants: u64) -> Stated {
    let share_percent = [100, 50, 30, 34, 60][(seed % 5) as usize];
    let of = if seed.is_multiple_of(2) { ShareOf::Positions } else { ShareOf::Planted };
    let (work_percent, weeks) = (40 + 30 * (seed % 4), 1 + seed % 4);
    let shape = Shape {
        groups,
        beds: 1 + seed % 3,
        weeks,
        species: 1 + seed % 2,
        sources: 1 + seed % 4,
        blocks: 2,
        plants,
        work_percent,
        of,
        share_percent,
    };
    drawn(seed, &shape)
}

/// The worth of the best of all plans there are.
fn best_of_all(instance: &Instance) -> i64 {
    fn deeper(instance: &Instance, at: usize, plan: &mut Vec<Shipment>, best: &mut i64) {
        let Some(offer) = instance.offers().get(at) else {
            *best = check(instance, plan).map_or(*best, |worth| worth.max(*best));
            return;
        };
        let sum = |belongs: &dyn Fn(&Shipment) -> bool| -> i64 {
            plan.iter().filter(|row| belongs(row)).map(|row| row.plants).sum()
        };
        let most = (instance.groups()[offer.group].supply - sum(&|row| row.group == offer.group))
            .min(instance.openings()[offer.opening].positions - sum(&|row| row.opening == offer.opening))
            .min(instance.work()[offer.week as usize - 1] - sum(&|row| row.week == offer.week));
        deeper(instance, at + 1, plan, best);
        for plants in 1..=most {
            plan.push(Shipment { group: offer.group, opening: offer.opening, week: offer.week, plants });
            deeper(instance, at + 1, plan, best);
            plan.pop();
        }
    }
    let mut best = 0;
    deeper(instance, 0, &mut Vec::new(), &mut best);
    best
}

#[test]
fn tiny_plans_are_the_best_of_all_there_are() {
    let mut tried = 0;
    for seed in cases(150) {
        let instance = small(seed, 3, 3).instance().unwrap();
        if instance.offers().len() > 7 {
            continue;
        }
        tried += 1;
        let found = solved(&instance);
        assert_eq!(check(&instance, &found.plan), Ok(found.objective), "seed {seed}");
        assert_eq!((found.objective, found.bound), (best_of_all(&instance), found.objective), "seed {seed}");
    }
    assert!(tried > 20, "only {tried} were tiny");
}

#[test]
fn small_plans_are_as_good_as_those_of_a_library_and_never_worse_than_greedy() {
    let mut proven = 0;
    for seed in cases(60) {
        let instance = small(seed, 4 + seed % 9, 12).instance().unwrap();
        let found = solved(&instance);
        assert!(found.is_proven(), "seed {seed}");
        assert_eq!(check(&instance, &found.plan), Ok(found.objective), "seed {seed}");
        let by_library = ByLibrary { longest: Duration::from_millis(300) }.solve(&instance, &mut |_| true);
        assert!(found.objective >= by_library.objective, "seed {seed}");
        if by_library.is_proven() {
            proven += 1;
            assert_eq!(found.objective, by_library.objective, "seed {seed}");
        }
        assert!(found.objective >= greedy(&instance), "seed {seed}");
    }
    assert!(proven * 10 >= cases(60).end * 7, "the library proved only {proven}");
}

/// The dearest offers first, each as far as it goes. With shares of what is planted that is nothing: the first plant is all of one
/// source.
fn greedy(instance: &Instance) -> i64 {
    let mut offers = instance.offers().to_vec();
    offers.sort_by_key(|offer| -offer.value);
    let (mut plan, mut worth): (Vec<Shipment>, i64) = (Vec::new(), 0);
    for offer in offers.iter().filter(|offer| offer.value > 0) {
        for plants in (1..=instance.groups()[offer.group].supply).rev() {
            plan.push(Shipment { group: offer.group, opening: offer.opening, week: offer.week, plants });
            if let Ok(better) = check(instance, &plan) {
                worth = better;
                break;
            }
            plan.pop();
        }
    }
    worth
}

#[test]
fn the_order_of_groups_and_beds_makes_no_difference_to_the_plan() {
    for seed in cases(20) {
        let stated = small(seed, 12, 20);
        let mut turned = stated.clone();
        turned.groups.reverse();
        turned.openings.rotate_left(1);
        let (one, other) = (stated.instance().unwrap(), turned.instance().unwrap());
        assert_eq!(one, other, "seed {seed}");
        assert_eq!(solved(&one), solved(&other), "seed {seed}");
        assert_eq!(solved(&one), solved(&one), "seed {seed}");
    }
}

#[test]
fn the_reference_takes_few_steps_and_whoever_has_enough_gets_the_best_so_far_with_a_bound() {
    let mut steps = 0;
    for instance in super::instances() {
        let best = instance["expected"]["objective"].as_i64().unwrap();
        let asked = of_json(&instance).instance().unwrap();
        let mut seen: Vec<Progress> = Vec::new();
        let whole = Own.solve(&asked, &mut |progress| {
            seen.push(progress);
            true
        });
        assert_eq!((whole.objective, whole.bound), (best, best), "{}", instance["id"]);
        let holds = |progress: &Progress| progress.best <= best && progress.bound >= best;
        assert!(seen.iter().all(holds), "{}: {seen:?}", instance["id"]);
        steps += seen.last().map_or(0, |last| last.steps);
        for calls in [0, 1, seen.len() / 2] {
            let mut left = calls;
            let stopped = Own.solve(&asked, &mut |_| {
                left = left.wrapping_sub(1);
                left < calls
            });
            assert_eq!(check(&asked, &stopped.plan), Ok(stopped.objective), "{}", instance["id"]);
            assert!(stopped.objective <= best && stopped.bound >= best, "{} {stopped:?}", instance["id"]);
        }
    }
    // A bad turn shows as ten times as many.
    assert!(steps < 10_000, "{steps} steps");
}
