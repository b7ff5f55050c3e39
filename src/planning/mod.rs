//! What work is to be done at the boat: chosen, not only listed. Judges nothing itself: what is
//! wrong is for `rules` to say, before the work and after it.

pub mod fitting;
pub mod worklist;
