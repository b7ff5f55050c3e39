//! Plane and solid geometry of a rigged boat.
//!
//! Pure functions of numbers: no files, no boats, no tolerances. Each one states its units, sign
//! convention, formula and source, and is checked against a value that this crate did not compute.
//!
//! ```text
//!                    bow
//!                     ^  catch: theta +
//!          blade .    |
//!                 `.  |
//!    outboard <----- pin ----| centreline      a port oar, seen from above, theta = 0 square off
//!                 .'  |
//!          blade '    |
//!                     v  finish: theta -
//!                   stern
//! ```
//!
//! Lean is what a plumb line shows: `aft` positive to the stern, `out` positive outboard. Pitch is
//! positive with the blade's top to the stern. Dip is positive with the blade end of the shaft low.
//! Trim is positive bow up, roll positive port side down. A starboard oar is the mirror image, so
//! only what roll does depends on the [`Side`].
//!
//! No function panics. Where numbers too large for any boat would overflow, the result stays at
//! the largest number there is.

pub mod arc;
pub mod arc_inverse;
pub mod bedding;
pub mod blade_force;
pub mod clearance;
pub mod correction;
pub mod crew;
mod finite;
pub mod gearing;
pub mod handle;
pub mod level;
mod matrix;
pub mod plan;
pub mod reading;
mod side;
pub mod sides;

pub use side::Side;
