//! The hooks that `guard` puts in place, called by git itself. The days of the book are moved, so
//! that it is sound on whatever day the tests are run.

pub(crate) mod club;
mod commits;
mod hidden;
mod kept;
mod naming;
mod odd;
mod passing_by;
mod pushes;
mod receiving;
