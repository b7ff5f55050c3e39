//! Picks one number of each list so that the picks lie as near together as can be; knows no rowers.

use crate::metrology::decision::GRAIN;

/// One number that may be picked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The number.
    pub value: f64,
    /// Whether picking it changes something, which counts for two holes of being away.
    pub changes: bool,
    /// What it is short of being ideal, in millimetres from nought up: decides between equally near
    /// picks.
    pub away: f64,
}

/// Returns, list by list, the place of the pick; nothing where a list is empty.
///
/// # Formula
///
/// The smallest range begins at one of the numbers. For each number as the least, the first of each
/// list at or above it gives the smallest range from there; the smallest of these is exact. Within
/// that range each list then gives the pick that is least away, a change counted in.
///
/// # Accuracy
///
/// Exact; ranges that differ by less than [`GRAIN`] are alike.
#[must_use]
pub fn smallest_range(lists: &[Vec<Candidate>]) -> Option<Vec<usize>> {
    let begins = lists.iter().flatten().map(|option| option.value);
    let ranges: Vec<(f64, f64)> =
        begins.filter_map(|least| Some((least, most_from(lists, least)?))).collect();
    let smallest = ranges.iter().map(|(least, most)| most - least).min_by(f64::total_cmp)?;
    let as_small = ranges.iter().filter(|(least, most)| most - least <= smallest + GRAIN);
    let picks = as_small.map(|range| picks_within(lists, *range));
    picks.min_by(|one, other| dislike(lists, one).total_cmp(&dislike(lists, other)))
}

/// Returns the least that the highest pick can be when none is below `least`.
fn most_from(lists: &[Vec<Candidate>], least: f64) -> Option<f64> {
    let first = |list: &Vec<Candidate>| {
        let above = list.iter().map(|option| option.value).filter(|value| *value >= least);
        above.min_by(f64::total_cmp)
    };
    lists.iter().map(first).try_fold(f64::NEG_INFINITY, |most, value| Some(most.max(value?)))
}

fn picks_within(lists: &[Vec<Candidate>], (least, most): (f64, f64)) -> Vec<usize> {
    let pick = |list: &Vec<Candidate>| {
        let within = list.iter().enumerate().filter(|(_, option)| {
            let value = option.value;
            value >= least && value <= most
        });
        let best = within.min_by(|(_, one), (_, other)| cost(one).total_cmp(&cost(other)));
        // Each list has a number within, for the range was made of one of each.
        best.map_or(0, |(place, _)| place)
    };
    lists.iter().map(pick).collect()
}

/// What a change weighs against being away, in millimetres of leg: feet are moved for no less.
///
/// # Source
///
/// Ours, no source: two holes as they are commonly drilled.
const A_CHANGE: f64 = 60.0;

fn cost(candidate: &Candidate) -> f64 {
    candidate.away + if candidate.changes { A_CHANGE } else { 0.0 }
}

fn dislike(lists: &[Vec<Candidate>], picks: &[usize]) -> f64 {
    lists.iter().zip(picks).map(|(list, place)| cost(&list[*place])).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn plain(value: f64) -> Candidate {
        Candidate { value, changes: false, away: 0.0 }
    }

    fn range_of(lists: &[Vec<Candidate>], picks: &[usize]) -> f64 {
        let values = lists.iter().zip(picks).map(|(list, place)| list[*place].value);
        let (least, most) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), v| {
            (least.min(v), most.max(v))
        });
        most - least
    }

    /// Every way to pick one of each list.
    fn every_pick(lists: &[Vec<Candidate>]) -> Vec<Vec<usize>> {
        lists.iter().fold(vec![Vec::new()], |picks, list| {
            let longer = |pick: Vec<usize>| {
                (0..list.len()).map(move |place| [pick.clone(), vec![place]].concat())
            };
            picks.into_iter().flat_map(longer).collect()
        })
    }

    #[test]
    fn an_empty_list_leaves_nothing_to_pick() {
        assert_eq!(smallest_range(&[vec![plain(1.0)], vec![]]), None);
        assert_eq!(smallest_range(&[]), None);
    }

    #[test]
    fn of_alike_ranges_the_one_that_changes_least_wins() {
        let stay = Candidate { value: 2.0, changes: false, away: 9.0 };
        let go = Candidate { value: 2.0, changes: true, away: 0.0 };
        assert_eq!(smallest_range(&[vec![go, stay], vec![plain(2.0)]]), Some(vec![1, 0]));
        let near = Candidate { away: 1.0, ..go };
        let far = Candidate { away: 30.0, ..go };
        assert_eq!(smallest_range(&[vec![far, near], vec![plain(2.0)]]), Some(vec![1, 0]));
    }

    fn candidate() -> impl Strategy<Value = Candidate> {
        // Whole numbers, so that many ranges are alike.
        (-20_i32..20, any::<bool>(), 0_u8..90).prop_map(|(value, changes, away)| Candidate {
            value: f64::from(value),
            changes,
            away: f64::from(away),
        })
    }

    fn lists() -> impl Strategy<Value = Vec<Vec<Candidate>>> {
        proptest::collection::vec(proptest::collection::vec(candidate(), 1..6), 1..5)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]

        #[test]
        fn the_picks_are_those_of_trying_every_one(lists in lists()) {
            let picks = smallest_range(&lists).expect("no list is empty");
            let all = every_pick(&lists);
            let least = all.iter().map(|picks| range_of(&lists, picks)).fold(f64::MAX, f64::min);
            prop_assert!((range_of(&lists, &picks) - least).abs() < 1e-12);
            let as_small = all.iter().filter(|picks| range_of(&lists, picks) <= least + 1e-9);
            let liked = as_small.map(|picks| dislike(&lists, picks)).fold(f64::MAX, f64::min);
            prop_assert!((dislike(&lists, &picks) - liked).abs() < 1e-6);
        }
    }
}
