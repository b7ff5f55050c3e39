//! How what three readings imply moves with each of them; knows no half-widths.

use super::super::arc;
use super::super::arc::Lean;
use super::super::arc::Rig;
use super::super::finite;
use super::super::matrix;
use super::super::matrix::Matrix;
use crate::units::Angle;

/// How one implied angle moves with each input.
///
/// # Units
///
/// Degrees for each degree of the input, all others held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Partials {
    /// By the pitch read at the catch.
    pub catch: f64,
    /// By the pitch read square off.
    pub square: f64,
    /// By the pitch read at the finish.
    pub finish: f64,
    /// By the oar angle of the catch reading.
    pub catch_at: f64,
    /// By the oar angle of the reading square off, which is taken to be nought.
    pub square_at: f64,
    /// By the oar angle of the finish reading.
    pub finish_at: f64,
    /// By the dip of the shaft.
    pub dip: f64,
    /// By the oar's own pitch.
    pub oar_pitch: f64,
}

/// How each implied angle moves with each input.
///
/// # Formula
///
/// The pitches are functions of rowlock pitch and lean; the answer is where they meet the
/// readings. With `J` the slopes of the pitches by the answer and `F` those by an input other than
/// a reading: the answer moves by `J^-1` with a reading and by `-J^-1 F` with the input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensitivities {
    /// Of the rowlock's own pitch.
    pub rowlock_pitch: Partials,
    /// Of rowlock and oar together.
    pub rig_pitch: Partials,
    /// Of the lean to the stern.
    pub aft: Partials,
    /// Of the lean outboard.
    pub out: Partials,
}

/// How the three pitches of a rig move with what isn't a reading, in degrees per degree.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slopes {
    theta: [f64; 3],
    dip: [f64; 3],
    oar_pitch: [f64; 3],
}

/// Half the distance, in degrees, over which a slope is taken.
const STEP: f64 = 1e-3;

/// Returns the slope at nought, by central difference.
pub(super) fn slope(f: impl Fn(f64) -> f64) -> f64 {
    (f(STEP) - f(-STEP)) / (2.0 * STEP)
}

impl Slopes {
    /// Returns the slopes of the small-angle form.
    pub(super) fn linear(lean: Lean, angles: [Angle; 3]) -> Self {
        let by_theta =
            |theta: Angle| lean.out.as_rad() * theta.cos() - lean.aft.as_rad() * theta.sin();
        Self { theta: angles.map(by_theta), dip: [0.0; 3], oar_pitch: [1.0; 3] }
    }

    /// Returns the slopes of the exact form, by central difference.
    pub(super) fn exact(rig: Rig, angles: [Angle; 3], dip: Angle) -> Self {
        let more = |angle: Angle, by: f64| finite::degrees(angle.as_deg() + by);
        let by_theta = |theta| slope(|by| arc::pitch(rig, more(theta, by), dip).as_deg());
        let by_dip = |theta| slope(|by| arc::pitch(rig, theta, more(dip, by)).as_deg());
        let by_oar = |theta| {
            let twisted = |by| Rig { oar_pitch: more(rig.oar_pitch, by), ..rig };
            slope(|by| arc::pitch(twisted(by), theta, dip).as_deg())
        };
        Self { theta: angles.map(by_theta), dip: angles.map(by_dip), oar_pitch: angles.map(by_oar) }
    }
}

impl Sensitivities {
    pub(super) fn new(back: Matrix, slopes: Slopes) -> Self {
        let [rowlock_pitch, aft, out] = back.map(|row| partials(row, slopes));
        let both = rowlock_pitch.oar_pitch + 1.0;
        let rig_pitch = Partials { oar_pitch: both, ..rowlock_pitch };
        Self { rowlock_pitch, rig_pitch, aft, out }
    }
}

fn partials(row: [f64; 3], slopes: Slopes) -> Partials {
    Partials {
        catch: row[0],
        square: row[1],
        finish: row[2],
        catch_at: -row[0] * slopes.theta[0],
        square_at: -row[1] * slopes.theta[1],
        finish_at: -row[2] * slopes.theta[2],
        dip: -matrix::dot(row, slopes.dip),
        oar_pitch: -matrix::dot(row, slopes.oar_pitch),
    }
}
