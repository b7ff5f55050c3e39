//! The foot hole of each rower, so that the crew finishes together. Knows finishes, no bodies.

use super::doubt::Doubt;
use super::seating::Seating;
use super::smallest_range::Candidate;
use super::smallest_range::smallest_range;
use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::Verdict;

/// A rower on a seat, with how far measured arcs move what the body says.
pub(super) struct Placed<'f> {
    pub(super) seating: &'f Seating,
    pub(super) moved: &'f Doubt,
    /// The hole used now.
    pub(super) now: Option<u32>,
}

impl Placed<'_> {
    /// Returns the finish with a brace there, without its doubt.
    pub(super) fn finish_value(&self, brace: Option<&Doubt>) -> Option<f64> {
        Some(self.seating.finish_value(brace).ok()? + self.moved.value())
    }

    /// Returns the finish with a brace there.
    pub(super) fn finish(&self, brace: Option<&Doubt>) -> Option<Doubt> {
        Some(self.seating.finish(brace).ok()?.plus(self.moved))
    }
}

/// A hole for each rower.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Choice {
    /// The place of each rower's hole in the row of holes.
    pub(super) holes: Vec<usize>,
    /// The finish of each, in degrees.
    pub(super) finishes: Vec<f64>,
}

impl Choice {
    /// Returns highest less lowest finish.
    pub(super) fn spread(&self) -> f64 {
        let most = self.finishes.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let least = self.finishes.iter().copied().fold(f64::INFINITY, f64::min);
        most - least
    }

    /// Returns who finishes shortest and who longest.
    pub(super) fn outermost(&self) -> Option<(usize, usize)> {
        let numbered = || self.finishes.iter().enumerate();
        let shortest = numbered().max_by(|one, other| one.1.total_cmp(other.1))?.0;
        let longest = numbered().min_by(|one, other| one.1.total_cmp(other.1))?.0;
        Some((shortest, longest))
    }
}

/// Returns the holes that bring all finishes nearest together; nothing where one has no hole.
///
/// Of equal choices the one that moves the fewest feet wins, then the one with the legs nearest
/// straight as the back meets the chock.
pub(super) fn choose(crew: &[Placed], holes: &[(u32, Doubt)]) -> Option<Choice> {
    let lists: Vec<Vec<(usize, Candidate)>> =
        crew.iter().map(|rower| candidates(rower, holes)).collect();
    let plain: Vec<Vec<Candidate>> =
        lists.iter().map(|list| list.iter().map(|(_, candidate)| *candidate).collect()).collect();
    let picks = smallest_range(&plain)?;
    let picked: Vec<(usize, Candidate)> =
        lists.iter().zip(picks).map(|(list, pick)| list[pick]).collect();
    Some(Choice {
        holes: picked.iter().map(|(hole, _)| *hole).collect(),
        finishes: picked.iter().map(|(_, candidate)| candidate.value).collect(),
    })
}

fn candidates(rower: &Placed, holes: &[(u32, Doubt)]) -> Vec<(usize, Candidate)> {
    let one = |(place, (number, brace)): (usize, &(u32, Doubt))| {
        let value = rower.finish_value(Some(brace))?;
        let away = rower.seating.leg_room(brace).ok()?.value().abs();
        let changes = rower.now.is_some_and(|now| now != *number);
        Some((place, Candidate { value, changes, away }))
    };
    holes.iter().enumerate().filter_map(one).collect()
}

/// Returns the holes that are used now; nothing where one is not known.
pub(super) fn as_it_is(crew: &[Placed], holes: &[(u32, Doubt)]) -> Option<Choice> {
    let place = |rower: &Placed| holes.iter().position(|(number, _)| Some(*number) == rower.now);
    let places: Vec<usize> = crew.iter().map(place).collect::<Option<_>>()?;
    let finish = |(rower, place): (&Placed, &usize)| rower.finish_value(Some(&holes[*place].1));
    let finishes = crew.iter().zip(&places).map(finish).collect::<Option<Vec<f64>>>()?;
    (!finishes.is_empty()).then_some(Choice { holes: places, finishes })
}

/// Returns whether one spread is smaller than another by so much that it is worth moving for.
pub(super) fn is_worth(now: f64, then: f64) -> bool {
    let bounds = Bounds { least: None, most: Some(WORTH_MOVING) };
    decision::ordinary(now - then, 0.0, bounds) != Verdict::Within
}

/// What a crew must come nearer together for feet, chocks or seats to be moved, in degrees.
///
/// # Source
///
/// Ours, no source: a quarter of a degree is some 4 ms at a handle speed of 1.2 m/s, and 5 mm at the
/// hands.
pub const WORTH_MOVING: f64 = 0.25;
