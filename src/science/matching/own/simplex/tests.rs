//! Small programs whose best is known by hand.

use super::{Ended, FAR, Program};

/// 3 a + 2 b within a + b <= 4, a + 3 b <= 6, a <= 3: best 3 x 3 + 2 x 1 = 11.
fn by_hand() -> Program {
    let mut program = Program::new(vec![4.0, 6.0]);
    program.add(3.0, (0.0, 3.0), &[(0, 1.0), (1, 1.0)]);
    program.add(2.0, (0.0, FAR), &[(0, 1.0), (1, 3.0)]);
    for row in 0..2 {
        program.slack[row] = program.add(0.0, (0.0, FAR), &[(row, 1.0)]) as u32;
    }
    program.index_rows();
    program.start_from_slacks();
    program
}

#[test]
fn the_primal_finds_the_best() {
    let mut program = by_hand();
    assert_eq!(program.primal(), Ended::Best);
    assert!((program.total() - 11.0).abs() < 1e-9);
    assert!((program.state.amounts[0] - 3.0).abs() < 1e-9 && (program.state.amounts[1] - 1.0).abs() < 1e-9);
}

#[test]
fn the_dual_goes_on_from_it_where_a_bound_or_a_sum_is_tightened() {
    let mut program = by_hand();
    program.primal();
    program.find_gains();
    program.high[0] = 2.0;
    program.find_amounts();
    assert_eq!(program.dual(-FAR, 100), Ended::Best);
    // a = 2, b = 4/3.
    assert!((program.total() - (6.0 + 8.0 / 3.0)).abs() < 1e-9);
    let sum = program.add_sum(&[0, 1]);
    program.high[sum] = 3.0;
    program.find_amounts();
    assert_eq!(program.dual(-FAR, 100), Ended::Best);
    assert!((program.total() - 8.0).abs() < 1e-9);
    program.low[sum] = 4.0;
    program.high[sum] = 5.0;
    program.find_amounts();
    program.find_gains();
    assert_eq!(program.dual(-FAR, 100), Ended::Impossible);
}

#[test]
fn the_dual_ends_where_no_more_than_what_is_asked_for_can_come() {
    let mut program = by_hand();
    program.primal();
    program.find_gains();
    program.high[0] = 1.0;
    program.find_amounts();
    assert_eq!(program.dual(10.5, 100), Ended::NotBetter);
}
