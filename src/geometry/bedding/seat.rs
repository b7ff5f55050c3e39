//! Where a round shaft comes to rest in a rowlock of a given shape; knows no marks.

use super::BeddingError;
use super::check_diameter;
use crate::geometry::finite;
use crate::units::Length;

/// A round shaft at rest in a round-bottomed rowlock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoundSeat {
    /// Bottom of the shaft below the edges of the rowlock.
    pub depth: Length,
    /// Straight width between the edges of the rowlock.
    pub mouth: Length,
}

/// Returns how deep a round shaft sits in a rowlock with a flat bottom and upright walls.
///
/// ```text
///      .-'''-.                      .-'''-.
///     | shaft |                    |       |
///   --|       |--              |   |       |   |
///   | '-.___.-' |  on edges    |    '-.___.-'  |  on the bottom
///   |           |  wall        |_______________|
///   |___________|              |<--- width --->|
/// ```
///
/// # Formula
///
/// `width >= shaft`: it rests on the bottom, `wall` deep. Narrower, it hangs on the edges:
/// `(shaft - sqrt(shaft^2 - width^2)) / 2`, or rests on the bottom where the wall is less.
///
/// # Errors
///
/// [`BeddingError::DiameterNotPositive`] or [`BeddingError::RowlockNotPositive`].
pub fn seat_in_flat_u(shaft: Length, width: Length, wall: Length) -> Result<Length, BeddingError> {
    check_diameter(shaft)?;
    check_rowlock(width)?;
    check_rowlock(wall)?;
    if width >= shaft {
        return Ok(wall);
    }
    let hanging = super::depth_from_chord(shaft, width)?;
    Ok(finite::millimetres(hanging.as_mm().min(wall.as_mm())))
}

/// Returns how deep a round shaft sits in a rowlock with a round bottom, and the rowlock's mouth.
///
/// ```text
///    |<-- mouth -->|
///     \           /   depth
///      '-._____.-'    radius
/// ```
///
/// # Formula
///
/// The mouth is `2 sqrt(depth (2 radius - depth))`, in a rowlock deeper than its radius
/// `2 radius`. A radius of at least half the shaft: it rests on the bottom line, `depth` deep. A
/// tighter one: it hangs on the edges, as deep as the mouth lets it.
///
/// # Errors
///
/// [`BeddingError::DiameterNotPositive`] or [`BeddingError::RowlockNotPositive`].
pub fn seat_in_round_u(
    shaft: Length,
    radius: Length,
    depth: Length,
) -> Result<RoundSeat, BeddingError> {
    check_diameter(shaft)?;
    check_rowlock(radius)?;
    check_rowlock(depth)?;
    let across = finite::millimetres(2.0 * radius.as_mm());
    let mouth = if depth >= radius { across } else { super::chord_from_depth(across, depth)? };
    if across >= shaft {
        return Ok(RoundSeat { depth, mouth });
    }
    Ok(RoundSeat { depth: super::depth_from_chord(shaft, mouth)?, mouth })
}

fn check_rowlock(measure: Length) -> Result<(), BeddingError> {
    if measure.as_mm() <= 0.0 {
        return Err(BeddingError::RowlockNotPositive(measure));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    fn flat(width: f64, wall: f64) -> f64 {
        seat_in_flat_u(mm(50.0), mm(width), mm(wall)).expect("a sound rowlock").as_mm()
    }

    /// Source: an independent program: a shaft of 50 in widths of 46, 47.14, 48, 49 sits 15.2,
    /// 16.7, 18.0, 20.0 deep.
    #[test]
    fn a_shaft_hangs_on_the_edges_of_a_narrow_rowlock() {
        for (width, depth) in [(46.0, 15.2), (47.14, 16.7), (48.0, 18.0), (49.0, 20.0)] {
            assert!((flat(width, 40.0) - depth).abs() < 0.05, "{width}");
        }
    }

    #[test]
    fn a_wide_rowlock_takes_the_shaft_to_its_bottom() {
        assert!((flat(50.0, 17.0) - 17.0).abs() < 1e-12);
        assert!((flat(50.0, 30.0) - 30.0).abs() < 1e-12);
        assert!((flat(60.0, 17.0) - 17.0).abs() < 1e-12);
        assert!((flat(48.0, 12.0) - 12.0).abs() < 1e-12);
    }

    /// Source: a deep round bottom holds a shaft to a third of its depth when its radius is
    /// sqrt(2)/3 = 0.4714 of the diameter.
    #[test]
    fn a_tight_round_bottom_holds_the_shaft_by_its_edges() {
        let radius = mm(50.0 * 2.0_f64.sqrt() / 3.0);
        let seat = seat_in_round_u(mm(50.0), radius, mm(40.0)).expect("a sound rowlock");
        assert!((seat.depth.as_mm() - 50.0 / 3.0).abs() < 1e-9);
    }

    #[test]
    fn a_shallow_tight_round_holds_less_of_the_shaft_than_its_own_depth() {
        let seat = seat_in_round_u(mm(50.0), mm(22.0), mm(10.0)).expect("a sound rowlock");
        assert!(seat.depth.as_mm() < 10.0 && seat.depth.as_mm() > 8.0);
        assert!(seat.mouth.as_mm() < 44.0);
    }

    #[test]
    fn a_wide_round_bottom_takes_the_shaft_to_its_bottom_line() {
        let seat = seat_in_round_u(mm(50.0), mm(30.0), mm(50.0 / 3.0)).expect("a sound rowlock");
        assert!((seat.depth.as_mm() - 50.0 / 3.0).abs() < 1e-12);
        assert!((seat.mouth.as_mm() / 50.0 - 1.075).abs() < 1e-3);
    }

    #[test]
    fn a_rowlock_or_shaft_without_measure_is_refused() {
        let no = mm(0.0);
        let rowlock = Err(BeddingError::RowlockNotPositive(no));
        assert_eq!(seat_in_flat_u(mm(50.0), no, mm(20.0)), rowlock);
        assert_eq!(seat_in_flat_u(mm(50.0), mm(48.0), no), rowlock);
        let rowlock = Err(BeddingError::RowlockNotPositive(no));
        assert_eq!(seat_in_round_u(mm(50.0), no, mm(20.0)), rowlock);
        assert_eq!(seat_in_round_u(mm(50.0), mm(25.0), no), rowlock);
        let shaft = Err(BeddingError::DiameterNotPositive(no));
        assert_eq!(seat_in_flat_u(no, mm(48.0), mm(20.0)), shaft);
        let shaft = Err(BeddingError::DiameterNotPositive(no));
        assert_eq!(seat_in_round_u(no, mm(25.0), mm(20.0)), shaft);
    }
}
