//! Three equations in three unknowns; knows no boats.

/// Three rows of three.
pub(super) type Matrix = [[f64; 3]; 3];

/// Returns the inverse, or nothing where the three equations are not independent.
pub(super) fn inverse(m: Matrix) -> Option<Matrix> {
    let cofactor = |row: usize, column: usize| {
        let (r1, r2) = ((row + 1) % 3, (row + 2) % 3);
        let (c1, c2) = ((column + 1) % 3, (column + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    let determinant: f64 = (0..3).map(|column| m[0][column] * cofactor(0, column)).sum();
    let inverted: Matrix = std::array::from_fn(|row| {
        std::array::from_fn(|column| cofactor(column, row) / determinant)
    });
    let usable = inverted.iter().flatten().all(|element| element.is_finite());
    usable.then_some(inverted)
}

/// Returns the sum of products of two rows.
pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Returns the matrix times a column.
pub(super) fn times(m: Matrix, column: [f64; 3]) -> [f64; 3] {
    m.map(|row| dot(row, column))
}

/// Returns the most the matrix can lengthen a column (its 2-norm).
///
/// # Formula
///
/// The square root of the greatest eigenvalue of `m m'`, by the cosine solution of the cubic.
pub(super) fn greatest_stretch(m: Matrix) -> f64 {
    let square: Matrix = std::array::from_fn(|i| std::array::from_fn(|j| dot(m[i], m[j])));
    let mean = (square[0][0] + square[1][1] + square[2][2]) / 3.0;
    let mut off = square;
    for (i, row) in off.iter_mut().enumerate() {
        row[i] -= mean;
    }
    let spread = (off.iter().flatten().map(|x| x * x).sum::<f64>() / 6.0).sqrt();
    if spread <= f64::EPSILON * mean {
        return mean.sqrt();
    }
    let third = (determinant(off) / (2.0 * spread.powi(3))).clamp(-1.0, 1.0).acos() / 3.0;
    (mean + 2.0 * spread * third.cos()).sqrt()
}

fn determinant(m: Matrix) -> f64 {
    m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
        + m[0][1] * (m[1][2] * m[2][0] - m[1][0] * m[2][2])
        + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLAIN: Matrix = [[2.0, -1.0, 0.5], [0.0, 3.0, 1.0], [4.0, 1.0, -2.0]];

    #[test]
    fn the_inverse_brings_a_column_back() {
        let column = [1.0, -2.0, 3.0];
        let inverted = inverse(PLAIN).expect("its determinant is -24");
        let back = times(inverted, times(PLAIN, column));
        assert!(back.iter().zip(column).all(|(a, b)| (a - b).abs() < 1e-14), "{back:?}");
    }

    #[test]
    fn dependent_equations_have_no_inverse() {
        assert!(inverse([[1.0, 2.0, 3.0], [2.0, 4.0, 6.0], [0.0, 1.0, 0.0]]).is_none());
    }

    /// Source: the library nalgebra, singular values.
    #[test]
    fn the_greatest_stretch_is_the_first_singular_value() {
        let other = nalgebra::Matrix3::from_fn(|i, j| PLAIN[i][j]);
        let expected = other.singular_values().max();
        assert!((greatest_stretch(PLAIN) - expected).abs() < 1e-12, "{expected}");
    }

    #[test]
    fn an_even_stretch_is_itself() {
        let even = [[3.0, 0.0, 0.0], [0.0, 3.0, 0.0], [0.0, 0.0, 3.0]];
        assert!((greatest_stretch(even) - 3.0).abs() < 1e-15);
    }
}
