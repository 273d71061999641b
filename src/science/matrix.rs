//! Small matrices: the inverse of one of a few rows.

/// The inverse by elimination with the largest pivot; nothing where the matrix has none within a computer's digits.
pub(super) fn inverse<const N: usize>(matrix: [[f64; N]; N]) -> Option<[[f64; N]; N]> {
    // Rows and columns brought to one size first, or a pivot's smallness would say nothing.
    let mut scale = [0.0; N];
    for (i, size) in scale.iter_mut().enumerate() {
        *size = matrix[i][i].abs().sqrt();
        if !(size.is_finite() && *size > 0.0) {
            return None;
        }
    }
    let mut left = matrix;
    let mut right = [[0.0; N]; N];
    for i in 0..N {
        for j in 0..N {
            left[i][j] /= scale[i] * scale[j];
        }
        right[i][i] = 1.0;
    }
    for column in 0..N {
        let pivot = (column..N).max_by(|&i, &j| left[i][column].abs().total_cmp(&left[j][column].abs()))?;
        if left[pivot][column].is_nan() || left[pivot][column].abs() < SMALLEST_PIVOT {
            return None;
        }
        left.swap(column, pivot);
        right.swap(column, pivot);
        let by = left[column][column];
        for j in 0..N {
            left[column][j] /= by;
            right[column][j] /= by;
        }
        for i in (0..N).filter(|&i| i != column) {
            let times = left[i][column];
            for j in 0..N {
                left[i][j] -= times * left[column][j];
                right[i][j] -= times * right[column][j];
            }
        }
    }
    for i in 0..N {
        for j in 0..N {
            right[i][j] /= scale[i] * scale[j];
        }
    }
    right.iter().flatten().all(|value| value.is_finite()).then_some(right)
}

/// Smallest pivot of a matrix with ones on its diagonal that is not taken for 0: half of a computer's digits are left.
const SMALLEST_PIVOT: f64 = 1e-11;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_itself_is_one() {
        let matrix = [[4.0, 1.0, 0.0], [1.0, 3e6, 2.0], [0.0, 2.0, 5e-6]];
        let found = inverse(matrix).unwrap();
        for (i, row) in matrix.iter().enumerate() {
            for (j, wanted) in [0, 1, 2].map(|j| (j, f64::from(u8::from(i == j)))) {
                let cell: f64 = row.iter().zip(found).map(|(value, other)| value * other[j]).sum();
                assert!((cell - wanted).abs() < 1e-9, "{i} {j}: {cell}");
            }
        }
    }

    #[test]
    fn what_has_no_inverse_gives_none() {
        assert_eq!(inverse([[1.0, 2.0], [2.0, 4.0]]), None);
        assert_eq!(inverse([[0.0, 1.0], [1.0, 0.0]]), None);
        assert_eq!(inverse([[f64::NAN, 0.0], [0.0, 1.0]]), None);
    }
}
