//! What is to be done at the boat: the work, whom to seat where, which oars suit. Chosen, not only
//! listed. Judges nothing itself: what is wrong is for `rules` to say, before the work and after it.

pub mod fitting;
pub mod matching;
pub mod worklist;
