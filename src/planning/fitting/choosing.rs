//! The foot hole of each rower, so that the crew finishes together. Knows finishes, no bodies.

use super::doubt::Doubt;
use super::seating::Seating;
use super::smallest_range::Candidate;
use super::smallest_range::smallest_range;
use crate::geometry::crew::StoppedBy;
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
    /// Returns whether every rower has a finish.
    pub(super) fn is_of(&self, crew: &[Placed]) -> bool {
        self.finishes.len() == crew.len()
    }

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
/// Of equal choices the one with the legs nearest straight wins, as the back meets the chock; to move
/// feet counts for two holes.
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

/// Returns highest less lowest finish of a choice; nothing with fewer than two rowers.
pub(super) fn spread(crew: &[Placed], holes: &[(u32, Doubt)], choice: &Choice) -> Option<Doubt> {
    let (shortest, longest) = choice.outermost().filter(|_| crew.len() > 1)?;
    let finish = |at: usize| {
        let brace = choice.holes.get(at).map(|hole| &holes[*hole].1);
        crew[at].finish(brace)
    };
    Some(finish(shortest)?.minus(&finish(longest)?))
}

/// Returns the choice with the legs of everyone near straight where they surely are not and the
/// chock still stops the rower: that moves no finish.
pub(super) fn legs_straightened(
    crew: &[Placed],
    holes: &[(u32, Doubt)],
    choice: &Choice,
) -> Choice {
    let one = |(at, rower): (usize, &Placed)| {
        let hole = choice.holes[at];
        straighter(rower, holes, hole).unwrap_or(hole)
    };
    let finishes = choice.finishes.clone();
    let holes = match choice.holes.as_slice() {
        [] => Vec::new(),
        _ => crew.iter().enumerate().map(one).collect(),
    };
    Choice { holes, finishes }
}

/// Returns the farthest hole at which the chock still stops the rower, where the legs surely have
/// more than one hole to spare in the hole given.
fn straighter(rower: &Placed, holes: &[(u32, Doubt)], hole: usize) -> Option<usize> {
    let room = rower.seating.leg_room(&holes[hole].1).ok()?;
    let apart = holes.get(1)?.1.value() - holes[0].1.value();
    let bounds = Bounds { least: None, most: Some(apart) };
    let verdict = decision::ordinary(room.value(), room.expanded(), bounds);
    let spare = |at: &usize| rower.seating.stopped_by(Some(&holes[*at].1)) == Ok(StoppedBy::Chock);
    matches!(verdict, Verdict::Beyond { .. })
        .then(|| (hole + 1..holes.len()).rev().find(spare))
        .flatten()
}

/// Whether a gain is worth moving feet, chocks or seats for.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Worth {
    /// It is, by more than it may be out.
    Sure,
    /// It is on paper, but it may be out by more than that.
    Perhaps,
    /// It is too small to bother.
    No,
}

impl Worth {
    /// Judges a gain, in degrees.
    #[must_use]
    pub fn of(gain: &Doubt) -> Self {
        let bounds = Bounds { least: None, most: Some(WORTH_MOVING) };
        match decision::ordinary(gain.value(), gain.expanded(), bounds) {
            Verdict::Within => Self::No,
            Verdict::Undecided { .. } => Self::Perhaps,
            Verdict::Beyond { .. } => Self::Sure,
        }
    }
}

/// What a crew must come nearer together for feet, chocks or seats to be moved, in degrees.
///
/// # Source
///
/// Ours, no source: a quarter of a degree is some 4 ms at a handle speed of 1.2 m/s, and 5 mm at the
/// hands.
pub const WORTH_MOVING: f64 = 0.25;
