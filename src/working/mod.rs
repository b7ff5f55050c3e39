//! What follows from the readings of a boat: each worked-out value with its budget.
//!
//! Joins the record to geometry and metrology. Judges nothing: whether a value is allowed is for
//! `rules`.

#![expect(clippy::missing_errors_doc, reason = "every error here is a Lack: what was not measured")]

mod bed;
mod bends;
mod clearance;
mod foot_holes;
mod gearing;
mod handle;
mod in_force;
mod input;
mod lack;
mod lean;
mod measuring_next;
mod oar;
mod pitch;
mod plan;
mod reading_day;
mod rower;
mod sides;
mod sight;
mod stature;
mod sums;
mod telling;
mod tools;

pub use bends::Bent;
pub use in_force::{InForce, Layer, LimitInForce, LimitSaid};
pub use input::{Input, Unit};
pub use lack::{Lack, Worked};
pub use measuring_next::{Measurement, Next};
pub use oar::OarSight;
pub use pitch::{ArcLean, Attitude};
pub use plan::{OarSeen, Seen};
pub use rower::RowerSight;
pub use sight::{BoatSight, SeatSight};
pub use sums::Sum;
pub use telling::{Doubt, LeanTold, LeanWay, is_told};
pub use tools::{Fineness, Tools};

/// A value and what it was worked out from.
pub type Budget = crate::metrology::Budget<Input>;
