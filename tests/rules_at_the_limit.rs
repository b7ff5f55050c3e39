//! What is said of values close to a limit, and of boats where something is missing. The sums in
//! the comments are by hand: U = 2 sqrt(sum of (half-width x sensitivity)^2 / 3).

#[path = "rules_at_the_limit/found.rs"]
mod found;
#[path = "rules_at_the_limit/gaps.rs"]
mod gaps;
#[path = "rules_at_the_limit/lifting.rs"]
mod lifting;
#[path = "rules_at_the_limit/pitch.rs"]
mod pitch;
mod sound_book;
