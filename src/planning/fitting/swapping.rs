//! Whether two rowers who change seats bring a crew nearer together.

use super::Known;
use super::Work;
use super::choosing;
use super::choosing::Placed;
use super::seating::Seating;

/// Two rowers who change seats, and what comes of it with the best holes for all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swap {
    /// The two, by their place in the crew.
    pub rowers: [usize; 2],
    /// Highest less lowest finish then, in degrees.
    pub spread: f64,
    /// What is gained on the best holes without the swap, in degrees.
    pub gain: f64,
}

/// Returns the swap that helps most; nothing where none is worth it.
pub(super) fn best_swap(work: &Work) -> Option<Swap> {
    let count = work.known.len();
    let pairs = (0..count).flat_map(|one| (one + 1..count).map(move |other| [one, other]));
    let swaps = pairs.filter_map(|pair| swapped(work, pair));
    let best = swaps.min_by(|one, other| one.spread.total_cmp(&other.spread))?;
    choosing::is_worth(work.chosen.spread(), best.spread).then_some(best)
}

fn swapped(work: &Work, pair: [usize; 2]) -> Option<Swap> {
    let seat_of = |rower: usize| match rower {
        _ if rower == pair[0] => pair[1],
        _ if rower == pair[1] => pair[0],
        _ => rower,
    };
    let seating =
        |(at, one): (usize, &Known)| Seating::new(&one.body, &work.known[seat_of(at)].seat).ok();
    let seatings: Vec<Seating> =
        work.known.iter().enumerate().map(seating).collect::<Option<_>>()?;
    let both = seatings.iter().zip(&work.moved);
    let placed: Vec<Placed> =
        both.map(|(seating, moved)| Placed { seating, moved, now: None }).collect();
    let spread = match choosing::choose(&placed, work.holes) {
        Some(choice) => choice.spread(),
        None if work.holes.is_empty() => {
            let choice = super::against_the_chock(&placed);
            (choice.finishes.len() == placed.len()).then(|| choice.spread())?
        }
        None => return None,
    };
    let rowers = pair.map(|rower| work.known[rower].at);
    Some(Swap { rowers, spread, gain: work.chosen.spread() - spread })
}
