//! Whether two rowers who change seats bring a crew nearer together.

use super::Doubt;
use super::Known;
use super::Work;
use super::Worth;
use super::seating::Seating;

/// Two rowers who change seats, and what comes of it with everyone against the chock.
#[derive(Clone, Debug, PartialEq)]
pub struct Swap {
    /// The two, by their place in the crew.
    pub rowers: [usize; 2],
    /// Highest less lowest finish then, in degrees.
    pub spread: Doubt,
    /// What is gained, in degrees.
    pub gain: Doubt,
    /// Whether that is worth it.
    pub worth: Worth,
}

/// Returns the swap that helps most; nothing where none is worth it.
pub(super) fn best_swap(work: &Work) -> Option<Swap> {
    let count = work.known.len();
    let pairs = (0..count).flat_map(|one| (one + 1..count).map(move |other| [one, other]));
    let swaps = pairs.filter_map(|pair| swapped(work, pair));
    let best = swaps.min_by(|one, other| one.spread.value().total_cmp(&other.spread.value()))?;
    (best.worth != Worth::No).then_some(best)
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
    let (spread, gain) = work.seated_as(&seatings)?;
    let worth = Worth::of(&gain);
    Some(Swap { rowers: pair.map(|rower| work.known[rower].at), spread, gain, worth })
}
