//! How sure a worked-out number is, and what may be said of it.
//!
//! Pure functions of bare numbers: knows no units, no boats, no files and no limits of its own.
//! A number that is not one (NaN) never makes anything look better than it is.

pub mod budget;
pub mod chance;
pub mod decision;
pub mod drift;
pub mod half_width;
pub mod trend;

pub use budget::Budget;
pub use budget::Part;
