//! What to do at the boat: whom to seat where, which oars suit which boat.
//!
//! Works out proposals from what was measured, each with how good it is. Writes no record, knows no
//! rule and no report.

pub mod fitting;
pub mod matching;
