//! Germination figures, intervals, replicates, sowing numbers and sample sizes against other libraries and printed output.
//! The headers of the files name the sources.

// The whole file is a test; the clippy settings lets only #[test] functions themselves panic.
#![allow(clippy::panic)]

use outplant::science::chance::Chance;
use outplant::science::germination::{Germination, germination};
use outplant::science::sowing::{chance_of_enough, germination_belief, seeds_to_sow};
use outplant::science::{interval, overdispersion, sampling};
use serde_json::Value;

use crate::support::reference::{counts, list, near, number, numbers, reference, whole};

const INDICES: &str = include_str!("../reference/germination_indices.json");
const SOWING: &str = include_str!("../reference/sowing.json");
const STATS: &str = include_str!("../reference/stats.json");

/// Figures are printed with 12 digits.
const TWELVE_DIGITS: f64 = 1e-10;

fn figures(told: &Germination) -> [(&'static str, Option<f64>); 15] {
    [
        ("germinated", Some(told.germinated as f64)),
        ("germ_pct", Some(told.germ_pct)),
        ("mgt", told.mgt),
        ("var_gt", told.var_gt),
        ("se_mgt", told.se_mgt),
        ("cv_gt", told.cv_gt),
        ("t50_coolbear", told.t50_coolbear),
        ("t50_farooq", told.t50_farooq),
        ("mgr", told.mgr),
        ("cvg", told.cvg),
        ("gri_counts", told.gri_counts),
        ("gri_percent", told.gri_percent),
        ("uncertainty", told.uncertainty),
        ("synchrony", told.synchrony),
        ("cug", told.cug),
    ]
}

fn told_of(case: &Value) -> Germination {
    germination(&numbers(case, "times"), &counts(case, "counts"), whole(case, "n")).unwrap()
}

#[test]
fn germination_figures_of_every_case() {
    let all = reference(INDICES);
    let cases: Vec<&Value> = list(&all, "published_cases").iter().chain(list(&all, "computed_cases")).collect();
    assert_eq!(cases.len(), 37);
    for case in cases {
        for (name, got) in figures(&told_of(case)) {
            match (got, case["computed"][name].as_f64()) {
                (None, None) => {}
                (Some(got), Some(want)) => near(got, want, TWELVE_DIGITS, &format!("{} {name}", case["id"])),
                (got, want) => panic!("{} {name}: {got:?}, but {want:?}", case["id"]),
            }
        }
    }
}

/// Two printed medians skip a running total that equals the half exactly; the formula gives that count's day.
#[test]
fn germination_figures_as_they_were_printed() {
    let all = reference(INDICES);
    let (mut agreed, mut skipped) = (0, 0);
    for case in list(&all, "published_cases") {
        let told = figures(&told_of(case));
        let published = case["published"].as_object().unwrap();
        for (name, want) in published.iter().filter_map(|(name, want)| Some((name, want.as_f64()?))) {
            let Some(got) = told.iter().find(|(own, _)| own == name).and_then(|(_, got)| *got) else { continue };
            if (got - want).abs() <= 1e-6 * want.abs().max(1.0) {
                agreed += 1;
            } else {
                assert!(name.starts_with("t50"), "{} {name}: {got}, printed {want}", case["id"]);
                skipped += 1;
            }
        }
    }
    assert_eq!(skipped, 2);
    assert!(agreed > 50, "only {agreed} printed figures were compared");
}

#[test]
fn intervals_of_shares() {
    let all = reference(SOWING);
    let cases = list(&all, "binomial_intervals");
    assert_eq!(cases.len(), 30);
    for case in cases {
        let (x, n, level) = (whole(case, "x"), whole(case, "n"), number(case, "level"));
        let exact = interval::clopper_pearson(x, n, level).unwrap();
        let bayes = interval::jeffreys(x, n, level).unwrap();
        let wilson = sampling::wilson(x, n, level).unwrap();
        for (name, low, high) in [
            ("clopper_pearson", exact.low, exact.high),
            ("jeffreys_equal_tail", bayes.low, bayes.high),
            ("wilson", wilson.low, wilson.high),
        ] {
            let want = numbers(case, name);
            near(low, want[0], 1e-9, &format!("{name} of {x} in {n} at {level}: low"));
            near(high, want[1], 1e-9, &format!("{name} of {x} in {n} at {level}: high"));
        }
    }
}

#[test]
fn seeds_to_sow_of_every_case() {
    let all = reference(SOWING);
    let cases = list(&all, "sowing");
    assert_eq!(cases.len(), 34);
    for case in cases {
        let belief = germination_belief(
            number(case, "prior_a"),
            number(case, "prior_b"),
            whole(case, "sown"),
            whole(case, "germinated"),
        )
        .unwrap();
        let survival = case["survival_beta"]
            .as_array()
            .map(|ends| Chance::beta("survival_beta", ends[0].as_f64().unwrap(), ends[1].as_f64().unwrap()).unwrap());
        let told = seeds_to_sow(belief, survival, whole(case, "wanted"), number(case, "confidence")).unwrap();
        let id = case["id"].as_str().unwrap();
        assert_eq!(told.seeds, whole(case, "smallest_n"), "{id}");
        near(told.prob_at_n, number(case, "prob_at_n"), 1e-9, id);
        near(told.prob_at_n_minus_1, number(case, "prob_at_n_minus_1"), 1e-9, id);
        near(told.mean_success, number(case, "mean_success"), TWELVE_DIGITS, id);
    }
}

#[test]
fn the_table_of_tolerated_ranges_and_replicates() {
    let all = reference(SOWING);
    let table = list(&all, "tolerance_table");
    assert_eq!(table.len(), 49);
    for row in table {
        let most = Some(whole(row, "max_range_4x100"));
        assert_eq!(sampling::max_tolerated_range(number(row, "mean_pct")), most, "{row}");
        assert_eq!(sampling::max_tolerated_range(number(row, "mirrored_mean_pct")), most, "{row}");
    }
    for case in list(&all, "replicate_checks") {
        let told = sampling::agreement(&counts(case, "replicates"), whole(case, "n_each")).unwrap();
        near(told.mean, number(case, "mean"), TWELVE_DIGITS, "mean");
        assert_eq!(told.range, whole(case, "range"), "{case}");
        assert_eq!(told.max_tolerated_range.map(u64::from), case["max_tolerated_range"].as_u64(), "{case}");
        assert_eq!(told.within_tolerance, case["within_tolerance"].as_bool(), "{case}");
        near(told.chi_squared.unwrap(), number(case, "chi2"), 1e-9, "chi-squared");
        near(told.p_value.unwrap(), number(case, "p_value"), 1e-9, "p");
    }
}

/// Crowder 1978: counts of Orobanche seeds; parameters to 0.2 %, log-likelihood to 1e-5. The group that differs hardly more
/// than chance has a flat top: its parameters to 1 %.
#[test]
fn spread_between_sowings_of_crowder() {
    let all = reference(SOWING);
    let groups = list(&all, "crowder_orobanche");
    assert_eq!(groups.len(), 3);
    for group in groups {
        let told =
            overdispersion::overdispersion(&counts(group, "germinated"), &counts(group, "sown")).unwrap().unwrap();
        let id = group["group"].as_str().unwrap();
        let within = if number(group, "bb_a") > 200.0 { 1e-2 } else { 2e-3 };
        near(told.a, number(group, "bb_a"), within, id);
        near(told.b, number(group, "bb_b"), within, id);
        near(told.mean(), number(group, "bb_mean"), 1e-4, id);
        near(1.0 / (told.a + told.b + 1.0), number(group, "bb_rho"), within, id);
        near(told.loglik, number(group, "loglik_betabinomial"), 1e-5, id);
    }
}

#[test]
fn sample_sizes_of_every_case() {
    let all = reference(STATS);
    let cases = list(&all, "sample_sizes");
    assert_eq!(cases.len(), 31);
    for case in cases {
        let confidence = number(case, "confidence");
        match case["kind"].as_str().unwrap() {
            "proportion" => {
                let (p, half) = (number(case, "p"), number(case, "half_width"));
                let of = |population| sampling::sample_size_share(p, half, confidence, population).unwrap();
                assert_eq!(of(None), whole(case, "n_infinite"), "{case}");
                assert_eq!(of(Some(whole(case, "population"))), whole(case, "n_finite"), "{case}");
            }
            "mean_t_iterated" => {
                let told = sampling::sample_size_mean(number(case, "sd"), number(case, "half_width"), confidence, None);
                assert_eq!(told.unwrap(), whole(case, "n"), "{case}");
            }
            "detect_at_least_one" => {
                let told = sampling::sample_size_detection(number(case, "prevalence"), confidence);
                assert_eq!(told.unwrap(), whole(case, "n"), "{case}");
            }
            kind => panic!("no kind {kind}"),
        }
    }
}

#[test]
fn more_seeds_never_make_it_less_sure() {
    let germination = Chance::beta("g", 20.0, 7.0).unwrap();
    let survival = Some(Chance::beta("s", 9.0, 1.0).unwrap());
    let mut last = 0.0;
    for seeds in 0..400 {
        let chance = chance_of_enough(germination, survival, 60, seeds).unwrap();
        assert!(chance >= last - 1e-12 && chance <= 1.0 + 1e-12, "{seeds}: {chance} after {last}");
        last = chance;
    }
    assert!(last > 0.99);
}
